"""A project as it stands in a mirror: right and left change places, in words and numbers."""

from __future__ import annotations

from math import dist
from typing import Any

from stitchflip.piecing import start_of
from stitchflip.project import effective
from stitchflip.project.model import Center, LinesSeen, PairFirst, Project, RowsRun, Turning, Way
from tests.twins.script import Point


def mirrored(project: Project) -> Project:
    """The project left for right; ways whose order has no mirror in the words of a project are not meant."""
    squared_up = project.squared_up.model_copy(update={"turned": -project.squared_up.turned})
    update: dict[str, Any] = {"squared_up": squared_up}
    if project.center is not None:
        update["center"] = _center(project.center)
    other = project.model_copy(update=update)
    building = project.building
    changes: dict[str, Any] = {}
    match building.way:
        case Way.LOG_CABIN | Way.TWO_SIDED | Way.AROUND:
            changes = {"turning": _turned_over(building.turning), "start": _start(project, other)}
        case Way.COURTHOUSE | Way.CORNER_SQUARES:
            changes = {"first_pair": tuple(swapped(name) for name in building.first_pair)}
        case Way.POINTS:
            changes = {"pair_first": _other_leg(building.pair_first)}
        case Way.ROWS if building.rows_run is RowsRun.SLANTED:
            changes = {"slant": 180 - building.slant}
        case Way.STRINGS:
            changes = {"turning": _turned_over(building.turning)}
        case Way.BRAID | Way.CHEVRON:
            left = building.way is Way.CHEVRON and building.pair_first is PairFirst.LOWER
            first = building.start or ("upper left" if left else "upper right")
            changes = {"start": swapped(first)}
        case Way.FOLDED_CORNERS:
            changes = {"corners": tuple(swapped(name) for name in building.corners)}
        case Way.FOUNDATION:
            front = building.lines_seen is LinesSeen.FRONT
            changes = {"lines_seen": LinesSeen.BACK if front else LinesSeen.FRONT}
        case _:
            pass
    return other.model_copy(update={"building": building.model_copy(update=changes)})


def swapped(name: str) -> str:
    """The name of the side or corner across the mirror."""
    words = {"left": "right", "right": "left"}
    return " ".join(words.get(word, word) for word in name.split())


def _center(center: Center) -> Center:
    x, y = center.off_center
    corners = None if center.corners is None else tuple((-x, y) for x, y in reversed(center.corners))
    return center.model_copy(update={"off_center": (-x, y), "turned": -center.turned, "corners": corners})


def _turned_over(turning: Turning) -> Turning:
    return Turning.COUNTERCLOCKWISE if turning is Turning.CLOCKWISE else Turning.CLOCKWISE


def _other_leg(leg: PairFirst) -> PairFirst:
    return {PairFirst.UPPER: PairFirst.LOWER, PairFirst.LOWER: PairFirst.UPPER}[leg]


def _start(project: Project, other: Project) -> str:
    """The side across the mirror from the one a project starts at: the one asked for, the top, or the first."""
    here, there = _facing(project), _facing(other)
    first = project.building.start or ("top" if "top" in here else next(iter(here)))
    x, y = here[first]
    return min(there, key=lambda name: dist(there[name], (-x, y)))


def _facing(project: Project) -> dict[str, Point]:
    """The sides of the center by their names, with where they face."""
    state, names = start_of(project, effective(project))
    return dict(zip(names, (side.normal for side in state.sides if side is not None), strict=True))
