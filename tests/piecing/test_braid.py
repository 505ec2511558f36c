"""Braids: what two sides that grow by turns must give, computed by hand, and what cannot be plaited."""

from __future__ import annotations

from math import cos, hypot, pi, radians, sqrt, tan
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon as Area

from stitchflip.errors import BuildError
from stitchflip.piecing import build_project
from stitchflip.piecing.model import Build, EndClass, Polygon
from tests.strategies import cut_widths, quarters
from tests.twins.compare import joined, same_area
from tests.twins.painter import common, together
from tests.twins.table import house, project, rounds, trim

ROOT = sqrt(2)
A = 0.25
REACH = 0.25
UNTIL = {"way": "braid", "until_covered": True}


def half_square(cut: float, **more: Any) -> dict[str, Any]:
    """A center cut from a square once from corner to corner."""
    return {"fabric": "Linen", "shape": "half square", "cut": str(cut), **more}


def plaited(cut: float = 6, wide: float = 14, long: float = 40, **parts: Any) -> Build:
    """A braid of strips cut 2 1/2 on a half square, 18 rounds of them unless said."""
    tables = {
        "squared_up": trim(wide, long),
        "center": half_square(cut),
        "building": {"way": "braid"},
        "rounds": rounds(*[2.5] * 18),
        **parts,
    }
    return build_project(project(**tables), house())


def test_the_half_square_lies_on_the_lower_edge_of_the_cover_outline() -> None:
    """Its long side is 6 sqrt 2 in, its height half of that, its middle on the center line.

    Trim 40 long with a reach of 1/4: the edge lies 20 1/4 below the mark.
    """
    half = 6 / ROOT

    first = plaited().pieces[0].opened
    assert [(-half, -20.25), (half, -20.25), (0.0, -20.25 + half)] == [pytest.approx(place) for place in first]


def test_both_sides_grow_by_what_a_strip_shows() -> None:
    """The raw edge of the triangle's legs lies -20 1/4 / sqrt 2 + 3 from the mark; k strips move it out by 2 k."""
    build = plaited()
    start = -20.25 / ROOT + 3

    for side in ("upper right", "upper left"):
        on_side = [strip for strip in build.strips if strip.side == side]
        assert [start + 2 * k for k in range(1, 19)] == pytest.approx([strip.raw_edge_at for strip in on_side])
        assert [start + 2 * k - A for k in range(18)] == pytest.approx([strip.seam_at for strip in on_side])


def test_the_first_pair_is_as_long_as_the_leg_it_meets() -> None:
    """Down to the lower edge the first strip's outer edge is a leg of 6 + 2 = 8; the other has that strip's 2 more."""
    first, second, *_ = plaited().strips

    assert (8.0, 10.0) == pytest.approx((first.needed_length, second.needed_length))


def test_a_strip_in_the_middle_runs_from_the_edge_of_the_cover_to_the_other_side() -> None:
    """The first of a pair must be 10.503 long, the second 2 more.

    At 45 degrees it takes sqrt 2 times the half width 7 1/4 to reach the center line, and the seam allowance more
    to the other side's raw edge.
    """
    build = plaited()
    long = ROOT * 7.25 + A

    needed = [(strip.needed_length, strip.cut_length) for strip in build.strips[6:26]]
    assert [(long, 10.75), (long + 2, 12.75)] * 10 == [pytest.approx(one) for one in needed]


def test_lower_ends_are_free_and_upper_ends_meet_the_other_side() -> None:
    """One free end each; in the middle of the braid the upper end is crossed, the lower one caught in the binding."""
    for strip in plaited().strips[6:26]:
        assert strip.seam is not None
        upper, lower = strip.seam.end, strip.seam.start
        if strip.side == "upper left":
            upper, lower = lower, upper
        assert (1, EndClass.CROSSED, EndClass.CAUGHT) == (strip.free_ends, upper.kind, lower.kind)
        assert (strip.side == "upper right") == strip.is_start_free


def test_strips_that_lie_above_the_piece_are_told() -> None:
    """On either side 16 strips are needed, and the other two cover nothing.

    Strip k is needed while its seam, -20 1/4 / sqrt 2 + 3 + 2 (k - 1) - 1/4, stays below the upper corner of the
    cover outline, (7 1/4 + 20 1/4) / sqrt 2 from the mark.
    """
    corner = (7.25 + 20.25) / ROOT
    seams = [-20.25 / ROOT + 3 + 2 * k - A for k in range(18)]
    assert 16 == sum(seam < corner for seam in seams)

    notes = [note.step for note in plaited().notes if note.code == "strip.unnecessary"]
    assert [33, 34, 35, 36] == notes


def test_until_covered_stops_when_the_corners_are_reached() -> None:
    """The same 16 strips on a side, and nothing is bare, unnecessary or loose."""
    build = plaited(building=UNTIL, rounds=rounds(2.5))

    assert 32 == len(build.strips)
    assert ((), ()) == (build.bare, build.notes)
    assert not any(EndClass.LOOSE in (one.seam.start.kind, one.seam.end.kind) for one in build.strips if one.seam)


def test_a_braid_that_runs_out_is_bare_at_its_upper_corners() -> None:
    """After ten rounds each side says its name, its last step and how far it stays from its corner."""
    build = plaited(rounds=rounds(*[2.5] * 10))
    edge = -20.25 / ROOT + 3 + 20
    corner = (7.25 + 20.25) / ROOT

    assert {"upper right", "upper left"} == {spot.side for spot in build.bare}
    assert {"stop"} == {spot.grade for spot in build.bare}
    assert {19, 20} == {spot.step for spot in build.bare}
    assert pytest.approx(corner - edge) == max(spot.by for spot in build.bare)


@pytest.mark.parametrize("slant", [20.0, 30.0, 60.0, 75.0])
def test_another_slant_keeps_the_height_and_turns_the_sides(slant: float) -> None:
    """A triangle 3 sqrt 2 high whose legs rise at the slant: its half base is the height over the tangent."""
    build = plaited(building={**UNTIL, "slant": slant}, rounds=rounds(2.5))
    high = 6 / ROOT
    half = high / tan(radians(slant))

    assert [(-half, -20.25), (half, -20.25), (0, high - 20.25)] == [
        pytest.approx(place, abs=1e-9) for place in build.pieces[0].opened
    ]
    assert {(round(abs(one.normal[0]), 9), round(one.normal[1], 9)) for one in build.strips} == {
        (round(cos(pi / 2 - radians(slant)), 9), round(cos(radians(slant)), 9))
    }
    assert ["upper right", "upper left"] == [one.side for one in build.strips[:2]]
    assert () == build.bare


def mirrored(polygon: Polygon) -> Area:
    """A polygon as the mirror shows it."""
    return Area([(-x, y) for x, y in polygon])


@example(cut=6.75, wide=8.0, long=8.0, cuts=[3.5, 3.5, 1.0])
@settings(max_examples=25, deadline=None)
@given(quarters(3, 9), quarters(8, 16), quarters(8, 24), st.lists(cut_widths(), min_size=1, max_size=4))
def test_starting_on_the_other_side_mirrors_the_braid(cut: float, wide: float, long: float, cuts: list[float]) -> None:
    """Every patch and every length has its mirror image in the braid that begins at the left."""
    one, other = (
        plaited(cut, wide, long, building={"way": "braid", "start": start}, rounds=rounds(*cuts))
        for start in ("upper right", "upper left")
    )

    assert len(one.strips) == len(other.strips)
    for right, left in zip(one.pieces, other.pieces, strict=True):
        assert same_area(joined(right.visible), together([mirrored(patch) for patch in left.visible]))
        assert pytest.approx(right.needed_length) == left.needed_length
        assert pytest.approx(right.inset_start) == left.inset_end


@settings(max_examples=25, deadline=None)
@given(
    quarters(2, 9),
    quarters(5, 16),
    quarters(6, 24),
    st.lists(cut_widths(), min_size=1, max_size=4),
    st.sampled_from([15.0, 30.0, 45.0, 60.0, 70.0]),
)
def test_a_braid_until_covered_is_covered_exactly(
    cut: float, wide: float, long: float, cuts: list[float], slant: float
) -> None:
    """Nothing is bare, patches fill the trim without overlap, fabric fills the outline, no end is loose."""
    build = plaited(cut, wide, long, building={**UNTIL, "slant": slant}, rounds=rounds(*cuts))
    cover = Area(build.cover)

    patches = [joined(piece.visible) for piece in build.pieces]
    assert () == build.bare
    assert pytest.approx(wide * long, rel=1e-6) == sum(patch.area for patch in patches)
    assert same_area(together(patches), Area(build.trim))
    assert same_area(common(together([Area(one.kept) for one in build.pieces if one.kept]), cover), cover)
    assert all(one.needed_length <= one.full_length + 1e-6 for one in build.strips)
    assert not any(EndClass.LOOSE in (one.seam.start.kind, one.seam.end.kind) for one in build.strips if one.seam)


def test_a_half_square_moved_up_leaves_a_place_bare_and_is_refused() -> None:
    """One inch up, the inch below its long side is out of reach of every strip.

    Between the lines of the legs it is 8.485 + 2 x 1 long: 10 1/2 on a ruler.
    """
    with pytest.raises(BuildError, match=r"10½.×.1.in .* up to 1.in beyond") as caught:
        plaited(center=half_square(6, off_center=[0, 1]))

    assert "build.bare-below" == caught.value.code
    assert pytest.approx(10.485, abs=1e-3) == 6 * ROOT + 2


def test_moved_down_or_aside_it_still_plaits() -> None:
    """Two inches down and one to the right the point lies there, and the piece is covered all the same."""
    build = plaited(center=half_square(6, off_center=[1, -2]), building=UNTIL, rounds=rounds(2.5))

    assert pytest.approx((1.0, -22.25 + 6 / ROOT)) == max(build.pieces[0].opened, key=lambda place: place[1])
    assert () == build.bare


def test_draw_up_moves_the_edge_but_not_the_half_square() -> None:
    """At 2 % along and 1 % across the cover lies 20 / 0.98 + 1/4 below the mark; the piece as cut keeps its size."""
    tables = {"squared_up": trim(14, 40), "center": half_square(6), "building": UNTIL, "rounds": rounds(2.5)}
    build = build_project(project(**tables), house(draw_up_x=0.01, draw_up_y=0.02))
    first = build.pieces[0].opened

    assert pytest.approx(-20 / 0.98 - 0.25) == min(y for _, y in first)
    assert pytest.approx(6.0) == hypot(first[1][0] - first[2][0], first[1][1] - first[2][1])
    assert () == build.bare


@pytest.mark.parametrize("slant", [0, 5, 85, 90, 135, -45])
def test_level_and_upright_strips_make_no_braid(slant: float) -> None:
    """Between 10 and 80 degrees it can be sewn; the error says so and where."""
    with pytest.raises(BuildError, match=r"10 to 80 degrees") as caught:
        plaited(building={"way": "braid", "slant": slant})

    assert ("build.slant", "building.slant") == (caught.value.code, caught.value.where)


@pytest.mark.parametrize(
    "center",
    [
        {"fabric": "Linen", "cut": "6"},
        {"fabric": "Linen", "sides": 6, "cut": "6"},
        half_square(6, turned=90),
    ],
)
def test_a_center_without_two_upper_sides_is_refused(center: dict[str, Any]) -> None:
    """A straight square, a hexagon and a half square on its side have no two sides facing up at 45 degrees."""
    with pytest.raises(BuildError, match="no two upper sides") as caught:
        plaited(center=center)

    assert "build.no-upper-sides" == caught.value.code


def test_a_square_on_point_does_when_its_side_corners_lie_on_the_edge() -> None:
    """Its middle on the lower edge, it is the half square and as much again that is trimmed off: the same strips."""
    on_point = {"fabric": "Linen", "cut": "6", "turned": 45, "off_center": [0, -20.25]}
    build = plaited(center=on_point)

    assert [one.raw_edge_at for one in plaited().strips] == pytest.approx([one.raw_edge_at for one in build.strips])
    assert [one.needed_length for one in plaited().strips] == pytest.approx([one.needed_length for one in build.strips])


def test_a_half_done_braid_goes_on_from_what_was_measured() -> None:
    """Five sides as measured, the upper two not quite at 45 degrees: the strips follow them, and all is covered."""
    corners = [[-7.5, -20.5], [7.5, -20.5], [7.5, -13.1], [0.1, -6.0], [-7.5, -13.2]]
    center = {"fabric": "Linen", "corners": corners, "sewn_already": True}
    build = plaited(center=center, building=UNTIL, rounds=rounds(2.5))
    dx, dy = -7.4, 7.1
    along = hypot(dx, dy)

    assert pytest.approx((dy / along, -dx / along)) == build.strips[0].normal
    assert () == build.bare


def test_a_braid_carries_on_from_where_it_was_measured() -> None:
    """Strip 13, the seventh on the right, is found 1/8 in short of its -20 1/4 / sqrt 2 + 3 + 14: the next follow."""
    edge = -20.25 / ROOT + 3 + 14 - 0.125
    reading = {"after": 13, "side": "upper right", "edge": f"{edge:.6f}", "by": "marks"}
    build = plaited(readings=[reading], building=UNTIL, rounds=rounds(2.5))

    assert pytest.approx(edge - A, abs=1e-4) == build.strips[14].seam_at
    assert pytest.approx(edge + 0.125 - A, abs=1e-4) == build.strips[15].seam_at
    assert () == build.bare


def test_a_first_strip_of_rows_can_be_measured() -> None:
    """Rows grow on two sides only, before and after the first strip was measured 1/8 in narrower at the top."""
    reading = {"after": 0, "side": "top", "edge": "1 3/8", "by": "marks"}
    parts = {"squared_up": trim(8, 12), "building": {"way": "rows of strips"}, "rounds": rounds(3, 2, 2)}
    build = build_project(project(readings=[reading], **parts), house())

    assert [1.375 + 1.5, 1.5 + 1.5] == [one.raw_edge_at for one in build.strips[:2]]
    assert [2, 2, 2, 2] == [one.free_ends for one in build.strips]
