"""Ways whose strips run free or follow lines of their own, dictated from the words of the project alone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import islice
from math import cos, pi, sin, sqrt

from stitchflip.project.model import CenterShape, PairFirst, Project, Way
from stitchflip.project.numbers import Numbers
from tests.twins.dictate import MOST_STRIPS, center_of, repeated, script_of, table_of, until_covered
from tests.twins.painter import travel
from tests.twins.script import Point, Script, Strip


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
