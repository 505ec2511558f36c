"""Odd tasks for the engine and the planners: a clear answer, no fault, nothing that goes on for ever."""

from __future__ import annotations

import pytest

from stitchflip.cutting.as_you_go import plan_as_you_go
from stitchflip.cutting.layouts.check import check_layouts
from stitchflip.cutting.layouts.edge_to_edge import Part, Rect, Way, cut_apart, overlap
from stitchflip.cutting.layouts.model import Aim, LayoutTask, Sheet, Want
from stitchflip.cutting.layouts.solving import solve
from stitchflip.cutting.layouts.watch import Patience
from stitchflip.cutting.model import Status, StripPiece, StripStock

BOLT = Sheet(7, None)
PIECE = Want(3, 2, 4)
LAST_RESORT_S = 20.0


def answered(task: LayoutTask) -> tuple[Status, int, str]:
    """Status, value and reason of an answer that was looked at again."""
    answer = solve(task, Patience(100, LAST_RESORT_S))
    assert () == check_layouts(task, answer)
    return answer.status, answer.value, answer.because


@pytest.mark.parametrize(
    ("task", "because"),
    [
        (LayoutTask((Want(9, 2, 1),), (BOLT,)), "9 wide"),
        (LayoutTask((Want(9, 8, 1, can_turn=True),), (BOLT,)), "fits on no sheet"),
        (LayoutTask((Want(0, 2, 1),), (BOLT,)), "no size"),
        (LayoutTask((Want(3, 2, 10**9),), (BOLT,)), "more than can be planned"),
        (LayoutTask((Want(3, 2, 10**9),), (Sheet(7, 9, None, cost=1),), Aim.COST), "more than can be planned"),
        (LayoutTask((PIECE,), (Sheet(7, 0, cost=1),), Aim.COST), "fits on no sheet"),
        (LayoutTask((PIECE,), (Sheet(7, -3, cost=1),), Aim.COST), "fits on no sheet"),
        (LayoutTask((PIECE,), ()), "no fabric"),
        (LayoutTask((PIECE,), (BOLT,), tallest_strip=0), "fits on no sheet"),
        (LayoutTask((PIECE,), (BOLT,), stages=1), "2 or 3 cuts after one another"),
        (LayoutTask((PIECE,), (BOLT,), stages=-1), "2 or 3 cuts after one another"),
        (LayoutTask((PIECE,), (Sheet(7, 9),)), "open length"),
        (LayoutTask((PIECE,), (BOLT,), Aim.COST), "open length"),
        (LayoutTask((PIECE,), (BOLT,), Aim.VALUE), "open length"),
        (LayoutTask((PIECE,), (Sheet(7, 9, None, cost=-3),), Aim.COST), "less than nothing"),
    ],
)
def test_task_that_cannot_be_is_told_with_its_reason(task: LayoutTask, because: str) -> None:
    """No plan, no fault, the reason in words; the independent check agrees."""
    status, value, reason = answered(task)

    assert (Status.IMPOSSIBLE, 0) == (status, value)
    assert because in reason


@pytest.mark.parametrize(
    ("task", "value"),
    [
        (LayoutTask((), ()), 0),
        (LayoutTask((Want(3, 2, 0),), (BOLT,)), 0),
        (LayoutTask((Want(3, 2, -5),), (BOLT,)), 0),
        (LayoutTask((PIECE,), (BOLT,), step=0), 4),
        (LayoutTask((Want(9, 2, 1, can_turn=True),), (BOLT,)), 9),
        (LayoutTask((Want(3, 2, 10**9, value=3),), (Sheet(7, 9, 3),), Aim.VALUE), 72),
        (LayoutTask((Want(3, 2, 4, value=-1), Want(2, 2, 1, value=2)), (Sheet(7, 9),), Aim.VALUE), 2),
    ],
)
def test_odd_task_with_a_plan_has_it(task: LayoutTask, value: int) -> None:
    """By hand: two of 3 × 2 lie side by side in 7, so 4 take 4 of length and 7 × 9 holds 2 × 4 of them, worth 24."""
    assert (Status.PROVED, value) == answered(task)[:2]


def test_cuts_without_end_end_when_nothing_comes_apart_any_more() -> None:
    """Two pieces side by side come apart whatever odd number of cuts is named."""
    part = Part(0, 0, 4, 2, (Rect(0, 0, 2, 2, "a"), Rect(2, 0, 4, 2, "b")))

    assert [1, 1] == [len(one.rects) for one in cut_apart(part, Way.ACROSS, -1)]


@pytest.mark.parametrize("turned", ["across", "along"])
def test_overlap_is_found_whichever_way_the_fabric_is_longer(turned: str) -> None:
    """A long column of squares 2 × 2; the last but one is put 1 over its neighbor."""
    places = [*range(0, 20, 2), 17]
    rects = [Rect(0, y, 2, y + 2, str(y)) if turned == "along" else Rect(y, 0, y + 2, 2, str(y)) for y in places]

    found = overlap(rects)
    assert found is not None
    assert {"17"} < {one.name for one in found} <= {"16", "17", "18"}
    assert overlap(rects[:-1]) is None
    assert overlap([]) is None


def test_strips_of_no_length_give_nothing_and_bring_nothing_down() -> None:
    """A piece longer than every strip and strips on hand of no length: left out, the others planned."""
    pieces = [StripPiece("1", 10, 1), StripPiece("2", 60, 2)]
    plan = plan_as_you_go(2.5, pieces, [StripStock("scrap", 0, 3), StripStock("width of fabric", 40)])

    assert (["2"], 1) == ([piece.label for piece in plan.left_out], len(plan.strips))


def test_long_list_that_is_trimmed_while_sewing_has_a_strip_for_every_piece() -> None:
    """Eighty lengths from 4 to 23½ in: every one is sewn once, and no strip gives more than its 40 in."""
    pieces = [StripPiece(str(step), 4 + step * 7 % 40 / 2, step) for step in range(1, 81)]
    plan = plan_as_you_go(2.5, pieces, [StripStock("width of fabric", 40)])

    assert sorted((piece.label, piece.length) for piece in pieces) == sorted(
        piece for strip in plan.strips for piece in strip.pieces
    )
    assert all(sum(length for _, length in strip.pieces) <= 40 + 1e-6 for strip in plan.strips)
    assert [step.step for step in plan.hand_steps] == list(range(1, 81))
