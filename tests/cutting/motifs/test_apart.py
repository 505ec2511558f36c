"""Cutting windows apart from edge to edge, and what is left between them."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.cutting.layouts.watch import Watch
from stitchflip.cutting.model import Status
from stitchflip.cutting.motifs import (
    Apart,
    Box,
    Counting,
    Motif,
    MotifPlan,
    Place,
    Repeat,
    Start,
    Window,
    cut_apart,
    plan_motifs,
)
from stitchflip.cutting.motifs.holes import from_holes
from stitchflip.cutting.rows import Rectangle
from tests.twins import motifs as twin

SMALL = st.integers(2, 9)


def at(*centers: tuple[float, float]) -> list[Place]:
    """Windows at these places, whatever the print."""
    return [Place(x, y, 0, 0, 0) for x, y in centers]


def followed(apart: Apart, wide: float, long: float) -> list[Box]:
    """The pieces one has after making every cut in order, each from edge to edge of a piece that is there."""
    pieces = [Box(0.0, 0.0, wide, long)]
    for cut in apart.cuts:
        pieces.remove(cut.piece)
        box = cut.piece
        if cut.way == "across":
            assert box.low < cut.at < box.high
            pieces += [Box(box.left, box.low, box.right, cut.at), Box(box.left, cut.at, box.right, box.high)]
        else:
            assert box.left < cut.at < box.right
            pieces += [Box(box.left, box.low, cut.at, box.high), Box(cut.at, box.low, box.right, box.high)]
    return pieces


def windows_hold(plan: MotifPlan) -> None:
    """Windows are whole and free of one another, each in the block that is cut for it, and every cut can be made."""
    degrees = 45 if plan.window.on_point else 0
    shapes = [twin.corners((w.x, w.y), plan.window.wide, plan.window.long, degrees) for w in plan.windows]
    assert all(twin.whole(shape, plan.wide, plan.long) for shape in shapes)
    assert not any(twin.overlap(one, other) for n, one in enumerate(shapes) for other in shapes[:n])
    pieces = followed(plan.apart, plan.wide, plan.long)
    blocks = [block.box for block in plan.apart.blocks]
    order = [(p.left, p.low, p.right, p.high) for p in pieces]
    assert sorted(order) == sorted((b.left, b.low, b.right, b.high) for b in [*blocks, *plan.apart.leftovers])
    for block in plan.apart.blocks:
        for number in block.windows:
            for x, y in shapes[number]:
                assert block.box.left - 1e-5 < x < block.box.right + 1e-5
                assert block.box.low - 1e-5 < y < block.box.high + 1e-5


@given(SMALL, SMALL, SMALL, SMALL, st.booleans(), st.booleans())
@settings(max_examples=25, deadline=None)
def test_every_plan_can_be_cut_as_it_says(
    along: int,
    across: int,
    wide: int,
    long: int,
    half_drop: bool,  # noqa: FBT001  drawn
    on_point: bool,  # noqa: FBT001  drawn
) -> None:
    """Any print, any window: cuts follow one another, leftovers and windows make up the fabric."""
    repeat = Repeat(along, across, half_drop, (Motif(0.5, 0.5), Motif(across / 2, along / 3)))
    counting = Counting(repeat, Window(wide, long, 0.25, on_point), 15)
    plan = plan_motifs(counting, 16)
    windows_hold(plan)
    assert plan.count.surely == len(plan.windows) <= plan.bound
    assert plan.in_rows <= len(plan.windows)


def test_places_are_told_from_the_first_window_in_repeats() -> None:
    """Motifs 9 by 9, windows 4 1/2, five wanted: four in the first row of 40 in, the fifth one repeat on."""
    plan = plan_motifs(Counting(Repeat(9, 9), Window(4.5, 4.5), 40, Start(0.0, 0.0)), 36, 5)
    told = [(w.number, w.across_in, w.along_in, w.columns, w.repeats) for w in plan.windows]
    assert [(1, 0, 0, 0, 0), (2, 9, 0, 1, 0), (3, 18, 0, 2, 0), (4, 27, 0, 3, 0), (5, 0, 9, 0, 1)] == told
    assert (4.5, 4.5) == (plan.windows[0].x, plan.windows[0].y)
    assert Status.PROVED is plan.status
    assert not plan.is_example


def test_strips_between_rows_of_windows_stay_whole() -> None:
    """Centers at 4 1/2 and 13 1/2 of 18 in, cut 4 1/2: 2 1/4 below, 4 1/2 between, 2 1/4 above, all 27 wide."""
    plan = plan_motifs(Counting(Repeat(9, 9), Window(4.5, 4.5), 27, Start(0.0, 0.0)), 18)
    assert 6 == len(plan.windows)
    across = [box for box in plan.apart.leftovers if box.wide == 27]
    assert [4.5, 2.25, 2.25] == [box.long for box in across]


def test_the_largest_leftover_comes_first() -> None:
    """One 8 in window 2 in from the left of 40 by 12: the 30 by 12 beside it is kept whole."""
    apart = cut_apart(40, 12, Window(8, 8), at((6, 6)))
    assert Box(10, 0, 40, 12) == apart.leftovers[0]
    assert pytest.approx(40 * 12 - 64) == sum(box.wide * box.long for box in apart.leftovers)


def test_squares_round_a_hole_like_a_mill_do_not_come_apart() -> None:
    """Four 4 in squares, each a step on round a 1 in hole: whatever line is tried runs through one of them."""
    apart = cut_apart(12, 12, Window(4, 4), at((3, 3), (7, 4), (6, 8), (2, 7)))
    assert not apart.comes_apart
    assert [4] == [len(block.windows) for block in apart.blocks]


def test_diamonds_that_mesh_come_apart_by_slanted_cuts() -> None:
    """8 in on point, boxes 11.3 mesh in a half-drop print of 12 by 12; lines at 45 degrees run between them."""
    centers = [(6, 6), (18, 12), (6, 18), (18, 24), (12, 1000)]
    apart = cut_apart(24, 36, Window(8, 8, on_point=True), at(*centers[:4]))
    assert apart.comes_apart
    meshed = cut_apart(24, 36, Window(8.25, 8.25, on_point=True), at((6, 6), (13, 12), (20, 18)))
    assert meshed.comes_apart
    assert [3] == [len(block.windows) for block in meshed.blocks]


def test_a_window_on_point_leaves_four_corner_triangles() -> None:
    """8 1/4 on point: legs 8.25 / root 2 = 5.834; four halves of 17.02 square inches make up box less window."""
    plan = plan_motifs(Counting(Repeat(12), Window(8.25, 8.25, on_point=True), 40), 24)
    legs = plan.corner_legs
    assert pytest.approx((5.8336, 5.8336), abs=1e-4) == legs
    assert pytest.approx(plan.window.box[0] ** 2 - 8.25**2) == legs[0] ** 2 + legs[1] ** 2
    assert (0, 0) == plan_motifs(Counting(Repeat(12), Window(8, 8), 40), 24).corner_legs


def test_other_pieces_come_from_the_holes_or_do_not() -> None:
    """One window 8 in from 40 by 12 leaves 30 by 12: twelve 5 in squares fit, one 12 by 32 does not."""
    apart = cut_apart(40, 12, Window(8, 8), at((6, 6)))
    assert from_holes(apart.leftovers, [Rectangle("square", 5, 5, 12)], Watch(2)).fits is True
    assert from_holes(apart.leftovers, [Rectangle("panel", 32, 12, 1)], Watch(2)).fits is False
    assert from_holes(apart.leftovers, [Rectangle("square", 5, 5, 40)], Watch(2)).fits is False
    assert from_holes(apart.leftovers, (), Watch(2)).fits is True
    assert from_holes((), [Rectangle("square", 5, 5, 1)], Watch(2)).fits is False


def test_what_does_not_go_together_is_noted() -> None:
    """Print closer than the window, window wider than the fabric, motif larger than what shows, columns too far."""

    def codes(repeat: Repeat, window: Window, wide: float = 40) -> set[str]:
        return {note.code.removeprefix("motif.") for note in plan_motifs(Counting(repeat, window, wide), 60).notes}

    assert set() == codes(Repeat(12, 12), Window(8.25, 8.25, on_point=True))
    assert {"repeat-under-window"} == codes(Repeat(6), Window(8.25, 8.25))
    assert {"repeat-under-window"} == codes(Repeat(10), Window(8.25, 8.25, on_point=True))
    assert {"wider-than-fabric"} == codes(Repeat(60), Window(42, 8))
    assert {"cut-off"} == codes(Repeat(12, 12, motifs=(Motif(6, 6, 8, 4),)), Window(8, 8))
    assert {"cut-off"} == codes(Repeat(12, 12, motifs=(Motif(6, 6, 6, 6),)), Window(8.25, 8.25, on_point=True))
    assert {"not-sure"} == codes(Repeat(12, 30), Window(11, 11))
