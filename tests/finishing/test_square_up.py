"""Squaring up: distances from the center mark, margins beyond the points, the small-mat way."""

from __future__ import annotations

from math import sqrt

import pytest
from hypothesis import given

from stitchflip.finishing import SquareUpPlan, plan_square_up
from stitchflip.finishing.folding import folding_for
from stitchflip.piecing.model import CenterPoint, Polygon
from tests.finishing.scenarios import Laid, cm, harbour_block, inches, lantern_walk, morning_tray, snow_gate, tin_roof
from tests.strategies import quarters
from tests.twins.table import house

SLIP = 1 / 16


def _planned(laid: Laid, *points: CenterPoint) -> SquareUpPlan:
    return plan_square_up(laid.project, laid.numbers, laid.trim, points)


def _plain(text: str) -> str:
    """Text with ordinary spaces."""
    return text.replace("\u202f", " ").replace("\u2009", " ")


def test_a_pointed_runner_has_its_numbers_from_the_center_mark() -> None:
    """13 x 44 in with 45-degree ends: sides 6 1/2 from the center line, slants 22 / sqrt 2 = 15.556 from the mark."""
    plan = _planned(lantern_walk())
    distances = {side.name: side.distance for side in plan.sides}
    assert {"right", "left", "upper right", "upper left", "lower right", "lower left"} == set(distances)
    assert (6.5, 6.5) == pytest.approx((distances["right"], distances["left"]))
    for slant in ("upper right", "upper left", "lower right", "lower left"):
        assert 15.556 == pytest.approx(distances[slant], abs=0.001)


def test_area_and_perimeter_of_a_pointed_runner() -> None:
    """13 x 44 less four triangles of 6.5 x 6.5 / 2 = 487.5 in2; 2 x 31 + 4 x 6.5 sqrt 2 = 98.77 in round."""
    plan = _planned(lantern_walk())
    assert 487.5 == pytest.approx(plan.area)
    assert 98.77 == pytest.approx(plan.perimeter, abs=0.005)
    assert (13.0, 44.0) == pytest.approx((plan.wide, plan.high))


def test_a_hexagon_has_equal_sides_and_three_diagonals() -> None:
    """22 1/2 between flats: side 22.5 / sqrt 3 = 12.99, area 438.4, corner to corner 25.98 three times."""
    plan = _planned(snow_gate())
    assert [12.99] * 6 == pytest.approx([side.length for side in plan.sides], abs=0.005)
    assert [11.25] * 6 == pytest.approx([side.distance for side in plan.sides])
    assert 438.4 == pytest.approx(plan.area, abs=0.05)
    assert [25.98] * 3 == pytest.approx(plan.diagonals, abs=0.005)


def test_a_rectangle_names_its_sides_and_gives_both_diagonals() -> None:
    """A block of 13 in: four sides 6 1/2 from the mark, diagonals 13 sqrt 2."""
    plan = _planned(harbour_block())
    assert {"top", "right", "bottom", "left"} == {side.name for side in plan.sides}
    assert [13 * sqrt(2)] * 2 == pytest.approx(plan.diagonals)


def test_a_shape_without_opposite_corners_has_no_diagonals() -> None:
    """A pentagon has none that cross the middle."""
    assert () == _planned(inches({"shape": "polygon", "sides": 5, "across_flats": "10"})).diagonals


def test_only_points_that_point_at_an_edge_are_listed() -> None:
    """The corners of a straight center are no points; a point keeps both of its margins."""
    upper = CenterPoint((0.0, 5.48), 1.0, 1.02, 0.77, "upper point", points_at_edge=True)
    corner = CenterPoint((4.0, 4.0), 3.0, 2.5, 2.25, "upper right point", points_at_edge=False)
    plan = _planned(lantern_walk(), upper, corner)
    assert [("upper point", 1.02, 0.77)] == [(point.name, point.to_edge, point.shown) for point in plan.points]


def test_a_piece_that_lies_on_the_mat_needs_no_fold() -> None:
    """47 x 35 cm lies on a mat grid of 58 x 43 cm; a 13 in block on one of 23 x 17 in."""
    assert ["", ""] == [_planned(morning_tray()).folded, _planned(harbour_block()).folded]


def test_a_runner_is_folded_once_and_a_slip_counts_twice() -> None:
    """13 x 44 on a grid of 23 x 17: end to end it is 13 x 22; 1/16 off makes the size 1/8 off."""
    text = _plain(_planned(lantern_walk()).folded)
    assert "fold the piece once, end to end" in text
    assert "13 × 22 in" in text
    assert "the tip 22 in from the fold" in text
    assert "it is then 13 × 22 in to the cut, once its long edges are trimmed" in text
    assert "counts twice: 1/16 in off makes the size ⅛ in off; a fold laid 1/16 in beside the line" in text


def test_a_long_runner_is_folded_twice_the_same_way_and_each_slip_counts_twice() -> None:
    """12 x 56: half is 28; the fold brought back by 13 1/2 leaves 14 1/2 to the cut; two slips of 1/16 make 1/4."""
    text = _plain(_planned(tin_roof()).folded)
    assert "bring that fold back over by 13½ in" in text
    assert "cut together 14½ in from the new fold" in text
    assert "it is then 12 × 14½ in to the cut, once its long edges are trimmed" in text
    assert "the ruler counts twice: 1/16 in off makes the size ⅛ in off, the second fold laid 1/16 in off" in text
    assert "another ⅛ in, so ¼ in when both go the same way; the first fold laid 1/16 in beside the line" in text


@pytest.mark.parametrize(
    ("first", "second", "ruler", "longer", "center"),
    [
        (0, 0, 0, 0, 0),
        (0, 0, SLIP, 2 * SLIP, 0),
        (0, SLIP, 0, 2 * SLIP, 0),
        (0, SLIP, SLIP, 4 * SLIP, 0),
        (0, SLIP, -SLIP, 0, 0),
        (SLIP, 0, 0, 0, SLIP),
    ],
)
def test_what_a_slip_does_is_found_by_unfolding(
    first: float, second: float, ruler: float, longer: float, center: float
) -> None:
    """12 x 56 folded at the mark and 13 1/2 from that fold, cut 14 1/2 on: 2 x (13 1/2 + 14 1/2) = 56 in.

    Every thread of a strip 60 in long is folded for itself; the cutter takes what lies beyond the ruler.
    """
    threads = [count / 16 for count in range(-30 * 16, 30 * 16 + 1)]

    def from_the_second_fold(thread: float) -> float:
        return abs(abs(thread - first) - (13.5 + second))

    stays = [thread for thread in threads if from_the_second_fold(thread) <= 14.5 + ruler]
    assert (56 + longer, center) == (stays[-1] - stays[0], (stays[-1] + stays[0]) / 2)


def test_slips_in_centimeters_are_twice_and_four_times_each_other() -> None:
    """In whole mm: 2 mm off makes 4 mm, and 8 mm when both slip; 30 x 150 cm on a mat of 58 x 43 cm."""
    laid = cm({"wide": "30", "long": "150"})
    text = _plain(_planned(laid).folded)
    assert "0.2 cm off makes the size 0.4 cm off" in text
    assert "another 0.4 cm, so 0.8 cm when both" in text


def test_a_hexagon_has_sides_and_no_long_edges() -> None:
    """22 1/2 in between flats, 26 from corner to corner: folded, its two sides of 13 in are not its long edges."""
    assert "once its sides are trimmed" in _plain(_planned(snow_gate()).folded)


def test_a_wide_piece_is_folded_both_ways() -> None:
    """40 x 30 on a grid of 23 x 17 becomes 20 x 15, cut 20 from one fold and 15 from the other."""
    text = _plain(_planned(inches({"wide": "40", "long": "30"})).folded)
    assert "it is then 20 × 15 in to the cuts;" in text
    assert "the sides are cut 20 in from the first fold and the ends 15 in from the second" in text
    assert "counts twice" in text


def test_a_shape_without_a_mirror_line_is_trimmed_edge_by_edge() -> None:
    """A hexagon turned 10 degrees cannot be folded on its center lines."""
    text = _planned(inches({"shape": "polygon", "sides": 6, "across_flats": "30", "turned": 10.0})).folded
    assert "does not fold onto it" in text


def test_a_lying_runner_says_wide_and_long_the_right_way_round() -> None:
    """Drawn lying, 13 x 44 folded end to end is still 13 wide and 22 long."""
    laid = inches({"wide": "13", "long": "44", "length_runs": "across"})
    text = _plain(_planned(laid).folded)
    assert "end to end" in text
    assert "it is then 13 × 22 in" in text


def test_a_short_ruler_counts_as_a_small_mat() -> None:
    """A 13 in square lies on the mat, but a ruler that cuts 12 in at most asks for a fold."""
    outline: Polygon = ((-6.5, -6.5), (6.5, -6.5), (6.5, 6.5), (-6.5, 6.5))
    folding = folding_for(house(longest_cut=12), outline)
    assert folding is not None
    assert 2 == len(folding.folds)


@given(wide=quarters(2, 60), long=quarters(2, 60))
def test_what_is_folded_lies_on_the_mat_and_unfolds_to_the_piece(wide: float, long: float) -> None:
    """Folded measures fit the mat; unfolded again they are the piece."""
    outline = ((-wide / 2, -long / 2), (wide / 2, -long / 2), (wide / 2, long / 2), (-wide / 2, long / 2))
    folding = folding_for(house(), outline)
    if folding is None:
        assert min(wide, long) > 17
        return
    short, longer = sorted((folding.wide, folding.high))
    assert short <= 17
    assert longer <= 23
    for axis, size, folded in (("x", wide, folding.wide), ("y", long, folding.high)):
        times = folding.folds.count(axis)
        unfolded = folded if times == 0 else 2 * folded if times == 1 else 2 * (folded + folding.inner_fold)
        assert size == pytest.approx(unfolded)
