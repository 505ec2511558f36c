"""The shortest length in three stages: against trying everything, against published values, and whatever comes in.

Published: E. K. Burke, G. Kendall, G. Whitwell, "A New Placement Heuristic for the Orthogonal Stock-Cutting Problem",
Operations Research 52 (2004): sets N, cut out of one rectangle, so no plan is lower than it. E. Hopper,
"Two-dimensional packing utilising evolutionary algorithms and other meta-heuristic methods", PhD thesis, Cardiff
University (2000): sets T, cut out of a rectangle 200 high by straight cuts. M. Hifi, "Exact algorithms for the
guillotine strip cutting/packing problem", Computers & Operations Research 25 (1998): sets SCP; values of three stages
as computed by another program (named beside them in the file of instances).
"""

from __future__ import annotations

from itertools import product
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bench.cutting.instances import named
from stitchflip.cutting.layouts.check import check_layouts
from stitchflip.cutting.layouts.model import Answer, LayoutTask, Sheet, Want
from stitchflip.cutting.layouts.solving import solve
from stitchflip.cutting.layouts.watch import Patience, Watch
from stitchflip.cutting.model import Status

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

LIMIT_S = 20.0
LOOKS = 1500
"""As many as a search has in two seconds or so on a small machine; unlike seconds the same on every one."""
LAST_RESORT_S = 300.0


def task_of(row: dict[str, Any], *, stages: int = 3, trims: bool = True, can_turn: bool | None = None) -> LayoutTask:
    """An instance as a task."""
    turns = row.get("rotate", False) if can_turn is None else can_turn
    wants = tuple(Want(item["w"], item["h"], item["demand"], turns) for item in row["items"])
    return LayoutTask(wants, (Sheet(row["stock"][0]["width"], None),), stages=stages, trims=trims)


def answered(task: LayoutTask, watch: Watch | None = None) -> Answer:
    """The answer, looked at by the checker."""
    answer = solve(task, watch or Watch(LIMIT_S))
    assert not check_layouts(task, answer)
    return answer


# --- against trying everything -----------------------------------------------------------------------------


def groupings(things: Sequence[int]) -> Iterator[list[list[int]]]:
    """Every way to share things out among groups."""
    if not things:
        yield []
        return
    first, *others = things
    for groups in groupings(others):
        yield [[first], *groups]
        for number, group in enumerate(groups):
            yield [*groups[:number], [first, *group], *groups[number + 1 :]]


def stack_of(task: LayoutTask, group: Sequence[int], sides: Sequence[tuple[int, int]]) -> tuple[int, int] | None:
    """Width and height of pieces over one another; None where they may not be."""
    widths = {sides[number][0] for number in group}
    if (not task.trims and len(widths) > 1) or (task.same_stack and len({sides[number] for number in group}) > 1):
        return None
    return max(widths), sum(sides[number][1] for number in group)


def length_of(task: LayoutTask, strips: Sequence[Sequence[int]], stacks: Sequence[tuple[int, int]]) -> int | None:
    """Length of stacks shared out among strips; None where a strip is too wide or too tall."""
    heights = [max(stacks[number][1] for number in strip) for strip in strips]
    if any(sum(stacks[number][0] for number in strip) > task.sheets[0].wide for strip in strips):
        return None
    return None if task.tallest_strip is not None and max(heights) > task.tallest_strip else sum(heights)


def shortest_by_trying(task: LayoutTask) -> int:
    """The least length, by trying every way to lay, to stack and to share out the pieces."""
    pieces = [want for want in task.wants for _ in range(want.count)]
    best = 1 << 30
    for turns in product(*[(False, True)[: 1 + want.can_turn] for want in pieces]):
        sides = [
            (want.long, want.wide) if turned else (want.wide, want.long)
            for want, turned in zip(pieces, turns, strict=True)
        ]
        for groups in groupings(range(len(pieces))):
            stacks = [stack for group in groups if (stack := stack_of(task, group, sides))]
            if len(stacks) == len(groups):
                lengths = (length_of(task, strips, stacks) for strips in groupings(range(len(stacks))))
                best = min([best, *(length for length in lengths if length is not None)])
    return best


@st.composite
def tiny_tasks(draw: st.DrawFn) -> LayoutTask:
    """Up to five pieces that fit, on a narrow sheet."""
    wide = draw(st.integers(4, 13))
    wants, pieces = [], 0
    for _ in range(draw(st.integers(1, 3))):
        count = draw(st.integers(1, min(3, 5 - pieces)))
        pieces += count
        wants.append(Want(draw(st.integers(1, wide)), draw(st.integers(1, 9)), count, draw(st.booleans())))
        if pieces == 5:
            break
    return LayoutTask(
        tuple(wants),
        (Sheet(wide, None),),
        stages=3,
        trims=draw(st.booleans()),
        same_stack=draw(st.booleans()),
        step=draw(st.sampled_from([1, 4])),
        tallest_strip=draw(st.sampled_from([None, 10])),
    )


@given(tiny_tasks())
@settings(max_examples=60, deadline=None)
def test_plan_and_bound_hold_what_trying_everything_finds(task: LayoutTask) -> None:
    """The shortest length lies between bound and plan; a proved plan is in its step of the purchase."""
    answer = answered(task)
    least = shortest_by_trying(task)

    assert answer.bound <= least <= answer.value
    assert Status.PROVED is answer.status
    assert -(-least // task.step) == -(-answer.value // task.step)


@given(tiny_tasks())
@settings(max_examples=30, deadline=None)
def test_bound_for_any_number_of_stages_is_no_higher_than_a_plan_of_three(task: LayoutTask) -> None:
    """More stages can only save: what trying everything finds with three stages is no shorter than the bound."""
    free = LayoutTask(task.wants, task.sheets, stages=0)
    three = LayoutTask(task.wants, task.sheets, stages=3)

    answer = answered(free, Patience(100, LAST_RESORT_S))

    assert answer.bound <= shortest_by_trying(three)


def test_three_stages_save_what_two_cannot() -> None:
    """Four of 2 × 3 beside one of 4 × 6 fill 8 × 6 when stacked in twos; side by side they need 6 and 3 more."""
    wants = (Want(2, 3, 4), Want(4, 6, 1))
    task = LayoutTask(wants, (Sheet(8, None),), stages=3)

    assert 6 == answered(task).value
    assert 9 == answered(LayoutTask(wants, (Sheet(8, None),), stages=2)).value


def test_stacks_of_one_piece_only_may_need_more() -> None:
    """5 × 2 over 5 × 4 fills 5 × 6; when all bits of a stack are alike they need two stacks, and two strips."""
    wants = (Want(5, 2, 1), Want(5, 4, 1), Want(4, 6, 1))
    task = LayoutTask(wants, (Sheet(9, None),), stages=3)
    alike = LayoutTask(wants, (Sheet(9, None),), stages=3, same_stack=True)

    assert 6 == answered(task).value
    assert 8 == answered(alike).value


def test_strips_no_taller_than_the_ruler_reaches() -> None:
    """Two stacks of three fit into one strip 9 high; with 6 as the most, two strips of 6 and 3 give the same."""
    wants = (Want(3, 3, 6),)
    free = LayoutTask(wants, (Sheet(6, None),), stages=3)
    short = LayoutTask(wants, (Sheet(6, None),), stages=3, tallest_strip=6)

    assert 9 == answered(free).value
    assert 9 == answered(short).value
    assert all(strip.high <= 6 for layout in answered(short).layouts for strip in layout.strips)


# --- against published and otherwise computed values -------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "can_turn", "most"),
    [("burke_N1", True, 40), ("burke_N1", False, 40), ("burke_N2", False, 52), ("burke_N4", True, 85)],
)
def test_published_sets_are_cut_as_short_as_by_another_program(name: str, most: int, *, can_turn: bool) -> None:
    """The plan is no longer than what another program reached (beside it in the file)."""
    instance = named("strip_burke_N")[name]
    known = instance["computed_here"][f"3stage_trimmed_{'rot' if can_turn else 'fixed'}"]

    answer = answered(task_of(instance, can_turn=can_turn), Patience(LOOKS, LAST_RESORT_S))

    assert most == known["best"]
    assert answer.value <= known["best"]
    assert instance["optimum"] <= answer.value


@pytest.mark.parametrize("number", [2, 5, 6, 9, 10, 13, 14, 18, 23])
def test_proved_lengths_of_published_sets_are_those_another_program_reached(number: int) -> None:
    """Proved in three stages, no turning: the value another program reached and never went under."""
    instance = named("strip_guillotine_hifi_SCP")[f"hifi_SCP{number}"]

    answer = answered(task_of(instance))

    assert instance.get("best_known", instance.get("optimum")) == answer.value
    assert Status.PROVED is answer.status


@pytest.mark.parametrize("number", range(1, 26))
def test_bounds_for_any_number_of_stages_stay_under_what_is_reached(number: int) -> None:
    """The bound for any cuts is above neither the length known for three stages nor the one in the published file."""
    instance = named("strip_guillotine_hifi_SCP")[f"hifi_SCP{number}"]

    answer = answered(task_of(instance, stages=0), Patience(60, LAST_RESORT_S))

    assert answer.bound <= instance["header_length"]
    assert answer.bound <= (instance["best_known"] if "best_known" in instance else instance["optimum"])


@pytest.mark.parametrize("name", ["T1a", "T3b"])
def test_rectangles_cut_apart_by_straight_cuts_are_never_bounded_above_their_own_height(name: str) -> None:
    """Sets cut out of a rectangle 200 high by straight cuts: the bound for any number of stages is at most 200."""
    instance = named("strip_guillotine_hopper_T")[f"hopper_{name}"]

    answer = answered(task_of(instance, stages=0), Patience(100, LAST_RESORT_S))

    assert answer.bound <= 200 <= answer.value


@pytest.mark.parametrize("name", ["Q2_squares_3stage", "Q9_directional_3stage"])
def test_home_lists_are_cut_as_short_as_known(name: str) -> None:
    """Exact stacks: no longer than the best known length, and no bound above it."""
    instance = named("strip_guillotine_home_sewing")[name]

    answer = answered(task_of(instance, trims=False), Patience(LOOKS, LAST_RESORT_S))

    assert answer.value <= instance["best_known"]
    assert answer.bound <= instance["best_known"]


# --- ending early, and whatever comes in -------------------------------------------------------------------


def test_search_told_to_end_at_once_still_gives_plan_and_bound() -> None:
    """Cancelled before it began: a plan that can be cut and a bound not above it."""
    instance = named("strip_burke_N")["burke_N8"]
    task = task_of(instance, can_turn=True)

    answer = answered(task, Watch(5.0, cancelled=lambda: True))

    assert instance["optimum"] <= answer.value
    assert 0 < answer.bound <= instance["optimum"]
    assert Status.BEST_FOUND is answer.status
    assert answer.because


def test_what_is_told_on_the_way_only_gets_better() -> None:
    """Plans get shorter, bounds higher, and no bound passes a plan."""
    told: list[tuple[int | None, int]] = []
    task = task_of(named("strip_burke_N")["burke_N3"], can_turn=True)

    answered(task, Watch(1.0, tell=lambda value, bound: told.append((value, bound))))

    values = [value for value, _ in told if value is not None]
    bounds = [bound for _, bound in told]
    assert values == sorted(values, reverse=True)
    assert bounds == sorted(bounds)
    assert bounds[-1] <= values[-1]


def test_search_bounded_by_looks_ends_at_the_same_plan_every_time() -> None:
    """Counted looks instead of seconds: two searches give the same answer."""
    task = task_of(named("strip_burke_N")["burke_N3"], can_turn=True)

    first, second = (answered(task, Patience(400, LAST_RESORT_S)) for _ in range(2))

    assert first.layouts == second.layouts
    assert first.bound == second.bound


def test_many_equal_pieces_are_planned_without_laying_each() -> None:
    """Nine thousand squares of 3 on a width of 10: three side by side, three thousand times 3."""
    task = LayoutTask((Want(3, 3, 9000),), (Sheet(10, None),), stages=3)

    answer = answered(task)

    assert (9000, 9000) == (answer.value, answer.bound)
    assert Status.PROVED is answer.status


def test_many_different_pieces_get_a_plan_and_a_bound() -> None:
    """Two thousand sizes: a plan, and a bound that the area asks for."""
    wants = tuple(Want(100 + number % 97, 100 + number % 89, 1, can_turn=True) for number in range(2000))
    task = LayoutTask(wants, (Sheet(1067, None),), stages=3)
    area = sum(want.wide * want.long for want in wants)

    answer = answered(task, Watch(1.0))

    assert -(-area // 1067) <= answer.bound <= answer.value


def test_piece_that_fits_nowhere_makes_the_task_impossible() -> None:
    """Wider than the sheet and too long to be turned."""
    answer = solve(LayoutTask((Want(12, 11, 1, can_turn=True),), (Sheet(10, None),), stages=3), Watch(1.0))

    assert Status.IMPOSSIBLE is answer.status
    assert "12" in answer.because


def test_nothing_wanted_needs_nothing() -> None:
    """No wants, or wants of none: proved with no length."""
    task = LayoutTask((Want(3, 3, 0),), (Sheet(10, None),), stages=3)

    assert (Status.PROVED, 0, 0) == ((answer := solve(task, Watch(1.0))).status, answer.value, answer.bound)
