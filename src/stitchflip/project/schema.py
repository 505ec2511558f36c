"""The JSON Schema of a project file, for editors that help while one types.

It is made from the models and never written by hand. The copy in the package, `project.schema.json`, is
refreshed after a change of the models with

    python -m stitchflip.project.schema > src/stitchflip/project/project.schema.json

and a test tells when that was forgotten.
"""

from __future__ import annotations

import json
from typing import Any

from stitchflip.project.model import Project

Raw = Any
"""A part of a JSON document of any kind."""


def project_schema() -> dict[str, Any]:
    """The JSON Schema (draft 2020-12) of a project file, every key described.

    Returns:
        The schema; lengths are texts or numbers.

    Example:
        >>> project_schema()["properties"]["how_many"]["maximum"]
        24
    """
    schema = Project.model_json_schema()
    _tidy(schema)
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **schema,
        "title": "A stitchflip project file",
        "description": "One piece made by quilt-as-you-go, as its maker writes it down. Bare numbers count in the "
        "project's units; texts may be lengths such as 2 1/2, 2½ in, 6.5 cm or 1 1/8 yd.",
    }


def _tidy(part: Raw) -> None:
    """Take out what helps nobody: titles that repeat the key, and usual values that are nothing or a whole table."""
    if isinstance(part, list):
        for one in part:
            _tidy(one)
    elif isinstance(part, dict):
        if isinstance(part.get("title"), str):
            del part["title"]
        if isinstance(part.get("default"), dict | None):
            part.pop("default", None)
        _without_null(part)
        for value in part.values():
            _tidy(value)


def _without_null(part: dict[str, Any]) -> None:
    """A key that may be left out may not be null: TOML has no such value."""
    choices = [one for one in part.pop("anyOf", ()) if one != {"type": "null"}]
    if len(choices) > 1:
        part["anyOf"] = choices
    for only in choices if len(choices) == 1 else ():
        for key, value in only.items():
            part.setdefault(key, value)


def schema_text() -> str:
    """The schema as its file holds it."""
    return json.dumps(project_schema(), ensure_ascii=False, indent=2) + "\n"


if __name__ == "__main__":
    import sys

    sys.stdout.write(schema_text())
