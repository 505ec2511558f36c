"""How the center is cut and turned: a square on its corner, an upright window on the print, a shape with many sides."""

from __future__ import annotations

from math import cos, pi, tan

from stitchflip.cutting.model import Piece
from stitchflip.pattern.telling import Teller
from stitchflip.project.model import Center, CenterShape

_HEXAGON = 6


def shape_words(teller: Teller) -> str:
    """What a shaped center is cut to, out of its rectangle; to follow its size."""
    center = teller.project.center
    if center is not None and center.shape is CenterShape.HALF_SQUARE:
        return ", then once from corner to corner: a half square"
    if center is None or not teller.is_shaped:
        return ""
    measures = _polygon_measures(teller, center)
    return f", then to its shape{', ' if measures else ''}{measures}"


def window_words(teller: Teller, window: tuple[float, float] | None) -> str:
    """How much upright fabric a center cut on the slant takes; to follow its size."""
    if window is None:
        return ""
    return f"; it {_stands(teller)} inside an upright window of {teller.say.size(*window)}, so its print stands upright"


def turn_words(teller: Teller) -> str:
    """How the center is turned when it is laid on the base; "" when it lies straight."""
    center = teller.project.center
    if center is None or center.turned % 90 == 0:
        return ""
    return ", on point (turned 45°)" if center.turned % 90 == 45 else f", turned {center.turned:g}°"


def how_to_cut(teller: Teller, piece: Piece) -> tuple[str, ...]:
    """What the cutting of a slanted or shaped center needs beside its size.

    Args:
        teller: speaks about the plan.
        piece: the center as it is cut, with the window it takes when its print stands upright.

    Returns:
        Whole sentences, a line each; empty for a center that is simply a square or rectangle.
    """
    lines = []
    if piece.window is not None:
        lines.append(
            f"Mark an upright window of {teller.say.size(*piece.window)} on the print: {_name(teller, piece)} "
            f"{_stands(teller)} inside it, middle on middle."
        )
    center = teller.project.center
    if center is not None and center.shape is CenterShape.HALF_SQUARE:
        left = "; one half is left over" if teller.bases % 2 else ""
        lines.append(f"Cut each square once from corner to corner: every half is one center, a half square{left}.")
    if center is not None and teller.is_shaped:
        measures = _polygon_measures(teller, center)
        lines.append(f"Cut the center to its shape{': ' if measures else ''}{measures}. {_shaping(teller, center)}")
    return tuple(lines)


def _name(teller: Teller, piece: Piece) -> str:
    """The center by its size and shape."""
    center = teller.project.center
    if center is not None and center.shape is CenterShape.SQUARE:
        return f"the {teller.say.width(piece.wide)} square"
    if center is not None and center.shape is CenterShape.RECTANGLE:
        return f"the center, {teller.say.cut_size(piece.wide, piece.long)},"
    return "the center"


def _stands(teller: Teller) -> str:
    """How a slanted center lies on the upright print."""
    center = teller.project.center
    if center is not None and center.shape is CenterShape.SQUARE and center.turned % 90 == 45:
        return "stands on its corner"
    return f"lies turned {center.turned:g}°" if center is not None else "lies"


def _polygon_measures(teller: Teller, center: Center) -> str:
    """Flats, side and corners of a regular center as cut; "" for another shape."""
    if center.shape is not CenterShape.POLYGON or center.cut is None or center.sides is None:
        return ""
    across, say = center.cut.inches, teller.say
    side = f"each side {say.near(across * tan(pi / center.sides))} long"
    corner = across / cos(pi / center.sides)
    if center.sides % 2:
        return f"every side {say.near(across / 2)} and every corner {say.near(corner / 2)} from its middle, {side}"
    return f"{say.width(across)} between opposite sides, {side}, {say.near(corner)} from corner to opposite corner"


def _shaping(teller: Teller, center: Center) -> str:
    """How the shape is cut out of its rectangle."""
    is_regular = center.shape is CenterShape.POLYGON and center.cut is not None
    if is_regular and center.cut is not None and center.sides == _HEXAGON:
        return (
            f"Cut a strip {teller.say.width(center.cut.inches)} wide; at each end make two cuts at 60° to its long "
            "edges, which meet in the middle of its width."
        )
    if is_regular and center.cut is not None:
        half = teller.say.near(center.cut.inches / 2)
        return f"Mark the middle of the rectangle first, then each side {half} from it, and cut along the sides."
    return "Mark the middle of the rectangle first, then each corner from it, and cut from corner to corner."
