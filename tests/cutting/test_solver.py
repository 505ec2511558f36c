"""The exact search for strips against trying everything, and on lists cut from whole strips."""

from __future__ import annotations

import random
from itertools import pairwise

import pytest
from hypothesis import given, settings

from stitchflip.cutting import Status, StripStock, plan_strips
from stitchflip.cutting.bounds import fewest_new
from stitchflip.cutting.exact import solve_exactly
from stitchflip.cutting.layouts.watch import Watch
from stitchflip.cutting.search import Verdict, try_out
from stitchflip.cutting.whole import Packing, Task, task_of
from tests.cutting.lists import bolt, wanted
from tests.strategies import StripProblem, strip_problems
from tests.twins.brute_strips import fewest_bought

LIMIT_S = 20.0


def task_for(problem: StripProblem) -> Task:
    """The problem in whole units, shelf first."""
    shelf = [StripStock(f"on hand {number}", *kind) for number, kind in enumerate(problem.on_hand)]
    return task_of(wanted(*problem.lengths), [*shelf, bolt(problem.bought)])


def is_complete(task: Task, packing: Packing) -> bool:
    """Every piece is cut exactly once, no strip is overfull, no strip on hand is used twice."""
    made = [sum(pattern[size] for _, pattern in packing) for size in range(len(task.sizes))]
    used = [sum(kind == number for kind, _ in packing) for number in range(len(task.kinds))]
    return (
        made == list(task.demands)
        and all(task.rest(kind, pattern) >= 0 for kind, pattern in packing)
        and all(kind.count is None or count <= kind.count for kind, count in zip(task.kinds, used, strict=True))
    )


@given(strip_problems())
@settings(max_examples=60, deadline=None)
def test_exact_search_finds_what_trying_everything_finds(problem: StripProblem) -> None:
    """Plan and bound agree with the search through all placements."""
    task = task_for(problem)
    least = fewest_bought(problem.lengths, problem.on_hand, problem.bought)
    solved = solve_exactly(task, Watch(LIMIT_S))

    assert solved.packing is not None
    assert is_complete(task, solved.packing)
    assert (least, least) == (task.new_strips(solved.packing), solved.new_strips_bound)


@given(strip_problems())
@settings(max_examples=100, deadline=None)
def test_bound_never_lies_above_what_is_possible(problem: StripProblem) -> None:
    """The quick bound is a bound, whatever lies on the shelf."""
    assert fewest_new(task_for(problem)) <= fewest_bought(problem.lengths, problem.on_hand, problem.bought)


@given(strip_problems())
@settings(max_examples=100, deadline=None)
def test_search_says_no_only_where_nothing_is_possible(problem: StripProblem) -> None:
    """With the least number of strips the answer is yes and complete, with one fewer it is no."""
    task = task_for(problem)
    least = fewest_bought(problem.lengths, problem.on_hand, problem.bought)
    enough = try_out(task, least, 1_000_000)

    assert enough.verdict is Verdict.YES
    assert is_complete(task, enough.packing)
    if least:
        assert try_out(task, least - 1, 1_000_000).verdict is Verdict.NO


def test_search_that_runs_out_of_looks_does_not_decide() -> None:
    """Too few looks give "undecided", never a guess."""
    task = task_of(wanted(*(8.75, 9.75, 11.5, 12.5) * 20), [bolt(40)])

    assert try_out(task, 22, 50).verdict is Verdict.UNDECIDED


def cut_up(seed: int, most: int) -> tuple[int, list[float]]:
    """Whole strips of 40 in cut into pieces on the 1/8 in grid without waste: how many, and the pieces."""
    dice = random.Random(seed)
    strips = dice.randint(3, most)
    lengths: list[float] = []
    for _ in range(strips):
        cuts = sorted(dice.sample(range(20, 300), dice.randint(2, 4)))
        lengths += [(end - start) / 8 for start, end in pairwise([0, *cuts, 320])]
    return strips, lengths


@pytest.mark.parametrize("seed", range(8))
def test_strips_cut_up_at_random_come_together_again(seed: int) -> None:
    """The number of strips cut up is the least, and is found and proved."""
    strips, lengths = cut_up(seed, 12)
    plan = plan_strips(2, wanted(*lengths), [bolt(40)])

    assert (strips, strips, Status.PROVED) == (len(plan.strips), plan.bound, plan.status)


@pytest.mark.parametrize("seed", range(3))
def test_solver_puts_strips_together_again(seed: int) -> None:
    """The exact solver alone does it as well."""
    strips, lengths = cut_up(seed, 4)
    task = task_of(wanted(*lengths), [bolt(40)])
    solved = solve_exactly(task, Watch(LIMIT_S))

    assert solved.packing is not None
    assert is_complete(task, solved.packing)
    assert (strips, strips) == (task.new_strips(solved.packing), solved.new_strips_bound)


def test_lengths_that_are_no_fractions_are_solved_as_well() -> None:
    """Lengths across a slanted side are irrational; five of 13.331 and five of 15.331 need five strips of 40."""
    root = 2**0.5
    task = task_of(wanted(*[9.25 * root + 0.25] * 5, *[9.25 * root + 2.25] * 5), [bolt(40)])
    solved = solve_exactly(task, Watch(LIMIT_S))

    assert solved.packing is not None
    assert (5, 5) == (task.new_strips(solved.packing), solved.new_strips_bound)
