"""The size after the first wash: cotton batting draws a finished piece in once more, and for good."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.project.numbers import Numbers


@dataclass(frozen=True, slots=True)
class WashedSize:
    """A squared-up piece after its first wash, inches."""

    wide: float
    """Extent along x, across the picture."""
    high: float
    """Extent along y."""


def washed_size(numbers: Numbers, wide: float, high: float) -> WashedSize:
    """What a piece measures after its first wash.

    Args:
        numbers: for what the wash takes, each direction by itself.
        wide: extent along x as squared up, inches.
        high: extent along y as squared up, inches.

    Returns:
        The same size where nothing shrinks (polyester batting, or the maker's own 0).
    """
    return WashedSize(wide * (1 - numbers.shrink_x), high * (1 - numbers.shrink_y))
