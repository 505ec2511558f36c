"""One strip: what lies there already, the new strip opened, its seam, and where its raw edge must be."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.lengths import Speaker
from stitchflip.pictures.drawing import (
    NEW_SEAM,
    NUMBERED,
    PALE,
    RAW_EDGE,
    TRIM_LATER,
    as_cut,
    base_area,
    base_rectangle,
    bounds,
    is_numbered_from_first,
    letters_of,
    listed,
    outline_lines,
    pale_patches,
    patches,
    piece_name,
    raw_edges,
    reading_angles,
    seen_after,
)
from stitchflip.pictures.ink import HAIR, HALO, INK, SOFT, THIN
from stitchflip.pictures.model import (
    Area,
    Begin,
    CenterMark,
    Dash,
    Dimension,
    Figure,
    Inset,
    Knot,
    Label,
    Line,
    Margins,
    NoRoom,
    Pen,
    Primitive,
    Text,
)
from stitchflip.piecing.geometry import box, clip_all, extent, half_planes, holds
from stitchflip.piecing.model import EndClass
from stitchflip.project.model import Way

if TYPE_CHECKING:
    from stitchflip.piecing.model import Point, Polygon, SewnPiece
    from stitchflip.planning.model import Plan

_FOOT = 47.0
"""Margin under the drawing for the strip's name, its cut size and the small whole, points."""
_KEY_WIDE = 52.0
_KEY_HIGH = 41.0
_KEY_SEWN = "#cfc6b6"
_KEY_PEN = Pen(SOFT, HAIR)
_WIDEST_SHAPE = 1.7
"""Width to height of the drawing, at most."""
_TALLEST_SHAPE = 1.15
"""Height to width, at most."""
_ARROW = Pen(INK, 1.0, casing=HALO)


def step(plan: Plan, step: int) -> Figure:
    """One sewing step, cropped to where the hands are.

    Args:
        plan: The plan.
        step: Number of the strip in sewing order; 0 for laying the first piece.

    Returns:
        The figure, in flat inches; numbers written on it are taped.

    Raises:
        BuildError: If there is no such step.
    """
    pieces = plan.build.pieces
    if not 0 <= step < len(pieces):
        raise BuildError(
            what=f"there is no step {step}",
            fix=f"Ask for a step from 0 to {len(pieces) - 1}.",
            code="build.no-such-step",
        )
    new = pieces[step]
    low, high = _window(plan, new)
    items: list[Primitive] = [
        base_area(plan),
        *(
            area
            for piece, polygon in seen_after(pieces, step)
            if piece.step != step
            for area in pale_patches(plan, piece, polygon, PALE)
        ),
        outline_lines(plan.build.trim, TRIM_LATER, "trim"),
        *patches(plan, new, as_cut(new)),
        *(Line(edge, RAW_EDGE, what="raw edge", step=step) for edge in raw_edges(new)),
        *_seam(new),
        *_direction(plan, new),
        *_from_center_mark(plan, new, low, high),
        Label(
            piece_name(plan.build, new),
            as_cut(new),
            9.0,
            6.5,
            reading_angles(new),
            bold=True,
            tail=letters_of(plan, new),
            what="number",
            step=new.step,
            no_room=NoRoom.DROP,
        ),
        *_foot(plan, new, low),
        Inset(_whole(plan, step), _KEY_WIDE, _KEY_HIGH),
    ]
    return Figure(
        tuple(items),
        low,
        high,
        f"{plan.project.name}, {_spoken_name(plan, new)}",
        _described(plan, new),
        Margins(5, _FOOT, 5, 5),
        2.6,
        is_cropped=True,
    )


FREE_LINES = frozenset({Way.WONKY, Way.FOUNDATION, Way.FOLDED_CORNERS})
"""Ways whose seams follow lines of their own: one distance from the center mark would not find them."""


def _seam(new: SewnPiece) -> list[Primitive]:
    """The stitches of this step, and a knot at each end to lock."""
    seam = new.seam
    if seam is None:
        return []
    items: list[Primitive] = [Line((seam.start.at, seam.end.at), NEW_SEAM, what="seam", step=new.step)]
    items += [Knot(end.at) for end in (seam.start, seam.end) if end.kind is EndClass.LOOSE]
    return items


def _direction(plan: Plan, new: SewnPiece) -> list[Primitive]:
    """A dot and an arrow where the way of sewing matters: rows, and seams with an end to lock."""
    seam = new.seam
    if seam is None:
        return []
    matters = plan.project.building.way is Way.ROWS or EndClass.LOOSE in (seam.start.kind, seam.end.kind)
    if not matters:
        return []
    (x0, y0), (x1, y1) = seam.start.at, seam.end.at
    nx, ny = seam.normal
    inward = min(0.5 * plan.build.seam_allowance + 0.1, 0.3 * (new.cut_width - plan.build.seam_allowance))
    run = tuple((x0 + (x1 - x0) * share + nx * inward, y0 + (y1 - y0) * share + ny * inward) for share in (0.1, 0.36))
    return [Line(run, _ARROW, arrow=True, what="direction", step=new.step)]


def _from_center_mark(plan: Plan, new: SewnPiece, low: Point, high: Point) -> list[Primitive]:
    """The center mark if it is in the picture, and the distance to the new raw edge, square to the strip."""
    items: list[Primitive] = []
    if _holds(low, high, (0.0, 0.0)):
        items.append(CenterMark())
    if new.seam is None or plan.project.building.way in FREE_LINES:
        return items
    nx, ny = new.normal
    tx, ty = -ny, nx
    ends = [tx * x + ty * y for x, y in clip_all(as_cut(new), half_planes(box(low, high)))]
    if not ends:
        return items
    least, most = min(ends), max(ends)
    inset = 0.2 * (most - least)
    along = 0.0 if least + inset <= 0.0 <= most - inset else (least + most) / 2
    start, end = ((nx * at + tx * along, ny * at + ty * along) for at in (0.0, new.raw_edge_at))
    if abs(along) > 1e-6 and _holds(low, high, start):
        items.append(Line(((0.0, 0.0), start), Pen(SOFT, THIN, Dash.HIDDEN), what="square to the strip"))
    is_broken = not _holds(low, high, start)
    if is_broken:
        start = _entry(start, end, low, high)
    size = Speaker(plan.project.units).near(abs(new.raw_edge_taped))
    far = "short of" if new.raw_edge_taped < 0 else "from"
    begin = Begin.BREAK if is_broken else Begin.MARK if abs(along) < 1e-6 else Begin.TICK
    items.append(Dimension(start, end, (f"{size} {far} the center mark", f"{size} {far} mark", size), begin=begin))
    return items


def _foot(plan: Plan, new: SewnPiece, low: Point) -> list[Primitive]:
    """Name, fabric and cut size under the drawing."""
    name = piece_name(plan.build, new)
    head = f"{name.capitalize()} {letters_of(plan, new)}"
    if new.side.startswith(NUMBERED):
        head += f" · {new.side}"
    lines: list[Primitive] = [
        Text(low, head, 9.0, anchor="start", bold=True, shift=(0.0, -14.0)),
        Text(
            low,
            ", ".join(dict.fromkeys(one.fabric for one in new.sections)) or new.fabric,
            7.5,
            anchor="start",
            shift=(0.0, -24.5),
            may_shorten=True,
        ),
    ]
    if new.cut_length > 0 and (new.step or plan.build.first_is_strip):
        lines.append(Text(low, _cut_size(plan, new), 7.5, anchor="start", shift=(0.0, -34.0)))
    return lines


def _cut_size(plan: Plan, new: SewnPiece) -> str:
    """The size a piece is cut; of a strip of several parts the size when they are joined."""
    say = Speaker(plan.project.units)
    if new.square_cut > 0:
        return f"cut {say.cut_size(new.square_cut, new.square_cut)}"
    if new.sections:
        long = sum(section.cut_length for section in new.sections) - 2 * plan.numbers.seam * (len(new.sections) - 1)
        return f"{say.cut_size(new.cut_width, long)} as joined"
    return f"cut {say.cut_size(new.cut_width, new.cut_length)}"


def _whole(plan: Plan, step: int) -> Figure:
    """The whole piece very small: what is sewn, and in black where this strip goes."""
    build = plan.build
    items: list[Primitive] = [Area(build.trim, HALO, what="key")]
    for piece in build.pieces:
        fill = INK if piece.step == step else _KEY_SEWN if piece.step < step else HALO
        items += [Area(polygon, fill, pen=_KEY_PEN, what="key patch", step=piece.step) for polygon in piece.visible]
    items.append(outline_lines(build.trim, Pen(INK, THIN), "key"))
    low, high = bounds(build.trim)
    return Figure(tuple(items), low, high, "Where this strip goes", "", Margins(0, 0, 0, 0), 0.6)


# --- the window ------------------------------------------------------------------------------------------


def _window(plan: Plan, new: SewnPiece) -> tuple[Point, Point]:
    """What to show: the strip with room round it, the center mark when it is near, no odd shapes."""
    strip = as_cut(new)
    if new.cut_length <= 0:
        strip = clip_all(strip, half_planes(base_rectangle(plan))) or strip
    (x0, y0), (x1, y1) = bounds(strip)
    room = max(0.8, 0.1 * max(x1 - x0, y1 - y0))
    x0, y0, x1, y1 = x0 - room, y0 - room, x1 + room, y1 + room
    near = (min(x0, -0.9), min(y0, -0.9), max(x1, 0.9), max(y1, 0.9))
    if max(near[2] - near[0], near[3] - near[1]) <= 1.3 * max(x1 - x0, y1 - y0):
        x0, y0, x1, y1 = near
    x0, x1 = _stretched(x0, x1, (y1 - y0) / _TALLEST_SHAPE)
    y0, y1 = _stretched(y0, y1, (x1 - x0) / _WIDEST_SHAPE)
    return (x0, y0), (x1, y1)


def _stretched(low: float, high: float, least: float) -> tuple[float, float]:
    """An interval made at least so long, mostly toward the center mark."""
    missing = least - (high - low)
    if missing <= 0:
        return low, high
    share = 0.5 if low < 0 < high else 0.85 if low >= 0 else 0.15
    return low - missing * share, high + missing * (1 - share)


def _holds(low: Point, high: Point, point: Point) -> bool:
    return low[0] <= point[0] <= high[0] and low[1] <= point[1] <= high[1]


def _entry(start: Point, end: Point, low: Point, high: Point) -> Point:
    """Where the way from outside to `end` comes into the picture, a little inside it."""
    inside: Polygon = box(low, high)
    share = 0.0
    for nx, ny, r in half_planes(inside):
        a, b = nx * start[0] + ny * start[1] - r, nx * end[0] + ny * end[1] - r
        if a > 0 > b:
            share = max(share, a / (a - b))
    share = min(share + 0.03, 0.9)
    return (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)


# --- words -----------------------------------------------------------------------------------------------


def _spoken_name(plan: Plan, new: SewnPiece) -> str:
    name = piece_name(plan.build, new)
    if is_numbered_from_first(plan.build):
        return f"patch {name}"
    if new.square_cut > 0:
        return f"square {name}"
    return f"strip {name}" if new.step else f"the {name}"


def _described(plan: Plan, new: SewnPiece) -> str:
    say = Speaker(plan.project.units)
    name = _spoken_name(plan, new)
    names = list(dict.fromkeys(section.fabric for section in new.sections)) or [new.fabric]
    fabric = listed([f"{one} ({plan.letter_of(one)})" for one in names])
    if new.seam is None:
        low, high = extent(new.opened, *new.normal)
        place = "at the center mark" if holds(new.opened, (0.0, 0.0)) else "where the marks say"
        return f"{name.capitalize()} of {fabric}, {say.near(high - low)} as cut, lies on the base {place}."
    loose = [end for end in (new.seam.start, new.seam.end) if end.kind is EndClass.LOOSE]
    lock = {0: "No end to lock.", 1: "One end to lock.", 2: "Both ends to lock."}[len(loose)]
    side = _place_in_words(new)
    return (
        f"{name.capitalize()} of {fabric}, {_cut_size(plan, new)} wide × long, sewn{side} and opened. "
        f"{_edge_in_words(plan, new)} {lock}"
    )


def _place_in_words(new: SewnPiece) -> str:
    """Where a strip is sewn, to follow "sewn"."""
    if new.side.startswith("patch "):
        return " along its line"
    if new.square_cut > 0:
        return f" over the {new.side}"
    return f" on the {new.side} side" if new.side else ""


def _edge_in_words(plan: Plan, new: SewnPiece) -> str:
    """Where the raw edge lies; of a seam along a line of its own, where the line begins and ends."""
    say = Speaker(plan.project.units)
    if plan.project.building.way in FREE_LINES and new.seam is not None:
        (x0, y0), (x1, y1) = new.seam.start.at, new.seam.end.at
        places = [
            f"{say.near(abs(x))} {'right' if x >= 0 else 'left'} and {say.near(abs(y))} {'up' if y >= 0 else 'down'}"
            for x, y in ((x0, y0), (x1, y1))
        ]
        return f"Its seam runs from {places[0]} to {places[1]}, counted from the center mark."
    if new.raw_edge_taped < 0:
        return f"Its raw edge lies {say.near(-new.raw_edge_taped)} short of the center mark."
    return f"From the center mark to its raw edge {say.near(new.raw_edge_taped)}."
