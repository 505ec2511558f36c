"""The kinds of values in a project file: how each is read, what it must hold, and how its schema says so.

Every refusal keeps two phrases apart, what is wrong with the value and what would do, because the reader
shows them beside the value as it stands in the file.
"""

from __future__ import annotations

import re
import unicodedata
from enum import StrEnum
from math import isfinite
from typing import Annotated, Any, TypeVar

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, ValidationInfo, WithJsonSchema
from pydantic_core import PydanticCustomError

from stitchflip.errors import LengthError
from stitchflip.lengths import Length, Unit, parse_length
from stitchflip.project import words
from stitchflip.project.colors import COLOR_NAMES, hex_color

LARGEST_SIZE_IN = 400
"""No piece, base or strip is larger: 400 in is over 10 m, and more is a slip of the unit."""

LISTS_OF_TABLES = ("rounds", "steps", "patches", "blocks", "borders", "readings", "short_strips", "fabrics")
"""Parts of a project that may be written in double brackets, once for each thing."""

_SIDES = (
    "top",
    "right",
    "bottom",
    "left",
    "upper right",
    "upper left",
    "lower left",
    "lower right",
)


class Model(BaseModel):
    """What every part of a project is: never changed in place, and without a key nobody knows."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", arbitrary_types_allowed=True, populate_by_name=True, defer_build=True
    )


def written_keys(model: type[BaseModel]) -> dict[str, str]:
    """The fields of a part of a project and the keys they have in a file, which a few do not share.

    Args:
        model: such as the whole project.
    """
    return {name: field.alias or name for name, field in model.model_fields.items()}


def refusal(wrong: str, would_do: str) -> PydanticCustomError:
    """The error of a value that cannot be used.

    Args:
        wrong: what is wrong with it, such as "below zero"; "" when the value says it itself.
        would_do: what would be read without complaint.
    """
    context: dict[str, Any] = {"wrong": wrong, "would_do": would_do}
    return PydanticCustomError("refused", "{wrong}; {would_do} would do", context)


def unit_of(info: ValidationInfo) -> Unit:
    """The project's unit, handed in by whoever reads; inches when nobody said."""
    return Unit((info.context or {}).get("unit", Unit.INCH))


def _length_refusal(error: LengthError) -> PydanticCustomError:
    """The length room's sentence taken apart: its clause after the text, its advice without the verb."""
    _, _, wrong = error.what.rpartition('"') if error.code != "length.unknown-unit" else ("", "", "in no known unit")
    advice = re.sub(r"^(Write|Give|Use) ", "", error.fix.rstrip(".")).split(";")[0]
    return refusal(re.sub(r"^ *is ", "", wrong).strip(), advice)


def _read_length(value: object, info: ValidationInfo) -> Length:
    """Read a length typed by hand; a bare number counts in the project's unit."""
    if isinstance(value, Length):
        return value
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise refusal("no length", f"a length such as {_like(unit_of(info))}")
    try:
        return parse_length(str(value), unit_of(info))
    except LengthError as error:
        raise _length_refusal(error) from error


def _like(unit: Unit) -> str:
    return '"2 1/2"' if unit is Unit.INCH else '"6.5"'


def _above_zero(length: Length, info: ValidationInfo) -> Length:
    if length.ticks <= 0:
        raise refusal("not above zero", f"a length above zero, such as {_like(unit_of(info))}")
    return length


def _no_larger_than_a_room(length: Length, info: ValidationInfo) -> Length:
    if length.inches > LARGEST_SIZE_IN:
        largest = f"{LARGEST_SIZE_IN} in" if unit_of(info) is Unit.INCH else "1016 cm"
        raise refusal("larger than any piece", f"at most {largest} (look for a slipped point or a wrong unit)")
    return length


def _at_least_a_seam(length: Length, info: ValidationInfo) -> Length:
    inch = unit_of(info) is Unit.INCH
    if length.inches < (0.25 if inch else 0.6 / 2.54) - 1e-6:
        raise refusal("too little to be safe", '"1/4" or more' if inch else '"0.6" or more')
    return length


LENGTH_SCHEMA: dict[str, Any] = {
    "anyOf": [{"type": "string"}, {"type": "number", "minimum": 0}],
    "examples": ["2 1/2", "2½ in", "6.5 cm", "1 1/8 yd"],
}
"""How the schema says a length."""
Measure = Annotated[Length, BeforeValidator(_read_length), WithJsonSchema(LENGTH_SCHEMA)]
"""A length of zero or more."""
Above = Annotated[Length, BeforeValidator(_read_length), AfterValidator(_above_zero), WithJsonSchema(LENGTH_SCHEMA)]
"""A length above zero."""
Size = Annotated[
    Length,
    BeforeValidator(_read_length),
    AfterValidator(_above_zero),
    AfterValidator(_no_larger_than_a_room),
    WithJsonSchema(LENGTH_SCHEMA),
]
"""A size of something that lies on a table: above zero and not larger than a room."""
Reach = Annotated[
    Length, BeforeValidator(_read_length), AfterValidator(_at_least_a_seam), WithJsonSchema(LENGTH_SCHEMA)
]
"""A reach past the trim line, never under 1/4 in or 0.6 cm."""


def _read_place(value: object, info: ValidationInfo) -> float:
    """A place left or right of the center mark, in the project's unit; lengths may carry a minus sign."""
    if isinstance(value, str):
        text = value.strip().replace("\u2212", "-")
        sign = -1.0 if text.startswith("-") else 1.0
        unit = unit_of(info)
        try:
            length = parse_length(text.lstrip("+-"), unit)
        except LengthError as error:
            raise _length_refusal(error) from error
        return sign * (length.inches if unit is Unit.INCH else length.cm)
    if isinstance(value, bool) or not isinstance(value, int | float) or not isfinite(value):
        raise refusal("no place", 'a number such as 1.5 or -1.5, or a text such as "1 1/2"')
    if abs(value) > LARGEST_SIZE_IN * 2.54:
        raise refusal("farther away than any piece reaches", "a place on the base")
    return float(value)


Place = Annotated[
    float, BeforeValidator(_read_place), WithJsonSchema({"anyOf": [{"type": "number"}, {"type": "string"}]})
]
"""A distance with a sign, in the project's unit."""
Corner = tuple[Place, Place]
"""A place right of and above the center mark, in the project's unit."""


_TURNS = '"straight", "on point" or degrees such as 30'


def _read_turn(value: object) -> object:
    """Degrees, or the words for the two turns that have a name."""
    if isinstance(value, bool):
        raise refusal("no turn", _TURNS)
    if not isinstance(value, str):
        return value
    named = {"straight": 0.0, "onpoint": 45.0}.get(words.bare(value))
    if named is not None:
        return named
    degrees = re.fullmatch(r"([+-]?[0-9]+(?:\.[0-9]+)?)\s*(?:°|deg(?:rees?)?)?", value.strip())
    if degrees is None:
        raise refusal("no turn", _TURNS)
    return float(degrees[1])


Turn = Annotated[
    float,
    Field(ge=-360, le=360, allow_inf_nan=False),
    BeforeValidator(_read_turn),
    WithJsonSchema(
        {"anyOf": [{"type": "number", "minimum": -360, "maximum": 360}, {"enum": ["straight", "on point"]}]}
    ),
]
"""Degrees counter-clockwise, or "straight" or "on point"."""


def _read_share(value: object) -> object:
    """A fraction, or a text with a percent sign."""
    if isinstance(value, str):
        share = re.fullmatch(r"([0-9]+(?:[.,][0-9]+)?)\s*(%?)", value.strip())
        if share is None:
            raise refusal("no share", '"1.5 %" or 0.015')
        number = float(share[1].replace(",", "."))
        return round(number / 100 if share[2] else number, 9)
    if isinstance(value, bool):
        raise refusal("no share", '"1.5 %" or 0.015')
    return value


def _at_most_a_fifth(value: float) -> float:
    if not 0 <= value <= 0.2:
        raise refusal("out of range", '"0 %" to "20 %" (0 to 0.2)')
    return value


Share = Annotated[
    float,
    Field(allow_inf_nan=False),
    BeforeValidator(_read_share),
    AfterValidator(_at_most_a_fifth),
    WithJsonSchema({"anyOf": [{"type": "number", "minimum": 0, "maximum": 0.2}, {"type": "string"}]}),
]
"""A fraction such as 0.015, or a text such as "1.5 %"."""


def _no_yes_or_no(value: object) -> object:
    """A number; true and false are none, though a computer counts them as 1 and 0."""
    if isinstance(value, bool):
        raise refusal("no number", "a number")
    return value


NUMBER = BeforeValidator(_no_yes_or_no)
"""For any number."""
Amount = Annotated[float, Field(ge=0, le=1_000_000, allow_inf_nan=False), NUMBER]
"""Money or minutes."""


_LONGEST_TEXT = 5000
"""No text is looked at further; longer ones are refused for their length."""


def _one_line(value: object) -> object:
    """A text on one line, spaces between its words."""
    if not isinstance(value, str):
        return value
    line = " ".join(value[:_LONGEST_TEXT].split())
    if any(unicodedata.category(mark) == "Cc" for mark in line):
        raise refusal("a text with unprintable marks", "plain text")
    return line


def _number_as_text(value: object) -> object:
    """An edition or a date written without quotes."""
    if isinstance(value, int | float) and not isinstance(value, bool):
        return str(value)
    in_words = getattr(value, "isoformat", None)
    return in_words() if callable(in_words) else value


def _plain_text(value: object) -> object:
    """A text of several lines without marks no page can print."""
    marks = value[:_LONGEST_TEXT] if isinstance(value, str) else ""
    if any(unicodedata.category(mark) == "Cc" and mark not in "\n\t\r" for mark in marks):
        raise refusal("a text with unprintable marks", "plain text")
    return value


Name = Annotated[str, Field(min_length=1, max_length=60), BeforeValidator(_one_line)]
"""Name of a fabric."""
Line = Annotated[str, Field(max_length=120), BeforeValidator(_one_line), BeforeValidator(_number_as_text)]
"""A short text; the last validator named runs first."""
Title = Annotated[str, Field(min_length=1, max_length=120), BeforeValidator(_one_line)]
"""Name of a piece."""
Text = Annotated[str, Field(max_length=4000), BeforeValidator(_plain_text)]
"""A text of any number of lines."""


def _read_side(value: object) -> object:
    """A side's name; "top right" is the same as "upper right"."""
    if not isinstance(value, str):
        return value
    text = " ".join(re.sub(r"[-_]+", " ", value.casefold()).split())
    text = re.sub(r"^top (?=right$|left$)", "upper ", text)
    text = re.sub(r"^bottom (?=right$|left$)", "lower ", text)
    text = re.sub(r"^side ?0*(?=[0-9])", "side ", text)
    if text not in _SIDES and not re.fullmatch(r"side [1-9][0-9]?", text):
        raise refusal("no side", f'one of {", ".join(_SIDES)}, or "side 3" of a polygon')
    return text


Side = Annotated[str, BeforeValidator(_read_side)]
"""Name of a side."""


def _read_color(value: object) -> object:
    """A hex color or a color's name."""
    if not isinstance(value, str):
        raise refusal("no color", 'a hex color such as "#3f4c5c", or a color name such as "navy"')
    color = hex_color(value)
    if color is None:
        from difflib import get_close_matches

        close = get_close_matches("".join(value.casefold().split()), COLOR_NAMES, n=1)
        instead = f'"{close[0]}"' if close else 'a hex color such as "#3f4c5c", or a color name such as "navy"'
        raise refusal("no color", instead)
    return color


Color = Annotated[str, BeforeValidator(_read_color)]
"""A CSS color, kept as "#rrggbb"."""

_Word = TypeVar("_Word", bound=StrEnum)


def reads(choices: type[_Word]) -> BeforeValidator:
    """The validator that reads one of some words the way makers write them.

    Args:
        choices: the words that would do.
    """

    def read(value: object) -> object:
        if isinstance(value, choices):
            return value
        found = words.meant(value, choices) if isinstance(value, str) else None
        if found is None:
            raise refusal("", one_of(value, [word.value for word in choices]))
        return found

    return BeforeValidator(read)


_MOST_NAMED = 12


def one_of(value: object, choices: list[str]) -> str:
    """What would do in place of a word nobody knows: the one that looks like it first.

    Args:
        value: what was written.
        choices: the words that would do.
    """
    from difflib import get_close_matches

    folded = {word.casefold(): word for word in reversed(choices)}
    close = [folded[word] for word in get_close_matches(str(value)[:80].casefold(), folded, n=1)]
    ordered = close + [word for word in choices if word not in close]
    quoted = [f'"{word}"' for word in ordered[:_MOST_NAMED]]
    if len(ordered) > _MOST_NAMED:
        return f"{', '.join(quoted)} or another"
    return quoted[0] if len(quoted) == 1 else f"{', '.join(quoted[:-1])} or {quoted[-1]}"
