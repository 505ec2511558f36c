"""The panels of a base that was cut apart, each with its own finished edge, laid out a little apart."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker
from stitchflip.pictures.drawing import (
    DIMENSION_MARGIN,
    bounds,
    counted,
    natural_width,
    patch,
    reading_angles,
    size_dimensions,
    taped,
    wide_and_long,
)
from stitchflip.pictures.edge_band import edge_band, edge_in_words, over, under
from stitchflip.pictures.fabric_parts import parts
from stitchflip.pictures.ink import BATTING
from stitchflip.pictures.model import Area, Figure, Label, Margins, NoRoom, Primitive
from stitchflip.piecing.geometry import clip_all, counts, half_planes, shifted

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.finishing.edge_model import PanelsPlan
    from stitchflip.pictures.edge_band import EdgeBand
    from stitchflip.piecing.model import Point, Polygon, SewnPiece
    from stitchflip.planning.model import Plan

_APART = 0.08
"""How far apart panels are laid, part of a panel's smaller side."""


def finished_panels(plan: Plan, panels: PanelsPlan, *, with_letters: bool) -> Figure:
    """Every panel inside its finished edge, every patch in its fabric.

    Args:
        plan: The plan.
        panels: Its panels.
        with_letters: Also write the letters on the first panel, and the size of a panel outside.
    """
    items: list[Primitive] = []
    outlines: list[Polygon] = []
    word = "squared up"
    for number, panel in enumerate(panels.panels):
        by = _laid_apart(panels, number)
        band = edge_band(plan, panel)
        word = "squared up" if band.fabric else "finished"
        moved_band = type(band)(shifted(band.outer, *by), shifted(band.inner, *by), band.fabric, band.name)
        seen = list(_seen(plan, band, by))
        items += [*under(plan, moved_band), Area(moved_band.inner, BATTING, what="base")]
        items += [patch(plan, piece, polygon, fabric=fabric) for piece, fabric, polygon in seen]
        items += over(moved_band)
        outlines.append(moved_band.outer)
        if with_letters and number == 0:
            items += [_letter(plan, *one) for one in seen]
    low, high = bounds(tuple(corner for outline in outlines for corner in outline))
    margins = Margins()
    if with_letters:
        items += size_dimensions(plan, outlines[-1], word)
        margins = Margins(bottom=DIMENSION_MARGIN, right=DIMENSION_MARGIN)
    ending = "bound" if word == "squared up" else "finished"
    name = f"{plan.project.name}, {ending}"
    return Figure(tuple(items), low, high, name, _described(plan, panels), margins, natural_width(low, high))


def _laid_apart(panels: PanelsPlan, number: int) -> Point:
    """How far a panel is moved from where it was sewn."""
    apart = _APART * min(panels.wide, panels.high)
    row, column = divmod(number, panels.across)
    return (
        (column - (panels.across - 1) / 2) * (apart - panels.loss),
        ((panels.down - 1) / 2 - row) * (apart - panels.loss),
    )


def _seen(plan: Plan, band: EdgeBand, by: Point) -> Iterator[tuple[SewnPiece, str, Polygon]]:
    """Every patch that shows inside the edge of a panel, where the panel is laid."""
    planes = half_planes(band.inner)
    for piece in plan.build.pieces:
        for polygon in piece.visible:
            for fabric, part in parts(piece, polygon):
                inside = clip_all(taped(plan.build, part), planes)
                if counts(inside):
                    yield piece, fabric, shifted(inside, *by)


def _letter(plan: Plan, piece: SewnPiece, fabric: str, polygon: Polygon) -> Label:
    return Label(
        plan.letter_of(fabric),
        polygon,
        8.0,
        5.5,
        reading_angles(piece),
        bold=True,
        what="letter",
        step=piece.step,
        no_room=NoRoom.DROP,
    )


def _described(plan: Plan, panels: PanelsPlan) -> str:
    size = Speaker(plan.project.units).size(*wide_and_long(plan.project, panels.wide, panels.high))
    return (
        f"{counted(len(panels.panels), 'finished panel')} cut from one base, each squared up {size} wide × long. "
        f"{edge_in_words(plan)}"
    )
