"""The linear program over the columns known so far: what each piece costs at present, and which columns are used."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.highs import quiet_highs

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.columns.column import Column
    from stitchflip.cutting.layouts.watch import Watch

_NO_LIMIT = 1e30
_EARLIEST_END = 0.01
"""Seconds a run is always given, so that a nearly finished search still gets an answer."""


class Master:
    """At least so much of every row at the least cost, columns in fractions.

    Args:
        least: of each row, at least so much.
        most: of each row, at most so much; None for rows without a limit. Rows about stock have limits.
    """

    def __init__(self, least: Sequence[int], most: Sequence[int | None] | None = None) -> None:
        import highspy  # type: ignore[import-untyped]  # ships no types

        self.columns: list[Column] = []
        self.cost = 0.0
        """Of the last solution."""
        self.prices: list[float] = []
        """Of one more of each row, in the last solution: zero or more for rows of wants."""
        self.amounts: list[float] = []
        """Of each column, in the last solution."""
        self._known: set[Column] = set()
        self._good = highspy.HighsModelStatus.kOptimal
        self._highs = quiet_highs()
        limits: Sequence[int | None] = most if most is not None else [None] * len(least)
        for low, high in zip(least, limits, strict=True):
            self._highs.addRow(float(low), _NO_LIMIT if high is None else float(high), 0, [], [])

    def add(self, columns: Sequence[Column]) -> int:
        """Add columns, those that are there already left out.

        Returns:
            How many were new.
        """
        new = [column for column in dict.fromkeys(columns) if column not in self._known]
        if not new:
            return 0
        starts: list[int] = []
        rows: list[int] = []
        counts: list[float] = []
        for column in new:
            starts.append(len(rows))
            rows += [row for row, _ in column.uses]
            counts += [float(count) for _, count in column.uses]
        costs = [float(column.cost) for column in new]
        self._highs.addCols(len(new), costs, [0.0] * len(new), [_NO_LIMIT] * len(new), len(rows), starts, rows, counts)
        self._known.update(new)
        self.columns += new
        return len(new)

    def set_row(self, row: int, least: int, most: int | None = None) -> None:
        """Want another amount of a row from now on."""
        self._highs.changeRowBounds(row, float(least), _NO_LIMIT if most is None else float(most))

    def close(self, column: int, *, most: float = 0.0) -> None:
        """Use a column at most so often from now on."""
        self._highs.changeColBounds(column, 0.0, most)

    def open(self, column: int) -> None:
        """Use a column as often as it takes again."""
        self._highs.changeColBounds(column, 0.0, _NO_LIMIT)

    def solve(self, watch: Watch) -> bool:
        """Find the cheapest amounts.

        Args:
            watch: ends the run.

        Returns:
            Whether there is a solution; `cost`, `prices` and `amounts` are its. False too when time was over.
        """
        self._highs.setOptionValue("time_limit", self._highs.getRunTime() + max(_EARLIEST_END, watch.left()))
        self._highs.run()
        if self._highs.getModelStatus() != self._good:
            return False
        solution = self._highs.getSolution()
        self.cost = self._highs.getInfo().objective_function_value
        self.prices = list(solution.row_dual)
        self.amounts = list(solution.col_value)
        return True
