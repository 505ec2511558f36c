"""Braid: strips alternately on the two upper sides of a triangle, each over the end of the one before.

The triangle lies with its long side on the lower edge of the cover outline and the braid grows up the picture.
The lower ends of the strips are free and run to the cover outline. Only the two growing sides are known to the
coverage, so whatever lies below them must be the first piece: that is checked before the first strip.
"""

from __future__ import annotations

from math import cos, radians, sin, tan
from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.lengths import Speaker
from stitchflip.piecing.geometry import TOLERANCE, clip_all, extent, half_planes, outside_parts, shifted
from stitchflip.piecing.shapes import center_polygon, cover_polygon
from stitchflip.piecing.ways.wanted import round_after_round, side_index
from stitchflip.project.model import CenterShape

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.geometry import HalfPlane
    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.piecing.ways.wanted import Job, Wanted
    from stitchflip.project.model import Project
    from stitchflip.project.numbers import Numbers

FLATTEST, STEEPEST = 10.0, 80.0
"""Degrees from level between which strips of a braid can lie: beyond them one strip runs through half the piece."""

_OFF_AS_CUT, _OFF_AS_MEASURED = 1.0, 10.0
"""So many degrees the upper sides of a center may differ from the slant: one by its corners, one measured sewn."""

SIDES = ("upper right", "upper left")
"""What its two growing sides are called, whatever the slant."""


def strips(job: Job) -> Iterator[Wanted]:
    """One strip on the side the maker starts at, one on the other, and so on up the braid."""
    first = side_index(job.project.building.start, job.names, default=SIDES[0])
    return round_after_round(job, lambda _: [first, 1 - first])


def growing(project: Project, numbers: Numbers) -> tuple[Point, ...]:
    """Normals of the two upper sides, the right one first.

    Raises:
        BuildError: If the strips would lie level, upright, or nearly so, or the first piece has no such sides.
    """
    right, left = _upper_sides(project, _laid(project, numbers))
    return (right[:2], left[:2])


def first(project: Project, numbers: Numbers) -> Polygon:
    """The first piece where it is laid: a half square on the lower edge, any other center where it says.

    A half square lies with its long side on the lower edge of the cover outline and its middle on the center
    line; `off_center` moves it from there. With a slant of other than 45 degrees it is the triangle of the same
    height whose two upper sides have that slant, so that the strips still lie against it.

    Raises:
        BuildError: If two of its sides do not face up at the slant of the strips, or a place below the strips
            would stay bare.
    """
    piece = _laid(project, numbers)
    upper = _upper_sides(project, piece)
    _refuse_bare_wedge(project, clip_all(cover_polygon(project, numbers), upper), piece)
    return piece


def _laid(project: Project, numbers: Numbers) -> Polygon:
    """The first piece on the base, flat."""
    piece = center_polygon(project, numbers)
    center = project.center
    if center is None or center.shape is not CenterShape.HALF_SQUARE or center.turned % 360:
        return piece
    slant = _slant(project)
    if abs(slant - 45) > TOLERANCE:
        steep = tan(radians(slant))
        middle = sum(extent(piece, 1, 0)) / 2
        piece = tuple((middle + (x - middle) / steep, y) for x, y in piece)
    return shifted(piece, 0.0, extent(cover_polygon(project, numbers), 0, 1)[0])


def _slant(project: Project) -> float:
    """Degrees of the strips from level."""
    slant = project.building.slant
    if not FLATTEST <= slant <= STEEPEST:
        raise BuildError(
            what=f"the strips of a {project.building.way.value} cannot lie {slant:g} degrees from level",
            fix=f"Choose a slant from {FLATTEST:g} to {STEEPEST:g} degrees; 45 is the usual one.",
            where="building.slant",
            code="build.slant",
        )
    return slant


def _upper_sides(project: Project, piece: Polygon) -> list[HalfPlane]:
    """Raw edges of the two sides that strips go on, the right one first."""
    slant = _slant(project)
    is_measured = project.center is not None and project.center.sewn_already
    least = cos(radians(_OFF_AS_MEASURED if is_measured else _OFF_AS_CUT))
    upper = []
    for across in (sin(radians(slant)), -sin(radians(slant))):
        normal = (across, cos(radians(slant)))
        plane = max(half_planes(piece), key=lambda found: _likeness(found, normal))
        if _likeness(plane, normal) >= least:
            upper.append(plane)
    if len(upper) < 2:
        raise BuildError(
            what=f"the strips of a {project.building.way.value} lie {slant:g} degrees from level, and the center has "
            "no two upper sides with that slant",
            fix='Begin with shape = "half square", its long side down, or with a center that has both sides.',
            where="center",
            code="build.no-upper-sides",
        )
    return upper


def _likeness(plane: HalfPlane, normal: Point) -> float:
    """Cosine of the angle between a raw edge and the one wished for."""
    return plane[0] * normal[0] + plane[1] * normal[1]


def _refuse_bare_wedge(project: Project, below: Polygon, piece: Polygon) -> None:
    """Say where the first piece leaves a place that no strip can reach.

    Args:
        project: For the words.
        below: What of the cover outline lies below both growing sides.
        piece: The first piece as laid.
    """
    planes = half_planes(piece)
    bare = outside_parts(below, planes)
    if not bare:
        return
    index, part = max(bare, key=lambda found: _beyond(found[1], planes[found[0]]))
    (left, right), (low, high) = extent(part, 1, 0), extent(part, 0, 1)
    say = Speaker(project.units)
    raise BuildError(
        what=f"the first piece leaves a place {say.size(right - left, high - low)} (wide × long) bare below the "
        f"strips, up to {say.shortage(_beyond(part, planes[index]))} beyond its raw edge; no strip can cover it",
        fix="Move the first piece down with off_center, or cut it larger, so that it fills everything below its two "
        "upper sides.",
        where="center",
        code="build.bare-below",
    )


def _beyond(part: Polygon, plane: HalfPlane) -> float:
    """How far a part lies beyond a raw edge at most, inches."""
    return extent(part, plane[0], plane[1])[1] - plane[2]
