"""Numbers, places and texts as they stand in the plan's document."""

from __future__ import annotations

from math import isfinite
from typing import TYPE_CHECKING, TypeAlias

from stitchflip.lengths import THIN_SPACE, UNIT_SPACE
from stitchflip.project.model import Runs

if TYPE_CHECKING:
    from collections.abc import Iterable

    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.planning.model import Plan

Document: TypeAlias = dict[str, object]

_DIGITS = 6
_PLAIN_SPACES = str.maketrans({THIN_SPACE: " ", UNIT_SPACE: " "})


def number(value: float | None) -> float | None:
    """A millionth of an inch is more than enough; what is endless or not known is null."""
    if value is None or not isfinite(value):
        return None
    return round(value, _DIGITS) + 0.0


def numbers(values: Iterable[float]) -> list[float | None]:
    """Each as a number of the document."""
    return [number(value) for value in values]


def plain(text: str) -> str:
    """Text with ordinary spaces, for programs that search in it."""
    return text.translate(_PLAIN_SPACES)


def place(point: Point) -> Document:
    """A place in the flat frame."""
    return {"x_in": number(point[0]), "y_in": number(point[1])}


def places(polygon: Polygon) -> list[Document]:
    """The corners of a polygon."""
    return [place(point) for point in polygon]


def wide_and_long(plan: Plan, across: float, up: float) -> tuple[float, float]:
    """Extents of the picture as the maker says them, wide first.

    Args:
        plan: The plan.
        across: extent along x, inches.
        up: extent along y, inches.
    """
    return (up, across) if plan.project.squared_up.length_runs is Runs.ACROSS else (across, up)
