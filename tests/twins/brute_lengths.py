"""Cheapest strips by trying every group of pieces for every strip: slow, and nothing in common with the solvers."""

from __future__ import annotations

from functools import cache


def least_cost(pieces: tuple[int, ...], stock: tuple[tuple[int, int | None, int], ...]) -> int | None:
    """The least that strips for all pieces cost; None when there are not enough strips.

    Args:
        pieces: lengths, at most nine or so.
        stock: (length, how many, cost) of each kind of strip; None: as many as it takes.
    """
    everything = frozenset(range(len(pieces)))

    @cache
    def rest(left: frozenset[int], counts: tuple[int | None, ...]) -> int | None:
        if not left:
            return 0
        first, *others = sorted(left)
        best: int | None = None
        for chosen in range(1 << len(others)):
            group = {first, *(other for place, other in enumerate(others) if chosen >> place & 1)}
            long = sum(pieces[place] for place in group)
            for kind, (length, _, cost) in enumerate(stock):
                had = counts[kind]
                if long > length or had == 0:
                    continue
                after = tuple(c if k != kind or c is None else c - 1 for k, c in enumerate(counts))
                more = rest(left - group, after)
                if more is not None and (best is None or more + cost < best):
                    best = more + cost
        return best

    return rest(everything, tuple(count for _, count, _ in stock))
