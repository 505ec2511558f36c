"""String block: rows of strips from corner to corner of the base, the middle strip first."""

from __future__ import annotations

from math import hypot
from typing import TYPE_CHECKING

from stitchflip.piecing.geometry import extent
from stitchflip.piecing.shapes import flat, trim_polygon
from stitchflip.piecing.ways.rows import first_strip, later_rounds
from stitchflip.piecing.ways.wanted import round_after_round
from stitchflip.project.model import Turning

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.piecing.ways.wanted import Job, Wanted
    from stitchflip.project.model import Project
    from stitchflip.project.numbers import Numbers


def strips(job: Job) -> Iterator[Wanted]:
    """One strip above the middle strip, one below, and so on to the corners."""
    upper = max((0, 1), key=lambda index: job.normals[index][1])
    return round_after_round(job, lambda _: [upper, 1 - upper], later_rounds(job.project))


def first(project: Project, numbers: Numbers) -> Polygon:
    """The middle strip, as long as the cover outline needs it."""
    return first_strip(project, numbers, _normal(project, numbers))


def growing(project: Project, numbers: Numbers) -> tuple[Point, ...]:
    """Square to the middle strip, both ways."""
    nx, ny = _normal(project, numbers)
    return ((nx, ny), (-nx, -ny))


def _normal(project: Project, numbers: Numbers) -> Point:
    """Square to the line from corner to corner: it rises to the right, or to the left when turned the other way."""
    outline = flat(trim_polygon(project, numbers), numbers)
    (left, right), (low, high) = extent(outline, 1, 0), extent(outline, 0, 1)
    wide, tall = right - left, high - low
    if project.building.turning is Turning.COUNTERCLOCKWISE:
        wide = -wide
    length = hypot(wide, tall)
    return (-tall / length, wide / length) if wide > 0 else (tall / length, -wide / length)
