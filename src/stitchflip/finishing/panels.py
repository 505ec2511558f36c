"""A backing wider than the fabric: which panels to join, and where the seams come to lie.

Full widths are joined with a part width. The seam must keep off the middle, where a piece is folded most; so the
part goes to one end, or on both sides of a full width in the middle.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil, floor

from stitchflip.errors import BuildError
from stitchflip.lengths import TOLERANCE_IN, in_both_units
from stitchflip.values import dataclass


@dataclass(frozen=True, slots=True)
class Panels:
    """The panels of one backing, as cut, in order; inches."""

    widths: tuple[float, ...]
    seams_at: tuple[float, ...]
    """Places of the seams from the middle."""

    @property
    def off_middle(self) -> float:
        """How far the nearest seam is from the middle."""
        return min(abs(place) for place in self.seams_at)


def joined_width(count: int, usable: float, seam: float) -> float:
    """How wide so many widths of fabric are when joined side by side.

    Args:
        count: Widths, 1 or more.
        usable: Usable width of the fabric, inches.
        seam: Seam allowance of each join, inches; both panels give it up.

    Example:
        >>> joined_width(2, 40, 0.5), joined_width(2, 42, 0.5)
        (79.0, 83.0)
    """
    return count * usable - 2 * seam * (count - 1)


def widths_needed(across: float, usable: float, seam: float) -> int:
    """The fewest widths that are at least so wide when joined.

    Args:
        across: Side of the backing that lies across the fabric, inches.
        usable: Usable width, inches.
        seam: Seam allowance of a join, inches.

    Raises:
        BuildError: If the seams would take up the whole width.
    """
    if across <= usable + TOLERANCE_IN:
        return 1
    gain = usable - 2 * seam
    if gain <= TOLERANCE_IN:
        raise BuildError(
            what=f"a backing fabric {in_both_units(usable)} wide is used up by its seams of {in_both_units(seam)}",
            fix="Give the usable width of the backing fabric as measured, selvages off.",
            where="backing.usable_width",
            code="build.backing-too-narrow",
        )
    return ceil((across - 2 * seam) / gain - TOLERANCE_IN)


def arrange(across: float, usable: float, seam: float, *, off_middle: float, narrowest: float) -> Panels:
    """The panels of one backing, with the seams as far off the middle as wished where that can be.

    Args:
        across: Finished side of the backing across the panels, inches.
        usable: Usable width, inches.
        seam: Seam allowance of a join, inches.
        off_middle: Wished distance of every seam from the middle, inches.
        narrowest: Narrowest panel worth joining, inches.

    Returns:
        The first arrangement whose seams keep off the middle; else the one whose seams are farthest from it.

    Raises:
        BuildError: If the seams would take up the whole width.
    """
    count = widths_needed(across, usable, seam)
    if count == 1:
        return Panels((across,), ())
    found = [_placed(across, widths, seam) for widths in _ways(across, usable, seam, count, narrowest)]
    good = [panels for panels in found if panels.off_middle >= off_middle - TOLERANCE_IN]
    return good[0] if good else max(found, key=lambda panels: round(panels.off_middle, 6))


def _ways(across: float, usable: float, seam: float, count: int, narrowest: float) -> Iterator[tuple[float, ...]]:
    """Panel widths: part at one end; part on both sides; one width halved for both sides."""
    part = across + 2 * seam * (count - 1) - (count - 1) * usable
    if part >= narrowest - TOLERANCE_IN:
        yield (*[usable] * (count - 1), part)
    else:
        short = usable - (narrowest - part)
        yield (short, *[usable] * (count - 2), narrowest)
    if count > 2:
        side = (across + 2 * seam * (count - 1) - (count - 2) * usable) / 2
        yield (side, *[usable] * (count - 2), side)
    half = (across + 2 * seam * count - (count - 1) * usable) / 2
    if max(half, narrowest) <= usable / 2 + TOLERANCE_IN:
        middle = usable if half >= narrowest else usable - 2 * (narrowest - half) / max(1, count - 1)
        yield (max(half, narrowest), *[middle] * (count - 1), max(half, narrowest))


def with_full_middle(across: float, usable: float, seam: float) -> Panels:
    """Full widths in the middle, an odd number of them, and equal parts on both sides, as few panels as do it.

    Args:
        across: Finished side of the backing across the panels, wider than one width; inches.
        usable: Usable width, inches.
        seam: Seam allowance of a join, inches.

    Example:
        >>> with_full_middle(79, 40, 0.5)
        Panels(widths=(20.5, 40, 20.5), seams_at=(-19.5, 19.5))
    """
    middle = 1
    while joined_width(middle + 2, usable, seam) < across - TOLERANCE_IN:
        middle += 2
    side = (across - joined_width(middle, usable, seam) + 4 * seam) / 2
    return _placed(across, (side, *[usable] * middle, side), seam)


def _placed(across: float, widths: tuple[float, ...], seam: float) -> Panels:
    """Where the seams lie: each panel gives up a seam where it is joined."""
    places = []
    place = -across / 2
    for index, width in enumerate(widths[:-1]):
        place += width - seam * (1 if index == 0 else 2)
        places.append(place)
    return Panels(widths, tuple(places))


def widths_for_all(panels: Panels, usable: float, how_many: int) -> int:
    """Widths of fabric for several backings alike, part widths sharing a width where they fit side by side.

    Args:
        panels: The panels of one backing.
        usable: Usable width, inches.
        how_many: Backings alike.

    Example:
        >>> widths_for_all(Panels((40, 9), (15.5,)), 40, 4)
        5
    """
    full = sum(how_many for width in panels.widths if 2 * width > usable + TOLERANCE_IN)
    parts = [width for width in panels.widths if 2 * width <= usable + TOLERANCE_IN]
    if not parts:
        return full
    side_by_side = floor(usable / max(parts) + TOLERANCE_IN)
    return full + ceil(how_many * len(parts) / side_by_side)
