"""Questions makers asked in public, and what went wrong, with the right answers.

The page of each case stands beside its check; what is right was worked out by hand there.
"""

from __future__ import annotations

import pytest

from stitchflip.cutting import Piece, Rectangle, count_in, lay_in_rows
from stitchflip.lengths import Unit
from tests.cutting.lists import CM, YARD, binding, counts, fabric, plain, planned, strips
from tests.twins.table import house

BARE = house(straightening=0, fat_quarter_straightening=0)


# https://www.quiltingboard.com/main-f1/fabric-question-math-whiz-t215246.html
def test_twenty_eight_strips_two_by_twelve_from_forty_two_inches() -> None:
    """Across: three to a width, ten rows, 20 in; along: 21 to a row, two rows, 24 in. The loser is shown too."""
    fixed = lay_in_rows(42, [Rectangle("strip", 12, 2, 28, can_turn=False)])

    assert (20, 24) == (fixed.length_in, fixed.losing_in)


# the same page: nobody in the thread mixes the two ways
def test_twenty_eight_strips_take_less_when_one_row_lies_the_other_way() -> None:
    """One row 12 in high gives 21, three rows of 2 in give the other 7: 18 in, 1/2 yd instead of 5/8."""
    plan = planned(fabric(), (Piece("Strip", 12, 2, 28, kind="rectangle"),), house(usable_width=42, straightening=0))

    assert (18, 18) == (plan.need_in, plan.buy_in)


# https://www.quiltingboard.com/6228687-post7.html
def test_rows_allowance_and_shop_rounding_are_three_numbers() -> None:
    """63 squares of 9 1/2 at 42 in: rows 152, with 1 in of squaring 153, which is 4 1/4 yd to the thread.

    So the step above is named: 4 3/8 yd, 157 1/2 in, leaves 5 1/2 in beside the rows.
    """
    squares = (Piece("Square", 9.5, 9.5, 63, kind="rectangle"),)
    plan = planned(fabric(), squares, house(usable_width=42))
    (point,) = [point for point in plan.tipping_points if point.change == "purchase"]

    assert (152, 153, 153) == (plan.used_in, plan.need_in, plan.buy_in)
    assert plan.has_nothing_to_spare
    assert "The next step is 4⅜ yd." in plain(point.what)
    assert 5.5 == 4.375 * YARD - plan.used_in


# http://quiltersquandary.blogspot.com/2010/11/stupid-squares.html
@pytest.mark.parametrize(("width", "rows", "need", "yards"), [(42, 14, 63, 7 / 4), (40, 15, 67.5, 15 / 8)])
def test_two_inches_of_width_cost_a_row_of_squares(width: float, rows: int, need: float, yards: float) -> None:
    """120 squares of 4 1/2: nine to a row at 42 in, eight at 40 in; the border comes on top."""
    squares = (Piece("Square", 4.5, 4.5, 120, kind="rectangle"),)
    plan = planned(fabric(usable_width=str(width)), squares, BARE)

    assert (rows, need, yards * YARD) == (len(plan.rows), plan.need_in, plan.buy_in)


# https://www.quiltingboard.com/main-f1/fat-quarter-conversion-t222332.html
@pytest.mark.parametrize(("high", "quarters"), [("18", 12), ("17", 14)])
def test_roll_of_strips_from_fat_quarters(high: str, quarters: int) -> None:
    """Forty strips are eighty halves: seven from each quarter 18 in high, six from one that measures 17."""
    on_hand = [{"name": "fat quarter", "wide": high, "long": "21", "count": 20}]
    plan = planned(fabric(on_hand=on_hand, only_on_hand=True), strips(2.5, 20, count=80), BARE)

    assert quarters == len(plan.hand_sheets)


# the same page
def test_pack_of_squares_from_fat_quarters() -> None:
    """42 squares of 5 in, twelve from each quarter: four quarters."""
    on_hand = [{"name": "fat quarter", "wide": "18", "long": "21", "count": 9}]
    squares = (Piece("Square", 5, 5, 42, kind="rectangle"),)
    plan = planned(fabric(on_hand=on_hand, only_on_hand=True), squares, BARE)

    assert 4 == len(plan.hand_sheets)


# https://szmusil.wordpress.com/2013/04/08/45-inches-2/ and
# https://www.inspirepoint.com/quilting/do-women-know-about-shrinkage-140834-.htm
def test_flannel_that_measures_thirty_nine_has_no_margin_for_three_thirteens() -> None:
    """3 × 13 = 39: it fits to the thread; at 38 1/2 one piece less comes from each strip."""
    plan = planned(fabric("Flannel", usable_width="39"), strips(2.5, 13, count=6))
    (point,) = [point for point in plan.tipping_points if point.change == "narrower"]

    assert {2.5: 2} == counts(plan)
    assert 0 == point.slack_in
    assert "at 38½ in wide it takes 3 strips instead of 2" in plain(point.what)


# http://cre8tivequilter.blogspot.com/2009/04/cuttingwill-it-ever-end.html
@pytest.mark.parametrize(("measures", "given"), [("17 1/2", 0), ("18", 46)])
def test_quarter_of_seventeen_and_a_half_gives_no_such_strip_after_straightening(measures: str, given: int) -> None:
    """46 quarters, each to give a strip 17 1/2 in long across: with 1/2 in for straightening 18 in are needed."""
    on_hand = [{"name": "fat quarter", "wide": measures, "long": "21", "count": 46}]
    strip = Piece("Strip", 17.5, 12, 46, kind="rectangle", can_turn=False)
    plan = planned(fabric(on_hand=on_hand, only_on_hand=True, one_way=True), (strip,))

    assert given == 46 - len(plan.left_out)


# http://www.quiltingboard.com/main-f1/fast-fat-quarter-facts-t73923.html
@pytest.mark.parametrize(
    ("size", "nominal", "measured"), [(2, 99, 80), (3, 42, 35), (4.5, 16, 12), (6, 9, 6), (9, 4, 2)]
)
def test_chart_without_margin_collapses_at_half_an_inch_less(size: float, nominal: int, measured: int) -> None:
    """The counts hold at exactly 18 × 22 in; at 17 1/2 × 21 in they fall."""
    assert (nominal, measured) == (count_in(22, 18, size, size), count_in(21, 17.5, size, size))


# the same page
@pytest.mark.parametrize("size", [2.5, 3.5, 4, 5, 6.5])
def test_sizes_that_do_not_divide_eighteen_survive_half_an_inch(size: float) -> None:
    """At 17 1/2 in as many rows as at 18."""
    assert count_in(22, 18, size, size) == count_in(22, 17.5, size, size)


# https://quilton.blogspot.com/2010/11/another-one-off-list.html
@pytest.mark.parametrize(("cut_from", "missing"), [(50 * CM, ()), (18, ("Square",))])
def test_square_from_a_metric_quarter_does_not_come_from_one_cut_in_yards(
    cut_from: float, missing: tuple[str, ...]
) -> None:
    """19 1/2 in: half a meter gives 19.69 in, 0.19 to spare; half a yard is 18 in."""
    on_hand = [{"name": "fat quarter", "wide": f"{cut_from:.4f} in", "long": "21 in"}]
    square = (Piece("Square", 19.5, 19.5, kind="rectangle"),)
    plan = planned(fabric(on_hand=on_hand, only_on_hand=True), square, BARE)

    assert missing == plan.left_out
    assert 0.185 == pytest.approx(50 * CM - 19.5, abs=0.001)


# https://alsadventuresin.com/blog/adventures-in-qayg-part-1
@pytest.mark.parametrize(
    ("length", "on_hand", "missing"), [("40", 40, 0), ("39", 40, 0), ("38 3/4", 40, 8), ("40", 39, 1)]
)
def test_forty_strips_are_exactly_enough_down_to_thirty_nine_inches(length: str, on_hand: int, missing: int) -> None:
    """48 pieces of 13 in take 16 strips; 30 units of 4 1/4 in come nine from a set, four sets of six whole strips.

    At 38 3/4 in only two pieces come from a strip: 24 and 24 strips, eight more than there are.
    """
    sets = -(-30 // count_in(39, 1, 4.25, 1))
    stock = [{"name": "precut strip", "wide": "2 1/2", "long": length, "count": on_hand}]
    pieces = (*strips(2.5, 13, count=48), binding(2.5, 38.25, sets * 6))
    plan = planned(fabric(on_hand=stock, only_on_hand=True), pieces)

    assert 4 == sets
    assert missing == len(plan.left_out)
    assert on_hand == sum(len(one.strips) for one in plan.strip_plans)


# https://paperzz.com/doc/8935314 and http://heartstringsquiltproject.com/guidelines.html
@pytest.mark.parametrize(("length", "needed", "inches"), [(14.5, 24, 48), (13.75, 16, 32)])
def test_center_strips_just_above_a_step_cost_a_third_more(length: float, needed: int, inches: float) -> None:
    """48 centers 2 in wide at 42 in: two to a width at 14 1/2, three at 13 3/4, which still covers."""
    plan = planned(fabric(), strips(2, length, count=48), house(usable_width=42, straightening=0))

    assert ({2: needed}, inches) == (counts(plan), plan.need_in)


# the same pages
def test_length_just_above_a_step_is_said() -> None:
    """Half an inch shorter (14 in, still over 13 3/4) and 16 strips do instead of 24."""
    piece = Piece("Center strip", 2, 14.5, 48, shortest=13.75)
    plan = planned(fabric(), (piece,), house(usable_width=42))
    (point,) = [point for point in plan.tipping_points if point.change == "shorter"]

    assert 0.5 == pytest.approx(point.slack_in)
    assert "cut each ½ in shorter (all still reach) and 16 strips do instead of 24" in plain(point.what)


# the same pages: the list says one yard
def test_slip_one_yard_of_center_strips() -> None:
    """A yard gives 36 at 14 1/2 in and 54 at 13 3/4; 48 are needed, so the list's yard is 12 in short."""
    assert (36, 54) == (count_in(42, 36, 14.5, 2), count_in(42, 36, 13.75, 2))
    plan = planned(fabric(), strips(2, 14.5, count=48), house(usable_width=42, straightening=0))

    assert 12 == plan.need_in - YARD


def test_metric_fabric_keeps_its_unit() -> None:
    """The same question in centimeters: 28 strips 5 × 30 cm at 105 cm, three to a width, ten rows of 5 cm."""
    numbers = house(usable_width=105 * CM, straightening=0, buy_in_steps_of=10 * CM, buy_at_least=20 * CM)
    pieces = (Piece("Strip", 30 * CM, 5 * CM, 28, kind="rectangle", can_turn=False),)
    plan = planned(fabric(unit=Unit.CM), pieces, numbers, unit=Unit.CM)

    assert (50, 50) == pytest.approx((plan.need_in / CM, plan.buy_in / CM))
