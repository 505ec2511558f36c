"""The one door: what needs no search is answered at once, and what is made small comes back whole."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.cutting.layouts.check import check_layouts
from stitchflip.cutting.layouts.model import Aim, Answer, FirstCut, LayoutTask, Sheet, Want
from stitchflip.cutting.layouts.shrinking import small_task
from stitchflip.cutting.layouts.solving import solve
from stitchflip.cutting.layouts.watch import Watch
from stitchflip.cutting.model import Status

BOLT = (Sheet(40, None),)


def answered(task: LayoutTask, seconds: float = 5.0) -> Answer:
    """The answer, looked at by the checker."""
    answer = solve(task, Watch(seconds))
    assert not check_layouts(task, answer)
    return answer


@pytest.mark.parametrize("aim", list(Aim))
@pytest.mark.parametrize("wants", [(), (Want(3, 4, 0),)])
def test_nothing_wanted_is_proved_with_nothing(wants: tuple[Want, ...], aim: Aim) -> None:
    """No pieces need no fabric, whatever the aim."""
    answer = answered(LayoutTask(wants, (Sheet(40, 40),), aim=aim))

    assert (Status.PROVED, (), 0, 0) == (answer.status, answer.layouts, answer.value, answer.bound)


@pytest.mark.parametrize(
    ("task", "said"),
    [
        (LayoutTask((Want(41, 3, 1),), BOLT), "41 wide × 3 long fits on no sheet"),
        (LayoutTask((Want(41, 42, 1, can_turn=True),), BOLT), "41 wide × 42 long fits on no sheet"),
        (LayoutTask((Want(30, 25, 1),), BOLT, tallest_strip=24), "in strips at most 24 tall"),
        (LayoutTask((Want(3, 50, 1),), (Sheet(40, 40, 9, 1),), aim=Aim.COST), "3 wide × 50 long fits on no sheet"),
        (LayoutTask((Want(3, 3, 1),), ()), "no fabric"),
        (LayoutTask((Want(0, 3, 1),), BOLT), "no size"),
        (LayoutTask((Want(3, 3, 10**9),), BOLT), "the most is 100000"),
    ],
)
def test_what_cannot_be_planned_is_said_with_its_reason(task: LayoutTask, said: str) -> None:
    """A piece that fits nowhere, no fabric, no size, too many: impossible, and because of what."""
    answer = solve(task, Watch(5.0))

    assert Status.IMPOSSIBLE is answer.status
    assert said in answer.because
    assert () == answer.layouts


def test_equal_pieces_under_two_names_are_planned_as_one_and_named_apart() -> None:
    """A piece 6 × 4 and one 4 × 6 that turns are the same: five of them, each counted for its own name."""
    task = LayoutTask((Want(6, 4, 3, can_turn=True), Want(4, 6, 2, can_turn=True), Want(6, 4, 1)), (Sheet(24, None),))
    small = small_task(task)
    answer = answered(task)
    made = Counter(bit.want for strip in answer.layouts[0].strips for stack in strip.stacks for bit in stack.bits)

    assert 2 == len(small.task.wants)
    assert {0: 3, 1: 2, 2: 1} == dict(made)


def test_what_all_measures_share_is_taken_out() -> None:
    """Halves of an inch counted in sixteenths are multiples of 8; steps of a quarter yard (144) become 18."""
    task = LayoutTask((Want(40, 24, 2), Want(56, 72, 1, can_turn=True)), (Sheet(677, None),), step=144)
    small = small_task(task)

    assert (8, 8, 18) == (small.unit_wide, small.unit_long, small.task.step)
    assert 84 == small.task.sheets[0].wide  # 677 / 8 = 84.6
    assert {(5, 3), (7, 9)} == {(want.wide, want.long) for want in small.task.wants}


@given(
    wants=st.lists(
        st.builds(Want, st.integers(1, 9), st.integers(1, 9), st.integers(0, 4), st.booleans()), min_size=1, max_size=5
    ),
    unit=st.sampled_from([1, 3, 4]),
    step=st.sampled_from([1, 4, 6, 10]),
)
@settings(max_examples=60, deadline=None)
def test_larger_units_change_nothing_but_the_units(wants: list[Want], unit: int, step: int) -> None:
    """The same list in units a few times finer has the same plan, so many times as long."""
    finer = tuple(Want(want.wide * unit, want.long * unit, want.count, want.can_turn) for want in wants)
    one = answered(LayoutTask(tuple(wants), (Sheet(11, None),), step=step))
    other = answered(LayoutTask(finer, (Sheet(11 * unit + unit - 1, None),), step=step * unit))

    assert (one.status, one.value * unit) == (other.status, other.value)


@pytest.mark.parametrize("first_cut", [FirstCut.ACROSS, FirstCut.ALONG, FirstCut.EITHER])
def test_sheets_cut_either_way_come_back_in_their_own_units(first_cut: FirstCut) -> None:
    """Widths that are multiples of 6 and lengths that are multiples of 10 stay what they were."""
    task = LayoutTask((Want(12, 20, 5), Want(18, 30, 2)), (Sheet(45, 60, 4, 7),), aim=Aim.COST, first_cut=first_cut)

    assert Status.IMPOSSIBLE is not answered(task, 0.5).status


@pytest.mark.parametrize("stages", [2, 3, 0])
@pytest.mark.parametrize("aim", list(Aim))
def test_every_aim_and_number_of_stages_has_its_method(aim: Aim, stages: int) -> None:
    """A small list is answered, looked at and told with the time it took."""
    sheets = (Sheet(20, None),) if aim is Aim.LENGTH else (Sheet(20, 20, 3, 5), Sheet(10, 30, 2, 3))
    wants = (Want(5, 8, 6, can_turn=True, value=40), Want(10, 10, 2, value=100))
    answer = answered(LayoutTask(wants, sheets, aim=aim, stages=stages), 0.5)

    assert Status.IMPOSSIBLE is not answer.status
    assert answer.layouts
    assert 0 < answer.seconds
