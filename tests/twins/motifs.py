"""Windows round motifs by trying: every motif in turn, every start on a fine grid, every choice of windows.

Shares nothing with the room that plans motifs: corners are turned by hand, overlap is told by separating lines, and
the most windows are found by taking or leaving each.
"""

from __future__ import annotations

from math import cos, pi, sin
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    Point = tuple[float, float]


def corners(center: Point, wide: float, long: float, degrees: float) -> list[Point]:
    """The corners of a window on a motif, turned about its center."""
    turn = degrees * pi / 180
    out = []
    for x, y in ((-wide / 2, -long / 2), (wide / 2, -long / 2), (wide / 2, long / 2), (-wide / 2, long / 2)):
        out.append((center[0] + x * cos(turn) - y * sin(turn), center[1] + x * sin(turn) + y * cos(turn)))
    return out


def overlap(one: Sequence[Point], other: Sequence[Point]) -> bool:
    """Whether two convex shapes share more than an edge: no line along an edge separates them."""
    for shape in (one, other):
        for number, (x, y) in enumerate(shape):
            nx, ny = shape[number - 1][1] - y, x - shape[number - 1][0]
            a = [px * nx + py * ny for px, py in one]
            b = [px * nx + py * ny for px, py in other]
            if max(a) <= min(b) + 1e-5 or max(b) <= min(a) + 1e-5:
                return False
    return True


def centers(
    motifs: Sequence[Point], across: float, along: float, *, half_drop: bool, start: Point, reach: float
) -> list[Point]:
    """Every motif anywhere near the fabric, column by column."""
    found = []
    columns, rows = int(reach / across) + 6, int(reach / along) + 6
    for column in range(-8, columns):
        drop = along / 2 if half_drop and column % 2 else 0.0
        for row in range(-8, rows):
            found += [(start[0] + column * across + x, start[1] + row * along + drop + y) for x, y in motifs]
    return [center for center in found if 0 <= center[0] <= reach and 0 <= center[1] <= reach]


def whole(shape: Sequence[Point], wide: float, long: float) -> bool:
    """Whether a window lies on the fabric."""
    return all(-1e-5 <= x <= wide + 1e-5 and -1e-5 <= y <= long + 1e-5 for x, y in shape)


def most(shapes: Sequence[Sequence[Point]]) -> int:
    """The most shapes that do not overlap, by taking or leaving each."""
    foes = [{j for j, b in enumerate(shapes) if i != j and overlap(a, b)} for i, a in enumerate(shapes)]

    def best(left: frozenset[int]) -> int:
        free = [i for i in left if not foes[i] & left]
        left = left - set(free)
        if not left:
            return len(free)
        first = max(left, key=lambda i: (len(foes[i] & left), -i))
        return len(free) + max(1 + best(left - foes[first] - {first}), best(left - {first}))

    return best(frozenset(range(len(shapes))))
