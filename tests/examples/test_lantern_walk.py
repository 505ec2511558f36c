"""Lantern Walk: a runner on point with pointed ends, 13 x 44 in.

Expected numbers were worked out by hand and with half-planes apart from the code under test: center 8 1/4 cut, so
its raw edges stand 4 1/8 from the mark; seam 1/4; the cover outline passes the trim line by 1/2.
"""

from __future__ import annotations

from math import floor, sqrt

import pytest

from stitchflip.finishing import with_strips
from stitchflip.lengths import parse_length
from stitchflip.piecing.model import EndClass, SewnPiece
from tests.examples.drafts import (
    Edit,
    by_round,
    codes,
    example,
    fabric_plan,
    finding,
    flat,
    loose_ends,
    planned,
    strip_count,
)

NAME = "lantern-walk"
ROOT = sqrt(2)

ROUNDS = [
    # fabric, cut, seam from the mark, raw edge, shortest of the four, cut lengths of the four
    ("Brass", 1.5, 3.875, 5.125, (8.25, 9.25, 9.25, 10.25), (9, 10, 10, 11)),
    ("Inkwell", 2.5, 4.875, 7.125, (10.15, 12.15, 10.15, 12.15), (11, 13, 11, 13)),
    ("Oat", 2, 6.875, 8.625, (10.15, 11.65, 10.15, 11.65), (11, 12.5, 11, 12.5)),
    ("Ember", 2.5, 8.375, 10.625, (10.15, 12.15, 10.15, 12.15), (11, 13, 11, 13)),
    ("Brass", 1.5, 10.375, 11.625, (10.15, 11.15, 10.15, 11.15), (11, 12, 11, 12)),
    ("Inkwell", 2.5, 11.375, 13.625, (10.15, 12.15, 10.15, 12.15), (11, 13, 11, 13)),
    ("Midnight", 3.25, 13.375, 16.375, (10.15, 12.58, 10.15, 12.58), (11, 13.5, 11, 13.5)),
]


ONE_ENDED: tuple[Edit, ...] = (
    ("building.one_ended", "true"),
    ("building.until_covered", "true"),
    ("center.off_center", "[-12, 0]"),
)
"""Only the two right sides, the center near the left end, the rounds repeated until the right end is covered."""


def down16(value: float) -> float:
    """A margin as it is shown: down to 1/16 in."""
    return floor(value * 16 + 1e-6) / 16


def upper_point(*edits: Edit) -> tuple[float, float]:
    """Room from the upper point to the trim edge, and what shows of it after binding."""
    point = max(flat(NAME, *edits).build.points, key=lambda one: one.at[1])
    return point.to_trim_edge, point.shown


@pytest.mark.parametrize("number", range(7))
def test_each_round_as_the_table_has_it(number: int) -> None:
    """Fabric, cut width, seam line, raw edge, shortest lengths and cut lengths of the four strips."""
    fabric, cut, seam, raw_edge, shortest, lengths = ROUNDS[number]
    strips = by_round(flat(NAME))[number]

    assert [fabric] * 4 == [strip.fabric for strip in strips]
    assert [(cut, seam, raw_edge)] * 4 == [(strip.cut_width, strip.seam_at, strip.raw_edge_at) for strip in strips]
    assert pytest.approx(shortest, abs=0.005) == [strip.needed_length for strip in strips]
    assert pytest.approx(lengths) == [strip.cut_length for strip in strips]


def test_each_round_is_sewn_right_pair_first_and_upper_before_lower() -> None:
    """Upper right, lower right, upper left, lower left: 28 strips in 7 rounds."""
    order = ["upper right", "lower right", "upper left", "lower left"]

    assert order * 7 == [strip.side for strip in flat(NAME).build.strips]


def test_shortest_lengths_by_formula() -> None:
    """Root 2 times (6 1/2 + 1/2) + 1/4 = 10.15 between a crossing and the long edge; f more for the second one."""
    second = by_round(flat(NAME))[1]
    expected = ROOT * 7 + 0.25

    assert pytest.approx([expected, expected + 2] * 2) == [strip.needed_length for strip in second]


def test_center_shows_seven_and_three_quarters_with_points_at_5_480() -> None:
    """8 1/4 - 1/2 between the seams; half the diagonal of that is 5.480."""
    made = flat(NAME)
    upper = max(made.build.points, key=lambda one: one.at[1])

    assert pytest.approx(7.75 / 2 * ROOT) == upper.at[1]
    assert pytest.approx(5.480, abs=0.0005) == upper.at[1]
    assert pytest.approx(7.75**2) == sum_of_area(made.build.pieces[0])


def sum_of_area(piece: SewnPiece) -> float:
    """Visible area of a piece."""
    total = 0.0
    for polygon in piece.visible:
        pairs = zip(polygon, polygon[1:] + polygon[:1], strict=True)
        total += sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs) / 2
    return total


def test_point_to_trimmed_edge_is_one_inch_and_shows_three_quarters() -> None:
    """6 1/2 - 5.480 = 1.02; less the binding's seam 0.77, shown as 3/4."""
    to_edge, shown = upper_point()

    assert pytest.approx(1.02, abs=0.0005) == to_edge
    assert (1.0, 0.75) == (down16(to_edge), down16(shown))


def test_ends_are_trimmed_15_556_from_the_mark_and_fabric_reaches_16_3_8() -> None:
    """22 / sqrt 2 square to the slanted edge; the last raw edge stands 13/16 beyond it."""
    slanted = [side for side in flat(NAME).square_up.sides if side.normal[0] and side.normal[1]]

    assert pytest.approx([22 / ROOT] * 4) == [side.distance for side in slanted]
    assert pytest.approx([15.556] * 4, abs=0.0005) == [side.distance for side in slanted]
    assert {16.375} == {strip.raw_edge_at for strip in by_round(flat(NAME))[6]}


def test_folds_may_take_seven_thirty_seconds_of_that_reach() -> None:
    """Seven flips at 1/32 each: the raw edge comes to 16 5/32, still beyond the trim line."""
    made = planned(NAME, ("my_numbers.draw_up", "0 %"))

    assert pytest.approx([16.375 - 7 / 32] * 4) == [strip.raw_edge_at for strip in by_round(made)[6]]


def test_last_strips_show_one_ninety_three() -> None:
    """From the seam at 13 3/8 to the binding's seam at 15.556 - 1/4."""
    strip = by_round(flat(NAME))[6][3]
    nx, ny = strip.normal
    across = [nx * x + ny * y for polygon in strip.shown for x, y in polygon]

    assert pytest.approx(22 / ROOT - 0.25 - 13.375) == max(across) - min(across)
    assert pytest.approx(1.93, abs=0.005) == max(across) - min(across)


def test_area_and_perimeter() -> None:
    """13 x 44 less four corner triangles of 6 1/2: 487.5 in2; two sides of 31 and four of 6.5 sqrt 2: 98.77 round."""
    squared = flat(NAME).square_up

    assert pytest.approx(13 * 44 - 4 * 6.5**2 / 2) == 487.5
    assert pytest.approx(487.5) == squared.area
    assert pytest.approx(62 + 4 * 6.5 * ROOT) == squared.perimeter
    assert pytest.approx(98.77, abs=0.005) == squared.perimeter


def test_widest_unstitched_place_is_the_center() -> None:
    """7 3/4 between opposite seams; the batting allows 8."""
    assert pytest.approx(7.75, abs=1e-6) == flat(NAME).build.widest_gap.diameter
    assert "stitching.wide-gap" not in codes(flat(NAME))


def test_every_seam_end_is_crossed_or_caught() -> None:
    """Ends to lock: none."""
    assert [] == loose_ends(flat(NAME))
    assert [] == loose_ends(planned(NAME))


def test_base_is_fifteen_and_a_half_by_forty_eight() -> None:
    """13 / 0.985 + 2 = 15.20 and 44 / 0.985 + 3 = 47.67, up to the half inch."""
    base = planned(NAME, ("base.wide", None), ("base.long", None)).base

    assert pytest.approx([15.20, 47.67], abs=0.005) == [base.least_high, base.least_wide]
    assert [15.5, 48] == [base.high, base.wide]


def test_strips_across_the_width() -> None:
    """Brass 3, Inkwell 3, Oat 2, Ember 2, Midnight 2 of 40 in, and three of 2 1/2 for the binding."""
    made = flat(NAME)
    widths = {"Brass": 1.5, "Inkwell": 2.5, "Oat": 2, "Ember": 2.5, "Midnight": 3.25}

    assert {"Brass": 3, "Inkwell": 3, "Oat": 2, "Ember": 2, "Midnight": 2} == {
        fabric: strip_count(made, fabric, width) for fabric, width in widths.items()
    }
    assert 3 == strip_count(made, "Midnight", 2.5) == made.binding.strips


def test_fabric_to_buy() -> None:
    """Need 5 1/2, 8 1/2, 5, 6 in: a quarter yard each; Midnight 2 x 3 1/4 + 3 x 2 1/2 + 1 = 15: 1/2 yd."""
    made = flat(NAME)
    fabrics = ["Brass", "Inkwell", "Oat", "Ember", "Midnight"]

    assert [5.5, 8.5, 5, 6, 15] == [fabric_plan(made, fabric).need_in for fabric in fabrics]
    assert [9, 9, 9, 9, 18] == [fabric_plan(made, fabric).buy_in for fabric in fabrics]


def test_midnight_stands_at_a_tipping_point_with_narrower_last_strips() -> None:
    """2 x 2 1/2 + 3 x 2 1/2 + 1 = 13 1/2, exactly 3/8 yd, nothing to spare."""
    midnight = fabric_plan(flat(NAME, ("rounds.6.cut", "2 1/2")), "Midnight")

    assert (13.5, 13.5, 0) == (midnight.need_in, midnight.buy_in, midnight.spare_in)


def test_backing_pieced_across_takes_a_yard() -> None:
    """2 x 15 1/2 + 1 = 32 in, 1 yd; along it would be 48 + 1 = 49 in, 1 3/8 yd."""
    backing = planned(NAME).backing
    along = next(one for one in backing.others if one.widths == 1 and "108" not in one.way)

    assert ("pieced across", 2, 32, 36) == (
        backing.best.way,
        backing.best.widths,
        backing.best.length_in,
        backing.best.buy_in,
    )
    assert (49, 49.5) == (along.length_in, along.buy_in)


def test_binding_needs_111_8_and_three_strips_make_115() -> None:
    """98.77 + 10 + 6 x 1/2; three strips of 40 less two diagonal joins of 2 1/2."""
    binding = planned(NAME).binding

    assert pytest.approx(62 + 26 * ROOT + 10 + 3) == binding.need
    assert pytest.approx(111.8, abs=0.05) == binding.need
    assert (3, 115) == (binding.strips, 3 * 40 - 2 * 2.5)
    assert pytest.approx(115) == binding.made


def test_corners_of_the_binding_are_two_of_90_and_four_of_135() -> None:
    """Two tips and four shoulders; the seam stops b / tan(half the angle) before each."""
    corners = planned(NAME).binding.corners

    assert [90, 90, 135, 135, 135, 135] == sorted(round(corner.angle) for corner in corners)
    assert pytest.approx([0.25, 0.25, 0.1036, 0.1036, 0.1036, 0.1036], abs=0.0001) == sorted(
        (corner.stop_before for corner in corners), reverse=True
    )


def test_seams_thread_and_hours() -> None:
    """302 in of seam, about 30 yd of thread, 2 1/2 to 4 1/2 hours."""
    work = flat(NAME).work

    assert pytest.approx(302, abs=0.5) == work.seams_in
    assert pytest.approx(30, abs=1) == work.thread_yards
    assert (2.5, 4.5) == (work.hours_low, work.hours_high)


def test_thread_is_a_range_and_more_with_the_binding() -> None:
    """302.45 x 2.75 / 36 = 23.1 yd with a lean machine; three rounds of the edge more: 598.8 x 3.5 / 36 = 58.2 yd."""
    work = flat(NAME).work

    assert pytest.approx(23.1, abs=0.05) == work.thread_low_yards
    assert pytest.approx(58.2, abs=0.05) == work.thread_all_yards


# --- variants ----------------------------------------------------------------------------------------------


def test_center_of_nine_leaves_seven_sixteenths_and_shows_three() -> None:
    """6 1/2 - (4 1/2 - 1/4) sqrt 2 = 0.490 to the trimmed edge, 0.240 after binding."""
    to_edge, shown = upper_point(("center.cut", "9"))

    assert pytest.approx(0.490, abs=0.0005) == to_edge
    assert (7 / 16, 3 / 16) == (down16(to_edge), down16(shown))


def test_center_of_nine_is_a_finding() -> None:
    """A point margin under 1/2 in is to be fixed."""
    found = finding(flat(NAME, ("center.cut", "9")), "points.thin")

    assert "fix" == found.severity
    assert "3/16" in found.what


@pytest.mark.parametrize(
    ("edit", "to_edge"),
    [(("center.cut", "8 5/8"), 0.755), (("squared_up.wide", "13 5/8"), 0.802)],
)
def test_cures_of_a_center_of_nine(edit: Edit, to_edge: float) -> None:
    """For 3/4: cut the center 8 5/8 (0.755), or trim 13 5/8 wide instead of 13 (0.802); 1/8 less is not enough."""
    asked = (("center.cut", "9"), ("squared_up.wish_beyond_points", "3/4"))
    cures = finding(flat(NAME, *asked), "points.thin").cures
    offered = {(".".join(map(str, change.path)), change.to) for cure in cures for change in cure.changes}

    assert pytest.approx(to_edge, abs=0.0005) == upper_point(*asked, edit)[0]
    assert edit[0] in {place for place, _ in offered}
    assert any(
        edit[0] == place and text is not None and amount(text) == amount(str(edit[1])) for place, text in offered
    )


def amount(text: str) -> float:
    """A length as a cure writes it."""
    return parse_length(text).inches


def test_one_ended_runner_has_two_ends_to_lock() -> None:
    """Only the right pairs: the first round's outer ends stand 5.66 above and below, with nothing across them."""
    made = flat(NAME, *ONE_ENDED)

    assert pytest.approx([-5.66, 5.66], abs=0.005) == sorted(y for _, y in loose_ends(made))
    assert pytest.approx((3.875 + 4.125) / ROOT) == max(y for _, y in loose_ends(made))


def test_second_round_of_a_one_ended_runner_is_caught_in_the_binding() -> None:
    """Its ends stand at 6.36, beyond the binding's seam at 6 1/4."""
    made = flat(NAME, *ONE_ENDED)
    outer = [end for strip in by_round(made)[1] if strip.seam for end in (strip.seam.start, strip.seam.end)]
    caught = [end.at[1] for end in outer if end.kind is EndClass.CAUGHT]

    assert pytest.approx([-6.36, 6.36], abs=0.005) == sorted(caught)


def test_two_brass_strips_are_enough_when_she_trims_as_she_goes() -> None:
    """Strips 1, 2, 18, 20 from one and 3, 4, 17, 19 from the other, 39.8 in each."""
    as_you_go = (
        ("working", "trim as you go"),
        ("fabrics.0.on_hand", '[{ wide = "40", long = "1 1/2", count = 2, name = "precut strip" }]'),
        ("fabrics.0.only_on_hand", "true"),
    )
    brass = fabric_plan(flat(NAME, *as_you_go), "Brass")
    (strips,) = brass.strip_plans

    assert pytest.approx([39.8, 39.8], abs=0.01) == [one.length - one.rest for one in strips.strips]
    assert {frozenset({"1", "2", "18", "20"}), frozenset({"3", "4", "17", "19"})} == {
        frozenset(label for label, _ in one.pieces) for one in strips.strips
    }
    assert 0 == brass.short_in


def test_two_brass_strips_are_not_enough_when_all_is_cut_first() -> None:
    """With 1/2 in extra on each, three strips of 40."""
    assert 3 == strip_count(flat(NAME), "Brass", 1.5)


@pytest.mark.parametrize(("last", "passes"), [("3 1/4", 5 / 16), ("3 1/2", 9 / 16)])
def test_half_an_inch_behind_after_six_rounds(last: str, passes: float) -> None:
    """At 13 1/8 instead of 13 5/8 the last strips of 3 1/4 still pass the trim line by 5/16; cut 3 1/2 by 9/16."""
    sides = ("upper right", "lower right", "upper left", "lower left")
    readings = ", ".join(f'{{ after = 24, side = "{side}", edge = "13 1/8" }}' for side in sides)
    made = flat(NAME, ("rounds.6.cut", last), ("readings", f"[{readings}]"))
    beyond = [strip.raw_edge_taped - 22 / ROOT for strip in by_round(made)[6]]

    assert [passes] * 4 == [down16(one) for one in beyond]


def test_two_binding_strips_give_77_and_a_half() -> None:
    """2 x 40 - 2 1/2; the missing length takes one piece of 37 in, or two of 19 3/4, each join costing 2 1/2."""
    made = planned(NAME)
    given, added = with_strips(example(NAME), made.binding, 2)

    assert 77.5 == given
    assert (37, 19.75) == (added.one, added.two)
