"""What the strips leave of each other: kept, seen and needed.

Walking backward through the steps, the only lines that matter for a piece are the latest flips on each side
(and every chord), so a plan costs a fixed number of clips a strip however many strips there are.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.piecing.geometry import clip, clip_all, extent
from stitchflip.piecing.seams import seam_interval
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.piecing.flips import Sewn
    from stitchflip.piecing.frame import Frame
    from stitchflip.piecing.geometry import HalfPlane
    from stitchflip.piecing.model import Point, Polygon


@dataclass(slots=True)
class Layer:
    """One piece among the others; flat."""

    opened: Polygon
    kept: Polygon
    seen: Polygon
    """What no later strip covers, before the trim."""
    needed: tuple[float, float] | None
    """Interval along the seam that must exist; None when nothing of it reaches the cover outline."""
    full: tuple[float, float]
    seam: tuple[float, float] | None


def layers_of(history: Sequence[Sewn], opened: Sequence[Polygon], frame: Frame) -> list[Layer]:
    """The layers of a build, in the order sewn.

    Args:
        history: The flips.
        opened: Their opened strips, already corrected by what was measured.
        frame: Frame with the cover outline.
    """
    covering: dict[int, HalfPlane] = {}
    cutting: list[HalfPlane] = []
    out = []
    for sewn, strip in zip(reversed(history), reversed(opened), strict=True):
        out.append(_layer(sewn, strip, list(covering.values()), cutting, frame))
        nx, ny = sewn.normal
        covering[sewn.side] = (nx, ny, sewn.seam_at)
        if sewn.is_chord:
            cutting.append((nx, ny, sewn.seam_at + frame.seam))
    out.reverse()
    return out


def first_layer(first: Polygon, history: Sequence[Sewn], seam: float) -> tuple[Polygon, Polygon]:
    """(kept, seen) of the first piece."""
    covering: dict[int, HalfPlane] = {}
    for sewn in reversed(history):
        covering[sewn.side] = (*sewn.normal, sewn.seam_at)
    chords = [(*sewn.normal, sewn.seam_at + seam) for sewn in history if sewn.is_chord]
    kept = clip_all(first, chords)
    return kept, clip_all(kept, covering.values())


def _layer(sewn: Sewn, strip: Polygon, covering: list[HalfPlane], cutting: list[HalfPlane], frame: Frame) -> Layer:
    nx, ny = sewn.normal
    tx, ty = -ny, nx
    kept = clip_all(strip, cutting) if cutting else strip
    need_polygon = clip_all(kept, frame.cover_planes)
    needed = extent(need_polygon, tx, ty) if need_polygon else None
    if sewn.free_start or sewn.free_end:
        low, high = needed or extent(frame.cover, tx, ty)
        if sewn.free_start and sewn.free_end and not cutting:
            strip = kept = _straight(sewn, extent(strip, nx, ny), low, high)
        else:
            kept = _ended(kept, (tx, ty), low if sewn.free_start else None, high if sewn.free_end else None)
            strip = _ended(strip, (tx, ty), low if sewn.free_start else None, high if sewn.free_end else None)
    full = extent(strip, tx, ty) if strip else (0.0, 0.0)
    return Layer(
        opened=strip,
        kept=kept,
        seen=clip_all(kept, covering),
        needed=needed,
        full=full,
        seam=seam_interval(kept, sewn.normal, sewn.seam_at) if kept else None,
    )


def _straight(sewn: Sewn, across: tuple[float, float], low: float, high: float) -> Polygon:
    """A strip without neighbors as long as it need be: both ends cut straight."""
    nx, ny = sewn.normal
    near, far = across
    return (
        (nx * near - ny * high, ny * near + nx * high),
        (nx * near - ny * low, ny * near + nx * low),
        (nx * far - ny * low, ny * far + nx * low),
        (nx * far - ny * high, ny * far + nx * high),
    )


def _ended(polygon: Polygon, along: Point, low: float | None, high: float | None) -> Polygon:
    """A strip without neighbors, cut straight where it need reach no farther."""
    if low is not None:
        polygon = clip(polygon, -along[0], -along[1], -low)
    return polygon if high is None else clip(polygon, *along, high)
