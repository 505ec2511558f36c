"""Many sheets, all wants cut, least cost: which sheets to cut into, and how each.

A plan is a number of whole sheets, each cut one way. The linear program over such loads, with new loads priced in as
long as any would make it cheaper, gives a bound; plans come from rounding it, from an integer program over the loads
found, and from filling sheet after sheet.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.loads.clipping import clipped
from stitchflip.cutting.layouts.loads.covering import Covering
from stitchflip.cutting.layouts.loads.diving import dive
from stitchflip.cutting.layouts.loads.filling import Filler, Load
from stitchflip.cutting.layouts.loads.kinds import choices_of, kinds_of, layout_of
from stitchflip.cutting.layouts.loads.levels import Levels
from stitchflip.cutting.layouts.loads.totals import Totals, area_bound
from stitchflip.cutting.layouts.model import Answer
from stitchflip.cutting.model import Status

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.loads.kinds import Kind
    from stitchflip.cutting.layouts.model import LayoutTask
    from stitchflip.cutting.layouts.watch import Watch

MOST_WANTS = 400
"""With more different wants only the first plan and the bound by area are given."""

Plan = list[tuple[Load, int]]
"""Loads and how often each is cut."""


def cheapest(task: LayoutTask, watch: Watch) -> Answer:
    """Find the cheapest sheets that give every piece, and say how sure it is.

    Args:
        task: with `Aim.COST`; sheets of open length are left out of account.
        watch: how long the search may take.

    Returns:
        The cheapest plan found, and a cost no plan of this kind can be below.

    Example:
        >>> from stitchflip.cutting.layouts.model import Aim, LayoutTask, Sheet, Want
        >>> from stitchflip.cutting.layouts.watch import Watch
        >>> scraps = (Sheet(10, 10, count=2, cost=100), Sheet(4, 6, count=1, cost=24))
        >>> answer = cheapest(LayoutTask((Want(4, 3, 2), Want(5, 5, 4)), scraps, Aim.COST), Watch(5))
        >>> answer.status.value, answer.value
        ('proved', 124)
    """
    kinds = kinds_of(task)
    wanted = sum(max(want.count, 0) for want in task.wants)
    if not wanted:
        return Answer(Status.PROVED, (), 0, 0)
    because = _refusal(task, kinds)
    if because:
        return Answer(Status.IMPOSSIBLE, (), 0, 0, because, watch.spent())
    return _Search(task, kinds, watch).run()


def _refusal(task: LayoutTask, kinds: Sequence[Kind]) -> str:
    """Why no plan can be made, seen without any search; "" when none is seen."""
    if not kinds:
        return "there is no fabric to cut from"
    able = {c.want for way in (False, True) for c in choices_of(task.wants, [k for k in kinds if k.along is way])}
    for number, want in enumerate(task.wants):
        if want.count > 0 and min(want.wide, want.long) <= 0:
            return "a piece has no size"
        if want.count > 0 and number not in able:
            return f"a piece {want.wide} wide × {want.long} long fits on no sheet"
    if area_bound(kinds, _copies(task), _area(task)) is None:
        return "all pieces together are larger than all sheets"
    return ""


def _area(task: LayoutTask) -> int:
    return sum(want.wide * want.long * max(want.count, 0) for want in task.wants)


def _copies(task: LayoutTask) -> list[int | None]:
    """How many there are of each sheet; None where there are always enough."""
    wanted = sum(max(want.count, 0) for want in task.wants)
    return [None if sheet.count is None or sheet.count >= wanted else max(sheet.count, 0) for sheet in task.sheets]


class _Search:
    """The best plan and bound so far, and the ways to better ones."""

    def __init__(self, task: LayoutTask, kinds: Sequence[Kind], watch: Watch) -> None:
        self._task, self._kinds, self._watch = task, kinds, watch
        self._counts = [max(want.count, 0) for want in task.wants]
        self._copies = _copies(task)
        self._plan: Plan | None = None
        self._cost = 0
        pieces = sum(self._counts)
        costs = {kind.sheet: kind.cost for kind in kinds}
        self._dearest = sum(
            cost * (pieces if (copies := self._copies[sheet]) is None else copies) for sheet, cost in costs.items()
        )
        self._totals = Totals(kinds, self._copies, self._dearest)
        least = area_bound(kinds, self._copies, _area(task))
        self._bound = self._totals.up(least) if least is not None else 0

    def run(self) -> Answer:
        """First plan, bound, better plans until time is up or the two meet."""
        ways = {kind.along for kind in self._kinds}
        choices = {way: choices_of(self._task.wants, [k for k in self._kinds if k.along is way]) for way in ways}
        self._offer(Levels(self._task, self._kinds, choices).plan(self._counts, self._copies))
        if len(self._task.wants) <= MOST_WANTS and not self._is_done():
            self._improve()
        return self._answer()

    def _improve(self) -> None:
        filler = Filler(self._task, self._kinds, self._counts)
        covering = Covering(self._task, filler, self._copies, self._dearest + 1)
        for load, _ in self._plan or []:
            covering.add(load)
        self._price_out(covering)
        turn = 0
        while not self._is_done():
            plan = dive(covering, self._task.wants, self._watch, turn, trims=self._task.trims)
            if plan is not None:
                self._offer(plan)
            if not self._is_done():
                self._from_loads(covering, 0.25 if turn else 0.4)
            turn += 1

    def _price_out(self, covering: Covering) -> None:
        """Solve the linear program to its end."""
        while not self._is_done():
            found = covering.look(self._watch.left(), 10)
            if found is None:
                return
            if covering.filler.is_exact:
                self._raise_bound(self._totals.up(found.bound))
            if not found.added:
                return

    def _from_loads(self, covering: Covering, share: float) -> None:
        """The best plan of the loads found, by an integer program."""
        columns = sorted(covering.loads)
        start: dict[int, int] | None = None
        if self._plan is not None:
            start = {}
            for load, times in self._plan:
                column = covering.add(load)
                start[column] = start.get(column, 0) + times
            columns = sorted(covering.loads)
        solved, _ = covering.program.solve_whole(self._watch.left() * share, columns, start)
        if solved is None:
            return
        self._offer(
            [
                (covering.loads[column], round(amount))
                for column, amount in zip(columns, solved.amounts, strict=True)
                if amount > 0.5
            ]
        )

    def _offer(self, plan: Plan) -> None:
        """Keep a plan if it is complete and cheaper; take out what is cut too often."""
        plan = self._tidied(plan)
        left = list(self._counts)
        for load, times in plan:
            for want, count in load.counts().items():
                left[want] -= count * times
        cost = sum(self._kinds[load.kind].cost * times for load, times in plan)
        if any(left) or (self._plan is not None and cost >= self._cost):
            return
        self._plan, self._cost = plan, cost
        self._watch.tell(cost, self._bound)

    def _tidied(self, plan: Plan) -> Plan:
        """Without pieces beyond those wanted."""
        left = list(self._counts)
        out: Plan = []
        for load, times in plan:
            counts = load.counts()
            whole = min(times, *(left[want] // count for want, count in counts.items()))
            rest = times - whole
            if whole:
                out.append((load, whole))
                left = [count - counts[want] * whole for want, count in enumerate(left)]
            while rest and any(left[want] for want in counts):
                along = self._kinds[load.kind].along
                small = clipped(load, left, self._task.wants, along=along, trims=self._task.trims)
                out.append((small, 1))
                less = small.counts()
                left = [count - less[want] for want, count in enumerate(left)]
                rest -= 1
        return out

    def _raise_bound(self, bound: int) -> None:
        if bound > self._bound:
            self._bound = bound
            self._watch.tell(None if self._plan is None else self._cost, bound)

    def _is_done(self) -> bool:
        return self._watch.over() or self._is_proved() or self._is_impossible()

    def _is_proved(self) -> bool:
        step = max(self._task.step, 1)
        return self._plan is not None and -(-self._cost // step) <= -(-self._bound // step)

    def _is_impossible(self) -> bool:
        """No plan can cost more than all sheets together."""
        return self._plan is None and self._bound > self._dearest

    def _answer(self) -> Answer:
        spent = self._watch.spent()
        if self._plan is None:
            if self._is_impossible():
                return Answer(Status.IMPOSSIBLE, (), 0, 0, "the sheets do not give all pieces", spent)
            return Answer(Status.BEST_FOUND, (), 0, self._bound, "no plan was found in time", spent)
        layouts = tuple(layout_of(self._kinds[load.kind], load.strips, times) for load, times in self._plan)
        status = Status.PROVED if self._is_proved() else Status.BEST_FOUND
        answer = Answer(status, layouts, self._cost, self._bound)
        return replace(answer, seconds=spent)
