"""Plans from the linear program: take the loads it likes best, ask for the rest, price again, until all is cut."""

from __future__ import annotations

from random import Random
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.loads.clipping import clipped

if TYPE_CHECKING:
    from collections.abc import Mapping

    from stitchflip.cutting.layouts.loads.covering import Covering
    from stitchflip.cutting.layouts.loads.filling import Load
    from stitchflip.cutting.layouts.model import LayoutTask
    from stitchflip.cutting.layouts.watch import Watch

    Plan = list[tuple[Load, int]]

_LOOKS = 4
"""So often new loads are priced in before some are fixed."""


class Diver:
    """Makes plans from a program.

    Args:
        covering: is asked for less and less, and for everything again at the end.
        task: its wants and trimming.
        watch: nothing is returned when it is over.
    """

    def __init__(self, covering: Covering, task: LayoutTask, watch: Watch) -> None:
        self._covering, self._task, self._watch = covering, task, watch

    def dive(self, turn: int, whole_seconds: float = 0.0) -> Plan | None:
        """One plan.

        Args:
            turn: 0 takes the largest part each time, others chance on one of the large ones.
            whole_seconds: more than 0: once no load is used once in full, an integer program finds the rest.

        Returns:
            Loads and how often; None when some pieces could not be had, or time is up.
        """
        covering = self._covering
        chance = Random(turn) if turn else None
        left, free = list(covering.left), list(covering.free)
        plan: Plan = []
        while any(covering.left):
            chosen = None if self._watch.over() else self._liked(chance, whole_seconds)
            if chosen is None or not self._fix(chosen, plan):
                break
        is_complete = not any(covering.left)
        covering.ask(left, free)
        return plan if is_complete else None

    def _liked(self, chance: Random | None, whole_seconds: float) -> Mapping[int, int] | None:
        """Columns to fix now, and how often."""
        covering = self._covering
        found = covering.settle(self._watch, _LOOKS, 3)
        if found is None:
            return None
        amounts = dict(enumerate(found.solved.amounts))
        amounts = {column: amounts[column] for column in covering.loads if amounts.get(column, 0.0) > 1e-6}
        whole = {column: int(amount + 1e-6) for column, amount in amounts.items() if amount >= 1 - 1e-6}
        if whole or not amounts:
            return whole or None
        if whole_seconds > 0:
            solved, _ = covering.program.solve_whole(whole_seconds, columns := sorted(covering.loads))
            if solved is not None:
                return {column: round(amount) for column, amount in zip(columns, solved.amounts, strict=True) if amount}
        ranked = sorted(amounts, key=lambda column: (-amounts[column], column))
        return {ranked[0] if chance is None else chance.choices(ranked, [amounts[c] ** 2 for c in ranked])[0]: 1}

    def _fix(self, chosen: Mapping[int, int], plan: Plan) -> bool:
        """Put loads into the plan and ask for the rest; False when nothing came of it."""
        covering = self._covering
        left, free = list(covering.left), list(covering.free)
        for column, times in sorted(chosen.items()):
            kind = covering.filler.kinds[covering.loads[column].kind]
            sheets = free[kind.sheet]
            rest = times if sheets is None else min(times, sheets)
            while rest > 0:
                load = clipped(covering.loads[column], left, self._task.wants, along=kind.along, trims=self._task.trims)
                counts = load.counts()
                if not counts:
                    break
                often = min(rest, *(left[want] // count for want, count in counts.items()))
                rest -= often
                left = [count - counts[want] * often for want, count in enumerate(left)]
                if sheets is not None:
                    sheets -= often
                plan.append((load, often))
            free[kind.sheet] = sheets
        is_less = left != covering.left
        covering.ask(left, free)
        return is_less
