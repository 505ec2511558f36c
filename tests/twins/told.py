"""Any project as it is told to the paper and the painter."""

from __future__ import annotations

from stitchflip.piecing import build_project
from stitchflip.project.model import Project, Way, Widths
from stitchflip.project.numbers import Numbers
from tests.twins.dictate import cut_short, script_of
from tests.twins.dictate_free import (
    along_folds,
    along_told_lines,
    braided,
    on_foundation,
    with_corner_squares,
    with_told_widths,
)
from tests.twins.script import Script


def told(project: Project, numbers: Numbers) -> Script:
    """The script of a project, whatever its way of building."""
    script = _as_planned(project, numbers)
    return cut_short(script, project) if project.short_strips else script


def _as_planned(project: Project, numbers: Numbers) -> Script:
    if project.building.widths is Widths.ON_HAND:
        return with_told_widths(project, numbers, build_project(project, numbers))
    match project.building.way:
        case Way.BRAID | Way.CHEVRON:
            return braided(project, numbers)
        case Way.CORNER_SQUARES:
            return with_corner_squares(project, numbers)[0]
        case Way.FOLDED_CORNERS:
            return along_folds(project, numbers)
        case Way.FOUNDATION:
            return on_foundation(project, numbers)
        case Way.WONKY:
            return along_told_lines(project, numbers, build_project(project, numbers))
        case _:
            return script_of(project, numbers)
