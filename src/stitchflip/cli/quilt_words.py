"""Joined blocks, the edge, panels and extras as plain sentences on the screen."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker
from stitchflip.piecing.angled import angled_strip
from stitchflip.planning.json_values import wide_and_long
from stitchflip.project.model import Edge, Fold, Join, Joining, Setting, StripEnds, Way

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.finishing.quilt_model import JoiningStrip, QuiltPlan
    from stitchflip.piecing.model import Point
    from stitchflip.planning.model import BlockKind, Plan

FREE_LINES = frozenset({Way.WONKY, Way.FOUNDATION, Way.FOLDED_CORNERS})
"""Ways whose seams follow lines of their own, so that both ends are told instead of one distance."""


def size_of_quilt(plan: Plan, quilt: QuiltPlan) -> str:
    """The size of the whole, and what it is made of."""
    say = Speaker(plan.project.units)
    joined = plan.project.joined
    laid = f"{joined.across} × {joined.down} blocks" if joined is not None else "blocks"
    if joined is not None and joined.setting is Setting.ON_POINT:
        count = len(quilt.blocks)
        laid = f"{count} {'block' if count == 1 else 'blocks'} on point"
    block = say.size(plan.square_up.wide, plan.square_up.high)
    return f"squared up {say.size(quilt.wide, quilt.high)} (wide × long): {laid}, each squared up {block}"


def kinds_of_block(plan: Plan) -> str:
    """How many of each kind; "" when all are alike."""
    if len(plan.kinds) < 2:
        return ""
    return "; ".join(f"{kind.count} × {kind.name}" for kind in plan.kinds)


def join_lines(plan: Plan) -> Iterator[str]:
    """How the blocks are joined: in section, then the strips, in the order sewn."""
    quilt, joined = plan.quilt, plan.project.joined
    if quilt is None or joined is None:
        return
    say, join = Speaker(plan.project.units), quilt.join
    first = "blocks to rows, then the rows" if joined.first is Joining.ROWS else "blocks to columns, then the columns"
    if joined.join is Join.PLAIN_SEAM:
        yield f"plain seams of {say.width(join.seam)}, batting trimmed back from them; {first}"
    elif joined.join is Join.FLAT_AND_FOLDED:
        where = "behind" if joined.fold is Fold.BEHIND else "in front"
        yield (
            f"flat and folded strips, the fold {where}: {say.near(join.shows)} shows, the raw edges of the blocks lie "
            f"{say.margin(join.gap)} apart, the fold passes the far stitching by {say.margin(join.passes)}; {first}"
        )
    else:
        filler = f", with a strip of batting {say.width(join.filler)} wide between" if join.filler > 0 else ""
        yield f"covered strips: {say.near(join.shows)} shows{filler}; {first}"
    for strip in quilt.strips:
        yield _strip(say, strip)
    if quilt.trimmed_to is not None:
        yield f"trim every block to {say.size(*quilt.trimmed_to)} first"
    yield from quilt.repairs


def _strip(say: Speaker, strip: JoiningStrip) -> str:
    joined = ", pieced from strips joined on the diagonal" if strip.is_pieced else ""
    return f"{strip.count} × {strip.name}, {strip.fabric}: cut {say.cut_size(strip.cut, strip.long)}{joined}"


def around_lines(plan: Plan) -> Iterator[str]:
    """Setting triangles and borders."""
    quilt = plan.quilt
    if quilt is None:
        return
    say, triangles = Speaker(plan.project.units), quilt.triangles
    if triangles is not None:
        sides, corners = (
            "1 square" if count == 1 else f"{count} squares"
            for count in (triangles.side_squares, triangles.corner_squares)
        )
        yield (
            f"{triangles.side_count} side triangles from {sides} cut "
            f"{say.cut_size(triangles.side_cut, triangles.side_cut)}, quilted, squared up to "
            f"{say.cut(triangles.side_square)} and cut twice from corner to corner; "
            f"{triangles.corner_count} corner triangles from {corners} cut "
            f"{say.cut_size(triangles.corner_cut, triangles.corner_cut)}, quilted, squared up to "
            f"{say.cut(triangles.corner_square)} and cut once; {triangles.fabric}"
        )
    for number, border in enumerate(quilt.borders, 1):
        squares = ""
        if border.corner_square:
            size = say.cut_size(border.corner_square, border.corner_square)
            squares = f"; four corner squares of {border.corner_fabric} cut {size}"
        yield (
            f"border {number}, {border.corners}, {border.fabric}: two sides cut "
            f"{say.cut_size(border.cut, border.sides_long)}, top and bottom cut "
            f"{say.cut_size(border.cut, border.ends_long)}{squares}"
        )


def panel_lines(plan: Plan) -> Iterator[str]:
    """What a long base is cut into, and which seam ends the cuts open."""
    panels = plan.panels
    if panels is None:
        return
    say = Speaker(plan.project.units)
    size = say.size(*wide_and_long(plan, panels.wide, panels.high))
    loss = f"; {say.near(panels.loss)} is trimmed away at each cut" if panels.loss > 0 else ""
    yield f"{len(panels.panels)} panels, each squared up {size} (wide × long){loss}"
    steps = sorted({step for step, _ in panels.ends_to_lock})
    if steps:
        which = "strip" if len(steps) == 1 else "strips"
        yield (
            f"The cuts open the seams of {which} {', '.join(map(str, steps))}: stay-stitch on both sides of each cut "
            "before you cut, or lock every end"
        )
    else:
        yield "No cut opens a seam"


def edge_heading(plan: Plan) -> str:
    """What the last step on the edge is called."""
    return "Bind" if plan.project.binding.edge is Edge.BINDING else "Edge"


def is_foundation(kind: BlockKind) -> bool:
    """True where patches are sewn along numbered lines."""
    return kind.project.building.way is Way.FOUNDATION


def line_rows(plan: Plan, kind: BlockKind) -> Iterator[tuple[str, str, str]]:
    """The seam of each strip by its two ends, for ways whose seams follow lines of their own.

    Patches of a foundation are counted from the first, which has no line; their lines are told as they are drawn on
    the side that is sewn from, the front in a mirror.
    """
    say = Speaker(plan.project.units).bare
    before, mirror = (1, -1.0) if is_foundation(kind) else (0, 1.0)
    for strip in kind.build.strips:
        if strip.seam is not None:
            ends = [(mirror * x, y) for x, y in (strip.seam.start.at, strip.seam.end.at)]
            yield str(strip.step + before), _at(say, ends[0]), _at(say, ends[1])


def _at(say: Speaker, place: Point) -> str:
    """A place as it is marked on the base: so far right or left of the center mark, so far above or below it."""
    x, y = place
    across = f"{say.near(abs(x))} {'right' if x >= 0 else 'left'}"
    return f"{across}, {say.near(abs(y))} {'up' if y >= 0 else 'down'}"


def angled_rows(plan: Plan, kind: BlockKind) -> Iterator[tuple[str, str, str, str]]:
    """Both long edges of strips whose ends are cut parallel to their neighbors, with the angles at the ruler."""
    if kind.project.building.strip_ends is not StripEnds.PARALLEL:
        return
    say = Speaker(plan.project.units).bare
    for strip in kind.build.strips:
        angled = angled_strip(kind.build, strip) if strip.needed_length > 0 else None
        if angled is not None:
            angles = f"{angled.start_angle:.0f}° and {angled.end_angle:.0f}°"
            yield str(strip.step), say.cut(angled.sewn_edge), say.cut(angled.outer_edge), angles
