"""Harbour Sheds and Kite Weather whole: twenty off-center log cabins joined by strips, sixteen string blocks by seams.

Lengths and purchases were worked out by hand and with strip packing of its own, with nothing drawn in and nothing
lost in the folds.
"""

from __future__ import annotations

import pytest

from stitchflip.piecing.geometry import area
from stitchflip.planning.model import Plan
from tests.examples.drafts import codes, fabric_plan, flat, planned

SHEDS = "harbour-sheds"
KITES = "kite-weather"
YARD = 36.0


def joined_size(made: Plan) -> tuple[float, float]:
    """Squared up, wide and long."""
    assert made.quilt is not None
    return round(made.quilt.wide, 6), round(made.quilt.high, 6)


# --- Harbour Sheds -----------------------------------------------------------------------------------------


def test_sheds_come_to_52_3_8_by_65_1_2() -> None:
    """4 x 12 1/2 + 3 x 5/8 + 1/2 and 5 x 12 1/2 + 4 x 5/8 + 1/2."""
    assert (4 * 12.5 + 3 * 0.625 + 0.5, 5 * 12.5 + 4 * 0.625 + 0.5) == joined_size(planned(SHEDS))


def test_sheds_join_shows_five_eighths_and_passes_by_an_eighth() -> None:
    """Flat 1 1/8 and folded 2: shows 1 1/8 - 1/2, gap 1 1/8 - 1, passes 1 - 1/4 - 5/8."""
    quilt = planned(SHEDS).quilt
    assert quilt is not None
    assert (0.625, 0.125, 0.125) == (quilt.join.shows, quilt.join.gap, quilt.join.passes)


def test_ten_sheds_turn_each_way() -> None:
    """The two kinds are mirror images: the light logs of one lie on the right, of the other on the left."""
    made = planned(SHEDS)
    one, other = made.kinds
    assert (10, 10) == (one.count, other.count)
    for strip, mirrored in zip(one.build.strips, other.build.strips, strict=True):
        assert strip.fabric == mirrored.fabric
        assert pytest.approx(strip.needed_length) == mirrored.needed_length
        assert pytest.approx((-strip.normal[0], strip.normal[1])) == mirrored.normal


@pytest.mark.parametrize(
    ("fabric", "short", "joined"), [("Jetty", 5, 6), ("Tide", 5, 6)], ids=["flat strips", "folded strips"]
)
def test_sheds_joining_strips(fabric: str, short: int, joined: int) -> None:
    """Fifteen of 13 in, three to a strip of 40; four rows of 52 3/8, 209 1/2 in all, from six strips joined."""
    short_plan, long_plan = sorted(fabric_plan(planned(SHEDS), fabric).strip_plans, key=lambda one: one.is_whole)
    assert (short, joined) == (len(short_plan.strips), len(long_plan.strips))


@pytest.mark.parametrize(
    ("fabric", "yards"),
    [
        ("Gull", 0.5),
        ("Keel", 0.5),
        ("Boatshed", 0.625),
        ("Harbour", 0.875),
        ("Lamp", 0.25),
        ("Jetty", 0.375),
        ("Tide", 0.75),
    ],
)
def test_sheds_purchases(fabric: str, yards: float) -> None:
    """Strips times their width and 1 in for straightening, up to the next eighth of a yard."""
    assert yards * YARD == fabric_plan(flat(SHEDS), fabric).buy_in


def test_sheds_flat_strips_leave_an_eighth() -> None:
    """Eleven strips of 1 1/8 are 12 3/8, with 1 in for straightening 13 3/8; 3/8 yd is 13 1/2."""
    assert pytest.approx(13.5 - (11 * 1.125 + 1)) == fabric_plan(planned(SHEDS), "Jetty").spare_in


def test_sheds_binding_takes_seven_strips() -> None:
    """235 3/4 round, 247 3/4 with 12 in extra; seven strips of 40 less six joins of 2 1/2 give 265."""
    binding = planned(SHEDS).binding
    assert (235.75, 247.75, 7, 265.0) == (
        round(binding.perimeter, 6),
        round(binding.need, 6),
        binding.strips,
        binding.made,
    )


def test_sheds_backing_both_widths() -> None:
    """Twenty squares of 15: two to 40 in take 150 + 1 in, 4 1/4 yd; seven to 107 in take 45 + 1 in, 1 3/8 yd."""
    backing = planned(SHEDS).backing
    wide = next(choice for choice in backing.others if choice.way == "108 in wide")
    assert (151, 4.25 * YARD, 46, 1.375 * YARD) == (
        backing.best.length_in,
        backing.best.buy_in,
        wide.length_in,
        wide.buy_in,
    )


def test_sheds_measured_from_12_7_8_to_13_1_8_are_trimmed_to_12_7_8() -> None:
    """4 x 12 3/8 + 3 x 5/8 + 1/2 = 51 7/8, and 5 x 12 3/8 + 4 x 5/8 + 1/2 = 64 7/8."""
    rows = ['["13", "12 7/8", "13", "13 1/8"]', *['["13", "13", "13", "13"]'] * 4]
    made = planned(SHEDS, ("joined.measured", f"[{', '.join(rows)}]"))
    assert (51.875, 64.875) == joined_size(made)


def test_sheds_have_320_logs_and_no_end_to_lock() -> None:
    """Sixteen logs in each of twenty blocks."""
    made = planned(SHEDS)
    assert 320 == sum(kind.count * len(kind.build.strips) for kind in made.kinds)
    assert not {code for code in codes(made) if code.startswith("seam.")}


# --- Kite Weather ------------------------------------------------------------------------------------------


def test_kites_come_to_32_1_2_square() -> None:
    """Four blocks that finish 8 and the outer allowances."""
    assert (32.5, 32.5) == joined_size(planned(KITES))


@pytest.mark.parametrize(
    ("fabric", "width", "strips"),
    [("Kite Tail", 2, 6), ("Gorse", 1.5, 11), ("Tarn", 2.25, 8), ("Moor", 1.75, 6), ("Chalk", 2.25, 4)],
)
def test_kites_strips_of_forty(fabric: str, width: float, strips: int) -> None:
    """Sixteen middles of 13 1/4, and thirty-two each of 12, 10, 6 1/2 and 4."""
    (one,) = (
        own
        for own in fabric_plan(flat(KITES), fabric).strip_plans
        if abs(own.width - width) < 1e-6 and not own.is_whole
    )
    assert strips == len(one.strips)


@pytest.mark.parametrize(("fabric", "yards"), [("Kite Tail", 0.375), ("Gorse", 0.5), ("Moor", 0.375), ("Chalk", 0.375)])
def test_kites_purchases(fabric: str, yards: float) -> None:
    """Strips times their width and 1 in, up to the next eighth of a yard."""
    assert yards * YARD == fabric_plan(flat(KITES), fabric).buy_in


def test_kites_backing_gives_the_sleeve_too() -> None:
    """36 1/2 square and a sleeve 8 1/2 x 32 1/2 below it: 45 + 1 in, 1 3/8 yd."""
    backing = planned(KITES).backing
    assert (36.5, 36.5, 46, 1.375 * YARD) == (backing.wide, backing.high, backing.best.length_in, backing.best.buy_in)


def test_kites_binding_takes_four_strips() -> None:
    """Round 32 1/2 square is 130, with 12 in extra 142; four strips of 40 less three joins of the cut width."""
    binding = planned(KITES).binding
    assert (130, 142, 4) == (round(binding.perimeter, 6), round(binding.need, 6), binding.strips)


def test_kites_have_144_strips() -> None:
    """Nine in each of sixteen blocks, the middle ones counted."""
    made = planned(KITES)
    assert 144 == sum(kind.count * len(kind.build.pieces) for kind in made.kinds)


def test_kites_diagonals_meet_into_diamonds() -> None:
    """Neighbors are mirror images: the middle strip rises in one and falls in the other, and patches are as large."""
    rising, falling = planned(KITES).kinds
    assert rising.build.strips[0].normal[0] * falling.build.strips[0].normal[0] < 0
    for one, other in zip(rising.build.pieces, falling.build.pieces, strict=True):
        assert pytest.approx(sum(map(area, one.visible))) == sum(map(area, other.visible))
