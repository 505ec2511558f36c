"""One call: project in, plan out.

The order of the rooms is the order of the work: outline, base, build, squaring up, backing, batting, binding,
cutting list, purchases, work, and last what there is to look at.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.finishing import (
    plan_backing,
    plan_base,
    plan_batting,
    plan_binding,
    plan_edge,
    plan_extras,
    plan_panels,
    plan_quilt,
    plan_square_up,
)
from stitchflip.forecast import estimate_work
from stitchflip.piecing import first_piece_polygon, trim_polygon
from stitchflip.planning.backing_extras import with_extras
from stitchflip.planning.batting_extras import with_more
from stitchflip.planning.cures import with_cures as add_cures
from stitchflip.planning.findings import kind_of, look_at, seen_of
from stitchflip.planning.kinds import OWN, block_kinds
from stitchflip.planning.letters import letters_for
from stitchflip.planning.model import Plan
from stitchflip.planning.pieces import Making, cutting_list
from stitchflip.planning.quilt_pieces import backing_pieces
from stitchflip.project.numbers import effective

if TYPE_CHECKING:
    from stitchflip.planning.model import Finding
    from stitchflip.project.model import Project


def plan(project: Project, *, with_cures: bool = True) -> Plan:
    """Everything computed for a project.

    Args:
        project: The project.
        with_cures: Also look for cures of what is wrong, by planning again; slower.

    Returns:
        The plan; its findings are ordered with the gravest first.

    Raises:
        BuildError: If no plan can be drawn at all: a size is missing, or a strip leaves nothing to see.
    """
    from stitchflip.cutting import plan_fabric

    numbers = effective(project)
    trim = trim_polygon(project, numbers)
    quilt = plan_quilt(project, numbers, trim)
    outline = trim if quilt is None else quilt.outline
    base = plan_base(project, numbers, trim, first_piece_polygon(project, numbers))
    kinds = block_kinds(project, numbers, quilt, (base.wide / 2, base.high / 2))
    build = kinds[0].build
    panels = plan_panels(project, numbers, build)
    binding = plan_binding(project, numbers, outline, build.points if quilt is None else ())
    edge = plan_edge(project, numbers, outline)
    extras = plan_extras(project, numbers, outline)
    by_fabric = cutting_list(Making(project, numbers, kinds, binding, edge, extras, quilt))
    from_backing = (*by_fabric.get(project.backing.fabric, ()), *backing_pieces(project, numbers, quilt))
    made = Plan(
        project=project,
        numbers=numbers,
        build=build,
        base=base,
        square_up=plan_square_up(project, numbers, trim, build.points),
        backing=with_extras(project, numbers, plan_backing(project, numbers, base, quilt), from_backing),
        batting=with_more(project, plan_batting(project, numbers, base), quilt),
        binding=binding,
        pieces=tuple(piece for pieces in by_fabric.values() for piece in pieces),
        pieces_by_fabric=by_fabric,
        fabrics=tuple(
            plan_fabric(fabric, by_fabric[fabric.name], numbers, project.working, project.units)
            for fabric in project.fabrics
            if fabric.name in by_fabric
        ),
        letters=letters_for(project, [kind.build for kind in kinds], by_fabric),
        work=estimate_work(project, numbers, [(kind.build, kind.count) for kind in kinds], binding),
        findings=(),
        kinds=kinds,
        edge=edge,
        extras=extras,
        quilt=quilt,
        panels=panels,
    )
    found = look_at(made)
    return made.with_findings(tuple(_cured(made, finding) for finding in found) if with_cures else found)


def _cured(made: Plan, finding: Finding) -> Finding:
    """The finding with cures of the kind of block it is about, that change the project as it is written."""
    index = kind_of(made, finding)
    (cured,) = add_cures(seen_of(made, made.kinds[index]), (finding,))
    return _of_project(made.project, index, cured)


def _of_project(project: Project, index: int, finding: Finding) -> Finding:
    """A finding whose cures change the project as it is written: a block's own strips stand under its block."""
    own = {key for key in OWN if project.blocks and getattr(project.blocks[index], key) is not None}
    if not own or not finding.cures:
        return finding
    cures = tuple(
        replace(
            cure,
            changes=tuple(
                replace(change, path=("blocks", index, *change.path)) if change.path[0] in own else change
                for change in cure.changes
            ),
        )
        for cure in finding.cures
    )
    return replace(finding, cures=cures)
