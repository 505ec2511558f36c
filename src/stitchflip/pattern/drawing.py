"""A picture at its final size: drawn for its place, so that its letters keep their size on paper."""

from __future__ import annotations

import re
from functools import lru_cache

from stitchflip.lengths import Unit
from stitchflip.pattern.model import FigureBox
from stitchflip.pictures import paper_height, to_svg
from stitchflip.pictures.model import Figure
from stitchflip.values import dataclass

_LEAST = 0.1
"""No picture is made smaller than this part of its room."""
_SHRINK_AT_MOST, _SHRINK_AT_LEAST = 0.6, 0.99
"""How far one try may go below the one before."""
_SLACK_IN = 1e-3
_POINTS_PER_INCH = 72.0
_FRACTION = re.compile(r"\b(\d{1,2})/(16|32|64)\b(?=[^<>]*</t)")
"""A fraction in the words of a drawing; titles and descriptions are read aloud and stay as they are."""
_RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")


@dataclass(frozen=True, slots=True)
class Drawing:
    """A picture ready to be placed."""

    svg: str
    wide_in: float
    high_in: float


def drawing(box: FigureBox, widest_in: float, unit: Unit, factor: float = 1.0) -> Drawing:
    """Draw a picture as large as its limits and its place allow.

    Args:
        box: the picture with its greatest width and height, inches.
        widest_in: width of the place it stands in, inches.
        unit: unit of the size written into the picture.
        factor: part of the greatest size to use, for a page that must fit.

    Returns:
        The SVG with its width and height on paper.

    Raises:
        PublishError: If the place leaves nothing to draw in.
    """
    return _drawn(box.figure, round(min(box.width_in, widest_in) * factor, 4), round(box.high_in * factor, 4), unit)


@lru_cache(maxsize=512)
def _drawn(figure: Figure, wide_in: float, high_in: float, unit: Unit) -> Drawing:
    """Kept, because the same pictures go onto letter, A4 and the screen."""
    wide, high = _fitted(figure, wide_in, high_in)
    return Drawing(_FRACTION.sub(_built_up, to_svg(figure, wide, unit)), wide, high)


def _built_up(found: re.Match[str]) -> str:
    """A typed fraction in the letters of a built-in one, so that pictures spell fractions like the text does."""
    return f"{found[1].translate(_RAISED)}\u2044{found[2].translate(_LOWERED)}"


def _fitted(figure: Figure, wide_in: float, high_in: float) -> tuple[float, float]:
    """Width and height on paper, the width as great as both limits allow.

    Only the drawing shrinks, not the margins with what is written in them. A picture whose labels no longer fit
    grows higher as it gets narrower; when no width is low enough, the lowest picture is taken.
    """
    sides = (figure.margins.left + figure.margins.right) / _POINTS_PER_INCH
    ends = (figure.margins.top + figure.margins.bottom) / _POINTS_PER_INCH
    (x0, y0), (x1, y1) = figure.low, figure.high
    least_high = ends + (wide_in - sides) * (y1 - y0) / max(x1 - x0, _SLACK_IN)
    wide = round(wide_in if least_high <= high_in else _narrower(wide_in, sides, ends, least_high, high_in), 4)
    tried: list[tuple[float, float]] = []
    while wide >= _LEAST * wide_in:
        high = paper_height(figure, wide)
        tried.append((high, wide))
        if high <= high_in + _SLACK_IN:
            return wide, high
        wide = round(min(_narrower(wide, sides, ends, high, high_in), wide * _SHRINK_AT_LEAST), 4)
    high, wide = min(tried, default=(paper_height(figure, wide_in), wide_in))
    return wide, high


def _narrower(wide: float, sides: float, ends: float, high: float, high_in: float) -> float:
    """Width at which the drawing between its margins is low enough, were its labels to stay as they are."""
    wanted = sides + (wide - sides) * max(0.0, high_in - ends) / max(high - ends, _SLACK_IN)
    return max(wanted, _SHRINK_AT_MOST * wide)
