"""Lengths out of lengths, in whole units: what is asked, and what is answered."""

from __future__ import annotations

from stitchflip.cutting.model import Status
from stitchflip.values import dataclass

Pattern = tuple[tuple[int, int], ...]
"""What one strip gives: (number of the size, how many), in rising order of the number."""


@dataclass(frozen=True, slots=True)
class Stock:
    """Strips of one length."""

    length: int
    count: int | None = None
    """How many there are; None: as many as it takes."""
    cost: int = 1
    """Of cutting into one."""


@dataclass(frozen=True, slots=True)
class LengthTask:
    """What is wanted from what: the cheapest strips that give all pieces."""

    sizes: tuple[int, ...]
    demands: tuple[int, ...]
    """How many of each size."""
    stock: tuple[Stock, ...]


@dataclass(frozen=True, slots=True)
class Opened:
    """Strips cut alike."""

    stock: int
    """Number of their kind."""
    pattern: Pattern
    times: int = 1


Packing = tuple[Opened, ...]


@dataclass(frozen=True, slots=True)
class LengthAnswer:
    """The best packing found and how sure it is."""

    status: Status
    packing: Packing
    value: int
    """Cost of the strips opened; 0 when there is no packing."""
    bound: int
    """No packing costs less."""
    because: str = ""
    """Why there is no packing, or why the search ended early."""


def cost_of(task: LengthTask, packing: Packing) -> int:
    """What the strips of a packing cost together.

    Args:
        task: gives the cost of each kind.
        packing: the strips opened.
    """
    return sum(task.stock[one.stock].cost * one.times for one in packing)
