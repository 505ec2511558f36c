from __future__ import annotations

import json
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings

import stitchflip.project
from stitchflip.project import Project, project_schema, write_project
from stitchflip.project.schema import schema_text
from tests.project_strategies import projects

FILE = Path(stitchflip.project.__file__).parent / "project.schema.json"
EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))


def test_the_schema_in_the_package_is_that_of_the_models() -> None:
    """Refresh it with: python -m stitchflip.project.schema > src/stitchflip/project/project.schema.json."""
    assert FILE.read_text(encoding="utf-8") == schema_text()


def _parts(schema: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    """Every key of the file format and what the schema says about it."""
    yield from schema["properties"].items()
    for name, part in schema["$defs"].items():
        for key, says in part.get("properties", {}).items():
            yield f"{name}.{key}", says


def test_every_key_of_the_file_is_described() -> None:
    """An editor can show what each key is for: its own words, or those of the table it holds."""
    schema = project_schema()
    silent = [
        key
        for key, says in _parts(schema)
        if not (says.get("description") or schema["$defs"][says["$ref"].rpartition("/")[2]].get("description"))
    ]

    assert not silent


def test_no_key_may_stand_for_nothing_or_be_unknown() -> None:
    """TOML has no null, and a key nobody knows is refused everywhere."""
    schema = project_schema()

    assert '"null"' not in json.dumps(schema)
    assert all(part.get("additionalProperties") is False for part in schema["$defs"].values() if "properties" in part)
    assert schema["additionalProperties"] is False


def _fits(value: Any, schema: dict[str, Any], root: dict[str, Any]) -> bool:  # noqa: PLR0911
    """A small reader of the part of JSON Schema that is used here, apart from the library that wrote it."""
    if "$ref" in schema:
        return _fits(value, root["$defs"][schema["$ref"].rpartition("/")[2]], root)
    if "anyOf" in schema:
        return any(_fits(value, one, root) for one in schema["anyOf"])
    if "enum" in schema:
        return value in schema["enum"]
    match schema["type"]:
        case "object":
            known = schema["properties"]
            return (
                isinstance(value, dict)
                and set(schema.get("required", ())) <= set(value) <= set(known)
                and all(_fits(one, known[key], root) for key, one in value.items())
            )
        case "array":
            if not isinstance(value, list) or len(value) > schema.get("maxItems", len(value)):
                return False
            items = schema.get("prefixItems") or [schema["items"]] * len(value)
            return len(items) == len(value) and all(
                _fits(one, item, root) for one, item in zip(value, items, strict=True)
            )
        case "string":
            return isinstance(value, str) and schema.get("minLength", 0) <= len(value) <= schema.get("maxLength", 10**6)
        case "boolean":
            return isinstance(value, bool)
        case "integer" | "number" as kind:
            return (
                isinstance(value, int if kind == "integer" else int | float)
                and not isinstance(value, bool)
                and schema.get("minimum", value) <= value <= schema.get("maximum", value)
            )
        case _:
            raise AssertionError(schema)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_the_examples_fit_the_schema(path: Path) -> None:
    """What the tool reads, an editor with the schema does not mark."""
    schema = project_schema()

    assert _fits(tomllib.loads(path.read_text(encoding="utf-8")), schema, schema)


@settings(max_examples=50, deadline=None)
@given(projects())
def test_written_projects_fit_the_schema(project: Project) -> None:
    """What the tool writes, an editor with the schema does not mark."""
    schema = project_schema()

    assert _fits(tomllib.loads(write_project(project)), schema, schema)


QUILT = """
name = "Mat"
rounds = [{ cut = "2", fabric = "Oat" }]
squared_up = { wide = "13", long = "13" }
center = { cut = "6", fabric = "Oat" }
patches = [{ fabric = "Oat" }, { fabric = "Oat", line = [[-3, 0], [3, "1 1/2"]] }]
fabrics = [{ name = "Oat" }]
binding = { edge = "self-binding", shows = "1/2" }
[joined]
across = 2
down = 1
measured = [["13", ["13", 12.5]]]
[[blocks]]
name = "Lit"
center = { cut = "6", fabric = "Oat" }
[[borders]]
cut = "3"
fabric = "Oat"
corners = "mitered"
"""


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("across = 2", "across = 0"),
        ("down = 1", ""),
        ('["13", 12.5]', '["13"]'),
        ('["13", 12.5]', '["13", true]'),
        ('measured = [["13"', 'measured = ["13", ["13"'),
        (', [3, "1 1/2"]', ""),
        ('[3, "1 1/2"]', "[3, 1, 2]"),
        ('"self-binding"', '"fringe"'),
        ('"mitered"', '"mitred"'),
        ('name = "Lit"', 'title = "Lit"'),
        ('name = "Lit"', 'name = "Lit"\nwide = "3"'),
        ('center = { cut = "6", fabric = "Oat" }\n[[borders]]', 'center = { cut = "6" }\n[[borders]]'),
    ],
)
def test_the_schema_marks_what_is_wrong_in_a_quilt(old: str, new: str) -> None:
    """Lists in lists, places, words, and keys of the tables of a quilt."""
    schema = project_schema()
    assert old in QUILT

    assert _fits(tomllib.loads(QUILT), schema, schema)
    assert not _fits(tomllib.loads(QUILT.replace(old, new, 1)), schema, schema)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("how_many = 4", "how_many = 25"),
        ('way = "courthouse steps"', 'way = "barn raising"'),
        ('shape = "rectangle"', 'shappe = "rectangle"'),
        ('finish = "machine"', "finish = 3"),
        ("one_way = true", 'one_way = "sure"'),
    ],
)
def test_the_schema_marks_what_the_reader_refuses(old: str, new: str) -> None:
    """A count, a word, a key, a kind of value."""
    text = (EXAMPLES[0].parent / "morning-tray.toml").read_text(encoding="utf-8")
    assert old in text

    schema = project_schema()

    assert not _fits(tomllib.loads(text.replace(old, new)), schema, schema)
