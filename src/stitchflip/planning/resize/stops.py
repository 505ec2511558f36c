"""No size that stops the piece, where a cure can help it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.errors import StitchflipError
from stitchflip.planning.cures import with_cures
from stitchflip.planning.findings.look import geometry_findings
from stitchflip.planning.findings.seen import see
from stitchflip.planning.model import Severity
from stitchflip.project.changes import apply_changes

if TYPE_CHECKING:
    from stitchflip.planning.model import Finding
    from stitchflip.project.model import Project

_TRIES = 3


def codes_of(project: Project) -> set[str]:
    """Codes of what the build of a project shows; "build" where it cannot be built."""
    try:
        return {finding.code for finding in geometry_findings(see(project))}
    except StitchflipError:
        return {"build"}


def _stops(project: Project) -> tuple[Finding, ...]:
    return tuple(one for one in geometry_findings(see(project)) if one.severity is Severity.STOP)


def without_new_stops(before: Project, after: Project, messages: list[str]) -> Project:
    """What would stop the piece and did not before is cured where a cure leaves the size alone; else it is said."""
    known = {one.code for one in _stops(before)} if _can_be_built(before) else set()
    new: list[Finding] = []
    for _ in range(_TRIES):
        new = [one for one in _stops(after) if one.code not in known]
        if not new:
            return after
        cured = _cured(after, new[0], known)
        if cured is None:
            break
        after, text = cured
        messages.append(f"So that nothing stops it: {text[:1].lower()}{text[1:]}")
    messages += [f"At this size it would stop: {one.what}" for one in new]
    return after


def _can_be_built(project: Project) -> bool:
    try:
        see(project)
    except StitchflipError:
        return False
    return True


def _cured(project: Project, finding: Finding, known: set[str]) -> tuple[Project, str] | None:
    """The first cure that brings no other stop and does not touch the squared-up size."""
    for cure in with_cures(see(project), (finding,))[0].cures:
        if not cure.changes or any(change.path[0] == "squared_up" for change in cure.changes):
            continue
        try:
            tried = apply_changes(project, cure.changes)
            left = {one.code for one in _stops(tried)} - known
        except StitchflipError:
            continue
        if finding.code not in left and left <= {one.code for one in _stops(project)}:
            return tried, cure.text
    return None
