"""Dimension lines, fixed words and arrow heads, measured on the sheet."""

from __future__ import annotations

from math import atan2, cos, degrees, hypot, radians, sin
from typing import TYPE_CHECKING

from stitchflip.pictures.ink import FIRM, HAIR, HALO, SOFT, THIN
from stitchflip.pictures.model import Begin, Dimension, Pen, Text
from stitchflip.pictures.paper import Mark, Shape, Word, text_box, text_width
from stitchflip.pictures.spots import Taken, baseline_for
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.model import Point

_TICK = 2.6
_OVERHANG = 2.4
_GAP = 1.8
_AIR = 7.0
"""What a dimension line must keep beside its words, points, both ends together."""
_SMALLEST = 4.5


def fixed_text(item: Text, at: Point, sheet: tuple[float, float]) -> Word:
    """A word where the figure wants it, pushed back when it runs off the sheet.

    Args:
        item: the words.
        at: their place on the sheet, points.
        sheet: width and height of the sheet.
    """
    x, y = at[0] + item.shift[0], at[1] - item.shift[1]
    size = item.size
    c, s = cos(radians(item.angle)), sin(radians(item.angle))
    while True:
        half = text_width(item.text, "", size, is_bold=item.bold) / 2
        away = {"start": half, "middle": 0.0, "end": -half}[item.anchor]
        middle = baseline_for((x + c * away, y - s * away), item.text, size, item.angle)
        corners = text_box(middle, item.text, "", size, item.angle, is_bold=item.bold)
        across = [corner[0] for corner in corners]
        up = [corner[1] for corner in corners]
        fits = max(across) - min(across) <= sheet[0] - 2 and max(up) - min(up) <= sheet[1] - 2
        if fits or item.may_shorten or size <= _SMALLEST:
            break
        size -= 0.25
    dx = max(0.0, 1 - min(across)) - max(0.0, max(across) - sheet[0] + 1)
    dy = max(0.0, 1 - min(up)) - max(0.0, max(up) - sheet[1] + 1)
    return Word((middle[0] + dx, middle[1] + dy), item.text, "", size, item.angle, item.bold, item.color, item.halo)


def arrow_head(before: Point, tip: Point, pen: Pen) -> Shape:
    """A filled head at the end of a line."""
    length = hypot(tip[0] - before[0], tip[1] - before[1]) or 1.0
    ux, uy = (tip[0] - before[0]) / length, (tip[1] - before[1]) / length
    long, half = 5.4, 2.1
    base = (tip[0] - ux * long, tip[1] - uy * long)
    return Shape(
        (tip, (base[0] - uy * half, base[1] + ux * half), (base[0] + uy * half, base[1] - ux * half)),
        True,
        pen.color,
        pen=Pen(HALO, HAIR),
        what="arrow head",
    )


def stand_off(item: Dimension, scale: float) -> float:
    """How far a dimension line stands off its ends, points, to the left when above zero."""
    sign = -1 if item.away < 0 else 1
    return item.away + sign * item.away_in * scale


def line_of(start: Point, end: Point, away: float) -> tuple[Point, Point]:
    """Where a dimension line runs on the sheet, y downward."""
    length = hypot(end[0] - start[0], end[1] - start[1]) or 1.0
    nx, ny = (end[1] - start[1]) / length, (start[0] - end[0]) / length
    return (start[0] + nx * away, start[1] + ny * away), (end[0] + nx * away, end[1] + ny * away)


def dimension(
    item: Dimension, start: Point, end: Point, away: float, taken: Taken, owner: int
) -> tuple[list[Mark], Word | None]:
    """A dimension line with ticks, extension lines where it stands off, and its words.

    Args:
        item: the distance and its wording.
        start: one end on the sheet, points, y downward.
        end: the other end.
        away: how far the line stands off, points.
        taken: what is there already.
        owner: its own number among the lines that are taken.
    """
    length = hypot(end[0] - start[0], end[1] - start[1]) or 1.0
    ux, uy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    nx, ny = uy, -ux  # left of the way from start to end, with y downward
    a, b = line_of(start, end, away)
    pen = Pen(item.color, THIN, casing=HALO)
    word = _wording(item, a, b, _View(taken, owner))
    marks: list[Mark] = [
        Shape(part, False, pen=pen, what="dimension", is_in_window=False) for part in _around(a, b, word)
    ]
    if away:
        sign = 1 if away > 0 else -1
        marks += [_extension(place, (nx * sign, ny * sign), abs(away)) for place in (start, end)]
    if item.begin is Begin.BREAK:
        marks += _break(a, (ux, uy))
    elif item.begin is Begin.TICK:
        marks.append(_tick(a, (nx, ny)))
    marks.append(_tick(b, (nx, ny)))
    return marks, word


def _around(a: Point, b: Point, word: Word | None) -> list[tuple[Point, Point]]:
    """The line from a to b, leaving out what its own words stand on."""
    length = hypot(b[0] - a[0], b[1] - a[1])
    if word is None or length == 0:
        return [(a, b)]
    ux, uy = (b[0] - a[0]) / length, (b[1] - a[1]) / length
    along = [(x - a[0]) * ux + (y - a[1]) * uy for x, y in word.box]
    aside = [(y - a[1]) * ux - (x - a[0]) * uy for x, y in word.box]
    if min(aside) > 0.5 or max(aside) < -0.5:
        return [(a, b)]
    first, last = min(along) - 2.0, max(along) + 2.0
    if last <= 0 or first >= length:
        return [(a, b)]
    parts = ((0.0, first), (last, length))
    return [
        ((a[0] + ux * low, a[1] + uy * low), (a[0] + ux * high, a[1] + uy * high)) for low, high in parts if high > low
    ]


def _extension(place: Point, toward: Point, away: float) -> Shape:
    (x, y), (nx, ny) = place, toward
    return Shape(
        ((x + nx * _GAP, y + ny * _GAP), (x + nx * (away + _OVERHANG), y + ny * (away + _OVERHANG))),
        False,
        pen=Pen(SOFT, HAIR),
        what="extension",
        is_in_window=False,
    )


def _tick(at: Point, normal: Point) -> Shape:
    (x, y), (nx, ny) = at, normal
    return Shape(
        ((x - nx * _TICK, y - ny * _TICK), (x + nx * _TICK, y + ny * _TICK)),
        False,
        pen=Pen(SOFT, FIRM, casing=HALO),
        what="tick",
        is_in_window=False,
    )


def _break(at: Point, along: Point) -> list[Shape]:
    """Two slashes: the line comes from outside the picture."""
    (x, y), (ux, uy) = at, along
    nx, ny = uy, -ux
    steps = ((-0.6, -3.0), (1.4, 3.0), (4.0, 3.0), (2.0, -3.0))
    points = tuple((x + ux * d + nx * o, y + uy * d + ny * o) for d, o in steps)
    return [
        Shape(points[place : place + 2], False, pen=Pen(SOFT, THIN), what="break", is_in_window=False)
        for place in (0, 2)
    ]


@dataclass(frozen=True, slots=True)
class _View:
    """What is taken, seen by one dimension: its own line is no obstacle."""

    taken: Taken
    owner: int

    def is_free(self, word: Word) -> bool:
        """Clear of words, signs and lines."""
        return self.taken.is_free(word.box, owner=self.owner)

    def is_clear_of_words(self, word: Word) -> bool:
        """Clear of words and signs; lines may run under it."""
        return self.taken.is_clear_of_words(word.box)


def _wording(item: Dimension, a: Point, b: Point, view: _View) -> Word | None:
    """The words where they read best.

    On the line as long as possible, else beside it; clear of every line if that can be, else of words only.
    """
    if not item.texts:
        return None
    angle = _upright(degrees(atan2(a[1] - b[1], b[0] - a[0])))
    for is_free in (view.is_free, view.is_clear_of_words):
        for text in item.texts:
            for center, slant in _on_the_line(item, text, a, b, angle):
                word = _word(item, text, center, slant)
                if is_free(word):
                    return word
        for text in item.texts:
            for center, slant in _beside(item, text, a, b, angle):
                word = _word(item, text, center, slant)
                if is_free(word):
                    return word
    return _word(item, item.texts[-1], ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2), angle)


def _upright(angle: float) -> float:
    """The slant of a line turned so that words on it are never upside down."""
    if angle > 90.01:
        return angle - 180
    return angle + 180 if angle <= -89.99 else angle


def _on_the_line(item: Dimension, text: str, a: Point, b: Point, angle: float) -> Iterator[tuple[Point, float]]:
    """Places on the line that leave a piece of it at both ends, the middle first."""
    length = hypot(b[0] - a[0], b[1] - a[1])
    needs = text_width(text, "", item.size, is_bold=False) + _AIR
    for share in (0.5, 0.58, 0.42, 0.66, 0.34, 0.74, 0.26):
        if needs <= 2 * length * min(share, 1 - share):
            yield (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share), angle


def _beside(item: Dimension, text: str, a: Point, b: Point, angle: float) -> Iterator[tuple[Point, float]]:
    """Places next to the line, upright or along it, and past its ends."""
    length = hypot(b[0] - a[0], b[1] - a[1]) or 1.0
    ux, uy = (b[0] - a[0]) / length, (b[1] - a[1]) / length
    nx, ny = uy, -ux
    wide = text_width(text, "", item.size, is_bold=False)
    outward = 1 if item.away >= 0 else -1
    for step in (0.85, 1.4, 2.0, 2.8):
        for side in (outward, -outward):
            for share in (0.5, 0.7, 0.3, 0.85, 0.15):
                x, y = a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share
                off = side * step * item.size
                if wide <= length:
                    yield (x + nx * off, y + ny * off), angle
                reach = side * (abs(nx) * wide / 2 + abs(ny) * item.size * 0.5 + step * item.size * 0.45)
                yield (x + nx * reach, y + ny * reach), 0.0
    if text != item.texts[-1]:
        return
    for place, way in ((b, 1), (a, -1)):
        reach = way * (wide / 2 + 5)
        yield (place[0] + ux * reach, place[1] + uy * reach), angle


def _word(item: Dimension, text: str, center: Point, angle: float) -> Word:
    at = baseline_for(center, text, item.size, angle)
    return Word(at, text, "", item.size, angle, False, item.color, True, "dimension")
