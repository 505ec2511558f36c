"""Strips from strips: counts by hand and by trying everything, proofs, rests, and what happens when nothing fits."""

from __future__ import annotations

import subprocess
import sys

import pytest
from hypothesis import given, settings

from stitchflip.cutting import Status, StripPiece, StripPlan, StripStock, plan_strips
from stitchflip.cutting import exact as exact_module
from stitchflip.cutting.exact import Solved
from stitchflip.cutting.layouts.watch import Watch
from stitchflip.errors import CuttingError
from tests.cutting.lists import bolt, wanted
from tests.strategies import StripProblem, strip_problems
from tests.twins.brute_strips import fewest_bought

EACH_20 = 20
TWENTY_BLOCKS = {
    # name: (the lengths of one block + 1/4, strips of 40 for twenty blocks)
    "Gull": ((3.25, 4.25, 6, 7), 11),
    "Sailcloth": ((8.75, 9.75, 11.5, 12.5), 23),
    "Keel": ((4.25, 6), 6),
    "Boatshed": ((7, 8.75), 9),
    "Harbour": ((9.75, 11.5), 12),
    "Deep Water": ((12.5, 14.25), 15),
}


def bought(plan: StripPlan) -> int:
    """Strips cut across the fabric."""
    return sum(strip.stock == "width of fabric" for strip in plan.strips)


@pytest.mark.parametrize(
    ("lengths", "width", "strips"),
    [
        # 86 in of pieces: two strips of 40 give 80
        ((9, 10, 10, 11, 11, 12, 11, 12), 40, 3),
        # the same places cut to the shortest that reaches: 79.6 in
        ((8.25, 9.25, 9.25, 10.25, 10.15, 11.15, 10.15, 11.15), 40, 2),
        # four mats, centimeters: 504 cm would be 4.8 strips, but no four pieces fit one strip
        ((34,) * 8 + (29,) * 8, 105, 6),
        ((27,) * 8 + (22,) * 8, 105, 4),
        ((41,) * 8 + (38,) * 8, 105, 8),
        # a hexagon's rounds: 123 in, three strips of 41 exactly, four of 40
        ((6.75, *[8.5] * 4, 10.25, 10.25, *[12] * 4, 13.75), 40, 4),
        ((6.75, *[8.5] * 4, 10.25, 10.25, *[12] * 4, 13.75), 41, 3),
        ((5, *[6.75] * 4, 8.5, 8.5, *[10.25] * 4, 12), 40, 3),
        ((12, *[14.25] * 4, 16.5), 40, 3),
        # sixteen string blocks
        ((13.25,) * 16, 40, 6),
        ((13.25,) * 16, 39.5, 8),
        ((12,) * 32, 40, 11),
        ((10,) * 32, 40, 8),
        ((10,) * 32, 39.5, 11),
        ((6.5,) * 32, 40, 6),
        ((4,) * 32, 40, 4),
    ],
)
def test_number_of_strips_is_the_one_worked_out_by_hand(lengths: tuple[float, ...], width: float, strips: int) -> None:
    """The fewest strips are found and proved."""
    plan = plan_strips(2, wanted(*lengths), [bolt(width)])

    assert (strips, strips, Status.PROVED) == (len(plan.strips), plan.bound, plan.status)


@pytest.mark.parametrize("name", TWENTY_BLOCKS)
def test_twenty_blocks_share_their_strips(name: str) -> None:
    """Mixed lengths share strips; each count has a plan and a bound that meet."""
    lengths, strips = TWENTY_BLOCKS[name]

    plan = plan_strips(2.25, wanted(*lengths * EACH_20), [bolt(40)])

    assert (strips, strips) == (len(plan.strips), plan.bound)


@pytest.mark.parametrize(
    ("name", "weights", "least"),
    [
        # whatever a strip gives weighs at most 1, so the strips are at least the weight of everything
        ("Sailcloth", (2 / 9, 2 / 9, 1 / 3, 1 / 3), 23),
        ("Deep Water", (1 / 4, 1 / 2), 15),
        ("Harbour", (1 / 4, 1 / 3), 12),
    ],
)
def test_counts_of_twenty_blocks_have_a_proof_by_weights(name: str, weights: tuple[float, ...], least: int) -> None:
    """A weight for each length, checked over every way of filling a strip, shows that fewer strips cannot do."""
    lengths, strips = TWENTY_BLOCKS[name]
    fills: list[tuple[float, float]] = [(0.0, 0.0)]
    for length, weight in zip(lengths, weights, strict=True):
        fills = [
            (room + count * length, load + count * weight)
            for room, load in fills
            for count in range(13)
            if room + count * length <= 40
        ]

    assert max(load for _, load in fills) < 1 + 1e-9
    assert EACH_20 * sum(weights) > least - 1 + 1e-9
    assert least == strips


def test_each_strip_keeps_a_fifth_of_an_inch_when_two_must_do() -> None:
    """79.6 in from two strips of 40: 0.4 in are over, and neither strip is used to its last thread."""
    plan = plan_strips(1.5, wanted(8.25, 9.25, 9.25, 10.25, 10.15, 11.15, 10.15, 11.15), [bolt(40)])

    assert [0.2, 0.2] == pytest.approx([strip.rest for strip in plan.strips])
    assert plan.spare_in == pytest.approx(0.2)


def test_one_long_leftover_beats_several_short_ones() -> None:
    """12 + 12 + 12 and 8: everything short goes together so that one strip keeps 32 in, not two of them 20."""
    plan = plan_strips(2, wanted(12, 12, 12, 8), [bolt(40)])

    assert [4, 32] == pytest.approx(sorted(strip.rest for strip in plan.strips))


@given(strip_problems(with_shelf=False))
@settings(max_examples=150, deadline=None)
def test_fewest_strips_are_the_ones_found_by_trying_everything(problem: StripProblem) -> None:
    """Found and proved count equal the count of a search through all placements."""
    plan = plan_strips(2, wanted(*problem.lengths), [bolt(problem.bought)])

    assert fewest_bought(problem.lengths, (), problem.bought) == len(plan.strips) == plan.bound
    assert plan.status is Status.PROVED


@given(strip_problems())
@settings(max_examples=150, deadline=None)
def test_strips_on_hand_save_as_many_as_trying_everything_saves(problem: StripProblem) -> None:
    """With strips on hand the number of bought ones is the least there is, and proved."""
    shelf = [StripStock(f"on hand {number}", *kind) for number, kind in enumerate(problem.on_hand)]
    plan = plan_strips(2, wanted(*problem.lengths), [*shelf, bolt(problem.bought)])

    assert fewest_bought(problem.lengths, problem.on_hand, problem.bought) == bought(plan) == plan.new_bound
    assert all(sum(strip.stock == one.name for strip in plan.strips) <= (one.count or 0) for one in shelf)


@given(strip_problems())
@settings(max_examples=60, deadline=None)
def test_another_strip_on_hand_never_costs_more(problem: StripProblem) -> None:
    """Adding to the shelf never makes her buy more."""
    shelf = [StripStock(f"on hand {number}", *kind) for number, kind in enumerate(problem.on_hand)]
    before = plan_strips(2, wanted(*problem.lengths), [*shelf, bolt(problem.bought)])
    after = plan_strips(2, wanted(*problem.lengths), [*shelf, StripStock("found", 20, 1), bolt(problem.bought)])

    assert bought(after) <= bought(before)


@given(strip_problems(most=12, with_shelf=False))
@settings(max_examples=60, deadline=None)
def test_every_piece_lies_in_one_strip_and_no_strip_is_overfull(problem: StripProblem) -> None:
    """Labels come out as they went in, and rests are what is left."""
    pieces = wanted(*problem.lengths)
    plan = plan_strips(2, pieces, [bolt(problem.bought)])
    made = [piece for strip in plan.strips for piece in strip.pieces]

    assert sorted((piece.label, piece.length) for piece in pieces) == sorted(made)
    assert all(sum(length for _, length in strip.pieces) + strip.rest == strip.length for strip in plan.strips)
    assert plan.bound <= len(plan.strips)


def test_three_thirds_of_a_strip_fit_whatever_their_last_digit_says() -> None:
    """13 1/3 in written with seven digits still come three from 40 in."""
    plan = plan_strips(2, wanted(*[13.3333334] * 3), [bolt(40)])

    assert len(plan.strips) == 1


def test_hair_too_long_does_not_fit() -> None:
    """A piece a thousandth longer than a third of the strip is not talked into it."""
    plan = plan_strips(2, wanted(*[13.3344] * 3), [bolt(40)])

    assert len(plan.strips) == 2


def test_piece_longer_than_every_strip_is_left_out_and_said() -> None:
    """The rest is planned, the long one is named, and the plan is called impossible."""
    plan = plan_strips(2, wanted(12, 41, 12), [bolt(40)])

    assert ["2"] == [piece.label for piece in plan.left_out]
    assert (1, Status.IMPOSSIBLE) == (len(plan.strips), plan.status)


def test_shelf_that_is_too_little_gives_what_it_can() -> None:
    """Nothing can be bought: the longest pieces are cut, what is missing is listed."""
    plan = plan_strips(2, wanted(10, 12, 8), [StripStock("precut strip", 22, 1)])

    assert ["3"] == [piece.label for piece in plan.left_out]
    assert [(("2", 12), ("1", 10))] == [strip.pieces for strip in plan.strips]


def test_nothing_wanted_is_nothing_opened() -> None:
    """An empty list needs no strip and is proved."""
    plan = plan_strips(2, (), [bolt(40)])

    assert ((), 0, Status.PROVED) == (plan.strips, plan.bound, plan.status)


def test_shelf_is_used_before_anything_is_bought() -> None:
    """Two pieces of 15 come from the strip on hand although the bolt would do as well."""
    plan = plan_strips(2, wanted(15, 15), [StripStock("precut strip", 31, 3), bolt(40)])

    assert ["precut strip"] == [strip.stock for strip in plan.strips]


def test_strip_on_hand_stays_whole_where_what_is_bought_does() -> None:
    """9 1/4 + 3 1/4 and 2 + 6 + 6 come from the two strips that must be bought; the one on hand is not cut into."""
    plan = plan_strips(2, wanted(2, 3.25, 6, 6, 9.25), [StripStock("precut strip", 6.25, 1), bolt(14.25)])

    assert (["width of fabric"] * 2, 2) == ([strip.stock for strip in plan.strips], plan.new_bound)


def test_one_long_leftover_with_strips_on_hand_too() -> None:
    """30 + 8 of the new strip and 7 of the one on hand leave 13; 30 + 7 and 8 leave 12, and 8 + 7 together 10."""
    plan = plan_strips(2, wanted(30, 8, 7), [StripStock("precut strip", 20, 1), bolt(40)])

    assert [("precut strip", 13), ("width of fabric", 2)] == [(strip.stock, strip.rest) for strip in plan.strips]


def test_ten_thousand_lengths_are_planned() -> None:
    """Every one different: the plan is complete, near its bound, and says so."""
    pieces = [StripPiece(str(number), 2 + number * 0.003) for number in range(10_000)]
    plan = plan_strips(2, pieces, [bolt(40)])

    assert sorted((piece.label, piece.length) for piece in pieces) == sorted(
        piece for strip in plan.strips for piece in strip.pieces
    )
    # pieces longer than 20 in, number 6,000 is 20 exactly, lie alone or with a short one: 3,999 strips and a half of
    # them for what is left over
    assert 3999 <= plan.new_bound <= len(plan.strips) <= 1.05 * plan.new_bound


@pytest.mark.parametrize("length", [0.0, -2.5, float("inf"), float("nan")])
def test_strip_without_a_length_is_refused(length: float) -> None:
    """The error names the piece and what to do."""
    with pytest.raises(CuttingError, match="piece side"):
        plan_strips(2, [StripPiece("side", length)], [bolt(40)])


def test_fabric_of_no_length_gives_nothing() -> None:
    """A strip 0 in long is no strip: the piece is left out and the plan impossible."""
    plan = plan_strips(2, wanted(4), [StripStock("precut strip", 0, 3)])

    assert (["1"], Status.IMPOSSIBLE) == ([piece.label for piece in plan.left_out], plan.status)


def test_maker_who_has_had_enough_gets_the_best_so_far() -> None:
    """A watch that says stop leaves plan and bound as far as they were known."""
    plan = plan_strips(
        2.25, wanted(*(8.75, 9.75, 11.5, 12.5) * EACH_20), [bolt(40)], watch=Watch(9, cancelled=lambda: True)
    )

    assert 850 / 40 <= plan.bound <= 23 <= len(plan.strips) <= 24


def test_same_question_has_the_same_answer() -> None:
    """Two calls give equal plans, piece by piece."""
    lengths = (8.75, 9.75, 11.5, 12.5) * 5

    assert plan_strips(2, wanted(*lengths), [bolt(40)]) == plan_strips(2, wanted(*lengths), [bolt(40)])


def test_solver_without_an_answer_leaves_an_honest_status(monkeypatch: pytest.MonkeyPatch) -> None:
    """When time runs out the best plan found is called that, with the bound that is proved and no other."""
    monkeypatch.setattr(exact_module, "solve_exactly", lambda _task, _watch: Solved(None, 0))
    plan = plan_strips(2.25, wanted(*(8.75, 9.75, 11.5, 12.5) * EACH_20), [bolt(40)])

    assert plan.status is Status.BEST_FOUND
    assert 850 / 40 <= plan.bound <= 23 <= len(plan.strips) <= 24


def test_solver_is_not_loaded_where_the_bound_is_met() -> None:
    """A plan proved by its bound costs no import of HiGHS or numpy."""
    script = (
        "import sys; from stitchflip.cutting import StripPiece, StripStock, plan_strips\n"
        "plan = plan_strips(2, [StripPiece('', n) for n in (9, 10, 10, 11, 11, 12, 11, 12)], [StripStock('b', 40)])\n"
        "print(len(plan.strips), plan.status.value, *(name in sys.modules for name in ('highspy', 'numpy')))"
    )
    told = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)

    assert told.stdout.split() == ["3", "proved", "False", "False"]
