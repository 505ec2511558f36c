"""Other ways in than a size: from the strips or the batting that are there to the largest piece they give.

Nobody measures a shelf to make a piece of 13 by 44. She has nine strips and half a bat, and asks how far they go.
"""

from __future__ import annotations

from math import floor
from typing import TYPE_CHECKING

from stitchflip.errors import BuildError, StitchflipError
from stitchflip.finishing.base import spare_wanted
from stitchflip.lengths import TOLERANCE_IN, Length, Rounding, Speaker, Unit, round_to
from stitchflip.planning.model import Severity
from stitchflip.planning.planner import plan
from stitchflip.planning.resize import Resized, quilt_size, resized
from stitchflip.planning.resize.pen import exactly
from stitchflip.planning.resize.piece import trim_extents
from stitchflip.project.house import House
from stitchflip.project.model import Outline, Runs
from stitchflip.project.numbers import effective
from stitchflip.project.sizes import size_grid
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Callable

    from stitchflip.planning.model import Plan
    from stitchflip.project.model import Project
    from stitchflip.project.numbers import Numbers

WideLong = tuple[float, float]
"""Wide × long, inches."""

STEP = House(1 / 2, 1, "the length of a piece from strips on hand is tried in steps of")
SMALLEST = House(4, 10, "no piece is tried that is shorter than this")
LONGEST = House(160, 400, "no piece is tried that is longer than this")
_LOOKED_PAST = 4
"""So many steps past the largest size that holds are looked at, in case a larger one holds again."""


@dataclass(frozen=True, slots=True)
class FromStrips:
    """The largest piece that the fabric on hand covers and binds."""

    wide: float
    long: float
    """Squared up, inches."""
    resized: Resized
    runs_out: tuple[str, ...]
    """Fabrics that are not enough for the next larger size; none where the largest size tried was reached."""


@dataclass(frozen=True, slots=True)
class FromBatting:
    """The largest squared-up sizes that one piece of batting allows."""

    wide: float
    long: float
    """As it lies, inches."""
    in_proportion: WideLong
    """The largest in the project's own proportion."""
    spare: WideLong
    """Spare on each side of width and length that was kept, inches."""


def from_strips(project: Project) -> FromStrips:
    """The largest squared-up size, in the project's proportion, that is covered and bound with what is on hand.

    Fabrics with nothing on hand can be bought, and so can batting; those with something are only what is there.
    Strip widths stay, and rounds are added or dropped. Each size is planned as a whole: cutting, joins of the
    binding and all.

    Args:
        project: a way of building, and fabrics with their pieces on hand.

    Returns:
        The size and the project at that size.

    Raises:
        BuildError: If nothing is on hand, or what is there does not cover even the smallest size.
    """
    if not any(fabric.on_hand for fabric in project.fabrics):
        raise BuildError(
            what="none of the fabrics has anything on hand",
            fix='List what you have under on_hand of its fabric, such as { name = "precut strip", count = 12 }.',
            where="fabrics",
            code="build.nothing-on-hand",
        )
    only = project.model_copy(
        update={
            "fabrics": tuple(
                fabric.model_copy(update={"only_on_hand": bool(fabric.on_hand)}) for fabric in project.fabrics
            )
        }
    )
    tried: dict[int, tuple[Resized, Plan] | None] = {}
    step = STEP.of(project.units)
    low, high = round(SMALLEST.of(project.units) / step), round(LONGEST.of(project.units) / step)

    def holds(steps: int) -> bool:
        if steps not in tried:
            tried[steps] = _planned(only, steps * step)
        made = tried[steps]
        return made is not None and not _runs_out(made[1]) and not _stops(made[1])

    best = _largest(holds, low, high)
    if best is None:
        raise BuildError(
            what="what is on hand does not cover any size in this proportion",
            fix="List more of it, or name fabrics with nothing on hand, which can be bought.",
            where="fabrics",
            code="build.nothing-on-hand",
        )
    made, after = tried[best] or (resized(project), None), tried.get(best + 1)
    return FromStrips(*_size(made[0].project), made[0], _runs_out(after[1]) if after else ())


def _largest(holds: Callable[[int], bool], low: int, high: int) -> int | None:
    """The largest number that holds, by halving, then a look at a few larger ones."""
    good = next((steps for steps in range(low, min(low + 2 * _LOOKED_PAST, high)) if holds(steps)), None)
    if good is None:
        return None
    bad = good + 1
    while bad <= high and holds(bad):
        good, bad = bad, min(2 * bad, high) if bad < high else high + 1
    while bad - good > 1:
        half = (good + bad) // 2
        good, bad = (half, bad) if holds(half) else (good, half)
    past = good + 1
    while past <= min(good + _LOOKED_PAST, high):
        good = past if holds(past) else good
        past += 1
    return good


def _planned(project: Project, longer_in: float) -> tuple[Resized, Plan] | None:
    """The project with its longer measure so long, planned; None where no such piece can be drawn."""
    wide, long = _size(project)
    scale = longer_in / max(wide, long)
    grid = size_grid(longer_in, project.units)
    sizes = [exactly(max(round_to(side * scale, grid, Rounding.NEAREST), grid), project.units) for side in (wide, long)]
    is_one = project.squared_up.shape in {Outline.POLYGON, Outline.ROUND}
    try:
        made = resized(project, sizes[0], None if is_one else sizes[1], may_widen=False)
        return made, plan(made.project, with_cures=False)
    except StitchflipError:
        return None


def _size(project: Project) -> WideLong:
    size = quilt_size(project) if project.joined is not None else None
    if size is not None:
        return size
    wanted = project.squared_up
    one = wanted.across_flats or wanted.across
    if one is not None:
        return one.inches, one.inches
    x, y = trim_extents(project)
    return (x, y) if wanted.length_runs is Runs.UP else (y, x)


def _runs_out(made: Plan) -> tuple[str, ...]:
    return tuple(fabric.fabric for fabric in made.fabrics if fabric.left_out or fabric.short_in > TOLERANCE_IN)


def _stops(made: Plan) -> bool:
    """Something stops the piece that more batting would not help."""
    stops = (finding.code for finding in made.findings if finding.severity is Severity.STOP)
    return any(not code.startswith("batting.") for code in stops)


def from_batting(project: Project, wide: Length, long: Length) -> FromBatting:
    """The largest squared-up sizes that a base cut from one piece of batting allows, laid as it is given.

    The spare on each side comes off, then what the stitching draws in; the size goes down to the grid.

    Args:
        project: for its spare, its draw-up and its proportion; of a quilt of joined blocks, one block's.
        wide: the batting as measured.
        long: the batting as measured.

    Raises:
        BuildError: If nothing is left of the batting beside the spare.
    """
    size: WideLong = (wide.inches, long.inches)
    spare: WideLong = (0.0, 0.0)
    for _ in range(3):
        at_size = _with_size(project, size, project.units)
        numbers = effective(at_size)
        spare_x, spare_y = spare_wanted(at_size, numbers)
        upright = project.squared_up.length_runs is Runs.UP
        spare = (spare_x, spare_y) if upright else (spare_y, spare_x)
        draw_up = (numbers.draw_up_x, numbers.draw_up_y) if upright else (numbers.draw_up_y, numbers.draw_up_x)
        size = (
            _within(_as_cut(wide, numbers), spare[0], draw_up[0], project.units),
            _within(_as_cut(long, numbers), spare[1], draw_up[1], project.units),
        )
        if min(size) <= 0:
            say = Speaker(project.units)
            raise BuildError(
                what=f"batting of {say.size(wide.inches, long.inches)} leaves nothing beside the spare",
                fix="Take a larger piece, or less spare.",
                where="batting",
                code="build.no-batting",
            )
    return FromBatting(*size, _in_proportion(project, size), spare)


def _as_cut(side: Length, numbers: Numbers) -> float:
    """The largest base that is cut from it: bases stand on a grid of their own."""
    return round_to(side.inches, numbers.round_base_to, Rounding.DOWN)


def _within(batting: float, spare: float, draw_up: float, unit: Unit) -> float:
    """(base - 2 spare) × (1 - draw-up), down to the grid."""
    room = (batting - 2 * spare) * (1 - draw_up)
    return round_to(room, size_grid(room, unit), Rounding.DOWN)


def _with_size(project: Project, size: WideLong, unit: Unit) -> Project:
    """The project at this size, so far as spare and draw-up ask for it."""
    wide, long = (exactly(max(side, 0.25), unit) for side in size)
    update = {"shape": Outline.RECTANGLE, "wide": wide, "long": long, "beyond_points": None}
    return project.model_copy(update={"squared_up": project.squared_up.model_copy(update=update)})


def _in_proportion(project: Project, room: WideLong) -> WideLong:
    """The largest size of the project's proportion inside a size."""
    own = _size(project.model_copy(update={"joined": None}))
    grid = size_grid(max(room), project.units)
    steps = floor(min(room[0], own[0] * room[1] / own[1]) / grid + TOLERANCE_IN)
    wide = steps * grid
    return wide, min(round_to(wide * own[1] / own[0], grid, Rounding.NEAREST), room[1])
