"""What stays bare, and the widest place without stitching.

In a regular build all fabric together fills the outer edge, which is convex, so "bare" is the cover outline
minus a convex outline: exact, and disjoint convex parts fall out of it. Builds with a strip cut too short go
through `as_sewn` instead.
"""

from __future__ import annotations

from heapq import heappop, heappush
from itertools import count, product
from math import ceil, hypot, inf
from typing import TYPE_CHECKING

from stitchflip.piecing.geometry import (
    HalfPlane,
    area,
    clip_all,
    counts,
    distance_to,
    edges,
    extent,
    half_planes,
    largest_circle,
    middle,
    outside_parts,
    scaled,
)
from stitchflip.piecing.model import BareSpot, WidestGap

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.piecing.flips import Side
    from stitchflip.piecing.model import Point, Polygon


def grade(part: Polygon, trim: Sequence[HalfPlane], inner: Sequence[HalfPlane]) -> str:
    """How bad a bare place is: "stop" inside the binding's seam line, "fix" up to the trim edge, else "note"."""
    if counts(clip_all(part, inner)):
        return "stop"
    return "fix" if counts(clip_all(part, trim)) else "note"


def bare_spots(
    cover: Polygon,
    sides: Sequence[Side],
    names: Sequence[str],
    trim: Sequence[HalfPlane],
    inner: Sequence[HalfPlane],
) -> tuple[BareSpot, ...]:
    """Places of the cover outline that no fabric reaches, largest first.

    Args:
        cover: The cover outline, flat.
        sides: Sides of the outer edge that still have a place.
        names: Their names.
        trim: Half-planes of the trim edge, flat.
        inner: Half-planes of the binding's seam line, flat.
    """
    spots = []
    for index, part in outside_parts(cover, [side.plane for side in sides]):
        side = sides[index]
        by = extent(part, *side.normal)[1] - side.raw_edge
        spots.append(BareSpot(part, grade(part, trim, inner), names[index], side.step, by, area(part)))
    return tuple(sorted(spots, key=lambda spot: spot.area, reverse=True))


def adds_cover(cover: Polygon, opened: Polygon, normal: Point, edge_before: float) -> bool:
    """True when a strip covers something of the cover outline that is still bare."""
    beyond = clip_all(opened, [(-normal[0], -normal[1], -edge_before)])
    return bool(beyond) and counts(clip_all(beyond, half_planes(cover)))


def widest_patch(patches: Sequence[tuple[int, float, Sequence[Polygon]]], draw_up: Point) -> WidestGap:
    """The largest circle in any patch, for builds where every patch is bounded by seams and the trim edge.

    Args:
        patches: (step, an upper bound for the circle's diameter, its visible polygons), flat.
        draw_up: Fractions by which stitching draws the piece in, so that the circle is a taped one.
    """
    best = WidestGap((0.0, 0.0), 0.0, 0)
    sx, sy = 1 - draw_up[0], 1 - draw_up[1]
    for step, bound, polygons in sorted(patches, key=lambda patch: patch[1], reverse=True):
        if bound * max(sx, sy) <= best.diameter:
            break
        for polygon in polygons:
            (x, y), radius = largest_circle(scaled(polygon, sx, sy))
            if 2 * radius > best.diameter:
                best = WidestGap((x / sx, y / sy), 2 * radius, step)
    return best


def widest_anywhere(
    trim: Polygon, seams: Sequence[tuple[Point, Point]], precision: float = 0.01, *, done: Polygon = ()
) -> WidestGap:
    """The largest circle inside the trim that no seam enters, for builds with bare or open places.

    Best-first search over squares: a square can hold no center better than its middle's distance plus half its
    diagonal, nor one better than half the way between two edges it lies between, so squares that cannot win are
    dropped and the answer is right within `precision` inches. The second bound keeps a long even stretch from being
    searched inch by inch.

    Args:
        trim: Trim edge, taped.
        seams: Kept seams as pairs of places, taped.
        precision: How far the radius may stay below the best, inches.
        done: A half-done piece, taped; it is stitched already, so nothing inside it counts.
    """
    planes, around = half_planes(trim), half_planes(done)
    seams = [*seams, *edges(done)]
    (left, right), (low, high) = extent(trim, 1, 0), extent(trim, 0, 1)
    size = min(right - left, high - low) / 2 or 1.0
    order = count()
    queue: list[tuple[float, int, float, float, float]] = []
    best = (middle(trim), clearance(middle(trim), planes, seams, around))

    def offer(x: float, y: float, half: float) -> None:
        """Put a square on the queue when it may hold something better."""
        nonlocal best
        here = clearance((x, y), planes, seams, around)
        if here > best[1]:
            best = ((x, y), here)
        promise = here + half * 2**0.5
        if promise > best[1] + precision:
            bound, (mid_x, mid_y) = between_two((x, y), half * 2**0.5, planes, seams)
            promise = min(promise, bound)
            there = clearance((mid_x, mid_y), planes, seams, around)
            if there > best[1]:
                best = ((mid_x, mid_y), there)
        if promise > best[1] + precision:
            heappush(queue, (-promise, next(order), x, y, half))

    for column, row in product(range(ceil((right - left) / size)), range(ceil((high - low) / size))):
        offer(left + (column + 0.5) * size, low + (row + 0.5) * size, size / 2)
    while queue:
        promise, _, x, y, half = heappop(queue)
        if -promise <= best[1] + precision:
            break
        quarter = half / 2
        for dy, dx in product((-quarter, quarter), repeat=2):
            offer(x + dx, y + dy, quarter)
    return WidestGap(best[0], max(0.0, 2 * best[1]), 0)


def clearance(
    place: Point,
    planes: Sequence[HalfPlane],
    seams: Sequence[tuple[Point, Point]],
    done: Sequence[HalfPlane] = (),
) -> float:
    """Distance from a place to the nearest seam or trim edge; negative outside the trim and in a half-done piece."""
    x, y = place
    best = inf
    for nx, ny, r in planes:
        best = min(best, r - nx * x - ny * y)
    if done and (outside := max(nx * x + ny * y - r for nx, ny, r in done)) < 0:
        best = min(best, outside)
    if best <= 0:
        return best
    for start, end in seams:
        best = min(best, distance_to(place, start, end))
    return best


def between_two(
    place: Point, reach: float, planes: Sequence[HalfPlane], seams: Sequence[tuple[Point, Point]]
) -> tuple[float, Point]:
    """What two straight edges leave to a circle near a place at most, and the place midway between them.

    The mean of the distances to two edges is never less than the smaller one, and across a stretch between parallel
    edges it does not change. Only edges that are straight as far as the reach goes can be asked.

    Args:
        place: Middle of what is asked about, inches.
        reach: How far from it a circle's center may lie, inches.
        planes: Half-planes of the trim edge, three or more.
        seams: Kept seams as pairs of places.

    Returns:
        The largest radius for any center within reach, and the place with equal distances to both edges.
    """
    x, y = place
    straight = [(r - nx * x - ny * y, nx, ny) for nx, ny, r in planes]
    for (ax, ay), (bx, by) in seams:
        length = hypot(bx - ax, by - ay)
        if length <= 2 * reach:
            continue
        ux, uy = (bx - ax) / length, (by - ay) / length
        along, off = (x - ax) * ux + (y - ay) * uy, (x - ax) * uy - (y - ay) * ux
        if reach <= along <= length - reach and abs(off) >= reach:
            straight.append((off, -uy, ux) if off > 0 else (-off, uy, -ux))
    near, nx, ny = min(straight)
    bound, far = min(
        ((near + other) / 2 + hypot(nx + ox, ny + oy) / 2 * reach, other)
        for other, ox, oy in straight
        if (other, ox, oy) != (near, nx, ny)
    )
    return bound, (x + nx * (near - far) / 2, y + ny * (near - far) / 2)
