"""Whole fabrics of invented projects: strips, need and purchase as worked out by hand.

Straightening 1 in, sold by 1/8 yd from 1/4 yd up, 40 in usable; the metric mats 3 cm, by 10 cm from 20 cm up, 105 cm.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings

from stitchflip.cutting import Piece, Status, plan_fabric
from stitchflip.cutting.verify import verify_fabric_plan
from stitchflip.errors import CuttingError
from stitchflip.lengths import Unit
from stitchflip.project.model import Working
from tests.cutting.lists import CM, METRIC, YARD, binding, counts, fabric, plain, planned, strips
from tests.strategies import CuttingProblem, cutting_problems
from tests.twins.table import house

EIGHTH = YARD / 8
LARCH = (6.75, *[8.5] * 4, 10.25, 10.25, *[12] * 4, 13.75)


@pytest.mark.parametrize(
    ("pieces", "need", "yards"),
    [
        # a runner on point: 3 × 1½ + 1, 3 × 2½ + 1, 2 × 2 + 1, 2 × 2½ + 1, 2 × 3¼ + 3 × 2½ + 1
        (strips(1.5, 9, 10, 10, 11, 11, 12, 11, 12), 5.5, 1 / 4),
        (strips(2.5, *[11, 13, 11, 13] * 2), 8.5, 1 / 4),
        (strips(2, 11, 12.5, 11, 12.5), 5, 1 / 4),
        (strips(2.5, 11, 13, 11, 13), 6, 1 / 4),
        ((*strips(3.25, 11, 13.5, 11, 13.5), binding(2.5, 40, 3)), 15, 1 / 2),
        ((*strips(2.5, 11, 13.5, 11, 13.5), binding(2.5, 40, 3)), 13.5, 3 / 8),
        # a hexagon: 3 × 2 + 1, 4 × 2 + 1, 3 × 2¾ + 3 × 2½ + 1
        (strips(2, 5, *[6.75] * 4, 8.5, 8.5, *[10.25] * 4, 12), 7, 1 / 4),
        (strips(2, *LARCH), 9, 1 / 4),
        ((*strips(2.75, 12, *[14.25] * 4, 16.5), binding(2.5, 40, 3)), 16.75, 1 / 2),
        # twenty log cabins
        ((Piece("Lamp", 3, 3, 20, kind="rectangle"),), 7, 1 / 4),
        (strips(1.5, 3.25, 4.25, 6, 7, count=20), 17.5, 1 / 2),
        (strips(2.25, 4.25, 6, count=20), 14.5, 1 / 2),
        (strips(2.25, 7, 8.75, count=20), 21.25, 5 / 8),
        (strips(2.25, 9.75, 11.5, count=20), 28, 7 / 8),
        # 23 and 15 strips, not 24 and 17: mixed lengths share strips, see the proof by weights
        (strips(1.5, 8.75, 9.75, 11.5, 12.5, count=20), 35.5, 1),
        (strips(2.25, 12.5, 14.25, count=20), 34.75, 1),
        # joining: 15 short pieces of 13, three to a strip, and four rows joined from six whole strips
        ((*strips(1.125, 13, count=15), binding(1.125, 40, 6)), 13.375, 3 / 8),
        ((*strips(2, 13, count=15), binding(2, 40, 6)), 23, 3 / 4),
        ((binding(2.5, 40, 7),), 18.5, 5 / 8),
        # sixteen string blocks, backing 36½ square with a sleeve
        (strips(2, 13.25, count=16), 13, 3 / 8),
        (strips(1.5, 12, count=32), 17.5, 1 / 2),
        (strips(2.25, 10, count=32), 19, 5 / 8),
        (strips(1.75, 6.5, count=32), 11.5, 3 / 8),
        (strips(2.25, 4, count=32), 10, 3 / 8),
        (
            (
                Piece("Backing", 36.5, 36.5, kind="rectangle"),
                Piece("Sleeve", 32.5, 8.5, kind="rectangle"),
            ),
            46,
            11 / 8,
        ),
        ((binding(2.5, 40, 4),), 11, 3 / 8),
    ],
)
def test_need_and_purchase_are_the_ones_added_up_by_hand(pieces: tuple[Piece, ...], need: float, yards: float) -> None:
    """Strips and rows side by side, 1 in for straightening, up to the shop's step."""
    plan = planned(fabric(), pieces)

    assert need == pytest.approx(plan.need_in)
    assert yards * YARD == pytest.approx(plan.buy_in)
    assert (yards * YARD - need) == pytest.approx(plan.spare_in)


@pytest.mark.parametrize(
    ("pieces", "need_cm", "buy_cm"),
    [
        ((Piece("Center", 27 * CM, 15 * CM, 4, kind="rectangle", can_turn=False),), 33, 40),
        (strips(5 * CM, *[length * CM for length in (27, 27, 22, 22)], count=4), 23, 30),
        (strips(5 * CM, *[length * CM for length in (34, 34, 29, 29)], count=4), 33, 40),
        (
            (
                *strips(6 * CM, *[length * CM for length in (41, 41, 38, 38)], count=4),
                binding(6.5 * CM, 105 * CM, 8),
            ),
            103,
            110,
        ),
        ((Piece("Base", 52 * CM, 40 * CM, 4, kind="rectangle"),), 83, 90),
    ],
)
def test_metric_mats_are_bought_by_ten_centimeters(pieces: tuple[Piece, ...], need_cm: float, buy_cm: float) -> None:
    """Four mats: 3 cm for straightening, up to the next 10 cm."""
    plan = planned(fabric(unit=Unit.CM), pieces, METRIC, unit=Unit.CM)

    assert need_cm == pytest.approx(plan.need_in / CM)
    assert buy_cm == pytest.approx(plan.buy_in / CM)
    assert plan.status is Status.PROVED


def test_one_way_center_reports_what_turning_would_have_taken() -> None:
    """Upright two rows of 15 cm; turned one row of 27, refused: the losing length is told all the same."""
    center = Piece("Center", 27 * CM, 15 * CM, 4, kind="rectangle")
    plan = planned(fabric(unit=Unit.CM, one_way=True), (center,), METRIC, unit=Unit.CM)

    assert plan.losing_rows_in is not None
    assert (30, 27) == pytest.approx((plan.used_in / CM, plan.losing_rows_in / CM))
    assert plan.turning_is_refused


def test_wider_fabric_saves_a_strip() -> None:
    """At 41 in the hexagon's Larch comes from three strips, 6 in instead of 8."""
    plan = planned(fabric("Larch", usable_width="41"), strips(2, *LARCH))

    assert {2: 3} == counts(plan)
    assert 6 == plan.used_in


@pytest.mark.parametrize(
    ("wide", "length", "count", "strips_needed", "yards"), [(2, 13.25, 16, 8, 1 / 2), (2.25, 10, 32, 11, 3 / 4)]
)
def test_half_an_inch_narrower_costs_strips_and_yards(
    wide: float, length: float, count: int, strips_needed: int, yards: float
) -> None:
    """At 39 1/2 in one piece less comes from each strip of the string blocks."""
    plan = planned(fabric(usable_width="39 1/2"), strips(wide, length, count=count))

    assert {wide: strips_needed} == counts(plan)
    assert yards * YARD == plan.buy_in


def test_string_middles_cut_a_little_shorter_come_three_to_a_width_again() -> None:
    """At 39 1/2 in, cut 13 1/8: three times that is 39 3/8."""
    plan = planned(fabric(usable_width="39 1/2"), strips(2, 13.125, count=16))

    assert {2: 6} == counts(plan)


def test_exactly_three_eighths_leave_nothing_to_spare() -> None:
    """12 1/2 in of strips and 1 in are 3/8 yd to the thread; one spare strip would cost the next step."""
    plan = planned(fabric("Midnight"), (*strips(2.5, 11, 13.5, 11, 13.5), binding(2.5, 40, 3)))

    assert plan.has_nothing_to_spare
    assert (0, 0) == (plan.spare_in, plan.miscuts)
    assert 4 * EIGHTH == plan.spare_strip_buy_in


def test_spare_strip_is_there_already_or_costs_a_step() -> None:
    """Brass has room for two more strips; Inkwell (8 1/2 of 9 in) for none, one would take 3/8 yd."""
    brass = planned(fabric("Brass"), strips(1.5, 9, 10, 10, 11, 11, 12, 11, 12))
    inkwell = planned(fabric("Inkwell"), strips(2.5, *[11, 13, 11, 13] * 2))

    assert (2, 2 * EIGHTH) == (brass.miscuts, brass.spare_strip_buy_in)
    assert (0, 3 * EIGHTH) == (inkwell.miscuts, inkwell.spare_strip_buy_in)


def test_trim_as_you_go_takes_one_strip_less() -> None:
    """Brass with the shortest lengths: two strips instead of three, each step told."""
    longs = (9, 10, 10, 11, 11, 12, 11, 12)
    shorts = (8.25, 9.25, 9.25, 10.25, 10.15, 11.15, 10.15, 11.15)
    pieces = tuple(
        Piece(str(step), 1.5, long, shortest=short, step=step, cut_first=False)
        for step, long, short in zip((1, 2, 3, 4, 17, 18, 19, 20), longs, shorts, strict=True)
    )
    first = planned(fabric("Brass"), pieces)
    going = planned(fabric("Brass"), pieces, working=Working.TRIM_AS_YOU_GO)

    assert ({1.5: 3}, {1.5: 2}) == (counts(first), counts(going))
    assert 8 == len(going.strip_plans[0].hand_steps)
    assert () == first.strip_plans[0].hand_steps


def test_strips_cut_first_keep_their_length_even_when_she_trims_as_she_goes() -> None:
    """A strip marked as cut first has its cut length, whatever would reach."""
    pieces = tuple(Piece(str(step), 2, 20.5, shortest=20, step=step) for step in (1, 2))
    plan = planned(fabric(), pieces, working=Working.TRIM_AS_YOU_GO)

    assert {2: 2} == counts(plan)


def test_strip_longer_than_the_fabric_is_wide_is_cut_along_its_length() -> None:
    """Two strips of 57 in: 57 in of fabric, side by side, not turned."""
    plan = planned(fabric(), strips(2.5, 57, 57))

    assert (57, 58) == (plan.used_in, plan.need_in)
    assert [(57, False)] == [(row.height, row.turned) for row in plan.rows]


def test_piece_too_large_for_the_fabric_is_left_out_with_a_reason() -> None:
    """A backing 41 × 50 from 40 in: named, with the width it fails at; the strips are planned."""
    pieces = (Piece("Backing", 41, 50, kind="rectangle"), *strips(2, 12))
    plan = planned(fabric("Fog"), pieces)

    assert (("Backing",), Status.IMPOSSIBLE) == (plan.left_out, plan.status)
    assert "Fog is 40 in wide: too narrow for Backing." == plain(plan.because)
    assert 2 == plan.used_in


def test_washing_first_takes_more_length_and_leaves_less_width() -> None:
    """4 % across and 2 % along: 40 in become 38.4, and 17 in of need 17 / 0.98."""
    plan = planned(fabric(), strips(2, 13.25, count=16), house(prewash_across=0.04, prewash_along=0.02))

    assert {2: 8} == counts(plan)
    assert 38.4 == pytest.approx(plan.usable_width)
    assert 17 / 0.98 == pytest.approx(plan.need_in)


def test_washed_fabric_does_not_shrink_again() -> None:
    """Its width was measured after washing."""
    plan = planned(fabric(washed="washed"), strips(2, 13.25, count=16), house(prewash_across=0.04, prewash_along=0.02))

    assert ({2: 6}, 13) == (counts(plan), plan.need_in)


def test_what_fits_a_fat_quarter_is_said() -> None:
    """Three strips of 13 1/4 from 17 × 20 straightened: yes. The binding's whole strips: never."""
    one = planned(fabric(), strips(2.5, 13.25, 13.25, 13.25))
    bound = planned(fabric(), (binding(2.5, 40, 1),))
    seven = planned(fabric(), strips(2.5, *[13.25] * 7))

    assert (True, False, False) == (one.fits_fat_quarter, bound.fits_fat_quarter, seven.fits_fat_quarter)


def test_bound_adds_up_like_the_need_when_everything_is_proved() -> None:
    """Fewest strips of each width, and straightening."""
    plan = planned(fabric(), (*strips(3.25, 11, 13.5, 11, 13.5), binding(2.5, 40, 3)))

    assert (15, Status.PROVED) == (plan.bound_in, plan.status)


def test_nothing_to_cut_is_nothing_to_buy() -> None:
    """No pieces: no need, no purchase, no tipping point."""
    plan = planned(fabric(), ())

    assert (0, 0, ()) == (plan.need_in, plan.buy_in, plan.tipping_points)


@pytest.mark.parametrize(
    ("piece", "code"),
    [
        (Piece("1", 0, 12), "cutting.no-size"),
        (Piece("1", 2, float("nan")), "cutting.no-size"),
        (Piece("1", 2, float("inf")), "cutting.no-size"),
        (Piece("1", -2, 12), "cutting.no-size"),
        (Piece("1", 2, 12, count=-1), "cutting.no-size"),
        (Piece("1", 2, 12, count=10**9), "cutting.too-many-pieces"),
    ],
)
def test_pieces_nobody_can_cut_are_refused(piece: Piece, code: str) -> None:
    """The error names the piece and says what would do."""
    with pytest.raises(CuttingError) as told:
        plan_fabric(fabric("Fog"), (piece,), house(), Working.CUT_FIRST, Unit.INCH)

    assert (code, "Fog") == (told.value.code, told.value.where)


def test_more_sizes_than_anybody_cuts_are_refused() -> None:
    """Ten thousand different squares are a slip; two thousand are planned."""
    squares = tuple(Piece(str(n), 1 + n / 4096, 1 + n / 4096, kind="rectangle") for n in range(10_000))
    with pytest.raises(CuttingError) as told:
        plan_fabric(fabric("Fog"), squares, house(), Working.CUT_FIRST, Unit.INCH)

    assert ("cutting.too-many-sizes", "Fog") == (told.value.code, told.value.where)
    assert "10000 different sizes" in told.value.what
    assert 2_000 == sum(len(row.pieces) for row in planned(fabric("Fog"), squares[:2_000]).rows)


def test_fabric_without_width_is_refused() -> None:
    """Zero between the selvages is a slip of the hand."""
    with pytest.raises(CuttingError) as told:
        plan_fabric(fabric(), strips(2, 12), house(usable_width=0), Working.CUT_FIRST, Unit.INCH)

    assert "cutting.no-width" == told.value.code


@given(cutting_problems())
@settings(max_examples=150, deadline=None)
def test_every_plan_passes_the_independent_checker(problem: CuttingProblem) -> None:
    """Whatever is asked, the plan adds up."""
    plan = plan_fabric(problem.fabric, problem.pieces, problem.numbers, problem.working, Unit.INCH)

    assert () == verify_fabric_plan(plan, problem.fabric, problem.pieces, problem.numbers, problem.working)


@given(cutting_problems())
@settings(max_examples=60, deadline=None)
def test_more_strips_on_hand_never_make_her_buy_more(problem: CuttingProblem) -> None:
    """Precut strips of 2 1/2 in added to the shelf, strips only: the need does not grow."""
    pieces = tuple(piece for piece in problem.pieces if piece.kind == "strip")
    bare = problem.fabric.model_copy(update={"on_hand": (), "only_on_hand": False})
    found = fabric(
        usable_width=str(bare.usable_width.inches if bare.usable_width else 40),
        on_hand=[{"name": "precut strip", "wide": "2 1/2", "long": "40", "count": 2}],
    )
    before = plan_fabric(bare, pieces, problem.numbers, problem.working, Unit.INCH)
    after = plan_fabric(found, pieces, problem.numbers, problem.working, Unit.INCH)

    assert after.need_in <= before.need_in + 1e-9


@given(cutting_problems())
@settings(max_examples=40, deadline=None)
def test_narrower_fabric_never_needs_fewer_strips(problem: CuttingProblem) -> None:
    """An inch less between the selvages: no width gets by with fewer strips."""
    pieces = tuple(piece for piece in problem.pieces if piece.kind == "strip" and piece.long <= 29)
    wide = fabric(usable_width="40")
    narrow = fabric(usable_width="39")
    before = plan_fabric(wide, pieces, problem.numbers, problem.working, Unit.INCH)
    after = plan_fabric(narrow, pieces, problem.numbers, problem.working, Unit.INCH)

    assert all(counts(before)[width] <= count for width, count in counts(after).items())


def test_order_of_the_list_does_not_matter() -> None:
    """The same pieces backwards: the same counts and purchase."""
    pieces = (*strips(3.25, 11, 13.5, 11, 13.5), *strips(2, *LARCH, first=9), binding(2.5, 40, 3))
    forward, backward = planned(fabric(), pieces), planned(fabric(), tuple(reversed(pieces)))

    assert (counts(forward), forward.need_in) == (counts(backward), backward.need_in)


def test_pieces_alike_are_cut_as_often_as_asked() -> None:
    """Four mats from one purchase: each label four times."""
    plan = planned(fabric(), strips(2, 13, 11, count=4))
    labels = [label for strip in plan.strip_plans[0].strips for label, _ in strip.pieces]

    assert (4, 4) == (labels.count("1"), labels.count("2"))
    assert replace(plan) == plan
