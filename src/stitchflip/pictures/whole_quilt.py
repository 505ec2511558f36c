"""The whole quilt of joined blocks: every block with its own strips, what joins them, and what goes round."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker
from stitchflip.pictures.drawing import (
    DIMENSION_MARGIN,
    bounds,
    color_of,
    counted,
    letter_for,
    listed,
    natural_width,
    outline_lines,
    size_dimensions,
    wide_and_long,
)
from stitchflip.pictures.edge_band import corner_pairs, edge_band, edge_in_words, over, under
from stitchflip.pictures.ink import BATTING, CASING, HAIR, INK, THIN, is_dark
from stitchflip.pictures.model import Area, Figure, Label, Line, Margins, NoRoom, Pen, Primitive
from stitchflip.pictures.quilt_places import block_cells, patches_of_blocks
from stitchflip.piecing.geometry import area, clip_all, counts, half_planes
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.finishing.quilt_model import QuiltPlan
    from stitchflip.pictures.edge_band import EdgeBand
    from stitchflip.piecing.model import Polygon
    from stitchflip.planning.model import Plan

_COLORING_LINE = Pen(INK, HAIR)
_ON_LIGHT, _ON_DARK = Pen(INK, HAIR), Pen(CASING, HAIR)
_BLOCK_EDGE = Pen(INK, THIN)


@dataclass(frozen=True, slots=True)
class _Seen:
    """Something of one fabric that the front shows."""

    fabric: str
    polygon: Polygon
    what: str
    """"patch", "joining strip", "setting triangle" or "border"."""
    block: int = -1
    step: int | None = None


def finished_quilt(plan: Plan, quilt: QuiltPlan, *, with_letters: bool) -> Figure:
    """The quilt inside its finished edge, every patch in its fabric.

    Args:
        plan: The plan.
        quilt: Its quilt.
        with_letters: Also write letters on one block of each kind and on what joins them, and the size outside.
    """
    band = edge_band(plan, quilt.outline)
    seen = list(_seen(plan, quilt, band))
    items: list[Primitive] = [*under(plan, band), Area(band.inner, BATTING, what="base")]
    items += [_area(plan, one) for one in seen]
    items += over(band)
    low, high = bounds(band.outer)
    margins = Margins()
    if with_letters:
        items += _letters(plan, quilt, seen)
        items += size_dimensions(plan, band.outer, "squared up" if band.fabric else "finished")
        margins = Margins(bottom=DIMENSION_MARGIN, right=DIMENSION_MARGIN)
    ending = "bound" if band.fabric else "finished"
    name = f"{plan.project.name}, {ending}"
    return Figure(tuple(items), low, high, name, _described(plan, quilt), margins, natural_width(low, high, widest=5.5))


def coloring_quilt(plan: Plan, quilt: QuiltPlan) -> Figure:
    """Outlines only, room for crayons.

    Args:
        plan: The plan.
        quilt: Its quilt.
    """
    band = edge_band(plan, quilt.outline)
    seen = list(_seen(plan, quilt, band))
    white = [(one, Area(one.polygon, "#ffffff", pen=_COLORING_LINE, what=one.what, step=one.step)) for one in seen]
    items: list[Primitive] = [
        *(area for one, area in white if one.block >= 0),
        *(outline_lines(_inside(cell, band), _BLOCK_EDGE, "block") for cell in block_cells(quilt)),
        *(area for one, area in white if one.block < 0),
        *over(band),
        *(Line(pair, _COLORING_LINE) for pair in corner_pairs(band)),
    ]
    low, high = bounds(band.outer)
    return Figure(
        tuple(items),
        low,
        high,
        f"{plan.project.name}, to color in",
        f"Outlines of the whole quilt to color in: {counted(len(quilt.blocks), 'block')}, and what joins them.",
        Margins(),
        natural_width(low, high, widest=6.5),
    )


def _seen(plan: Plan, quilt: QuiltPlan, band: EdgeBand) -> Iterator[_Seen]:
    """All that shows, from below upward: blocks, triangles, joining strips, borders."""
    for one in patches_of_blocks(quilt, tuple(kind.build for kind in plan.kinds)):
        yield from _ended(_Seen(one.fabric, one.polygon, "patch", one.block, one.piece.step), band)
    if quilt.triangles is not None:
        for place in quilt.triangles.places:
            yield from _ended(_Seen(quilt.triangles.fabric, place, "setting triangle"), band)
    for strip in quilt.strips:
        for place in strip.front:
            yield from _ended(_Seen(strip.fabric, place, "joining strip"), band)
    for border in quilt.borders:
        for place in border.front:
            yield from _ended(_Seen(border.fabric, place, "border"), band)
        for place in border.corner_places:
            yield from _ended(_Seen(border.corner_fabric, place, "border"), band)


def _ended(one: _Seen, band: EdgeBand) -> Iterator[_Seen]:
    inside = _inside(one.polygon, band)
    if counts(inside):
        yield _Seen(one.fabric, inside, one.what, one.block, one.step)


def _inside(polygon: Polygon, band: EdgeBand) -> Polygon:
    return clip_all(polygon, half_planes(band.inner)) or polygon


def _area(plan: Plan, one: _Seen) -> Area:
    color = color_of(plan, one.fabric)
    letter = letter_for(plan, one.fabric)
    hatch = letter.hatch if letter is not None else None
    pen = _ON_DARK if is_dark(color) else _ON_LIGHT
    return Area(one.polygon, color, hatch, pen, one.fabric, what=one.what, step=one.step)


def _letters(plan: Plan, quilt: QuiltPlan, seen: list[_Seen]) -> list[Primitive]:
    """Letters on the first block of each kind and on the largest of everything that joins the blocks."""
    first_of: dict[int, int] = {}
    for index, block in enumerate(quilt.blocks):
        first_of.setdefault(block.kind, index)
    labels = [_letter(plan, one) for one in seen if one.block in first_of.values()]
    around: dict[tuple[str, str], _Seen] = {}
    for one in seen:
        if one.block < 0:
            largest = around.setdefault((one.what, one.fabric), one)
            if area(one.polygon) > area(largest.polygon) + 1e-6:
                around[one.what, one.fabric] = one
    return [*labels, *(_letter(plan, one) for one in around.values())]


def _letter(plan: Plan, one: _Seen) -> Label:
    return Label(
        plan.letter_of(one.fabric),
        one.polygon,
        8.0,
        5.5,
        bold=True,
        what="letter",
        step=one.step,
        no_room=NoRoom.DROP if one.block >= 0 else NoRoom.LEAD,
    )


def _described(plan: Plan, quilt: QuiltPlan) -> str:
    say = Speaker(plan.project.units)
    size = say.size(*wide_and_long(plan.project, quilt.wide, quilt.high))
    kinds = [f"{kind.count} {kind.name}" for kind in plan.kinds if kind.name]
    of_kinds = f" ({listed(kinds)})" if len(kinds) > 1 else ""
    count = counted(len(quilt.blocks), "block")
    parts = [f"The finished quilt, squared up {size} wide × long: {count}{of_kinds}, joined by {quilt.join.way}."]
    fabrics = dict.fromkeys(strip.fabric for strip in quilt.strips if strip.front)
    if fabrics:
        parts.append(f"Between the blocks: {listed([_named(plan, fabric) for fabric in fabrics])}.")
    if quilt.triangles is not None:
        parts.append(f"Setting triangles: {_named(plan, quilt.triangles.fabric)}.")
    if quilt.borders:
        parts.append(f"Borders, outward: {listed([_named(plan, border.fabric) for border in quilt.borders])}.")
    return " ".join([*parts, edge_in_words(plan)])


def _named(plan: Plan, fabric: str) -> str:
    return f"{fabric} ({plan.letter_of(fabric)})"
