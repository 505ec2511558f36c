"""Reading lengths the way quilters write them, and refusing what could be read two ways.

A wrong guess here is fabric cut wrong, so nothing is guessed: every text that is not one plain length is an
error that names it and says what would do.
"""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction

from stitchflip.errors import LengthError
from stitchflip.lengths.grid import INCHES_PER_YARD, Length, Unit
from stitchflip.lengths.speaker import format_inches

LONGEST_IN = 1000 * INCHES_PER_YARD
"""Longest length anybody types: 1000 yd. More is a slip of the hand."""

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
            fix=f"Write {format_inches(float(whole + part), 1 / 64)} if that is meant.",
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
