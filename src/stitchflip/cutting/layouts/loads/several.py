"""Several sheets, the most worth: whole sheets as loads, at most as many as there are.

The program sells pieces as it does for one sheet; its columns are loads of whole sheets. Plans come from filling sheet
after sheet and from an integer program over the loads met.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.loads.filling import Filler, Load
from stitchflip.cutting.layouts.loads.kinds import choices_of
from stitchflip.cutting.layouts.loads.program import Program
from stitchflip.cutting.layouts.loads.sequence import Sequences

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.loads.kinds import Kind
    from stitchflip.cutting.layouts.model import LayoutTask
    from stitchflip.cutting.layouts.watch import Watch

_MOST_ROUNDS = 80
_BITS = 58
_MOST_TURNS = 40


class SeveralSheets:
    """The best plan so far, and its bound.

    Args:
        task: every want fits on some sheet, counts and values are above zero.
        kinds: the sheets.
        copies: of each sheet of the task.
        watch: ends the search.
        bound: known already.
    """

    def __init__(
        self, task: LayoutTask, kinds: Sequence[Kind], copies: Sequence[int], watch: Watch, bound: int
    ) -> None:
        self._task, self._kinds, self._copies, self._watch = task, kinds, copies, watch
        self._counts = [want.count for want in task.wants]
        self._values = [want.value for want in task.wants]
        self.plan: list[tuple[Load, int]] = []
        self.value = 0
        self.bound = bound
        self._program = Program([*[(0, None)] * len(self._counts), *((0, count) for count in copies)])
        self._sold = [
            self._program.add(-value, {want: -1}, count)
            for want, (value, count) in enumerate(zip(self._values, self._counts, strict=True))
        ]
        self._loads: dict[int, Load] = {}
        self._known: set[tuple[int, tuple[tuple[int, int], ...]]] = set()

    def run(self) -> None:
        """A first plan, the bound, then more plans and what can be put together from their loads."""
        ways = {kind.along for kind in self._kinds}
        choices = {way: choices_of(self._task.wants, [k for k in self._kinds if k.along is way]) for way in ways}
        sequences = Sequences(self._task, self._kinds, choices, self._values)
        self._offer(sequences.plan(self._counts, self._copies, 30, self._watch))
        self._price_out()
        turn = 0
        while not self.is_done() and turn < _MOST_TURNS:
            until = self._watch.likely_left() * 0.7
            while not self.is_done() and self._watch.likely_left() > until:
                breadth = sequences.next_breadth(sum(self._copies))
                self._offer(sequences.plan(self._counts, self._copies, breadth, self._watch))
            self._choose(0.5)
            turn += 1

    def is_done(self) -> bool:
        """Proved or out of time."""
        return self.value >= self.bound or self._watch.over()

    def _add(self, load: Load) -> bool:
        """Put a load into the program; False when it is there already."""
        counts = load.counts()
        sheet = self._kinds[load.kind].sheet
        key = (sheet, tuple(sorted(counts.items())))
        if key in self._known or not counts:
            return False
        self._known.add(key)
        self._loads[self._program.add(0.0, {**counts, len(self._counts) + sheet: 1})] = load
        return True

    def _offer(self, plan: list[tuple[Load, int]]) -> None:
        """Keep a plan if it is worth more; note its loads."""
        value = 0
        left = list(self._counts)
        for load, times in plan:
            self._add(load)
            for want, count in load.counts().items():
                sold = min(left[want], count * times)
                left[want] -= sold
                value += self._values[want] * sold
        if value > self.value:
            self.value, self.plan = value, plan
            self._watch.tell(self.value, self.bound)

    def _price_out(self) -> None:
        """Add loads until none would make the program worth more; lower the bound on the way."""
        filler = Filler(self._task, self._kinds, self._counts)
        wants = len(self._counts)
        for _ in range(_MOST_ROUNDS):
            solved = None if self.is_done() else self._program.solve(self._watch.likely_left())
            if solved is None:
                return
            scale = self._scale()
            worths = [int(max(dual, 0.0) * scale) for dual in solved.duals[:wants]]
            filler.price(worths, self._counts)
            most = [0] * len(self._copies)
            added = 0
            for number, kind in enumerate(self._kinds):
                worth, loads = filler.best(number, 6)
                most[kind.sheet] = max(most[kind.sheet], worth)
                if worth > -solved.duals[wants + kind.sheet] * scale * (1 + 1e-9) + 1:
                    added += sum(self._add(load) for load in loads)
            if filler.is_exact:
                above = sum(
                    max(0, value * scale - worth) * count
                    for value, worth, count in zip(self._values, worths, self._counts, strict=True)
                )
                held = sum(worth * count for worth, count in zip(most, self._copies, strict=True))
                self.bound = min(self.bound, (above + held) // scale)
            if not added:
                return

    def _scale(self) -> int:
        """Whole numbers for a worth of 1."""
        total = sum(value * count for value, count in zip(self._values, self._counts, strict=True)) + 1
        return 1 << max(0, min(20, _BITS - total.bit_length()))

    def _choose(self, share: float) -> None:
        """The best plan of the loads met that hold no piece too often."""
        columns = [
            column
            for column, load in self._loads.items()
            if all(count <= self._counts[want] for want, count in load.counts().items())
        ]
        chosen = [*self._sold, *columns]
        found, _ = self._program.solve_whole(max(0.05, self._watch.likely_left() * share), chosen)
        if found is not None:
            amounts = zip(chosen, found.amounts, strict=True)
            self._offer([(self._loads[c], round(amount)) for c, amount in amounts if c in self._loads and amount > 0.5])
