"""A project dictated strip by strip, from the words of its file alone.

The orders (which side comes next) are written out here a second time, in the plainest way, so that they too are
judged by something that is not the kernel. Only ways with a fixed number of strips are dictated; "until covered"
is played against the painting (`until_covered`).
"""

from __future__ import annotations

from dataclasses import replace
from math import atan2, cos, pi, sin

from stitchflip.project.model import Ends, PairFirst, Project, RowsRun, Runs, Turning, Way
from stitchflip.project.numbers import Numbers
from tests.twins.painter import common, counts, paint
from tests.twins.script import (
    Point,
    Polygon,
    Script,
    Side,
    Strip,
    moved_out,
    rectangle,
    regular,
    sides_of,
    stretched,
    turned,
)

TOP, RIGHT, BOTTOM, LEFT = "top", "right", "bottom", "left"


def script_of(project: Project, numbers: Numbers) -> Script:
    """The script of a project whose rounds are all sewn."""
    taped = trim_of(project)
    draw_up = (1 / (1 - numbers.draw_up_x), 1 / (1 - numbers.draw_up_y))
    trim = stretched(taped, *draw_up)
    sides, strips = _sides_and_strips(project)
    return Script(
        sides=sides,
        strips=strips,
        seam=numbers.seam + numbers.fold_loss / 2,
        trim=trim,
        inner=stretched(moved_out(taped, -numbers.binding_seam), *draw_up),
        cover=moved_out(trim, numbers.reach),
        stitch=numbers.stitch,
        counts_as_crossed=numbers.counts_as_crossed,
    )


def trim_of(project: Project) -> Polygon:
    """The squared-up outline as the tape finds it."""
    wanted = project.squared_up
    if wanted.sides is not None:
        assert wanted.across_flats is not None
        return regular(wanted.sides, wanted.across_flats.inches, wanted.turned)
    assert wanted.wide is not None
    assert wanted.long is not None
    wide, long = wanted.wide.inches, wanted.long.inches
    x, y = (wide, long) if wanted.length_runs is Runs.UP else (long, wide)
    if wanted.ends is Ends.SQUARE:
        return rectangle(x, y)
    lying = _pointed(long, wide)
    return lying if wanted.length_runs is Runs.ACROSS else turned(lying, 90)


def _pointed(long: float, wide: float) -> Polygon:
    """Lying along x, 45-degree points at both ends."""
    tip, half = long / 2, wide / 2
    return ((tip, 0), (tip - half, half), (half - tip, half), (-tip, 0), (half - tip, -half), (tip - half, -half))


def center_of(project: Project) -> Polygon:
    """The center as cut, where it lies."""
    center = project.center
    assert center is not None
    if center.sides is not None:
        assert center.cut is not None
        cut = regular(center.sides, center.cut.inches)
    elif center.cut_wide is not None and center.cut_long is not None:
        cut = rectangle(center.cut_wide.inches, center.cut_long.inches)
    else:
        assert center.cut is not None
        cut = rectangle(center.cut.inches, center.cut.inches)
    scale = 1 if project.units == "in" else 1 / 2.54
    x, y = (place * scale for place in center.off_center)
    return tuple((px + x, py + y) for px, py in turned(cut, center.turned))


def facing(name: str) -> Point:
    """Outward direction of a named side of a square, straight or on point."""
    straight = {TOP: (0.0, 1.0), RIGHT: (1.0, 0.0), BOTTOM: (0.0, -1.0), LEFT: (-1.0, 0.0)}
    slanted = {"upper right": 45, "upper left": 135, "lower left": 225, "lower right": 315}
    if name in straight:
        return straight[name]
    return (cos(slanted[name] * pi / 180), sin(slanted[name] * pi / 180))


def _sides_and_strips(project: Project) -> tuple[tuple[Side, ...], tuple[Strip, ...]]:
    if project.building.way is Way.ROWS:
        return _rows(project)
    sides = sides_of(center_of(project))
    if project.building.way is Way.SIDES:
        listed = [Strip(facing(step.side), step.cut.inches) for step in project.steps]
        return sides, tuple(listed)
    strips = []
    for number, one in enumerate(project.rounds):
        order = _order(project, sides, number)
        cuts = one.cuts or [one.cut] * len(order)
        strips += [Strip(normal, cut.inches) for normal, cut in zip(order, cuts, strict=True) if cut is not None]
    return sides, tuple(strips)


def _order(project: Project, sides: tuple[Side, ...], number: int) -> list[Point]:
    """The sides of one round, in the order they are sewn."""
    building = project.building
    clockwise = building.turning is Turning.CLOCKWISE
    match building.way:
        case Way.LOG_CABIN | Way.TWO_SIDED:
            ring = [TOP, RIGHT, BOTTOM, LEFT] if clockwise else [TOP, LEFT, BOTTOM, RIGHT]
            first = ring.index(building.start or TOP)
            ring = ring[first:] + ring[:first]
            return [facing(name) for name in (ring if building.way is Way.LOG_CABIN else ring[:2])]
        case Way.COURTHOUSE:
            pair = list(building.first_pair)
            others = [name for name in (LEFT, RIGHT, TOP, BOTTOM) if name not in pair]
            return [facing(name) for name in pair * building.strips_per_visit + others * building.strips_per_visit]
        case Way.POINTS:
            upper_first = building.pair_first is PairFirst.UPPER or (
                building.pair_first is PairFirst.ALTERNATE and number % 2 == 0
            )
            rows = ("upper", "lower") if upper_first else ("lower", "upper")
            ends = ("right",) if building.one_ended else ("right", "left")
            return [facing(f"{row} {end}") for end in ends for row in rows]
        case Way.AROUND:
            round_about = sorted((normal for normal, _ in sides), key=_from_bottom)
            return round_about if not clockwise else round_about[:1] + round_about[:0:-1]
        case _:
            raise AssertionError(building.way)


def _from_bottom(normal: Point) -> float:
    """Angle of a side, counter-clockwise from the one that faces straight down."""
    return (atan2(normal[1], normal[0]) + pi / 2 + 1e-6) % (2 * pi)


def _rows(project: Project) -> tuple[tuple[Side, ...], tuple[Strip, ...]]:
    """From the middle out: the first strip lies on the middle line, then one on each side, the upper one first."""
    up = project.squared_up.length_runs is Runs.UP
    run = project.building.rows_run
    n = (0.0, 1.0) if (run is RowsRun.ACROSS) == up else (1.0, 0.0)
    if run is RowsRun.SLANTED:
        slant = project.building.slant * pi / 180
        n = (-sin(slant), cos(slant))
    if (round(n[1], 6), n[0]) < (0.0, 0.0):
        n = (-n[0], -n[1])
    back = (-n[0], -n[1])
    first, *rest = project.rounds
    assert first.cut is not None
    half = first.cut.inches / 2
    strips = [Strip(side, one.cut.inches) for one in rest if one.cut is not None for side in (n, back)]
    return ((n, half), (back, half)), tuple(strips)


def until_covered(script: Script, orders: list[list[Strip]]) -> Script:
    """Follow the rounds; skip a strip whose fabric covers nothing still bare; stop when nothing is bare.

    Args:
        script: a script without strips.
        orders: the strips of each pass.
    """
    sewn, bare = script, paint(script).bare
    for order in orders:
        for strip in order:
            if not counts(bare):
                return sewn
            tried = replace(sewn, strips=(*sewn.strips, strip))
            after = paint(tried)
            if counts(common(after.pieces[-1].opened, bare)):
                sewn, bare = tried, after.bare
    return sewn
