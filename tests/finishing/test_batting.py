"""The batting: its size, leftovers whole or butted, and the packaged size that does."""

from __future__ import annotations

import pytest
from hypothesis import assume, given

from stitchflip.finishing import BattingPlan, plan_batting
from stitchflip.finishing.batting_joins import Leftover, butt, fit_in, missing_length
from tests.finishing.scenarios import Laid, harbour_block, inches, lantern_walk, morning_tray, tin_roof
from tests.strategies import quarters

MIDDLE_ONLY = {"x": (0.0,), "y": (0.0,)}


def _planned(laid: Laid) -> BattingPlan:
    return plan_batting(laid.project, laid.numbers, laid.base)


def _hand(*sizes: tuple[str, str], count: int = 1) -> dict[str, object]:
    return {"on_hand": [{"wide": wide, "long": long, "count": count} for wide, long in sizes]}


def _plain(text: str) -> str:
    return text.replace("\u202f", " ").replace("\u2009", " ")


def test_batting_is_cut_to_the_size_of_the_base() -> None:
    """Lantern Walk: 15 1/2 x 48, bought; the crib size (45 x 60) is the smallest package that holds 48."""
    plan = _planned(lantern_walk())
    assert (15.5, 48.0) == (plan.wide, plan.high)
    assert (None, "", 0.0) == (plan.join_at, plan.join_axis, plan.short)
    assert plan.packaged.startswith("crib")
    assert "15½ × 48 in" in _plain(plan.pieces[0])


@pytest.mark.parametrize(
    ("laid", "package"),
    [
        (morning_tray(), "craft"),  # four of 52 x 40 cm: two by two in 91.4 x 114.3 cm
        (harbour_block(how_many=20), "twin"),  # four by six squares of 15 in 72 x 90; crib gives twelve
        (inches({"wide": "84", "long": "84"}), "queen"),  # 84 / 0.985 + 2 = 87.3: 87 1/2 in 90 x 108
        (inches({"wide": "130", "long": "130"}), ""),
    ],
)
def test_the_smallest_package_that_gives_all_pieces_is_named(laid: Laid, package: str) -> None:
    """Pieces alike come out of one package; a piece larger than king size comes out of none."""
    name = _planned(laid).packaged
    assert package == (name.split()[0] if name else "")


def test_a_leftover_that_fits_turned_is_used_whole() -> None:
    """50 x 16 holds 15 1/2 x 48 lying; nothing is joined or bought."""
    plan = _planned(lantern_walk(batting=_hand(("50", "16"))))
    assert ("", 0.0, "") == (plan.join_axis, plan.short, plan.packaged)
    assert "whole" in plan.pieces[0]


def test_two_leftovers_are_butted_without_allowance_off_the_middle_line() -> None:
    """34 and 26 in make 60 exactly; the join lies 34 - 30 = 4 in from the middle line, clear of it by more than 3."""
    plan = _planned(tin_roof(batting=_hand(("16", "34"), ("15", "26"))))
    assert (4.0, "y") == (abs(plan.join_at or 0.0), plan.join_axis)
    assert 0.0 == plan.short
    assert "butted" in plan.pieces[0]
    assert "4 in from the center line" in _plain(plan.pieces[0])


def test_equal_leftovers_with_room_are_joined_3_in_off_the_middle() -> None:
    """Two of 33 in for 60: 33 + 27 puts the join 3 in off."""
    plan = _planned(tin_roof(batting=_hand(("16", "33"), count=2)))
    assert 3.0 == pytest.approx(abs(plan.join_at or 0.0))


def test_a_join_that_cannot_leave_the_middle_is_told() -> None:
    """Two of 30 in for 60 meet on the middle line."""
    plan = _planned(tin_roof(batting=_hand(("16", "30"), count=2)))
    assert 0.0 == plan.join_at
    assert "nearer than 3 in to a fold" in _plain(plan.pieces[0])


def test_a_join_keeps_off_the_second_fold_too() -> None:
    """60 in folded twice on a 23 in mat folds at 15 as well: 46 + 30 is joined where no fold is within 3 in."""
    joined = butt((14.5, 60), [Leftover(15, 45), Leftover(15, 30)], {"x": (0.0,), "y": (-15.0, 0.0, 15.0)}, 3)
    assert joined is not None
    assert joined.off((-15.0, 0.0, 15.0)) >= 3


def test_a_third_leftover_is_taken_when_two_do_not_reach() -> None:
    """20 + 20 + 20 make 60; the joins lie 10 in off the middle."""
    plan = _planned(tin_roof(batting=_hand(("16", "20"), count=3)))
    assert [-10.0, 10.0] == pytest.approx(sorted(plan.joins_at))


def test_leftovers_that_do_not_reach_tell_what_is_missing() -> None:
    """34 + 20 = 54 of 60: 6 in are missing, and the whole piece may be bought as crib size."""
    plan = _planned(tin_roof(batting=_hand(("16", "34"), ("15", "20"))))
    assert 6.0 == pytest.approx(plan.short)
    assert plan.packaged.startswith("crib")


def test_a_leftover_is_used_up_when_something_is_cut_from_it() -> None:
    """A leftover of 31 x 16 gives two of four 15 in squares, and not four."""
    plan = _planned(harbour_block(how_many=4, batting=_hand(("31", "16"))))
    whole = [text for text in plan.pieces if "whole" in text]
    assert 2 == len(whole)
    assert "2 cut" in plan.pieces[-1]


def test_rows_are_counted_by_whole_pieces() -> None:
    """45 x 60 gives 3 x 4 squares of 15; 44 x 60 gives 2 x 4."""
    assert (12, 8) == (fit_in((15, 15), (45, 60)), fit_in((15, 15), (44, 60)))


@given(first=quarters(5, 60), second=quarters(5, 60), along=quarters(10, 90))
def test_butted_leftovers_make_the_length_exactly(first: float, second: float, along: float) -> None:
    """Parts add up to the base with nothing for a seam, and no part is longer than its leftover."""
    pieces = [Leftover(10, first), Leftover(10, second)]
    assume(first >= 10)
    assume(second >= 10)
    joined = butt((10, along), pieces, MIDDLE_ONLY, 3)
    if first + second < along - 1e-6:
        assert joined is None
        assert along - first - second == pytest.approx(missing_length((10, along), pieces))
        return
    assert joined is not None
    assert along == pytest.approx(sum(joined.parts))
    assert 0.0 == missing_length((10, along), pieces)
    for part, piece in zip(joined.parts, joined.pieces, strict=True):
        assert part <= piece.long + 1e-6


@given(first=quarters(16, 60), second=quarters(16, 60), along=quarters(30, 90))
def test_a_join_comes_to_the_middle_only_when_it_must(first: float, second: float, along: float) -> None:
    """When either leftover reaches 3 in past the middle, the join is 3 in off it or more."""
    assume(first + second >= along)
    assume(max(first, second) < along)
    joined = butt((10, along), [Leftover(10, first), Leftover(10, second)], MIDDLE_ONLY, 3)
    assert joined is not None
    if max(first, second) >= along / 2 + 3:
        assert joined.off((0.0,)) >= 3 - 1e-6
