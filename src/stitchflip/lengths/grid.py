"""The grid exact lengths stand on, and the one way back to a grid for floats.

Floats cannot keep 6.5 cm and decimals cannot keep 1/64 in by sixty-fours, so everything typed or stored is
a whole number of ticks of 1/8128 in: 1/64 in is 127 ticks, 0.1 mm is 32. Geometry uses plain floats in
inches; they come back to a grid only here, through one function whose direction is always named (up for
what is cut or bought, down for margins, nearest for telling), always with the same tolerance.
"""

from __future__ import annotations

from enum import Enum, StrEnum
from fractions import Fraction
from math import ceil, floor, isfinite

from stitchflip.errors import LengthError
from stitchflip.values import dataclass

TICKS_PER_INCH = 8128
TICKS_PER_CM = 3200
TOLERANCE_IN = 1e-6
"""What floating point may be off, in inches: a value this little above a step is on the step."""
INCHES_PER_YARD = 36
CM_PER_INCH = 2.54


class Unit(StrEnum):
    """The maker's units; a project is in one of them, never in both."""

    INCH = "in"
    CM = "cm"


class Rounding(Enum):
    """Which way a length goes when it must stand on a grid."""

    UP = "up"
    """What is cut, bought or missing."""
    DOWN = "down"
    """Margins and what is left."""
    NEAREST = "nearest"
    """Places to mark and distances to measure; halves away from zero."""


def count_steps(value_in: float | Fraction, step_in: float | Fraction, rounding: Rounding) -> int:
    """How many steps of the grid a length is, in the direction named; the tolerance is charged here only."""
    if not (isfinite(value_in) and isfinite(step_in) and step_in > 0 and isfinite(value_in / step_in)):
        raise LengthError(
            what=f"{value_in} in cannot be put on a grid of {step_in} in",
            fix="Give a finite length and a step above zero.",
            code="length.off-the-grid",
        )
    steps = float(value_in / step_in)
    slack = TOLERANCE_IN / float(step_in)
    match rounding:
        case Rounding.UP:
            return ceil(steps - slack)
        case Rounding.DOWN:
            return floor(steps + slack)
        case Rounding.NEAREST:
            count = floor(abs(steps) + 0.5 + slack)
            return count if steps >= 0 else -count


def round_to(value_in: float, step_in: float, rounding: Rounding) -> float:
    """Put a length on a grid, in the direction named.

    Args:
        value_in: inches, any sign.
        step_in: grid in inches, above zero.
        rounding: which way; within 1e-6 in of a step every direction gives that step.

    Returns:
        Inches, a whole number of steps.

    Raises:
        LengthError: If the value is not finite or the step is not above zero.

    Example:
        >>> round_to(13.331, 0.25, Rounding.UP), round_to(13.25 + 1e-7, 0.25, Rounding.UP)
        (13.5, 13.25)
    """
    return count_steps(value_in, step_in, rounding) * step_in


@dataclass(frozen=True, order=True, slots=True)
class Length:
    """An exact length, as typed and as stored.

    Example:
        >>> Length.of_inches(2.5) + Length.of_cm(6.5)
        Length(ticks=41120)
    """

    ticks: int
    """Whole ticks of 1/8128 in, any sign."""

    @classmethod
    def of_inches(cls, value_in: float | Fraction, rounding: Rounding = Rounding.NEAREST) -> Length:
        """The length on the tick grid that stands for so many inches.

        Args:
            value_in: inches, finite, any sign.
            rounding: which way to the next tick (1/8128 in).

        Returns:
            The exact length.

        Raises:
            LengthError: If the value is not finite.

        Example:
            >>> Length.of_inches(2.5)
            Length(ticks=20320)
        """
        return cls(count_steps(value_in, Fraction(1, TICKS_PER_INCH), rounding))

    @classmethod
    def of_cm(cls, value_cm: float | Fraction, rounding: Rounding = Rounding.NEAREST) -> Length:
        """The length on the tick grid that stands for so many centimeters.

        Args:
            value_cm: centimeters, finite, any sign.
            rounding: which way to the next tick (1/320 mm).

        Returns:
            The exact length.

        Raises:
            LengthError: If the value is not finite.

        Example:
            >>> Length.of_cm(6.5)
            Length(ticks=20800)
        """
        if not isfinite(value_cm):
            raise LengthError(what=f"{value_cm} cm is no length", fix="Give a finite number.", code="length.no-number")
        return cls.of_inches(Fraction(value_cm) * TICKS_PER_CM / TICKS_PER_INCH, rounding)

    @property
    def inches(self) -> float:
        """Inches, for geometry."""
        return self.ticks / TICKS_PER_INCH

    @property
    def cm(self) -> float:
        """Centimeters."""
        return self.ticks / TICKS_PER_CM

    def __add__(self, other: Length) -> Length:
        """Both lengths end to end."""
        return Length(self.ticks + other.ticks)

    def __sub__(self, other: Length) -> Length:
        """What is left when the other is cut off."""
        return Length(self.ticks - other.ticks)

    def __mul__(self, count: int) -> Length:
        """So many of them end to end."""
        return Length(self.ticks * count)

    __rmul__ = __mul__

    def __neg__(self) -> Length:
        """The same length the other way."""
        return Length(-self.ticks)

    def __abs__(self) -> Length:
        """The length without its direction."""
        return Length(abs(self.ticks))
