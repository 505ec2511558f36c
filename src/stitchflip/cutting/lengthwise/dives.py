"""Down from the linear program to whole strips: fix what is nearly whole, look again, step back where it fails.

After each fixing the linear program of what is left says whether the aim can still be reached. Where it cannot,
less is fixed at once, then something else, and then the step before is taken back.
"""

from __future__ import annotations

from math import floor
from typing import TYPE_CHECKING, Protocol

from stitchflip.cutting.lengthwise.fillings import HABITS, fill_up, labor
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from random import Random

    from stitchflip.cutting.lengthwise.master import Column
    from stitchflip.cutting.lengthwise.remaining import Remaining

_WHOLE = 1e-6
_MOST_LABOR = 5_000_000
"""Above it what is left is not filled up strip by strip."""


@dataclass(frozen=True, slots=True)
class Manner:
    """How a dive rounds."""

    nearly: float
    """Shares from here on count as whole."""
    alternatives: int
    """Other patterns tried where the first one fails."""
    shuffled: int = 0
    """So many of the largest shares in any order."""


MANNERS = (Manner(0.6, 2), Manner(0.9, 1), Manner(0.75, 2, 3), Manner(0.5, 1, 6), Manner(0.6, 2, 4))
"""Tried in turn."""


@dataclass(slots=True)
class _Step:
    """A place on the way down."""

    now: Remaining
    shares: list[tuple[float, Column]]
    batch: list[tuple[int, Column]]
    size: int
    """How much of the batch is fixed at the next try."""
    skipped: int = 0


class Follower(Protocol):
    """Knows what is best for what is left."""

    def shares(self, now: Remaining, aim: int) -> list[tuple[float, Column]] | None:
        """Shares of patterns, largest first; None when the aim is out of reach.

        Args:
            now: what is left.
            aim: cost of all strips that must not be passed.
        """


class Diver:
    """Dives.

    Args:
        follower: gives the shares after every step.
        over: asked every step.
        dice: seeded.
        most: cost of the best packing known.
    """

    def __init__(self, follower: Follower, over: Callable[[], bool], dice: Random, most: int | None = None) -> None:
        self.follower = follower
        self.over = over
        self.dice = dice
        self.most = most
        self.best: Remaining | None = None
        self.tries = 0

    def dive(
        self, start: Remaining, shares: Sequence[tuple[float, Column]], aim: int, manner: Manner, most_steps: int
    ) -> Remaining | None:
        """Look for a packing that costs no more than the aim.

        Args:
            start: what is wanted.
            shares: of the linear program for it.
            aim: cost to reach.
            manner: how to round.
            most_steps: give up after so many.

        Returns:
            The packing; None when none was found. The cheapest met on the way is kept in `best`.
        """
        trail = [self._step(start, list(shares), manner)]
        steps = 0
        while trail and not self.over() and steps < most_steps:
            steps += 1
            step = trail[-1]
            fixing = self._next(step, manner)
            if fixing is None:
                trail.pop()
                continue
            now = step.now.copy()
            for times, (stock, pattern) in fixing:
                now.cut(stock, pattern, times)
            if self._finish(now, aim):
                return self.best
            if now.spent >= aim or now.is_done:
                continue
            following = self.follower.shares(now, aim)
            if following is not None:
                trail.append(self._step(now, following, manner))
        return None

    def _step(self, now: Remaining, shares: list[tuple[float, Column]], manner: Manner) -> _Step:
        if manner.shuffled:
            head = shares[: manner.shuffled]
            self.dice.shuffle(head)
            shares[: manner.shuffled] = head
        trial = now.copy()
        batch: list[tuple[int, Column]] = []
        for share, (stock, pattern) in shares:
            times = min(trial.times(stock, pattern), floor(share + _WHOLE))
            if times:
                trial.cut(stock, pattern, times)
                batch.append((times, (stock, pattern)))
        if not batch:
            for share, (stock, pattern) in shares:
                if share >= manner.nearly and trial.times(stock, pattern):
                    trial.cut(stock, pattern)
                    batch.append((1, (stock, pattern)))
        return _Step(now, shares, batch, len(batch) or 1)

    def _next(self, step: _Step, manner: Manner) -> list[tuple[int, Column]] | None:
        """What to fix now: all that is nearly whole, then half of it ..., then single patterns."""
        if step.size > 1:
            fixing = step.batch[: step.size]
            step.size = max(step.size // 2, 1)
            return fixing
        if step.size == 1 and step.batch:
            step.size = 0
            return step.batch[:1]
        place = step.skipped
        skip = 1 if step.batch else 0
        while place < len(step.shares) and step.skipped - skip <= manner.alternatives:
            stock, pattern = step.shares[place][1]
            place += 1
            pattern = step.now.within(pattern)
            if pattern and step.now.times(stock, pattern) and (not step.batch or (stock, pattern) != step.batch[0][1]):
                step.skipped = place
                return [(1, (stock, pattern))]
        return None

    def _finish(self, now: Remaining, aim: int) -> bool:
        """Whether filling up what is left reaches the aim."""
        self.tries += 1
        if now.is_done:
            done: Remaining | None = now
        elif labor(now) > _MOST_LABOR:
            return False
        else:
            most = aim if self.most is None else (aim + self.most) // 2
            done = fill_up(now, self.dice, HABITS[self.tries % len(HABITS)], most)
        if done is not None and (self.best is None or done.spent < self.best.spent):
            self.best = done
        return self.best is not None and self.best.spent <= aim
