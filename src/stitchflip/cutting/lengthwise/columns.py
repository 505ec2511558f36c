"""The long way: linear programs over patterns, split by how many strips of each kind are opened."""

from __future__ import annotations

from heapq import heappop, heappush
from itertools import count
from math import ceil, floor
from typing import TYPE_CHECKING

from stitchflip.cutting.lengthwise.master import Master
from stitchflip.cutting.lengthwise.settling import Place
from stitchflip.cutting.lengthwise.totals import NEVER

if TYPE_CHECKING:
    from stitchflip.cutting.lengthwise.search import Search

_WHOLE = 1e-6


def go_on(search: Search) -> None:
    """Search until proved or told to end, always where the bound is lowest.

    Args:
        search: with a bound and, where strips are enough, a packing.
    """
    master = _first_program(search)
    number = count()
    root = Place(search, master, search.start)
    root.look()
    heap = [(root.bound, 0, next(number), root)]
    at_work = root
    while heap and not search.watch.over():
        bound, _, _, place = heap[0]
        search.proved(bound)
        if search.over():
            return
        heappop(heap)
        for part in _parts(search, place) or [place]:
            if part is place:
                part.settle()
            else:
                part.look()
            if part is not at_work:
                at_work.put_away()
                at_work = part
            if part.bound < (NEVER if search.best is None else search.best.spent):
                heappush(heap, (part.bound, part.tried, next(number), part))
        if search.is_proved:
            return
    if not heap:
        search.proved(NEVER if search.best is None else search.best.spent)


def _first_program(search: Search) -> Master:
    """The linear program with the patterns of the first packings, and one for every kind of strip."""
    master = Master(search.task)
    for packing in search.packings:
        master.add((one.stock, one.pattern) for one in packing.opened)
    for kind, stock in enumerate(search.task.stock):
        last = len(search.task.sizes) - 1
        master.add([(kind, ((last, min(search.task.demands[last], stock.length // search.task.sizes[last])),))])
    return master


def _parts(search: Search, place: Place) -> list[Place]:
    """The place in two, when it opens part of a strip of some kind: no more of them, or at least one more."""
    if len(search.task.stock) == 1 or place.tried:
        return []
    best = None
    for kind, opened in enumerate(place.opened):
        apart = abs(opened - round(opened))
        if apart > _WHOLE:
            stock = search.task.stock[kind]
            rank = (stock.count is None, stock.cost, apart)
            if best is None or rank > best[0]:
                best = rank, kind, opened
    if best is None:
        return []
    _, kind, opened = best
    fewer, more = place.start.copy(), place.start.copy()
    most = fewer.counts[kind]
    fewer.counts[kind] = floor(opened) if most is None else min(most, floor(opened))
    more.fewest[kind] = max(more.fewest[kind], ceil(opened))
    out = []
    for start in (more, fewer):
        part = Place(search, place.master, start)
        part.bound = place.bound
        out.append(part)
    return out
