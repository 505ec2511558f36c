"""The linear program over the loads found so far, and the integer program over the same."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.highs import quiet_highs
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence


@dataclass(frozen=True, slots=True)
class Solved:
    """What a program came to."""

    value: float
    amounts: tuple[float, ...]
    """Of each column."""
    duals: tuple[float, ...]
    """Of each row; empty for an integer program."""
    reduced: tuple[float, ...]
    """What a plan would cost more for using one of a column; empty for an integer program."""
    bound: float
    """Proved for the columns there are."""


class Program:
    """Least cost of columns that meet all rows; columns can be added at any time.

    Args:
        rows: smallest and largest sum of each row; None: no limit.
    """

    def __init__(self, rows: Sequence[tuple[float | None, float | None]]) -> None:
        import highspy  # type: ignore[import-untyped]  # ships no types

        self._endless = highspy.kHighsInf
        self.columns: list[tuple[float, float, dict[int, float]]] = []
        self.rows = [self._limits(low, high) for low, high in rows]
        self._highs = quiet_highs(presolve="choose")
        for low, high in self.rows:
            self._highs.addRow(low, high, 0, [], [])

    def _limits(self, low: float | None, high: float | None) -> tuple[float, float]:
        return (-self._endless if low is None else low, self._endless if high is None else high)

    def add(self, cost: float, entries: Mapping[int, float], most: float | None = None) -> int:
        """A column: what one of it costs, what it adds to the rows, and how many there may be."""
        limit = self._endless if most is None else most
        self.columns.append((cost, limit, dict(entries)))
        self._highs.addCol(cost, 0.0, limit, len(entries), list(entries), [float(entry) for entry in entries.values()])
        return len(self.columns) - 1

    def limit_row(self, row: int, low: float | None, high: float | None) -> None:
        """Another smallest and largest sum."""
        self.rows[row] = self._limits(low, high)
        self._highs.changeRowBounds(row, *self.rows[row])

    def solve(self, seconds: float) -> Solved | None:
        """With parts of columns; None when it could not be solved in time."""
        import highspy

        self._highs.setOptionValue("time_limit", self._highs.getRunTime() + max(seconds, 0.01))
        self._highs.run()
        if self._highs.getModelStatus() != highspy.HighsModelStatus.kOptimal:
            return None
        found = self._highs.getSolution()
        value = self._highs.getInfo().objective_function_value
        return Solved(value, tuple(found.col_value), tuple(found.row_dual), tuple(found.col_dual), value)

    def solve_whole(
        self, seconds: float, columns: Sequence[int], *, is_proof: bool = False
    ) -> tuple[Solved | None, float]:
        """With whole columns only, from some of them.

        Args:
            seconds: at most.
            columns: numbers of those that may be used.
            is_proof: without presolve, which has claimed what was not so; only then is the bound one to keep.

        Returns:
            The best solution found, or None, and a bound for these columns.
        """
        import highspy
        import numpy as np

        model = highspy.HighsLp()
        model.num_col_, model.num_row_ = len(columns), len(self.rows)
        chosen = [self.columns[column] for column in columns]
        model.col_cost_ = np.array([cost for cost, _, _ in chosen])
        model.col_lower_ = np.zeros(len(columns))
        model.col_upper_ = np.array([limit for _, limit, _ in chosen])
        model.row_lower_ = np.array([low for low, _ in self.rows])
        model.row_upper_ = np.array([high for _, high in self.rows])
        model.integrality_ = [highspy.HighsVarType.kInteger] * len(columns)
        model.a_matrix_.format_ = highspy.MatrixFormat.kColwise
        model.a_matrix_.start_ = np.cumsum([0, *(len(entries) for _, _, entries in chosen)]).astype(np.int32)
        model.a_matrix_.index_ = np.array([row for _, _, entries in chosen for row in entries], dtype=np.int32)
        model.a_matrix_.value_ = np.array(
            [entry for _, _, entries in chosen for entry in entries.values()], dtype=float
        )
        highs = quiet_highs(
            presolve="off" if is_proof else "choose",
            mip_allow_restart=not is_proof,
            mip_rel_gap=0.0,
            mip_abs_gap=1e-6,
            time_limit=max(seconds, 0.01),
        )
        highs.passModel(model)
        highs.run()
        info = highs.getInfo()
        if highs.getModelStatus() == highspy.HighsModelStatus.kInfeasible:
            return None, float("inf")
        if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
            return None, info.mip_dual_bound
        amounts = tuple(float(round(amount)) for amount in highs.getSolution().col_value)
        return Solved(info.objective_function_value, amounts, (), (), info.mip_dual_bound), info.mip_dual_bound
