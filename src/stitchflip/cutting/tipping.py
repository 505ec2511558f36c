"""Tipping points: the half inch that costs a whole row, and the one that saves a strip.

Each fact is tried out by planning again with another width or another length, and only said when it is
certain: "still enough" needs a plan, "one more" needs a bound that leaves no way round.
"""

from __future__ import annotations

from dataclasses import replace
from math import floor
from typing import TYPE_CHECKING

from stitchflip.cutting.model import StripPiece, StripPlan, StripStock, TippingPoint
from stitchflip.cutting.purchase import Purchase, Shrinkage, purchase_for
from stitchflip.cutting.rows import RowPlan, lay_in_rows
from stitchflip.cutting.strips import Count, count_new
from stitchflip.lengths import CM_PER_INCH, Speaker, Unit
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from stitchflip.project.numbers import Numbers

_LOOKS = 400
_MOST_PIECES = 2_000
"""With more pieces only the purchase is looked at: an inch of width is not what decides then."""
_MOST_SIZES = 150
"""The same with more different sizes of squares and rectangles."""
_NOTHING_IN = 1 / 16
_TOLERANCE = 1e-6


@dataclass(frozen=True, slots=True)
class StripGroup:
    """Strips of one width with the stock they were planned from."""

    width: float
    pieces: tuple[StripPiece, ...]
    stock: tuple[StripStock, ...]
    """On hand when this width was planned, then the width of the fabric (if more can be bought)."""
    plan: StripPlan
    may_shrink_in: float
    """What every piece may be cut shorter and still reach."""

    @property
    def new_strips(self) -> int:
        """Strips of new fabric."""
        bought = {one.name for one in self.stock if one.count is None}
        return sum(strip.stock in bought for strip in self.plan.strips)

    def count_at(self, width_in: float, longer_in: float = 0.0) -> Count | None:
        """New strips at another usable width, or with longer (or shorter) pieces.

        Args:
            width_in: usable width of the fabric.
            longer_in: added to every piece; below zero for shorter ones.
        """
        stock = [replace(one, length=width_in) if one.count is None else one for one in self.stock]
        pieces = [replace(piece, length=piece.length + longer_in) for piece in self.pieces]
        return count_new(pieces, stock, _LOOKS)


@dataclass(frozen=True, slots=True)
class Bought:
    """What new fabric is cut into."""

    fabric: str
    width: float
    """Usable width."""
    groups: tuple[StripGroup, ...]
    rows: RowPlan
    used_in: float
    purchase: Purchase
    shrinkage: Shrinkage


@dataclass(frozen=True, slots=True)
class _Grid:
    """How finely widths are tried, and how far, in the maker's unit."""

    step: float
    """A sixteenth of an inch, or a millimeter."""
    plain: float
    """A half inch, or a centimeter: widths to name."""
    narrower: float
    wider: float
    longer: float

    @classmethod
    def of(cls, unit: Unit) -> _Grid:
        if unit is Unit.INCH:
            return cls(1 / 16, 0.5, 1.0, 2.0, 0.25)
        return cls(0.1 / CM_PER_INCH, 1 / CM_PER_INCH, 2.5 / CM_PER_INCH, 5 / CM_PER_INCH, 0.6 / CM_PER_INCH)


def tipping_points(bought: Bought, numbers: Numbers, unit: Unit) -> tuple[TippingPoint, ...]:
    """What little change costs or saves a strip, a row or a step of the purchase.

    Args:
        bought: what new fabric is cut into; nothing bought has no tipping points.
        numbers: straightening and the shop's steps.
        unit: the maker's unit.

    Returns:
        The tightest first; slack is how far away the change is, in inches.
    """
    if bought.purchase.buy_in <= 0:
        return ()
    teller = _Teller(bought, numbers, Speaker(unit), _Grid.of(unit))
    found = list(teller.of_purchase())
    if sum(len(group.pieces) for group in bought.groups) + sum(one.count for one in bought.rows.wanted) > _MOST_PIECES:
        return tuple(found)
    if len(bought.rows.wanted) > _MOST_SIZES:
        return tuple(found)
    for group in bought.groups:
        if not group.plan.is_whole and group.new_strips and not group.plan.left_out:
            found += [*teller.narrower(group), *teller.wider(group), *teller.longer(group), *teller.shorter(group)]
    found += teller.rows()
    return tuple(sorted(found, key=lambda point: point.slack_in))


@dataclass(frozen=True, slots=True)
class _Teller:
    bought: Bought
    numbers: Numbers
    say: Speaker
    grid: _Grid

    # --- the purchase --------------------------------------------------------------------------------------

    def of_purchase(self) -> Iterator[TippingPoint]:
        """Nothing to spare, said with what the purchase is made of."""
        spare = self.bought.purchase.spare_in
        if spare >= _NOTHING_IN - _TOLERANCE:
            return
        more = self.bought.purchase.buy_in + self.numbers.buy_in_steps_of
        washed = ", with what washing takes," if self.bought.shrinkage.along else ""
        what = (
            f"{self.bought.fabric}: {self.say.near(self.bought.used_in)} of cuts and "
            f"{self.say.near(self.numbers.straightening)} for straightening{washed} use all of "
            f"{self.say.purchase(self.bought.purchase.buy_in)}: nothing to spare. The next step is "
            f"{self.say.purchase(more)}."
        )
        yield TippingPoint(what, spare, "purchase")

    def _cost(self, used_in: float) -> str:
        """What another length of cuts means at the shop."""
        now = self.bought.purchase.buy_in
        then = purchase_for(used_in, self.numbers, self.bought.shrinkage).buy_in
        if abs(then - now) < _TOLERANCE:
            return f"; {self.say.purchase(now)} to buy all the same"
        return f"; buy {self.say.purchase(then)} instead of {self.say.purchase(now)}"

    def _fabric_wider(self, gain: float) -> str:
        return f"fabric {self.say.near(gain)} wider ({self.say.near(self.bought.width + gain)})"

    # --- strips --------------------------------------------------------------------------------------------

    def narrower(self, group: StripGroup) -> Iterator[TippingPoint]:
        """How much narrower the fabric may measure before one more strip is needed."""
        most = floor(self.grid.narrower / self.grid.step + _TOLERANCE)
        slack = self.grid.step * _last(most, lambda steps: self._serves(group, -steps * self.grid.step, 0.0))
        told = self._first_certain(group, self.bought.width - slack)
        if slack >= self.grid.narrower - _TOLERANCE or told is None:
            return
        width, count = told
        limit = (
            f"all {self.say.near(self.bought.width)} of the width are used"
            if slack < _TOLERANCE
            else f"fabric {self.say.margin(slack)} narrower is the limit"
        )
        what = (
            f"{self._strips(group)}: {limit}; at {self.say.near(width)} wide it takes {count} strips instead of "
            f"{group.new_strips}{self._cost(self._used_with(group, count))}."
        )
        yield TippingPoint(what, slack, "narrower")

    def wider(self, group: StripGroup) -> Iterator[TippingPoint]:
        """How much wider the fabric must measure to save a strip."""
        most = floor(self.grid.wider / self.grid.step + _TOLERANCE)
        if group.new_strips < 2:
            return
        steps = 1 + _last(most, lambda steps: not self._saves(group, steps * self.grid.step, 0.0))
        gain = steps * self.grid.step
        count = group.count_at(self.bought.width + gain)
        if steps > most or count is None or count.found >= group.new_strips:
            return
        what = (
            f"{self._strips(group)}: {self._fabric_wider(gain)} and {_do(count.found)} instead of {group.new_strips}, "
            f"{self.say.near(group.width * count.found)} of length instead of "
            f"{self.say.near(group.width * group.new_strips)}"
            f"{self._cost(self._used_with(group, count.found))}."
        )
        yield TippingPoint(what, gain, "wider")

    def longer(self, group: StripGroup) -> Iterator[TippingPoint]:
        """How much longer every piece may be cut."""
        if group.plan.as_you_go:
            return
        most = floor(self.grid.longer / self.grid.step + _TOLERANCE)
        slack = self.grid.step * _last(most, lambda steps: self._serves(group, 0.0, steps * self.grid.step))
        count = group.count_at(self.bought.width, slack + self.grid.step)
        if slack >= self.grid.longer - _TOLERANCE or count is None or count.bound <= group.new_strips:
            return
        limit = f"up to {self.say.margin(slack)} longer" if slack > _TOLERANCE else "no longer than planned"
        what = (
            f"{self._strips(group)}: each may be cut {limit}; more takes {count.found} strips instead of "
            f"{group.new_strips}{self._cost(self._used_with(group, count.found))}."
        )
        yield TippingPoint(what, slack, "longer")

    def shorter(self, group: StripGroup) -> Iterator[TippingPoint]:
        """How much shorter every piece must be cut to save a strip, while all still reach."""
        most = floor(group.may_shrink_in / self.grid.step + _TOLERANCE)
        if group.new_strips < 2 or most < 1:
            return
        steps = 1 + _last(most, lambda steps: not self._saves(group, 0.0, -steps * self.grid.step))
        count = group.count_at(self.bought.width, -steps * self.grid.step)
        if steps > most or count is None or count.found >= group.new_strips:
            return
        what = (
            f"{self._strips(group)}: cut each {self.say.near(steps * self.grid.step)} shorter (all still reach) and "
            f"{_do(count.found)} instead of {group.new_strips}{self._cost(self._used_with(group, count.found))}."
        )
        yield TippingPoint(what, steps * self.grid.step, "shorter")

    def _strips(self, group: StripGroup) -> str:
        return f"{self.bought.fabric}, strips {self.say.width(group.width)}"

    def _serves(self, group: StripGroup, wider_in: float, longer_in: float) -> bool:
        """A plan with no more strips than now is known."""
        count = group.count_at(self.bought.width + wider_in, longer_in)
        return count is not None and count.found <= group.new_strips

    def _saves(self, group: StripGroup, wider_in: float, longer_in: float) -> bool:
        count = group.count_at(self.bought.width + wider_in, longer_in)
        return count is not None and count.found < group.new_strips

    def _first_certain(self, group: StripGroup, limit_in: float) -> tuple[float, int] | None:
        """A plain width below the limit at which more strips are needed for certain, and how many."""
        width = self._plain_below(limit_in)
        for _ in range(3):
            count = group.count_at(width)
            if count is None:
                return None
            if count.bound > group.new_strips:
                return width, count.found
            width -= self.grid.plain
        return None

    def _plain_below(self, width_in: float) -> float:
        return self.grid.plain * floor((width_in - _TOLERANCE * 2) / self.grid.plain)

    def _used_with(self, group: StripGroup, count: int) -> float:
        return self.bought.used_in + group.width * (count - group.new_strips)

    # --- rows ----------------------------------------------------------------------------------------------

    def rows(self) -> Iterator[TippingPoint]:
        """How much narrower before a row is lost, how much wider to save one."""
        now = self.bought.rows.length_in
        if now <= 0:
            return
        most = floor(self.grid.narrower / self.grid.step + _TOLERANCE)
        slack = self.grid.step * _last(most, lambda steps: self._rows_at(-steps * self.grid.step) <= now + _TOLERANCE)
        width = self._plain_below(self.bought.width - slack)
        then = self._rows_at(width - self.bought.width)
        if slack < self.grid.narrower - _TOLERANCE and then > now + _TOLERANCE:
            yield TippingPoint(self._rows_narrower(slack, width, then), slack, "narrower")
        most = floor(self.grid.wider / self.grid.step + _TOLERANCE)
        steps = 1 + _last(most, lambda steps: self._rows_at(steps * self.grid.step) >= now - _TOLERANCE)
        gain = steps * self.grid.step
        then = self._rows_at(gain)
        if steps <= most and then < now - _TOLERANCE:
            what = (
                f"{self.bought.fabric}, rows: {self._fabric_wider(gain)} and they take "
                f"{self.say.near(then)} instead of {self.say.near(now)}"
                f"{self._cost(self.bought.used_in + then - now)}."
            )
            yield TippingPoint(what, gain, "wider")

    def _rows_narrower(self, slack: float, width: float, then: float) -> str:
        limit = (
            f"all {self.say.near(self.bought.width)} of the width are used"
            if slack < _TOLERANCE
            else f"fabric {self.say.margin(slack)} narrower is the limit"
        )
        cost = (
            f"; {self.say.near(then)} instead of {self.say.near(self.bought.rows.length_in)}"
            f"{self._cost(self.bought.used_in + then - self.bought.rows.length_in)}"
            if then < float("inf")
            else " and a piece does not fit at all"
        )
        return f"{self.bought.fabric}, rows: {limit}; at {self.say.near(width)} wide you lose a row{cost}."

    def _rows_at(self, wider_in: float) -> float:
        """Length of the rows at another width; endless when a piece does not fit."""
        plan = lay_in_rows(self.bought.width + wider_in, self.bought.rows.wanted)
        return float("inf") if plan.left_out else plan.length_in


def _last(most: int, holds: Callable[[int], bool]) -> int:
    """The last of 0 to `most` for which something holds that holds at 0 and, once lost, stays lost."""
    if most <= 0 or holds(most):
        return most
    low, high = 0, most - 1
    while low < high:
        middle = (low + high + 1) // 2
        if holds(middle):
            low = middle
        else:
            high = middle - 1
    return low


def _do(count: int) -> str:
    """So many strips, with their verb."""
    return "1 strip does" if count == 1 else f"{count} strips do"
