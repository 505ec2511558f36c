"""A plan straight from the linear program: keep what it uses whole, round the fullest part up, ask it again.

After every step better strips are found for what is left, so the last strips fit what the first ones left over.
"""

from __future__ import annotations

from random import Random
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.columns.column import Column, rounded_up
from stitchflip.cutting.layouts.columns.generating import generated
from stitchflip.cutting.layouts.columns.master import Master
from stitchflip.cutting.layouts.columns.strips import strip_pricer
from stitchflip.cutting.layouts.columns.trimming import cut_down

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.columns.column import Plan
    from stitchflip.cutting.layouts.columns.strips import StripKnapsack
    from stitchflip.cutting.layouts.watch import Watch

_HAIR = 1e-6
_SHAKEN = 0.3
"""With a seed, parts are compared after adding up to so much by chance."""


class Dive:
    """One dive into a plan.

    Args:
        knapsack: finds strips.
        wanted: pieces of each kind.
        columns: strips known to be good.
        seed: 0 always rounds the fullest part up; another number takes chances.
    """

    def __init__(self, knapsack: StripKnapsack, wanted: Sequence[int], columns: Sequence[Column], seed: int) -> None:
        self._knapsack, self._left, self._random = knapsack, list(wanted), Random(seed) if seed else None
        self._master = Master(self._left)
        self._master.add([lower for column in columns if (lower := cut_down(knapsack, column, wanted))])
        self._master.add(self._singles())
        self.cost = 0
        """Of the strips kept so far."""

    @property
    def columns(self) -> list[Column]:
        """All strips met on the way: what better plans may be made of."""
        return self._master.columns

    def run(self, watch: Watch, ceiling: int | None = None) -> Plan | None:
        """Go down to a plan.

        Args:
            watch: ends the dive.
            ceiling: the dive ends where no plan within it can come any more.

        Returns:
            A plan with exactly the pieces wanted, or None.
        """
        plan: Plan = {}
        while any(self._left):
            pricer = strip_pricer(self._knapsack, self._left)
            promise = generated(self._master, self._left, pricer, watch)
            hopeless = ceiling is not None and self.cost + rounded_up(promise.bound) > ceiling
            if hopeless or watch.over() or not self._master.solve(watch):
                return None
            for column, times in self._kept():
                plan[column] = plan.get(column, 0) + times
                self.cost += column.cost * times
            self._go_on_with_what_is_left()
        return plan

    def _kept(self) -> list[tuple[Column, int]]:
        """Strips to keep, and how often; they are taken off what is left."""
        amounts = self._master.amounts
        parts = [amount - int(amount + _HAIR) for amount in amounts]
        order = sorted(range(len(amounts)), key=lambda number: (-parts[number], number))
        whole = [(number, int(amounts[number] + _HAIR)) for number in order if amounts[number] >= 1 - _HAIR]
        kept = []
        for number, amount in whole or [(self._fullest(parts), 1)]:
            column = self._master.columns[number]
            times = min([amount, *(self._left[kind] // count for kind, count in column.uses)])
            if times:
                kept.append((column, times))
                for kind, count in column.uses:
                    self._left[kind] -= count * times
        return kept

    def _fullest(self, parts: Sequence[float]) -> int:
        """The strip whose part is nearest to a whole one, give or take chance."""
        used = [number for number, part in enumerate(parts) if part > _HAIR]
        chance = self._random
        shaken = {number: parts[number] + (chance.uniform(0, _SHAKEN) if chance else 0.0) for number in used}
        return max(used, key=lambda number: (shaken[number], -number))

    def _go_on_with_what_is_left(self) -> None:
        """Close strips that hold too much, and offer them cut down."""
        for kind, left in enumerate(self._left):
            self._master.set_row(kind, left)
        lower: list[Column] = self._singles()
        for number, column in enumerate(list(self._master.columns)):
            if any(count > self._left[kind] for kind, count in column.uses):
                self._master.close(number)
                if self._master.amounts[number] > _HAIR and (cut := cut_down(self._knapsack, column, self._left)):
                    lower.append(cut)
        self._master.add(lower)

    def _singles(self) -> list[Column]:
        """Strips of one piece, so that there always is a plan."""
        singles = (self._knapsack.column(((kind, 1),)) for kind, left in enumerate(self._left) if left)
        return [column for column in singles if column is not None]
