"""Fussy-cut centers in a project: what is planned for a print that repeats, and what is said about it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import sqrt

import pytest

from stitchflip.cutting import FabricPlan
from stitchflip.cutting.hand import order_of_hand
from stitchflip.cutting.motifs import Window
from stitchflip.cutting.verify import verify_fabric_plan
from stitchflip.planning import plan
from stitchflip.planning.model import Finding, Plan
from stitchflip.planning.motifs import motif_need
from stitchflip.project.model import Project
from stitchflip.project.numbers import effective

Draft = Callable[..., Project]


def prints(**parts: object) -> list[dict[str, object]]:
    """The porch square's fabrics; its center is 10 in, on point."""
    return [{"name": "Plain", "repeat": "12", **parts}, {"name": "Stripe"}, {"name": "Dot"}]


def center_fabric(made: Plan) -> FabricPlan:
    """The plan of the print, which the independent checker has passed."""
    found = next(one for one in made.fabrics if one.fabric == "Plain")
    fabric = next(one for one in made.project.fabrics if one.name == "Plain")
    pieces = made.pieces_by_fabric["Plain"]
    assert () == verify_fabric_plan(found, fabric, pieces, made.numbers, made.project.working)
    return found


def said(made: Plan, code: str) -> Finding:
    """The one finding with this code."""
    return next(one for one in made.findings if one.code == code)


def test_one_center_surely_takes_its_window_and_a_repeat(draft: Draft) -> None:
    """10 in upright from a print of 12: 22 in, and 1 for straightening; chosen in the shop 10 and 1."""
    made = plan(draft(fabrics=prints()), with_cures=False)
    chosen = plan(draft(fabrics=prints(motif_chosen=True)), with_cures=False)
    assert (23, 11) == (center_fabric(made).need_in, center_fabric(chosen).need_in)
    assert {"repeat_in": 12, "surely_in": 22, "chosen_in": 10} == said(made, "fabric.motif").numbers


def test_the_cure_of_choosing_is_one_change(draft: Draft) -> None:
    """Made, it plans 12 in less and offers the way back."""
    made = plan(draft(fabrics=prints()), with_cures=False)
    (change,) = said(made, "fabric.motif").cures[0].changes
    assert (("fabrics", 0, "motif_chosen"), "true") == (change.path, change.to)
    chosen = plan(draft(fabrics=prints(motif_chosen=True)), with_cures=False)
    assert "22 in" in said(chosen, "fabric.motif").cures[0].text.replace("\u202f", " ")


def test_a_window_on_point_is_turned_on_an_upright_print(draft: Draft) -> None:
    """10 in on point from a one-way print reaches 14.142; with 12 in more 26.142, on the quarter grid 26 1/4."""
    made = plan(draft(fabrics=prints(one_way=True)), with_cures=False)
    assert 26.25 + 1 == center_fabric(made).need_in
    assert 26.142 == round(10 * sqrt(2) + 12, 3)


def test_a_half_drop_print_takes_half_a_repeat(draft: Draft) -> None:
    """Columns 12 in apart in 40 in: 10 + 6 + 1 in."""
    made = plan(draft(fabrics=prints(repeat_across="12", half_drop=True)), with_cures=False)
    assert 17 == center_fabric(made).need_in


def test_several_alike_share_one_block(draft: Draft) -> None:
    """Four centers, columns 12 apart: two surely side by side (30 / 12), two levels 12 apart: 10 + 12 + 12, and 1.

    Each in a row of its own 22 in high would take three side by side at a guess, or 88 in.
    """
    made = plan(draft(fabrics=prints(repeat_across="12"), how_many=4), with_cures=False)
    found = center_fabric(made)
    assert 35 == found.need_in
    assert [34] == [row.height for row in found.rows]
    assert 4 == len(found.rows[0].pieces)


def test_columns_not_measured_give_one_motif_in_the_width(draft: Draft) -> None:
    """Four centers one over the other: 10 + 4 x 12 - 12 + 12, and 1."""
    made = plan(draft(fabrics=prints(), how_many=4), with_cures=False)
    assert 10 + 48 + 1 == center_fabric(made).need_in


def test_a_repeat_for_mistakes_is_bought_on_top(draft: Draft) -> None:
    """22 + 12 + 1."""
    made = plan(draft(fabrics=prints(spare_repeats=1)), with_cures=False)
    assert 35 == center_fabric(made).need_in


def test_the_order_of_the_hand_finds_motifs_in_the_block(draft: Draft) -> None:
    """One cut for the block, and every center with its motif in the middle."""
    made = plan(draft(fabrics=prints(repeat_across="12"), how_many=4), with_cures=False)
    found = center_fabric(made)
    order = order_of_hand(found, made.pieces_by_fabric["Plain"], made.numbers, made.project.units)
    gives = [given for step in order.steps for part in step.parts for given in part.pieces()]
    assert all(given.has_motif for given in gives)
    assert {34.0} == {step.wide for step in order.steps if step.what == "row" and step.wide}


def test_motifs_are_looked_for_on_new_fabric_or_on_what_is_there(draft: Draft) -> None:
    """A yard on hand gives four centers, each with a repeat beside it, or none is planned and that is said."""
    pieces = [{"name": "yard", "wide": "42", "long": "72"}]
    made = plan(draft(fabrics=prints(on_hand=pieces, only_on_hand=True), how_many=4), with_cures=False)
    found = center_fabric(made)
    assert () == found.left_out
    assert 0 == found.buy_in
    assert "side by side" in said(made, "fabric.motif-not-sure").what


@pytest.mark.parametrize(
    ("parts", "codes"),
    [
        ({}, set()),
        ({"repeat": "6"}, {"fabric.repeat"}),
        ({"repeat": "12", "repeat_across": "8"}, {"fabric.repeat"}),
        ({"repeat": "12", "repeat_across": "36"}, {"fabric.motif-not-sure"}),
        (
            {"repeat_across": "12", "motifs": [{"across": "6", "along": "6", "wide": "10", "long": "4"}]},
            {"fabric.motif-cut-off"},
        ),
    ],
)
def test_what_does_not_suit_the_window_is_said(draft: Draft, parts: dict[str, object], codes: set[str]) -> None:
    """The center shows 9 1/2 in: a closer print, columns too far apart for 40 in, a motif of 10 in."""
    made = plan(draft(fabrics=prints(**parts)), with_cures=False)
    own = {"fabric.repeat", "fabric.motif-not-sure", "fabric.motif-cut-off"}
    assert codes == own & {finding.code for finding in made.findings}
    assert center_fabric(made).need_in > 10


@pytest.mark.parametrize("repeat", ["1/64", "1/8", "1/4"])
def test_a_print_too_close_to_find_a_motif_still_plans(draft: Draft, repeat: str) -> None:
    """Any place will do: a center and one repeat, and no error."""
    made = plan(draft(fabrics=prints(repeat=repeat, repeat_across=repeat), how_many=12), with_cures=False)
    assert center_fabric(made).need_in >= 10


def test_columns_much_closer_than_windows_plan_as_some_of_them(draft: Draft) -> None:
    """Columns every 1/16 in, repeat 12: three centers of 10 in surely lie side by side, so one level does."""
    made = plan(draft(fabrics=prints(repeat_across="1/16"), how_many=3), with_cures=False)
    assert 22 + 1 == center_fabric(made).need_in


def test_very_many_centers_are_planned_at_once(draft: Draft) -> None:
    """200 centers, two surely side by side: four lengths of 24 levels, 10 + 24 x 12, and one of four levels."""
    project = draft(fabrics=prints(repeat_across="12"))
    need = motif_need(project, effective(project), "Plain", Window(10, 10), 200)
    assert need is not None
    assert 4 * (10 + 24 * 12) + (10 + 4 * 12) == need.used_in


def test_a_block_that_is_cut_lower_does_not_pass_the_checker(draft: Draft) -> None:
    """34 in for four windows: a row of 30 in, or two rows of two, are told."""
    made = plan(draft(fabrics=prints(repeat_across="12"), how_many=4), with_cures=False)
    found = center_fabric(made)
    fabric, pieces = made.project.fabrics[0], made.pieces_by_fabric["Plain"]
    (row,) = found.rows
    half = replace(row, pieces=row.pieces[:2], stacks=row.stacks[:1], height=17)
    for rows in ((replace(row, height=30),), (half, half)):
        faults = verify_fabric_plan(replace(found, rows=rows), fabric, pieces, made.numbers, made.project.working)
        assert any("windows from" in fault for fault in faults)
