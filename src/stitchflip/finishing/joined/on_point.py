"""Blocks on point: diagonal rows, the joins between them, and the triangles that make the edge straight.

Diagonal rows run up to the right (or to the left, when columns are joined first). Where strips are used they go
round every block, also between block and triangle, so that the corner of the framed block touches the edge line.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from math import sqrt

from stitchflip.finishing.joined.faces import Face, is_longer_than_fabric
from stitchflip.finishing.quilt_model import JoiningStrip
from stitchflip.lengths import TOLERANCE_IN
from stitchflip.piecing.geometry import box, clip, extent
from stitchflip.piecing.model import Point, Polygon
from stitchflip.project.model import Join, Joined, Joining, Project
from stitchflip.project.numbers import Numbers
from stitchflip.values import dataclass

ROOT_2 = sqrt(2)


@dataclass(frozen=True, slots=True)
class Diamond:
    """A setting on point about the middle of the whole; inches."""

    across: int
    """Blocks in a row; the rows between have one fewer."""
    down: int
    block: float
    """Squared-up side of a block."""
    between: float
    """From seam line to seam line of two neighbors."""
    seam: float

    @property
    def shown(self) -> float:
        """Finished side of a block, T - 2a."""
        return self.block - 2 * self.seam

    @property
    def pitch(self) -> float:
        """From block to block along a diagonal row."""
        return self.shown + self.between

    @property
    def wide(self) -> float:
        """Raw edge to raw edge: root 2 (m p + g) and the two outer seams."""
        return self._finished(self.across) + 2 * self.seam

    @property
    def high(self) -> float:
        """Raw edge to raw edge."""
        return self._finished(self.down) + 2 * self.seam

    def _finished(self, count: int) -> float:
        return ROOT_2 * (count * self.pitch + self.between)

    @property
    def blocks(self) -> int:
        """Across times down, and (m - 1)(n - 1) between them."""
        return self.across * self.down + (self.across - 1) * (self.down - 1)

    @property
    def side_triangles(self) -> int:
        """2 (m + n - 2), one in every notch of the edge."""
        return 2 * (self.across + self.down - 2)

    @property
    def side_long(self) -> float:
        """Finished long side of a side triangle, along the edge."""
        return ROOT_2 * self.pitch

    @property
    def corner_leg(self) -> float:
        """Finished short side of a corner triangle, along the edge."""
        return (self.pitch + self.between) / ROOT_2

    def rows(self) -> tuple[int, ...]:
        """The level rows that have blocks, from the top; odd ones lie between the others and have one fewer."""
        return tuple(row for row in range(2 * self.down - 1) if self.across > row % 2)

    def middle(self, row: int, column: int) -> Point:
        """Middle of a block by its level row from the top and its place in it."""
        half = self.pitch / ROOT_2
        return ((2 * column + row % 2 - (self.across - 1)) * half, (self.down - 1 - row) * half)


def setting_places(diamond: Diamond, first: Joining) -> tuple[Polygon, ...]:
    """Where the triangles show, out to the raw edge: those at the ends of the diagonal rows, then two corners.

    A triangle is sewn to the end of its row and trimmed with it; the long strips run past it to the edge. Two
    corner triangles end a row, the other two are sewn on last.

    Args:
        diamond: The setting.
        first: Which way the diagonal rows run: up to the right, or with columns first up to the left.
    """
    mirror = 1 if first is Joining.ROWS else -1
    half, between = diamond.shown / 2, diamond.between
    far = diamond.wide + diamond.high
    rows = diagonal_rows(diamond)
    places = []
    for row, ends in enumerate(rows):
        t = (_t(diamond, row) - half, _t(diamond, row) + half)
        places.append(_laid((-far, _s(diamond, ends.start) - half - between), t, diamond, mirror))
        places.append(_laid((_s(diamond, ends.stop - 1) + half + between, far), t, diamond, mirror))
    low = _t(diamond, 0) - half - between
    high = _t(diamond, len(rows) - 1) + half + between
    return (
        *places,
        _laid((-far, far), (-far, low), diamond, mirror),
        _laid((-far, far), (high, far), diamond, mirror),
    )


def _turned(polygon: Polygon, sx: int, sy: int) -> Polygon:
    """Mirrored left-right or up-down, counter-clockwise again."""
    moved = tuple((sx * x, sy * y) for x, y in polygon)
    return moved if sx * sy > 0 else tuple(reversed(moved))


@dataclass(frozen=True, slots=True)
class _Gap:
    """One join in the frame of the diagonal rows: s along a row, t across; what its strips are cut and show."""

    long: float
    s: tuple[float, float]
    t: tuple[float, float]


def on_point_strips(
    project: Project, numbers: Numbers, joined: Joined, diamond: Diamond, faces: tuple[Face, ...]
) -> tuple[JoiningStrip, ...]:
    """The joining strips on point: short ones at both ends of every block, long ones between diagonal rows.

    Args:
        project: For the widths of the fabrics.
        numbers: The maker's numbers.
        joined: For which way the diagonal rows run, and for corner squares.
        diamond: The setting.
        faces: The strips of one join.

    Returns:
        Strips of one kind and length together. A long strip is cut to its longest edge; its ends are trimmed at 45
        degrees with the edge of the quilt.
    """
    mirror = 1 if joined.first is Joining.ROWS else -1
    lines = _long_gaps(diamond)
    has_squares = joined.join is Join.COVERED and joined.corner_squares is not None
    strips = [strip for face in faces for strip in _alike(face, "blocks", _short_gaps(diamond), diamond, mirror)]
    for face in faces:
        if has_squares and face.shows > 0:
            pieces = [_Gap(diamond.block, span, line.t) for line in lines for span in _block_spans(diamond, line)]
            strips += _alike(face, "diagonal rows", pieces, diamond, mirror, along_t=True)
            strips += _corner_squares(joined.corner_squares or "", diamond, lines, face, mirror)
            continue
        for one in _alike(face, "diagonal rows", lines, diamond, mirror, along_t=True):
            strips.append(replace(one, is_pieced=is_longer_than_fabric(project, numbers, one.fabric, one.long)))
    return tuple(strips)


def diagonal_rows(diamond: Diamond) -> tuple[range, ...]:
    """The places of the blocks of each diagonal row, from the lower right row to the upper left one."""
    across, down = diamond.across - 1, diamond.down - 1
    return tuple(range(abs(v), min(2 * across + v, 2 * down - v) + 1) for v in range(-across, down + 1))


def _s(diamond: Diamond, u: float) -> float:
    """Middle of the block at place u of its diagonal row."""
    return (u - (diamond.across + diamond.down - 2) / 2) * diamond.pitch


def _t(diamond: Diamond, row: int) -> float:
    """Middle line of a diagonal row, counted from the lower right."""
    return (row - (diamond.across + diamond.down - 2) / 2) * diamond.pitch


def _short_gaps(diamond: Diamond) -> list[_Gap]:
    half, between = diamond.shown / 2, diamond.between
    gaps = []
    for row, places in enumerate(diagonal_rows(diamond)):
        middle = _t(diamond, row)
        for u in range(places.start, places.stop + 1):
            end = _s(diamond, u) - half
            gaps.append(_Gap(diamond.block, (end - between, end), (middle - half, middle + half)))
    return gaps


def _long_gaps(diamond: Diamond) -> list[_Gap]:
    """The joins before, between and after the diagonal rows; the outer two hold corner triangles."""
    half, between, seam = diamond.shown / 2, diamond.between, diamond.seam
    raw = box((-diamond.wide / 2, -diamond.high / 2), (diamond.wide / 2, diamond.high / 2))
    gaps = []
    for row in range(diamond.across + diamond.down):
        low = _t(diamond, row) - half - between
        band = _band(raw, low - seam, low + between + seam)
        start, end = extent(band, 1 / ROOT_2, 1 / ROOT_2)
        gaps.append(_Gap(end - start, (start, end), (low, low + between)))
    return gaps


def _block_spans(diamond: Diamond, line: _Gap) -> Iterator[tuple[float, float]]:
    """Along one long join, where blocks lie on either side of it."""
    rows = diagonal_rows(diamond)
    row = round((line.t[1] + diamond.shown / 2) / diamond.pitch + (diamond.across + diamond.down - 2) / 2)
    beside = [places for index, places in enumerate(rows) if index in (row - 1, row)]
    for u in range(min(one.start for one in beside), max(one.stop for one in beside)):
        yield _s(diamond, u) - diamond.shown / 2, _s(diamond, u) + diamond.shown / 2


def _band(outline: Polygon, low: float, high: float) -> Polygon:
    """The part of an outline between two lines along the diagonal rows."""
    upper = clip(outline, -1 / ROOT_2, 1 / ROOT_2, high)
    return clip(upper, 1 / ROOT_2, -1 / ROOT_2, -low)


def _laid(s: tuple[float, float], t: tuple[float, float], diamond: Diamond, mirror: int) -> Polygon:
    """A rectangle of the diagonal frame as it lies in the quilt, out to the raw edge."""
    corners = ((s[0], t[0]), (s[1], t[0]), (s[1], t[1]), (s[0], t[1]))
    placed: Polygon = tuple(((a - b) / ROOT_2, (a + b) / ROOT_2) for a, b in corners)
    x, y = diamond.wide / 2, diamond.high / 2
    for nx, ny, r in ((1.0, 0.0, x), (-1.0, 0.0, x), (0.0, 1.0, y), (0.0, -1.0, y)):
        placed = clip(placed, nx, ny, r)
    return _turned(placed, mirror, 1)


def _alike(
    face: Face, where: str, gaps: list[_Gap], diamond: Diamond, mirror: int, *, along_t: bool = False
) -> list[JoiningStrip]:
    """Strips of one face, those of one length together; a long one shows from its lower seam line upward."""
    by_length: dict[float, list[_Gap]] = {}
    for gap in gaps:
        by_length.setdefault(round(gap.long, 6), []).append(gap)
    made = []
    for alike in by_length.values():
        front: tuple[Polygon, ...] = ()
        if face.shows > TOLERANCE_IN:
            front = tuple(
                _laid(one.s, (one.t[0], one.t[0] + face.shows), diamond, mirror)
                if along_t
                else _laid((one.s[0], one.s[0] + face.shows), one.t, diamond, mirror)
                for one in alike
            )
        made.append(JoiningStrip(face.named(where), face.fabric, face.cut, alike[0].long, len(alike), front))
    return made


def _corner_squares(
    fabric: str, diamond: Diamond, lines: list[_Gap], face: Face, mirror: int
) -> Iterator[JoiningStrip]:
    """Where the strips cross; those at the ends of the long strips are cut longer, out to the edge of the quilt."""
    seam = diamond.seam
    inner: list[Polygon] = []
    ends: dict[float, list[Polygon]] = {}
    for line in lines:
        spans = list(_block_spans(diamond, line))
        inner += [_laid((one[1], next_one[0]), line.t, diamond, mirror) for one, next_one in pairwise(spans)]
        for end in ((line.s[0], spans[0][0]), (spans[-1][1], line.s[1])):
            ends.setdefault(round(end[1] - end[0] + seam, 6), []).append(_laid(end, line.t, diamond, mirror))
    if inner:
        yield JoiningStrip("corner square", fabric, face.shows + 2 * seam, face.cut, len(inner), tuple(inner))
    for long, areas in ends.items():
        yield JoiningStrip("corner square at an end", fabric, face.cut, long, len(areas), tuple(areas))
