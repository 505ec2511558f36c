"""The way in to joined quilts: what joining takes is only brought in for a project that joins blocks."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from stitchflip.finishing.quilt_model import QuiltPlan
    from stitchflip.piecing.model import Polygon
    from stitchflip.project.model import Project
    from stitchflip.project.numbers import Numbers


def plan_quilt(project: Project, numbers: Numbers, block_taped: Polygon) -> QuiltPlan | None:
    """The whole piece made of joined blocks; None when nothing is joined.

    Args:
        project: How its blocks are joined, and its borders.
        numbers: The maker's numbers.
        block_taped: Squared-up outline of one block, taped, about its center mark.

    Raises:
        BuildError: If blocks cannot be joined: no rectangles, measured in the wrong number, used up by their seams.
    """
    if project.joined is None:
        return None
    from stitchflip.finishing.joined import join_blocks

    return join_blocks(project, project.joined, numbers, block_taped)
