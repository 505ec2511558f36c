"""Snow Gate: a hexagon topper, round after round, 22 1/2 in between flats."""

from __future__ import annotations

from itertools import pairwise
from math import sqrt

import pytest

from tests.examples.drafts import by_round, fabric_plan, finding, flat, loose_ends, planned, strip_count

NAME = "snow-gate"
ROUNDS = [
    # fabric, cut, raw edge, shortest (first, four alike, last), cut
    ("Blue Hour", 2, 5.25, (4.62, 6.35, 8.08), (5, 6.75, 8.5)),
    ("Larch", 2, 6.75, (6.35, 8.08, 9.81), (6.75, 8.5, 10.25)),
    ("Blue Hour", 2, 8.25, (8.08, 9.81, 11.55), (8.5, 10.25, 12)),
    ("Larch", 2, 9.75, (9.81, 11.55, 13.28), (10.25, 12, 13.75)),
    ("Gatepost", 2.75, 12, (11.55, 13.86, 16.17), (12, 14.25, 16.5)),
]


@pytest.mark.parametrize("number", range(5))
def test_each_round(number: int) -> None:
    """Fabric, width, raw edge from the center, shortest and cut lengths: first, four alike, last."""
    fabric, cut, raw_edge, shortest, lengths = ROUNDS[number]
    strips = by_round(flat(NAME))[number]

    def six(three: tuple[float, ...]) -> list[float]:
        return [three[0], *[three[1]] * 4, three[2]]

    assert {(fabric, cut)} == {(strip.fabric, strip.cut_width) for strip in strips}
    assert pytest.approx([raw_edge] * 6) == [strip.raw_edge_at for strip in strips]
    assert pytest.approx(six(shortest), abs=0.006) == [strip.needed_length for strip in strips]
    assert pytest.approx(six(lengths)) == [strip.cut_length for strip in strips]


def test_first_strip_by_formula() -> None:
    """Seam at 3 1/2, neighbors at 3 3/4: 2 (3.75 - 3.5 cos 60) / sin 60 = 4.619."""
    assert pytest.approx(2 * (3.75 - 1.75) / (sqrt(3) / 2)) == flat(NAME).build.strips[0].needed_length


def test_center_shows_seven_between_flats() -> None:
    """7 1/2 cut, less two seams; it is the widest unstitched place."""
    assert pytest.approx(7, abs=1e-6) == flat(NAME).build.widest_gap.diameter


def test_squared_up_hexagon() -> None:
    """22 1/2 between flats: 26 between corners, side 12.99, area 438.4."""
    squared = planned(NAME).square_up

    assert pytest.approx(22.5 * 2 / sqrt(3)) == max(squared.diagonals)
    assert pytest.approx(26, abs=0.02) == max(squared.diagonals)
    assert pytest.approx([12.99] * 6, abs=0.001) == [side.length for side in squared.sides]
    assert pytest.approx([11.25] * 6) == [side.distance for side in squared.sides]
    assert pytest.approx(438.4, abs=0.05) == squared.area


def test_last_round_shows_one_and_a_half_like_the_others() -> None:
    """From the seam at 9 1/2 to the binding's seam at 11; the others stand 1 1/2 apart."""
    build = flat(NAME).build
    seams = [strips[0].seam_at for strips in by_round(flat(NAME))]
    nx, ny = build.strips[-1].normal
    inner = max(nx * x + ny * y for x, y in build.trim_inner)

    assert pytest.approx([1.5] * 4) == [after - before for before, after in pairwise(seams)]
    assert pytest.approx(1.5) == inner - seams[-1]


def test_base_is_25_by_28_and_a_half() -> None:
    """22.5 / 0.985 + 2 = 24.84 and 25.98 / 0.985 + 2 = 28.38, up to the half inch."""
    base = planned(NAME, ("base.wide", None), ("base.long", None)).base

    assert pytest.approx([24.84, 28.38], abs=0.005) == [base.least_wide, base.least_high]
    assert (25, 28.5) == (base.wide, base.high)


@pytest.mark.parametrize(
    ("fabric", "width", "inches", "strips"),
    [("Blue Hour", 2, 102, 3), ("Larch", 2, 123, 4), ("Gatepost", 2.75, 85.5, 3)],
)
def test_strips_across_the_width(fabric: str, width: float, inches: float, strips: int) -> None:
    """Blue Hour 102 in: 3; Larch 123 in: 4; Gatepost 85 1/2: 3."""
    made = flat(NAME)
    lengths = [strip.cut_length for strip in made.build.strips if strip.fabric == fabric]

    assert pytest.approx(inches) == sum(lengths)
    assert strips == strip_count(made, fabric, width)


def test_larch_of_41_in_takes_three_strips() -> None:
    """123 in fit exactly into three strips of 41: 6 in instead of 8."""
    larch = fabric_plan(flat(NAME, ("fabrics.1.usable_width", "41")), "Larch")

    assert 123 == 3 * 41
    assert (3, 6) == (len(larch.strip_plans[0].strips), larch.used_in)


def test_nothing_to_spare_of_larch() -> None:
    """8 + 1 for straightening is 1/4 yd exactly: buy 3/8, or measure 41."""
    larch = fabric_plan(flat(NAME), "Larch")
    found = finding(flat(NAME), "fabric.nothing-to-spare")

    assert (9, 9, 0) == (larch.need_in, larch.buy_in, larch.spare_in)
    assert "Larch" in found.what
    assert any("⅜" in cure.text for cure in found.cures)
    assert any("41" in cure.text for cure in found.cures)


def test_fabric_to_buy() -> None:
    """Blue Hour 1/4 yd; Gatepost 8 1/4 + 7 1/2 + 1 = 16 3/4: 1/2 yd."""
    made = flat(NAME)

    assert (7, 9) == (fabric_plan(made, "Blue Hour").need_in, fabric_plan(made, "Blue Hour").buy_in)
    assert (16.75, 18) == (fabric_plan(made, "Gatepost").need_in, fabric_plan(made, "Gatepost").buy_in)


def test_binding() -> None:
    """77.94 + 10 + 6 x 1/2 = 90.9; two strips would give 77 1/2, so three; six corners of 120 degrees."""
    binding = planned(NAME).binding

    assert pytest.approx(22.5 * 2 * sqrt(3) + 13) == binding.need
    assert pytest.approx(90.94, abs=0.005) == binding.need
    assert 2 * 40 - 2.5 < binding.need
    assert 3 == binding.strips
    assert pytest.approx([120] * 6) == [corner.angle for corner in binding.corners]


def test_thirty_strips_take_three_to_five_hours() -> None:
    """Five rounds of six."""
    made = flat(NAME)

    assert 30 == len(made.build.strips)
    assert (3, 5) == (made.work.hours_low, made.work.hours_high)


def test_no_end_to_lock() -> None:
    """Every end is crossed or caught."""
    assert [] == loose_ends(planned(NAME))
