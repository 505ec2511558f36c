"""One kind of block of a joined quilt as a plan of its own, so that every picture of a piece can show it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.errors import BuildError

if TYPE_CHECKING:
    from stitchflip.pictures.model import Figure
    from stitchflip.planning.model import Plan


def kind_plan(plan: Plan, kind: int) -> Plan:
    """The plan of one block of a kind, by itself.

    Args:
        plan: The whole plan.
        kind: Index of the kind.

    Returns:
        The same plan with the kind's own build, base marks and squaring up, and without the quilt.

    Raises:
        BuildError: If there is no such kind.
    """
    from stitchflip.finishing import plan_base, plan_square_up
    from stitchflip.piecing import first_piece_polygon, trim_polygon

    if not 0 <= kind < len(plan.kinds):
        raise BuildError(
            what=f"there is no kind of block {kind}",
            fix=f"Ask for a kind from 0 to {len(plan.kinds) - 1}.",
            code="build.no-such-kind",
        )
    if kind == 0:
        return replace(plan, quilt=None, panels=None) if plan.quilt is not None else plan
    one, numbers = plan.kinds[kind], plan.numbers
    trim = trim_polygon(one.project, numbers)
    return replace(
        plan,
        project=one.project,
        build=one.build,
        base=plan_base(one.project, numbers, trim, first_piece_polygon(one.project, numbers)),
        square_up=plan_square_up(one.project, numbers, trim, one.build.points),
        quilt=None,
        panels=None,
    )


def block(plan: Plan, kind: int) -> Figure:
    """One block of a kind as it is squared up, before it is joined, with letters and its size.

    Args:
        plan: The plan.
        kind: Index of the kind.

    Returns:
        The figure, in taped inches.

    Raises:
        BuildError: If there is no such kind.
    """
    from stitchflip.pictures.whole_piece import squared_up

    own = kind_plan(plan, kind)
    name = plan.kinds[kind].name
    return squared_up(own, f"{plan.project.name}, {name or 'one block'}", f"The block{f' “{name}”' if name else ''}")
