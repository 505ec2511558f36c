"""The naive grid: the table is squared paper, and every cell remembers which piece lies on top.

The second second method. It knows no polygons at all: a cell belongs to a strip when its middle does, and laying
a strip means visiting the cells. Its answers are right to within a border of cells round each patch.
"""

from __future__ import annotations

from math import hypot

import numpy as np
from numpy.typing import NDArray

from tests.twins.script import Point, Script, Side, sides_of

CELL = 1 / 16
BARE = -1


def lay(script: Script, cell: float = CELL) -> tuple[NDArray[np.int_], NDArray[np.float64], NDArray[np.float64]]:
    """Sew the script on squared paper.

    Returns:
        For each cell the step on top (-1 where nothing lies), and the x and y of the cells' middles. The paper
        covers the cover outline.
    """
    xs = [x for x, _ in script.cover]
    ys = [y for _, y in script.cover]
    across = np.arange(min(xs) + cell / 2, max(xs), cell)
    up = np.arange(min(ys) + cell / 2, max(ys), cell)
    x, y = np.meshgrid(across, up)
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
    return top, x, y


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
