"""Trying changes on a project: sizes on the maker's grid, the first that is good, what is still wrong then."""

from __future__ import annotations

from math import inf
from typing import TYPE_CHECKING

from stitchflip.errors import StitchflipError
from stitchflip.lengths import Length, Speaker, Unit, format_length
from stitchflip.piecing import bare_of
from stitchflip.piecing.geometry import TOLERANCE
from stitchflip.planning.findings.look import GEOMETRY
from stitchflip.planning.findings.seen import Seen, see
from stitchflip.project.changes import apply_changes
from stitchflip.project.model import Change, Outline
from stitchflip.project.numbers import effective

if TYPE_CHECKING:
    from collections.abc import Callable

    from stitchflip.project.model import Project


_STRIDES = (0, 2, 6, 14, 30, 46, 70, 106, 160, 240)
"""How many steps away a search looks, one after the other."""

OWN_MEASURE = {Outline.POLYGON: "across_flats", Outline.ROUND: "across"}
"""Shapes that have one measure."""


def grid_of(project: Project) -> float:
    """The step in which sizes are tried: 1/8 in or 0.5 cm."""
    return 0.125 if project.units is Unit.INCH else 0.5 / 2.54


def as_text(project: Project, inches: float) -> str:
    """A size as it is written in the project's file."""
    return format_length(Length.of_inches(inches), project.units)


def said(seen: Seen, inches: float) -> str:
    """A size as a maker says it."""
    return Speaker(seen.project.units).width(Length.of_inches(inches).inches)


def squaring_up(seen: Seen, size: float, key: str) -> str:
    """The squared-up measure that a cure asks for; where it is wanted after washing, that is said."""
    measure = key.replace("_", " ")
    if seen.project.squared_up.after_washing:
        return f"want {said(seen, size)} {measure} after washing"
    return f"square up at {said(seen, size)} {measure}"


def with_changes(project: Project, *changes: Change) -> Seen | None:
    """The project with changes, built; None when it cannot be built."""
    try:
        return see(apply_changes(project, changes))
    except StitchflipError:
        return None


def built(good: Callable[[Seen], bool]) -> Callable[[Project], bool]:
    """The same question, asked of a project that must be built first."""
    return lambda project: good(see(project))


def is_covered(project: Project) -> bool:
    """Nothing of the cover outline stays bare; told without the rest of the build."""
    return not bare_of(project, effective(project))


def codes_of(seen: Seen) -> set[str]:
    """Codes of everything there is to look at in the geometry."""
    return {finding.code for check in GEOMETRY for finding in check(seen)}


def search(
    project: Project,
    path: tuple[str | int, ...],
    start: float,
    step: float,
    good: Callable[[Project], bool],
    *,
    most: float = inf,
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
        most: No size farther from the first than this, inches; what needs more mends something else.
    """

    def change(steps: int) -> Change:
        return Change(path, as_text(project, start + steps * step))

    def is_good(steps: int) -> bool:
        try:
            return start + steps * step > 0 and good(apply_changes(project, (change(steps),)))
        except StitchflipError:
            return False

    bad = -1
    farthest = min(most / abs(step), _STRIDES[-1])
    for far in (*(stride for stride in _STRIDES if stride < farthest), int(farthest)):
        if is_good(far):
            first = far
            while first - bad > 1:
                half = (first + bad) // 2
                first, bad = (half, bad) if is_good(half) else (first, half)
            return start + first * step, change(first)
        bad = far
    return None


def next_size(value: float, grid: float, *, up: bool) -> float:
    """The next size on the grid beyond a value."""
    steps = value / grid
    if up:
        return (int(steps + TOLERANCE) + 1) * grid
    below = int(steps - TOLERANCE)
    return below * grid


def first_size(
    seen: Seen, path: tuple[str | int, ...], start: float, step: float, good: Callable[[Seen], bool]
) -> tuple[float, Change] | None:
    """The first of a few sizes that is good, one after the other: for what comes and goes with the size."""
    for steps in range(8):
        size = start + steps * step
        change = Change(path, as_text(seen.project, size))
        tried = with_changes(seen.project, change) if size > 0 else None
        if tried is not None and good(tried):
            return size, change
    return None
