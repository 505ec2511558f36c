"""How lengths are said: one spelling, each kind rounded its own way."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from stitchflip.lengths import (
    THIN_SPACE,
    UNIT_SPACE,
    Length,
    Rounding,
    Speaker,
    Unit,
    format_inches,
    format_length,
    parse_length,
)

INCHES = Speaker(Unit.INCH)
METRIC = Speaker(Unit.CM)


def plain(text: str) -> str:
    """The text with ordinary spaces."""
    return " ".join(text.split())


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (0, "0"),
        (0.5, "½"),
        (2.5, "2½"),
        (0.25, "¼"),
        (0.75, "¾"),
        (8.125, "8⅛"),
        (6.375, "6⅜"),
        (8.625, "8⅝"),
        (5.875, "5⅞"),
        (5 / 16, "5/16"),
        (3 + 5 / 16, "3\u20095/16"),
        (15.556, "15\u20099/16"),
        (-0.125, "−⅛"),
        (-1.0625, "−1\u20091/16"),
        (13, "13"),
    ],
)
def test_inches_are_said_as_quilters_fractions(value: float, text: str) -> None:
    """Halves, quarters and eighths have signs of their own; sixteenths are built up behind a thin space."""
    assert text == format_inches(value)


@pytest.mark.parametrize(
    ("step", "rounding", "text"),
    [
        (1 / 8, Rounding.UP, "13⅜"),
        (1 / 16, Rounding.DOWN, "13\u20095/16"),
        (1 / 4, Rounding.UP, "13½"),
        (1 / 64, Rounding.NEAREST, "13\u200921/64"),
        (1, Rounding.UP, "14"),
    ],
)
def test_the_grid_and_the_direction_decide_what_is_said(step: float, rounding: Rounding, text: str) -> None:
    """13.331 in lies between 13 5/16 (13.3125) and 13 3/8; 21/64 is 0.328."""
    assert text == format_inches(13.331, step, rounding)


def test_number_and_unit_are_kept_together_by_a_narrow_space() -> None:
    """A line never breaks between a number and its unit, nor round the times sign."""
    assert f"2½{UNIT_SPACE}in" == INCHES.near(2.5)
    assert f"6.5{UNIT_SPACE}cm" == METRIC.near(6.5 / 2.54)
    assert f"13{UNIT_SPACE}×{UNIT_SPACE}44{UNIT_SPACE}in" == INCHES.size(13, 44)


def test_cut_lengths_go_up_to_the_next_eighth() -> None:
    """A strip that must be 13.331 in is cut 13 3/8, never 13 5/16."""
    assert "13⅜ in" == plain(INCHES.cut(13.331))


def test_cut_lengths_go_up_to_the_next_millimeter() -> None:
    """20.13 cm becomes 20.2 cm; 20.1 cm stays."""
    assert ("20.2 cm", "20.1 cm") == (plain(METRIC.cut(20.13 / 2.54)), plain(METRIC.cut(20.1 / 2.54)))


def test_margins_go_down_and_shortages_up() -> None:
    """A square cut 10 on point on a base of 15 leaves 7.5 - 9.5 / sqrt 2 = 0.7825: 3/4 there, 1/4 short of 1."""
    assert ("¾ in", "¼ in") == (plain(INCHES.margin(0.7825)), plain(INCHES.shortage(0.2175)))


def test_places_go_to_the_nearest_sixteenth() -> None:
    """15.556 in is marked at 15 9/16 (0.5625), 4.12 at 4 1/8."""
    assert ("15 9/16 in", "4⅛ in") == (plain(INCHES.near(15.556)), plain(INCHES.near(4.12)))


def test_a_width_the_maker_chose_is_said_as_she_chose_it() -> None:
    """Strips of 2 5/16 or 2 3/64 in, or 6.35 cm, are not rounded to a coarser ruler."""
    assert ("2 5/16 in", "2 3/64 in") == (plain(INCHES.width(2.3125)), plain(INCHES.width(2 + 3 / 64)))
    assert "6.35 cm" == plain(METRIC.width(2.5))


def test_a_piece_to_cut_keeps_its_width_and_has_its_length_rounded_up() -> None:
    """2 5/16 wide by 13.331 long is cut 2 5/16 by 13 3/8."""
    assert "2 5/16 × 13⅜ in" == plain(INCHES.cut_size(2.3125, 13.331))


def test_sizes_say_wide_before_long_and_the_unit_once() -> None:
    """46 by 33 cm laid down is wide, then long."""
    assert "46 × 33 cm" == plain(METRIC.size(46 / 2.54, 33 / 2.54))


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        (4.5, "⅛ yd"),
        (9, "¼ yd"),
        (12, "⅓ yd"),
        (24, "⅔ yd"),
        (36, "1 yd"),
        (40.5, "1⅛ yd"),
        (9.01, "⅜ yd"),
        (9 + 1e-7, "¼ yd"),
        (0, "0 yd"),
    ],
)
def test_purchases_in_yards_go_up_to_the_next_eighth(inches: float, text: str) -> None:
    """An eighth of a yard is 4 1/2 in; thirds are sold as thirds; nothing is bought too short."""
    assert text == plain(INCHES.purchase(inches))


@pytest.mark.parametrize(
    ("cm", "text"), [(40, "40 cm"), (45, "45 cm"), (41, "50 cm"), (110, "1.1 m"), (125, "1.25 m"), (100, "1 m")]
)
def test_metric_purchases_go_up_to_the_next_ten_centimeters(cm: float, text: str) -> None:
    """From a meter on they are said in meters, as in the shop; half steps that are sold stay as they are."""
    assert text == plain(METRIC.purchase(cm / 2.54))


def test_tables_leave_the_unit_to_their_head() -> None:
    """The bare voice says the same numbers without the unit, but a purchase always names it."""
    assert ("13⅜", "¾", "13 × 44") == (
        INCHES.bare.cut(13.331),
        INCHES.bare.margin(0.7825),
        plain(INCHES.bare.size(13, 44)),
    )
    assert "¼ yd" == plain(INCHES.bare.purchase(9))


def test_exact_metric_text_has_a_point_and_no_idle_zeros() -> None:
    """What was typed as 6,50 cm, 13 cm or 0.5 mm comes back shortest."""
    assert ("6.5 cm", "13 cm", "0.05 cm") == tuple(
        plain(format_length(parse_length(text), Unit.CM)) for text in ("6,50 cm", "13 cm", "0.5 mm")
    )


def test_exact_inch_text_keeps_even_what_no_ruler_shows() -> None:
    """6.5 cm is 20800 / 8128 = 2 71/127 in; saying it to a person is a speaker's task."""
    assert f"2{THIN_SPACE}71/127{UNIT_SPACE}in" == format_length(Length.of_cm(6.5), Unit.INCH)


def _read(text: str) -> Fraction:
    """The number a page shows, as a fraction of the unit; read by hand, without the reader under test."""
    sign = -1 if text.startswith("−") else 1
    total = Fraction(0)
    for word in text.removeprefix("−").split():
        digits = "".join(mark for mark in word if not mark.isnumeric() or mark.isdigit())
        signs = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
        total += sum((Fraction(signs[mark]) for mark in word if mark in signs), Fraction(digits or 0))
    return sign * total


@given(x=st.floats(-3, 3), wish=st.integers(0, 64), unit=st.sampled_from(Unit))
def test_margin_and_shortage_add_up_to_the_wish(x: float, wish: int, unit: Unit) -> None:
    """What is there and what is missing make the wish, on the page too, whenever the wish is on the grid."""
    step = {Unit.INCH: 1 / 16, Unit.CM: 0.1 / 2.54}[unit]
    assume(abs((x / step) % 1 - (1 - 1e-6 / step)) > 1e-9)  # exactly on the tolerance's edge, floats decide
    say = Speaker(unit).bare
    grid = {Unit.INCH: Fraction(1, 16), Unit.CM: Fraction(1, 10)}[unit]
    assert wish * grid == _read(say.margin(x)) + _read(say.shortage(wish * step - x))


@given(x=st.floats(0, 2000), unit=st.sampled_from(Unit))
def test_what_is_said_is_never_better_than_the_truth(x: float, unit: Unit) -> None:
    """Cut lengths, shortages and purchases are never said too short, margins never too wide, when read back."""
    say = Speaker(unit)
    for text in (say.cut(x), say.shortage(x), say.purchase(x)):
        assert parse_length(text).inches >= x - 2e-6 - 1 / 8128
    assert parse_length(say.margin(x)).inches <= x + 2e-6 + 1 / 8128


@given(x=st.floats(0, 2000), unit=st.sampled_from(Unit))
def test_everything_a_speaker_says_can_be_typed_back(x: float, unit: Unit) -> None:
    """Each text is read as a length within one step of what was to be said."""
    say = Speaker(unit)
    step = {Unit.INCH: 1 / 8, Unit.CM: 0.1 / 2.54}[unit]
    for text in (say.cut(x), say.width(x), say.margin(x), say.shortage(x), say.near(x)):
        assert abs(parse_length(text).inches - x) <= step + 1e-5
