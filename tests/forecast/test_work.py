"""Seams, thread and hours of the invented pieces, and how the estimate moves."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stitchflip.finishing import plan_binding
from stitchflip.forecast import WorkEstimate, estimate_work, lockstitch_ratio, thread_yards
from stitchflip.piecing import build_project
from tests.finishing.scenarios import Laid, cm, inches
from tests.twins.table import rounds


def _estimated(laid: Laid, **numbers: float) -> WorkEstimate:
    """The estimate without draw-up, which the seam lengths below were added up with."""
    mine = replace(laid.numbers, draw_up_x=0.0, draw_up_y=0.0, **numbers)
    build = build_project(laid.project, mine)
    return estimate_work(laid.project, mine, [(build, 1)], plan_binding(laid.project, mine, laid.trim))


def _lantern_walk() -> Laid:
    return inches(
        {"wide": "13", "long": "44", "ends": "pointed"},
        {"reach": 0.5},
        center={"fabric": "Linen", "cut": "8.25", "turned": 45.0},
        building={"way": "pairs round the point"},
        rounds=rounds(1.5, 2.5, 2, 2.5, 1.5, 2.5, 3.25),
    )


def _tin_roof(finish: str = "hand") -> Laid:
    rows = (3, 2, 1.5, 2.5, 1.5, 2, 3, 1.5, 2, 2.5, 1.5, 2, 2.5, 1.5, 2, 2.5, 2, 3.75)
    return inches(
        {"wide": "12", "long": "56"},
        {"reach": 0.5, "binding_cut": 2.25},
        building={"way": "rows of strips"},
        rounds=rounds(*rows),
        binding={"fabric": "Linen", "finish": finish},
    )


def _snow_gate() -> Laid:
    return inches(
        {"shape": "polygon", "sides": 6, "across_flats": "22.5", "turned": 30.0},
        {"reach": 0.5},
        center={"fabric": "Linen", "shape": "polygon", "sides": 6, "cut": "7.5", "turned": 30.0},
        building={"way": "round after round"},
        rounds=rounds(2, 2, 2, 2, 2.75),
    )


def _morning_tray(how_many: int = 4) -> Laid:
    return cm(
        {"wide": "47", "long": "35"},
        how_many=how_many,
        center={"fabric": "Linen", "shape": "rectangle", "cut_wide": "27", "cut_long": "15"},
        building={"way": "courthouse steps"},
        rounds=[{"fabric": "Linen", "cut": cut} for cut in ("5", "5", "6")],
    )


@pytest.mark.parametrize(
    ("laid", "low", "high"),
    [
        # 28 x 4 1/2 + 25 + 12 x 2 1/2 + 20 = 201 min: 2.68 and 4.69 h
        (_lantern_walk(), 2.5, 4.5),
        # 4 (12 x 4 1/2 + 25 + 9 x 2 1/2) + 20 = 426 min: 5.68 and 9.94 h
        (_morning_tray(), 5.5, 10.0),
        # 34 x 4 1/2 + 25 + 136 by hand + 20 = 334 min: 4.45 and 7.79 h
        (_tin_roof(), 4.5, 8.0),
        # 30 x 4 1/2 + 25 + 12 x 2 1/2 + 20 = 210 min: 2.80 and 4.90 h
        (_snow_gate(), 3.0, 5.0),
    ],
)
def test_hours_are_a_range_to_the_half_hour(laid: Laid, low: float, high: float) -> None:
    """Minutes are added up by hand beside each piece; the range is 20 % less to 40 % more."""
    work = _estimated(laid)
    assert (low, high) == (work.hours_low, work.hours_high)


@pytest.mark.parametrize(
    ("laid", "seams", "yards"),
    [
        (_lantern_walk(), 302, 30),  # 302 x 3 1/2 / 36 = 29.4: about 30
        (_tin_roof(), 442, 43),  # 34 seams of 13 in
    ],
)
def test_thread_is_three_and_a_half_times_the_seams(laid: Laid, seams: float, yards: float) -> None:
    """Seams are as long as their strips must be; thread takes 3 1/2 in for each inch, waste in it."""
    work = _estimated(laid)
    assert seams == pytest.approx(work.seams_in, abs=0.5)
    assert yards == pytest.approx(work.thread_yards, abs=0.65)
    assert work.seams_in * 3.5 / 36 == pytest.approx(work.thread_yards)


def test_seams_of_a_row_runner_are_strips_less_one() -> None:
    """35 strips have 34 seams, each 12 + 2 x 1/2 = 13 in long."""
    assert 34 * 13 == pytest.approx(_estimated(_tin_roof()).seams_in)


def test_four_alike_have_four_times_the_seams() -> None:
    """Seams and thread count every piece."""
    one, four = _estimated(_morning_tray(1)), _estimated(_morning_tray(4))
    assert 4 * one.seams_in == pytest.approx(four.seams_in)
    assert 4 * one.thread_yards == pytest.approx(four.thread_yards)


def test_hand_finishing_takes_longer_than_the_machine() -> None:
    """136 minutes by hand against 16 x 2 1/2 = 40 by machine: 334 against 238 min, 3.2 h at the low end."""
    assert 3.0 == _estimated(_tin_roof("machine")).hours_low  # 0.8 x 238 = 190 min = 3.17 h
    assert 4.5 == _estimated(_tin_roof("hand")).hours_low


def test_a_maker_s_own_minutes_replace_the_house_s() -> None:
    """At 8 minutes a strip Lantern Walk takes 28 x 9 + 75 = 327 min: 4.36 to 7.63 h."""
    work = _estimated(_lantern_walk(), minutes_per_strip=8.0)
    assert (4.5, 7.5) == (work.hours_low, work.hours_high)


def test_a_long_strip_takes_a_minute_more_for_every_20_in() -> None:
    """A 60 in runner of five strips along it: four seams of 61 in take 3 1/2 + 4 minutes each."""
    laid = inches(
        {"wide": "8", "long": "60"},
        {"reach": 0.5},
        building={"way": "rows of strips", "rows_run": "along"},
        rounds=rounds(2.5, 2.5, 2.75),
    )
    # 4 x 7 1/2 + 25 + 20 + 16 x 2 1/2 (136 + 12 = 148; four strips make 152 1/2) = 115 min: 1.53 and 2.68 h
    work = _estimated(laid)
    assert 4 * 61 == pytest.approx(work.seams_in)
    assert (1.5, 2.5) == (work.hours_low, work.hours_high)


@given(seams=st.floats(0, 5000), ratio=st.floats(2, 6))
def test_thread_in_yards_is_thread_in_inches_over_36(seams: float, ratio: float) -> None:
    """Inches of thread are counted one seam inch at a time by the ratio."""
    assert seams * ratio == pytest.approx(36 * thread_yards(seams, ratio))


@given(thickness=st.floats(0, 0.5), stitches=st.floats(4, 20), waste=st.floats(0, 0.3))
def test_thicker_layers_take_more_thread(thickness: float, stitches: float, waste: float) -> None:
    """No lockstitch takes less than twice its seam, and thicker layers never take less."""
    ratio = lockstitch_ratio(thickness, stitches, waste)
    assert ratio >= 2 * (1 + waste) - 1e-9
    assert lockstitch_ratio(thickness + 0.1, stitches, waste) > ratio
