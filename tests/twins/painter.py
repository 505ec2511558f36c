"""The painter's loop: every opened strip is a real polygon, painted over what lies there already.

A second method for the kernel. It is meant to be obvious and slow: each strip is a long rectangle, clipped by
the raw edges of the sides as they stand, and laid on top of the earlier ones. What shows is what is left of a
strip after all later ones were painted. Nothing is skipped, nothing is remembered, nothing is clever.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import pairwise
from math import dist, inf

import shapely
from shapely import maximum_inscribed_circle
from shapely.geometry import LineString
from shapely.geometry import Point as Dot
from shapely.geometry import Polygon as Area
from shapely.geometry.base import BaseGeometry
from shapely.ops import unary_union

from tests.twins.script import Point, Polygon, Script, Side, Strip

TOLERANCE = 1e-6
NUDGE = 1e-4
GRID = 1e-9
"""Places are rounded to this when shapes are cut, so that lines which meet really meet."""


@dataclass
class PaintedEnd:
    """One end of a seam and what holds it: "crossed", "caught" or "loose"."""

    at: Point
    kind: str = "loose"
    crossed_by: int | None = None
    is_hidden: bool = False


@dataclass
class PaintedStrip:
    """The first piece (step 0) or a strip, as painted."""

    step: int
    normal: Point
    width: float
    seam_at: float
    """Seam line from the center mark; minus infinity for the first piece."""
    raw_edge_at: float
    opened: BaseGeometry
    kept: BaseGeometry
    visible: BaseGeometry = field(default_factory=Area)
    shown: BaseGeometry = field(default_factory=Area)
    full: tuple[float, float] = (0.0, 0.0)
    """Where the full strip starts and ends along the seam, in the direction of sewing."""
    needed: tuple[float, float] | None = None
    """The same for what must be there; None when the strip covers nothing wanted."""
    seam: LineString | None = None
    start: PaintedEnd | None = None
    end: PaintedEnd | None = None

    @property
    def full_length(self) -> float:
        """Longest extent of the opened strip along its seam."""
        return self.full[1] - self.full[0]

    @property
    def needed_length(self) -> float:
        """Shortest that still reaches; 0 when nothing is wanted of it."""
        return 0.0 if self.needed is None else self.needed[1] - self.needed[0]

    @property
    def insets(self) -> tuple[float, float]:
        """How far the needed interval stays inside the full one, at the start and at the end of sewing."""
        if self.needed is None:
            return (0.0, 0.0)
        return (self.needed[0] - self.full[0], self.full[1] - self.needed[1])


@dataclass
class Painting:
    """The whole build as painted."""

    script: Script
    pieces: list[PaintedStrip]
    sides: list[Side]
    outline: BaseGeometry
    bare: BaseGeometry
    """Cover outline minus fabric."""
    bare_in_trim: BaseGeometry
    raw_edges: list[tuple[int, LineString]]
    notes: list[tuple[int, str]]

    @property
    def strips(self) -> list[PaintedStrip]:
        """All strips, without the first piece."""
        return self.pieces[1:]


def travel(normal: Point) -> Point:
    """Direction of sewing: the strip's outside to the right of travel."""
    return (-normal[1], normal[0])


def dot(one: Point, other: Point) -> float:
    """Scalar product."""
    return one[0] * other[0] + one[1] * other[1]


def counts(area: BaseGeometry) -> bool:
    """An area counts when it is more than a millionth of an inch all along its edge."""
    return not area.is_empty and bool(area.area > TOLERANCE * area.length)


def slab(normal: Point, low: float, high: float, reach: float) -> Area:
    """A real rectangle: everything between two parallel lines, as long as the table."""
    along = travel(normal)

    def at(u: float, v: float) -> Point:
        return (along[0] * u + normal[0] * v, along[1] * u + normal[1] * v)

    return Area([at(-reach, low), at(-reach, high), at(reach, high), at(reach, low)])


def common(one: BaseGeometry, other: BaseGeometry) -> BaseGeometry:
    """Where both lie."""
    return only_areas(shapely.intersection(one, other, grid_size=GRID))


def without(one: BaseGeometry, other: BaseGeometry) -> BaseGeometry:
    """The first shape where the second does not lie."""
    return only_areas(shapely.difference(one, other, grid_size=GRID))


def together(shapes: list[BaseGeometry]) -> BaseGeometry:
    """All shapes as one."""
    return only_areas(shapely.union_all(shapes, grid_size=GRID))


def only_areas(shape: BaseGeometry) -> BaseGeometry:
    """What of a shape has an area; edges and corners that merely touch are dropped."""
    parts = [part for part in getattr(shape, "geoms", [shape]) if isinstance(part, Area) and not part.is_empty]
    return parts[0] if len(parts) == 1 else shapely.union_all(parts, grid_size=GRID)


def only_lines(shape: BaseGeometry) -> BaseGeometry:
    """What of a shape has a length."""
    parts = [part for part in getattr(shape, "geoms", [shape]) if isinstance(part, LineString) and not part.is_empty]
    return unary_union(parts)


def extent(area: BaseGeometry, direction: Point) -> tuple[float, float]:
    """How far an area reaches along a direction, from the foot of the center mark."""
    places = [dot(direction, (x, y)) for x, y in _corners(area)]
    return (min(places), max(places))


def paint(script: Script) -> Painting:
    """Sew the whole script and look at it."""
    reach = 4 * max(max(abs(x), abs(y)) for x, y in script.cover) + sum(strip.width for strip in script.strips) * 4
    sides = list(script.sides)
    pieces = [_first(script, reach)]
    notes: list[tuple[int, str]] = []
    for step, strip in enumerate(script.strips, start=1):
        sides = _sew(script, strip, step, sides, pieces, notes, reach)
    _look(script, pieces)
    fabric = together([piece.kept for piece in pieces])
    trim, cover = Area(script.trim), Area(script.cover)
    return Painting(
        script=script,
        pieces=pieces,
        sides=sides,
        outline=_inside(sides, reach),
        bare=without(cover, fabric),
        bare_in_trim=without(trim, fabric),
        raw_edges=list(_raw_edges(script, pieces)),
        notes=notes,
    )


def _inside(sides: list[Side], reach: float) -> BaseGeometry:
    area: BaseGeometry = Area([(-reach, -reach), (reach, -reach), (reach, reach), (-reach, reach)])
    for normal, r in sides:
        area = common(area, slab(normal, -4 * reach, r, 4 * reach))
    return area


def _first(script: Script, reach: float) -> PaintedStrip:
    area = _inside(list(script.sides), reach)
    return PaintedStrip(0, (0.0, 1.0), 0.0, -inf, 0.0, area, area)


def _sew(
    script: Script,
    strip: Strip,
    step: int,
    sides: list[Side],
    pieces: list[PaintedStrip],
    notes: list[tuple[int, str]],
    reach: float,
) -> list[Side]:
    """One strip: cut what lies beyond its allowance, lay the strip, open it, trim its ends. New sides come back."""
    a, n, w = script.seam, strip.normal, strip.width
    others = [side for side in sides if dist(side[0], n) > TOLERANCE]
    own = [side for side in sides if dist(side[0], n) <= TOLERANCE]
    d = own[0][1] - a if strip.at is None else strip.at
    before = _inside(sides, reach)
    if extent(before, n)[1] < d + a - TOLERANCE:
        notes.append((step, "scant allowance"))
    keep = slab(n, -4 * reach, d + a, 4 * reach)
    for piece in pieces:
        piece.kept = common(piece.kept, keep)
    if strip.at is not None:
        others = [side for side in others if _has_edge(side, common(before, keep))]
    opened: BaseGeometry = slab(n, d, d + w - a, reach)
    for normal, r in others:
        opened = common(opened, slab(normal, -4 * reach, r, 4 * reach))
    if not counts(opened):
        notes.append((step, "nothing of it"))
        opened = Area()
    elif _is_point(opened, n, d + w - a):
        notes.append((step, "side closes"))
    laid = PaintedStrip(step, n, w, d, d + w - a, opened, opened)
    if counts(opened):
        laid.full = extent(opened, travel(n))
    if strip.interval is not None:
        laid.opened = laid.kept = common(opened, slab(travel(n), *strip.interval, reach))
    pieces.append(laid)
    return [*others, (n, d + w - a)]


def _has_edge(side: Side, area: BaseGeometry) -> bool:
    normal, r = side
    on_it = [point for point in _corners(area) if abs(dot(normal, point) - r) <= 1e-7]
    return len(on_it) >= 2 and max(dist(p, q) for p in on_it for q in on_it) > TOLERANCE


def _is_point(opened: BaseGeometry, normal: Point, outer: float) -> bool:
    """True when the neighbors meet inside the strip, so that its outer edge has no length."""
    at_edge = [point for point in _corners(opened) if dot(normal, point) > outer - TOLERANCE]
    return len(at_edge) < 2 or max(dist(p, q) for p in at_edge for q in at_edge) <= TOLERANCE


def _corners(area: BaseGeometry) -> list[Point]:
    if area.is_empty:
        return []
    if hasattr(area, "geoms"):
        return [point for part in area.geoms for point in _corners(part)]
    return list(area.exterior.coords) if hasattr(area, "exterior") else list(area.coords)


def _look(script: Script, pieces: list[PaintedStrip]) -> None:
    """What shows of each piece, how long it must be, and how its seam ends are held."""
    trim, inner, cover = Area(script.trim), Area(script.inner), Area(script.cover)
    for index, piece in enumerate(pieces):
        seen = piece.kept
        for later in pieces[index + 1 :]:
            seen = without(seen, later.kept)
        piece.visible = common(seen, trim)
        piece.shown = common(seen, inner)
        wanted = common(piece.kept, cover)
        if piece.step and counts(wanted):
            piece.needed = extent(wanted, travel(piece.normal))
        if piece.step and counts(piece.kept):
            piece.seam = _seam_of(piece)
    for piece in pieces[1:]:
        if piece.seam is not None:
            piece.start, piece.end = (_held(script, piece, at, pieces) for at in _ends_of(piece.seam))


def _seam_of(piece: PaintedStrip) -> LineString | None:
    """The kept part of the seam line, from start to end of sewing."""
    along, n = travel(piece.normal), piece.normal
    on_it = [dot(along, point) for point in _corners(piece.kept) if dot(n, point) < piece.seam_at + TOLERANCE]
    if len(on_it) < 2 or max(on_it) - min(on_it) <= TOLERANCE:
        return None
    ends = [
        (along[0] * u + n[0] * piece.seam_at, along[1] * u + n[1] * piece.seam_at) for u in (min(on_it), max(on_it))
    ]
    return LineString(ends)


def _ends_of(seam: LineString) -> tuple[Point, Point]:
    one, other = seam.coords
    return one, other


def _held(script: Script, piece: PaintedStrip, at: Point, pieces: list[PaintedStrip]) -> PaintedEnd:
    """Crossed by a later seam, caught in the binding, or loose."""
    assert piece.seam is not None
    trim, inner = Area(script.trim), Area(script.inner)
    for later in pieces[piece.step + 1 :]:
        if later.seam is None:
            continue
        crossing = piece.seam.intersection(later.seam)
        if not isinstance(crossing, Dot) or crossing.is_empty or trim.distance(crossing) > TOLERANCE:
            continue
        place = (crossing.x, crossing.y)
        far_enough = dist(at, place) >= script.stitch - TOLERANCE
        well_inside = min(dist(place, end) for end in _ends_of(later.seam)) >= script.stitch - TOLERANCE
        beside = abs(dot(later.normal, at) - later.seam_at) <= script.seam + script.counts_as_crossed + TOLERANCE
        if far_enough and well_inside and beside:
            return PaintedEnd(at, "crossed", later.step)
    outside = piece.seam.difference(inner)
    if outside.equals(piece.seam):
        return PaintedEnd(at, "caught")  # the whole seam lies under the binding or is trimmed off
    for part in getattr(outside, "geoms", [outside]):
        if not part.is_empty and part.distance(Dot(at)) <= TOLERANCE and part.length >= script.stitch - TOLERANCE:
            return PaintedEnd(at, "caught")
    hidden = any(later.kept.buffer(-TOLERANCE).contains(Dot(at)) for later in pieces[piece.step + 1 :])
    return PaintedEnd(at, is_hidden=hidden)


def _raw_edges(script: Script, pieces: list[PaintedStrip]) -> list[tuple[int, LineString]]:
    """Edges of upper strips that show with earlier fabric just outside them, other than their seam lines."""
    found: list[tuple[int, LineString]] = []
    trim = Area(script.trim).buffer(-2 * NUDGE)  # an edge along the trim line itself does not show
    for index, piece in enumerate(pieces[1:], start=1):
        if not counts(piece.kept):
            continue
        over = together([later.kept for later in pieces[index + 1 :]])
        under = together([earlier.kept for earlier in pieces[:index]])
        ring = list(piece.kept.exterior.coords)
        if not piece.kept.exterior.is_ccw:
            ring.reverse()
        for p, q in pairwise(ring):
            if dist(p, q) <= TOLERANCE or _on_seam(piece, p, q):
                continue
            out = ((q[1] - p[1]) / dist(p, q) * NUDGE, (p[0] - q[0]) / dist(p, q) * NUDGE)
            beside = LineString([(p[0] + out[0], p[1] + out[1]), (q[0] + out[0], q[1] + out[1])])
            shows = only_lines(only_lines(beside.intersection(under)).difference(over))
            shows = only_lines(shows.intersection(trim))
            if shows.length > 10 * NUDGE:
                found.append((piece.step, shows))
    return found


def _on_seam(piece: PaintedStrip, p: Point, q: Point) -> bool:
    return max(abs(dot(piece.normal, point) - piece.seam_at) for point in (p, q)) <= TOLERANCE


def widest_gap(trim: Polygon, seams: list[tuple[Point, Point]], within: float = 0.001) -> tuple[Point, float]:
    """The widest unstitched place: the largest circle in any face left between seam lines and trim edge.

    Args:
        trim: the trim edge.
        seams: both ends of every seam line, in the same frame.
        within: how near the answer must come, inches.

    Returns:
        Middle and diameter of the circle.
    """
    stitched = unary_union([LineString(seam).buffer(1e-7, cap_style="flat") for seam in seams])
    faces = Area(trim).difference(stitched) if seams else Area(trim)
    best: tuple[Point, float] = ((0.0, 0.0), 0.0)
    for face in getattr(faces, "geoms", [faces]):
        radius = maximum_inscribed_circle(face, tolerance=within)
        middle = radius.coords[0]
        if 2 * radius.length > best[1]:
            best = ((middle[0], middle[1]), 2 * radius.length)
    return best
