"""Lengths as quilters type, keep and say them, exact in inches and in centimeters.

Floats cannot keep 6.5 cm and decimals cannot keep 1/64 in by sixty-fours, so everything typed or stored is
a whole number of ticks of 1/8128 in: 1/64 in is 127 ticks, 0.1 mm is 32. Geometry uses plain floats in
inches; they come back to a grid only here, through one function whose direction is always named (up for
what is cut or bought, down for margins, nearest for telling), always with the same tolerance.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass, replace
from enum import Enum, StrEnum
from fractions import Fraction
from math import ceil, floor, isfinite

from stitchflip.errors import LengthError

TICKS_PER_INCH = 8128
TICKS_PER_CM = 3200
TOLERANCE_IN = 1e-6
"""What floating point may be off, in inches: a value this little above a step is on the step."""

INCHES_PER_YARD = 36
CM_PER_INCH = 2.54
LONGEST_IN = 1000 * INCHES_PER_YARD
"""Longest length anybody types: 1000 yd. More is a slip of the hand."""

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


def _count_steps(value_in: float | Fraction, step_in: float | Fraction, rounding: Rounding) -> int:
    """How many steps of the grid a length is, in the direction named; the tolerance is charged here only."""
    if not (isfinite(value_in) and isfinite(step_in) and step_in > 0 and isfinite(value_in / step_in)):
        raise LengthError(
            what=f"{value_in} in cannot be put on a grid of {step_in} in",
            fix="Give a finite length and a step above zero.",
            code="length.off-the-grid",
        )
    steps = value_in / step_in
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
    return _count_steps(value_in, step_in, rounding) * step_in


@dataclass(frozen=True, order=True, slots=True)
class Length:
    """An exact length, as typed and as stored.

    Example:
        >>> parse_length("2 1/2") + parse_length("6.5 cm") == Length(ticks=20320 + 20800)
        True
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
        return cls(_count_steps(value_in, Fraction(1, TICKS_PER_INCH), rounding))

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


# --- reading ---------------------------------------------------------------------------------------------

_NUMBER = re.compile(
    r"""
    (?: (?P<whole>[0-9]+) (?: \s+ | \s*-\s* ) )?  (?P<over>[0-9]+) \s* / \s* (?P<under>[0-9]+)
    | (?P<decimal> [0-9]+ (?:[.,][0-9]*)? | [.,][0-9]+ )
    """,
    re.VERBOSE,
)
_TEXT = re.compile(r"(?P<number>[0-9.,/\s-]*[0-9.,])\s*(?P<unit>[^\W\d_]+\.?|\"|''|')?")
_TWO_LENGTHS = re.compile(r"[0-9\"a-z]\s*[x×]\s*[0-9]", re.IGNORECASE)
_THOUSANDS = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")
_UNITS = {
    **dict.fromkeys(("in", "inch", "inches", '"', "''"), Fraction(1)),
    **dict.fromkeys(("yd", "yds", "yard", "yards"), Fraction(INCHES_PER_YARD)),
    **dict.fromkeys(("cm", "centimeter", "centimeters", "centimetre", "centimetres"), Fraction(100, 254)),
    **dict.fromkeys(("mm", "millimeter", "millimeters", "millimetre", "millimetres"), Fraction(10, 254)),
    **dict.fromkeys(("m", "meter", "meters", "metre", "metres"), Fraction(10_000, 254)),
}
_FEET = {"ft", "foot", "feet", "'"}
_ONE_SPELLING = str.maketrans(
    {"\u2044": "/", "\u2215": "/", "\u2010": "-", "\u2011": "-", "\u2012": "-", "\u2013": "-", "\u2212": "-"}
    | dict.fromkeys("″”“〃", '"')
    | dict.fromkeys("′’‘", "'")
)
_LONGEST_TEXT = 60
_SHOWN_TEXT = 40
_WOULD_DO = "Write a length such as 2 1/2, 2½ in, 6.5 cm or 1 1/8 yd."


def parse_length(text: str, default_unit: Unit = Unit.INCH) -> Length:
    """Read a length the way quilters write it.

    Fractions may be typed ("2 1/2", "2-1/2") or built in ("2½"), decimals take a point or a comma, and the
    unit is in (or "), yd, mm, cm or m. What could be read two ways is refused.

    Args:
        text: what she typed; zero or more.
        default_unit: the unit of a bare number.

    Returns:
        The exact length; what lies between two ticks (1/3 in) goes to the nearest.

    Raises:
        LengthError: If the text is not one length, is negative, divides by zero or is longer than 1000 yd.

    Example:
        >>> [parse_length(text).inches for text in ("2 1/2", '2-1/2"', "2½ in", "6,35 cm", "1 1/8 yd")]
        [2.5, 2.5, 2.5, 2.5, 40.5]
    """
    plain = _plain(text)
    found = _TEXT.fullmatch(plain)
    if found is None or len(plain) > _LONGEST_TEXT:
        raise _unreadable(text, plain)
    value = _number(found["number"], text) * _inches_each(found["unit"], default_unit, text)
    if value > LONGEST_IN:
        raise LengthError(
            what=f"{_quoted(text)} is longer than 1000 yd",
            fix="Give at most 1000 yd; look for a slipped point or a wrong unit.",
            code="length.too-long",
        )
    return Length.of_inches(value)


def _plain(text: str) -> str:
    """The text with one kind of slash, dash and quote, built-in fractions taken apart, one space at a time."""
    apart = "".join(
        f" {unicodedata.normalize('NFKC', mark)} " if unicodedata.decomposition(mark).startswith("<fraction>") else mark
        for mark in text[: _LONGEST_TEXT + 1]
    )
    return " ".join(apart.translate(_ONE_SPELLING).split())


def _quoted(text: str) -> str:
    """The offending text for a message, cut short when it is endless."""
    shown = text if len(text) <= _SHOWN_TEXT else text[:_SHOWN_TEXT] + "…"
    return f'"{shown}"'


def _unreadable(text: str, plain: str) -> LengthError:
    """Say as exactly as possible why a text is no length."""
    shown = _quoted(text)
    if not plain:
        return LengthError(what=f"{shown} is empty where a length is due", fix=_WOULD_DO, code="length.empty")
    if plain.startswith("-") and any(mark.isdigit() for mark in plain):
        return LengthError(
            what=f"{shown} is below zero", fix="Give zero or more, without a minus sign.", code="length.negative"
        )
    if _TWO_LENGTHS.search(plain):
        return LengthError(
            what=f"{shown} is two lengths", fix="Give one length at a time, such as 13 in.", code="length.two-lengths"
        )
    return LengthError(what=f"{shown} is not a length", fix=_WOULD_DO, code="length.not-a-length")


def _number(number: str, text: str) -> Fraction:
    """The number in front of the unit, exactly."""
    found = _NUMBER.fullmatch(number)
    if found is None:
        raise _unreadable(text, number)
    if found["decimal"] is not None:
        if _THOUSANDS.fullmatch(number):
            raise LengthError(
                what=f"{_quoted(text)} could be thousands or a decimal",
                fix=f"Write {number.replace(',', '.')} or {number.replace(',', '')}.",
                code="length.unclear-comma",
            )
        return Fraction(number.replace(",", ".").removesuffix("."))
    whole, over, under = (int(found[part] or 0) for part in ("whole", "over", "under"))
    if under == 0:
        raise LengthError(what=f"{_quoted(text)} divides by zero", fix=_WOULD_DO, code="length.divides-by-zero")
    part = Fraction(over, under)
    if found["whole"] is not None and part >= 1:
        raise LengthError(
            what=f"{_quoted(text)} has a fraction of 1 or more beside its whole number",
            fix=f"Write {format_inches(float(whole + part), _FINEST_IN)} if that is meant.",
            code="length.fraction-not-below-one",
        )
    return whole + part


def _inches_each(unit: str | None, default_unit: Unit, text: str) -> Fraction:
    """Inches in one of the unit typed, or of the project's unit when none is."""
    name = default_unit.value if unit is None else unit.lower().removesuffix(".")
    if name in _FEET:
        raise LengthError(
            what=f"{_quoted(text)} is in feet", fix="Give inches or yards, such as 36 in or 1 yd.", code="length.feet"
        )
    if name not in _UNITS:
        raise LengthError(
            what=f'{_quoted(text)} has the unknown unit "{name}"',
            fix="Use in, yd, mm, cm or m.",
            code="length.unknown-unit",
        )
    return _UNITS[name]


# --- saying ----------------------------------------------------------------------------------------------


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
    return _mixed(_count_steps(value_in, step, rounding) * Fraction(step).limit_denominator(TICKS_PER_INCH))


def format_length(length: Length, unit: Unit) -> str:
    """A length exactly, with its unit, so that reading it gives the same length again.

    Args:
        length: what was typed or stored.
        unit: inches as a fraction, or centimeters as a decimal.

    Returns:
        Text such as "2½ in" or "6.5 cm"; exact even where no ruler shows it, so say computed lengths through
        a `Speaker` instead.

    Example:
        >>> format_length(parse_length("65 mm"), Unit.CM) == f"6.5{UNIT_SPACE}cm"
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
        text = f"{_decimal(cm)}{UNIT_SPACE}cm" if cm < 100 else f"{_decimal(cm / 100)}{UNIT_SPACE}m"  # noqa: PLR2004  100 cm = 1 m
        return text

    def _number(self, length_in: float, step_in: float, rounding: Rounding) -> str:
        """The number alone, on the inch grid given or on millimeters."""
        if self.unit is Unit.INCH:
            return format_inches(length_in, step_in, rounding)
        return _decimal(Fraction(_count_steps(length_in, _MM_IN, rounding), 10))

    def _chosen(self, length_in: float) -> str:
        """The number alone, for a size that was typed and is not to be rounded away."""
        if self.unit is Unit.INCH:
            return format_inches(length_in, _FINEST_IN)
        return _decimal(Fraction(_count_steps(length_in, _FINEST_CM_IN, Rounding.NEAREST), 100))

    def _with_unit(self, number: str) -> str:
        return f"{number}{UNIT_SPACE}{self.unit.value}" if self.names_unit else number


def _bought(length_in: float, grids: tuple[Fraction, ...]) -> Fraction:
    """The purchase in inches: on one of the grids as it is, else up to the next step of the first."""
    for grid in grids:
        nearest = _count_steps(length_in, grid, Rounding.NEAREST) * grid
        if abs(nearest - Fraction(length_in)) <= TOLERANCE_IN:
            return nearest
    return _count_steps(length_in, grids[0], Rounding.UP) * grids[0]
