from __future__ import annotations

import pytest

from stitchflip.project.slips import read_toml
from tests.project.drafts import mat, mistakes


@pytest.mark.parametrize(
    ("old", "new", "line", "key", "would_do"),
    [
        ('wide = "18"', "wide = 17 1/2", 12, "squared_up.wide", 'wide = "17 1/2"'),
        ('wide = "18"', "wide = 17½", 12, "squared_up.wide", 'wide = "17½"'),
        ('wide = "18"', 'wide = 17 1/2"', 12, "squared_up.wide", 'wide = "17 1/2"'),
        ('wide = "18"', "wide = 45 cm", 12, "squared_up.wide", 'wide = "45 cm"'),
        ('wide = "18"', "wide = 17,5", 12, "squared_up.wide", 'wide = "17,5"'),
        ('wide = "18"', "wide = “18”", 12, "squared_up.wide", 'straight quotes: wide = "18"'),
        ('wide = "18"', 'wide: "18"', 12, "squared_up", 'an equals sign: wide = "18"'),
        ('cut = "2 1/2", fabric', "cut = 2 1/2, fabric", 8, "rounds", 'cut = "2 1/2"'),
        ('"2", fabric = "Brass"', '"2", fabric = Brass', 7, "rounds", 'fabric = "Brass"'),
        ('name = "Oat"', "name = Oat  # pale", 20, "fabrics[1].name", 'name = "Oat"'),
        ('name = "Oat"', 'name = "Oat"\none_way = Yes', 21, "fabrics[1].one_way", "one_way = true"),
        ('name = "Oat"', 'name = "Oat"\none way = true', 21, "fabrics[1]", "underscores in the key: one_way = true"),
        ('long = "13"', 'long = "13"\nwide = "18"', 14, "squared_up.wide", "each key once (take one of the two away)"),
    ],
)
def test_a_slip_that_is_plain_to_see_is_told_with_what_would_do(
    old: str, new: str, line: int, key: str, would_do: str
) -> None:
    """One slip makes one mistake, on its line, with the line as it should be."""
    (mistake,) = mistakes(mat(old, new))

    assert (line, key, would_do) == (mistake.line, mistake.key, mistake.would_do)


@pytest.mark.parametrize(
    ("line", "would_do"),
    [
        ("cuts = [2 1/2, 2, 3¼]", 'texts in quotes: cuts = ["2 1/2", 2, "3¼"]'),
        ("measured = [[13, 12 7/8], [13 in, [13, 12½]]]", 'measured = [[13, "12 7/8"], ["13 in", [13, "12½"]]]'),
        ("line = [[0, 1 1/2], [3, 4]]  # along the edge", 'texts in quotes: line = [[0, "1 1/2"], [3, 4]]'),
        ('{ cuts = [2 1/2, 2], fabric = "Oat" },', 'texts in quotes: { cuts = ["2 1/2", 2], fabric = "Oat" },'),
    ],
)
def test_lengths_in_lists_lack_their_quotes(line: str, would_do: str) -> None:
    """Fractions and units in a row of sizes are told with the whole row as it should be."""
    text = f"rounds = [\n{line}\n]\n" if line.startswith("{") else f"{line}\n"
    read = read_toml(text)

    (slip,) = read.slips
    assert read.data is not None
    assert slip.would_do.endswith(would_do)


def test_all_slips_are_told_at_once_and_other_mistakes_with_them() -> None:
    """Five slips and a wrong word in one file are six mistakes after one reading."""
    text = mat('"2", fabric = "Brass"', "2 1/4, fabric = Brass").replace('"18"', "18 in").replace('"13"', "13½")
    text = text.replace('cut = "6"', "cut = “6”").replace("goldenrod", "goldenrood").replace('"2 1/2"', "2 1/2")

    found = mistakes(text)

    assert [7, 8, 12, 13, 16, 25] == [mistake.line for mistake in found]
    assert '"goldenrod"' == found[-1].would_do


def test_single_brackets_for_things_of_which_there_are_several() -> None:
    """[fabrics] twice is told once, as the double brackets that would do."""
    (mistake,) = mistakes(mat().replace("[[fabrics]]", "[fabrics]"))

    assert (23, "fabrics", "[[fabrics]] each time") == (mistake.line, mistake.key, mistake.would_do)


def test_single_brackets_for_borders_are_told_as_well() -> None:
    """Every list of tables is known."""
    borders = "[borders]\ncut = '3'\nfabric = 'Oat'\n"
    (mistake,) = mistakes(mat() + "[joined]\nacross = 1\ndown = 1\n" + borders + borders)

    assert ("borders", "[[borders]] each time") == (mistake.key, mistake.would_do)


@pytest.mark.parametrize(
    ("lines", "key"),
    [
        ("[[blocks]]\nname = Gull", "blocks[1].name"),
        ("[[blocks]]\nname = 'Gull'\n[[blocks]]  # dark\nname = Keel", "blocks[2].name"),
        ("[[blocks]]\nname = 'Gull'\n[blocks.center]\ncut = 2 1/2", "blocks[1].center.cut"),
        (
            "[[blocks]]\n[[blocks.rounds]]\ncut = '2'\n[[blocks]]\n[[blocks.rounds]]\n[[blocks.rounds]]\ncut = 2½",
            "blocks[2].rounds[2].cut",
        ),
        ("[joined]\nacross = 2\ndown = two", "joined.down"),
    ],
)
def test_a_slip_inside_a_list_of_tables_is_told_by_its_number(lines: str, key: str) -> None:
    """The first block is blocks[1], and what is in it says so."""
    (slip,) = read_toml(f"{lines}\n").slips

    assert key == slip.key


@pytest.mark.parametrize(
    ("text", "line", "found", "would_do"),
    [
        ("rounds = [\n  { cut = '2' },\n\n[base]\nwide = '3'\n", 1, "never closed", "a ] where the list ends"),
        ("rounds = [\n  { cut = '2',\n]\n", 2, "{ cut = '2',", "between { and } on one line"),
        ("name = 'Ida's'\n", 1, "(column 13)", "texts in quotes"),
        ("wide =\n", 1, "(column 7)", "a value after the equals sign"),
        ("[base]\nwide = '3'\n[base]\n", 3, "[base]", "one [base]"),
        ("[center\n", 1, "[center", "closed brackets"),
        ("just words\n", 1, "just words", "a key, an equals sign and a value"),
        ("½ = 3\n", 1, "½ = 3", "a line such as"),
        ('name = "a\nb"\n', 1, 'name = "a', "between two quotes on one line"),
        ('name = "\x07"\n', 1, "�", "between two quotes"),
        ("rounds = { cut = 1,\n fabric = 2 }\n", 1, "rounds = {", "}"),
        ("x = " + "9" * 5000, None, "the limit", "a number a person can read"),
        ("x = " + "[" * 5000, None, "without end", "one list in brackets"),
    ],
    ids=range(13),
)
def test_a_slip_that_is_not_plain_is_told_where_it_is(text: str, line: int | None, found: str, would_do: str) -> None:
    """Line, what stands there and an example of what would do; the file is not read any further."""
    read = read_toml(text)

    (slip,) = read.slips
    assert read.data is None
    assert line == slip.line
    assert found in slip.found
    assert would_do in slip.would_do


def test_a_mended_copy_never_becomes_a_project() -> None:
    """A file with slips stays unread even when its mended copy could be read."""
    assert mistakes(mat('wide = "18"', "wide = 18 in"))


def test_a_good_file_is_not_touched() -> None:
    """Without slips the text read is the text given."""
    assert (mat(), ()) == (read_toml(mat()).text, read_toml(mat()).slips)
