"""Tipping points: what little change costs or saves a strip, checked against counts by hand."""

from __future__ import annotations

from math import floor

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.cutting import FabricPlan, Piece
from stitchflip.cutting.model import TippingPoint
from stitchflip.lengths import Unit
from stitchflip.project.model import Working
from tests.cutting.lists import CM, METRIC, binding, fabric, plain, planned, strips
from tests.strategies import quarters

LARCH = (6.75, *[8.5] * 4, 10.25, 10.25, *[12] * 4, 13.75)


def points(plan: FabricPlan, change: str) -> list[TippingPoint]:
    """The tipping points of one kind."""
    return [point for point in plan.tipping_points if point.change == change]


def test_larch_one_inch_wider_saves_a_strip() -> None:
    """At 41 in three strips do instead of four, 6 in instead of 8."""
    (point,) = points(planned(fabric("Larch"), strips(2, *LARCH)), "wider")

    assert 1 == point.slack_in
    assert (
        "Larch, strips 2 in: fabric 1 in wider (41 in) and 3 strips do instead of 4, 6 in of length instead of 8 in; "
        "¼ yd to buy all the same." == plain(point.what)
    )


def test_larch_at_forty_one_has_no_width_to_lose() -> None:
    """Three strips are full to the last 41st inch; at 40 1/2 in a fourth is needed."""
    (point,) = points(planned(fabric("Larch", usable_width="41"), strips(2, *LARCH)), "narrower")

    assert 0 == point.slack_in
    assert "all 41 in of the width are used; at 40½ in wide it takes 4 strips instead of 3" in plain(point.what)


def test_quarter_yard_of_larch_is_used_to_the_thread() -> None:
    """8 in of strips and 1 in for straightening are 9 in: the purchase says that nothing is to spare."""
    (point,) = points(planned(fabric("Larch"), strips(2, *LARCH)), "purchase")

    assert 0 == point.slack_in
    assert (
        "Larch: 8 in of cuts and 1 in for straightening use all of ¼ yd: nothing to spare. "
        "The next step is ⅜ yd." == plain(point.what)
    )


def test_string_middles_lose_a_piece_per_width_below_thirty_nine_and_three_quarters() -> None:
    """Three times 13 1/4 is 39 3/4: at 39 1/2 eight strips instead of six, 1/2 yd instead of 3/8."""
    (point,) = points(planned(fabric("Kite Tail"), strips(2, 13.25, count=16)), "narrower")

    assert 0.25 == pytest.approx(point.slack_in)
    assert (
        "Kite Tail, strips 2 in: fabric ¼ in narrower is the limit; at 39½ in wide it takes 8 strips instead of 6; "
        "buy ½ yd instead of ⅜ yd." == plain(point.what)
    )


def test_four_tens_to_a_width_have_nothing_to_spare() -> None:
    """40 in of 40: at 39 1/2 eleven strips instead of eight, 3/4 yd instead of 5/8."""
    (point,) = points(planned(fabric("Tarn"), strips(2.25, 10, count=32)), "narrower")

    assert 0 == point.slack_in
    assert "at 39½ in wide it takes 11 strips instead of 8; buy ¾ yd instead of ⅝ yd." in plain(point.what)


def test_pieces_that_may_be_cut_a_little_shorter_save_strips() -> None:
    """At 39 1/2 in the 13 1/4 in pieces (shortest 13.08) come three to a width again when cut 13 1/8."""
    piece = Piece("Middle", 2, 13.25, 16, shortest=13.08)
    (point,) = points(planned(fabric("Kite Tail", usable_width="39 1/2"), (piece,)), "shorter")

    assert 0.125 == pytest.approx(point.slack_in)
    assert "cut each ⅛ in shorter (all still reach) and 6 strips do instead of 8" in plain(point.what)


def test_pieces_that_would_not_reach_are_not_shortened() -> None:
    """With 13.2 in as the shortest that reaches, an eighth shorter is no advice."""
    piece = Piece("Middle", 2, 13.25, 16, shortest=13.2)

    assert [] == points(planned(fabric(usable_width="39 1/2"), (piece,)), "shorter")


def test_how_much_longer_a_cut_may_be() -> None:
    """40 / 3 is 13.333: a sixteenth more is possible, an eighth is not."""
    (point,) = points(planned(fabric("Kite Tail"), strips(2, 13.25, count=16)), "longer")

    assert 1 / 16 == pytest.approx(point.slack_in)
    assert "each may be cut up to 1/16 in longer; more takes 8 strips instead of 6" in plain(point.what)


def test_two_brass_strips_need_their_full_forty_inches() -> None:
    """0.2 in on each strip: 3/16 narrower still does, at 39 1/2 a third strip is needed."""
    lengths = (8.25, 9.25, 9.25, 10.25, 10.15, 11.15, 10.15, 11.15)
    pieces = tuple(
        Piece(str(step), 1.5, long + 0.5, shortest=long, step=step, cut_first=False)
        for step, long in enumerate(lengths, 1)
    )
    (point,) = points(planned(fabric("Brass"), pieces, working=Working.TRIM_AS_YOU_GO), "narrower")

    assert 3 / 16 == pytest.approx(point.slack_in)
    assert "at 39½ in wide it takes 3 strips instead of 2" in plain(point.what)


def test_rows_lose_a_piece_when_the_fabric_is_narrower() -> None:
    """Three squares of 13 from 39 1/4 in: 1/4 in to spare, at 38 1/2 two to a row and two rows more."""
    squares = (Piece("Square", 13, 13, 9, kind="rectangle"),)
    (point,) = points(planned(fabric("Gull", usable_width="39 1/4"), squares), "narrower")

    assert 0.25 == pytest.approx(point.slack_in)
    assert "at 38½ in wide you lose a row; 65 in instead of 39 in; buy 1⅞ yd instead of 1⅛ yd." in plain(point.what)


def test_rows_gain_a_piece_when_the_fabric_is_wider() -> None:
    """Squares of 10 1/4: three from 40 in, four from 41."""
    squares = (Piece("Square", 10.25, 10.25, 4, kind="rectangle"),)
    (point,) = points(planned(fabric("Gull"), squares), "wider")

    assert 1 == pytest.approx(point.slack_in)
    assert "1 in wider (41 in) and they take 10¼ in instead of 20½ in" in plain(point.what)


def test_metric_points_are_told_in_centimeters() -> None:
    """Two bases of 52 cm side by side in 105: 1 cm to spare, at 103 one to a row, 1.7 m instead of 90 cm."""
    base = (Piece("Base", 52 * CM, 40 * CM, 4, kind="rectangle", can_turn=False),)
    (point,) = points(planned(fabric("Clover", unit=Unit.CM), base, METRIC, unit=Unit.CM), "narrower")

    assert 1 == pytest.approx(point.slack_in / CM)
    assert "Clover, rows: fabric 1 cm narrower is the limit; at 103 cm wide you lose a row" in plain(point.what)
    assert "160 cm instead of 80 cm; buy 1.7 m instead of 90 cm." in plain(point.what)


def test_whole_strips_and_shelves_have_no_tipping_points_of_width() -> None:
    """A binding's strips are counted elsewhere, and what is on hand is as wide as it is."""
    assert [] == points(planned(fabric(), (binding(2.5, 40, 3),)), "narrower")
    on_hand = [{"name": "fat quarter", "wide": "17 1/2", "long": "20 1/2"}]
    assert () == planned(fabric(on_hand=on_hand, only_on_hand=True), strips(2, 13)).tipping_points


@given(quarters(38, 42), quarters(8, 20), st.integers(4, 30))
@settings(max_examples=60, deadline=None)
def test_slack_is_true_for_pieces_of_one_length(width: float, length: float, count: int) -> None:
    """Narrower by the slack the count stays, a sixteenth more and it rises; longer likewise."""
    plan = planned(fabric(usable_width=str(width)), strips(2, length, count=count))
    needed = -(-count // floor(width / length + 1e-6))

    for point in points(plan, "narrower"):
        assert needed == -(-count // floor((width - point.slack_in) / length + 1e-6))
        assert needed < -(-count // floor((width - point.slack_in - 1 / 16) / length + 1e-6))
    for point in points(plan, "longer"):
        assert needed == -(-count // floor(width / (length + point.slack_in) + 1e-6))
        assert needed < -(-count // floor(width / (length + point.slack_in + 1 / 16) + 1e-6))
    for point in points(plan, "wider"):
        assert needed > -(-count // floor((width + point.slack_in) / length + 1e-6))
        assert needed == -(-count // floor((width + point.slack_in - 1 / 16) / length + 1e-6))
