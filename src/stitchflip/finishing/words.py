"""Wide × long in the maker's order: x is wide when the length runs up the picture, y when it runs across."""

from __future__ import annotations

from stitchflip.lengths import Speaker
from stitchflip.project.model import Edge, Project, Runs


def size_in_words(project: Project, x_extent: float, y_extent: float) -> str:
    """A size as wide × long with its unit.

    Args:
        project: For the unit and which way the length runs.
        x_extent: Across the picture, inches.
        y_extent: Up the picture, inches.
    """
    runs_up = project.squared_up.length_runs is Runs.UP
    wide, long = (x_extent, y_extent) if runs_up else (y_extent, x_extent)
    return Speaker(project.units).size(wide, long)


def once_finished(project: Project) -> str:
    """When the edge is as it stays: "after binding", or "when the edge is finished" where there is no binding.

    Args:
        project: For how its edge is finished.
    """
    return "after binding" if project.binding.edge is Edge.BINDING else "when the edge is finished"
