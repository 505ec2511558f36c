from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.errors import ProjectFileError
from stitchflip.project import Change, Project, apply_changes, edit_project, read_project, write_project
from tests.project.drafts import MAT
from tests.project_strategies import projects

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))


def test_only_the_value_changes() -> None:
    """Every letter but those of the value stays: notes, spaces, order."""
    edited = edit_project(MAT, [Change(("rounds", 1, "cut"), "2¾ in")])

    assert MAT.replace('cut = "2 1/2"', 'cut = "2 3/4"') == edited


def test_a_note_beside_a_value_stays_beside_it() -> None:
    """The note after a changed value stays where it was."""
    edited = edit_project(MAT, [Change(("squared_up", "wide"), "17 1/2"), Change(("name",), "Tray")])

    assert MAT.replace('wide = "18" ', 'wide = "17 1/2" ').replace('"Mat"', '"Tray"') == edited


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_an_edit_that_changes_nothing_gives_the_same_bytes(path: Path) -> None:
    """An example is byte for byte the same after no change, and after writing what stands there."""
    text = path.read_bytes().decode()
    name = read_project(text).name

    assert text == edit_project(text, [])
    assert text == edit_project(text, [Change(("name",), name)])


@pytest.mark.parametrize("line_end", ["\n", "\r\n"])
def test_line_ends_and_byte_order_mark_stay(line_end: str) -> None:
    """A file from another system keeps its line ends and its first mark."""
    text = "\ufeff" + MAT.replace("\n", line_end)

    assert text.replace('long = "13"', 'long = "14"') == edit_project(text, [Change(("squared_up", "long"), "14")])


def test_a_missing_table_is_added_at_the_end() -> None:
    """What the file does not have yet comes after everything else, in a table of its own."""
    edited = edit_project(MAT, [Change(("my_numbers", "seam"), "7/32 in")])

    assert MAT == edited[: len(MAT)]
    assert ["[my_numbers]", 'seam = "7/32"'] == edited[len(MAT) :].split("\n")[-3:-1]


def test_a_missing_key_joins_its_table() -> None:
    """A new value of a table that is there stands in that table."""
    edited = edit_project(MAT, [Change(("center", "turned"), "on point")])

    assert re.search(r'fabric = "Oat"\nturned = 45\.0\n\n\[\[fabrics]]', edited)


def test_a_key_at_the_top_stays_above_the_tables() -> None:
    """A key of the whole project may not slip into the last table."""
    edited = edit_project(MAT, [Change(("way_of_working",), "trim as you go"), Change(("how_many",), "4")])

    project = read_project(edited)
    assert (4, "trim as you go") == (project.how_many, project.working)
    assert 'way_of_working = "trim as you go"' in edited


def test_rounds_are_added_in_either_style() -> None:
    """A new round joins a list in brackets as well as tables with double brackets."""
    round_added = Change(("rounds", 2), '{ cut = "3", fabric = "Brass" }')
    tables = MAT.replace(MAT[MAT.index("rounds") : MAT.index("[squared_up]")], "")
    tables += '\n[[rounds]]\ncut = "2"\n\n[[rounds]]\ncut = "2 1/2"  # lighter\n'

    for text in (MAT, tables):
        rounds = read_project(edit_project(text, [round_added])).rounds
        assert (3, "Brass") == (len(rounds), rounds[2].fabric)
    assert "# lighter" in edit_project(tables, [round_added])


def test_what_was_measured_can_be_written_into_a_file_without_readings() -> None:
    """The first reading makes its own list."""
    change = Change(("readings", 0), '{ after = 4, side = "top", edge = "5 1/8" }')

    (reading,) = read_project(edit_project(MAT, [change])).readings

    assert (4, "top", 5.125) == (reading.after, reading.side, reading.edge.inches)


def test_a_value_can_be_taken_out() -> None:
    """Taking a value out takes its line out and nothing else."""
    assert MAT.replace('about = "For Ida"\n', "") == edit_project(MAT, [Change(("about",), None)])
    assert MAT == edit_project(MAT, [Change(("base", "wide"), None)])


def test_the_other_spelling_of_a_key_is_found_and_kept() -> None:
    """A file that says centre keeps saying so."""
    british = MAT.replace("[center]", "[centre]")

    edited = edit_project(british, [Change(("center", "cut"), "5")])

    assert british.replace('cut = "6"', 'cut = "5"') == edited


QUILT = """
[joined]          # six of them
across = 2        # in a row
down = 1
fabric = "Oat"    # pale
measured = [
    ["13", ["13", "12 7/8"]],   # the second is short
]

# the kinds
[[blocks]]
name = "Lit window"   # faces the sea

[[blocks]]
name = "Dark shed"
[blocks.center]       # its lamp
cut = "5"
fabric = "Brass"

[[borders]]           # the only one
cut = "3"
fabric = "Oat"
"""


@pytest.mark.parametrize(
    ("change", "old", "new"),
    [
        (Change(("joined", "across"), "2"), "across = 2 ", "across = 2 "),
        (Change(("joined", "measured", 0, 1, 1), "12¾ in"), '["13", "12 7/8"]', '["13", "12 3/4"]'),
        (Change(("joined", "measured", 0, 1), "13"), '["13", "12 7/8"]', '"13"'),
        (Change(("blocks", 1, "center", "cut"), "4½ in"), 'cut = "5"', 'cut = "4 1/2"'),
        (Change(("blocks", 0, "name"), "Window"), '"Lit window"', '"Window"'),
        (Change(("borders", 0, "cut"), "2 in"), 'cut = "3"\nfabric', 'cut = "2"\nfabric'),
    ],
)
def test_only_the_value_of_a_quilt_changes(change: Change, old: str, new: str) -> None:
    """Notes beside blocks, borders and measured lists stay where they are."""
    assert MAT + QUILT.replace(old, new) == edit_project(MAT + QUILT, [change])


@pytest.mark.parametrize(
    "change",
    [
        Change(("joined", "folded_cut"), "2 1/8"),
        Change(("blocks", 1, "rounds"), '[{ cut = "3", fabric = "Oat" }]'),
        Change(("blocks", 0, "center"), '{ cut = "3", fabric = "Oat" }'),
        Change(("blocks", 1, "center", "turned"), "on point"),
        Change(("blocks", 2), '{ name = "Jetty", building = { way = "string block" } }'),
        Change(("borders", 1), '{ cut = "2", fabric = "Brass" }'),
        Change(("extras", "label"), "corner"),
        Change(("squared_up", "after_washing"), "true"),
    ],
)
def test_what_is_added_to_a_quilt_takes_nothing_away(change: Change) -> None:
    """Every line that was there is still there, and the file reads as the changed project."""
    text = MAT + QUILT

    edited = edit_project(text, [change])

    left = edited.split("\n")
    assert [] == [line for line in text.split("\n") if line not in left]
    assert apply_changes(read_project(text), [change]) == read_project(edited)


def test_a_quilt_is_added_in_tables_of_its_own() -> None:
    """Joined blocks come after everything else, borders in double brackets."""
    changes = [
        Change(("joined",), '{ across = 2, down = 3, fabric = "Oat" }'),
        Change(("borders",), '[{ cut = "3", fabric = "Oat" }, { cut = "2", fabric = "Brass" }]'),
    ]

    edited = edit_project(MAT, changes)

    assert MAT == edited[: len(MAT)]
    assert ["[joined]", "[[borders]]", "[[borders]]"] == re.findall(r"^\[.*", edited[len(MAT) :], flags=re.MULTILINE)


def test_a_file_with_mistakes_is_not_edited() -> None:
    """Nothing is written into a file that cannot be read."""
    with pytest.raises(ProjectFileError):
        edit_project(MAT.replace('"18"', '"18 in x 13 in"'), [Change(("name",), "Tray")])


CHANGES = st.sampled_from(
    [
        Change(("squared_up", "wide"), "12½ in"),
        Change(("squared_up", "wish_beyond_points"), "3/4 in"),
        Change(("base", "long"), "33 cm"),
        Change(("base", "spare_at_ends"), "1"),
        Change(("binding", "cut"), None),
        Change(("rounds", 0, "cut_long"), "13 1/4 in"),
        Change(("steps", 0, "cut"), "1 3/4 in"),
        Change(("my_numbers", "reach"), "0.6 in"),
        Change(("fabrics", 0, "usable_width"), "41 in"),
        Change(("fabrics", 0, "on_hand", 0), '{ wide = "9 in", long = "21 in" }'),
        Change(("building", "until_covered"), "true"),
        Change(("batting", "widest_gap"), "10 cm"),
        Change(("way_of_working",), "trim as you go"),
        Change(("name",), 'Two "words"'),
        Change(("joined", "shows"), "2 in"),
        Change(("joined", "measured", 0, 0), "13 in"),
        Change(("blocks", 0, "center", "cut"), "5 in"),
        Change(("blocks", 0, "count"), "1"),
        Change(("borders", 0, "cut"), "3 in"),
        Change(("cut_apart", "loss"), "1/4 in"),
        Change(("patches", 1, "line", 0, 1), "1/4 in"),
        Change(("extras", "sleeve"), "true"),
        Change(("binding", "edge"), "self-binding"),
        Change(("made_for", "hang"), "7 in"),
    ]
)


@settings(max_examples=40, deadline=None)
@given(projects(), st.lists(CHANGES, max_size=3))
def test_an_edited_file_reads_as_the_changed_project(project: Project, changes: list[Change]) -> None:
    """Editing the file and changing the project come to the same; a change the project refuses is refused."""
    text = write_project(project)
    try:
        expected = apply_changes(project, changes)
    except ProjectFileError:
        with pytest.raises(ProjectFileError):
            edit_project(text, changes)
        return

    assert expected == read_project(edit_project(text, changes))
