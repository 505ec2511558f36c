"""How large the squares for setting triangles are cut: exactly, with the usual additions, or oversize.

Side triangles come from a square cut twice, so that their long side at the edge lies on the straight grain; corner
triangles from a square cut once, so that their short sides do. The two rules must not be swapped: with the addition
of a corner on a side square the triangle comes out too small, and its edge on the bias.
"""

from __future__ import annotations

from math import ceil, sqrt

from stitchflip.finishing.joined.on_point import Diamond, setting_places
from stitchflip.finishing.measures import EXACT_STEP, OVERSIZE
from stitchflip.finishing.quilt_model import SettingTriangles
from stitchflip.lengths import CM_PER_INCH, Rounding, Unit, round_to
from stitchflip.piecing.triangles import half_square_cut, quarter_square_cut
from stitchflip.project.model import Joined, Triangles

TRADE_ROOT_2 = 1.414
"""The root of 2 as it stands in print."""
_CUT_STEP = {Unit.INCH: 1 / 8, Unit.CM: 0.1 / CM_PER_INCH}


def usual_additions(seam: float, unit: Unit) -> tuple[float, float]:
    """What is added for a side square and for a corner square, up to the next 1/8 in or 1 mm.

    Args:
        seam: Seam as stitched, inches.
        unit: The maker's unit.

    Returns:
        1 1/4 and 7/8 in with a seam of 1/4 in. With 0.75 cm they are 3.7 and 2.6 cm; the 3.5 and 2.5 in print round
        down, so that triangles come out 1.2 and 0.6 mm small.

    Source:
        Inches or centimetres?, Patchwork & Quilting magazine forum (2008),
        https://www.pandqmagazine.com/forums/postings.asp?th=13

    Example:
        >>> usual_additions(0.25, Unit.INCH)
        (1.25, 0.875)
    """
    step = _CUT_STEP[unit]
    side, corner = quarter_square_cut(0.0, seam), half_square_cut(0.0, seam)
    return round_to(side, step, Rounding.UP), round_to(corner, step, Rounding.UP)


def usual_squares(block: float, between: float, seam: float, unit: Unit) -> tuple[float, float]:
    """Side square and corner square as the trade reckons them, never smaller than needed.

    Args:
        block: Finished side of a block, inches.
        between: What shows between two blocks, inches.
        seam: Seam as stitched, inches.
        unit: The maker's unit.

    Returns:
        1.414 b + 1 1/4 and b / 1.414 + 7/8, up to the next 1/8 in (in centimeters with their own additions, up to
        the next 1 mm); strips between the blocks count to b.

    Source:
        Quilt triangle chart for blocks on point, http://lukas.is-a-geek.org/tani/chart.htm

    Example:
        >>> usual_squares(6, 0, 0.25, Unit.INCH)
        (9.75, 5.125)
    """
    step = _CUT_STEP[unit]
    to_side, to_corner = usual_additions(seam, unit)
    pitch = block + between
    side = max(TRADE_ROOT_2 * pitch + to_side, quarter_square_cut(sqrt(2) * pitch, seam))
    leg = pitch + between
    corner = max(leg / TRADE_ROOT_2 + to_corner, half_square_cut(leg / sqrt(2), seam))
    return round_to(side, step, Rounding.UP), round_to(corner, step, Rounding.UP)


def setting_triangles(diamond: Diamond, joined: Joined, fabric: str, unit: Unit, draw_up: float) -> SettingTriangles:
    """The triangles round blocks on point, and the squares they are cut from.

    Args:
        diamond: The setting.
        joined: How large the squares are cut, and which way the diagonal rows run.
        fabric: Name of their fabric.
        unit: The maker's unit.
        draw_up: How much quilting draws the squares in, a fraction: they are quilted whole and then cut.
    """
    seam = diamond.seam
    exact_side = quarter_square_cut(diamond.side_long, seam)
    exact_corner = half_square_cut(diamond.corner_leg, seam)
    if joined.triangles is Triangles.EXACT:
        step = EXACT_STEP.of(unit)
        side, corner = round_to(exact_side, step, Rounding.UP), round_to(exact_corner, step, Rounding.UP)
    else:
        more = OVERSIZE.of(unit) if joined.triangles is Triangles.OVERSIZE else 0.0
        side, corner = (square + more for square in usual_squares(diamond.shown, diamond.between, seam, unit))
    return SettingTriangles(
        fabric=fabric,
        side_count=diamond.side_triangles,
        side_square=side,
        side_squares=ceil(diamond.side_triangles / 4),
        corner_count=4,
        corner_square=corner,
        corner_squares=2,
        exact_side=exact_side,
        exact_corner=exact_corner,
        places=setting_places(diamond, joined.first),
        side_cut=round_to(side / (1 - draw_up), _CUT_STEP[unit], Rounding.UP),
        corner_cut=round_to(corner / (1 - draw_up), _CUT_STEP[unit], Rounding.UP),
    )
