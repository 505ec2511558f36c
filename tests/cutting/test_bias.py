"""Strips on the bias and the continuous tube, from any rectangle."""

from __future__ import annotations

from math import sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.cutting.bias import (
    bias_lengths,
    bias_tube,
    from_shelf,
    join_of_slanted,
    square_by_rule,
    square_for,
    strips_across,
    tube_of_slanted,
)
from stitchflip.errors import CuttingError

SIDES = st.floats(4, 45)
CUTS = st.floats(1, 4)


def longest_inside(wide: float, long: float, at: float, cut: float) -> float:
    """Edge of the longest piece with ends along the wide sides in one strip, its four corners on the fabric.

    The strip's edges are y = x - at and y = x - at - cut root 2; its ends lie at two heights, tried every 1/64 of the
    length. A height is possible when both edges are on the fabric there.
    """
    heights = [long * n / 64 for n in range(65)]
    inside = [y for y in heights if -1e-9 <= y + at and y + at + cut * sqrt(2) <= wide + 1e-9]
    return (max(inside) - min(inside)) * sqrt(2) if inside else 0.0


@given(SIDES, SIDES, CUTS, st.floats(0, 1))
@settings(max_examples=60)
def test_no_other_start_gives_more_bias(wide: float, long: float, cut: float, part: float) -> None:
    """Strips laid from any start, each measured by trying heights: never longer together than the best ones.

    Heights on a grid of the length fall short of the true ends by a sixty-fourth at each end at most.
    """
    best = bias_lengths(wide, long, cut)
    join = join_of_slanted(0.25)
    for across, along in ((wide, long), (long, wide)):
        strips = [
            longest_inside(across, along, -along + (part + number) * cut * sqrt(2), cut)
            for number in range(int((across + along) / (cut * sqrt(2))) + 2)
        ]
        kept = [length for length in strips if length > join]
        assert sum(kept) - max(len(kept) - 1, 0) * join <= best.made + 1e-6


@given(SIDES, SIDES, CUTS)
def test_every_strip_told_is_on_the_fabric(wide: float, long: float, cut: float) -> None:
    """From the first cut on, strip by strip, the length told is found again by trying heights."""
    best = bias_lengths(wide, long, cut)
    across, along = (wide, long) if best.ends == "wide" else (long, wide)
    for number, length in enumerate(best.lengths):
        tried = longest_inside(across, along, best.first_cut + number * cut * sqrt(2), cut)
        assert tried <= length + 1e-6
        assert length - tried <= 2 * along / 64 * sqrt(2) + 1e-6


def test_a_rectangle_of_20_by_10_gives_seven_strips() -> None:
    """2 1/2 wide, 3.536 apart along the edge; two of them run from side to side, 10 root 2 = 14.14 long.

    By hand: the first cut 7.071 before the corner leaves 10 - 7.071 = 2.929 of height, 4.14 along the strip; each
    next one before the corner 3.536 more of height, 5 in more of length; on the far side likewise from
    20 - 3.536 - 7.071 = 9.393: 13.28, 8.28, 3.28. Six joins of 0.707 off 66.43 leave 62.18.
    """
    strips = bias_lengths(20, 10, 2.5)
    assert [4.14, 9.14, 14.14, 14.14, 13.28, 8.28, 3.28] == [round(length, 2) for length in strips.lengths]
    assert 62.18 == round(strips.made, 2)


def test_lengths_shorter_than_wished_are_left_out() -> None:
    """At least 12 in: of the strips of 20 by 10 the long ones stay, and their place is chosen anew."""
    strips = bias_lengths(20, 10, 2.5, at_least=12)
    assert min(strips.lengths) >= 12
    assert sum(1 for length in bias_lengths(20, 10, 2.5).lengths if length >= 12) <= len(strips.lengths)


def test_a_rule_for_joins_can_be_given() -> None:
    """One cut width a join: four strips of a 10 in square cost three times 2 1/2."""
    strips = bias_lengths(10, 10, 2.5, join=2.5)
    assert pytest.approx(sum(strips.lengths) - (len(strips.lengths) - 1) * 2.5) == strips.made


@given(SIDES, SIDES, CUTS)
def test_a_tube_never_gives_more_than_its_area(wide: float, long: float, cut: float) -> None:
    """Whole turns, each as long as the bias edge; the part strip left over makes up the area."""
    tube = bias_tube(wide, long, cut, 0.25)
    assert tube.made <= tube.by_area + 1e-6
    turn = tube.made / tube.turns if tube.turns else 0.0
    high = {"long": long - 0.5, "wide": wide - 0.5}[tube.joined_sides]
    if tube.turns:
        assert pytest.approx(high * sqrt(2)) == turn
        assert pytest.approx(tube.by_area * cut) == (tube.turns * cut + tube.cut_off) * turn
    assert tube.cut_off < cut


def test_a_square_of_23_gives_seven_turns() -> None:
    """22 1/2 inside the seams: 22.5 / (2 root 2) = 7.95, so 7 turns of 31.82 = 222.7, though its area promises 253."""
    tube = bias_tube(23, 23, 2, 0.25)
    assert (7, 222.7, 253.1) == (tube.turns, round(tube.made, 1), round(tube.by_area, 1))
    assert pytest.approx(22.5 / sqrt(2) - 14) == tube.cut_off


def test_a_rectangle_is_sewn_the_way_that_gives_more() -> None:
    """44 by 48 at 3 1/2: 47.5 / 4.95 = 9 turns of 43.5 root 2 = 553.7; the other way 8 turns of 47.5 root 2 = 537.4."""
    tube = bias_tube(44, 48, 3.5, 0.25)
    assert (9, 553.7, "wide") == (tube.turns, round(tube.made, 1), tube.joined_sides)


def test_a_piece_with_slanted_ends_saves_a_seam() -> None:
    """Straight edges 22 1/2, 23 between them: only the tube is sewn, 7 turns as from the square of 23."""
    assert pytest.approx(bias_tube(23, 23, 2, 0.25).made) == tube_of_slanted(22.5, 23, 2, 0.25).made


@given(st.floats(20, 600), CUTS)
def test_the_square_found_is_enough_and_an_inch_less_is_not(length: float, cut: float) -> None:
    """Whole inches."""
    side = square_for(length, cut, 0.25)
    assert bias_tube(side, side, cut, 0.25).made >= length - 1e-6
    assert side - 1 <= 0.5 or bias_tube(side - 1, side - 1, cut, 0.25).made < length


def test_the_smallest_piece_of_the_shelf_that_is_enough_is_taken() -> None:
    """148.5 from 18 by 21 (6 turns of 17.5 root 2), enough for 140 but not for 150, which 24 by 26 gives."""
    shelf = [(40, 40), (18, 21), (24, 26)]
    small, next_one = from_shelf(shelf, 140, 2.25, 0.25), from_shelf(shelf, 150, 2.25, 0.25)
    assert small is not None
    assert next_one is not None
    assert ((1,), (2,)) == (small.numbers, next_one.numbers)
    assert pytest.approx(6 * 17.5 * sqrt(2)) == small.made


def test_several_pieces_are_joined_when_none_is_enough() -> None:
    """Two of 18 by 21 give 2 x 148.49 - 0.71 = 296.3; three are not needed for 290, and all are too little for 500."""
    shelf = [(18, 21)] * 3
    two = from_shelf(shelf, 290, 2.25, 0.25)
    assert two is not None
    assert (0, 1) == two.numbers
    assert 296.3 == round(two.made, 1)
    assert from_shelf(shelf, 500, 2.25, 0.25) is None
    assert from_shelf([], 5, 2.25, 0.25) is None


@pytest.mark.parametrize("sizes", [(0, 9, 2), (9, -1, 2), (9, 9, 0), (9, float("nan"), 2), (1e9, 9, 0.1)])
def test_sizes_that_nobody_cuts_are_refused(sizes: tuple[float, float, float]) -> None:
    """An error with what would do, at once."""
    with pytest.raises(CuttingError, match="above zero"):
        bias_lengths(*sizes)
    with pytest.raises(CuttingError, match="above zero"):
        bias_tube(*sizes, 0.25)


@pytest.mark.parametrize("size", [0.0, -1.0, float("nan"), float("inf")])
def test_bias_strips_of_no_size_are_refused(size: float) -> None:
    """Widths and lengths that nothing has are a mistake that is told; so is a strip wider than any fabric."""
    for asked in (
        lambda: strips_across(40, size),
        lambda: square_by_rule(100, size),
        lambda: square_for(100, size, 0.25),
        lambda: square_for(100, 1e12, 0.25),
    ):
        with pytest.raises(CuttingError):
            asked()
