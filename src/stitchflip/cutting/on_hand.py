"""Fabric on hand: what each piece gives after straightening, and which strips and rows it is used for.

A fat quarter is cut along its longer side, a length from a bolt across its width. What lies on the shelf is
used first, the widest strips first, each strip from a piece that is cut already where it has room.
"""

from __future__ import annotations

from dataclasses import field, replace
from math import floor
from typing import TYPE_CHECKING

from stitchflip.cutting.model import HandSheet, OneStrip, Row, StripPlan, StripStock
from stitchflip.cutting.rows import Rectangle, lay_in_rows
from stitchflip.lengths import Speaker, Unit
from stitchflip.project.model import Fabric, OnHand
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from stitchflip.cutting.purchase import Shrinkage
    from stitchflip.project.numbers import Numbers

_TOLERANCE = 1e-6
_FULL_WIDTH_IN = 30.0
"""From here on a piece is a length off a bolt, cut across its width; narrower ones are quarters and remnants."""


@dataclass(slots=True)
class Sheet:
    """One piece of fabric on hand while it is being used up."""

    name: str
    wide: float
    long: float
    along: str
    """Side the strips run along, "wide" or "long"."""
    usable_length: float
    usable_stack: float
    used: float = 0.0
    strips: list[OneStrip] = field(default_factory=list)
    rows: list[Row] = field(default_factory=list)

    @property
    def room(self) -> float:
        """What is left side by side."""
        return self.usable_stack - self.used

    def cut_in(self, rows: Sequence[Row]) -> HandSheet:
        """The sheet cut in these rows and nothing else.

        Args:
            rows: side by side along the sheet.
        """
        return replace(self, used=sum(row.height for row in rows), strips=[], rows=list(rows)).finished()

    def finished(self) -> HandSheet:
        """The sheet as the plan reports it."""
        counts: dict[float, int] = {}
        for strip in self.strips:
            counts[strip.width] = counts.get(strip.width, 0) + 1
        filled = [sum(length for _, length in strip.pieces) for strip in self.strips]
        filled += [row.filled for row in self.rows]
        side = self.wide if self.along == "wide" else self.long
        return HandSheet(
            name=self.name,
            wide=self.wide,
            long=self.long,
            along=self.along,
            usable_length=self.usable_length,
            usable_stack=self.usable_stack,
            strips=tuple(sorted(counts.items(), reverse=True)),
            rows=tuple(self.rows),
            used_in=self.used,
            column_left_in=max(side - max(filled, default=0.0), 0.0),
        )


@dataclass(slots=True)
class Shelf:
    """Everything on hand of one fabric."""

    sheets: list[Sheet]
    strips: list[StripStock]
    """Precut strips, by name and length."""
    strip_widths: list[float]
    """Their cut widths, in the same order."""

    @classmethod
    def of(cls, fabric: Fabric, widths: Iterable[float], numbers: Numbers, shrinkage: Shrinkage, unit: Unit) -> Shelf:
        """What is on hand of a fabric, straightened.

        Args:
            fabric: the fabric.
            widths: cut widths that are wanted; a piece just so narrow is a strip.
            numbers: straightening.
            shrinkage: what washing first still takes.
            unit: the maker's unit, in which pieces without a name are told by their size.
        """
        shelf = cls([], [], [])
        wanted = list(widths)
        for kind, name in zip(fabric.on_hand, _names(fabric.on_hand, unit), strict=True):
            narrow, long = sorted((kind.wide.inches, kind.long.inches))
            if "strip" in kind.name.lower() or any(abs(narrow - width) < _TOLERANCE for width in wanted):
                shelf.strips.append(StripStock(name, long, kind.count))
                shelf.strip_widths.append(narrow)
                continue
            for number in range(kind.count):
                own = f"{name} {number + 1}" if kind.count > 1 else name
                shelf.sheets.append(_sheet(own, kind, fabric, numbers, shrinkage))
        return shelf

    def stock_for(self, width: float) -> list[StripStock]:
        """Strips of a width that the shelf can still give, pieces of equal length counted together.

        Args:
            width: cut width, inches.
        """
        precut = [one for one, own in zip(self.strips, self.strip_widths, strict=True) if abs(own - width) < _TOLERANCE]
        by_length: dict[float, int] = {}
        for sheet in self.sheets:
            by_length[sheet.usable_length] = by_length.get(sheet.usable_length, 0) + _how_many(sheet.room, width)
        return [
            *(one for one in precut if one.count),
            *(StripStock(_ON_SHELF, k, n) for k, n in by_length.items() if n),
        ]

    def take(self, plan: StripPlan) -> tuple[OneStrip, ...]:
        """Charge the strips a plan takes from the shelf, and name the piece each comes from.

        Args:
            plan: a plan made with `stock_for` its width.

        Returns:
            The plan's strips, those from the shelf with the name of their piece.
        """
        return tuple(self._take_one(strip) for strip in plan.strips)

    def _take_one(self, strip: OneStrip) -> OneStrip:
        for place, own in enumerate(self.strips):
            if own.name == strip.stock:
                self.strips[place] = StripStock(own.name, own.length, (own.count or 0) - 1)
                return strip
        if strip.stock != _ON_SHELF:
            return strip
        fitting = [
            sheet for sheet in self.sheets if sheet.usable_length == strip.length and _how_many(sheet.room, strip.width)
        ]
        sheet = min(fitting, key=lambda sheet: (sheet.used == 0, sheet.room))
        named = OneStrip(strip.width, strip.length, strip.pieces, sheet.name, strip.rest)
        sheet.strips.append(named)
        sheet.used += strip.width
        return named

    def take_rows(self, rectangles: Sequence[Rectangle]) -> list[Rectangle]:
        """Cut as many rectangles as the shelf gives in whole rows.

        Args:
            rectangles: what is wanted, upright.

        Returns:
            What is still wanted.
        """
        left = list(rectangles)
        for sheet in self.sheets:
            left = _rows_from(sheet, left)
        return left

    @property
    def longest(self) -> float:
        """Length of the longest strip anything on hand can give."""
        return max([*(one.length for one in self.strips), *(sheet.usable_length for sheet in self.sheets)], default=0.0)

    def used_strips(self, plans: Iterable[StripPlan]) -> tuple[tuple[str, int], ...]:
        """Precut strips that plans use, by name, and how many.

        Args:
            plans: plans made with this shelf's stock.
        """
        taken = [strip.stock for plan in plans for strip in plan.strips]
        names = (one.name for one in self.strips)
        return tuple((name, taken.count(name)) for name in names if name in taken)

    def cut_sheets(self) -> tuple[HandSheet, ...]:
        """The pieces that are cut, in the order given."""
        return tuple(sheet.finished() for sheet in self.sheets if sheet.used > 0)


_ON_SHELF = "\0on the shelf"
"""Stands for any piece of one length until the strip's own piece is chosen."""


def is_length(name: str, wide: float) -> bool:
    """Whether a piece on hand is a length off a bolt, cut across its width; others are quarters and remnants.

    Args:
        name: what it is called.
        wide: across, inches.
    """
    return wide >= _FULL_WIDTH_IN and "quarter" not in name.lower()


def _how_many(room: float, width: float) -> int:
    return floor(room / width + _TOLERANCE) if room > 0 else 0


def _names(on_hand: Sequence[OnHand], unit: Unit) -> list[str]:
    """A name for each kind, no two alike: its own, with its size where others are called the same."""
    plain = [kind.name.strip() or "piece on hand" for kind in on_hand]
    say = Speaker(unit)
    sized = [
        name
        if plain.count(name) == 1 and name not in ("width of fabric", "piece on hand")
        else f"{name} {say.size(kind.wide.inches, kind.long.inches)}"
        for name, kind in zip(plain, on_hand, strict=True)
    ]
    return [
        name if sized.count(name) == 1 else f"{name}, no. {sized[: place + 1].count(name)}"
        for place, name in enumerate(sized)
    ]


def _sheet(name: str, kind: OnHand, fabric: Fabric, numbers: Numbers, shrinkage: Shrinkage) -> Sheet:
    wide, long = kind.wide.inches, kind.long.inches
    washed_wide, washed_long = wide * (1 - shrinkage.across), long * (1 - shrinkage.along)
    is_full = is_length(kind.name, wide)
    if is_full:
        return Sheet(name, wide, long, "wide", washed_wide, max(washed_long - numbers.straightening, 0.0))
    off = numbers.fat_quarter_straightening
    if fabric.one_way or wide >= long:
        return Sheet(name, wide, long, "wide", max(washed_wide - off, 0.0), max(washed_long - off, 0.0))
    return Sheet(name, wide, long, "long", max(washed_long - off, 0.0), max(washed_wide - off, 0.0))


def _rows_from(sheet: Sheet, rectangles: Sequence[Rectangle]) -> list[Rectangle]:
    """Take what whole rows of one sheet give; what is still wanted."""
    lengthwise = sheet.along == "long"
    laid = [
        Rectangle(one.label, one.long, one.wide, one.count, one.can_turn) if lengthwise else one for one in rectangles
    ]
    taken: dict[tuple[str, float], int] = {}
    for row in lay_in_rows(sheet.usable_length, laid).rows:
        if row.height <= sheet.room + _TOLERANCE:
            sheet.rows.append(row)
            sheet.used += row.height
            for piece in row.pieces:
                taken[piece] = taken.get(piece, 0) + 1
    left: list[Rectangle] = []
    for one in rectangles:
        got = sum(
            taken.pop((one.label, across), 0) for across in ({one.wide, one.long} if not one.is_square else {one.wide})
        )
        if got < one.count:
            left.append(Rectangle(one.label, one.wide, one.long, one.count - got, one.can_turn))
    return left
