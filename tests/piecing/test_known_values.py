"""Known values of the kernel: each expected number is worked out by hand beside its test.

Settings unless a test says otherwise: effective seam a = 1/4, reach 1/4, nothing drawn in, no fold loss.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt
from typing import Any

import pytest

from stitchflip.piecing import build_project
from stitchflip.piecing.model import Build, EndClass, SewnPiece
from stitchflip.project.model import Project
from tests.twins.script import area_of
from tests.twins.table import house, project, rounds, square, trim

A = 0.25
ROOT = sqrt(2)


def near(value: float | Sequence[float], within: float = 1e-6) -> Any:
    """Numbers to compare with; `within` 0.0005 where a table prints three places."""
    return pytest.approx(value, abs=within)


def built(**parts: Any) -> Build:
    """The build of a project at the settings above."""
    return build_project(project(**parts), house())


def full_lengths(build: Build) -> list[float]:
    """Full lengths of the strips, in the order sewn."""
    return [piece.full_length for piece in build.strips]


def needed_lengths(build: Build) -> list[float]:
    """Shortest lengths that reach, in the order sewn."""
    return [piece.needed_length for piece in build.strips]


def log_cabin(center: float, *cuts: float | tuple[float, ...], size: float = 40.0) -> Build:
    """A log cabin round a square, in a trim so large that every strip is needed whole."""
    return built(squared_up=trim(size, size), center=square(center), rounds=rounds(*cuts))


# --- one flip ----------------------------------------------------------------------------------------------


def test_a_strip_of_two_and_a_half_opens_to_two_and_a_quarter() -> None:
    """W - a: one allowance lies under the seam, the other waits for the next strip."""
    strip = log_cabin(5, 2.5).strips[0]

    assert near(2.5 - A) == strip.raw_edge_at - strip.seam_at


def test_a_flip_moves_its_side_by_the_width_less_two_seams() -> None:
    """F = w - 2a = 2: the top edge goes from 2 1/2 to 4 1/2."""
    assert near(2.5 + 2) == log_cabin(5, 2.5).strips[0].raw_edge_at


def test_a_full_round_makes_the_piece_four_inches_larger() -> None:
    """2f each way: 5 becomes 9."""
    outline = log_cabin(5, 2.5).outline

    assert near(81) == area_of(outline)


# --- log cabin and courthouse steps -------------------------------------------------------------------------


@pytest.mark.parametrize("center", [1.5, 3, 5])
@pytest.mark.parametrize("width", [1.5, 2, 2.5])
def test_log_cabin_lengths_follow_the_rule(center: float, width: float) -> None:
    """c, c + f, c + f, c + 2f, and each later round 2f more."""
    f = width - 2 * A
    first = [center, center + f, center + f, center + 2 * f]
    expected = [length + 2 * f * turn for turn in range(3) for length in first]

    assert near(expected) == full_lengths(log_cabin(center, width, width, width))


def test_log_cabin_with_unequal_strips() -> None:
    """C 5, f 1, 1 1/2, 2, 1: 5, 5 + 1, 5 + 1 1/2, 5 + 1 + 2."""
    assert near([5, 6, 6.5, 8]) == full_lengths(log_cabin(5, (1.5, 2, 2.5, 1.5)))


def test_log_cabin_round_a_rectangle_keeps_width_and_length_apart() -> None:
    """c_x 4, c_y 6, f 1, 1 1/2, 2, 1: 4, 6 + 1, 4 + 1 1/2, 6 + 1 + 2."""
    build = built(
        squared_up=trim(40, 40),
        center={"fabric": "Linen", "shape": "rectangle", "cut_wide": "4", "cut_long": "6"},
        rounds=rounds((1.5, 2, 2.5, 1.5)),
    )

    assert near([4, 7, 5.5, 9]) == full_lengths(build)


def test_courthouse_pairs_follow_the_rule() -> None:
    """Round r: c + 2f(r - 1) twice, then c' + 2fr twice; c 4, c' 6, f 2."""
    build = built(
        squared_up=trim(40, 40),
        center={"fabric": "Linen", "shape": "rectangle", "cut_wide": "4", "cut_long": "6"},
        building={"way": "courthouse steps"},
        rounds=rounds(2.5, 2.5, 2.5),
    )
    expected = [length for r in (1, 2, 3) for length in (4 + 4 * (r - 1), 4 + 4 * (r - 1), 6 + 4 * r, 6 + 4 * r)]

    assert near(expected) == full_lengths(build)


# --- rows ---------------------------------------------------------------------------------------------------


def row_of(count: int, width: float) -> Build:
    """A run of strips from one end, wide enough apart that the trim ends none of them."""
    return built(
        squared_up=trim(12, 60),
        building={"way": "rows of strips", "rows_from": "one end"},
        rounds=rounds(*[width] * count),
    )


@pytest.mark.parametrize(("count", "width", "covers"), [(9, 2.5, 18.5), (2, 2.5, 4.5), (16, 2.375, 30.5)])
def test_a_run_covers_its_widths_less_two_seams_for_each_joint(count: int, width: float, covers: float) -> None:
    """N w - 2a(n - 1): nine strips of 2 1/2 cover 18 1/2."""
    build = row_of(count, width)
    low = build.pieces[0].seam_at
    high = build.pieces[-1].raw_edge_at

    assert covers == count * width - 2 * A * (count - 1)
    assert near(covers) == high - low


def test_a_slanted_run_reaches_across_the_whole_height_and_its_own_width() -> None:
    """45 degrees, 18 1/2 high: 18.5 sqrt 2 + (w - a) = 28.413."""
    build = built(
        squared_up=trim(60, 18),
        building={"way": "rows of strips", "rows_run": "slanted", "slant": 45},
        rounds=rounds(2.5, 2.5),
    )
    expected = 18.5 * ROOT + 2.25

    assert near(28.413, 0.0005) == expected
    assert near([expected, expected]) == needed_lengths(build)


def test_a_strip_with_free_ends_is_needed_in_full() -> None:
    """In a run the full length is what reaches past the trim line: 12 + 2 x 1/4."""
    strips = row_of(4, 2.5).strips

    assert near([12.5] * 3) == full_lengths(row_of(4, 2.5))
    assert [(piece.full_length, 2) for piece in strips] == [(piece.needed_length, piece.free_ends) for piece in strips]


# --- polygons -----------------------------------------------------------------------------------------------


def around(sides: int, across: float, width: float, trim_across: float) -> Build:
    """One round on a regular polygon."""
    return built(
        squared_up={"shape": "polygon", "sides": sides, "across_flats": str(trim_across)},
        center={"fabric": "Linen", "shape": "polygon", "sides": sides, "cut": str(across)},
        building={"way": "round after round"},
        rounds=rounds(width),
    )


def slant(own: float, neighbor: float, cos: float, sin: float) -> float:
    """From the foot of the center mark to a neighbor's raw edge, along the line `own` from the mark."""
    return (neighbor - own * cos) / sin


def test_hexagon_round() -> None:
    """R 2 1/2, w 2: 3.175, 4.907 four times, 6.640.

    Exterior angle 60 degrees, seam line at 2 1/4; a neighbor stands at 2 1/2 before its strip and at 4 after it.
    """
    old, new = (slant(2.25, r, 0.5, sqrt(3) / 2) for r in (2.5, 4))
    expected = [old + old, *[old + new] * 4, new + new]

    assert near([3.175, 4.907, 4.907, 4.907, 4.907, 6.640], 0.0005) == expected
    assert near(expected) == full_lengths(around(6, 5, 2, 30))


def test_hexagon_seams_cross_within_three_tenths_of_their_ends() -> None:
    """A / sin 60 = 0.289 from the crossing to the end."""
    build = around(6, 5, 2, 7)
    first, second = build.strips[0].seam, build.strips[1].seam
    assert first is not None
    assert second is not None
    crossed = [end for end in (first.start, first.end) if end.crossed_by == 2]
    nx, ny = second.normal
    beyond = nx * crossed[0].at[0] + ny * crossed[0].at[1] - second.at

    assert near(0.289, 0.0005) == A / (sqrt(3) / 2)
    assert near(A) == beyond  # a square to the crossing seam, 0.289 along the slanting one


def test_triangle_round() -> None:
    """R 2, w 2: 8.660, 10.392, 12.124, longest at the outer edge (corners narrower than 90 degrees)."""
    outer = 2 - A + 2 - A
    old, new = (slant(outer, r, -0.5, sqrt(3) / 2) for r in (2, 3.5))
    expected = [old + old, old + new, new + new]

    assert near([8.660, 10.392, 12.124], 0.0005) == expected
    assert near(expected) == full_lengths(around(3, 4, 2, 30))


def test_triangle_corner_goes_from_four_to_seven() -> None:
    """A corner stands at twice the distance of the sides: 2 x 2 before, 2 x 3 1/2 after the round."""
    corners = [sqrt(x * x + y * y) for x, y in around(3, 4, 2, 30).outline]

    assert near([7, 7, 7]) == corners


def test_octagon_side_closes_where_its_neighbors_meet() -> None:
    """R 2 1/2, w 2 1/2: the neighbors' lines meet at 2.5 x sqrt 2 = 3.536, the strip would open to 4 1/2."""
    build = around(8, 5, 2.5, 8)
    first = build.strips[0]
    nx, ny = first.normal

    assert near(3.536, 0.0005) == 2.5 * ROOT
    assert near(2.5 * ROOT) == max(nx * x + ny * y for x, y in first.opened)
    assert [(1, "side.closes")] == [(note.step, note.code) for note in build.notes if note.step == 1]


# --- on point -----------------------------------------------------------------------------------------------


def runner(**more: Any) -> Project:
    """A 12 in square on point in a runner of 36 x 18 as it lies, strips 2 1/2 (f = 2) until covered."""
    return project(
        squared_up=trim(18, 36, length_runs="across"),
        center=square(12, 45),
        building={"way": "pairs round the point", "until_covered": True},
        rounds=rounds(2.5),
        **more,
    )


@pytest.fixture(name="on_point")
def on_point_fixture() -> Build:
    """The runner, built."""
    return build_project(runner(), house())


def seam_line(round_number: int) -> float:
    """Seam line of a round from the center mark: 6 - a, and 2 more each round."""
    return 6 - A + 2 * (round_number - 1)


def test_point_of_a_twelve_inch_square_lies_at_8_132(on_point: Build) -> None:
    """(6 - a) sqrt 2: half the diagonal inside the seams."""
    upper = max(on_point.points, key=lambda point: point.at[1])

    assert near(8.132, 0.0005) == (6 - A) * ROOT
    assert near((6 - A) * ROOT) == upper.at[1]


def test_seven_rounds_of_four_cover_the_runner(on_point: Build) -> None:
    """The corner of the cover outline stands (18.25 + 9.25) / sqrt 2 = 19.445 out; 6 + 2k reaches it with k = 7."""
    assert 7 == max(strip.round for strip in on_point.strips)
    assert 28 == len(on_point.strips)
    assert () == on_point.bare


def classes(piece: SewnPiece) -> set[EndClass]:
    """How the two ends of a seam are held."""
    assert piece.seam is not None
    return {piece.seam.start.kind, piece.seam.end.kind}


def ends_above_or_below(piece: SewnPiece) -> bool:
    """True when the end caught in the binding lies at the long edge, above or below the center mark."""
    assert piece.seam is not None
    caught = [end.at for end in (piece.seam.start, piece.seam.end) if end.kind is EndClass.CAUGHT]
    return all(abs(y) >= 9 and abs(x) < 18 for x, y in caught)


def test_strips_between_a_crossing_and_the_long_edge(on_point: Build) -> None:
    """Sqrt 2 x 9.25 + a = 13.331, or f = 2 more when the neighbor was there first."""
    between = [
        strip
        for strip in on_point.strips
        if classes(strip) == {EndClass.CROSSED, EndClass.CAUGHT}
        and ends_above_or_below(strip)
        and seam_line(strip.round) * ROOT < 18
        and strip.round < 7
    ]
    short, long = ROOT * 9.25 + A, ROOT * 9.25 + A + 2

    assert near([13.331, 15.331], 0.0005) == [short, long]
    assert len(between) >= 12
    assert {round(short, 6), round(long, 6)} == {round(strip.needed_length, 6) for strip in between}


def test_corner_strips_shrink_toward_the_corner(on_point: Build) -> None:
    """Sqrt 2 (X + Y) - 2d with X = 18.25, Y = 9.25, where the seam cuts off a corner of the cover outline."""
    in_the_corner = [strip for strip in on_point.strips if seam_line(strip.round) * ROOT > 18.25]
    expected = [ROOT * 27.5 - 2 * seam_line(strip.round) for strip in in_the_corner]

    assert 12 == len(in_the_corner)  # rounds 5 to 7, four strips each
    assert near(expected) == [strip.needed_length for strip in in_the_corner]


@pytest.mark.parametrize("k", [1, 2, 3])
def test_tips_lie_where_the_two_seams_of_a_pair_meet(on_point: Build, k: int) -> None:
    """After k rounds the tip of the seams stands at sqrt 2 (r0 + k f - a)."""
    pair = [strip for strip in on_point.strips if strip.round == k + 1 and strip.normal[0] > 0]
    tip_x = (pair[0].seam_at + pair[1].seam_at) / ROOT  # two lines square to each other

    assert near(ROOT * (6 + 2 * k - A)) == tip_x


def test_base_of_eighteen_leaves_0_868_beyond_the_point() -> None:
    """9 - 8.132, flat, to the base edge."""
    build = build_project(runner(), house(), base_half=(18.0, 9.0))
    upper = max(build.points, key=lambda point: point.at[1])

    assert near(0.868, 0.0005) == upper.to_base_edge
    assert near(9 - 5.75 * ROOT) == upper.to_base_edge


def test_trim_of_eighteen_leaves_0_868_and_shows_0_618(on_point: Build) -> None:
    """The binding's seam takes 1/4 of the 0.868."""
    upper = max(on_point.points, key=lambda point: point.at[1])

    assert near([0.868, 0.618], 0.0005) == [upper.to_trim_edge, upper.shown]


def test_three_percent_of_draw_up_needs_more_and_brings_the_point_in() -> None:
    """Needed sqrt 2 (9 / 0.97 + 1/4) + a = 13.725; the tape finds the point 9 - 0.97 x 8.132 = 1.112 from the edge."""
    build = build_project(runner(), house(draw_up_x=0.03, draw_up_y=0.03))
    upper = max(build.points, key=lambda point: point.at[1])
    expected = ROOT * (9 / 0.97 + 0.25) + A

    assert near(13.725, 0.0005) == expected
    assert round(expected, 6) in {round(strip.needed_length, 6) for strip in build.strips}
    assert near(9 - 0.97 * 5.75 * ROOT) == upper.to_trim_edge
    assert near(1.112, 0.0005) == upper.to_trim_edge


def test_ten_inch_square_on_a_base_of_fifteen_leaves_0_7825() -> None:
    """7 1/2 - (5 - a) sqrt 2 = 0.7825 from each point to the base edge; a wish for 1 in is 0.2175 short."""
    build = build_project(
        project(
            squared_up=trim(14, 14),
            center=square(10, 45),
            building={"way": "pairs round the point", "until_covered": True},
            rounds=rounds(2.5),
        ),
        house(),
        base_half=(7.5, 7.5),
    )

    assert near([0.7825] * 4, 0.00005) == [point.to_base_edge for point in build.points]
