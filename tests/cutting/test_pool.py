"""Bindings from one pool of strips: published lengths, invented mats, and laws."""

from __future__ import annotations

from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stitchflip.cutting.pool import Pool, pool_for
from stitchflip.errors import CuttingError

CM = 1 / 2.54


def told(pool: Pool) -> list[str]:
    """Everything about a pool that does not add up, counted strip by strip and binding by binding."""
    faults: list[str] = []
    cut: dict[int, float] = {}
    for chain in pool.chains:
        made = chain.parts[0].length + sum(part.length - pool.join for part in chain.parts[1:])
        if abs(made - chain.made) > 1e-6 or made < pool.need - 1e-6:
            faults.append(f"a binding of {made} for {pool.need}")
        for part in chain.parts:
            cut[part.strip] = cut.get(part.strip, 0.0) + part.length
    if any(length > pool.strip_length + 1e-6 for length in cut.values()):
        faults.append(f"strips give {cut}")
    if sorted(cut) != list(range(1, pool.strips + 1)):
        faults.append(f"strips {sorted(cut)} of {pool.strips}")
    if pool.bound > pool.strips:
        faults.append(f"a bound of {pool.bound} above {pool.strips}")
    return faults


def test_four_mats_take_two_strips_each() -> None:
    """164 cm round, 25 + 6 for tails and corners: 195; two strips of 105 at 6½ make 203½, four mats take eight."""
    pool = pool_for(195 * CM, 6.5 * CM, 4, 105 * CM, 0.5 * CM)

    assert (8, 8) == (pool.strips, pool.bound)
    assert [pytest.approx(203.5 * CM)] * 4 == [chain.made for chain in pool.chains]
    assert [(1, 2), (3, 4), (5, 6), (7, 8)] == [tuple(part.strip for part in chain.parts) for chain in pool.chains]


def test_thirteen_mats_cannot_share_strips() -> None:
    """96½ of 105 cm is the least of a second strip, so no two share one; a third part for one mat costs 6½ cm more.

    13 × 201½ = 2619½ of 25 × 105 = 2625 cm leaves no room for even one join more: 26 strips are proved.
    """
    pool = pool_for(195 * CM, 6.5 * CM, 13, 105 * CM, 0.5 * CM)

    assert (26, 26) == (pool.strips, pool.bound)


def test_pieces_that_need_half_a_strip_share_one() -> None:
    """56 in from strips of 40 at 2½: one whole and 18½ more, two of which share a strip; the fifth has its own."""
    pool = pool_for(56, 2.5, 5, 40, 0.25)

    assert [[40, 20]] * 4 + [[40, 40]] == [[part.length for part in chain.parts] for chain in pool.chains]
    assert 5 + ceil(5 / 2) == pool.strips
    assert [] == told(pool)


def test_what_is_left_of_a_strip_begins_the_next_binding_when_that_saves_a_strip() -> None:
    """Four pieces of 60 in from 40 in strips at 2: a whole one and 22 in, so no two parts share a strip: eight.

    One after the other: 40 + 22 | 18 + 40 + 6, cut 8 | 32 + 30 | 10 + 40 + 14, which is seven strips with two joins
    more; and 4 × 62 = 248 in are no less than seven strips of 40.
    """
    pool = pool_for(60, 2, 4, 40, 0.25)

    assert (7, 7, 6) == (pool.strips, pool.bound, pool.joins)
    assert [] == told(pool)


def test_joins_that_use_up_the_strips_are_refused() -> None:
    """Strips of 4 in that are 4 in wide gain nothing."""
    with pytest.raises(CuttingError) as caught:
        pool_for(60, 4, 1, 4, 0.25)

    assert "cutting.joins-use-up-strips" == caught.value.code


@pytest.mark.parametrize(("need", "join", "strip"), [(0, 2, 40), (-5, 2, 40), (60, 2, 0), (60, -1, 40), (1e400, 2, 40)])
def test_lengths_that_cannot_be_meant_are_refused(need: float, join: float, strip: float) -> None:
    """No length to make, no strip to make it from, a join that gives length."""
    with pytest.raises(CuttingError) as caught:
        pool_for(need, join, 1, strip, 0.25)

    assert "cutting.no-binding-length" == caught.value.code


def test_no_pieces_need_no_strips() -> None:
    """Nothing to bind, nothing to cut."""
    pool = pool_for(60, 2, 0, 40, 0.25)

    assert (0, 0, ()) == (pool.strips, pool.bound, pool.chains)


@given(
    st.integers(8, 1200).map(lambda eighths: eighths / 8),
    st.integers(0, 28).map(lambda eighths: eighths / 8),
    st.integers(1, 24),
    st.integers(128, 352).map(lambda eighths: eighths / 8),
)
def test_every_pool_adds_up(need: float, join: float, count: int, strip: float) -> None:
    """Each binding is long enough with its joins charged, no strip gives more than it has, no bound is too high."""
    pool = pool_for(need, join, count, strip, 0.25)

    assert [] == told(pool)
    assert count == len(pool.chains)
