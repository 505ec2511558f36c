"""The base: size, spare, placement marks."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stitchflip.finishing import plan_base
from stitchflip.finishing.base import placement_marks
from stitchflip.lengths import Unit
from tests.finishing.scenarios import (
    CM,
    SPECK,
    Laid,
    cm,
    harbour_block,
    inches,
    kite_block,
    lantern_walk,
    morning_tray,
    snow_gate,
    tin_roof,
)
from tests.strategies import quarters
from tests.twins.table import house, project, trim


@pytest.mark.parametrize(
    ("laid", "wide", "high"),
    [
        (lantern_walk(), 15.5, 48),  # 13 / 0.985 + 2 = 15.20, 44 / 0.985 + 3 = 47.67
        (morning_tray(), 52 * CM, 40 * CM),  # 47 / 0.985 + 4 = 51.72, 35 / 0.985 + 4 = 39.53
        (tin_roof(), 14.5, 60),  # 12 / 0.985 + 2 = 14.18, 56 / 0.985 + 3 = 59.85
        (snow_gate(), 25, 28.5),  # 22.5 / 0.985 + 2 = 24.84, 25.98 / 0.985 + 2 = 28.38
        (harbour_block(), 15, 15),  # 13 / 0.985 + 1.5 = 14.70
        (kite_block(), 10, 10),  # 8.5 / 0.985 + 1 = 9.63
    ],
)
def test_the_base_is_the_squared_up_size_before_drawing_in_plus_the_spare_rounded_up(
    laid: Laid, wide: float, high: float
) -> None:
    """Trim divided by what stitching leaves, plus spare on both sides, goes up to 1/2 in or 1 cm."""
    assert (wide, high) == pytest.approx((laid.base.wide, laid.base.high), abs=1e-9)
    assert not laid.base.is_given


def test_the_least_size_is_told_before_rounding() -> None:
    """Lantern Walk needs 15.20 x 47.67 before rounding."""
    base = lantern_walk().base
    assert (15.20, 47.67) == pytest.approx((base.least_wide, base.least_high), abs=0.005)


def test_a_size_on_the_grid_is_not_pushed_to_the_next_step() -> None:
    """Without draw-up 13 + 2 in is 15 in exactly, not 15 1/2."""
    laid = inches({"wide": "13", "long": "13"}, {"draw_up_x": 0.0, "draw_up_y": 0.0})
    assert (15.0, 15.0) == (laid.base.wide, laid.base.high)


def test_a_given_size_is_kept_and_its_real_spare_told() -> None:
    """A base 15 in wide for 13 in leaves (15 - 13.198) / 2 = 0.901 in; the length is still computed."""
    base = lantern_walk(base={"wide": "15"}).base
    assert base.is_given
    assert (15.0, 48.0) == (base.wide, base.high)
    assert 0.9010 == pytest.approx(base.spare_x, abs=5e-5)
    assert 1.6650 == pytest.approx(base.spare_y, abs=5e-5)  # (48 - 44.670) / 2


def test_a_given_base_that_is_too_small_tells_a_spare_below_zero() -> None:
    """A base 12 in wide lacks (13.198 - 12) / 2 = 0.599 in on each side of a runner 13 in wide."""
    assert -0.5990 == pytest.approx(lantern_walk(base={"wide": "12"}).base.spare_x, abs=5e-5)


def test_a_runner_drawn_lying_has_its_length_across() -> None:
    """Wide and long change places with the picture, not with the piece."""
    laid = inches({"wide": "13", "long": "44", "length_runs": "across"}, {"spare_x": 1.5, "spare_y": 1.0})
    assert (48.0, 15.5) == (laid.base.wide, laid.base.high)


def test_the_house_spare_is_never_less_than_the_reach() -> None:
    """With a reach of 3/4 in past the trim line a spare of 1/2 in becomes 3/4 in: 8 + 1.5 = 9 1/2."""
    laid = inches({"wide": "8", "long": "8"}, {"spare_x": 0.5, "spare_y": 0.5, "reach": 0.75, "draw_up_x": 0.0})
    assert 9.5 == laid.base.wide


def test_a_spare_the_maker_gave_stands_even_at_nothing() -> None:
    """She may sew on a base cut to the squared-up size."""
    laid = inches(
        {"wide": "8", "long": "8"},
        {"spare_x": 0.0, "spare_y": 0.0, "draw_up_x": 0.0},
        base={"spare_across": "0", "spare_at_ends": "0"},
    )
    assert (8.0, 0.0) == (laid.base.wide, laid.base.spare_x)


def test_marks_are_both_center_lines_and_a_line_every_4_in() -> None:
    """On a base 15 1/2 x 48 in: 0 and 4 out across; 0, 4, 8, 12, 16, 20 out along; 24 would be the edge."""
    marks = lantern_walk().base.marks
    assert [-4.0, 0.0, 4.0] == sorted(place for axis, place in marks if axis == "x")
    along = [4.0 * count for count in range(-5, 6)]
    assert along == sorted(place for axis, place in marks if axis == "y")
    assert (("x", 0.0), ("y", 0.0)) == marks[:2]


def test_metric_marks_are_10_cm_apart() -> None:
    """On a base of 52 cm: 10 and 20 cm out from the center line."""
    found = [place / CM for axis, place in placement_marks(52 * CM, 40 * CM, Unit.CM) if axis == "x" and place > 0]
    assert [10, 20] == pytest.approx(found)


def test_the_first_piece_is_handed_on_where_it_lies() -> None:
    """An off-center first piece keeps its place from the center mark."""
    laid = cm({"wide": "30", "long": "30"})
    off = tuple((x + 1.5, y - 1.5) for x, y in SPECK)
    assert off == plan_base(laid.project, laid.numbers, laid.trim, off).first_piece


@given(
    wide=quarters(4, 40),
    long=quarters(4, 80),
    spare=quarters(0.5, 4),
    draw_up=st.sampled_from([0.0, 0.015, 0.03]),
)
def test_base_less_spare_gives_back_the_squared_up_size(wide: float, long: float, spare: float, draw_up: float) -> None:
    """What is left when the real spare is trimmed off both sides and stitching has drawn it in is the trim."""
    numbers = house(spare_x=spare, spare_y=spare, draw_up_x=draw_up, draw_up_y=draw_up, reach=0.5)
    made = project(squared_up=trim(wide, long))
    outline = ((-wide / 2, -long / 2), (wide / 2, -long / 2), (wide / 2, long / 2), (-wide / 2, long / 2))
    base = plan_base(made, numbers, outline, SPECK)
    assert wide == pytest.approx((base.wide - 2 * base.spare_x) * (1 - draw_up))
    assert long == pytest.approx((base.high - 2 * base.spare_y) * (1 - draw_up))
    assert spare - 1e-6 <= base.spare_x < spare + 0.25 + 1e-6  # at most half a step more than asked for
    assert base.wide >= base.least_wide - 1e-6
