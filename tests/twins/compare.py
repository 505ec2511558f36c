"""Laying a build of the kernel beside a painting: every answer both give must agree."""

from __future__ import annotations

from math import dist

import numpy as np
import shapely
from shapely.geometry import LineString
from shapely.geometry import Polygon as Area
from shapely.geometry.base import BaseGeometry

from stitchflip.piecing.model import Build, Polygon, SewnPiece
from tests.twins.painter import PaintedEnd, PaintedStrip, Painting, together, widest_gap, without

PLACE = 1e-5
"""Two places this near are one place, inches."""


def joined(polygons: tuple[Polygon, ...]) -> BaseGeometry:
    """The polygons of a patch as one area."""
    return together([Area(polygon) for polygon in polygons if len(polygon) > 2])


def same_area(one: BaseGeometry, other: BaseGeometry) -> bool:
    """True when two areas differ by less than a hair all along their edges."""
    apart = without(one, other).area + without(other, one).area
    return bool(apart <= PLACE * (one.length + other.length + 1))


def differences(build: Build, painting: Painting) -> list[str]:
    """Everything the two methods disagree about, in words; empty when they agree."""
    found = []
    if len(build.pieces) != len(painting.pieces):
        return [f"{len(build.pieces)} pieces against {len(painting.pieces)} painted"]
    for piece, painted in zip(build.pieces, painting.pieces, strict=True):
        found += [f"step {piece.step}: {words}" for words in _piece(piece, painted)]
    bare = joined(tuple(spot.polygon for spot in build.bare))
    if not same_area(bare, painting.bare):
        found.append(f"bare {bare.area} against {painting.bare.area}")
    shown_raw = sum(dist(start, end) for _, start, end in build.raw_edges_on_show)
    painted_raw = sum(edge.length for _, edge in painting.raw_edges)
    if abs(shown_raw - painted_raw) > 0.002 * (1 + len(painting.raw_edges)):
        found.append(f"raw edges on show {shown_raw} against {painted_raw}")
    return found


def coarse_differences(build: Build, painting: Painting) -> list[str]:
    """The same for a curved outline, which each method draws with edges of its own: to 1/16 in and to 1 % of area."""
    found = []
    for piece, painted in zip(build.pieces, painting.pieces, strict=True):
        off = joined(piece.visible).area - painted.visible.area
        if abs(off) > 0.01 * painted.visible.area + 0.01:
            found.append(f"step {piece.step}: visible off by {off}")
        if piece.step and abs(piece.needed_length - painted.needed_length) > 1 / 16:
            found.append(f"step {piece.step}: needed {piece.needed_length} against {painted.needed_length}")
        if piece.step:
            found += [f"step {piece.step}: {words}" for words in _ends(piece, painted)]
    return found


def _piece(piece: SewnPiece, painted: PaintedStrip) -> list[str]:
    found = []
    for word, mine, theirs in (("visible", piece.visible, painted.visible), ("shown", piece.shown, painted.shown)):
        if not same_area(joined(mine), theirs):
            found.append(f"{word} {joined(mine).area} against {theirs.area}")
    if piece.step == 0:
        return found
    numbers = [
        ("seam line", piece.seam_at, painted.seam_at),
        ("raw edge", piece.raw_edge_at, painted.raw_edge_at),
        ("needed", piece.needed_length, painted.needed_length),
    ]
    if painted.needed is not None:
        numbers += [
            ("reach of the start", piece.reach_start, painted.needed[0]),
            ("reach of the end", piece.reach_end, painted.needed[1]),
        ]
    if piece.free_ends == 0:
        numbers.append(("full", piece.full_length, painted.full_length))
        if painted.needed is not None:
            numbers += [
                ("inset at the start", piece.inset_start, painted.insets[0]),
                ("inset at the end", piece.inset_end, painted.insets[1]),
            ]
    found += [f"{word} {mine} against {theirs}" for word, mine, theirs in numbers if abs(mine - theirs) > PLACE]
    return found + _ends(piece, painted)


def _ends(piece: SewnPiece, painted: PaintedStrip) -> list[str]:
    if piece.seam is None or painted.start is None or painted.end is None:
        return [] if (piece.seam is None) == (painted.start is None) else ["one method has no seam"]
    pairs = ((piece.seam.start, painted.start), (piece.seam.end, painted.end))
    found = []
    for word, (mine, theirs) in zip(("start", "end"), pairs, strict=True):
        if described(mine.kind.value, mine.crossed_by, is_hidden=mine.is_hidden) != described_end(theirs):
            found.append(f"{word} of the seam {mine} against {theirs}")
    return found


def described(kind: str, crossed_by: int | None, *, is_hidden: bool) -> str:
    """An end in one word and its step."""
    return f"{kind} {crossed_by if kind == 'crossed' else ''} {'hidden' if is_hidden and kind == 'loose' else ''}"


def described_end(end: PaintedEnd) -> str:
    """A painted end in the same words."""
    return described(end.kind, end.crossed_by, is_hidden=end.is_hidden)


def gap_faults(build: Build, cell: float = 0.25, within: float = 0.011) -> list[str]:
    """What is wrong with the widest unstitched place: never wider than it is, and no place may be emptier.

    Args:
        build: a build in which nothing is drawn in.
        cell: distance of the places tried, inches.
        within: how far the radius may stay below the best, inches.
    """
    if build.draw_up != (0.0, 0.0):
        raise ValueError
    seams = [(piece.seam.start.at, piece.seam.end.at) for piece in build.pieces if piece.seam is not None]
    found = []
    radius = build.widest_gap.diameter / 2
    _, widest = widest_gap(build.trim, seams)
    if 2 * radius > widest + 2 * within:
        found.append(f"{2 * radius} where {widest} is the widest")
    inside = Area(build.trim)
    x0, y0, x1, y1 = inside.bounds
    across, up = np.meshgrid(np.arange(x0 + cell / 2, x1, cell), np.arange(y0 + cell / 2, y1, cell))
    places = shapely.points(across.ravel(), up.ravel())
    places = places[shapely.covers(inside, places)]
    stitched = shapely.multilinestrings([LineString(seam) for seam in seams] + [LineString(inside.exterior)])
    room = shapely.distance(stitched, places)
    best = int(np.argmax(room))
    if room[best] > radius + within:
        found.append(f"{room[best]} of room at {places[best]}, more than {radius}")
    return found
