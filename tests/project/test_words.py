from __future__ import annotations

from enum import StrEnum

import pytest

from stitchflip.lengths import Unit
from stitchflip.project import read_project
from stitchflip.project import words as known_words
from stitchflip.project.colors import COLOR_NAMES, hex_color
from stitchflip.project.words import (
    BorderCorners,
    CenterShape,
    Edge,
    Ends,
    Fiber,
    Finish,
    Join,
    LabelShape,
    Outline,
    RowsFrom,
    RowsRun,
    Setting,
    Turning,
    Way,
    Working,
    meant,
)
from tests.project.drafts import MAT, mat, mistakes


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        ("log cabin", Way.LOG_CABIN),
        ("Log-Cabin", Way.LOG_CABIN),
        ("courthouse", Way.COURTHOUSE),
        ("Two sided log cabin", Way.TWO_SIDED),
        ("pairs", Way.POINTS),
        ("rows", Way.ROWS),
        ("anticlockwise", Turning.COUNTERCLOCKWISE),
        ("counterclockwise", Turning.COUNTERCLOCKWISE),
        ("trim_as_you_go", Working.TRIM_AS_YOU_GO),
        ("by hand", Finish.HAND),
        ("middle", RowsFrom.MIDDLE),
        ("from the middle out", RowsFrom.MIDDLE),
        ("diagonal", RowsRun.SLANTED),
        ("points", Ends.POINTED),
        ("square", Outline.RECTANGLE),
        ("circle", Outline.ROUND),
        ("poly", Fiber.POLYESTER),
        ("half-square", CenterShape.HALF_SQUARE),
        ("strings", Way.STRINGS),
        ("Plaited", Way.BRAID),
        ("snowball corners", Way.FOLDED_CORNERS),
        ("wonky", Way.WONKY),
        ("flat and folded", Join.FLAT_AND_FOLDED),
        ("on-point", Setting.ON_POINT),
        ("mitred", BorderCorners.MITERED),
        ("cornerstones", BorderCorners.SQUARES),
        ("self binding", Edge.SELF_BINDING),
        ("Pillowcase", Edge.TURNED_THROUGH),
        ("corner", LabelShape.CORNER),
        ("inches", Unit.INCH),
        ("Centimetres", Unit.CM),
        ("metric", Unit.CM),
    ],
)
def test_a_word_is_read_the_way_makers_write_it(written: str, expected: StrEnum) -> None:
    """Capitals, hyphens, other names and clear beginnings all do."""
    assert expected is meant(written, type(expected))


@pytest.mark.parametrize(
    ("written", "words"), [("log", Way), ("", Way), ("r", Way), ("wood", Fiber), ("clockwork", Turning)]
)
def test_a_word_that_could_be_several_or_none_is_not_guessed(written: str, words: type[StrEnum]) -> None:
    """Too short, unknown, or only alike."""
    assert meant(written, words) is None


ALL_WORDS = [kind for kind in vars(known_words).values() if isinstance(kind, type) and issubclass(kind, StrEnum)]


@pytest.mark.parametrize("words", [kind for kind in ALL_WORDS if kind is not StrEnum] + [Unit])
def test_every_word_means_itself(words: type[StrEnum]) -> None:
    """The spelling of the file format is always read as itself."""
    assert list(words) == [meant(word.value, words) for word in words]


@pytest.mark.parametrize(
    ("written", "degrees"),
    [
        ('"straight"', 0),
        ('"on point"', 45),
        ('"On-Point"', 45),
        ("30", 30),
        ("-22.5", -22.5),
        ('"30°"', 30),
        ('"12 degrees"', 12),
    ],
)
def test_a_turn_is_words_or_degrees(written: str, degrees: float) -> None:
    """The two turns that have a name, and any angle."""
    center = read_project(mat('cut = "6"', f'cut = "6"\nturned = {written}')).center

    assert center is not None
    assert degrees == center.turned


@pytest.mark.parametrize(
    ("written", "place"),
    [
        ("[1.5, -1.5]", (1.5, -1.5)),
        ('["1 1/2", "-1½"]', (1.5, -1.5)),
        ('["+2.54 cm", "−1"]', (1.0, -1.0)),
        ("[0, 3]", (0.0, 3.0)),
    ],
)
def test_a_place_is_numbers_or_lengths_with_a_sign(written: str, place: tuple[float, float]) -> None:
    """Right and up are above zero, left and down below; in the project's unit."""
    center = read_project(mat('cut = "6"', f'cut = "6"\noff_center = {written}')).center

    assert center is not None
    assert pytest.approx(place) == center.off_center


def test_a_place_counts_in_the_units_of_the_project() -> None:
    """In a metric project 1 in to the right is 2.54."""
    text = mat('cut = "6"', 'cut = "6"\noff_center = ["1 in", "2"]').replace('units = "in"', 'units = "cm"')
    center = read_project(text).center

    assert center is not None
    assert pytest.approx((2.54, 2.0)) == center.off_center


@pytest.mark.parametrize(
    ("written", "side"),
    [
        ("top", "top"),
        ("Upper Right", "upper right"),
        ("top-right", "upper right"),
        ("bottom left", "lower left"),
        ("side 3", "side 3"),
        ("Side 03", "side 3"),
    ],
)
def test_a_side_is_read_the_way_makers_write_it(written: str, side: str) -> None:
    """Top right is upper right; capitals and hyphens do not matter."""
    assert side == read_project(MAT + f'[building]\nstart = "{written}"\n').building.start


@pytest.mark.parametrize("written", ["north", "side 0", "side 100", "top top", ""])
def test_a_side_that_cannot_be_is_told_with_all_there_are(written: str) -> None:
    """The names a side can have are listed."""
    (mistake,) = mistakes(MAT + f'[building]\nstart = "{written}"\n')

    assert "top, right, bottom, left, upper right" in mistake.would_do


@pytest.mark.parametrize(("written", "share"), [("0.015", 0.015), ('"1.5 %"', 0.015), ('"1,5%"', 0.015), ("0", 0.0)])
def test_draw_up_is_a_fraction_or_a_percentage(written: str, share: float) -> None:
    """Both say the same; a bare 1.5 is refused, not taken for a percentage."""
    assert pytest.approx(share) == read_project(MAT + f"[my_numbers]\ndraw_up = {written}\n").my_numbers.draw_up


@pytest.mark.parametrize(
    ("name", "color"),
    [
        # CSS Color Module Level 4, W3C, section "Named Colors": https://www.w3.org/TR/css-color-4/#named-colors
        ("navy", "#000080"),
        ("Rebecca Purple", "#663399"),
        ("darkolivegreen", "#556b2f"),
        ("wheat", "#f5deb3"),
        ("yellowgreen", "#9acd32"),
        ("bisque", "#ffe4c4"),
        ("grey", "#808080"),
    ],
)
def test_a_color_may_have_its_name(name: str, color: str) -> None:
    """The named colors of the open standard, capitals and spaces as one likes (values from memory)."""
    assert color == hex_color(name)


def test_there_are_as_many_color_names_as_the_standard_has() -> None:
    """148 names: 141, and seven of them once more with grey for gray (from memory)."""
    assert 148 == len(COLOR_NAMES)
    assert 7 == sum(1 for name in COLOR_NAMES if "grey" in name and name.replace("grey", "gray") in COLOR_NAMES)


@pytest.mark.parametrize(("written", "color"), [("#ABC", "#aabbcc"), (" #EFE3C6 ", "#efe3c6")])
def test_a_hex_color_is_kept_in_one_form(written: str, color: str) -> None:
    """Six small digits, whatever was typed."""
    assert color == hex_color(written)


@pytest.mark.parametrize("written", ["#12", "#12345g", "mouse", "", "rgb(1, 2, 3)"])
def test_what_is_no_color_is_none(written: str) -> None:
    """No other notation is read."""
    assert hex_color(written) is None
