"""The binding at a corner, in three small pictures: stop, fold away, fold back."""

from __future__ import annotations

from math import cos, radians, sin, tan
from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker
from stitchflip.pictures.drawing import RAW_EDGE, color_of
from stitchflip.pictures.ink import FIRM, HALO, INK, STRONG, THREAD, pale
from stitchflip.pictures.model import (
    Area,
    Badge,
    Dash,
    Dimension,
    Figure,
    Line,
    Margins,
    Pen,
    Primitive,
    Text,
)

if TYPE_CHECKING:
    from stitchflip.finishing.model import BindingCorner
    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.planning.model import Plan

_PIECE = "#efe7d8"
_EDGE = Pen(INK, FIRM)
_FOLD = Pen(INK, FIRM, Dash.FOLD)
_STITCHED = Pen(THREAD, STRONG, Dash.SEAM, casing=HALO)
_ARROW = Pen(INK, 1.0, casing=HALO)
_ARM = 2.2
"""Length of the edges shown, in folded binding widths."""


def binding_corner(plan: Plan, corner: BindingCorner) -> Figure:
    """How a corner of this angle is bound.

    Args:
        plan: The plan, for the binding's width, seam and fabric.
        corner: The corner.

    Returns:
        Three pictures side by side in one figure; edge 1 comes from the left, edge 2 leaves at the corner.
    """
    drawn = _Corner(plan, corner)
    items: list[Primitive] = []
    spread = drawn.spread
    for place, panel in enumerate((drawn.stop, drawn.fold_away, drawn.fold_back)):
        items += _moved(panel(), place * spread)
    low, high = drawn.low, (drawn.high[0] + 2 * spread, drawn.high[1])
    words = ("stop and lock", "fold away", "fold back, sew on")
    for place, said in enumerate(words):
        at = (drawn.low[0] + place * spread, drawn.high[1])
        items.append(Badge(at, str(place + 1), (6.0, 9.0)))
        items.append(Text(at, said, 7.5, anchor="start", shift=(14.0, 9.0)))
    return Figure(
        tuple(items),
        low,
        high,
        f"Binding a corner of {corner.angle:.0f}°",
        _described(plan, corner),
        Margins(top=19.0, bottom=9.0),
        5.0,
    )


class _Corner:
    """The corner at the origin, edge 1 along the top from the left, the piece below it."""

    def __init__(self, plan: Plan, corner: BindingCorner) -> None:
        self._say = Speaker(plan.project.units)
        self._corner = corner
        self._seam = plan.binding.seam
        self._folded = plan.binding.cut / 2
        self._fabric = color_of(plan, plan.binding.fabric)
        turn = radians(180 + corner.angle)
        self._second: Point = (cos(turn), sin(turn))
        self._arm = _ARM * self._folded
        self._stop: Point = (-corner.stop_before, -self._seam)
        inside = (cos(turn + radians(90)), sin(turn + radians(90)))
        # The inside of edge 2 lies to the right of the way along it.
        self._inside: Point = (-inside[0], -inside[1])
        reach = self._arm + self._folded
        xs = [-self._arm, self._second[0] * self._arm, self._folded * 0.9, -self._second[0] * self._arm * 0.75]
        self.low: Point = (min(xs) - 0.15, -max(reach * 0.8, -self._second[1] * self._arm))
        self.high: Point = (max(xs) + 0.35, max(self._folded * 0.4, -self._second[1] * self._arm * 0.8))

    @property
    def spread(self) -> float:
        """From one picture to the next."""
        return self.high[0] - self.low[0] + 0.4 * self._folded

    def _piece(self) -> list[Primitive]:
        arm, second = self._arm, self._second
        far = (second[0] * arm, second[1] * arm)
        corner: Polygon = ((-arm, 0.0), (-arm, far[1]), (far[0], far[1]), (0.0, 0.0))
        return [
            Area(corner, _PIECE, what="piece"),
            Line(((0.0, 0.0), (-arm, 0.0)), RAW_EDGE, what="edge 1"),
            Line((far, (0.0, 0.0)), RAW_EDGE, what="edge 2"),
        ]

    def _band(self, along: Point, inside: Point, start: float, end: float) -> Area:
        """Folded binding beside an edge through the corner."""
        (ux, uy), (vx, vy) = along, inside
        width = self._folded
        points = tuple(
            (ux * d + vx * o, uy * d + vy * o) for d, o in ((start, 0.0), (start, width), (end, width), (end, 0.0))
        )
        return Area(points, pale(self._fabric, 0.25), pen=_EDGE, what="binding")

    def _first_seam(self) -> list[Primitive]:
        return [Line(((-self._arm, -self._seam), self._stop), _STITCHED, what="seam")]

    def stop(self) -> list[Primitive]:
        """Sewn along edge 1 up to the stop."""
        band = self._band((1.0, 0.0), (0.0, -1.0), -self._arm, self._folded * 0.75)
        x, _ = self._stop
        return [
            *self._piece(),
            band,
            *self._first_seam(),
            Line(((x, -self._seam - 0.12), (x, -self._seam + 0.12)), Pen(INK, STRONG), what="stop"),
            Dimension((x, 0.0), (0.0, 0.0), (self._say.near(-x),), away=9.0),
        ]

    def fold_away(self) -> list[Primitive]:
        """The strip folded off the piece, its raw edge in one line with edge 2."""
        sx, sy = self._second
        away = self._band((-sx, -sy), self._mirrored_inside(), 0.0, self._arm * 0.7)
        arm = self._arm
        first: Polygon = ((-arm, -self._folded), self._fold_foot(), (0.0, 0.0), (-arm, 0.0))
        return [
            *self._piece(),
            Area(first, pale(self._fabric, 0.25), pen=_EDGE, what="binding"),
            *self._first_seam(),
            self._away_from_fold(away),
            Line(((0.0, 0.0), self._fold_foot()), _FOLD, what="fold"),
        ]

    def fold_back(self) -> list[Primitive]:
        """Folded back along edge 2, the fold level with the corner; sewing starts at the fold."""
        sx, sy = self._second
        band = self._band((sx, sy), self._inside, 0.0, self._arm)
        arm = self._arm
        first: Polygon = ((-arm, -self._folded), self._fold_foot(), (0.0, 0.0), (-arm, 0.0))
        begin = (self._inside[0] * self._seam, self._inside[1] * self._seam)
        end = (begin[0] + sx * arm * 0.8, begin[1] + sy * arm * 0.8)
        return [
            *self._piece(),
            Area(first, pale(self._fabric, 0.25), pen=_EDGE, what="binding"),
            *self._first_seam(),
            band,
            Line(((0.0, 0.0), (self._inside[0] * self._folded, self._inside[1] * self._folded)), _FOLD, what="fold"),
            Line((begin, end), _STITCHED, what="seam"),
        ]

    def _mirrored_inside(self) -> Point:
        """Where the folded strip's width lies: the inside of edge 1 mirrored in the fold."""
        half = radians(180 + self._corner.angle / 2)
        ax, ay = cos(half), sin(half)
        dot = -ay
        return (2 * dot * ax, 2 * dot * ay + 1.0)

    def _fold_foot(self) -> Point:
        """Where the slanted fold leaves the strip's folded edge."""
        return (-self._folded / tan(radians(self._corner.angle / 2)), -self._folded)

    def _away_from_fold(self, band: Area) -> Area:
        """The folded-away strip, ending at the slanted fold."""
        points = list(band.points)
        points[1] = self._fold_foot()
        return Area(tuple(points), pale(self._fabric, 0.55), pen=_EDGE, what="binding")


def _moved(items: list[Primitive], dx: float) -> list[Primitive]:
    """The primitives of one picture moved to their place in the row."""
    from dataclasses import replace

    def to(point: Point) -> Point:
        return (point[0] + dx, point[1])

    out: list[Primitive] = []
    for item in items:
        match item:
            case Area() | Line():
                out.append(replace(item, points=tuple(to(point) for point in item.points)))
            case Dimension():
                out.append(replace(item, start=to(item.start), end=to(item.end)))
            case Text() | Badge():
                out.append(replace(item, at=to(item.at)))
            case _:
                out.append(item)
    return out


def _described(plan: Plan, corner: BindingCorner) -> str:
    say = Speaker(plan.project.units)
    return (
        f"A corner of {corner.angle:.0f}° in three pictures. First: sew along the first edge, "
        f"{say.near(plan.binding.seam)} from it, and stop {say.near(corner.stop_before)} before the corner. "
        f"Second: fold the strip away from the piece, its raw edge in one line with the next edge. "
        f"Third: fold it back along the next edge, the fold level with the corner, and sew on from the fold."
    )
