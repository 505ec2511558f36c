"""Some strips of a plan taken out and their pieces laid again, in less length.

Strips of a plan do not depend on one another, so any of them are a small task of their own. Those that waste most are
taken most often.
"""

from __future__ import annotations

from random import Random
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.stacks.beam import Beam, Guide

if TYPE_CHECKING:
    from stitchflip.cutting.layouts.stacks.ground import Ground, PiledStrip
    from stitchflip.cutting.layouts.stacks.record import Record

_MOST_IDLE = 12
"""Times nothing is found, until more pieces are taken or more room is given."""


class Mending:
    """Mends a plan as long as there is time.

    Args:
        ground: the task.
        record: holds the plan.
    """

    def __init__(self, ground: Ground, record: Record) -> None:
        self._ground, self._record = ground, record
        self._random = Random(4)
        self._strips: list[PiledStrip] = list(record.strips)
        self._pieces = 24
        self._breadth = 256
        self._idle = 0

    def run(self) -> None:
        """Mend until the plan is proved or time is over."""
        record = self._record
        while not record.is_over() and len(self._strips) > 1:
            if self._mend_once():
                self._idle = 0
                record.offer(self._strips)
            else:
                self._idle += 1
            if self._idle >= _MOST_IDLE:
                self._idle = 0
                self._pieces = min(self._pieces * 3 // 2, sum(self._ground.counts))
                self._breadth = self._breadth * 3 // 2
                if self._pieces > 120:
                    self._pieces = 24

    def _mend_once(self) -> bool:
        """Take some strips out and lay their pieces again.

        Returns:
            Whether the plan got shorter.
        """
        ground, chance = self._ground, self._random
        strips = self._strips
        waste = [ground.wide * strip.high - ground.area(ground.given([strip])) for strip in strips]
        order = sorted(
            range(len(strips)), key=lambda at: -chance.random() * (waste[at] / strips[at].high + 0.02 * ground.wide)
        )
        taken: list[int] = []
        pieces = 0
        for at in order:
            size = sum(len(stack) for stack in strips[at].stacks)
            if len(taken) >= 2 and pieces + size > self._pieces:
                continue
            taken.append(at)
            pieces += size
        part = [strips[at] for at in taken]
        length = sum(strip.high for strip in part)
        counts = ground.given(part)
        if (length - 1) * ground.wide < ground.area(counts):
            return False
        guide = Guide(ahead=chance.choice((0.0, 0.01, 0.02, 0.05)), even=chance.choice((0.02, 0.1, 0.3)))
        found = Beam(ground, counts).search(length - 1, self._breadth, guide, self._record.watch)
        if found.strips is None:
            return False
        self._strips = [strip for at, strip in enumerate(strips) if at not in taken] + list(found.strips)
        return True
