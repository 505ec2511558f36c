"""What the searches for whole sheets are made of, each against the plainest way of doing the same."""

from __future__ import annotations

import random
from fractions import Fraction
from itertools import product

import pytest

from stitchflip.cutting.layouts.loads.clipping import clipped
from stitchflip.cutting.layouts.loads.filling import Filler, Load
from stitchflip.cutting.layouts.loads.kinds import Kind, choices_of, kinds_of
from stitchflip.cutting.layouts.loads.large_pieces import fewest_sheets
from stitchflip.cutting.layouts.loads.sums import Sums
from stitchflip.cutting.layouts.loads.totals import Totals, area_bound
from stitchflip.cutting.layouts.model import Aim, Bit, FirstCut, LaidStrip, LayoutTask, Sheet, Stack, Want
from tests.twins.layouts import best_value


@pytest.mark.parametrize("seed", range(20))
def test_places_are_the_sums_of_sizes_used_as_often_as_there_are_pieces(seed: int) -> None:
    """Every way of taking some of the pieces, added up."""
    chance = random.Random(seed)
    sizes = {chance.randint(2, 20): chance.randint(1, 3) for _ in range(3)}
    room = chance.randint(10, 70)
    ways = product(*(range(count + 1) for count in sizes.values()))
    expected = {sum(size * taken for size, taken in zip(sizes, way, strict=True)) for way in ways}

    sums = Sums(sizes, room)

    assert sorted(length for length in expected if length <= room) == [sums.length(at) for at in range(len(sums))]


def test_too_many_places_are_made_coarser_and_say_so() -> None:
    """Places of a length of a billion, 100 at most: sizes are rounded up, so that plans stay true."""
    sums = Sums({300_000_007: 3, 50_000_017: 20, 3: 10**9}, 10**9, most=100)

    assert not sums.is_exact
    assert len(sums) <= 101
    assert sums.length(sums.place(10**9)) <= 10**9


@pytest.mark.parametrize("seed", range(20))
def test_a_bound_is_rounded_up_to_what_sheets_can_cost_together(seed: int) -> None:
    """Every number of copies of every sheet, added up."""
    chance = random.Random(seed)
    kinds = [Kind(number, False, 5, 5, 5, 3, chance.randint(0, 30)) for number in range(3)]
    copies = [chance.randint(1, 3) for _ in kinds]
    ways = product(*(range(count + 1) for count in copies))
    sums = sorted({sum(kind.cost * n for kind, n in zip(kinds, way, strict=True)) for way in ways})
    bound = Fraction(chance.randint(0, 2 * sums[-1]), 2)

    totals = Totals(kinds, copies, sums[-1])

    assert next(cost for cost in sums if cost >= bound) == totals.up(bound)


def test_the_cheapest_fabric_for_its_size_bounds_the_cost() -> None:
    """100 of area from one sheet of 60 at 1 a unit and the rest at 2: 60 + 80."""
    kinds = [Kind(0, False, 6, 10, 10, 1, 60), Kind(1, False, 10, 10, 10, None, 200)]

    assert Fraction(140) == area_bound(kinds, [1, None], 100)
    assert area_bound(kinds[:1], [1], 100) is None


@pytest.mark.parametrize("seed", range(40))
def test_large_pieces_never_ask_for_more_sheets_than_the_best_plan_takes(seed: int) -> None:
    """Against trying everything, each sheet counting 1."""
    chance = random.Random(seed)
    wide, long = chance.randint(4, 12), chance.randint(4, 12)
    wants = tuple(
        Want(chance.randint(1, wide), chance.randint(1, long), 1, can_turn=chance.random() < 0.4) for _ in range(5)
    )
    task = LayoutTask(wants, (Sheet(wide, long, None, cost=1),), Aim.COST, stages=3, first_cut=FirstCut.EITHER)
    best = best_value(task)

    assert best is not None
    assert fewest_sheets(task, wide, long) <= best


def test_pieces_over_half_of_a_side_do_not_lie_side_by_side() -> None:
    """Sheets 10 × 10: five pieces 6 × 4 leave room for two over one another, never for two side by side: 3 sheets.

    Their area is 120, two sheets' worth.
    """
    assert 3 == fewest_sheets(LayoutTask((Want(6, 4, 5),), ()), 10, 10)


@pytest.mark.parametrize("stages", [2, 3])
@pytest.mark.parametrize("seed", range(15))
def test_the_best_load_is_worth_at_least_the_most_that_can_be_cut_from_one_sheet(seed: int, stages: int) -> None:
    """The table may count a piece twice, so it bounds the true worth; what it tells is worth what it says."""
    chance = random.Random(seed)
    wants = tuple(
        Want(
            chance.randint(1, 5),
            chance.randint(1, 5),
            chance.randint(1, 2),
            chance.random() < 0.5,
            chance.randint(1, 9),
        )
        for _ in range(3)
    )
    task = LayoutTask(wants, (Sheet(7, 6),), Aim.VALUE, stages=stages, trims=chance.random() < 0.5)
    worths, limits = [want.value for want in wants], [want.count for want in wants]
    filler = Filler(task, kinds_of(task), limits)
    filler.price(worths, limits)

    most, loads = filler.best(0, 3)

    best = best_value(task)
    assert best is not None
    assert best <= most
    assert most == sum(worths[want] * count for want, count in loads[0].counts().items())
    assert all(sum(strip.high for strip in load.strips) <= 6 for load in loads)
    assert all(sum(stack.wide for stack in strip.stacks) <= 7 for load in loads for strip in load.strips)


def test_pieces_nobody_wants_are_taken_out_and_the_strip_closes_up() -> None:
    """Of two tall pieces one is wanted, of two low ones none: one strip, one stack."""
    tall, low = Bit(0), Bit(1)
    strips = (
        LaidStrip(5, (Stack(2, (tall,)), Stack(2, (tall,)), Stack(3, (low,)))),
        LaidStrip(2, (Stack(3, (low,)),)),
    )

    load = clipped(Load(0, strips), [1, 0], [Want(2, 5, 1), Want(3, 2, 0)], along=False, trims=True)

    assert (LaidStrip(5, (Stack(2, (tall,)),)),) == load.strips


def test_a_sheet_cut_either_way_is_two_kinds_that_share_its_copies() -> None:
    """Seen from its side, wide and long change places, for the pieces too."""
    wants = (Want(2, 3, 1), Want(2, 5, 1))
    task = LayoutTask(wants, (Sheet(4, 6, 2, cost=7),), Aim.COST, first_cut=FirstCut.EITHER)

    across, along = kinds_of(task)

    assert ((4, 6, 0), (6, 4, 0)) == ((across.wide, across.high, across.sheet), (along.wide, along.high, along.sheet))
    assert [(0, 2, 3), (1, 2, 5)] == [(c.want, c.wide, c.high) for c in choices_of(wants, [across])]
    assert [(0, 3, 2), (1, 5, 2)] == [(c.want, c.wide, c.high) for c in choices_of(wants, [along])]


def test_a_square_sheet_of_pieces_that_all_turn_is_looked_at_from_one_side() -> None:
    """Its side view is the same sheet again."""
    task = LayoutTask((Want(2, 3, 1, can_turn=True),), (Sheet(5, 5),), Aim.COST, first_cut=FirstCut.EITHER)

    assert 1 == len(kinds_of(task))
