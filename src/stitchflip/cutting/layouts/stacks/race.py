"""Several searches with different tastes, each allowed more room round by round.

No taste suits every task: some plans want one tall strip of thin stacks, others many low strips; where pieces repeat,
most of a plan is best taken from the linear program and only the rest laid piece by piece.
"""

from __future__ import annotations

from math import inf
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.stacks.beam import Beam, Guide

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.stacks.ground import Ground, PiledStrip
    from stitchflip.cutting.layouts.stacks.record import Record

_TASTES = (
    Guide(ahead=0.02),
    Guide(ahead=0.05),
    Guide(ahead=0.001),
    Guide(ahead=0.02, even=0.0, by_size=False),
)
_FIRST_BREADTHS = (4, 16, 64)
_GROWTH = 4
_FIRST_PART = 0.015
"""Of the time that is left, for the first run of one search."""
_SECONDS_A_PIECE = 0.0005
"""A run with little room takes so long."""


class Racer:
    """One search: what it starts from, its taste, and how well it does.

    Args:
        ground: the task.
        kept: strips it leaves as they are.
        guide: its taste.
        beam: lays the other pieces.
    """

    def __init__(self, kept: Sequence[PiledStrip], guide: Guide, beam: Beam) -> None:
        self._kept, self._guide, self._beam = tuple(kept), guide, beam
        self._length = sum(strip.high for strip in kept)
        self.breadth = 0
        self.seconds = beam.pieces * _SECONDS_A_PIECE
        """Of the next run, as far as can be told."""
        self.rank = (0.0, 0.0)
        """The lower, the better it did last."""
        self.is_done = False

    def run(self, record: Record) -> None:
        """Search once, with more room than before."""
        if not self.breadth:
            fitting = [b for b in _FIRST_BREADTHS if self.seconds * (1 + b / 64) < record.watch.left() * _FIRST_PART]
            self.breadth = max(fitting, default=_FIRST_BREADTHS[0])
        before = record.watch.spent()
        found = self._beam.search(record.goal - self._length, self.breadth, self._guide, record.watch)
        took = record.watch.spent() - before
        self.seconds = took * (1 + min(3, self.breadth / 64))
        self.breadth *= _GROWTH
        if found.strips is not None:
            record.offer((*self._kept, *found.strips))
            self.rank = (self._length + found.length, 0.0)
        else:
            self.rank = (inf, -found.reached)
            if found.is_whole and not self._kept:
                record.raise_bound(record.goal + 1)
        self.is_done = self.breadth > self._beam.broadest() or found.is_whole


def raced(ground: Ground, starts: Sequence[Sequence[PiledStrip]], record: Record, until: float) -> None:
    """Let searches of every taste run from every start, round by round; the better half goes on.

    Args:
        ground: the task.
        starts: strips to keep; pieces not in them are laid anew.
        record: gets what they find.
        until: seconds left when the race ends.
    """
    field = []
    for kept in starts:
        given = ground.given(kept)
        beam = Beam(ground, [count - made for count, made in zip(ground.counts, given, strict=True)])
        field += [Racer(kept, guide, beam) for guide in _TASTES]
    while field:
        for racer in field:
            if record.is_over() or record.watch.left() <= until:
                return
            if racer.seconds < record.watch.left():
                racer.run(record)
            else:
                racer.is_done = True
        field = [racer for racer in field if not racer.is_done]
        field.sort(key=lambda racer: racer.rank)
        field = field[: max(2, (len(field) + 1) // 2)]
