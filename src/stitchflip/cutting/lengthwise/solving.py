"""From the quick answers to the proof: the one door to lengths out of lengths.

Rules of thumb and weights first; where they meet, nothing else is loaded. Then the linear program over patterns
gives prices and a bound, dives from it give packings, and where the bound is near, all patterns that could still
matter are written down and an integer program decides.
"""

from __future__ import annotations

from functools import reduce
from math import gcd
from typing import TYPE_CHECKING

from stitchflip.cutting.lengthwise.best_fit import best_fit
from stitchflip.cutting.lengthwise.fillings import HABITS, fill_up, labor
from stitchflip.cutting.lengthwise.model import LengthAnswer, LengthTask, Opened, Stock
from stitchflip.cutting.lengthwise.remaining import packing_of
from stitchflip.cutting.lengthwise.search import Search
from stitchflip.cutting.lengthwise.totals import NEVER
from stitchflip.cutting.lengthwise.weights import least_cost
from stitchflip.cutting.model import Status

if TYPE_CHECKING:
    from stitchflip.cutting.layouts.watch import Watch

_MOST_SIZES = 600
"""With more different lengths only the quick ways are gone."""
_QUICK_TRIES = 6
_QUICK_LABOR = 30_000_000
"""So much work may go into filling strips one by one."""


def solve(task: LengthTask, watch: Watch) -> LengthAnswer:
    """The cheapest strips that give all pieces.

    Args:
        task: lengths above zero; equal ones may be listed apart.
        watch: when it ends, the best packing and the bound so far are handed out.

    Returns:
        Patterns count the sizes of the task as given.

    Example:
        >>> from stitchflip.cutting.layouts.watch import Watch
        >>> answer = solve(LengthTask((34, 29), (8, 8), (Stock(105),)), Watch(1))
        >>> answer.status.value, answer.value, answer.bound
        ('proved', 6, 6)
    """
    because = _impossible(task)
    if because:
        return LengthAnswer(Status.IMPOSSIBLE, (), 0, 0, because)
    plain, places = _plain(task)
    if not plain.sizes:
        return LengthAnswer(Status.PROVED, (), 0, 0)
    search = Search(plain, watch)
    _quick(search)
    if search.best is None:
        _long_first(search)
    if not search.over() and search.bound < NEVER and len(plain.sizes) <= _MOST_SIZES:
        from stitchflip.cutting.lengthwise.columns import go_on

        go_on(search)
    return _answer(task, search, places)


def _impossible(task: LengthTask) -> str:
    """Why no packing exists, as far as a glance tells."""
    if any(size <= 0 for size in task.sizes):
        return "a piece has no length"
    if any(demand < 0 for demand in task.demands):
        return "a piece is wanted fewer than 0 times"
    wanted = [size for size, demand in zip(task.sizes, task.demands, strict=True) if demand]
    longest = max((stock.length for stock in task.stock if stock.count != 0), default=0)
    if wanted and max(wanted) > longest:
        return f"a piece of {max(wanted)} is longer than every strip ({longest})"
    return ""


def _plain(task: LengthTask) -> tuple[LengthTask, tuple[list[list[int]], list[int]]]:
    """Equal sizes once, longest first, in units of their common divisor; strips that can give nothing left out."""
    numbers: dict[int, list[int]] = {}
    for number, (size, demand) in enumerate(zip(task.sizes, task.demands, strict=True)):
        if demand:
            numbers.setdefault(size, []).append(number)
    sizes = sorted(numbers, reverse=True)
    if not sizes:
        return LengthTask((), (), ()), ([], [])
    unit = reduce(gcd, sizes)
    demands = tuple(sum(task.demands[number] for number in numbers[size]) for size in sizes)
    pieces = sum(demands)
    kinds = [number for number, stock in enumerate(task.stock) if stock.count != 0 and stock.length >= sizes[-1]]
    stock = tuple(
        Stock(one.length // unit, None if one.count is None or one.count >= pieces else one.count, one.cost)
        for one in (task.stock[number] for number in kinds)
    )
    plain = LengthTask(tuple(size // unit for size in sizes), demands, stock)
    return plain, ([numbers[size] for size in sizes], kinds)


def _quick(search: Search) -> None:
    """Weights, longest first, and a few times strip by strip."""
    search.proved(least_cost(search.task))
    search.found(best_fit(search.start))
    until = search.over_within(0.1)
    work = _QUICK_LABOR
    for number in range(_QUICK_TRIES):
        work -= labor(search.start)
        if work < 0 or until():
            return
        search.found(fill_up(search.start, search.dice, HABITS[number % len(HABITS)]))


def _long_first(search: Search) -> None:
    """Pieces longer than all strips there are enough of: whether the others are enough for them."""
    task = search.task
    endless = max((stock.length for stock in task.stock if stock.count is None), default=None)
    if endless is None:
        return
    long = sum(size > endless for size in task.sizes)
    few = tuple(Stock(one.length, one.count or 0, one.cost) for one in task.stock)
    answer = solve(
        LengthTask(task.sizes[:long], task.demands[:long], few), search.watch.part(search.watch.likely_left() / 2)
    )
    if answer.status is Status.IMPOSSIBLE:
        search.proved(NEVER)
    elif answer.packing:
        start = search.start.copy()
        for one in answer.packing:
            start.cut(one.stock, one.pattern, one.times)
        search.found(best_fit(start))


def _answer(task: LengthTask, search: Search, places: tuple[list[list[int]], list[int]]) -> LengthAnswer:
    """Back to the sizes and strips as given."""
    if search.best is None:
        if search.bound >= NEVER:
            return LengthAnswer(Status.IMPOSSIBLE, (), 0, 0, "all strips together are not enough")
        return LengthAnswer(Status.BEST_FOUND, (), 0, search.bound, "no packing was found in the time given")
    numbers, kinds = places
    waiting = [[[number, task.demands[number]] for number in same] for same in numbers]
    opened: list[Opened] = []
    for one in packing_of(search.best.opened):
        opened.extend(_told_apart(one, waiting, kinds[one.stock]))
    status = Status.PROVED if search.is_proved else Status.BEST_FOUND
    because = "" if search.is_proved else "the time was used up"
    value = search.best.spent
    return LengthAnswer(status, tuple(opened), value, min(search.bound, value), because)


def _told_apart(one: Opened, waiting: list[list[list[int]]], stock: int) -> list[Opened]:
    """Strips cut alike, with the numbers under which the sizes were given; equal sizes are used up in turn."""
    out: list[Opened] = []
    times = one.times
    while times:
        pattern: dict[int, int] = {}
        if all(len(waiting[size]) == 1 for size, _ in one.pattern):
            alike = times
            for size, count in one.pattern:
                pattern[waiting[size][0][0]] = count
        else:
            alike = 1
            for size, count in one.pattern:
                left = count
                while left:
                    first = waiting[size][0]
                    taken = min(left, first[1])
                    pattern[first[0]] = pattern.get(first[0], 0) + taken
                    first[1] -= taken
                    left -= taken
                    if not first[1] and len(waiting[size]) > 1:
                        waiting[size].pop(0)
        out.append(Opened(stock, tuple(sorted(pattern.items())), alike))
        times -= alike
    return out
