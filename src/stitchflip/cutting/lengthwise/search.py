"""The best packing so far, the bound so far, and when to end."""

from __future__ import annotations

from random import Random
from typing import TYPE_CHECKING

from stitchflip.cutting.lengthwise.remaining import Remaining

if TYPE_CHECKING:
    from collections.abc import Callable

    from stitchflip.cutting.layouts.watch import Watch
    from stitchflip.cutting.lengthwise.model import LengthTask

_SEED = 20
_KEPT = 6


class Search:
    """What one search knows.

    Args:
        task: sizes longest first, each of which fits some strip.
        watch: says when to end, and is told what there is.
    """

    def __init__(self, task: LengthTask, watch: Watch) -> None:
        self.task = task
        self.watch = watch
        self.start = Remaining.of(task)
        self.dice = Random(_SEED)
        self.best: Remaining | None = None
        self.packings: list[Remaining] = []
        """The first ones met, good or not: their patterns are where the linear program begins."""
        self.bound = 0

    @property
    def is_proved(self) -> bool:
        """Whether nothing can be cheaper than the best packing."""
        return self.best is not None and self.best.spent <= self.bound

    def over(self) -> bool:
        """Whether to end."""
        return self.is_proved or self.watch.over()

    def found(self, packing: Remaining | None) -> bool:
        """Keep a packing if it is the cheapest so far.

        Args:
            packing: everything cut; None: nothing found.

        Returns:
            Whether it is.
        """
        if packing is not None and len(self.packings) < _KEPT:
            self.packings.append(packing)
        if packing is None or (self.best is not None and packing.spent >= self.best.spent):
            return False
        self.best = packing
        self.watch.tell(packing.spent, self.bound)
        return True

    def proved(self, bound: int) -> None:
        """Keep a bound if it is the best so far.

        Args:
            bound: no packing costs less.
        """
        if bound > self.bound:
            self.bound = bound
            self.watch.tell(None if self.best is None else self.best.spent, bound)

    def over_within(self, share: float) -> Callable[[], bool]:
        """A clock for a part of the search.

        Args:
            share: of the time left now, from 0 to 1.
        """
        until = self.watch.likely_left() * (1 - share)
        return lambda: self.over() or self.watch.likely_left() < until
