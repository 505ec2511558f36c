"""Borders cut along striped fabric in phase."""

from __future__ import annotations

from math import cos, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stitchflip.cutting.stripes import Stripes, border_length, corner_match, per_width, plan_borders
from stitchflip.errors import CuttingError

EIGHTHS = st.integers(4, 80).map(lambda n: n / 8)


def side_by_side(apart: float, wide: float, cut: float, start: float) -> int:
    """By laying strips on stripe after stripe from the left, each on the first stripe that leaves it whole."""
    count, reached, stripe = 0, 0.0, start % apart
    while stripe + cut / 2 <= wide + 1e-9:
        if stripe - cut / 2 >= reached - 1e-9:
            count, reached = count + 1, stripe + cut / 2
        stripe += apart
    return count


@given(EIGHTHS, st.integers(20, 44), EIGHTHS)
def test_borders_in_phase_are_counted_as_by_laying(apart: float, wide: int, cut: float) -> None:
    """Starts every sixteenth and between: the fewest and the most are those told."""
    tried = {side_by_side(apart, wide, cut, n / 32) for n in range(round(apart * 32))}
    told = per_width(Stripes(apart), wide, cut)
    if cut <= wide:
        assert (min(tried), max(tried)) == (told.surely, told.at_best)


@given(EIGHTHS, st.integers(20, 44), EIGHTHS, st.integers(0, 200))
def test_a_measured_stripe_leaves_nothing_open(apart: float, wide: int, cut: float, start: int) -> None:
    """As many as laying finds."""
    told = per_width(Stripes(apart, start=start / 16), wide, cut)
    assert told.surely == told.at_best == side_by_side(apart, wide, cut, start / 16)


def test_groups_begin_in_phase_and_the_one_that_saves_most_comes_last() -> None:
    """Two per width, repeat 12 along: 90 in take 96 before the next group, 85 take 96 as well.

    90 first and 85 last: 96 + 85 = 181, and a repeat for the unknown start: 193; the other way round 96 + 90 = 186.
    """
    plan = plan_borders(Stripes(apart=20, along=12), 42, 4.5, [85, 90, 85, 90])
    assert 1 == plan.per_width.surely
    plan = plan_borders(Stripes(apart=12, along=12), 40, 4.5, [85, 90, 85, 90])
    assert 2 == plan.per_width.surely
    assert [(0, (90, 90)), (96, (85, 85))] == [(group.begins_at, group.lengths) for group in plan.groups]
    assert 193 == plan.used_in


def test_what_stays_beside_and_between_is_told() -> None:
    """Four 4 1/2 in borders on stripes 6 apart: 22 1/2 in of 40, 1 1/2 between them, 17 1/2 beside."""
    plan = plan_borders(Stripes(6), 40, 4.5, [80] * 4)
    assert (1.5, 17.5, 80) == (plan.between_in, plan.column_left_in, plan.used_in)


@given(st.integers(8, 100), st.integers(8, 100), st.sampled_from([1.5, 3, 4, 6, 7]))
def test_corners_match_when_the_print_is_seen_in_the_mirror(one: int, other: int, along: float) -> None:
    """Both sides drawn as a wave from their middle, read outward from the inner corner: equal where told so."""
    match = corner_match(one, other, along)

    def seen(side: float, at: float, shift: float) -> float:
        return cos(2 * pi * (side / 2 + at + shift) / along)

    second = other + match.longer_by
    shift = along / 2 if corner_match(one, second, along).other_centered_between else 0.0
    for at in (0.0, 0.3, 1.1, 2.6):
        assert pytest.approx(seen(one, at, 0.0), abs=1e-6) == seen(second, at, shift)
    assert match.matches == (match.longer_by == 0)
    if not match.matches:
        assert pytest.approx(along) == match.longer_by + match.shorter_by


def test_lengths_are_the_side_both_widths_and_a_spare() -> None:
    """72 + 4 + 4 + 2 = 82."""
    assert 82 == border_length(72, 4)


@pytest.mark.parametrize(
    "make",
    [
        lambda: Stripes(0),
        lambda: Stripes(6, along=-1),
        lambda: plan_borders(Stripes(6), 40, 4, []),
        lambda: plan_borders(Stripes(6), 40, 4, [0]),
        lambda: plan_borders(Stripes(6), 40, 0, [80]),
        lambda: plan_borders(Stripes(6), 40, 41, [80]),
        lambda: plan_borders(Stripes(30), 40, 12, [80]),
        lambda: corner_match(60, 0, 6),
    ],
)
def test_what_cannot_be_cut_is_refused(make: object) -> None:
    """Stripes of nothing, borders wider than the fabric, columns that are not surely there."""
    assert callable(make)
    with pytest.raises(CuttingError) as caught:
        make()
    assert caught.value.fix
