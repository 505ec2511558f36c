"""All findings of a plan, the gravest first."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.planning.findings import (
    corners,
    cover,
    edges,
    foundation,
    materials,
    on_hand,
    points,
    purchase,
    sewing,
    sizes,
    wonky,
)
from stitchflip.planning.findings.seen import Seen
from stitchflip.planning.model import Severity
from stitchflip.project.model import Way
from stitchflip.project.numbers import effective

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from stitchflip.planning.model import BlockKind, Finding, Plan

GEOMETRY: tuple[Callable[[Seen], Iterator[Finding]], ...] = (
    cover.base_size,
    cover.bare_places,
    cover.endless,
    on_hand.strips_run_out,
    points.points_beyond,
    points.points_on_base,
    points.center_place,
    points.center_cut_off,
    sewing.short_strips,
    sewing.kernel_notes,
    wonky.straighter,
    sewing.thin_strips,
    corners.corners_cut,
    foundation.foundation_lines,
    foundation.mirror,
    foundation.corner_triangles,
    sewing.loose_ends,
    cover.wide_gap,
    sewing.bias_edges,
    sewing.bulk,
    materials.washing,
    materials.dye,
    materials.iron,
    materials.one_way,
    materials.center_print,
    materials.neighbors,
)
"""What can be told from the build alone."""

PURCHASES: tuple[Callable[[Plan], Iterator[Finding]], ...] = (
    purchase.fabric_amounts,
    purchase.batting_amount,
    purchase.long_cuts,
    purchase.near_sizes,
    *edges.ABOUT_EDGES,
    sizes.blocks_for_the_bed,
    sizes.other_than_made_for,
)

_ORDER = list(Severity)


def geometry_findings(seen: Seen) -> tuple[Finding, ...]:
    """Findings that need no purchases, the gravest first."""
    return _sorted(_of_geometry(seen))


def look_at(plan: Plan) -> tuple[Finding, ...]:
    """Everything there is to look at in a plan, without cures that need a new plan."""
    found: list[Finding] = []
    for kind in plan.kinds:
        known = {(finding.code, finding.what) for finding in found}
        own = _of_geometry(seen_of(plan, kind))
        if kind is not plan.kinds[0]:
            own = [_in_block(finding, kind) for finding in own if (finding.code, finding.what) not in known]
        found += own
    found += [finding for check in PURCHASES for finding in check(plan)]
    if plan.quilt is not None:
        from stitchflip.planning.findings.joining import ABOUT_JOINS  # few plans join blocks

        found += [finding for check in ABOUT_JOINS for finding in check(plan)]
    found += materials.backing_seam(plan.backing.best.seams_at)
    return _sorted(found)


def _of_geometry(seen: Seen) -> list[Finding]:
    """What can be told from a build alone, said of patches where there are no strips."""
    found = [finding for check in GEOMETRY for finding in check(seen)]
    if seen.project.building.way is not Way.FOUNDATION:
        return found
    return [finding if finding.code.startswith("foundation.") else foundation.as_patches(finding) for finding in found]


def seen_of(plan: Plan, kind: BlockKind) -> Seen:
    """One kind of block as the findings about geometry see it."""
    return Seen(kind.project, effective(kind.project), plan.base, kind.build)


def _in_block(finding: Finding, kind: BlockKind) -> Finding:
    """A finding that only one kind of block has, with the name of the block."""
    return replace(finding, what=f"{kind.name}: {finding.what}", where=_block(kind))


def _block(kind: BlockKind) -> str:
    return f"block {kind.name}"


def kind_of(plan: Plan, finding: Finding) -> int:
    """Which kind of block a finding is about, counted from 0; the first, unless it names another."""
    return next((index for index, kind in enumerate(plan.kinds) if finding.where == _block(kind)), 0)


def _sorted(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    return tuple(sorted(findings, key=lambda finding: _ORDER.index(finding.severity)))
