"""Generators of legal things to plan; the only ones, used by every property test.

Sizes stay on a maker's grid (quarters and eighths of an inch), so that a failing example can be sewn.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import cos, pi, sin
from typing import Any

from hypothesis import strategies as st

from stitchflip.cutting import Piece
from stitchflip.lengths import Unit
from stitchflip.project.model import Fabric, Project, Working
from stitchflip.project.numbers import Numbers
from tests.twins.grid import sides_after
from tests.twins.script import Polygon, Script, Strip, moved_out, rectangle, regular, sides_of, turned
from tests.twins.table import house, project, rounds, trim


def eighths(least: float, most: float) -> st.SearchStrategy[float]:
    """Lengths on the 1/8 in grid."""
    return st.integers(round(least * 8), round(most * 8)).map(lambda count: count / 8)


def quarters(least: float, most: float) -> st.SearchStrategy[float]:
    """Lengths on the 1/4 in grid."""
    return st.integers(round(least * 4), round(most * 4)).map(lambda count: count / 4)


def cut_widths() -> st.SearchStrategy[float]:
    """Cut widths of strips, always wider than two seams."""
    return quarters(1, 3.5)


@st.composite
def numbers_of_a_maker(draw: st.DrawFn) -> Numbers:
    """A maker's numbers: seam, draw-up, fold loss, reach and binding seam within what people report."""
    return house(
        seam=draw(st.sampled_from([0.25, 7 / 32, 0.3])),
        fold_loss=draw(st.sampled_from([0.0, 1 / 32, 1 / 16])),
        draw_up_x=draw(st.sampled_from([0.0, 0.015, 0.03])),
        draw_up_y=draw(st.sampled_from([0.0, 0.015, 0.04])),
        reach=draw(st.sampled_from([0.25, 0.375, 0.5])),
        binding_seam=draw(st.sampled_from([0.25, 0.375])),
    )


@dataclass(frozen=True)
class Laid:
    """A project with the numbers it is planned with."""

    project: Project
    numbers: Numbers


STRAIGHT_WAYS = ("log cabin", "two-sided log cabin", "courthouse steps")


@st.composite
def straight_builds(draw: st.DrawFn, way: str | None = None) -> Laid:
    """Log cabins (both turnings, any start), two-sided ones and courthouse steps round a rectangle."""
    wide, long = draw(quarters(2, 7)), draw(quarters(2, 7))
    way = way or draw(st.sampled_from(STRAIGHT_WAYS))
    building: dict[str, Any] = {"way": way}
    strips = 4
    if way == "courthouse steps":
        building["first_pair"] = draw(st.sampled_from([("top", "bottom"), ("left", "right"), ("bottom", "top")]))
        building["strips_per_visit"] = draw(st.integers(1, 2))
        strips = 4 * building["strips_per_visit"]
    else:
        building["turning"] = draw(st.sampled_from(["clockwise", "counter-clockwise"]))
        building["start"] = draw(st.sampled_from(["top", "right", "bottom", "left"]))
        strips = 2 if way == "two-sided log cabin" else 4
    cuts = draw(st.lists(st.tuples(*[cut_widths()] * strips), min_size=1, max_size=3))
    middle = [draw(quarters(-1, 1)), draw(quarters(-1, 1))]
    return Laid(
        project(
            squared_up=trim(draw(quarters(3, 14)), draw(quarters(3, 14))),
            center={
                "fabric": "Linen",
                "shape": "rectangle",
                "cut_wide": str(wide),
                "cut_long": str(long),
                "off_center": middle,
            },
            building=building,
            rounds=rounds(*cuts),
        ),
        draw(numbers_of_a_maker()),
    )


@st.composite
def pointed_builds(draw: st.DrawFn) -> Laid:
    """Squares on point with pairs round the point, one-ended too, in square or pointed runners."""
    side = draw(quarters(3, 8))
    wide = draw(quarters(6, 12))
    building = {
        "way": "pairs round the point",
        "pair_first": draw(st.sampled_from(["upper", "lower", "alternate"])),
        "one_ended": draw(st.booleans()),
    }
    cuts = draw(st.lists(cut_widths(), min_size=1, max_size=5))
    return Laid(
        project(
            squared_up=trim(
                wide,
                wide + draw(quarters(1, 14)),
                length_runs="across",
                ends=draw(st.sampled_from(["square", "pointed"])),
            ),
            center={"fabric": "Linen", "cut": str(side), "turned": 45.0, "off_center": [draw(quarters(-4, 1)), 0.0]},
            building=building,
            rounds=rounds(*cuts),
        ),
        draw(numbers_of_a_maker()),
    )


@st.composite
def round_builds(draw: st.DrawFn, sides: tuple[int, ...] = (3, 5, 6, 7, 8)) -> Laid:
    """Rounds on a regular polygon of 3 or of 5 to 8 sides, turned by any angle; with many sides some may close."""
    corners = draw(st.sampled_from(sides))
    return Laid(
        project(
            squared_up={
                "shape": "polygon",
                "sides": draw(st.integers(3, 8)),
                "across_flats": str(draw(quarters(6, 18))),
                "turned": draw(st.sampled_from([0.0, 15.0, 30.0, 45.0])),
            },
            center={
                "fabric": "Linen",
                "shape": "polygon",
                "sides": corners,
                "cut": str(draw(quarters(3, 8))),
                "turned": draw(st.sampled_from([0.0, 10.0, 22.5, 30.0])),
            },
            building={
                "way": "round after round",
                "turning": draw(st.sampled_from(["clockwise", "counter-clockwise"])),
            },
            rounds=rounds(*draw(st.lists(cut_widths(), min_size=1, max_size=3))),
        ),
        draw(numbers_of_a_maker()),
    )


@st.composite
def row_builds(draw: st.DrawFn) -> Laid:
    """Rows from the middle out: across, along or slanted."""
    building: dict[str, Any] = {
        "way": "rows of strips",
        "rows_run": draw(st.sampled_from(["across", "along", "slanted"])),
        "slant": draw(st.sampled_from([30.0, 45.0, 60.0, 135.0])),
    }
    return Laid(
        project(
            squared_up=trim(draw(quarters(6, 14)), draw(quarters(6, 20))),
            building=building,
            rounds=rounds(*draw(st.lists(cut_widths(), min_size=2, max_size=6))),
        ),
        draw(numbers_of_a_maker()),
    )


def regular_builds() -> st.SearchStrategy[Laid]:
    """Any of the ways of building with a fixed list of rounds."""
    return st.one_of(straight_builds(), pointed_builds(), round_builds(), row_builds())


@st.composite
def covered_builds(draw: st.DrawFn) -> Laid:
    """Regular ways that go on until the base is covered."""
    cabins = st.one_of(straight_builds("log cabin"), straight_builds("courthouse steps"))
    laid = draw(st.one_of(cabins, pointed_builds(), row_builds(), round_builds(sides=(3, 5, 6))))
    building = laid.project.building.model_copy(update={"until_covered": True, "one_ended": False})
    return replace(laid, project=laid.project.model_copy(update={"building": building}))


@st.composite
def chord_scripts(draw: st.DrawFn) -> Script:
    """A center, strips on its sides, and strips along free lines that cut a corner or a side off."""
    first: Polygon = turned(
        draw(st.sampled_from([rectangle(5, 5), rectangle(6, 4), regular(6, 6), regular(3, 5)])),
        draw(st.sampled_from([0.0, 17.0, 45.0])),
    )
    outline = rectangle(draw(quarters(4, 12)), draw(quarters(4, 12)))
    script = Script(
        sides=sides_of(first),
        strips=(),
        seam=0.25,
        trim=outline,
        inner=moved_out(outline, -0.25),
        cover=moved_out(outline, 0.25),
    )
    angles = draw(st.lists(st.integers(0, 23), min_size=1, max_size=3, unique=True))
    plan = draw(st.permutations([*angles, *[None] * draw(st.integers(0, 4))]))
    for angle in plan:
        width = draw(cut_widths())
        if angle is None:
            normal, _ = draw(st.sampled_from(sides_after(script)))
            strip = Strip(normal, width)
        else:
            strip = _chord(draw, first, angle, width)
        script = replace(script, strips=(*script.strips, strip))
    return script


def _chord(draw: st.DrawFn, first: Polygon, angle: int, width: float) -> Strip:
    """A line that leaves at least half of the center on its inner side and still lies within its fabric."""
    radians = angle * pi / 12 + 0.01
    normal = (cos(radians), sin(radians))
    furthest = max(normal[0] * x + normal[1] * y for x, y in first)
    share = draw(st.integers(3, 7)) / 8
    return Strip(normal, width, at=share * (furthest - 0.25))


@dataclass(frozen=True)
class StripProblem:
    """Lengths wanted, strips on hand as (length, count), and the length of a bought strip."""

    lengths: tuple[float, ...]
    on_hand: tuple[tuple[float, int], ...]
    bought: float


@st.composite
def strip_problems(draw: st.DrawFn, most: int = 7, *, with_shelf: bool = True) -> StripProblem:
    """Small problems of strips from strips; every piece fits a bought strip."""
    bought = draw(quarters(12, 44))
    lengths = draw(st.lists(quarters(2, bought), min_size=1, max_size=most))
    kinds = st.tuples(quarters(4, 44), st.integers(1, 2))
    shelf = draw(st.lists(kinds, max_size=2, unique_by=lambda kind: kind[0])) if with_shelf else []
    return StripProblem(tuple(lengths), tuple(shelf), bought)


@dataclass(frozen=True)
class CuttingProblem:
    """A fabric, what is to be cut from it, and how."""

    fabric: Fabric
    pieces: tuple[Piece, ...]
    numbers: Numbers
    working: Working


@st.composite
def cutting_problems(draw: st.DrawFn) -> CuttingProblem:
    """Fabrics with strips, rectangles, a binding and things on hand, as a project may ask for them."""
    width = draw(quarters(30, 44))
    working = draw(st.sampled_from(list(Working)))
    alike = draw(st.integers(1, 3))
    pieces: list[Piece] = []
    for step in range(1, draw(st.integers(1, 8)) + 1):
        long = draw(quarters(3, 46))
        shortest = long - draw(st.sampled_from([0.25, 0.5, 1.0]))
        cut_first = working is Working.CUT_FIRST
        wide = draw(st.sampled_from([1.5, 2.0, 2.5, 3.25]))
        pieces.append(Piece(str(step), wide, long, alike, shortest=shortest, step=step, cut_first=cut_first))
    for number in range(draw(st.integers(0, 2))):
        wide, long = draw(quarters(3, 46)), draw(quarters(3, 30))
        turns = draw(st.booleans())
        pieces.append(Piece(f"Center {number}", wide, long, alike, kind="rectangle", can_turn=turns))
    if draw(st.booleans()):
        pieces.append(Piece("Binding", 2.5, width, draw(st.integers(1, 5)), kind="binding"))
    sizes = st.sampled_from(["fat quarter", "remnant", "precut strip"])
    on_hand = [_on_hand(draw, name) for name in draw(st.lists(sizes, max_size=2))]
    fabric = Fabric.model_validate(
        {
            "name": "Linen",
            "usable_width": str(width),
            "on_hand": on_hand,
            "only_on_hand": bool(on_hand) and draw(st.booleans()),
            "one_way": draw(st.booleans()),
        },
        context={"unit": Unit.INCH},
    )
    wash = draw(st.sampled_from([0.0, 0.04]))
    return CuttingProblem(fabric, tuple(pieces), house(prewash_across=wash, prewash_along=wash / 2), working)


def _on_hand(draw: st.DrawFn, name: str) -> dict[str, Any]:
    wide, long = {
        "fat quarter": (quarters(17, 18.5), quarters(20, 22)),
        "remnant": (quarters(30, 44), quarters(3, 20)),
        "precut strip": (st.just(2.5), quarters(20, 44)),
    }[name]
    return {"name": name, "wide": str(draw(wide)), "long": str(draw(long)), "count": draw(st.integers(1, 2))}
