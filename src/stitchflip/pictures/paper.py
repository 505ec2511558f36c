"""What a picture is on paper: shapes, words and signs in points, y downward, ready to be written.

A `Sheet` is the measured form of a figure at one size. Tests look at it instead of at pixels: which words are
there, whether two of them touch, whether something runs off the picture.
"""

from __future__ import annotations

from math import cos, hypot, radians, sin
from typing import TYPE_CHECKING

from stitchflip.pictures.fonts import CAP_HEIGHT, DESCENT, width_pt
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.pictures.model import Pen
    from stitchflip.piecing.model import Point, Polygon

POINTS_PER_INCH = 72.0
_HANGING = frozenset("gjpqy,;()/[]Q")


@dataclass(frozen=True, slots=True)
class Shape:
    """A polygon or a polyline."""

    points: tuple[Point, ...]
    is_closed: bool
    fill: str = ""
    hatch: int | None = None
    pen: Pen | None = None
    title: str = ""
    what: str = ""
    step: int | None = None
    is_in_window: bool = True
    """False for what may be drawn in the margins."""


@dataclass(frozen=True, slots=True)
class Word:
    """A line of text and the box it fills."""

    at: Point
    """Middle of the baseline."""
    text: str
    tail: str
    size: float
    angle: float
    """Degrees counter-clockwise."""
    bold: bool
    color: str
    halo: bool
    what: str = ""
    step: int | None = None

    @property
    def box(self) -> Polygon:
        """The four corners of what the letters cover."""
        return text_box(self.at, self.text, self.tail, self.size, self.angle, is_bold=self.bold)


@dataclass(frozen=True, slots=True)
class Sign:
    """A mark of fixed size: "knot", "center mark", "badge"."""

    kind: str
    at: Point
    text: str = ""


@dataclass(frozen=True, slots=True)
class Nested:
    """A smaller sheet set into this one."""

    at: Point
    """Its upper left corner."""
    sheet: Sheet


Mark = Shape | Word | Sign | Nested


@dataclass(frozen=True, slots=True)
class Sheet:
    """A picture measured for one size on paper."""

    wide: float
    high: float
    window: tuple[float, float, float, float]
    """Left, top, right, bottom of the drawing itself."""
    is_cropped: bool
    marks: tuple[Mark, ...]
    title: str
    alt: str

    @property
    def words(self) -> tuple[Word, ...]:
        """All lines of text, those of nested sheets left out."""
        return tuple(mark for mark in self.marks if isinstance(mark, Word))

    def shapes(self, what: str) -> tuple[Shape, ...]:
        """The shapes that stand for one kind of thing."""
        return tuple(mark for mark in self.marks if isinstance(mark, Shape) and mark.what == what)

    def nested(self) -> Iterator[Sheet]:
        """The sheets set into this one."""
        return (mark.sheet for mark in self.marks if isinstance(mark, Nested))


def text_width(text: str, tail: str, size: float, *, is_bold: bool) -> float:
    """Width in points of a line that may go on in the plain weight."""
    return width_pt(text, size, is_bold=is_bold) + (width_pt(f" {tail}", size) if tail else 0.0)


def rise_and_fall(text: str, size: float) -> tuple[float, float]:
    """How far a line's letters stand above and hang below its baseline, points."""
    falls = any(sign in _HANGING for sign in text)
    return (CAP_HEIGHT + 0.02) * size, (DESCENT if falls else 0.02) * size


def text_box(at: Point, text: str, tail: str, size: float, angle: float, *, is_bold: bool) -> Polygon:
    """Corners of the box a line of text fills.

    Args:
        at: middle of the baseline, points, y downward.
        text: the words.
        tail: further words in the plain weight.
        size: points.
        angle: degrees counter-clockwise.
        is_bold: weight of `text`.

    Returns:
        Four corners: baseline left, baseline right, top right, top left, with room for hanging letters.
    """
    half = text_width(text, tail, size, is_bold=is_bold) / 2
    rise, fall = rise_and_fall(text + tail, size)
    c, s = cos(radians(angle)), sin(radians(angle))
    return tuple(
        (at[0] + c * along + s * up, at[1] - s * along + c * up)
        for along, up in ((-half, fall), (half, fall), (half, -rise), (-half, -rise))
    )


def boxes_touch(one: Polygon, other: Polygon, gap: float = 0.0) -> bool:
    """True when two convex boxes overlap or come nearer than `gap` points."""
    for polygon in (one, other):
        for (x0, y0), (x1, y1) in zip(polygon, polygon[1:] + polygon[:1], strict=True):
            length = hypot(x1 - x0, y1 - y0)
            if length == 0:
                continue
            nx, ny = (y1 - y0) / length, (x0 - x1) / length
            a = [nx * x + ny * y for x, y in one]
            b = [nx * x + ny * y for x, y in other]
            if max(a) + gap <= min(b) or max(b) + gap <= min(a):
                return False
    return True
