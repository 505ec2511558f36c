"""One long base cut into panels."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from stitchflip.finishing.edge_model import PanelsPlan
    from stitchflip.piecing.model import Build
    from stitchflip.project.model import Project
    from stitchflip.project.numbers import Numbers


def plan_panels(project: Project, numbers: Numbers, build: Build) -> PanelsPlan | None:
    """The panels; None when nothing is cut apart."""
    del project, numbers, build
    return None
