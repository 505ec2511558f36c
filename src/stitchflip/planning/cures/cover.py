"""Cover: wider and more strips, smaller squared-up sizes, lines across a gap."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING

from stitchflip.lengths import Unit
from stitchflip.piecing.coverage import widest_anywhere
from stitchflip.piecing.geometry import TOLERANCE, extent, middle, moved, scaled
from stitchflip.planning.cures.trying import (
    OWN_MEASURE,
    codes_of,
    first_size,
    grid_of,
    is_covered,
    next_size,
    said,
    search,
    squaring_up,
    with_changes,
)
from stitchflip.planning.findings.seen import Seen
from stitchflip.planning.findings.words import capital
from stitchflip.planning.model import Cure, Finding, Severity
from stitchflip.project.model import Change, Runs, Way, Widths

if TYPE_CHECKING:
    from collections.abc import Iterator


def coverage(seen: Seen, finding: Finding) -> Iterator[Cure]:
    """A wider last round, or a smaller squared-up size."""
    project = seen.project
    last = len(project.rounds) - 1
    if project.rounds and project.rounds[last].cut is not None and not project.building.until_covered:
        grid = 0.25 if project.units is Unit.INCH else 0.5 / 2.54
        now = project.rounds[last].cut
        found = (
            search(
                project,
                ("rounds", last, "cut"),
                next_size(now.inches, grid, up=True),
                grid,
                is_covered,
                most=_short(seen),
            )
            if now
            else None
        )
        if found:
            yield Cure(f"Cut the last strips {said(seen, found[0])} wide.", (found[1],))
    if project.building.widths is Widths.ON_HAND:
        yield Cure(
            "Add pieces to what is on hand of the fabrics in the rounds, or write the cut widths into the rounds."
        )
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
    tried = with_changes(project, *also, change)
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
    grid = grid_of(project)
    per_inch = 1.0 if project.units is Unit.INCH else 2.54
    for side, (nx, ny) in (("left", (-1, 0)), ("right", (1, 0)), ("bottom", (0, -1)), ("top", (0, 1))):
        by = max((spot.by for spot in seen.build.bare if spot.side == side), default=0.0)
        if side not in grown and by > TOLERANCE:
            steps = ceil(by / grid - TOLERANCE) * grid * per_inch
            right, up = right + nx * steps, up + ny * steps
    if (right, up) == project.center.off_center:
        return
    change = Change(("center", "off_center"), f"[{right:g}, {up:g}]")
    tried = with_changes(project, change)
    if tried is not None and all(spot.grade == "note" for spot in tried.build.bare):
        yield Cure("Lay the center into the corner.", (change,))
    else:
        yield from _more_rounds(seen, change)


def _smaller_trim(seen: Seen) -> Iterator[Cure]:
    """The largest squared-up size that is covered, made smaller in the direction of the worst bare place."""
    wanted, grid = seen.project.squared_up, grid_of(seen.project)
    key = OWN_MEASURE.get(wanted.shape) or _measure_toward(seen)
    now = getattr(wanted, key)
    found = (
        search(
            seen.project,
            ("squared_up", key),
            next_size(now.inches, grid, up=False),
            -grid,
            is_covered,
            most=2 * _short(seen),
        )
        if now
        else None
    )
    if found:
        yield Cure(capital(f"{squaring_up(seen, found[0], key)}."), (found[1],))


def _short(seen: Seen) -> float:
    """How far fabric is short where it is shortest, with an inch for what stitching and rounding take."""
    return max((spot.by for spot in seen.build.bare), default=0.0) + 1.0


def _measure_toward(seen: Seen) -> str:
    """The squared-up measure that ends at the worst bare place; at a slanted end, the length."""
    worst = max(seen.build.bare, key=lambda spot: spot.by)
    x, y = middle(worst.polygon)
    half_x, half_y = extent(seen.build.trim, 1, 0)[1], extent(seen.build.trim, 0, 1)[1]
    beyond = (abs(x) - half_x, abs(y) - half_y)
    is_along_x = beyond[0] > beyond[1] if max(beyond) > 0 else half_x > half_y
    return "long" if is_along_x == (seen.project.squared_up.length_runs is Runs.ACROSS) else "wide"


def thin(seen: Seen, finding: Finding) -> Iterator[Cure]:
    """A squared-up size or a round width with which the last strip shows enough and nothing new is wrong."""
    code, project = finding.code, seen.project
    before = codes_of(seen)

    def gone(tried: Seen) -> bool:
        codes = codes_of(tried)
        return code not in codes and codes <= before

    grid = grid_of(project)
    for key in ("long", "wide", *OWN_MEASURE.values()):
        now = getattr(project.squared_up, key)
        found = (
            first_size(seen, ("squared_up", key), next_size(now.inches, grid, up=False), -grid, gone) if now else None
        )
        if found:
            yield Cure(capital(f"{squaring_up(seen, found[0], key)}."), (found[1],))
            break
    last = len(project.rounds) - 1
    now = project.rounds[last - 1].cut if last >= 1 else None
    if now is not None:
        found = first_size(
            seen, ("rounds", last - 1, "cut"), next_size(now.inches, 2 * grid, up=False), -2 * grid, gone
        )
        if found:
            yield Cure(f"Cut the round before it {said(seen, found[0])} wide.", (found[1],))


def gap(seen: Seen, finding: Finding) -> Iterator[Cure]:
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
            f"Quilt two crossing lines through it: then {said(seen, round(rest * 16) / 16)} is the widest place."
        )
