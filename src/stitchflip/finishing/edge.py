"""How the edge of the squared-up piece is finished."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.finishing.edge_model import EdgePlan

if TYPE_CHECKING:
    from stitchflip.piecing.model import Polygon
    from stitchflip.project.model import Project
    from stitchflip.project.numbers import Numbers


def plan_edge(project: Project, numbers: Numbers, outline_taped: Polygon) -> EdgePlan:
    """The edge of a bound piece."""
    del outline_taped
    seam = numbers.binding_seam
    return EdgePlan(project.binding.edge.value, "straight", seam, seam, 0.0, 0.0, (), 0.0, 0, ())
