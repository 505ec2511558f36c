"""From what the models refuse to a list of mistakes a maker can work down: line, key, what stands there, what would do.

Every error type of the model library that a file can cause has its words here; a test feeds them all.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from difflib import get_close_matches
from typing import TYPE_CHECKING, Any, get_args

from pydantic import BaseModel

from stitchflip.errors import Mistake
from stitchflip.project.agreements import MOST_MISTAKES, Disagreement
from stitchflip.project.kinds import written_keys
from stitchflip.project.model import Project

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

    from stitchflip.project.places import Places

Path = tuple[str | int, ...]
Raw = Any
"""A value of any kind a project file can hold."""

_SHOWN = 60

_TYPES = {
    "string_type": "a text in quotes",
    "bool_parsing": "true or false",
    "bool_type": "true or false",
    "int_parsing": "a whole number",
    "int_type": "a whole number",
    "int_from_float": "a whole number",
    "int_parsing_size": "a whole number of a few digits",
    "float_parsing": "a number",
    "float_type": "a number",
    "finite_number": "a number that has an end",
    "tuple_type": 'a list in brackets, such as ["Oat", "Brass"]',
    "string_too_short": "a text with something in it",
}
"""Error type -> what would do."""

_MISSING: dict[Path, str] = {
    ("name",): 'a name, such as name = "Porch runner"',
    ("squared_up",): "a [squared_up] table with wide and long",
    ("fabrics",): "a [[fabrics]] table with a name for each fabric",
    ("binding",): "a [binding] table with its fabric",
    ("cut",): 'a cut width, such as cut = "2 1/2"',
    ("fabric",): 'the name of a fabric, such as fabric = "Oat"',
    ("wide",): 'a width, such as wide = "18"',
    ("long",): 'a length, such as long = "22"',
    ("side",): 'a side, such as side = "top"',
}
"""Key -> what would do where it is missing."""


_OTHER_WORDS = {
    "length": "long",
    "height": "long",
    "width": "wide",
    "size": "cut",
    "cloth": "fabric",
    "gap": "widest_gap",
}
"""Unknown key -> the key that is probably meant, where it does not look alike."""


def key_of(path: Path) -> str:
    """A path as it is written to a maker, places counted from 1.

    Example:
        >>> key_of(("rounds", 1, "cut"))
        'rounds[2].cut'
    """
    text = ""
    for part in path:
        text += f"[{part + 1}]" if isinstance(part, int) else f".{part}" if text else part
    return text or "the file"


def told(
    refused: Iterable[ErrorDetails], agreeing: Iterable[Disagreement], data: Mapping[str, Any], places: Places
) -> list[Mistake]:
    """What is wrong, in the order of the file; what is missing altogether comes last.

    Args:
        refused: what the models refuse.
        agreeing: what does not agree.
        data: the file's values.
        places: where they stand.

    Returns:
        One more than are ever listed at most: words are found only for what is told.
    """
    found: dict[Path, ErrorDetails | Disagreement] = {}
    for error in refused:
        if not _is_echo(error, data):
            found.setdefault(tuple(error["loc"]), error)
    for one in agreeing:
        found.setdefault(one.path, one)
    last = max(places.line_of.values(), default=0) + 1
    ordered = sorted(found.items(), key=lambda entry: places.near(entry[0]) or last)
    return [_in_words(path, wrong, data, places) for path, wrong in ordered[: MOST_MISTAKES + 1]]


def _in_words(path: Path, wrong: ErrorDetails | Disagreement, data: Mapping[str, Any], places: Places) -> Mistake:
    if isinstance(wrong, Disagreement):
        return Mistake(places.near(path), key_of(path), _cut(wrong.found), wrong.would_do)
    return _refusal(path, wrong, data, places)


def _is_echo(error: ErrorDetails, data: Mapping[str, Any]) -> bool:
    """True when a list seems too short only because what is in it was refused."""
    return error["type"] == "too_short" and isinstance(error["input"], Sequence) and bool(_at(data, error["loc"]))


def _at(data: Raw, path: Iterable[str | int]) -> Raw:
    """The value at a path of a file; None when there is none."""
    for part in path:
        try:
            data = data[part]
        except (KeyError, IndexError, TypeError):
            return None
    return data


def _refusal(path: Path, error: ErrorDetails, data: Mapping[str, Any], places: Places) -> Mistake:
    kind = error["type"]
    if kind == "extra_forbidden":
        return Mistake(places.near(path), key_of(path), f'the unknown key "{_cut(str(path[-1]))}"', _instead(path))
    if kind == "missing":
        usual = "one more entry" if isinstance(path[-1], int) else f"a value for {path[-1]}"
        would_do = _MISSING.get(path) or _MISSING.get(path[-1:]) or usual
        return Mistake(places.near(path), key_of(path), "nothing", would_do)
    context = error.get("ctx", {})
    wrong = f" ({context['wrong']})" if kind == "refused" and context["wrong"] else ""
    return Mistake(places.near(path), key_of(path), _as_written(path, data, places) + wrong, _would_do(error, context))


def _as_written(path: Path, data: Mapping[str, Any], places: Places) -> str:
    if path in places.text_of:
        return _cut(" ".join(places.text_of[path].split()))
    value = _at(data, path)
    if isinstance(value, Mapping):
        return "a table"
    if isinstance(value, list):
        return f"a list of {len(value)}" if value else "an empty list"
    return _cut(f'"{value}"' if isinstance(value, str) else str(value))


def _would_do(error: ErrorDetails, context: Mapping[str, Any]) -> str:
    match error["type"]:
        case "refused":
            return str(context["would_do"])
        case "greater_than_equal" | "greater_than":
            return f"{context.get('ge', context.get('gt')):g} or more"
        case "less_than_equal" | "less_than":
            return f"{context.get('le', context.get('lt')):g} or less"
        case "too_long" | "string_too_long":
            what = "marks" if error["type"] == "string_too_long" else "entries"
            return f"at most {context['max_length']} {what}"
        case "too_short":
            return f"at least {context['min_length']}"
        case "model_type" | "model_attributes_type" | "dict_type":
            return _table_words(tuple(error["loc"]))
        case kind:
            return _TYPES.get(kind, "another value")


def _table_words(path: Path) -> str:
    """What a table looks like where another kind of value stands."""
    if path and isinstance(path[-1], int):
        return 'a table in braces, such as { cut = "2 1/2", fabric = "Oat" }'
    return f"a table headed [{path[-1]}]" if path else "tables"


def _instead(path: Path) -> str:
    """What an unknown key may have been meant to be."""
    *above, key = path
    here = _keys_at(tuple(above))
    top = _keys_at(())
    close = get_close_matches(str(key).casefold(), here, n=1, cutoff=0.7)
    if _OTHER_WORDS.get(str(key)) in here:
        close = [_OTHER_WORDS[str(key)]]
    if close:
        return f'"{close[0]}" (did you mean that?)'
    if above and key in top:
        return f'"{key}" at the top of the file, above the first [table],'
    homes = [name for name in top if key in _keys_at((name,))]
    if homes:
        return f'"{key}" under [{homes[0]}]'
    close = get_close_matches(str(key).casefold(), top, n=1, cutoff=0.7)
    return f'"{close[0]}" (did you mean that?)' if close else f"one of {', '.join(here)}"


def _keys_at(path: Path) -> tuple[str, ...]:
    """The keys a table of the file format knows."""
    model: Any = Project
    for part in path:
        if isinstance(part, int):
            continue
        field = model.model_fields.get(part) if _is_model(model) else None
        model = None if field is None else _model_in(field.annotation)
    return tuple(written_keys(model).values()) if _is_model(model) else ()


def _is_model(kind: object) -> bool:
    return isinstance(kind, type) and issubclass(kind, BaseModel)


def _model_in(annotation: object) -> object:
    """The model a field holds, alone, in a list or as one of two."""
    if _is_model(annotation):
        return annotation
    return next((found for part in get_args(annotation) if (found := _model_in(part)) is not None), None)


def _cut(text: str) -> str:
    """A text cut short when it is endless."""
    plain = "".join(mark if mark.isprintable() else "�" for mark in text)
    return plain if len(plain) <= _SHOWN else plain[:_SHOWN] + "…"
