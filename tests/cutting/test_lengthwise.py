"""Lengths out of lengths: against trying everything, against counting by hand, and when it is told to end."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.cutting.layouts.watch import Patience, Watch
from stitchflip.cutting.lengthwise import LengthAnswer, LengthTask, Stock, solve
from stitchflip.cutting.lengthwise import solving as solving_module
from stitchflip.cutting.lengthwise import tables as tables_module
from stitchflip.cutting.lengthwise.every_filling import every_filling
from stitchflip.cutting.lengthwise.tables import Table, parts_of
from stitchflip.cutting.lengthwise.totals import NEVER, Totals
from stitchflip.cutting.model import Status
from tests.twins.brute_lengths import least_cost

LIMIT_S = 20.0


def faults(task: LengthTask, answer: LengthAnswer) -> list[str]:
    """What is wrong with the packing of an answer, looked at with nothing but sums."""
    made = [0] * len(task.sizes)
    opened = [0] * len(task.stock)
    found = []
    for one in answer.packing:
        opened[one.stock] += one.times
        for size, count in one.pattern:
            made[size] += count * one.times
        if sum(task.sizes[size] * count for size, count in one.pattern) > task.stock[one.stock].length:
            found.append(f"{one} is overfull")
    if answer.packing and made != list(task.demands):
        found.append(f"made {made}")
    if any(stock.count is not None and count > stock.count for stock, count in zip(task.stock, opened, strict=True)):
        found.append(f"opened {opened}")
    if sum(stock.cost * count for stock, count in zip(task.stock, opened, strict=True)) != answer.value:
        found.append(f"costs not {answer.value}")
    if answer.packing and answer.bound > answer.value:
        found.append(f"bound {answer.bound}")
    return found


@st.composite
def tasks(draw: st.DrawFn) -> LengthTask:
    """Few pieces, some kinds of strips, some of them limited, at any cost."""
    longest = draw(st.sampled_from((12, 30, 97)))
    kinds = st.builds(
        Stock,
        st.integers(longest // 3, longest),
        st.sampled_from((None, 0, 1, 2, 3)),
        st.integers(0, 9),
    )
    stock = (
        *draw(st.lists(kinds, max_size=2)),
        Stock(longest, draw(st.sampled_from((None, 2))), draw(st.integers(1, 9))),
    )
    pieces = draw(st.lists(st.integers(1, longest), min_size=1, max_size=7))
    sizes = tuple(sorted(set(pieces)))
    return LengthTask(sizes, tuple(pieces.count(size) for size in sizes), stock)


def tried_out(task: LengthTask) -> int | None:
    """The cheapest by trying everything."""
    pieces = tuple(size for size, demand in zip(task.sizes, task.demands, strict=True) for _ in range(demand))
    return least_cost(pieces, tuple((one.length, one.count, one.cost) for one in task.stock))


@given(tasks())
@settings(max_examples=150, deadline=None)
def test_cheapest_strips_are_the_ones_found_by_trying_everything(task: LengthTask) -> None:
    """Value and bound meet at the least cost, and what is impossible is said to be."""
    answer = solve(task, Watch(LIMIT_S))
    cost = tried_out(task)

    assert [] == faults(task, answer)
    if cost is None:
        assert Status.IMPOSSIBLE is answer.status
    else:
        assert (Status.PROVED, cost, cost) == (answer.status, answer.value, answer.bound)


@pytest.mark.parametrize("cells", [50, 1_200_000])
@given(task=tasks())
@settings(max_examples=60, deadline=None)
def test_patterns_alone_decide_as_well_on_coarse_tables_too(cells: int, task: LengthTask) -> None:
    """Without the quick ways, and with tables that round, plan and bound are the same."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(solving_module, "_QUICK_TRIES", 0)
        patch.setattr(solving_module, "least_cost", lambda _task: 0)
        patch.setattr(tables_module, "MOST_CELLS", cells)
        patch.setattr(tables_module, "COARSE_CELLS", cells)
        answer = solve(task, Watch(LIMIT_S))
    cost = tried_out(task)

    assert [] == faults(task, answer)
    assert (cost is None) == (answer.status is Status.IMPOSSIBLE)
    if cost is not None:
        assert answer.bound <= cost <= answer.value


@given(tasks())
@settings(max_examples=60, deadline=None)
def test_search_that_is_told_to_end_at_once_has_an_honest_bound(task: LengthTask) -> None:
    """Cancelled before it begins, it still hands out what it has, and claims nothing it has not proved."""
    answer = solve(task, Watch(LIMIT_S, cancelled=lambda: True))
    cost = tried_out(task)

    assert [] == faults(task, answer)
    if answer.packing and cost is not None:
        assert answer.bound <= cost <= answer.value
    if answer.status is Status.IMPOSSIBLE:
        assert cost is None


def test_milliards_of_one_length_are_divided() -> None:
    """1,000,000,000 pieces of 13 come three from a strip of 40: 333,333,334 strips."""
    answer = solve(LengthTask((13,), (10**9,), (Stock(40),)), Watch(LIMIT_S))

    assert (Status.PROVED, 333_333_334, 333_333_334) == (answer.status, answer.value, answer.bound)


def test_milliards_of_two_lengths_leave_no_waste() -> None:
    """7 + 13 = 20: as many of each as of the other fill strips of 40, two pairs a strip."""
    task = LengthTask((7, 13), (10**9, 10**9), (Stock(40),))
    answer = solve(task, Watch(LIMIT_S))

    assert [] == faults(task, answer)
    assert (Status.PROVED, 500_000_000) == (answer.status, answer.value)


def test_ten_thousand_lengths_get_a_plan_and_a_bound() -> None:
    """2,000 to 11,999 from strips of 12,000: the plan is complete and within a twentieth of the bound."""
    task = LengthTask(tuple(range(2000, 12000)), (1,) * 10_000, (Stock(12_000),))
    answer = solve(task, Watch(LIMIT_S))

    assert [] == faults(task, answer)
    # every piece longer than half a strip needs one of its own
    assert 5999 <= answer.bound <= answer.value <= 1.05 * answer.bound


@pytest.mark.parametrize(
    ("task", "because"),
    [
        (LengthTask((41,), (1,), (Stock(40),)), "longer than every strip"),
        (LengthTask((4,), (1,), (Stock(0),)), "longer than every strip"),
        (LengthTask((4,), (1,), ()), "longer than every strip"),
        (LengthTask((4,), (1,), (Stock(40, 0),)), "longer than every strip"),
        (LengthTask((0,), (1,), (Stock(40),)), "no length"),
        (LengthTask((4,), (-1,), (Stock(40),)), "fewer than 0"),
        (LengthTask((21,), (3,), (Stock(40, 2), Stock(20))), "not enough"),
        (LengthTask((12,), (4,), (Stock(40, 1),)), "not enough"),
    ],
)
def test_what_cannot_be_is_said_with_its_reason(task: LengthTask, because: str) -> None:
    """Impossible tasks end at once, with a sentence."""
    answer = solve(task, Watch(LIMIT_S))

    assert Status.IMPOSSIBLE is answer.status
    assert because in answer.because


def test_nothing_wanted_costs_nothing() -> None:
    """Sizes wanted no times open no strip."""
    answer = solve(LengthTask((4, 5), (0, 0), (Stock(40),)), Watch(LIMIT_S))

    assert (Status.PROVED, 0, ()) == (answer.status, answer.value, answer.packing)


def test_equal_lengths_under_two_names_are_kept_apart() -> None:
    """Two entries of 10 are cut as one length, and told back as two."""
    task = LengthTask((10, 10), (3, 2), (Stock(40),))

    assert [] == faults(task, solve(task, Watch(LIMIT_S)))


def test_same_question_has_the_same_answer_when_looks_are_counted() -> None:
    """A search that counts its looks ends at the same packing each time."""
    task = LengthTask((70, 78, 92, 100), (20,) * 4, (Stock(320),))

    assert solve(task, Patience(60, LIMIT_S)) == solve(task, Patience(60, LIMIT_S))


@given(
    st.lists(st.tuples(st.integers(3, 30), st.integers(1, 3), st.integers(0, 20)), min_size=1, max_size=5),
    st.integers(3, 40),
    st.integers(1, 40),
    st.sampled_from((10**6, 60)),
)
@settings(max_examples=100, deadline=None)
def test_every_filling_worth_its_price_is_written_down(
    sizes: list[tuple[int, int, int]], length: int, least: int, cells: int
) -> None:
    """The patterns found are all those worth at least so much into which nothing more fits."""
    sizes = sorted({size: one for one in sizes for size in one[:1]}.values(), reverse=True)
    task = LengthTask(tuple(one[0] for one in sizes), tuple(one[1] for one in sizes), (Stock(length),))
    prices = [one[2] for one in sizes]
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(tables_module, "MOST_CELLS", cells)
        patch.setattr(tables_module, "COARSE_CELLS", cells)
        table = Table(parts_of(task.sizes, task.demands, length), length)
    table.price(prices)
    found = every_filling(task, table, prices, length, least, 10_000)

    fills: list[tuple[int, ...]] = [()]
    for size, demand, _ in sizes:
        fills = [(*fill, count) for fill in fills for count in range(min(demand, length // size) + 1)]
    expected = set()
    for fill in fills:
        rest = length - sum(count * one[0] for count, one in zip(fill, sizes, strict=True))
        worth = sum(count * one[2] for count, one in zip(fill, sizes, strict=True))
        full = all(
            count == min(one[1], length // one[0]) or one[0] > rest for count, one in zip(fill, sizes, strict=True)
        )
        if rest >= 0 and worth >= least and full:
            expected.add(tuple((place, count) for place, count in enumerate(fill) if count))
    assert found is not None
    assert sorted(expected) == sorted(found)


def test_bounds_are_rounded_to_sums_that_strips_can_cost() -> None:
    """336 any number of times and 120 twice: 0, 120, 240, 336, 456, 576, 672; two alone: never more than 240."""
    some = Totals([336, 120], [(0, None), (0, 2)])
    two = Totals([120], [(1, 2)])

    assert [0, 120, 336, 576, 672] == [some.from_here(cost) for cost in (0, 1, 241, 457, 577)]
    assert [120, 240, NEVER] == [two.from_here(cost) for cost in (0, 121, 241)]
