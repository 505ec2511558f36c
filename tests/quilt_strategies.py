"""Generators of what is made of finished pieces: joined blocks, borders, panels, and what goes onto the back."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from hypothesis import strategies as st

Texts = st.SearchStrategy[str]


def some(draw: st.DrawFn, **choices: st.SearchStrategy[Any]) -> dict[str, Any]:
    """A table with some of these keys."""
    return draw(st.fixed_dictionaries({}, optional=choices))


def extras(draw: st.DrawFn, name: Texts) -> dict[str, Any]:
    """A sleeve and a label, either or both, of any fabric or of the backing."""
    table: dict[str, Any] = {}
    if draw(st.booleans()):
        table = {"sleeve": True, **some(draw, sleeve_fabric=name)}
    if draw(st.booleans()):
        table |= {"label": draw(st.sampled_from(["rectangle", "corner"])), **some(draw, label_fabric=name)}
    return table


def cut_apart(draw: st.DrawFn, size: Texts) -> dict[str, Any]:
    """Panels: two or more of them."""
    across = draw(st.integers(1, 3))
    return {"across": across, "down": draw(st.integers(1 if across > 1 else 2, 3)), **some(draw, loss=size)}


def made_for(draw: st.DrawFn, size: Texts) -> dict[str, Any]:
    """A table or a bed that gives both sizes, though the piece may name its own."""
    if draw(st.booleans()):
        hangs = [{}, {"hang": "6 in"}, {"hang": "0", "covers": "whole table"}, {"short_of_ends": "10 in"}]
        hang = draw(st.sampled_from(hangs))
        return {"table_wide": draw(size), "table_long": draw(size), **hang}
    bed = draw(st.sampled_from([{"mattress": "queen"}, {"mattress_wide": "60 in", "mattress_long": "2 m"}]))
    return bed | some(draw, drop=size, tuck=size)


def joined(draw: st.DrawFn, size: Texts, name: Texts) -> dict[str, Any]:
    """Blocks joined in each way, straight or on point, measured or not."""
    across, down = draw(st.integers(1, 3)), draw(st.integers(1, 3))
    table: dict[str, Any] = {"across": across, "down": down}
    table |= some(
        draw,
        first=st.sampled_from(["rows", "columns"]),
        batting_reaches=st.sampled_from(["to the raw edge", "to the seam"]),
    )
    unequal = ["trim all to the smallest", "frame the small ones"]
    strips = {"fabric": draw(name), **some(draw, folded_cut=size, fabric_behind=name)}
    match draw(st.sampled_from(["flat and folded strips", "covered strips", "plain seam"])):
        case "covered strips":
            table |= {"join": "covered strips", **strips, **some(draw, shows=size, corner_squares=name)}
        case "plain seam":
            table |= {"join": "plain seam"}
        case _:
            table |= strips | some(draw, flat_cut=size, fold=st.sampled_from(["behind", "in front"]))
    rows = [across] * down
    if draw(st.booleans()):
        table |= {"setting": "on point", "triangle_fabric": draw(name)}
        table |= some(draw, triangles=st.sampled_from(["exact", "usual additions", "oversize"]))
        rows = [count for row in range(2 * down - 1) if (count := across - row % 2)]
    else:
        unequal.append("like sizes share a column")
    table |= some(draw, unequal=st.sampled_from(unequal))
    if draw(st.booleans()):
        block = st.one_of(size, st.tuples(size, size).map(list))
        table["measured"] = [[draw(block) for _ in range(count)] for count in rows]
    return table


def blocks(
    draw: st.DrawFn, whole: dict[str, Any], size: Texts, name: Texts, another: Callable[[], dict[str, Any]]
) -> list[dict[str, Any]]:
    """Kinds of block that say nothing, a center, rounds, or everything for themselves."""
    made: list[dict[str, Any]] = [{"name": "Lit window"}]
    if "rounds" in whole and draw(st.booleans()):
        entries = [{**entry, "cut_long": draw(size)} for entry in whole["rounds"]]
        made.append({"name": "Dark shed", "rounds": entries})
    if "center" in whole and draw(st.booleans()):
        made.append({"name": "Wide lamp", "center": {"fabric": draw(name), "cut": draw(size)}})
    if draw(st.booleans()):
        made.append({"name": "Ticket", **another()})
    if len(made) > 1 and draw(st.booleans()):
        made[0]["count"] = 1
    return made


def borders(draw: st.DrawFn, size: Texts, name: Texts) -> list[dict[str, Any]]:
    """Up to two borders with any corners."""
    made = []
    for _ in range(draw(st.integers(0, 2))):
        border = {"cut": draw(size), "fabric": draw(name)}
        match draw(st.sampled_from(["butted", "mitered", "corner squares"])):
            case "corner squares":
                border |= {"corners": "corner squares", "corner_fabric": draw(name)}
            case corners:
                border |= {"corners": corners}
        made.append(border)
    return made


def quilt(
    draw: st.DrawFn, whole: dict[str, Any], size: Texts, name: Texts, another: Callable[[], dict[str, Any]]
) -> dict[str, Any]:
    """Joined blocks with their kinds, places and borders.

    Args:
        draw: draws.
        whole: the project's other tables.
        size: sizes.
        name: names of its fabrics.
        another: a kind of block that takes nothing over from the project.
    """
    tables: dict[str, Any] = {"joined": joined(draw, size, name), "borders": borders(draw, size, name)}
    if draw(st.booleans()):
        tables["blocks"] = blocks(draw, whole, size, name, another)
        rows = tables["joined"].get("measured")
        if rows and "count" not in tables["blocks"][0]:
            numbers = st.integers(1, len(tables["blocks"])).map(str)
            tables["joined"]["places"] = [" ".join(draw(numbers) for _ in row) for row in rows]
    return tables
