"""Borders round the joined blocks, from the inside out.

A border is cut to the quilt as measured through its middle, both opposite strips alike. Each strip adds its cut
width less two seams: one goes into the seam to the quilt, the other under the binding or the next border.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, floor

from stitchflip.finishing.joined.sizes import area_between
from stitchflip.finishing.measures import MITER_SPARE
from stitchflip.finishing.quilt_model import BorderPlan
from stitchflip.lengths import TOLERANCE_IN, Unit
from stitchflip.piecing.model import Polygon
from stitchflip.project.model import Border, BorderCorners


def border_adds(cut: float, seam: float) -> float:
    """What a border adds on each side, raw edge to raw edge; nothing when its seams use it up.

    Args:
        cut: Cut width, inches.
        seam: Seam as stitched, inches.

    Example:
        >>> border_adds(3.5, 0.25)
        3.0
    """
    return max(0.0, cut - 2 * seam)


def mitered_length(edge: float, cut: float, unit: Unit) -> float:
    """Cut length of a mitered border strip: the edge, the border's width at both ends, and 2 in (5 cm) to spare.

    Args:
        edge: Edge of the quilt, raw edge to raw edge, inches.
        cut: Cut width of the border, inches.
        unit: The maker's unit.

    Source:
        Border yardage thread (60 x 72), Quiltingboard,
        https://www.quiltingboard.com/main-f1/amount-yardage-pieced-quilt-t65217.html

    Example:
        >>> mitered_length(72, 4, Unit.INCH)
        82.0
    """
    return edge + 2 * cut + MITER_SPARE.of(unit)


def lengthwise_need(cut: float, long: float, usable: float) -> float:
    """Length of fabric that gives all four strips of a border whole, cut along it instead of across.

    Args:
        cut: Cut width of the border, inches.
        long: Cut length of its longest strip, inches.
        usable: Usable width of the fabric, inches.

    Returns:
        One length when the four lie side by side, else as many as it takes; inches, without straightening.

    Source:
        Border Tips and Techniques, quilt shop, https://www.fabricessentials.com/border-tips.htm

    Example:
        >>> lengthwise_need(10.5, 90, 42), lengthwise_need(12, 90, 42)
        (90, 180)
    """
    side_by_side = max(1, floor(usable / cut + TOLERANCE_IN))
    return ceil(4 / side_by_side) * long


def spacer_cut(inner: float, border_inner: float, seam: float) -> float:
    """Cut width of a plain border that makes a quilt fit a pieced border.

    Args:
        inner: Finished size of the quilt, inches.
        border_inner: Finished size the pieced border goes round, inches.
        seam: Seam as stitched, inches.

    Returns:
        Half of what is missing and two seams, inches; no more than two seams when the quilt is too large already.

    Source:
        Border of 25 units of 3 in round a center of 74 (2009),
        https://skattebo-skattebo.blogspot.com/2009/01/grrrrrrrr-who-is-math-teacher.html

    Example:
        >>> spacer_cut(74, 25 * 3, 0.25)
        1.0
    """
    return (border_inner - inner) / 2 + 2 * seam


def sashing_for(block: float) -> float:
    """A width of sashing in golden proportion to a block, finished: 1.618 b / 4.

    Args:
        block: Finished side of a block, inches.

    Source:
        Mathing the Yardage II (2020), https://sherriquiltsalot.com/2020/04/15/mathing-the-yardage-ii/

    Example:
        >>> round(sashing_for(9), 2)
        3.64
    """
    return 1.618 * block / 4


def plan_borders(
    borders: Sequence[Border], wide: float, high: float, seam: float, unit: Unit
) -> tuple[tuple[BorderPlan, ...], float, float]:
    """All borders, and the size they make of the quilt.

    Args:
        borders: As the project says them, from the inside out.
        wide: The quilt without borders, raw edge to raw edge, inches.
        high: The same from top to bottom, inches.
        seam: Seam as stitched, inches.
        unit: The maker's unit.

    Returns:
        The borders, then width and height raw edge to raw edge.
    """
    plans = []
    for index, border in enumerate(borders):
        adds = border_adds(border.cut.inches, seam)
        outer = (wide + 2 * adds, high + 2 * adds)
        is_last = index == len(borders) - 1
        plans.append(_planned(border, (wide, high), outer, seam, unit, rest=0.0 if is_last else seam))
        wide, high = outer
    return tuple(plans), wide, high


def _planned(
    border: Border, inner: tuple[float, float], outer: tuple[float, float], seam: float, unit: Unit, *, rest: float
) -> BorderPlan:
    """One border; `rest` of its outer edge goes into the next seam."""
    (wide, high), cut = inner, border.cut.inches
    sides, ends = high, outer[0]
    corner_square = 0.0
    match border.corners:
        case BorderCorners.BUTTED:
            pass
        case BorderCorners.MITERED:
            sides, ends = mitered_length(high, cut, unit), mitered_length(wide, cut, unit)
        case BorderCorners.SQUARES:
            ends, corner_square = wide, cut
    line = (wide / 2 - seam, high / 2 - seam)
    edge = (outer[0] / 2 - rest, outer[1] / 2 - rest)
    front, corners = _areas(border.corners, line, edge) if outer[0] > wide else ((), ())
    return BorderPlan(
        fabric=border.fabric,
        cut=cut,
        corners=border.corners.value,
        sides_long=sides,
        ends_long=ends,
        corner_fabric=border.corner_fabric or border.fabric if corner_square else "",
        corner_square=corner_square,
        front=front,
        corner_places=corners,
        cut_along=border.cut_along.value,
    )


def _areas(
    corners: BorderCorners, line: tuple[float, float], edge: tuple[float, float]
) -> tuple[tuple[Polygon, ...], tuple[Polygon, ...]]:
    """What shows of the two sides and the two ends, and of the corner squares: from seam line to outer edge."""
    (x, y), (far_x, far_y) = line, edge
    if corners is BorderCorners.MITERED:
        right: Polygon = ((x, -y), (far_x, -far_y), (far_x, far_y), (x, y))
        top: Polygon = ((x, y), (far_x, far_y), (-far_x, far_y), (-x, y))
        left, bottom = (tuple((-a, -b) for a, b in one) for one in (right, top))
        return (left, right, top, bottom), ()
    sides = (area_between((-far_x, -x), (-y, y)), area_between((x, far_x), (-y, y)))
    reach = (-x, x) if corners is BorderCorners.SQUARES else (-far_x, far_x)
    ends = (area_between(reach, (y, far_y)), area_between(reach, (-far_y, -y)))
    if corners is BorderCorners.BUTTED:
        return (*sides, *ends), ()
    squares = tuple(area_between(a, b) for b in ((y, far_y), (-far_y, -y)) for a in ((-far_x, -x), (x, far_x)))
    return (*sides, *ends), squares
