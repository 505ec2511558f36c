"""More room: smaller centers, larger bases and squared-up sizes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker, Unit
from stitchflip.piecing.geometry import TOLERANCE
from stitchflip.planning.cures.trying import (
    OWN_MEASURE,
    as_text,
    built,
    codes_of,
    grid_of,
    next_size,
    said,
    search,
    squaring_up,
    with_changes,
)
from stitchflip.planning.findings.points import center_cut_off
from stitchflip.planning.findings.seen import Seen
from stitchflip.planning.findings.words import capital
from stitchflip.planning.model import Cure, Finding
from stitchflip.project.model import CenterShape, Change, Runs

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator


_MOST_STEPS = 255
"""No base is enlarged in more steps than this."""


def points(seen: Seen, finding: Finding) -> Iterator[Cure]:
    """A smaller center or a larger squared-up size, for no remark and for the wish."""
    targets = [seen.numbers.points_note] if finding.code != "points.wish" else []
    if seen.wish > seen.numbers.points_note + TOLERANCE or not targets:
        targets.append(seen.wish)
    for target in targets:
        aim = said(seen, target)

        def reaches(tried: Seen, target: float = target) -> bool:
            margins = [point.to_trim_edge for point in tried.build.points if point.points_at_edge]
            return bool(margins) and min(margins) >= target - TOLERANCE

        center = _smaller_center(seen, reaches)
        if center:
            yield Cure(f"For {aim} to the trimmed edge: cut the center {said(seen, center[0])}.", (center[1],))
        trim = _larger_trim(seen, reaches)
        if trim:
            yield Cure(f"For {aim} to the trimmed edge: {squaring_up(seen, trim[0], trim[2])}.", (trim[1],))


def _smaller_center(seen: Seen, good: Callable[[Seen], bool]) -> tuple[float, Change] | None:
    center, grid = seen.project.center, grid_of(seen.project)
    if center is None or center.cut is None or center.shape is CenterShape.CORNERS:
        return None
    return search(seen.project, ("center", "cut"), next_size(center.cut.inches, grid, up=False), -grid, built(good))


def _larger_trim(seen: Seen, good: Callable[[Seen], bool]) -> tuple[float, Change, str] | None:
    """The squared-up measure square to the points, enlarged until it is good."""
    wanted, grid = seen.project.squared_up, grid_of(seen.project)
    pointing = [point for point in seen.build.points if point.points_at_edge]
    if wanted.beyond_points is not None or not pointing:
        return None
    tight = min(pointing, key=lambda point: point.to_trim_edge)
    is_upright = abs(tight.at[1]) >= abs(tight.at[0])
    along = "wide" if (wanted.length_runs is Runs.ACROSS) == is_upright else "long"
    key = OWN_MEASURE.get(wanted.shape, along)
    measure = getattr(wanted, key)
    if measure is None:
        return None
    found = search(seen.project, ("squared_up", key), next_size(measure.inches, grid, up=True), grid, built(good))
    return (*found, key) if found else None


def point_to_base(seen: Seen, finding: Finding) -> Iterator[Cure]:
    """A smaller center, a larger base, or a smaller wish."""

    def gone(tried: Seen) -> bool:
        margins = [point.to_base_edge for point in tried.build.points if point.points_at_edge]
        return bool(margins) and min(margins) >= tried.wish - TOLERANCE

    aim = said(seen, seen.wish)
    center = _smaller_center(seen, gone)
    if center:
        yield Cure(f"For {aim} beyond the points: cut the center {said(seen, center[0])}.", (center[1],))
    yield from _larger_base(seen, gone, f"For {aim} beyond the points: cut the base")
    margin = finding.numbers["to_base_edge_in"]
    if margin > seen.numbers.points_stop:
        wanted = seen.project.squared_up
        key = "beyond_points" if wanted.beyond_points is not None else "wish_beyond_points"
        step = 1 / 16 if seen.project.units is Unit.INCH else 0.1 / 2.54
        accepted = int(margin / step + TOLERANCE) * step
        change = Change(("squared_up", key), as_text(seen.project, accepted))
        yield Cure(f"Accept {said(seen, accepted)} beyond the points.", (change,))


def _larger_base(seen: Seen, good: Callable[[Seen], bool], begin: str) -> Iterator[Cure]:
    """The base enlarged both ways, only as far as it must be."""

    def changes(wide: int, high: int) -> tuple[Change, Change]:
        size = _enlarged(seen, wide, high)
        return (
            Change(("base", "wide"), as_text(seen.project, size[0])),
            Change(("base", "long"), as_text(seen.project, size[1])),
        )

    def is_good(wide: int, high: int) -> bool:
        tried = with_changes(seen.project, *changes(wide, high))
        return tried is not None and good(tried)

    if not is_good(_MOST_STEPS, _MOST_STEPS):
        return
    both = _fewest(_MOST_STEPS, lambda steps: is_good(steps, steps))
    wide = _fewest(both, lambda steps: is_good(steps, both))
    high = _fewest(both, lambda steps: is_good(wide, steps))
    size = _enlarged(seen, wide, high)
    yield Cure(f"{begin} {Speaker(seen.project.units).size(*size)} (wide × long).", changes(wide, high))


def _enlarged(seen: Seen, wide: int, high: int) -> tuple[float, float]:
    """The base with so many steps added across and upright, wide and long as its file says them."""
    step = seen.numbers.round_base_to
    across, upright = seen.base.wide + wide * step, seen.base.high + high * step
    return (upright, across) if seen.project.squared_up.length_runs is Runs.ACROSS else (across, upright)


def _fewest(most: int, good: Callable[[int], bool]) -> int:
    """The fewest steps that are good, when `most` is; found by halving, as more room is never worse."""
    bad, first = -1, most
    while first - bad > 1:
        half = (bad + first) // 2
        bad, first = (bad, half) if good(half) else (half, first)
    return first


def base(seen: Seen, finding: Finding) -> Iterator[Cure]:
    """A base large enough, or the largest squared-up size the base allows."""
    code = finding.code

    def gone(tried: Seen) -> bool:
        return code not in codes_of(tried) and "base.too-small" not in codes_of(tried)

    yield from _larger_base(seen, gone, "Cut the base")
    wanted, grid = seen.project.squared_up, grid_of(seen.project)
    keys = [key for key in ("wide", "long", *OWN_MEASURE.values()) if getattr(wanted, key) is not None]
    for key in keys:
        found = search(
            seen.project,
            ("squared_up", key),
            next_size(getattr(wanted, key).inches, grid, up=False),
            -grid,
            built(gone),
        )
        if found:
            yield Cure(capital(f"{squaring_up(seen, found[0], key)}."), (found[1],))
            break


def center_in_piece(seen: Seen, finding: Finding) -> Iterator[Cure]:
    """A center that stays inside the trimmed edge, or a squared-up size that holds it."""

    def gone(tried: Seen) -> bool:
        return not any(finding.where == other.where for other in center_cut_off(tried))

    is_across = finding.where.startswith("left")
    project, grid = seen.project, grid_of(seen.project)
    own = project.center.cut_wide if project.center is not None and is_across else None
    own = project.center.cut_long if project.center is not None and not is_across else own
    key = "cut_wide" if is_across else "cut_long"
    if own is not None:
        less = next_size(own.inches, grid, up=False)
        center = search(project, ("center", key), less, -grid, built(gone))
    else:
        center = _smaller_center(seen, gone)
    if center:
        yield Cure(f"Cut the center {said(seen, center[0])}{'' if own is None else f' {key[4:]}'}.", (center[1],))
    measure = OWN_MEASURE.get(project.squared_up.shape)
    measure = measure or ("wide" if is_across == (project.squared_up.length_runs is Runs.UP) else "long")
    now = getattr(project.squared_up, measure)
    more = next_size(now.inches, grid, up=True) if now is not None else 0.0
    trim = search(project, ("squared_up", measure), more, grid, built(gone)) if now is not None else None
    if trim:
        yield Cure(f"Square up at {said(seen, trim[0])} {measure.replace('_', ' ')}.", (trim[1],))


def center_on_base(seen: Seen, _finding: Finding) -> Iterator[Cure]:
    """A center that fits the base, or a base that holds it."""

    def gone(tried: Seen) -> bool:
        return "base.center-larger" not in codes_of(tried)

    yield from _larger_base(seen, gone, "Cut the base")
    center = _smaller_center(seen, gone)
    if center:
        yield Cure(f"Cut the center {said(seen, center[0])}.", (center[1],))
