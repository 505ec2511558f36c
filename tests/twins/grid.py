"""The naive grid: the table is squared paper, and every cell remembers which piece lies on top.

The second second method. It knows no polygons at all: a cell belongs to a strip when its middle does, and laying
a strip means visiting the cells. Its answers are right to within a border of cells round each patch.
"""

from __future__ import annotations

from math import hypot

import numpy as np
from numpy.typing import NDArray

from stitchflip.piecing.model import Build
from tests.twins.script import Point, Polygon, Script, Side, sides_of

CELL = 1 / 16
BARE = -1


def lay(script: Script, cell: float = CELL) -> tuple[NDArray[np.int_], NDArray[np.float64], NDArray[np.float64]]:
    """Sew the script on squared paper.

    Returns:
        For each cell the step on top (-1 where nothing lies), and the x and y of the cells' middles. The paper
        covers the cover outline.
    """
    x, y = _paper(script.cover, cell)
    return on_top(script, x, y), x, y


def _paper(outline: Polygon, cell: float, shift: float = 0.5) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Places a cell apart all over an outline's width and height, so much of a cell from its lower left corner."""
    xs = [x for x, _ in outline]
    ys = [y for _, y in outline]
    across = np.arange(min(xs) + cell * shift, max(xs), cell)
    up = np.arange(min(ys) + cell * shift, max(ys), cell)
    x, y = np.meshgrid(across, up)
    return x, y


def on_top(script: Script, x: NDArray[np.float64], y: NDArray[np.float64]) -> NDArray[np.int_]:
    """The step that lies on top at each place; -1 where nothing does."""
    sides = list(script.sides)
    top = np.where(_within(sides, x, y), 0, BARE)
    for step, strip in enumerate(script.strips, start=1):
        n = strip.normal
        own = [r for normal, r in sides if _same(normal, n)]
        line = own[0] - script.seam if strip.at is None else strip.at
        others = [side for side in sides if not _same(side[0], n)]
        if strip.at is not None:
            others = [side for side in others if _edge_left(side, others, (n, line + script.seam))]
        height = n[0] * x + n[1] * y
        top[height > line + script.seam] = BARE
        outer = line + strip.width - script.seam
        top[(height >= line) & (height <= outer) & _within(others, x, y)] = step
        sides = [*others, (n, outer)]
    return top


def sides_after(script: Script) -> list[Side]:
    """The raw edges that are left when all strips of a script are sewn."""
    sides = list(script.sides)
    for strip in script.strips:
        n = strip.normal
        line = next(r for normal, r in sides if _same(normal, n)) - script.seam if strip.at is None else strip.at
        others = [side for side in sides if not _same(side[0], n)]
        if strip.at is not None:
            others = [side for side in others if _edge_left(side, others, (n, line + script.seam))]
        sides = [*others, (n, line + strip.width - script.seam)]
    return sides


def visible_areas(script: Script, cell: float = CELL) -> dict[int, float]:
    """Area on top of each step inside the trim, counted in cells; -1 is bare."""
    top, x, y = lay(script, cell)
    inside = _within(list(sides_of(script.trim)), x, y)
    steps, cells = np.unique(top[inside], return_counts=True)
    return {int(step): float(count) * cell * cell for step, count in zip(steps, cells, strict=True)}


def wrong_places(build: Build, script: Script, places: int = 2500) -> list[str]:
    """Places inside the trim where the kernel sees another step on top than the squared paper; none when they agree.

    Args:
        build: the kernel's answer.
        script: what the paper is told.
        places: about how many are looked at.
    """
    x, y = places_inside(script.trim, places)
    both = _within(list(sides_of(build.trim)), x, y)  # a curve is drawn with other short edges by each method
    assert both.mean() > 0.99
    x, y = x[both], y[both]
    expected = on_top(script, x, y)
    seen = seen_at(build, x, y)
    wrong = np.flatnonzero(expected != seen)
    return [f"at {x[k]:.3f}, {y[k]:.3f}: step {seen[k]}, on paper {expected[k]}" for k in wrong[:5]]


def places_inside(outline: Polygon, places: int) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """About so many places inside an outline, off every round fraction of an inch, so that none lies on a seam."""
    ((left, low), (right, high)) = _box(outline)
    cell = ((right - left) * (high - low) / places) ** 0.5 * 1.0007
    x, y = _paper(outline, cell, shift=0.4142135)
    inside = _within(list(sides_of(outline)), x, y)
    return x[inside], y[inside]


def holds(polygon: Polygon, x: float, y: float) -> bool:
    """True when a place lies in a convex polygon."""
    return all(nx * x + ny * y <= r for (nx, ny), r in sides_of(polygon))


def seen_at(build: Build, x: NDArray[np.float64], y: NDArray[np.float64]) -> NDArray[np.int_]:
    """The step whose visible patch holds each place; -1 where none does, -2 where two do."""
    seen = np.full(x.shape, BARE)
    for piece in build.pieces:
        for polygon in piece.visible:
            here = _within(list(sides_of(polygon)), x, y)
            seen[here & (seen != BARE)] = -2
            seen[here & (seen == BARE)] = piece.step
    return seen


def _box(outline: Polygon) -> tuple[Point, Point]:
    xs = [x for x, _ in outline]
    ys = [y for _, y in outline]
    return (min(xs), min(ys)), (max(xs), max(ys))


def _within(sides: list[Side], x: NDArray[np.float64], y: NDArray[np.float64]) -> NDArray[np.bool_]:
    inside = np.ones(x.shape, dtype=bool)
    for (nx, ny), r in sides:
        inside &= nx * x + ny * y <= r
    return inside


def _same(one: Point, other: Point) -> bool:
    return hypot(one[0] - other[0], one[1] - other[1]) < 1e-6


def _edge_left(side: Side, others: list[Side], cut: Side) -> bool:
    """True when some of the side's own line stays inside all other raw edges and the new cut."""
    (nx, ny), r = side
    low, high = -1e6, 1e6
    for (mx, my), s in [*others, cut]:
        if _same((mx, my), (nx, ny)):
            continue
        slope = -mx * ny + my * nx
        room = s - r * (mx * nx + my * ny)
        if abs(slope) < 1e-12:
            if room < 0:
                return False
        elif slope > 0:
            high = min(high, room / slope)
        else:
            low = max(low, room / slope)
    return high - low > 1e-6


def border_error(patch_perimeter: float, trim_perimeter: float, cell: float = CELL) -> float:
    """How far a counted area may be off: every cell the border runs through, and no more."""
    return (patch_perimeter + trim_perimeter) * cell * 1.5 + 8 * cell * cell
