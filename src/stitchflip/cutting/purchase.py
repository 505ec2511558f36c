"""What to buy: what the cuts take, straightening, shrinkage, and the shop's steps.

Each of these is a number of its own, so that nobody has to guess what an amount is made of. The spare is what
the shop's rounding gives for nothing; it is never hidden in the need.
"""

from __future__ import annotations

from math import floor
from typing import TYPE_CHECKING

from stitchflip.lengths import CM_PER_INCH, Rounding, Unit, round_to
from stitchflip.project.model import Fabric, Wash
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.project.numbers import Numbers

FAT_QUARTER_IN = {Unit.INCH: (17.5, 20.5), Unit.CM: (49 / CM_PER_INCH, 53 / CM_PER_INCH)}
"""Short and long side of a fat quarter that nobody has measured yet, inches.

Source: common practice, no source; sold as 18 × 21 in or 50 × 55 cm, the selvage and the crooked cut off.
"""
_TOLERANCE = 1e-6


@dataclass(frozen=True, slots=True)
class Shrinkage:
    """What washing before cutting takes, as fractions."""

    across: float
    """Of the width between the selvages."""
    along: float
    """Of the length."""


@dataclass(frozen=True, slots=True)
class Purchase:
    """An amount to buy and what it leaves; inches of length."""

    need_in: float
    buy_in: float

    @property
    def spare_in(self) -> float:
        """What is over."""
        return max(self.buy_in - self.need_in, 0.0)


def shrinkage_of(fabric: Fabric, numbers: Numbers) -> Shrinkage:
    """What a fabric still loses when it is washed before cutting.

    Args:
        fabric: washed fabric has lost it already, precut pieces are never washed first.
        numbers: the maker's prewash numbers, zero when she does not wash first.
    """
    if fabric.washed is Wash.WASHED or fabric.precut:
        return Shrinkage(0.0, 0.0)
    return Shrinkage(numbers.prewash_across, numbers.prewash_along)


def up_to_shop_step(need_in: float, numbers: Numbers) -> float:
    """The amount a shop cuts for a need: up to the next step, and at least the smallest amount.

    Args:
        need_in: inches of length, straightening in it; nothing is bought for nothing.
        numbers: steps and smallest amount.
    """
    if need_in <= _TOLERANCE:
        return 0.0
    return max(round_to(need_in, numbers.buy_in_steps_of, Rounding.UP), numbers.buy_at_least)


def purchase_for(used_in: float, numbers: Numbers, shrinkage: Shrinkage) -> Purchase:
    """What to buy for cuts that take so much length.

    Args:
        used_in: strips and rows side by side, inches, after washing.
        numbers: straightening and the shop's steps.
        shrinkage: what washing first takes.

    Returns:
        Need and purchase; both zero when nothing is cut.
    """
    if used_in <= _TOLERANCE:
        return Purchase(0.0, 0.0)
    need = (used_in + numbers.straightening) / (1 - shrinkage.along)
    return Purchase(need, up_to_shop_step(need, numbers))


def further_strips(purchase: Purchase, widest_in: float, shrinkage: Shrinkage) -> int:
    """How many further strips of a width the purchase gives: mistakes it survives.

    Args:
        purchase: need and purchase.
        widest_in: cut width of the widest strip, or height of the tallest row.
        shrinkage: what washing first takes.
    """
    if purchase.buy_in <= 0 or widest_in <= 0:
        return 0
    return floor(purchase.spare_in * (1 - shrinkage.along) / widest_in + _TOLERANCE)
