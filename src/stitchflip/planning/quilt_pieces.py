"""What joining blocks is cut from: joining strips, setting triangles and borders as rows of the cutting list."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.model import Piece
from stitchflip.finishing.binding_strips import Join, join_cost, strips_needed
from stitchflip.lengths import Rounding, round_to
from stitchflip.project.words import CutAlong

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.finishing.quilt_model import BorderPlan, QuiltPlan
    from stitchflip.project.model import Project
    from stitchflip.project.numbers import Numbers


def quilt_pieces(project: Project, numbers: Numbers, quilt: QuiltPlan) -> Iterator[tuple[str, Piece]]:
    """(fabric, piece) of everything that joins and surrounds the blocks, for all quilts alike.

    Strips longer than a width of fabric are joined diagonally from whole strips, one length after another from
    one pool; each join is charged.

    Args:
        project: For how many alike, and usable widths.
        numbers: For the seam and the usable width of fabrics that were not measured.
        quilt: The quilt.
    """
    for strip in quilt.strips:
        count = strip.count * project.how_many
        if strip.is_pieced:
            yield strip.fabric, _pieced(project, numbers, strip.fabric, strip.name, strip.cut, strip.long, count)
        else:
            yield strip.fabric, Piece(strip.name, strip.cut, strip.long, count, cut_first=False)
    triangles = quilt.triangles
    if triangles is not None:
        for name, square, squares in (
            ("Side triangles", triangles.side_cut, triangles.side_squares),
            ("Corner triangles", triangles.corner_cut, triangles.corner_squares),
        ):
            if squares:
                count = squares * project.how_many
                yield triangles.fabric, Piece(name, square, square, count, "rectangle", cut_first=False)
    for number, border in enumerate(quilt.borders, 1):
        called = f"Border {number}" if len(quilt.borders) > 1 else "Border"
        for name, long in (("sides", border.sides_long), ("top and bottom", border.ends_long)):
            along = border.cut_along == CutAlong.ALL or (border.cut_along == CutAlong.SIDES and name == "sides")
            yield border.fabric, _border_strip(project, numbers, border, f"{called}, {name}", long, along=along)
        if border.corner_square:
            corner = Piece(f"{called}, corners", border.corner_square, border.corner_square, 4 * project.how_many)
            yield border.corner_fabric, corner


def backing_pieces(project: Project, numbers: Numbers, quilt: QuiltPlan | None) -> Iterator[Piece]:
    """Backing that lies under triangles and borders, for all quilts alike; joined where a width is too short."""
    fabric = project.backing.fabric
    for under in quilt.under if quilt is not None else ():
        if under.backing is None:
            continue
        short, long = sorted(under.backing)
        count = under.count * project.how_many
        name = f"Backing of the {under.name}"
        if long > usable_width(project, numbers, fabric):
            yield _pieced(project, numbers, fabric, name, short, long, count)
        else:
            yield Piece(name, short, long, count, "rectangle", cut_first=False)


def _border_strip(
    project: Project, numbers: Numbers, border: BorderPlan, name: str, long: float, *, along: bool
) -> Piece:
    count = 2 * project.how_many
    rounded = round_to(long, numbers.round_cuts_to / 2, Rounding.UP)
    if along:
        return Piece(name, border.cut, rounded, count, "rectangle", can_turn=False, cut_first=False)
    if long > usable_width(project, numbers, border.fabric):
        return _pieced(project, numbers, border.fabric, name, border.cut, long, count)
    return Piece(name, border.cut, rounded, count, cut_first=False)


def _pieced(project: Project, numbers: Numbers, fabric: str, name: str, cut: float, long: float, count: int) -> Piece:
    """Whole strips that are joined to one length and cut into pieces."""
    usable = usable_width(project, numbers, fabric)
    join = join_cost(cut, numbers.seam, Join.DIAGONAL)
    strips = strips_needed(count * long, usable, join)
    last = count * long - (strips - 1) * (usable - join)
    return Piece(name, cut, usable, strips, "binding", cut_first=False, last_long=last)


def usable_width(project: Project, numbers: Numbers, fabric: str) -> float:
    """Width without selvages of a fabric, after washing, inches."""
    measured = next((one.usable_width for one in project.fabrics if one.name == fabric), None)
    if measured is None and fabric == project.backing.fabric:
        measured = project.backing.usable_width
    return (numbers.usable_width if measured is None else measured.inches) * (1 - numbers.prewash_across)
