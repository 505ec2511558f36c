"""The order of the hand: somebody who follows its printed words gets every piece, from fabric that is there."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from functools import partial
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from stitchflip.cutting import FabricPlan, Piece, plan_fabric
from stitchflip.cutting.closer import cut_closer
from stitchflip.cutting.hand import folds_for, order_of_hand
from stitchflip.cutting.hand_model import Act, CuttingOrder
from stitchflip.cutting.hand_words import HandWords
from stitchflip.cutting.layouts.watch import Patience
from stitchflip.lengths import Unit
from stitchflip.planning import plan as plan_project
from stitchflip.project import read_project_bytes
from stitchflip.project.model import Working
from stitchflip.project.numbers import Numbers
from tests.cutting.lists import CM, METRIC, binding, fabric, planned, strips
from tests.strategies import CuttingProblem, cutting_problems
from tests.twins.hand import Table, number, pieces_of, sizes_of
from tests.twins.table import house

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))


def followed(plan: FabricPlan, pieces: tuple[Piece, ...], order: CuttingOrder, numbers: Numbers, unit: Unit) -> Table:
    """What lies on the table after every sentence of an order was followed."""
    say = HandWords(numbers, unit)
    inch = Fraction(254, 100) if unit is Unit.CM else Fraction(1)
    table = Table({piece.name for piece in pieces}, Fraction(0), Fraction(0))
    is_laid = False
    for step in order.steps:
        if step.source == "new fabric" and not is_laid:
            table.across, table.along = Fraction(plan.usable_width) * inch, Fraction(plan.buy_in) * inch
            is_laid = True
        table.follow(say.does(step), say.left(step))
    assert table.bands == {}
    return table


def ordered(
    plan: FabricPlan, pieces: tuple[Piece, ...], numbers: Numbers | None = None, unit: Unit = Unit.INCH
) -> tuple[CuttingOrder, Table]:
    """The order of a plan, and what following it gave."""
    numbers = numbers or house()
    order = order_of_hand(plan, pieces, numbers, unit)
    return order, followed(plan, pieces, order, numbers, unit)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_following_the_printed_order_of_every_example_gives_every_piece(path: Path) -> None:
    """Name by name as often as the cutting list asks, each at least as large, with nothing but the printed words."""
    plan = plan_project(read_project_bytes(path.read_bytes(), path.name), with_cures=False)
    unit = plan.project.units
    scale = 2.54 if unit is Unit.CM else 1.0
    for one in plan.fabrics:
        pieces = plan.pieces_by_fabric[one.fabric]
        _, table = ordered(one, pieces, plan.numbers, unit)
        asked: Counter[str] = Counter()
        for piece in pieces:
            asked[piece.name] += piece.count
        asked.subtract(one.left_out)

        assert +asked == pieces_of(table.made)
        for piece in pieces:
            if piece.kind == "binding" or plan.project.working.value != "cut first":
                continue
            low, high = sorted((piece.wide * scale, piece.long * scale))
            assert any(
                low - 1 / 64 <= short < low + 1 / 8 and high - 1 / 64 <= long < high + 1 / 8
                for short, long in sizes_of(table.made, piece.name)
            )


@pytest.mark.parametrize(
    "name", ["arrow-ferry", "harbour-sheds", "kite-weather", "morning-tray", "plum-skirt", "soft-cover"]
)
def test_following_a_closer_order_gives_every_piece_too(name: str) -> None:
    """Rows with pieces of different widths, turned, trimmed, over one another: the printed words are enough."""
    path = next(one for one in EXAMPLES if one.stem == name)
    plan = plan_project(read_project_bytes(path.read_bytes(), path.name), with_cures=False)
    own = {fabric.name: fabric for fabric in plan.project.fabrics}
    told = 0
    for everyday in plan.fabrics:
        pieces = plan.pieces_by_fabric[everyday.fabric]
        found = cut_closer(
            own[everyday.fabric], pieces, plan.numbers, plan.project.units, everyday, partial(Patience, 200, 5)
        )
        if found is None or found.plan is None:
            continue
        _, table = ordered(found.plan, pieces, plan.numbers, plan.project.units)
        asked: Counter[str] = Counter()
        for piece in pieces:
            asked[piece.name] += piece.count
        told += 1

        assert asked == pieces_of(table.made)
    assert told


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(problem=cutting_problems())
def test_following_the_order_of_any_fabric_gives_every_piece(problem: CuttingProblem) -> None:
    """Whatever is asked, on hand, washed or not, cut first or trimmed while sewing: what is not left out is there."""
    plan = plan_fabric(problem.fabric, problem.pieces, problem.numbers, problem.working, Unit.INCH)
    _, table = ordered(plan, problem.pieces, problem.numbers)
    asked: Counter[str] = Counter()
    for piece in problem.pieces:
        asked[piece.name] += piece.count
    asked.subtract(plan.left_out)

    assert +asked == pieces_of(table.made)


def test_fabric_shrinks_cut_by_cut_in_a_worked_example() -> None:
    """18 in bought, ½ in straightened: 17½. A row of 4: 13½. Two strips of 3¼: 7. Two of 2½ for the binding: 2.

    The other cut end is crooked too: of these 2 in 1½ go on the shelf, with 36 × 4 of the row, 10 in of two strips.
    """
    pieces = (Piece("Center", 4, 4, kind="rectangle"), *strips(3.25, 30, 30), binding(2.5, 40, 2))
    order, _ = ordered(planned(fabric(), pieces), pieces)

    assert [17.5, 13.5, 7, 2] == [step.left[1] for step in order.steps if step.act in {Act.STRAIGHTEN, Act.ACROSS}]
    assert [
        ("Linen leftover 1", 36.0, 4.0, 1),
        ("Linen leftover 2", 40.0, 1.5, 1),
        ("Linen leftover 3", 3.25, 10.0, 2),
    ] == [(one.name, one.wide, one.long, one.count) for one in order.leftovers]


def test_one_setting_is_one_step() -> None:
    """Two strips of 2½ for pieces and two for the binding: the ruler is set once and cuts four times."""
    pieces = (*strips(2.5, 30, 30), binding(2.5, 40, 2))
    order, _ = ordered(planned(fabric(), pieces), pieces)

    assert [4] == [step.parts[0].count for step in order.steps if step.act is Act.ACROSS]


def test_a_piece_lower_than_its_row_is_trimmed() -> None:
    """A 6 in square and a 5 in one stand in a row 6 in high: the smaller is trimmed to 5."""
    pieces = (Piece("Big", 6, 6, kind="rectangle"), Piece("Small", 5, 5, kind="rectangle"))
    plan = planned(fabric(), pieces)
    order, table = ordered(plan, pieces)

    assert {(5.0, 5.0)} == sizes_of(table.made, "Small")
    words = HandWords(house(), Unit.INCH)
    assert any("trim to 5" in words.does(step) for step in order.steps)


def test_cut_lengths_are_printed_finer_only_where_they_would_not_fit() -> None:
    """Three pieces of 13.3 in come from 40 in; rounded up to 13⅜ they would take 40⅛, at 13 5/16 they take 39 15/16."""
    pieces = strips(2, 13.3, 13.3, 13.3)
    order, table = ordered(planned(fabric(), pieces), pieces)

    assert order.is_finer
    assert {(2.0, 13.3125)} == sizes_of(table.made, "1")


def test_washed_fabric_is_cut_as_it_comes_out_of_the_wash() -> None:
    """9 in bought lose 2 % in the wash: 8.82 in, printed down to 8 13/16; less ½ in before the first strip."""
    pieces = strips(2, 30, 30)
    numbers = house(prewash_along=0.02)
    order, _ = ordered(planned(fabric(), pieces, numbers), pieces, numbers)

    assert Act.WASH is order.steps[0].act
    assert pytest.approx(8.82) == order.steps[0].left[1]
    assert pytest.approx(8.32) == order.steps[1].left[1]


def test_fat_quarters_come_before_what_is_bought() -> None:
    """A quarter 17½ × 20½ gives 16 in long strips along its 20 in; a column 3½ in wide stays whole for the shelf."""
    on_hand = [{"name": "fat quarter", "wide": "20 1/2", "long": "17 1/2"}]
    pieces = strips(2.5, *[16] * 8)
    plan = planned(fabric(on_hand=on_hand), pieces)
    order, _ = ordered(plan, pieces)

    assert ["fat quarter", "new fabric"] == list(dict.fromkeys(step.source for step in order.steps))
    assert (4.0, 17.0) in [(one.wide, one.long) for one in order.leftovers]


def test_a_quarter_that_is_not_washed_yet_is_washed_first() -> None:
    """20 × 16 in lose 5 and 2½ %: 19 × 15.6 are left, and 18½ × 15.1 when two sides are straightened."""
    on_hand = [{"name": "fat quarter", "wide": "20", "long": "16"}]
    pieces = strips(2, 15, 15)
    numbers = house(prewash_across=0.05, prewash_along=0.025)
    order, _ = ordered(planned(fabric(on_hand=on_hand), pieces, numbers), pieces, numbers)

    assert [Act.WASH, Act.STRAIGHTEN] == [step.act for step in order.steps[:2]]
    assert [(20, 16), (19, 15.6), (18.5, 15.1)] == [
        pytest.approx(size) for size in (order.steps[0].before, order.steps[1].before, order.steps[1].left)
    ]


def test_folds_bring_a_cut_onto_the_ruler() -> None:
    """A 24 in ruler cuts 23½: 40 in with selvages need one fold, 60 in two, 108 in two and a slide of the ruler."""
    assert (0, 1, 2, 2) == tuple(folds_for(cut, 23.5) for cut in (23.5, 41, 61, 109))


def test_a_cut_longer_than_the_folded_ruler_says_so() -> None:
    """Wide backing, 108 in: folded twice it is 27 in, more than the 23½ a ruler cuts."""
    pieces = (Piece("Border", 100, 5, kind="rectangle", can_turn=False),)
    order, _ = ordered(planned(fabric(usable_width="108"), pieces), pieces)
    words = HandWords(house(), Unit.INCH)
    across = next(step for step in order.steps if step.act is Act.ACROSS)

    assert "27\u202fin folded" in words.does(across)
    assert "longer than your ruler even so" in words.does(across)


def test_metric_orders_speak_in_centimeters() -> None:
    """Two strips of 6.5 cm from 20 cm with 3 cm for straightening: 18.5 cm, then 5.5 cm are left."""
    pieces = strips(6.5 * CM, 60 * CM, 60 * CM)
    order, table = ordered(planned(fabric(unit=Unit.CM), pieces, METRIC, unit=Unit.CM), pieces, METRIC, Unit.CM)
    words = HandWords(METRIC, Unit.CM)

    assert ["105 × 18.5 cm", "105 × 5.5 cm"] == [
        words.left(step).replace("\u202f", " ") for step in order.steps if step.act is not Act.SUBCUT
    ]
    assert {(6.5, 60.0)} == sizes_of(table.made, "1")


def test_the_follower_notices_an_order_that_takes_too_much() -> None:
    """Who is told to cut 5 strips of 2 in off 8½ in cannot."""
    table = Table({"1"}, Fraction(40), Fraction(17, 2))

    with pytest.raises(AssertionError):
        table.follow("Ruler at 2 in: cut across 5 times (20 in folded), 5 strips 2 in wide (no. 1 to 5).", "nothing")


def test_the_follower_reads_fractions() -> None:
    """2½, 3 5/16, ⅜ and 6.5."""
    assert [Fraction(5, 2), Fraction(53, 16), Fraction(3, 8), Fraction(13, 2)] == [
        number(text) for text in ("2½", "3 5/16", "⅜", "6.5")
    ]


def test_a_computed_side_is_cut_as_the_list_has_it() -> None:
    """A hexagon 7½ between sides is 8.6603 between corners: cut 8¾, the next eighth, and 31¼ of 40 are left."""
    pieces = (Piece("Center", 8.6603, 7.5, kind="rectangle"),)
    plan = planned(fabric(), pieces)
    words = HandWords(house(), Unit.INCH)
    subcut = next(step for step in ordered(plan, pieces)[0].steps if step.act is Act.SUBCUT)

    assert "subcut 8¾ in" in words.does(subcut).replace("\u202f", " ")
    assert "31¼ × 7½ in" == words.left(subcut).replace("\u202f", " ")


def test_pieces_trimmed_while_sewing_are_told_in_the_order_they_are_sewn() -> None:
    """20 and 25 open a strip of 40 each, 14 and 9 come from their rests: the numbers are told as they are sewn."""
    lengths = enumerate((20, 25, 14, 9), 9)
    pieces = tuple(Piece(str(step), 2, long, step=step, shortest=long, cut_first=False) for step, long in lengths)
    plan = plan_fabric(fabric(), pieces, house(), Working.TRIM_AS_YOU_GO, Unit.INCH)
    words = HandWords(house(), Unit.INCH)
    said = [words.does(step) for step in order_of_hand(plan, pieces, house(), Unit.INCH).steps]

    assert said[-1].endswith("trim as you sew: pieces 9, 10, 11, 12.")


def test_strips_that_are_pieces_as_they_are_say_so() -> None:
    """Three whole strips for the binding are counted as strips; two strips as long as the fabric is wide are pieces."""
    pieces = (binding(2.5, 40, 3), *strips(2, 40, 40))
    words = HandWords(house(), Unit.INCH)
    said = [words.does(step) for step in ordered(planned(fabric(), pieces), pieces)[0].steps]

    assert "Strips no. 1 to 3 stay whole: binding (3 strips)." in said
    assert "Strips no. 1 and 2 need no further cut, selvages off: pieces 1, 2." in said
