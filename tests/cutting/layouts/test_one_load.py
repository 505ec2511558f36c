"""The most worth from the sheets there are: against trying everything, against published values, and whatever comes in.

Published: the values and who says so stand with each instance in `bench/instances` (two stages: repository
fontanf/packingsolver, data_knapsack_2nho_2nvo_others.csv, collected there from Hifi, Roucairol 2001 and Lodi, Monaci
2003; any number of stages: tables 4 and 7 of Borgulya, Central European Journal of Operations Research, 2018).
"""

from __future__ import annotations

import random
from typing import Any

import pytest

from bench.cutting.instances import named
from stitchflip.cutting.layouts.check import check_layouts
from stitchflip.cutting.layouts.loads.any_cuts import AnyCuts
from stitchflip.cutting.layouts.loads.kinds import choices_of, kinds_of
from stitchflip.cutting.layouts.model import Aim, Answer, FirstCut, LayoutTask, Sheet, Want
from stitchflip.cutting.layouts.one_load import worthiest
from stitchflip.cutting.layouts.watch import Patience, Watch
from stitchflip.cutting.model import Status
from tests.twins.layouts import best_value

LIMIT_S = 20.0


def answered(task: LayoutTask, watch: Watch | None = None) -> Answer:
    """The answer, looked at by the checker."""
    answer = worthiest(task, watch or Watch(LIMIT_S))
    assert not check_layouts(task, answer)
    return answer


def value_task(*wants: Want, sheets: tuple[Sheet, ...], **how: Any) -> LayoutTask:  # fields of the task
    """A task for the most worth."""
    return LayoutTask(wants, sheets, Aim.VALUE, **how)


# --- against trying everything -----------------------------------------------------------------------------


def small_task(seed: int, sheets: int) -> LayoutTask:
    """A handful of pieces and less fabric than they take, any way of cutting."""
    chance = random.Random(seed)
    kinds = tuple(Sheet(chance.randint(3, 8), chance.randint(3, 8), chance.randint(1, 2)) for _ in range(sheets))
    if sheets == 1:
        kinds = (Sheet(kinds[0].wide, kinds[0].long, 1),)
    wants = []
    left = chance.randint(3, 6 if sheets == 1 else 5)
    while left:
        count = chance.randint(1, left)
        left -= count
        wants.append(
            Want(chance.randint(1, 6), chance.randint(1, 6), count, chance.random() < 0.5, chance.randint(0, 30))
        )
    return value_task(
        *wants,
        sheets=kinds,
        stages=chance.choice((2, 3)),
        trims=chance.random() < 0.7,
        same_stack=chance.random() < 0.3,
        tallest_strip=chance.choice((None, None, 4)),
        first_cut=chance.choice(tuple(FirstCut)),
    )


@pytest.mark.parametrize("seed", range(80))
def test_one_sheet_is_worth_as_much_as_trying_everything_finds(seed: int) -> None:
    """Plan and bound lie on both sides of the true worth, and a search with patience reaches it."""
    task = small_task(seed, sheets=1)
    best = best_value(task)

    answer = answered(task, Patience(300, LIMIT_S))

    assert best is not None
    assert answer.bound >= best
    assert best == answer.value


@pytest.mark.parametrize("seed", range(25))
def test_several_sheets_are_worth_no_more_than_the_bound_and_what_trying_everything_finds(seed: int) -> None:
    """Plan and bound lie on both sides of the true worth; the plan may miss a little of it."""
    task = small_task(1000 + seed, sheets=2)
    best = best_value(task)

    answer = answered(task, Patience(300, LIMIT_S))

    assert best is not None
    assert answer.value <= best <= answer.bound
    assert 0.9 * best <= answer.value


# --- against published values ------------------------------------------------------------------------------


def task_of(row: dict[str, Any]) -> LayoutTask:
    """An instance as a task; without stages as many as it takes, whichever way first."""
    wants = tuple(Want(item["w"], item["h"], item["demand"], row["rotate"], item["value"]) for item in row["items"])
    sheets = tuple(Sheet(sheet["width"], sheet["height"], sheet["copies"]) for sheet in row["stock"])
    ways = {"horizontal": FirstCut.ACROSS, "vertical": FirstCut.ALONG}
    first = ways.get(row.get("first_cut", ""), FirstCut.EITHER)
    return LayoutTask(wants, sheets, Aim.VALUE, stages=row.get("stages") or 0, first_cut=first)


@pytest.mark.parametrize(
    "name",
    [
        "hifi1997a_HH_H",
        "hifi1997a_A1_H",
        "fayard1998_CW1_H",
        "oliveira1990_OF2_H",
        "cung2000_CHL2s_H",
        "wang1983_W_V",
        "hifi1997a_A3_V",
        "cung2000_CHL5_V",
        "fayard1998_CU1_V",
        "cung2000_Hchl8s_V",
    ],
)
def test_published_two_stage_loads_are_proved_with_the_published_worth(name: str) -> None:
    """First cuts across (H) and along (V), with trimming."""
    row = named("knapsack_guillotine_2stage")[name]

    answer = answered(task_of(row))

    assert (row["optimum"], Status.PROVED) == (answer.value, answer.status)


@pytest.mark.parametrize(
    "name", ["gcut2_each_once", "gcut8_each_once", "ngcut4", "ngcut7", "ngcut10", "cgcut3", "hadchr_hccut08", "okp4"]
)
def test_three_stages_reach_published_worths_of_any_number_of_stages(name: str) -> None:
    """The plan has three stages; the published worth, which allows more, is met and the bound does not cut it off."""
    row = named("knapsack_guillotine_unlimited")[name]

    answer = answered(task_of(row), Watch(3.0))

    assert row["optimum"] == answer.value
    assert answer.bound >= row["optimum"]


@pytest.mark.parametrize("name", ["ngcut1", "ngcut6", "ngcut8", "okp2"])
def test_the_bound_for_any_number_of_stages_allows_what_three_stages_cannot_cut(name: str) -> None:
    """Here the published plans need more than three stages."""
    row = named("knapsack_guillotine_unlimited")[name]

    answer = answered(task_of(row), Watch(1.0))

    assert answer.value <= row["optimum"] <= answer.bound


def test_prices_on_pieces_lower_the_bound_for_any_number_of_stages() -> None:
    """Each piece of the published set exists once; without prices the smallest would be counted many times."""
    task = task_of(named("knapsack_guillotine_unlimited")["gcut1_each_once"])
    kind = kinds_of(task)[0]
    values = [want.value for want in task.wants]
    plenty = AnyCuts(kind, choices_of(task.wants, [kind]), [100] * len(values)).bound(values, Watch(LIMIT_S), 48368)
    once = AnyCuts(kind, choices_of(task.wants, [kind]), [1] * len(values)).bound(values, Watch(LIMIT_S), 48368)

    assert plenty is not None
    assert once is not None
    assert 48368 <= once < plenty


# --- what a hand can check ---------------------------------------------------------------------------------


def test_of_two_pieces_that_do_not_both_fit_the_one_worth_more_is_cut() -> None:
    """A strip of 10: 6 and 5 do not fit side by side."""
    answer = answered(value_task(Want(6, 4, 1, value=7), Want(5, 4, 1, value=9), sheets=(Sheet(10, 4),)))

    assert (Status.PROVED, 9) == (answer.status, answer.value)


def test_a_piece_that_fits_nowhere_or_is_worth_nothing_is_left_out() -> None:
    """Not everything need be cut."""
    wants = (Want(11, 4, 1, value=50), Want(4, 4, 3, value=0), Want(4, 4, 1, value=3))

    answer = answered(value_task(*wants, sheets=(Sheet(10, 4),)))

    assert (Status.PROVED, 3) == (answer.status, answer.value)


def test_sheets_without_end_give_everything_that_fits_on_them() -> None:
    """The large piece fits only the one scrap; of it one is cut."""
    wants = (Want(5, 5, 7, value=2), Want(8, 8, 2, value=10))

    answer = answered(value_task(*wants, sheets=(Sheet(6, 6, None), Sheet(9, 9, 1))))

    assert (Status.PROVED, 24) == (answer.status, answer.value)


def test_a_sheet_may_be_cut_along_when_that_is_worth_more() -> None:
    """Sheet 5 × 4, exact: across, 2 × 4 and 3 × 2 are never both two and two; along they are."""
    wants = (Want(2, 4, 1, value=8), Want(3, 2, 2, value=6))
    sheets = (Sheet(5, 4),)

    along = answered(value_task(*wants, sheets=sheets, first_cut=FirstCut.ALONG))
    either = answered(value_task(*wants, sheets=sheets, first_cut=FirstCut.EITHER))

    assert (Status.PROVED, 20) == (along.status, along.value)
    assert (Status.PROVED, 20) == (either.status, either.value)


# --- whatever comes in -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("wants", "sheets"),
    [
        ((), (Sheet(5, 5),)),
        ((Want(3, 3, 1, value=4),), ()),
        ((Want(3, 3, 0, value=4),), (Sheet(5, 5),)),
        ((Want(3, 3, 1, value=4),), (Sheet(5, 5, 0),)),
        ((Want(3, 3, 1, value=4),), (Sheet(0, 5), Sheet(5, 0))),
        ((Want(0, 3, 1, value=4),), (Sheet(5, 5),)),
        ((Want(3, 3, 1, value=-4),), (Sheet(5, 5),)),
        ((Want(3, 3, 1, value=4),), (Sheet(5, None),)),
    ],
)
def test_where_nothing_can_be_cut_the_empty_plan_is_proved(wants: tuple[Want, ...], sheets: tuple[Sheet, ...]) -> None:
    """No wants, no fabric, no size, no worth."""
    answer = worthiest(value_task(*wants, sheets=sheets), Watch(LIMIT_S))

    assert (Status.PROVED, 0, ()) == (answer.status, answer.value, answer.layouts)


def test_a_billion_equal_pieces_fill_the_sheet_there_is() -> None:
    """Four to a sheet, two sheets."""
    answer = answered(value_task(Want(5, 5, 10**9, value=3), sheets=(Sheet(11, 10, 2),)), Watch(5.0))

    assert (Status.PROVED, 24) == (answer.status, answer.value)


def test_ten_thousand_different_pieces_are_chosen_from_in_the_time_there_is() -> None:
    """The bound is that of all of them, the plan one of those worth most for their size."""
    chance = random.Random(3)
    wants = tuple(
        Want(chance.randint(5, 400), chance.randint(5, 400), 1, can_turn=True, value=chance.randint(1, 100))
        for _ in range(10_000)
    )

    answer = answered(value_task(*wants, sheets=(Sheet(640, 576),)), Watch(2.0))

    assert 0 < answer.value <= answer.bound


def test_sizes_and_worths_of_a_billion_are_no_trouble() -> None:
    """Lengths may be counted in anything; two of four fit."""
    wants = (Want(3 * 10**8 + 1, 9 * 10**8, 4, value=10**9),)

    answer = answered(value_task(*wants, sheets=(Sheet(7 * 10**8, 10**9),)), Watch(3.0))

    assert 2 * 10**9 == answer.value


@pytest.mark.parametrize("file", ["knapsack_guillotine_2stage", "knapsack_guillotine_unlimited"])
def test_a_search_that_is_ended_at_once_still_has_a_bound(file: str) -> None:
    """Nothing need be cut, so there is always a plan; the bound is that of the area at most."""
    row = next(iter(named(file).values()))

    answer = answered(task_of(row), Watch(30.0, cancelled=lambda: True))

    assert answer.value <= row["optimum"] <= answer.bound


def test_the_same_task_has_the_same_answer_twice() -> None:
    """Chance is seeded."""
    task = small_task(7, sheets=1)

    assert answered(task).layouts == answered(task).layouts
