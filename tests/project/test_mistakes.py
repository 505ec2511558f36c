from __future__ import annotations

import pytest

from tests.project.drafts import MAT, mat, mistakes

AFTER_MAT = "[my_numbers]\n"
A_LENGTH = "a length such as 2 1/2, 2½ in, 6.5 cm or 1 1/8 yd"
A_TURN = '"straight", "on point" or degrees such as 30'
A_LIST = 'a list in brackets, such as ["Oat", "Brass"]'
A_PLACE_IN_BRACKETS = "a place in brackets, such as [1.5, -1]"
A_PLACE = 'a number such as 1.5 or -1.5, or a text such as "1 1/2"'
A_TABLE = 'a table in braces, such as { cut = "2 1/2", fabric = "Oat" }'
AT_THE_TOP = '"way_of_working" at the top of the file, above the first [table],'


@pytest.mark.parametrize(
    ("value", "found", "would_do"),
    [
        ('"2 1/0"', '"2 1/0" (divides by zero)', A_LENGTH),
        ('"-3"', '"-3" (below zero)', "zero or more, without a minus sign"),
        ("-3", "-3 (below zero)", "zero or more, without a minus sign"),
        ('"1/2/3"', '"1/2/3" (not a length)', A_LENGTH),
        ('"two"', '"two" (not a length)', A_LENGTH),
        ("nan", "nan (not a length)", A_LENGTH),
        ("inf", "inf (not a length)", A_LENGTH),
        ('"1e400"', '"1e400" (not a length)', A_LENGTH),
        ("1e400", "1e400 (not a length)", A_LENGTH),
        ('"13 x 44"', '"13 x 44" (two lengths)', "one length at a time, such as 13 in"),
        ('"3 ft"', '"3 ft" (in feet)', "inches or yards, such as 36 in or 1 yd"),
        ('"3 ells"', '"3 ells" (in no known unit)', "in, yd, mm, cm or m"),
        ('"1,250"', '"1,250" (could be thousands or a decimal)', "1.250 or 1250"),
        ('""', '"" (empty where a length is due)', A_LENGTH),
        ("0", "0 (not above zero)", 'a length above zero, such as "2 1/2"'),
        ('"0 cm"', '"0 cm" (not above zero)', 'a length above zero, such as "2 1/2"'),
        ('"401"', '"401" (larger than any piece)', "at most 400 in (look for a slipped point or a wrong unit)"),
        ('"2000 yd"', '"2000 yd" (longer than 1000 yd)', "at most 1000 yd"),
        ("true", "true (no length)", 'a length such as "2 1/2"'),
        ('["18"]', "a list of 1 (no length)", 'a length such as "2 1/2"'),
        ("{ a = 1 }", "a table (no length)", 'a length such as "2 1/2"'),
    ],
)
def test_a_wrong_length_is_told_as_written_with_the_reason(value: str, found: str, would_do: str) -> None:
    """What stands in the file, why it cannot be used, and what would do."""
    (mistake,) = mistakes(mat('wide = "18"', f"wide = {value}"))

    assert (12, "squared_up.wide", found, would_do) == (mistake.line, mistake.key, mistake.found, mistake.would_do)


@pytest.mark.parametrize(
    ("old", "new", "key", "found", "would_do"),
    [
        ('units = "in"', 'units = "furlongs"', "units", '"furlongs"', '"in" or "cm"'),
        ('units = "in"', "how_many = 0", "how_many", "0", "1 or more"),
        ('units = "in"', "how_many = 25", "how_many", "25", "24 or less"),
        ('units = "in"', "how_many = 2.5", "how_many", "2.5", "a whole number"),
        ('units = "in"', 'how_many = "some"', "how_many", '"some"', "a whole number"),
        ('units = "in"', "how_many = true", "how_many", "true (no number)", "a number"),
        ('units = "in"', "how_many = []", "how_many", "an empty list", "a whole number"),
        ('name = "Mat"', 'name = " "', "name", '" "', "a text with something in it"),
        ('name = "Mat"', f'name = "{"a" * 121}"', "name", f'"{"a" * 59}…', "at most 120 marks"),
        ('name = "Mat"', r'name = "a\u0007"', "name", r'"a\u0007" (a text with unprintable marks)', "plain text"),
        ('name = "Mat"', "name = 12", "name", "12", "a text in quotes"),
        (
            'about = "For Ida"',
            r'about = "a\u0000"',
            "about",
            r'"a\u0000" (a text with unprintable marks)',
            "plain text",
        ),
        ('color = "goldenrod"', 'color = "goldenrd"', "fabrics[2].color", '"goldenrd" (no color)', '"goldenrod"'),
        (
            'color = "goldenrod"',
            'color = "#12"',
            "fabrics[2].color",
            '"#12" (no color)',
            'a hex color such as "#3f4c5c", or a color name such as "navy"',
        ),
        ('color = "goldenrod"', 'one_way = "maybe"', "fabrics[2].one_way", '"maybe"', "true or false"),
        ('color = "goldenrod"', "price = -1", "fabrics[2].price", "-1", "0 or more"),
        ('color = "goldenrod"', "price = nan", "fabrics[2].price", "nan", "a number that has an end"),
        (
            'color = "goldenrod"',
            'washed = "clean"',
            "fabrics[2].washed",
            '"clean"',
            '"unwashed", "washed" or "starched"',
        ),
        ('cut = "6"', 'cut = "6"\nturned = "left"', "center.turned", '"left" (no turn)', A_TURN),
        ('cut = "6"', 'cut = "6"\nturned = 400', "center.turned", "400", "360 or less"),
        ('cut = "6"', 'cut = "6"\nturned = inf', "center.turned", "inf", "a number that has an end"),
        ('cut = "6"', 'cut = "6"\nturned = true', "center.turned", "true (no turn)", A_TURN),
        ('cut = "6"', 'cut = "6"\noff_center = [1, 2, 3]', "center.off_center", "a list of 3", "at most 2 entries"),
        ('cut = "6"', 'cut = "6"\noff_center = [1]', "center.off_center[2]", "nothing", "one more entry"),
        ('cut = "6"', 'cut = "6"\noff_center = [1, "up"]', "center.off_center[2]", '"up" (not a length)', A_LENGTH),
        ('cut = "6"', 'cut = "6"\noff_center = [1, nan]', "center.off_center[2]", "nan (no place)", A_PLACE),
        ('cut = "6"', 'cut = "6"\noff_center = 3', "center.off_center", "3", A_PLACE_IN_BRACKETS),
        ('fabric = "Oat"\n\n', "", "center.fabric", "nothing", 'the name of a fabric, such as fabric = "Oat"'),
    ],
    ids=lambda value: value if len(value) < 40 else None,
)
def test_a_wrong_value_is_told_with_what_would_do(old: str, new: str, key: str, found: str, would_do: str) -> None:
    """One wrong value is one mistake: its key, the value as written, and what would do."""
    (mistake,) = mistakes(mat(old, new))

    assert (key, found, would_do) == (mistake.key, mistake.found, mistake.would_do)


@pytest.mark.parametrize(
    ("line", "key", "found", "would_do"),
    [
        ("draw_up = 1.5", "draw_up", "1.5 (out of range)", '"0 %" to "20 %" (0 to 0.2)'),
        ('draw_up = "1.5 per cent"', "draw_up", '"1.5 per cent" (no share)', '"1.5 %" or 0.015'),
        ("draw_up = nan", "draw_up", "nan", "a number that has an end"),
        ('reach = "1/8"', "reach", '"1/8" (too little to be safe)', '"1/4" or more'),
        ('seam = "0"', "seam", '"0" (not above zero)', 'a length above zero, such as "2 1/2"'),
        ("minutes_per_strip = 601", "minutes_per_strip", "601", "600 or less"),
        ("thread_per_inch = false", "thread_per_inch", "false (no number)", "a number"),
    ],
)
def test_a_wrong_number_of_the_maker_is_told(line: str, key: str, found: str, would_do: str) -> None:
    """My numbers have their own limits."""
    (mistake,) = mistakes(MAT + AFTER_MAT + line + "\n")

    assert (f"my_numbers.{key}", found, would_do) == (mistake.key, mistake.found, mistake.would_do)


@pytest.mark.parametrize(
    ("old", "new", "key", "would_do"),
    [
        (
            'wide = "18"',
            'wide = "18"\nlenght_runs = "up"',
            "squared_up.lenght_runs",
            '"length_runs" (did you mean that?)',
        ),
        ('wide = "18"', 'wide = "18"\nway_of_working = "cut first"', "squared_up.way_of_working", AT_THE_TOP),
        ('wide = "18"', 'wide = "18"\nfiber = "wool"', "squared_up.fiber", '"fiber" under [batting]'),
        ('wide = "18"', 'wide = "18"\nwidth = "18"', "squared_up.width", '"wide" (did you mean that?)'),
        ('name = "Mat"', 'name = "Mat"\nwide = "18"', "wide", '"wide" under [squared_up]'),
        ("[binding]\n", "[binding]\nzzz = 1\n", "binding.zzz", "one of fabric, edge, grain, shows, cut, seam, finish"),
        ('cut = "2 1/2"', 'cut = "2 1/2", fabrik = "Oat"', "rounds[2].fabrik", '"fabric" (did you mean that?)'),
        ('cut = "2 1/2"', 'cut = "2 1/2", corner = "Oat"', "rounds[2].corner", '"corner_fabric" (did you mean that?)'),
        ('wide = "18"', 'wide = "18"\ndiameter = "18"', "squared_up.diameter", '"across" (did you mean that?)'),
        ('wide = "18"', 'wide = "18"\nradius = "2"', "squared_up.radius", '"corner_radius" (did you mean that?)'),
        ('wide = "18"', 'wide = "18"\nflat_cut = "1"', "squared_up.flat_cut", '"flat_cut" under [joined]'),
        ('wide = "18"', 'wide = "18"\nsleeve = true', "squared_up.sleeve", '"sleeve" under [extras]'),
        ('wide = "18"', 'wide = "18"\nline = [[0, 0], [1, 1]]', "squared_up.line", '"line" under [[patches]]'),
        ("[binding]\n", "[binding]\nshow = '1/2'\n", "binding.show", '"shows" (did you mean that?)'),
        ('name = "Mat"', 'name = "Mat"\njoin = "plain seam"', "join", '"join" under [joined]'),
        ('name = "Mat"', 'name = "Mat"\nborder = []', "border", '"borders" (did you mean that?)'),
    ],
)
def test_an_unknown_key_is_told_with_the_key_that_may_be_meant(old: str, new: str, key: str, would_do: str) -> None:
    """A key that looks alike, that belongs elsewhere, or all there are."""
    (mistake,) = mistakes(mat(old, new))

    assert (key, f'the unknown key "{key.rpartition(".")[2]}"', would_do) == (
        mistake.key,
        mistake.found,
        mistake.would_do,
    )


@pytest.mark.parametrize(
    ("old", "new", "key", "would_do"),
    [
        ('name = "Mat"   # short', "", "name", 'a name, such as name = "Porch runner"'),
        ("[binding]", "[backing]", "binding", "a [binding] table with its fabric"),
        (
            '[squared_up]\nwide = "18"     # as it lies\nlong = "13"\n',
            "",
            "squared_up",
            "a [squared_up] table with wide and long",
        ),
        ('cut = "2 1/2", ', "", "rounds[2].cut", 'a cut width such as "2 1/2", or cuts with one for each strip'),
    ],
)
def test_what_is_missing_is_told_with_what_belongs_there(old: str, new: str, key: str, would_do: str) -> None:
    """A missing table or key is named, with an example."""
    (mistake,) = mistakes(mat(old, new))

    assert (key, "nothing", would_do) == (mistake.key, mistake.found, mistake.would_do)


@pytest.mark.parametrize(
    ("old", "new", "key", "would_do"),
    [
        ("[binding]\n", "[[binding]]\n", "binding", "a table headed [binding]"),
        ('    { cut = "2", fabric = "Brass" },', '"2",', "rounds[1]", A_TABLE),
        (
            "[binding]\n",
            "[short_strips]\nstep = 1\nlong = '2'\n[binding]\n",
            "short_strips",
            "tables headed [[short_strips]], one for each",
        ),
        ("[binding]\n", "[borders]\ncut = '3'\n[binding]\n", "borders", "tables headed [[borders]], one for each"),
        (
            "[binding]\n",
            "blocks = ['Gull']\n[binding]\n",
            "fabrics[2].blocks",
            '"blocks" at the top of the file, above the first [table],',
        ),
        ('name = "Mat"', "fabrik = 1\nname = 'Mat'\nblocks = ['Gull']", "blocks[1]", "a table headed [[blocks]]"),
        ('cut = "2", fabric', 'fabrics = "Oat", cut = "2", with', "rounds[1].fabrics", A_LIST),
    ],
)
def test_a_table_in_the_wrong_form_is_told(old: str, new: str, key: str, would_do: str) -> None:
    """Single and double brackets, and a bare value where a table is due."""
    found = {mistake.key: mistake.would_do for mistake in mistakes(mat(old, new))}

    assert would_do == found[key]


WRONG_WORDS = {
    "squared_up.shape": '"rectangle", "polygon", "round" or "oval"',
    "center.shape": '"square", "rectangle", "polygon", "corners" or "half square"',
    "building.widths": '"as listed" or "from what is on hand"',
    "building.strip_ends": '"straight" or "parallel to the neighbor"',
    "building.lines_seen": '"from the front" or "from the back"',
    "binding.edge": '"binding", "self-binding", "facing" or "turned through"',
    "binding.grain": '"straight" or "bias"',
    "joined.setting": '"straight" or "on point"',
    "joined.join": '"flat and folded strips", "covered strips" or "plain seam"',
    "joined.first": '"rows" or "columns"',
    "joined.fold": '"behind" or "in front"',
    "joined.batting_reaches": '"to the raw edge" or "to the seam"',
    "joined.unequal": '"trim all to the smallest", "frame the small ones" or "like sizes share a column"',
    "joined.triangles": '"exact", "usual additions" or "oversize"',
    "extras.label": '"rectangle" or "corner"',
}


@pytest.mark.parametrize(("key", "would_do"), WRONG_WORDS.items())
def test_a_wrong_word_is_answered_with_the_words_there_are(key: str, would_do: str) -> None:
    """Every choice of the file format is listed when none of its words stands there."""
    table, name = key.split(".")
    line = f'{name} = "xx"\n'
    if f"[{table}]" in MAT:
        head = next(line for line in MAT.split("\n") if line.startswith(f"[{table}]"))
        text = mat(head, f"{head}\n{line}")
    else:
        text = MAT + f"[{table}]\n{line}" + ("across = 1\ndown = 1\n" if table == "joined" else "")

    assert [(key, '"xx"', would_do)] == [(one.key, one.found, one.would_do) for one in mistakes(text)]


@pytest.mark.parametrize(
    ("key", "value", "would_do"),
    [
        ("center.corners", "3", "places in brackets, such as [[-3, -2], [3, -2], [0, 3]]"),
        ("center.corners", "[3]", A_PLACE_IN_BRACKETS),
        ("building.corners", '"top"', 'corners in brackets, such as ["upper left", "lower right"]'),
        ("building.first_pair", '"top"', 'two sides in brackets, such as ["left", "right"]'),
        ("joined.measured", '"13"', 'rows in brackets, such as [["13", "12 7/8"], ["13", "13"]]'),
        ("joined.measured", '["13"]', 'a row in brackets, such as ["13", "12 7/8"]'),
        ("joined.places", '"1 2"', 'rows in brackets, such as ["1 2 1 2", "2 1 2 1"]'),
        ("batting.on_hand", '"34 x 45"', 'pieces in brackets, such as [{ wide = "18", long = "21" }]'),
        ("batting.on_hand", '["34 x 45"]', 'a table in braces, such as { wide = "18", long = "21" }'),
    ],
)
def test_a_list_in_the_wrong_form_is_answered_with_one_in_the_right_form(key: str, value: str, would_do: str) -> None:
    """Each list has an example of its own."""
    table, name = key.split(".")
    line = f"{name} = {value}\n"
    if table == "center":
        text = mat('cut = "6"\n', line)
    else:
        text = MAT + f"[{table}]\n{line}" + ('across = 1\ndown = 1\nfabric = "Oat"\n' if table == "joined" else "")

    assert would_do in {mistake.would_do for mistake in mistakes(text)}


def test_a_wrong_value_in_a_long_list_is_not_told_as_a_short_list() -> None:
    """The one fabric that is wrong is told once, not again as a list with too little in it."""
    text = mat('name = "Brass"', "name = 3").replace('fabric = "Brass"', 'fabric = "Oat"')

    assert ["fabrics[2].name"] == [mistake.key for mistake in mistakes(text)]


def test_no_message_says_only_that_something_is_wrong() -> None:
    """Every mistake a file can have says what would do, in words of its own."""
    text = MAT.replace('"18"', "[]").replace('"13"', "{}").replace('"6"', "1979-05-27").replace('"goldenrod"', "[1]")

    assert all(
        mistake.would_do not in {"", "another value"} and "valid" not in mistake.would_do for mistake in mistakes(text)
    )
