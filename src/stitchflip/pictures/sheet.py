"""From a figure to a sheet: everything measured in points at the width asked for, every word in its place.

Fixed words stand where the figure put them (pushed back on the sheet if they run off), dimensions take the
longest wording that fits, labels look for room in their patch; those that find none are written in a column
beside the drawing with a leader line, and the drawing is made a little smaller to make room for it.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING

from stitchflip.errors import PublishError
from stitchflip.pictures import measures
from stitchflip.pictures.leaders import height_of, lead, width_of
from stitchflip.pictures.model import (
    Area,
    Badge,
    CenterMark,
    Dimension,
    Figure,
    Inset,
    Knot,
    Label,
    Line,
    Margins,
    NoRoom,
    Text,
)
from stitchflip.pictures.paper import POINTS_PER_INCH, Mark, Nested, Shape, Sheet, Sign, Word
from stitchflip.pictures.spots import Taken, fitted
from stitchflip.piecing.geometry import area, box, clip_all, half_planes
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.piecing.model import Point, Polygon

_STEP = 0.5
_SIGN_REACH = {"knot": 4.2, "center mark": 4.0, "badge": 5.6}
_SMALLEST_IN = 0.1
_LEAST_DRAWING = 0.3
"""Part of the width that the margins may never take from the drawing."""


def paper_height(figure: Figure, width_in: float) -> float:
    """Height on paper of a figure printed this wide.

    Args:
        figure: what to print.
        width_in: width on paper, inches.

    Returns:
        Inches.
    """
    return lay_out(figure, width_in).high / POINTS_PER_INCH


@lru_cache(maxsize=512)
def lay_out(figure: Figure, width_in: float) -> Sheet:
    """Measure a figure for one width on paper.

    Args:
        figure: what to print.
        width_in: width on paper, inches, 0.1 or more.

    Raises:
        PublishError: If there is no width to print in, or nothing to see.
    """
    across, up = figure.high[0] - figure.low[0], figure.high[1] - figure.low[1]
    if not (width_in >= _SMALLEST_IN and across > 0 and up > 0):
        raise PublishError(
            what=f"a picture of {across:g} x {up:g} in cannot be printed {width_in:g} in wide",
            fix="Give a width of 0.1 in or more and a piece with some size.",
            where=figure.title,
            code="publish.no-room-for-picture",
        )
    layout = _Layout(figure, width_in * POINTS_PER_INCH, figure.margins)
    homeless = layout.place()
    column = 0.0
    while homeless and width_of(homeless) > column:
        column = width_of(homeless)
        margins = replace(figure.margins, right=figure.margins.right + column)
        layout = _Layout(figure, width_in * POINTS_PER_INCH, margins, column)
        homeless = layout.place()
    return layout.sheet(homeless)


@dataclass(frozen=True, slots=True)
class _Window:
    """Maps places of the real thing to the sheet."""

    scale: float
    left: float
    bottom: float
    low: Point

    def at(self, point: Point) -> Point:
        return (
            self.left + (point[0] - self.low[0]) * self.scale,
            self.bottom - (point[1] - self.low[1]) * self.scale,
        )

    def all(self, points: tuple[Point, ...]) -> tuple[Point, ...]:
        return tuple(self.at(point) for point in points)


class _Layout:
    """One attempt at one size."""

    def __init__(self, figure: Figure, wide: float, margins: Margins, column: float = 0.0) -> None:
        self._figure = figure
        across, up = figure.high[0] - figure.low[0], figure.high[1] - figure.low[1]
        share = min(1.0, wide * (1 - _LEAST_DRAWING) / max(margins.left + margins.right, 1.0))
        left, right = margins.left * share, margins.right * share
        scale = (wide - left - right) / across
        self._wide = wide
        self._column_at = wide - column * share
        self._high = margins.top + up * scale + margins.bottom
        self._map = _Window(scale, left, margins.top + up * scale, figure.low)
        self._window = (left, margins.top, wide - right, margins.top + up * scale)
        self._taken = Taken(self._wide, self._high)
        self._shapes: list[Mark] = []
        self._over: list[Mark] = []
        self._signs: list[Mark] = []
        self._words: list[Word] = []

    def place(self) -> tuple[Label, ...]:
        """Place everything; the labels without room come back."""
        items = self._figure.items
        for item in items:
            self._draw(item)
        for item in items:
            if isinstance(item, Text):
                self._write_fixed(item)
        if self._figure.is_cropped:
            self._taken.keep_inside(self._window)
        measured = [item for item in items if isinstance(item, Dimension)]
        for owner, item in enumerate(measured):
            self._taken.add_line(*measures.line_of(*self._ends(item)), owner=owner)
        for owner, item in enumerate(measured):
            self._measure(item, owner)
        labels = [item for item in items if isinstance(item, Label)]
        homeless = [label for label in labels if not self._find_room(label) and label.no_room is not NoRoom.DROP]
        high = self._window[3] - self._window[1]
        if height_of(homeless) > high:
            homeless = [label for label in homeless if label.no_room is NoRoom.LEAD]
        return tuple(homeless)

    def sheet(self, homeless: tuple[Label, ...]) -> Sheet:
        """The sheet, with the labels that found no room in a column at the right."""
        rooms = [self._seen(label.room) for label in homeless]
        drawn, words, high = lead(homeless, rooms, self._column_at, self._window[3])
        return Sheet(
            self._wide,
            max(self._high, high),
            self._window,
            self._figure.is_cropped,
            (*self._shapes, *drawn, *self._over, *self._signs, *self._words, *words),
            self._figure.title,
            self._figure.alt,
        )

    def _draw(self, item: object) -> None:
        match item:
            case Area(points, fill, hatch, pen, title, what, step):
                self._shapes.append(Shape(self._map.all(points), True, fill, hatch, pen, title, what, step))
            case Line(points, pen, arrow, what, step):
                placed = self._map.all(points)
                self._shapes.append(Shape(placed, False, pen=pen, what=what, step=step))
                if self._figure.is_cropped and what == "seam":
                    self._taken.add_line(placed[-2], placed[-1])
                if arrow:
                    self._taken.add_line(placed[-2], placed[-1])
                    self._shapes.append(measures.arrow_head(placed[-2], placed[-1], pen))
            case Knot(at):
                self._sign(Sign("knot", self._map.at(at)))
            case CenterMark(at):
                self._sign(Sign("center mark", self._map.at(at)))
            case Badge(at, text, shift):
                x, y = self._map.at(at)
                self._sign(Sign("badge", (x + shift[0], y - shift[1]), text))
            case Inset():
                self._inset(item)
            case _:
                pass

    def _sign(self, sign: Sign) -> None:
        self._signs.append(sign)
        reach = _SIGN_REACH[sign.kind]
        self._taken.add(box((sign.at[0] - reach, sign.at[1] - reach), (sign.at[0] + reach, sign.at[1] + reach)))

    def _inset(self, inset: Inset) -> None:
        across = inset.figure.high[0] - inset.figure.low[0]
        up = inset.figure.high[1] - inset.figure.low[1]
        scale = min(inset.wide / across, inset.high / up)
        small = replace(inset.figure, margins=Margins(0, 0, 0, 0))
        sheet = lay_out(small, max(across * scale / POINTS_PER_INCH, _SMALLEST_IN))
        edge = 4.0
        x = edge if "left" in inset.corner else self._wide - edge - sheet.wide
        y = edge if "upper" in inset.corner else self._high - edge - sheet.high
        self._over.append(Nested((x, y), sheet))
        self._taken.add(box((x, y), (x + sheet.wide, y + sheet.high)))

    def _write_fixed(self, item: Text) -> None:
        """A word whose place the figure has chosen."""
        word = measures.fixed_text(item, self._map.at(item.at), (self._wide, self._high))
        rest = item.text
        while item.may_shorten and len(rest) > 1 and not self._taken.is_clear_of_words(word.box):
            rest = rest[:-1].rstrip()
            word = measures.fixed_text(replace(item, text=f"{rest}…"), self._map.at(item.at), (self._wide, self._high))
        if not item.may_drop or self._taken.is_clear_of_words(word.box):
            self._write(word)

    def _write(self, word: Word) -> None:
        self._words.append(word)
        self._taken.add(word.box)

    def _ends(self, item: Dimension) -> tuple[Point, Point, float]:
        """Both ends on the sheet and how far the line stands off them."""
        return self._map.at(item.start), self._map.at(item.end), measures.stand_off(item, self._map.scale)

    def _measure(self, item: Dimension, owner: int) -> None:
        marks, word = measures.dimension(item, *self._ends(item), self._taken, owner)
        self._over.extend(marks)
        if word is not None:
            self._write(word)

    def _find_room(self, label: Label) -> bool:
        if self._fits(label):
            return True
        return label.may_lose_tail and self._fits(replace(label, tail=""))

    def _fits(self, label: Label) -> bool:
        room = self._seen(label.room)
        size = label.size
        while len(room) > 2 and size >= label.least - 1e-9:
            for angle in label.angles:
                at = fitted(room, label.text, label.tail, size, angle, self._taken, is_bold=label.bold)
                if at is not None:
                    self._write(_inside(label, at, size, angle))
                    return True
            size -= _STEP
        return False

    def _seen(self, room: Polygon) -> Polygon:
        """A room on the sheet, as far as it can be seen there."""
        if self._figure.is_cropped:
            (x0, y0), (x1, y1) = self._figure.low, self._figure.high
            room = clip_all(room, half_planes(box((x0, y0), (x1, y1))))
        return self._map.all(room if area(room) >= 0 else room[::-1])


def _inside(label: Label, at: Point, size: float, angle: float) -> Word:
    """A label that found its room."""
    return Word(
        at, label.text, label.tail, size, angle, label.bold, label.color, halo=True, what=label.what, step=label.step
    )
