"""Many sheets, all wants cut, least cost: which sheets to cut into, and how each.

A plan is a number of whole sheets, each cut one way. The linear program over such loads, with new loads priced in as
long as any would make it cheaper, gives a bound; plans come from rounding it, from an integer program over the loads
found, and from filling sheet after sheet.
"""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from random import Random
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.loads.clipping import clipped
from stitchflip.cutting.layouts.loads.closing_up import closed_up, what_is_left
from stitchflip.cutting.layouts.loads.covering import Covering
from stitchflip.cutting.layouts.loads.diving import Diver
from stitchflip.cutting.layouts.loads.filling import Filler, Load
from stitchflip.cutting.layouts.loads.kinds import choices_of, kinds_of, layout_of
from stitchflip.cutting.layouts.loads.large_pieces import fewest_sheets
from stitchflip.cutting.layouts.loads.levels import Levels
from stitchflip.cutting.layouts.loads.sequence import Sequences
from stitchflip.cutting.layouts.loads.totals import Totals, area_bound
from stitchflip.cutting.layouts.model import Answer
from stitchflip.cutting.model import Status
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.loads.kinds import Kind
    from stitchflip.cutting.layouts.model import LayoutTask
    from stitchflip.cutting.layouts.watch import Watch

MOST_WANTS = 400
"""With more different wants only the first plan and the bound by area are given."""

MOST_ON_A_SHEET = 100_000
"""More than that is no sewing, and the plan would not fit on paper."""
_VARIED = 10
"""Rounds of further loads before each integer program."""
_MOST_LOADS = 4000
_REFILLED = 0.75
"""So often sheets cut anew are filled piece by piece, the other times put together from loads."""
_CLOSING, _CLOSING_S, _CLOSED, _MOST_CLOSED = 0.05, 0.05, 2, 60
"""Part of the time kept for closing up sheets, seconds for one at most, how many, and of how many pieces."""
_FILLING = 0.15
"""Part of the time, at first, to fill sheet after sheet."""
_FEW_KINDS = 3
"""With more of them to try each time, filling sheet after sheet comes later."""
_FEW_SHEETS = 30
"""Up to so many, rounding one after another wastes too much on the last."""
_RENEWED = 5
"""So many sheets of a plan are cut anew together."""

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
    smallest = min(want.wide * want.long for want in task.wants if want.count > 0)
    largest = max(kind.wide * kind.high for kind in kinds)
    most = min(sum(max(want.count, 0) for want in task.wants), largest // smallest)
    if most > MOST_ON_A_SHEET:
        return f"{most} pieces on one sheet are more than can be planned; the most is {MOST_ON_A_SHEET}"
    return ""


def _area(task: LayoutTask) -> int:
    return sum(want.wide * want.long * max(want.count, 0) for want in task.wants)


def _copies(task: LayoutTask) -> list[int | None]:
    """How many there are of each sheet; None where there are always enough."""
    wanted = sum(max(want.count, 0) for want in task.wants)
    return [None if sheet.count is None or sheet.count >= wanted else max(sheet.count, 0) for sheet in task.sheets]


@dataclass(frozen=True, slots=True)
class _Apart:
    """A plan with some of its sheets taken out."""

    kept: Plan
    left: list[int]
    """Pieces of each want on the sheets taken out."""
    free: list[int | None]
    """Sheets there are for them."""
    paid: int
    """Cost of the sheets taken out."""


class _Search:
    """The best plan and bound so far, and the ways to better ones."""

    def __init__(self, task: LayoutTask, kinds: Sequence[Kind], watch: Watch) -> None:
        self._task, self._kinds = task, kinds
        self._watch = self._whole_watch = watch
        self._counts = [max(want.count, 0) for want in task.wants]
        self._copies = _copies(task)
        self._plan: Plan | None = None
        self._cost = 0
        self._rank: tuple[int, int, int] | None = None
        """Of the plan: cost, sheets touched, what is left of them."""
        pieces = sum(self._counts)
        costs = {kind.sheet: kind.cost for kind in kinds}
        self._dearest = sum(
            cost * (pieces if (copies := self._copies[sheet]) is None else copies) for sheet, cost in costs.items()
        )
        self._totals = Totals(kinds, self._copies, self._dearest)
        least = area_bound(kinds, self._copies, _area(task))
        self._bound = self._totals.up(max(least or Fraction(0), self._large_pieces()))

    def _large_pieces(self) -> Fraction:
        """Cost of the sheets that large pieces need, where all sheets are alike."""
        sizes = {(self._task.sheets[kind.sheet].wide, self._task.sheets[kind.sheet].long) for kind in self._kinds}
        if len(sizes) > 1 or len(self._task.wants) > MOST_WANTS:
            return Fraction(0)
        (wide, long), cheapest_one = sizes.pop(), min(kind.cost for kind in self._kinds)
        return Fraction(fewest_sheets(self._task, wide, long or 0) * cheapest_one)

    def run(self) -> Answer:
        """First plan, bound, better plans until time is up or the two meet."""
        ways = {kind.along for kind in self._kinds}
        choices = {way: choices_of(self._task.wants, [k for k in self._kinds if k.along is way]) for way in ways}
        self._offer(Levels(self._task, self._kinds, choices).plan(self._counts, self._copies))
        if len(self._task.wants) <= MOST_WANTS and not self._is_done():
            self._sequences = Sequences(self._task, self._kinds, choices)
            self._watch = self._whole_watch.part(self._watch.likely_left() * (1 - _CLOSING))
            self._improve()
            self._watch = self._whole_watch
        self._close_up()
        return self._answer()

    def _improve(self) -> None:
        """Bound first, then in turns: loads near the optimum, an integer program over all loads, rounding."""
        filler = Filler(self._task, self._kinds, self._counts)
        covering = Covering(self._task, filler, self._copies, self._dearest + 1)
        for load, _ in self._plan or []:
            covering.add(load)
        has_many = sum(times for _, times in self._plan or []) > _FEW_SHEETS
        is_quick = not has_many and len(self._kinds) <= _FEW_KINDS
        if is_quick:
            self._fill(covering, _FILLING)
        self._price_out(covering)
        diver = Diver(covering, self._task, self._watch)
        chance, turn = Random(1), 0
        while not self._is_done():
            if turn or has_many:
                self._offer(diver.dive(turn))
            self._vary(covering, turn)
            if is_quick or (turn and not has_many):
                self._fill(covering, 0.3)
            self._from_loads(covering, 0.2 if turn or is_quick else 0.6)
            if turn == 0 and has_many and not self._is_done():
                self._offer(diver.dive(0, self._watch.likely_left() * 0.3))
            until = self._watch.likely_left() * 0.5
            while self._plan and not self._is_done() and self._watch.likely_left() > until:
                if is_quick and chance.random() < _REFILLED:
                    self._refill(covering, chance)
                else:
                    self._renew(covering, chance)
            turn += 1

    def _fill(self, covering: Covering, share: float) -> None:
        """Plans made sheet after sheet, for a part of the time; their loads are kept."""
        until = self._watch.likely_left() * (1 - share)
        while not self._is_done() and self._watch.likely_left() > until:
            breadth = self._sequences.next_breadth(sum(times for _, times in self._plan or []))
            plan = self._sequences.plan(self._counts, self._copies, breadth, self._watch)
            for load, _ in plan:
                covering.add(load)
            self._offer(plan)

    def _vary(self, covering: Covering, turn: int) -> None:
        """More loads for the integer program."""
        solved = covering.program.solve(self._watch.likely_left())
        if solved is None or self._plan is None:
            return
        until = self._watch.likely_left() * 0.85
        for number in range(_VARIED):
            if self._watch.likely_left() < until or self._is_done() or len(covering.loads) > _MOST_LOADS:
                return
            covering.vary(solved, turn * _VARIED + number, 3, 0.3 * (self._cost - self._bound))

    def _price_out(self, covering: Covering) -> None:
        """Solve the linear program to its end."""
        while not self._is_done():
            found = covering.look(self._watch.likely_left(), 10)
            if found is None:
                return
            if covering.filler.is_exact:
                self._raise_bound(self._totals.up(found.bound))
            if not found.added:
                return

    def _from_loads(self, covering: Covering, share: float) -> None:
        """The best plan of the loads found, by an integer program."""
        for load, _ in self._plan or []:
            covering.add(load)
        solved = covering.program.solve(self._watch.likely_left())
        if solved is not None:
            room = self._cost - solved.value if self._plan is not None else float("inf")
            self._offer(covering.whole(solved, room, self._watch.likely_left() * share))

    def _renew(self, covering: Covering, chance: Random) -> None:
        """Cut some sheets of the plan anew, all others as they are."""
        apart = self._taken_apart(chance)
        covering.ask(apart.left, apart.free)
        found = covering.settle(self._watch, 8, 4)
        if found is not None and self._totals.up(found.bound) < apart.paid:
            room = apart.paid - found.solved.value
            cut = covering.whole(found.solved, room, min(0.3, self._watch.likely_left()))
            if cut is not None:
                self._offer([*apart.kept, *cut])
        covering.ask(self._counts, self._copies)

    def _refill(self, covering: Covering, chance: Random) -> None:
        """Fill some sheets of the plan anew, piece by piece."""
        apart = self._taken_apart(chance)
        breadth = self._sequences.next_breadth(_RENEWED)
        cut = self._sequences.plan(apart.left, apart.free, breadth, self._watch)
        if len(covering.loads) < _MOST_LOADS:
            for load, _ in cut:
                covering.add(load)
        self._offer([*apart.kept, *cut])

    def _taken_apart(self, chance: Random) -> _Apart:
        """A few sheets of the plan taken out, mostly with the emptiest among them."""
        sheets = [load for load, times in self._plan or [] for _ in range(min(times, _RENEWED))]
        chance.shuffle(sheets)
        if chance.random() < 0.6:
            sheets.sort(key=lambda load: sum(strip.high for strip in load.strips) / self._kinds[load.kind].high)
            others = sheets[1:]
            chance.shuffle(others)
            sheets = [*sheets[:1], *others]
        anew, kept = sheets[: chance.randint(2, _RENEWED)], Counter[Load]()
        for load, times in self._plan or []:
            kept[load] += times
        kept.subtract(anew)
        left, free = [0] * len(self._counts), list(self._copies)
        for load in anew:
            for want, count in load.counts().items():
                left[want] += count
        for load, times in kept.items():
            sheet = self._kinds[load.kind].sheet
            if (copies := free[sheet]) is not None:
                free[sheet] = copies - times
        paid = sum(self._kinds[load.kind].cost for load in anew)
        return _Apart([(load, times) for load, times in kept.items() if times], left, free, paid)

    def _close_up(self) -> None:
        """Let the emptiest sheets keep as much in one piece as they can."""
        if self._plan is None or len(self._task.wants) > MOST_WANTS:
            return
        plan = self._plan
        used = [sum(strip.high for strip in load.strips) / self._kinds[load.kind].high for load, _ in plan]
        for number in sorted(range(len(plan)), key=lambda number: used[number])[:_CLOSED]:
            if self._watch.over() or plan[number][0].counts().total() > _MOST_CLOSED:
                break
            (load, times), watch = plan[number], self._watch.part(min(_CLOSING_S, self._watch.likely_left() / 2))
            plan[number] = (closed_up(load, self._kinds[load.kind], self._task, watch), times)

    def _offer(self, plan: Plan | None) -> None:
        """Keep a plan if it is complete and cheaper; take out what is cut too often."""
        if plan is None:
            return
        plan = self._tidied(plan)
        left = list(self._counts)
        for load, times in plan:
            for want, count in load.counts().items():
                left[want] -= count * times
        cost = sum(self._kinds[load.kind].cost * times for load, times in plan)
        if any(left):
            return
        rank = (cost, sum(times for _, times in plan), -what_is_left(plan, self._kinds))
        if self._rank is None or rank < self._rank:
            is_cheaper = self._rank is None or cost < self._cost
            self._plan, self._cost, self._rank = plan, cost, rank
            if is_cheaper:
                self._whole_watch.tell(cost, self._bound)

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
                for want, count in counts.items():
                    left[want] -= count * whole
            while rest and any(left[want] for want in counts):
                along = self._kinds[load.kind].along
                small = clipped(load, left, self._task.wants, along=along, trims=self._task.trims)
                out.append((small, 1))
                for want, count in small.counts().items():
                    left[want] -= count
                rest -= 1
        return out

    def _raise_bound(self, bound: int) -> None:
        if bound > self._bound:
            self._bound = bound
            self._whole_watch.tell(None if self._plan is None else self._cost, bound)

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
        because = "" if status is Status.PROVED else "time was over before the best plan was proved"
        return Answer(status, layouts, self._cost, self._bound, because, spent)
