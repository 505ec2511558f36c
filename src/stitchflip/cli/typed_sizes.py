"""Sizes as they are typed behind an option: one length, or wide × long."""

from __future__ import annotations

import re

from stitchflip.cli.status import UsageError
from stitchflip.errors import LengthError
from stitchflip.lengths import Length, Unit, format_length, parse_length
from stitchflip.project.kinds import LARGEST_SIZE_IN

_TIMES = re.compile(r"(?<=[\d\s\"'½¼¾⅛⅜⅝⅞⅓⅔a-z])\s*(?:[×x*]|\bby\b)\s*(?=[\d½¼¾⅛⅜⅝⅞⅓⅔.,])", re.IGNORECASE)
UNITS = {
    Unit.INCH: ("in", "inch", "inches"),
    Unit.CM: ("cm", "centimeter", "centimeters", "centimetre", "centimetres"),
}


def length_typed(text: str, unit: Unit, option: str, *, least: Length | None = None) -> Length:
    """One length behind an option.

    Args:
        text: as typed.
        unit: the unit of a bare number.
        option: its name, for the message.
        least: shortest that would do; left out, anything above zero.

    Raises:
        UsageError: If it is no length, or too small or too large for a piece.
    """
    try:
        length = parse_length(text, unit)
    except LengthError as error:
        raise UsageError(
            what=f"{option}: {error.what}", fix=error.fix, where=option, code="usage.which-size"
        ) from error
    is_too_small = length.ticks <= 0 if least is None else length < least
    if is_too_small or length.inches > LARGEST_SIZE_IN:
        largest = Length.of_inches(LARGEST_SIZE_IN) if unit is Unit.INCH else Length.of_cm(1016)
        shortest = "more than 0" if least is None else f"{format_length(least, unit)} or more"
        raise UsageError(
            what=f'{option}: "{text}" is {"too small" if is_too_small else "larger than any piece"}',
            fix=f"Give {shortest} and at most {format_length(largest, unit)}.",
            where=option,
            code="usage.which-size",
        )
    return length


def size_typed(text: str, unit: Unit, option: str) -> tuple[Length, Length | None]:
    """Wide × long behind an option; one length alone has no second.

    Args:
        text: such as "16 × 60", "16x60 in", or "24".
        unit: the unit of bare numbers; a unit typed once at the end holds for both.
        option: its name, for the message.

    Raises:
        UsageError: If it is no size.

    Example:
        >>> [side and side.inches for side in size_typed("16 1/2 x 60", Unit.INCH, "--to")]
        [16.5, 60.0]
        >>> [side and round(side.cm, 3) for side in size_typed("40 x 120 cm", Unit.INCH, "--to")]
        [40.0, 120.0]
    """
    parts = _TIMES.split(text.strip())
    if len(parts) > 2:
        raise UsageError(
            what=f'{option}: "{text}" is more than two lengths',
            fix='Give wide × long, such as "16 x 60".',
            where=option,
            code="usage.which-size",
        )
    if len(parts) == 1:
        return length_typed(parts[0], unit, option), None
    ending = re.search(r"[a-z\"]+\.?\s*$", parts[1], re.IGNORECASE)
    has_own = re.search(r"[a-z\"]", parts[0], re.IGNORECASE)
    first = parts[0] if has_own or ending is None else f"{parts[0]} {ending[0]}"
    return length_typed(first, unit, option), length_typed(parts[1], unit, option)


def both_typed(text: str, unit: Unit, option: str) -> tuple[Length, Length]:
    """Wide × long behind an option that needs both."""
    wide, long = size_typed(text, unit, option)
    if long is None:
        raise UsageError(
            what=f'{option}: "{text}" is one length',
            fix='Give wide × long, such as "36 x 60".',
            where=option,
            code="usage.which-size",
        )
    return wide, long


def unit_named(text: str, option: str = "--units") -> Unit:
    """The unit behind an option.

    Raises:
        UsageError: If it is none that is known.
    """
    for unit, spellings in UNITS.items():
        if text.strip().casefold() in spellings:
            return unit
    raise UsageError(
        what=f'"{text}" is no unit known here',
        fix=f"Use {option} in for inches or {option} cm for centimeters.",
        code="usage.which-units",
    )
