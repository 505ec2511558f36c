"""Lengths as they are typed, and what is refused."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stitchflip.errors import LengthError
from stitchflip.lengths import Length, Unit, format_length, parse_length


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("2 1/2", "5/2"),
        ("2½ in", "5/2"),
        ('2-1/2"', "5/2"),
        ("2 1/2 in.", "5/2"),
        ("2–1/2 inches", "5/2"),
        ("2½”", "5/2"),
        ("2 ½", "5/2"),
        ("2.5", "5/2"),
        ("2,5 in", "5/2"),
        (".5", "1/2"),
        ("1/2", "1/2"),
        ("½", "1/2"),
        ("1⁄2 in", "1/2"),
        ("2 5/16 in", "37/16"),
        ("2\u20095/16\u202fin", "37/16"),
        ("2\u00a05/16\u00a0in", "37/16"),
        ("  13  ", "13"),
        ("13IN", "13"),
        ("0", "0"),
        ("5/4", "5/4"),
        ("⅓ yd", "12"),
        ("1 1/8 yd", "81/2"),
        ("1⅛ yards", "81/2"),
        ("1000 yd", "36000"),
    ],
)
def test_inches_and_yards_are_read_the_way_they_are_written(text: str, inches: str) -> None:
    """Every usual spelling gives the exact length (an eighth of a yard is 4 1/2 in)."""
    assert Fraction(inches) * 8128 == parse_length(text).ticks


@pytest.mark.parametrize(
    ("text", "millimeters"),
    [("6.5 cm", 65), ("6,5 cm", 65), ("65 mm", 65), ("65mm", 65), ("1.1 m", 1100), ("0,8 mm", Fraction(8, 10))],
)
def test_metric_lengths_are_read_with_point_or_comma(text: str, millimeters: Fraction) -> None:
    """1 mm is 320 ticks, so metric lengths to 0.1 mm are exact."""
    assert millimeters * 320 == parse_length(text).ticks


def test_a_bare_number_takes_the_unit_of_the_project() -> None:
    """Without a unit 6.5 is centimeters in a metric project, inches in an inch one; a unit typed always wins."""
    assert Length.of_cm(6.5) == parse_length("6.5", Unit.CM)
    assert Length.of_inches(6.5) == parse_length("6.5", Unit.INCH)
    assert Length.of_inches(6.5) == parse_length("6.5 in", Unit.CM)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("2 1/0", "length.divides-by-zero"),
        ("-3", "length.negative"),
        ("−½ in", "length.negative"),
        ("1/2/3", "length.not-a-length"),
        ("two", "length.not-a-length"),
        ("nan", "length.not-a-length"),
        ("inf", "length.not-a-length"),
        ("1e400", "length.not-a-length"),
        ("1e3", "length.not-a-length"),
        ("2 1", "length.not-a-length"),
        ("1.2.3", "length.not-a-length"),
        ("½½", "length.not-a-length"),
        ("1 yd 4 in", "length.not-a-length"),
        ("٣", "length.not-a-length"),
        ("True", "length.not-a-length"),
        ("", "length.empty"),
        (" \t", "length.empty"),
        ("3 ft", "length.feet"),
        ("3'", "length.feet"),
        ("5 cubits", "length.unknown-unit"),
        ("13 x 44", "length.two-lengths"),
        ("13 in × 44 in", "length.two-lengths"),
        ("1,250 cm", "length.unclear-comma"),
        ("2 5/4", "length.fraction-not-below-one"),
        ("1000.01 yd", "length.too-long"),
        ("99999999999999999999", "length.too-long"),
    ],
)
def test_what_is_not_one_plain_length_is_refused_by_name(text: str, code: str) -> None:
    """The error names the text as typed, says what would do, and has a code of its own."""
    with pytest.raises(LengthError) as caught:
        parse_length(text)
    error = caught.value
    assert code == error.code
    assert f'"{text}"' in error.what
    assert error.fix.endswith(".")


def test_a_text_without_end_is_refused_and_cut_short_in_the_message() -> None:
    """Ten million digits are neither computed nor printed back."""
    with pytest.raises(LengthError) as caught:
        parse_length("9" * 10_000_000)
    assert len(str(caught.value)) < 200


def _read_or_refused(text: str) -> Length | None:
    """The length, or None when the reader's own error refused it; any other error goes through."""
    try:
        return parse_length(text)
    except LengthError:
        return None


@given(text=st.text())
def test_any_text_is_a_length_or_a_length_error(text: str) -> None:
    """Nothing typed gets past the error tree, and nothing read is below zero or over 1000 yd."""
    length = _read_or_refused(text)
    assert length is None or 0 <= length.inches <= 36_000


@given(text=st.text(alphabet="0123456789 /.,-½⅛\"'inydcm\u2009\u202f", max_size=12))
def test_any_text_made_of_the_right_signs_is_a_length_or_a_length_error(text: str) -> None:
    """The same, where the signs are those of lengths and only their order is wrong."""
    length = _read_or_refused(text)
    assert length is None or 0 <= length.inches <= 36_000


@given(ticks=st.integers(0, 36_000 * 8128), unit=st.sampled_from(Unit))
def test_reading_what_was_written_gives_the_same_length(ticks: int, unit: Unit) -> None:
    """Every length there is survives being written in either unit and read back."""
    assert Length(ticks) == parse_length(format_length(Length(ticks), unit))


@given(sixty_fourths=st.integers(0, 36_000 * 64))
def test_lengths_of_an_inch_ruler_survive_the_page(sixty_fourths: int) -> None:
    """Sixty-fourths of an inch are read back whatever the project's own unit is."""
    length = Length(sixty_fourths * 127)
    assert length == parse_length(format_length(length, Unit.INCH), Unit.CM)


@given(tenths=st.integers(0, 900_000))
def test_lengths_of_a_metric_ruler_survive_the_page(tenths: int) -> None:
    """Tenths of a millimeter are read back whatever the project's own unit is."""
    length = Length(tenths * 32)
    assert length == parse_length(format_length(length, Unit.CM), Unit.INCH)
