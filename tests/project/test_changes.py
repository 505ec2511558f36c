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
