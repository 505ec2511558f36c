"""Needed lengths worked out by hand, straight from widths, seam and outline, beside what the kernel finds.

Everywhere a is the seam, f = w - 2a what a strip adds to its side, g the reach past the trim edge; nothing draws in.
"""

from __future__ import annotations

from math import cos, pi, sin, sqrt, tan
from typing import Any

import pytest

from stitchflip.piecing import build_project
from stitchflip.piecing.model import Build
from stitchflip.piecing.triangles import hexagon_side, triangle_cut_height, triangle_side
from tests.twins.table import house, project, rounds, square, trim

A = 0.25
ROOT = sqrt(2)


def needs(build: Build) -> list[float]:
    """Shortest that reaches, of every strip in the order sewn."""
    return [strip.needed_length for strip in build.strips]


# --- braid and chevron ---------------------------------------------------------------------------------------------


class Plait:
    """A braid at 45 degrees on a half square: both growing sides begin at the same distance from the middle."""

    def __init__(self, wide: float, long: float, half_square: float, reach: float) -> None:
        self.x = wide / 2 + reach
        self.y = long / 2 + reach
        self.raw = (half_square / ROOT - self.y) / ROOT
        """Raw edges of the half square: its point stands half_square / root 2 above the lower edge."""

    def needed(self, seam_at: float, width: float, neighbor: float) -> float:
        """Length of a strip from its foot, at the edge or the lower corner, to the neighbor's raw edge or the top.

        At a distance v from the middle the strip runs from the larger of v - x root 2 (the side) and -y root 2 - v
        (the lower edge) to the smallest of the neighbor's raw edge, v + x root 2 (the other side) and
        y root 2 - v (the top).
        """
        low, high = seam_at, seam_at + width - A
        turns = [low, high, (self.x - self.y) / ROOT, self.y * ROOT - neighbor, neighbor - self.x * ROOT]
        turns += [(self.y - self.x) / ROOT]
        feet, heads = [], []
        for v in (min(max(turn, low), high) for turn in turns):
            foot = max(v - self.x * ROOT, -self.y * ROOT - v)
            head = min(neighbor, v + self.x * ROOT, self.y * ROOT - v)
            if head > foot:
                feet.append(foot)
                heads.append(head)
        return max(heads) - min(feet) if feet else 0.0


def plaited(way: str, cut: float, count: int, **building: Any) -> Build:
    """A runner 14 x 40 of equal strips, begun with a half square cut 8."""
    return build_project(
        project(
            squared_up=trim(14, 40),
            center={"fabric": "Linen", "shape": "half square", "cut": "8"},
            building={"way": way, **building},
            rounds=rounds(*[cut] * count),
        ),
        house(reach=0.5),
    )


@pytest.mark.parametrize("cut", [2, 2.5, 3])
def test_braid_of_equal_strips(cut: float) -> None:
    """Right strips meet the left side as the last left strip leaves it; left strips meet one strip more on the right.

    Number m on each side: seam at r + m f - a; the neighbor's raw edge at r + m f (right), r + (m + 1) f (left).
    """
    plait, f = Plait(14, 40, 8, 0.5), cut - 2 * A
    expected = []
    for m in range(14):
        seam = plait.raw + m * f - A
        expected += [plait.needed(seam, cut, plait.raw + m * f), plait.needed(seam, cut, plait.raw + (m + 1) * f)]

    assert pytest.approx(expected) == needs(plaited("braid", cut, 14))


def test_braid_strips_in_the_long_middle_are_all_alike() -> None:
    """Between point and top every right strip is x root 2 + a long: from the side to the neighbor's raw edge.

    7 1/2 root 2 = 10.607, + 1/4 = 10.857; a left strip reaches one strip farther, + 2 = 12.857.
    """
    middle = needs(plaited("braid", 2.5, 10))[8:12]

    assert pytest.approx([10.857, 12.857] * 2, abs=0.0005) == middle


def test_chevron_with_the_steps_on_either_side_in_turn() -> None:
    """The leg sewn first meets the other side as it was, the second one strip more; the lengths swap every round."""
    plait, f = Plait(14, 40, 8, 0.5), 2.0
    expected = []
    for m in range(12):
        seam = plait.raw + m * f - A
        expected += [plait.needed(seam, 2.5, plait.raw + m * f), plait.needed(seam, 2.5, plait.raw + (m + 1) * f)]
    build = plaited("chevron", 2.5, 12, pair_first="alternate")

    assert pytest.approx(expected) == needs(build)
    assert ["upper right", "upper left", "upper left", "upper right"] == [strip.side for strip in build.strips[:4]]


# --- strings --------------------------------------------------------------------------------------------------------


def test_string_block_of_kite_weather() -> None:
    """Squared up 8 1/2, reach 3/8: the diagonal of 9 1/4 is 13.08; a strip whose seam lies x off it needs 2x less.

    Seams at 3/4, 1 3/4, 3 1/2 and 4 3/4: 11.58, 9.58, 6.08, 3.58, each twice.
    """
    block = project(
        squared_up=trim(8.5, 8.5), building={"way": "string block"}, rounds=rounds(2, 1.5, 2.25, 1.75, 2.25)
    )
    build = build_project(block, house(reach=3 / 8))

    assert pytest.approx(13.08, abs=0.005) == build.pieces[0].needed_length
    assert pytest.approx([11.58, 11.58, 9.58, 9.58, 6.08, 6.08, 3.58, 3.58], abs=0.005) == needs(build)


def test_corner_triangle_of_kite_weather_is_no_sliver() -> None:
    """Finishing 8, half the diagonal is 5.657; the last seam lies at 4 3/4, so 0.91 shows."""
    block = project(
        squared_up=trim(8.5, 8.5), building={"way": "string block"}, rounds=rounds(2, 1.5, 2.25, 1.75, 2.25)
    )
    last = build_project(block, house(reach=3 / 8)).pieces[-1]
    (shown,) = last.shown

    assert (
        pytest.approx(0.907, abs=0.0005)
        == max(last.normal[0] * x + last.normal[1] * y for x, y in shown) - last.seam_at
    )


@pytest.mark.parametrize(("wide", "long"), [(8, 8), (6, 10), (12, 5)])
def test_strings_on_any_base(wide: float, long: float) -> None:
    """A line v above the diagonal enters the covered outline at its left or lower edge, leaves at the right or top one.

    A place u along it lies at (u cos - v sin, u sin + v cos) of the diagonal's angle; the band is longest where a line
    passes a corner of the outline, or at its own edge.
    """
    half_w, half_h = wide / 2 + 0.5, long / 2 + 0.5
    c, s = wide / sqrt(wide**2 + long**2), long / sqrt(wide**2 + long**2)

    def ends(v: float) -> tuple[float, float]:
        """Where a line at v crosses the outline, along it: x = u c - v s, y = u s + v c."""
        return (
            max((-half_w + v * s) / c, (-half_h - v * c) / s),
            min((half_w + v * s) / c, (half_h - v * c) / s),
        )

    def need(low: float, high: float) -> float:
        turns = [low, high, half_w * s - half_h * c, -half_w * s + half_h * c]
        spans = [ends(v) for v in turns if low - 1e-9 <= v <= high + 1e-9]
        spans = [(start, end) for start, end in spans if end > start]
        return max(end for _, end in spans) - min(start for start, _ in spans)

    block = project(squared_up=trim(wide, long), building={"way": "string block"}, rounds=rounds(2, 1.5, 2))
    build = build_project(block, house(reach=0.5))

    assert pytest.approx(need(-1, 1)) == build.pieces[0].needed_length
    assert pytest.approx([need(0.75, 2), need(0.75, 2), need(1.75, 3.5), need(1.75, 3.5)]) == needs(build)


# --- polygons ---------------------------------------------------------------------------------------------------------


def around(sides: int, cut: float, trimmed: float, *cuts: float, reach: float = 0.5) -> Build:
    """Rounds on a regular polygon, counter-clockwise from the lowest side, squared up to the same shape."""
    return build_project(
        project(
            squared_up={"sides": sides, "across_flats": str(trimmed)},
            center={"fabric": "Linen", "sides": sides, "cut": str(cut)},
            building={"way": "round after round", "turning": "counter-clockwise"},
            rounds=rounds(*cuts),
        ),
        house(reach=reach),
    )


def test_octagon_tray() -> None:
    """16 between flats, center 9, four rounds cut 1 1/2: ends at 45 degrees, longest at the seam line x.

    An end reaches (r - x cos 45) / sin 45 past the foot, r the raw edge of the neighbor, or the cover line where that
    is nearer: 8 + 1/2. The first of a round has both neighbors as they were, the last both one strip farther.
    """
    expected = []
    for r in (4.5, 5.5, 6.5, 7.5):
        near, far = (min(raw, 8.5) * ROOT - (r - A) for raw in (r, r + 1))
        expected += [2 * near, *[near + far] * 6, 2 * far]

    assert pytest.approx(expected) == needs(around(8, 9, 16, *[1.5] * 4))


def test_octagon_tray_is_just_covered_by_four_rounds() -> None:
    """Raw edges at 4 1/2 + 4 = 8 1/2 touch the cover line; three rounds stay an inch short on all eight sides."""
    assert () == around(8, 9, 16, *[1.5] * 4).bare
    assert pytest.approx([1.0] * 8) == [spot.by for spot in around(8, 9, 16, *[1.5] * 3).bare]


def test_octagon_strip_past_a_side_that_is_nearly_closed_ends_at_the_next_side() -> None:
    """Cut 7 1/2, strips 2: the first strip is 0.11 long at its outer edge, so the second runs past it.

    Its seam lies at 3 1/2. The first strip's raw edge line is met (5 1/4 - 3 1/2 cos 45) / sin 45 = 3.92 from the foot,
    but the side beyond, square to this one, already at 3 3/4.
    """
    second = around(8, 7.5, 60, 2).strips[1]

    assert pytest.approx(3.75 + (3.75 * ROOT - 3.5)) == second.full_length


@pytest.mark.parametrize(("sides", "raw", "width"), [(5, 3, 1.5), (6, 2.5, 2), (7, 4, 1.75), (8, 5, 1.5)])
def test_full_lengths_of_a_first_round(sides: int, raw: float, width: float) -> None:
    """(r_j - x cos t) / sin t at both ends, t the turn from side to side, at the seam line (blunt corners)."""
    turn, x, f = 2 * pi / sides, raw - A, width - 2 * A
    near, far = ((r - x * cos(turn)) / sin(turn) for r in (raw, raw + f))
    build = around(sides, 2 * raw, 60, width)

    assert pytest.approx([2 * near, *[near + far] * (sides - 2), 2 * far]) == [s.full_length for s in build.strips]


def test_narrow_corners_are_longest_at_the_outer_edge() -> None:
    """Cut 2 from its middle to each side, at the outer edge x = 2 + w - 2a an end reaches (r + x / 2) / sin 60."""
    raw, width = 2.0, 2.0
    x, f = raw - A + width - A, width - 2 * A
    near, far = ((r + x / 2) * 2 / sqrt(3) for r in (raw, raw + f))

    assert pytest.approx([2 * near, near + far, 2 * far]) == [
        strip.full_length for strip in around(3, 4, 60, width).strips
    ]


def test_hexagon_and_triangle_facts_in_the_kernel() -> None:
    """A hexagon cut 7 1/2 between flats shows 7, its side 7 / root 3; a triangle loses three seams of height.

    A regular triangle cut r from its middle is 3r high and shows 3r - 3a; the side that shows is 2h / root 3.
    """
    (hexagon,) = around(6, 7.5, 30, 2).pieces[0].visible
    (triangle,) = around(3, 4, 60, 2).pieces[0].visible
    side = max(x for x, y in triangle) - min(x for x, y in triangle)
    height = max(y for _, y in triangle) - min(y for _, y in triangle)
    edge = [x for x, y in hexagon if abs(y + 3.5) < 1e-9]

    assert pytest.approx(hexagon_side(7)) == max(edge) - min(edge)
    assert pytest.approx(6) == triangle_cut_height(height, A)
    assert pytest.approx(triangle_side(height)) == side
    assert pytest.approx(height) == side / 2 * tan(pi / 3)


# --- pairs round the point -------------------------------------------------------------------------------------------


def test_on_point_strips_between_seam_and_trim() -> None:
    """12 in on point in 36 x 18, reach 1/4: 9 1/4 root 2 + a = 13.331, and + f = 15.331 (w 2 1/2)."""
    runner = project(
        squared_up=trim(18, 36, length_runs="across"),
        center=square(12, 45),
        building={"way": "pairs round the point"},
        rounds=rounds(2.5, 2.5, 2.5),
    )
    first, second = needs(build_project(runner, house()))[4:6]

    assert pytest.approx([13.331, 15.331], abs=0.0005) == [first, second]
