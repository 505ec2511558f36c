"""Plane geometry of convex pieces: the few operations the kernel needs, in plain floats.

Frame: inches, origin at the base's center mark, x across, y up, face up. A polygon is a tuple of corners,
counter-clockwise, not closed; an empty tuple is the empty set. A half-plane is `(nx, ny, r)`: all points with
n . p <= r, n a unit vector. Written by hand because a plan clips thousands of four-cornered pieces, for which
a general polygon library spends its time on conversion.
"""

from __future__ import annotations

from math import cos, hypot, radians, sin
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from stitchflip.piecing.model import Point, Polygon

TOLERANCE = 1e-6
"""Two places closer than this are the same place; inches."""

_NO_CRUMB = 0.1
"""An area above this (square inches) counts whatever its outline: no outline here is 100,000 in long."""

HalfPlane = tuple[float, float, float]


def clip(polygon: Polygon, nx: float, ny: float, r: float) -> Polygon:
    """The part of a convex polygon with n . p <= r.

    A corner within the tolerance of the line counts as inside, so that touching cuts nothing off.

    Example:
        >>> clip(((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)), 1.0, 0.0, 1.0)
        ((0.0, 0.0), (1.0, 0.0), (1.0, 2.0), (0.0, 2.0))
    """
    over = [nx * x + ny * y - r for x, y in polygon]
    if not over or max(over) <= TOLERANCE:
        return polygon
    if min(over) >= -TOLERANCE:
        return ()
    out: list[Point] = []
    last, last_over = polygon[-1], over[-1]
    for point, by in zip(polygon, over, strict=True):
        if by > TOLERANCE:
            if last_over < -TOLERANCE:
                out.append(_between(last, point, last_over / (last_over - by)))
        else:
            if by < -TOLERANCE and last_over > TOLERANCE:
                out.append(_between(last, point, last_over / (last_over - by)))
            out.append(point)
        last, last_over = point, by
    return tuple(out) if len(out) > 2 else ()


def _between(one: Point, other: Point, share: float) -> Point:
    return (one[0] + share * (other[0] - one[0]), one[1] + share * (other[1] - one[1]))


def clip_all(polygon: Polygon, planes: Iterable[HalfPlane]) -> Polygon:
    """The part of a convex polygon inside every half-plane."""
    for nx, ny, r in planes:
        limit = r + TOLERANCE
        for x, y in polygon:
            if nx * x + ny * y > limit:
                polygon = clip(polygon, nx, ny, r)
                break
    return polygon


def area(polygon: Polygon) -> float:
    """Area of a counter-clockwise polygon, square inches."""
    total = 0.0
    if polygon:
        x0, y0 = polygon[-1]
        for x1, y1 in polygon:
            total += x0 * y1 - x1 * y0
            x0, y0 = x1, y1
    return total / 2


def perimeter(polygon: Polygon) -> float:
    """Length round a polygon, inches."""
    return sum(hypot(x1 - x0, y1 - y0) for (x0, y0), (x1, y1) in edges(polygon))


def counts(polygon: Polygon) -> bool:
    """True when a polygon is more than a crumb of rounding: area above the tolerance times its perimeter."""
    if not polygon:
        return False
    covered = area(polygon)
    return covered > _NO_CRUMB or covered > TOLERANCE * perimeter(polygon)


def edges(polygon: Polygon) -> Iterable[tuple[Point, Point]]:
    """The edges in order, each as (from, to)."""
    return zip(polygon, polygon[1:] + polygon[:1], strict=True)


def half_planes(polygon: Polygon) -> tuple[HalfPlane, ...]:
    """Half-planes of a counter-clockwise convex polygon, one for each edge, in the order of the edges."""
    planes = []
    for (x0, y0), (x1, y1) in edges(polygon):
        length = hypot(x1 - x0, y1 - y0)
        if length > TOLERANCE:
            nx, ny = (y1 - y0) / length, (x0 - x1) / length
            planes.append((nx, ny, nx * x0 + ny * y0))
    return tuple(planes)


def extent(polygon: Polygon, tx: float, ty: float) -> tuple[float, float]:
    """Smallest and largest t . p over a polygon that is not empty."""
    along = [tx * x + ty * y for x, y in polygon]
    return min(along), max(along)


def meet(first: HalfPlane, second: HalfPlane) -> Point | None:
    """Where the edges of two half-planes meet; None when they are parallel."""
    (ax, ay, ar), (bx, by, br) = first, second
    det = ax * by - bx * ay
    if abs(det) < 1e-12:
        return None
    return ((ar * by - br * ay) / det, (ax * br - bx * ar) / det)


def moved(polygon: Polygon, by: float) -> Polygon:
    """A convex polygon with every edge moved outward by `by` inches (inward when negative), corners mitred."""
    planes = half_planes(polygon)
    if by <= 0:
        return clip_all(polygon, ((nx, ny, r + by) for nx, ny, r in planes))
    shifted = [(nx, ny, r + by) for nx, ny, r in planes]
    corners = (meet(one, other) for one, other in zip(shifted[-1:] + shifted[:-1], shifted, strict=True))
    return tuple(corner for corner in corners if corner is not None)


def scaled(polygon: Polygon, sx: float, sy: float) -> Polygon:
    """A polygon stretched about the center mark."""
    return tuple((x * sx, y * sy) for x, y in polygon)


def turned(polygon: Polygon, degrees: float) -> Polygon:
    """A polygon turned counter-clockwise about the center mark."""
    c, s = cos(radians(degrees)), sin(radians(degrees))
    return tuple((x * c - y * s, x * s + y * c) for x, y in polygon)


def shifted(polygon: Polygon, dx: float, dy: float) -> Polygon:
    """A polygon moved by (dx, dy)."""
    return tuple((x + dx, y + dy) for x, y in polygon)


def box(low: Point, high: Point) -> Polygon:
    """An upright rectangle."""
    return (low, (high[0], low[1]), high, (low[0], high[1]))


def regular(sides: int, across_flats: float, degrees: float) -> Polygon:
    """A regular polygon by its flats; for odd counts the size is twice the distance from middle to side.

    Args:
        sides: Number of sides, 3 or more.
        across_flats: Twice the distance from the middle to a side, inches.
        degrees: Turn, counter-clockwise; 0 has a side at the bottom.
    """
    radius = across_flats / 2 / cos(radians(180 / sides))
    first = -90 - 180 / sides + degrees
    angles = (radians(first + 360 / sides * k) for k in range(sides))
    return tuple((radius * cos(angle), radius * sin(angle)) for angle in angles)


def holds(polygon: Polygon, point: Point, margin: float = 0.0) -> bool:
    """True when a point lies inside a convex polygon by at least `margin` inches (tolerance apart)."""
    x, y = point
    return bool(polygon) and all(nx * x + ny * y <= r - margin + TOLERANCE for nx, ny, r in half_planes(polygon))


def distance_to(place: Point, start: Point, end: Point) -> float:
    """Distance from a place to the nearest point of a segment."""
    (x, y), (x0, y0) = place, start
    dx, dy = end[0] - x0, end[1] - y0
    squared = dx * dx + dy * dy
    share = max(0.0, min(1.0, ((x - x0) * dx + (y - y0) * dy) / squared)) if squared else 0.0
    return hypot(x - x0 - share * dx, y - y0 - share * dy)


def middle(polygon: Polygon) -> Point:
    """Centroid of a convex polygon with area; the mean corner of a degenerate one."""
    doubled = sx = sy = 0.0
    for (x0, y0), (x1, y1) in edges(polygon):
        cross = x0 * y1 - x1 * y0
        doubled += cross
        sx += (x0 + x1) * cross
        sy += (y0 + y1) * cross
    if abs(doubled) < 1e-12:
        return (sum(x for x, _ in polygon) / len(polygon), sum(y for _, y in polygon) / len(polygon))
    return (sx / (3 * doubled), sy / (3 * doubled))


def largest_circle(polygon: Polygon) -> tuple[Point, float]:
    """Center and radius of the largest circle inside a convex polygon.

    The circle touches three edges (or two parallel ones and a third): of all triples of edges, the one whose
    equidistant point is feasible with the largest radius wins. A patch with a curved edge has dozens of edges, of
    which three matter: there the box round it is asked first, and the edge that cuts most into the circle found is
    added until none does.
    """
    planes = half_planes(polygon)
    if len(planes) <= _FEW_EDGES:
        return _touching_three(planes) or (middle(polygon), 0.0)
    some = [(*way, extent(polygon, *way)[1]) for way in ((0.0, -1.0), (1.0, 0.0), (0.0, 1.0), (-1.0, 0.0))]
    for _ in planes:
        found = _touching_three(some)
        if found is None:
            break
        (x, y), radius = found
        nearest = min(planes, key=lambda plane: plane[2] - plane[0] * x - plane[1] * y)
        if nearest[2] - nearest[0] * x - nearest[1] * y >= radius - TOLERANCE:
            return found
        some.append(nearest)
    return (middle(polygon), 0.0)


_FEW_EDGES = 12
"""So many edges are tried three by three."""


def _touching_three(planes: Sequence[HalfPlane]) -> tuple[Point, float] | None:
    """The largest circle behind some edges, by trying them three by three; None when there is none."""
    best: tuple[Point, float] | None = None
    for i, first in enumerate(planes):
        for j in range(i + 1, len(planes)):
            for k in range(j + 1, len(planes)):
                found = _equidistant(first, planes[j], planes[k])
                if found is None or found[1] <= (best[1] if best else 0.0):
                    continue
                (x, y), radius = found
                if all(nx * x + ny * y + radius <= r + TOLERANCE for nx, ny, r in planes):
                    best = found
    return best


def _equidistant(a: HalfPlane, b: HalfPlane, c: HalfPlane) -> tuple[Point, float] | None:
    """Point at equal depth behind three edges, and the depth; None where no single one exists."""
    # Subtract the equations n . p + depth = r in pairs to lose the depth.
    p1, q1, r1 = a[0] - b[0], a[1] - b[1], a[2] - b[2]
    p2, q2, r2 = a[0] - c[0], a[1] - c[1], a[2] - c[2]
    det = p1 * q2 - p2 * q1
    if abs(det) < 1e-12:
        return None
    x, y = (r1 * q2 - r2 * q1) / det, (p1 * r2 - p2 * r1) / det
    return (x, y), a[2] - a[0] * x - a[1] * y


def outside_parts(polygon: Polygon, planes: Sequence[HalfPlane]) -> list[tuple[int, Polygon]]:
    """A convex polygon minus the region inside all half-planes, as disjoint convex parts.

    Returns:
        Pairs (index of the half-plane that the part lies beyond, part); parts that are crumbs are left out.
    """
    parts = []
    rest = polygon
    for index, (nx, ny, r) in enumerate(planes):
        beyond = clip(rest, -nx, -ny, -r)
        if counts(beyond):
            parts.append((index, beyond))
        rest = clip(rest, nx, ny, r)
        if not rest:
            break
    return parts
