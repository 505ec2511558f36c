"""The binding: length needed and made, strips, corners by their angle, and where to start.

Double-fold, joined diagonally; cut straight, or on the bias where the edge curves. Every piece of a set, and every
panel of a base that is cut apart, is bound from a binding of its own, so each pays for its own tails and joins.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import radians, tan

from stitchflip.finishing.bias import bias_squares
from stitchflip.finishing.binding_start import Keep, best_start, start_in_words
from stitchflip.finishing.binding_strips import (
    AddedPieces,
    Join,
    JoinedStrips,
    binding_stock,
    join_cost,
    join_for_all,
    joined_length,
    least_strips,
    pieces_to_add,
)
from stitchflip.finishing.binding_widths import DoubleFold, four_fronts_and_one, least_cut_width
from stitchflip.finishing.edges import Edge as TrimEdge
from stitchflip.finishing.edges import corner_angles, trim_edges
from stitchflip.finishing.measures import BINDING_PIECE_STEP
from stitchflip.finishing.model import BindingCorner, BindingPlan
from stitchflip.piecing.model import CenterPoint, Point, Polygon
from stitchflip.piecing.shapes import panel_polygon
from stitchflip.project.model import Edge, Fabric, Grain, Project
from stitchflip.project.numbers import Numbers


def plan_binding(
    project: Project, numbers: Numbers, trim_taped: Polygon, points: Iterable[CenterPoint] = ()
) -> BindingPlan:
    """The binding of one piece, and the strips for all pieces alike.

    Args:
        project: For the fabric, the unit and how many alike.
        numbers: For cut width, seam, loft, extra and usable width.
        trim_taped: The squared-up outline, taped, counter-clockwise; of a base that is cut apart, the whole of it.
        points: The center's points, when joins are to keep off those that reach close to an edge.

    Returns:
        Lengths, counts, corners, and the start whose joins keep off the corners; with an edge that is finished in
        another way only the length of the edge.

    Raises:
        BuildError: If strips are no longer than the joins that add them.
    """
    panels = panels_of(project)
    outline = trim_taped if panels == 1 else panel_polygon(project, numbers)
    sides = trim_edges(project, outline)
    if project.binding.edge is not Edge.BINDING:
        return _no_binding(project, numbers, sides, panels)
    cost = numbers.binding_join or join_cost(numbers.binding_cut, numbers.seam, Join.DIAGONAL)
    near = () if panels > 1 else tuple(_taped(point, numbers) for point in points if point.points_at_edge)
    return _plan_for(project, numbers, sides, cost, Keep.of(project.units, cost, near), panels)


def panels_of(project: Project) -> int:
    """How many pieces are bound from one base: its panels when it is cut apart, else one."""
    return 1 if project.cut_apart is None else project.cut_apart.across * project.cut_apart.down


def grain_of(project: Project, sides: Iterable[TrimEdge]) -> Grain:
    """How binding strips are cut: as the maker says, else on the bias where the edge curves.

    Args:
        project: For what the maker says.
        sides: The edges of the piece that is bound.
    """
    if project.binding.grain is not None:
        return project.binding.grain
    return Grain.BIAS if any(side.is_curve for side in sides) else Grain.STRAIGHT


def binding_fabric(project: Project) -> Fabric | None:
    """The fabric the binding is cut from, as the project lists it; None when it does not."""
    return next((one for one in project.fabrics if one.name == project.binding.fabric), None)


def _plan_for(
    project: Project, numbers: Numbers, sides: tuple[TrimEdge, ...], cost: float, keep: Keep, panels: int
) -> BindingPlan:
    perimeter = sum(side.length for side in sides)
    angles = corner_angles(sides)
    need = binding_need(perimeter, len(angles), numbers)
    how_many = project.how_many * panels
    grain = grain_of(project, sides)
    stock = binding_stock(binding_fabric(project), numbers)
    longest = max((*stock.on_hand, stock.further))
    if grain is Grain.BIAS:
        joined, longest = _bias(project, numbers, need, cost, how_many)
        bound = joined.strips
    else:
        joined = join_for_all(need, cost, how_many, stock)
        bound = least_strips(need, cost, how_many, longest)
    start = best_start(sides, joined.lengths, keep, surplus=joined.made - need)
    front = numbers.binding_seam
    cut = DoubleFold(numbers.binding_cut, numbers.binding_seam, front, numbers.loft)
    rule = DoubleFold(four_fronts_and_one(front), front, front, numbers.loft)
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
        corners=tuple(BindingCorner(angle, corner_stop(angle, numbers.binding_seam)) for angle in angles),
        start_at=start_in_words(project.units, sides, start, keep),
        joins_at=start.joins_at,
        bound=bound,
        least_cut=least_cut_width(front, front, numbers.loft, numbers.binding_passes),
        rule_cut=rule.cut,
        rule_passes=rule.passes_stitching,
        strip_lengths=joined.lengths,
        grain=grain.value,
        pieces=panels,
    )


def _bias(project: Project, numbers: Numbers, need: float, cost: float, how_many: int) -> tuple[JoinedStrips, float]:
    """One continuous strip from each square, and how long each is."""
    usable = bias_width(project, numbers)
    squares = bias_squares(need, numbers.binding_cut, numbers.seam, usable, cost, project.units)
    return JoinedStrips((squares.each,) * squares.count, squares.count * how_many, squares.made), squares.each


def bias_width(project: Project, numbers: Numbers) -> float:
    """The widest square that the binding fabric gives, inches: its usable width, or its pieces on hand.

    Args:
        project: For the binding fabric.
        numbers: For the usable width and what straightening a piece takes off.
    """
    fabric = binding_fabric(project)
    measured = fabric.usable_width if fabric is not None else None
    usable = (numbers.usable_width if measured is None else measured.inches) * (1 - numbers.prewash_across)
    if fabric is not None and fabric.on_hand and fabric.only_on_hand:
        loss = numbers.fat_quarter_straightening
        return max(min(piece.wide.inches, piece.long.inches) - loss for piece in fabric.on_hand)
    return usable


def _no_binding(project: Project, numbers: Numbers, sides: tuple[TrimEdge, ...], panels: int) -> BindingPlan:
    """The plan of a piece that has another edge: how long the edge is, and no strips."""
    return BindingPlan(
        fabric=project.binding.fabric,
        cut=0.0,
        seam=numbers.binding_seam,
        perimeter=sum(side.length for side in sides),
        need=0.0,
        strips_per_piece=0,
        strips=0,
        made=0.0,
        strip_length=0.0,
        shows_on_back=0.0,
        passes_stitching=0.0,
        corners=(),
        start_at="",
        joins_at=(),
        bound=0,
        pieces=panels,
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
