"""Cures as numbers: what to change so that a finding goes away, each tried by planning again.

A cure is offered only when the changed project was built and the finding was gone (or the target reached), so
its number is never a guess.
"""

from __future__ import annotations

from dataclasses import replace
from math import ceil
from typing import TYPE_CHECKING

from stitchflip.errors import StitchflipError
from stitchflip.lengths import Length, Speaker, Unit, format_length
from stitchflip.piecing import bare_of
from stitchflip.piecing.coverage import widest_anywhere
from stitchflip.piecing.geometry import TOLERANCE, extent, middle, moved, scaled
from stitchflip.planning.findings.look import GEOMETRY
from stitchflip.planning.findings.seen import Seen, see
from stitchflip.planning.model import Cure, Finding, Severity
from stitchflip.project.changes import apply_changes
from stitchflip.project.model import CenterShape, Change, Outline, Runs, Way
from stitchflip.project.numbers import effective

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from stitchflip.project.model import Project

_STRIDES = (0, 2, 6, 14, 30)
"""How many steps away a search looks, one after the other."""

_OWN_MEASURE = {Outline.POLYGON: "across_flats", Outline.ROUND: "across"}
"""Shapes that have one measure."""

_TRIES = 40
"""No base is enlarged in more steps than this."""


def with_cures(seen: Seen, findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """The findings, each with the cures that were found to work."""
    return tuple(_cured(seen, finding) for finding in findings)


def _cured(seen: Seen, finding: Finding) -> Finding:
    maker = _MAKERS.get(finding.code)
    if maker is None:
        return finding
    found = {cure.text: cure for cure in maker(seen, finding)}
    return replace(finding, cures=(*finding.cures, *found.values()))


def _grid(project: Project) -> float:
    """The step in which sizes are tried: 1/8 in or 0.5 cm."""
    return 0.125 if project.units is Unit.INCH else 0.5 / 2.54


def _text(project: Project, inches: float) -> str:
    return format_length(Length.of_inches(inches), project.units)


def _say(seen: Seen, inches: float) -> str:
    return Speaker(seen.project.units).width(Length.of_inches(inches).inches)


def _tried(project: Project, *changes: Change) -> Seen | None:
    """The project with changes, built; None when it cannot be built."""
    try:
        return see(apply_changes(project, changes))
    except StitchflipError:
        return None


def _built(good: Callable[[Seen], bool]) -> Callable[[Project], bool]:
    """The same question, asked of a project that must be built first."""
    return lambda project: good(see(project))


def _is_covered(project: Project) -> bool:
    """Nothing of the cover outline stays bare; told without the rest of the build."""
    return not bare_of(project, effective(project))


def _codes(seen: Seen) -> set[str]:
    return {finding.code for check in GEOMETRY for finding in check(seen)}


def _search(
    project: Project, path: tuple[str | int, ...], start: float, step: float, good: Callable[[Project], bool]
) -> tuple[float, Change] | None:
    """The first size from `start` on, in steps, with which the project is good.

    Larger strides find a size that is good, halving between it and the last one that was not finds the first;
    right wherever a size that is good stays good farther on, which holds for room, cover and base alike.

    Args:
        project: The project as it is.
        path: Where the size stands in it.
        start: First size to try, inches.
        step: Step, inches; negative to try smaller ones.
        good: Decides about the project with the size; one that cannot be built is not good.
    """

    def change(steps: int) -> Change:
        return Change(path, _text(project, start + steps * step))

    def is_good(steps: int) -> bool:
        try:
            return start + steps * step > 0 and good(apply_changes(project, (change(steps),)))
        except StitchflipError:
            return False

    bad = -1
    for far in _STRIDES:
        if is_good(far):
            first = far
            while first - bad > 1:
                half = (first + bad) // 2
                first, bad = (half, bad) if is_good(half) else (first, half)
            return start + first * step, change(first)
        bad = far
    return None


def _next(value: float, grid: float, *, up: bool) -> float:
    """The next size on the grid beyond a value."""
    steps = value / grid
    if up:
        return (int(steps + TOLERANCE) + 1) * grid
    below = int(steps - TOLERANCE)
    return below * grid


def _points(seen: Seen, finding: Finding) -> Iterator[Cure]:
    """A smaller center or a larger squared-up size, for no remark and for the wish."""
    targets = [seen.numbers.points_note] if finding.code != "points.wish" else []
    if seen.wish > seen.numbers.points_note + TOLERANCE or not targets:
        targets.append(seen.wish)
    for target in targets:
        aim = _say(seen, target)

        def reaches(tried: Seen, target: float = target) -> bool:
            margins = [point.to_trim_edge for point in tried.build.points if point.points_at_edge]
            return bool(margins) and min(margins) >= target - TOLERANCE

        center = _smaller_center(seen, reaches)
        if center:
            yield Cure(f"For {aim} to the trimmed edge: cut the center {_say(seen, center[0])}.", (center[1],))
        trim = _larger_trim(seen, reaches)
        if trim:
            yield Cure(f"For {aim} to the trimmed edge: square up at {_say(seen, trim[0])} {trim[2]}.", (trim[1],))


def _smaller_center(seen: Seen, good: Callable[[Seen], bool]) -> tuple[float, Change] | None:
    center, grid = seen.project.center, _grid(seen.project)
    if center is None or center.cut is None or center.shape is CenterShape.CORNERS:
        return None
    return _search(seen.project, ("center", "cut"), _next(center.cut.inches, grid, up=False), -grid, _built(good))


def _larger_trim(seen: Seen, good: Callable[[Seen], bool]) -> tuple[float, Change, str] | None:
    """The squared-up measure square to the points, enlarged until it is good."""
    wanted, grid = seen.project.squared_up, _grid(seen.project)
    if wanted.shape is Outline.POLYGON or wanted.beyond_points is not None:
        return None
    if wanted.shape is Outline.ROUND and wanted.across is not None:
        now = _next(wanted.across.inches, grid, up=True)
        round_piece = _search(seen.project, ("squared_up", "across"), now, grid, _built(good))
        return (*round_piece, "across") if round_piece else None
    tight = min((point for point in seen.build.points if point.points_at_edge), key=lambda point: point.to_trim_edge)
    is_upright = abs(tight.at[1]) >= abs(tight.at[0])
    key = "wide" if (wanted.length_runs is Runs.ACROSS) == is_upright else "long"
    measure = wanted.wide if key == "wide" else wanted.long
    if measure is None:
        return None
    found = _search(seen.project, ("squared_up", key), _next(measure.inches, grid, up=True), grid, _built(good))
    return (*found, key) if found else None


def _point_to_base(seen: Seen, finding: Finding) -> Iterator[Cure]:
    """A smaller center, a larger base, or a smaller wish."""

    def gone(tried: Seen) -> bool:
        margins = [point.to_base_edge for point in tried.build.points if point.points_at_edge]
        return bool(margins) and min(margins) >= tried.wish - TOLERANCE

    aim = _say(seen, seen.wish)
    center = _smaller_center(seen, gone)
    if center:
        yield Cure(f"For {aim} beyond the points: cut the center {_say(seen, center[0])}.", (center[1],))
    yield from _larger_base(seen, gone, f"For {aim} beyond the points: cut the base")
    margin = finding.numbers["to_base_edge_in"]
    if margin > seen.numbers.points_stop:
        wanted = seen.project.squared_up
        key = "beyond_points" if wanted.beyond_points is not None else "wish_beyond_points"
        step = 1 / 16 if seen.project.units is Unit.INCH else 0.1 / 2.54
        accepted = int(margin / step + TOLERANCE) * step
        change = Change(("squared_up", key), _text(seen.project, accepted))
        yield Cure(f"Accept {_say(seen, accepted)} beyond the points.", (change,))


def _larger_base(seen: Seen, good: Callable[[Seen], bool], begin: str) -> Iterator[Cure]:
    """The base enlarged both ways, only as far as it must be."""
    step = seen.numbers.round_base_to
    across = seen.project.squared_up.length_runs is Runs.ACROSS
    wide, high = seen.base.wide, seen.base.high
    for _ in range(_TRIES):
        for new_wide, new_high in ((wide + step, high), (wide, high + step), (wide + step, high + step)):
            size = (new_high, new_wide) if across else (new_wide, new_high)
            changes = (
                Change(("base", "wide"), _text(seen.project, size[0])),
                Change(("base", "long"), _text(seen.project, size[1])),
            )
            tried = _tried(seen.project, *changes)
            if tried is not None and good(tried):
                yield Cure(f"{begin} {Speaker(seen.project.units).size(*size)} (wide × long).", changes)
                return
        wide, high = wide + step, high + step


def _base(seen: Seen, finding: Finding) -> Iterator[Cure]:
    """A base large enough, or the largest squared-up size the base allows."""
    code = finding.code

    def gone(tried: Seen) -> bool:
        return code not in _codes(tried) and "base.too-small" not in _codes(tried)

    yield from _larger_base(seen, gone, "Cut the base")
    wanted, grid = seen.project.squared_up, _grid(seen.project)
    keys = [key for key in ("wide", "long", *_OWN_MEASURE.values()) if getattr(wanted, key) is not None]
    for key in keys:
        found = _search(
            seen.project, ("squared_up", key), _next(getattr(wanted, key).inches, grid, up=False), -grid, _built(gone)
        )
        if found:
            yield Cure(f"Square up at {_say(seen, found[0])} {key.replace('_', ' ')}.", (found[1],))
            break


def _center_on_base(seen: Seen, _finding: Finding) -> Iterator[Cure]:
    """A center that fits the base, or a base that holds it."""

    def gone(tried: Seen) -> bool:
        return "base.center-larger" not in _codes(tried)

    yield from _larger_base(seen, gone, "Cut the base")
    center = _smaller_center(seen, gone)
    if center:
        yield Cure(f"Cut the center {_say(seen, center[0])}.", (center[1],))


def _coverage(seen: Seen, finding: Finding) -> Iterator[Cure]:
    """A wider last round, or a smaller squared-up size."""
    project = seen.project
    last = len(project.rounds) - 1
    if project.rounds and project.rounds[last].cut is not None and not project.building.until_covered:
        grid = 0.25 if project.units is Unit.INCH else 0.5 / 2.54
        now = project.rounds[last].cut
        found = (
            _search(project, ("rounds", last, "cut"), _next(now.inches, grid, up=True), grid, _is_covered)
            if now
            else None
        )
        if found:
            yield Cure(f"Cut the last strips {_say(seen, found[0])} wide.", (found[1],))
    if finding.severity is not Severity.NOTE:
        yield from _more_rounds(seen)
        yield from _into_the_corner(seen)
    yield from _smaller_trim(seen)


def _more_rounds(seen: Seen, *also: Change) -> Iterator[Cure]:
    """The rounds repeated until only the reach may be short of what is asked for."""
    project = seen.project
    if not project.rounds or project.building.until_covered:
        return
    change = Change(("building", "until_covered"), "true")
    tried = _tried(project, *also, change)
    if tried is None or any(spot.grade != "note" for spot in tried.build.bare):
        return
    more = len(tried.build.strips) - len(seen.build.strips)
    if more > 0:
        move = "Lay the center into the corner and add" if also else "Add"
        yield Cure(f"{move} {more} more {'strip' if more == 1 else 'strips'}, repeating the rounds.", (*also, change))


def _into_the_corner(seen: Seen) -> Iterator[Cure]:
    """A two-sided log cabin leaves two sides of the center bare: the center moves until they lie at the edge."""
    project = seen.project
    if project.building.way is not Way.TWO_SIDED or project.center is None:
        return
    grown = {strip.side for strip in seen.build.strips}
    right, up = project.center.off_center
    grid = _grid(project)
    per_inch = 1.0 if project.units is Unit.INCH else 2.54
    for side, (nx, ny) in (("left", (-1, 0)), ("right", (1, 0)), ("bottom", (0, -1)), ("top", (0, 1))):
        by = max((spot.by for spot in seen.build.bare if spot.side == side), default=0.0)
        if side not in grown and by > TOLERANCE:
            steps = ceil(by / grid - TOLERANCE) * grid * per_inch
            right, up = right + nx * steps, up + ny * steps
    if (right, up) == project.center.off_center:
        return
    change = Change(("center", "off_center"), f"[{right:g}, {up:g}]")
    tried = _tried(project, change)
    if tried is not None and all(spot.grade == "note" for spot in tried.build.bare):
        yield Cure("Lay the center into the corner.", (change,))
    else:
        yield from _more_rounds(seen, change)


def _smaller_trim(seen: Seen) -> Iterator[Cure]:
    """The largest squared-up size that is covered, made smaller in the direction of the worst bare place."""
    wanted, grid = seen.project.squared_up, _grid(seen.project)
    key = _OWN_MEASURE.get(wanted.shape) or _measure_toward(seen)
    now = getattr(wanted, key)
    found = (
        _search(seen.project, ("squared_up", key), _next(now.inches, grid, up=False), -grid, _is_covered)
        if now
        else None
    )
    if found:
        yield Cure(f"Square up at {_say(seen, found[0])} {key.replace('_', ' ')}.", (found[1],))


def _measure_toward(seen: Seen) -> str:
    """The squared-up measure that ends at the worst bare place; at a slanted end, the length."""
    worst = max(seen.build.bare, key=lambda spot: spot.by)
    x, y = middle(worst.polygon)
    half_x, half_y = extent(seen.build.trim, 1, 0)[1], extent(seen.build.trim, 0, 1)[1]
    beyond = (abs(x) - half_x, abs(y) - half_y)
    is_along_x = beyond[0] > beyond[1] if max(beyond) > 0 else half_x > half_y
    return "long" if is_along_x == (seen.project.squared_up.length_runs is Runs.ACROSS) else "wide"


def _thin(seen: Seen, finding: Finding) -> Iterator[Cure]:
    """A squared-up size or a round width with which the last strip shows enough and nothing new is wrong."""
    code, project = finding.code, seen.project
    before = _codes(seen)

    def gone(tried: Seen) -> bool:
        codes = _codes(tried)
        return code not in codes and codes <= before

    grid = _grid(project)
    for key in ("long", "wide", *_OWN_MEASURE.values()):
        now = getattr(project.squared_up, key)
        found = _first(seen, ("squared_up", key), _next(now.inches, grid, up=False), -grid, gone) if now else None
        if found:
            yield Cure(f"Square up at {_say(seen, found[0])} {key.replace('_', ' ')}.", (found[1],))
            break
    last = len(project.rounds) - 1
    now = project.rounds[last - 1].cut if last >= 1 else None
    if now is not None:
        found = _first(seen, ("rounds", last - 1, "cut"), _next(now.inches, 2 * grid, up=False), -2 * grid, gone)
        if found:
            yield Cure(f"Cut the round before it {_say(seen, found[0])} wide.", (found[1],))


def _first(
    seen: Seen, path: tuple[str | int, ...], start: float, step: float, good: Callable[[Seen], bool]
) -> tuple[float, Change] | None:
    """The first of a few sizes that is good, one after the other: for what comes and goes with the size."""
    for steps in range(8):
        size = start + steps * step
        change = Change(path, _text(seen.project, size))
        tried = _tried(seen.project, change) if size > 0 else None
        if tried is not None and good(tried):
            return size, change
    return None


def _gap(seen: Seen, finding: Finding) -> Iterator[Cure]:
    """Two crossing lines through the widest place, with what is left open then."""
    build, limit = seen.build, finding.numbers["limit_in"]
    sx, sy = 1 - build.draw_up[0], 1 - build.draw_up[1]
    seams = [
        tuple((x * sx, y * sy) for x, y in (piece.seam.start.at, piece.seam.end.at))
        for piece in build.strips
        if piece.seam is not None
    ]
    x, y = build.widest_gap.center[0] * sx, build.widest_gap.center[1] * sy
    left, right = extent(build.trim_taped, 1, 0)
    low, high = extent(build.trim_taped, 0, 1)
    lines = [*seams, ((left, y), (right, y)), ((x, low), (x, high))]
    center = seen.project.center
    is_done = center is not None and center.sewn_already
    done = moved(build.pieces[0].opened, -build.seam_allowance) if is_done else ()
    rest = widest_anywhere(build.trim_taped, [(line[0], line[1]) for line in lines], done=scaled(done, sx, sy)).diameter
    if rest <= limit + 0.02:
        yield Cure(
            f"Quilt two crossing lines through it: then {_say(seen, round(rest * 16) / 16)} is the widest place."
        )


_MAKERS: dict[str, Callable[[Seen, Finding], Iterator[Cure]]] = {
    "points.cut-off": _points,
    "points.thin": _points,
    "points.wish": _points,
    "points.base-edge": _point_to_base,
    "base.too-small": _base,
    "base.little-spare": _base,
    "base.center-larger": _center_on_base,
    "coverage.batting-shows": _coverage,
    "coverage.under-binding": _coverage,
    "coverage.thin-reach": _coverage,
    "strip.sliver": _thin,
    "strip.thin-at-edge": _thin,
    "strip.hidden": _thin,
    "stitching.wide-gap": _gap,
}
