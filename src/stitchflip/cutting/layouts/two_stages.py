"""The shortest length in two stages: full-width strips, then pieces side by side, trimmed if allowed.

The bound comes from the linear program over all possible strips, in which both ways a piece may lie are one choice.
Plans come from four sources that feed one another: level by level, strip by strip with worths that learn, dives into
the linear program, and an integer program that puts the best plan together from all strips met so far. Where the
strips a plan within the bound could use are few enough to list, that program either finds such a plan or proves that
the bound can be raised.
"""

from __future__ import annotations

from dataclasses import replace
from math import gcd
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.columns.column import Column, cost_of, given_by, rounded_up
from stitchflip.cutting.layouts.columns.strips import BIGGEST_TABLE, StripKnapsack, kinds_of
from stitchflip.cutting.layouts.laying import laid_out
from stitchflip.cutting.layouts.levels import level_plans
from stitchflip.cutting.layouts.model import Answer
from stitchflip.cutting.layouts.watch import Rescaled
from stitchflip.cutting.model import Status

if TYPE_CHECKING:
    from stitchflip.cutting.layouts.columns.building import Builders
    from stitchflip.cutting.layouts.columns.column import Plan
    from stitchflip.cutting.layouts.columns.generating import Promise
    from stitchflip.cutting.layouts.columns.improving import Improver
    from stitchflip.cutting.layouts.columns.strips import Kind
    from stitchflip.cutting.layouts.model import LayoutTask
    from stitchflip.cutting.layouts.watch import Watch

_FIRST_LISTED = 600
"""Strips listed at most in the first round; four times as many in the next."""
_MOST_LISTED = 3000
_FIRST_SECONDS = 0.15
"""For an integer program in the first round; twice as many in the next."""
_FIRST_LOOKS = 20
"""At an integer program in the first round; twice as many in the next."""
_FIRST_AMONG = 150
"""Strips a plan is put together from at first; twice as many where they make none."""
_FIRST_TRIES = 3
"""Improvements tried in the first round; twice as many in the next."""
_SECONDS_FOR_HEIGHTS = 0.2
"""At most, to find a plan of fewer heights."""
_MANY_STRIPS = 60
"""A plan of more strips keeps what the linear program uses whole, and searches for the rest only."""


def shortest(task: LayoutTask, watch: Watch) -> Answer:
    """Find the shortest length from the bolt.

    Args:
        task: already small (`shrinking.small_task`): one open sheet, every want fits.
        watch: ends the search.

    Returns:
        The best plan and a bound.
    """
    search = _Search(task, watch)
    search.run()
    status = Status.PROVED if search.is_proved() else Status.BEST_FOUND
    layout = laid_out(search.knapsack, search.best, units=(search.unit_wide, search.unit_long))
    because = "" if status is Status.PROVED else search.because or "time was over before the best plan was proved"
    value, bound = search.cost * search.unit_long, search.bound * search.unit_long
    return Answer(status=status, layouts=(layout,), value=value, bound=bound, because=because)


def _divided(kinds: tuple[Kind, ...]) -> tuple[tuple[Kind, ...], int, int]:
    """The kinds with all widths, and all heights, divided by what they share, whichever way pieces lie."""
    ways = [way for kind in kinds for way in kind.ways]
    wide, long = gcd(*(way.wide for way in ways)), gcd(*(way.long for way in ways))
    divided = tuple(
        replace(kind, ways=tuple(replace(way, wide=way.wide // wide, long=way.long // long) for way in kind.ways))
        for kind in kinds
    )
    return divided, wide, long


class _Search:
    """One search: the best plan, the bound, and every strip met on the way."""

    def __init__(self, task: LayoutTask, watch: Watch) -> None:
        self.kinds, self.unit_wide, self.unit_long = _divided(kinds_of(task))
        self.watch, self.step = Rescaled(watch, self.unit_long), max(1, task.step)
        self.wanted = [kind.count for kind in self.kinds]
        wide = task.sheets[0].wide // self.unit_wide
        self.knapsack = StripKnapsack(self.kinds, wide, is_trimmed=task.trims)
        self.best: Plan = {}
        self.cost = 0
        self.bound = 0
        self.because = ""
        self.worths: tuple[int, ...] = (0,) * len(self.kinds)
        """Of one piece of each kind, in the best bound."""
        self.met: dict[Column, None] = {}
        self.kept: Plan = {}
        """Strips that plans of many strips start with."""

    def run(self) -> None:
        """Search until the plan is proved or time is over."""
        for plan in level_plans(self.kinds, self.knapsack.wide, self.watch, is_trimmed=self.knapsack.is_trimmed):
            self.offer(plan)
        area = sum(kind.count * kind.ways[0].wide * kind.ways[0].long for kind in self.kinds)
        self.raise_bound(-(-area // self.knapsack.wide))
        if self.knapsack.cells() > BIGGEST_TABLE:
            self.because = "the sizes are too large, or too many, for a closer search"
        elif not self.is_over():
            self._search_with_prices()
        if self.is_proved() and self.knapsack.cells() <= BIGGEST_TABLE:
            self._settle_for_fewer_heights()

    def _settle_for_fewer_heights(self) -> None:
        """Among plans of the same purchase take one with fewer heights of strips."""
        if len({column.cost for column in self.best}) == 1 or self.watch.over():
            return
        from stitchflip.cutting.layouts.columns.fewer_heights import with_fewer_heights

        most = self.longest_in(self.steps(self.cost))
        watch = self.watch.part(_SECONDS_FOR_HEIGHTS)
        self.best = with_fewer_heights(self.knapsack, self.best, self.worths, most, watch)
        self.cost = cost_of(self.best)

    def is_proved(self) -> bool:
        """Whether plan and bound are in the same step of the purchase."""
        return self.steps(self.cost) == self.steps(self.bound)

    def steps(self, cost: int) -> int:
        """Steps of the purchase that a length takes."""
        return -(-cost * self.unit_long // self.step)

    def longest_in(self, steps: int) -> int:
        """The longest length within so many steps of the purchase."""
        return steps * self.step // self.unit_long

    def is_over(self) -> bool:
        """Whether there is nothing more to do."""
        return self.is_proved() or self.watch.over()

    def offer(self, plan: Plan) -> None:
        """Keep a plan if it is the best so far; note its strips in any case."""
        plan = _together(plan, {})
        if given_by(plan, len(self.wanted)) != self.wanted:
            from stitchflip.cutting.layouts.columns.trimming import without_surplus

            plan = without_surplus(self.knapsack, plan, self.wanted)
        self.met.update(dict.fromkeys(plan))
        cost = cost_of(plan)
        if not self.best or cost < self.cost:
            self.best, self.cost = plan, cost
            self.watch.tell(self.cost, self.bound)

    def raise_bound(self, bound: int) -> None:
        """Keep a bound if it is the best so far."""
        if bound > self.bound:
            self.bound = bound
            self.watch.tell(self.cost, self.bound)

    def _search_with_prices(self) -> None:
        """Rounds of all that is known, each with more time than the one before."""
        from stitchflip.cutting.layouts.columns.building import Builders
        from stitchflip.cutting.layouts.columns.improving import Improver

        promise = self._first_prices()
        if self.is_over():
            return
        left = [max(0, n - given) for n, given in zip(self.wanted, given_by(self.kept, len(self.wanted)), strict=True)]
        builders = Builders(self.knapsack, left, promise.worths, seed=1)
        improver = Improver(self.knapsack, promise.worths, seed=1)
        round_number = 0
        while not self.is_over():
            longer = 1 << round_number
            self._build(builders, 2 * longer)
            self._put_together(promise, left, longer)
            self._settle(promise, min(_MOST_LISTED, _FIRST_LISTED * longer * longer), longer)
            self._dive(round_number)
            self._improve(improver, _FIRST_TRIES * longer)
            round_number += 1

    def _first_prices(self) -> Promise:
        """Solve the linear program over all strips."""
        from stitchflip.cutting.layouts.columns.generating import generated
        from stitchflip.cutting.layouts.columns.master import Master
        from stitchflip.cutting.layouts.columns.strips import strip_pricer

        master = Master(self.wanted)
        master.add(list(self.met))
        promise = generated(master, self.wanted, strip_pricer(self.knapsack), self.watch)
        self.raise_bound(rounded_up(promise.bound))
        self.worths = promise.worths
        self.met.update(dict.fromkeys(master.columns))
        whole = {column: int(used + 1e-6) for column, used in zip(master.columns, master.amounts, strict=False)}
        if sum(whole.values()) > _MANY_STRIPS:
            self.kept = {column: times for column, times in whole.items() if times}
        return promise

    def _build(self, builders: Builders, times: int) -> None:
        """Build plans strip by strip."""
        for _ in range(times):
            if self.is_over():
                return
            for plan in builders.next_plans(self.watch):
                self.offer(_together(self.kept, plan))

    def _dive(self, seed: int) -> None:
        """Dive into the linear program once."""
        from stitchflip.cutting.layouts.columns.diving import Dive

        if self.is_over():
            return
        dive = Dive(self.knapsack, self.wanted, list(self.met), seed)
        plan = dive.run(self.watch, ceiling=self.cost - 1)
        self.met.update(dict.fromkeys(dive.columns))
        if plan is not None:
            self.offer(plan)

    def _improve(self, improver: Improver, tries: int) -> None:
        """Make the best plan better a few strips at a time."""
        for _ in range(tries):
            if self.is_over():
                return
            plan = improver.better(self.best, self.watch)
            if plan is not None:
                self.offer(plan)

    def _put_together(self, promise: Promise, left: list[int], longer: int) -> None:
        """Put the best plan together from the strips met so far, first from the ones nearest to their worth."""
        from stitchflip.cutting.layouts.columns.choosing import chosen
        from stitchflip.cutting.layouts.columns.generating import SCALE

        columns = sorted(self.met, key=lambda column: column.cost * SCALE - column.worth(promise.worths))
        kept, among = cost_of(self.kept), _FIRST_AMONG
        watch = self.watch.part(_FIRST_SECONDS * longer)
        while not self.is_proved() and not watch.over():
            ceiling = self.longest_in(self.steps(self.cost) - 1) - kept
            pool = columns[:among]
            enough = self.longest_in(self.steps(self.bound)) - kept
            choice = chosen(
                pool, left, watch, looks=_FIRST_LOOKS * longer, ceiling=ceiling, enough=enough, is_presolved=True
            )
            if choice.times is not None:
                self.offer(_together(self.kept, dict(zip(pool, choice.times, strict=True))))
            if among >= len(columns) or not choice.is_finished:
                return
            among *= 2

    def _settle(self, promise: Promise, most: int, longer: int) -> None:
        """Find a plan within the step of the bound, or raise the bound above it."""
        from stitchflip.cutting.layouts.columns.choosing import chosen
        from stitchflip.cutting.layouts.columns.listing import all_strips

        watch = self.watch.part(_FIRST_SECONDS * longer)
        while not self.is_proved() and not watch.over():
            goal = self.longest_in(self.steps(self.bound))
            listing = all_strips(self.knapsack, promise, goal, watch, most=most)
            if not listing.is_complete:
                return
            looks, least = _FIRST_LOOKS * longer, self.bound
            choice = chosen(
                listing.columns, self.wanted, watch, looks=looks, ceiling=goal, floor_cost=least, enough=goal
            )
            if choice.times is not None:
                self.offer(dict(zip(listing.columns, choice.times, strict=True)))
            if not choice.is_finished:
                return
            if choice.times is None:
                self.raise_bound(goal + 1)


def _together(kept: Plan, plan: Plan) -> Plan:
    """Both plans as one, strips that are never cut left out."""
    both = dict(kept)
    for column, times in plan.items():
        both[column] = both.get(column, 0) + times
    return {column: times for column, times in both.items() if times}
