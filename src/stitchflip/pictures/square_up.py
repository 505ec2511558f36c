"""Squaring up: how far each edge lies from the center mark, and what stays beyond the points."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.finishing.words import once_finished
from stitchflip.lengths import Speaker
from stitchflip.pictures.drawing import (
    BASE_LINE,
    DIMENSION_MARGIN,
    QUIET,
    TRIM_LINE,
    base_rectangle,
    bounds,
    listed,
    natural_width,
    numbered_sides,
    outline_lines,
    pale_patches,
    size_dimensions,
    taped,
    wide_and_long,
)
from stitchflip.pictures.hatches import CUT_AWAY_HATCH
from stitchflip.pictures.ink import BATTING, CUT_AWAY, SOFT, THIN
from stitchflip.pictures.model import (
    Area,
    Begin,
    CenterMark,
    Dash,
    Dimension,
    Figure,
    Line,
    Margins,
    Pen,
    Primitive,
    Text,
)
from stitchflip.piecing.geometry import clip_all, half_planes

if TYPE_CHECKING:
    from stitchflip.finishing.model import SideNumber
    from stitchflip.piecing.model import CenterPoint, Point
    from stitchflip.planning.model import Plan

_SQUARE_TO = Pen(SOFT, THIN, Dash.HIDDEN)
_INSET = 0.12
"""How far from a corner a distance is drawn, part of the edge."""


def squaring(plan: Plan) -> Figure:
    """The trim line over the sewn piece, with its distances from the center mark.

    Args:
        plan: The plan.

    Returns:
        The figure, in taped inches.
    """
    build = plan.build
    base = taped(build, base_rectangle(plan))
    fabric = clip_all(taped(build, build.outline), half_planes(base))
    items: list[Primitive] = [
        Area(base, BATTING, pen=BASE_LINE, what="base"),
        Area(fabric, CUT_AWAY, CUT_AWAY_HATCH, BASE_LINE, what="cut away"),
    ]
    for piece in build.pieces:
        for polygon in piece.visible:
            items += pale_patches(plan, piece, polygon, QUIET, is_taped=True)
    items.append(outline_lines(build.trim_taped, TRIM_LINE, "trim"))
    items += numbered_sides(plan, build.trim_taped, 0.25)
    items += _distances(plan)
    is_curve = all(side.is_curve for side in plan.square_up.sides)
    items += [_margin(plan, point) for point in build.points if point.points_at_edge and not is_curve]
    items.append(CenterMark())
    low, high = bounds(base)
    (_, bottom), (right, _) = bounds(build.trim_taped)
    items += size_dimensions(plan, build.trim_taped, "squared up", (high[0] - right, bottom - low[1]))
    notes = [] if is_curve else _notes(plan)
    items += [
        Text(low, said, 7.5, anchor="start", shift=(0.0, -DIMENSION_MARGIN - 7.0 - 9.5 * row))
        for row, said in enumerate(notes)
    ]
    return Figure(
        tuple(items),
        low,
        high,
        f"{plan.project.name}, squaring up",
        _described(plan),
        Margins(bottom=DIMENSION_MARGIN + (9.5 * len(notes) + 4.0 if notes else 0.0), right=DIMENSION_MARGIN),
        natural_width(low, high),
    )


def _distances(plan: Plan) -> list[Primitive]:
    """From the center mark to each edge, square to it; slanted edges alike are measured once."""
    say = Speaker(plan.project.units)
    items: list[Primitive] = []
    aside: dict[str, list[SideNumber]] = {}
    for side in plan.square_up.sides:
        ends = _edge(plan, side)
        tx, ty = -side.normal[1], side.normal[0]
        along = sorted(tx * x + ty * y for x, y in ends)
        if plan.square_up.curve or along[0] < 0 < along[1]:
            foot = (side.normal[0] * side.distance, side.normal[1] * side.distance)
            items.append(Dimension((0.0, 0.0), foot, (say.near(side.distance),), begin=Begin.MARK))
        else:
            aside.setdefault(say.near(side.distance), []).append(side)
    for said, sides in aside.items():
        items += _beside_the_mark(plan, said, sides)
    return items


def _beside_the_mark(plan: Plan, said: str, sides: list[SideNumber]) -> list[Primitive]:
    """An edge the mark does not face: measured from a line through the mark, parallel to the edge."""
    side = sides[0]
    nx, ny = side.normal
    tx, ty = -ny, nx
    ends = sorted((tx * x + ty * y for x, y in _edge(plan, side)), key=abs)
    along = ends[0] + (ends[1] - ends[0]) * _INSET
    start = (tx * along, ty * along)
    end = (start[0] + nx * side.distance, start[1] + ny * side.distance)
    alike = f", {len(sides)} edges alike" if len(sides) > 1 else ""
    return [
        Line(
            ((-tx * along * 0.35, -ty * along * 0.35), (tx * along * 1.08, ty * along * 1.08)),
            _SQUARE_TO,
            what="parallel",
        ),
        Dimension(start, end, (f"{said}{alike}", said)),
    ]


def _edge(plan: Plan, side: SideNumber) -> tuple[Point, Point]:
    """The two corners of an edge of the squared-up piece."""
    nx, ny = side.normal
    on = sorted(plan.square_up.corners, key=lambda point: abs(nx * point[0] + ny * point[1] - side.distance))
    return on[0], on[1]


def _margin(plan: Plan, point: CenterPoint) -> Primitive:
    """What lies beyond a point of the center, to the trim line and when bound."""
    say = Speaker(plan.project.units)
    x, y = taped(plan.build, (point.at,))[0]
    nx, ny, reach = min(half_planes(plan.square_up.corners), key=lambda one: one[2] - one[0] * x - one[1] * y)
    to_edge = reach - nx * x - ny * y
    end = (x + nx * to_edge, y + ny * to_edge)
    return Dimension((x, y), end, (say.margin(point.to_trim_edge),), size=6.5)


def _notes(plan: Plan) -> list[str]:
    """What stays beyond the points, in a line or two under the drawing."""
    say = Speaker(plan.project.units)
    groups: dict[tuple[str, str], list[str]] = {}
    for point in plan.square_up.points:
        groups.setdefault((say.margin(point.to_edge), say.margin(point.shown)), []).append(point.name)
    if len(groups) == 1:
        ((edge, shows),) = groups
        each = "beyond each point" if len(plan.square_up.points) > 1 else f"beyond the {plan.square_up.points[0].name}"
        return [f"{each}: {edge} to the edge", f"{shows} shows when bound"]
    return [f"beyond the {listed(names)}: {edge} to the edge, {shows} shows" for (edge, shows), names in groups.items()]


def _described(plan: Plan) -> str:
    say = Speaker(plan.project.units)
    sides: dict[str, list[str]] = {}
    for side in plan.square_up.sides:
        sides.setdefault(say.near(side.distance), []).append(side.name)
    distances = "; ".join(f"{', '.join(names)} {said}" for said, names in sides.items())
    after = once_finished(plan.project)
    points = "; ".join(
        f"{point.name} {say.margin(point.to_edge)} to the edge, {say.margin(point.shown)} shows {after}"
        for point in plan.square_up.points
    )
    size = say.size(*wide_and_long(plan.project, plan.square_up.wide, plan.square_up.high))
    beyond = f" Beyond the points: {points}." if points else ""
    return f"Squaring up to {size} wide × long. From the center mark to the edges: {distances}.{beyond}"
