"""Fabric on hand: straightened, used first, each piece with what it gives and what is left of it."""

from __future__ import annotations

import pytest

from stitchflip.cutting import Piece, Status
from stitchflip.project.model import Working
from tests.cutting.lists import FAT_QUARTER, binding, counts, fabric, plain, planned, strips


@pytest.mark.parametrize(
    ("name", "widths", "used"),
    [
        ("Fog", (3, 2, 2), 7),
        ("Dove", (2.5, 2.5, 2, 2), 9),
        ("Pewter", (3, 3, 2, 2), 10),
        ("Marigold", (1.5,) * 10, 15),
        ("Midnight", (3.75, 3.75, 2.5, 2.5, 2, 2), 16.5),
    ],
)
def test_one_fat_quarter_gives_the_strips_of_a_fabric(name: str, widths: tuple[float, ...], used: float) -> None:
    """Strips along 20 1/2 in, one each; 17 in side by side after straightening; a column 7 1/4 wide is left."""
    pieces = tuple(Piece(str(step), wide, 13.25, step=step) for step, wide in enumerate(widths, 1))
    plan = planned(fabric(name, on_hand=[FAT_QUARTER], only_on_hand=True), pieces)
    (sheet,) = plan.hand_sheets

    assert (used, 17, 7.25, "long") == (sheet.used_in, sheet.usable_stack, sheet.column_left_in, sheet.along)
    assert (0, 0, 0) == (plan.need_in, plan.buy_in, plan.short_in)
    assert sorted(widths) == sorted(width for width, count in sheet.strips for _ in range(count))
    assert {"fat quarter"} == {strip.stock for one in plan.strip_plans for strip in one.strips}


def test_words_say_what_the_quarter_gives() -> None:
    """One phrase with the size as measured, the strips, the room used and the column left."""
    pieces = (Piece("Middle", 3, 13.25), *strips(2, 13.25, 13.25))
    plan = planned(fabric("Fog", on_hand=[FAT_QUARTER], only_on_hand=True), pieces)

    assert [
        (
            "fat quarter (17½ × 20½ in): 3 strips along its 20½ in, 7 in of 17 in used, a column 7¼ in wide is left "
            "(6¾ in once straightened)"
        )
    ] == [plain(text) for text in plan.from_hand]


def test_shelf_that_is_short_says_by_how_much() -> None:
    """Six strips take 16 1/2 of 17 in; the seventh (2 in) is missing and nothing can be bought."""
    pieces = tuple(Piece(str(s), w, 13.25, step=s) for s, w in enumerate((3.75, 3.75, 2.5, 2.5, 2, 2, 2), 1))
    plan = planned(fabric("Midnight", on_hand=[FAT_QUARTER], only_on_hand=True), pieces)

    assert (2, 1, Status.IMPOSSIBLE) == (plan.short_in, len(plan.left_out), plan.status)
    assert "2 in of length are missing" in plain(plan.because)
    assert 0 == plan.buy_in


def test_what_the_shelf_lacks_is_bought() -> None:
    """The same with a shop in reach: one strip of 2 in and 1 in for straightening."""
    pieces = tuple(Piece(str(s), w, 13.25, step=s) for s, w in enumerate((3.75, 3.75, 2.5, 2.5, 2, 2, 2), 1))
    plan = planned(fabric("Midnight", on_hand=[FAT_QUARTER]), pieces)

    assert (3, 9) == (plan.need_in, plan.buy_in)


def test_second_quarter_is_cut_only_when_the_first_is_used_up() -> None:
    """Seven strips of 2 1/2: six from the first quarter (15 of 17 in), one from the second."""
    plan = planned(fabric(on_hand=[{**FAT_QUARTER, "count": 3}], only_on_hand=True), strips(2.5, *[13.25] * 7))

    assert [("fat quarter 1", 15), ("fat quarter 2", 2.5)] == [
        (sheet.name, sheet.used_in) for sheet in plan.hand_sheets
    ]


def test_wide_strips_get_the_room_they_need() -> None:
    """8 + 8 and 9 + 8 in 17 in: two quarters do, whichever widths the list names first."""
    pieces = (*strips(8, 13, 13, 13), *strips(9, 13, first=4))
    plan = planned(fabric(on_hand=[{**FAT_QUARTER, "count": 2}], only_on_hand=True), pieces)

    assert () == plan.left_out


def test_length_off_a_bolt_is_cut_across_its_width() -> None:
    """10 in of a 42 in wide fabric: 1 in for straightening, three strips of 3 in of 42 in."""
    plan = planned(
        fabric(on_hand=[{"name": "cut length", "wide": "42", "long": "10"}], only_on_hand=True), strips(3, 42, 42, 42)
    )
    (sheet,) = plan.hand_sheets

    assert ("wide", 42, 9, 9) == (sheet.along, sheet.usable_length, sheet.usable_stack, sheet.used_in)


def test_precut_strips_serve_their_own_width_only() -> None:
    """2 1/2 in strips give the 2 1/2 in pieces; the 2 in pieces are bought."""
    on_hand = [{"name": "precut strip", "wide": "2 1/2", "long": "40", "count": 2}]
    plan = planned(fabric(on_hand=on_hand), (*strips(2.5, *[13] * 6), *strips(2, 13, first=7)))

    assert ["precut strip"] * 2 == [strip.stock for strip in plan.strip_plans[0].strips]
    assert 2 == plan.used_in
    assert ("precut strip: 2",) == plan.from_hand


def test_binding_takes_whole_precut_strips() -> None:
    """Three whole strips wanted, two on hand: one is bought."""
    on_hand = [{"name": "precut strip", "wide": "2 1/2", "long": "40", "count": 2}]
    plan = planned(fabric(on_hand=on_hand), (binding(2.5, 40, 3),))

    assert (2.5, 3) == (plan.used_in, len(plan.strip_plans[0].strips))
    assert plan.strip_plans[0].is_whole


def test_forty_strips_give_the_units_with_nothing_over() -> None:
    """48 pieces of 13 in take sixteen of forty precut strips, three from each."""
    on_hand = [{"name": "precut strip", "wide": "2 1/2", "long": "40", "count": 40}]
    plan = planned(fabric(on_hand=on_hand, only_on_hand=True), strips(2.5, 13, count=48))

    assert ({2.5: 16}, ("precut strip: 16",)) == (counts(plan), plan.from_hand)


def test_center_comes_from_the_shelf_before_the_strips() -> None:
    """A center 8 × 8 and strips from one quarter: 8 in for the center's row, 9 in are left for strips."""
    pieces = (Piece("Center", 8, 8, kind="rectangle"), *strips(3, 13, 13, 13))
    plan = planned(fabric(on_hand=[FAT_QUARTER], only_on_hand=True), pieces)
    (sheet,) = plan.hand_sheets

    assert ([8], 17) == ([row.height for row in sheet.rows], sheet.used_in)


def test_one_way_quarter_is_cut_across() -> None:
    """The print must stand upright: strips run across the 17 1/2 in, not along the 20 1/2."""
    plan = planned(fabric(on_hand=[FAT_QUARTER], only_on_hand=True, one_way=True), strips(2, 13))
    (sheet,) = plan.hand_sheets

    assert ("wide", 17, 20) == (sheet.along, sheet.usable_length, sheet.usable_stack)


def test_upright_rectangle_stays_upright_on_a_quarter_cut_along_its_length() -> None:
    """A piece 6 wide and 9 long that must not turn takes 9 in along and 6 in across the quarter."""
    pieces = (Piece("Mat", 6, 9, kind="rectangle", can_turn=False), *strips(3, 13))
    plan = planned(fabric(on_hand=[FAT_QUARTER], only_on_hand=True), pieces)
    (row,) = plan.hand_sheets[0].rows

    assert (6, (("Mat", 9),)) == (row.height, row.pieces)


def test_trimming_as_she_goes_starts_with_the_strips_on_hand() -> None:
    """The precut strip is opened first, then the bolt."""
    on_hand = [{"name": "precut strip", "wide": "2 1/2", "long": "24"}]
    pieces = tuple(
        Piece(str(s), 2.5, long + 0.5, shortest=long, step=s, cut_first=False) for s, long in enumerate((10, 12, 20), 1)
    )
    plan = planned(fabric(on_hand=on_hand), pieces, working=Working.TRIM_AS_YOU_GO)

    assert ["precut strip", "width of fabric"] == [strip.stock for strip in plan.strip_plans[0].strips]


def test_pieces_of_one_name_are_told_apart() -> None:
    """Two kinds of fat quarters are told by their sizes, so that a maker finds each on her shelf."""
    on_hand = [FAT_QUARTER, {"name": "fat quarter", "wide": "18", "long": "21"}]
    plan = planned(fabric(on_hand=on_hand, only_on_hand=True), strips(4, *[13] * 8))

    names = [sheet.name.replace("\u202f", " ") for sheet in plan.hand_sheets]
    assert ["fat quarter 17½ × 20½ in", "fat quarter 18 × 21 in"] == names


def test_strips_longer_than_the_fabric_is_wide_are_cut_along_it_when_the_long_one_on_hand_is_not_enough() -> None:
    """One strip of 50 in gives one of two strips of 45 in; both come along new fabric 40 in wide: 45 + 1 = 46 in."""
    asked = fabric("Larch", on_hand=[{"name": "precut strip", "wide": "2 1/2", "long": "50"}])
    two = planned(asked, strips(2.5, 45, 45))
    one = planned(asked, strips(2.5, 45))

    assert ((), 46, 49.5) == (two.left_out, two.need_in, two.buy_in)
    assert ((), 0, 0) == (one.left_out, one.need_in, one.buy_in)
