"""Strips from strips by trying everything: slow, short, and nothing in common with the solvers."""

from __future__ import annotations

TINY = 1e-9


def fewest_bought(lengths: tuple[float, ...], on_hand: tuple[tuple[float, int], ...], bought: float) -> int:
    """The least number of bought strips, by putting each piece in turn into every strip there is or a new one.

    Args:
        lengths: what is wanted, each no longer than a bought strip.
        on_hand: strips there are, as (length, how many).
        bought: length of a bought strip.
    """
    shelf = tuple(length for length, count in on_hand for _ in range(count))
    best = len(lengths)

    def place(number: int, rests: tuple[float, ...], new: int) -> None:
        nonlocal best
        if new >= best:
            return
        if number == len(lengths):
            best = new
            return
        seen: set[float] = set()
        for spot, rest in enumerate(rests):
            if rest + TINY >= lengths[number] and rest not in seen:
                seen.add(rest)
                place(number + 1, (*rests[:spot], rest - lengths[number], *rests[spot + 1 :]), new)
        place(number + 1, (*rests, bought - lengths[number]), new + 1)

    place(0, shelf, 0)
    return best


def longest_leftover(lengths: tuple[float, ...], strip: float, strips: int) -> tuple[float, float]:
    """What each of so many strips can keep at least, up to 1/4, and then the longest rest of one of them.

    Args:
        lengths: what is wanted.
        strip: length of each strip.
        strips: how many are opened.
    """
    ways: list[tuple[float, float]] = []

    def place(number: int, rests: tuple[float, ...]) -> None:
        if number == len(lengths):
            ways.append((min(*rests, 0.25), max(rests)))
            return
        seen: set[float] = set()
        for spot, rest in enumerate(rests):
            if rest + TINY >= lengths[number] and rest not in seen:
                seen.add(rest)
                place(number + 1, (*rests[:spot], rest - lengths[number], *rests[spot + 1 :]))

    place(0, (strip,) * strips)
    kept = max(comfort for comfort, _ in ways)
    return kept, max(rest for comfort, rest in ways if comfort >= kept - TINY)
