"""The linear program over patterns: which share of every pattern known so far, and what each piece is worth.

HiGHS keeps the program and starts each run from where the last one ended.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.highs import quiet_highs
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from stitchflip.cutting.lengthwise.model import LengthTask, Pattern

Column = tuple[int, "Pattern"]
"""(kind of strip, pattern)."""

Range = tuple[int, "int | None"]
"""Fewest and most strips of a kind; None: as many as it takes."""

_PRIMAL = 4
"""New patterns leave the shares possible, so the primal simplex goes on from them."""
_DEAR = 4
"""A piece made from nothing costs so many times the dearest strip."""


@dataclass(frozen=True, slots=True)
class Shares:
    """An optimum over the patterns known."""

    value: float
    prices: tuple[float, ...]
    """Of one more piece of each size, not below zero."""
    rents: tuple[float, ...]
    """What one more strip of each kind would save; below zero where more must be opened than would pay."""
    opened: tuple[float, ...]
    """Strips of each kind."""
    from_nothing: float
    """Pieces the known patterns cannot give."""


class Master:
    """The program.

    Args:
        task: sizes and kinds of strips.
        trades: True: a longer piece may serve as the next shorter one, which steadies the prices.
    """

    def __init__(self, task: LengthTask, *, trades: bool = True) -> None:
        import highspy  # type: ignore[import-untyped]  # ships no types
        import numpy as np

        self.task = task
        self.columns: list[Column] = []
        self.known: set[Column] = set()
        self._place: list[int] = []
        highs = self._highs = quiet_highs(solver="simplex")
        self._infinity = highspy.kHighsInf
        rows = len(task.sizes)
        empty = np.array([], dtype=np.int32)
        for demand in task.demands:
            highs.addRow(float(demand), self._infinity, 0, empty, empty.astype(float))
        for _ in task.stock:
            highs.addRow(0.0, self._infinity, 0, empty, empty.astype(float))
        dear = _DEAR * max(1, *(stock.cost for stock in task.stock))
        for row in range(rows):
            highs.addCol(float(dear), 0.0, self._infinity, 1, np.array([row], dtype=np.int32), np.array([1.0]))
        self.trades = 0
        if trades:
            for row in range(rows - 1):
                pair = np.array([row, row + 1], dtype=np.int32)
                highs.addCol(0.0, 0.0, self._infinity, 2, pair, np.array([-1.0, 1.0]))
            self.trades = rows - 1
        self._first = rows + self.trades
        self.want(task.demands, [(0, stock.count) for stock in task.stock])

    def add(self, columns: Iterable[Column]) -> int:
        """Put in patterns.

        Args:
            columns: with their kinds of strip; known ones are passed over.

        Returns:
            How many were new.
        """
        import numpy as np

        fresh = [column for column in dict.fromkeys(columns) if column not in self.known]
        if not fresh:
            return 0
        starts: list[int] = []
        index: list[int] = []
        values: list[float] = []
        costs: list[float] = []
        for kind, pattern in fresh:
            starts.append(len(index))
            costs.append(float(self.task.stock[kind].cost))
            for size, count in pattern:
                index.append(size)
                values.append(float(count))
            index.append(len(self.task.sizes) + kind)
            values.append(1.0)
        self._highs.addCols(
            len(fresh),
            np.array(costs),
            np.zeros(len(fresh)),
            np.full(len(fresh), self._infinity),
            len(index),
            np.array(starts, dtype=np.int32),
            np.array(index, dtype=np.int32),
            np.array(values),
        )
        self.columns.extend(fresh)
        self.known.update(fresh)
        return len(fresh)

    def end_trades(self) -> bool:
        """From now on every piece is cut as what it is; False when it was so already."""
        if not self.trades:
            return False
        rows = len(self.task.sizes)
        for column in range(rows, rows + self.trades):
            self._highs.changeColBounds(column, 0.0, 0.0)
        self.trades = 0
        return True

    def want(self, demands: Sequence[float], ranges: Sequence[Range]) -> None:
        """Ask for other numbers of pieces and strips.

        Args:
            demands: of each size.
            ranges: fewest and most strips of each kind.
        """
        rows = len(demands)
        for row, demand in enumerate(demands):
            self._highs.changeRowBounds(row, demand, self._infinity)
        for kind, (fewest, most) in enumerate(ranges):
            self._highs.changeRowBounds(rows + kind, float(fewest), self._infinity if most is None else float(most))
        self._highs.setOptionValue("simplex_strategy", 0)

    def run(self) -> Shares:
        """Solve it."""
        import numpy as np

        self._highs.run()
        self._highs.setOptionValue("simplex_strategy", _PRIMAL)
        solution = self._highs.getSolution()
        dual = np.array(solution.row_dual)
        primal = np.array(solution.col_value)
        rows = len(self.task.sizes)
        self._primal = primal[self._first :]
        return Shares(
            value=self._highs.getInfo().objective_function_value,
            prices=tuple(np.maximum(dual[:rows], 0.0).tolist()),
            rents=tuple((-dual[rows:]).tolist()),
            opened=tuple(np.array(solution.row_value)[rows:].tolist()),
            from_nothing=float(primal[:rows].sum()),
        )

    def shares(self) -> list[tuple[float, Column]]:
        """Patterns in use after the last run, largest share first."""
        used = (self._primal > 1e-7).nonzero()[0].tolist()
        return sorted(((float(self._primal[place]), self.columns[place]) for place in used), key=lambda one: -one[0])
