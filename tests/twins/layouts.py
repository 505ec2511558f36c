"""The best way of cutting a handful of pieces from edge to edge, by trying every way there is.

Written from the words of the task alone and slow on purpose: all ways of dividing the pieces into strips, the strips
into stacks, and of laying each piece. It knows no bounds and skips nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from itertools import product

from stitchflip.cutting.layouts.model import Aim, FirstCut, LayoutTask

Piece = tuple[int, int, int, bool, int]
"""Number of its want, wide, long, may turn, value."""


def best_value(task: LayoutTask) -> int | None:
    """Length, cost or worth of the best plan of the task's kind; None when there is none.

    Args:
        task: with at most six pieces in all.
    """
    pieces = tuple(
        (number, want.wide, want.long, want.can_turn, want.value)
        for number, want in enumerate(task.wants)
        for _ in range(want.count)
    )
    if task.aim is Aim.LENGTH:
        return _length(task, frozenset(range(len(pieces))), pieces, task.sheets[0].wide, is_along=False)
    return _from_sheets(task, pieces)


def _from_sheets(task: LayoutTask, pieces: tuple[Piece, ...]) -> int | None:
    """Cheapest sheets for all pieces, or the most worth from the sheets there are."""
    everything = frozenset(range(len(pieces)))
    sheets = [
        number
        for number, sheet in enumerate(task.sheets)
        for _ in range(len(pieces) if sheet.count is None else min(sheet.count, len(pieces)))
    ]
    best: int | None = None

    def go(place: int, left: frozenset[int], reached: int) -> None:
        nonlocal best
        if task.aim is Aim.VALUE or not left:
            best = reached if best is None else (max if task.aim is Aim.VALUE else min)(best, reached)
        if place == len(sheets):
            return
        sheet = task.sheets[sheets[place]]
        go(place + 1, left, reached)
        for chosen in _subsets(left):
            if chosen and _fits(task, chosen, pieces, sheets[place]):
                worth = sum(pieces[piece][4] for piece in chosen)
                go(place + 1, left - chosen, reached + (worth if task.aim is Aim.VALUE else sheet.cost))

    go(0, everything, 0)
    return best


def _fits(task: LayoutTask, chosen: frozenset[int], pieces: tuple[Piece, ...], number: int) -> bool:
    """Whether one sheet gives these pieces, its first cuts going as they may."""
    sheet = task.sheets[number]
    assert sheet.long is not None
    ways = {FirstCut.ACROSS: (False,), FirstCut.ALONG: (True,), FirstCut.EITHER: (False, True)}[task.first_cut]
    for is_along in ways:
        wide, long = (sheet.long, sheet.wide) if is_along else (sheet.wide, sheet.long)
        length = _length(task, chosen, pieces, wide, is_along=is_along)
        if length is not None and length <= long:
            return True
    return False


@cache
def _length(
    task: LayoutTask, chosen: frozenset[int], pieces: tuple[Piece, ...], wide: int, *, is_along: bool
) -> int | None:
    """Least height of strips that give these pieces."""
    if not chosen:
        return 0
    first = min(chosen)
    best: int | None = None
    for others in _subsets(chosen - {first}):
        high = _strip(task, others | {first}, pieces, wide, is_along=is_along)
        rest = None if high is None else _length(task, chosen - others - {first}, pieces, wide, is_along=is_along)
        if high is not None and rest is not None and (best is None or high + rest < best):
            best = high + rest
    return best


@cache
def _strip(
    task: LayoutTask, chosen: frozenset[int], pieces: tuple[Piece, ...], wide: int, *, is_along: bool
) -> int | None:
    """Least height of one strip that gives these pieces side by side."""
    best: int | None = None
    for stacks in _divided(sorted(chosen)):
        if task.stages == 2 and any(len(stack) > 1 for stack in stacks):
            continue
        for turns in product((False, True), repeat=len(pieces)):
            high = _laid(task, stacks, pieces, turns, wide, is_along=is_along)
            if high is not None and (best is None or high < best):
                best = high
    return best


def _laid(
    task: LayoutTask,
    stacks: list[list[int]],
    pieces: tuple[Piece, ...],
    turns: tuple[bool, ...],
    wide: int,
    *,
    is_along: bool,
) -> int | None:
    """Height of a strip with these stacks, each piece turned or not; None when it may not be so."""
    if any(turned and not pieces[n][3] for n, turned in enumerate(turns)):
        return None
    sides = [
        (long, w) if turned is not is_along else (w, long)
        for (_, w, long, _, _), turned in zip(pieces, turns, strict=True)
    ]
    across = [max(sides[n][0] for n in stack) for stack in stacks]
    highs = [sum(sides[n][1] for n in stack) for stack in stacks]
    if sum(across) > wide or (task.tallest_strip is not None and max(highs) > task.tallest_strip):
        return None
    if task.same_stack and any(len({(pieces[n][0], turns[n]) for n in stack}) > 1 for stack in stacks):
        return None
    if not task.trims and any(len({sides[n][0] for n in stack}) > 1 for stack in stacks):
        return None
    if not task.trims and task.stages == 2 and len(set(highs)) > 1:
        return None
    return max(highs)


def _divided(numbers: list[int]) -> Iterator[list[list[int]]]:
    """All ways of dividing pieces into stacks."""
    if not numbers:
        yield []
        return
    for parts in _divided(numbers[1:]):
        yield [[numbers[0]], *parts]
        for place, part in enumerate(parts):
            yield [*parts[:place], [numbers[0], *part], *parts[place + 1 :]]


def _subsets(numbers: frozenset[int]) -> Iterator[frozenset[int]]:
    """All sets of some of them, the empty one too."""
    in_order = sorted(numbers)
    for mask in range(1 << len(in_order)):
        yield frozenset(number for bit, number in enumerate(in_order) if mask >> bit & 1)
