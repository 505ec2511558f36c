"""The least cost of sheets that give all pieces: a linear program over loads, new loads priced in.

The bound is computed with whole numbers from the worths the loads were priced with, not from the program's own value:
no sheet gives pieces of more worth than its best load, so the worth of all pieces cannot be had for less.
"""

from __future__ import annotations

from fractions import Fraction
from random import Random
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.loads.program import Program
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.loads.filling import Filler, Load
    from stitchflip.cutting.layouts.loads.program import Solved
    from stitchflip.cutting.layouts.model import LayoutTask
    from stitchflip.cutting.layouts.watch import Watch

_BITS = 56
"""No sum of worths in a table needs more."""


@dataclass(frozen=True, slots=True)
class Round:
    """What one look for better loads came to."""

    solved: Solved
    bound: Fraction
    """No plan for the pieces asked for in this round costs less."""
    added: int
    """Loads that make the program cheaper; 0: its value is final."""


class Covering:
    """The program, its loads, and the pieces it has to give.

    Args:
        task: wants.
        filler: prices loads.
        copies: of each sheet of the task; None: more than ever needed.
        dear: cost of leaving a piece out, more than any plan.
    """

    def __init__(self, task: LayoutTask, filler: Filler, copies: Sequence[int | None], dear: int) -> None:
        self._task = task
        self.filler = filler
        self.copies = copies
        self.left = [max(want.count, 0) for want in task.wants]
        self.free = list(copies)
        self.loads: dict[int, Load] = {}
        self._known: dict[tuple[int, tuple[tuple[int, int], ...]], int] = {}
        self._sheet_rows = {}
        rows: list[tuple[float | None, float | None]] = [(count, None) for count in self.left]
        for sheet, count in enumerate(copies):
            if count is not None:
                self._sheet_rows[sheet] = len(rows)
                rows.append((None, count))
        self.program = Program(rows)
        for want, count in enumerate(self.left):
            if count:
                self.program.add(dear, {want: 1})

    def add(self, load: Load) -> int:
        """Put a load in, if it is not there already; its column."""
        kind = self.filler.kinds[load.kind]
        counts = load.counts()
        key = (kind.sheet, tuple(sorted(counts.items())))
        if key not in self._known:
            entries: dict[int, float] = {
                want: min(count, self._task.wants[want].count) for want, count in counts.items()
            }
            if kind.sheet in self._sheet_rows:
                entries[self._sheet_rows[kind.sheet]] = 1
            self._known[key] = column = self.program.add(kind.cost, entries)
            self.loads[column] = load
        return self._known[key]

    def ask(self, left: Sequence[int], free: Sequence[int | None]) -> None:
        """Give so many pieces from so many sheets instead of those before."""
        for want, count in enumerate(left):
            if count != self.left[want]:
                self.program.limit_row(want, count, None)
        for sheet, row in self._sheet_rows.items():
            if free[sheet] != self.free[sheet]:
                self.program.limit_row(row, None, free[sheet])
        self.left, self.free = list(left), list(free)

    def look(self, seconds: float, most: int) -> Round | None:
        """Solve, price, add loads; None when time is up.

        Args:
            seconds: for the program.
            most: loads of each kind at most.
        """
        solved = self.program.solve(seconds)
        if solved is None:
            return None
        worth, scale = self._worths(solved)
        self.filler.price(worth, self.left)
        added, best = 0, []
        for number, kind in enumerate(self.filler.kinds):
            if self.free[kind.sheet] == 0:
                best.append(0)
                continue
            value, loads = self.filler.best(number, most)
            best.append(value)
            paid = float(kind.cost)
            if kind.sheet in self._sheet_rows:
                paid -= solved.duals[self._sheet_rows[kind.sheet]]
            for load in loads:
                worths = sum(worth[want] * count for want, count in load.counts().items())
                if worths > (paid + 1e-7 * max(1.0, paid)) * scale:
                    before = len(self.loads)
                    self.add(load)
                    added += len(self.loads) - before
        return Round(solved, self._bound(worth, scale, best), added)

    def settle(self, watch: Watch, looks: int, most: int) -> Round | None:
        """Look until nothing is added, at most so often."""
        found = None
        for _ in range(looks):
            found = self.look(watch.likely_left(), most)
            if found is None or not found.added:
                break
        return found

    def whole(self, solved: Solved, room: float, seconds: float) -> list[tuple[Load, int]] | None:
        """The best plan of the loads there are, by an integer program; None when none is found in time.

        Args:
            solved: the linear program, for what is asked now.
            room: only plans that cost less than this above it are of interest.
            seconds: at most.
        """
        columns = [column for column in self.loads if column >= len(solved.reduced) or solved.reduced[column] < room]
        found, _ = self.program.solve_whole(seconds, columns)
        if found is None:
            return None
        return [
            (self.loads[column], round(amount))
            for column, amount in zip(columns, found.amounts, strict=True)
            if amount > 0.5
        ]

    def vary(self, solved: Solved, turn: int, most: int, within: float) -> None:
        """Add loads that are good for worths near those of the program: rounding needs more of them than its optimum.

        Args:
            solved: the program's last optimum.
            turn: another one, other loads.
            most: loads of each kind at most.
            within: a load may miss its cost by so much.
        """
        chance = Random(turn)
        worth, scale = self._worths(solved)
        self.filler.price([int(value * chance.uniform(0.7, 1.3)) for value in worth], self.left)
        for number, kind in enumerate(self.filler.kinds):
            if self.free[kind.sheet] == 0:
                continue
            paid = float(kind.cost)
            if kind.sheet in self._sheet_rows:
                paid -= solved.duals[self._sheet_rows[kind.sheet]]
            for load in self.filler.best(number, most)[1]:
                worths = sum(worth[want] * count for want, count in load.counts().items())
                if paid - worths / scale <= within:
                    self.add(load)

    def _worths(self, solved: Solved) -> tuple[list[int], int]:
        """Duals of the wants as whole numbers, and how many make one unit of cost."""
        wants = self._task.wants
        duals = [max(dual, 0.0) if count else 0.0 for dual, count in zip(solved.duals, self.left, strict=False)]
        smallest = min((want.wide * want.long for want in wants if want.count > 0), default=1)
        largest = max(kind.wide * kind.high for kind in self.filler.kinds)
        pieces = min(sum(self.left), largest // smallest) + 1
        bits = _BITS - int(max(*duals, 1.0) * pieces).bit_length()
        scale = 1 << max(0, min(bits, 32))
        return [int(dual * scale) for dual in duals], scale

    def _bound(self, worth: Sequence[int], scale: int, best: Sequence[int]) -> Fraction:
        """Worth of all pieces in cost, lowered until no sheet gives more than it costs.

        Limited sheets may give more than they cost; that is taken off for each of them.
        """
        asked = sum(value * count for value, count in zip(worth, self.left, strict=True))
        top: dict[int, tuple[int, int]] = {}
        for kind, value in zip(self.filler.kinds, best, strict=True):
            top[kind.sheet] = (max(value, top.get(kind.sheet, (0, 0))[0]), kind.cost)
        bounds = []
        for are_limits_used in (True, False):
            lowered = Fraction(1)
            for sheet, (value, cost) in top.items():
                if value > cost * scale and (self.free[sheet] is None or not are_limits_used):
                    lowered = min(lowered, Fraction(cost * scale, value))
            over = Fraction(0)
            for sheet, (value, cost) in top.items():
                count = self.free[sheet]
                if count is not None and are_limits_used:
                    over += count * max(Fraction(0), lowered * value / scale - cost)
            bounds.append(lowered * asked / scale - over)
        return max(bounds)
