"""Wonky strips: whatever chance draws, the limits hold; measured here from the build's own seam lines."""

from __future__ import annotations

from itertools import pairwise
from math import acos, degrees, radians, sin, tan
from random import Random
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely import maximum_inscribed_circle
from shapely.geometry import Polygon as Area

from stitchflip.errors import BuildError
from stitchflip.piecing import build_project
from stitchflip.piecing.model import Build, EndClass, Point, SewnPiece
from tests.strategies import cut_widths, quarters
from tests.twins.compare import joined, same_area
from tests.twins.painter import common, extent, together
from tests.twins.script import Polygon
from tests.twins.table import house, project, rounds, square, trim

A = 0.25
TURN = 1e-6
"""Angles are compared to this, degrees."""
FACING = {"top": (0.0, 1.0), "right": (1.0, 0.0), "bottom": (0.0, -1.0), "left": (-1.0, 0.0)}


def leaning(least_shown: float = 0.75, **parts: Any) -> Build:
    """Wonky strips round a 5 x 7 center in a trim of 14 x 18 unless said; no draw-up, no fold loss."""
    building = {"way": "wonky strips", "seed": 7, **parts.pop("building", {})}
    tables = {
        "squared_up": trim(14, 18),
        "center": {"fabric": "Linen", "cut_wide": "5", "cut_long": "7"},
        "building": building,
        "rounds": rounds(2.75, 3, 3),
        **parts,
    }
    return build_project(project(**tables), house(least_shown=least_shown))


def between(one: Point, other: Point) -> float:
    """Angle between two directions, degrees."""
    return degrees(acos(max(-1.0, min(1.0, one[0] * other[0] + one[1] * other[1]))))


def dot(one: Point, other: Point) -> float:
    """Scalar product."""
    return one[0] * other[0] + one[1] * other[1]


def on_each_side(build: Build) -> dict[str, list[SewnPiece]]:
    """The strips of each side, inside to outside."""
    return {name: [one for one in build.strips if one.side == name] for name in FACING}


def slants(build: Build) -> list[tuple[SewnPiece, float]]:
    """Each strip with the angle between its seam and the edge it goes on: the last strip's there, or the center's."""
    found = []
    for name, strips in on_each_side(build).items():
        before = [FACING[name], *(one.normal for one in strips)]
        found += [(one, between(edge, one.normal)) for edge, one in zip(before, strips, strict=False)]
    return sorted(found, key=lambda pair: pair[0].step)


def straighter(build: Build) -> set[int]:
    """Steps that were told to lie at less than the smallest angle."""
    return {note.step for note in build.notes if note.code == "wonky.straighter"}


# --- one build, by hand ------------------------------------------------------------------------------------


def test_the_first_strip_pivots_on_a_corner_of_the_center() -> None:
    """Seed 7 draws the angle and the turn; the cut edge runs through the corner that stays, the seam 1/4 inside it.

    The generator is Python's own, and so are its numbers: first the share of the way from 4 to 14 degrees, then the
    turn, counter-clockwise below one half. A square 5 with strips of 2 1/2 has room for any of them: at 14 degrees
    the wedge is 5 sin 14 = 1.21 deep, the strip covers 2, the center can spare (5 - 1/2 - 3/4) / 2 = 1.875.
    """
    for seed in range(12):
        chance = Random(seed)
        angle = radians(4 + 10 * chance.random())
        turn = 1 if chance.random() < 0.5 else -1
        first = leaning(center=square(5), rounds=rounds(2.5), building={"seed": seed}).strips[0]
        corner = (2.5 * turn, 2.5)  # turned counter-clockwise it is cut off at the left end, so the right one stays

        assert pytest.approx(-turn * sin(angle)) == first.normal[0]
        assert pytest.approx(dot(first.normal, corner) - A) == first.seam_at
        assert pytest.approx(first.seam_at + 2.5 - A) == first.raw_edge_at


def test_a_sliver_is_not_risked_for_an_angle() -> None:
    """A center 1 1/2 wide shows 1: with 3/4 to be kept, 1/8 can be cut off on either of two opposite sides.

    Its long sides are 12: a wedge of 1/8 there leans tan x = 1/8 / 12, so 0.6 degrees; the strips on the short sides
    are sewn first in their round and may lean as drawn, which makes the long side a little shorter or longer.
    """
    center = {"fabric": "Linen", "cut_wide": "1 1/2", "cut_long": "12"}
    build = leaning(center=center, rounds=rounds(2.5), squared_up=trim(8, 18), building={"start": "right"})
    right = build.strips[0]

    assert 1 in straighter(build)
    assert pytest.approx(tan(radians(between(right.normal, (1, 0)))), abs=2e-4) == 0.125 / (12 - A / 12)
    assert right.step == 1


def test_without_room_a_strip_goes_on_level() -> None:
    """The center shows 3/4 and keeps 3/4: nothing can be cut off, so the strips beside it lie level with its sides."""
    center = {"fabric": "Linen", "cut_wide": "1 1/4", "cut_long": "6"}
    build = leaning(center=center, rounds=rounds(2.5), building={"start": "right"})
    right, left = build.strips[0], build.strips[2]

    assert ((1.0, 0.0), (-1.0, 0.0)) == (right.normal, left.normal)
    assert (0.375, 0.375) == pytest.approx((right.seam_at, left.seam_at))
    assert {1, 3} <= straighter(build)


def test_angles_of_nothing_make_a_log_cabin() -> None:
    """From 0 to 0 degrees every strip is level with its edge: the log cabin, strip for strip."""
    flat = leaning(building={"smallest_angle": 0, "largest_angle": 0})
    cabin = leaning(building={"way": "log cabin"})

    assert [(one.side, one.full_length) for one in cabin.strips] == [(one.side, one.full_length) for one in flat.strips]
    assert set() == straighter(flat)


def test_the_same_seed_is_the_same_piece_and_another_is_not() -> None:
    """Twice the same, to the last digit; another seed leans otherwise."""
    assert leaning() == leaning()
    assert [one.normal for one in leaning().strips] != [one.normal for one in leaning(building={"seed": 8}).strips]


@pytest.mark.parametrize(
    ("building", "expected"),
    [
        ({}, ["top", "right", "bottom", "left"]),
        ({"start": "left", "turning": "counter-clockwise"}, ["left", "bottom", "right", "top"]),
    ],
)
def test_sides_are_called_as_the_center_had_them(building: dict[str, str], expected: list[str]) -> None:
    """Round after round, whatever way they lean by now."""
    assert expected * 3 == [one.side for one in leaning(building=building).strips]


def test_a_side_that_was_measured_carries_on_from_there() -> None:
    """Strip 1 on top was found 1/4 further out on the right: the next top strip leans against that edge."""
    plain = leaning(building={"smallest_angle": 0, "largest_angle": 0})
    top = plain.strips[0]
    places = [(-3, top.raw_edge_at), (3, top.raw_edge_at + 0.25)]  # along the sewing, which on top runs to the left
    readings = [{"after": 1, "side": "top", "edge": str(edge), "along": along, "by": "marks"} for along, edge in places]
    build = leaning(building={"smallest_angle": 0, "largest_angle": 0}, readings=readings)

    assert pytest.approx(degrees(0.25 / 6), abs=0.01) == between(build.strips[4].normal, (0, 1))
    assert () == tuple(note for note in build.notes if note.code == "reading.impossible")


def test_a_reading_of_a_slanted_side_is_used() -> None:
    """After strip 5, the second on top, its edge is measured 1/8 nearer: the seam of strip 9 moves in with it.

    Not by exactly 1/8, because the end it pivots on slides along a neighbor that leans.
    """
    edge = leaning().strips[4].raw_edge_at - 0.125
    build = leaning(readings=[{"after": 5, "side": "top", "edge": f"{edge:.4f}", "by": "marks"}])
    before, after = leaning().strips[8], build.strips[8]

    assert pytest.approx(before.seam_at - 0.125, abs=0.01) == after.seam_at
    assert before.normal == pytest.approx(after.normal)


def test_bare_places_are_named_by_their_side() -> None:
    """One round on a small center leaves batting on all four sides, each called by its name."""
    build = leaning(rounds=rounds(2.5))

    assert set(FACING) == {spot.side for spot in build.bare}
    assert {1, 2, 3, 4} == {spot.step for spot in build.bare}


def test_a_smallest_angle_above_the_largest_is_refused() -> None:
    """It says both."""
    with pytest.raises(BuildError, match="smallest angle is 9 degrees and the largest only 6") as caught:
        leaning(building={"smallest_angle": 9, "largest_angle": 6})

    assert ("build.angles", "building.smallest_angle") == (caught.value.code, caught.value.where)


# --- whatever chance draws ----------------------------------------------------------------------------------


@st.composite
def gales(draw: st.DrawFn) -> tuple[Build, float, float, float]:
    """A wonky build until covered, with its smallest and largest angle and what must show."""
    smallest = draw(st.sampled_from([0.0, 2.0, 4.0, 8.0]))
    largest = smallest + draw(st.sampled_from([0.0, 3.0, 10.0, 25.0]))
    shown = draw(st.sampled_from([0.25, 0.5, 0.75, 1.0]))
    build = leaning(
        shown,
        center={"fabric": "Linen", "cut_wide": str(draw(quarters(2, 6))), "cut_long": str(draw(quarters(2, 9)))},
        squared_up=trim(draw(quarters(6, 16)), draw(quarters(6, 18))),
        rounds=rounds(*draw(st.lists(cut_widths().filter(lambda width: width >= 1.5), min_size=1, max_size=3))),
        building={
            "seed": draw(st.integers(0, 10**9)),
            "smallest_angle": smallest,
            "largest_angle": largest,
            "start": draw(st.sampled_from(list(FACING))),
            "turning": draw(st.sampled_from(["clockwise", "counter-clockwise"])),
            "until_covered": True,
        },
    )
    return build, smallest, largest, shown


often = settings(max_examples=40, deadline=None)


@often
@given(gales())
def test_every_slant_keeps_its_limits(gale: tuple[Build, float, float, float]) -> None:
    """Between the angles against its edge, never further than the largest from where the side faced; or told."""
    build, smallest, largest, _ = gale
    told = straighter(build)

    for strip, slant in slants(build):
        assert slant <= largest + TURN
        assert slant >= smallest - TURN or strip.step in told
        assert slant < smallest or strip.step not in told
        assert between(strip.normal, FACING[strip.side]) <= largest + TURN


@often
@given(gales())
def test_what_lies_below_shows_enough_at_its_narrow_end(gale: tuple[Build, float, float, float]) -> None:
    """Between two seams of a side a strip shows its least width everywhere, unless it is too narrow from the start."""
    build, _, _, shown = gale

    for strips in on_each_side(build).values():
        for below, above in pairwise(strips):
            least = min(shown, below.cut_width - 2 * A)
            for patch in below.visible:
                along = [place for place in patch if abs(dot(above.normal, place) - above.seam_at) < 1e-5]
                assert all(dot(below.normal, place) - below.seam_at >= least - 1e-5 for place in along)


@often
@given(gales())
def test_the_center_keeps_a_place_as_wide(gale: tuple[Build, float, float, float]) -> None:
    """Chords from all sides leave a circle of the least width, or of what straight seams would leave."""
    build, _, _, shown = gale
    first = Area(build.pieces[0].opened)
    assume(Area(build.trim).contains(first))
    left, low, right, high = first.bounds

    (visible,) = build.pieces[0].visible
    least = min(shown, right - left - 2 * A, high - low - 2 * A)
    assert 2 * maximum_inscribed_circle(Area(visible), tolerance=1e-4).length >= least - 1e-3


@often
@given(gales())
def test_nothing_is_bare_scant_or_loose(gale: tuple[Build, float, float, float]) -> None:
    """Built until covered it is covered; every allowance is whole; what is stitched is never left bare."""
    build, *_ = gale
    codes = {note.code for note in build.notes}

    assert () == build.bare
    assert codes <= {"wonky.straighter", "chord.hides-seam", "side.closes", "strip.unnecessary"}
    assert same_area(together([joined(piece.visible) for piece in build.pieces]), Area(build.trim))


@often
@given(gales())
def test_the_allowance_is_whole_along_the_seam(gale: tuple[Build, float, float, float]) -> None:
    """All that lay there before, cut 1/4 beyond the seam line, is as wide there as the seam is long."""
    build, *_ = gale
    fabric = Area(build.pieces[0].opened)

    for strip in build.strips:
        (nx, ny), at = strip.normal, strip.seam_at
        seam = [place for place in strip.opened if abs(dot(strip.normal, place) - at) < 1e-6]
        for x, y in seam:
            inward = Area([(x, y), (x - 1e-3, y), (x, y - 1e-3)])
            assert fabric.buffer(1e-5).intersects(inward)
        low, high = (min(dot((-ny, nx), place) for place in seam), max(dot((-ny, nx), place) for place in seam))
        behind: Polygon = tuple(
            (nx * v - ny * u, ny * v + nx * u) for u, v in ((low, at), (high, at), (high, at + A), (low, at + A))
        )
        missing = Area(behind).difference(fabric.buffer(1e-6)).area
        slack = A * A * 2  # the ends of the allowance run along the neighbors' edges, not square to the seam
        assert missing <= slack
        assert extent(fabric, strip.normal)[1] >= at + A - 1e-6
        kept = common(fabric, Area(_inside(strip)))
        fabric = together([kept, Area(strip.opened)])


def _inside(strip: SewnPiece) -> Polygon:
    """Everything inside the raw edge that a strip's allowance is cut to."""
    (nx, ny), edge, far = strip.normal, strip.seam_at + A, 200.0
    corners = ((far, edge), (-far, edge), (-far, -far), (far, -far))
    return tuple((nx * v - ny * u, ny * v + nx * u) for u, v in corners)


@often
@given(gales())
def test_seam_ends_are_held(gale: tuple[Build, float, float, float]) -> None:
    """A covered piece has no loose end inside the binding's seam line."""
    build, *_ = gale
    assume(not any(note.code == "side.closes" for note in build.notes))

    loose = [
        one.step
        for one in build.strips
        if one.seam is not None and EndClass.LOOSE in (one.seam.start.kind, one.seam.end.kind)
    ]
    assert [] == loose


@settings(max_examples=25, deadline=None)
@given(st.integers(0, 10**6), st.integers(3, 8), quarters(4, 7), st.sampled_from([0.0, 15.0, 45.0]))
def test_any_center_that_does_not_bend_inward_will_do(seed: int, sides: int, cut: float, turned: float) -> None:
    """Triangles to octagons until covered: nothing bare, the largest angle kept from where each side faced."""
    center = {"fabric": "Linen", "sides": sides, "cut": str(cut), "turned": turned}
    build = leaning(
        center=center, squared_up=trim(14, 14), rounds=rounds(2.5), building={"seed": seed, "until_covered": True}
    )
    first = build.pieces[0].opened
    facings = [
        ((y1 - y0) / length, (x0 - x1) / length)
        for (x0, y0), (x1, y1) in zip(first, first[1:] + first[:1], strict=True)
        for length in [((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5]
    ]

    assert () == build.bare
    assert not any(note.code in {"chord.scant", "chord.cuts-seam"} for note in build.notes)
    for strip in build.strips:
        assert min(between(strip.normal, facing) for facing in facings) <= 14 + TURN
