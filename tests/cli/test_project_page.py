"""The page of the project file: every key, and what may stand there in a maker's words."""

from __future__ import annotations

import re

import pytest

from stitchflip.cli.project_page import project_page
from stitchflip.project import project_schema


def rows(head: str) -> dict[str, list[str]]:
    """The keys of one section, each with what may stand there, what holds when left out, and the meaning."""
    section = re.split(r"^## ", project_page(), flags=re.MULTILINE)
    (found,) = [part for part in section if part.startswith(f"{head}\n")]
    cells = [line.strip("| ").split(" | ") for line in found.split("\n") if line.startswith("| `")]
    return {cell[0].strip("`"): cell[1:] for cell in cells}


@pytest.mark.parametrize(
    ("head", "key", "allowed"),
    [
        ("[joined]", "across", "a whole number, 1 to 60"),
        ("[joined]", "measured", "a list of rows of lengths or `[wide, long]`"),
        ("[joined]", "places", "a list of texts"),
        ("[[patches]]", "line", "two places"),
        ("[[patches]]", "at", "a place `[right, up]`"),
        ("[center]", "corners", "a list of places `[right, up]`"),
        ("[[blocks]]", "center", "a table, as `[center]`"),
        ("[[blocks]]", "rounds", "a list of tables, as `[[rounds]]`"),
        ("[[blocks]]", "count", "a whole number, 0 to 3,600"),
        ("[[fabrics]]", "on_hand", "a list of tables"),
        ("[building]", "first_pair", "two texts"),
        ("[building]", "seed", "a whole number, 0 to 1,000,000,000"),
        ("[[rounds]]", "cuts", "a list of lengths"),
        ("[binding]", "edge", '`"binding"`, `"self-binding"`, `"facing"`, `"turned through"`'),
    ],
)
def test_the_page_says_what_may_stand_there(head: str, key: str, allowed: str) -> None:
    """Lists, places and tables are told by what is in them."""
    assert allowed == rows(head)[key][0]


def test_every_table_of_the_file_has_a_section_with_all_its_keys() -> None:
    """No key of the file format is left out of the page."""
    schema = project_schema()
    heads = {"joined": "Joined", "cut_apart": "CutApart", "made_for": "MadeFor", "extras": "Extras"}
    lists = {"patches": "Patch", "blocks": "Block", "borders": "Border", "rounds": "Round", "fabrics": "Fabric"}
    titled = {f"[{key}]": name for key, name in heads.items()} | {f"[[{key}]]": name for key, name in lists.items()}

    assert {name: [*schema["$defs"][name]["properties"]] for name in titled.values()} == {
        name: [*rows(head)] for head, name in titled.items()
    }


def test_every_key_has_a_meaning() -> None:
    """A row without words helps nobody."""
    assert [] == [line for line in project_page().split("\n") if line.startswith("| `") and line.endswith("|  |")]
