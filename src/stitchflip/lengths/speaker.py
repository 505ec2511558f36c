"""Saying lengths: exactly, as typed, or rounded the way each kind of length must be.

One spelling on every page: 2½ and 3 5/16, never 2.5 or 2-1/2; the number, a narrow space, the unit. Each
kind of length has its own direction, so that what the maker reads is never better than the truth.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from stitchflip.lengths.grid import (
    CM_PER_INCH,
    INCHES_PER_YARD,
    TICKS_PER_CM,
    TICKS_PER_INCH,
    TOLERANCE_IN,
    Length,
    Rounding,
    Unit,
    count_steps,
)
from stitchflip.values import dataclass

THIN_SPACE = "\u2009"
"""Between a whole number and a fraction that is built up: 3 5/16."""
UNIT_SPACE = "\u202f"
"""Narrow and never broken over two lines: between number and unit, and round the ×."""
TIMES = f"{UNIT_SPACE}×{UNIT_SPACE}"

_VULGAR = {
    Fraction(1, 2): "½",
    Fraction(1, 3): "⅓",
    Fraction(2, 3): "⅔",
    Fraction(1, 4): "¼",
    Fraction(3, 4): "¾",
    Fraction(1, 8): "⅛",
    Fraction(3, 8): "⅜",
    Fraction(5, 8): "⅝",
    Fraction(7, 8): "⅞",
}
_SIXTEENTH_IN = 1 / 16
_EIGHTH_IN = 1 / 8
_FINEST_IN = 1 / 64
_MM_IN = 0.1 / CM_PER_INCH
_FINEST_CM_IN = 0.01 / CM_PER_INCH


def _mixed(value: Fraction) -> str:
    """A number as a quilter's fraction: ½, 2½, 3 5/16."""
    sign = "−" if value < 0 else ""
    whole, rest = divmod(abs(value), 1)
    if rest == 0:
        return f"{sign}{whole}"
    built_in = _VULGAR.get(rest)
    part = built_in or f"{rest.numerator}/{rest.denominator}"
    if whole == 0:
        return f"{sign}{part}"
    return f"{sign}{whole}{'' if built_in else THIN_SPACE}{part}"


def _decimal(value: Fraction) -> str:
    """A number whose decimals end, without trailing zeros: 6.5, 13, 0.05."""
    places = 0
    while (value * 10**places).denominator != 1:
        places += 1
    sign = "−" if value < 0 else ""
    digits = str(abs(int(value * 10**places))).rjust(places + 1, "0")
    return sign + (f"{digits[:-places]}.{digits[-places:]}" if places else digits)


def format_inches(value_in: float, step: float = _SIXTEENTH_IN, rounding: Rounding = Rounding.NEAREST) -> str:
    """Inches as a quilter's fraction, without the unit.

    Args:
        value_in: inches, any sign.
        step: grid in inches, such as 1/16.
        rounding: which way to the grid.

    Returns:
        Text such as "2½" or, where no single sign exists, "3 5/16" with a thin space.

    Raises:
        LengthError: If the value is not finite or the step is not above zero.

    Example:
        >>> format_inches(8.125), format_inches(0.7825, rounding=Rounding.DOWN)
        ('8⅛', '¾')
    """
    return _mixed(count_steps(value_in, step, rounding) * Fraction(step).limit_denominator(TICKS_PER_INCH))


def format_length(length: Length, unit: Unit) -> str:
    """A length exactly, with its unit, so that reading it gives the same length again.

    Args:
        length: what was typed or stored.
        unit: inches as a fraction, or centimeters as a decimal.

    Returns:
        Text such as "2½ in" or "6.5 cm"; exact even where no ruler shows it, so say computed lengths through
        a `Speaker` instead.

    Example:
        >>> format_length(Length.of_cm(6.5), Unit.CM) == f"6.5{UNIT_SPACE}cm"
        True
    """
    if unit is Unit.INCH:
        return f"{_mixed(Fraction(length.ticks, TICKS_PER_INCH))}{UNIT_SPACE}in"
    return f"{_decimal(Fraction(length.ticks, TICKS_PER_CM))}{UNIT_SPACE}cm"


@dataclass(frozen=True, slots=True)
class Speaker:
    """Says computed lengths in the maker's unit, each kind rounded its own way.

    All take inches. In an inch project they answer in quilter's fractions, in a metric one in centimeters to
    the millimeter. The text carries its unit; `bare` is the same voice without it, for tables whose head
    names the unit.

    Example:
        >>> say = Speaker(Unit.INCH)
        >>> say.margin(0.7825).split(), say.shortage(1 - 0.7825).split(), say.bare.near(13.62)
        (['¾', 'in'], ['¼', 'in'], '13⅝')
    """

    unit: Unit
    names_unit: bool = True
    """False for the voice that leaves the unit to the table's head."""

    @property
    def bare(self) -> Speaker:
        """The same voice without units."""
        return replace(self, names_unit=False)

    def cut(self, length_in: float) -> str:
        """A length to cut, up to the next 1/8 in or 1 mm."""
        return self._with_unit(self._number(length_in, _EIGHTH_IN, Rounding.UP))

    def width(self, cut_width_in: float) -> str:
        """A strip's cut width or another size the maker chose, as she typed it (to 1/64 in or 0.1 mm)."""
        return self._with_unit(self._chosen(cut_width_in))

    def margin(self, margin_in: float) -> str:
        """What lies beyond something, down to 1/16 in or 1 mm; may be below zero."""
        return self._with_unit(self._number(margin_in, _SIXTEENTH_IN, Rounding.DOWN))

    def shortage(self, missing_in: float) -> str:
        """What is missing, up to 1/16 in or 1 mm; with `margin` it adds up to a wish on that grid."""
        return self._with_unit(self._number(missing_in, _SIXTEENTH_IN, Rounding.UP))

    def near(self, distance_in: float) -> str:
        """A place to mark or a distance to measure, to the nearest 1/16 in or 1 mm."""
        return self._with_unit(self._number(distance_in, _SIXTEENTH_IN, Rounding.NEAREST))

    def size(self, wide_in: float, long_in: float) -> str:
        """Wide × long of a sewn or squared-up piece, nearest 1/16 in or 1 mm; the unit is said once."""
        numbers = (self._number(side, _SIXTEENTH_IN, Rounding.NEAREST) for side in (wide_in, long_in))
        return self._with_unit(TIMES.join(numbers))

    def cut_size(self, wide_in: float, long_in: float) -> str:
        """Wide × long of a piece to cut: the width as chosen, the length up to the next 1/8 in or 1 mm."""
        numbers = (self._chosen(wide_in), self._number(long_in, _EIGHTH_IN, Rounding.UP))
        return self._with_unit(TIMES.join(numbers))

    def purchase(self, length_in: float) -> str:
        """A length to buy, always with its unit.

        Args:
            length_in: inches; eighths and thirds of a yard (or 5 cm steps) are said as they are, what lies
                between goes up to the next 1/8 yd (or 10 cm).

        Returns:
            Text such as "¼ yd", "1⅛ yd", "40 cm", "1.1 m".

        Example:
            >>> [Speaker(Unit.INCH).purchase(inches).split()[0] for inches in (9, 24, 40.5, 41)]
            ['¼', '⅔', '1⅛', '1¼']
        """
        if self.unit is Unit.INCH:
            grids = (Fraction(INCHES_PER_YARD, 8), Fraction(INCHES_PER_YARD, 3))
            return f"{_mixed(_bought(length_in, grids) / INCHES_PER_YARD)}{UNIT_SPACE}yd"
        grids = (Fraction(1000, 254), Fraction(500, 254))
        cm = _bought(length_in, grids) * Fraction(254, 100)
        return f"{_decimal(cm)}{UNIT_SPACE}cm" if cm < 100 else f"{_decimal(cm / 100)}{UNIT_SPACE}m"

    def _number(self, length_in: float, step_in: float, rounding: Rounding) -> str:
        """The number alone, on the inch grid given or on millimeters."""
        if self.unit is Unit.INCH:
            return format_inches(length_in, step_in, rounding)
        return _decimal(Fraction(count_steps(length_in, _MM_IN, rounding), 10))

    def _chosen(self, length_in: float) -> str:
        """The number alone, for a size that was typed and is not to be rounded away."""
        if self.unit is Unit.INCH:
            return format_inches(length_in, _FINEST_IN)
        return _decimal(Fraction(count_steps(length_in, _FINEST_CM_IN, Rounding.NEAREST), 100))

    def _with_unit(self, number: str) -> str:
        return f"{number}{UNIT_SPACE}{self.unit.value}" if self.names_unit else number


def in_both_units(length_in: float) -> str:
    """A length in both units, for errors found where the maker's own is not known.

    Example:
        >>> in_both_units(0.375)
        '⅜ in (0.95 cm)'
    """
    return f"{Speaker(Unit.INCH).width(length_in)} ({Speaker(Unit.CM).width(length_in)})".replace(UNIT_SPACE, " ")


def _bought(length_in: float, grids: tuple[Fraction, ...]) -> Fraction:
    """The purchase in inches: on one of the grids as it is, else up to the next step of the first."""
    for grid in grids:
        nearest = count_steps(length_in, grid, Rounding.NEAREST) * grid
        if abs(nearest - Fraction(length_in)) <= TOLERANCE_IN:
            return nearest
    return count_steps(length_in, grids[0], Rounding.UP) * grids[0]
