"""Morning Tray: four placemats in courthouse steps, 47 x 35 cm as laid, metric.

Seam 0.75 cm; strips cut 5 show 3.5, strips cut 6 would show 4.5 and show 3.0 after binding. Reach past the trim
line 1.2 cm in the file; lengths do not depend on it except in the last pair.
"""

from __future__ import annotations

from itertools import pairwise

import pytest

from tests.examples.drafts import Edit, by_round, fabric_plan, finding, flat, loose_ends, planned, strip_count

NAME = "morning-tray"
CM = 2.54
REACH: Edit = ("my_numbers.reach", "1.5")


def cm(value_in: float) -> float:
    """Inches as the maker's centimeters."""
    return round(value_in * CM, 4)


def test_center_shows_25_and_a_half_by_13_and_a_half() -> None:
    """27 x 15 cut, less two seams of 0.75 each way."""
    polygon = flat(NAME).build.pieces[0].visible[0]
    xs, ys = [x for x, _ in polygon], [y for _, y in polygon]

    assert (25.5, 13.5) == (cm(max(xs) - min(xs)), cm(max(ys) - min(ys)))


def test_outer_edge_after_each_round() -> None:
    """27 + 2 x 3.5, then again, then 2 x 4.5: 34 x 22, 41 x 29, 50 x 38."""
    edges = [
        tuple(cm(2 * next(strip.raw_edge_at for strip in one if strip.side == side)) for side in ("right", "top"))
        for one in by_round(flat(NAME))
    ]

    assert [(34, 22), (41, 29), (50, 38)] == edges


def test_lengths_in_the_order_sewn() -> None:
    """Top, bottom, then the sides: 27, 27, 22, 22; 34, 34, 29, 29; 41, 41, 38, 38."""
    strips = flat(NAME, REACH).build.strips

    assert [27, 27, 22, 22, 34, 34, 29, 29, 41, 41, 38, 38] == [cm(strip.cut_length) for strip in strips]
    assert ["top", "bottom"] * 3 == [strip.side for strip in strips if strip.step % 4 in {1, 2}]


def test_last_pair_reaches_with_less_than_it_is_cut() -> None:
    """Courthouse sides run to the raw edges at 19 cm; with a reach of 1.2 (1.2 + 17.5 = 18.7) 37.4 is enough."""
    assert [37.4, 37.4] == [cm(strip.needed_length) for strip in by_round(flat(NAME))[2][2:]]


def test_strips_show_three_and_a_half_and_the_last_three() -> None:
    """Seams stand 3.5 apart; the last shows from its seam to the binding's seam: 17.5 - 0.75 - (14.5 - 0.75) = 3.0."""
    rounds = by_round(flat(NAME))
    tops = [next(strip for strip in one if strip.side == "top") for one in rounds]
    inner = flat(NAME).build.trim_inner

    assert [3.5, 3.5] == [cm(after.seam_at - before.seam_at) for before, after in pairwise(tops)]
    assert 3.0 == cm(max(y for _, y in inner) - tops[2].seam_at)


def test_three_folds_take_under_a_quarter_of_a_centimeter() -> None:
    """Three folds of 0.8 mm: the reach of 1.5 loses 0.24."""
    made = planned(NAME, ("my_numbers.draw_up", "0 %"))
    lost = [
        before.raw_edge_at - after.raw_edge_at
        for before, after in zip(by_round(flat(NAME))[2], by_round(made)[2], strict=True)
    ]

    assert [0.24] * 4 == [cm(one) for one in lost]
    assert 1.5 == cm(by_round(flat(NAME))[2][0].raw_edge_at) - 17.5


def test_base_is_52_by_40() -> None:
    """47 / 0.985 + 4 = 51.7 and 35 / 0.985 + 4 = 39.5, up to the whole centimeter."""
    base = planned(NAME, ("base.wide", None), ("base.long", None)).base

    assert pytest.approx([51.7, 39.5], abs=0.05) == [cm(base.least_wide), cm(base.least_high)]
    assert (52, 40) == (cm(base.wide), cm(base.high))


@pytest.mark.parametrize(("fabric", "width", "strips"), [("Buttermilk", 5, 4), ("Slate", 5, 6), ("Poppy", 6, 8)])
def test_strips_for_four(fabric: str, width: float, strips: int) -> None:
    """Buttermilk 4, Slate 6 (three pieces per strip at most), Poppy 8 (two per strip)."""
    assert strips == strip_count(flat(NAME), fabric, width / CM)


def test_slate_could_do_with_five_by_length_alone() -> None:
    """8 x 34 + 8 x 29 = 504 cm is under 5 x 105, but sixteen pieces at three per strip take six."""
    pieces = [length for one in fabric_plan(flat(NAME), "Slate").strip_plans[0].strips for _, length in one.pieces]

    assert 504 == cm(sum(pieces)) < 5 * 105
    assert 16 == len(pieces)


def test_binding_for_four_takes_eight_strips() -> None:
    """Per mat 164 + 25 + 4 x 1.5 = 195; two strips of 105 joined diagonally give 203.5."""
    binding = planned(NAME).binding

    assert (164, 195, 203.5) == (cm(binding.perimeter), cm(binding.need), cm(binding.made))
    assert (2, 8) == (binding.strips_per_piece, binding.strips)
    assert 8 == strip_count(flat(NAME), "Poppy", 6.5 / CM)


def test_binding_passes_the_stitching_by_seven_millimeters() -> None:
    """6.5 / 2 - 3 x 0.75 - 0.3 = 0.7."""
    assert 0.7 == cm(planned(NAME).binding.passes_stitching)


def test_fabric_to_buy() -> None:
    """Clover 33 -> 40, Buttermilk 23 -> 30, Slate 33 -> 40, Poppy 48 + 52 + 3 = 103 -> 110 cm."""
    made = flat(NAME)
    fabrics = ["Clover", "Buttermilk", "Slate", "Poppy"]

    assert [33, 23, 33, 103] == [cm(fabric_plan(made, fabric).need_in) for fabric in fabrics]
    assert [40, 30, 40, 110] == [cm(fabric_plan(made, fabric).buy_in) for fabric in fabrics]


def test_clover_must_not_be_turned() -> None:
    """Two rows of 15; turned sideways one row of 27 would do, which a one-way print forbids."""
    clover = fabric_plan(flat(NAME), "Clover")

    assert [15, 15] == [cm(row.height) for row in clover.rows]
    assert clover.losing_rows_in is not None
    assert 27 == cm(clover.losing_rows_in)
    assert clover.turning_is_refused


def test_two_bases_lie_side_by_side_in_the_backing() -> None:
    """2 rows of 40 + 3 = 83 -> 90 cm, with 1 cm to spare in the width of 105."""
    best = planned(NAME).backing.best

    assert (2, 83, 90) == (best.how_many_wide, cm(best.length_in), cm(best.buy_in))
    assert "1\u202fcm to spare" in best.remark


def test_bases_of_53_only_fit_turned() -> None:
    """53 x 41: two rows of 53 = 106 cm turned; four of 41 = 164 when the backing is one-way (3 more to straighten)."""
    larger: tuple[Edit, ...] = (("base.wide", "53"), ("base.long", "41"))
    turned = planned(NAME, *larger).backing.best
    upright = planned(NAME, *larger, ("backing.one_way", "true")).backing.best

    assert 106 + 3 == cm(turned.length_in)
    assert 164 + 3 == cm(upright.length_in)


def test_twelve_strips_for_each_of_four_take_five_and_a_half_to_ten_hours() -> None:
    """48 strips sewn in rounds across all four."""
    made = flat(NAME)

    assert 48 == 4 * len(made.build.strips)
    assert (5.5, 10) == (made.work.hours_low, made.work.hours_high)


def test_poppy_beside_buttermilk_is_to_be_tested() -> None:
    """A dark dye beside a pale fabric, not tested."""
    found = finding(planned(NAME), "fabric.dye")

    assert "Poppy" in found.what
    assert "Buttermilk" in found.what


def test_no_end_to_lock() -> None:
    """Every end is crossed or caught."""
    assert [] == loose_ends(planned(NAME))
