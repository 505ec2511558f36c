"""The cheapest sheets for all pieces: against trying everything, against published values, and whatever comes in.

Published: the values and who says so stand with each instance in `bench/instances` (repository fontanf/packingsolver,
data/rectangle, values collected there from Chen et al. 2016 and others; Berkey, Wang, JORS 38, 1987; Cintra et al.).
"""

from __future__ import annotations

import random
from typing import Any

import pytest

from bench.cutting.instances import named
from stitchflip.cutting.layouts.check import check_layouts
from stitchflip.cutting.layouts.many_sheets import cheapest
from stitchflip.cutting.layouts.model import Aim, Answer, FirstCut, LayoutTask, Sheet, Want
from stitchflip.cutting.layouts.watch import Patience, Watch
from stitchflip.cutting.model import Status
from tests.twins.layouts import best_value

LIMIT_S = 20.0


def answered(task: LayoutTask, watch: Watch | None = None) -> Answer:
    """The answer, looked at by the checker."""
    answer = cheapest(task, watch or Watch(LIMIT_S))
    assert not check_layouts(task, answer)
    return answer


def cost_task(*wants: Want, sheets: tuple[Sheet, ...], **how: Any) -> LayoutTask:  # fields of the task
    """A task for the least cost."""
    return LayoutTask(wants, sheets, Aim.COST, **how)


# --- against trying everything -----------------------------------------------------------------------------


def small_task(seed: int) -> LayoutTask:
    """A handful of pieces, a few sheets, any way of cutting."""
    chance = random.Random(seed)
    sheets = tuple(
        Sheet(chance.randint(4, 9), chance.randint(4, 9), chance.choice((1, 2, None)), chance.randint(1, 12))
        for _ in range(chance.randint(1, 3))
    )
    wants = []
    left = chance.randint(2, 5)
    while left:
        count = chance.randint(1, left)
        left -= count
        wants.append(Want(chance.randint(1, 6), chance.randint(1, 6), count, chance.random() < 0.5))
    return cost_task(
        *wants,
        sheets=sheets,
        stages=chance.choice((2, 3)),
        trims=chance.random() < 0.7,
        same_stack=chance.random() < 0.3,
        tallest_strip=chance.choice((None, None, 4)),
        first_cut=chance.choice(tuple(FirstCut)),
    )


@pytest.mark.parametrize("seed", range(80))
def test_a_handful_of_pieces_is_cut_as_cheaply_as_trying_everything_finds(seed: int) -> None:
    """Plan and bound lie on both sides of the true least cost, and a search with patience reaches it."""
    task = small_task(seed)
    best = best_value(task)

    answer = answered(task, Patience(300, LIMIT_S))

    if best is None:
        assert answer.layouts == ()
        assert answer.status is not Status.PROVED
    else:
        assert answer.bound <= best
        assert best == answer.value


# --- against published values ------------------------------------------------------------------------------


def task_of(row: dict[str, Any]) -> LayoutTask:
    """An instance as a task; where sheets have no cost each counts 1."""
    wants = tuple(Want(item["w"], item["h"], item["demand"], row["rotate"]) for item in row["items"])
    sheets = tuple(
        Sheet(sheet["width"], sheet["height"], sheet["copies"], int(sheet.get("cost") or 1)) for sheet in row["stock"]
    )
    ways = {"horizontal": FirstCut.ACROSS, "vertical": FirstCut.ALONG, "any": FirstCut.EITHER}
    is_homogeneous = row.get("cut_type") == "homogeneous"
    return LayoutTask(
        wants,
        sheets,
        Aim.COST,
        stages=row["stages"],
        trims=not is_homogeneous,
        same_stack=is_homogeneous,
        first_cut=ways[row["first_cut"]],
    )


@pytest.mark.parametrize(
    "name",
    [
        "hifi1997a_A1_3HVO",
        "hifi1997a_A5_3HVO",
        "cung2000_CHL7_3HVO",
        "cung2000_Hchl3s_3HVO",
        "hifi1997a_HH_3HVO",
        "oliveira1990_OF2_3HVO",
        "tschoke1995_STS4_3HVO",
        "alvarez2002_ATP31_3HVO",
    ],
)
def test_published_cutting_stock_is_proved_with_the_published_number_of_sheets(name: str) -> None:
    """Three stages, equal pieces in a stack, first cuts along the sheet."""
    row = named("csp_guillotine_3stage_homogeneous")[name]

    answer = answered(task_of(row))

    assert (row["optimum"], Status.PROVED) == (answer.value, answer.status)


@pytest.mark.parametrize(
    "name", ["class01_20_2", "class04_20_2_rot", "class05_20_2_rot", "class07_20_1", "class10_20_1", "class10_20_2_rot"]
)
def test_published_bin_packing_reaches_the_best_known_number_of_sheets(name: str) -> None:
    """Pieces that all differ, three stages with trimming; the listed value is a plan of this very kind."""
    row = named("binpacking_guillotine_3stage_classes")[name]
    known = row.get("optimum") or row["best_known"]

    answer = answered(task_of(row), Watch(3.0))

    assert known >= answer.value
    assert answer.bound <= known


@pytest.mark.parametrize("name", ["gcut1d", "gcut2d_rot", "gcut5d", "gcut9d_rot"])
def test_several_sheet_sizes_come_within_one_percent_of_the_best_known_cost(name: str) -> None:
    """The bound never exceeds the best known plan, and the plan is near it."""
    row = named("variable_sized_guillotine_2stage_cintra")[name]

    answer = answered(task_of(row), Watch(3.0))

    assert answer.bound <= row["best_known"]
    assert answer.value <= 1.01 * row["best_known"]


@pytest.mark.parametrize("name", ["F1_runner_from_scraps_2stage", "F2_placemats_from_scraps_3stage"])
def test_scraps_of_many_sizes_are_chosen_well_whichever_way_they_are_cut(name: str) -> None:
    """Limited scraps, first cuts either way: within 5 % of the best known cost, bound below it."""
    row = named("variable_sized_guillotine_home")[name]

    answer = answered(task_of(row), Watch(3.0))

    assert answer.bound <= row["best_known"]
    assert answer.value <= 1.05 * row["best_known"]


# --- what a hand can check ---------------------------------------------------------------------------------


def test_the_leftover_is_cut_before_a_new_length() -> None:
    """Four squares of 5 fill the leftover of 10 × 10 that costs nothing; nothing else is opened."""
    sheets = (Sheet(40, 36, None, cost=36), Sheet(10, 10, 1, cost=0))

    answer = answered(cost_task(Want(5, 5, 4), sheets=sheets))

    assert (Status.PROVED, 0) == (answer.status, answer.value)
    assert [1] == [layout.sheet for layout in answer.layouts]


def test_a_scrap_cut_along_shares_its_copies_with_the_same_scrap_cut_across() -> None:
    """One scrap 4 × 6: either two pieces 2 × 6 side by side or three 4 × 2 over one another, not both."""
    wants = (Want(2, 6, 2), Want(4, 2, 3))
    sheets = (Sheet(4, 6, 1, cost=1), Sheet(4, 6, None, cost=5))

    answer = answered(cost_task(*wants, sheets=sheets, first_cut=FirstCut.EITHER))

    assert (Status.PROVED, 6) == (answer.status, answer.value)


def test_first_cuts_along_are_the_same_as_first_cuts_across_seen_from_the_side() -> None:
    """Turning the whole task changes nothing but the direction."""
    wants = (Want(3, 5, 4), Want(2, 4, 5))
    across = cost_task(*wants, sheets=(Sheet(9, 11, None, cost=1),))
    along = cost_task(
        *(Want(want.long, want.wide, want.count) for want in wants),
        sheets=(Sheet(11, 9, None, cost=1),),
        first_cut=FirstCut.ALONG,
    )

    assert answered(across).value == answered(along).value


def test_a_cost_between_two_steps_of_the_purchase_is_proved_at_the_step() -> None:
    """Three sheets at 5 make 15; in steps of 10 that is 20, and a bound of 11 would be 20 as well."""
    answer = answered(cost_task(Want(6, 6, 3), sheets=(Sheet(10, 10, None, cost=5),), step=10))

    assert Status.PROVED is answer.status


# --- whatever comes in -------------------------------------------------------------------------------------


def test_no_wants_cost_nothing() -> None:
    """Nothing wanted, nothing cut."""
    task = cost_task(Want(3, 3, 0), sheets=(Sheet(5, 5, 1, cost=1),))

    assert (Status.PROVED, 0, ()) == ((answer := answered(task)).status, answer.value, answer.layouts)


@pytest.mark.parametrize(
    ("wants", "sheets", "word"),
    [
        ((Want(3, 3, 1),), (), "no fabric"),
        ((Want(3, 3, 1),), (Sheet(5, 5, 0, cost=1),), "no fabric"),
        ((Want(3, 3, 1),), (Sheet(0, 5, 1, cost=1), Sheet(5, 0, 1, cost=1)), "no fabric"),
        ((Want(0, 3, 1),), (Sheet(5, 5, 1, cost=1),), "no size"),
        ((Want(6, 3, 1),), (Sheet(5, 5, 1, cost=1),), "6 wide × 3 long"),
        ((Want(5, 5, 3),), (Sheet(5, 5, 2, cost=1),), "larger than all sheets"),
        ((Want(3, 3, 2),), (Sheet(5, 5, 1, cost=1),), "do not give all pieces"),
    ],
)
def test_what_cannot_be_cut_is_refused_with_a_reason(
    wants: tuple[Want, ...], sheets: tuple[Sheet, ...], word: str
) -> None:
    """No fabric, no size, too wide, too many, or never two in one."""
    answer = answered(cost_task(*wants, sheets=sheets))

    assert Status.IMPOSSIBLE is answer.status
    assert word in answer.because


def test_a_sheet_of_open_length_is_no_scrap() -> None:
    """The least cost is asked of given sheets only."""
    task = cost_task(Want(3, 3, 1), sheets=(Sheet(5, None), Sheet(5, 5, 1, cost=2)))

    assert 2 == cheapest(task, Watch(LIMIT_S)).value


def test_a_billion_equal_pieces_are_planned_as_one_sheet_cut_often() -> None:
    """Four to a sheet: a quarter of a billion sheets."""
    answer = cheapest(cost_task(Want(5, 5, 10**9), sheets=(Sheet(10, 10, None, cost=1),)), Watch(LIMIT_S))

    assert (Status.PROVED, 250_000_000) == (answer.status, answer.value)


def test_more_pieces_on_one_sheet_than_can_be_told_are_refused() -> None:
    """A billion squares of 1 on one sheet of a million by a million would not fit on paper."""
    answer = cheapest(cost_task(Want(1, 1, 10**9), sheets=(Sheet(10**6, 10**6, 1, cost=1),)), Watch(LIMIT_S))

    assert Status.IMPOSSIBLE is answer.status
    assert "more than can be planned" in answer.because


def test_ten_thousand_different_pieces_get_a_plan_without_a_long_search() -> None:
    """All of them are cut; the bound is that of their area."""
    chance = random.Random(3)
    wants = tuple(Want(chance.randint(5, 400), chance.randint(5, 400), 1, can_turn=True) for _ in range(10_000))
    task = cost_task(*wants, sheets=(Sheet(640, 576, None, cost=1), Sheet(336, 288, 40, cost=0)))

    answer = cheapest(task, Watch(1.0))

    assert 10_000 == sum(
        layout.times * sum(len(stack.bits) for strip in layout.strips for stack in strip.stacks)
        for layout in answer.layouts
    )
    assert answer.bound <= answer.value


def test_hundreds_of_odd_sizes_in_three_stages_end_with_the_clock() -> None:
    """Tables of that many places are made coarser: plans stay true, and no search runs away."""
    chance = random.Random(1)
    wants = tuple(Want(chance.randint(5, 400), chance.randint(5, 400), 1, can_turn=True) for _ in range(290))
    sheets = (Sheet(641, 577, None, cost=3), Sheet(977, 433, 5, cost=1))

    answer = answered(cost_task(*wants, sheets=sheets, stages=3, first_cut=FirstCut.EITHER), Watch(2.0))

    assert answer.layouts
    assert 0 < answer.bound <= answer.value


def test_sizes_of_a_billion_are_no_trouble() -> None:
    """Lengths may be counted in anything."""
    task = cost_task(Want(3 * 10**8 + 1, 4 * 10**8 + 7, 7), sheets=(Sheet(10**9, 10**9, None, cost=1),))

    answer = answered(task, Watch(2.0))

    assert 2 == answer.value


def test_a_search_that_is_ended_at_once_still_has_a_plan_and_a_bound() -> None:
    """The first plan is made before the first look at the clock."""
    row = named("variable_sized_guillotine_home")["F1_runner_from_scraps_3stage"]

    answer = answered(task_of(row), Watch(30.0, cancelled=lambda: True))

    assert answer.layouts
    assert 0 < answer.bound <= answer.value


def test_better_plans_and_bounds_are_told_as_they_come() -> None:
    """Values only fall, bounds only rise, and the last told are those of the answer."""
    told: list[tuple[int | None, int]] = []
    row = named("csp_guillotine_3stage_homogeneous")["hifi1997a_A1_3HVO"]

    answer = answered(task_of(row), Watch(LIMIT_S, tell=lambda value, bound: told.append((value, bound))))

    values = [value for value, _ in told if value is not None]
    assert sorted(values, reverse=True) == values
    assert sorted(bound for _, bound in told) == [bound for _, bound in told]
    assert (answer.value, answer.bound) == told[-1]


def test_the_same_task_has_the_same_answer_twice() -> None:
    """Chance is seeded."""
    task = small_task(4)

    assert answered(task).layouts == answered(task).layouts
