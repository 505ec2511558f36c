"""Which patterns, how often: the integer program over those that can matter.

HiGHS solves it, one thread. Its bound counts only when every pattern that a better packing could use was put in.
"""

from __future__ import annotations

from math import isfinite
from typing import TYPE_CHECKING

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
    is_finished: bool
    """Whether the bound is final."""


def choose(start: Remaining, columns: Sequence[Column], aim: int, seconds: float) -> Chosen:
    """The cheapest choice of patterns.

    Args:
        start: what is wanted.
        columns: (kind of strip, pattern) to choose from.
        aim: cost at which to stop looking.
        seconds: for HiGHS.
    """
    import highspy  # type: ignore[import-untyped]  # ships no types
    import numpy as np

    task = start.task
    highs = highspy.Highs()
    for option, setting in (
        ("output_flag", False),
        ("threads", 1),
        ("random_seed", 0),
        ("time_limit", float(max(seconds, 0.01))),
        ("mip_rel_gap", 0.0),
        ("mip_abs_gap", 1e-6),
        ("objective_target", float(aim)),
    ):
        highs.setOptionValue(option, setting)
    rows = len(task.sizes)
    kinds = sorted({kind for kind, _ in columns})
    counted = {kind: rows + place for place, kind in enumerate(kinds)}
    program = highspy.HighsLp()
    program.num_col_, program.num_row_ = len(columns) + len(kinds), rows + len(kinds)
    program.col_cost_ = np.array([*[0.0] * len(columns), *(float(task.stock[kind].cost) for kind in kinds)])
    program.col_lower_ = np.zeros(len(columns) + len(kinds))
    infinity = highspy.kHighsInf
    program.col_upper_ = np.array(
        [
            *(float(max(-(-start.left[size] // count) for size, count in pattern)) for _, pattern in columns),
            *(infinity if start.counts[kind] is None else float(start.counts[kind] or 0) for kind in kinds),
        ]
    )
    program.row_lower_ = np.array([*map(float, start.left), *[0.0] * len(kinds)])
    program.row_upper_ = np.array([*[infinity] * rows, *[0.0] * len(kinds)])
    program.integrality_ = [highspy.HighsVarType.kInteger] * (len(columns) + len(kinds))
    program.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    starts, index = [0], list[int]()
    values: list[float] = []
    for kind, pattern in columns:
        index.extend(size for size, _ in pattern)
        values.extend(float(count) for _, count in pattern)
        index.append(counted[kind])
        values.append(-1.0)
        starts.append(len(index))
    for kind in kinds:
        index.append(counted[kind])
        values.append(1.0)
        starts.append(len(index))
    program.a_matrix_.start_ = np.array(starts, dtype=np.int32)
    program.a_matrix_.index_ = np.array(index, dtype=np.int32)
    program.a_matrix_.value_ = np.array(values)
    highs.passModel(program)
    highs.run()
    info = highs.getInfo()
    status = highs.getModelStatus()
    if status == highspy.HighsModelStatus.kInfeasible:
        return Chosen(None, float("inf"), True)
    bound = info.mip_dual_bound if isfinite(info.mip_dual_bound) else 0.0
    finished = status == highspy.HighsModelStatus.kOptimal
    if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
        return Chosen(None, bound - _ROUNDING, finished)
    chosen = [
        (round(value), column)
        for value, column in zip(highs.getSolution().col_value[: len(columns)], columns, strict=True)
    ]
    return Chosen(_cut(start, chosen), bound - _ROUNDING, finished)


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
