"""Sizes near the one wanted at which nothing leaves the ruler."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Rounding, round_to
from stitchflip.planning.resize.pen import CUT_STEP, FINISHED_STEP_LARGE
from stitchflip.planning.resize.piece import trim_extents
from stitchflip.project.model import CenterShape, Runs
from stitchflip.project.numbers import effective

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.project.model import Project

LOOKED_AT = 40
"""So many half inches (centimeters) below and above are looked at."""


def clean_sizes(before: Project, wanted: Project) -> tuple[tuple[float, float], ...]:
    """The nearest smaller and larger size in the old proportion at which every cut is on the ruler.

    Args:
        before: the project as it was.
        wanted: the same at the size wanted.

    Returns:
        Wide × long, inches, none to two of them.
    """
    now, aim = trim_extents(before), trim_extents(wanted)
    step = FINISHED_STEP_LARGE.of(before.units)
    finished = tuple(_finished(before))
    start = round_to(aim[0], step, Rounding.NEAREST)
    found = []
    for way in (-1, 1):
        for steps in range(1, LOOKED_AT):
            x = start + way * steps * step
            factor = x / now[0]
            y = now[1] * factor
            if x > step and abs(factor - 1) > 1e-9 and _is_clean(factor, (*finished,), before) and _is_on(y, step):
                found.append((x, y) if before.squared_up.length_runs is Runs.UP else (y, x))
                break
    return tuple(found)


def _finished(project: Project) -> Iterator[float]:
    """Finished sizes of center and strips, inches, each once."""
    seams = 2 * effective(project).seam
    center = project.center
    sizes = [cut for entry in project.rounds for cut in (entry.cut, *(entry.cuts or ()))]
    sizes += [step.cut for step in project.steps]
    if center is not None and center.shape in {CenterShape.SQUARE, CenterShape.RECTANGLE, CenterShape.POLYGON}:
        sizes += [center.cut, center.cut_wide, center.cut_long]
    yield from {round(size.inches - seams, 6) for size in sizes if size is not None}


def _is_clean(factor: float, finished: tuple[float, ...], project: Project) -> bool:
    seams, step = 2 * effective(project).seam, CUT_STEP.of(project.units)
    return all(_is_on(size * factor + seams, step) for size in finished)


def _is_on(size: float, step: float) -> bool:
    return abs(size - round_to(size, step, Rounding.NEAREST)) < 1e-4
