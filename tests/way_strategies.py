"""Generators of projects of any way of building, at sizes that can be sewn; beside those of the regular builds."""

from __future__ import annotations

from math import cos, pi, sin
from typing import Any

from hypothesis import strategies as st

from stitchflip.project.model import PairFirst, RowsRun, Runs, Way
from tests.strategies import Laid, cut_widths, eighths, numbers_of_a_maker, quarters, regular_builds
from tests.twins.table import project, rounds, square, trim

FABRICS = [{"name": "Linen"}, {"name": "Plum"}, {"name": "Oat"}]


@st.composite
def convex_corners(draw: st.DrawFn) -> list[list[float]]:
    """Three to seven corners on an oval, so that the outline bends outward everywhere; on the 1/8 in grid."""
    count = draw(st.integers(3, 7))
    wide, high = draw(quarters(1.5, 4)), draw(quarters(1.5, 4))
    corners = []
    for place in range(count):
        angle = 2 * pi * (place + draw(st.integers(0, 5)) / 12) / count
        corners.append([round(wide * cos(angle) * 64) / 64, round(high * sin(angle) * 64) / 64])
    return corners


def cuts(least: int = 1, most: int = 4) -> st.SearchStrategy[list[float]]:
    """Cut widths of so many rounds."""
    return st.lists(cut_widths(), min_size=least, max_size=most)


@st.composite
def outlines(draw: st.DrawFn, least: float = 6, most: float = 14) -> dict[str, Any]:
    """A squared-up size: a rectangle, lying or upright."""
    wide = draw(quarters(least, most))
    return trim(wide, draw(quarters(wide, most + 4)), length_runs=draw(st.sampled_from(["up", "across"])))


@st.composite
def convex_builds(draw: st.DrawFn) -> Laid:
    """Rounds on any outline that does not bend inward, cut for the piece or half done already."""
    center = {"fabric": "Linen", "corners": draw(convex_corners()), "sewn_already": draw(st.booleans())}
    turning = draw(st.sampled_from(["clockwise", "counter-clockwise"]))
    return Laid(
        project(
            squared_up=draw(outlines()),
            center=center,
            building={"way": "round after round", "turning": turning},
            rounds=rounds(*draw(cuts(1, 3))),
        ),
        draw(numbers_of_a_maker()),
    )


@st.composite
def string_builds(draw: st.DrawFn) -> Laid:
    """String blocks, and rows from one end at any slant."""
    way = draw(st.sampled_from(["string block", "rows of strips"]))
    building: dict[str, Any] = {"way": way, "turning": draw(st.sampled_from(["clockwise", "counter-clockwise"]))}
    if way == "rows of strips":
        run = draw(st.sampled_from(["across", "along", "slanted"]))
        slant = draw(st.sampled_from([10, 45, 60, 90, 120, 170]))
        building |= {"rows_from": "one end", "rows_run": run, "slant": slant}
    return Laid(
        project(squared_up=draw(outlines()), building=building, rounds=rounds(*draw(cuts(2, 6)))),
        draw(numbers_of_a_maker()),
    )


@st.composite
def braid_builds(draw: st.DrawFn) -> Laid:
    """Braids and chevrons at several slants, either leg first."""
    building = {
        "way": draw(st.sampled_from(["braid", "chevron"])),
        "slant": draw(st.sampled_from([25, 45, 45, 60])),
        "pair_first": draw(st.sampled_from(["upper", "lower", "alternate"])),
        **draw(st.sampled_from([{}, {"start": "upper left"}, {"start": "upper right"}])),
    }
    return Laid(
        project(
            squared_up=draw(outlines()),
            center={"fabric": "Linen", "shape": "half square", "cut": str(draw(quarters(3, 9)))},
            building=building,
            rounds=rounds(*draw(cuts(1, 6))),
        ),
        draw(numbers_of_a_maker()),
    )


@st.composite
def corner_square_builds(draw: st.DrawFn) -> Laid:
    """Rounds with corner squares round a rectangle."""
    pair = draw(st.sampled_from([("top", "bottom"), ("left", "right"), ("right", "left")]))
    wide, long = draw(quarters(2, 6)), draw(quarters(2, 6))
    widths = draw(st.lists(st.tuples(*[cut_widths()] * 4), min_size=1, max_size=3))
    return Laid(
        project(
            squared_up=draw(outlines()),
            fabrics=FABRICS,
            center={"fabric": "Linen", "cut_wide": str(wide), "cut_long": str(long), "shape": "rectangle"},
            building={"way": "rounds with corner squares", "first_pair": pair},
            rounds=[{**one, "corner_fabric": "Plum"} for one in rounds(*widths)],
        ),
        draw(numbers_of_a_maker()),
    )


@st.composite
def folded_corner_builds(draw: st.DrawFn) -> Laid:
    """Squares folded over some corners of a patch, so large that they may cut into each other."""
    names = ["upper right", "upper left", "lower left", "lower right"]
    chosen = draw(st.lists(st.sampled_from(names), min_size=1, max_size=4, unique=True))
    wide, long = draw(quarters(6, 12)), draw(quarters(6, 12))
    return Laid(
        project(
            squared_up=trim(wide - 0.5, long - 0.5),
            center={"fabric": "Linen", "cut_wide": str(wide), "cut_long": str(long), "shape": "rectangle"},
            building={"way": "stitch-and-flip corners", "corners": chosen},
            rounds=rounds(draw(quarters(1.5, min(wide, long) * 0.75))),
        ),
        draw(numbers_of_a_maker()),
    )


@st.composite
def foundation_builds(draw: st.DrawFn) -> Laid:
    """Up to six lines anywhere that leave the center mark on one side, drawn on the front or on the back."""
    patches: list[dict[str, Any]] = [{"fabric": "Linen"}]
    for _ in range(draw(st.integers(1, 6))):
        angle = draw(st.integers(0, 23)) * pi / 12
        off = draw(eighths(0.25, 5))
        (nx, ny), (tx, ty) = (cos(angle), sin(angle)), (-sin(angle), cos(angle))
        ends = [[nx * off + tx * u, ny * off + ty * u] for u in (-1, 2)]
        patches.append({"fabric": "Linen", "line": ends})
    seen = draw(st.sampled_from(["from the front", "from the back"]))
    return Laid(
        project(
            squared_up=draw(outlines()),
            building={"way": "numbered foundation", "lines_seen": seen},
            patches=patches,
        ),
        draw(numbers_of_a_maker()),
    )


@st.composite
def wonky_builds(draw: st.DrawFn) -> Laid:
    """Strips whose slant chance draws, on centers of three to six sides."""
    smallest = draw(st.sampled_from([0, 4, 8]))
    center = draw(
        st.sampled_from(
            [square(3), square(4, 30), *({"fabric": "Linen", "sides": sides, "cut": "4"} for sides in (3, 5, 6))]
        )
    )
    return Laid(
        project(
            squared_up=draw(outlines()),
            center=center,
            building={
                "way": "wonky strips",
                "seed": draw(st.integers(0, 999)),
                "turning": draw(st.sampled_from(["clockwise", "counter-clockwise"])),
                "smallest_angle": smallest,
                "largest_angle": smallest + draw(st.integers(0, 30)),
            },
            rounds=rounds(*draw(cuts(1, 3))),
        ),
        draw(numbers_of_a_maker()),
    )


@st.composite
def curved_builds(draw: st.DrawFn) -> Laid:
    """Log cabins squared up to an oval or with rounded corners."""
    shape = draw(st.sampled_from([{"shape": "oval"}, {"corner_radius": "2"}]))
    return Laid(
        project(
            squared_up=trim(draw(quarters(6, 12)), draw(quarters(8, 14)), **shape),
            center=square(draw(quarters(2, 5))),
            rounds=rounds(*draw(cuts(1, 3))),
        ),
        draw(numbers_of_a_maker()),
    )


def side_builds() -> st.SearchStrategy[Laid]:
    """Ways whose strips go on sides of the first piece."""
    return st.one_of(regular_builds(), convex_builds(), string_builds(), braid_builds(), corner_square_builds())


def line_builds() -> st.SearchStrategy[Laid]:
    """Ways whose strips follow lines of their own."""
    return st.one_of(folded_corner_builds(), foundation_builds(), wonky_builds())


def any_builds() -> st.SearchStrategy[Laid]:
    """A project of any way of building."""
    return st.one_of(side_builds(), line_builds(), curved_builds())


def has_a_mirror(laid: Laid) -> bool:
    """True when the order of the strips can be said left for right in the words of a project."""
    building, squared_up = laid.project.building, laid.project.squared_up
    match building.way:
        case Way.COURTHOUSE | Way.CORNER_SQUARES:
            return "left" in building.first_pair
        case Way.POINTS:
            return squared_up.length_runs is Runs.UP and building.pair_first is not PairFirst.ALTERNATE
        case Way.ROWS:
            return building.rows_run is RowsRun.SLANTED and building.slant not in {90, 135}
        case Way.WONKY:
            return False
        case _:
            return True


def mirrored_ways() -> st.SearchStrategy[Laid]:
    """Projects that have a mirror."""
    return st.one_of(side_builds(), folded_corner_builds(), foundation_builds()).filter(has_a_mirror)
