"""Lengths as quilters type, keep and say them, exact in inches and in centimeters.

What is typed or stored is a `Length`, read by `parse_length` and written back by `format_length`. What the
geometry computes is a float in inches: `round_to` puts it on a grid, a `Speaker` says it in the maker's
unit, each kind of length rounded its own way. Every rounding has the same tolerance.

Example:
    >>> parse_length("2½ in").inches
    2.5
    >>> Speaker(Unit.INCH).bare.margin(0.868)
    '13/16'
"""

from __future__ import annotations

from stitchflip.lengths.grid import (
    CM_PER_INCH,
    INCHES_PER_YARD,
    TICKS_PER_CM,
    TICKS_PER_INCH,
    TOLERANCE_IN,
    Length,
    Rounding,
    Unit,
    round_to,
)
from stitchflip.lengths.reading import LONGEST_IN, parse_length
from stitchflip.lengths.speaker import (
    THIN_SPACE,
    TIMES,
    UNIT_SPACE,
    Speaker,
    format_inches,
    format_length,
    in_both_units,
)

__all__ = [
    "CM_PER_INCH",
    "INCHES_PER_YARD",
    "LONGEST_IN",
    "THIN_SPACE",
    "TICKS_PER_CM",
    "TICKS_PER_INCH",
    "TIMES",
    "TOLERANCE_IN",
    "UNIT_SPACE",
    "Length",
    "Rounding",
    "Speaker",
    "Unit",
    "format_inches",
    "format_length",
    "in_both_units",
    "parse_length",
    "round_to",
]
