"""One call: project in, plan out.

The order of the rooms is the order of the work: outline, base, build, squaring up, backing, batting, binding,
cutting list, purchases, work, and last what there is to look at.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.finishing import plan_backing, plan_base, plan_batting, plan_binding, plan_square_up
from stitchflip.forecast import estimate_work
from stitchflip.piecing import build_project, first_piece_polygon, trim_polygon
from stitchflip.planning.cures import with_cures as add_cures
from stitchflip.planning.findings import Seen, look_at
from stitchflip.planning.letters import letters_for
from stitchflip.planning.model import Plan
from stitchflip.planning.pieces import cutting_list
from stitchflip.project.numbers import effective

if TYPE_CHECKING:
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
    first = first_piece_polygon(project, numbers)
    base = plan_base(project, numbers, trim, first)
    build = build_project(project, numbers, (base.wide / 2, base.high / 2))
    binding = plan_binding(project, numbers, trim, build.points)
    by_fabric = cutting_list(project, numbers, build, binding)
    made = Plan(
        project=project,
        numbers=numbers,
        build=build,
        base=base,
        square_up=plan_square_up(project, numbers, trim, build.points),
        backing=plan_backing(project, numbers, base),
        batting=plan_batting(project, numbers, base),
        binding=binding,
        pieces=tuple(piece for pieces in by_fabric.values() for piece in pieces),
        pieces_by_fabric=by_fabric,
        fabrics=tuple(
            plan_fabric(fabric, by_fabric[fabric.name], numbers, project.working, project.units)
            for fabric in project.fabrics
            if fabric.name in by_fabric
        ),
        letters=letters_for(project, build),
        work=estimate_work(project, numbers, build, binding),
        findings=(),
    )
    found = look_at(made)
    seen = Seen(project, numbers, base, build)
    return made.with_findings(add_cures(seen, found) if with_cures else found)
