"""Cutting to scale: the fabric as it lies folded, then every strip and row opened, with what is left over."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker
from stitchflip.pictures.cut_bands import Band, pieces_in, together
from stitchflip.pictures.drawing import DIMENSION_MARGIN, DIMENSION_OFF, color_of, counted, letter_for
from stitchflip.pictures.hatches import CUT_AWAY_HATCH
from stitchflip.pictures.ink import CUT_AWAY, FIRM, HAIR, INK, PAPER, SOFT, THIN, pale
from stitchflip.pictures.model import (
    Area,
    Badge,
    Dash,
    Dimension,
    Figure,
    Label,
    Line,
    Margins,
    NoRoom,
    Pen,
    Primitive,
    Text,
)

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.cutting.model import FabricPlan, HandSheet, OneStrip, Row
    from stitchflip.piecing.model import Polygon
    from stitchflip.planning.model import Plan

_FABRIC_PAPER = 0.55
_CUT = Pen(INK, THIN)
_EDGE = Pen(INK, FIRM)
_FOLD = Pen(INK, FIRM, Dash.FOLD)
_REST = Pen(SOFT, HAIR)
_GRAIN = Pen(SOFT, THIN)
_BETWEEN = 6.5
"""Between the folded fabric and the opened strips, inches of fabric."""
_AIR = 0.7
"""Between one opened strip and the next, inches of fabric."""
_SELVAGE = 0.5
_PER_INCH = 0.105
"""Scale on paper that it is made for: inches of paper for an inch of fabric."""
_MANY_PIECES = 16
"""More pieces than these: one too narrow for its words is named without its size, which the table has."""
_MANY_IN_A_ROW = 6
_NAMED_REST = 4.0
"""A leftover shorter than this is hatched without its size."""


def cuts(plan: Plan, fabric_plan: FabricPlan) -> Figure:
    """How one fabric is cut, to scale.

    Args:
        plan: The plan, for the unit and the fabric's letter and color.
        fabric_plan: The cuts of one fabric.

    Returns:
        The figure, in inches of fabric: new fabric folded with its cuts numbered in order, its strips and rows
        opened beside it, and below them the pieces on hand that are cut.
    """
    sketch = _Sketch(plan, fabric_plan)
    if fabric_plan.buy_in > 0:
        sketch.new_fabric()
    for sheet in fabric_plan.hand_sheets:
        sketch.on_hand(sheet)
    return sketch.figure()


class _Sketch:
    """Collects what is drawn; y runs down from 0 as the fabric is cut."""

    def __init__(self, plan: Plan, fabric_plan: FabricPlan) -> None:
        self._plan = plan
        self._cut = fabric_plan
        self._say = Speaker(plan.project.units)
        letter = letter_for(plan, fabric_plan.fabric)
        self._letter = letter.letter if letter else ""
        self._fill = pale(color_of(plan, fabric_plan.fabric), _FABRIC_PAPER)
        self._items: list[Primitive] = []
        self._right = 1.0
        self._bottom = -1.0
        self._counts_alike = False
        """Bands cut alike are drawn once: how many stands where the grain would be named."""
        self._are_many = pieces_in(fabric_plan) > _MANY_PIECES
        self._from_hand = [
            strip for strips in fabric_plan.strip_plans for strip in strips.strips if strip.stock != _NEW
        ]

    def figure(self) -> Figure:
        """What has been drawn."""
        name = f"{self._letter} {self._cut.fabric}".strip()
        return Figure(
            tuple(self._items),
            (0.0, self._bottom),
            (self._right, 0.0),
            f"Cutting {name}",
            _described(self._plan, self._cut, self._letter),
            Margins(left=30.0, bottom=DIMENSION_MARGIN, right=10.0, top=14.0),
            round(min(6.8, 0.56 + self._right * _PER_INCH), 2),
        )

    # --- new fabric ------------------------------------------------------------------------------------

    def new_fabric(self) -> None:
        """The purchase folded once along its length, and what each cut gives."""
        bands = list(self._bands())
        once = together(bands)
        self._counts_alike = len(once) < len(bands) and any(band.says != "whole" and band.alike > 1 for band in once)
        top = self._folded(bands)
        left = self._cut.usable_width / 2 + _BETWEEN
        low = self._opened(once, left)
        self._bottom = min(self._bottom, top, low)
        self._right = left + self._cut.usable_width

    def _bands(self) -> Iterator[Band]:
        """The cuts across new fabric in the order cut: rows, then strips."""
        group = 0
        before: tuple[object, float] = ("", 0.0)
        for row in self._cut.rows:
            if before != ("row", row.height):
                group, before = group + 1, ("row", row.height)
            used = sum(width for _, width in row.pieces)
            yield Band(group, "row", row.height, row.pieces, max(self._cut.usable_width - used, 0.0), says="length")
        for strip_plan in self._cut.strip_plans:
            new = [strip for strip in strip_plan.strips if strip.stock == _NEW]
            if not new:
                continue
            if before != ("strip", strip_plan.width):
                group, before = group + 1, ("strip", strip_plan.width)
            for strip in new:
                yield Band(
                    group,
                    "strip",
                    strip.width,
                    strip.pieces,
                    strip.rest,
                    says="whole" if strip_plan.is_whole else "length",
                )

    def _folded(self, bands: list[Band]) -> float:
        """Folded fabric: fold at the left, selvages at the right, cuts from the top."""
        half = self._cut.usable_width / 2
        edge = self._cut.straightening_in / 2
        length = max(self._cut.buy_in, self._cut.need_in)
        y = 0.0
        if edge > 0:
            self._items.append(_away(_rect(0, y, half, edge)))
            y -= edge
        groups: dict[int, list[Band]] = {}
        for band in bands:
            groups.setdefault(band.group, []).append(band)
        for number, alike in groups.items():
            top = y
            for band in alike:
                self._items.append(Area(_rect(0, y, half, band.high), self._fill, pen=_CUT, what="band"))
                y -= band.high
            room = _rect(half * 0.12, top, half * 0.86, top - y)
            said = f"{counted(len(alike), alike[0].what)} {self._say.width(alike[0].high)} wide"
            self._items.append(Label(said, room, 7.0, 5.5, what="cut"))
            self._items.append(Badge((0.0, (top + y) / 2), str(number), (9.0, 0.0)))
        rest = length - self._cut.need_in
        if rest > 1e-6:
            area = _rect(0, y, half, rest)
            self._items.append(Area(area, CUT_AWAY, CUT_AWAY_HATCH, _REST, what="leftover"))
            self._items.append(
                Label(f"leftover {self._say.margin(rest)} long", area, 7.0, 5.5, what="leftover", no_room=NoRoom.DROP)
            )
            y -= rest
        if edge > 0:
            self._items.append(_away(_rect(0, y, half, edge)))
            y -= edge
        self._frame(half, -y)
        return y

    def _frame(self, half: float, length: float) -> None:
        """Fold, selvages, grain, and the size of the purchase."""
        usable = self._say.near(self._cut.usable_width)
        self._items += [
            Line(((0.0, 0.0), (half, 0.0)), _EDGE),
            Line(((0.0, -length), (half, -length)), _EDGE),
            Line(((0.0, 0.0), (0.0, -length)), _FOLD, what="fold"),
            Line(((half, 0.0), (half, -length)), _EDGE, what="selvage"),
            Area(_rect(half, 0.0, _SELVAGE, length), PAPER, pen=_REST, what="selvage"),
            Text((0.0, 0.0), "fold", 6.5, anchor="start", color=SOFT, shift=(0.0, 4.5)),
            Text((half + _SELVAGE, 0.0), "selvages", 6.5, anchor="end", color=SOFT, shift=(0.0, 4.5)),
            Dimension(
                (0.0, -length), (half, -length), (f"{usable} usable, folded", usable), away=-DIMENSION_OFF, size=7
            ),
            Dimension(
                (0.0, -length),
                (0.0, 0.0),
                (f"{self._say.purchase(self._cut.buy_in)} to buy", self._say.purchase(self._cut.buy_in)),
                away=18.0,
                size=7,
            ),
        ]
        if length > 2.5:
            x = half + _SELVAGE + 1.2
            self._items += [
                Line(((x, -length * 0.5), (x, -length * 0.12)), _GRAIN, arrow=True, what="grain"),
                Line(((x, -length * 0.5), (x, -length * 0.88)), _GRAIN, arrow=True, what="grain"),
            ]
            if length > 7 and not self._counts_alike:
                self._items.append(
                    Text((x, -length * 0.5), "lengthwise grain", 6.0, angle=90, color=SOFT, halo=True, shift=(6.0, 0.0))
                )

    def _opened(self, bands: list[Band], left: float) -> float:
        """Every strip and row opened to the full width, one under the other."""
        y = 0.0
        for band in bands:
            self._open_band(band, left, y, self._cut.usable_width)
            middle = (left, y - band.high / 2)
            self._items.append(Badge(middle, str(band.group), (-9.0, 0.0)))
            if band.alike > 1 and band.says != "whole":
                said = f"{band.alike} alike"
                self._items.append(Text(middle, said, 6.0, anchor="end", color=SOFT, halo=True, shift=(-16.0, -2.0)))
            y -= band.high + _AIR
        return y + _AIR

    def _open_band(self, band: Band, left: float, y: float, length: float) -> None:
        x = left
        is_short = self._are_many or (band.what == "row" and len(band.pieces) > _MANY_IN_A_ROW)
        for label, wide in band.pieces:
            area = _rect(x, y, wide, band.high)
            self._items.append(Area(area, self._fill, pen=_CUT, what="piece"))
            self._items.append(
                Label(
                    label,
                    area,
                    7.0,
                    5.0,
                    bold=True,
                    tail=self._said(band, wide),
                    what="piece",
                    no_room=NoRoom.DROP if is_short else NoRoom.LEAD,
                    may_lose_tail=is_short,
                )
            )
            x += wide
        if band.rest > 1e-6:
            area = _rect(x, y, left + length - x, band.high)
            self._items.append(Area(area, CUT_AWAY, CUT_AWAY_HATCH, _REST, what="leftover"))
            if band.rest >= _NAMED_REST and not band.in_column:
                said = f"leftover {self._say.margin(band.rest)}"
                self._items.append(Label(said, area, 6.5, 5.0, color=INK, what="leftover", no_room=NoRoom.DROP))

    def _said(self, band: Band, long: float) -> str:
        match band.says:
            case "length":
                return f"· {self._say.cut(long)}"
            case "size":
                return f"· {self._say.cut_size(band.high, long)}"
            case _:
                return f"· whole strip, {band.alike} strips" if band.alike > 1 else "· whole strip"

    # --- on hand ---------------------------------------------------------------------------------------

    def on_hand(self, sheet: HandSheet) -> None:
        """A piece of fabric on hand, opened, with the strips along one side."""
        long, stack = (sheet.wide, sheet.long) if sheet.along == "wide" else (sheet.long, sheet.wide)
        top = self._bottom - 5.0 if self._items else 0.0
        whole = _rect(0.0, top, long, stack)
        self._items.append(Area(whole, CUT_AWAY, CUT_AWAY_HATCH, _EDGE, what="leftover"))
        y = top - max(stack - sheet.usable_stack, 0.0) / 2
        x = max(long - sheet.usable_length, 0.0) / 2
        filled = 0.0
        for row in sheet.rows:
            band = _hand_row(row, sheet)
            filled = max(filled, sheet.usable_length - band.rest)
            self._open_band(band, x, y, sheet.usable_length)
            y -= row.height
        for width, count in sheet.strips:
            for strip in self._take(sheet, width, count):
                band = Band(
                    0,
                    "strip",
                    strip.width,
                    strip.pieces,
                    strip.rest,
                    says="size",
                    in_column=sheet.column_left_in > 0,
                )
                filled = max(filled, strip.length - strip.rest)
                self._open_band(band, x, y, strip.length)
                y -= width
        if sheet.column_left_in > 0:
            self._name_column(x + filled, sheet.usable_length - filled, top, y)
        rest = sheet.usable_stack - sheet.used_in
        area = _rect(x, y, sheet.usable_length, rest)
        if rest > 1e-6:
            said = f"leftover {self._say.margin(rest)} wide"
            self._items.append(Label(said, area, 7.0, 5.5, what="leftover", no_room=NoRoom.DROP))
        self._items += [
            Text((0.0, top), sheet.name, 7.0, anchor="start", color=SOFT, shift=(0.0, 5.0)),
            Dimension((0.0, top - stack), (long, top - stack), (self._say.near(long),), away=-DIMENSION_OFF, size=7),
            Dimension((0.0, top - stack), (0.0, top), (self._say.near(stack),), away=DIMENSION_OFF, size=7),
        ]
        self._right = max(self._right, long)
        self._bottom = min(self._bottom, top - stack)

    def _name_column(self, x: float, wide: float, top: float, low: float) -> None:
        """What is left in one piece beside all strips and can be used, so after straightening; named once."""
        said = f"left over {self._say.margin(wide)} wide"
        room = _rect(x, top, wide, top - low)
        self._items.append(Label(said, room, 7.0, 5.5, (0.0, 90.0), what="leftover", no_room=NoRoom.DROP))

    def _take(self, sheet: HandSheet, width: float, count: int) -> list[OneStrip]:
        """The next strips of this width that come from this piece."""
        own = [
            strip
            for strip in self._from_hand
            if abs(strip.width - width) < 1e-6 and (sheet.name.startswith(strip.stock) or strip.stock == sheet.name)
        ][:count]
        for strip in own:
            self._from_hand.remove(strip)
        return own


_NEW = "width of fabric"


def _hand_row(row: Row, sheet: HandSheet) -> Band:
    used = sum(width for _, width in row.pieces)
    return Band(0, "row", row.height, row.pieces, max(sheet.usable_length - used, 0.0), says="size")


def _rect(x: float, top: float, wide: float, high: float) -> Polygon:
    return ((x, top - high), (x + wide, top - high), (x + wide, top), (x, top))


def _away(polygon: Polygon) -> Area:
    return Area(polygon, CUT_AWAY, CUT_AWAY_HATCH, _REST, what="straightening")


def _described(plan: Plan, cut: FabricPlan, letter: str) -> str:
    say = Speaker(plan.project.units)
    name = f"{letter} {cut.fabric}".strip()
    parts = []
    if cut.buy_in > 0:
        parts.append(
            f"buy {say.purchase(cut.buy_in)}, {say.near(cut.usable_width)} usable width, folded with selvages together"
        )
    parts += [
        f"a row {say.width(row.height)} high for {', '.join(label for label, _ in row.pieces)}" for row in cut.rows
    ]
    for strips in cut.strip_plans:
        inside = "; ".join(
            ", ".join(f"{label} {say.cut(long)}" for label, long in strip.pieces)
            + (f", leftover {say.margin(strip.rest)}" if strip.rest > 1e-6 else "")
            for strip in strips.strips
        )
        count = counted(len(strips.strips), "strip")
        what = "whole, to be joined" if strips.is_whole else inside
        parts.append(f"{count} {say.width(strips.width)} wide: {what}")
    parts += [f"from the {sheet.name}" for sheet in cut.hand_sheets]
    return f"Cutting {name} to scale: {'. '.join(parts)}."
