"""Published backing figures against ours.

Sources are named beside each check by title, publisher and address, as read in stored copies. Rules that disagree
in print (spare per side, seam, usable width, rounding of the purchase) are parameters; straightening is left out
where print leaves it out.
"""

from __future__ import annotations

import pytest

from stitchflip.finishing import BackingChoice, BackingFabric, backing_ways
from stitchflip.finishing.binding_strips import Join, join_cost, joined_length
from stitchflip.finishing.panels import joined_width, widths_needed
from stitchflip.lengths import Rounding, round_to
from tests.finishing.scenarios import inches

YARD = 36
EIGHTH, QUARTER = YARD / 8, YARD / 4


def _fabric(usable: float, seam: float = 0.5, steps: float = EIGHTH) -> BackingFabric:
    return BackingFabric(usable, seam=seam, straightening=0.0, buy_in_steps_of=steps)


def _ways(wide: float, high: float, fabric: BackingFabric) -> dict[str, BackingChoice]:
    return {way.way: way for way in backing_ways(wide, high, 1, fabric)}


def test_three_widths_for_120_by_96() -> None:
    """112 x 88 with 4 in a side: three widths of 96 = 288 in; 8 yd rounded once, 8 1/4 when each length is rounded.

    Backing thread (112 x 88), Quilters Club of America,
    http://www.quiltersclubofamerica.com/forums/p/24983/250850.aspx
    """
    best = backing_ways(112 + 8, 88 + 8, 1, _fabric(42))[0]
    assert (3, 288.0, 8 * YARD) == (best.widths, best.length_in, best.buy_in)
    assert 8.25 * YARD == best.widths * round_to(96, QUARTER, Rounding.UP)


def test_two_lengths_of_56_when_the_seam_is_forgotten() -> None:
    """80 x 56: 2 x 56 = 112 in = 3.11 yd, bought as 3 1/8 or 3 1/4.

    Backing thread (80 x 56), Quiltingboard,
    https://www.quiltingboard.com/main-f1/printfriendly-mathematically-challenged-t290638.html
    """
    way = _ways(80, 56, _fabric(40, seam=0.0))["pieced across"]
    assert (112.0, 3.125 * YARD) == (way.length_in, way.buy_in)
    assert 3.25 * YARD == _ways(80, 56, _fabric(40, seam=0.0, steps=QUARTER))["pieced across"].buy_in


def test_trap_two_widths_of_40_are_79() -> None:
    """The same backing: a half-inch seam on both sides leaves 79, so 80 in takes a third width.

    Backing thread (80 x 56), Quiltingboard (address above).
    """
    assert 79 == joined_width(2, 40, 0.5)
    assert 79.5 == joined_width(2, 40, 0.25)
    assert (2, 3) == (widths_needed(79, 40, 0.5), widths_needed(80, 40, 0.5))
    assert 168.0 == _ways(80, 56, _fabric(40))["pieced across"].length_in


def test_three_and_three_quarter_yards_make_67_and_a_half_by_83() -> None:
    """Cut in half and joined with half-inch seams at 42 in: 135 / 2 = 67 1/2 long, 2 x 42 - 1 = 83 wide.

    Backing thread (59 x 65), Quiltingboard,
    https://www.quiltingboard.com/main-f1/need-some-measuring-help-please-t28279.html
    """
    assert 83 == joined_width(2, 42, 0.5)
    best = backing_ways(83, 67.5, 1, _fabric(42))[0]
    assert (2, 3.75 * YARD) == (best.widths, best.length_in)


def test_three_and_a_half_yards_make_about_63_by_84() -> None:
    """Cut in half, seam across: 126 / 2 = 63; two widths of 42 less their seam.

    Backing guidelines (2012), HeartStrings Quilt Project,
    https://heartstringsquiltproject.com/2012/12/20/a-few-guidelines/
    """
    best = backing_ways(63, 83, 1, _fabric(42))[0]
    assert ("pieced across", 3.5 * YARD) == (best.way, best.length_in)
    assert 84 == pytest.approx(joined_width(2, 42, 0.5), abs=1)


@pytest.mark.parametrize(
    ("wide", "long", "widths", "length", "yards"),
    [(72, 90, 2, 98, 5.5), (81, 96, 3, 89, 7.5), (90, 108, 3, 98, 8.25), (120, 120, 4, 128, 14.25)],
)
def test_the_rule_against_a_printed_table(wide: float, long: float, widths: int, length: float, yards: float) -> None:
    """4 in a side from 42 in fabric: 2 x 98, 3 x 89, 3 x 98, 4 x 128; print gives 5 1/2, 6, 9 and 10 yd.

    The printed twin agrees; double (6 yd) and king (10 yd) leave no real spare.
    FAQ yardage guideline, Park Bench Quilt Shop, https://parkbenchquiltshop.com/faq/
    """
    best = backing_ways(wide + 8, long + 8, 1, _fabric(42))[0]
    assert (widths, widths * length, yards * YARD) == (best.widths, best.length_in, best.buy_in)


def test_a_throw_is_backed_with_the_seam_across() -> None:
    """Batting 57 x 66: 2 x 57 = 114 in = 3.17 yd, 3 1/4 bought as printed.

    Building Blocks Throw, All People Quilt,
    https://www.allpeoplequilt.com/quilt-patterns/quilt-throws/building-blocks-throw
    """
    best = backing_ways(57, 66, 1, _fabric(42))[0]
    assert ("pieced across", 114.0, 3.25 * YARD) == (best.way, best.length_in, best.buy_in)


def test_a_short_runner_takes_half_a_yard() -> None:
    """Runner 12 1/2 x 32 1/2, backing 16 x 36: laid across one width, 16 in, 1/2 yd as printed.

    Rainbow Table Runner, All People Quilt,
    https://www.allpeoplequilt.com/quilt-patterns/table-runners/rainbow-table-runner
    """
    best = backing_ways(16, 36, 1, _fabric(42))[0]
    assert ("one width", 16.0, 0.5 * YARD) == (best.way, best.length_in, best.buy_in)


def test_one_length_does_for_a_long_runner() -> None:
    """Runner backing 22 x 58 from one length: 1 5/8 yd, where print buys 3 1/4.

    Built-to-Order Table Runner, All People Quilt,
    https://www.allpeoplequilt.com/quilt-patterns/table-runners/built-to-order-table-runner
    """
    assert 1.625 * YARD == _ways(22, 58, _fabric(42))["one width"].buy_in


def test_trap_4_in_all_round_are_8_in_in_all() -> None:
    """51 x 61 with 4 in on every side is 59 x 69; the shop's example adds 4 in in total and arrives at 55 x 65.

    How Many Yards: Backing, shop blog, http://blog.missouriquiltco.com/how-many-yards-do-i-need-backing/
    """
    laid = inches({"wide": "51", "long": "61"}, {"spare_x": 4.0, "spare_y": 4.0, "draw_up_x": 0.0, "draw_up_y": 0.0})
    assert (59.0, 69.0) == (laid.base.wide, laid.base.high)


def test_the_shortcut_of_double_the_length_and_half_a_yard() -> None:
    """70 square: 140 + 18 = 158 in, two lengths of 79; ours with 4 in a side is 2 x 78 = 156, 2 in less.

    How Do You Measure a Quilt for Backing? (question page),
    https://vandcdesign.com/yarning/how-do-you-measure-a-quilt-for-backing.html
    """
    best = backing_ways(78, 78, 1, _fabric(40))[0]
    assert 156.0 == best.length_in
    assert 0 <= 2 * 70 + 18 - best.length_in <= 2


@pytest.mark.parametrize(
    "spare",
    [
        1,  # handbook, pot holder to place mat: Finishing Your Quilt (ch. 5 of a How to Make a Quilt handbook),
        # https://trantor.is/content/kw9KNWB7q2-hlr2a/HowToMakeQuilt-ebook-8.xhtml (2 for a small quilt, 3 to 4 above)
        2,  # Quilt Backing, St Croix quilters guild, http://www.stcroixquilters.com/quiltbacking.htm (2 to 3)
        3,  # Five steps to calculate backing yardage, QUILTsocial magazine,
        # https://quiltsocial.com/5-quick-steps-to-calculate-yardage-for-quilt-backing-3-styles/amp/ (3 to 4)
        4,  # How Many Yards: Backing, shop blog (address above)
        5,  # Quilt Top and Backing Preparation, long-arm service page, http://quiltyourquilt.com/quilt-top-prep.html
        6,  # How Do You Measure a Quilt for Backing? (address above)
    ],
)
def test_every_printed_spare_per_side_can_be_set(spare: float) -> None:
    """A 36 x 45 top with so much on every side is 2 x that much larger each way."""
    laid = inches(
        {"wide": "36", "long": "45"}, {"spare_x": spare, "spare_y": spare, "draw_up_x": 0.0, "draw_up_y": 0.0}
    )
    assert (36 + 2 * spare, 45 + 2 * spare) == (laid.base.wide, laid.base.high)


@pytest.mark.parametrize(
    ("usable", "widths"),
    [
        (40, 3),  # How to Figure Yardage for a Quilt, https://featheredstar.wordpress.com/category/faqs/
        (42, 2),  # Quilt-As-You-Go Place Mat, All People Quilt,
        # https://www.allpeoplequilt.com/quilt-patterns/table-runners/quilt-you-go-place-mat-pattern
        (44, 2),  # Math Charts (2002), Quilter's Cache, http://www.quilterscache.com/M/MathChartsPage.html
    ],
)
def test_the_usable_width_in_print_decides_the_count(usable: float, widths: int) -> None:
    """82 in wide takes three widths of 40 (79 joined) but two of 42 (83) or 44 (87)."""
    assert widths == widths_needed(82, usable, 0.5)


def test_the_tip_to_seam_across_reverses_with_an_overhang() -> None:
    """60 x 79: two widths of 40 give 79 with nothing over; with 4 in a side across takes 204 in, along 174.

    Tips and tricks, quilt shop page, http://onceuponaquilt.blogspot.com/p/tips-and-tricks.html
    """
    assert 120.0 == _ways(60, 79, _fabric(40))["pieced across"].length_in
    assert 79 == joined_width(2, 40, 0.5)
    ways = _ways(68, 87, _fabric(40))
    assert (204.0, 174.0) == (ways["pieced across"].length_in, ways["pieced along"].length_in)
    assert "pieced along" == backing_ways(68, 87, 1, _fabric(40))[0].way


def test_two_lengths_as_long_as_the_quilt_leave_nothing_to_trim() -> None:
    """59 x 72 from 2 x 2 yd: with 4 in at each end it is 2 x 80 = 160 in, 4 1/2 yd.

    Quiltingboard answer, https://www.quiltingboard.com/4724601-post4.html
    """
    way = _ways(67, 80, _fabric(40))["pieced along"]
    assert (160.0, 4.5 * YARD) == (way.length_in, way.buy_in)


def test_a_backing_cut_to_the_size_of_the_top_is_8_in_short() -> None:
    """96 square, planned 104: each of two fills replaces 8 in and is cut 8 1/2 (8 + two 1/4 in seams).

    Some very bad math and other stories (2022), https://agilejack1.com/2022/05/19/some-very-bad-math-and-other-stories/
    """
    laid = inches({"wide": "96", "long": "96"}, {"spare_x": 4.0, "spare_y": 4.0, "draw_up_x": 0.0, "draw_up_y": 0.0})
    assert 8 == laid.base.wide - 96
    assert 104 == joined_length([96, 8.5], join_cost(8.5, 0.25, Join.STRAIGHT))


def test_wide_backing_bears_a_top_of_99() -> None:
    """108 in less 1 in for selvages and 8 in of spare: 99; a top of 102 keeps 2 1/2 in a side, not 4.

    Stash enhancement over the weekend (2013),
    http://sewinginwisconsin.blogspot.com/2013/11/stash-enhancement-over-weekend.html
    """
    numbers = {"spare_x": 4.0, "spare_y": 4.0, "draw_up_x": 0.0, "draw_up_y": 0.0}
    assert 1 == widths_needed(inches({"wide": "99", "long": "60"}, numbers).base.wide, 107, 0.5)
    assert 2 == widths_needed(inches({"wide": "102", "long": "60"}, numbers).base.wide, 107, 0.5)
    given = inches({"wide": "102", "long": "60"}, numbers, base={"wide": "107", "long": "68"}).base
    assert 2.5 == given.spare_x
