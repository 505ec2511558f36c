from __future__ import annotations

import tomllib

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.lengths import Length, Unit, parse_length
from stitchflip.project import Project, read_project, write_project
from stitchflip.project.writing import typed
from tests.project_strategies import projects


@settings(max_examples=60, deadline=None)
@given(projects())
def test_a_written_project_reads_as_the_same_project(project: Project) -> None:
    """Reading what was written gives the same project, whatever way it is built and in both units."""
    assert project == read_project(write_project(project))


@given(st.integers(0, 36_000 * 8128), st.sampled_from(list(Unit)))
def test_a_length_is_typed_exactly(ticks: int, unit: Unit) -> None:
    """What is typed for a length reads as the same length."""
    length = Length(ticks)

    assert length == parse_length(typed(length, unit), unit)


@pytest.mark.parametrize(
    ("length", "unit", "text"),
    [
        (Length.of_inches(13), Unit.INCH, "13"),
        (Length.of_inches(3 + 5 / 16), Unit.INCH, "3 5/16"),
        (Length.of_inches(1 / 32), Unit.INCH, "1/32"),
        (Length.of_cm(6.5), Unit.INCH, "6.5 cm"),
        (Length.of_cm(6.5), Unit.CM, "6.5"),
        (Length.of_cm(0.08), Unit.CM, "0.08"),
        (Length.of_inches(2.5), Unit.CM, "6.35"),
        (Length.of_inches(0.125), Unit.CM, "1/8 in"),
    ],
)
def test_a_length_is_typed_as_a_maker_would(length: Length, unit: Unit, text: str) -> None:
    """Fractions on any keyboard in inches, decimals in centimeters, the other unit named where it is plainer."""
    assert text == typed(length, unit)


def test_only_what_differs_from_the_usual_is_written() -> None:
    """A small project makes a small file: no table that says nothing."""
    text = 'name = "Mat"\nrounds = [{ cut = "2" }]\n[squared_up]\nwide = "18"\nlong = "13"\n'
    text += '[center]\ncut = "6"\nfabric = "Oat"\n[[fabrics]]\nname = "Oat"\n[binding]\nfabric = "Oat"\n'

    tables = tomllib.loads(write_project(read_project(text)))

    assert {
        "name",
        "units",
        "how_many",
        "way_of_working",
        "rounds",
        "squared_up",
        "center",
        "building",
        "fabrics",
        "binding",
    } == {*tables}


def test_texts_that_look_like_the_file_format_stay_texts() -> None:
    """Quotes, backslashes, line ends and number signs in a text do not break out of it."""
    name = 'Ida\'s "good" \\ [one] # two'
    text = 'name = "x"\nabout = "y"\nrounds = [{ cut = "2" }]\n[squared_up]\nwide = "18"\nlong = "13"\n'
    text += '[center]\ncut = "6"\nfabric = "Oat"\n[[fabrics]]\nname = "Oat"\n[binding]\nfabric = "Oat"\n'
    project = read_project(text).model_copy(update={"name": name, "about": 'a\n"""b\x7f\tc'})

    tables = tomllib.loads(write_project(project))

    assert (name, 'a\n"""b\x7f\tc') == (tables["name"], tables["about"])
