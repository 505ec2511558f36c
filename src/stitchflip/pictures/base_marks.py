"""The base before the first stitch: its size, the lines to draw on it, and where the first piece lies."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker
from stitchflip.pictures.drawing import (
    DIMENSION_MARGIN,
    MARKED_LINE,
    NUMBERED,
    TRIM_LATER,
    base_area,
    base_rectangle,
    bounds,
    natural_width,
    numbered_sides,
    outline_lines,
    pale_patches,
    piece_name,
    reading_angles,
    size_dimensions,
    wide_and_long,
)
from stitchflip.pictures.ink import BASE_EDGE, HALO, INK, SOFT, THIN
from stitchflip.pictures.model import (
    CenterMark,
    Dash,
    Dimension,
    Figure,
    Label,
    Line,
    Margins,
    Pen,
    Primitive,
    Text,
)
from stitchflip.piecing.geometry import clip

if TYPE_CHECKING:
    from stitchflip.piecing.model import Point, SewnPiece
    from stitchflip.planning.model import Plan

_CENTER_LINE = Pen(BASE_EDGE, THIN, Dash.FOLD)
_FIRST_PAPER = 0.45
_MARK_SIZE = 6.0


def base(plan: Plan) -> Figure:
    """The base as cut, with center lines, placement marks and the first piece in its place.

    Args:
        plan: The plan.

    Returns:
        The figure, in flat inches.
    """
    low, high = bounds(base_rectangle(plan))
    seen_low, seen_high = bounds((low, high, *plan.base.first_piece))
    first = plan.build.pieces[0]
    items: list[Primitive] = [base_area(plan)]
    items += [_mark(axis, place, low, high) for axis, place in plan.base.marks]
    items += pale_patches(plan, first, plan.base.first_piece, _FIRST_PAPER)
    sides = numbered_sides(plan, plan.build.trim)
    items += [outline_lines(plan.build.trim, TRIM_LATER, "trim"), *sides] if sides else []
    items += [_mark_label(plan, axis, place, low, high) for axis, place in plan.base.marks if abs(place) > 1e-9]
    items.append(CenterMark())
    items += _places(plan)
    items += _print_direction(plan)
    beyond = (seen_high[0] - high[0], low[1] - seen_low[1])
    items += size_dimensions(plan, base_rectangle(plan), "cut", beyond)
    items.append(
        Label(
            piece_name(plan.build, first),
            plan.base.first_piece,
            7.5,
            6.0,
            reading_angles(first),
            bold=True,
            tail=plan.letter_of(first.fabric),
            what="number",
            step=0,
        )
    )
    return Figure(
        tuple(items),
        seen_low,
        seen_high,
        f"{plan.project.name}, the base",
        _described(plan),
        Margins(bottom=DIMENSION_MARGIN, right=DIMENSION_MARGIN),
        natural_width(low, high),
    )


def _mark(axis: str, place: float, low: Point, high: Point) -> Line:
    ends = ((place, low[1]), (place, high[1])) if axis == "x" else ((low[0], place), (high[0], place))
    pen = _CENTER_LINE if abs(place) < 1e-9 else MARKED_LINE
    return Line(ends, pen, what="center line" if pen is _CENTER_LINE else "mark")


def _mark_label(plan: Plan, axis: str, place: float, low: Point, high: Point) -> Text:
    """How far a drawn line lies from the center mark, at the upper end of the line or its left end."""
    said = Speaker(plan.project.units).near(abs(place))
    if axis == "x":
        return Text((place, high[1]), said, _MARK_SIZE, color=SOFT, halo=True, shift=(0.0, -6.5), may_drop=True)
    return Text(
        (low[0], place), said, _MARK_SIZE, color=SOFT, anchor="start", halo=True, shift=(3.0, 0.0), may_drop=True
    )


def _places(plan: Plan) -> list[Primitive]:
    """How far the first piece reaches from both center lines, each way; once where both ways are alike.

    A first strip is laid by its long edge alone, so only that is measured.
    """
    say = Speaker(plan.project.units)
    first = plan.build.pieces[0]
    if plan.build.first_is_strip:
        nx, ny = first.normal
        edge = _nearest_edge(plan, first)
        return [Dimension((0.0, 0.0), (nx * edge, ny * edge), (say.near(abs(edge)),), away=8.0)]
    (x0, y0), (x1, y1) = bounds(plan.base.first_piece)
    reaches: list[tuple[Point, float]] = [((x1, 0.0), x1), ((0.0, y1), y1)]
    if abs(x0 + x1) > 1e-6:
        reaches.append(((x0, 0.0), -x0))
    if abs(y0 + y1) > 1e-6:
        reaches.append(((0.0, y0), -y0))
    return [
        Dimension((0.0, 0.0), place, (say.near(reach),), away=-8.0 if place[0] else 8.0)
        for place, reach in reaches
        if reach > 0
    ]


def _nearest_edge(plan: Plan, first: SewnPiece) -> float:
    """Where the raw edge of a first strip lies that strips are sewn to, from the center mark along its normal."""
    nx, ny = first.normal
    across = [nx * x + ny * y for x, y in plan.base.first_piece]
    return max(across) if plan.build.first_is_middle else min(min(across), max(across), key=abs)


def _print_direction(plan: Plan) -> list[Primitive]:
    """An arrow for a print that must stand upright."""
    first = plan.build.pieces[0]
    if not any(fabric.one_way for fabric in plan.project.fabrics if fabric.name == first.fabric):
        return []
    (x0, _), (x1, _) = bounds(plan.base.first_piece)
    x = x0 + (x1 - x0) * 0.3
    (_, least), (_, most) = bounds(clip(clip(plan.base.first_piece, 1.0, 0.0, x + 0.01), -1.0, 0.0, 0.01 - x))
    low, high = least + (most - least) * 0.3, least + (most - least) * 0.8
    return [
        Line(((x, low), (x, high)), Pen(INK, 1.0, casing=HALO), arrow=True, what="print direction"),
        Text((x, low), "print up", 6.5, halo=True, shift=(0.0, -5.5)),
    ]


def _described(plan: Plan) -> str:
    say = Speaker(plan.project.units)
    places = [place for axis, place in plan.base.marks if axis == "x" and place > 0]
    every = f" Lines every {say.near(min(places))} from the center lines." if places else ""
    size = say.size(*wide_and_long(plan.project, plan.base.wide, plan.base.high))
    edges = [side.name for side in plan.square_up.sides if side.name.startswith(NUMBERED)]
    named = f" Dashed, the piece as squared up, its edges named {edges[0]} to {edges[-1]}." if edges else ""
    return f"The base, cut {size} wide × long, with both center lines.{every} {_place_in_words(plan)}{named}"


def _place_in_words(plan: Plan) -> str:
    say = Speaker(plan.project.units)
    first = plan.build.pieces[0]
    name = f"The {piece_name(plan.build, first)} of {first.fabric}"
    if plan.build.first_is_strip:
        return f"{name} lies with its raw edge {say.near(abs(_nearest_edge(plan, first)))} from the center mark."
    (x0, y0), (x1, y1) = bounds(plan.base.first_piece)
    across = _both_ways(say, x0, x1, ("to the right", "to the left"), ", ")
    along = _both_ways(say, y0, y1, ("up", "down"), " and ")
    return f"{name} reaches, raw edges from the center mark, {across}, {along}."


def _both_ways(say: Speaker, low: float, high: float, words: tuple[str, str], between: str) -> str:
    """How far a piece reaches to both sides of the mark, or from where to where when it lies on one side of it."""
    if low <= 0 <= high:
        return f"{say.near(high)} {words[0]}{between}{say.near(-low)} {words[1]}"
    word = words[0] if low > 0 else words[1]
    near, far = sorted((abs(low), abs(high)))
    return f"from {say.near(near)} to {say.near(far)} {word}"
