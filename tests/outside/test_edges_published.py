"""Published figures for bias binding, wide bindings, corners, sleeves and what is added later, against ours.

Sources are named beside each check by publisher, title and address, as read in stored copies.
"""

from __future__ import annotations

from math import floor, sqrt

import pytest

from stitchflip.cutting.bias import bias_tube
from stitchflip.finishing import plan_backing, plan_extras, plan_panels
from stitchflip.finishing.bias import (
    bias_squares,
    bias_strips,
    length_from_square,
    square_by_rule,
    strips_across,
)
from stitchflip.finishing.binding_widths import least_cut_width
from stitchflip.finishing.sleeve import sleeve_for
from stitchflip.lengths import Unit
from stitchflip.piecing import build_project
from stitchflip.project.numbers import effective
from tests.finishing.scenarios import Laid, inches


@pytest.mark.parametrize(
    ("length", "cut", "side"),
    [
        # Making continuous bias binding, soft-furnishing FAQ,
        # https://www.mydecozo.co.uk/forum/mydecozo/soft-furnishing-faq-s/680-making-continuous-piping-strips-bias-binding
        (250, 2, 23),
        # Quilters Question Time (2021), How Much Fabric for Bias Binding?,
        # https://www.quiltersquestiontime.com/blog/how-do-i-calculate-how-much-fabric-i-need-for-bias-binding
        (100, 3.5, 19),
        # Miles and miles (2008), http://quiltinjenny.blogspot.com/2008/07/miles-and-miles.html
        (450, 2.25, 32),
    ],
)
def test_the_square_for_a_bias_binding_is_the_root_of_its_area(length: float, cut: float, side: int) -> None:
    """250 at 2 from 23 in square, 100 at 3 1/2 from 19, 420 + 30 at 2 1/4 from 32."""
    assert side == square_by_rule(length, cut)


@pytest.mark.parametrize(
    ("length", "cut", "rule", "turns", "side"), [(250, 2, 23, 7, 24), (100, 3.5, 19, 3, 21), (450, 2.25, 32, 9, 33)]
)
def test_the_rule_leaves_out_the_seams_of_the_tube_and_the_part_turn(
    length: float, cut: float, rule: int, turns: int, side: int
) -> None:
    """Whole turns only, each as long as the bias edge, fall short from the squares of the rule.

    7 of 22 1/2 root 2 = 223, 3 of 18 1/2 root 2 = 78, 9 of 31 1/2 root 2 = 401; 24 in give 8 turns = 266, 21 four =
    116, 33 ten = 460. Sources as above.
    """
    squares = bias_squares(length, cut, 0.25, 60, cut, Unit.INCH)

    assert side == squares.side
    assert pytest.approx(turns * (rule - 0.5) * sqrt(2)) == length_from_square(rule, cut, 0.25)
    assert length_from_square(rule, cut, 0.25) < length <= length_from_square(side, cut, 0.25)


def test_a_40_inch_square_is_far_too_much_for_105_in_square() -> None:
    """1600 / 2 1/4 = 711 in from a square of 40, and 450 were needed: 261 in left over.

    Miles and miles (2008), http://quiltinjenny.blogspot.com/2008/07/miles-and-miles.html
    """
    assert 711 == floor(40**2 / 2.25)
    assert 261 == floor(40**2 / 2.25) - 450
    assert 450 <= bias_squares(450, 2.25, 0.25, 40, 2.25, Unit.INCH).made < 711


def test_a_square_of_20_has_190_in_of_area_and_165_in_of_whole_turns() -> None:
    """(20 - 2 x 1/4)^2 / 2 = 190; 19 1/2 / (2 root 2) = 6.9, so 6 turns of 27.58 = 165; pure geometry, no print."""
    tube = bias_tube(20, 20, 2, 0.25)
    assert (190, 165) == (round(tube.by_area), round(length_from_square(20, 2, 0.25)))


def test_eleven_bias_strips_lie_in_40_in() -> None:
    """40 / (2 1/2 x root 2) = 11.31; two makers divide the total by 11.

    Cutting Bias Binding, http://koolqlt.blogspot.com/ and Quiltingboard, Bias binding thread,
    https://www.quiltingboard.com/8276918-post1.html
    """
    assert 11.31 == round(40 / (2.5 * sqrt(2)), 2)
    assert 11 == strips_across(40, 2.5)


def test_272_in_of_bias_from_eleven_strips() -> None:
    """64 in square: 256 + 16 = 272; a maker divides by 11. With the joins charged eleven strips still do.

    Quiltingboard, Bias binding thread, https://www.quiltingboard.com/8276918-post1.html
    """
    strips = bias_strips(272, 2.5, 40, 2.5, Unit.INCH)
    assert 11 == strips.count
    assert strips.long > 272 / 11


@pytest.mark.parametrize(("perimeter", "yards"), [(200, 7 / 8), (350, 9 / 8)])
def test_a_shops_yardage_for_bias_holds_our_square(perimeter: float, yards: float) -> None:
    """Up to 200 in 7/8 yd, to 350 1 1/8 yd, for 3 1/2 in strips: the squares fit that length.

    Its 1 1/3 yd for 525 in are a rectangle 48 in long, not a square of 44: that is checked with the tubes.

    Measuring for Binding, fabric shop page,
    https://cottonpatchfabrics.com/cgi-bin/Store/store.cgi?product=yardage_decimal_inches&productid=how_to_measure_for_binding
    """
    squares = bias_squares(perimeter, 3.5, 0.25, 44, 3.5, Unit.INCH)
    assert 1 == squares.count
    assert squares.side <= 36 * yards


def test_a_binding_that_shows_three_quarters_is_cut_4_in() -> None:
    """Seam 1/4, front 3/4, back 3/4, batting and cover 1/4: 2 in folded.

    A squeaky finish (2015), http://grammilousgarden.blogspot.com/2015/06/a-squeaky-finish.html
    """
    assert 2 * (0.25 + 0.75 + 0.75 + 0.25) == least_cut_width(seam=0.25, front=0.75, loft=0.25, passes=0.0)


@pytest.mark.parametrize("further", [1 / 8, 1 / 4])
def test_trimmed_further_out_to_save_the_points_the_binding_is_wider_by_four_times_that(further: float) -> None:
    """Front and back, both layers: 1/8 further out on the batting makes 2 1/2 into 3.

    10 Simple Things, 9: Trim Your Quilts Well,
    https://quiltersplaycation.com/blog-1/10-simple-things-9-trim-your-quilts-well
    """
    usual = least_cut_width(seam=0.25, front=0.25, loft=0.125, passes=0.375)
    wider = least_cut_width(seam=0.25, front=0.25 + further, loft=0.125, passes=0.375)

    assert 2.5 == usual
    assert usual + 4 * further == wider


def test_a_show_sleeve_finishes_4_in() -> None:
    """Cut 8 1/2 wide: (8 1/2 - 1/2) / 2 = 4; 2 in longer than the edge with 1 1/2 in hems leaves it 1 in shorter.

    Ours is cut as long as the edge and hemmed by 1 in, so it ends up 2 in shorter; a piece of 30 in hangs from both.
    International Quilt Association, Instructions for Making Sleeves, http://www.quilts.com/IQA/quiltsleeves.htm
    """
    ours = sleeve_for(30, 0.25, Unit.INCH)
    assert (4, 28) == (ours.finished_wide, ours.finished_long)
    assert ours.finished_long <= 30 + 2 - 2 * 1.5

    laid = inches({"wide": "30", "long": "40"}, extras={"sleeve": True})
    (sleeve,) = plan_extras(laid.project, laid.numbers, laid.trim).pieces
    assert (8.5, 30) == (sleeve.wide, sleeve.long)


def test_a_wider_sleeve_of_the_guild_ends_1_to_2_in_shorter_as_well() -> None:
    """Cut 9 wide it is (9 - 1/2) / 2 = 4 1/4 flat, and 1 to 2 in shorter than the quilt; ours is 2 in shorter.

    How to Make a Hanging Sleeve, guild page, http://www.sewhappystitchers.com/how-to-make-a-hanging-sleve.html
    """
    assert 4.25 == (9 - 2 * 0.25) / 2
    assert 1 <= 30 - sleeve_for(30, 0.25, Unit.INCH).finished_long <= 2


def test_a_separate_back_is_an_inch_larger() -> None:
    """Place mat trimmed to 11 1/2 x 17 1/2 with a back 1 in larger: 12 1/2 x 18 1/2, as for a piece turned through.

    Another One off the List (QAYG placemats, Canada 2010), https://quilton.blogspot.com/2010/11/another-one-off-list.html
    """
    laid = inches(
        {"wide": "11 1/2", "long": "17 1/2"},
        base={"through": "batting only"},
        binding={"fabric": "Linen", "edge": "turned through"},
    )
    laid = Laid(laid.project, effective(laid.project))
    backing = plan_backing(laid.project, laid.numbers, laid.base)
    assert pytest.approx((12.5, 18.5)) == (backing.wide, backing.high)


def test_batting_that_is_sewn_through_alone_is_an_inch_larger_on_each_side() -> None:
    """Log cabin on batting only: at least 1 in on each side of the squared-up block, the backing added later.

    Log Cabin Quilt-as-you-go Block, Quilter's Diary, http://quiltersdiary.com/log-cabin-quilt-as-you-go-block/
    """
    laid = inches({"wide": "13", "long": "13"}, base={"through": "batting only"})
    laid = Laid(laid.project, effective(laid.project))
    assert laid.base.spare_x >= 1
    assert laid.base.wide >= 15


def test_a_seam_that_a_cut_opens_is_held_by_nothing_and_must_be_locked() -> None:
    """Backstitch where the piece will not be cut again and nothing crosses; knot off what nothing will cross.

    Before the cut both ends of every row are caught in the binding at the left and right; the cut makes two more ends
    of each, and nothing crosses them.
    Do You Backstitch? (2018), https://inastitchquilting.com/2018/03/09/do-you-backstitch/ and
    QAYG: build your block on the batting,
    http://farmhousequilts.blog/tutorials/quilt-as-you-go-build-your-block-on-the-batting-method/
    """
    laid = inches(
        {"wide": "9", "long": "12"},
        cut_apart={"across": 2},
        building={"way": "rows of strips", "rows_from": "one end", "until_covered": True},
        rounds=[{"cut": "2 1/2", "fabric": "Linen"}] * 2,
    )
    build = build_project(laid.project, laid.numbers)
    panels = plan_panels(laid.project, laid.numbers, build)

    assert panels is not None
    assert {"caught"} == {
        end.kind.value for strip in build.strips if strip.seam for end in (strip.seam.start, strip.seam.end)
    }
    assert [strip.step for strip in build.strips] == [step for step, _ in panels.ends_to_lock]
