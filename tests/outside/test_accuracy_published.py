"""Published sums about errors that add up, blocks that do not close, and squaring up, against ours.

Each value is as printed on the page named beside it (read in stored copies); where only one of two readings of a page
can be meant, both are worked out.
"""

from __future__ import annotations

from math import hypot

import pytest

from stitchflip.finishing import plan_square_up
from stitchflip.finishing.joined import row_length
from stitchflip.finishing.model import SquareUpPlan
from stitchflip.piecing import trim_polygon
from tests.outside.blocks import row, width_of
from tests.twins.table import house, project, rounds, square, trim

# --- errors that add up ------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("error", "seams", "off"), [(1 / 32, 16, 0.5), (1 / 8, 4, 0.5)])
def test_an_error_in_each_cut_counts_once_a_seam(error: float, seams: int, off: float) -> None:
    """1/32 at 16 seams, or 1/8 at four, is half an inch: each strip sewn on brings its own.

    Homeschool Quilting, Block Construction notes, http://homeschoolquilting.com/block_construction.html and Quilted
    Connections, What Is a Scant 1/4 in Seam?, https://www.quilted-connections.com/blogs/news/what-is-a-scant-1-4-seam
    """
    good, wide = row(2.5, *[2.5] * seams), row(2.5, *[2.5 + error] * seams)

    assert pytest.approx(off) == width_of(wide) - width_of(good)


def test_an_error_in_the_seam_line_counts_twice() -> None:
    """1/8 too deep at four seams: both patches lose it, an inch in all (own derivation from the second page)."""
    assert pytest.approx(1) == width_of(row(*[2.5] * 5)) - width_of(row(*[2.5] * 5, seam=0.25 + 1 / 8))


def test_blocks_an_eighth_too_large_make_a_row_an_inch_longer() -> None:
    """Eight of them (comment on a page of 2006).

    How to square it off, http://quilt-o-mania.blogspot.com/2006/07/how-to-square-it-off.html
    """
    assert pytest.approx(1) == row_length([12.625] * 8, 0, 0.25) - row_length([12.5] * 8, 0, 0.25)


# --- rows that do not close ----------------------------------------------------------------------------------------


def test_one_piece_closes_a_row_that_is_half_an_inch_too_long() -> None:
    """4 3/4 + 3 1/2 + 3 3/4 = 12 is to meet 11 1/2: the left part is to be cut 4 1/2, not 5.

    Between their seams a left part cut 5, a middle cut 4 and a right part cut 4 measure so.
    GHI block, 2007, https://ragdollquilting.blogspot.com/2007/03/ghi-block.html
    """
    assert [12, 11.5] == [width_of(row(5, 4, 4)), width_of(row(4.5, 4, 4))]


def test_a_repair_of_a_strip_set_costs_a_row_of_six_three_quarters() -> None:
    """Trimming sets of 8 1/2 to 8 3/8 makes squares finish 7 7/8: six in a row lose 6 x 1/8.

    Cutting squares from strip sets, https://www.generations-quilt-patterns.com/cutting-squares-from-strip-sets.html
    """
    assert pytest.approx(0.75) == row_length([8.5] * 6, 0, 0.25) - row_length([8.375] * 6, 0, 0.25)


# --- squaring up -----------------------------------------------------------------------------------------------------


def squared(wide: float, long: float) -> SquareUpPlan:
    """The numbers for squaring up a rectangle."""
    piece = project(squared_up=trim(wide, long), center=square(4), rounds=rounds(2.5))
    return plan_square_up(piece, house(), trim_polygon(piece, house()), ())


@pytest.mark.parametrize(("wide", "long"), [(12, 16), (9.5, 9.5), (13, 44)])
def test_equal_diagonals_mean_square_corners(wide: float, long: float) -> None:
    """Both diagonals are told, and they are alike.

    Oakville Quilters Guild, Squaring Up, http://oakvillequiltersguild.ca/tips_and_tutorials_page/squaring_up.html
    """
    assert pytest.approx([hypot(wide, long)] * 2) == squared(wide, long).diagonals


def test_a_little_is_taken_from_all_four_sides() -> None:
    """Not all from two: every side stands half the size from the center mark.

    Squaring up blocks answer, Quiltingboard, https://www.quiltingboard.com/2250039-post7.html . The page squares up to
    the most common size; blocks that are joined here are trimmed to the smallest, so that none is too small.
    """
    assert [4.75] * 4 == [side.distance for side in squared(9.5, 9.5).sides]
