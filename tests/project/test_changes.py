from __future__ import annotations

import pytest

from stitchflip.errors import ProjectFileError
from stitchflip.project import Change, Project, apply_changes, read_project
from stitchflip.project.model import CenterShape, Round
from tests.project.drafts import MAT


@pytest.fixture
def mat() -> Project:
    """A small mat in inches."""
    return read_project(MAT)


@pytest.mark.parametrize(
    ("path", "to", "expected"),
    [
        (("squared_up", "wide"), "17½ in", 17.5),
        (("squared_up", "wide"), "40 cm", 40 / 2.54),
        (("my_numbers", "seam"), "7/32", 7 / 32),
        (("base", "wide"), "20", 20.0),
        (("squared_up", "corner_radius"), "1 3/4", 1.75),
        (("binding", "cut"), "2 1/4", 2.25),
        (("my_numbers", "patch_extra"), "3/8", 0.375),
    ],
)
def test_a_length_is_written_where_the_path_leads(
    mat: Project, path: tuple[str, str], to: str, expected: float
) -> None:
    """The value at the path is the one written, read in the project's unit."""
    changed = apply_changes(mat, [Change(path, to)])

    assert expected == pytest.approx(getattr(getattr(changed, path[0]), path[1]).inches, abs=1e-4)


def test_nothing_else_changes(mat: Project) -> None:
    """Taking a change back gives the project one had, and the project itself never changes."""
    changed = apply_changes(mat, [Change(("rounds", 1, "cut"), "3")])

    assert mat == apply_changes(changed, [Change(("rounds", 1, "cut"), "2 1/2")])
    assert mat == read_project(MAT)


def test_numbers_words_and_yes_or_no_are_read_as_in_a_file(mat: Project) -> None:
    """Texts become the kinds of values their places hold."""
    changed = apply_changes(
        mat,
        [
            Change(("how_many",), "4"),
            Change(("building", "until_covered"), "true"),
            Change(("center", "turned"), "on point"),
            Change(("my_numbers", "draw_up"), "0.5 %"),
            Change(("way_of_working",), "trim as you go"),
            Change(("center", "off_center"), '["1 1/2", -0.5]'),
        ],
    )

    assert (4, True, 45.0, 0.005, "trim as you go", (1.5, -0.5)) == (
        changed.how_many,
        changed.building.until_covered,
        changed.center and changed.center.turned,
        changed.my_numbers.draw_up,
        changed.working,
        changed.center and changed.center.off_center,
    )


def test_a_round_can_be_added_and_taken_out(mat: Project) -> None:
    """A place one past the end adds, nothing to write takes out."""
    longer = apply_changes(mat, [Change(("rounds", 2), '{ cut = "2", fabric = "Oat" }')])
    shorter = apply_changes(mat, [Change(("rounds", 0), None)])

    assert Round.model_validate({"cut": "2", "fabric": "Oat"}) == longer.rounds[2]
    assert mat.rounds[1:] == shorter.rounds


def test_what_is_taken_out_has_its_usual_value(mat: Project) -> None:
    """Without its own value a place has the one it has in a file that leaves it out."""
    assert read_project(MAT.replace('about = "For Ida"\n', "")) == apply_changes(mat, [Change(("about",), None)])


def test_several_changes_together_may_pass_through_what_does_not_agree(mat: Project) -> None:
    """A center becomes a rectangle in three steps, of which the first two alone would be refused."""
    changed = apply_changes(
        mat,
        [
            Change(("center", "cut"), None),
            Change(("center", "shape"), "rectangle"),
            Change(("center", "cut_wide"), "6"),
            Change(("center", "cut_long"), "4"),
        ],
    )

    assert changed.center is not None
    assert CenterShape.RECTANGLE is changed.center.shape


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (Change(("squared_up", "wide"), "two"), "squared_up.wide"),
        (Change(("squared_up", "wide"), "-3"), "zero or more"),
        (Change(("squared_up", "wide"), None), "wide"),
        (Change(("squared_up", "width"), "3"), '"width"'),
        (Change(("rounds", 9, "cut"), "3"), "rounds[10]"),
        (Change(("rounds", -1, "cut"), "3"), "rounds"),
        (Change(("rounds", 0, "fabric"), "Brasss"), '"Brass"'),
        (Change(("rounds", 0, "cuts"), '["2", "2"]'), "one of the two"),
        (Change(("rounds", 0, "cuts"), '["2", '), "rounds[1].cuts"),
        (Change(("how_many",), "25"), "24 or less"),
        (Change(("units",), "cm"), "units"),
        (Change((), "cm"), "names no value"),
    ],
)
def test_a_change_that_cannot_be_made_says_why(mat: Project, change: Change, says: str) -> None:
    """A path that leads nowhere, a text that cannot be read and a contradiction are told, and nothing changes."""
    with pytest.raises(ProjectFileError) as caught:
        apply_changes(mat, [change])

    assert says in str(caught.value)


QUILT = (
    MAT
    + """
[joined]
across = 2
down = 1
fabric = "Oat"
measured = [["13", ["13", "12 7/8"]]]

[[blocks]]
name = "Lit window"

[[blocks]]
name = "Dark shed"
[blocks.center]
cut = "5"
fabric = "Brass"

[[borders]]
cut = "3"
fabric = "Oat"
"""
)


def test_blocks_joins_and_borders_are_changed_by_their_paths() -> None:
    """Lists in lists, tables in lists and what was not there before."""
    quilt = apply_changes(
        read_project(QUILT),
        [
            Change(("joined", "measured", 0, 1, 1), "12 3/4"),
            Change(("joined", "measured", 0, 0), '["13 1/8", "13"]'),
            Change(("joined", "shows"), None),
            Change(("blocks", 1, "center", "cut"), "4 1/2"),
            Change(("blocks", 0, "rounds"), '[{ cut = "3", fabric = "Oat" }]'),
            Change(("borders", 1), '{ cut = "2", fabric = "Brass", corners = "mitered" }'),
            Change(("extras", "sleeve"), "true"),
        ],
    )

    assert quilt.joined is not None
    ((first, second),) = quilt.joined.measured
    assert isinstance(first, tuple)
    assert isinstance(second, tuple)
    assert (13.125, 13.0, 13.0, 12.75) == tuple(length.inches for length in (*first, *second))
    lit, dark = quilt.blocks
    assert dark.center is not None
    assert dark.center.cut is not None
    assert 4.5 == dark.center.cut.inches
    assert [Round.model_validate({"cut": "3", "fabric": "Oat"})] == list(lit.rounds or ())
    assert ["butted", "mitered"] == [border.corners for border in quilt.borders]
    assert quilt.extras.sleeve


def test_a_project_becomes_a_quilt_by_one_change(mat: Project) -> None:
    """A table that was not there is written whole."""
    quilt = apply_changes(mat, [Change(("joined",), '{ across = 4, down = 5, fabric = "Oat" }')])

    assert 20 == quilt.blocks_in_one
    assert mat == apply_changes(quilt, [Change(("joined",), None)])


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (Change(("joined", "measured", 0, 1, 1), "two"), "a length such as 2 1/2"),
        (Change(("joined", "measured", 0, 2), "13"), "joined.measured[1]"),
        (Change(("joined", "across"), "3"), "joined.measured[1]"),
        (Change(("joined", "join"), "plain seam"), "joined.fabric"),
        (Change(("joined", "join"), "glue"), '"covered strips"'),
        (Change(("blocks", 1, "center", "fabric"), "Rye"), "blocks[2].center.fabric"),
        (Change(("blocks", 5, "name"), "Gull"), "blocks[6]"),
        (Change(("borders", 0, "corners"), "corner squares"), "borders[1].corner_fabric"),
        (Change(("borders", 0, "color"), "navy"), '"color"'),
        (Change(("cut_apart",), "{ across = 2 }"), "cut_apart"),
        (Change(("patches", 0), '{ fabric = "Oat" }'), "patches"),
        (Change(("binding", "fabric"), None), "binding.fabric"),
    ],
)
def test_a_change_of_a_quilt_that_cannot_be_made_says_why(change: Change, says: str) -> None:
    """Refused with the place and what would do, as in a file."""
    with pytest.raises(ProjectFileError) as caught:
        apply_changes(read_project(QUILT), [change])

    assert says in str(caught.value)


def test_a_disagreement_that_was_there_before_does_not_stop_a_change() -> None:
    """A project made by hand that lacks its rounds can still get another size."""
    unfinished = Project.model_validate(
        {
            "name": "Mat",
            "squared_up": {"wide": "18", "long": "13"},
            "fabrics": [{"name": "Oat"}],
            "binding": {"fabric": "Oat"},
        }
    )

    wide = apply_changes(unfinished, [Change(("squared_up", "wide"), "17")]).squared_up.wide

    assert wide is not None
    assert 17 == wide.inches
