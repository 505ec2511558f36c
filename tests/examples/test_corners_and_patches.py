"""Four examples: lines of a foundation, rounds with corner squares, folded corners, and a piece somebody began."""

from __future__ import annotations

from collections import Counter
from math import sqrt

import pytest

from stitchflip.cli.quilt_words import line_rows
from stitchflip.pictures.drawing import piece_name
from stitchflip.piecing.ways.foundation import drawn_patches
from stitchflip.planning.model import Severity
from tests.examples.drafts import fabric_plan, finding, flat, loose_ends, planned
from tests.twins.script import area_of

BOOTH, SHOP, BOAT, FOUND = "ticket-booth", "corner-shop", "paper-boat", "found-in-a-box"


@pytest.mark.parametrize("name", [BOOTH, SHOP, BOAT, FOUND])
def test_each_can_be_made_as_it_is(name: str) -> None:
    """No stop, nothing to fix, nothing bare inside the trim line, no end to lock."""
    made = planned(name)

    assert [] == [one.code for one in made.findings if one.severity is not Severity.NOTE]
    assert [] == [spot for spot in made.build.bare if spot.grade != "note"]
    assert [] == loose_ends(made)


# --- Ticket Booth -----------------------------------------------------------------------------------------------


def test_booth_has_seven_patches_on_six_lines() -> None:
    """Patch 1 and one for each line, in the order of their numbers."""
    build = flat(BOOTH).build
    fabrics = ["Lit Window", "Painted Wood", "Painted Wood", "Tar Roof", "Dusk", "Dusk", "Sawdust"]

    assert fabrics == [piece.fabric for piece in build.pieces]
    assert [f"patch {number}" for number in range(2, 8)] == [strip.side for strip in build.strips]


def test_peak_of_the_roof_is_drawn_left_and_stands_right() -> None:
    """The two slopes meet at (-1, 6) on the back and at (1, 6) on the front."""
    made = flat(BOOTH)
    drawn = drawn_patches(made.project, made.numbers)
    front = made.build.pieces[4].visible[0]

    assert (1.0, 6.0) in {(round(x, 6), round(y, 6)) for x, y in made.build.pieces[3].visible[0]}
    assert drawn[4].line is not None
    assert (-1.0, 6.0) in {(round(x, 6), round(y, 6)) for x, y in drawn[5].line or ()} | {
        (round(x, 6), round(y, 6)) for x, y in drawn[4].line
    }
    assert sum(x for x, _ in front) < 0
    assert "mirrored on purpose" in finding(made, "foundation.mirror").what


def test_ground_is_cut_an_inch_larger_than_it_shows_or_as_it_must_reach() -> None:
    """From -4 3/4 to -6 1/2 it shows 1 3/4 of 10: 2 3/4 x 11, and it must reach 1/2 past both ends: 11."""
    ground = flat(BOOTH).build.strips[-1]

    assert (2.75, 11.0) == (ground.cut_width, ground.cut_length)


def test_window_leans_with_its_left_wall() -> None:
    """Between y = -4 3/4 and 1 3/4 it is 6 1/2 high; its left edge, from -2.75 at 2 to -2.25 at -5, leans by 1/14.

    At -4 3/4 the edge lies at -2.25 - 0.25 / 14, at 1 3/4 at -2.75 + 0.25 / 14; the right edge at 3: mean width
    (5.267857 + 5.732143) / 2 = 5 1/2, area 35 3/4.
    """
    (window,) = flat(BOOTH).build.pieces[0].visible

    assert pytest.approx(35.75) == area_of(window)


def test_booth_lines_and_list_have_the_numbers_of_the_patches() -> None:
    """Lines 2 to 7 on the screen, patches 1 to 7 in the cutting list."""
    made = flat(BOOTH)

    assert [str(number) for number in range(2, 8)] == [row[0] for row in line_rows(made, made.kinds[0])]
    assert [str(number) for number in range(1, 8)] == sorted(
        piece.name for piece in made.pieces if piece.kind == "rectangle"
    )


# --- Corner Shop ------------------------------------------------------------------------------------------------


def test_shop_logs_of_a_round_are_all_cut_alike() -> None:
    """Center 5 1/2; strips 2 1/4 add 1 3/4 on both sides: 5 1/2, then 9, then 12 1/2."""
    made = flat(SHOP)
    logs: dict[int, set[float]] = {}
    for strip in made.build.strips:
        middle = strip.sections[1].cut_length if strip.sections else strip.cut_length
        logs.setdefault(strip.round, set()).add(round(middle, 6))

    assert {1: {5.5}, 2: {9.0}, 3: {12.5}} == logs


def test_shop_has_twelve_corner_squares() -> None:
    """Eight of 2 1/4 and, outside, four of 3."""
    squares = [strip.sections[end] for strip in flat(SHOP).build.strips if strip.sections for end in (0, 2)]

    assert [("Tea Tin", 2.25)] * 8 + [("Cocoa Tin", 3.0)] * 4 == [(one.fabric, one.cut_length) for one in squares]
    assert 4 == sum(piece.count for piece in flat(SHOP).pieces_by_fabric["Cocoa Tin"] if piece.kind == "strip")


# --- Paper Boat -------------------------------------------------------------------------------------------------


def test_boat_shows_its_corners_less_what_is_trimmed() -> None:
    """The raw corner lies (3/4, 3/4) outside the trim edge, so a square of 4 shows legs of 4 - 2 x 3/4 = 2 1/2."""
    hull, sky = [flat(BOAT).build.strips[step].visible[0] for step in (2, 0)]

    assert pytest.approx(2.5**2 / 2) == area_of(hull)
    assert pytest.approx(1.25**2 / 2) == area_of(sky)


def test_boat_takes_sixteen_squares_for_four() -> None:
    """Two of sky 2 3/4 and two of water 4 for each."""
    squares: Counter[tuple[float, float]] = Counter()
    for piece in flat(BOAT).pieces:
        if piece.step:
            squares[piece.wide, piece.long] += piece.count

    assert {(2.75, 2.75): 8, (4.0, 4.0): 8} == squares


def test_boat_seams_run_from_corner_to_corner_of_their_squares() -> None:
    """A square of 4 has a diagonal of 4 root 2."""
    seam = flat(BOAT).build.strips[2]

    assert pytest.approx(4 * sqrt(2)) == seam.full_length


# --- Found in a Box ---------------------------------------------------------------------------------------------


def test_box_strips_take_the_widths_of_their_pieces() -> None:
    """Rose above and below from one strip of 27, then both of 24 at the sides; check 3 wide, then 2 3/4."""
    strips = planned(FOUND).build.strips

    assert [2.5, 2.5, 2.25, 2.25, 3.0, 3.0, 2.75, 2.75] == [strip.cut_width for strip in strips]
    assert ["Faded Rose"] * 4 + ["Kitchen Check"] * 4 == [strip.fabric for strip in strips]


def test_box_buys_nothing_but_the_binding() -> None:
    """Every strip comes from a piece on hand, and nothing is cut of what was found."""
    made = planned(FOUND)

    assert {"Faded Rose", "Kitchen Check", "Walnut"} == set(made.pieces_by_fabric)
    assert [0, 0] == [fabric_plan(made, name).buy_in for name in ("Faded Rose", "Kitchen Check")]
    assert [0, 0] == [fabric_plan(made, name).short_in for name in ("Faded Rose", "Kitchen Check")]


def test_box_piece_is_called_half_done_in_pictures() -> None:
    """It is no center that somebody cuts."""
    build = planned(FOUND).build

    assert "half-done piece" == piece_name(build, build.pieces[0])
    assert "center" == piece_name(planned(BOAT).build, planned(BOAT).build.pieces[0])


def test_box_is_as_large_as_the_tape_reads_it() -> None:
    """12 1/4 x 17 1/2 on the tape lie drawn out by 1 ÷ 0.985 on the base."""
    (left, low), _, (right, high), _ = planned(FOUND).build.pieces[0].opened

    assert (12.25 / 0.985, 17.5 / 0.985) == pytest.approx((right - left, high - low))
