"""Strips pieced beforehand: what of such a strip is which fabric once it is sewn on.

The seams that join the stretches run square to the strip's own seam and are no stitching through the base, so
they change fabrics and lengths and nothing else of a build.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.piecing.geometry import clip, counts
from stitchflip.piecing.model import Section

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.piecing.ways.wanted import Part


def sections_of(
    parts: Sequence[Part], fabric: str, normal: Point, visible: Sequence[Polygon], shown: Sequence[Polygon]
) -> tuple[Section, ...]:
    """The stretches of a strip with what of each is to be seen.

    Args:
        parts: Its stretches in order along the seam.
        fabric: The strip's own fabric, for stretches that name none.
        normal: Outward unit normal of its seam.
        visible: What of the whole strip no later strip covers, convex, flat.
        shown: The same inside the binding's seam line.

    Example:
        >>> from stitchflip.piecing.ways.wanted import Part
        >>> halves = (Part("", 0.0, 1.0, 1.25), Part("Plum", 1.0, 3.0, 2.25))
        >>> strip = ((0.0, 0.0), (3.0, 0.0), (3.0, 1.0), (0.0, 1.0))
        >>> [(one.fabric, one.visible[0][0]) for one in sections_of(halves, "Oat", (0.0, -1.0), [strip], [])]
        [('Oat', (0.0, 0.0)), ('Plum', (1.0, 0.0))]
    """
    last = len(parts) - 1
    out = []
    for place, part in enumerate(parts):
        low, high = None if place == 0 else part.low, None if place == last else part.high
        out.append(
            Section(
                fabric=part.fabric or fabric,
                cut_length=part.cut_length,
                visible=_stretch(visible, normal, low, high),
                shown=_stretch(shown, normal, low, high),
                low=part.low,
                high=part.high,
            )
        )
    return tuple(out)


def seen_again(
    sections: Sequence[Section], normal: Point, visible: Sequence[Polygon], shown: Sequence[Polygon]
) -> tuple[Section, ...]:
    """The same stretches when more or less of the strip is to be seen."""
    from stitchflip.piecing.ways.wanted import Part

    parts = [Part(one.fabric, one.low, one.high, one.cut_length) for one in sections]
    return sections_of(parts, "", normal, visible, shown)


def length_of_parts(parts: Sequence[Part], seam: float) -> float:
    """Length of a strip pieced of these parts, raw end to raw end: each joining seam takes two allowances."""
    return sum(part.cut_length for part in parts) - 2 * seam * (len(parts) - 1)


def _stretch(polygons: Sequence[Polygon], normal: Point, low: float | None, high: float | None) -> tuple[Polygon, ...]:
    """What of some polygons lies between two places along a seam; None leaves an end as it is."""
    tx, ty = -normal[1], normal[0]
    out = []
    for polygon in polygons:
        part = polygon if low is None else clip(polygon, -tx, -ty, -low)
        part = part if high is None else clip(part, tx, ty, high)
        if counts(part):
            out.append(part)
    return tuple(out)
