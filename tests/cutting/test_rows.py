"""Whole rows: counts by hand, both ways of laying, one-way prints, several sizes, bounds."""

from __future__ import annotations

from itertools import product
from math import ceil
from unittest.mock import Mock

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.cutting import Rectangle, Status, count_in, lay_in_rows, per_row
from stitchflip.cutting import rows as row_search
from tests.strategies import quarters


@pytest.mark.parametrize(
    ("width", "wide", "long", "count", "upright", "turned"),
    [
        (105, 27, 15, 4, 30, 27),  # four centers: three side by side, or seven
        (105, 52, 40, 4, 80, 104),  # four bases, 1 cm to spare across; turned, two of 40 across and 52 high
        (105, 53, 41, 4, 164, 106),
        (42, 12, 2, 28, 20, 24),
        (40, 3, 3, 20, 6, 6),
    ],
)
def test_rows_of_one_size_are_counted_by_hand(
    width: float, wide: float, long: float, count: int, upright: float, turned: float
) -> None:
    """Kept upright the pieces take one length, all turned the other."""
    plan = lay_in_rows(width, [Rectangle("piece", wide, long, count, can_turn=False)])

    assert upright == plan.length_in == plan.bound_in
    assert (None if wide == long else turned) == plan.losing_in
    assert plan.turning_is_refused is (wide != long)


def test_bases_that_just_do_not_fit_side_by_side_are_turned() -> None:
    """53 × 41 in 105 cm: two of 41 side by side, two rows of 53; the other way would be four rows of 41."""
    plan = lay_in_rows(105, [Rectangle("base", 53, 41, 4)])

    assert (106, 164) == (plan.length_in, plan.losing_in)
    assert all(row.turned for row in plan.rows)


def test_one_row_turned_and_three_upright_beat_both_pure_ways() -> None:
    """28 pieces 12 × 2 from 42 in: one row 12 high holds 21, the other 7 lie in three rows: 12 + 3 × 2 = 18 in."""
    plan = lay_in_rows(42, [Rectangle("strip", 12, 2, 28)])

    assert 18 == plan.length_in
    assert plan.status is Status.PROVED


def test_backing_and_sleeve_lie_one_above_the_other() -> None:
    """36 1/2 in square and 8 1/2 × 32 1/2: the sleeve lies across, 45 in in all."""
    plan = lay_in_rows(40, [Rectangle("backing", 36.5, 36.5, 1), Rectangle("sleeve", 8.5, 32.5, 1)])

    assert 45 == plan.length_in


def test_lower_pieces_top_up_a_row() -> None:
    """A center 12 high leaves 28 in of its row, where five squares of 5 stand: one row is enough."""
    plan = lay_in_rows(40, [Rectangle("center", 12, 12, 1), Rectangle("corner", 5, 5, 5)])

    assert 12 == plan.length_in == plan.bound_in
    assert [("center", 12), *[("corner", 5)] * 5] == list(plan.rows[0].pieces)


def test_piece_wider_than_the_fabric_is_left_out() -> None:
    """41 × 50 fits neither way across 40 in; the other piece is laid."""
    plan = lay_in_rows(40, [Rectangle("big", 41, 50, 2), Rectangle("small", 10, 10, 1)])

    assert ["big"] == [one.label for one in plan.left_out]
    assert (10, Status.IMPOSSIBLE) == (plan.length_in, plan.status)


def test_one_way_print_wider_than_the_fabric_is_not_turned_secretly() -> None:
    """41 × 10 would fit turned; with a one-way print it does not fit at all, and the other way is refused."""
    plan = lay_in_rows(40, [Rectangle("mat", 41, 10, 2, can_turn=False)])

    assert ["mat"] == [one.label for one in plan.left_out]
    assert () == plan.rows


def test_squares_have_no_other_way() -> None:
    """Turning a square changes nothing, so nothing is reported as lost or refused."""
    plan = lay_in_rows(40, [Rectangle("square", 9.5, 9.5, 3, can_turn=False)])

    assert plan.losing_in is None
    assert not plan.turning_is_refused


def rectangles() -> st.SearchStrategy[list[Rectangle]]:
    """Up to three sizes, a few pieces each."""
    size = st.tuples(quarters(2, 24), quarters(2, 24), st.integers(1, 5), st.booleans())
    return st.lists(size, min_size=1, max_size=3).map(
        lambda sizes: [Rectangle(f"size {number}", *one) for number, one in enumerate(sizes)]
    )


@given(quarters(24, 44), rectangles())
@settings(max_examples=150, deadline=None)
def test_rows_hold_every_piece_and_no_bound_is_above_them(width: float, wanted: list[Rectangle]) -> None:
    """Each piece once, no row too wide or too low, nothing turned that must not be, area no larger than the fabric."""
    plan = lay_in_rows(width, wanted)

    for one in wanted:
        taken = [(across, row) for row in plan.rows for label, across in row.pieces if label == one.label]
        assert one.count == len(taken)
        for across, row in taken:
            assert across in {one.wide} | ({one.long} if one.can_turn else set())
            assert row.height >= (one.long if across == one.wide else one.wide) or across == one.long == one.wide
    assert all(sum(across for _, across in row.pieces) <= width for row in plan.rows)
    assert sum(row.height for row in plan.rows) == pytest.approx(plan.length_in)
    assert plan.bound_in <= plan.length_in + 1e-9
    assert sum(one.wide * one.long * one.count for one in wanted) <= plan.length_in * width + 1e-6


@given(quarters(24, 44), quarters(2, 24), quarters(2, 24), st.integers(1, 30))
@settings(max_examples=100, deadline=None)
def test_one_size_takes_the_shortest_mixture_of_rows(width: float, wide: float, long: float, count: int) -> None:
    """All numbers of upright and turned rows tried: none that gives enough pieces is shorter."""
    plan = lay_in_rows(width, [Rectangle("piece", wide, long, count)])
    upright, turned = int(width // wide), int(width // long)
    shortest = min(
        rows * long + others * wide
        for rows, others in product(range(count + 1), repeat=2)
        if rows * upright + others * turned >= count
    )

    assert shortest == pytest.approx(plan.length_in)
    assert plan.status is Status.PROVED


@given(quarters(24, 44), rectangles())
@settings(max_examples=60, deadline=None)
def test_bound_holds_against_trying_every_stack_of_rows(width: float, wanted: list[Rectangle]) -> None:
    """A few pieces put in every order and way into rows one after the other: none is shorter than the bound."""
    pieces = [one for one in wanted for _ in range(min(one.count, 2))]
    if len(pieces) > 4:
        pieces = pieces[:4]
    few: dict[Rectangle, int] = {}
    for one in pieces:
        few[one] = few.get(one, 0) + 1
    asked = [Rectangle(one.label, one.wide, one.long, count, one.can_turn) for one, count in few.items()]
    plan = lay_in_rows(width, asked)
    best = shortest_stack(width, tuple(pieces), ())

    assert plan.bound_in <= best + 1e-9
    assert best <= plan.length_in + 1e-9


def shortest_stack(width: float, pieces: tuple[Rectangle, ...], rows: tuple[tuple[float, float], ...]) -> float:
    """Put the pieces one by one into any row (width taken, height) or a new one, either way round."""
    if not pieces:
        return sum(height for _, height in rows)
    first, rest = pieces[0], pieces[1:]
    best = float("inf")
    for across, height in {(first.wide, first.long), *([(first.long, first.wide)] if first.can_turn else [])}:
        if across > width:
            continue
        for place, (taken, tallest) in enumerate(rows):
            if taken + across <= width:
                grown = (taken + across, max(tallest, height))
                best = min(best, shortest_stack(width, rest, (*rows[:place], grown, *rows[place + 1 :])))
        best = min(best, shortest_stack(width, rest, (*rows, (across, height))))
    return best


def test_counts_use_the_tolerance() -> None:
    """Three thirds of 40 stand side by side; a hair more than a third does not."""
    assert (3, 2) == (per_row(40, 40 / 3), per_row(40, 13.334))
    assert ceil(36 / 4.5) * per_row(40, 4.5) == count_in(40, 36, 4.5, 4.5)


def test_a_row_found_once_is_laid_as_often_as_there_are_pieces_for_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """A hundred times as many pieces take a hundred times the rows and no more than twice the looks."""
    looks = Mock(wraps=row_search._most_area)
    monkeypatch.setattr(row_search, "_most_area", looks)

    def laid(times: int) -> tuple[float, int]:
        looks.reset_mock()
        wanted = [
            Rectangle("tall", 13, 9, 3 * times, can_turn=False),
            Rectangle("low", 7, 5, 5 * times, can_turn=False),
        ]
        return lay_in_rows(40, wanted).length_in, looks.call_count

    # 3 of 13 fill a row 9 high to 39; 5 of 7 one 5 high to 35: 14 in for each time
    assert 14 == laid(1)[0]
    assert 1400 == laid(100)[0]
    assert laid(100)[1] <= 2 * laid(1)[1]
