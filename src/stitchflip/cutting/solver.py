"""The exact answer when rules of thumb and a short search leave a gap: two models for HiGHS.

With few different lengths every sensible pattern can be written down, and the model only chooses how often
each is cut. With many lengths the patterns are the paths of a graph whose nodes are places on the strip.
HiGHS and numpy are loaded here and nowhere else in this room, and only when there is a gap to close.
"""

from __future__ import annotations

from collections import defaultdict
from itertools import pairwise
from math import ceil, floor, isfinite
from typing import TYPE_CHECKING

from stitchflip.cutting.whole import Packing, Pattern, Task
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

_MOST_PATTERNS = 4000
_MOST_ARCS = 60_000
_MOST_SIZES = 200
"""With more different lengths nobody writes down all patterns."""
_ROUNDING = 1e-6
_WASTE = -1
"""Stands for no piece: a step along the strip that is waste."""
_END = -2
"""Stands for the end of a strip of kind 0; the ends of later kinds lie below it."""


@dataclass(frozen=True, slots=True)
class Solved:
    """What HiGHS found within its time."""

    packing: Packing | None
    """None: nothing found."""
    new_strips_bound: int
    """No packing opens fewer bought strips; 0 when nothing is known."""


@dataclass(slots=True)
class _Model:
    """A mixed integer model, column by column: minimize cost, rows between limits."""

    lower: list[float]
    upper: list[float]
    costs: list[float]
    most: list[float]
    entries: list[list[tuple[int, float]]]

    def add_row(self, lower: float, upper: float) -> int:
        self.lower.append(lower)
        self.upper.append(upper)
        return len(self.lower) - 1

    def add_column(self, cost: float, most: float, entries: Sequence[tuple[int, float]]) -> int:
        self.costs.append(cost)
        self.most.append(most)
        self.entries.append(list(entries))
        return len(self.costs) - 1


def solve(task: Task, time_limit_s: float) -> Solved:
    """The packing with the fewest bought strips, and then the fewest strips from the shelf.

    Args:
        task: pieces and strips.
        time_limit_s: seconds for HiGHS.

    Returns:
        The packing found and the bound proved within the time.
    """
    patterns = _all_patterns(task)
    if patterns is not None:
        return _solve_patterns(task, patterns, time_limit_s)
    return _solve_flow(task, time_limit_s)


def _costs(task: Task) -> list[float]:
    """Cost of a strip of each kind: all strips of the shelf together cost less than one bought strip."""
    on_hand = sum(kind.count or 0 for kind in task.kinds)
    return [1.0 if kind.count is None else 1.0 / (on_hand + 1) for kind in task.kinds]


def _bound(task: Task, dual: float) -> int:
    """Bought strips that the solver's own bound leaves no way round."""
    on_hand = sum(kind.count or 0 for kind in task.kinds)
    if not isfinite(dual):
        return 0
    return max(0, ceil(dual - on_hand / (on_hand + 1) - _ROUNDING))


# --- patterns ----------------------------------------------------------------------------------------------


def _all_patterns(task: Task) -> list[tuple[int, Pattern]] | None:
    """(kind, pattern) for every pattern into which nothing more fits; None when there are too many."""
    if len(task.sizes) > _MOST_SIZES:
        return None
    out: list[tuple[int, Pattern]] = []
    for number, kind in enumerate(task.kinds):
        if kind.count == 0:
            continue
        own = _maximal(task, kind.length, _MOST_PATTERNS - len(out))
        if own is None:
            return None
        out.extend((number, pattern) for pattern in own)
    return out


def _maximal(task: Task, length: int, most: int) -> list[Pattern] | None:
    out: list[Pattern] = []
    counts = [0] * len(task.sizes)
    looks = 50 * _MOST_PATTERNS

    def fill(size: int, rest: int) -> bool:
        nonlocal looks
        looks -= 1
        if size == len(task.sizes):
            open_ended = any(
                count < demand and length_ <= rest
                for count, demand, length_ in zip(counts, task.demands, task.sizes, strict=True)
            )
            if not open_ended and any(counts):
                out.append(tuple(counts))
            return len(out) <= most and looks > 0
        for count in range(min(task.demands[size], rest // task.sizes[size]), -1, -1):
            counts[size] = count
            if not fill(size + 1, rest - count * task.sizes[size]):
                return False
        counts[size] = 0
        return True

    return out if fill(0, length) else None


def _solve_patterns(task: Task, patterns: list[tuple[int, Pattern]], time_limit_s: float) -> Solved:
    model = _Model([], [], [], [], [])
    for demand in task.demands:
        model.add_row(demand, float("inf"))
    stock = {number: model.add_row(0, kind.count) for number, kind in enumerate(task.kinds) if kind.count}
    costs = _costs(task)
    for number, pattern in patterns:
        entries = [(size, float(count)) for size, count in enumerate(pattern) if count]
        if number in stock:
            entries.append((stock[number], 1.0))
        most = max(-(-demand // count) for demand, count in zip(task.demands, pattern, strict=True) if count)
        model.add_column(costs[number], most, entries)
    values, dual = _run(model, time_limit_s)
    if values is None:
        return Solved(None, _bound(task, dual))
    left = list(task.demands)
    opened: list[tuple[int, Pattern]] = []
    for (number, pattern), value in zip(patterns, values, strict=True):
        for _ in range(round(value)):
            cut = tuple(min(count, demand) for count, demand in zip(pattern, left, strict=True))
            if any(cut):
                opened.append((number, cut))
                left = [demand - count for demand, count in zip(left, cut, strict=True)]
    return Solved(tuple(opened), _bound(task, dual))


# --- flow along the strip ----------------------------------------------------------------------------------


def _solve_flow(task: Task, time_limit_s: float) -> Solved:
    """Cut pieces are steps along the strip, waste is the way to the next place, and each strip is one walk."""
    arcs = _arcs(task)
    if arcs is None:
        return Solved(None, 0)
    model = _Model([], [], [], [], [])
    for demand in task.demands:
        model.add_row(demand, float("inf"))
    nodes = sorted({node for _, tail, head in arcs for node in (tail, head)})
    balance = {node: model.add_row(0, 0) for node in nodes}
    walks = float(sum(task.demands))
    steps: list[tuple[int, int, int]] = []
    for size, tail, head in arcs:
        model.add_column(0.0, task.demands[size], [(size, 1.0), (balance[tail], -1.0), (balance[head], 1.0)])
        steps.append((size, tail, head))
    for tail, head in pairwise(nodes):
        model.add_column(0.0, walks, [(balance[tail], -1.0), (balance[head], 1.0)])
        steps.append((_WASTE, tail, head))
    for number, (kind, cost) in enumerate(zip(task.kinds, _costs(task), strict=True)):
        end = max(node for node in nodes if node <= kind.length)
        if end and kind.count != 0:
            most = walks if kind.count is None else float(kind.count)
            model.add_column(cost, most, [(balance[0], 1.0), (balance[end], -1.0)])
            steps.append((_END - number, end, end))
    values, dual = _run(model, time_limit_s)
    if values is None:
        return Solved(None, _bound(task, dual))
    return Solved(_walks(task, steps, [round(value) for value in values]), _bound(task, dual))


def _arcs(task: Task) -> list[tuple[int, int, int]] | None:
    """(size, from, to) on a strip where the pieces lie longest first; None when there are too many."""
    longest = task.longest
    out: set[tuple[int, int, int]] = set()
    reached = {0}
    looks = 0
    for size, (length, demand) in enumerate(zip(task.sizes, task.demands, strict=True)):
        new: set[int] = set()
        for start in reached:
            for count in range(1, demand + 1):
                end = start + count * length
                if end > longest:
                    break
                out.add((size, end - length, end))
                new.add(end)
        reached |= new
        looks += len(reached)
        if len(out) > _MOST_ARCS or looks > 20 * _MOST_ARCS:
            return None
    return sorted(out)


def _walks(task: Task, steps: list[tuple[int, int, int]], values: list[int]) -> Packing:
    """Take the flow apart into strips; pieces cut too often are dropped."""
    onward: dict[int, list[list[int]]] = defaultdict(list)
    for (what, tail, head), value in zip(steps, values, strict=True):
        if value:
            onward[tail].append([what, head, value])
    left = list(task.demands)
    packing: list[tuple[int, Pattern]] = []
    while any(step[2] for step in onward[0]):
        counts = [0] * len(task.sizes)
        node, what = 0, _WASTE
        while what > _END:
            step = next(step for step in onward[node] if step[2])
            what, node = step[0], step[1]
            step[2] -= 1
            if what >= 0 and left[what]:
                counts[what] += 1
                left[what] -= 1
        if any(counts):
            packing.append((_END - what, tuple(counts)))
    return tuple(packing)


# --- HiGHS -------------------------------------------------------------------------------------------------


def _run(model: _Model, time_limit_s: float) -> tuple[list[float] | None, float]:
    """Values of the best solution and the proved bound, one thread, always the same way."""
    import highspy  # type: ignore[import-untyped]  # ships no types
    import numpy as np

    highs = highspy.Highs()
    for option, setting in (
        ("output_flag", False),
        ("threads", 1),
        ("random_seed", 0),
        ("time_limit", float(time_limit_s)),
        ("mip_rel_gap", 0.0),
        ("mip_abs_gap", 1e-7),
    ):
        highs.setOptionValue(option, setting)
    program = highspy.HighsLp()
    columns, rows = len(model.costs), len(model.lower)
    program.num_col_, program.num_row_ = columns, rows
    program.col_cost_ = np.array(model.costs)
    program.col_lower_ = np.zeros(columns)
    program.col_upper_ = np.array([floor(most) for most in model.most], dtype=float)
    program.row_lower_ = np.array(model.lower)
    program.row_upper_ = np.array(model.upper)
    program.integrality_ = [highspy.HighsVarType.kInteger] * columns
    program.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    starts = np.cumsum([0, *(len(entries) for entries in model.entries)])
    program.a_matrix_.start_ = starts.astype(np.int32)
    program.a_matrix_.index_ = np.array([row for entries in model.entries for row, _ in entries], dtype=np.int32)
    program.a_matrix_.value_ = np.array([value for entries in model.entries for _, value in entries], dtype=float)
    highs.passModel(program)
    highs.run()
    info = highs.getInfo()
    dual = info.mip_dual_bound
    if highs.getModelStatus() == highspy.HighsModelStatus.kInfeasible:
        return None, float("inf")
    if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
        return None, dual
    return list(highs.getSolution().col_value), dual
