from __future__ import annotations

import pytest

from stitchflip.errors import ProjectFileError
from stitchflip.project import LARGEST_FILE, read_project, read_project_bytes, reading
from tests.project.drafts import MAT, mat, mistakes


def refused(data: bytes) -> ProjectFileError:
    """The error of a file that cannot be read."""
    with pytest.raises(ProjectFileError) as caught:
        read_project_bytes(data, "mat.toml")
    return caught.value


def test_a_project_is_what_its_file_says() -> None:
    """Values, units and usual values of a small file, read by eye."""
    project = read_project(MAT)

    assert ("Mat", "For Ida", 1, 18.0, 13.0) == (
        project.name,
        project.about,
        project.how_many,
        project.squared_up.wide and project.squared_up.wide.inches,
        project.squared_up.long and project.squared_up.long.inches,
    )
    assert ["Brass", "Oat"] == [one.fabric for one in project.rounds]
    assert ["#efe3c6", "#daa520"] == [fabric.color for fabric in project.fabrics]


def test_bare_numbers_count_in_the_units_of_the_project() -> None:
    """The same 13 is inches in one project and centimeters in another; named units stay what they are."""
    metric = read_project(mat('units = "in"', 'units = "centimetres"').replace('"18"', '"18 in"')).squared_up

    assert (18 * 2.54, 13) == (metric.wide and metric.wide.cm, metric.long and metric.long.cm)


@pytest.mark.parametrize("size", [LARGEST_FILE + 1, 10_000_000])
def test_a_file_too_large_is_refused_before_it_is_looked_at(size: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """Over 300 KB nothing is parsed, whatever is in it."""
    monkeypatch.setattr(reading, "_tables", lambda _text: pytest.fail("the file was parsed"))

    error = refused(b"a" * size)

    assert "project.too-large" == error.code
    assert "300 KB" in error.what
    with pytest.raises(ProjectFileError, match="300 KB"):
        read_project("a" * size)


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b'name = "Caf\xe9"', "byte 12, hex e9, line 1"),
        (b'name = "a"\nabout = "\xff"', "byte 21, hex ff, line 2"),
        (MAT.encode("utf-16"), "UTF-16"),
        (b"\x80", "byte 1, hex 80, line 1"),
    ],
)
def test_a_file_that_is_not_utf_8_is_told_where_and_what_to_do(data: bytes, says: str) -> None:
    """The byte, its line, and what to do in the editor."""
    error = refused(data)

    assert "project.not-utf-8" == error.code
    assert says in error.what
    assert "UTF-8" in error.fix


def test_the_mark_and_line_ends_of_other_systems_are_read() -> None:
    """A byte order mark and carriage returns make no other project."""
    assert read_project(MAT) == read_project_bytes(b"\xef\xbb\xbf" + MAT.replace("\n", "\r\n").encode())


def test_lines_are_counted_the_same_with_other_line_ends() -> None:
    """A mistake in a file with carriage returns has the line an editor shows."""
    (mistake,) = mistakes(mat('wide = "18"', 'wide = "x"').replace("\n", "\r\n"))

    assert 12 == mistake.line


def test_an_empty_file_is_told_what_a_project_needs() -> None:
    """Nothing is a file with mistakes, not an accident."""
    keys = {mistake.key for mistake in mistakes("")}

    assert {"name", "squared_up", "fabrics", "binding", "center", "rounds"} == keys


def test_mistakes_come_in_the_order_of_the_file() -> None:
    """Values, names and unknown keys are told together, line by line, what is missing last."""
    text = mat('wide = "18"', 'wide = "-3"\nhigh = 1').replace('"2", fabric = "Brass"', '"2", fabric = "Bras"')
    text = text.replace("[binding]\n", "[bindings]\n").replace('"goldenrod"', "7")

    found = mistakes(text)

    assert [
        (7, "rounds[1].fabric"),
        (12, "squared_up.wide"),
        (13, "squared_up.high"),
        (26, "fabrics[2].color"),
        (28, "bindings"),
        (None, "binding"),
    ] == [(mistake.line, mistake.key) for mistake in found]


def test_the_error_counts_and_names_the_file() -> None:
    """One sentence says how many mistakes there are and in which file; each has its line below."""
    with pytest.raises(ProjectFileError) as caught:
        read_project(mat('wide = "18"', 'wide = "-3"').replace('"13"', "0"), "mat.toml")

    first, *rest = str(caught.value).split("\n")
    assert "there are 2 mistakes in the file (mat.toml). Correct them and read it again." == first
    assert [
        '  line 12, squared_up.wide: found "-3" (below zero); zero or more, without a minus sign would do',
        '  line 13, squared_up.long: found 0 (not above zero); a length above zero, such as "2 1/2" would do',
    ] == rest


def test_of_a_thousand_mistakes_the_first_are_listed() -> None:
    """A file gone wrong all through is told in a page, not in a book."""
    text = mat("rounds = [\n", "rounds = [\n" + '    { cut = "x" },\n' * 1000)

    with pytest.raises(ProjectFileError) as caught:
        read_project(text)

    assert "there are more than 60 mistakes in the file" == caught.value.what
    assert 60 == len(caught.value.mistakes)


def test_a_line_of_dots_is_refused() -> None:
    """A name of thousands of parts would take forever to read; a row of dots in a text is as little a line."""
    (mistake,) = mistakes(mat('name = "Mat"', "a" + ".a" * 5000 + " = 1"))

    assert (2, "a line with 5000 dots", "at most 100") == (mistake.line, mistake.found, mistake.would_do)


def test_more_rounds_than_any_piece_has_are_refused_as_one_mistake() -> None:
    """A list without end is one mistake."""
    (mistake,) = mistakes(mat("rounds = [\n", "rounds = [\n" + '    { cut = "2" },\n' * 3000))

    assert (6, "rounds", "at most 3000 entries") == (mistake.line, mistake.key, mistake.would_do)


@pytest.mark.parametrize(
    ("american", "british"), [("[center]", "[centre]"), ("color =", "colour ="), ("fiber =", "fibre =")]
)
def test_the_british_spelling_of_a_key_is_read(american: str, british: str) -> None:
    """Centre, colour and fibre are the same keys."""
    text = MAT + '[batting]\nfiber = "wool"\n'

    assert read_project(text) == read_project(text.replace(american, british))


def test_a_mistake_under_the_british_spelling_has_its_line() -> None:
    """The last two lines of this file are 29 and 30."""
    (mistake,) = mistakes(MAT + "[batting]\nfibre = 7\n")

    assert (30, "batting.fiber") == (mistake.line, mistake.key)


def test_a_key_in_both_spellings_is_told() -> None:
    """Nothing is picked when a key stands there twice."""
    (mistake,) = mistakes(mat("[[fabrics]]", '[centre]\ncut = "5"\n\n[[fabrics]]'))

    assert (19, "centre", '"center" (did you mean that?)') == (mistake.line, mistake.key, mistake.would_do)


def test_the_way_of_working_has_one_value() -> None:
    """Its long key is that of the file, its short one is read as well; both at once are told."""
    long = read_project(mat('units = "in"', 'units = "in"\nway_of_working = "Trim as you go"'))

    assert "trim as you go" == long.working
    assert long == read_project(mat('units = "in"', 'units = "in"\nworking = "trim-as-you-go"'))
    assert mistakes(mat('units = "in"', 'units = "in"\nworking = "cut first"\nway_of_working = "cut first"'))


def test_dates_and_editions_need_no_quotes() -> None:
    """A date and a number are what they look like."""
    project = read_project(mat('units = "in"', "date = 2026-11-25\nedition = 2"))

    assert ("2026-11-25", "2") == (project.date, project.edition)


def test_a_usual_piece_on_hand_needs_no_measures() -> None:
    """Fat quarters are 17 1/2 x 20 1/2, or 49 x 53 cm; precut strips 2 1/2 x 40, or 6.5 x 105 cm."""
    pieces = 'on_hand = [{ name = "Fat quarters", count = 3 }, { name = "precut strip" }]\nname = "Oat"'
    inch = read_project(mat('name = "Oat"', pieces)).fabrics[0].on_hand
    metric = read_project(mat('name = "Oat"', pieces).replace('"in"', '"cm"')).fabrics[0].on_hand

    assert [(17.5, 20.5, 3), (2.5, 40, 1)] == [(one.wide.inches, one.long.inches, one.count) for one in inch]
    assert [(49, 53, 3), (6.5, 105, 1)] == [(one.wide.cm, one.long.cm, one.count) for one in metric]


def test_reading_never_half_succeeds() -> None:
    """Whatever single character is taken out of a file, it is read or refused in our own words."""
    for place in range(0, len(MAT), 3):
        text = MAT[:place] + MAT[place + 1 :]
        try:
            read_project(text)
        except ProjectFileError as error:
            assert error.mistakes  # noqa: PT017  every other exception fails the test
