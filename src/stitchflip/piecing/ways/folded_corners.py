"""Stitch-and-flip corners: squares laid on the corners of one whole patch, sewn from corner to corner, flipped.

A square with side s lies level with both raw edges of its corner, and its seam runs from the place s along one
edge to the place s along the other. Flipped, its two free edges lie exactly where the patch's raw edges were. So
each corner is one strip along a line of its own, and the two edges it brings replace those it covers.

What shows beside the finished edges is a triangle with legs of s less two seam allowances.
"""

from __future__ import annotations

from math import dist, hypot, sqrt
from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.lengths import Speaker
from stitchflip.piecing.flips import Flip
from stitchflip.piecing.geometry import TOLERANCE, clip_all
from stitchflip.piecing.shapes import center_polygon, corner_name
from stitchflip.piecing.ways.wanted import Wanted, side_index, strips_of_round
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from stitchflip.piecing.flips import State
    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.piecing.ways.wanted import Job
    from stitchflip.project.model import Project

OVERLAP = "corners.overlap"
"""Code of the note that two corners cut into each other; its value is by how much, inches along the raw edge."""

_SIDE_WORDS = {"upper": "top", "lower": "bottom"}
"""Words of corners that are said otherwise of sides, by which a project file names both."""


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner of the patch by its raw edges, flat."""

    name: str
    """As the side that would face there: "upper right", "top"."""
    at: Point
    normal: Point
    """Unit vector outward through the corner, halfway between its two edges' normals."""
    is_right: bool
    beside: tuple[Point, Point]
    """The corners at the other ends of its two edges."""


def strips(job: Job) -> Iterator[Wanted]:
    """One square on each corner, round after round.

    Raises:
        BuildError: If a corner is not there or not a right angle, or a square is larger than the patch.
    """
    _refuse_until_covered(job.project)
    corners = corners_in_order(job.project, center_polygon(job.project, job.numbers))
    for number, entry in enumerate(job.project.rounds, start=1):
        for wanted in strips_of_round(entry, number, range(len(corners))):
            yield _square_on(corners[wanted.visit], wanted, job.project)


def corners_in_order(project: Project, patch: Polygon) -> tuple[Corner, ...]:
    """The corners that get squares, in the order sewn.

    Args:
        project: Which corners, and at which the maker starts.
        patch: Raw edges of the patch, counter-clockwise.
    """
    corners = corners_of(patch)
    names = [corner.name for corner in corners]
    building = project.building
    if building.corners:
        chosen = [corners[_index(name, names)] for name in building.corners]
    else:
        first = _index(building.start, names) if building.start else max(range(len(corners)), key=_upper_right(corners))
        chosen = [*corners[first:], *corners[:first]]
    for corner in chosen:
        if not corner.is_right:
            raise BuildError(
                what=f"the {corner.name} corner of the center is no right angle, so no square lies level with it",
                fix="Name the right-angled corners under building.corners, or take a square or rectangle.",
                where="building.corners",
                code="build.corner-not-right",
            )
    return tuple(chosen)


def corners_of(patch: Polygon) -> tuple[Corner, ...]:
    """The corners of a patch, counter-clockwise.

    Example:
        >>> [corner.name for corner in corners_of(((-9.0, -2.0), (9.0, -2.0), (9.0, 2.0), (-9.0, 2.0)))]
        ['lower left', 'lower right', 'upper right', 'upper left']
    """
    corners = []
    for place, at in enumerate(patch):
        before, after = patch[place - 1], patch[(place + 1) % len(patch)]
        (ax, ay), (bx, by) = _toward(at, before), _toward(at, after)
        # Outward through the corner: away from both edges.
        nx, ny = -(ax + bx), -(ay + by)
        length = hypot(nx, ny)
        normal = (nx / length, ny / length)
        name = corner_name(normal).removesuffix(" point")
        corners.append(
            Corner(_SIDE_WORDS.get(name, name), at, normal, abs(ax * bx + ay * by) < TOLERANCE, (before, after))
        )
    return tuple(corners)


def _toward(start: Point, end: Point) -> Point:
    length = dist(start, end)
    return ((end[0] - start[0]) / length, (end[1] - start[1]) / length)


def _index(name: str, names: Sequence[str]) -> int:
    return side_index(name.removesuffix(" corner").removesuffix(" point"), names)


def _upper_right(corners: Sequence[Corner]) -> Callable[[int], float]:
    return lambda place: corners[place].normal[0] + corners[place].normal[1]


def _refuse_until_covered(project: Project) -> None:
    if project.building.until_covered:
        raise BuildError(
            what="the patch under stitch-and-flip corners covers everything, so there is no going on until covered",
            fix="Take until_covered out of [building] and list a round for each layer of corners.",
            where="building.until_covered",
            code="build.covered-already",
        )


def _square_on(corner: Corner, asked: Wanted, project: Project) -> Wanted:
    """The square on one corner."""
    cut = asked.width
    say = Speaker(project.units)
    edge = min(dist(corner.at, other) for other in corner.beside)
    if cut <= 0:
        raise BuildError(
            what=f"the squares of round {asked.round} have no size",
            fix="Give the round a cut, the side of its squares.",
            where=f"round {asked.round}",
            code="build.no-width",
        )
    if cut > edge + TOLERANCE:
        raise BuildError(
            what=f"the {corner.name} square is cut {say.near(cut)} and the patch beside it only {say.near(edge)}",
            fix=f"Cut the square {say.near(edge)} or smaller.",
            where=f"round {asked.round}",
            code="build.corner-larger",
        )
    return Wanted(
        round=asked.round,
        visit=asked.visit,
        side=-1,
        width=cut,
        fabric=asked.fabric,
        lay=lambda state: _laid(state, corner, cut),
        place=f"{corner.name} corner",
        square_cut=cut,
    )


def _laid(state: State, corner: Corner, cut: float) -> Flip:
    """The square sewn from corner to corner: flipped, its corner lies on the patch's raw corner."""
    nx, ny = corner.normal
    deep = cut / sqrt(2)
    line = (nx, ny, nx * corner.at[0] + ny * corner.at[1] - deep)
    over = _overlap(state, corner, cut)
    if not clip_all(state.first, [line, *((*sewn.normal, sewn.seam_at) for sewn in state.history)]):
        raise BuildError(
            what=f"with the {corner.name} square nothing of the center is left to see: the squares meet across it",
            fix="Cut the squares smaller, or name fewer corners under building.corners.",
            where=f"step {state.step + 1}",
            code="build.corners-cover-all",
        )
    return Flip(
        width=deep + state.seam,
        chord=line,
        remark=OVERLAP if over > TOLERANCE else "",
        remark_value=over,
    )


def _overlap(state: State, corner: Corner, cut: float) -> float:
    """How far a square and the one at the other end of an edge are too large together.

    Squares may share two seam allowances of an edge: their seams then meet at the finished edge.
    """
    most = 0.0
    for other in corners_of(state.first):
        if other.at not in corner.beside:
            continue
        nx, ny = other.normal
        reach = nx * other.at[0] + ny * other.at[1]
        taken = max(
            (
                (reach - sewn.seam_at) * sqrt(2)
                for sewn in state.history
                if sewn.is_chord and sewn.normal[0] * nx + sewn.normal[1] * ny > 1 - TOLERANCE
            ),
            default=0.0,
        )
        if taken:
            most = max(most, cut + taken - dist(corner.at, other.at) - 2 * state.seam)
    return most


def square_for_leg(leg: float, seam: float) -> float:
    """Side of the square for a corner whose legs finish so long.

    Args:
        leg: Finished leg, inches.
        seam: Seam allowance, inches.

    Example:
        >>> square_for_leg(2, 0.25)
        2.5
    """
    return leg + 2 * seam


def bonus_half_square(cut: float, apart: float = 0.5) -> float:
    """Side of the half-square unit that the part cut off gives, raw edge to raw edge, both allowances on it.

    A second seam is sewn nearer the corner and the cut runs between the two. From the corner to the first seam it
    is cut / √2, to the second `apart` less; the legs there are √2 times that.

    Args:
        cut: Side of the square as cut, inches.
        apart: Second seam from the first, inches: two seam allowances.

    Returns:
        Inches, 0 when nothing is left.

    Example:
        >>> round(bonus_half_square(4), 2)
        3.29
    """
    return max(0.0, cut - apart * sqrt(2))
