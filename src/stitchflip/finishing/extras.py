"""Sleeve and label."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.finishing.edge_model import ExtrasPlan

if TYPE_CHECKING:
    from stitchflip.piecing.model import Polygon
    from stitchflip.project.model import Project
    from stitchflip.project.numbers import Numbers


def plan_extras(project: Project, numbers: Numbers, outline_taped: Polygon) -> ExtrasPlan:
    """What goes onto the back."""
    del project, numbers, outline_taped
    return ExtrasPlan((), ())
