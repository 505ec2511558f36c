"""What really happened: edges that were measured, and strips that were cut too short.

A reading moves one side of the outer edge; everything sewn later follows. A strip as cut too short leaves the
regular world (what shows is no longer convex), so what it uncovers goes through the general polygon difference
of a library.
"""

from __future__ import annotations

from collections import defaultdict
from dataclasses import replace
from math import hypot
from typing import TYPE_CHECKING

from stitchflip.piecing.coverage import grade, widest_anywhere
from stitchflip.piecing.geometry import TOLERANCE, HalfPlane, area, clip, edges, extent
from stitchflip.piecing.model import BareSpot, Build, SewnPiece
from stitchflip.piecing.seams import EndRules, SeamLine, SeamMap, seam_interval
from stitchflip.piecing.sections import seen_again
from stitchflip.project.model import ReadBy

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from shapely.geometry.base import BaseGeometry

    from stitchflip.piecing.flips import State
    from stitchflip.piecing.frame import Frame
    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.project.model import Reading, ShortStrip

_HAIR = 1e-4
"""How far beside an edge to look for what lies there, inches: above rounding, below anything sewn."""


def read_sides(
    readings: Sequence[Reading], state: State, frame: Frame, names: Sequence[str], scale: float
) -> Iterator[tuple[int, HalfPlane]]:
    """The sides measured after this state, each with the line that its readings give, flat.

    Args:
        readings: All readings of the project.
        state: The state after which they were taken.
        frame: For the taped and the flat frame.
        names: Side names by index.
        scale: Inches in one of the project's units.
    """
    now = {name: index for index, (name, side) in enumerate(zip(names, state.sides, strict=True)) if side is not None}
    by_side: defaultdict[int, list[Reading]] = defaultdict(list)
    for reading in readings:
        if reading.after == state.step and reading.side in now:
            by_side[now[reading.side]].append(reading)
    for index, taken in by_side.items():
        side = state.sides[index]
        if side is None:
            continue
        nx, ny = side.normal
        places = []
        for reading in taken:
            edge = reading.edge.inches
            along = (reading.along or 0.0) * scale
            if reading.by is ReadBy.TAPE:
                edge = frame.flat_distance((nx, ny), edge)
            places.append((along, edge))
        yield index, _line_through(nx, ny, places)


def _line_through(nx: float, ny: float, places: list[tuple[float, float]]) -> HalfPlane:
    """The raw edge through one place (same direction) or the first and the last of several."""
    (u0, v0), (u1, v1) = min(places), max(places)
    if u1 - u0 < TOLERANCE:
        return (nx, ny, sum(edge for _, edge in places) / len(places))
    length = hypot(u1 - u0, v1 - v0)
    du, dv = (u1 - u0) / length, (v1 - v0) / length
    # The edge runs along du * t + dv * n with t = (-ny, nx); its outward normal is du * n - dv * t.
    mx, my = du * nx + dv * ny, du * ny - dv * nx
    x, y = nx * v0 - ny * u0, ny * v0 + nx * u0
    return (mx, my, mx * x + my * y)


def plausible(state: State, index: int, line: HalfPlane) -> bool:
    """True when the piece that carries the edge can end there: a strip beyond its seam, the first piece not at once."""
    side = state.sides[index]
    if side is None:
        return False
    sewn = state.history[side.step - 1] if side.step else None
    if sewn is None:
        return extent(state.first, line[0], line[1])[0] < line[2] - TOLERANCE
    return sewn.raw_edge_before - state.seam < line[2] < sewn.raw_edge_before + sewn.width


def with_short_strips(build: Build, short: Sequence[ShortStrip], frame: Frame) -> Build:
    """The build with some strips as short as they really were cut.

    Visible and shown patches, bare places, raw edges on show, seam ends and the widest gap are computed anew
    with general polygons; everything else stays.
    """
    import numpy as np

    # The polygon library leaves floating-point flags of its inner workings behind, which numpy would report.
    with np.errstate(all="ignore"):
        return _with_short_strips(build, short, frame)


def _with_short_strips(build: Build, short: Sequence[ShortStrip], frame: Frame) -> Build:
    from shapely.geometry import Polygon as Shape
    from shapely.ops import unary_union

    lengths = {strip.step: strip for strip in short}
    pieces = [_shortened(piece, lengths[piece.step]) if piece.step in lengths else piece for piece in build.pieces]
    kept = [Shape(piece.kept) if len(piece.kept) > 2 else Shape() for piece in pieces]
    trim, inner = Shape(frame.trim), Shape(frame.inner)
    above: BaseGeometry = Shape()
    out: list[SewnPiece] = []
    seen: list[tuple[SewnPiece, BaseGeometry]] = []
    for piece, shape in zip(reversed(pieces), reversed(kept), strict=True):
        free = shape.difference(above)
        visible = _polygons(free.intersection(trim))
        shown = _polygons(free.intersection(inner))
        seen.append((piece, unary_union([Shape(polygon) for polygon in visible])))
        above = unary_union([above, shape])
        sections = seen_again(piece.sections, piece.normal, visible, shown)
        out.append(replace(piece, visible=visible, shown=shown, sections=sections))
    out.reverse()
    seen.reverse()
    out = _judged(out, frame)
    seams = [
        (frame.taped(piece.seam.start.at), frame.taped(piece.seam.end.at)) for piece in out if piece.seam is not None
    ]
    return replace(
        build,
        pieces=tuple(out),
        bare=_bare(Shape(frame.cover).difference(above), out, frame),
        raw_edges_on_show=tuple(_raw_edges(seen)),
        widest_gap=widest_anywhere(frame.trim_taped, seams, done=frame.done_taped),
    )


def _shortened(piece: SewnPiece, short: ShortStrip) -> SewnPiece:
    """A strip with its real interval."""
    nx, ny = piece.normal
    tx, ty = -ny, nx
    low, high = extent(piece.opened, tx, ty)
    length = min(short.long.inches, high - low)
    start = low + (short.from_start.inches if short.from_start is not None else (high - low - length) / 2)
    end = min(start + length, high)
    ends: tuple[HalfPlane, ...] = ((-tx, -ty, -start), (tx, ty, end))
    opened, kept = piece.opened, piece.kept
    for plane in ends:
        opened, kept = clip(opened, *plane), clip(kept, *plane)
    return replace(piece, opened=opened, kept=kept, cut_length=short.long.inches)


def _judged(pieces: Sequence[SewnPiece], frame: Frame) -> list[SewnPiece]:
    """Seam ends judged anew."""
    lines = []
    for piece in pieces[1:]:
        interval = seam_interval(piece.kept, piece.normal, piece.seam_at) if piece.kept else None
        lines.append(SeamLine(piece.step, piece.normal, piece.seam_at, *interval) if interval else None)
    rules = EndRules(frame.seam, frame.stitch, frame.counts_as_crossed, frame.trim, frame.inner)
    seams = SeamMap([line for line in lines if line], rules)
    kept = [piece.kept for piece in pieces]
    judged = [
        replace(piece, seam=seams.judge(line, [k for k in kept[piece.step + 1 :] if k]) if line else None)
        for piece, line in zip(pieces[1:], lines, strict=True)
    ]
    return [pieces[0], *judged]


def _polygons(shape: BaseGeometry) -> tuple[Polygon, ...]:
    """The parts that count as rings without holes, counter-clockwise."""
    from shapely.geometry.polygon import orient

    return tuple(
        tuple((float(x), float(y)) for x, y in orient(part).exterior.coords[:-1])
        for part in _without_holes(shape)
        if part.area > TOLERANCE * part.length
    )


def _without_holes(shape: BaseGeometry) -> Iterator[BaseGeometry]:
    """The polygons of a shape; one with a hole is cut in two through the hole until none is left."""
    from shapely.geometry import box as rectangle

    for part in getattr(shape, "geoms", [shape]):
        if part.geom_type != "Polygon" or part.is_empty:
            continue
        if not part.interiors:
            yield part
            continue
        left, low, right, high = part.bounds
        middle = part.interiors[0].centroid.x
        for half in (rectangle(left, low, middle, high), rectangle(middle, low, right, high)):
            yield from _without_holes(part.intersection(half))


def _bare(shape: BaseGeometry, pieces: Sequence[SewnPiece], frame: Frame) -> tuple[BareSpot, ...]:
    spots = []
    for part in _polygons(shape):
        piece, by = _nearest_strip(part, pieces)
        spots.append(
            BareSpot(part, grade(part, frame.trim_planes, frame.inner_planes), piece.side, piece.step, by, area(part))
        )
    return tuple(sorted(spots, key=lambda spot: spot.area, reverse=True))


def _nearest_strip(part: Polygon, pieces: Sequence[SewnPiece]) -> tuple[SewnPiece, float]:
    """The strip whose place the bare spot lies in, and how far along its seam the spot reaches."""
    from shapely.geometry import Polygon as Shape

    bare = Shape(part)
    best = max(
        pieces[1:] or pieces,
        key=lambda piece: Shape(piece.opened).buffer(0.02).intersection(bare.boundary).length if piece.opened else 0,
    )
    low, high = extent(part, -best.normal[1], best.normal[0])
    return best, high - low


def _raw_edges(seen: Sequence[tuple[SewnPiece, BaseGeometry]]) -> Iterator[tuple[int, Point, Point]]:
    """Visible ends of strips that lie on other fabric: a boundary that is not the upper one's seam line.

    Looked for a hair outside each edge (is there earlier fabric to be seen?) and a hair inside it (does the strip
    itself show there?), so that pieces which only touch along a line do not count.
    """
    from shapely.geometry import LineString
    from shapely.ops import unary_union

    for place, (piece, shape) in enumerate(seen):
        if piece.step == 0 or shape.is_empty:
            continue
        lower = unary_union([earlier for _, earlier in seen[:place]])
        nx, ny = piece.normal
        for (x0, y0), (x1, y1) in edges(piece.kept):
            length = hypot(x1 - x0, y1 - y0)
            if length < _HAIR or all(abs(nx * x + ny * y - piece.seam_at) < _HAIR for x, y in ((x0, y0), (x1, y1))):
                continue
            ox, oy = (y1 - y0) / length * _HAIR, (x0 - x1) / length * _HAIR
            beside = LineString([(x0 + ox, y0 + oy), (x1 + ox, y1 + oy)]).intersection(lower)
            shows = LineString([(x0 - ox, y0 - oy), (x1 - ox, y1 - oy)]).intersection(shape)
            shared = shows.intersection(beside.buffer(3 * _HAIR))
            for part in getattr(shared, "geoms", [shared]):
                if part.geom_type == "LineString" and part.length > 10 * _HAIR:
                    (ax, ay), (bx, by) = part.coords[0], part.coords[-1]
                    yield (piece.step, (ax + ox, ay + oy), (bx + ox, by + oy))
