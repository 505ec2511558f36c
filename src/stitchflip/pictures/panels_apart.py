"""One long base with the lines along which it is cut into panels, and the seam ends that every cut opens."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.lengths import Speaker
from stitchflip.pictures.drawing import (
    DIMENSION_MARGIN,
    OUTLINE,
    PALE,
    TRIM_LINE,
    bounds,
    counted,
    natural_width,
    outline_lines,
    pale_patches,
    size_dimensions,
    wide_and_long,
)
from stitchflip.pictures.ink import INK, THIN
from stitchflip.pictures.model import Dash, Figure, Knot, Label, Line, Margins, NoRoom, Pen, Primitive

if TYPE_CHECKING:
    from stitchflip.planning.model import Plan

_PANEL = Pen(INK, THIN, Dash.TRIM)


def panels(plan: Plan) -> Figure:
    """The long base, pale, with its cut lines, the panels numbered, and a knot at every seam end a cut opens.

    Args:
        plan: A plan that is cut apart.

    Returns:
        The figure, in taped inches.

    Raises:
        BuildError: If nothing is cut apart.
    """
    cut_apart = plan.panels
    if cut_apart is None:
        raise BuildError(
            what="there are no panels to draw: the piece is not cut apart",
            fix="Ask for them only where the project has [cut_apart].",
            code="build.nothing-cut-apart",
        )
    build = plan.build
    items: list[Primitive] = []
    for piece in build.pieces:
        for polygon in piece.visible:
            items += pale_patches(plan, piece, polygon, PALE, is_taped=True)
    items.append(outline_lines(build.trim_taped, OUTLINE, "trim"))
    if cut_apart.loss > 0:
        items += [outline_lines(panel, _PANEL, "panel") for panel in cut_apart.panels]
    items += [Line(cut, TRIM_LINE, what="cut") for cut in cut_apart.cuts]
    items += [Knot(at) for _, at in cut_apart.ends_to_lock]
    items += [
        Label(f"panel {number}", panel, 9.0, 6.0, bold=True, what="panel", no_room=NoRoom.DROP)
        for number, panel in enumerate(cut_apart.panels, start=1)
    ]
    items += size_dimensions(plan, build.trim_taped, "squared up")
    low, high = bounds(build.trim_taped)
    return Figure(
        tuple(items),
        low,
        high,
        f"{plan.project.name}, cut apart",
        _described(plan),
        Margins(bottom=DIMENSION_MARGIN, right=DIMENSION_MARGIN),
        natural_width(low, high),
    )


def _described(plan: Plan) -> str:
    cut_apart = plan.panels
    if cut_apart is None:
        return ""
    say = Speaker(plan.project.units)
    size = say.size(*wide_and_long(plan.project, cut_apart.wide, cut_apart.high))
    ends = len(cut_apart.ends_to_lock)
    locks = f"{counted(ends, 'place')} where a cut opens a seam, marked with a knot" if ends else "no seam is opened"
    loss = f" {say.near(cut_apart.loss)} falls away at each cut." if cut_apart.loss > 0 else ""
    return (
        f"The long base with its cut lines: {counted(len(cut_apart.panels), 'panel')}, each {size} wide × long; "
        f"{locks}.{loss}"
    )
