"""Blocks joined into quilts."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from stitchflip.finishing.quilt_model import QuiltPlan
    from stitchflip.piecing.model import Polygon
    from stitchflip.project.model import Project
    from stitchflip.project.numbers import Numbers


def plan_quilt(project: Project, numbers: Numbers, block_taped: Polygon) -> QuiltPlan | None:
    """The quilt; None for a piece by itself."""
    del project, numbers, block_taped
    return None
