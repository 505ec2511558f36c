"""The engine against trying every way of cutting a few pieces: no bound is beyond the best plan, every proof is one."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.cutting.layouts.check import check_layouts
from stitchflip.cutting.layouts.model import Aim, Answer, FirstCut, LayoutTask, Sheet, Want
from stitchflip.cutting.layouts.solving import solve
from stitchflip.cutting.layouts.watch import Patience
from stitchflip.cutting.model import Status
from tests.twins.layouts import best_value

_MOST_PIECES = 4


@st.composite
def wants(draw: st.DrawFn, largest: int) -> tuple[Want, ...]:
    """A few pieces of up to three sizes."""
    out: list[Want] = []
    left = _MOST_PIECES
    while left and len(out) < draw(st.integers(1, 3)):
        count = draw(st.integers(1, left))
        left -= count
        wide, long = draw(st.integers(1, largest)), draw(st.integers(1, largest))
        out.append(Want(wide, long, count, can_turn=draw(st.booleans()), value=draw(st.integers(0, 9))))
    return tuple(out)


@st.composite
def tasks(draw: st.DrawFn) -> LayoutTask:
    """Small tasks of every aim, with two stages or three, with and without trimming."""
    largest = draw(st.sampled_from([5, 9]))
    aim = draw(st.sampled_from(Aim))
    sides = st.integers(largest // 2, 2 * largest)
    if aim is Aim.LENGTH:
        sheets: tuple[Sheet, ...] = (Sheet(draw(sides), None),)
    else:
        counts = st.sampled_from([None, 1, 2] if aim is Aim.COST else [1])
        kinds = draw(st.integers(1, 2))
        sheets = tuple(
            Sheet(draw(sides), draw(sides), draw(counts), cost=draw(st.integers(0, 9))) for _ in range(kinds)
        )
    stages = draw(st.sampled_from([2, 3]))
    return LayoutTask(
        draw(wants(largest)),
        sheets,
        aim,
        stages,
        trims=draw(st.booleans()),
        same_stack=stages == 3 and draw(st.booleans()),
        step=draw(st.sampled_from([1, 4])),
        tallest_strip=draw(st.none() | st.integers(largest // 2, largest + 2)),
        first_cut=FirstCut.ACROSS if aim is Aim.LENGTH else draw(st.sampled_from(FirstCut)),
    )


def faults(task: LayoutTask, answer: Answer, best: int | None) -> list[str]:
    """What an answer claims that trying every way denies."""
    if best is None:
        return ["a plan, and there is none"] if answer.layouts else []
    if answer.status is Status.IMPOSSIBLE:
        return [f"impossible, and {best} is not"]
    signs = -1 if task.aim is Aim.VALUE else 1
    found = []
    if signs * answer.bound > signs * best:
        found.append(f"a bound of {answer.bound}, and {best} can be had")
    if answer.layouts and signs * answer.value < signs * best:
        found.append(f"a plan of {answer.value}, and nothing is better than {best}")
    if answer.status is Status.PROVED and -(-answer.value // task.step) != -(-best // task.step):
        found.append(f"{answer.value} is called proved, and {best} can be had")
    return found


@given(task=tasks())
@settings(max_examples=60, deadline=None)
def test_no_answer_claims_what_trying_every_way_denies(task: LayoutTask) -> None:
    """Plans are true, bounds are below them and below the best there is, proofs are proofs, all in any steps."""
    answer = solve(task, Patience(300, 20))

    assert () == check_layouts(task, answer)
    assert [] == faults(task, answer, best_value(task))


# Worked out by hand: on a sheet 5 wide two pieces 3 × 2 and one 2 × 4 stand side by side, the two over one another, in
# one strip 4 high when there is a third cut, and take 4 + 2 = 6 without one.
@pytest.mark.parametrize(("stages", "length"), [(2, 6), (3, 4)])
def test_every_way_is_tried(stages: int, length: int) -> None:
    """The slow twin finds the best plan of each kind."""
    task = LayoutTask((Want(3, 2, 2), Want(2, 4, 1)), (Sheet(5, None),), stages=stages)

    assert length == best_value(task)


# 3 × 2 twice and 2 × 4 on pieces 5 × 4: one does with three stages, two without; worth what is on the first.
@pytest.mark.parametrize(("stages", "cost", "worth"), [(2, 6, 7), (3, 3, 9)])
def test_every_way_is_tried_on_sheets(*, stages: int, cost: int, worth: int) -> None:
    """Two stages cut two pieces 3 × 2 over one another, or one beside 2 × 4."""
    pieces = (Want(3, 2, 2, value=2), Want(2, 4, 1, value=5))
    cheap = LayoutTask(pieces, (Sheet(5, 4, None, cost=3),), Aim.COST, stages)
    dear = LayoutTask(pieces, (Sheet(5, 4),), Aim.VALUE, stages)

    assert (cost, worth) == (best_value(cheap), best_value(dear))
