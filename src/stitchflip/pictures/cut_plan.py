"""Cutting to scale: the fabric as it lies folded, then every strip and row opened, with what is left over.

The numbers in the rings are the numbers of the order of the hand, so that picture and words are read together.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.hand import order_of_hand
from stitchflip.cutting.hand_model import NEW_FABRIC, Act
from stitchflip.cutting.hand_words import amount_words
from stitchflip.lengths import Speaker
from stitchflip.pictures.cut_bands import Band, Cell, bands_of, together
from stitchflip.pictures.cut_spoken import described
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
    from collections.abc import Iterable, Sequence

    from stitchflip.cutting.hand_model import OrderStep
    from stitchflip.cutting.model import FabricPlan
    from stitchflip.piecing.model import Polygon
    from stitchflip.planning.model import Plan

_FABRIC_PAPER = 0.55
_CUT = Pen(INK, THIN)
_EDGE = Pen(INK, FIRM)
_FOLD = Pen(INK, FIRM, Dash.FOLD)
_REST = Pen(SOFT, HAIR)
_GRAIN = Pen(SOFT, THIN)
_SLANT = Pen(INK, FIRM, Dash.TRIM)
_BETWEEN = 8.5
"""Between the folded fabric and the opened strips, inches of fabric."""
_AIR = 0.7
"""Between one opened strip and the next, inches of fabric."""
_APART = 5.0
"""Between one piece of fabric and the next."""
_SELVAGE = 0.5
_PER_INCH = 0.105
"""Scale on paper that it is made for: inches of paper for an inch of fabric."""
_MANY_PIECES = 16
"""More pieces than these: one too narrow for its words is named without its size, which the order has."""
_MANY_IN_A_ROW = 6
_NAMED_REST = 4.0
"""A leftover shorter than this is hatched without its size."""
_ROOM_FOR_WORDS = 1.9
"""A band this high has room for its words."""
_ROOM_FOR_GRAIN = 2.5
_HALF_TURN = 0.5**0.5
_SMALLEST_PT = 6.0
"""Smaller words are not read on paper."""
_OPEN = (Act.SUBCUT, Act.LABEL, Act.KEEP)


def cuts(plan: Plan, fabric_plan: FabricPlan) -> Figure:
    """How one fabric is cut, to scale.

    Args:
        plan: The plan, for the unit, the pieces and the fabric's letter and color.
        fabric_plan: The cuts of one fabric.

    Returns:
        The figure, in inches of fabric: the pieces on hand that are cut, then new fabric folded with its cuts
        numbered in their order, its strips and rows opened beside it.
    """
    sketch = _Sketch(plan, fabric_plan)
    sketch.draw()
    return sketch.figure()


class _Sketch:
    """Collects what is drawn; y runs down from 0 as the fabric is cut."""

    def __init__(self, plan: Plan, fabric_plan: FabricPlan) -> None:
        self._plan = plan
        self._cut = fabric_plan
        pieces = plan.pieces_by_fabric.get(fabric_plan.fabric, ())
        self._order = order_of_hand(fabric_plan, pieces, plan.numbers, plan.project.units)
        self._say = Speaker(plan.project.units)
        letter = letter_for(plan, fabric_plan.fabric)
        self._letter = letter.letter if letter else ""
        self._fill = pale(color_of(plan, fabric_plan.fabric), _FABRIC_PAPER)
        self._items: list[Primitive] = []
        self._right = 1.0
        self._bottom = 0.0
        self._are_many = sum(given.count for step in self._order.steps for given in step.gives) > _MANY_PIECES
        self._trimmed = {
            (round(strips.width, 6), number): strip.pieces
            for strips in fabric_plan.strip_plans
            if strips.as_you_go
            for number, strip in enumerate(strips.strips, 1)
        }

    def draw(self) -> None:
        """One piece of fabric after the other."""
        for source in dict.fromkeys(step.source for step in self._order.steps):
            steps = [step for step in self._order.steps if step.source == source]
            top = self._bottom - _APART if self._items else 0.0
            if source == NEW_FABRIC:
                self._new_fabric(steps, top)
            elif any(step.act is Act.TAKE for step in steps):
                self._precut(source, steps, top)
            else:
                self._on_hand(source, steps, top)

    def figure(self) -> Figure:
        """What has been drawn."""
        name = f"{self._letter} {self._cut.fabric}".strip()
        return Figure(
            tuple(self._items),
            (0.0, min(self._bottom, -1.0)),
            (self._right, 0.0),
            f"Cutting {name}",
            described(name, self._cut, self._order, self._trimmed, self._say),
            Margins(left=30.0, bottom=DIMENSION_MARGIN, right=10.0, top=16.0),
            round(min(6.8, 0.56 + self._right * _PER_INCH), 2),
        )

    # --- new fabric ------------------------------------------------------------------------------------

    def _new_fabric(self, steps: Sequence[OrderStep], top: float) -> None:
        """The purchase folded along its length, and what each cut gives."""
        folds = max((step.folds for step in steps if step.act in (Act.STRAIGHTEN, Act.ACROSS)), default=0)
        width = self._cut.usable_width / 2**folds
        low = self._folded(steps, top, width, folds)
        left = width + _BETWEEN
        opened = [(step, cells) for step in steps if step.act in _OPEN for cells in self._bands(step)]
        end = self._opened(together(opened), left, top)
        if top - low > _ROOM_FOR_GRAIN:
            self._grain(width + _SELVAGE + 0.7, top, top - low)
        self._bottom = min(low, end)
        self._right = max(self._right, left + self._cut.usable_width)

    def _folded(self, steps: Sequence[OrderStep], top: float, width: float, folds: int) -> float:
        """Folded fabric: fold at the left, selvages at the right, cuts from the top."""
        y = top
        edge = self._cut.straightening_in / 2
        for step in steps:
            if step.act is Act.STRAIGHTEN:
                edge = step.before[1] - step.left[1]
                self._items += [
                    _away(_rect(0, y, width, edge)),
                    Badge((width / 2, y), str(step.number), (0.0, 7.5)),
                ]
                y -= edge
            elif step.act is Act.ACROSS:
                y = self._across(step, y, width)
        length = next((step.left[1] + edge for step in steps if step.act is Act.STRAIGHTEN), top - y)
        rest = length - (top - y) - edge
        if rest > 1e-6:
            self._left_over(_rect(0, y, width, rest), (self._cut.usable_width, rest))
            y -= rest
        if edge > 0:
            self._items.append(_away(_rect(0, y, width, edge)))
            y -= edge
        self._frame(width, top, top - y, folds)
        return y

    def _across(self, step: OrderStep, y: float, width: float) -> float:
        """The cuts of one setting."""
        top = y
        part = step.parts[0]
        for _ in range(part.count):
            self._items.append(Area(_rect(0, y, width, part.measure), self._fill, pen=_CUT, what="band"))
            y -= part.measure
        room = _rect(width * 0.12, top, width * 0.86, top - y)
        if part.count % 2 == 0 and part.measure >= _ROOM_FOR_WORDS:
            room = _rect(width * 0.12, (top + y) / 2, width * 0.86, part.measure)
        said = f"{counted(part.count, step.what)} {self._say.width(part.measure)} "
        said += "wide" if step.what == "strip" else "high"
        self._items += [
            Label(said, room, 7.0, _SMALLEST_PT, what="cut"),
            Badge((0.0, (top + y) / 2), str(step.number), (9.0, 0.0)),
        ]
        return y

    def _frame(self, width: float, top: float, length: float, folds: int) -> None:
        """Fold, selvages, grain, and the size of the purchase."""
        usable = self._say.near(self._cut.usable_width)
        low = top - length
        how = ("one layer", "folded", "folded twice")[folds]
        left, right = (("selvage", "selvage"), ("fold", "selvages"), ("fold", "fold, selvages"))[folds]
        bought = amount_words(self._cut.buy_in, self._say.unit)
        is_sold = bought == self._say.purchase(self._cut.buy_in)
        self._items += [
            Line(((0.0, top), (width, top)), _EDGE),
            Line(((0.0, low), (width, low)), _EDGE),
            Line(((0.0, top), (0.0, low)), _FOLD if folds else _EDGE, what="fold" if folds else "selvage"),
            Line(((width, top), (width, low)), _EDGE, what="selvage"),
            Area(_rect(width, top, _SELVAGE, length), PAPER, pen=_REST, what="selvage"),
            Text((0.0, top), left, 6.5, anchor="start", color=SOFT, shift=(0.0, 4.5)),
            Text((width + _SELVAGE, top), right, 6.5, anchor="end", color=SOFT, shift=(0.0, 4.5)),
            Dimension((0.0, low), (width, low), (f"{usable} usable, {how}", usable), away=-DIMENSION_OFF, size=7),
            Dimension(
                (0.0, low), (0.0, top), (f"{bought} {'to buy' if is_sold else 'long'}", bought), away=18.0, size=7
            ),
        ]

    def _grain(self, x: float, top: float, length: float) -> None:
        middle = top - length * 0.5
        self._items += [
            Line(((x, middle), (x, top - length * 0.12)), _GRAIN, arrow=True, what="grain"),
            Line(((x, middle), (x, top - length * 0.88)), _GRAIN, arrow=True, what="grain"),
        ]
        if length > 7:
            text = Text((x, middle), "lengthwise grain", 6.0, angle=90, color=SOFT, shift=(6.0, 0.0), may_drop=True)
            self._items.append(text)

    # --- opened strips and rows ------------------------------------------------------------------------

    def _bands(self, step: OrderStep) -> list[tuple[Cell, ...]]:
        wide = round(step.wide, 6)
        return bands_of(step, {number: own for (width, number), own in self._trimmed.items() if width == wide})

    def _opened(self, bands: Iterable[tuple[OrderStep, Band]], left: float, top: float) -> float:
        """Every strip and row opened to its full length, one under the other."""
        y = top
        for step, (cells, alike) in bands:
            self._open_band(step, cells, left, y, alike)
            middle = (left, y - step.wide / 2)
            self._items.append(Badge(middle, str(step.number), (-9.0, 0.0)))
            if alike > 1 and not cells[0].is_whole:
                said = f"{alike} alike"
                self._items.append(Text(middle, said, 6.0, anchor="end", color=SOFT, halo=True, shift=(-16.0, -2.0)))
            y -= step.wide + _AIR
        return y + _AIR

    def _open_band(self, step: OrderStep, cells: Sequence[Cell], left: float, top: float, alike: int = 1) -> None:
        pieces = sum(bool(cell.label) for cell in cells)
        is_short = self._are_many or (step.what == "row" and pieces > _MANY_IN_A_ROW)
        for cell in cells:
            area = _rect(left + cell.x, top - cell.y, cell.wide, cell.high)
            if not cell.label:
                self._left_over(area, (cell.wide, cell.high), is_strip=step.what == "strip" and cell.is_end)
                continue
            self._items.append(Area(area, self._fill, pen=_CUT, what="piece"))
            if cell.slanted:
                self._items.append(_on_the_slant(area, cell.slanted))
            self._items.append(
                Label(
                    cell.label,
                    area,
                    7.0,
                    _SMALLEST_PT,
                    (0.0, 90.0) if cell.high > 1.5 * cell.wide else (0.0,),
                    bold=True,
                    tail=self._said(step, cell, alike),
                    what="piece",
                    no_room=NoRoom.DROP if is_short else NoRoom.LEAD,
                    may_lose_tail=is_short or cell.says_size,
                )
            )

    def _said(self, step: OrderStep, cell: Cell, alike: int) -> str:
        if cell.is_whole:
            return f"· whole strip, {alike} strips" if alike > 1 else "· whole strip"
        if cell.slanted:
            return f"· {self._say.cut_size(*cell.slanted)}"
        if cell.says_size or step.source != NEW_FABRIC:
            narrow, long = (cell.high, cell.wide) if step.what == "strip" else (cell.wide, cell.high)
            return f"· {self._say.cut_size(narrow, long)}"
        if step.what == "row" and cell.wide < cell.high:
            return f"· {self._say.cut_size(cell.wide, cell.high)}"
        return f"· {self._say.cut(cell.wide)}"

    def _left_over(self, area: Polygon, size: tuple[float, float], *, is_strip: bool = False) -> None:
        """What falls off: named as on the shelf when it is worth keeping, else hatched only."""
        self._items.append(Area(area, CUT_AWAY, CUT_AWAY_HATCH, _REST, what="leftover"))
        name = self._name_of(size)
        if not name or max(size) < _NAMED_REST:
            return
        wide, long = (size[1], size[0]) if is_strip else size
        bare = self._say.bare
        said = f"· {bare.margin(wide)}\u202f×\u202f{self._say.margin(long)}"
        self._items.append(
            Label(
                name,
                area,
                6.5,
                _SMALLEST_PT,
                tail=said,
                color=INK,
                what="leftover",
                no_room=NoRoom.DROP,
                may_lose_tail=True,
            )
        )

    def _name_of(self, size: tuple[float, float]) -> str:
        """The name a leftover of that size has on the shelf, without the fabric's; "" when it has none."""
        for one in self._order.leftovers:
            if any(abs(one.wide - a) < 1e-3 and abs(one.long - b) < 1e-3 for a, b in (size, size[::-1])):
                return one.name.removeprefix(f"{self._cut.fabric} ")
        return ""

    # --- on hand ---------------------------------------------------------------------------------------

    def _on_hand(self, source: str, steps: Sequence[OrderStep], top: float) -> None:
        """A piece of fabric on hand, opened, with its rows and strips where they lie."""
        first = next((step for step in steps if step.act is not Act.WASH), steps[0])
        long, stack = first.before
        across, along = first.left if first.act is Act.STRAIGHTEN else first.before
        self._items.append(Area(_rect(0.0, top, long, stack), CUT_AWAY, CUT_AWAY_HATCH, _EDGE, what="leftover"))
        x, y = long - across, top - (stack - along)
        for step in steps:
            if step.act is Act.STRAIGHTEN:
                self._items.append(Badge((long / 2, top), str(step.number), (0.0, 7.5)))
            elif step.act is Act.COLUMN:
                room = _rect(x + step.left[0], y, step.before[0] - step.left[0], along)
                self._left_over(room, (step.before[0] - step.left[0], along))
                self._items.append(Badge((x + step.left[0], y), str(step.number), (0.0, 7.5)))
                across = step.left[0]
            elif step.act is Act.ACROSS:
                y = self._rows_in_place(step, steps, (x, y))
        rest = top - stack - y
        if -rest > 1e-6:
            self._left_over(_rect(x, y, across, -rest), (across, self._last_left(steps)))
        self._items += [
            Text((0.0, top), source, 7.0, anchor="start", color=SOFT, shift=(0.0, 5.0), may_shorten=True),
            Dimension((0.0, top - stack), (long, top - stack), (self._say.near(long),), away=-DIMENSION_OFF, size=7),
            Dimension((0.0, top - stack), (0.0, top), (self._say.near(stack),), away=18.0, size=7),
        ]
        self._right = max(self._right, long)
        self._bottom = min(self._bottom, top - stack)

    def _rows_in_place(self, across: OrderStep, steps: Sequence[OrderStep], at: tuple[float, float]) -> float:
        """The rows or strips of one setting where they lie, in the order they are cut off."""
        x, y = at
        own = _cut_up_after(across, steps)
        self._items.append(Badge((x, y - across.wide * len(across.numbers) / 2), str(across.number), (-9.0, 0.0)))
        bands = {
            number: (step, cells) for step in own for number, cells in zip(step.numbers, self._bands(step), strict=True)
        }
        for number in across.numbers:
            step, cells = bands[number]
            self._open_band(step, cells, x, y)
            if step.act is not Act.LABEL:
                self._items.append(Badge((x + across.long, y - step.wide / 2), str(step.number), (-9.0, 0.0)))
            y -= step.wide
        return y

    def _last_left(self, steps: Sequence[OrderStep]) -> float:
        return next((step.left[1] for step in reversed(steps) if step.act is Act.ACROSS), 0.0)

    def _precut(self, source: str, steps: Sequence[OrderStep], top: float) -> None:
        """Precut strips from the shelf, one under the other."""
        self._items.append(
            Text((0.0, top), source, 7.0, anchor="start", color=SOFT, shift=(0.0, 5.0), may_shorten=True)
        )
        opened = [(step, cells) for step in steps if step.act in _OPEN for cells in self._bands(step)]
        left = 3.0
        self._bottom = min(self._bottom, self._opened(together(opened), left, top))
        self._right = max(self._right, left + max((step.long for step in steps), default=0.0))


def _cut_up_after(across: OrderStep, steps: Sequence[OrderStep]) -> list[OrderStep]:
    """The steps that cut up what one setting gave."""
    own: list[OrderStep] = []
    for step in steps:
        if step.number > across.number:
            if step.act not in _OPEN:
                break
            own.append(step)
    return own


def _on_the_slant(area: Polygon, size: tuple[float, float]) -> Line:
    """The outline of a piece turned 45 degrees in the middle of its window."""
    x = sum(point[0] for point in area) / 4
    y = sum(point[1] for point in area) / 4
    a, b = size[0] / 2 * _HALF_TURN, size[1] / 2 * _HALF_TURN
    corners = ((x + a - b, y + a + b), (x - a - b, y - a + b), (x - a + b, y - a - b), (x + a + b, y + a - b))
    return Line((*corners, corners[0]), _SLANT, what="slanted")


def _rect(x: float, top: float, wide: float, high: float) -> Polygon:
    return ((x, top - high), (x + wide, top - high), (x + wide, top), (x, top))


def _away(polygon: Polygon) -> Area:
    return Area(polygon, CUT_AWAY, CUT_AWAY_HATCH, _REST, what="straightening")
