"""The best way of filling a strip when every size has a price: a table in whole numbers.

Prices are whole numbers too, so what the table says is exact: a bound that rests on it needs no tolerance.
Where a strip is longer than the table may be wide, sizes are counted in coarser units and rounded down. Such a
table promises a little too much, never too little.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.int64]

MOST_CELLS = 1_200_000
"""Numbers an exact table may hold."""
COARSE_CELLS = 400_000
"""Numbers a coarse table holds about."""


@dataclass(frozen=True, slots=True)
class Part:
    """Some copies of one size, taken together or not at all."""

    size: int
    copies: int
    length: int
    """Of all copies."""


def parts_of(sizes: Sequence[int], demands: Sequence[int], length: int) -> list[Part]:
    """Copies of each size in powers of two, so that every number up to the demand is a sum of some.

    Args:
        sizes: lengths, in the order the table takes them.
        demands: at most so many of each.
        length: of the strip.
    """
    out: list[Part] = []
    for number, (size, demand) in enumerate(zip(sizes, demands, strict=True)):
        left = min(demand, length // size)
        copies = 1
        while left > 0:
            taken = min(copies, left)
            out.append(Part(number, taken, taken * size))
            left -= taken
            copies *= 2
    return out


class Table:
    """For every room and every place in the list of parts: the most that the parts from there on are worth.

    Args:
        parts: in the order in which a filling is read off.
        length: of the longest strip.
    """

    def __init__(self, parts: Sequence[Part], length: int) -> None:
        import numpy as np

        self.parts = tuple(parts)
        cells = (length + 1) * (len(parts) + 1)
        self.unit = 1 if cells <= MOST_CELLS else -(-cells // COARSE_CELLS)
        self.length = length
        self.steps = [part.length // self.unit for part in parts]
        self.worth: Numbers = np.zeros((len(parts) + 1, length // self.unit + 1), dtype=np.int64)
        self.prices: list[int] = [0] * len(parts)

    @property
    def is_exact(self) -> bool:
        """Whether nothing was rounded."""
        return self.unit == 1

    def price(self, prices: Sequence[int]) -> None:
        """Fill the table.

        Args:
            prices: of one piece of each size, not below zero.
        """
        import numpy as np

        worth = self.worth
        self.prices = [prices[part.size] * part.copies for part in self.parts]
        for row in range(len(self.parts) - 1, -1, -1):
            step, price = self.steps[row], self.prices[row]
            below, here = worth[row + 1], worth[row]
            if price <= 0:
                here[:] = below
                continue
            here[:step] = below[:step]
            np.add(below[: len(below) - step], price, out=here[step:])
            np.maximum(here[step:], below[step:], out=here[step:])

    def most(self, length: int) -> int:
        """What a strip can be worth at most.

        Args:
            length: of the strip.
        """
        return int(self.worth[0, length // self.unit])

    def fillings(self, length: int, threshold: int) -> list[tuple[int, tuple[tuple[int, int], ...]]]:
        """For each part the best filling that begins with it, where that is worth more than the threshold.

        Args:
            length: of the strip.
            threshold: worth that is of no interest.

        Returns:
            (worth, pattern), the most valuable first.
        """
        import numpy as np

        unit, rows = self.unit, len(self.parts)
        starts = [
            row
            for row, part in enumerate(self.parts)
            if self.prices[row] > 0
            and part.length <= length
            and self.prices[row] + self.worth[row + 1, (length - part.length) // unit] > threshold
        ]
        if not starts:
            return []
        rest = np.full(len(starts), length, dtype=np.int64)
        taken = np.zeros((rows, len(starts)), dtype=bool)
        active, waiting = 0, 0
        for row in range(starts[0], rows):
            long, price, below = self.parts[row].length, self.prices[row], self.worth[row + 1]
            if active and price > 0:
                room = rest[:active]
                fits = room >= long
                without = below[room // unit] if unit > 1 else below[room]
                after = np.maximum(room - long, 0)
                take = fits & (below[after // unit if unit > 1 else after] + price > without)
                taken[row, :active] = take
                room -= take * long
            if waiting < len(starts) and starts[waiting] == row:
                taken[row, waiting] = True
                rest[waiting] -= long
                active = waiting = waiting + 1
        return self._read(taken, threshold)

    def _read(self, taken: NDArray[np.bool_], threshold: int) -> list[tuple[int, tuple[tuple[int, int], ...]]]:
        """Patterns from the parts taken, equal ones once."""
        found: dict[tuple[tuple[int, int], ...], int] = {}
        for column in taken.T:
            counts: dict[int, int] = {}
            worth = 0
            for row in column.nonzero()[0].tolist():
                part = self.parts[row]
                counts[part.size] = counts.get(part.size, 0) + part.copies
                worth += self.prices[row]
            if worth > threshold:
                found[tuple(sorted(counts.items()))] = worth
        return sorted(((worth, pattern) for pattern, worth in found.items()), reverse=True)
