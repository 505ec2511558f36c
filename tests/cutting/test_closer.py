"""Cutting closer: what it saves, that it can be cut, and that its proofs hold."""

from __future__ import annotations

from functools import partial

import pytest

from stitchflip.cutting import Piece, Status, plan_fabric
from stitchflip.cutting.closer import Closer, cut_closer
from stitchflip.cutting.layouts.model import Answer, LayoutTask
from stitchflip.cutting.layouts.solving import solve
from stitchflip.cutting.layouts.watch import Watch
from stitchflip.cutting.shelf_closer import ShelfCloser, cut_shelf_closer
from stitchflip.cutting.verify import verify_fabric_plan
from stitchflip.lengths import Unit
from stitchflip.project.model import Fabric, Working
from tests.cutting.lists import FAT_QUARTER, YARD, binding, fabric, strips
from tests.twins.table import house

LONG = 20.0
"""Seconds nobody waits: the searches here end by themselves."""
SIDE_BY_SIDE = (Piece("1", 9, 20, step=1), Piece("2", 8, 12, step=2), Piece("Center", 8, 8, kind="rectangle"))


def closer(asked: Fabric, *pieces: Piece, working: Working = Working.CUT_FIRST) -> Closer | None:
    """The closer plan beside the everyday one; the checker has passed it."""
    everyday = plan_fabric(asked, pieces, house(), working, Unit.INCH)
    found = cut_closer(asked, pieces, house(), Unit.INCH, everyday, partial(Watch, LONG))
    if found is not None and found.plan is not None:
        assert () == verify_fabric_plan(found.plan, asked, pieces, house(), working)
        assert found.plan.bound_in <= found.plan.need_in
    return found


def from_shelf(asked: Fabric, *pieces: Piece) -> ShelfCloser | None:
    """The same from the shelf."""
    everyday = plan_fabric(asked, pieces, house(), Working.CUT_FIRST, Unit.INCH)
    found = cut_shelf_closer(asked, pieces, house(), Unit.INCH, everyday, partial(Watch, LONG))
    if found is not None and found.plan is not None:
        assert () == verify_fabric_plan(found.plan, asked, pieces, house(), Working.CUT_FIRST)
    return found


def test_a_narrow_strip_cut_off_the_end_of_a_wider_one_saves_an_eighth() -> None:
    """One strip 5 × 20 and one 4 × 18: two strips take 9 + 1 = 10 in, 3/8 yd; side by side 5 + 1 = 6 in, 1/4 yd."""
    found = closer(fabric(), Piece("1", 5, 20, step=1), Piece("2", 4, 18, step=2))

    assert found is not None
    assert found.plan is not None
    assert (2, YARD / 8, YARD / 4, True) == (found.stages, found.saves_in, found.plan.buy_in, found.is_proved)
    assert (6, 1, Status.PROVED) == (found.plan.need_in, len(found.plan.rows), found.plan.status)


def test_pieces_over_one_another_in_a_row_save_more() -> None:
    """A square of 8 and eight pieces 2 × 15: in a row of 8 two stacks of four stand beside the square, 8 + 15 + 15.

    By strips of one width 8 + 4 × 2 = 16 in; turned upright 15 in (8 + 8 × 2 across); in three stages 8 + 1 = 9 in.
    """
    square = Piece("Center", 8, 8, kind="rectangle")
    found = closer(fabric(), square, *strips(2, 15, count=8))

    assert found is not None
    assert found.plan is not None
    assert (3, YARD / 4, True) == (found.stages, found.plan.buy_in, found.is_proved)


def test_a_one_way_print_is_not_turned_to_cut_closer() -> None:
    """Thirty-two pieces 2 1/4 × 4: four strips, 9 + 1 in, 3/8 yd; upright two rows of 4, 9 in, 1/4 yd. One-way: no."""
    pieces = strips(2.25, 4, count=32)
    found = closer(fabric(), *pieces)
    one_way = closer(fabric(one_way=True), *pieces)

    assert found is not None
    assert found.plan is not None
    assert YARD / 4 == found.plan.buy_in
    assert one_way is not None
    assert one_way.plan is None
    assert one_way.is_proved


def test_the_last_strip_of_a_binding_is_cut_as_long_as_it_need_be() -> None:
    """Two strips of binding of which the second need be 20 only: beside it lies the strip 2 1/2 × 20, 6 in, not 8 1/2.

    Everyday: three strips of 2 1/2 and one of 2, 9 1/2 + 1 in, 3/8 yd; closer 2 1/2 + 2 1/2 + 2 + 1 = 8 in, 1/4 yd.
    """
    bound = Piece("Binding", 2.5, 40, 2, kind="binding", last_long=20)
    found = closer(fabric(), *strips(2.5, 20), Piece("9", 2, 38, step=9), bound)

    assert found is not None
    assert found.plan is not None
    assert (YARD / 4, True) == (found.plan.buy_in, found.is_proved)


def test_what_area_forbids_is_proved_without_a_search() -> None:
    """Three full strips of 2 1/2 are 7 1/2 in of fabric however they are cut."""
    assert Closer(None, 2, 0.0, YARD / 4, is_proved=True, settings=0) == closer(fabric(), binding(2.5, 40, 3))


@pytest.mark.parametrize(
    ("asked", "pieces"),
    [
        (fabric(), ()),
        (fabric(), (Piece("Center", 50, 50, kind="rectangle"),)),
        (fabric(), (Piece("Center", 8, 8, kind="rectangle", motif_in=12),)),
        (fabric(on_hand=[FAT_QUARTER]), (Piece("Center", 8, 8, kind="rectangle"),)),
    ],
)
def test_where_the_question_has_no_sense_there_is_no_answer(asked: Fabric, pieces: tuple[Piece, ...]) -> None:
    """Nothing to buy, nothing that fits, a motif that decides."""
    assert closer(asked, *pieces) is None


def test_a_search_that_is_stopped_at_once_claims_nothing() -> None:
    """Cancelled before it began: no plan that was not checked, no proof beyond the area."""
    pieces = (Piece("1", 5, 20, step=1), Piece("2", 4, 18, step=2))
    everyday = plan_fabric(fabric(), pieces, house(), Working.CUT_FIRST, Unit.INCH)
    found = cut_closer(fabric(), pieces, house(), Unit.INCH, everyday, partial(Watch, LONG), cancelled=lambda: True)

    assert found is not None
    assert YARD / 4 >= found.least_buy_in
    assert found.plan is None or verify_fabric_plan(found.plan, fabric(), pieces, house(), Working.CUT_FIRST) == ()


def test_the_shelf_gives_strips_and_squares_side_by_side() -> None:
    """From one fat quarter 17 × 20 straightened: a strip 9 × 20, and 8 × 12 beside 8 × 8; the everyday plan buys.

    9 + 8 = 17 across, 12 + 8 = 20 along: everything, with nothing left.
    """
    asked = fabric(on_hand=[FAT_QUARTER])
    found = from_shelf(asked, *SIDE_BY_SIDE)

    assert found is not None
    assert found.plan is not None
    assert (YARD / 4, 0, True) == (found.saves_in, found.plan.buy_in, found.is_proved)


def test_a_print_that_cannot_be_bought_again_reaches_when_it_is_cut_closer() -> None:
    """The same from a fat quarter that is all there is: everyday one strip is missing, closer nothing is."""
    asked = fabric(on_hand=[FAT_QUARTER], only_on_hand=True)
    everyday = plan_fabric(asked, SIDE_BY_SIDE, house(), Working.CUT_FIRST, Unit.INCH)
    found = from_shelf(asked, *SIDE_BY_SIDE)

    assert ("2",) == everyday.left_out
    assert found is not None
    assert found.plan is not None
    assert () == found.plan.left_out


def test_among_many_alike_one_that_is_enough_settles_the_search() -> None:
    """Twelve fat quarters and one square: nothing costs less than cutting into one of them."""
    found = from_shelf(fabric(on_hand=[FAT_QUARTER] * 12), Piece("Center", 8, 8, kind="rectangle"))

    assert found is not None
    assert (None, True) == (found.plan, found.is_proved)


def test_of_two_pieces_on_hand_the_small_one_is_cut_when_it_is_enough() -> None:
    """A square of 8 comes from the remnant 9 × 9; the fat quarter stays whole, though it is named first."""
    remnant = {"name": "remnant", "wide": "9", "long": "9"}
    found = from_shelf(fabric(on_hand=[FAT_QUARTER, remnant]), Piece("Center", 8, 8, kind="rectangle"))

    assert found is not None
    assert found.plan is not None
    assert ("fat quarter",) == found.leaves_whole
    assert ["remnant"] == [sheet.name for sheet in found.plan.hand_sheets]


def test_sizes_between_the_marks_of_the_ruler_prove_nothing() -> None:
    """Three strips of 17/3 in fill a quarter 17 in wide; on a grid of 1/16 in they would not: that is no proof."""
    pieces = strips(17 / 3, 20, 20, 20)
    everyday = plan_fabric(fabric(on_hand=[FAT_QUARTER]), pieces, house(), Working.CUT_FIRST, Unit.INCH)
    found = from_shelf(fabric(on_hand=[FAT_QUARTER], only_on_hand=True), *pieces)

    assert (0, ()) == (everyday.buy_in, everyday.left_out)
    assert found is not None
    assert not found.is_proved


def test_a_proof_of_what_is_bought_beside_the_shelf_is_one_of_steps_not_of_inches() -> None:
    """Everything but a strip 5 × 36 comes from the quarter: 1/4 yd is bought, the least the shop cuts; 6 in are needed.

    No less can be bought. That less than 6 in could be needed is not excluded, and not said.
    """
    found = from_shelf(fabric(on_hand=[FAT_QUARTER]), *SIDE_BY_SIDE, Piece("3", 5, 36, step=3))

    assert found is not None
    assert found.plan is not None
    assert (YARD / 4, Status.PROVED) == (found.plan.buy_in, found.plan.status)
    assert found.plan.bound_in < 5.5


def test_a_search_cancelled_between_two_and_three_stages_has_not_proved_three(monkeypatch: pytest.MonkeyPatch) -> None:
    """A square of 8 and eight pieces 2 × 15 take 1/4 yd in three stages; after two, nobody can say they do not."""
    asked, pieces = fabric(), (Piece("Center", 8, 8, kind="rectangle"), *strips(2, 15, count=8))
    everyday = plan_fabric(asked, pieces, house(), Working.CUT_FIRST, Unit.INCH)
    done: list[Answer] = []

    def searched(task: LayoutTask, watch: Watch) -> Answer:
        done.append(solve(task, watch))
        return done[-1]

    monkeypatch.setattr("stitchflip.cutting.closer.solve", searched)
    found = cut_closer(asked, pieces, house(), Unit.INCH, everyday, partial(Watch, LONG), cancelled=lambda: bool(done))

    assert 1 == len(done)
    assert found is not None
    assert not found.is_proved
    assert YARD / 4 >= found.least_buy_in


def test_nothing_on_hand_but_strips_is_left_to_the_everyday_plan() -> None:
    """Precut strips are cut in one dimension."""
    asked = fabric(on_hand=[{"name": "precut strip", "wide": "2 1/2", "long": "40", "count": 4}])
    assert from_shelf(asked, *strips(2.5, 20, 20)) is None
