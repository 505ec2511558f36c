"""Strips and pieces in whole units, so that sums are exact and equal lengths are one kind.

Lengths arrive as inches, some of them irrational (a strip across a slanted side). The solvers want whole
numbers: lengths go to a fine grid, everything is divided by the common divisor, and a strip is credited with
the tolerance once, here, so that three pieces of 13 1/3 in do come from 40 in.
"""

from __future__ import annotations

from functools import reduce
from math import gcd
from typing import TYPE_CHECKING

from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.model import StripPiece, StripStock

UNITS_PER_INCH = 10_000_000
CREDIT = 200
"""What every strip is credited with, in those units: 2e-5 in, a millionth for each inch of a long piece."""

FINEST = UNITS_PER_INCH // 64
"""Units are never coarser than 1/64 in, so that small rests can be told apart."""

Pattern = tuple[int, ...]
"""How many of each size one strip gives."""
Packing = tuple[tuple[int, Pattern], ...]
"""(kind of strip, pattern) for each strip opened."""


@dataclass(frozen=True, slots=True)
class Kind:
    """Strips of one length."""

    length: int
    count: int | None
    """How many there are; None: bought, as many as it takes."""


@dataclass(frozen=True, slots=True)
class Task:
    """What is wanted from what, in whole units."""

    sizes: tuple[int, ...]
    """Different lengths, longest first."""
    demands: tuple[int, ...]
    kinds: tuple[Kind, ...]
    """As given: on hand first, then bought."""
    units_per_inch: float = 1.0

    @property
    def longest(self) -> int:
        """Length of the longest kind of strip."""
        return max(kind.length for kind in self.kinds)

    @property
    def total(self) -> int:
        """All pieces end to end."""
        return sum(size * demand for size, demand in zip(self.sizes, self.demands, strict=True))

    def filled(self, pattern: Pattern) -> int:
        """Length the pieces of one strip take.

        Args:
            pattern: how many of each size.
        """
        return sum(size * count for size, count in zip(self.sizes, pattern, strict=True))

    def rest(self, kind: int, pattern: Pattern) -> int:
        """What one strip keeps at its end.

        Args:
            kind: number of its kind.
            pattern: how many of each size it gives.
        """
        return self.kinds[kind].length - self.filled(pattern)

    def new_strips(self, packing: Packing) -> int:
        """How many bought strips a packing opens.

        Args:
            packing: the strips opened.
        """
        return sum(self.kinds[kind].count is None for kind, _ in packing)


def fits(length_in: float, strip_in: float) -> bool:
    """Whether a piece comes from a strip of that length, tolerance included.

    Args:
        length_in: the piece, inches.
        strip_in: the strip, inches.
    """
    return to_units(length_in) <= to_units(strip_in) + CREDIT


def to_units(length_in: float) -> int:
    """Inches on the fine grid.

    Args:
        length_in: inches.
    """
    return round(length_in * UNITS_PER_INCH)


def task_of(pieces: Sequence[StripPiece], stock: Sequence[StripStock]) -> Task:
    """The same problem in whole units.

    Args:
        pieces: lengths wanted.
        stock: strips they may come from, on hand first.

    Returns:
        Sizes longest first; lengths divided by their common divisor, strips rounded down to it.
    """
    demand: dict[int, int] = {}
    for piece in pieces:
        size = to_units(piece.length)
        demand[size] = demand.get(size, 0) + 1
    divisor = reduce(gcd, demand, FINEST)
    sizes = tuple(sorted(demand, reverse=True))
    return Task(
        sizes=tuple(size // divisor for size in sizes),
        demands=tuple(demand[size] for size in sizes),
        kinds=tuple(Kind((to_units(one.length) + CREDIT) // divisor, one.count) for one in stock),
        units_per_inch=UNITS_PER_INCH / divisor,
    )
