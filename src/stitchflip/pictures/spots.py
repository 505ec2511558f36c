"""Where a word can stand: inside a patch at a given slant, clear of every word before it.

A line of text is a box; the places where a box fits inside a convex patch are the patch shrunk by the box,
exactly. So a label is never tried by trial and error: if the shrunk patch is empty, it does not fit.
"""

from __future__ import annotations

from math import cos, hypot, radians, sin
from typing import TYPE_CHECKING

from stitchflip.pictures.paper import boxes_touch, rise_and_fall, text_box, text_width
from stitchflip.piecing.geometry import clip_all, half_planes, middle

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.model import Point, Polygon

_SHARES = (0.5, 0.38, 0.62, 0.25, 0.75, 0.12, 0.88, 0.0, 1.0)


class _Placed:
    """A box with the upright box round it, because most pairs are far apart."""

    __slots__ = ("box", "high", "low")

    def __init__(self, box: Polygon) -> None:
        self.box = box
        self.low = (min(x for x, _ in box), min(y for _, y in box))
        self.high = (max(x for x, _ in box), max(y for _, y in box))

    def touches(self, other: _Placed, gap: float) -> bool:
        """True when they overlap or come nearer than the gap."""
        near = all(self.low[k] < other.high[k] + gap and other.low[k] < self.high[k] + gap for k in (0, 1))
        return near and boxes_touch(self.box, other.box, gap)


class Taken:
    """The places that are taken: words, and signs that no word may cover."""

    def __init__(self, wide: float, high: float) -> None:
        """An empty sheet of so many points."""
        self._window = (0.0, 0.0, wide, high)
        self._boxes: list[_Placed] = []
        self._lines: list[tuple[int, _Placed]] = []

    def add(self, box: Polygon) -> None:
        """Nothing else may stand here."""
        self._boxes.append(_Placed(box))

    def add_line(self, start: Point, end: Point, owner: int = -1) -> None:
        """No words but the line's own may stand on it."""
        self._lines.append((owner, _Placed((start, end))))

    def keep_inside(self, window: tuple[float, float, float, float]) -> None:
        """Words that look for a place from now on stay inside left, top, right and bottom."""
        self._window = window

    def is_free(self, box: Polygon, gap: float = 1.0, owner: int = -2) -> bool:
        """True when a box lies where words may stand, clear of all others and of all lines but its own."""
        placed = _Placed(box)
        return self.is_clear_of_words(box, gap) and not any(
            line.touches(placed, gap) for whose, line in self._lines if whose != owner
        )

    def is_clear_of_words(self, box: Polygon, gap: float = 1.0) -> bool:
        """True when a box lies where words may stand, clear of all other boxes."""
        placed = _Placed(box)
        return self.is_inside(box) and not any(other.touches(placed, gap) for other in self._boxes)

    def is_inside(self, box: Polygon) -> bool:
        """True when a box lies where words may stand."""
        left, top, right, bottom = self._window
        return all(left + 0.3 <= x <= right - 0.3 and top + 0.3 <= y <= bottom - 0.3 for x, y in box)


def shrunk(room: Polygon, wide: float, high: float, angle: float) -> Polygon:
    """Where the middle of a box may lie so that the whole box is inside a convex room.

    Args:
        room: counter-clockwise in its own frame.
        wide: of the box, along its slant.
        high: of the box.
        angle: slant in degrees in the frame of the room.
    """
    ux, uy = cos(radians(angle)), sin(radians(angle))
    planes = (
        (nx, ny, r - abs(nx * ux + ny * uy) * wide / 2 - abs(-nx * uy + ny * ux) * high / 2)
        for nx, ny, r in half_planes(room)
    )
    return clip_all(room, planes)


def places(free: Polygon) -> Iterator[Point]:
    """Places in a shrunk room worth trying, the middle first, then along its longest way."""
    yield middle(free)
    pairs = [(a, b) for i, a in enumerate(free) for b in free[i + 1 :]]
    start, end = max(pairs, key=lambda pair: round(hypot(pair[0][0] - pair[1][0], pair[0][1] - pair[1][1]), 6))
    for share in _SHARES:
        yield (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)


def baseline_for(center: Point, text: str, size: float, angle: float) -> Point:
    """Middle of the baseline of a line whose letters are centered on a place; points, y downward."""
    rise, fall = rise_and_fall(text, size)
    drop = (rise - fall) / 2
    return (center[0] + sin(radians(angle)) * drop, center[1] + cos(radians(angle)) * drop)


def fitted(
    room: Polygon, text: str, tail: str, size: float, angle: float, taken: Taken, *, is_bold: bool
) -> Point | None:
    """Where on the sheet a line fits inside a room.

    Args:
        room: convex, points, y downward, in either turning.
        text: the words.
        tail: further words in the plain weight.
        size: points.
        angle: degrees counter-clockwise as seen.
        taken: what is there already.
        is_bold: weight of `text`.

    Returns:
        Middle of the baseline, or None when it does not fit.
    """
    up = tuple((x, -y) for x, y in room)
    rise, fall = rise_and_fall(text + tail, size)
    wide = text_width(text, tail, size, is_bold=is_bold) + 2.4
    free = shrunk(up, wide, rise + fall + 1.6, angle)
    if not free:
        return None
    for x, y in places(free):
        at = baseline_for((x, -y), text + tail, size, angle)
        if taken.is_free(text_box(at, text, tail, size, angle, is_bold=is_bold)):
            return at
    return None
