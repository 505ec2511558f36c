"""Published binding figures against ours.

Sources are named beside each check by publisher, title and address, as read in stored copies. Rules that
disagree in print differ in the extra length and in what a join costs; both are parameters here, and where print
leaves the joins out our count with joins stands beside it.
"""

from __future__ import annotations

from itertools import pairwise
from math import ceil

import pytest

from stitchflip.finishing.binding import binding_need, plan_binding
from stitchflip.finishing.binding_start import Keep, joins_from_start
from stitchflip.finishing.binding_strips import Join, join_cost, joined_length, strips_needed
from stitchflip.finishing.binding_widths import (
    DoubleFold,
    four_fronts_and_one,
    least_cut_width,
    single_fold_cut_width,
)
from stitchflip.lengths import Rounding, round_to
from tests.finishing.scenarios import inches
from tests.twins.table import house

YARD = 36
EIGHTH, QUARTER = YARD / 8, YARD / 4


def _need(perimeter: float, extra: float) -> float:
    return binding_need(perimeter, 4, house(binding_extra=extra, binding_extra_per_corner=0.0))


@pytest.mark.parametrize(
    ("strips", "cut", "joined"),
    [([10, 10], 3, 17), ([7, 7], 5, 9), ([20, 20], 1.5, 38.5)],
)
def test_a_diagonal_join_costs_one_strip_width(strips: list[float], cut: float, joined: float) -> None:
    """Found out with paper strips: 10 + 10 at 3 in become 17, 7 + 7 at 5 become 9, 20 + 20 at 1 1/2 become 38 1/2.

    What is lost (quilt studio blog, 2012), http://www.crayonboxquiltstudio.com/2012/04/what-is-lost.html
    """
    assert joined == joined_length(strips, join_cost(cut, 0.25, Join.DIAGONAL))


def test_50_by_60_takes_six_strips_when_2_in_go_to_each_join() -> None:
    """220 / (40 - 2) = 5.79, so 6.

    Number of strips to bind a quilt (June 2013), http://castillejacotton.blogspot.com/2013/06
    """
    assert 6 == strips_needed(220, 40, 2)


@pytest.mark.parametrize(
    ("perimeter", "extra", "need"),
    [
        # Four Pines Quilting, Quilt Math, http://fourpinesquilting.blogspot.com/2011/11/quilt-math.html
        (220, 0, 220),
        # eHow UK, How to Calculate Bias, http://www.ehow.co.uk/how_7616571_calculate-bias.html
        (220, 2, 222),
        # Quilty Math handout, https://christaquilts.com/quilty-math/
        (220, 10, 230),
        # Quiltingboard, Binding math thread, http://www.quiltingboard.com/main-f1/binding-math-t189575.html
        (412, 12, 424),
        # Quiltingboard, Bias binding thread, https://www.quiltingboard.com/8276918-post1.html
        (256, 16, 272),
        # Pieceful Kwilter, Binding yardage, http://piecefulkwilter.blogspot.com/2009/11/binding-yardage.html
        (220, 20, 240),
        # How Much Fabric for Binding?,
        # https://quicktipssewing.blogspot.com/2011/11/quick-tip-how-much-fabric-for-binding.html
        (220, 24, 244),
    ],
)
def test_the_extra_of_every_printed_rule_is_a_setting(perimeter: float, extra: float, need: float) -> None:
    """From no extra at all to 24 in, the perimeter plus the extra is what is needed."""
    assert need == _need(perimeter, extra)


def test_slip_eleven_strips_are_27_and_a_half_inches() -> None:
    """96 x 110: 424 / 40 = 10.6, 11 strips of 2 1/2; the poster writes 26 1/2 and 3/4 yd, which is 1/2 in short.

    Quiltingboard, Binding math thread, http://www.quiltingboard.com/main-f1/binding-math-t189575.html
    """
    without_joins = strips_needed(_need(412, 12), 40, 0)
    assert 11 == without_joins
    assert 27.5 == without_joins * 2.5
    assert 0.75 * YARD < without_joins * 2.5
    assert 0.875 * YARD == round_to(without_joins * 2.5, EIGHTH, Rounding.UP)
    with_joins = strips_needed(_need(412, 12), 40, 2.5)
    assert 12 == with_joins  # 11 x 40 - 10 x 2 1/2 = 415 is 9 in short
    assert 0.875 * YARD == round_to(with_joins * 2.5, EIGHTH, Rounding.UP)


def test_slip_area_counts_part_strips() -> None:
    """(432 x 2 1/2) / (36 x 42) = 0.714, bought as 3/4 yd; eleven whole strips are 27 1/2 in, 1/2 in more.

    Quiltingboard, Binding math thread, http://www.quiltingboard.com/main-f1/binding-math-t189575.html
    """
    by_area = 432 * 2.5 / (36 * 42)
    assert 0.714 == pytest.approx(by_area, abs=5e-4)
    bought = round_to(by_area * YARD, QUARTER, Rounding.UP)
    assert 0.75 * YARD == bought
    assert 11 == strips_needed(432, 42, 2.5)
    assert 11 * 2.5 - bought == 0.5


def test_slip_part_strips_times_their_width() -> None:
    """40 x 50: 180 / 42 = 4.29, times 3 1/2 = 15 in and 1/2 yd in print; five whole strips are 17 1/2 in.

    Measuring for Binding, fabric shop page,
    https://cottonpatchfabrics.com/cgi-bin/Store/store.cgi?product=yardage_decimal_inches&productid=how_to_measure_for_binding
    """
    assert 15 == pytest.approx(180 / 42 * 3.5)
    assert 5 == strips_needed(180, 42, 3.5)
    assert 17.5 == 5 * 3.5


def test_a_table_topper_needs_the_strip_that_the_lesson_adds_for_peace_of_mind() -> None:
    """114 in round: 114 / 45 gives three strips "and one to spare"; three make 115 (40 in) or 121 (42 in) of 126.

    Learn How to Quilt, Binding, How Long?,
    https://learnhowtoquilt.com/quilt-tutorials/finishing-the-quilt/double-fold-binding/binding-how-long/
    """
    need = _need(114, 12)
    assert (115, 121) == (joined_length([40] * 3, 2.5), joined_length([42] * 3, 2.5))
    assert need > 121
    assert (4, 4) == (strips_needed(need, 40, 2.5), strips_needed(need, 42, 2.5))
    assert 152.5 == joined_length([40] * 4, 2.5)


@pytest.mark.parametrize(("extra", "strips"), [(10, 4), (12, 5)])
def test_the_extra_decides_between_four_and_five_strips(extra: float, strips: int) -> None:
    """Runner 25 1/4 x 49 1/4 from 42 in fabric with four 2 1/2 in strips: 160 1/2 made, 159 or 161 needed.

    All People Quilt, Log Cabin Table Runner,
    https://www.allpeoplequilt.com/quilt-patterns/table-runners/log-cabin-table-runner
    """
    assert strips == strips_needed(_need(2 * (25.25 + 49.25), extra), 42, 2.5)


@pytest.mark.parametrize(
    ("lengths", "net"),
    [
        # All People Quilt, Quilt-As-You-Go Place Mat,
        # https://www.allpeoplequilt.com/quilt-patterns/table-runners/quilt-you-go-place-mat-pattern
        ([42, 42], 81.5),
        # All People Quilt, Quilt-As-You-Go Table Mat,
        # https://www.allpeoplequilt.com/quilt-patterns/table-runners/quilt-you-go-table-mat
        ([21, 21, 21, 21], 76.5),
    ],
)
def test_magazine_mats_have_enough_binding_for_60_in(lengths: list[float], net: float) -> None:
    """Two full strips or four from fat quarters, 2 1/2 in wide, leave 81 1/2 and 76 1/2 in after the joins."""
    assert net == joined_length(lengths, 2.5)
    assert net >= _need(60, 12)


def test_a_join_may_be_charged_twice_its_width() -> None:
    """Border 3 in wide at 6 in a join: 272 needed, six strips of 42 give 252; without joins 20 short.

    Quilt Math (border shortage, April 2022), https://jmncreativeendeavours.ca/2022/04/18/
    """
    assert 272 == 4 * (56 + 6 + 6)
    assert 20 == 272 - joined_length([42] * 6, 0)
    assert 7 == strips_needed(272, 42, 0)
    assert 8 == strips_needed(272, 42, 6)  # 7 x 42 - 6 x 6 = 258


@pytest.mark.parametrize(("front", "cut"), [(0.25, 2), (0.375, 2.5), (0.5, 3), (0.75, 4), (1, 5)])
def test_the_rule_four_fronts_and_one(front: float, cut: float) -> None:
    """Cut widths for finished 1/4, 3/8, 1/2, 3/4, 1 in; beside each, by how much it passes the stitching.

    Along Came Quilting, What Size Binding Would You Like?,
    https://alongcamequilting.com/blogs/blog/what-size-binding-would-you-like-with-that-ma-am
    """
    assert cut == four_fronts_and_one(front)
    flat = DoubleFold(cut, front, front, loft=0.0)
    assert 0.5 - front == pytest.approx(flat.passes_stitching)


def test_a_three_inch_strip_makes_a_half_inch_binding() -> None:
    """Cut 3, half-inch seam: half an inch on both faces, before the layers take their thickness.

    Learn How to Quilt, Binding, How Wide?,
    https://learnhowtoquilt.com/quilt-tutorials/finishing-the-quilt/double-fold-binding/binding-how-wide/
    """
    assert 3 == four_fronts_and_one(0.5)
    assert 0.5 == DoubleFold(3, 0.5, 0.5, loft=0.0).shows_on_back


@pytest.mark.parametrize("cut", [2.0, 2.25, 2.5, 2.75, 3.5])
def test_every_printed_strip_width_passes_a_quarter_inch_stitching(cut: float) -> None:
    """Widths in print for a 1/4 in seam all reach beyond the stitching over cotton batting 1/8 in thick.

    Measuring for Binding, fabric shop page (address above); How Much Fabric for Binding?,
    https://quicktipssewing.blogspot.com/2011/11/quick-tip-how-much-fabric-for-binding.html
    """
    plan = inches({"wide": "12", "long": "18"}, {"binding_cut": cut})
    assert DoubleFold(plan.numbers.binding_cut, 0.25, 0.25, 0.125).passes_stitching > 0


@pytest.mark.parametrize(("thickness", "cut"), [(0.0625, 1.625), (0.25, 2.0)])
def test_six_fronts_and_the_thickness(thickness: float, cut: float) -> None:
    """Rule of thumb, from memory, no source: 6F plus 1/8 to 1/2; for 1/4 in about 1 5/8 to 2."""
    assert cut == least_cut_width(seam=0.25, front=0.25, loft=thickness, passes=0.0)


def test_single_fold_for_a_quarter_inch() -> None:
    """Finished 1/4 from a strip cut 1 1/8 with a 1/4 in seam.

    How Wide Do I Cut Fabric for Binding? (question page),
    https://mixedupcreativeacademy.com/qa/how-wide-do-i-cut-fabric-for-binding.html
    """
    assert 1.125 == single_fold_cut_width(0.25, 0.125)


def test_nine_strips_take_22_and_a_half_inches() -> None:
    """Queen: 9 strips, "about 23 in".

    How Wide Do I Cut Fabric for Binding? (question page),
    https://mixedupcreativeacademy.com/qa/how-wide-do-i-cut-fabric-for-binding.html
    """
    assert 22.5 == 9 * 2.5
    assert 23 == ceil(9 * 2.5)
    assert 340.0 == joined_length([40] * 9, 2.5)  # 9 x 40 - 8 x 2 1/2
    assert 9 == strips_needed(340, 40, 2.5)


def test_seven_strips_are_short_of_the_printed_need_once_joined() -> None:
    """66 x 58 at 268: 268 / 40 = 6.7, so 7; mitred they make 265, enough for 248 + 12 but not for 268.

    How to figure yardage, quilt shop blog,
    https://blog.missouriquiltco.com/tag/how-to-figure-yardage/
    """
    assert 7 == strips_needed(_need(248, 20), 40, 0)
    assert 265 == joined_length([40] * 7, 2.5)
    assert 7 == strips_needed(_need(248, 12), 40, 2.5)
    assert 8 == strips_needed(_need(248, 20), 40, 2.5)


def test_seven_narrow_strips_reach_when_butted_only() -> None:
    """78 x 56 with 2 in strips: 276 needed; seven mitred make 268, with straight seams 277.

    Tips and tricks, quilt shop page, http://onceuponaquilt.blogspot.com/p/tips-and-tricks.html
    """
    assert 268 == joined_length([40] * 7, join_cost(2, 0.25, Join.DIAGONAL))
    assert 277 == joined_length([40] * 7, join_cost(2, 0.25, Join.STRAIGHT))
    assert (8, 7) == (strips_needed(276, 40, 2), strips_needed(276, 40, 0.5))


def test_the_bias_square_is_no_answer_for_straight_strips() -> None:
    """51 x 61: 244 x 2 1/2 = 610, root 24.7, printed as 0.68 yd; straight strips take seven, 17 1/2 in, 1/2 yd.

    How many yards do I need: binding, quilt shop blog,
    http://blog.missouriquiltco.com/how-many-yards-do-i-need-binding/
    """
    assert 24.7 == pytest.approx((244 * 2.5) ** 0.5, abs=0.05)
    strips = strips_needed(_need(224, 20), 40, 2.5)
    assert 7 == strips
    assert 0.5 * YARD == round_to(strips * 2.5, EIGHTH, Rounding.UP)


def test_a_binding_that_shows_three_quarters_is_cut_4() -> None:
    """3/4 in front and back with a 1/4 in seam and 1/4 for batting and cover: 4 in; 3 1/4 does not even fold round.

    A squeaky finish (2015), http://grammilousgarden.blogspot.com/2015/06/a-squeaky-finish.html
    """
    assert 4 == least_cut_width(seam=0.25, front=0.75, loft=0.25, passes=0.0)
    assert DoubleFold(3.25, 0.25, 0.75, loft=0.0).passes_stitching < 0


@pytest.mark.parametrize(("cut", "passes"), [(1.875, 1 / 16), (2, 1 / 8), (2.25, 1 / 4), (2.5, 3 / 8), (3, 5 / 8)])
def test_how_far_common_widths_pass_the_stitching(cut: float, passes: float) -> None:
    """At 1/4 in seam and 1/8 loft; over 1/4 in loft a 2 in strip does not pass at all.

    How wide is your binding? (2015), http://www.somethingstitched.com/2015/11/03/how-wide-is-your-binding/
    and 2 1/2 or 2 1/4? (2010), http://www.littlebluebell.com/2010/05/2-12-or-2-14.html
    """
    assert passes == DoubleFold(cut, 0.25, 0.25, loft=0.125).passes_stitching
    assert 0 == DoubleFold(2, 0.25, 0.25, loft=0.25).passes_stitching


def test_five_joins_from_one_fat_quarter_repeat_every_18_and_three_quarters() -> None:
    """20 x 30: six strips of 21 at 2 1/4 make 114 3/4, more than 100 + 10; 13 1/2 in of the quarter's 18.

    It's about those joins (2019), https://quilton.blogspot.com/2019/06/its-about-those-joins.html
    """
    need = _need(100, 10)
    assert 6 == strips_needed(need, 21, 2.25)
    assert 114.75 == joined_length([21] * 6, 2.25)
    assert 6 * 2.25 <= 18
    joins = joins_from_start([21] * 6, Keep(6, 2, 8, 0.25, 1, 2.25), 100)
    assert [18.75] * 4 == [after - before for before, after in pairwise(joins)]


def test_the_start_of_that_binding_keeps_its_joins_off_the_corners() -> None:
    """The same piece from one fat quarter: the planned start brings no join within 2 in of the four corners.

    It's about those joins (2019), address above.
    """
    quarter = {"wide": "18", "long": "21", "name": "fat quarter"}
    laid = inches(
        {"wide": "20", "long": "30"},
        {"binding_cut": 2.25, "fat_quarter_straightening": 0.0, "binding_extra_per_corner": 0.0},
        fabrics=[{"name": "Linen", "only_on_hand": True, "on_hand": [quarter]}],
    )
    plan = plan_binding(laid.project, laid.numbers, laid.trim)
    assert (6, 114.75) == (plan.strips, plan.made)
    assert 5 == len(plan.joins_at)
    assert "2\u202fin or more from corners" in plan.start_at


def test_a_print_along_the_selvage_more_than_doubles_the_strips() -> None:
    """Half a yard cut the short way gives strips of 18, net 15 1/2: 16 strips for 250 in, against 7 crosswise.

    Trimming successes (2025), http://hydeeannsews.blogspot.com/2025/03/trimming-successes.html
    """
    assert (16, 7) == (strips_needed(250, 18, 2.5), strips_needed(250, 40, 2.5))
