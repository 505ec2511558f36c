"""One block each of Harbour Sheds (off-center log cabin) and Kite Weather (strings on batting); strips for all."""

from __future__ import annotations

from math import sqrt

import pytest

from stitchflip.piecing.model import Polygon
from tests.examples.drafts import Edit, codes, fabric_plan, flat, loose_ends, planned, strip_count

SHED = "harbour-shed-block"
KITE = "kite-weather-block"
ROOT = sqrt(2)


# --- Harbour Sheds -----------------------------------------------------------------------------------------


def test_shed_logs_in_the_order_sewn() -> None:
    """Light logs add 1 to a side, dark ones 1 3/4: each log is as long as the edge it meets."""
    light = {"Gull": [3, 4, 5.75, 6.75], "Sailcloth": [8.5, 9.5, 11.25, 12.25]}
    dark = {"Keel": [4, 5.75], "Boatshed": [6.75, 8.5], "Harbour": [9.5, 11.25], "Deep Water": [12.25, 14]}
    strips = flat(SHED).build.strips

    assert {**light, **dark} == {
        fabric: [round(strip.full_length, 6) for strip in strips if strip.fabric == fabric]
        for fabric in {**light, **dark}
    }


def test_shed_takes_61_in_of_light_and_72_of_dark() -> None:
    """Sums of the logs as sewn."""
    strips = flat(SHED).build.strips
    light = [strip.full_length for strip in strips if strip.cut_width == 1.5]
    dark = [strip.full_length for strip in strips if strip.cut_width == 2.25]

    assert (61, 72) == (round(sum(light), 6), round(sum(dark), 6))


def test_shed_outer_edge_is_fourteen_square_round_the_mark() -> None:
    """3 + 4 x 1 + 4 x 1 3/4 = 14; the center lies 1 1/2 off the middle, so that the block does not."""
    outline = flat(SHED).build.outline
    first = flat(SHED).build.pieces[0].opened

    assert (-7, 7) == extent(outline, 0) == extent(outline, 1)
    assert (0, 3) == extent(first, 0) == extent(first, 1)


def extent(polygon: Polygon, axis: int) -> tuple[float, float]:
    """Least and most along x (0) or y (1)."""
    places = [round(point[axis], 6) for point in polygon]
    return min(places), max(places)


def test_shed_base_is_fifteen() -> None:
    """The base as given leaves 1 in on each side of the squared-up 13."""
    assert (15, 15) == (planned(SHED).base.wide, planned(SHED).base.high)
    assert () == planned(SHED).build.bare or {"note"} == {spot.grade for spot in planned(SHED).build.bare}


@pytest.mark.parametrize(("fabric", "strips"), [("Gull", 11), ("Keel", 6), ("Boatshed", 9), ("Harbour", 12)])
def test_strips_for_twenty_sheds(fabric: str, strips: int) -> None:
    """Each log 1/4 longer, from strips of 40 in."""
    width = 1.5 if fabric == "Gull" else 2.25

    assert strips == strip_count(flat(SHED, ("how_many", "20")), fabric, width)


def test_sailcloth_for_twenty_sheds_takes_23_strips() -> None:
    """8 3/4, 9 3/4, 11 1/2, 12 1/2, twenty of each.

    Four to a strip only with three of the two short kinds (8 3/4 + 8 3/4 + 11 1/2 + 11 1/2 is 40 1/2), so at most
    40 / 3, that is 13 strips hold four; the other 28 pieces take ten strips of three. 23 can be had: seven strips of
    8 3/4, 8 3/4, 9 3/4, 12 1/2; six of 8 3/4, 9 3/4, 9 3/4, 11 1/2; the rest three to a strip.
    """
    assert 8.75 + 8.75 + 9.75 + 12.5 <= 40
    assert 8.75 + 9.75 + 9.75 + 11.5 <= 40
    assert 12.5 * 3 <= 40
    assert 23 == strip_count(flat(SHED, ("how_many", "20")), "Sailcloth", 1.5)


def test_deep_water_for_twenty_sheds_takes_15_strips() -> None:
    """12 1/2 and 14 1/4: ten strips of a long and two short ones (39 1/4), and the other ten long ones by twos."""
    assert 14.25 + 2 * 12.5 <= 40
    assert 15 == strip_count(flat(SHED, ("how_many", "20")), "Deep Water", 2.25)


def test_shed_back_squares_lie_two_to_a_width() -> None:
    """Twenty squares of 15: ten rows of two, 150 + 1 in, 4 1/4 yd."""
    best = planned(SHED, ("how_many", "20")).backing

    regular = next(one for one in (best.best, *best.others) if "108" not in one.way and one.how_many_wide == 2)
    assert (151, 153) == (regular.length_in, regular.buy_in)


def test_shed_back_squares_lie_seven_to_a_wide_width() -> None:
    """From 108 in: three rows, 45 + 1 in, 1 3/8 yd."""
    backing = planned(SHED, ("how_many", "20")).backing
    wide = next(one for one in (backing.best, *backing.others) if "108" in one.way)

    assert (7, 46, 49.5) == (wide.how_many_wide, wide.length_in, wide.buy_in)


def test_twenty_sheds_have_320_logs() -> None:
    """Four rounds of four, twenty times, and no end to lock."""
    assert 320 == 20 * len(flat(SHED).build.strips)
    assert [] == loose_ends(flat(SHED))


def test_lamp_for_twenty_takes_two_rows() -> None:
    """Thirteen squares of 3 in to a width: 2 x 3 + 1 in, 1/4 yd."""
    lamp = fabric_plan(flat(SHED, ("how_many", "20")), "Lamp")

    assert ([3, 3], 7, 9) == ([row.height for row in lamp.rows], lamp.need_in, lamp.buy_in)


# --- Kite Weather ------------------------------------------------------------------------------------------

KITE_STRIPS = [
    # fabric, cut width, shortest, cut, strips of 40 for sixteen blocks, inches to buy
    ("Kite Tail", 2, 13.08, 13.25, 6, 13.5),
    ("Gorse", 1.5, 11.58, 12, 11, 18),
    ("Tarn", 2.25, 9.58, 10, 8, 22.5),
    ("Moor", 1.75, 6.08, 6.5, 6, 13.5),
    ("Chalk", 2.25, 3.58, 4, 4, 13.5),
]
ELSEWHERE: tuple[Edit, ...] = (
    ("fabrics.5.name", "Plain"),
    ("binding.fabric", "Plain"),
    ("how_many", "16"),
)
"""Sixteen blocks with the binding of the whole piece cut from another fabric."""


@pytest.mark.parametrize(("fabric", "width", "shortest", "cut", "_strips", "_buy"), KITE_STRIPS)
def test_kite_strips(fabric: str, width: float, shortest: float, cut: float, _strips: int, _buy: float) -> None:
    """Both strips of a fabric are alike; reach 3/8."""
    pieces = [piece for piece in flat(KITE).build.pieces if piece.fabric == fabric]

    assert (1 if fabric == "Kite Tail" else 2) == len(pieces)
    assert {width} == {piece.cut_width for piece in pieces}
    assert pytest.approx([shortest] * len(pieces), abs=0.005) == [piece.needed_length for piece in pieces]
    assert {cut} == {piece.cut_length for piece in pieces}


def test_kite_middle_strip_by_formula() -> None:
    """Across the corners of 9 1/4 square, with both raw edges 1 in off the diagonal: 9.25 sqrt 2 = 13.08."""
    assert pytest.approx(9.25 * ROOT) == flat(KITE).build.pieces[0].needed_length


def test_kite_middle_shows_one_and_a_half() -> None:
    """2 - 2 x 1/4 between its seams; the corner triangle is 8.5 / sqrt 2 - 4.75 - 1/4 sqrt 2 = 0.91 high."""
    build = flat(KITE).build
    seams = sorted(abs(strip.seam_at) for strip in build.strips)
    corner = 4.25 * ROOT

    assert [0.75, 0.75] == seams[:2]
    assert pytest.approx(0.91, abs=0.005) == (corner - 0.25 * ROOT) - seams[-1]
    assert "strip.sliver" not in codes(flat(KITE))


@pytest.mark.parametrize(("fabric", "width", "_shortest", "_cut", "strips", "buy"), KITE_STRIPS)
def test_strips_for_sixteen_kites(
    fabric: str, width: float, _shortest: float, _cut: float, strips: int, buy: float
) -> None:
    """6, 11, 8, 6, 4 strips of 40 in; 3/8, 1/2, 5/8, 3/8, 3/8 yd."""
    made = flat(KITE, *ELSEWHERE)

    assert strips == strip_count(made, fabric, width)
    assert buy == fabric_plan(made, fabric).buy_in


def test_kite_tail_of_39_and_a_half_gives_two_middles_per_width() -> None:
    """3 x 13 1/4 = 39 3/4: eight strips instead of six, 1/2 yd; cut 13 1/8 there are three again (39 3/8)."""
    narrow = (*ELSEWHERE, ("fabrics.0.usable_width", "39 1/2"))
    tail = fabric_plan(flat(KITE, *narrow), "Kite Tail")
    shorter = fabric_plan(flat(KITE, *narrow, ("rounds.0.cut_long", "13 1/8")), "Kite Tail")

    assert (8, 18) == (len(tail.strip_plans[0].strips), tail.buy_in)
    assert 6 == len(shorter.strip_plans[0].strips)


def test_tarn_of_39_and_a_half_gives_three_per_width() -> None:
    """Four of 10 fill 40 with nothing to spare: at 39 1/2 eleven strips, 3/4 yd."""
    tarn = fabric_plan(flat(KITE, *ELSEWHERE, ("fabrics.2.usable_width", "39 1/2")), "Tarn")

    assert (11, 27) == (len(tarn.strip_plans[0].strips), tarn.buy_in)


def test_kite_block_has_nine_strips_and_no_end_to_lock() -> None:
    """144 for sixteen."""
    assert 144 == 16 * len(flat(KITE).build.pieces)
    assert [] == loose_ends(flat(KITE))
