"""The order in which blocks are joined: rows drawn apart, each with its number, then the long seams between them."""

from __future__ import annotations

from itertools import pairwise
from math import cos, radians, sin
from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.pictures.drawing import BETWEEN_PALE, bounds, color_of, counted, natural_width
from stitchflip.pictures.ink import FIRM, INK, pale
from stitchflip.pictures.model import Area, Badge, Dash, Figure, Label, Line, Margins, NoRoom, Pen, Primitive
from stitchflip.pictures.quilt_places import block_cells, block_outline
from stitchflip.piecing.geometry import extent, middle, shifted
from stitchflip.project.model import Joining
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.finishing.quilt_model import QuiltPlan
    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.planning.model import Plan

_APART = 0.34
"""How far the rows are drawn apart, parts of a block."""
_KIND_PAPER = (0.45, 0.72, 0.6, 0.82)
_SEAM = Pen(INK, FIRM, Dash.SEAM)


@dataclass(frozen=True, slots=True)
class _Rows:
    """Blocks in the rows (or columns) that are joined first."""

    across: Point
    """Unit vector along the rows, in the way the numbers run."""
    down: Point
    """Unit vector from one row to the next."""
    levels: tuple[float, ...]
    """Place of each row's middle along `down`, in order."""
    apart: float
    """How far each row is drawn from the one before, beyond its real place."""

    def level(self, polygon: Polygon) -> float:
        """Where a polygon lies among the rows: 1.0 on the second, 0.5 between the first two."""
        x, y = middle(polygon)
        place = x * self.down[0] + y * self.down[1]
        if place <= self.levels[0] or len(self.levels) == 1:
            return 0.0
        for index, (one, other) in enumerate(pairwise(self.levels)):
            if place <= other + 1e-9:
                return index + (place - one) / (other - one)
        return float(len(self.levels) - 1)

    def drawn(self, polygon: Polygon) -> Polygon:
        """A polygon at its place in the drawing."""
        by = (self.level(polygon) - (len(self.levels) - 1) / 2) * self.apart
        return shifted(polygon, self.down[0] * by, self.down[1] * by)

    def is_between(self, polygon: Polygon) -> bool:
        """True for what joins two rows."""
        return abs(self.level(polygon) % 1 - 0.5) < 0.35


def joining(plan: Plan) -> Figure:
    """The blocks with numbers in the order of joining: rows first, then the long seams between them.

    Args:
        plan: A plan of joined blocks.

    Returns:
        The figure, in taped inches from the middle of the quilt, its rows drawn apart.

    Raises:
        BuildError: If nothing is joined.
    """
    quilt = plan.quilt
    if quilt is None:
        raise BuildError(
            what="there is no order of joining to draw: the piece is not made of joined blocks",
            fix="Ask for it only where the project has [joined].",
            code="build.nothing-joined",
        )
    rows = rows_of(plan, quilt)
    items = [*_blocks(plan, quilt, rows), *_around(plan, quilt, rows)]
    items += _long_seams(plan, quilt, rows)
    items += _row_numbers(quilt, rows)
    points = [point for item in items if isinstance(item, Area) for point in item.points]
    low, high = bounds(points)
    return Figure(
        tuple(items),
        low,
        high,
        f"{plan.project.name}, the order of joining",
        _described(plan, quilt, rows),
        Margins(20.0, 20.0, 20.0, 20.0) if abs(rows.across[1]) > 1e-9 else Margins(20.0, 9.0, 20.0, 9.0),
        natural_width(low, high),
    )


def rows_of(plan: Plan, quilt: QuiltPlan) -> _Rows:
    """The rows that are joined first, in the order of their numbers."""
    turn = radians(quilt.blocks[0].turned)
    joined = plan.project.joined
    is_columns = joined is not None and joined.first is Joining.COLUMNS
    across, down = ((cos(turn), sin(turn)), (sin(turn), -cos(turn)))
    if is_columns:
        across, down = down, across
    places = sorted({round(block.middle[0] * down[0] + block.middle[1] * down[1], 3) for block in quilt.blocks})
    levels: list[float] = []
    for place in places:
        if not levels or place - levels[-1] > 0.25 * min(quilt.blocks[0].wide, quilt.blocks[0].high):
            levels.append(place)
    return _Rows(across, down, tuple(levels), _APART * min(quilt.blocks[0].wide, quilt.blocks[0].high))


def _blocks(plan: Plan, quilt: QuiltPlan, rows: _Rows) -> list[Primitive]:
    """Every block, paler or darker by its kind, with the name of its kind where there are several."""
    items: list[Primitive] = []
    for block, cell in zip(quilt.blocks, block_cells(quilt), strict=True):
        own = plan.kinds[block.kind]
        outline = rows.drawn(cell)
        color = pale(color_of(plan, own.build.pieces[-1].fabric), _KIND_PAPER[block.kind % len(_KIND_PAPER)])
        items.append(Area(outline, color, pen=BETWEEN_PALE, what="block", step=block.kind))
        if own.name:
            items.append(Label(own.name, outline, 7.0, 5.5, (0.0, block.turned), what="kind", no_room=NoRoom.DROP))
    return items


def _around(plan: Plan, quilt: QuiltPlan, rows: _Rows) -> list[Primitive]:
    """Short strips within the rows, and setting triangles at their ends."""
    items: list[Primitive] = []
    if quilt.triangles is not None:
        color = pale(color_of(plan, quilt.triangles.fabric), 0.4)
        items += [
            Area(rows.drawn(place), color, pen=BETWEEN_PALE, what="setting triangle")
            for place in quilt.triangles.places
        ]
    for strip in quilt.strips:
        items += [
            Area(rows.drawn(place), color_of(plan, strip.fabric), pen=BETWEEN_PALE, what="joining strip")
            for place in strip.front
            if not rows.is_between(place)
        ]
    return items


def _long_seams(plan: Plan, quilt: QuiltPlan, rows: _Rows) -> list[Primitive]:
    """What joins the rows, numbered after them: a long strip, or the seam itself where no strip is used."""
    items: list[Primitive] = []
    long = sorted(
        (
            (round(rows.level(place), 3), place, strip)
            for strip in quilt.strips
            for place in strip.front
            if rows.is_between(place)
        ),
        key=lambda one: one[0],
    )
    numbers: dict[float, int] = {}
    for level, place, strip in long:
        drawn = rows.drawn(place)
        items.append(Area(drawn, color_of(plan, strip.fabric), pen=BETWEEN_PALE, what="long strip"))
        if level not in numbers:
            numbers[level] = len(rows.levels) + len(numbers) + 1
            items.append(_badge_at_start(rows, drawn, numbers[level], is_seam=True))
    if long:
        return items
    return _bare_seams(quilt, rows)


def _bare_seams(quilt: QuiltPlan, rows: _Rows) -> list[Primitive]:
    """The seams between the rows where no strip lies there."""
    items: list[Primitive] = []
    start, end = extent(tuple(block.middle for block in quilt.blocks), *rows.across)
    reach = quilt.blocks[0].wide / 2
    (ax, ay), (dx, dy) = rows.across, rows.down
    for index, (one, other) in enumerate(pairwise(rows.levels)):
        off = (one + other) / 2 + (index + 0.5 - (len(rows.levels) - 1) / 2) * rows.apart
        line = tuple((ax * along + dx * off, ay * along + dy * off) for along in (start - reach, end + reach))
        items.append(Line(line, _SEAM, what="long seam"))
        items.append(Badge(line[1], str(len(rows.levels) + index + 1), (ax * 9.0, ay * 9.0)))
    return items


def _row_numbers(quilt: QuiltPlan, rows: _Rows) -> list[Primitive]:
    """The number of each row, before its first block."""
    items: list[Primitive] = []
    outlines = [rows.drawn(block_outline(block)) for block in quilt.blocks]
    for index in range(len(rows.levels)):
        own = [
            outline
            for block, outline in zip(quilt.blocks, outlines, strict=True)
            if abs(rows.level(block_outline(block)) - index) < 0.3
        ]
        if own:
            first = min(own, key=lambda outline: extent(outline, *rows.across)[0])
            items.append(_badge_at_start(rows, first, index + 1, is_seam=False))
    return items


def _badge_at_start(rows: _Rows, polygon: Polygon, number: int, *, is_seam: bool) -> Badge:
    """A number at the beginning of a row, or at the end of a long seam."""
    start, end = extent(polygon, *rows.across)
    x, y = middle(polygon)
    along = x * rows.across[0] + y * rows.across[1]
    by = (end if is_seam else start) - along
    sign = 9.0 if is_seam else -9.0
    at = (x + rows.across[0] * by, y + rows.across[1] * by)
    return Badge(at, str(number), (rows.across[0] * sign, rows.across[1] * sign))


def _described(plan: Plan, quilt: QuiltPlan, rows: _Rows) -> str:
    count = len(rows.levels)
    joined = plan.project.joined
    is_columns = joined is not None and joined.first is Joining.COLUMNS
    word = "column" if is_columns else "row"
    last = 2 * count - 1
    between = f", then the {counted(count - 1, 'long seam')} between them, {count + 1} to {last}" if count > 1 else ""
    return (
        f"{counted(len(quilt.blocks), 'block')} in {counted(count, word)}, drawn apart. First each {word} is joined, "
        f"1 to {count}{between}."
    )
