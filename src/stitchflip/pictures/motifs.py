"""Fussy cutting to scale: the print's motifs on the fabric, the windows cut round them, and what is left between."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.motifs import Window, places
from stitchflip.lengths import Speaker, Unit
from stitchflip.pictures.drawing import DIMENSION_MARGIN, DIMENSION_OFF, counted
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

    from stitchflip.cutting.motifs import Box, MotifPlan, WindowPlace
    from stitchflip.piecing.model import Polygon

_FABRIC_PAPER = 0.72
_WINDOW_PAPER = 0.3
_EDGE = Pen(INK, FIRM)
_CUT = Pen(INK, THIN)
_MOTIF = Pen(SOFT, THIN)
_SEEN = Pen(INK, HAIR, Dash.SEAM)
_REST = Pen(SOFT, HAIR)
_SELVAGE = 0.5
_ARM = 0.35
"""Half a motif mark, inches of fabric."""
_PER_INCH = 0.14
_WIDEST_IN = 6.8
_MOST_MARKS = 600
_POINT = Window(1e-3, 1e-3, 0.0)
_TOLERANCE = 1e-6
_TOLD = 12
"""So many windows are told one by one in words."""


def motif_plan(plan: MotifPlan, unit: Unit, fabric: str = "", color: str = "#c9b48a") -> Figure:
    """Windows round motifs on a length of fabric, to scale.

    Args:
        plan: where they are cut.
        unit: the maker's unit.
        fabric: its name.
        color: its color.

    Returns:
        The figure, in inches of fabric: the end that is cut first at the bottom, selvages at both sides, a mark on
        every motif, windows numbered in the order of the hand, their seams inside, cuts from edge to edge, leftovers.
    """
    say = Speaker(unit)
    items: list[Primitive] = [
        Area(_rect(0, 0, plan.wide, plan.long), pale(color, _FABRIC_PAPER), pen=_EDGE, what="fabric"),
        *_selvages(plan),
        *_leftovers(plan, say),
        *_marks(plan),
        *_windows(plan, say, pale(color, _WINDOW_PAPER)),
        *_cuts(plan),
        *_measures(plan, say),
    ]
    title = f"Fussy cutting {fabric}".strip()
    return Figure(
        tuple(items),
        (-_SELVAGE, 0.0),
        (plan.wide + _SELVAGE, plan.long),
        title,
        described(plan, unit, fabric),
        Margins(left=34.0, bottom=DIMENSION_MARGIN, right=10.0, top=14.0),
        round(min(_WIDEST_IN, 0.7 + plan.wide * _PER_INCH), 2),
    )


def described(plan: MotifPlan, unit: Unit, fabric: str = "") -> str:
    """The same in words, for who cannot see it and for the list beside it.

    Args:
        plan: where windows are cut.
        unit: the maker's unit.
        fabric: its name.
    """
    say = Speaker(unit)
    window = plan.window
    turned = ", on point on the print" if window.on_point else ""
    head = (
        f"{f'{fabric}: ' if fabric else ''}{counted(len(plan.windows), 'window')} cut "
        f"{say.cut_size(window.wide, window.long)}{turned}, each with a motif in its middle, on fabric "
        f"{say.size(plan.wide, plan.long)} (wide × long)."
    )
    parts = [head]
    if plan.is_example and plan.windows:
        parts.append("Where the print begins was not known: one place is drawn; find the first motif, then count on.")
    parts += [f"Window {one.number}: {_from_first(one, say)}." for one in plan.windows[1:_TOLD]]
    if len(plan.windows) > _TOLD:
        parts.append(f"And {len(plan.windows) - _TOLD} more.")
    kept = plan.leftovers()
    if kept:
        parts.append(f"Left between: {', '.join(_said(box, say) for box in kept[:_TOLD])}.")
    return " ".join(parts)


def _from_first(one: WindowPlace, say: Speaker) -> str:
    """Where a window lies, seen from the first."""
    way = "right" if one.across_in > 0 else "left"
    parts = [f"{say.near(abs(one.across_in))} to the {way}"] if abs(one.across_in) > _TOLERANCE else []
    parts += [f"{say.near(one.along_in)} on"] if one.along_in > _TOLERANCE else []
    return f"{' and '.join(parts)} from window 1"


def _selvages(plan: MotifPlan) -> Iterator[Primitive]:
    for left in (-_SELVAGE, plan.wide):
        yield Area(_rect(left, 0, _SELVAGE, plan.long), PAPER, pen=_REST, what="selvage")
    yield Text((0.0, plan.long), "selvages", 6.5, anchor="start", color=SOFT, shift=(0.0, 4.5))
    yield Text((plan.wide, plan.long), "cut first at the bottom", 6.5, anchor="end", color=SOFT, shift=(0.0, 4.5))


def _leftovers(plan: MotifPlan, say: Speaker) -> Iterator[Primitive]:
    """Rectangles worth keeping, named where their words fit."""
    for box in plan.leftovers():
        area = _rect(box.left, box.low, box.wide, box.long)
        yield Area(area, CUT_AWAY, CUT_AWAY_HATCH, _REST, what="leftover")
        yield Label(f"leftover {_said(box, say)}", area, 6.5, angles=(0.0, 90.0), what="leftover", no_room=NoRoom.DROP)


def _marks(plan: MotifPlan) -> Iterator[Primitive]:
    """A small cross on every motif of the fabric, window or not."""
    every = places(plan.repeat, _POINT, plan.wide, plan.long, plan.start)
    for place in every[:_MOST_MARKS]:
        for dx, dy in ((_ARM, 0.0), (0.0, _ARM)):
            ends = ((place.x - dx, place.y - dy), (place.x + dx, place.y + dy))
            yield Line(ends, _MOTIF, what="motif")


def _windows(plan: MotifPlan, say: Speaker, fill: str) -> Iterator[Primitive]:
    window = plan.window
    seen = Window(window.wide - 2 * window.seam, window.long - 2 * window.seam, 0.0, window.on_point)
    for one in plan.windows:
        outline = window.corners(one.x, one.y)
        inside = seen.corners(one.x, one.y)
        yield Area(outline, fill, pen=_EDGE, what="window")
        yield Line((*inside, inside[0]), _SEEN, what="seam")
        yield Badge((one.x, one.y), str(one.number))
        if one.number == 1:
            size = say.cut_size(window.wide, window.long)
            yield Label(f"cut {size}", inside, 7.0, what="window", no_room=NoRoom.LEAD)


def _cuts(plan: MotifPlan) -> Iterator[Primitive]:
    """Cuts from edge to edge of what they cut."""
    for cut in plan.apart.cuts:
        piece = cut.piece
        across = cut.way == "across"
        start = (piece.left, cut.at) if across else (cut.at, piece.low)
        end = (piece.right, cut.at) if across else (cut.at, piece.high)
        yield Line((start, end), _CUT, what="cut")


def _measures(plan: MotifPlan, say: Speaker) -> Iterator[Primitive]:
    """Width, length, and one repeat each way where two windows show it."""
    usable, long = say.near(plan.wide), say.near(plan.long)
    yield Dimension((0.0, 0.0), (plan.wide, 0.0), (f"{usable} usable", usable), away=-DIMENSION_OFF, size=7)
    yield Dimension((-_SELVAGE, 0.0), (-_SELVAGE, plan.long), (f"{long} of length", long), away=18.0, size=7)
    if not plan.windows:
        return
    first = plan.windows[0]
    for one in plan.windows[1:]:
        if abs(one.across_in) < _TOLERANCE and one.repeats:
            said = f"repeat {say.near(one.along_in / one.repeats)}"
            if one.repeats > 1:
                said = f"{one.repeats} repeats, {say.near(one.along_in)}"
            yield Dimension((first.x, first.y), (first.x, one.y), (said, say.near(one.along_in)), size=6.5)
            break
    for one in plan.windows[1:]:
        if abs(one.along_in) < _TOLERANCE and one.across_in > _TOLERANCE:
            said = say.near(one.across_in)
            yield Dimension((first.x, first.y), (one.x, first.y), (f"{said} across", said), size=6.5)
            break


def _said(box: Box, say: Speaker) -> str:
    """Wide × long of a leftover, never more than there is."""
    return f"{say.bare.margin(box.wide)}\u202f×\u202f{say.margin(box.long)}"


def _rect(x: float, y: float, wide: float, high: float) -> Polygon:
    return ((x, y), (x + wide, y), (x + wide, y + high), (x, y + high))
