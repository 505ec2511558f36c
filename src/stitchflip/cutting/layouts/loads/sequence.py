"""Sheet after sheet, each filled for the most worth; what lay badly is worth more the next time."""

from __future__ import annotations

from random import Random
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.loads.filling import Load
from stitchflip.cutting.layouts.loads.piece_by_piece import PieceByPiece, Taste

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from stitchflip.cutting.layouts.loads.kinds import Choice, Kind
    from stitchflip.cutting.layouts.model import LayoutTask
    from stitchflip.cutting.layouts.watch import Watch

_LARGEST = 1 << 24
"""Worth of the largest piece: worths change in small steps."""
_TASTES = (Taste(), Taste(even=0.0), Taste(ahead=0.3), Taste(ahead=0.1, even=0.5), Taste(may_leave=True))
_NARROWEST, _BROADEST = 30, 4000
_FEW_SHEETS = 3
_LEARNED = 0.4
"""Part of what a plan teaches in the worths of the next."""


class Sequences:
    """Plans made sheet after sheet, each with worths that the ones before have taught.

    Args:
        task: its wants.
        kinds: the sheets.
        choices: for each direction of the first cuts.
        values: of one of each want, when they are given; None: their area, and learned.
    """

    def __init__(
        self,
        task: LayoutTask,
        kinds: Sequence[Kind],
        choices: Mapping[bool, Sequence[Choice]],
        values: Sequence[int] | None = None,
    ) -> None:
        self._task, self._kinds = task, kinds
        self._fillers = [PieceByPiece(task, kind, choices[kind.along]) for kind in kinds]
        largest = max((want.wide * want.long for want in task.wants), default=1) or 1
        self._scale = max(1, _LARGEST // largest)
        self._areas = [max(1, want.wide * want.long * self._scale) for want in task.wants]
        self._given = values
        self.worths = list(self._areas if values is None else values)
        self._chance = Random(7)
        self._turn = 0

    def next_breadth(self, sheets: int) -> int:
        """Beginnings worth keeping in the next plan: more and more for few sheets, now more, now fewer for many.

        Args:
            sheets: of the best plan so far.
        """
        if sheets <= _FEW_SHEETS:
            return min(_BROADEST, _NARROWEST << (self._turn // len(_TASTES)))
        return _NARROWEST << (self._turn // len(_TASTES)) % 3

    def plan(
        self, counts: Sequence[int], copies: Sequence[int | None], breadth: int, watch: Watch
    ) -> list[tuple[Load, int]]:
        """Fill sheets until no piece is left, or no sheet.

        Args:
            counts: pieces of each want.
            copies: of each sheet of the task; None: as many as it takes.
            breadth: beginnings kept while a sheet is filled.
            watch: ends the search.

        Returns:
            Loads and how often.
        """
        taste = _TASTES[self._turn % len(_TASTES)] if self._turn < len(_TASTES) else self._chance.choice(_TASTES)
        worths = [self._varied(worth) for worth in self.worths] if self._turn >= len(_TASTES) else self.worths
        self._turn += 1
        left, free = list(counts), list(copies)
        out: list[tuple[Load, int]] = []
        while any(left) and not watch.over():
            load = self._next(left, free, worths, breadth, taste, watch)
            if load is None:
                break
            used = load.counts()
            times = min(left[want] // count for want, count in used.items())
            sheet = self._kinds[load.kind].sheet
            if (sheets := free[sheet]) is not None:
                times = min(times, sheets)
                free[sheet] = sheets - times
            left = [count - used[want] * times for want, count in enumerate(left)]
            out.append((load, times))
        self._learn(out)
        return out

    def _varied(self, worth: int) -> int:
        return max(1, int(worth * self._chance.uniform(0.85, 1.15))) if worth else 0

    def _next(
        self,
        left: Sequence[int],
        free: Sequence[int | None],
        worths: Sequence[int],
        breadth: int,
        taste: Taste,
        watch: Watch,
    ) -> Load | None:
        """The sheet that gives most for its cost."""
        best, best_rate = None, 0.0
        for number, kind in enumerate(self._kinds):
            if free[kind.sheet] == 0:
                continue
            worth, strips = self._fillers[number].fill(left, worths, breadth, taste, watch)
            cost = kind.cost if self._given is None else 1
            rate = worth / max(cost, 1e-9) * (self._chance.uniform(0.97, 1.03) if self._turn > len(_TASTES) else 1.0)
            if worth and rate > best_rate:
                best, best_rate = Load(number, strips), rate
        return best

    def _learn(self, plan: Sequence[tuple[Load, int]]) -> None:
        """Pieces on badly filled sheets are worth more from now on."""
        if self._given is not None:
            return
        for load, _ in plan:
            kind, used = self._kinds[load.kind], load.counts()
            filled = sum(self._areas[want] * count for want, count in used.items()) / (
                kind.wide * kind.high * self._scale
            )
            for want in used:
                taught = self._areas[want] / max(filled, 0.2)
                self.worths[want] = int((1 - _LEARNED) * self.worths[want] + _LEARNED * taught)
