"""The quickest painter's loop we could write: shapely polygons, painted one over the other, without a rounding grid.

The twin of the tests rounds every cut to a grid, because lines that lie on each other (a strip's end on a raw edge)
otherwise make shapely lose a strip or give up now and then. This one takes that risk and is the faster for it; its
time stands in the table for comparison only.

It answers what the plan answers about the build, in the plainest way: for every strip its opened, kept, visible and
shown patch, full and shortest length, the insets of both ends, how its seam ends are held, and the widest circle that
fits in what it shows (is it a sliver?); for the piece what stays bare, raw edges on show, the widest place unstitched.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import pairwise
from math import dist

from shapely import maximum_inscribed_circle
from shapely.geometry import LineString, Point, Polygon
from shapely.geometry.base import BaseGeometry
from shapely.ops import unary_union

from tests.twins.script import Script

TABLE = 500.0
SLACK = 1e-6
HAIR = 1e-4
WITHIN = 0.001
"""How near the largest circles come, inches."""

Place = tuple[float, float]


@dataclass
class Patch:
    """The first piece or a strip, painted."""

    normal: Place
    seam_at: float
    opened: BaseGeometry
    kept: BaseGeometry
    seen: BaseGeometry
    visible: BaseGeometry = field(default_factory=Polygon)
    shown: BaseGeometry = field(default_factory=Polygon)
    full: tuple[float, float] = (0.0, 0.0)
    needed: tuple[float, float] = (0.0, 0.0)
    seam: LineString | None = None
    ends: tuple[str, str] = ("", "")
    shows: float = 0.0


@dataclass
class Side:
    """Where a side's raw edge stands now."""

    normal: Place
    edge: float


@dataclass(frozen=True)
class Outlines:
    """Trim line, the binding's seam line, and what must be covered."""

    trim: Polygon
    inner: Polygon
    cover: Polygon


@dataclass
class Painted:
    """The whole piece."""

    patches: list[Patch]
    bare: BaseGeometry
    raw_edges: float
    widest: float


def paint(script: Script) -> Painted:
    """Lay strip after strip, then look."""
    on = Outlines(Polygon(script.trim), Polygon(script.inner), Polygon(script.cover))
    sides = [Side(normal, edge) for normal, edge in script.sides]
    first: BaseGeometry = on.cover.buffer(TABLE / 4)
    for normal, edge in script.sides:
        first = first.intersection(_band(normal, -TABLE, edge))
    patches = [Patch((0.0, 0.0), -TABLE, first, first, first)]
    bare: BaseGeometry = on.cover.difference(first)
    for strip in script.strips:
        normal = strip.normal
        own = min(sides, key=lambda side: dist(side.normal, normal))
        seam_at = own.edge - script.seam
        outer = seam_at + strip.width - script.seam
        opened: BaseGeometry = _band(normal, seam_at, outer)
        for other in sides:
            if other is not own:
                opened = opened.intersection(_band(other.normal, -TABLE, other.edge))
        keep = _band(normal, -TABLE, seam_at + script.seam)
        for patch in patches:
            patch.kept = patch.kept.intersection(keep)
            patch.seen = patch.seen.difference(opened)
        bare = bare.difference(opened)
        patches.append(Patch(normal, seam_at, opened, opened, opened))
        own.edge = outer
    for number, patch in enumerate(patches):
        _measure(patch, on, is_first=number == 0)
    for number, patch in enumerate(patches[1:], start=1):
        if patch.seam is not None:
            one, other_end = (_held(end, patch.seam, patches[number + 1 :], script, on) for end in patch.seam.coords)
            patch.ends = (one, other_end)
    return Painted(patches, bare, _raw_edges(patches, on.trim), _widest(patches, on.trim))


def _band(normal: Place, low: float, high: float) -> Polygon:
    (nx, ny), (tx, ty) = normal, (-normal[1], normal[0])
    corners = ((low, -TABLE), (low, TABLE), (high, TABLE), (high, -TABLE))
    return Polygon([(nx * v + tx * u, ny * v + ty * u) for v, u in corners])


def _measure(patch: Patch, on: Outlines, *, is_first: bool) -> None:
    patch.visible = patch.seen.intersection(on.trim)
    patch.shown = patch.seen.intersection(on.inner)
    patch.shows = max((_circle(part) for part in _areas(patch.shown)), default=0.0)
    if not is_first:
        patch.full = _extent(patch.opened, patch.normal)
        patch.needed = _extent(patch.kept.intersection(on.cover), patch.normal)
        patch.seam = _seam(patch)


def _areas(shape: BaseGeometry) -> list[Polygon]:
    parts = getattr(shape, "geoms", [shape])
    return [part for part in parts if isinstance(part, Polygon) and part.area > SLACK * max(part.length, 1.0)]


def _circle(face: Polygon) -> float:
    return 2 * float(maximum_inscribed_circle(face, tolerance=WITHIN).length)


def _corners(shape: BaseGeometry) -> list[Place]:
    if shape.is_empty:
        return []
    if hasattr(shape, "geoms"):
        return [corner for part in shape.geoms for corner in _corners(part)]
    return list(shape.exterior.coords) if hasattr(shape, "exterior") else list(shape.coords)


def _extent(shape: BaseGeometry, normal: Place) -> tuple[float, float]:
    places = [-normal[1] * x + normal[0] * y for x, y in _corners(shape)]
    return (min(places), max(places)) if places else (0.0, 0.0)


def _seam(patch: Patch) -> LineString | None:
    (nx, ny), d = patch.normal, patch.seam_at
    line = LineString(
        [(nx * d + ny * TABLE, ny * d - nx * TABLE), (nx * d - ny * TABLE, ny * d + nx * TABLE)],
    )
    seam = line.intersection(patch.kept.buffer(SLACK, join_style="mitre"))
    return seam if isinstance(seam, LineString) and not seam.is_empty else None


def _held(end: Place, seam: LineString, later: list[Patch], script: Script, on: Outlines) -> str:
    for patch in later:
        if patch.seam is None:
            continue
        crossing = seam.intersection(patch.seam)
        if not isinstance(crossing, Point) or crossing.is_empty or not on.trim.covers(crossing):
            continue
        at = (crossing.x, crossing.y)
        beyond = abs(patch.normal[0] * end[0] + patch.normal[1] * end[1] - patch.seam_at)
        inside = min(dist(at, other) for other in patch.seam.coords)
        near = beyond <= script.seam + script.counts_as_crossed + 2 * SLACK
        if near and dist(at, end) >= script.stitch and inside >= script.stitch:
            return "crossed"
    outside = seam.difference(on.inner)
    for part in getattr(outside, "geoms", [outside]):
        if not part.is_empty and part.distance(Point(end)) < SLACK and part.length >= script.stitch:
            return "caught"
    return "loose"


def _raw_edges(patches: list[Patch], trim: Polygon) -> float:
    """Length of the ends that show with earlier fabric a hair beside them."""
    total = 0.0
    for number, patch in enumerate(patches[1:], start=1):
        corners = _corners(patch.kept)
        for (x0, y0), (x1, y1) in pairwise(corners):
            length = dist((x0, y0), (x1, y1))
            heights = [patch.normal[0] * x + patch.normal[1] * y - patch.seam_at for x, y in ((x0, y0), (x1, y1))]
            if length < SLACK or max(map(abs, heights)) < SLACK:
                continue
            dx, dy = (y1 - y0) / length * HAIR, (x0 - x1) / length * HAIR
            side = -1 if patch.kept.contains(Point((x0 + x1) / 2 + dx, (y0 + y1) / 2 + dy)) else 1
            beside: BaseGeometry = LineString(
                [(x0 + side * dx, y0 + side * dy), (x1 + side * dx, y1 + side * dy)]
            ).intersection(trim)
            for later in patches[number + 1 :]:
                beside = beside.difference(later.kept)
            for earlier in patches[:number]:
                on_show = beside.intersection(earlier.seen).length
                total += on_show if on_show > 10 * HAIR else 0.0
    return total


def _widest(patches: list[Patch], trim: Polygon) -> float:
    """The largest circle in any face between seam lines and trim edge."""
    stitched = unary_union([patch.seam.buffer(1e-6, cap_style="flat") for patch in patches if patch.seam is not None])
    return max(_circle(face) for face in _areas(trim.difference(stitched)))
