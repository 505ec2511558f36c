"""What joins, washing, part widths and quarters cut another way take from fabric: published cases against ours.

The page of each case stands beside its check, by title, publisher and address, as read in stored copies; what is right
was worked out by hand.
"""

from __future__ import annotations

import pytest

from stitchflip.cutting import Piece, Rectangle, Status, lay_in_rows, per_row
from stitchflip.cutting.layouts.model import Aim, LayoutTask, Sheet, Want
from stitchflip.cutting.layouts.solving import solve
from stitchflip.cutting.layouts.watch import Patience
from stitchflip.finishing.binding_strips import Join, join_cost, joined_length, strips_needed
from stitchflip.finishing.binding_widths import single_fold_cut_width
from tests.cutting.lists import YARD, fabric, planned
from tests.twins.table import house

ROWS_LONG = 16 * 42
"""Sixteen rows of a strip-race top 42 in wide, sewn as one strip."""


@pytest.mark.parametrize(("join", "pieces"), [(Join.STRAIGHT, 39), (Join.DIAGONAL, 48)])
def test_every_join_of_a_strip_race_is_charged(join: Join, pieces: int) -> None:
    """672 in of 4 in strips averaging 18: straight 17 1/2 n + 1/2 >= 672, n = 39; diagonal 14 n + 4 >= 672, n = 48.

    The plan in print divides 672 by 18 and takes 37.3 pieces.

    Calculations for race quilt variations (2015), Quilt Kisses,
    https://quiltkisses.blogspot.com/2015/01/calculations-for-race-quilt-variations.html
    """
    cost = join_cost(4, 0.25, join)
    assert 37.3 == round(ROWS_LONG / 18, 1)
    assert pieces == strips_needed(ROWS_LONG, 18, cost)
    assert joined_length([18] * (pieces - 1), cost) < ROWS_LONG <= joined_length([18] * pieces, cost)


def test_a_strip_race_with_forgotten_joins_comes_out_narrower() -> None:
    """37 pieces of 18 in joined straight are 37 x 17 1/2 + 1/2 = 648 in: sixteen rows of 40 1/2, not 42.

    The same page, https://quiltkisses.blogspot.com/2015/01/calculations-for-race-quilt-variations.html
    """
    assert 40.5 == joined_length([18] * 37, join_cost(4, 0.25, Join.STRAIGHT)) / 16


def test_twelve_quarters_of_half_a_meter_are_fourteen_cut_in_yards() -> None:
    """12 x 5 x 55 = 3300 square cm are missing, 1.33 of 45 x 55 cm: buy 14. Squares of 5 cm fill both kinds.

    50 x 55 gives 10 x 11 = 110 squares, twelve give 1320; 45 x 55 gives 9 x 11 = 99, and 1320 / 99 = 13 1/3.

    How to plan a cot-sized quilt (2010), Lone Sock Productions,
    http://lonesockproductions.blogspot.com/2010/08/how-to-plan-cot-sized-quilt-using.html
    """
    for long, quarters in ((50, 12), (45, 14)):
        task = LayoutTask(
            wants=(Want(5, 5, 12 * 110),), sheets=(Sheet(55, long, count=None, cost=1),), aim=Aim.COST, stages=2
        )
        answer = solve(task, Patience(2_000, 20))
        assert (Status.PROVED, quarters, quarters) == (answer.status, answer.value, answer.bound)


def test_a_square_that_fits_half_a_meter_fits_no_quarter_of_45_cm() -> None:
    """Every piece must be checked in 45 cm: a piece of 48 cm comes from 50 x 55 and from no 45 x 55.

    The same page, http://lonesockproductions.blogspot.com/2010/08/how-to-plan-cot-sized-quilt-using.html
    """
    wants = (Want(48, 48, 1, can_turn=True),)
    found = {
        long: solve(LayoutTask(wants=wants, sheets=(Sheet(55, long, cost=1),), aim=Aim.COST), Patience(500, 10)).status
        for long in (50, 45)
    }
    assert {50: Status.PROVED, 45: Status.IMPOSSIBLE} == found


@pytest.mark.parametrize(
    ("before", "after", "percent"),
    [
        # Fabric shrank before my eyes, printed thread, Quiltingboard, https://www.quiltingboard.com/printthread.php?t=114776
        (46, 43, 6.5),
        (45, 44, 2.2),
        # How fabric shrinks (2018), Piece O' Cake, https://pieceocakeblog.com/2018/01/15/how-fabric-shrinks/
        (10, 9.375, 6.25),
    ],
)
def test_measured_shrinkage_across_the_width_is_planned_for(before: float, after: float, percent: float) -> None:
    """Washed fabric is narrower by just that: a row as wide as what came out of the wash fits, the next 1/16 does not.

    19 x 46 in became 19 x 43, 18 1/2 x 45 became 18 1/2 x 44, a 10 in square came out 5/8 narrower one way only.
    """
    assert percent == pytest.approx(100 * (1 - after / before), abs=0.05)

    numbers = house(usable_width=before, prewash_across=1 - after / before, straightening=0)
    fits, over = (
        planned(fabric(), (Piece("Row", wide, 2, 1, kind="rectangle", can_turn=False),), numbers)
        for wide in (after, after + 1 / 16)
    )
    assert ("", 2) == (fits.because, fits.need_in)
    assert over.because


def test_five_eighths_to_ten_inches_are_two_and_a_half_to_forty() -> None:
    """40 in shrunk by 6.25 % are 37 1/2: seven 5 in squares in a row instead of eight.

    The same page, https://pieceocakeblog.com/2018/01/15/how-fabric-shrinks/
    """
    numbers = house(usable_width=40, prewash_across=0.0625, straightening=0)
    squares = (Piece("Square", 5, 5, 8, kind="rectangle"),)
    assert (8, 7) == (per_row(40, 5), per_row(37.5, 5))
    assert (5, 10) == (
        planned(fabric(), squares, house(usable_width=40, straightening=0)).need_in,
        planned(fabric(), squares, numbers).need_in,
    )


def test_washing_first_costs_width_and_next_to_no_length() -> None:
    """Up to 2 in of 44 are lost across, nothing along: 42 in, so six squares of 7 in a row as before, none of 7 1/4.

    Washing answer, Quiltingboard, https://www.quiltingboard.com/5427572-post36.html
    """
    washed = house(usable_width=44, prewash_across=2 / 44, prewash_along=0, straightening=0)
    for size, rows in ((7, 1), (7.25, 2)):
        plan = planned(fabric(), (Piece("Square", size, size, 6, kind="rectangle"),), washed)
        assert rows * size == plan.need_in
    assert 6 == per_row(44, 7.25)


def test_slip_part_widths_of_a_repeat() -> None:
    """140 + 27 = 167, / 54 = 3.09 widths, in print times 23 in = 71 in (1.97 yd): whole widths are 4 x 23 = 92 in.

    Fabric Requirements, Cornice Kits, http://www.cornicekits.com/fabric_requirements.htm
    """
    assert 71 == round(167 / 54 * 23)
    assert 92 == lay_in_rows(54, [Rectangle("width", 54, 23, 4, can_turn=False)]).length_in
    assert 23 / 9 * YARD == 92


def test_a_single_fold_of_half_an_inch_is_cut_two() -> None:
    """Front, back, seam and hem alike: 4 x 1/2.

    How Much Bias Binding Can You Cut?, Sew What's New,
    http://sew-whats-new.com/profiles/blogs/how-much-bias-binding-can-you
    """
    assert 2 == single_fold_cut_width(0.5, 0)
