"""What holds each end of a seam: crossed by a later seam, caught in the binding, or loose.

An end that nothing holds opens in the wash; a backstitch where something holds makes a lump. So every end is
judged, and only the loose ones are named.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections import defaultdict
from typing import TYPE_CHECKING

from stitchflip.piecing.geometry import TOLERANCE, HalfPlane, half_planes, holds
from stitchflip.piecing.model import EndClass, Seam, SeamEnd
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.piecing.model import Point, Polygon


@dataclass(frozen=True, slots=True)
class SeamLine:
    """The kept part of one seam: where the strip as cut really carries it."""

    step: int
    normal: Point
    at: float
    low: float
    """Ends along the seam, from the foot of the center mark; low is where sewing starts."""
    high: float

    def point(self, along: float) -> Point:
        """The place at `along` on the seam."""
        nx, ny = self.normal
        return (nx * self.at - ny * along, ny * self.at + nx * along)


@dataclass(frozen=True, slots=True)
class EndRules:
    """The measures by which an end is judged, inches."""

    seam: float
    stitch: float
    counts_as_crossed: float
    trim: Polygon
    inner: Polygon
    """Binding's seam line."""


class SeamMap:
    """All seams of a build, indexed so that the few that can hold an end are found at once."""

    def __init__(self, lines: Sequence[SeamLine], rules: EndRules) -> None:
        """Index the seams by direction and, within a direction, by their distance from the center mark."""
        self._rules = rules
        self._inner = half_planes(rules.inner)
        self._trim = half_planes(rules.trim)
        groups: defaultdict[tuple[float, float], list[SeamLine]] = defaultdict(list)
        for line in lines:
            groups[round(line.normal[0], 7), round(line.normal[1], 7)].append(line)
        self._groups: list[tuple[float, float, list[float], list[SeamLine]]] = []
        for (mx, my), group in groups.items():
            group.sort(key=lambda line: line.at)
            self._groups.append((mx, my, [line.at for line in group], group))

    def judge(self, line: SeamLine, later: Sequence[Polygon], drawn_inside: Sequence[HalfPlane] = ()) -> Seam:
        """The seam with both its ends classed.

        Args:
            line: The seam.
            later: Kept polygons of later steps, asked only when an end is loose.
            drawn_inside: Outline to which the seam is drawn: as far as the strip is cut for it.
        """
        drawn = seam_inside(line, drawn_inside) or (line.point(line.low), line.point(line.high))
        start = self._end(line, line.low, 1.0, drawn[0], later)
        return Seam(line.normal, line.at, start, self._end(line, line.high, -1.0, drawn[1], later))

    def _end(self, line: SeamLine, along: float, inward: float, drawn: Point, later: Sequence[Polygon]) -> SeamEnd:
        point = line.point(along)
        step = self._crossing(line, along, point)
        if step is not None:
            return SeamEnd(drawn, EndClass.CROSSED, step)
        if self._is_caught(line, along, inward):
            return SeamEnd(drawn, EndClass.CAUGHT)
        return SeamEnd(drawn, EndClass.LOOSE, None, any(holds(polygon, point, TOLERANCE * 10) for polygon in later))

    def _crossing(self, line: SeamLine, along: float, end: Point) -> int | None:
        """The earliest later step whose kept seam holds this end."""
        near = self._rules.seam + self._rules.counts_as_crossed + TOLERANCE
        nx, ny = line.normal
        best: int | None = None
        for mx, my, places, group in self._groups:
            cross = nx * my - ny * mx
            if -1e-6 < cross < 1e-6:
                continue
            depth = mx * end[0] + my * end[1]
            for index in range(bisect_left(places, depth - near), bisect_right(places, depth + near)):
                other = group[index]
                if other.step <= line.step or (best is not None and other.step >= best):
                    continue
                if self._meets(line, along, other, cross):
                    best = other.step
        return best

    def _meets(self, line: SeamLine, along: float, other: SeamLine, cross: float) -> bool:
        """True when `other` crosses `line` a stitch or more from every end involved, inside the trim."""
        stitch = self._rules.stitch - TOLERANCE
        cosine = line.normal[0] * other.normal[0] + line.normal[1] * other.normal[1]
        here = (other.at - line.at * cosine) / cross  # place along `line` where the two lines meet
        there = (other.at * cosine - line.at) / cross
        if not (line.low - TOLERANCE <= here <= line.high + TOLERANCE) or abs(here - along) < stitch:
            return False
        if there - other.low < stitch or other.high - there < stitch:
            return False
        x, y = line.point(here)
        return all(px * x + py * y <= r + TOLERANCE for px, py, r in self._trim)

    def _is_caught(self, line: SeamLine, along: float, inward: float) -> bool:
        """True when the seam passes the binding's seam line and ends a stitch or more beyond it."""
        span = _span_inside(line, self._inner, -TOLERANCE)
        if span is None or span[0] >= span[1]:
            return True  # the whole seam lies under the binding
        low, high = span
        beyond = low - along if inward > 0 else along - high
        return beyond >= self._rules.stitch - TOLERANCE


def seam_interval(opened: Polygon, normal: Point, at: float) -> tuple[float, float] | None:
    """Where the seam edge of an opened strip lies along its seam; None when nothing of it is left."""
    nx, ny = normal
    along = [nx * y - ny * x for x, y in opened if nx * x + ny * y <= at + 10 * TOLERANCE]
    return (min(along), max(along)) if len(along) > 1 and max(along) - min(along) > TOLERANCE else None


def seam_inside(line: SeamLine, planes: Sequence[HalfPlane]) -> tuple[Point, Point] | None:
    """The part of a seam inside an outline, as its two places; None when it lies outside."""
    span = _span_inside(line, planes, TOLERANCE)
    if span is None or span[1] - span[0] <= TOLERANCE:
        return None
    return line.point(span[0]), line.point(span[1])


def _span_inside(line: SeamLine, planes: Sequence[HalfPlane], least: float) -> tuple[float, float] | None:
    """Both ends along a seam of its part inside an outline, the second before the first when there is none.

    Args:
        line: The seam.
        planes: The outline.
        least: A seam along an edge counts as inside when it lies this far in, inches; else the answer is None.
    """
    nx, ny = line.normal
    low, high = line.low, line.high
    for px, py, r in planes:
        slope = -px * ny + py * nx
        rest = r - (px * nx + py * ny) * line.at
        if abs(slope) < 1e-9:
            if rest < least:
                return None
        elif slope > 0:
            high = min(high, rest / slope)
        else:
            low = max(low, rest / slope)
    return low, high
