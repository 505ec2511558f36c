"""The clock of a search: how long it may take, whether the maker has had enough, and what it has so far."""

from __future__ import annotations

from time import monotonic
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable


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

    def spent(self) -> float:
        """Seconds since the start."""
        return monotonic() - self._start

    def tell(self, value: int | None, bound: int) -> None:
        """Say what there is so far.

        Args:
            value: of the best plan; None while there is none.
            bound: proved so far.
        """
        if self._tell is not None:
            self._tell(value, bound)
