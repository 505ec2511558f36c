"""Published counts of squares and strips against ours, and slips in print that we must not repeat.

Sources are named beside each check by title, publisher and address, as read in stored copies. Counts in print
are plain grids, floor(width / size) × floor(length / size), without straightening, so these checks set it to zero.
"""

from __future__ import annotations

import pytest

from stitchflip.cutting import FabricPlan, Piece, count_in, lay_in_rows, per_row
from stitchflip.cutting.rows import Rectangle
from tests.cutting.lists import YARD, fabric, planned, strips
from tests.twins.table import house

FAT_QUARTER = (21, 18)
"""Long and short side, inches: half a width by half a yard."""


def squares(size: float, count: int, width: float = 40, straightening: float = 0.0) -> FabricPlan:
    """The plan for squares of one size alone, any amount sold from 1/8 yd up."""
    asked = (Piece("Square", size, size, count, kind="rectangle"),)
    numbers = house(usable_width=width, straightening=straightening, buy_at_least=YARD / 8)
    return planned(fabric(), asked, numbers)


# Math Charts (2002), Quilter's Cache, http://www.quilterscache.com/M/MathChartsPage.html
YARD_OF_44 = {
    2: 396,
    2.5: 238,
    3: 168,
    3.5: 120,
    4: 99,
    4.5: 72,
    5: 56,
    6: 42,
    6.5: 30,
    8: 20,
    9: 16,
    10: 12,
    12: 9,
    12.5: 6,
}


@pytest.mark.parametrize("size", YARD_OF_44)
def test_squares_from_a_yard_forty_four_wide(size: float) -> None:
    """The chart's numbers, each by counting and by planning that many squares."""
    count = YARD_OF_44[size]

    assert count == count_in(44, 36, size, size)
    assert lay_in_rows(44, [Rectangle("square", size, size, count)]).length_in <= 36
    assert lay_in_rows(44, [Rectangle("square", size, size, count + 1)]).length_in > 36


def test_slip_seven_inch_squares_from_a_yard_are_thirty() -> None:
    """Slip in print: 35. Same chart, http://www.quilterscache.com/M/MathChartsPage.html; 6 × 5 = 30 is right."""
    assert 30 == count_in(44, 36, 7, 7)
    assert squares(7, 35, width=44).need_in == 42


# Yardage for cutting squares (washed 44 in fabric), quilt shop page,
# https://www.sylviasquiltdepot.com/yardage---for-cutting-squares.htm: one inch lost each way
@pytest.mark.parametrize(("size", "count"), [(3, 154), (4, 80), (4.5, 63), (5.5, 42), (6, 35)])
def test_squares_from_a_washed_yard(size: float, count: int) -> None:
    """43 × 35 in usable."""
    assert count == count_in(43, 35, size, size)


# the same page breaks its own rule at two sizes
@pytest.mark.parametrize(("size", "printed", "right"), [(9, 16, 12), (12, 9, 6)])
def test_slip_washed_yard_with_unwashed_counts(size: float, printed: int, right: int) -> None:
    """The printed counts belong to 44 × 36 in; the washed yard gives fewer."""
    assert right == count_in(43, 35, size, size)
    assert printed == count_in(44, 36, size, size)


# Number of Squares from a Fat Quarter / yardage chart (handout), https://docsbay.net/number-of-squares-from-a-fat-quarter
MIXED_CHART = {2: 357, 3: 154, 4: 80, 4.5: 63, 5: 56, 6: 30, 7: 25, 8: 20, 8.5: 16}


def test_slip_one_chart_counts_with_several_widths() -> None:
    """Each count is right for some width from 40 to 43 in and 35 in of length, but no width gives them all."""
    widths = [40 + step / 4 for step in range(13)]
    right = {
        size: {width for width in widths if count_in(width, 35, size, size) == count}
        for size, count in MIXED_CHART.items()
    }

    assert all(right.values())
    assert not set.intersection(*right.values())


# Measurements, Quilters Resources, https://quiltersresources.com/measurements.html prints 55 and 15
@pytest.mark.parametrize(("size", "printed", "right"), [(2.5, 55, 56), (5, 15, 12)])
def test_slip_squares_from_a_fat_quarter(size: float, printed: int, right: int) -> None:
    """18 × 21 in: 7 × 8 of 2 1/2 in, 3 × 4 of 5 in."""
    assert right == count_in(*FAT_QUARTER, size, size)
    assert printed != right


# Fat quarter conversion thread, Quiltingboard, https://www.quiltingboard.com/main-f1/fat-quarter-conversion-t222332.html
def test_short_fat_quarter_gives_nine_squares() -> None:
    """Cut 18 × 19 in it gives 3 × 3 squares of 5 in, not 12."""
    assert (9, 12) == (count_in(19, 18, 5, 5), count_in(*FAT_QUARTER, 5, 5))


# the same thread
def test_fat_quarter_gives_seven_half_strips() -> None:
    """Strips of 2 1/2 in along the long side: floor(18 / 2.5) = 7."""
    assert 7 == count_in(*FAT_QUARTER, 21, 2.5)


# Precuts to Yardage, Annie's craft publisher, https://anniesattic.com/precuts-to-yardage-conversion
@pytest.mark.parametrize("width", [40, 42, 44])
@pytest.mark.parametrize(("size", "count"), [(5, 8), (10, 4)])
def test_squares_to_a_strip(width: float, size: float, count: int) -> None:
    """Eight 5 in squares from a 5 in strip, four of 10 in from a 10 in strip."""
    assert count == per_row(width, size)


# the same page
@pytest.mark.parametrize(("count", "need", "yards"), [(4, 10, 3 / 8), (1, 2.5, 1 / 8)])
def test_strips_from_a_purchase(count: int, need: float, yards: float) -> None:
    """Four strips of 2 1/2 in are 10 in and take 3/8 yd; one comes from 1/8 yd."""
    numbers = house(straightening=0, buy_at_least=YARD / 8)
    plan = planned(fabric(), strips(2.5, *[40] * count), numbers)

    assert (need, yards * YARD) == (plan.need_in, plan.buy_in)


def test_forty_strips_take_two_and_seven_eighths() -> None:
    """40 × 2 1/2 = 100 in = 2.78 yd: 2 3/4 yd is an inch short (own recount of a 40-piece roll)."""
    plan = planned(fabric(), strips(2.5, *[40] * 40), house(straightening=0))

    assert (100, 23 / 8 * YARD) == (plan.need_in, plan.buy_in)
    assert 11 / 4 * YARD < plan.need_in


# How Many 2.5 Strips in a Yard?, https://batikindonesia.com/how-many-2-5-strips-in-a-yard-of-fabric/
def test_strips_in_a_yard() -> None:
    """floor(36 / 2.5) = 14."""
    assert 14 == count_in(40, 36, 40, 2.5)


# Precut Fabric Guide, Scissortail Quilting, https://scissortailquilting.com/quilting-info/precut-fabric-guide/
def test_slip_pack_of_forty_two_squares_is_more_than_five_eighths() -> None:
    """42 squares of 5 in: six rows of eight, 30 in, 7/8 yd; the 5/8 yd in print give 32."""
    plan = squares(5, 42)

    assert (30, 7 / 8 * YARD) == (plan.need_in, plan.buy_in)
    assert 32 == count_in(40, 5 / 8 * YARD, 5, 5)


# How to Figure Yardage for a Quilt (pattern designer FAQ), https://featheredstar.wordpress.com/category/faqs/
def test_eighty_small_squares_with_six_percent_for_straightening() -> None:
    """16 to a row, 5 rows, 12 1/2 in; × 1.06 = 13 1/4 in; 3/8 yd."""
    plan = squares(2.5, 80, straightening=0.06 * 12.5)

    assert (5, 12.5, 13.25, 3 / 8 * YARD) == (len(plan.rows), plan.used_in, plan.need_in, plan.buy_in)


# Counting squares answer (63 squares), Quiltingboard, https://www.quiltingboard.com/6228687-post7.html
def test_sixty_three_squares_at_forty_two_inches() -> None:
    """Four to a row (38 in of 42, not 37 as one answer says), 16 rows, 152 in = 4.22 yd."""
    plan = squares(9.5, 63, width=42)

    assert (16, 152) == (len(plan.rows), plan.need_in)
    assert 38 == sum(across for _, across in plan.rows[0].pieces)
    assert 4.22 == round(plan.need_in / YARD, 2)


# Rag quilt fabric answer, https://fedest.com/question/20060713145507AAW2Voc
def test_twenty_large_squares_at_forty_two_inches() -> None:
    """Four to a row, five rows of 10 in: 50 in, 1 1/2 yd."""
    plan = squares(10, 20, width=42)

    assert (5, 50, 3 / 2 * YARD) == (len(plan.rows), plan.need_in, plan.buy_in)


# Please confirm my math (5 in squares), Quiltingboard, http://www.quiltingboard.com/main-f1/please-confirm-my-math-t46327.html
def test_sixty_squares_do_not_come_from_a_yard() -> None:
    """8 × 7 = 56; sixty take an eighth row, 40 in."""
    assert 56 == count_in(42, 36, 5, 5)
    assert 40 == squares(5, 60, width=42).need_in
