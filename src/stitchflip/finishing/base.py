"""The base: how large backing and batting are cut, and the lines drawn on it before the first stitch.

Stitching draws the piece in, so the base is cut for the squared-up size before drawing in, plus the spare that
squaring up will trim off. The center mark is its middle; everything else is measured from there.
"""

from __future__ import annotations

from stitchflip.finishing.measures import MARK_EVERY
from stitchflip.finishing.model import BasePlan
from stitchflip.lengths import TOLERANCE_IN, Rounding, Unit, round_to
from stitchflip.piecing.model import Polygon
from stitchflip.project.model import Project, Runs
from stitchflip.project.numbers import Numbers


def plan_base(project: Project, numbers: Numbers, trim_taped: Polygon, first_piece: Polygon) -> BasePlan:
    """The size to cut the base, its spare, its placement marks and the place of the first piece.

    Args:
        project: For a base size or spare the maker gave.
        numbers: The maker's numbers; draw-up as a fraction, spare per side in inches.
        trim_taped: The squared-up outline, taped, about the center mark.
        first_piece: Raw edges of the first piece as laid, flat.

    Returns:
        The base as cut, flat. A given size is kept and its real spare told, below zero when it is too small.
    """
    reach_x = _flat_reach(trim_taped, 0, numbers.draw_up_x)
    reach_y = _flat_reach(trim_taped, 1, numbers.draw_up_y)
    spare_x, spare_y = spare_wanted(project, numbers)
    least_wide, least_high = 2 * (reach_x + spare_x), 2 * (reach_y + spare_y)
    given_wide, given_high = _given(project)
    wide = given_wide or round_to(least_wide, numbers.round_base_to, Rounding.UP)
    high = given_high or round_to(least_high, numbers.round_base_to, Rounding.UP)
    return BasePlan(
        wide=wide,
        high=high,
        least_wide=least_wide,
        least_high=least_high,
        is_given=given_wide is not None or given_high is not None,
        first_piece=first_piece,
        marks=placement_marks(wide, high, project.units),
        spare_x=wide / 2 - reach_x,
        spare_y=high / 2 - reach_y,
    )


def _flat_reach(trim_taped: Polygon, part: int, draw_up: float) -> float:
    """How far the trim edge lies from the center mark at most, before stitching draws it in."""
    return max(abs(corner[part]) for corner in trim_taped) / (1 - draw_up)


def spare_wanted(project: Project, numbers: Numbers) -> tuple[float, float]:
    """Spare per side (left and right, top and bottom), inches, flat.

    A spare the maker gave stands as it is, none at all included; the house's own is never less than the reach
    past the trim line, because the strips need something to be sewn to.

    Args:
        project: For what the maker gave.
        numbers: The effective spare and reach.
    """
    base, mine = project.base, project.my_numbers
    across = base.spare_across is not None or mine.spare_across is not None
    at_ends = base.spare_at_ends is not None or mine.spare_at_ends is not None
    given_x, given_y = (across, at_ends) if project.squared_up.length_runs is Runs.UP else (at_ends, across)
    return (
        numbers.spare_x if given_x else max(numbers.spare_x, numbers.reach),
        numbers.spare_y if given_y else max(numbers.spare_y, numbers.reach),
    )


def _given(project: Project) -> tuple[float | None, float | None]:
    """The base size the maker gave (x, y), inches."""
    base = project.base
    sizes = (base.wide, base.long) if project.squared_up.length_runs is Runs.UP else (base.long, base.wide)
    wide, high = (None if size is None else size.inches for size in sizes)
    return wide, high


def placement_marks(wide: float, high: float, unit: Unit) -> tuple[tuple[str, float], ...]:
    """The lines to draw on the base: both center lines, and one every 4 in (10 cm) out from them.

    Args:
        wide: x extent of the base as cut, inches.
        high: y extent of the base as cut, inches.
        unit: The maker's unit, which sets the distance between lines.

    Returns:
        Pairs (axis, place): ("x", 4.0) is the line x = 4. Center lines first, then outward.

    Example:
        >>> placement_marks(10, 6, Unit.INCH)
        (('x', 0.0), ('y', 0.0), ('x', -4.0), ('x', 4.0))
    """
    every = MARK_EVERY.of(unit)
    marks: list[tuple[str, float]] = [("x", 0.0), ("y", 0.0)]
    for axis, half in (("x", wide / 2), ("y", high / 2)):
        place = every
        while place < half - TOLERANCE_IN:
            marks += [(axis, -place), (axis, place)]
            place += every
    return tuple(marks)
