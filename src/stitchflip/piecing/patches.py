"""How large the patches of a numbered foundation are cut.

A patch is cut larger than the area it fills, so that it can be laid by eye: the usual rule adds the same extra on
every side. At a sharp corner that is not enough: a seam allowance a alone reaches a / tan(θ / 2) past a corner of
angle θ, so half an inch fails from 45 degrees down with a quarter-inch seam. A size here is never less than what
the flipped shape needs with its allowances at its own angles.
"""

from __future__ import annotations

from math import sqrt
from typing import TYPE_CHECKING

from stitchflip.lengths import Rounding, round_to
from stitchflip.piecing.flips import FAR, band
from stitchflip.piecing.geometry import clip_all, extent
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.piecing.geometry import HalfPlane
    from stitchflip.piecing.model import Point, Polygon


@dataclass(frozen=True, slots=True)
class Patch:
    """The rectangle that one patch is cut as, and where it lies; inches, flat."""

    width: float
    """Cut, square to its seam."""
    length: float
    """Cut, along its seam."""
    low: float
    """Its two ends along the seam, from the foot of the center mark."""
    high: float
    needed: tuple[float, float]
    """What of it along the seam must exist, allowances included."""
    need: Polygon
    """The same as a shape: what it fills, what lies under later patches, and its own allowance."""
    square: float = 0.0
    """Side of the square that gives it when cut once from corner to corner; 0 unless it is a corner triangle."""


@dataclass(frozen=True, slots=True)
class Rules:
    """By what patches are cut, inches."""

    seam: float
    """Effective seam allowance."""
    extra: float
    """Added to the area on every side."""
    grid: float
    """Cut sizes are rounded up to this."""

    def up(self, size: float) -> float:
        """A size as one cuts it."""
        return round_to(size, self.grid, Rounding.UP)


def patch_for(
    seen: Polygon, normal: Point, seam_at: float, later: Sequence[HalfPlane], cover: Sequence[HalfPlane], rules: Rules
) -> Patch | None:
    """The rectangle for one patch; None when it covers nothing.

    Args:
        seen: What of it shows inside the trim edge.
        normal: Outward unit normal of its seam.
        seam_at: Its seam line, from the center mark.
        later: Seam lines (nx, ny, d) of the patches sewn after it.
        cover: Half-planes of what must be covered.
        rules: Allowance, extra and grid.
    """
    nx, ny = normal
    tx, ty = -ny, nx
    need = needed_shape(seam_at - rules.seam, normal, later, cover, rules.seam)
    if not need or extent(need, nx, ny)[1] <= seam_at:
        return None
    low, high = extent(need, tx, ty)
    deep = extent(need, nx, ny)[1] - seam_at + rules.seam
    first, last = low, high
    if seen:
        first, last = extent(seen, tx, ty)
        across = extent(seen, nx, ny)
        deep = max(deep, across[1] - across[0] + 2 * rules.extra)
    width = rules.up(deep)
    length = rules.up(max(high - low, last - first + 2 * rules.extra))
    start = placed((first, last), (low, high), length)
    return Patch(width, length, start, start + length, (low, high), need, _square(seen, need, normal, rules))


def needed_shape(
    from_edge: float, normal: Point, later: Sequence[HalfPlane], cover: Sequence[HalfPlane], seam: float
) -> Polygon:
    """What of a patch must exist: from its raw edge outward, up to the allowances of later seams and the cover."""
    strip = band(normal, from_edge, FAR)
    return clip_all(clip_all(strip, cover), ((nx, ny, d + seam) for nx, ny, d in later))


def placed(area: tuple[float, float], need: tuple[float, float], length: float) -> float:
    """Where a patch begins along its seam: its extra alike at both ends, unless its needs lie to one side."""
    middle = (area[0] + area[1]) / 2
    return min(max(middle - length / 2, need[1] - length), need[0])


def corner_square(longest_short_side: float, extra: float = 0.5) -> float:
    """Side of the square that is cut once from corner to corner for two corner triangles.

    Args:
        longest_short_side: Of the area's two sides at its right angle the longer one, inches.
        extra: What patches are cut larger on every side, inches.

    Returns:
        Four extras more, inches: 2 in with the usual 1/2.

    Example:
        >>> corner_square(3)
        5.0
    """
    return longest_short_side + 4 * extra


def _square(seen: Polygon, need: Polygon, normal: Point, rules: Rules) -> float:
    """Side of the square for a patch that is a right-angled triangle with its long side at its seam, else 0."""
    legs = _legs(seen, normal)
    if legs is None:
        return 0.0
    nx, ny = normal
    tx, ty = -ny, nx
    # Half a square with its long side on the raw edge holds a place at height v where |u - middle| <= side / √2 - v.
    edge = extent(need, nx, ny)[0]
    rising = max(tx * x + ty * y + (nx * x + ny * y - edge) for x, y in need)
    falling = min(tx * x + ty * y - (nx * x + ny * y - edge) for x, y in need)
    return rules.up(max(corner_square(max(legs), rules.extra), (rising - falling) / sqrt(2)))


_SQUARE_CORNER = 0.02
"""A corner whose cosine is below this, about a degree off, is a right angle."""


def _legs(seen: Polygon, normal: Point) -> tuple[float, float] | None:
    """The two short sides of a right-angled triangle whose right angle lies away from its seam."""
    if len(seen) != 3:
        return None
    nx, ny = normal
    place = max(range(3), key=lambda k: nx * seen[k][0] + ny * seen[k][1])
    (x, y), (ax, ay), (bx, by) = seen[place], seen[place - 1], seen[(place + 1) % 3]
    one, other = (ax - x, ay - y), (bx - x, by - y)
    legs = (one[0] ** 2 + one[1] ** 2) ** 0.5, (other[0] ** 2 + other[1] ** 2) ** 0.5
    cosine = (one[0] * other[0] + one[1] * other[1]) / (legs[0] * legs[1])
    return legs if abs(cosine) < _SQUARE_CORNER else None
