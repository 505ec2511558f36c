"""Rounds, steps, patches and what was measured: which of them a way of building has."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import dist

from stitchflip.project.agreements.fabrics import named_in, on_hand
from stitchflip.project.agreements.outlines import place_in
from stitchflip.project.agreements.tables import Disagreement, Path, Table, table_at, tables_at, too_many, way_in
from stitchflip.project.strips import Building
from stitchflip.project.words import Runs, Way, Widths, bare, meant

_WAY_WITH = {"steps": Way.SIDES, "patches": Way.FOUNDATION}
"""What only one way of building has, and that way."""
_DUE = {
    "rounds": ("nothing, though there must be strips", 'rounds such as [{ cut = "2 1/2", fabric = "Oat" }]'),
    "steps": (
        "nothing, though the strips go on side by side in your order",
        'steps with side, cut and fabric, or another "way" under [building]',
    ),
    "patches": (
        "nothing, though a numbered foundation is made of patches",
        'patches such as [{ fabric = "Oat" }, { fabric = "Brass", line = [[-3, 0], [3, 1]] }]',
    ),
}
"""What a way of building needs: what is said where it is missing, and what would do."""


def due_for(way: Way | None) -> str:
    """The list that a way of building is made of: rounds, steps or patches."""
    return next((key for key, only in _WAY_WITH.items() if way is only), "rounds")


def strips(data: Table) -> Iterator[Disagreement]:
    """Rounds where rounds are due, single steps or patches where those are due."""
    way = way_in(data)
    if way is not None:
        due = due_for(way)
        if not data.get(due):
            yield Disagreement((due,), *_DUE[due])
        for key in _DUE:
            if key != due and data.get(key):
                found = f'{key}, though the way of building is "{way.value}"'
                other = f'{due}, or way = "{_WAY_WITH[key].value}" under [building]' if key in _WAY_WITH else ""
                yield Disagreement((key,), found, other or f"{due} only")
        runs = str(table_at(data, "squared_up").get("length_runs", Runs.UP.value))
        if way in (Way.BRAID, Way.CHEVRON) and meant(runs, Runs) is Runs.ACROSS:
            found = f"{runs}, though a {way.value} grows up the picture"
            yield Disagreement(("squared_up", "length_runs"), found, 'length_runs = "up"')
    yield from _building(table_at(data, "building"))


_OPPOSITE = {
    "top": "bottom",
    "bottom": "top",
    "left": "right",
    "right": "left",
    "upperright": "lower left",
    "lowerleft": "upper right",
    "upperleft": "lower right",
    "lowerright": "upper left",
}


def _building(table: Table) -> Iterator[Disagreement]:
    """Sides that are opposite, corners once each, and angles in their order."""
    pair = table.get("first_pair")
    first, second = [*(pair if isinstance(pair, Sequence) else ()), "", ""][:2]
    opposite = _OPPOSITE.get(bare(str(first)))
    if opposite is not None and bare(str(second)) != bare(opposite):
        found = f"{first} and {second}, which are not opposite"
        yield Disagreement(("building", "first_pair"), found, f'["{first}", "{opposite}"]')
    named = table.get("corners")
    corners = [str(name) for name in named] if isinstance(named, Sequence) and not isinstance(named, str) else []
    for place, name in enumerate(corners):
        if bare(name) in map(bare, corners[:place]):
            yield Disagreement(("building", "corners", place), f'"{name}" a second time', "each corner once")
    least, most = (table.get(key, Building.model_fields[key].default) for key in ("smallest_angle", "largest_angle"))
    if isinstance(least, int | float) and isinstance(most, int | float) and least > most:
        key = "smallest_angle" if "smallest_angle" in table else "largest_angle"
        found = f"at least {least:g} degrees, though at most {most:g}"
        yield Disagreement(("building", key), found, "a smallest_angle that is not larger than largest_angle")


def rounds(data: Table) -> Iterator[Disagreement]:
    """One cut width or several, one fabric or several in turn, squares where the way has them."""
    way = way_in(data)
    for place, table in tables_at(data, "rounds"):
        at: Path = ("rounds", place)
        if table.get("cut") is None and table.get("cuts") is None:
            yield from _no_width(data, table, at)
        if table.get("cut") is not None and table.get("cuts") is not None:
            yield Disagreement((*at, "cuts"), "cut and cuts in one round", "one of the two")
        if table.get("fabric") is not None and table.get("fabrics") is not None:
            yield Disagreement((*at, "fabrics"), "fabric and fabrics in one round", "one of the two")
        for key in ("cuts", "fabrics"):
            if table.get(key) is not None and not table[key]:
                yield Disagreement((*at, key), f"{key} with nothing in it", "one value for each strip")
        if way is Way.CORNER_SQUARES and table.get("corner_fabric") is None:
            found = "nothing, though each round has corner squares"
            yield Disagreement(
                (*at, "corner_fabric"), found, 'the fabric of the squares, such as corner_fabric = "Oat"'
            )
        elif way is not None and way is not Way.CORNER_SQUARES and table.get("corner_fabric") is not None:
            found = f'corner_fabric, though the way of building is "{way.value}"'
            instead = f'no corner_fabric, or way = "{Way.CORNER_SQUARES.value}" under [building]'
            yield Disagreement((*at, "corner_fabric"), found, instead)


def _no_width(data: Table, table: Table, at: Path) -> Iterator[Disagreement]:
    """A round without a cut width: its strips take theirs from what is on hand, or it lacks one."""
    widths = str(table_at(data, "building").get("widths", Widths.LISTED.value))
    if meant(widths, Widths) is Widths.LISTED:
        yield Disagreement((*at, "cut"), "nothing", 'a cut width such as "2 1/2", or cuts with one for each strip')
        return
    names = named_in(table)
    empty = [name for name in names if not on_hand(data, name)] if names else []
    if empty or not (names or any(fabric.get("on_hand") for _, fabric in tables_at(data, "fabrics"))):
        of = f'of "{empty[0]}"' if empty else "of any fabric"
        found = f"nothing, though nothing {of} is on hand to take a width from"
        yield Disagreement((*at, "cut"), found, "a cut width, or the pieces you have as on_hand under the fabric")


_APART = 0.1
"""Two places nearer than this give no line, in the project's unit."""


def patches(data: Table) -> Iterator[Disagreement]:
    """The first patch without a line, each later one with two places on its line."""
    for place, table in tables_at(data, "patches"):
        at: Path = ("patches", place)
        if place == 0:
            yield from too_many(table, at, ("line",), "the first patch lies there before any line", "its fabric alone")
            continue
        yield from too_many(table, at, ("at",), "only the first patch has no line", "its line alone")
        line = table.get("line")
        if line is None:
            found = "nothing, though each patch after the first is sewn along a line"
            yield Disagreement((*at, "line"), found, "two places on its line, such as line = [[-3, 0], [3, 1]]")
            continue
        ends = [place_in(end) for end in line] if isinstance(line, Sequence) and not isinstance(line, str) else []
        known = [end for end in ends if end is not None]
        if len(ends) == len(known) == 2 and dist(*known) < _APART:
            yield Disagreement((*at, "line"), "two places that are one", "two places far from each other on the line")


def readings(data: Table) -> Iterator[Disagreement]:
    """Each short strip once."""
    seen: dict[object, int] = {}
    for place, table in tables_at(data, "short_strips"):
        step = table.get("step")
        if isinstance(step, int) and step in seen:
            yield Disagreement(("short_strips", place, "step"), f"strip {step} a second time", "each strip once")
        elif isinstance(step, int):
            seen[step] = place
