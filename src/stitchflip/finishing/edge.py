"""How the edge of the squared-up piece is finished, and what is sewn through has to do with it.

A binding has a plan of its own for its strips; here is what the other edges are cut from, how far the backing must
reach, and what to do, in sentences with their numbers. A panel of a base that is cut apart has the edge of a piece.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from stitchflip.finishing.bias import bias_squares, bias_strips
from stitchflip.finishing.binding import bias_width, binding_need, grain_of, panels_of
from stitchflip.finishing.binding_strips import Join, join_cost
from stitchflip.finishing.edge_model import EdgePiece, EdgePlan
from stitchflip.finishing.edge_sizes import backing_beyond_edge
from stitchflip.finishing.edges import Edge as TrimEdge
from stitchflip.finishing.edges import corner_angles, edge_named, trim_edges
from stitchflip.finishing.facing import facing_words, plan_facing
from stitchflip.finishing.measures import TOPSTITCH_FROM_EDGE
from stitchflip.finishing.words import size_in_words
from stitchflip.lengths import Speaker
from stitchflip.piecing.geometry import extent, moved
from stitchflip.piecing.model import Polygon
from stitchflip.piecing.shapes import panel_polygon
from stitchflip.project.house import HOUSE
from stitchflip.project.model import Edge, Grain, Project, Through
from stitchflip.project.numbers import Numbers


def plan_edge(project: Project, numbers: Numbers, outline_taped: Polygon) -> EdgePlan:
    """The edge: what it is cut from, what shows of it, and what to do.

    Args:
        project: For how the edge is finished and what is sewn through.
        numbers: For its seam and widths.
        outline_taped: The squared-up outline of the whole, taped, counter-clockwise.

    Returns:
        The plan of the edge; its pieces are for one base (all its panels when it is cut apart).
    """
    panels = panels_of(project)
    outline = outline_taped if panels == 1 else panel_polygon(project, numbers)
    sides = trim_edges(project, outline)
    match project.binding.edge:
        case Edge.BINDING:
            return _binding(project, numbers, sides, panels)
        case Edge.SELF_BINDING:
            return _self_binding(project, numbers, sides)
        case Edge.FACING:
            return _facing(project, numbers, sides, panels)
        case Edge.TURNED_THROUGH:
            return _turned_through(project, numbers, outline, sides)


def edge_fabric(project: Project) -> str:
    """The fabric an edge is cut from: the binding's, or that of the backing when none is named."""
    return project.binding.fabric or project.backing.fabric


def _plan(
    project: Project,
    numbers: Numbers,
    words: Iterator[str],
    *,
    shows: float = 0.0,
    opening: float = 0.0,
    pieces: tuple[EdgePiece, ...] = (),
    bias: tuple[float, int] = (0.0, 0),
) -> EdgePlan:
    return EdgePlan(
        kind=project.binding.edge.value,
        grain=(Grain.BIAS if bias[0] else Grain.STRAIGHT).value,
        seam=numbers.binding_seam,
        shows=shows,
        backing_extra=backing_beyond_edge(project, numbers),
        opening=opening,
        pieces=pieces,
        bias_square=bias[0],
        bias_strips=bias[1],
        words=(*words, *through_words(project, numbers)),
    )


def _binding(project: Project, numbers: Numbers, sides: Sequence[TrimEdge], panels: int) -> EdgePlan:
    if grain_of(project, sides) is not Grain.BIAS:
        return _plan(project, numbers, iter(()), shows=numbers.binding_seam)
    cut, usable = numbers.binding_cut, bias_width(project, numbers)
    join = numbers.binding_join or join_cost(cut, numbers.seam, Join.DIAGONAL)
    need = binding_need(sum(side.length for side in sides), len(corner_angles(sides)), numbers)
    squares = bias_squares(need, cut, numbers.seam, usable, join, project.units)
    strips = bias_strips(need, cut, usable, join, project.units)
    piece = EdgePiece(
        "Binding square for bias strips", edge_fabric(project), squares.side, squares.side, squares.count * panels
    )
    say = Speaker(project.units)

    def words() -> Iterator[str]:
        several = f"{squares.count} squares" if squares.count > 1 else "a square"
        yield (
            f"Bias binding: cut {several} {say.size(squares.side, squares.side)}, halve it once from corner to corner, "
            f"sew the halves together along two of their straight sides, draw lines {say.width(cut)} apart along the "
            "slant, sew the other two straight sides to a tube, shifted by one line, and cut round and round along "
            f"the line with scissors: seams taken off, it gives {say.margin(squares.made)}, and {say.cut(need)} are "
            "needed."
        )
        in_two = f", {strips.in_two} of them in two pieces from the ends of the width" if strips.in_two else ""
        yield (
            f"Or cut strips one by one at 45° from {say.cut(strips.fabric)} of the full width: {strips.count} strips "
            f"{say.margin(strips.long)} long{in_two}, joined diagonally to {say.margin(strips.made)}."
        )
        if any(side.is_curve for side in sides):
            yield (
                "Lay the binding round the curve without pulling it, a little full on an outward curve so that its "
                "fold lies flat on the back; a curve has no corner to stop at."
            )

    return _plan(
        project,
        numbers,
        words(),
        shows=numbers.binding_seam,
        pieces=(piece,),
        bias=(squares.side, strips.count),
    )


def _self_binding(project: Project, numbers: Numbers, sides: Sequence[TrimEdge]) -> EdgePlan:
    say = Speaker(project.units)
    shows, beyond = numbers.binding_seam, backing_beyond_edge(project, numbers)

    def words() -> Iterator[str]:
        yield (
            "Square up front and batting only: fold the backing away from under the ruler, close the cutter after each "
            f"cut, then trim the backing {say.near(beyond)} beyond the trimmed edge."
        )
        yield (
            "Fold the raw edge of the backing in to the trimmed edge, press, and fold it over once more so that "
            f"{say.near(shows)} shows on the front; sew it down along its fold, {say.near(shows)} from the edge."
        )
        if corner_angles(sides):
            yield (
                "At every corner first fold the tip of the backing over the corner of the piece, then both edges: they "
                "meet in a miter; trim what lies double under it, and close the miter by hand."
            )

    return _plan(project, numbers, words(), shows=shows)


def _facing(project: Project, numbers: Numbers, sides: Sequence[TrimEdge], panels: int) -> EdgePlan:
    usable = bias_width(project, numbers)
    facing = plan_facing(project, numbers, sides, edge_fabric(project), usable, panels)
    words = facing_words(Speaker(project.units), facing, sides, numbers.binding_seam)
    strips = 0
    if facing.bias_square:
        need = sum(side.length for side in sides) + numbers.binding_extra
        strips = bias_strips(need, facing.cut, usable, facing.cut, project.units).count
    return _plan(project, numbers, words, pieces=facing.pieces, bias=(facing.bias_square, strips))


def _turned_through(project: Project, numbers: Numbers, outline: Polygon, sides: Sequence[TrimEdge]) -> EdgePlan:
    say, seam = Speaker(project.units), numbers.binding_seam
    longest = max(sides, key=lambda side: round(side.length, 6))
    opening = min(HOUSE["turned_through_opening"].of(project.units), longest.length / 2)
    top = TOPSTITCH_FROM_EDGE.of(project.units)
    turned = moved(outline, -seam)
    (left, right), (low, high) = extent(turned, 1, 0), extent(turned, 0, 1)

    def words() -> Iterator[str]:
        yield (
            f"The squared-up size holds the seam of {say.near(seam)} all round: turned, the piece finishes "
            f"{size_in_words(project, right - left, high - low)} (wide × long)."
        )
        where = "in the curve" if longest.is_curve else f"in the middle of {edge_named(longest.name)}"
        yield (
            f"Lay front and backing right sides together, sew {say.near(seam)} from the trimmed edge all round and "
            f"leave {say.near(opening)} open {where}, both ends locked; trim the backing level with the front, and "
            "the batting close to the seam."
        )
        if corner_angles(sides):
            yield "Clip the corners on the slant, two threads from the stitching."
        if any(side.is_curve for side in sides):
            yield f"Notch the seam allowance along the curve, every {say.near(seam)}, not into the stitching."
        yield (
            "Turn it through the opening, push the corners out with something blunt, press with an iron that the "
            f"batting stands, fold the opening in and topstitch {say.near(top)} from the edge all round, which closes "
            "it."
        )

    return _plan(project, numbers, words(), opening=opening)


def through_words(project: Project, numbers: Numbers) -> Iterator[str]:
    """What follows from what is sewn through: thread on the back, ends to lock, what holds the backing.

    Args:
        project: For what is sewn through and how the edge is finished.
        numbers: For how far apart stitching may be.

    Yields:
        Sentences; none for the usual way, through backing and batting.
    """
    if project.base.through is Through.BACKING_AND_BATTING:
        return
    say = Speaker(project.units)
    thin = project.base.through is Through.BATTING_ON_FOUNDATION
    through = "the batting and its thin foundation" if thin else "the batting"
    yield (
        f"The strips are sewn through {through} only: none of their stitching shows on the back, so thread and locked "
        "ends need not match the backing."
    )
    if thin:
        yield "The foundation stays in: it keeps the batting from drawing up, and the piece is a little stiffer for it."
    when = "blocks are joined, before the quilt is" if project.blocks_in_one > 1 else "strips are sewn, before it is"
    gap = say.near(numbers.widest_gap)
    if project.binding.edge is Edge.TURNED_THROUGH:
        yield (
            f"The edge alone holds the backing once the piece is turned: stitch in the ditch of a few seams, no more "
            f"than {gap} apart, or the layers shift in the wash."
        )
        return
    yield (
        f"The backing is added when the {when} squared up: baste it behind and stitch in the ditch of a few seams, no "
        f"more than {gap} apart; the strips hold front and batting together, only this holds the backing."
    )
