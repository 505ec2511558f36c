"""Rows of strips: across, along or slanted, from the middle out or from one end."""

from __future__ import annotations

from math import cos, radians, sin
from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.piecing.geometry import TOLERANCE, clip_all, extent, half_planes
from stitchflip.piecing.shapes import center_polygon, cover_polygon
from stitchflip.piecing.ways.wanted import round_after_round
from stitchflip.project.model import RowsFrom, RowsRun, Runs

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.piecing.ways.wanted import Job, Wanted
    from stitchflip.project.model import Project, Round
    from stitchflip.project.numbers import Numbers


def strips(job: Job) -> Iterator[Wanted]:
    """One strip on both sides of the row, or the next one toward one end."""
    upper = 0 if _faces(job.normals[0]) > _faces(job.normals[-1]) else len(job.normals) - 1
    from_middle = job.project.building.rows_from is RowsFrom.MIDDLE
    order = [upper, len(job.normals) - 1 - upper] if from_middle else [upper]
    return round_after_round(job, lambda _: order, later_rounds(job.project))


def later_rounds(project: Project) -> tuple[Round, ...]:
    """The rounds that are sewn: without the first strip, when the rows begin with one."""
    return project.rounds if project.center is not None else project.rounds[1:]


def _faces(normal: Point) -> tuple[float, float]:
    """Order of the two sides of a run: the upper one first, of two level ones the right one."""
    return (round(normal[1], 6), normal[0])


def growing(project: Project, _: Numbers) -> tuple[Point, ...]:
    """The two directions in which rows grow."""
    nx, ny = rows_normal(project)
    return ((nx, ny), (-nx, -ny))


def rows_normal(project: Project) -> Point:
    """The direction in which rows grow, a unit vector."""
    building, runs = project.building, project.squared_up.length_runs
    if building.rows_run is RowsRun.SLANTED:
        slant = radians(building.slant)
        return max((-sin(slant), cos(slant)), (sin(slant), -cos(slant)), key=_faces)
    grows_up = (building.rows_run is RowsRun.ACROSS) == (runs is Runs.UP)
    return (0.0, 1.0) if grows_up else (1.0, 0.0)


def first(project: Project, numbers: Numbers) -> Polygon:
    """The center, or the first strip as long as the cover outline needs it.

    Raises:
        BuildError: If a center has no side that a row could be sewn to.
    """
    if project.center is not None:
        center = center_polygon(project, numbers)
        nx, ny = rows_normal(project)
        wanted = [1, -1] if project.building.rows_from is RowsFrom.MIDDLE else [1]
        along = [nx * px + ny * py for px, py, _ in half_planes(center)]
        if not all(any(part * way > 1 - TOLERANCE for part in along) for way in wanted):
            raise BuildError(
                what="the rows are sewn to sides of the center, and it has none that lies along them",
                fix="Turn the center until its sides lie along the rows, or take [center] out and begin with a strip.",
                where="center.turned",
                code="build.no-side-for-rows",
            )
        return center
    return first_strip(project, numbers, rows_normal(project))


def first_strip(project: Project, numbers: Numbers, normal: Point) -> Polygon:
    """Raw edges of the strip that rows begin with, as long as the cover outline needs it, flat."""
    width = first_strip_width(project)
    cover = cover_polygon(project, numbers)
    low, _ = extent(cover, *normal)
    middle = 0.0 if project.building.rows_from is RowsFrom.MIDDLE else low + width / 2
    nx, ny = normal
    tx, ty = -ny, nx
    ends = extent(clip_all(cover, ((nx, ny, middle + width / 2), (-nx, -ny, width / 2 - middle))), tx, ty)
    across = (middle - width / 2, middle + width / 2)
    return tuple(
        (nx * v + tx * u, ny * v + ty * u)
        for v, u in ((across[0], ends[1]), (across[0], ends[0]), (across[1], ends[0]), (across[1], ends[1]))
    )


def first_strip_width(project: Project) -> float:
    """Cut width of the strip that rows begin with, inches.

    Raises:
        BuildError: If the rounds name no first strip.
    """
    widths = [entry.cut or (entry.cuts or (None,))[0] for entry in project.rounds[:1]]
    if not widths or widths[0] is None:
        raise BuildError(
            what="rows of strips begin with a strip, and none is listed",
            fix="List the strips from the first outward under [[rounds]], the first with its cut width.",
            where="rounds",
            code="build.no-first-strip",
        )
    return widths[0].inches
