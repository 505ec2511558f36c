"""Published numbers for borders cut along the fabric, and for bias strips and tubes from any piece."""

from __future__ import annotations

from math import sqrt

import pytest

from stitchflip.cutting.bias import bias_lengths, bias_tube, square_by_rule, square_for, strips_across
from stitchflip.cutting.stripes import Stripes, border_length, per_width, plan_borders
from tests.twins.table import house


@pytest.mark.parametrize(("cut", "four"), [(10.5, True), (10.625, False)])
def test_four_borders_lie_in_42_in_when_each_is_at_most_10_and_a_half(cut: float, four: bool) -> None:  # noqa: FBT001  a row of the table
    """Four times 10 1/2 is 42.

    Border Tips and Techniques, quilt shop, https://www.fabricessentials.com/border-tips.htm
    """
    assert four == (per_width(Stripes(), 42, cut).surely >= 4)


def test_borders_of_a_quilt_80_in_long_take_two_and_a_half_yards() -> None:
    """80 + 10 spare = 90 in = 2 1/2 yd; 12 in borders need 48 of 42, so two lengths of 90 = 5 yd.

    Border yardage answer (80 in), Quiltingboard, https://www.quiltingboard.com/511807-post6.html
    """
    assert 2.5 == plan_borders(Stripes(), 42, 10, [90] * 4).used_in / 36
    assert 5 == plan_borders(Stripes(), 42, 12, [90] * 4).used_in / 36


def test_a_border_along_60_by_72_is_cut_82_in() -> None:
    """72 + 4 + 4 + 2 = 82; mitered ones take about 10 in more than the side.

    Border yardage thread (60 x 72), Quiltingboard,
    https://www.quiltingboard.com/main-f1/amount-yardage-pieced-quilt-t65217.html
    """
    assert 82 == border_length(72, 4)
    assert 10 == border_length(72, 4) - 72


def test_all_four_borders_are_cut_from_the_same_stripes() -> None:
    """Mirror-image stripes, all four cut alike, make mitered corners match: one place of the stripe for each.

    Border Stripes, About.com Quilting, http://quilting.about.com/od/quiltpatternsprojects/ss/quick_quilt_3.htm
    """
    plan = plan_borders(Stripes(6), 40, 4.5, [82, 82, 70, 70])
    assert 1 == len(plan.groups)
    assert 0 == plan.per_width.pitch % 6


@pytest.mark.parametrize(("length", "cut", "rule", "turns", "side"), [(250, 2, 23, 7, 24), (100, 3.5, 19, 3, 21)])
def test_the_rule_of_the_square_falls_short_by_the_part_turn(
    length: float, cut: float, rule: int, turns: int, side: int
) -> None:
    """250 in at 2 by the rule from 23 in: 7 whole turns of 22 1/2 root 2 = 222.7. 100 at 3 1/2 from 19: 3 turns, 78.5.

    With 24 in: 8 turns of 23 1/2 root 2 = 265.9; with 21 in: 4 turns of 20 1/2 root 2 = 116.
    Making continuous bias binding, soft-furnishing FAQ,
    https://www.mydecozo.co.uk/forum/mydecozo/soft-furnishing-faq-s/680-making-continuous-piping-strips-bias-binding
    How Much Fabric for Bias Binding?, Quilters Question Time (2021),
    https://www.quiltersquestiontime.com/blog/how-do-i-calculate-how-much-fabric-i-need-for-bias-binding
    """
    assert rule == square_by_rule(length, cut)
    tube = bias_tube(rule, rule, cut, 0.25)
    assert turns == tube.turns
    assert pytest.approx(turns * (rule - 0.5) * sqrt(2)) == tube.made
    assert tube.made < length
    assert side == square_for(length, cut, 0.25)


def test_a_shop_table_holds_with_the_part_turn_charged() -> None:
    """Up to 200 in 7/8 yd, to 350 1 1/8 yd, to 525 1 1/3 yd, strips of 3 1/2: a tube of the length by 42 in does.

    Measuring for Binding, fabric shop page,
    https://cottonpatchfabrics.com/cgi-bin/Store/store.cgi?product=yardage_decimal_inches&productid=how_to_measure_for_binding
    """
    made = [bias_tube(42, 36 * yards, 3.5, 0.25).made for yards in (7 / 8, 9 / 8, 4 / 3)]
    assert [True] * 3 == [found >= need for found, need in zip(made, (200, 350, 525), strict=True)]


def test_eleven_strips_lie_across_and_give_their_lengths_exactly() -> None:
    """11 of 2 1/2 in in 40; from 12 in of it eleven cuts meet both sides or one, joined at slanted ends.

    Cutting Bias Binding, http://koolqlt.blogspot.com/
    """
    strips = bias_lengths(40, 12, 2.5)
    assert 11 == strips_across(40, 2.5)
    assert 11 <= len(strips.lengths)
    assert pytest.approx(12 * sqrt(2)) == max(strips.lengths)
    assert strips.made < 40 * 12 / 2.5


def test_a_repeat_for_mistakes_is_bought_on_top() -> None:
    """126 in of six repeats and one more: 147 in, straightening apart, 4 1/8 yd; the answer in print says 4 or 5.

    Repeat yardage answer, Quiltingboard, https://www.quiltingboard.com/2385823-post8.html
    """
    from stitchflip.cutting.purchase import up_to_shop_step

    assert 4.125 == up_to_shop_step(6 * 21 + 21, house()) / 36
