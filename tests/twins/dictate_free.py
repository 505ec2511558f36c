"""Ways whose strips run free or follow lines of their own, dictated from the words of the project alone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import islice
from math import cos, dist, pi, sin, sqrt

from shapely.geometry import Polygon as Area
from shapely.geometry.base import BaseGeometry

from stitchflip.piecing.model import Build
from stitchflip.project.model import CenterShape, LinesSeen, PairFirst, Project, Way
from stitchflip.project.numbers import Numbers
from tests.twins.dictate import (
    MOST_STRIPS,
    center_of,
    facing,
    order_of_round,
    repeated,
    script_of,
    table_of,
    until_covered,
)
from tests.twins.painter import common, counts, slab, travel
from tests.twins.script import Point, Polygon, Script, Strip, sides_of


def braided(project: Project, numbers: Numbers) -> Script:
    """A braid or a chevron: strips on the two upper sides of the first piece, the right one first unless said.

    A half square lies with its long side on the lower edge of what is to be covered, as high as it is; its upper
    sides have the slant of the strips.
    """
    table = table_of(project, numbers)
    slant = project.building.slant * pi / 180
    right, left = (sin(slant), cos(slant)), (-sin(slant), cos(slant))
    center = project.center
    assert center is not None
    if center.shape is CenterShape.HALF_SQUARE:
        assert center.cut is not None
        scale = 1 if project.units == "in" else 1 / 2.54
        x, y = (place * scale for place in center.off_center)
        point = (x, y + min(place for _, place in table.cover) + center.cut.inches / sqrt(2))
    else:
        point = max(center_of(project, numbers), key=lambda corner: corner[1])
    sides = tuple((n, n[0] * point[0] + n[1] * point[1]) for n in (right, left))
    begun = replace(table, sides=sides)
    strips = _legs(project, right, left)
    if project.building.until_covered:
        return until_covered(begun, islice(strips, MOST_STRIPS))
    return replace(begun, strips=tuple(strips))


def _legs(project: Project, right: Point, left: Point) -> Iterator[Strip]:
    building = project.building
    left_first = building.start == "upper left"
    if building.way is Way.CHEVRON and building.start is None:
        left_first = building.pair_first is PairFirst.LOWER
    for number, one in enumerate(repeated(project)):
        swap = building.way is Way.CHEVRON and building.pair_first is PairFirst.ALTERNATE and number % 2 == 1
        order = (left, right) if left_first != swap else (right, left)
        cuts = one.cuts or [one.cut] * 2
        yield from (Strip(normal, cut.inches) for normal, cut in zip(order, cuts, strict=True) if cut is not None)


@dataclass(frozen=True)
class Pieced:
    """How a strip with corner squares is told: its middle lies between two lines square to its seam."""

    along: Point
    """Direction of sewing."""
    low: float
    high: float
    """Where the squares begin, from the foot of the center mark."""
    fabric: str
    square: str


def with_corner_squares(project: Project, numbers: Numbers) -> tuple[Script, dict[int, Pieced]]:
    """Courthouse steps, and for each strip of a second pair (by its step) where its squares are.

    A square begins at the seam of the strip that this round sewed on the neighboring side.
    """
    steps = project.model_copy(update={"building": project.building.model_copy(update={"way": Way.COURTHOUSE})})
    script = script_of(steps, numbers)
    raw = {_rounded(normal): r for normal, r in script.sides}
    seams: dict[Point, float] = {}
    pieced = {}
    for step, strip in enumerate(script.strips, start=1):
        n = _rounded(strip.normal)
        seams[n] = raw[n] - script.seam
        raw[n] = seams[n] + strip.width - script.seam
        if (step - 1) % 4 >= 2:
            along = _rounded(travel(strip.normal))
            one = project.rounds[(step - 1) // 4]
            low, high = -seams[_rounded((-along[0], -along[1]))], seams[along]
            pieced[step] = Pieced(along, low, high, str(one.fabric), str(one.corner_fabric))
    return script, pieced


def _rounded(normal: Point) -> Point:
    return (round(normal[0]) + 0.0, round(normal[1]) + 0.0)


def along_told_lines(project: Project, numbers: Numbers, build: Build) -> Script:
    """Strips along lines that chance drew: the lines are taken from the kernel, what they do to the fabric is not."""
    strips = tuple(Strip(one.normal, one.cut_width, one.seam_at) for one in build.strips)
    return replace(table_of(project, numbers), sides=sides_of(center_of(project, numbers)), strips=strips)


def with_told_widths(project: Project, numbers: Numbers, build: Build) -> Script:
    """Strips as wide as what was on hand for them, on the sides that follow each other in this way of building.

    The widths are taken from the kernel; the sides are not.
    """
    table = replace(table_of(project, numbers), sides=sides_of(center_of(project, numbers)))
    told = iter(build.strips)
    strips: list[Strip] = []
    for number, _ in enumerate(repeated(project)):
        for normal in order_of_round(project, table.sides, number):
            one = next(told, None)
            if one is None:
                return replace(table, strips=tuple(strips))
            strips.append(Strip(normal, one.cut_width))
    return replace(table, strips=tuple(strips))


def with_folded_corners(project: Project, numbers: Numbers) -> tuple[Polygon, list[Fold]]:
    """The patch, and each square folded over: its corner, the two directions into the patch, and its cut size.

    The corners go round counter-clockwise from the upper right one, or as they are listed.
    """
    patch = center_of(project, numbers)
    folds = []
    for one in project.rounds:
        order = [_corner(patch, name) for name in project.building.corners or _ROUND_ABOUT]
        cuts = one.cuts or [one.cut] * len(order)
        for corner, cut in zip(order, cuts, strict=True):
            assert cut is not None
            (x, y), before, after = patch[corner], patch[corner - 1], patch[(corner + 1) % 4]
            ways = [
                ((px - x) / dist((x, y), (px, py)), (py - y) / dist((x, y), (px, py))) for px, py in (before, after)
            ]
            folds.append(Fold((x, y), (ways[0], ways[1]), cut.inches))
    return patch, folds


_ROUND_ABOUT = ("upper right", "upper left", "lower left", "lower right")


@dataclass(frozen=True)
class Fold:
    """A square laid on a corner, stitched from corner to corner and folded outward."""

    corner: Point
    inward: tuple[Point, Point]
    cut: float

    def covers(self, x: float, y: float) -> bool:
        """True where the folded square lies: the half of the square toward the corner."""
        along, up = ((x - self.corner[0]) * dx + (y - self.corner[1]) * dy for dx, dy in self.inward)
        return along >= 0 and up >= 0 and along + up <= self.cut


def _toward(start: Point, end: Point) -> Point:
    long = dist(start, end)
    return ((end[0] - start[0]) / long, (end[1] - start[1]) / long)


def along_folds(project: Project, numbers: Numbers) -> Script:
    """The same as strips along lines that cut a corner off: each is as deep as half the square's diagonal."""
    patch, folds = with_folded_corners(project, numbers)
    table = replace(table_of(project, numbers), sides=sides_of(patch))
    strips = []
    for fold in folds:
        (ax, ay), (bx, by) = fold.inward
        normal = (-(ax + bx) / sqrt(2), -(ay + by) / sqrt(2))
        deep = fold.cut / sqrt(2)
        at = normal[0] * fold.corner[0] + normal[1] * fold.corner[1] - deep
        strips.append(Strip(normal, deep + table.seam, at))
    return replace(table, strips=tuple(strips))


def _corner(patch: Polygon, name: str) -> int:
    """Place of a named corner in the patch."""
    return max(range(4), key=lambda place: patch[place][0] * facing(name)[0] + patch[place][1] * facing(name)[1])


def on_foundation(project: Project, numbers: Numbers) -> Script:
    """A numbered foundation: patch 1 covers all, each later one what is beyond its line, away from a place in patch 1.

    Lines that were drawn on the back are seen in a mirror from the front. Every patch is taken as wide as the table.
    """
    table = table_of(project, numbers)
    scale = 1 if project.units == "in" else 1 / 2.54
    mirror = -1 if project.building.lines_seen is LinesSeen.BACK else 1
    first = project.patches[0].at or (0.0, 0.0)
    inside = (first[0] * scale * mirror, first[1] * scale)
    strips = []
    for patch in project.patches[1:]:
        assert patch.line is not None
        (x0, y0), (x1, y1) = ((x * scale * mirror, y * scale) for x, y in patch.line)
        long = dist((x0, y0), (x1, y1))
        n = ((y1 - y0) / long, (x0 - x1) / long)
        at = n[0] * x0 + n[1] * y0
        if n[0] * inside[0] + n[1] * inside[1] > at:
            n, at = (-n[0], -n[1]), -at
        strips.append(Strip(n, 4 * WIDE, at))
    return replace(table, sides=sides_of(table.cover), strips=tuple(strips))


WIDE = 200.0
"""A table wider than any piece of these tests, inches."""


def needs_of_patches(script: Script) -> list[BaseGeometry]:
    """What of each patch must be there: inside the cover line, from its own allowance to that of every later line."""
    cover = Area(script.cover)
    needs = []
    for number, patch in enumerate([None, *script.strips]):
        need: BaseGeometry = cover
        if patch is not None and patch.at is not None:
            need = common(need, slab(patch.normal, patch.at - script.seam, 4 * WIDE, 4 * WIDE))
        for later in script.strips[number:]:
            assert later.at is not None
            need = common(need, slab(later.normal, -4 * WIDE, later.at + script.seam, 4 * WIDE))
        beyond = (
            need if patch is None or patch.at is None else common(need, slab(patch.normal, patch.at, 999, 4 * WIDE))
        )
        needs.append(need if counts(beyond) else Area())
    return needs
