"""Rows of several sizes where the rules leave a gap: shortened, proved, and still rows that can be cut."""

from __future__ import annotations

import pytest

from stitchflip.cutting import Piece, Rectangle, Status, lay_in_rows
from stitchflip.cutting.rows_searched import searched_rows
from stitchflip.lengths import Unit
from tests.cutting.lists import fabric, planned

WIDE = 40.0


def shortest_by_hand(rectangles: list[Rectangle]) -> float:
    """The shortest stack of rows, every way of sharing the pieces out tried (a handful of pieces, not turned)."""
    pieces = [(one.wide, one.long) for one in rectangles for _ in range(one.count)]
    best = sum(long for _, long in pieces)

    def put(number: int, rows: list[tuple[float, float]]) -> None:
        nonlocal best
        if sum(high for _, high in rows) >= best:
            return
        if number == len(pieces):
            best = sum(high for _, high in rows)
            return
        wide, long = pieces[number]
        for place, (rest, high) in enumerate(rows):
            if wide <= rest:
                put(number + 1, [*rows[:place], (rest - wide, max(high, long)), *rows[place + 1 :]])
        put(number + 1, [*rows, (WIDE - wide, long)])

    put(0, [])
    return best


SIZES = [
    [("a", 17.0, 9.0, 3), ("b", 12.0, 8.0, 3), ("c", 11.0, 5.0, 2)],
    [("a", 23.0, 10.0, 2), ("b", 16.5, 9.5, 2), ("c", 9.0, 7.25, 3)],
    [("a", 13.0, 12.0, 2), ("b", 14.0, 11.0, 2), ("c", 13.5, 4.0, 4)],
]


SIX = [
    ("a", 4.25, 10.25, 7),
    ("b", 13.75, 2.0, 11),
    ("c", 14.25, 3.0, 3),
    ("d", 14.0, 11.25, 1),
    ("e", 6.75, 14.25, 1),
    ("f", 15.0, 6.25, 8),
]


@pytest.mark.parametrize("sizes", SIZES)
def test_searched_rows_are_the_shortest_there_are(sizes: list[tuple[str, float, float, int]]) -> None:
    """As short as the best of all ways of sharing the pieces out, and told as proved."""
    rectangles = [Rectangle(*size, can_turn=False) for size in sizes]
    found = searched_rows(WIDE, lay_in_rows(WIDE, rectangles), Unit.INCH)

    assert (shortest_by_hand(rectangles), Status.PROVED) == (found.length_in, found.status)


def test_rows_by_rule_that_are_proved_are_left_alone() -> None:
    """One size: the very same rows."""
    by_rule = lay_in_rows(WIDE, [Rectangle("a", 12, 2, 28)])

    assert by_rule is searched_rows(WIDE, by_rule, Unit.INCH)


def test_a_plan_takes_the_shorter_rows_when_they_save_a_step_of_the_purchase() -> None:
    """By rule 49 1/4 in of rows: with straightening 50 1/4, so 1 1/2 yd; searched, an eighth less or better will do.

    The checker adds the plan up again (`planned`).
    """
    by_rule = lay_in_rows(WIDE, [Rectangle(*size) for size in SIX])
    plan = planned(fabric(), tuple(Piece(*size, kind="rectangle") for size in SIX))

    assert (49.25, Status.BEST_FOUND) == (by_rule.length_in, by_rule.status)
    assert 1.5 * 36 - 4.5 >= plan.buy_in
