"""Sewing from the strip in the hand: which rest to take, when to open the next strip."""

from __future__ import annotations

from itertools import permutations

import pytest
from hypothesis import given, settings

from stitchflip.cutting import Status, StripPiece, StripPlan, StripStock, hand_words, plan_as_you_go, plan_strips
from stitchflip.lengths import Speaker, Unit
from tests.cutting.lists import bolt, plain, wanted
from tests.strategies import StripProblem, strip_problems
from tests.twins.brute_strips import fewest_bought, longest_leftover

BRASS = tuple(
    StripPiece(str(step), length, step)
    for step, length in (
        (1, 8.25),
        (2, 9.25),
        (3, 9.25),
        (4, 10.25),
        (17, 10.15),
        (18, 11.15),
        (19, 10.15),
        (20, 11.15),
    )
)


def walk(plan: StripPlan) -> list[float]:
    """Rests after sewing everything, by following the steps with nothing but a list of lengths."""
    rests = [strip.length for strip in plan.strips]
    for step in plan.hand_steps:
        assert abs(rests[step.strip_number - 1] - step.rest_before) < 1e-9
        rests[step.strip_number - 1] -= step.length
        assert rests[step.strip_number - 1] > -1e-4
        assert abs(max(rests[step.strip_number - 1], 0) - step.rest_after) < 1e-4
    return rests


def test_two_brass_strips_do_when_trimmed_after_sewing() -> None:
    """Steps 1, 2, 18, 20 come from one strip, 3, 4, 17, 19 from the other, 39.8 in of each."""
    plan = plan_as_you_go(1.5, BRASS, [bolt(40)])
    by_strip = [[step.step for step in plan.hand_steps if step.strip_number == number] for number in (1, 2)]

    assert [[1, 2, 18, 20], [3, 4, 17, 19]] == by_strip
    assert all(abs(rest - 0.2) < 1e-9 for rest in walk(plan))
    assert plan.as_you_go


def test_rest_that_is_needed_later_is_left_alone() -> None:
    """Step 2 (12 in) would fit the rest of strip 1 (22 in), but step 3 needs all of it."""
    plan = plan_as_you_go(2.5, wanted(8, 12, 22, 18), [bolt(30)])

    assert [(1, True), (2, True), (1, False), (2, False)] == [
        (step.strip_number, step.opens_new) for step in plan.hand_steps
    ]


def test_rest_in_the_hand_is_used_before_a_new_strip_is_opened() -> None:
    """Four pieces of 10 come from one strip one after the other; the second strip is opened for the fifth."""
    plan = plan_as_you_go(2, wanted(10, 10, 10, 9.5, 10), [bolt(40)])

    assert [40, 30, 20, 10, 40] == [step.rest_before for step in plan.hand_steps]


def test_strip_on_hand_is_sewn_from_first() -> None:
    """What is on the shelf is opened before the bolt."""
    plan = plan_as_you_go(2, wanted(10, 12, 20), [StripStock("precut strip", 24, 1), bolt(40)])

    assert ["precut strip", "width of fabric"] == [strip.stock for strip in plan.strips]


def test_pieces_alike_are_sewn_in_rounds() -> None:
    """Four mats: all first strips, then all second strips, whatever order the list has."""
    pieces = [StripPiece(str(step), 20, step) for _ in range(4) for step in (1, 2)]
    plan = plan_as_you_go(2, pieces, [bolt(40)])

    assert [1, 1, 1, 1, 2, 2, 2, 2] == [step.step for step in plan.hand_steps]
    assert len(plan.strips) == 4


def test_words_say_which_rest_and_that_it_is_enough() -> None:
    """One line for each step, rests rounded down."""
    plan = plan_as_you_go(1.5, BRASS, [bolt(40)])
    say = Speaker(Unit.INCH)

    assert "open strip 1 (40 in)" == plain(hand_words(plan.hand_steps[0], say))
    assert "take the rest of strip 2 (10 5/16 in): enough" == plain(hand_words(plan.hand_steps[6], say))


@given(strip_problems(most=10))
@settings(max_examples=100, deadline=None)
def test_going_along_needs_no_more_strips_than_planning_ahead(problem: StripProblem) -> None:
    """The steps can be followed with a list of lengths, and open as few strips as the cut-first plan."""
    shelf = [StripStock(f"on hand {number}", *kind) for number, kind in enumerate(problem.on_hand)]
    stock = [*shelf, bolt(problem.bought)]
    pieces = wanted(*problem.lengths)
    plan = plan_as_you_go(2, pieces, stock)

    walk(plan)
    assert list(range(1, len(pieces) + 1)) == [step.step for step in plan.hand_steps]
    assert len(plan_strips(2, pieces, stock).strips) == len(plan.strips)
    assert list(range(1, len(plan.strips) + 1)) == [step.strip_number for step in plan.hand_steps if step.opens_new]


def test_piece_that_comes_from_nothing_is_left_out_of_the_steps() -> None:
    """The long one is named, the others have their steps."""
    plan = plan_as_you_go(2, wanted(10, 50, 12), [bolt(40)])

    assert ["2"] == [piece.label for piece in plan.left_out]
    assert [1, 3] == [step.step for step in plan.hand_steps]


def test_plan_says_its_bound_and_is_proved() -> None:
    """79.6 in of Brass: two strips of 40, and no plan does with one."""
    plan = plan_as_you_go(1.5, BRASS, [bolt(40)])

    assert (2, 2, 2, Status.PROVED) == (len(plan.strips), plan.bound, plan.new_bound, plan.status)


@given(strip_problems(with_shelf=False))
@settings(max_examples=60, deadline=None)
def test_going_along_wastes_no_more_than_trying_everything(problem: StripProblem) -> None:
    """The fewest strips, each keeps as much of 1/4 in as it can, and one leftover is as long as it can be."""
    plan = plan_as_you_go(2, wanted(*problem.lengths), [bolt(problem.bought)])
    strips = fewest_bought(problem.lengths, (), problem.bought)
    kept, longest = longest_leftover(problem.lengths, problem.bought, strips)
    rests = [strip.rest for strip in plan.strips]

    assert (strips, strips) == (len(plan.strips), plan.new_bound)
    # a quarter less of the leftover is not looked for, nor a quarter of the comfort
    assert kept - 0.07 <= min(rests)
    assert longest - 0.51 <= max(rests)


@pytest.mark.parametrize("order", list(permutations((8.0, 12.0, 22.0, 18.0))))
def test_order_of_sewing_costs_no_strip(order: tuple[float, ...]) -> None:
    """8 + 22 = 12 + 18 = 30: two strips whatever is sewn first."""
    plan = plan_as_you_go(2.5, wanted(*order), [bolt(30)])

    assert (2, 2) == (len(plan.strips), plan.new_bound)


def test_leftover_is_kept_together_while_rests_are_used() -> None:
    """4, 11 3/4, 13 1/4, 11 3/4, 17 1/4: three can leave 18 3/4 in of one strip, so no piece is taken from there."""
    plan = plan_as_you_go(2, wanted(4, 11.75, 13.25, 11.75, 17.25), [bolt(40)])

    assert 2 == len(plan.strips)
    assert 18.75 == max(strip.rest for strip in plan.strips)
