"""A plan made better a few strips at a time: some are taken out, and what they gave is cut the best way there is.

The prices say which strips cost more than they are worth; those are taken out, and some good ones with them to have
room. For so few pieces the search is nearly always exact: either a better way comes out, or there is none.
"""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.columns.choosing import chosen
from stitchflip.cutting.layouts.columns.column import Column, cost_of, given_by, rounded_up
from stitchflip.cutting.layouts.columns.generating import SCALE, generated
from stitchflip.cutting.layouts.columns.listing import all_strips
from stitchflip.cutting.layouts.columns.master import Master
from stitchflip.cutting.layouts.columns.strips import StripKnapsack, strip_pricer
from stitchflip.cutting.layouts.columns.trimming import without_surplus

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.columns.column import Plan
    from stitchflip.cutting.layouts.watch import Watch

_FEWEST, _FIRST = 4, 8
"""Strips taken out at least, and at first."""
_GROWN, _SHRUNK = 0.5, 1.0
"""More strips are taken out after a search that was easy, fewer after one that was too hard."""
_MOST_LISTED = 300
_MOST_LOOKS = 15
_MOST_SECONDS = 0.2


class Improver:
    """Looks for better plans near a given one.

    Args:
        knapsack: finds strips.
        worths: of one piece of each kind, `SCALE` for a cost of 1.
        seed: of the chances taken.
    """

    def __init__(self, knapsack: StripKnapsack, worths: Sequence[int], seed: int) -> None:
        self._knapsack, self._worths, self._random = knapsack, worths, Random(seed)
        self._size = float(_FIRST)

    def better(self, plan: Plan, watch: Watch) -> Plan | None:
        """Take some strips out and look for a cheaper way to cut what they gave.

        Args:
            plan: exactly the pieces wanted.
            watch: ends the search.

        Returns:
            A plan of exactly the same pieces that costs less, or None.
        """
        taken = self._taken_out(plan)
        wanted = given_by(taken, len(self._knapsack.kinds))
        cheaper = self._cheaper(taken, wanted, watch)
        if cheaper is None:
            return None
        new = {column: times - taken.get(column, 0) for column, times in plan.items()}
        for column, times in cheaper.items():
            new[column] = new.get(column, 0) + times
        return {column: times for column, times in new.items() if times}

    def _taken_out(self, plan: Plan) -> Plan:
        """Strips to take out: the more a strip costs beyond its worth, the likelier."""
        strips = [column for column, times in plan.items() for _ in range(min(times, int(self._size) + 1))]
        beyond = [column.cost - column.worth(self._worths) / SCALE for column in strips]
        mean = sum(beyond) / len(beyond) + 1e-9
        chance = self._random
        keys = [chance.random() ** (1 / (cost + 0.3 * mean)) for cost in beyond]
        order = sorted(range(len(strips)), key=lambda place: (-keys[place], place))
        taken: Plan = {}
        for place in order[: int(self._size)]:
            taken[strips[place]] = taken.get(strips[place], 0) + 1
        return taken

    def _cheaper(self, taken: Plan, wanted: list[int], watch: Watch) -> Plan | None:
        """A cheaper way to cut what these strips give."""
        goal = cost_of(taken) - 1
        kinds = [
            replace(kind, count=count, ways=kind.ways if count else ())
            for kind, count in zip(self._knapsack.kinds, wanted, strict=True)
        ]
        knapsack = StripKnapsack(kinds, self._knapsack.wide, is_trimmed=self._knapsack.is_trimmed)
        master = Master(wanted)
        master.add(list(taken))
        promise = generated(master, wanted, strip_pricer(knapsack), watch)
        least = rounded_up(promise.bound)
        if least > goal:
            self._size += _GROWN
            return None
        listing = all_strips(knapsack, promise, goal, watch, most=_MOST_LISTED)
        if not listing.is_complete:
            self._size = max(_FEWEST, self._size - _SHRUNK)
            goal = least
            listing = all_strips(knapsack, promise, goal, watch, most=_MOST_LISTED)
        if not listing.is_complete:
            return None
        choice = chosen(listing.columns, wanted, watch.part(_MOST_SECONDS), looks=_MOST_LOOKS, ceiling=goal)
        self._size = self._size + _GROWN / 2 if choice.is_finished else max(_FEWEST, self._size - _SHRUNK)
        if choice.times is None:
            return None
        return without_surplus(knapsack, _as_plan(listing.columns, choice.times), wanted)


def _as_plan(columns: Sequence[Column], times: Sequence[int]) -> Plan:
    """Columns that are cut at all, and how often."""
    return {column: count for column, count in zip(columns, times, strict=True) if count}
