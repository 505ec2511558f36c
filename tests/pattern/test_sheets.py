"""Table sheet and shop sheet: one page each, with the numbers of the craft."""

from __future__ import annotations

import pytest

from stitchflip.pattern import Paper, to_html
from stitchflip.pattern.model import BlankLines, Steps
from stitchflip.pattern.reading import plain
from stitchflip.planning import Change
from stitchflip.project.model import Edge
from tests.pattern.papers import (
    GATE,
    LANTERN,
    NAMES,
    ROOF,
    TRAY,
    WITHOUT_DRAW_UP,
    Marked,
    document_of,
    plan_of,
    printed,
    shown,
    spaced,
)


def table_text(name: str, *changes: Change) -> str:
    """The words of an example's table sheet as printed on letter."""
    return printed("table", name, *changes).text


@pytest.mark.parametrize("paper", list(Paper))
@pytest.mark.parametrize("kind", ["table", "shop"])
@pytest.mark.parametrize("name", NAMES)
def test_a_sheet_is_exactly_one_page(name: str, kind: str, paper: Paper) -> None:
    """For every example, on both papers."""
    assert 1 == len(printed(kind, name, paper=paper).pages)


@pytest.mark.parametrize(
    "words",
    [
        "13 × 44 in (wide × long, point to point)",
        "15½ × 48 in",
        "8¼ × 8¼ in, on point (turned 45°)",
        "none to lock",
        "6 corners: 4 of 135° and 2 of 90°",
        "98¾ in round the edge",
        "115 in made",
        "3 strips cut 2½ in",
        "your batting allows 8 in",
        "Measured after round 1",
        "Changes",
    ],
)
def test_lantern_walk_says_what_its_maker_needs(words: str) -> None:
    """Sizes, base, center, locks, binding and notes, as worked out by hand for this runner.

    Perimeter: two long sides of 44 - 13 = 31 in and four slanted ones of 13/√2 = 9.192 in are 98.77 in. Binding:
    three strips of 40 less two diagonal joins of 2½ in make 115 in.
    """
    assert words in table_text(LANTERN)


def test_lantern_walk_without_draw_up_is_where_the_tape_says() -> None:
    """Raw edges from the center mark: half of 8¼, then 1, 2, 1½, 2, 1, 2 and 2¾ in more with each round."""
    text = table_text(LANTERN, *WITHOUT_DRAW_UP)
    rounds = [
        ("1–4 A Brass 1½", "5⅛"),
        ("5–8 B Inkwell 2½", "7⅛"),
        ("9–12 C Oat 2", "8⅝"),
        ("13–16 D Ember 2½", "10⅝"),
        ("17–20 A Brass 1½", "11⅝"),
        ("21–24 B Inkwell 2½", "13⅝"),
        ("25–28 E Midnight 3¼", "16⅜"),
    ]
    place = 0
    for strips, edge in rounds:
        place = text.index(strips, place)
        assert edge in text[place : place + len(strips) + 40]


def test_lantern_walk_has_its_strips_ready() -> None:
    """Width-of-fabric strips: 3 Brass, 3 Inkwell, 2 Oat, 2 Ember, 2 Midnight."""
    text = table_text(LANTERN)
    for line in ("A Brass 1½: 3", "B Inkwell 2½: 3", "C Oat 2: 2", "D Ember 2½: 2", "E Midnight 3¼: 2"):
        assert line in text


def test_lantern_walk_keeps_an_inch_beyond_its_points() -> None:
    """Point at 8¼/√2 - ¼·√2 = 5.480 in, trimmed at 6½: 1.02 in to the edge, rounded down 1; less ¼, ¾ shows."""
    assert "Keep 1 in beyond each point; ¾ in shows after binding" in table_text(LANTERN, *WITHOUT_DRAW_UP)


def test_morning_tray_is_metric_and_four_alike() -> None:
    """47 × 35 cm, base 52 × 40, four of each, binding 8 strips of 6.5 cm; no inch anywhere."""
    text = table_text(TRAY)
    for words in ("Make four alike", "47 × 35 cm (wide × long)", "52 × 40 cm", "8 strips cut 6.5 cm", "203.5 cm made"):
        assert words in text
    assert " in made" not in text
    assert "½" not in text


def test_tin_roof_is_bound_by_hand_from_quarters() -> None:
    """12 × 56 on 14½ × 60; binding 136 + 12 = 148 in from four strips less three joins of 2¼: 153¼ in."""
    text = table_text(ROOF)
    for words in ("12 × 56 in", "14½ × 60 in", "148 in needed, 153¼ in made", "fat quarter"):
        assert words in text


def test_snow_gate_says_a_hexagon_between_its_sides() -> None:
    """22½ in between opposite sides, 22½/cos 30° = 25.98, nearest 26, between corners; every edge 11¼ from the mark."""
    text = table_text(GATE)
    for words in (
        "22½ in between opposite sides, 26 in between opposite corners",
        "every side 11¼ in",
        "6 corners of 120°",
    ):
        assert words in text


def test_loose_ends_are_named_with_their_strips() -> None:
    """The coaster's first strip ends inside: the sheet names it and says how to lock it."""
    text = table_text("doorstep")
    assert "strip 1 left end" in text
    assert "none to lock" not in text


def test_what_is_wrong_stands_before_the_cutting() -> None:
    """A center of 12 in reaches past the trimmed edge: the sheet says stop before it says cut."""
    text = table_text(LANTERN, Change(("center", "cut"), "12"))
    assert text.index("Stop.") < text.index("Cut first")


def test_there_is_room_to_write() -> None:
    """Empty lines: after round 1, then every second round, and one for changes."""
    (lines,) = [block for block in document_of("table", LANTERN).blocks if isinstance(block, BlankLines)]
    assert (*(f"Measured after round {number}" for number in (1, 2, 4, 6)), "Changes") == lines.labels


def test_room_to_write_follows_the_pattern() -> None:
    """Rows are measured after every fourth strip, in the pattern's steps and on the sheet."""
    (lines,) = [block for block in document_of("table", ROOF).blocks if isinstance(block, BlankLines)]
    assert (*(f"Measured after strip {number}" for number in (4, 8, 12, 16)), "Changes") == lines.labels
    (steps,) = [block for block in document_of("pattern", ROOF).blocks if isinstance(block, Steps)]
    measured = [step.number for step in steps.steps if any("Measure now" in plain(line) for line in step.after)]
    assert ["4", "8", "12", "16"] == measured[:4]


def test_nothing_to_spare_stands_beside_the_amount() -> None:
    """Larch: 8 in of cuts and 1 in of straightening are the ¼ yd bought; the next step is ⅜ yd."""
    text = shown("shop", GATE)
    assert "¼ yd (30 cm), or one fat quarter; nothing to spare: buy ⅜ yd" in text
    assert 1 == text.count("nothing to spare: buy")


@pytest.mark.parametrize(
    ("name", "words"),
    [
        (LANTERN, ["Brass", "¼ yd", "Midnight", "½ yd", "1 yd", "pieced across", "40 in usable width"]),
        (TRAY, ["Clover", "40 cm", "Poppy", "1.1 m", "Backing", "90 cm", "52 × 40 cm"]),
        (ROOF, ["Already on your shelf", "fat quarter", "⅞ yd", "⅜ yd"]),
        (GATE, ["Larch", "¼ yd", "nothing to spare", "⅜ yd", "Gatepost", "½ yd"]),
    ],
)
def test_the_shop_sheet_buys_what_was_worked_out(name: str, words: list[str]) -> None:
    """Amounts of each example as computed by hand."""
    text = printed("shop", name).text
    assert [] == [word for word in words if word not in text]


def test_the_shop_sheet_offers_another_tone() -> None:
    """Inkwell is dark, Oat is pale: any such tone will do."""
    text = printed("shop", LANTERN).text
    assert "Inkwell: any dark tone" in text
    assert "Oat: any pale tone" in text


@pytest.mark.parametrize("name", NAMES)
def test_the_screen_says_the_same_as_the_paper(name: str) -> None:
    """Numbers on the table sheet's screen page are those of its print."""
    page = Marked(to_html(document_of("table", name))).text
    plan = plan_of(name)
    is_bound = plan.project.binding.edge is Edge.BINDING
    for row in ("needed", "made"):
        assert is_bound == (row in page)
    assert spaced(plan.project.name) in page
