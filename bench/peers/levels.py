"""The plain level model of two-stage cutting, and the plain greedy plan.

A level is opened by its tallest piece; further pieces no taller lie beside it. One number for every way of opening a
level and for every kind of piece that may lie beside it: small, and all that a general solver needs.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass

from bench.cutting.jobs import CutSheet, Job, Placed

LARGEST = 200_000
"""So many numbers and no more are given to a general solver."""


@dataclass(frozen=True, slots=True)
class Option:
    """A kind of piece laid one way."""

    item: int
    wide: int
    long: int
    turned: bool


@dataclass(frozen=True, slots=True)
class Level:
    """A level that may be opened, and what may lie beside its first piece."""

    opens: int
    beside: tuple[tuple[int, int], ...]
    """(option, at most so many)."""


def options(job: Job) -> list[Option]:
    """Every way of laying a piece in the sheet's width, tallest first."""
    found = []
    for number, item in enumerate(job.items):
        ways = {(item.wide, item.long): False}
        if item.can_turn:
            ways.setdefault((item.long, item.wide), True)
        found += [Option(number, *way, turned) for way, turned in ways.items() if way[0] <= job.stocks[0].wide]
    return sorted(found, key=lambda option: (-option.long, -option.wide, option.item))


def levels(job: Job, ways: list[Option]) -> list[Level] | None:
    """The levels of the model; None when there are too many numbers for a general solver."""
    found = []
    size = 0
    for place, first in enumerate(ways):
        room = job.stocks[0].wide - first.wide
        beside = []
        for later, option in enumerate(ways[place:], start=place):
            left = job.items[option.item].count - (option.item == first.item)
            most = min(left, room // option.wide)
            if most > 0:
                beside.append((later, most))
        count = job.items[first.item].count
        size += count * (1 + len(beside))
        if size > LARGEST:
            return None
        found += [Level(place, tuple(beside))] * count
    return found


def laid(job: Job, ways: list[Option], opened: list[tuple[Level, list[int]]]) -> tuple[int, tuple[CutSheet, ...]]:
    """Length and rectangles of levels with so many of each beside; too many of a kind are left out."""
    left = [item.count for item in job.items]
    placed: list[Placed] = []
    y = 0
    for level, counts in opened:
        beside = [[option] * count for (option, _), count in zip(level.beside, counts, strict=True)]
        x = 0
        for number in [level.opens, *itertools.chain.from_iterable(beside)]:
            option = ways[number]
            if left[option.item]:
                left[option.item] -= 1
                placed.append((option.item, x, y, option.turned))
                x += option.wide
        y += ways[level.opens].long
    return y, (CutSheet(0, 1, tuple(placed)),)


def greedy_levels(job: Job) -> int:
    """Length of a first-fit plan, tallest first, pieces laid flat where they may turn and as given; the shorter one."""
    lengths = []
    for is_laid_flat in (True, False):
        pieces: list[tuple[int, int]] = []
        for item in job.items:
            turns = item.can_turn and is_laid_flat and item.long > item.wide and item.long <= job.stocks[0].wide
            turns = turns or (item.can_turn and item.wide > job.stocks[0].wide)
            pieces += [(item.wide, item.long) if turns else (item.long, item.wide)] * item.count
        room: list[int] = []
        length = 0
        for high, wide in sorted(pieces, reverse=True):
            place = next((number for number, left in enumerate(room) if left >= wide), None)
            if place is None:
                room.append(job.stocks[0].wide - wide)
                length += high
            else:
                room[place] -= wide
        lengths.append(length)
    return min(lengths)
