"""The binding: length needed and made, strips, corners by their angle, and where to start.

Double-fold, cut straight, joined diagonally. Every piece of a set is bound from a binding of its own, so each pays
for its own tails and joins.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import radians, tan

from stitchflip.finishing.binding_start import Keep, best_start, start_in_words
from stitchflip.finishing.binding_strips import (
    AddedPieces,
    Join,
    binding_stock,
    join_cost,
    join_for_all,
    joined_length,
    least_strips,
    pieces_to_add,
)
from stitchflip.finishing.binding_widths import DoubleFold, four_fronts_and_one, least_cut_width
from stitchflip.finishing.edges import corner_angles, trim_edges
from stitchflip.finishing.measures import BINDING_PIECE_STEP
from stitchflip.finishing.model import BindingCorner, BindingPlan
from stitchflip.piecing.model import CenterPoint, Point, Polygon
from stitchflip.project.model import Project
from stitchflip.project.numbers import Numbers


def plan_binding(
    project: Project, numbers: Numbers, trim_taped: Polygon, points: Iterable[CenterPoint] = ()
) -> BindingPlan:
    """The binding of one piece, and the strips for all pieces alike.

    Args:
        project: For the fabric, the unit and how many alike.
        numbers: For cut width, seam, loft, extra and usable width.
        trim_taped: The squared-up outline, taped, counter-clockwise.
        points: The center's points, when joins are to keep off those that reach close to an edge.

    Returns:
        Lengths, counts, corners, and the start whose joins keep off the corners.

    Raises:
        BuildError: If strips are no longer than the joins that add them.
    """
    sides = trim_edges(project, trim_taped)
    perimeter = sum(side.length for side in sides)
    need = binding_need(perimeter, len(sides), numbers)
    cost = numbers.binding_join or join_cost(numbers.binding_cut, numbers.seam, Join.DIAGONAL)
    fabric = next((one for one in project.fabrics if one.name == project.binding.fabric), None)
    stock = binding_stock(fabric, numbers)
    joined = join_for_all(need, cost, project.how_many, stock)
    keep = Keep.of(project.units, cost, tuple(_taped(point, numbers) for point in points if point.points_at_edge))
    start = best_start(sides, joined.lengths, keep, surplus=joined.made - need)
    front = numbers.binding_seam
    cut = DoubleFold(numbers.binding_cut, numbers.binding_seam, front, numbers.loft)
    rule = DoubleFold(four_fronts_and_one(front), front, front, numbers.loft)
    longest = max((*stock.on_hand, stock.further))
    return BindingPlan(
        fabric=project.binding.fabric,
        cut=numbers.binding_cut,
        seam=numbers.binding_seam,
        perimeter=perimeter,
        need=need,
        strips_per_piece=len(joined.lengths),
        strips=joined.strips,
        made=joined.made,
        strip_length=longest,
        shows_on_back=cut.shows_on_back,
        passes_stitching=cut.passes_stitching,
        corners=tuple(BindingCorner(angle, corner_stop(angle, numbers.binding_seam)) for angle in corner_angles(sides)),
        start_at=start_in_words(project.units, sides, start, keep),
        joins_at=start.joins_at,
        bound=least_strips(need, cost, project.how_many, longest),
        least_cut=least_cut_width(front, front, numbers.loft, numbers.binding_passes),
        rule_cut=rule.cut,
        rule_passes=rule.passes_stitching,
        strip_lengths=joined.lengths,
    )


def binding_need(perimeter: float, corners: int, numbers: Numbers) -> float:
    """Length of binding to have: once round, the tails, and a little for each corner.

    Args:
        perimeter: Round the squared-up piece, inches.
        corners: How many corners the binding turns.
        numbers: For the extra, which ranges from 0 to 24 in in print.
    """
    return perimeter + numbers.binding_extra + corners * numbers.binding_extra_per_corner


def corner_stop(angle: float, seam: float) -> float:
    """How far before a corner to stop, so that the next seam begins where both stitching lines meet.

    Args:
        angle: Inside angle of the corner, degrees, above 0 and below 180.
        seam: The binding's seam, inches.

    Example:
        >>> corner_stop(90, 0.25), round(corner_stop(120, 0.25), 3)
        (0.25, 0.144)
    """
    return round(seam / tan(radians(angle) / 2), 12)


def with_strips(project: Project, plan: BindingPlan, strips: int) -> tuple[float, AddedPieces]:
    """What a piece's binding comes to with fewer strips than planned, and what would close the gap.

    Args:
        project: For the unit.
        plan: The binding as planned.
        strips: How many of its strips there really are.

    Returns:
        The length made (inches), and the one or two pieces to add.
    """
    made = joined_length(plan.strip_lengths[:strips], plan.cut)
    return made, pieces_to_add(plan.need, made, plan.cut, BINDING_PIECE_STEP.of(project.units))


def _taped(point: CenterPoint, numbers: Numbers) -> Point:
    """A point of the center as the tape finds it."""
    return (point.at[0] * (1 - numbers.draw_up_x), point.at[1] * (1 - numbers.draw_up_y))
