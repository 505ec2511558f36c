"""Labels written beside the drawing, each with a thin line to the patch it names."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.pictures.ink import HAIR, HALO, SOFT
from stitchflip.pictures.model import Label, Pen
from stitchflip.pictures.paper import Shape, Word, text_width
from stitchflip.piecing.geometry import middle

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.piecing.model import Point, Polygon

_STUB = 5.0
_RUN = 11.0
"""From the drawing's edge to where the words begin, points."""
_EDGE = 3.0
_LINE = 1.22
_PEN = Pen(SOFT, HAIR, casing=HALO)


def _size(label: Label) -> float:
    return min(label.size, max(label.least, 6.5))


def width_of(labels: Sequence[Label]) -> float:
    """Room the column needs at the right, points."""
    widest = max((text_width(one.text, one.tail, _size(one), is_bold=one.bold) for one in labels), default=0.0)
    return _RUN + widest + _EDGE


def height_of(labels: Sequence[Label]) -> float:
    """Height the column needs, points."""
    return sum(_size(label) * _LINE for label in labels)


def lead(
    labels: Sequence[Label], rooms: Sequence[Polygon], edge: float, low: float
) -> tuple[list[Shape], list[Word], float]:
    """Write labels in a column at the right of the drawing.

    Args:
        labels: what found no room.
        rooms: their patches on the sheet, points, y downward.
        edge: where the column begins, points from the left.
        low: lower end of the drawing, points from the top; the column ends there if it can.

    Returns:
        The leader lines with a dot in each patch, the words, and the height the column needs.
    """
    anchors = sorted(
        ((_anchor(room), label) for label, room in zip(labels, rooms, strict=True) if room),
        key=lambda pair: (round(pair[0][1], 3), round(pair[0][0], 3), pair[1].text),
    )
    heights = _spread([at[1] for at, _ in anchors], [_size(label) * _LINE for _, label in anchors], low)
    shapes: list[Shape] = []
    words: list[Word] = []
    for (at, label), y in zip(anchors, heights, strict=True):
        size = _size(label)
        x = edge + _RUN
        half = text_width(label.text, label.tail, size, is_bold=label.bold) / 2
        shapes.append(Shape((at, (x - _STUB, y), (x - 1.5, y)), False, pen=_PEN, what="leader", is_in_window=False))
        shapes.append(Shape(_dot(at), True, SOFT, what="leader dot", is_in_window=False))
        words.append(
            Word(
                (x + half, y + size * 0.33),
                label.text,
                label.tail,
                size,
                0.0,
                label.bold,
                label.color,
                False,
                label.what,
                label.step,
            )
        )
    lowest = max((y + _size(label) * 0.7 for (_, label), y in zip(anchors, heights, strict=True)), default=0.0)
    return shapes, words, lowest


def _anchor(room: Polygon) -> Point:
    """A place well inside a patch, toward its right end."""
    mx, my = middle(room)
    x, y = max(room, key=lambda point: (round(point[0], 3), -round(point[1], 3)))
    right = [point for point in room if abs(point[0] - x) < 0.05]
    x, y = sum(p[0] for p in right) / len(right), sum(p[1] for p in right) / len(right)
    share = 0.72
    return (mx + (x - mx) * share, my + (y - my) * share)


def _dot(at: Point) -> Polygon:
    r, d = 1.1, 0.78
    x, y = at
    return (
        (x + r, y),
        (x + d, y + d),
        (x, y + r),
        (x - d, y + d),
        (x - r, y),
        (x - d, y - d),
        (x, y - r),
        (x + d, y - d),
    )


def _spread(wanted: list[float], lines: list[float], high: float) -> list[float]:
    """Heights as near as can be to the wanted ones, never closer than a line, on the sheet while they fit."""
    out: list[float] = []
    for y, line in zip(wanted, lines, strict=True):
        least = out[-1] + line if out else line * 0.6
        out.append(max(y, least))
    limit = high
    for place in range(len(out) - 1, -1, -1):
        limit -= lines[place] * (0.6 if place == len(out) - 1 else 1.0)
        out[place] = min(out[place], max(limit, sum(lines[: place + 1]) - lines[0] * 0.4))
    return out
