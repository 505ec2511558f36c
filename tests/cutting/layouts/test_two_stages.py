"""The shortest length in two stages: against trying everything, against published values, and whatever comes in.

Published: E. K. Burke, G. Kendall, G. Whitwell, "A New Placement Heuristic for the Orthogonal Stock-Cutting Problem",
Operations Research 52 (2004): heights at which the sets N pack without straight cuts, so no plan of strips is lower.
"""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bench.cutting.instances import rows
from stitchflip.cutting.layouts.check import check_layouts
from stitchflip.cutting.layouts.model import Answer, LayoutTask, Sheet, Want
from stitchflip.cutting.layouts.solving import solve
from stitchflip.cutting.layouts.watch import Patience, Watch
from stitchflip.cutting.model import Status

LIMIT_S = 20.0
IN_STEPS_OF_AN_EIGHTH_YARD = ("Q2", "Q3", "Q4", "Q5", "Q6", "Q7", "Q9", "Q10")


def task_of(row: dict[str, Any], *, step: int = 1, can_turn: bool | None = None) -> LayoutTask:
    """An instance as a task."""
    turns = row.get("rotate", True) if can_turn is None else can_turn
    wants = tuple(Want(item["w"], item["h"], item["demand"], turns) for item in row["items"])
    return LayoutTask(wants, (Sheet(row["stock"][0]["width"], None),), step=step)


def home(number: str) -> dict[str, Any]:
    """A home-sewing instance in two stages by its number."""
    found = [row for row in rows("strip_guillotine_home_sewing") if row["name"].startswith(f"{number}_")]
    return next(row for row in found if row["stages"] == 2)


def answered(task: LayoutTask, seconds: float = LIMIT_S) -> Answer:
    """The answer, looked at by the checker."""
    answer = solve(task, Watch(seconds))
    assert not check_layouts(task, answer)
    return answer


# --- against trying everything -----------------------------------------------------------------------------


def height_of_strip(pieces: tuple[Want, ...], wide: int, *, is_trimmed: bool) -> int | None:
    """The lowest strip all pieces fit in side by side, by trying every way to lay each."""
    best: int | None = None

    def lay(place: int, room: int, lowest: int, highest: int) -> None:
        nonlocal best
        if room < 0 or (not is_trimmed and lowest < highest):
            return
        if place == len(pieces):
            best = highest if best is None else min(best, highest)
            return
        piece = pieces[place]
        for across, along in ((piece.wide, piece.long), (piece.long, piece.wide))[: 1 + piece.can_turn]:
            lay(place + 1, room - across, min(lowest, along), max(highest, along))

    lay(0, wide, 1 << 30, 0)
    return best


def shortest_by_trying(task: LayoutTask) -> int:
    """The least length, by trying every way to share the pieces out among strips."""
    pieces = tuple(want for want in task.wants for _ in range(want.count))
    everything = (1 << len(pieces)) - 1

    @cache
    def strip(subset: int) -> int | None:
        held = tuple(piece for number, piece in enumerate(pieces) if subset >> number & 1)
        return height_of_strip(held, task.sheets[0].wide, is_trimmed=task.trims)

    @cache
    def rest(left: int) -> int:
        if not left:
            return 0
        first = left & -left
        best, subset = 1 << 30, left
        while subset:
            if subset & first and (height := strip(subset)) is not None:
                best = min(best, height + rest(left ^ subset))
            subset = (subset - 1) & left
        return best

    return rest(everything)


@st.composite
def tiny_tasks(draw: st.DrawFn) -> LayoutTask:
    """Up to seven pieces that fit, on a narrow sheet."""
    wide = draw(st.integers(4, 14))
    wants, pieces = [], 0
    for _ in range(draw(st.integers(1, 4))):
        count = draw(st.integers(1, min(3, 7 - pieces)))
        pieces += count
        wants.append(Want(draw(st.integers(1, wide)), draw(st.integers(1, wide)), count, draw(st.booleans())))
        if pieces == 7:
            break
    return LayoutTask(tuple(wants), (Sheet(wide, None),), trims=draw(st.booleans()), step=draw(st.sampled_from([1, 5])))


@given(tiny_tasks())
@settings(max_examples=150, deadline=None)
def test_plan_and_bound_hold_what_trying_everything_finds(task: LayoutTask) -> None:
    """The shortest length lies between bound and plan; a proved plan is in its step of the purchase."""
    answer = answered(task)
    least = shortest_by_trying(task)

    assert answer.bound <= least <= answer.value
    assert Status.PROVED is answer.status
    assert -(-least // task.step) == -(-answer.value // task.step)


# --- against published and otherwise computed values -------------------------------------------------------


@pytest.mark.parametrize("number", ["Q2", "Q3", "Q5", "Q9", "Q10"])
def test_home_lists_are_cut_as_short_as_other_programs_proved(number: str) -> None:
    """Length and bound meet at the value that another model proved (said beside it in the file of instances)."""
    row = home(number)
    answer = answered(task_of(row))

    assert (row["optimum"], row["optimum"]) == (answer.value, answer.bound)
    assert Status.PROVED is answer.status


@pytest.mark.parametrize("number", IN_STEPS_OF_AN_EIGHTH_YARD)
def test_home_lists_are_proved_in_eighths_of_a_yard(number: str) -> None:
    """The step of the purchase is the best one: 36 units of an eighth of an inch are an eighth of a yard."""
    row = home(number)
    answer = answered(task_of(row, step=36))

    assert Status.PROVED is answer.status
    assert -(-answer.bound // 36) == -(-answer.value // 36)
    assert answer.bound <= (row["optimum"] if "optimum" in row else row["best_known"])


@pytest.mark.parametrize("number", ["Q3", "Q5", "Q9", "Q10"])
def test_home_lists_are_proved_in_steps_of_ten_centimeters(number: str) -> None:
    """In fortieths of a millimeter an eighth of an inch is 127 and ten centimeters are 4000."""
    row = home(number)
    eighths = task_of(row)
    wants = tuple(Want(want.wide * 127, want.long * 127, want.count, want.can_turn) for want in eighths.wants)
    answer = answered(LayoutTask(wants, (Sheet(eighths.sheets[0].wide * 127, None),), step=4000))

    assert Status.PROVED is answer.status
    assert -(-row["optimum"] * 127 // 4000) == -(-answer.value // 4000)


@pytest.mark.parametrize("row", rows("strip_burke_N")[:6], ids=lambda row: row["name"])
@pytest.mark.parametrize("can_turn", [True, False])
def test_no_plan_of_the_published_sets_is_below_their_packing_and_no_bound_above_a_plan(
    row: dict[str, Any],
    can_turn: bool,  # noqa: FBT001  a parameter of the test
) -> None:
    """Plans lie above the height without straight cuts; bounds lie below the plans other programs found."""
    answer = answered(task_of(row, can_turn=can_turn), seconds=1.0)
    found = row["computed_here"][f"2stage_trimmed_{'rot' if can_turn else 'fixed'}"]

    if can_turn:
        assert row["optimum"] <= answer.value
    assert answer.bound <= found["best"]
    assert found["lower_bound"] <= answer.value


@pytest.mark.parametrize(("number", "best"), [(1, 46), (2, 55), (3, 62), (4, 90)])
def test_small_published_sets_are_proved(number: int, best: int) -> None:
    """Turned in two stages: the plan another program found is proved; its own bounds end at 45, 53, 61 and 89."""
    answer = answered(task_of(rows("strip_burke_N")[number - 1], can_turn=True))

    assert (Status.PROVED, best, best) == (answer.status, answer.value, answer.bound)


# --- second aims -------------------------------------------------------------------------------------------


def test_the_ruler_is_set_less_often_where_the_purchase_stays_the_same() -> None:
    """Four pieces 10 × 4 fill a strip of 4 on a sheet 40 wide, two of 20 × 3 a strip of 3, together 7.

    Bought in steps of 8, a second strip of 4 costs nothing and saves a setting.
    """
    wants = (Want(10, 4, 4), Want(20, 3, 2))
    sheets = (Sheet(40, None),)
    exact = answered(LayoutTask(wants, sheets))
    bought = answered(LayoutTask(wants, sheets, step=8))

    assert (7, {4, 3}) == (exact.value, {strip.high for strip in exact.layouts[0].strips})
    assert (8, {4}) == (bought.value, {strip.high for strip in bought.layouts[0].strips})


# --- time --------------------------------------------------------------------------------------------------


def test_a_cancelled_search_has_a_plan_and_a_bound() -> None:
    """Cancelled before it begins, the search returns whole pieces and a bound below them."""
    task = task_of(home("Q8"))
    answer = solve(task, Watch(60.0, cancelled=lambda: True))

    assert not check_layouts(task, answer)
    assert Status.BEST_FOUND is answer.status
    assert 0 < answer.bound <= answer.value
    assert answer.because


def test_what_is_told_on_the_way_only_gets_better() -> None:
    """Plans told get shorter, bounds longer, in the units of the task."""
    told: list[tuple[int | None, int]] = []
    task = task_of(home("Q3"))
    answer = solve(task, Watch(LIMIT_S, tell=lambda value, bound: told.append((value, bound))))
    values = [value for value, _ in told if value is not None]
    bounds = [bound for _, bound in told]

    assert sorted(values, reverse=True) == values
    assert sorted(bounds) == bounds
    assert (answer.value, answer.bound) == told[-1]


def test_the_same_looks_give_the_same_plan() -> None:
    """A search bounded by looks ends in the same plan each time."""
    task = task_of(home("Q7"))
    first, second = (solve(task, Patience(120, 60.0)) for _ in range(2))

    assert (first.layouts, first.bound) == (second.layouts, second.bound)


# --- odd input ---------------------------------------------------------------------------------------------


def test_ten_thousand_wants_are_planned_in_the_time_there_is() -> None:
    """Ten thousand different pieces get a plan and a bound."""
    wants = tuple(Want(10 + number % 97, 10 + number // 97, 1, can_turn=True) for number in range(10_000))
    task = LayoutTask(wants, (Sheet(700, None),))
    answer = solve(task, Watch(1.0))

    assert not check_layouts(task, answer)
    assert 0 < answer.bound <= answer.value


def test_a_sheet_of_a_million_units_is_planned() -> None:
    """Sizes far too fine for tables still get a plan and a bound."""
    wants = tuple(Want(100_003 + 7 * number, 90_001 + 11 * number, 3, can_turn=True) for number in range(9))
    task = LayoutTask(wants, (Sheet(999_983, None),))
    answer = solve(task, Watch(1.0))

    assert not check_layouts(task, answer)
    assert 0 < answer.bound <= answer.value


def test_nine_thousand_equal_squares_are_planned() -> None:
    """7 squares of 10 lie in a width of 70: 9 000 of them take 1 286 strips of 10."""
    answer = answered(LayoutTask((Want(10, 10, 9_000),), (Sheet(70, None),)))

    assert (Status.PROVED, 12_860, 12_860) == (answer.status, answer.value, answer.bound)
