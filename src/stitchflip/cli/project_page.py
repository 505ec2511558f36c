"""The page of the project file: every key a maker may write, made from the schema that the reader itself uses."""

from __future__ import annotations

import json
import re
from typing import TYPE_CHECKING, Any, TypeAlias

if TYPE_CHECKING:
    from collections.abc import Iterator

Schema: TypeAlias = dict[str, Any]

_HEAD = """\
# The project file

One project is one [TOML](https://toml.io) file. Write it with any editor; notes after a # and the order of the
keys stay when the program changes a value. Lengths are written as you say them: "2 1/2", "2½ in", "6.5 cm",
"1 1/8 yd"; a number without a unit is in the project's own. The shortest way to a file is `stitchflip new NAME`.

A table is written `[squared_up]`, a list of tables `[[rounds]]`. This page is made from the JSON Schema in
`src/stitchflip/project/project.schema.json`.
"""


def project_page() -> str:
    """Every table of the project file with its keys."""
    from stitchflip.project import project_schema

    schema = project_schema()
    tables = {key: found for key, entry in schema["properties"].items() if (found := _table_of(entry))}
    lines = [_HEAD, "## At the top of the file", "", *_keys(schema, schema, leave_out=set(tables))]
    told: set[str] = set()
    for key, (name, is_list) in tables.items():
        lines += _section(schema, f"[[{key}]]" if is_list else f"[{key}]", name, told)
    return "\n".join(lines) + "\n"


def _table_of(entry: Schema) -> tuple[str, bool] | None:
    """The model an entry stands for, and whether it is a list of them; None for a plain value."""
    for candidate, is_list in ((entry, False), (entry.get("items", {}), True)):
        options = [candidate, *candidate.get("anyOf", ())]
        names = [option["$ref"].rsplit("/", 1)[1] for option in options if "$ref" in option]
        if names:
            return names[0], is_list
    return None


def _section(schema: Schema, title: str, name: str, told: set[str]) -> Iterator[str]:
    """One table; the tables inside it follow it once."""
    model = schema["$defs"][name]
    if "properties" not in model or name in told:
        return
    told.add(name)
    yield from (
        "",
        f"## {title}",
        "",
        model.get("description", "").split("\n\n")[0],
        "",
        *_keys(schema, model, leave_out=set()),
    )
    for key, entry in model["properties"].items():
        inside = _table_of(entry)
        if inside is not None:
            yield from _section(schema, f"{key}, in {title}", inside[0], told)


def _keys(schema: Schema, model: Schema, *, leave_out: set[str]) -> Iterator[str]:
    yield from ("| key | what may stand there | left out | meaning |", "|---|---|---|---|")
    needed = set(model.get("required", ()))
    for key, entry in model["properties"].items():
        if key in leave_out and "enum" not in _model(schema, entry):
            continue
        value = "must be there" if key in needed else _default(entry)
        yield f"| `{key}` | {_allowed(schema, entry)} | {value} | {_meaning(schema, entry)} |"


def _model(schema: Schema, entry: Schema) -> Schema:
    """What a reference stands for; the entry itself when it is none."""
    found: Schema = schema["$defs"][entry["$ref"].rsplit("/", 1)[1]] if "$ref" in entry else entry
    return found


def _default(entry: Schema) -> str:
    value = entry.get("default")
    if value is None or value in ("", [], {}):
        return ""
    return f"`{json.dumps(value, ensure_ascii=False)}`"


def _meaning(schema: Schema, entry: Schema) -> str:
    text: str = entry.get("description") or _model(schema, entry).get("description", "")
    return " ".join(text.split()).replace("|", "or")


def _allowed(schema: Schema, entry: Schema) -> str:
    """What may stand there, in a few words."""
    if "properties" in _model(schema, entry):
        head = _head(schema, entry, is_list=False)
        return f"a table, as `{head}`" if head else "a table"
    entry = _model(schema, entry)
    kinds = {option.get("type") for option in entry.get("anyOf", ())}
    if kinds == {"string", "number"} and entry.get("examples"):
        return "a length"
    if "enum" in entry:
        return ", ".join(f"`{json.dumps(value)}`" for value in entry["enum"])
    if "anyOf" in entry:
        return " or ".join(dict.fromkeys(_allowed(schema, option) for option in entry["anyOf"]))
    if "const" in entry:
        return f"`{json.dumps(entry['const'])}`"
    number = f"number{_range(entry)}"
    kind = entry.get("type", "string")
    if entry.get("type") == "array":
        return _several(schema, entry)
    return {
        "integer": f"a whole {number}",
        "number": f"a {number}",
        "boolean": "`true` or `false`",
    }.get(kind, "text")


def _head(schema: Schema, entry: Schema, *, is_list: bool) -> str:
    """The head under which a table of this kind is told; nothing for one that has no section of its own."""
    for key, top in schema["properties"].items():
        found = _table_of(top)
        if found is not None and found == (entry["$ref"].rsplit("/", 1)[1], is_list):
            return f"[[{key}]]" if is_list else f"[{key}]"
    return ""


def _several(schema: Schema, entry: Schema) -> str:
    """What a list holds: two of something, or any number."""
    if "prefixItems" in entry:
        return _two(schema, entry["prefixItems"])
    item = entry["items"]
    if "properties" in _model(schema, item):
        head = _head(schema, item, is_list=True)
        return f"a list of tables, as `{head}`" if head else "a list of tables"
    inside = _plural(_allowed(schema, item))
    return f"a list of {re.sub('^lists of', 'rows of', inside)}"


def _two(schema: Schema, pair: list[Schema]) -> str:
    """Two values that belong together, in brackets."""
    kinds = [_allowed(schema, one) for one in pair]
    known = {"a length": "`[wide, long]`", "a number or text": _PLACE, _PLACE: "two places"}
    return known.get(kinds[0]) or f"two {_plural(kinds[0])}"


_PLACE = "a place `[right, up]`"


def _plural(kind: str) -> str:
    """Several of what may stand there.

    Example:
        >>> _plural("a length"), _plural("text")
        ('lengths', 'texts')
    """
    return re.sub(r"^(?:a )?(\w+)", r"\1s", kind)


def _range(entry: Schema) -> str:
    low, high = entry.get("minimum", entry.get("exclusiveMinimum")), entry.get("maximum", entry.get("exclusiveMaximum"))
    if low is not None and high is not None:
        return f", {_plain(low)} to {_plain(high)}"
    if low is not None:
        return f", {'above' if 'exclusiveMinimum' in entry else 'from'} {_plain(low)}"
    return f", up to {_plain(high)}" if high is not None else ""


def _plain(number: float) -> str:
    """A number without powers of ten."""
    return f"{number:,.0f}" if number == int(number) else f"{number:g}"
