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


def without_new_stops(before: Project, after: Project, messages: list[str]) -> tuple[Project, bool]:
    """What would stop the piece and did not before is cured where a cure leaves the size alone; else it is said.

    Args:
        before: the project as it was.
        after: the project at its new size.
        messages: where it is said.

    Returns:
        The project, and true when something still stops it.
    """
    known = _known(before)
    tried = after
    said: list[str] = []
    for _ in range(_TRIES):
        new = [one for one in _stops(tried) if one.code not in known]
        if not new:
            messages += said
            return tried, False
        cured = _cured(tried, new[0], known)
        if cured is None:
            break
        tried, text = cured
        said.append(f"So that nothing stops it: {text[:1].lower()}{text[1:]}")
    messages += [f"At this size it would stop: {one.what}" for one in _stops(after) if one.code not in known]
    return after, True


def stopping(before: Project, after: Project) -> bool:
    """True when something stops a project that did not stop it before."""
    known = _known(before)
    return any(one.code not in known for one in _stops(after))


def _known(project: Project) -> set[str]:
    """What stops a project already; nothing for one that cannot be built."""
    try:
        return {one.code for one in _stops(project)}
    except StitchflipError:
        return set()


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
