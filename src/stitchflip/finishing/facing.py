"""A facing: strips sewn to the front's edge and turned wholly to the back, so that nothing frames the piece.

On straight edges two sides are faced first, then top and bottom over their ends; on a curve the facing is a bias strip.
Common practice, from memory.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from stitchflip.finishing.bias import bias_squares
from stitchflip.finishing.binding_strips import strips_needed
from stitchflip.finishing.edge_model import EdgePiece
from stitchflip.finishing.edges import Edge as TrimEdge
from stitchflip.finishing.measures import FACING_END_TURNED, FACING_TURNED_UNDER
from stitchflip.lengths import Rounding, Speaker, round_to
from stitchflip.project.house import HOUSE
from stitchflip.project.model import Project
from stitchflip.project.numbers import Numbers
from stitchflip.values import dataclass


@dataclass(frozen=True, slots=True)
class Facing:
    """A facing as cut; inches."""

    cut: float
    """Cut width of its strips."""
    behind: float
    """Width on the back when turned and its edge turned under."""
    pieces: tuple[EdgePiece, ...]
    bias_square: float
    """Side of the square its bias strip comes from; 0 on straight edges."""


def plan_facing(
    project: Project, numbers: Numbers, sides: Sequence[TrimEdge], fabric: str, widest: float, panels: int
) -> Facing:
    """The strips of a facing.

    Args:
        project: For its width and the unit.
        numbers: For seams and the usable width.
        sides: The edges that are faced, in order.
        fabric: What it is cut from.
        widest: Longest strip that the fabric gives, inches.
        panels: Pieces of one base that are faced alike.
    """
    turned, seam = FACING_TURNED_UNDER.of(project.units), numbers.seam
    cut = facing_cut(project, numbers)
    behind = cut - numbers.binding_seam - turned
    if any(side.is_curve for side in sides):
        need = sum(side.length for side in sides) + numbers.binding_extra
        squares = bias_squares(need, cut, seam, widest, cut, project.units)
        piece = EdgePiece("Facing square for bias strips", fabric, squares.side, squares.side, squares.count * panels)
        return Facing(cut, behind, (piece,), squares.side)
    pieces = tuple(
        _strips(name, fabric, (cut, round_to(long, numbers.round_cuts_to, Rounding.UP)), count * panels, widest, seam)
        for name, long, count in _lengths(project, sides)
    )
    return Facing(cut, behind, pieces, 0.0)


def facing_cut(project: Project, numbers: Numbers) -> float:
    """Cut width of facing strips, inches: the maker's, or what gives the width she wants behind, or usual.

    Args:
        project: For what the maker says.
        numbers: For the seam.
    """
    binding = project.binding
    if binding.cut is not None:
        return binding.cut.inches
    if binding.shows is not None:
        return binding.shows.inches + numbers.binding_seam + FACING_TURNED_UNDER.of(project.units)
    return HOUSE["facing_cut"].of(project.units)


def _lengths(project: Project, sides: Sequence[TrimEdge]) -> Iterator[tuple[str, float, int]]:
    """(name, length, count) of the strips: sides as long as they are, what is sewn over them longer at both ends."""
    over = 2 * FACING_END_TURNED.of(project.units)
    by_name = {side.name: side for side in sides}
    if set(by_name) == {"left", "right", "top", "bottom"}:
        yield "Facing of the sides", by_name["left"].length, 2
        yield "Facing of top and bottom", by_name["top"].length + over, 2
        return
    alike: dict[float, list[str]] = {}
    for side in sides:
        alike.setdefault(round(side.length, 6), []).append(side.name)
    for long, names in alike.items():
        name = "each edge" if len(names) == len(sides) else ", ".join(names)
        yield f"Facing of {name}", long + over, len(names)


def _strips(name: str, fabric: str, size: tuple[float, float], count: int, widest: float, seam: float) -> EdgePiece:
    """One strip, or the strips it is joined from when the fabric is not as wide as it is long."""
    cut, long = size
    parts = strips_needed(long, widest, 2 * seam)
    if parts == 1:
        return EdgePiece(name, fabric, cut, long, count)
    each = (long + (parts - 1) * 2 * seam) / parts
    return EdgePiece(f"{name}, {parts} joined for each", fabric, cut, each, count * parts)


def facing_words(say: Speaker, facing: Facing, sides: Sequence[TrimEdge], seam: float) -> Iterator[str]:
    """How to sew a facing on, one sentence each.

    Args:
        say: The maker's voice.
        facing: The strips.
        sides: The edges of the piece.
        seam: From the trim edge, inches.
    """
    turned = facing.cut - facing.behind - seam
    yield (
        f"Press one long edge of every facing strip under by {say.near(turned)}; cut {say.width(facing.cut)} wide it "
        f"then covers {say.near(facing.behind)} of the back. Nothing of it shows on the front, which ends at the seam, "
        f"{say.near(seam)} inside the trimmed edge."
    )
    if facing.bias_square:
        yield (
            f"Sew the bias strip right sides together to the front, {say.near(seam)} from the edge, without pulling; "
            f"clip the seam allowances to {say.near(1 / 16)} from the stitching all along the curve, turn the strip to "
            "the back and hem it down by hand."
        )
        return
    first, then = "the two sides", "top and bottom"
    if not {"left", "top"} <= {side.name for side in sides}:
        first, then = "every second edge", "the edges between them"
    yield (
        f"Sew facing strips right sides together to the front of {first}, {say.near(seam)} from the edge, turn them to "
        f"the back and press; then those of {then}, whose ends reach beyond the piece: fold the ends round it first."
    )
    yield (
        "Trim the seam allowances at every corner on the slant, two threads from the stitching, push the corners out "
        "with something blunt, roll the seam a thread to the back, press, and hem the facing down by hand."
    )
