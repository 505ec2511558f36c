"""A project drawn anew with a pen: center, strips, lines and corners, each on its finished size."""

from __future__ import annotations

from math import dist
from typing import TYPE_CHECKING

from stitchflip.lengths import CM_PER_INCH, Unit
from stitchflip.piecing.geometry import moved, scaled
from stitchflip.planning.resize.pen import HALF_SQUARE_SEAMS, as_number
from stitchflip.project.model import CenterShape

if TYPE_CHECKING:
    from stitchflip.planning.resize.pen import Pen
    from stitchflip.project.model import Block, Border, Center, Patch, Project, Round, Step


def drawn(project: Project, pen: Pen) -> Project:
    """The project with its center, strips, patches and joining strips drawn anew; sizes of the whole piece stay.

    Args:
        project: the project.
        pen: how sizes change.
    """
    center = project.center
    return project.model_copy(
        update={
            "center": center and center_drawn(center, pen),
            "rounds": rounds_drawn(project.rounds, pen),
            "steps": _steps(project.steps, pen),
            "patches": _patches(project.patches, pen),
            "blocks": tuple(_block(block, pen) for block in project.blocks),
            "borders": tuple(_border(border, place, pen) for place, border in enumerate(project.borders, start=1)),
        }
    )


def center_drawn(center: Center, pen: Pen) -> Center:
    """The center on its finished size; a half-done one is as it is."""
    if center.sewn_already:
        return _as_measured(center, pen)
    off = pen.place(center.off_center)
    straight = center.turned % 180 == 0
    level, upright = (pen.x, pen.y) if straight else (pen.y, pen.x)
    if center.turned % 90:
        level = upright = min(pen.x, pen.y)
    sizes: dict[str, object] = {"off_center": off}
    match center.shape:
        case CenterShape.SQUARE if center.cut is not None and level != upright:
            sizes |= {"shape": CenterShape.RECTANGLE, "cut": None}
            sizes["cut_wide"] = _side(center, "cut", level, pen)
            sizes["cut_long"] = _side(center, "cut", upright, pen)
        case CenterShape.RECTANGLE:
            sizes["cut_wide"] = _side(center, "cut_wide", level, pen)
            sizes["cut_long"] = _side(center, "cut_long", upright, pen)
        case CenterShape.CORNERS:
            sizes["corners"] = _corners(center.corners or (), pen)
        case CenterShape.HALF_SQUARE:
            sizes["cut"] = _side(center, "cut", min(pen.x, pen.y), pen, seams=HALF_SQUARE_SEAMS)
        case _:
            sizes["cut"] = _side(center, "cut", min(pen.x, pen.y), pen)
    return center.model_copy(update=sizes)


def _as_measured(center: Center, pen: Pen) -> Center:
    """A half-done piece is as large as it is and lies where it lies; in another unit its places get other numbers."""
    if not pen.redrafts:
        return center
    to_other = CM_PER_INCH if pen.after is Unit.CM else 1 / CM_PER_INCH

    def same(at: tuple[float, float]) -> tuple[float, float]:
        return round(at[0] * to_other, 4), round(at[1] * to_other, 4)

    corners = center.corners and tuple(same(corner) for corner in center.corners)
    return center.model_copy(update={"off_center": same(center.off_center), "corners": corners})


def _side(center: Center, key: str, factor: float, pen: Pen, *, seams: float = 2.0) -> object:
    """One cut size of the center."""
    size = getattr(center, key)
    return size if size is None or pen.is_idle(factor) else pen.cut(size, factor, "the center", seams=seams)


def _corners(corners: tuple[tuple[float, float], ...], pen: Pen) -> tuple[tuple[float, float], ...]:
    """An outline by its cut corners: its seam lines are scaled, then the seams put on."""
    if pen.is_idle(pen.x) and pen.is_idle(pen.y):
        return corners
    to_inches = 1.0 if pen.before is Unit.INCH else 1 / CM_PER_INCH
    raw = tuple((x * to_inches, y * to_inches) for x, y in corners)
    sewn = moved(raw, -pen.seam_before)
    if len(sewn) != len(raw):
        return corners
    larger = moved(scaled(sewn, pen.x, pen.y), pen.seam_after)
    begin = min(range(len(larger)), key=lambda place: dist(larger[place], (raw[0][0] * pen.x, raw[0][1] * pen.y)))
    larger = larger[begin:] + larger[:begin]
    return tuple((as_number(x, pen.after), as_number(y, pen.after)) for x, y in larger)


def rounds_drawn(rounds: tuple[Round, ...], pen: Pen) -> tuple[Round, ...]:
    """Rounds with their widths anew."""
    made = []
    for number, entry in enumerate(rounds, start=1):
        what = f"round {number}"
        cut = entry.cut and pen.strip(entry.cut, what)
        cuts = entry.cuts and tuple(pen.strip(cut, what) for cut in entry.cuts)
        made.append(entry.model_copy(update={"cut": cut, "cuts": cuts}))
    return tuple(made)


def _steps(steps: tuple[Step, ...], pen: Pen) -> tuple[Step, ...]:
    return tuple(
        step.model_copy(update={"cut": pen.strip(step.cut, f"strip {number}")})
        for number, step in enumerate(steps, start=1)
    )


def _patches(patches: tuple[Patch, ...], pen: Pen) -> tuple[Patch, ...]:
    """Lines of a foundation are seam lines: nothing is added to them."""
    made = []
    for patch in patches:
        line = patch.line and (pen.place(patch.line[0]), pen.place(patch.line[1]))
        made.append(patch.model_copy(update={"line": line, "at": patch.at and pen.place(patch.at)}))
    return tuple(made)


def _block(block: Block, pen: Pen) -> Block:
    """What a kind of block has of its own."""
    own: dict[str, object] = {}
    if block.center is not None:
        own["center"] = center_drawn(block.center, pen)
    if block.rounds is not None:
        own["rounds"] = rounds_drawn(block.rounds, pen)
    if block.steps is not None:
        own["steps"] = _steps(block.steps, pen)
    if block.patches is not None:
        own["patches"] = _patches(block.patches, pen)
    return block.model_copy(update=own) if own else block


def _border(border: Border, place: int, pen: Pen) -> Border:
    return border.model_copy(update={"cut": pen.strip(border.cut, f"border {place}")})
