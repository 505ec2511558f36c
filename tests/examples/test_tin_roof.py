"""Rain on a Tin Roof: rows from the middle out, 12 x 56 in, from seven fat quarters."""

from __future__ import annotations

import pytest

from tests.examples.drafts import Edit, codes, fabric_plan, finding, flat, loose_ends, planned, strip_count

NAME = "tin-roof"
CUTS = [3, 2, 1.5, 2.5, 1.5, 2, 3, 1.5, 2, 2.5, 1.5, 2, 2.5, 1.5, 2, 2.5, 2, 3.75]
LADDER = [1.5, 3, 4, 6, 7, 8.5, 11, 12, 13.5, 15.5, 16.5, 18, 20, 21, 22.5, 24.5, 26, 29.25]
SHOWS = [2.5, 1.5, 1, 2, 1, 1.5, 2.5, 1, 1.5, 2, 1, 1.5, 2, 1, 1.5, 2, 1.5, 2]
LAST_AT_THREE: Edit = ("rounds.17.cut", "3")


def test_thirty_five_strips_all_cut_thirteen_and_a_quarter() -> None:
    """The middle strip and seventeen on each side; the shortest that reaches is 12 + 2 x 1/2 = 13."""
    pieces = flat(NAME).build.pieces

    assert 35 == len(pieces)
    assert {13.0} == {round(piece.needed_length, 6) for piece in pieces}
    assert {13.25} == {piece.cut_length for piece in pieces}


def test_where_you_should_be_after_each_strip() -> None:
    """Raw edge from the middle line: 1 1/2, then each cut width less 1/2 more."""
    by_hand = [1.5]
    for cut in CUTS[1:]:
        by_hand.append(by_hand[-1] + cut - 0.5)
    edges = [flat(NAME).build.pieces[0].raw_edge_at, *(strip.raw_edge_at for strip in flat(NAME).build.strips[::2])]

    assert LADDER == by_hand
    assert pytest.approx(LADDER) == edges
    assert pytest.approx(LADDER[1:]) == [strip.raw_edge_at for strip in flat(NAME).build.strips[1::2]]


def test_what_each_strip_shows() -> None:
    """Between neighboring seams, the last to the binding's seam; together 2 x 26 1/2 + 2 1/2 = 55 1/2."""
    build = flat(NAME).build
    shown = [sum_of_width(build.pieces[0].shown), *(sum_of_width(strip.shown) for strip in build.strips[::2])]

    assert pytest.approx(SHOWS) == shown
    assert 55.5 == SHOWS[0] + 2 * sum(SHOWS[1:])


def sum_of_width(polygons: tuple[tuple[tuple[float, float], ...], ...]) -> float:
    """Extent of a patch along the runner."""
    xs = [x for polygon in polygons for x, _ in polygon]
    return max(xs) - min(xs)


def last_edge(*edits: Edit) -> float:
    """Raw edge of the last strip, flat."""
    return planned(NAME, ("my_numbers.draw_up", "0 %"), *edits).build.strips[-1].raw_edge_at


def test_folds_of_a_thirty_second_leave_28_72() -> None:
    """29 1/4 - 17 / 32 = 28.72: the trim line stands at 28, the reach of 1/2 is kept."""
    assert pytest.approx(28.72, abs=0.005) == last_edge()
    assert pytest.approx(29.25 - 17 / 32) == last_edge()
    assert last_edge() - 28 >= 0.5


def test_folds_of_a_sixteenth_still_reach_the_trim_line() -> None:
    """29 1/4 - 17 / 16 = 28.19."""
    assert pytest.approx(29.25 - 17 / 16) == last_edge(("my_numbers.fold_loss", "1/16"))
    assert last_edge(("my_numbers.fold_loss", "1/16")) > 28


def test_last_strip_of_three_reaches_on_paper_and_not_on_the_table() -> None:
    """28 1/2 without folds, 27.97 with them: batting shows."""
    assert pytest.approx(28.5) == flat(NAME, LAST_AT_THREE).build.strips[-1].raw_edge_at
    assert pytest.approx(27.97, abs=0.005) == last_edge(LAST_AT_THREE)

    no_draw_up = planned(NAME, LAST_AT_THREE, ("my_numbers.draw_up", "0 %"))
    assert {"fix"} == {spot.grade for spot in no_draw_up.build.bare}
    assert codes(no_draw_up) & {"coverage.batting-shows", "coverage.under-binding"}


def test_last_strip_of_three_and_three_quarters_covers() -> None:
    """Nothing inside the trim line stays bare, folds and draw-up counted."""
    assert set() == {spot.grade for spot in planned(NAME).build.bare} - {"note"}


def test_base_is_fourteen_and_a_half_by_sixty() -> None:
    """12 / 0.985 + 2 = 14.18 and 56 / 0.985 + 3 = 59.85, up to the half inch."""
    base = planned(NAME, ("base.wide", None), ("base.long", None)).base

    assert pytest.approx([14.18, 59.85], abs=0.005) == [base.least_high, base.least_wide]
    assert (14.5, 60) == (base.high, base.wide)


@pytest.mark.parametrize(
    ("fabric", "used"),
    [("Fog", 7), ("Dove", 9), ("Pewter", 10), ("Slate", 9), ("Thunder", 9), ("Midnight", 16.5), ("Marigold", 15)],
)
def test_one_quarter_of_each_fabric_is_enough(fabric: str, used: float) -> None:
    """Widths used of 17 1/2 (17 after straightening), one strip each along the 20 1/2; nothing is bought."""
    made = fabric_plan(flat(NAME), fabric)
    strips = [one for plan in made.strip_plans for one in plan.strips]

    assert used == sum(one.width for one in strips) <= 17
    assert {1} == {len(one.pieces) for one in strips}
    assert {"fat quarter"} == {one.stock for one in strips}
    assert (0, 0) == (made.buy_in, made.short_in)


def test_a_column_is_left_of_each_quarter() -> None:
    """20 1/2 - 13 1/4 = 7 1/4, of which straightening takes 1/2."""
    rests = {one.rest + 0.5 for one in fabric_plan(flat(NAME), "Dove").strip_plans[0].strips}

    assert {7.25} == rests


def test_binding_by_hand() -> None:
    """136 + 12 = 148; four strips of 40 at 2 1/4 give 153 1/4; 9 + 1 in is 3/8 yd."""
    made = planned(NAME)

    assert (148, 153.25, 4) == (made.binding.need, made.binding.made, made.binding.strips)
    assert 4 == strip_count(made, "Gutter Blue", 2.25)
    assert 13.5 == fabric_plan(made, "Gutter Blue").buy_in


def test_backing_pieced_across() -> None:
    """2 x 14 1/2 + 1 = 30 in, 7/8 yd."""
    best = planned(NAME).backing.best

    assert ("pieced across", 30, 31.5) == (best.way, best.length_in, best.buy_in)


def test_batting_from_two_leftovers_joined_off_the_middle() -> None:
    """34 and 26 in butted make 60; the join stands 34 - 30 = 4 in from the middle line."""
    batting = planned(NAME).batting

    assert batting.join_at is not None
    assert 4 == abs(batting.join_at)
    assert 0 == batting.short


def test_seams_thread_and_hours() -> None:
    """34 seams of 13 in are 442; about 43 yd of thread; 4 1/2 to 8 hours."""
    work = flat(NAME).work

    assert 442 == 34 * 13
    assert pytest.approx(442) == work.seams_in
    assert pytest.approx(43, abs=0.5) == work.thread_yards
    assert (4.5, 8) == (work.hours_low, work.hours_high)


def test_every_end_is_caught_in_the_binding() -> None:
    """Rows run from long edge to long edge."""
    assert [] == loose_ends(planned(NAME))


def test_half_an_inch_wider_costs_a_piece_per_width() -> None:
    """At 12 1/2 wide pieces are 13 3/4: two per 40 in width instead of three; a quarter still gives one per length."""
    wider = flat(NAME, ("squared_up.wide", "12 1/2"), ("base.wide", "15"))
    bought: tuple[Edit, ...] = (("fabrics.6.on_hand", "[]"), ("fabrics.6.only_on_hand", "false"))
    narrow = fabric_plan(flat(NAME, *bought), "Midnight")
    wide = fabric_plan(flat(NAME, *bought, ("squared_up.wide", "12 1/2"), ("base.wide", "15")), "Midnight")

    assert {13.75} == {strip.cut_length for strip in wider.build.strips}
    assert [2, 2, 2] == [one.strips[0].length // 13.75 for one in wide.strip_plans]
    assert [3, 3, 3] == [one.strips[0].length // 13.25 for one in narrow.strip_plans]
    assert {0} == {fabric_plan(wider, fabric).short_in for fabric in ("Fog", "Midnight", "Marigold")}


def test_midnight_lies_beside_itself() -> None:
    """Three Midnight strips in a row are said once."""
    assert "Midnight" in finding(flat(NAME), "strip.touches-itself").what
