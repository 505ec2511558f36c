"""Strips with ends cut parallel to their neighbors, for makers who trim before they sew.

Drawn right side up with the sewn edge below, such a strip has two different long edges; both are needed at the
ruler. The end line runs parallel to the neighbor's raw edge through the outermost place that must exist, and
on through the allowance behind the seam.
"""

from __future__ import annotations

from math import atan2, degrees
from typing import TYPE_CHECKING

from stitchflip.piecing.geometry import TOLERANCE, clip_all, half_planes
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.piecing.model import Build, SewnPiece


@dataclass(frozen=True, slots=True)
class AngledStrip:
    """A strip with slanted ends; inches, angles in degrees inside the strip."""

    sewn_edge: float
    """Length of the raw edge that is sewn."""
    outer_edge: float
    """Length of the other long edge."""
    start_angle: float
    """Angle between the sewn edge and the end where sewing starts."""
    end_angle: float


def angled_strip(build: Build, piece: SewnPiece) -> AngledStrip | None:
    """A strip of a build with both ends cut parallel to its neighbors.

    Returns:
        None for the first piece, for a strip that is not needed, and for one whose ends meet in a point.
    """
    need = clip_all(piece.kept, half_planes(build.cover)) if piece.seam else ()
    if not need:
        return None
    nx, ny = piece.normal
    tx, ty = -ny, nx
    low_v, high_v = piece.seam_at - build.seam_allowance, piece.seam_at + piece.cut_width - build.seam_allowance
    ends = []
    for sign in (-1.0, 1.0):
        mx, my = _end_normal(piece, sign)
        reach = max(mx * x + my * y for x, y in need)
        along, across = mx * tx + my * ty, mx * nx + my * ny
        ends.append([(reach - across * v) / along for v in (low_v, high_v)])
    (start_low, start_high), (end_low, end_high) = ends
    if end_high - start_high < -TOLERANCE or end_low - start_low < -TOLERANCE:
        return None
    height = high_v - low_v
    return AngledStrip(
        sewn_edge=end_low - start_low,
        outer_edge=end_high - start_high,
        start_angle=degrees(atan2(height, start_high - start_low)),
        end_angle=degrees(atan2(height, end_low - end_high)),
    )


def _end_normal(piece: SewnPiece, sign: float) -> tuple[float, float]:
    """Outward normal of the end of a strip: of the opened strip's edge that faces that way, else straight."""
    nx, ny = piece.normal
    tx, ty = -ny * sign, nx * sign
    facing = [
        (mx, my)
        for mx, my, _ in half_planes(piece.opened)
        if abs(mx * nx + my * ny) < 1 - TOLERANCE and mx * tx + my * ty > 0
    ]
    return max(facing, key=lambda m: m[0] * tx + m[1] * ty) if facing else (tx, ty)
