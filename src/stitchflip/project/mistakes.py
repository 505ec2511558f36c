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
from stitchflip.project.kinds import LISTS_OF_TABLES, written_keys
from stitchflip.project.model import Project
from stitchflip.project.quilt import FORMS

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

    from stitchflip.project.places import Places

Path = tuple[str | int, ...]
Raw = Any
"""A value of any kind a project file can hold."""

_SHOWN = 60
"""So much of what a maker wrote is shown."""
_SHOWN_IN_WORDS = 200
"""So much of a sentence of ours that may have her words in it."""
_HEADED = ("fabrics", "blocks", "borders")
"""Lists whose tables are written under heads of their own, not in braces."""

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
    "string_too_short": "a text with something in it",
}
"""Error type -> what would do."""

_A_LIST = 'a list in brackets, such as ["Oat", "Brass"]'
_A_PLACE = "a place in brackets, such as [1.5, -1]"
_LISTS: dict[tuple[str, int], str] = {
    ("at", 0): _A_PLACE,
    ("off_center", 0): _A_PLACE,
    ("line", 0): "two places in brackets, such as [[-3, 0], [3, 1]]",
    ("line", 1): _A_PLACE,
    ("center.corners", 0): "places in brackets, such as [[-3, -2], [3, -2], [0, 3]]",
    ("center.corners", 1): _A_PLACE,
    ("building.corners", 0): 'corners in brackets, such as ["upper left", "lower right"]',
    ("first_pair", 0): 'two sides in brackets, such as ["left", "right"]',
    ("light_sides", 0): 'sides in brackets, such as ["top", "right"]',
    ("cuts", 0): 'widths in brackets, such as ["2", "2 1/2"]',
    ("on_hand", 0): 'pieces in brackets, such as [{ wide = "18", long = "21" }]',
    ("measured", 0): 'rows in brackets, such as [["13", "12 7/8"], ["13", "13"]]',
    ("measured", 1): 'a row in brackets, such as ["13", "12 7/8"]',
    ("places", 0): 'rows in brackets, such as ["1 2 1 2", "2 1 2 1"]',
}
"""Key of a list, and how deep in it -> what would do where something else stands."""

_ROWS = {
    "steps": '{ side = "top", cut = "2 1/2", fabric = "Oat" }',
    "patches": '{ fabric = "Oat", line = [[-3, 0], [3, 1]] }',
    "readings": '{ after = 4, side = "top", edge = "5 1/8" }',
    "short_strips": '{ step = 4, long = "9" }',
    "on_hand": '{ wide = "18", long = "21" }',
}
"""Key of a list of tables -> one of them in braces."""

_MISSING: dict[Path, str] = {
    ("name",): 'a name, such as name = "Porch runner"',
    ("fabrics", "name"): 'a name, such as name = "Oat"',
    ("blocks", "name"): 'a name, such as name = "Lit window"',
    ("joined", "across"): "the blocks in a row, such as across = 4",
    ("joined", "down"): "the blocks in a column, such as down = 5",
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
    "diameter": "across",
    "radius": "corner_radius",
    "columns": "across",
    "rows": "down",
    "angle": "slant",
    "corner": "corner_fabric",
    "squares": "corner_fabric",
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
            found.setdefault(_place_of(error), error)
    for one in agreeing:
        found.setdefault(one.path, one)
    last = max(places.line_of.values(), default=0) + 1
    ordered = sorted(found.items(), key=lambda entry: places.near(entry[0]) or last)
    return [_in_words(path, wrong, data, places) for path, wrong in ordered[: MOST_MISTAKES + 1]]


def _place_of(error: ErrorDetails) -> Path:
    """Where a refused value stands in the file, without the form that a measured block was taken for."""
    place = error["loc"]
    return tuple(part for part in place if part not in FORMS) if "measured" in place else tuple(place)


def _in_words(path: Path, wrong: ErrorDetails | Disagreement, data: Mapping[str, Any], places: Places) -> Mistake:
    if isinstance(wrong, Disagreement):
        return Mistake(places.near(path), key_of(path), _cut(wrong.found, _SHOWN_IN_WORDS), wrong.would_do)
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
        keys = tuple(part for part in path if isinstance(part, str))
        would_do = _MISSING.get(keys) or _MISSING.get(path[-1:]) or usual
        return Mistake(places.near(path), key_of(path), "nothing", would_do)
    context = error.get("ctx", {})
    wrong = f" ({context['wrong']})" if kind == "refused" and context["wrong"] else ""
    would_do = _would_do(path, error, context)
    return Mistake(places.near(path), key_of(path), _as_written(path, data, places) + wrong, would_do)


def _as_written(path: Path, data: Mapping[str, Any], places: Places) -> str:
    if path in places.text_of:
        return _cut(" ".join(places.text_of[path].split()))
    value = _at(data, path)
    if isinstance(value, Mapping):
        return "a table"
    if isinstance(value, list):
        return f"a list of {len(value)}" if value else "an empty list"
    return _cut(f'"{value}"' if isinstance(value, str) else str(value))


def _would_do(path: Path, error: ErrorDetails, context: Mapping[str, Any]) -> str:
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
            return _table_words(path)
        case "tuple_type":
            return _list_words(path)
        case kind:
            return _TYPES.get(kind, "another value")


def _table_words(path: Path) -> str:
    """What a table looks like where another kind of value stands."""
    if not path:
        return "tables"
    if not isinstance(path[-1], int):
        return f"a table headed [{_head(path)}]"
    key = str(path[-2])
    if key in _HEADED:
        return f"a table headed [[{_head(path[:-1])}]]"
    return f"""a table in braces, such as {_ROWS.get(key, '{ cut = "2 1/2", fabric = "Oat" }')}"""


def _head(path: Path) -> str:
    """The words between the brackets of a table's head."""
    return ".".join(part for part in path if isinstance(part, str))


def _list_words(path: Path) -> str:
    """What a list looks like where another kind of value stands."""
    *keys, key = [part for part in path if isinstance(part, str)] or [""]
    deep = len(path) - 1 - max((place for place, part in enumerate(path) if part == key), default=0)
    whole = f"{keys[-1]}.{key}" if keys else key
    known = _LISTS.get((whole, deep)) or _LISTS.get((key, deep))
    if known is None and deep == 0 and _keys_at(path):
        return f"tables headed [[{_head(path)}]], one for each"
    return known or _A_LIST


def _instead(path: Path) -> str:
    """What an unknown key may have been meant to be."""
    *above, key = path
    here = _keys_at(tuple(above))
    top = _keys_at(())
    homes = sorted((name for name in top if key in _keys_at((name,))), key=LISTS_OF_TABLES.__contains__)
    if homes and not above:
        return _home(str(key), homes[0])
    close = get_close_matches(str(key).casefold(), here, n=1, cutoff=0.7)
    if _OTHER_WORDS.get(str(key)) in here:
        close = [_OTHER_WORDS[str(key)]]
    if close:
        return f'"{close[0]}" (did you mean that?)'
    if above and key in top:
        return f'"{key}" at the top of the file, above the first [table],'
    if homes:
        return _home(str(key), homes[0])
    close = get_close_matches(str(key).casefold(), top, n=1, cutoff=0.7)
    return f'"{close[0]}" (did you mean that?)' if close else f"one of {', '.join(here)}"


def _home(key: str, table: str) -> str:
    """A key under the head of the table that has it."""
    return f'"{key}" under [[{table}]]' if table in LISTS_OF_TABLES else f'"{key}" under [{table}]'


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


def _cut(text: str, most: int = _SHOWN) -> str:
    """A text cut short when it is endless."""
    plain = "".join(mark if mark.isprintable() else "�" for mark in text)
    return plain if len(plain) <= most else plain[:most] + "…"
