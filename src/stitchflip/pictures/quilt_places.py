"""Blocks where they lie in the quilt: every patch turned, moved, and ended at the seam between two blocks."""

from __future__ import annotations

from collections import defaultdict
from itertools import product
from typing import TYPE_CHECKING

from stitchflip.pictures.drawing import taped
from stitchflip.pictures.fabric_parts import parts
from stitchflip.piecing.geometry import TOLERANCE, box, clip_all, counts, half_planes, shifted, turned
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.finishing.quilt_model import PlacedBlock, QuiltPlan
    from stitchflip.piecing.model import Build, Point, Polygon, SewnPiece


@dataclass(frozen=True, slots=True)
class PlacedPatch:
    """One patch of one block, from the middle of the quilt."""

    block: int
    """Index of the block."""
    piece: SewnPiece
    fabric: str
    polygon: Polygon


def patches_of_blocks(quilt: QuiltPlan, builds: tuple[Build, ...]) -> Iterator[PlacedPatch]:
    """Every patch that shows on the front, block after block.

    Args:
        quilt: Where the blocks lie.
        builds: The builds of the kinds of block.
    """
    of_kind = [list(_patches_of(build)) for build in builds]
    for index, (block, cell) in enumerate(zip(quilt.blocks, block_cells(quilt), strict=True)):
        planes = half_planes(cell)
        for piece, fabric, polygon in of_kind[block.kind]:
            seen = clip_all(placed(block, polygon), planes)
            if counts(seen):
                yield PlacedPatch(index, piece, fabric, seen)


def _patches_of(build: Build) -> Iterator[tuple[SewnPiece, str, Polygon]]:
    """The patches of a block as it is squared up, taped."""
    for piece in build.pieces:
        for polygon in piece.visible:
            for fabric, part in parts(piece, polygon):
                yield piece, fabric, taped(build, part)


def placed(block: PlacedBlock, polygon: Polygon) -> Polygon:
    """A polygon of a block, turned and moved to where the block lies."""
    return shifted(turned(polygon, block.turned), *block.middle)


def block_outline(block: PlacedBlock) -> Polygon:
    """The edges of a block as joined, where it lies."""
    return placed(block, box((-block.wide / 2, -block.high / 2), (block.wide / 2, block.high / 2)))


def block_cells(quilt: QuiltPlan) -> tuple[Polygon, ...]:
    """What of each block the front can show: its edges, or the seam line where two blocks overlap in a seam."""
    if not quilt.blocks:
        return ()
    whole = [_limits(block) for block in quilt.blocks]
    limits = [list(one) for one in whole]
    reach = max(max(block.wide, block.high) for block in quilt.blocks)
    near: defaultdict[tuple[int, int], list[int]] = defaultdict(list)
    places = [_own_place(block) for block in quilt.blocks]
    for index, (x, y) in enumerate(places):
        near[int(x // reach), int(y // reach)].append(index)
    for index, (x, y) in enumerate(places):
        column, row = int(x // reach), int(y // reach)
        for dx, dy in product((-1, 0, 1), repeat=2):
            for other in near[column + dx, row + dy]:
                if other > index:
                    _part(whole[index], whole[other], limits[index], limits[other])
    return tuple(
        turned(box((x0, y0), (x1, y1)), block.turned)
        for block, (x0, y0, x1, y1) in zip(quilt.blocks, limits, strict=True)
    )


def _own_place(block: PlacedBlock) -> Point:
    """The middle of a block in the frame in which blocks stand upright."""
    ((x, y),) = turned((block.middle,), -block.turned)
    return x, y


def _limits(block: PlacedBlock) -> tuple[float, float, float, float]:
    x, y = _own_place(block)
    return (x - block.wide / 2, y - block.high / 2, x + block.wide / 2, y + block.high / 2)


def _part(one: Sequence[float], other: Sequence[float], one_seen: list[float], other_seen: list[float]) -> None:
    """Part two blocks that overlap, in the middle of the overlap, across its narrow way."""
    across = min(one[2], other[2]) - max(one[0], other[0])
    up = min(one[3], other[3]) - max(one[1], other[1])
    if across < TOLERANCE or up < TOLERANCE:
        return
    axis = 0 if across < up else 1
    seam = (min(one[axis + 2], other[axis + 2]) + max(one[axis], other[axis])) / 2
    low, high = (one_seen, other_seen) if one[axis] < other[axis] else (other_seen, one_seen)
    low[axis + 2] = min(low[axis + 2], seam)
    high[axis] = max(high[axis], seam)
