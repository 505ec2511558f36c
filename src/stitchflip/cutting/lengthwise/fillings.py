"""Strip by strip, each as full as it goes: the way of a patient cutter at the table.

Which sums of lengths exist is kept as the bits of one whole number, so "how full can this strip get" takes
microseconds. Among equally full fillings longer pieces come first, now and then others, so that every try differs.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.lengthwise.remaining import Remaining
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence
    from random import Random

    from stitchflip.cutting.lengthwise.model import Pattern

_MOST_TIMES = 16
"""One filling is repeated at most so often before the next is looked for, when very many pieces are wanted."""

_ROUNDING = 1e-6


@dataclass(frozen=True, slots=True)
class Habit:
    """How fillings are chosen."""

    long_first: float = 1.0
    """How often, from 0 to 1, as many of the longest as possible are taken."""
    any_first: float = 0.0
    """How often the strip begins with another than the longest piece."""


HABITS = (Habit(), Habit(0.9), Habit(0.7, 0.1), Habit(0.5, 0.2), Habit(0.95))
"""Tried in turn."""


def labor(now: Remaining) -> int:
    """How much work it is to fill up, in machine words looked at.

    Args:
        now: what is wanted.
    """
    task = now.task
    wanted = [(size, count) for size, count in zip(task.sizes, now.left, strict=True) if count]
    longest = max(stock.length for stock in task.stock)
    strips = sum(size * count for size, count in wanted) // longest + 1
    return strips * len(wanted) * (longest // 64 + 20)


def fill_up(start: Remaining, dice: Random, habit: Habit, most: int | None = None) -> Remaining | None:
    """Open strips until every piece is cut.

    Args:
        start: what is wanted; left as it is.
        dice: seeded.
        habit: how fillings are chosen.
        most: give up when it is clear that the strips will cost more than this.

    Returns:
        Everything cut; None when the strips are used up or cost too much.
    """
    now = start.copy()
    task = now.task
    total = sum(size * count for size, count in zip(task.sizes, now.left, strict=True))
    while not now.is_done:
        wanted = [size for size, count in enumerate(now.left) if count]
        first = wanted[0]
        if habit.any_first and dice.random() < habit.any_first:
            first = dice.choice(wanted[: max(1, len(wanted) // 4)])
        strip = _best_strip(now, wanted, first, dice, habit)
        if strip is None:
            return None
        stock, pattern = strip
        times = now.times(stock, pattern)
        times = times if times > _MOST_TIMES else 1
        now.cut(stock, pattern, times)
        total -= times * sum(task.sizes[size] * count for size, count in pattern)
        if most is not None and now.spent + _at_least(now, total) > most + _ROUNDING:
            return None
    return now


def _at_least(now: Remaining, total: int) -> float:
    """What strips for so much length cost at least: the cheapest first, the last one in part."""
    cost = 0.0
    kinds = [
        (stock.cost / stock.length, stock.length, count)
        for stock, count in zip(now.task.stock, now.counts, strict=True)
    ]
    for ratio, length, count in sorted(kinds, key=lambda one: one[0]):
        taken = total if count is None else min(total, length * count)
        cost += taken * ratio
        total -= taken
    return cost


def _best_strip(
    now: Remaining, wanted: Sequence[int], first: int, dice: Random, habit: Habit
) -> tuple[int, Pattern] | None:
    """The kind that costs least for what it gives, filled with that piece first."""
    size = now.task.sizes[first]
    kinds = [number for number, stock in enumerate(now.task.stock) if now.counts[number] != 0 and stock.length >= size]
    if not kinds:
        return None
    now.left[first] -= 1
    rooms = [now.task.stock[number].length - size for number in kinds]
    layers, sums = _sums(now, wanted, max(rooms))
    tops = [(sums & ((1 << (room + 1)) - 1)).bit_length() - 1 for room in rooms]
    place = min(
        range(len(kinds)),
        key=lambda one: (now.task.stock[kinds[one]].cost / (tops[one] + size), rooms[one] - tops[one]),
    )
    pattern = _read(now, layers, tops[place], dice, habit)
    pattern[first] = pattern.get(first, 0) + 1
    now.left[first] += 1
    return kinds[place], tuple(sorted(pattern.items()))


def _sums(now: Remaining, wanted: Sequence[int], room: int) -> tuple[list[tuple[int, int]], int]:
    """Which lengths the pieces can fill: all of them, and before each size came in, shortest first."""
    sums, mask = 1, (1 << (room + 1)) - 1
    layers: list[tuple[int, int]] = []
    for size in reversed(wanted):
        length = now.task.sizes[size]
        if length > room:
            break
        layers.append((size, sums))
        left, copies = min(now.left[size], room // length), 1
        while left > 0:
            taken = min(copies, left)
            sums |= sums << (taken * length)
            left -= taken
            copies *= 2
        sums &= mask
    return layers, sums


def _read(now: Remaining, layers: Sequence[tuple[int, int]], target: int, dice: Random, habit: Habit) -> dict[int, int]:
    """Pieces that add up to the target, longest first."""
    pattern: dict[int, int] = {}
    for size, sums in reversed(layers):
        if not target:
            break
        length = now.task.sizes[size]
        most = min(now.left[size], target // length)
        choices = [count for count in range(most, -1, -1) if sums >> (target - count * length) & 1]
        count = choices[0]
        if len(choices) > 1 and dice.random() >= habit.long_first:
            count = dice.choice(choices)
        if count:
            pattern[size] = count
            target -= count * length
    return pattern
