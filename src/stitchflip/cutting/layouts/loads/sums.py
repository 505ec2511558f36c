"""Where an edge can lie at all: sums of the sizes that stand side by side.

Everything can be pushed to the lower end, so only sums of sizes need a place in a table; for real sizes that is a
small part of all units. Where there would be too many places the sizes are rounded up to coarser units: plans made
that way are true, but they prove nothing.
"""

from __future__ import annotations

from math import gcd
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

    import numpy as np
    from numpy.typing import NDArray

_MOST_UNITS = 1_000_000


class Sums:
    """Reachable places from 0 to a length.

    Args:
        sizes: how often each size may be used.
        room: the length, at least 0.
        most: so many places at most; more are made coarser.
    """

    def __init__(self, sizes: Mapping[int, int], room: int, most: int = 6000) -> None:
        self.unit = gcd(*sizes) or 1
        self.is_exact = True
        self.room = room
        if room // self.unit > _MOST_UNITS:
            self._coarsen(-(-room // most))
        self.places = self._reach(sizes)
        if len(self.places) > most:
            self._coarsen(-(-room // most))
            self.places = self._reach(sizes)
        self._steps: dict[int, tuple[int, NDArray[np.int64]]] = {}

    def _coarsen(self, unit: int) -> None:
        self.unit = unit
        self.is_exact = False

    def _reach(self, sizes: Mapping[int, int]) -> NDArray[np.int64]:
        """Sums of the sizes, each used at most so often, as numbers of units."""
        import numpy as np

        end = self.room // self.unit
        inside = (1 << (end + 1)) - 1
        reached = 1
        for size, count in sizes.items():
            step = -(-size // self.unit)
            left = min(count, end // step) if step else 0
            part = 1
            while left > 0:
                taken = min(part, left)
                reached |= (reached << (taken * step)) & inside
                left -= taken
                part *= 2
        raw = np.frombuffer(reached.to_bytes(end // 8 + 1, "little"), dtype=np.uint8)
        return np.flatnonzero(np.unpackbits(raw, bitorder="little")[: end + 1]).astype(np.int64)

    def __len__(self) -> int:
        return len(self.places)

    def place(self, length: int) -> int:
        """Number of the last place not beyond a length."""
        return int(self.places.searchsorted(length // self.unit, side="right")) - 1

    def step(self, size: int, times: int = 1) -> tuple[int, NDArray[np.int64]]:
        """For a size laid so often: the first place it can end at, and for it and all later ones the place before."""
        key = -(-size // self.unit) * times
        found = self._steps.get(key)
        if found is None:
            first = int(self.places.searchsorted(key, side="left"))
            before = self.places.searchsorted(self.places[first:] - key, side="right") - 1
            found = self._steps[key] = (first, before)
        return found

    def before(self, place: int, size: int, times: int = 1) -> int:
        """Place left when so many of a size end at a place; -1 if they do not fit."""
        left = int(self.places[place]) - -(-size // self.unit) * times
        return -1 if left < 0 else int(self.places.searchsorted(left, side="right")) - 1

    def length(self, place: int) -> int:
        """Length from the end to a place, in the task's units."""
        return int(self.places[place]) * self.unit


def parts(count: int) -> list[int]:
    """Numbers whose partial sums give everything from 0 to count.

    Example:
        >>> parts(6)
        [1, 2, 3]
    """
    out, part = [], 1
    while count > 0:
        taken = min(part, count)
        out.append(taken)
        count -= taken
        part *= 2
    return out
