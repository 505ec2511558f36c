"""The hanging sleeve of a wall piece: a tube for the rod, hemmed at both ends."""

from __future__ import annotations

from stitchflip.finishing.measures import Measure
from stitchflip.lengths import Unit
from stitchflip.values import dataclass

_SLEEVE_CUT = Measure(8.5, 22)
_HEM = Measure(1, 2.5)


@dataclass(frozen=True, slots=True)
class Sleeve:
    """What to cut for a sleeve and what it becomes; inches."""

    cut_wide: float
    cut_long: float
    finished_wide: float
    """Of the flat tube, seam taken off."""
    finished_long: float


def sleeve_for(piece_wide: float, seam: float, unit: Unit) -> Sleeve:
    """The sleeve for a piece: cut as long as the piece is wide, hemmed at both ends.

    Args:
        piece_wide: Squared-up width of the piece, inches.
        seam: Seam of the tube, inches.
        unit: The maker's unit.

    Returns:
        Cut size and finished size.

    Example:
        >>> sleeve_for(32.5, 0.25, Unit.INCH)
        Sleeve(cut_wide=8.5, cut_long=32.5, finished_wide=4.0, finished_long=30.5)
    """
    cut, hem = _SLEEVE_CUT.of(unit), _HEM.of(unit)
    return Sleeve(cut, piece_wide, (cut - 2 * seam) / 2, piece_wide - 2 * hem)
