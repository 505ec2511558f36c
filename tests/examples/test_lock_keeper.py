"""Lock Keeper: five blocks on point, framed by covered strips, worked out by hand."""

from __future__ import annotations

from collections import Counter
from math import sqrt

import pytest

from stitchflip.finishing.quilt_model import QuiltPlan
from stitchflip.planning.model import Plan
from tests.examples.drafts import planned

LOCK = "lock-keeper"


def quilt_of(made: Plan) -> QuiltPlan:
    """The joined blocks of a plan."""
    assert made.quilt is not None
    return made.quilt


def test_strips_frame_every_block() -> None:
    """Eight short joins of 8 1/2 and eight pieces of the long ones, 1 3/4 wide; behind, long strips whole.

    A long join crosses its blocks and two ends: the middle two have three block sides each and so two corner squares
    between them and two at their ends, the outer two one block side and two ends: 2 x 2 and 4 x 2.
    """
    counted = Counter({one.name: 0 for one in quilt_of(planned(LOCK)).strips})
    for one in quilt_of(planned(LOCK)).strips:
        counted[one.name] += one.count
    assert {
        "strip between blocks, front": 8,
        "strip between blocks, back": 8,
        "strip between diagonal rows, front": 8,
        "strip between diagonal rows, back": 4,
        "corner square": 4,
        "corner square at an end": 8,
    } == counted
    assert {1.75} == {one.cut for one in quilt_of(planned(LOCK)).strips if one.name.startswith("strip")}


def test_lock_keeper_is_framed_on_point() -> None:
    """Blocks finish 8, strips 1: root 2 x (2 x 9 + 1) + 1/2, and a border of 2 1/2 all round: 32 3/8."""
    made = quilt_of(planned(LOCK))
    assert pytest.approx(sqrt(2) * 19 + 0.5 + 5) == made.wide == made.high
    assert [2, 1, 2] == [sum(one.row == row for one in made.blocks) for row in range(3)]


def test_lock_keeper_triangles() -> None:
    """1.414 x 9 + 1 1/4 = 13.976, up to 14; 10 / 1.414 + 7/8 = 7.947, up to 8; one square and two."""
    triangles = quilt_of(planned(LOCK)).triangles
    assert triangles is not None
    assert (4, 1, 14, 2, 8) == (
        triangles.side_count,
        triangles.side_squares,
        triangles.side_square,
        triangles.corner_squares,
        triangles.corner_square,
    )


def test_lock_keeper_squares_are_cut_larger_by_what_quilting_draws_in() -> None:
    """14 / 0.985 = 14.213, up to 14 1/4; 8 / 0.985 = 8.122, up to 8 1/8."""
    triangles = quilt_of(planned(LOCK)).triangles
    assert triangles is not None
    assert (14.25, 8.125) == (triangles.side_cut, triangles.corner_cut)
    assert {"Side triangles": 14.25, "Corner triangles": 8.125} == {
        piece.name: piece.wide for piece in planned(LOCK).pieces if piece.name.endswith("triangles")
    }


def test_lock_keeper_border_is_cut_to_the_quilt() -> None:
    """Sides as long as the 27 3/8 in inside, ends as the whole."""
    (border,) = quilt_of(planned(LOCK)).borders
    assert pytest.approx((sqrt(2) * 19 + 0.5, sqrt(2) * 19 + 5.5)) == (border.sides_long, border.ends_long)


def test_lock_keeper_leaves_nothing_to_mend() -> None:
    """Only things that are good to know."""
    assert {"note"} >= {one.severity.value for one in planned(LOCK).findings}


def test_what_lies_under_triangles_and_borders_is_bought_too() -> None:
    """Bases of 15 1/2 (14 1/4 + 1) and 9 1/2 (8 1/8 + 1), border batting 3 less two seams, backing 3 wide."""
    under = {one.name: (one.count, one.batting, one.backing) for one in quilt_of(planned(LOCK)).under}
    assert (1, (15.5, 15.5), (15.5, 15.5)) == under["side triangles"]
    assert (2, (9.5, 9.5), (9.5, 9.5)) == under["corner triangles"]
    count, batting, backing = under["sides of the border"]
    assert backing is not None
    assert (2, 2.5, 3) == (count, batting[0], backing[0])
    assert (8, 0.5) == (under["filler below each strip between blocks"][0], 2 * 0.75 - 1)


def test_backing_is_one_length_for_everything() -> None:
    """Two rows of 10 for five blocks; a row of 15 1/2 with both 9 1/2; sleeve and label in 8 1/2; four strips of 3.

    20 + 15 1/2 + 8 1/2 + 12 and 1 in for straightening are 57 in: 1 5/8 yd.
    """
    best = planned(LOCK).backing.best
    assert pytest.approx((57, 1.625 * 36)) == (best.length_in, best.buy_in)


def test_batting_comes_from_one_packaged_size() -> None:
    """The smallest package gives all pieces in rows: 36 x 45 holds 4 rows of 10 and more beside."""
    assert planned(LOCK).batting.packaged.startswith("craft")
