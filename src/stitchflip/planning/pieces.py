"""From the build to the cutting list: which piece, how wide and long, of which fabric, for how many alike."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.model import Piece
from stitchflip.lengths import Rounding, Speaker, round_to
from stitchflip.piecing.geometry import extent
from stitchflip.piecing.shapes import center_cut, is_slanted
from stitchflip.planning.findings.sewing import shown_width
from stitchflip.project.model import CenterShape, Working

if TYPE_CHECKING:
    from stitchflip.finishing.model import BindingPlan
    from stitchflip.piecing.model import Build, Polygon, SewnPiece
    from stitchflip.project.model import Project
    from stitchflip.project.numbers import Numbers


def cutting_list(
    project: Project, numbers: Numbers, build: Build, binding: BindingPlan
) -> dict[str, tuple[Piece, ...]]:
    """The pieces of each fabric, largest first, in the order of the project's fabrics.

    Args:
        project: The project.
        numbers: The maker's numbers.
        build: Its build.
        binding: Its binding.
    """
    speaker = Speaker(project.units)
    pieces: dict[str, list[Piece]] = {fabric.name: [] for fabric in project.fabrics}
    first = build.pieces[0]
    if not build.first_is_strip:
        pieces.setdefault(first.fabric, []).append(_center(project, numbers, first, speaker))
    last = {strip.side: strip.step for strip in build.strips}
    for strip in build.pieces[0 if build.first_is_strip else 1 :]:
        if strip.cut_length > 0:
            pieces.setdefault(strip.fabric, []).append(
                _strip(project, numbers, strip, speaker, is_last=last.get(strip.side) == strip.step)
            )
    pieces.setdefault(binding.fabric, []).append(
        Piece(
            name="Binding",
            wide=binding.cut,
            long=binding.strip_length,
            count=binding.strips,
            kind="binding",
            can_turn=not _is_one_way(project, binding.fabric),
        )
    )
    return {name: tuple(_in_cutting_order(own)) for name, own in pieces.items() if own}


def _in_cutting_order(pieces: list[Piece]) -> list[Piece]:
    """Squares and rectangles first, then strips by width, the widest first; the binding in its width's place."""
    return sorted(
        pieces, key=lambda piece: (piece.kind != "rectangle", -piece.wide, piece.kind == "binding", piece.step)
    )


def _strip(project: Project, numbers: Numbers, strip: SewnPiece, speaker: Speaker, *, is_last: bool) -> Piece:
    shows = strip.cut_width - 2 * numbers.seam
    if is_last:
        shows = min(shows, shown_width(strip) * (1 - _draw_up_along(strip, numbers)))
    return Piece(
        name=str(strip.step) if strip.step else "Middle",
        wide=strip.cut_width,
        long=strip.cut_length,
        count=project.how_many,
        kind="strip",
        shortest=strip.needed_length,
        step=strip.step,
        finished=speaker.near(shows) if shows > 0 else "",
        can_turn=not _is_one_way(project, strip.fabric),
        cut_first=project.working is Working.CUT_FIRST,
    )


def _draw_up_along(strip: SewnPiece, numbers: Numbers) -> float:
    """Draw-up square to a strip's seam."""
    return numbers.draw_up_x if abs(strip.normal[0]) > abs(strip.normal[1]) else numbers.draw_up_y


def _center(project: Project, numbers: Numbers, first: SewnPiece, speaker: Speaker) -> Piece:
    wide, long = center_cut(project, first.opened)
    motif = repeat_of(project, first.fabric)
    window = _window(project, numbers, first.opened)
    inset = 2 * numbers.seam
    return Piece(
        name="Center",
        wide=wide,
        long=long,
        count=project.how_many,
        kind="rectangle",
        finished=speaker.size(wide - inset, long - inset) if _is_four_sided(project) else "",
        can_turn=not _is_one_way(project, first.fabric) and not motif,
        window=window,
        motif_in=motif,
    )


def _window(project: Project, numbers: Numbers, raw: Polygon) -> tuple[float, float] | None:
    """Upright rectangle of fabric for a one-way center that lies slanted: its print must stay upright."""
    center = project.center
    if center is None or not _is_one_way(project, center.fabric) or not is_slanted(center.turned):
        return None
    (left, right), (low, high) = extent(raw, 1, 0), extent(raw, 0, 1)
    step = numbers.round_cuts_to
    return round_to(right - left, step, Rounding.UP), round_to(high - low, step, Rounding.UP)


def _is_four_sided(project: Project) -> bool:
    return project.center is not None and project.center.shape in (CenterShape.SQUARE, CenterShape.RECTANGLE)


def repeat_of(project: Project, name: str) -> float:
    """How far apart a fabric's print repeats, inches; 0 when that is not said."""
    repeats = (fabric.repeat.inches for fabric in project.fabrics if fabric.name == name and fabric.repeat is not None)
    return next(repeats, 0.0)


def _is_one_way(project: Project, name: str) -> bool:
    return any(fabric.one_way for fabric in project.fabrics if fabric.name == name)
