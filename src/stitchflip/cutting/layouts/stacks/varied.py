"""Where pieces repeat: many quick searches, each from other whole strips and with another taste.

The linear program says which strips are worth cutting whole times, but not which of them leave pieces behind that go
together well. So some of them are kept, by chance, and all other pieces are laid one by one. A search takes a moment;
of a few dozen one or two are lucky, and no taste is lucky for every task.
"""

from __future__ import annotations

from random import Random
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.stacks.beam import Beam, Guide

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.stacks.ground import Ground, PiledStrip
    from stitchflip.cutting.layouts.stacks.record import Record

_KEPT = (0.5, 0.75, 1.0)
"""Part of the whole strips that is kept."""
_AHEAD = (0.0, 0.005, 0.02, 0.05, 0.2)
_EVEN = (0.0, 0.1, 0.3)
_BREADTHS = (64, 128, 256, 512, 1024)
_PART_OF_A_TRY = 0.05
"""Of the time at the start, for one search."""


class Varied:
    """Searches with chances, as long as there is time.

    Args:
        ground: the task.
        record: gets what they find.
        whole: strips the linear program uses whole times.
        worths: length of fabric one piece of each want is worth, by the linear program.
        seed: of the chances taken.
    """

    def __init__(
        self, ground: Ground, record: Record, whole: Sequence[PiledStrip], worths: Sequence[float], seed: int
    ) -> None:
        self._ground, self._record, self._whole, self._worths = ground, record, tuple(whole), tuple(worths)
        self._random = Random(seed)
        self._seconds = record.watch.likely_left() * _PART_OF_A_TRY

    def run(self, until: float) -> None:
        """Search again and again.

        Args:
            until: seconds left when it ends.
        """
        record, idle = self._record, 0
        while not record.is_over() and record.watch.likely_left() > until and idle < len(_BREADTHS):
            idle = 0 if self._try_once() else idle + 1

    def _try_once(self) -> bool:
        """Search once.

        Returns:
            Whether there was time for it.
        """
        ground, record, chance = self._ground, self._record, self._random
        part = chance.choice(_KEPT)
        kept = [strip for strip in self._whole if chance.random() < part]
        guide = Guide(
            ahead=chance.choice(_AHEAD),
            even=chance.choice(_EVEN),
            by_size=chance.random() < 0.5,
            in_order=chance.random() < 0.5,
        )
        worths = self._worths if any(self._worths) and chance.random() < 0.5 else None
        left = [count - made for count, made in zip(ground.counts, ground.given(kept), strict=True)]
        beam = Beam(ground, left, worths)
        breadths = [breadth for breadth in _BREADTHS if beam.seconds(breadth) < self._seconds]
        if not breadths or not beam.pieces:
            return False
        goal = record.goal - sum(strip.high for strip in kept)
        found = beam.search(goal, breadths[-1], guide, record.watch)
        if found.strips is not None:
            record.offer((*kept, *found.strips))
        return True
