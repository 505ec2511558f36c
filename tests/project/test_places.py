from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings

from stitchflip.project import Project, write_project
from stitchflip.project.places import places_in
from tests.project_strategies import projects

TEXT = '''\
# a note with [brackets] = "and quotes"
name = "Porch"           # 2
"odd key".inner = 3      # 3
about = """
two # no note
lines"""                 # begins on 4
rounds = [               # 7
    { cut = "2", fabrics = ["Oat", "Brass"] },
    # between
    { cut = "2 1/2" }, { cut = 'three "x"' },
]
[base]                   # 12
wide = 20.5
[center.extra]           # 14
cut = 1979-05-27 07:32:00
[[fabrics]]              # 16
name = "Oat"
[[fabrics.on_hand]]      # 18
wide = "9"
[[fabrics.on_hand]]      # 20
wide = """a""b""""
[[fabrics]]              # 22
name = "Brass"
[fabrics.more]           # 24
price = 1
[[blocks]]               # 26
[[blocks]]
[blocks.center]          # 28
cut = "5"
[[blocks.rounds]]        # 30
cut = "2"
[[blocks.rounds]]        # 32
cuts = ["2", "3"]
[joined]                 # 34
measured = [
    ["13", [12.5, "13"]],  # 36
]
'''


@pytest.mark.parametrize(
    ("path", "line", "written"),
    [
        (("name",), 2, '"Porch"'),
        (("odd key",), 3, None),
        (("odd key", "inner"), 3, "3"),
        (("about",), 4, '"""\ntwo # no note\nlines"""'),
        (("rounds",), 7, None),
        (("rounds", 0), 8, None),
        (("rounds", 0, "cut"), 8, '"2"'),
        (("rounds", 0, "fabrics", 1), 8, '"Brass"'),
        (("rounds", 1, "cut"), 10, '"2 1/2"'),
        (("rounds", 2, "cut"), 10, "'three \"x\"'"),
        (("base",), 12, None),
        (("base", "wide"), 13, "20.5"),
        (("center", "extra"), 14, None),
        (("center", "extra", "cut"), 15, "1979-05-27 07:32:00"),
        (("fabrics",), 16, None),
        (("fabrics", 0), 16, None),
        (("fabrics", 0, "on_hand", 1), 20, None),
        (("fabrics", 0, "on_hand", 1, "wide"), 21, '"""a""b""""'),
        (("fabrics", 1), 22, None),
        (("fabrics", 1, "name"), 23, '"Brass"'),
        (("fabrics", 1, "more", "price"), 25, "1"),
        (("blocks", 0), 26, None),
        (("blocks", 1, "center", "cut"), 29, '"5"'),
        (("blocks", 1, "rounds", 1), 32, None),
        (("blocks", 1, "rounds", 1, "cuts", 1), 33, '"3"'),
        (("joined", "measured", 0), 36, None),
        (("joined", "measured", 0, 1, 0), 36, "12.5"),
    ],
)
def test_every_key_has_its_line_and_every_value_its_text(
    path: tuple[str | int, ...], line: int, written: str | None
) -> None:
    """Lines counted by hand in the text above; tables and lists have no text of their own."""
    found = places_in(TEXT)

    assert (line, written) == (found.line_of[path], found.text_of.get(path))


def test_what_is_missing_is_near_the_table_that_lacks_it() -> None:
    """A missing key is looked for at its table, a missing table nowhere."""
    found = places_in(TEXT)

    assert (16, 8, None) == (
        found.near(("fabrics", 0, "color")),
        found.near(("rounds", 0, "fabric")),
        found.near(("binding", "fabric")),
    )


def _leaves(value: Any, path: tuple[str | int, ...] = ()) -> dict[tuple[str | int, ...], Any]:
    """Every value that is no list and no table."""
    if isinstance(value, dict):
        return {at: leaf for key, one in value.items() for at, leaf in _leaves(one, (*path, key)).items()}
    if isinstance(value, list):
        return {at: leaf for place, one in enumerate(value) for at, leaf in _leaves(one, (*path, place)).items()}
    return {path: value}


def _agree(text: str) -> None:
    """The places are those of the values a TOML reader finds, and each text reads as its value on its line."""
    found = places_in(text)
    leaves = _leaves(tomllib.loads(text))
    lines = text.split("\n")

    assert set(leaves) == set(found.text_of)
    for path, value in leaves.items():
        assert value == tomllib.loads(f"x = {found.text_of[path]}")["x"]
        assert found.text_of[path].split("\n")[0] in lines[found.line_of[path] - 1]


@settings(max_examples=40, deadline=None)
@given(projects())
def test_places_agree_with_the_values_of_any_project(project: Project) -> None:
    """Two readers, one for values and one for places, see the same file."""
    _agree(write_project(project))


@pytest.mark.parametrize(
    "path", sorted((Path(__file__).parents[2] / "examples").glob("*.toml")), ids=lambda path: path.stem
)
def test_places_agree_with_the_values_of_the_examples(path: Path) -> None:
    """As for any project, in files written by hand."""
    _agree(path.read_text(encoding="utf-8"))


def test_places_agree_with_the_values_of_the_text_above() -> None:
    """As for any project, with every way TOML has to write a value."""
    _agree(TEXT)


def test_lists_without_end_have_no_places_and_do_no_harm() -> None:
    """Deeper than anybody writes, the walk gives up quietly."""
    found = places_in("x = " + "[" * 200 + "]" * 200 + "\ny = 1\n")

    assert 1 == found.line_of["x",]
