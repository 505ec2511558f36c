"""The whole piece at another size: its squared-up measures, its center, and what no longer holds of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.lengths import Speaker, Unit
from stitchflip.piecing import trim_polygon
from stitchflip.piecing.geometry import extent
from stitchflip.piecing.ways.rows import rows_normal
from stitchflip.planning.resize.drawn import drawn
from stitchflip.planning.resize.pen import Pen, as_number, exactly
from stitchflip.project.model import CenterShape, Outline, RowsRun, Runs, Way
from stitchflip.project.numbers import effective

if TYPE_CHECKING:
    from stitchflip.lengths import Length
    from stitchflip.project.model import Center, Project, Round

_ROUND_THE_CENTER = frozenset({Way.LOG_CABIN, Way.COURTHOUSE, Way.AROUND, Way.CORNER_SQUARES, Way.WONKY})
"""Ways whose straight center can take up what the two directions do not have in common."""


def forgotten(project: Project) -> tuple[Project, tuple[str, ...]]:
    """The project without what was measured on the piece of the old size, and what that was."""
    said = []
    update: dict[str, object] = {}
    if project.readings or project.short_strips:
        update |= {"readings": (), "short_strips": ()}
        said.append("What you measured while sewing belongs to the old size and is left out.")
    if any(entry.cut_long is not None for entry in project.rounds):
        update["rounds"] = tuple(_computed_length(entry) for entry in project.rounds)
        said.append("Cut lengths you had set are computed anew.")
    if project.base.wide is not None or project.base.long is not None:
        update["base"] = project.base.model_copy(update={"wide": None, "long": None})
        said.append("The base is computed anew.")
    return project.model_copy(update=update) if update else project, tuple(said)


def _computed_length(entry: Round) -> Round:
    return entry.model_copy(update={"cut_long": None})


def trim_extents(project: Project) -> tuple[float, float]:
    """Extents of the squared-up outline across the picture and up it, taped, inches."""
    trim = trim_polygon(project, effective(project))
    (left, right), (low, high) = extent(trim, 1, 0), extent(trim, 0, 1)
    return right - left, high - low


def at_size(project: Project, wide: Length | None, long: Length | None) -> Project:
    """The project with another squared-up size and nothing else changed but where a corner center lies.

    Args:
        project: the project.
        wide: new width, of a polygon across its flats, of a round piece across; None keeps it.
        long: new length; None keeps it. Polygons and round pieces have none.

    Raises:
        BuildError: If a polygon or round piece is given two different measures.
    """
    wanted = project.squared_up
    before = trim_extents(project)
    if wanted.shape in {Outline.POLYGON, Outline.ROUND}:
        if wide is not None and long is not None and wide != long:
            say = Speaker(project.units)
            raise BuildError(
                what=f"a {wanted.shape.value} piece has one measure, not {say.size(wide.inches, long.inches)}",
                fix="Give one size: from side to opposite side, or across.",
                where="squared_up",
                code="build.one-measure",
            )
        key = "across_flats" if wanted.shape is Outline.POLYGON else "across"
        update: dict[str, object] = {key: wide or long or getattr(wanted, key)}
    else:
        kept = before if wanted.length_runs is Runs.UP else before[::-1]
        stated = (wanted.wide, wanted.long)
        if wanted.beyond_points is not None:
            stated = (exactly(kept[0], project.units), exactly(kept[1], project.units))
        update = {"wide": wide or stated[0], "long": long or stated[1], "beyond_points": None}
        update["corner_radius"] = _radius(wanted.corner_radius, update["wide"], update["long"])
    made = project.model_copy(update={"squared_up": wanted.model_copy(update=update)})
    return corner_kept(made, before, trim_extents(made))


def _radius(radius: Length | None, wide: object, long: object) -> Length | None:
    """Rounded corners are never rounder than half the piece."""
    from stitchflip.lengths import Length

    sides = [side.ticks for side in (wide, long) if isinstance(side, Length)]
    return radius if radius is None or not sides else Length(min(radius.ticks, min(sides) // 2))


def corner_kept(project: Project, before: tuple[float, float], after: tuple[float, float]) -> Project:
    """A two-sided log cabin's center stays as far from its corner as it was."""
    center = project.center
    if center is None or project.building.way is not Way.TWO_SIDED:
        return project
    numbers = effective(project)
    scale = 1.0 if project.units is Unit.INCH else 1 / 2.54
    off = tuple(
        as_number(place * scale + _sign(place) * (new - old) / 2 / (1 - draw_up), project.units)
        for place, old, new, draw_up in zip(
            center.off_center, before, after, (numbers.draw_up_x, numbers.draw_up_y), strict=True
        )
    )
    return project.model_copy(update={"center": center.model_copy(update={"off_center": off})})


def _sign(place: float) -> int:
    return (place > 0) - (place < 0)


def in_proportion(project: Project, at_new_size: Project) -> tuple[Project, Pen]:
    """The project at its new size with center and strips scaled on their finished sizes.

    Args:
        project: as it was.
        at_new_size: the same with the squared-up size changed.

    Returns:
        The project, and the pen it was drawn with, which knows what had to be rounded. Where width and length do
        not change alike, the strips follow the smaller change and a straight center takes up the rest.
    """
    before, after = trim_extents(project), trim_extents(at_new_size)
    fx, fy = after[0] / before[0], after[1] / before[1]
    pen = _pen(project, fx, fy)
    common = min(fx, fy)
    if _takes_up_the_rest(project) and abs(fx - fy) > 1e-9:
        sizes = _center_extents(project)
        x, y = ((new - old * common + own * common) / own for new, old, own in zip(after, before, sizes, strict=True))
        pen = Pen(pen.before, pen.after, pen.seam_before, pen.seam_after, common, x, y)
    made = drawn(at_new_size.model_copy(update={"center": project.center}), pen)
    if project.building.way is Way.TWO_SIDED:
        made = _passing_its_edges(project, made)
    radius = project.squared_up.corner_radius
    if radius is not None:
        update = {"corner_radius": pen.plain(radius, common)}
        made = made.model_copy(update={"squared_up": made.squared_up.model_copy(update=update)})
    return made, pen


def _passing_its_edges(project: Project, made: Project) -> Project:
    """A two-sided log cabin's center passes the two edges of its corner as far as before, however large it is."""
    old, new = project.center, made.center
    if old is None or new is None:
        return made
    numbers = effective(project)
    scale = 1.0 if project.units is Unit.INCH else 1 / 2.54
    halves = [[side / 2 for side in _cut_extents(center)] for center in (old, new)]
    off = []
    for axis, draw_up in enumerate((numbers.draw_up_x, numbers.draw_up_y)):
        was, now = (trim_extents(one)[axis] / 2 / (1 - draw_up) for one in (project, made))
        sign = _sign(old.off_center[axis])
        passes = abs(old.off_center[axis]) * scale + halves[0][axis] - was
        off.append(as_number(sign * (now + passes - halves[1][axis]), project.units))
    return made.model_copy(update={"center": new.model_copy(update={"off_center": tuple(off)})})


def _cut_extents(center: Center) -> tuple[float, float]:
    """A straight square or rectangle as cut, inches; nothing for other shapes."""
    wide, long = center.cut_wide or center.cut, center.cut_long or center.cut
    if wide is None or long is None:
        return (0.0, 0.0)
    return (wide.inches, long.inches) if center.turned % 180 == 0 else (long.inches, wide.inches)


def _pen(project: Project, fx: float, fy: float) -> Pen:
    """The pen for a way of building: rows grow in one direction, most ways in both alike."""
    seam = effective(project).seam
    building, common = project.building, min(fx, fy)
    if building.way is Way.ROWS and building.rows_run is not RowsRun.SLANTED:
        strips = fy if abs(rows_normal(project)[1]) > 0.5 else fx
        return Pen(project.units, project.units, seam, seam, strips, fx, fy)
    if building.way in {Way.FOUNDATION, Way.FOLDED_CORNERS}:
        return Pen(project.units, project.units, seam, seam, common, fx, fy)
    return Pen(project.units, project.units, seam, seam, common, common, common)


def _takes_up_the_rest(project: Project) -> bool:
    center = project.center
    if center is None or center.sewn_already or project.building.way not in _ROUND_THE_CENTER:
        return False
    is_box = center.shape in {CenterShape.SQUARE, CenterShape.RECTANGLE}
    return is_box and center.turned % 90 == 0 and center.off_center == (0.0, 0.0)


def _center_extents(project: Project) -> tuple[float, float]:
    """What shows of a straight center across the picture and up it, inches."""
    center, seam = project.center, effective(project).seam
    if center is None:
        return (1.0, 1.0)
    wide, long = center.cut_wide or center.cut, center.cut_long or center.cut
    if wide is None or long is None:
        return (1.0, 1.0)
    sizes = (wide.inches - 2 * seam, long.inches - 2 * seam)
    return sizes if center.turned % 180 == 0 else sizes[::-1]


def with_strips(project: Project, cut: Length) -> Project:
    """Every strip cut to one width."""
    rounds = tuple(
        entry.model_copy(
            update={"cut": None if entry.cuts else cut, "cuts": entry.cuts and tuple(cut for _ in entry.cuts)}
        )
        for entry in project.rounds
    )
    steps = tuple(step.model_copy(update={"cut": cut}) for step in project.steps)
    return project.model_copy(update={"rounds": rounds, "steps": steps})
