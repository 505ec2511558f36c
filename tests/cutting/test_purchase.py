"""The shop's steps, straightening, shrinkage, and the mistakes a purchase survives."""

from __future__ import annotations

import pytest

from stitchflip.cutting.purchase import Purchase, Shrinkage, further_strips, purchase_for, up_to_shop_step
from tests.cutting.lists import CM, METRIC, YARD
from tests.twins.table import house

NOTHING = Shrinkage(0, 0)


@pytest.mark.parametrize(
    ("need", "eighths"), [(0, 0), (0.5, 2), (9, 2), (9.0000005, 2), (9.01, 3), (13.5, 3), (35.9, 8), (36.1, 9)]
)
def test_purchases_go_up_to_the_next_eighth_and_start_at_a_quarter(need: float, eighths: int) -> None:
    """Nothing for nothing; a hair over a step within the tolerance is the step."""
    assert eighths * YARD / 8 == pytest.approx(up_to_shop_step(need, house()))


@pytest.mark.parametrize(("need_cm", "buy_cm"), [(3, 20), (20, 20), (20.1, 30), (33, 40), (103, 110)])
def test_metric_purchases_go_up_by_ten_centimeters(need_cm: float, buy_cm: float) -> None:
    """At least 20 cm."""
    assert buy_cm == pytest.approx(up_to_shop_step(need_cm * CM, METRIC) / CM)


def test_straightening_is_charged_once_for_each_purchase() -> None:
    """15 in of cuts less 1 in of straightening need 15 in of fabric."""
    assert Purchase(15, 18) == purchase_for(14, house(), NOTHING)


def test_shrinkage_along_the_length_is_charged_before_rounding() -> None:
    """14 + 1 in at 3 % are 15.46 in, and 18 in are bought."""
    bought = purchase_for(14, house(), Shrinkage(0, 0.03))

    assert 15 / 0.97 == pytest.approx(bought.need_in)
    assert 18 == bought.buy_in


@pytest.mark.parametrize(("used", "widest", "further"), [(4.5, 1.5, 2), (7.5, 2.5, 0), (5, 2.5, 1), (8, 2, 0)])
def test_mistakes_a_purchase_survives(used: float, widest: float, further: int) -> None:
    """A quarter yard: what is over, in whole strips of the widest width."""
    assert further == further_strips(purchase_for(used, house(), NOTHING), widest, NOTHING)


def test_no_purchase_survives_no_mistake() -> None:
    """From the shelf alone there is no spare to count."""
    assert 0 == further_strips(Purchase(0, 0), 2, NOTHING)
