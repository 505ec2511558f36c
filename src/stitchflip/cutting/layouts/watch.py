"""The clock of a search: how long it may take, whether the maker has had enough, and what it has so far."""

from __future__ import annotations

from time import monotonic
from typing import TYPE_CHECKING

from typing_extensions import override

if TYPE_CHECKING:
    from collections.abc import Callable

_LOOKS_A_SECOND = 300
"""About so often a search looks at its watch, where looks are counted instead of seconds."""


class Watch:
    """Asked often by every search; a search that is told to end returns its best and its bound.

    Args:
        seconds: from now; a search that is over earlier ends earlier.
        cancelled: asked too; True ends the search.
        tell: called with (best value or None, bound) whenever one of them gets better.
    """

    def __init__(
        self,
        seconds: float,
        cancelled: Callable[[], bool] | None = None,
        tell: Callable[[int | None, int], None] | None = None,
    ) -> None:
        self._start = monotonic()
        self._seconds = seconds
        self._cancelled = cancelled
        self._tell = tell

    def over(self) -> bool:
        """Whether the search has to end."""
        return self.left() <= 0 or (self._cancelled is not None and self._cancelled())

    def left(self) -> float:
        """Seconds left; may be below zero."""
        return self._start + self._seconds - monotonic()

    def likely_left(self) -> float:
        """Seconds left as this watch counts them: what a search shares out among its parts."""
        return self.left()

    def spent(self) -> float:
        """Seconds since the start."""
        return monotonic() - self._start

    def part(self, seconds: float) -> Watch:
        """A watch for a part of the search.

        Args:
            seconds: the part may take.

        Returns:
            One that is over when the part is, or this one; it tells nobody.
        """
        return Watch(min(seconds, self.left()), cancelled=self.over)

    def tell(self, value: int | None, bound: int) -> None:
        """Say what there is so far.

        Args:
            value: of the best plan; None while there is none.
            bound: proved so far.
        """
        if self._tell is not None:
            self._tell(value, bound)


class Patience(Watch):
    """A watch that counts how often it is asked, so that a search ends at the same place on every machine.

    Args:
        looks: how often it may be asked.
        seconds: the clock stays a last resort for a machine that hardly works.
        cancelled: asked too; True ends the search.
        tell: called whenever plan or bound gets better.
    """

    def __init__(
        self,
        looks: int,
        seconds: float,
        cancelled: Callable[[], bool] | None = None,
        tell: Callable[[int | None, int], None] | None = None,
    ) -> None:
        super().__init__(seconds, cancelled, tell)
        self._looks = looks

    @override
    def over(self) -> bool:
        self._looks -= 1
        return self._looks < 0 or super().over()

    @override
    def likely_left(self) -> float:
        return self._looks / _LOOKS_A_SECOND

    @override
    def part(self, seconds: float) -> Watch:
        return Patience(max(1, int(seconds * _LOOKS_A_SECOND)), self.left(), cancelled=self.over)


class Rescaled(Watch):
    """Another watch for a search that counts in units of its own.

    Args:
        watch: the other one.
        unit: one unit of the search is so many of the other's.
    """

    def __init__(self, watch: Watch, unit: int) -> None:
        super().__init__(watch.left())
        self._watch, self._unit = watch, unit

    @override
    def over(self) -> bool:
        return self._watch.over()

    @override
    def left(self) -> float:
        return self._watch.left()

    @override
    def likely_left(self) -> float:
        return self._watch.likely_left()

    @override
    def part(self, seconds: float) -> Watch:
        return self._watch.part(seconds)

    @override
    def tell(self, value: int | None, bound: int) -> None:
        self._watch.tell(None if value is None else value * self._unit, bound * self._unit)
