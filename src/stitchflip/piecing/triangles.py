"""Triangles from squares, and what hangs on 45 and 60 degrees: the sums that go wrong at the cutting table.

A square cut from corner to corner gives triangles whose seams take more than two allowances from its side, and the
hexagon has three measures that are easily taken for each other. Every function takes the seam, so that nothing here
depends on 1/4 in, and returns the plain value; whoever prints it puts it on the cutting grid.
"""

from __future__ import annotations

from math import radians, sqrt, tan

from stitchflip.project.model import Triangles
from stitchflip.values import dataclass

_ROOT_2 = sqrt(2)
_ROOT_3 = sqrt(3)

_HALF = {Triangles.EXACT: 2 + _ROOT_2, Triangles.TRADE: 3.5, Triangles.OVERSIZE: 4.5}
"""Seams that a square cut once loses: at 1/4 in 0.8536, the usual 7/8, and 1 1/8 for trimming afterward."""

_QUARTER = {Triangles.EXACT: 2 + 2 * _ROOT_2, Triangles.TRADE: 5.0, Triangles.OVERSIZE: 6.0}
"""Seams that a square cut twice loses: at 1/4 in 1.2071, the usual 1 1/4, and 1 1/2 for trimming afterward."""


def half_square_cut(leg: float, seam: float, how: Triangles = Triangles.EXACT) -> float:
    """Square to cut once from corner to corner for two triangles, by the short side that shows.

    Both right-angled sides lie on the straight grain, as corner triangles want it.

    Args:
        leg: Finished short side of a triangle, inches.
        seam: Effective seam, inches.
        how: With the exact addition, the usual one (3 1/2 seams), or larger for trimming.

    Returns:
        Side of the square as cut, inches.

    Example:
        >>> half_square_cut(2, 0.25, Triangles.TRADE), round(half_square_cut(2, 0.25), 3)
        (2.875, 2.854)

    Source:
        The seam takes one allowance at the square corner twice and root 2 of it along the slant:
        learnhowtoquilt.com, Why Does the 1/2 Square Triangle Formula Require 7/8?
    """
    return leg + _HALF[how] * seam


def quarter_square_cut(long_side: float, seam: float, how: Triangles = Triangles.EXACT) -> float:
    """Square to cut twice from corner to corner for four triangles, by the long side that shows.

    The long side lies on the straight grain, as side triangles want it.

    Args:
        long_side: Finished long side of a triangle, inches.
        seam: Effective seam, inches.
        how: With the exact addition, the usual one (5 seams), or larger for trimming.

    Returns:
        Side of the square as cut, inches.

    Example:
        >>> quarter_square_cut(3, 0.25, Triangles.TRADE), round(quarter_square_cut(3, 0.25), 3)
        (4.25, 4.207)
    """
    return long_side + _QUARTER[how] * seam


def corner_triangle_cut(block: float, seam: float, how: Triangles = Triangles.EXACT) -> float:
    """Square to cut once for two corner triangles of a square set on point.

    Args:
        block: Finished side of the square, inches; it is the long side of the triangle.
        seam: Effective seam, inches.
        how: As for `half_square_cut`.

    Example:
        >>> round(corner_triangle_cut(6, 0.25, Triangles.TRADE), 2)
        5.12
    """
    return half_square_cut(block / _ROOT_2, seam, how)


def side_triangle_cut(block: float, seam: float, how: Triangles = Triangles.EXACT) -> float:
    """Square to cut twice for four side triangles between squares set on point.

    Args:
        block: Finished side of the square, inches; it is the short side of the triangle.
        seam: Effective seam, inches.
        how: As for `quarter_square_cut`.

    Example:
        >>> round(side_triangle_cut(6, 0.25, Triangles.TRADE), 2)
        9.74
    """
    return quarter_square_cut(block * _ROOT_2, seam, how)


@dataclass(frozen=True, slots=True)
class SquareInASquare:
    """What a square on point inside four corner triangles is cut from; inches."""

    center: float
    """Side of the middle square as cut."""
    corners: float
    """Side of each of the two squares that are cut once for the corners."""


def square_in_a_square(finished: float, seam: float, how: Triangles = Triangles.EXACT) -> SquareInASquare:
    """Middle square and corner squares of a block that finishes at a size.

    Args:
        finished: Finished side of the whole block, inches.
        seam: Effective seam, inches.
        how: How large the corner squares are cut; the middle is exact.

    Example:
        >>> block = square_in_a_square(12, 0.25, Triangles.TRADE)
        >>> round(block.center, 3), block.corners
        (8.985, 6.875)
    """
    return SquareInASquare(finished / _ROOT_2 + 2 * seam, half_square_cut(finished / 2, seam, how))


def hexagon_side(across_flats: float) -> float:
    """Side of a regular hexagon by its width from flat to flat; quilters name a hexagon by its side.

    Example:
        >>> round(hexagon_side(2.75), 3)
        1.588
    """
    return across_flats / _ROOT_3


def hexagon_across_flats(side: float) -> float:
    """Width of a regular hexagon from flat to flat by its side.

    Example:
        >>> round(hexagon_across_flats(1), 3)
        1.732
    """
    return side * _ROOT_3


def triangle_side(height: float) -> float:
    """Side of a 60-degree triangle by its height.

    Example:
        >>> round(triangle_side(3), 3)
        3.464
    """
    return 2 * height / _ROOT_3


def triangle_cut_height(height: float, seam: float, *, tip_is_blunt: bool = False) -> float:
    """Height to cut a 60-degree triangle, or the strip it comes from.

    Args:
        height: Finished height, inches.
        seam: Effective seam, inches.
        tip_is_blunt: False: cut with its whole tip, which stands two seams above the finished one. True: the tip is
            cut off one seam above it, as rulers with a blunt tip do.

    Example:
        >>> triangle_cut_height(3, 0.25), triangle_cut_height(3, 0.25, tip_is_blunt=True)
        (3.75, 3.5)
    """
    return height + (2 if tip_is_blunt else 3) * seam


def star_block(diamond_side: float) -> float:
    """Finished side of a block with an eight-pointed star, by the finished side of its 45-degree diamonds.

    Example:
        >>> round(star_block(3), 2)
        10.24
    """
    return diamond_side * (2 + _ROOT_2)


def corner_extra(angle: float, seam: float) -> float:
    """How much farther than the finished corner the raw edge reaches along a side, at a corner of some angle.

    A strip needs so much at each end beyond what shows: 1/4 in at 90 degrees, 0.43 in at 60, 0.60 in at 45.

    Args:
        angle: Angle of the corner, degrees, above 0 and below 180.
        seam: Effective seam, inches.

    Example:
        >>> [round(corner_extra(angle, 0.25), 2) for angle in (90, 60, 45, 30)]
        [0.25, 0.43, 0.6, 0.93]
    """
    return seam / tan(radians(angle) / 2)
