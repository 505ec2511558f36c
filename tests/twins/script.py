"""What the second methods are told: a first piece, strips in order, and the outlines round them.

A script is a build as a maker would dictate it: "start with this piece, flip a strip of this cut width on the
side that faces there, then ...". It knows nothing of the kernel, and neither do the programs that play it.

Frame: inches, origin at the center mark, x across, y up. Polygons are counter-clockwise and not closed.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, hypot, pi, sin

Point = tuple[float, float]
Polygon = tuple[Point, ...]
Side = tuple[Point, float]
"""(outward unit normal, distance of the raw edge from the center mark along it)."""


@dataclass(frozen=True)
class Strip:
    """One flip: on the side that faces `normal`, or along the line `at` (a chord) when that is given."""

    normal: Point
    width: float
    at: float | None = None
    """Seam line of a chord; None for a strip sewn level with the raw edge of its side."""
    interval: tuple[float, float] | None = None
    """Where it reaches along its seam when it was cut too short: from the foot of the mark, along the sewing."""


@dataclass(frozen=True)
class Script:
    """A build in the flat frame."""

    sides: tuple[Side, ...]
    """Raw edges of the first piece; a side that is missing is open (a band runs on for ever)."""
    strips: tuple[Strip, ...]
    seam: float
    """Effective seam allowance."""
    trim: Polygon
    inner: Polygon
    """The binding's seam line."""
    cover: Polygon
    stitch: float = 0.1
    counts_as_crossed: float = 0.125


def sides_of(polygon: Polygon) -> tuple[Side, ...]:
    """The raw edges of a convex counter-clockwise polygon."""
    found = []
    for (x0, y0), (x1, y1) in zip(polygon, polygon[1:] + polygon[:1], strict=True):
        length = hypot(x1 - x0, y1 - y0)
        normal = ((y1 - y0) / length, (x0 - x1) / length)
        found.append((normal, normal[0] * x0 + normal[1] * y0))
    return tuple(found)


def meet(one: Side, other: Side) -> Point:
    """Where two raw edges (as endless lines) meet."""
    ((a, b), r), ((c, d), s) = one, other
    det = a * d - b * c
    return ((r * d - s * b) / det, (a * s - c * r) / det)


def moved_out(polygon: Polygon, by: float) -> Polygon:
    """Every edge moved outward, corners mitred; negative moves inward (no edge may vanish)."""
    moved = [(normal, r + by) for normal, r in sides_of(polygon)]
    return tuple(meet(one, other) for one, other in zip(moved[-1:] + moved[:-1], moved, strict=True))


def stretched(polygon: Polygon, by_x: float, by_y: float) -> Polygon:
    """Each place taken further from the center mark by a factor per direction."""
    return tuple((x * by_x, y * by_y) for x, y in polygon)


def turned(polygon: Polygon, degrees: float) -> Polygon:
    """The polygon turned counter-clockwise round the center mark."""
    c, s = cos(degrees * pi / 180), sin(degrees * pi / 180)
    return tuple((x * c - y * s, x * s + y * c) for x, y in polygon)


def rectangle(wide: float, high: float, center: Point = (0.0, 0.0)) -> Polygon:
    """A straight rectangle round a middle."""
    x, y = center
    return (
        (x - wide / 2, y - high / 2),
        (x + wide / 2, y - high / 2),
        (x + wide / 2, y + high / 2),
        (x - wide / 2, y + high / 2),
    )


def regular(sides: int, across_flats: float, degrees: float = 0.0) -> Polygon:
    """A regular polygon by the distance of its sides from the middle, one side at the bottom unless turned."""
    corner = across_flats / 2 / cos(pi / sides)
    first = -pi / 2 - pi / sides
    points = tuple(
        (corner * cos(first + 2 * pi * k / sides), corner * sin(first + 2 * pi * k / sides)) for k in range(sides)
    )
    return turned(points, degrees)


def oval(wide: float, high: float, places: int = 720) -> Polygon:
    """A circle or an ellipse round the center mark, by so many places on it."""
    steps = (2 * pi * k / places for k in range(places))
    return tuple((wide / 2 * cos(step), high / 2 * sin(step)) for step in steps)


def rounded(wide: float, high: float, radius: float, places: int = 90) -> Polygon:
    """A rectangle with quarter circles for corners, each by so many places."""
    found = []
    for quarter, (sx, sy) in enumerate(((1, 1), (-1, 1), (-1, -1), (1, -1))):
        x, y = sx * (wide / 2 - radius), sy * (high / 2 - radius)
        steps = (quarter * pi / 2 + pi / 2 * k / places for k in range(places + 1))
        found += [(x + radius * cos(step), y + radius * sin(step)) for step in steps]
    return tuple(found)


def area_of(polygon: Polygon) -> float:
    """Area by the surveyor's formula."""
    pairs = zip(polygon, polygon[1:] + polygon[:1], strict=True)
    return sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs) / 2
