"""Writing a project file: complete, in the order a maker thinks, every value readable as she would type it."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import Any

from pydantic import BaseModel

from stitchflip.lengths import TICKS_PER_CM, TICKS_PER_INCH, Length, Unit
from stitchflip.project.kinds import written_keys
from stitchflip.project.model import Project

Raw = Any
"""A value of any kind a project file can hold."""

_FINEST_INCH = 64
_TOP = ("name", "about", "edition", "date", "units", "how_many", "working")
_LISTS = ("rounds", "steps", "patches", "readings", "short_strips")
_TABLES = ("squared_up", "made_for", "base", "center", "building", "joined", "blocks", "borders", "cut_apart")
_LAST_TABLES = ("fabric_rule", "fabrics", "batting", "backing", "binding", "extras", "my_numbers")
_ALWAYS = {"name", "units", "how_many", "working", "shape", "way", "color", "finish", "setting", "join"}
"""Keys that are written even when they have the value they would have anyway."""
_IN_ROWS = {"rounds", "steps", "patches", "measured", "places"}
"""Lists of which each element has a line of its own."""


def write_project(project: Project) -> str:
    """The complete file of a project.

    Args:
        project: the project.

    Returns:
        TOML; reading it gives the same project again. What has its usual value is left out.

    Example:
        >>> from stitchflip.project.reading import project_from
        >>> mat = project_from(
        ...     {
        ...         "name": "Mat",
        ...         "squared_up": {"wide": "18", "long": "13"},
        ...         "fabrics": [{"name": "Oat"}],
        ...         "binding": {"fabric": "Oat"},
        ...     }
        ... )
        >>> print(write_project(mat)[:25])
        name = "Mat"
        units = "in"
    """
    unit = project.units
    parts = ["\n".join(f"{key} = {value}" for key, value in _entries(project, unit, _TOP))]
    listed = [(key, getattr(project, key)) for key in _LISTS]
    parts += [f"{key} = {_rows(entries, unit)}" for key, entries in listed if entries]
    for key in _TABLES + _LAST_TABLES:
        parts += _headed(key, getattr(project, key), unit)
    return "\n\n".join(parts) + "\n"


def _headed(key: str, part: Raw, unit: Unit) -> list[str]:
    """A part of a project under its head, once for each thing of a list; nothing when it says nothing."""
    if part is None:
        return []
    if not isinstance(part, BaseModel):
        return [f"[[{key}]]\n{lines(one, unit)}" for one in part]
    rows = lines(part, unit)
    says = rows or Project.model_fields[key].default is None or Project.model_fields[key].is_required()
    return [f"[{key}]\n{rows}".rstrip()] if says else []


def _rows(entries: Raw, unit: Unit) -> str:
    """A list with one line for each of its elements."""
    return "[\n" + "".join(f"    {toml(one, unit)},\n" for one in entries) + "]" if entries else "[]"


def lines(part: BaseModel, unit: Unit) -> str:
    """A part of a project with one line for each of its values.

    Args:
        part: such as a fabric.
        unit: the project's unit.
    """
    return "\n".join(
        f"{key} = {_rows(getattr(part, key), unit) if key in _IN_ROWS else value}"
        for key, value in _entries(part, unit)
    )


def _entries(part: BaseModel, unit: Unit, keys: tuple[str, ...] = ()) -> list[tuple[str, str]]:
    """Keys and values worth writing, as TOML."""
    entries = []
    written = written_keys(type(part))
    for key, field in type(part).model_fields.items():
        value = getattr(part, key)
        if keys and key not in keys:
            continue
        is_usual = value is None or (not field.is_required() and value == field.default)
        if value is not None and (not is_usual or key in _ALWAYS):
            entries.append((written[key], toml(value, unit)))
    return entries


def inline(part: BaseModel, unit: Unit) -> str:
    """A part of a project as a table in braces.

    Args:
        part: such as a round.
        unit: the project's unit.
    """
    pairs = ", ".join(f"{key} = {value}" for key, value in _entries(part, unit))
    return f"{{ {pairs} }}" if pairs else "{}"


def toml(value: Raw, unit: Unit) -> str:
    """A value of a project as TOML.

    Args:
        value: a length, number, text, list or part of a project.
        unit: the project's unit.
    """
    match value:
        case bool():
            return "true" if value else "false"
        case Length():
            return f'"{typed(value, unit)}"'
        case str():
            return json.dumps(str(value), ensure_ascii=False).replace("\x7f", "\\u007f")
        case int() | float():
            return repr(value)
        case BaseModel():
            return inline(value, unit)
        case _:
            return "[" + ", ".join(toml(one, unit) for one in value) + "]"


def typed(length: Length, unit: Unit) -> str:
    """A length as it is typed on any keyboard, exactly.

    Args:
        length: the length.
        unit: the unit of bare numbers; the other one is named where it says the length more plainly.

    Example:
        >>> typed(Length.of_inches(8.625), Unit.INCH), typed(Length.of_cm(6.5), Unit.CM)
        ('8 5/8', '6.5')
        >>> typed(Length.of_cm(6.5), Unit.INCH), typed(Length.of_inches(0.25), Unit.CM)
        ('6.5 cm', '1/4 in')
    """
    inches = Fraction(length.ticks, TICKS_PER_INCH)
    cm = Fraction(length.ticks, TICKS_PER_CM)
    in_cm = _decimal(cm)
    if unit is Unit.INCH:
        if inches.denominator <= _FINEST_INCH or 100 % cm.denominator:
            return _mixed(inches)
        return f"{in_cm} cm"
    if 100 % cm.denominator and inches.denominator <= _FINEST_INCH:
        return f"{_mixed(inches)} in"
    return in_cm


def _mixed(value: Fraction) -> str:
    whole, rest = divmod(value, 1)
    if rest == 0:
        return str(whole)
    part = f"{rest.numerator}/{rest.denominator}"
    return f"{whole} {part}" if whole else part


def _decimal(value: Fraction) -> str:
    """A decimal that ends; ticks are parts of 3200, which has only twos and fives in it."""
    places = 0
    while (value * 10**places).denominator != 1:
        places += 1
    digits = str(int(value * 10**places)).rjust(places + 1, "0")
    return f"{digits[:-places]}.{digits[-places:]}" if places else digits
