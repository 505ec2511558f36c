"""The checker of the engine's answers: true ones pass, and each of many false ones is told by its own fault."""

from __future__ import annotations

import ast
from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stitchflip.cutting.layouts import check
from stitchflip.cutting.layouts.check import check_layouts
from stitchflip.cutting.layouts.model import (
    Aim,
    Answer,
    Bit,
    FirstCut,
    LaidStrip,
    Layout,
    LayoutTask,
    Sheet,
    Stack,
    Want,
)
from stitchflip.cutting.model import Status

# Two strips on a sheet 10 wide, drawn by hand (numbers are the wants, counted from 1):
#
#    7 +-----------+
#      |  2   2    |      strip 3 high: two of want 2 (3 × 2, one turned), trimmed
#    4 +-----------+
#      | 1  | 2 2  |      strip 4 high: one of want 1 (4 × 4), a stack of two of want 2
#    0 +-----------+
#
TASK = LayoutTask((Want(4, 4, 1), Want(3, 2, 4, can_turn=True)), (Sheet(10, None),), stages=3)
BELOW = LaidStrip(4, (Stack(4, (Bit(0),)), Stack(3, (Bit(1), Bit(1)))))
ABOVE = LaidStrip(3, (Stack(3, (Bit(1),)), Stack(2, (Bit(1, turned=True),))))
GOOD = Answer(Status.BEST_FOUND, (Layout(0, (BELOW, ABOVE)),), 7, 4)


def one(*strips: LaidStrip, value: int = 7, **changes: object) -> Answer:
    """The good answer with other strips, or otherwise changed."""
    return replace(GOOD, layouts=(Layout(0, strips),), value=value, **changes)  # type: ignore[arg-type]


def faults(answer: Answer, **changes: object) -> str:
    """What the checker says, in one text."""
    return "; ".join(check_layouts(replace(TASK, **changes), answer))  # type: ignore[arg-type]


def test_it_imports_nothing_that_searches() -> None:
    """Only the words of the engine and its own geometry: nothing that makes plans."""
    tree = ast.parse(Path(check.__file__).read_text(encoding="utf-8"))
    used = {node.module for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}
    ours = {module for module in used if module and module.startswith("stitchflip")}
    room = "stitchflip.cutting"
    assert {f"{room}.layouts.edge_to_edge", f"{room}.layouts.model", f"{room}.model"} == ours


def test_the_plan_drawn_by_hand_is_true() -> None:
    """Nothing is wrong with the two strips above."""
    assert "" == faults(GOOD)


@pytest.mark.parametrize(
    ("answer", "fault"),
    [
        (one(BELOW, value=4), "piece 2 is wanted 4 times and cut twice"),
        (one(BELOW, ABOVE, ABOVE, value=10), "piece 2 is wanted 4 times and cut 6 times"),
        (one(ABOVE, ABOVE, value=6), "piece 1 is wanted once and cut never"),
        (one(replace(BELOW, high=3), ABOVE, value=6), "4 of pieces lie over one another in a strip 3 high"),
        (one(replace(BELOW, high=3), ABOVE, value=6), "lie over one another"),
        (
            one(LaidStrip(4, (Stack(2, (Bit(0),)), BELOW.stacks[1])), ABOVE),
            "a piece 4 wide lies in a stack 2 wide",
        ),
        (
            one(LaidStrip(4, (Stack(2, (Bit(0),)), BELOW.stacks[1])), ABOVE),
            "piece 1 at 0, 0 and piece 2 at 2, 0 lie over one another",
        ),
        (
            one(LaidStrip(4, (Stack(8, (Bit(0),)), BELOW.stacks[1])), ABOVE),
            "piece 2 at 8, 0 leaves the sheet, which is 10 wide",
        ),
        (one(replace(BELOW, high=0), ABOVE), "a strip or a stack has no size"),
        (one(LaidStrip(4, (Stack(4, (Bit(2),)),)), ABOVE), "piece 3 does not exist"),
        (one(LaidStrip(4, (Stack(4, (Bit(0, turned=True),)), BELOW.stacks[1])), ABOVE), "piece 1 is turned"),
        (replace(GOOD, value=6), "the plan's length is 7, not 6"),
        (replace(GOOD, bound=8), "nothing is said to go under 8"),
        (replace(GOOD, bound=-1), "the bound is -1"),
        (replace(GOOD, status=Status.PROVED), "7 is called proved with a bound of 4, in steps of 1"),
        (replace(GOOD, layouts=(replace(GOOD.layouts[0], sheet=1),)), "sheet 2 does not exist"),
        (replace(GOOD, layouts=(replace(GOOD.layouts[0], times=0),)), "it is cut 0 times"),
        (replace(GOOD, layouts=GOOD.layouts * 2, value=14), "sheet 1 has an open length and is cut twice"),
        (replace(GOOD, layouts=(replace(GOOD.layouts[0], along=True),)), "its first cuts go along, which is not"),
        (replace(GOOD, layouts=()), "piece 1 is wanted once and cut never"),
        (replace(GOOD, status=Status.IMPOSSIBLE), "gives 1 layout and a value of 7"),
        (Answer(Status.IMPOSSIBLE, (), 0, 0), "no reason is told"),
        (
            Answer(Status.IMPOSSIBLE, (), 0, 0, because="it is late"),
            "called impossible, and every piece fits on fabric of which there is enough",
        ),
    ],
)
def test_a_tampered_answer_is_told_by_its_fault(answer: Answer, fault: str) -> None:
    """Each false answer brings the sentence about what is false."""
    assert fault in faults(answer)


@pytest.mark.parametrize(
    ("changes", "fault"),
    [
        ({"stages": 2}, "2 pieces lie over one another, and there is no third cut"),
        ({"stages": 2}, "piece 2 at 4, 0 and piece 2 at 4, 2 are not parted by 2 cuts after one another"),
        ({"trims": False, "stages": 2}, "piece 2 at 0, 4 needs one more cut to come to its size"),
        ({"tallest_strip": 3}, "a strip is 4 high, and 3 is the most"),
        ({"sheets": (Sheet(10, 6),)}, "piece 2 at 3, 4 leaves the sheet, which is 10 wide × 6 long"),
        ({"sheets": (Sheet(10, 7, count=0),)}, "sheet 1 is cut once and there is none"),
        ({"sheets": (Sheet(10, 7, cost=5),), "aim": Aim.COST}, "the plan's cost is 5, not 7"),
        ({"sheets": (Sheet(10, 7),), "aim": Aim.VALUE}, "the plan's worth is 0, not 7"),
        (
            {"sheets": (Sheet(10, 7),), "aim": Aim.COST, "first_cut": FirstCut.ALONG},
            "its first cuts go across, which is not allowed",
        ),
        ({"wants": (Want(4, 4, 1), Want(3, 2, 4))}, "piece 2 is turned and may not be"),
        (
            {"wants": (Want(4, 4, 1), Want(3, 3, 4, can_turn=True))},
            "piece 2 at 3, 4 and piece 2 at 4, 3 lie over one another",
        ),
    ],
)
def test_the_good_answer_is_false_for_another_task(changes: dict[str, object], fault: str) -> None:
    """What a task forbids, wants or has less of is told."""
    assert fault in faults(GOOD, **changes)


def test_stacks_of_one_want_hold_no_other_and_no_other_way() -> None:
    """A stack of two pieces laid two ways is fine, unless all of a stack have to lie alike."""
    mixed = one(LaidStrip(5, (Stack(4, (Bit(0),)), Stack(3, (Bit(1), Bit(1, turned=True))))), ABOVE, value=8)
    assert "" == faults(mixed)
    assert "one laid two ways" in faults(mixed, same_stack=True)
    assert "" == faults(GOOD, same_stack=True)


def test_without_trimming_three_stages_leave_waste_at_the_ends_only() -> None:
    """A stack that does not reach the strip's upper edge is fine; a piece narrower than its stack is not."""
    lower = replace(BELOW, stacks=(Stack(4, (Bit(0),)), Stack(3, (Bit(1),)), Stack(3, (Bit(1),))))
    assert "" == faults(one(lower, ABOVE), trims=False)
    mixed = LaidStrip(5, (Stack(4, (Bit(0),)), Stack(3, (Bit(1), Bit(1, turned=True)))))
    assert "piece 2 at 4, 2 needs one more cut" in faults(one(mixed, ABOVE, value=8), trims=False)


def test_a_proof_counts_in_the_steps_fabric_is_bought_in() -> None:
    """7 is proved by a bound of 5 when 8 is bought either way, and not when 6 would do for 5."""
    proved = replace(GOOD, status=Status.PROVED, bound=5)
    assert "" == faults(proved, step=4)
    assert "called proved" in faults(proved, step=3)


def test_a_sheet_cut_along_lies_on_its_side() -> None:
    """Two columns 4 and 3 across a sheet 7 wide are the two strips of the drawing, seen from the sheet's side."""
    task = replace(TASK, sheets=(Sheet(7, 10, cost=1),), aim=Aim.COST, first_cut=FirstCut.EITHER)
    flat = replace(task, wants=(Want(4, 4, 1), Want(2, 3, 4, can_turn=True)))
    lying = replace(GOOD, layouts=(replace(GOOD.layouts[0], along=True),), value=1, bound=1)
    assert () == check_layouts(flat, lying)
    assert any("leaves the sheet" in f for f in check_layouts(replace(flat, sheets=(Sheet(6, 10, cost=1),)), lying))


def test_a_plan_for_value_may_leave_pieces_out_but_never_add_any() -> None:
    """One of four pieces is enough; five of four are not; and nothing may be worth more than the bound."""
    task = LayoutTask((Want(3, 2, 2, value=6),), (Sheet(10, 7),), Aim.VALUE)
    row = LaidStrip(2, (Stack(3, (Bit(0),)),))
    assert () == check_layouts(task, Answer(Status.BEST_FOUND, (Layout(0, (row,)),), 6, 12))
    assert () == check_layouts(task, Answer(Status.BEST_FOUND, (), 0, 12))
    three = Answer(Status.BEST_FOUND, (Layout(0, (row, row, row)),), 18, 18)
    assert ("piece 1 is wanted twice and cut 3 times",) == check_layouts(task, three)
    low = Answer(Status.BEST_FOUND, (Layout(0, (row,)),), 6, 5)
    assert ("the plan is worth 6, and nothing is said to be worth more than 5",) == check_layouts(task, low)
    gone = Answer(Status.IMPOSSIBLE, (), 0, 0, because="no")
    assert ("it is called impossible, and there is a piece that fits",) == check_layouts(task, gone)


def test_sheets_cut_alike_count_as_often_as_they_are_cut() -> None:
    """Three sheets with two pieces each give six, cost three times and need three sheets."""
    row = LaidStrip(2, (Stack(3, (Bit(0),)), Stack(3, (Bit(0),))))
    answer = Answer(Status.PROVED, (Layout(0, (row,), times=3),), 12, 12)
    task = LayoutTask((Want(3, 2, 6),), (Sheet(6, 2, count=3, cost=4),), Aim.COST)
    assert () == check_layouts(task, answer)
    fewer = replace(task, sheets=(Sheet(6, 2, count=2, cost=4),))
    assert ("sheet 1 is cut 3 times and there are 2",) == check_layouts(fewer, answer)


def test_no_plan_is_believed_where_it_may_be_so() -> None:
    """A piece wider than the fabric, too little of it, or a search that was ended: reasons that can be true."""
    late = Answer(Status.BEST_FOUND, (), 0, 3, because="the time was over")
    gone = Answer(Status.IMPOSSIBLE, (), 0, 0, because="a piece fits on no sheet")
    assert "" == faults(gone, wants=(Want(11, 4, 1),))
    assert "" == faults(gone, sheets=(Sheet(10, 7),), aim=Aim.COST)
    assert "" == faults(gone, tallest_strip=3)
    assert "" == faults(late)
    assert "wanted once and cut never" in faults(replace(late, because=""))
    assert "called impossible" in faults(gone, wants=())


# --- layouts made at random --------------------------------------------------------------------------------


@st.composite
def laid(draw: st.DrawFn) -> tuple[LayoutTask, Answer]:
    """A task made for a layout: strips, stacks and pieces first, then what they would be wanted as."""
    sizes = draw(st.lists(st.tuples(st.integers(1, 6), st.integers(1, 6)), min_size=1, max_size=4, unique=True))
    turns = [draw(st.booleans()) for _ in sizes]
    strips: list[LaidStrip] = []
    made: Counter[int] = Counter()
    for _ in range(draw(st.integers(1, 4))):
        stacks: list[Stack] = []
        highs: list[int] = []
        for _ in range(draw(st.integers(1, 4))):
            bits = tuple(
                Bit(number, turned=turns[number] and draw(st.booleans()))
                for number in draw(st.lists(st.integers(0, len(sizes) - 1), min_size=1, max_size=3))
            )
            made.update(bit.want for bit in bits)
            sides = [sizes[bit.want][::-1] if bit.turned else sizes[bit.want] for bit in bits]
            stacks.append(Stack(max(wide for wide, _ in sides), bits))
            highs.append(sum(long for _, long in sides))
        strips.append(LaidStrip(max(highs) + draw(st.integers(0, 1)), tuple(stacks)))
    wide = max(sum(stack.wide for stack in strip.stacks) for strip in strips) + draw(st.integers(0, 3))
    wants = tuple(Want(w, n, made[number], can_turn=turns[number]) for number, (w, n) in enumerate(sizes))
    value = sum(strip.high for strip in strips)
    bound = draw(st.integers(0, value))
    status = Status.PROVED if bound == value else Status.BEST_FOUND
    task = LayoutTask(wants, (Sheet(wide, None),), stages=draw(st.sampled_from([3, 0])))
    return task, Answer(status, (Layout(0, tuple(strips)),), value, bound)


@given(laid())
def test_whatever_is_laid_in_strips_and_stacks_is_true(made: tuple[LayoutTask, Answer]) -> None:
    """Any plan with room for its pieces passes, with three stages or any number."""
    assert () == check_layouts(*made)


@given(laid(), st.data())
def test_one_piece_more_or_less_is_always_told(made: tuple[LayoutTask, Answer], data: st.DataObject) -> None:
    """Another count of any want makes every plan false."""
    task, answer = made
    number = data.draw(st.integers(0, len(task.wants) - 1))
    wants = list(task.wants)
    wants[number] = replace(wants[number], count=wants[number].count + data.draw(st.sampled_from([-1, 1])))
    told = any(
        f"piece {number + 1} is wanted" in fault for fault in check_layouts(replace(task, wants=tuple(wants)), answer)
    )
    assert told or task.wants[number].count == 0


@given(laid())
def test_a_narrower_sheet_a_strip_too_low_and_a_wrong_sum_are_always_told(made: tuple[LayoutTask, Answer]) -> None:
    """A sheet narrower than its widest strip, a strip lower than its stacks, a length that is not the sum."""
    task, answer = made
    strips = answer.layouts[0].strips
    widest = max(sum(stack.wide for stack in strip.stacks) for strip in strips)
    narrow = replace(task, sheets=(Sheet(widest - 1, None),))
    assert any("leaves the sheet" in fault for fault in check_layouts(narrow, answer)) or widest == 1
    low = replace(answer, layouts=(Layout(0, (replace(strips[0], high=0), *strips[1:])),))
    assert any("no size" in fault for fault in check_layouts(task, low))
    assert any("the plan's length is" in f for f in check_layouts(task, replace(answer, value=answer.value + 1)))
