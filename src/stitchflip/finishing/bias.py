"""Binding cut on the bias, which is what goes round a curve: from a square, or strip by strip across the fabric.

A square sewn to a tube gives one long strip in whole turns: the two seams of the tube take their share first, and what
is left of its width at the end is too narrow. Strips cut one by one lie across the fabric at 45 degrees: a width holds
fewer of them than straight strips, and those that run into the ends of the width come in two pieces each.
"""

from __future__ import annotations

from math import ceil, floor, sqrt

from stitchflip.cutting.bias import bias_tube, square_by_rule, square_for, strips_across
from stitchflip.errors import BuildError
from stitchflip.finishing.measures import BIAS_SQUARE_STEP, BIAS_STRIP_AT_LEAST, BIAS_STRIP_STEP
from stitchflip.lengths import TOLERANCE_IN, Rounding, Speaker, Unit, round_to
from stitchflip.values import dataclass

__all__ = [
    "BiasSquares",
    "BiasStrips",
    "bias_squares",
    "bias_strips",
    "length_from_square",
    "square_by_rule",
    "strips_across",
]

_ROOT_2 = sqrt(2)
_MOST_WIDTHS = 200
"""More widths of fabric than this are no binding."""


def length_from_square(side: float, cut: float, seam: float) -> float:
    """How long a continuous bias strip is that comes from a square: whole turns of the tube, its seams taken off first.

    Args:
        side: Of the square, inches.
        cut: Cut width of the strip, inches.
        seam: Of the two seams of the tube, inches.

    Example:
        >>> round(length_from_square(20, 2, 0.25), 1)
        165.5
    """
    return bias_tube(side, side, cut, seam).made


@dataclass(frozen=True, slots=True)
class BiasSquares:
    """Squares that each give one continuous strip; inches."""

    count: int
    """For one binding."""
    side: float
    """Cut."""
    each: float
    """Length of the strip from one square."""
    made: float
    """All strips joined."""


def bias_squares(need: float, cut: float, seam: float, usable: float, join: float, unit: Unit) -> BiasSquares:
    """The fewest squares that give a binding, none wider than the fabric.

    Args:
        need: Binding wanted, inches.
        cut: Cut width, inches.
        seam: Of the tube, inches.
        usable: Usable width, inches; it holds at least one strip's width.
        join: What a join of two strips takes off, inches.
        unit: Sides are whole inches or centimeters.

    Example:
        >>> squares = bias_squares(148.7, 2.5, 0.25, 40, 2.5, Unit.INCH)
        >>> squares.count, squares.side, round(squares.made, 1)
        (1, 22.0, 182.4)
    """
    step = BIAS_SQUARE_STEP.of(unit)
    one_turn = round_to(cut * _ROOT_2 + 2 * seam, step, Rounding.UP)
    largest = max(round_to(usable, step, Rounding.DOWN), one_turn)
    longest = length_from_square(largest, cut, seam)
    gain = max(longest - join, TOLERANCE_IN)
    count = max(1, ceil((need - join) / gain - TOLERANCE_IN))
    wanted = (need + (count - 1) * join) / count
    side = min(largest, max(square_for(wanted, cut, seam, step), one_turn))
    each = length_from_square(side, cut, seam)
    return BiasSquares(count, side, each, count * each - (count - 1) * join)


@dataclass(frozen=True, slots=True)
class BiasStrips:
    """Strips cut one by one across the fabric; inches."""

    count: int
    """For one binding."""
    long: float
    """Each, along its middle, before joining."""
    in_two: int
    """How many of them come in two pieces, from the two ends of the width."""
    fabric: float
    """Length of fabric of the full width that they take."""
    made: float


def bias_strips(need: float, cut: float, usable: float, join: float, unit: Unit) -> BiasStrips:
    """Strips cut one by one at 45 degrees from full widths of fabric, as little fabric as does it.

    Args:
        need: Binding wanted, inches.
        cut: Cut width, inches.
        usable: Usable width, inches.
        join: What each join takes off, inches.
        unit: Fabric is measured on the grid of this unit.

    Raises:
        BuildError: If the strips are so wide that joins use them up.

    Example:
        >>> strips = bias_strips(148.73, 2.5, 40, 2.5, Unit.INCH)
        >>> strips.count, strips.in_two, round(strips.long, 2), strips.fabric, round(strips.made, 2)
        (11, 4, 16.97, 12.0, 151.68)
    """
    side_by_side = max(1, strips_across(usable, cut))
    step = BIAS_STRIP_STEP.of(unit)
    high = round_to(BIAS_STRIP_AT_LEAST.of(unit) / _ROOT_2, step, Rounding.UP)
    while high < usable - TOLERANCE_IN:
        found = _from_width(need, cut, usable, join, side_by_side, high)
        if found is not None:
            return found
        high += step
    widths = 1
    while widths < _MOST_WIDTHS:
        widths += 1
        part = (need + (widths - 1) * join) / widths
        found = _from_width(part, cut, usable, join, side_by_side, usable)
        if found is not None:
            made = widths * found.made - (widths - 1) * join
            return BiasStrips(widths * found.count, found.long, widths * found.in_two, widths * found.fabric, made)
    say = Speaker(unit)
    raise BuildError(
        what=f"bias strips {say.width(cut)} wide from fabric {say.near(usable)} wide are used up by joins of "
        f"{say.near(join)}",
        fix="Cut the binding narrower, or give the usable width of its fabric as measured.",
        where="binding.cut",
        code="build.binding-too-short",
    )


def _from_width(
    need: float, cut: float, usable: float, join: float, side_by_side: int, high: float
) -> BiasStrips | None:
    """Strips from one length of the full width; None when all of them together are too short."""
    long = high * _ROOT_2
    whole = max(0, min(side_by_side, floor((usable - high) / (cut * _ROOT_2) + TOLERANCE_IN)))
    for count in range(1, side_by_side + 1):
        in_two = max(0, count - whole)
        made = count * long - (count - 1 + in_two) * join
        if made >= need - TOLERANCE_IN:
            return BiasStrips(count, long, in_two, high, made)
    return None
