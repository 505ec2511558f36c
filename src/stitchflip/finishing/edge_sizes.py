"""What the way the edge is finished asks of the backing, before anything is cut.

A backing that is brought round to the front has to be there: it is cut larger than the piece by what shows twice over,
once folded in and once over the front, and a little for the turn round the edge.
"""

from __future__ import annotations

from stitchflip.finishing.measures import SPARE_OF_TURNED_BACKING
from stitchflip.project.house import HOUSE
from stitchflip.project.model import Edge, Project
from stitchflip.project.numbers import Numbers


def backing_beyond_edge(project: Project, numbers: Numbers) -> float:
    """How far the backing reaches beyond the trimmed edge on every side when it makes the edge, inches; else 0.

    Args:
        project: For how the edge is finished.
        numbers: For what shows on the front.

    Source:
        Twice the width that shows and 1/4 in for the turn: common practice, no source.
    """
    if project.binding.edge is not Edge.SELF_BINDING:
        return 0.0
    return 2 * numbers.binding_seam + HOUSE["self_binding_turn"].of(project.units)


def later_backing_spare(project: Project, numbers: Numbers) -> float:
    """How much larger than the squared-up piece a backing is cut that is added later, on every side, inches.

    Args:
        project: A piece that is turned through is sewn to its backing edge on edge, so that needs little.
        numbers: For the maker's own spare.
    """
    if project.binding.edge is Edge.TURNED_THROUGH and project.my_numbers.backing_later_spare is None:
        return SPARE_OF_TURNED_BACKING.of(project.units)
    return max(numbers.backing_later_spare, backing_beyond_edge(project, numbers))
