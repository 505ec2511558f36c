"""The exact search over patterns, asked for strips: first the fewest bought, then the fewest taken off the shelf."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.lengthwise import LengthTask, Stock, solve
from stitchflip.cutting.model import Status
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.cutting.layouts.watch import Watch
    from stitchflip.cutting.lengthwise import LengthAnswer
    from stitchflip.cutting.whole import Packing, Task

_SHELF_SECONDS = 0.5
"""For the second question."""


@dataclass(frozen=True, slots=True)
class Solved:
    """What the search found."""

    packing: Packing | None
    """None: nothing found."""
    new_strips_bound: int
    """No packing opens fewer bought strips."""
    is_impossible: bool = False
    """Proved: what is on hand is too little, and nothing may be bought."""


def fewest_bought(task: Task, watch: Watch) -> LengthAnswer:
    """The fewest bought strips, whatever is taken off the shelf.

    Args:
        task: pieces and strips.
        watch: ends the search.
    """
    stock = tuple(Stock(kind.length, kind.count, int(kind.count is None)) for kind in task.kinds)
    return solve(LengthTask(task.sizes, task.demands, stock), watch)


def solve_exactly(task: Task, watch: Watch) -> Solved:
    """The packing with the fewest bought strips, and then the fewest strips from the shelf, as far as found.

    Args:
        task: pieces and strips.
        watch: ends the search.
    """
    answer = fewest_bought(task, watch)
    if not answer.packing and any(task.demands):
        return Solved(None, 0, answer.status is Status.IMPOSSIBLE)
    best = _dense(task, answer)
    if any(kind.count for kind in task.kinds) and not watch.over():
        stock = tuple(
            Stock(kind.length, answer.value, 0) if kind.count is None else Stock(kind.length, kind.count, 1)
            for kind in task.kinds
        )
        fewer = solve(LengthTask(task.sizes, task.demands, stock), watch.part(_SHELF_SECONDS))
        best = min([best, *([_dense(task, fewer)] if fewer.packing else [])], key=lambda one: _opened(task, one))
    return Solved(best, answer.bound)


def _opened(task: Task, packing: Packing) -> tuple[int, int]:
    new = task.new_strips(packing)
    return new, len(packing) - new


def _dense(task: Task, answer: LengthAnswer) -> Packing:
    """Every strip with the number of pieces of each size."""
    out: list[tuple[int, tuple[int, ...]]] = []
    for one in answer.packing:
        counts = [0] * len(task.sizes)
        for size, count in one.pattern:
            counts[size] = count
        out.extend([(one.stock, tuple(counts))] * one.times)
    return tuple(out)
