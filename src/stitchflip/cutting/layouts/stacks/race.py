"""Several searches with different tastes, each allowed more room round by round.

No taste suits every task: some plans want one tall strip of thin stacks, others many low strips; where pieces repeat,
most of a plan is best taken from the linear program and only the rest laid piece by piece.
"""

from __future__ import annotations

from itertools import zip_longest
from math import inf
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.stacks.beam import Beam, Guide

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.stacks.ground import Ground, PiledStrip
    from stitchflip.cutting.layouts.stacks.record import Record
    from stitchflip.cutting.layouts.watch import Watch

_TASTES = (
    Guide(ahead=0.02),
    Guide(ahead=0.001),
    Guide(ahead=0.005, in_order=False),
    Guide(ahead=0.05),
    Guide(ahead=0.2),
    Guide(ahead=0.05, even=0.0, by_size=False),
)
"""For all pieces, the most useful first."""
_TASTES_FOR_THE_REST = (Guide(ahead=0.005, in_order=False), Guide(ahead=0.02))
"""For what is left over when the linear program has its whole strips."""
_FIRST_BREADTHS = (4, 16, 64, 256)
_GROWTH = 4
_FIRST_PART = 0.06
"""Of the time that is left, for the first run of one search."""
_FIRST_ROUND_PART = 0.35
"""Of the time, at most, for the first round; later tastes are left out where pieces are many."""


class Racer:
    """One search: what it starts from, its taste, and how well it does.

    Args:
        ground: the task.
        kept: strips it leaves as they are.
        guide: its taste.
        beam: lays the other pieces.
        breadth: of its first run.
    """

    def __init__(self, kept: Sequence[PiledStrip], guide: Guide, beam: Beam, breadth: int) -> None:
        self._kept, self._guide, self._beam = tuple(kept), guide, beam
        self._kept_length = sum(strip.high for strip in kept)
        self.breadth = breadth
        self._slowness = 1.0
        """Seconds a run took for each it should have taken."""
        self.length: float = inf
        """Length of the plan it found last."""
        self.is_done = False

    @property
    def is_for_all(self) -> bool:
        """Lays every piece."""
        return not self._kept

    def seconds(self) -> float:
        """How long the next run will take, as far as can be told."""
        return self._beam.seconds(self.breadth) * self._slowness

    def run(self, record: Record, watch: Watch) -> None:
        """Search once, with more room than before.

        Args:
            record: gets what is found.
            watch: ends the search.
        """
        before = watch.likely_left()
        found = self._beam.search(record.goal - self._kept_length, self.breadth, self._guide, watch)
        if found.reached == 1:
            self._slowness = max(0.1, (before - watch.likely_left()) / self._beam.seconds(self.breadth))
        self.breadth *= _GROWTH
        if found.strips is not None:
            record.offer((*self._kept, *found.strips))
            self.length = self._kept_length + found.length
        else:
            self.length = inf
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
    field = _field(ground, starts, record)
    while field:
        for racer in field:
            left = record.watch.likely_left() - until
            if record.is_over() or left <= 0:
                return
            if racer.seconds() < left:
                racer.run(record, record.watch.part(left))
            else:
                racer.is_done = True
        field = _better_half([racer for racer in field if not racer.is_done])


def _field(ground: Ground, starts: Sequence[Sequence[PiledStrip]], record: Record) -> list[Racer]:
    """As many searches as there is time for, the starts by turns, at least one for each."""
    whole_time = record.watch.likely_left()
    offered: list[list[Racer]] = []
    for kept in starts:
        beam = Beam(ground, [count - made for count, made in zip(ground.counts, ground.given(kept), strict=True)])
        if not beam.pieces:
            record.offer(kept)
            continue
        fitting = [breadth for breadth in _FIRST_BREADTHS if beam.seconds(breadth) < whole_time * _FIRST_PART]
        breadth = max(fitting, default=_FIRST_BREADTHS[0])
        offered.append([Racer(kept, guide, beam, breadth) for guide in (_TASTES_FOR_THE_REST if kept else _TASTES)])
    field: list[Racer] = []
    time = whole_time * _FIRST_ROUND_PART
    for number, racer in enumerate(racer for row in zip_longest(*offered) for racer in row if racer):
        time -= racer.seconds()
        if number < len(offered) or time > 0:
            field.append(racer)
    return field


def _better_half(field: list[Racer]) -> list[Racer]:
    """Those that did best, one that lays all pieces among them: it alone can prove a plan."""
    field = sorted(field, key=lambda racer: racer.length)
    better, others = field[: max(2, (len(field) + 1) // 2)], field[max(2, (len(field) + 1) // 2) :]
    if not any(racer.is_for_all for racer in better):
        better += [racer for racer in others if racer.is_for_all][:1]
    return better
