"""Cures as numbers: what to change so that a finding goes away, each tried by planning again.

A cure is offered only when the changed project was built and the finding was gone (or the target reached), so
its number is never a guess.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.planning.cures import cover, room

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from stitchflip.planning.findings.seen import Seen
    from stitchflip.planning.model import Cure, Finding


def with_cures(seen: Seen, findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """The findings, each with the cures that were found to work."""
    return tuple(_cured(seen, finding) for finding in findings)


def _cured(seen: Seen, finding: Finding) -> Finding:
    maker = _MAKERS.get(finding.code)
    if maker is None:
        return finding
    found = {cure.text: cure for cure in maker(seen, finding)}
    return replace(finding, cures=(*finding.cures, *found.values()))


_MAKERS: dict[str, Callable[[Seen, Finding], Iterator[Cure]]] = {
    "points.cut-off": room.points,
    "points.thin": room.points,
    "points.wish": room.points,
    "points.base-edge": room.point_to_base,
    "base.too-small": room.base,
    "base.little-spare": room.base,
    "center.cut-off": room.center_in_piece,
    "base.center-larger": room.center_on_base,
    "coverage.batting-shows": cover.coverage,
    "coverage.under-binding": cover.coverage,
    "coverage.thin-reach": cover.coverage,
    "strip.sliver": cover.thin,
    "strip.thin-at-edge": cover.thin,
    "strip.hidden": cover.thin,
    "stitching.wide-gap": cover.gap,
}
