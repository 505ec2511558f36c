"""Which patterns, how often: the integer program over those that can matter.

HiGHS solves it, one thread. Its bound counts only when every pattern that a better packing could use was put in.
"""

from __future__ import annotations

from itertools import accumulate
from math import isfinite
from typing import TYPE_CHECKING, Any

from stitchflip.cutting.highs import quiet_highs
from stitchflip.cutting.lengthwise.remaining import Remaining
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.lengthwise.master import Column

_ROUNDING = 1e-5


@dataclass(frozen=True, slots=True)
class Chosen:
    """What the integer program came to."""

    packing: Remaining | None
    """Everything cut, at the cost found; None: nothing found."""
    bound: float
    """No choice of these patterns costs less; infinite when there is none at all."""


def choose(start: Remaining, columns: Sequence[Column], aim: int, seconds: float, *, is_proof: bool = False) -> Chosen:
    """The cheapest choice of patterns.

    Args:
        start: what is wanted.
        columns: (kind of strip, pattern) to choose from.
        aim: cost at which to stop looking.
        seconds: for HiGHS.
        is_proof: without presolve, which has claimed what was not so; slower. Only then is the bound one to keep.
    """
    import highspy  # type: ignore[import-untyped]  # ships no types

    highs = quiet_highs(
        presolve="off" if is_proof else "choose",
        mip_allow_restart=not is_proof,
        mip_rel_gap=0.0,
        mip_abs_gap=1e-6,
        time_limit=float(max(seconds, 0.01)),
        objective_target=float(aim),
    )
    highs.passModel(_program(start, columns))
    highs.run()
    info = highs.getInfo()
    status = highs.getModelStatus()
    if status == highspy.HighsModelStatus.kInfeasible:
        return Chosen(None, float("inf"))
    bound = info.mip_dual_bound - _ROUNDING if isfinite(info.mip_dual_bound) else 0.0
    if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
        return Chosen(None, bound)
    values = highs.getSolution().col_value[: len(columns)]
    return Chosen(_cut(start, [(round(value), column) for value, column in zip(values, columns, strict=True)]), bound)


def _program(start: Remaining, columns: Sequence[Column]) -> Any:  # noqa: ANN401  HiGHS ships no types
    """How often each pattern is cut, then how many strips of each kind that makes, all whole numbers."""
    import highspy
    import numpy as np

    rows = len(start.task.sizes)
    kinds = sorted({kind for kind, _ in columns})
    counted = {kind: rows + place for place, kind in enumerate(kinds)}
    wide, infinity = len(columns) + len(kinds), highspy.kHighsInf
    times = [float(max(-(-start.left[size] // count) for size, count in pattern)) for _, pattern in columns]
    counts = [start.counts[kind] for kind in kinds]
    entries = [([*pattern, (counted[kind], -1)]) for kind, pattern in columns] + [
        [(counted[kind], 1)] for kind in kinds
    ]
    program = highspy.HighsLp()
    program.num_col_, program.num_row_ = wide, rows + len(kinds)
    program.col_cost_ = np.array([0.0] * len(columns) + [float(start.task.stock[kind].cost) for kind in kinds])
    program.col_lower_ = np.zeros(wide)
    program.col_upper_ = np.array([*times, *(infinity if count is None else float(count) for count in counts)])
    program.row_lower_ = np.array([*map(float, start.left), *[0.0] * len(kinds)])
    program.row_upper_ = np.array([infinity] * rows + [0.0] * len(kinds))
    program.integrality_ = [highspy.HighsVarType.kInteger] * wide
    matrix = program.a_matrix_
    matrix.format_ = highspy.MatrixFormat.kColwise
    matrix.start_ = np.array([0, *accumulate(len(column) for column in entries)], dtype=np.int32)
    matrix.index_ = np.array([row for column in entries for row, _ in column], dtype=np.int32)
    matrix.value_ = np.array([float(value) for column in entries for _, value in column])
    return program


def _cut(start: Remaining, chosen: Sequence[tuple[int, Column]]) -> Remaining | None:
    """Open the strips chosen; pieces made too often are left out."""
    now = start.copy()
    for times, (kind, pattern) in chosen:
        left = times
        while left:
            wanted = now.within(pattern)
            if not wanted:
                break
            alike = max(min(left, now.times(kind, wanted)), 0)
            if not alike:
                return None
            now.cut(kind, wanted, alike)
            left -= alike
    return now if now.is_done else None
