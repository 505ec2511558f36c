"""One join of two blocks in section: layers, strips, gap and stitching, as if cut through and seen from the side.

Widths and the thickness of the batting are to scale; fabric is drawn thicker than it is, or nobody would see it.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.lengths import Speaker
from stitchflip.pictures.drawing import color_of
from stitchflip.pictures.ink import BATTING, HAIR, INK, SOFT, STRONG, THREAD
from stitchflip.pictures.model import Area, Badge, Dash, Dimension, Figure, Line, Margins, Pen, Primitive, Text
from stitchflip.piecing.geometry import box
from stitchflip.project.model import Filler, Fold, Join, Joined, Through

if TYPE_CHECKING:
    from stitchflip.finishing.quilt_model import JoinCheck, QuiltPlan
    from stitchflip.planning.model import Plan

_THICK = 0.024
"""A layer of fabric as drawn, inches."""
_THIN_BATTING = 0.07
"""A thinner batting is drawn as thick as this, inches."""
_ARM = 0.62
"""How much of each block is seen beyond its seam, inches."""
_STITCHES = Pen(THREAD, STRONG, Dash.SEAM)
_LAYER = Pen(INK, HAIR)
_SOFT_EDGE = Pen(SOFT, HAIR)
_FILLER_HATCH = 3
_NAMES_LEFT, _NAMES_RIGHT = 44.0, 62.0


def join_section(plan: Plan) -> Figure:
    """How two blocks are joined, in section, with what shows, the gap, and how far the cover passes.

    Args:
        plan: A plan of joined blocks.

    Returns:
        The figure, in inches of the real thing; made to be printed larger than life.

    Raises:
        BuildError: If nothing is joined.
    """
    quilt, joined = plan.quilt, plan.project.joined
    if quilt is None or joined is None:
        raise BuildError(
            what="there is no join to draw: the piece is not made of joined blocks",
            fix="Ask for it only where the project has [joined].",
            code="build.nothing-joined",
        )
    section = _Section(plan, quilt, joined)
    items = section.plain() if joined.join is Join.PLAIN_SEAM else section.covered()
    low, high = section.low, section.high
    if joined.join is Join.FLAT_AND_FOLDED and joined.fold is Fold.IN_FRONT:
        items, low, high = section.turned_over(items)
    items += section.names()
    return Figure(
        tuple(items),
        low,
        high,
        f"{plan.project.name}, two blocks joined, in section",
        _described(plan, quilt.join, joined),
        Margins(left=_NAMES_LEFT, right=_NAMES_RIGHT, top=section.above, bottom=section.below),
        6.5,
    )


class _Section:
    """The two blocks with the seam lines left and right of the middle; front up."""

    def __init__(self, plan: Plan, quilt: QuiltPlan, joined: Joined) -> None:
        self._say = Speaker(plan.project.units)
        self._join, self._joined = quilt.join, joined
        self._is_plain = joined.join is Join.PLAIN_SEAM
        seam = quilt.join.seam
        self._half = 0.0 if self._is_plain else quilt.join.gap / 2 + seam
        """From the middle to each seam line."""
        self._raw = self._half - seam
        self._high = max(quilt.join.loft, _THIN_BATTING)
        last = plan.build.pieces[-1]
        self._top = color_of(plan, last.fabric)
        self._has_backing = plan.project.base.through is Through.BACKING_AND_BATTING
        self._backing = color_of(plan, plan.backing.fabric)
        strips = quilt.strips
        self._front = color_of(plan, next((one.fabric for one in strips if one.front), last.fabric))
        self._behind = color_of(plan, next((one.fabric for one in strips if not one.front), last.fabric))
        reach = self._half + _ARM + max(0.0, quilt.join.passes)
        self.low = (-reach, -5 * _THICK)
        self.high = (reach, self._high + 3.5 * _THICK)

    @property
    def above(self) -> float:
        """Margin above the drawing, points."""
        return 16.0 if self._is_plain else 40.0

    @property
    def below(self) -> float:
        """Margin below it, points."""
        return 20.0 if self._is_plain else 40.0

    # --- layers --------------------------------------------------------------------------------------------

    def _band(self, x0: float, x1: float, layer: float, color: str, what: str) -> Area:
        """One layer of fabric; layers count upward from the batting's top, downward from its foot below zero."""
        low = self._high + layer * _THICK if layer >= 0 else (layer) * _THICK
        return Area(box((min(x0, x1), low), (max(x0, x1), low + _THICK)), color, pen=_LAYER, what=what)

    def _blocks(self, batting_to: float) -> list[Primitive]:
        """Batting, top and backing of both blocks; the batting ends so far from the middle."""
        far = self.high[0]
        items: list[Primitive] = []
        for sign in (-1.0, 1.0):
            start, end = sign * far, sign * batting_to
            rectangle = box((min(start, end), 0.0), (max(start, end), self._high))
            items.append(Area(rectangle, BATTING, pen=_SOFT_EDGE, what="batting"))
            if not self._is_plain:
                items.append(self._band(start, sign * self._raw, 0, self._top, "top"))
                if self._has_backing:
                    items.append(self._band(start, sign * self._raw, -1, self._backing, "backing"))
        return items

    def _filler(self) -> list[Primitive]:
        wide = self._join.filler
        if wide <= 0:
            return []
        rectangle = box((-wide / 2, 0.0), (wide / 2, self._high))
        return [Area(rectangle, BATTING, _FILLER_HATCH, _SOFT_EDGE, "strip of batting", what="filler")]

    def _flat(self, layer: float, color: str, what: str) -> list[Primitive]:
        """A strip sewn to both blocks: its two allowances under it, its middle over them."""
        down = 1 if layer > 0 else -1
        return [
            self._band(-self._half, -self._raw, layer, color, what),
            self._band(self._raw, self._half, layer, color, what),
            self._band(-self._half, self._half, layer + down, color, what),
        ]

    def covered(self) -> list[Primitive]:
        """Two strips between the blocks, the cover behind."""
        reaches_raw = self._joined.batting_reaches is Filler.RAW_EDGE
        items = self._blocks(self._raw if reaches_raw else self._half)
        items += self._filler()
        items += self._flat(1, self._front_color(), "flat strip")
        end = self._half + self._join.passes
        under = -2 if self._has_backing else -1
        color = self._cover_color()
        if self._joined.join is Join.FLAT_AND_FOLDED:
            for layer in (0, -1):
                items.append(self._band(-self._half, -self._raw, under + layer * 0.5, color, "folded strip"))
            items += [self._band(-self._half, end, under - 1 - layer * 0.5, color, "folded strip") for layer in (0, 1)]
        else:
            items.append(self._band(-self._half, -self._raw, under, color, "strip behind"))
            items.append(self._band(end - self._join.seam, end, under, color, "strip behind"))
            items.append(self._band(-self._half, end, under - 1, color, "strip behind"))
        return [*items, *self._stitching(end), *self._measures(end)]

    def _front_color(self) -> str:
        in_front = self._joined.join is Join.FLAT_AND_FOLDED and self._joined.fold is Fold.IN_FRONT
        return self._behind if in_front else self._front

    def _cover_color(self) -> str:
        in_front = self._joined.join is Join.FLAT_AND_FOLDED and self._joined.fold is Fold.IN_FRONT
        return self._front if in_front else self._behind

    def _stitching(self, end: float) -> list[Primitive]:
        """Seam 1 through everything at one block, seam 2 at the other, 3 where the cover is sewn down."""
        top, foot = self.high[1], self.low[1]
        close = end - min(0.06, max(self._join.passes / 2, 0.0))
        far_foot = -_THICK if self._has_backing else 0.0
        lines = (
            ((-self._half, top), (-self._half, foot)),
            ((self._half, top), (self._half, far_foot)),
            ((close, foot), (close, self._high * 0.4)),
        )
        far, cover = ("3", "2") if self._joined.join is Join.COVERED else ("2", "3")
        return [
            *(Line(line, _STITCHES, what="stitching") for line in lines),
            Badge((-self._half, foot), "1", (0.0, -8.0)),
            Badge((self._half, top), far, (12.0, 6.0)),
            Badge((close, foot), cover, (15.0, -5.0)),
        ]

    def _measures(self, end: float) -> list[Primitive]:
        say, join = self._say, self._join
        shows_to = end if join.shows > 2 * self._half + 1e-6 else self._half
        items: list[Primitive] = [
            Dimension(
                (-self._raw, self.high[1]),
                (self._raw, self.high[1]),
                (f"gap {say.near(join.gap)}",) if join.gap >= 0 else (f"overlaps by {say.near(-join.gap)}",),
                away=9.0,
            )
        ]
        shows = (f"shows {say.near(join.shows)}",)
        if shows_to > self._half:
            items.append(Dimension((-self._half, self.low[1]), (end, self.low[1]), shows, away=-26.0))
        else:
            items.append(Dimension((-self._half, self.high[1]), (self._half, self.high[1]), shows, away=29.0))
        passes = f"passes {say.margin(join.passes)}" if join.passes >= 0 else f"{say.shortage(-join.passes)} short"
        items.append(Dimension((self._half, self.low[1]), (end, self.low[1]), (passes,), away=-14.0))
        return items

    # --- a plain seam --------------------------------------------------------------------------------------

    def plain(self) -> list[Primitive]:
        """Tops sewn together, allowances pressed open, the batting trimmed back from the seam."""
        seam, far = self._join.seam, self.high[0]
        items = self._blocks(seam)
        for sign in (-1.0, 1.0):
            items.append(self._band(sign * far, 0.0, 0, self._top, "top"))
            allowance = box((min(sign * seam, 0.0), self._high - _THICK), (max(sign * seam, 0.0), self._high))
            items.append(Area(allowance, self._top, pen=_LAYER, what="allowance"))
        if self._has_backing:
            items.append(self._band(-far, far, -1, self._backing, "backing"))
        items += [
            Line(((0.0, self.high[1]), (0.0, self._high - 2 * _THICK)), _STITCHES, what="stitching"),
            Badge((0.0, self.high[1]), "1", (0.0, 8.0)),
            Dimension((0.0, self.low[1]), (seam, self.low[1]), (f"seam {self._say.width(seam)}",), away=-12.0),
        ]
        return items

    # --- front and back ------------------------------------------------------------------------------------

    def turned_over(self, items: list[Primitive]) -> tuple[list[Primitive], tuple[float, float], tuple[float, float]]:
        """The same join with the cover in front: everything mirrored up and down."""
        top = self._high

        def over(point: tuple[float, float]) -> tuple[float, float]:
            return point[0], top - point[1]

        out: list[Primitive] = []
        for item in items:
            match item:
                case Area():
                    points = tuple(over(point) for point in reversed(item.points))
                    what = {"top": "backing", "backing": "top"}.get(item.what, item.what)
                    fill = {"top": self._backing, "backing": self._top}.get(item.what, item.fill)
                    out.append(replace(item, points=points, what=what, fill=fill))
                case Line():
                    out.append(replace(item, points=tuple(over(point) for point in item.points)))
                case Dimension():
                    out.append(replace(item, start=over(item.start), end=over(item.end), away=-item.away))
                case Badge():
                    out.append(replace(item, at=over(item.at), shift=(item.shift[0], -item.shift[1])))
                case _:
                    out.append(item)
        low, high = (self.low[0], top - self.high[1]), (self.high[0], top - self.low[1])
        self.low, self.high = low, high
        return out, low, high

    def names(self) -> list[Primitive]:
        """What the layers are, at both ends of the drawing."""
        left, right = self.low[0], self.high[0]
        in_front = self._joined.join is Join.FLAT_AND_FOLDED and self._joined.fold is Fold.IN_FRONT
        items: list[Primitive] = [
            self._name(left, self._high, "top", 4.0, "end"),
            self._name(left, self._high / 2, "batting", 0.0, "end"),
        ]
        if self._has_backing:
            items.append(self._name(left, 0.0, "backing", -4.0, "end"))
        if self._is_plain:
            return items
        flat, cover = ("flat strip", "folded strip")
        if self._joined.join is Join.COVERED:
            flat, cover = "strip in front", "strip behind"
        above, below = (cover, flat) if in_front else (flat, cover)
        return [
            *items,
            self._name(right, self.high[1], above, -2.0, "start"),
            self._name(right, self.low[1], below, 2.0, "start"),
        ]

    @staticmethod
    def _name(x: float, y: float, said: str, up: float, anchor: str) -> Text:
        return Text((x, y), said, 7.0, anchor=anchor, color=SOFT, shift=(-5.0 if anchor == "end" else 5.0, up))


def _described(plan: Plan, join: JoinCheck, joined: Joined) -> str:
    say = Speaker(plan.project.units)
    if joined.join is Join.PLAIN_SEAM:
        return (
            f"Two blocks in section, joined by a plain seam of {say.width(join.seam)}: the allowances are pressed open "
            "and the batting ends before them."
        )
    gap = f"gap of {say.near(join.gap)}" if join.gap >= 0 else f"overlap of {say.near(-join.gap)}"
    cover = f"passes the far stitching by {say.margin(join.passes)}"
    if join.passes < 0:
        cover = f"ends {say.shortage(-join.passes)} short of the far stitching"
    filler = f" A strip of batting {say.width(join.filler)} wide fills the gap." if join.filler > 0 else ""
    return (
        f"Two blocks in section, joined by {join.way}: {say.near(join.shows)} shows between them on the front, "
        f"with a {gap} between their raw edges; the cover {cover}.{filler}"
    )
