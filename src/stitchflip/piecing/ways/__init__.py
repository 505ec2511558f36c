"""Every way of building, one small module each, all asking for the same thing: strips, one flip after another.

To add one: write a module with a function `strips(job)` that yields `Wanted` strips, add its word to `Way` in
`project/words.py`, and name both in the table below. Nothing else in the kernel knows which way a piece is
built.
"""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING

from stitchflip.piecing.shapes import center_polygon
from stitchflip.piecing.ways import (
    braid,
    chevron,
    corner_squares,
    courthouse,
    folded_corners,
    foundation,
    log_cabin,
    round_the_point,
    rows,
    sides,
    strings,
    two_sided,
    wonky,
)
from stitchflip.piecing.ways.wanted import Job, Part, Wanted, WayOfBuilding, side_index
from stitchflip.project.model import Way

if TYPE_CHECKING:
    from stitchflip.piecing.model import Polygon
    from stitchflip.project.model import Project
    from stitchflip.project.numbers import Numbers

__all__ = [
    "WAYS",
    "Job",
    "Part",
    "Wanted",
    "WayOfBuilding",
    "begins_with_strip",
    "first_piece_polygon",
    "side_index",
    "way_of",
]

WAYS: MappingProxyType[Way, WayOfBuilding] = MappingProxyType(
    {
        Way.LOG_CABIN: WayOfBuilding(log_cabin.strips, center_polygon),
        Way.TWO_SIDED: WayOfBuilding(two_sided.strips, center_polygon),
        Way.COURTHOUSE: WayOfBuilding(courthouse.strips, center_polygon),
        Way.POINTS: WayOfBuilding(round_the_point.strips, center_polygon),
        Way.AROUND: WayOfBuilding(log_cabin.strips, center_polygon),
        Way.ROWS: WayOfBuilding(rows.strips, rows.first, rows.growing, can_begin_with_strip=True),
        Way.STRINGS: WayOfBuilding(strings.strips, strings.first, strings.growing, can_begin_with_strip=True),
        Way.BRAID: WayOfBuilding(braid.strips, braid.first, braid.growing, called=braid.SIDES),
        Way.CHEVRON: WayOfBuilding(chevron.strips, chevron.first, chevron.growing, called=braid.SIDES),
        Way.CORNER_SQUARES: WayOfBuilding(corner_squares.strips, center_polygon),
        Way.WONKY: WayOfBuilding(wonky.strips, center_polygon),
        Way.FOLDED_CORNERS: WayOfBuilding(folded_corners.strips, center_polygon),
        Way.FOUNDATION: WayOfBuilding(
            foundation.strips, foundation.first, as_cut=foundation.as_cut, finish=foundation.finish
        ),
        Way.SIDES: WayOfBuilding(sides.strips, center_polygon),
    }
)
"""How each way begins and which strips it asks for."""


def way_of(project: Project) -> WayOfBuilding:
    """The way a project is built."""
    return WAYS[project.building.way]


def first_piece_polygon(project: Project, numbers: Numbers) -> Polygon:
    """Raw edges of the first piece as laid on the base, flat; a first strip as long as the cover outline needs it."""
    way = way_of(project)
    return (way.as_cut or way.first)(project, numbers)


def begins_with_strip(project: Project) -> bool:
    """True when the first piece is a strip that runs right across."""
    return project.center is None and way_of(project).can_begin_with_strip
