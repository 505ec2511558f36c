"""A project dictated strip by strip, from the words of its file alone.

The orders (which side comes next) are written out here a second time, in the plainest way, so that they too are
judged by something that is not the kernel. "Until covered" is played against the bare places as they are left
(`until_covered`). Ways whose strips follow lines of their own are dictated by modules beside this one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import cycle, islice
from math import atan2, cos, dist, hypot, pi, sin, sqrt

from shapely.geometry import Polygon as Area
from shapely.geometry.base import BaseGeometry

from stitchflip.project.model import (
    CenterShape,
    Ends,
    Outline,
    PairFirst,
    Project,
    Round,
    RowsFrom,
    RowsRun,
    Runs,
    Turning,
    Way,
)
from stitchflip.project.numbers import Numbers
from tests.twins.painter import common, counts, extent, paint, slab, without
from tests.twins.script import (
    Point,
    Polygon,
    Script,
    Side,
    Strip,
    area_of,
    moved_out,
    oval,
    rectangle,
    regular,
    rounded,
    sides_of,
    stretched,
    turned,
)

TOP, RIGHT, BOTTOM, LEFT = "top", "right", "bottom", "left"


MOST_STRIPS = 400
"""So many strips are dictated at most when a piece is built until it is covered."""


def script_of(project: Project, numbers: Numbers) -> Script:
    """The script of a project."""
    table = table_of(project, numbers)
    sides, strips = _sides_and_strips(project, numbers, table)
    begun = replace(table, sides=sides)
    if not project.building.until_covered:
        return replace(begun, strips=tuple(strips))
    return until_covered(begun, islice(strips, MOST_STRIPS))


def table_of(project: Project, numbers: Numbers) -> Script:
    """The outlines and the seam a project is sewn by, before anything lies on the base."""
    taped = trim_of(project)
    draw_up = (1 / (1 - numbers.draw_up_x), 1 / (1 - numbers.draw_up_y))
    trim = stretched(taped, *draw_up)
    return Script(
        sides=(),
        strips=(),
        seam=numbers.seam + numbers.fold_loss / 2,
        trim=trim,
        inner=stretched(moved_out(taped, -numbers.binding_seam), *draw_up),
        cover=moved_out(trim, numbers.reach),
        stitch=numbers.stitch,
        counts_as_crossed=numbers.counts_as_crossed,
    )


def trim_of(project: Project) -> Polygon:
    """The squared-up outline as the tape finds it; of panels cut apart later, all of them together."""
    wanted, apart = project.squared_up, project.cut_apart
    piece = _piece_of(project)
    if apart is None:
        return piece
    xs, ys = [x for x, _ in piece], [y for _, y in piece]
    loss = apart.loss.inches if apart.loss is not None else 0.0
    x = apart.across * (max(xs) - min(xs)) + (apart.across - 1) * loss
    y = apart.down * (max(ys) - min(ys)) + (apart.down - 1) * loss
    assert wanted.sides is None
    return rectangle(x, y)


def _piece_of(project: Project) -> Polygon:
    wanted = project.squared_up
    if wanted.sides is not None:
        assert wanted.across_flats is not None
        return regular(wanted.sides, wanted.across_flats.inches, wanted.turned)
    if wanted.across is not None:
        return oval(wanted.across.inches, wanted.across.inches)
    assert wanted.wide is not None
    assert wanted.long is not None
    wide, long = wanted.wide.inches, wanted.long.inches
    x, y = (wide, long) if wanted.length_runs is Runs.UP else (long, wide)
    if wanted.shape is Outline.OVAL:
        return oval(x, y)
    if wanted.corner_radius is not None:
        return rounded(x, y, wanted.corner_radius.inches)
    if wanted.ends is Ends.SQUARE:
        return rectangle(x, y)
    lying = _pointed(long, wide)
    return lying if wanted.length_runs is Runs.ACROSS else turned(lying, 90)


def is_curved(project: Project) -> bool:
    """True when some of the outline is a curve, which every method draws with short straight edges of its own."""
    wanted = project.squared_up
    return wanted.across is not None or wanted.shape is Outline.OVAL or wanted.corner_radius is not None


def _pointed(long: float, wide: float) -> Polygon:
    """Lying along x, 45-degree points at both ends."""
    tip, half = long / 2, wide / 2
    return ((tip, 0), (tip - half, half), (half - tip, half), (-tip, 0), (half - tip, -half), (tip - half, -half))


def center_of(project: Project, numbers: Numbers) -> Polygon:
    """The center as cut, where it lies; a half-done piece as it lay before it was stitched."""
    center = project.center
    assert center is not None
    scale = 1 if project.units == "in" else 1 / 2.54
    x, y = (place * scale for place in center.off_center)
    placed = tuple((px + x, py + y) for px, py in turned(_center_as_cut(project, scale), center.turned))
    if not center.sewn_already:
        return placed
    return stretched(placed, 1 / (1 - numbers.draw_up_x), 1 / (1 - numbers.draw_up_y))


def _center_as_cut(project: Project, scale: float) -> Polygon:
    center = project.center
    assert center is not None
    if center.corners is not None:
        listed = tuple((x * scale, y * scale) for x, y in center.corners)
        return listed if area_of(listed) > 0 else listed[::-1]
    if center.cut_wide is not None and center.cut_long is not None:
        return rectangle(center.cut_wide.inches, center.cut_long.inches)
    assert center.cut is not None
    cut = center.cut.inches
    if center.sides is not None:
        return regular(center.sides, cut)
    if center.shape is CenterShape.HALF_SQUARE:
        return ((-cut / sqrt(2), 0.0), (cut / sqrt(2), 0.0), (0.0, cut / sqrt(2)))
    return rectangle(cut, cut)


def facing(name: str) -> Point:
    """Outward direction of a named side of a square, straight or on point."""
    straight = {TOP: (0.0, 1.0), RIGHT: (1.0, 0.0), BOTTOM: (0.0, -1.0), LEFT: (-1.0, 0.0)}
    slanted = {"upper right": 45, "upper left": 135, "lower left": 225, "lower right": 315}
    if name in straight:
        return straight[name]
    return (cos(slanted[name] * pi / 180), sin(slanted[name] * pi / 180))


def _sides_and_strips(project: Project, numbers: Numbers, table: Script) -> tuple[tuple[Side, ...], Iterable[Strip]]:
    if project.building.way in {Way.ROWS, Way.STRINGS}:
        return _rows(project, numbers, table)
    sides = sides_of(center_of(project, numbers))
    if project.building.way is Way.SIDES:
        return sides, [Strip(facing(step.side), step.cut.inches) for step in project.steps]
    return sides, _rounds(project, sides)


def _rounds(project: Project, sides: tuple[Side, ...]) -> Iterator[Strip]:
    """The strips of all rounds; again from the first round on when the piece is built until it is covered."""
    for number, one in enumerate(repeated(project)):
        order = order_of_round(project, sides, number)
        cuts = one.cuts or [one.cut] * len(order)
        yield from (Strip(normal, cut.inches) for normal, cut in zip(order, cuts, strict=True) if cut is not None)


def repeated(project: Project) -> Iterable[Round]:
    """The rounds; one time after another when the piece is built until it is covered."""
    return cycle(project.rounds) if project.building.until_covered else project.rounds


def order_of_round(project: Project, sides: tuple[Side, ...], number: int) -> list[Point]:
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
            lying = [facing(f"{row} {end}") for end in ends for row in rows]
            return lying if project.squared_up.length_runs is Runs.ACROSS else [(y, x) for x, y in lying]
        case Way.AROUND:
            about = sorted((normal for normal, _ in sides), key=_from_bottom)
            first = _place_in(about, building.start) if building.start else 0
            step = -1 if clockwise else 1
            return [about[(first + step * place) % len(about)] for place in range(len(about))]
        case _:
            raise AssertionError(building.way)


def _place_in(about: list[Point], name: str) -> int:
    """Place of a side named "side 2" or "upper left" in a ring of sides."""
    if name.startswith("side "):
        return int(name.removeprefix("side ")) - 1
    return min(range(len(about)), key=lambda place: dist(about[place], facing(name)))


def _from_bottom(normal: Point) -> float:
    """Angle of a side, counter-clockwise from the one that faces straight down."""
    return (atan2(normal[1], normal[0]) + pi / 2 + 1e-6) % (2 * pi)


def _rows(project: Project, numbers: Numbers, table: Script) -> tuple[tuple[Side, ...], Iterable[Strip]]:
    """From the middle out one on each side, the upper one first; or one after another from the lower end."""
    n = _corner_to_corner(project, table) if project.building.way is Way.STRINGS else _across_the_rows(project)
    if (round(n[1], 6), n[0]) < (0.0, 0.0):
        n = (-n[0], -n[1])
    back = (-n[0], -n[1])
    from_end = project.building.rows_from is RowsFrom.ONE_END and project.building.way is Way.ROWS
    order = [n] if from_end else [n, back]
    rest = project.rounds
    if project.center is not None:
        raw = Area(center_of(project, numbers))
        sides: tuple[Side, ...] = ((n, extent(raw, n)[1]), (back, extent(raw, back)[1]))
    else:
        first, *later = project.rounds
        rest = tuple(later)
        width = first.cut.inches if first.cut is not None else (first.cuts or ())[0].inches
        low = extent(Area(table.cover), n)[0] if from_end else -width / 2
        sides = ((n, low + width), (back, -low))
    strips = []
    for one in rest:
        cuts = one.cuts or [one.cut] * len(order)
        strips += [Strip(side, cut.inches) for side, cut in zip(order, cuts, strict=True) if cut is not None]
    if not project.building.until_covered:
        return sides, strips
    return sides, strips * (1 + MOST_STRIPS // len(strips))


def _across_the_rows(project: Project) -> Point:
    up = project.squared_up.length_runs is Runs.UP
    run = project.building.rows_run
    if run is RowsRun.SLANTED:
        slant = project.building.slant * pi / 180
        return (-sin(slant), cos(slant))
    return (0.0, 1.0) if (run is RowsRun.ACROSS) == up else (1.0, 0.0)


def _corner_to_corner(project: Project, table: Script) -> Point:
    """Square to a diagonal of the base: one that rises to the right, or falls when the work turns the other way."""
    xs, ys = [x for x, _ in table.trim], [y for _, y in table.trim]
    wide, high = max(xs) - min(xs), max(ys) - min(ys)
    falls = project.building.turning is Turning.COUNTERCLOCKWISE
    return ((high if falls else -high) / hypot(wide, high), wide / hypot(wide, high))


def until_covered(script: Script, strips: Iterable[Strip]) -> Script:
    """Sew one strip after another; skip one whose fabric covers nothing still bare; stop when nothing is bare.

    Strips on sides take no fabric away, so each leaves bare what it does not cover.

    Args:
        script: a script without strips.
        strips: those that would be sewn, in order.
    """
    reach = 1000.0
    fabric: BaseGeometry = Area(rectangle(2 * reach, 2 * reach))
    for normal, r in script.sides:
        fabric = common(fabric, slab(normal, -4 * reach, r, 4 * reach))
    bare = without(Area(script.cover), fabric)
    sides, sewn = list(script.sides), []
    for strip in strips:
        if not counts(bare):
            break
        n = strip.normal
        (line,) = (r - script.seam for normal, r in sides if dist(normal, n) < 1e-6)
        outer = line + strip.width - script.seam
        others = [side for side in sides if dist(side[0], n) >= 1e-6]
        opened: BaseGeometry = slab(n, line, outer, reach)
        for normal, r in others:
            opened = common(opened, slab(normal, -4 * reach, r, 4 * reach))
        if counts(common(opened, bare)):
            sewn.append(strip)
            sides = [*others, (n, outer)]
            bare = without(bare, opened)
    return replace(script, strips=tuple(sewn))


def cut_short(script: Script, project: Project) -> Script:
    """The same script with the strips that were cut too short as long as they really are."""
    strips = list(script.strips)
    pieces = paint(script).pieces
    for short in project.short_strips:
        start, end = pieces[short.step].full
        spare = end - start - short.long.inches
        first = start + (spare / 2 if short.from_start is None else short.from_start.inches)
        strips[short.step - 1] = replace(strips[short.step - 1], interval=(first, first + short.long.inches))
    return replace(script, strips=tuple(strips))
