"""The plan among given columns: how often each is cut, a small integer program.

Proofs run without presolve: with an equal least and most cost the solver has claimed plans that were none.
"""

from __future__ import annotations

from itertools import count
from math import ceil, isfinite
from typing import TYPE_CHECKING, Any

from stitchflip.cutting.highs import quiet_highs
from stitchflip.cutting.layouts.columns.column import given_by
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.columns.column import Column
    from stitchflip.cutting.layouts.watch import Watch

_NO_LIMIT = 1e30
_SLACK = 1e-6
"""Sums of whole numbers differ from a whole number by less."""
_SHORTEST_RUN = 0.01
"""Seconds."""


@dataclass(frozen=True, slots=True)
class Choice:
    """What the program said."""

    times: tuple[int, ...] | None
    """How often each column is cut; None: none found."""
    cost: int
    """Of that; 0 when none was found."""
    bound: int
    """No choice of these columns costs less."""
    is_finished: bool
    """Nothing better can be found among these columns below the ceiling."""


def chosen(
    columns: Sequence[Column],
    least: Sequence[int],
    watch: Watch,
    *,
    most: Sequence[int | None] | None = None,
    looks: int | None = None,
    ceiling: int | None = None,
    floor_cost: int = 0,
    enough: int | None = None,
    is_presolved: bool = False,
) -> Choice:
    """Pick how often each column is cut, at the least cost.

    Args:
        columns: what can be cut.
        least: of each row, at least so much.
        watch: ends the search.
        most: of each row, at most so much; None for rows without a limit.
        looks: at most so many, at the places where the program asks whether to go on; unlike seconds the same on
            every machine. A look is a hundredth of a second, give or take a lot.
        ceiling: only choices that cost at most so much are looked for.
        floor_cost: none costs less, as is known otherwise.
        enough: the search ends once it finds one that costs no more; then `bound` may be lower than its cost.
        is_presolved: sometimes quicker to a plan; where nothing is found, that proves nothing.

    Returns:
        The choice. A `bound` of ceiling + 1 says: none of these columns make a plan within the ceiling.
    """
    import highspy  # type: ignore[import-untyped]  # ships no types

    highs = quiet_highs(
        presolve="on" if is_presolved else "off",
        mip_allow_restart=is_presolved,
        mip_rel_gap=0.0,
        mip_abs_gap=1 - 2 * _SLACK,
        time_limit=max(_SHORTEST_RUN, watch.left()),
    )
    if enough is not None:
        highs.setOptionValue("objective_target", enough + 0.5)
    if looks is not None:
        _look(highs, looks)
    highs.passModel(_program(columns, least, most or [None] * len(least), ceiling))
    highs.run()
    info = highs.getInfo()
    if highs.getModelStatus() == highspy.HighsModelStatus.kInfeasible:
        return Choice(times=None, cost=0, bound=floor_cost if ceiling is None else ceiling + 1, is_finished=True)
    bound = max(floor_cost, ceil(info.mip_dual_bound - _SLACK) if isfinite(info.mip_dual_bound) else floor_cost)
    times = tuple(round(amount) for amount in highs.getSolution().col_value)
    found = info.primal_solution_status == highspy.SolutionStatus.kSolutionStatusFeasible
    if not found or not _is_enough(columns, times, least, most):
        return Choice(times=None, cost=0, bound=bound, is_finished=False)
    cost = sum(column.cost * count for column, count in zip(columns, times, strict=True))
    return Choice(times=times, cost=cost, bound=min(bound, cost), is_finished=bound >= cost)


def _is_enough(
    columns: Sequence[Column],
    times: Sequence[int],
    least: Sequence[int],
    most: Sequence[int | None] | None,
) -> bool:
    """Whether whole numbers of columns really give what is wanted, whatever the program's tolerances."""
    given = given_by(dict(zip(columns, times, strict=True)), len(least))
    limits: Sequence[int | None] = most or [None] * len(least)
    return all(
        low <= amount and (high is None or amount <= high)
        for low, amount, high in zip(least, given, limits, strict=True)
    )


def _look(highs: Any, looks: int) -> None:  # noqa: ANN401  highspy ships no types
    """End the program after it has asked so often whether to go on."""
    import highspy

    left = count(looks, -1)

    def asked(_kind: object, _said: str, _out: object, answer: Any, _own: object) -> None:  # noqa: ANN401  as above
        answer.user_interrupt = next(left) <= 0

    highs.setCallback(asked, None)
    highs.startCallback(highspy.cb.HighsCallbackType.kCallbackMipInterrupt)


def _program(
    columns: Sequence[Column],
    least: Sequence[int],
    most: Sequence[int | None],
    ceiling: int | None,
) -> object:
    """The columns as an integer program; the cost is its last row where it has a limit."""
    import highspy
    import numpy as np

    program = highspy.HighsLp()
    has_cost_row = ceiling is not None
    program.num_col_, program.num_row_ = len(columns), len(least) + has_cost_row
    program.col_cost_ = np.array([column.cost for column in columns], dtype=float)
    program.col_lower_ = np.zeros(len(columns))
    program.col_upper_ = np.array([_most_times(column, least, most) for column in columns], dtype=float)
    limits = [*most, *([ceiling] if has_cost_row else [])]
    program.row_lower_ = np.array([*least, *([0] if has_cost_row else [])], dtype=float)
    program.row_upper_ = np.array([_NO_LIMIT if limit is None else limit for limit in limits], dtype=float)
    program.integrality_ = [highspy.HighsVarType.kInteger] * len(columns)
    entries = [
        [*column.uses, *([(len(least), column.cost)] if has_cost_row and column.cost else [])] for column in columns
    ]
    program.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    program.a_matrix_.start_ = np.cumsum([0, *map(len, entries)]).astype(np.int32)
    program.a_matrix_.index_ = np.array([row for uses in entries for row, _ in uses], dtype=np.int32)
    program.a_matrix_.value_ = np.array([count for uses in entries for _, count in uses], dtype=float)
    return program


def _most_times(column: Column, least: Sequence[int], most: Sequence[int | None]) -> int:
    """More of a column never helps: it gives all that is wanted of everything in it, or uses up a stock."""
    limits = [limit // count for row, count in column.uses if (limit := most[row]) is not None]
    return min([max((-(-least[row] // count) for row, count in column.uses), default=0), *limits])
