"""Wonky strips: rounds whose every seam is slanted against the edge it goes on, by chance but within limits.

Each strip is sewn along a chord through one end of its side, so that a wedge of the fabric below is cut off at
the other end and the allowance is whole everywhere. The angle and which end stays are drawn from a seed; the
same seed gives the same piece. A drawn angle gives way to what a maker wants more: what shows of the strip below
keeps its least width at the narrow end, the new strip covers whatever of the old ones cannot be cut away because
it is stitched down, and no side turns further than the largest angle from where it faced in the beginning.
"""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from math import acos, atan2, cos, degrees, radians, sin
from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.piecing.flips import Flip, outline_of
from stitchflip.piecing.geometry import TOLERANCE, HalfPlane, clip, clip_all, extent, largest_circle
from stitchflip.piecing.ways.log_cabin import turning_from
from stitchflip.piecing.ways.wanted import round_after_round
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.flips import Side, State
    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.piecing.ways.wanted import Job, Wanted

STRAIGHTER = "wonky.straighter"
"""Code of the note on a strip that had to lie at less than the smallest angle."""

_STRAIGHT = radians(0.25)
"""A slant below this cannot be seen or sewn: the strip goes on level with the edge."""

_OF_A_GAP = 0.45
"""A side stays nearer to where it faced than to where its neighbor faced: less than half the angle between them."""

_HALVINGS = 30
"""So often the angle that still fits is halved in: to less than a millionth of a degree."""


@dataclass(frozen=True, slots=True)
class Slant:
    """What was drawn for one strip, and the limits it is held to; angles in radians, lengths in inches."""

    facing: Point
    """Outward unit normal of its side as the center had it."""
    width: float
    """Cut width."""
    angle: float
    """Drawn, against the edge it goes on."""
    sign: float
    """1.0 turns the seam counter-clockwise, -1.0 clockwise."""
    smallest: float
    most: float
    """How far the side may turn from `facing` in all."""
    own: float
    """A side within this angle of `facing` is the one meant."""
    least_shown: float


def strips(job: Job) -> Iterator[Wanted]:
    """One strip on each side, turning as a log cabin does, each along a slanted line of its own.

    Raises:
        BuildError: If the smallest angle is larger than the largest.
    """
    from random import Random  # brings in the hash library, which few plans need

    building = job.project.building
    smallest, largest = building.smallest_angle, building.largest_angle
    if smallest > largest:
        raise BuildError(
            what=f"the smallest angle is {smallest:g} degrees and the largest only {largest:g}",
            fix=f"Make smallest_angle {largest:g} degrees or less, or largest_angle larger.",
            where="building.smallest_angle",
            code="build.angles",
        )
    order = turning_from(job)
    chance = Random(building.seed)
    for strip in round_after_round(job, lambda _: order):
        drawn = smallest + (largest - smallest) * chance.random()
        facing = job.normals[strip.side]
        gap = _nearest_facing(facing, job.normals)
        slant = Slant(
            facing=facing,
            width=strip.width,
            angle=radians(drawn),
            sign=1.0 if chance.random() < 0.5 else -1.0,
            smallest=radians(smallest),
            most=min(radians(largest), _OF_A_GAP * gap),
            own=gap / 2,
            least_shown=job.numbers.least_shown,
        )
        yield replace(strip, side=-1, place=job.names[strip.side], lay=partial(lay, slant))


def _nearest_facing(facing: Point, normals: tuple[Point, ...]) -> float:
    """Angle to the nearest other side of the center, radians."""
    cosines = (facing[0] * nx + facing[1] * ny for nx, ny in normals if (nx, ny) != facing)
    return acos(max(-1.0, min(1.0, max(cosines, default=-1.0))))


def lay(slant: Slant, state: State) -> Flip | None:
    """The chord of one strip: as drawn where it fits, else the other way, else as slanted as it still fits.

    Returns:
        None when the side has no edge left because its neighbors met.
    """
    found = side_now(state, slant)
    edge = _edge(state, found[1]) if found is not None else None
    if found is None or edge is None:
        return None
    index, side = found
    below = _Below(slant, state, side, edge)
    best, sign = 0.0, slant.sign
    for way in (slant.sign, -slant.sign):
        fits = below.steepest(way)
        if fits > best:
            best, sign = fits, way
        if best >= slant.smallest - TOLERANCE:
            break
    is_straighter = best < slant.smallest - TOLERANCE
    remark = (STRAIGHTER, degrees(best)) if is_straighter else ("", 0.0)
    if best < _STRAIGHT:
        return Flip(slant.width, side=index, remark=remark[0])
    return Flip(slant.width, chord=below.chord(sign, best), remark=remark[0], remark_value=remark[1])


def side_now(state: State, slant: Slant) -> tuple[int, Side] | None:
    """The side that faces where the strip goes, after all the turning so far, with its index; None when it is gone."""
    fx, fy = slant.facing
    least = cos(slant.own)
    best: tuple[int, Side] | None = None
    for index, side in enumerate(state.sides):
        likeness = fx * side.normal[0] + fy * side.normal[1] if side is not None else -1.0
        if side is not None and likeness > least:
            best, least = (index, side), likeness
    return best


def _edge(state: State, side: Side) -> tuple[Point, Point] | None:
    """Both ends of a side's raw edge on the outline, counter-clockwise; None when it is too short to sew to."""
    nx, ny, r = side.plane
    on_line = [point for point in outline_of(state) if nx * point[0] + ny * point[1] >= r - 10 * TOLERANCE]
    on_line.sort(key=lambda point: nx * point[1] - ny * point[0])
    if len(on_line) < 2:
        return None
    (x0, y0), (x1, y1) = on_line[0], on_line[-1]
    return ((x0, y0), (x1, y1)) if nx * (y1 - y0) - ny * (x1 - x0) > 2 * state.seam else None


class _Below:
    """What lies below a strip, and which slants it allows."""

    def __init__(self, slant: Slant, state: State, side: Side, edge: tuple[Point, Point]) -> None:
        self._slant, self._state, self._side, self._edge = slant, state, side, edge
        self._outline = outline_of(state)
        self._seen = _seen(state, side)
        self._least = self._least_of()
        enough = slant.least_shown + 2 * state.seam
        others = [other.plane for other in state.sides if other is not None and other is not side]
        self._edges = [(plane, min(enough, _length_on(self._outline, plane)) - TOLERANCE) for plane in others]
        fx, fy = slant.facing
        nx, ny = side.normal
        self._lean = atan2(fx * ny - fy * nx, fx * nx + fy * ny)

    def chord(self, sign: float, angle: float) -> HalfPlane:
        """The seam line at an angle against the edge, its allowance through the end of the edge that stays."""
        nx, ny = self._side.normal
        c, s = cos(angle), sign * sin(angle)
        mx, my = nx * c - ny * s, ny * c + nx * s
        px, py = self._edge[0] if sign > 0 else self._edge[1]
        return (mx, my, mx * px + my * py - self._state.seam)

    def steepest(self, sign: float) -> float:
        """The largest angle up to the drawn one that every limit allows, radians; 0 for none."""
        most = min(self._slant.angle, self._slant.most - sign * self._lean)
        if most < _STRAIGHT or not self._allows(self.chord(sign, _STRAIGHT)):
            return 0.0
        if self._allows(self.chord(sign, most)):
            return most
        low, high = _STRAIGHT, most
        for _ in range(_HALVINGS):
            middle = (low + high) / 2
            low, high = (middle, high) if self._allows(self.chord(sign, middle)) else (low, middle)
        return low

    def _allows(self, chord: HalfPlane) -> bool:
        nx, ny, d = chord
        seam = self._state.seam
        hidden = extent(self._outline, nx, ny)[1] <= d + self._slant.width - seam + TOLERANCE
        return hidden and self._shows_enough(chord) and self._leaves_neighbors(clip(self._outline, nx, ny, d + seam))

    def _shows_enough(self, chord: HalfPlane) -> bool:
        """True when what lies below keeps its least width where the chord leaves it narrowest.

        A center keeps, besides, a place as wide somewhere in its middle: chords from all sides eat into it.
        """
        nx, ny, d = chord
        left = clip(self._seen, nx, ny, d)
        if not left or not (self._side.step or 2 * largest_circle(left)[1] >= self._slant.least_shown - TOLERANCE):
            return False
        along = [(x, y) for x, y in left if nx * x + ny * y >= d - 10 * TOLERANCE]
        if not along:
            return True
        mx, my, least = self._least
        return min(mx * x + my * y for x, y in along) >= least - TOLERANCE

    def _least_of(self) -> HalfPlane:
        """The line that the chord must not come inside of where anything of this piece shows.

        A strip below must show its least width beyond its own seam. Of the center, a wedge may go on the opposite
        side too, so this one takes half of what can be spared.
        """
        side, least = self._side, self._slant.least_shown
        if side.step:
            sewn = self._state.history[side.step - 1]
            return (*sewn.normal, sewn.seam_at + least)
        low, high = extent(self._state.first, *side.normal)
        spared = (high - low - 2 * self._state.seam - least) / 2
        return (*side.normal, side.raw_edge - self._state.seam - spared)

    def _leaves_neighbors(self, cut: Polygon) -> bool:
        """True when every other side keeps enough of its edge to sew a strip to."""
        return all(_length_on(cut, plane) >= least for plane, least in self._edges)


def _length_on(outline: Polygon, plane: HalfPlane) -> float:
    """Length of an outline's edge on a line."""
    nx, ny, r = plane
    on_line = tuple(point for point in outline if nx * point[0] + ny * point[1] >= r - 10 * TOLERANCE)
    if len(on_line) < 2:
        return 0.0
    low, high = extent(on_line, -ny, nx)
    return high - low


def _seen(state: State, side: Side) -> Polygon:
    """What shows, so far, of the strip (or center) that carries a side's edge."""
    history = state.history
    own = history[side.step - 1].opened if side.step else state.first
    later = history[side.step :]
    return clip_all(own, [side.plane, *((*sewn.normal, sewn.seam_at) for sewn in later)])
