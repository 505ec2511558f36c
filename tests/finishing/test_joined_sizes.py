"""Sizes of joined quilts, where everything lies, and the strips to cut for it."""

from __future__ import annotations

from math import sqrt
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.errors import BuildError
from stitchflip.finishing import plan_quilt
from stitchflip.finishing.joined import Diamond, Grid, row_length
from tests.finishing.quilts import blocks_shown, metric_quilt, on_the_front, quilt, strips, together, total
from tests.finishing.scenarios import inches, snow_gate

SEAM = 0.25
EIGHTHS = st.integers(20, 160).map(lambda count: count / 8)


def test_nothing_joined_is_no_quilt() -> None:
    """A piece by itself has no quilt plan."""
    laid = inches({"wide": "13", "long": "13"})
    assert None is plan_quilt(laid.project, laid.numbers, laid.trim)


def test_twenty_sheds_make_52_and_3_eighths_by_65_and_a_half() -> None:
    """4 (13 - 1/2) + 3 x 5/8 + 1/2 = 52 3/8; 5 x 12 1/2 + 4 x 5/8 + 1/2 = 65 1/2."""
    made = quilt(4, 5)
    assert (52.375, 65.5) == (made.wide, made.high)
    assert ((-26.1875, -32.75), (26.1875, 32.75)) == (made.outline[0], made.outline[2])


def test_sheds_an_eighth_smaller_make_51_and_7_eighths_by_64_and_7_eighths() -> None:
    """4 x 12 3/8 + 1 7/8 + 1/2 and 5 x 12 3/8 + 2 1/2 + 1/2."""
    made = quilt(4, 5, "12 7/8")
    assert (51.875, 64.875) == (made.wide, made.high)


def test_sixteen_kites_make_32_and_a_half() -> None:
    """4 x 8 + 1/2: a plain seam takes 1/2 in of every block."""
    made = quilt(4, 4, "8 1/2", join="plain seam")
    assert (32.5, 32.5) == (made.wide, made.high)


def test_covered_strips_of_two_inches() -> None:
    """3 x 12 1/2 + 2 x 2 + 1/2 = 42; 2 x 12 1/2 + 2 + 1/2 = 27 1/2."""
    made = quilt(2, 3, join="covered strips", shows="2")
    assert (27.5, 42) == (made.wide, made.high)


def test_metric_blocks() -> None:
    """3 x (33 - 1.5) + 2 x 1.8 + 1.5 = 99.6 cm; 4 x 31.5 + 3 x 1.8 + 1.5 = 132.9 cm."""
    made = metric_quilt(3, 4, "33")
    assert pytest.approx((99.6 / 2.54, 132.9 / 2.54)) == (made.wide, made.high)


def test_sheds_take_fifteen_short_joins_and_four_long_ones() -> None:
    """Three joins in each of five rows, as long as a block; four between the rows, as long as a row."""
    assert [
        ("flat strip between blocks", 1.125, 13, 15, False),
        ("folded strip between blocks", 2, 13, 15, False),
        ("flat strip between rows", 1.125, 52.375, 4, True),
        ("folded strip between rows", 2, 52.375, 4, True),
    ] == [(one.name, one.cut, one.long, one.count, one.is_pieced) for one in quilt(4, 5).strips]


def test_columns_first_turns_the_joins() -> None:
    """Four joins in each of four columns; three long ones of 65 1/2."""
    made = strips(quilt(4, 5, first="columns"), "flat")
    assert [("flat strip between blocks", 13, 16), ("flat strip between columns", 65.5, 3)] == [
        (one.name, one.long, one.count) for one in made
    ]


def test_a_long_strip_that_a_width_gives_is_not_pieced() -> None:
    """Two blocks make 26 1/8 in, less than 40; a fabric measured 26 wide does not give it."""
    assert [False] == [one.is_pieced for one in strips(quilt(2, 2), "flat strip between rows")]
    narrow = quilt(2, 2, fabric="Linen", parts={"fabrics": [{"name": "Linen", "usable_width": "26"}]})
    assert [True] == [one.is_pieced for one in strips(narrow, "flat strip between rows")]


def test_oblong_blocks_have_short_joins_of_their_height() -> None:
    """Blocks 10 x 14: between blocks of a row 14 long; rows are 3 x 9 1/2 + 2 x 5/8 + 1/2 = 30 1/4."""
    made = quilt(3, 2, ("10", "14"))
    assert {14.0} == {one.long for one in strips(made, "flat strip between blocks")}
    assert {30.25} == {one.long for one in strips(made, "flat strip between rows")}


def test_corner_squares_show_square_where_strips_cross() -> None:
    """Shows 2: six places of 2 x 2, cut 2 1/2 along the strip and 2 3/4 across; the front strip comes in pieces."""
    made = quilt(3, 4, join="covered strips", shows="2", corner_squares="Dot", fabric="Linen")
    (squares,) = strips(made, "corner square")

    assert ("Dot", 2.5, 2.75, 6) == (squares.fabric, squares.cut, squares.long, squares.count)
    assert [4.0] * 6 == [round(area, 6) for area in areas_of(squares.front)]
    (pieces,) = strips(made, "strip between rows, front")
    assert (13, 9, False) == (pieces.long, pieces.count, pieces.is_pieced)
    (behind,) = strips(made, "strip between rows, back")
    assert (made.wide, 3) == (behind.long, behind.count)


def test_words_say_how_a_long_strip_with_corner_squares_is_pieced() -> None:
    """Only where there are corner squares; on point the long strips are trimmed with the edge."""
    covered: dict[str, Any] = {"join": "covered strips", "shows": "2"}
    with_squares = " ".join(quilt(3, 3, corner_squares="Dot", **covered).words)
    without = " ".join(quilt(3, 3, **covered).words)
    on_point = " ".join(quilt(2, 2, setting="on point", **covered).words)

    assert "Piece each long front strip from its strips and corner squares" in with_squares
    assert "corner squares" not in without
    assert "trim them with the edge" in on_point
    assert "trim them with the edge" not in without


def areas_of(polygons: tuple[tuple[tuple[float, float], ...], ...]) -> list[float]:
    """Areas by the surveyor's formula."""
    return [
        abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(one, one[1:] + one[:1], strict=True))) / 2
        for one in polygons
    ]


def test_blocks_lie_in_rows_from_the_top() -> None:
    """Two by two, 13 each: middles 6.5625 - 1/4 + ... = 12.5/2 + 5/16 = 6.5625 off both center lines."""
    places = [(one.row, one.column, one.middle) for one in quilt(2, 2).blocks]
    off = 6.5625
    assert [(0, 0, (-off, off)), (0, 1, (off, off)), (1, 0, (-off, -off)), (1, 1, (off, -off))] == places


@given(across=st.integers(1, 6), down=st.integers(1, 6), block=EIGHTHS, shows=st.integers(4, 24), rows=st.booleans())
@settings(max_examples=40, deadline=None)
def test_blocks_and_strips_add_up_to_the_quilt(across: int, down: int, block: float, shows: int, *, rows: bool) -> None:
    """What shows of blocks and strips tiles the quilt: no overlap and no hole, but for the outermost seam allowance.

    The blocks are drawn up to their seam lines, so the quilt less one seam all round must be full.
    """
    made = quilt(
        across, down, f"{block:g}", join="covered strips", shows=f"{shows}/8", first="rows" if rows else "columns"
    )
    inner = box_of(made.wide / 2 - SEAM, made.high / 2 - SEAM)
    pieces = [area.intersection(inner) for area in on_the_front(made)] + blocks_shown(made, SEAM)

    assert pytest.approx(inner.area) == total(pieces)
    assert pytest.approx(inner.area, rel=1e-5) == together(pieces)


def box_of(x: float, y: float) -> Any:
    """An upright rectangle about the middle."""
    from shapely import box

    return box(-x, -y, x, y)


@given(sizes=st.lists(EIGHTHS, min_size=1, max_size=8), between=st.integers(0, 16).map(lambda count: count / 8))
def test_a_row_is_as_long_as_its_parts_laid_end_to_end(sizes: list[float], between: float) -> None:
    """Walked along: a seam allowance, then block, gap, block, ..., and a seam allowance again."""
    place = SEAM
    for index, size in enumerate(sizes):
        place += size - SEAM - SEAM
        if index < len(sizes) - 1:
            place += between
    assert pytest.approx(place + SEAM) == row_length(sizes, between, SEAM)


@given(
    columns=st.lists(EIGHTHS, min_size=1, max_size=6),
    rows=st.lists(EIGHTHS, min_size=1, max_size=6),
    between=st.integers(0, 16).map(lambda count: count / 8),
)
def test_a_grid_begins_and_ends_at_the_raw_edges(columns: list[float], rows: list[float], between: float) -> None:
    """First column at the left edge, last row at the bottom, neighbors two seams and the gap apart."""
    grid = Grid(tuple(columns), tuple(rows), between, SEAM)

    assert pytest.approx((-grid.wide / 2, grid.wide / 2)) == (grid.column(0)[0], grid.column(len(columns) - 1)[1])
    assert pytest.approx((grid.high / 2, -grid.high / 2)) == (grid.row(0)[1], grid.row(len(rows) - 1)[0])
    for column in range(len(columns) - 1):
        left, right = grid.right_of(column)
        assert pytest.approx(between) == right - left


# --- on point ----------------------------------------------------------------------------------------------


def test_on_point_without_strips_is_the_diagonals_of_the_blocks() -> None:
    """3 x 4 blocks finishing 8: 3 x 8 root 2 + 1/2 by 4 x 8 root 2 + 1/2."""
    made = quilt(3, 4, "8 1/2", setting="on point", join="plain seam")
    assert pytest.approx((24 * sqrt(2) + 0.5, 32 * sqrt(2) + 0.5)) == (made.wide, made.high)
    assert 3 * 4 + 2 * 3 == len(made.blocks)


def test_on_point_with_strips_frames_every_block() -> None:
    """2 x 2 finishing 8 with strips of 1: from corner to corner of the frames 2 x 9 root 2 + root 2, and 1/2."""
    made = quilt(2, 2, "8 1/2", setting="on point", join="covered strips", shows="1")
    assert pytest.approx((19 * sqrt(2) + 0.5,) * 2) == (made.wide, made.high)


def test_on_point_counts() -> None:
    """4 x 5: 32 blocks in rows of 4 and 3; 14 side triangles from 4 squares; 4 corners from 2."""
    made = quilt(4, 5, "5", setting="on point", join="plain seam")
    assert made.triangles is not None
    assert (32, 14, 4, 4, 2) == (
        len(made.blocks),
        made.triangles.side_count,
        made.triangles.side_squares,
        made.triangles.corner_count,
        made.triangles.corner_squares,
    )
    assert [4, 3, 4, 3, 4, 3, 4, 3, 4] == [sum(one.row == row for one in made.blocks) for row in range(9)]
    assert {45.0} == {one.turned for one in made.blocks}


def test_one_column_on_point_is_a_runner() -> None:
    """1 x 4: no blocks between, 6 side triangles, long strips across every join."""
    made = quilt(1, 4, "6 1/2", setting="on point", join="covered strips", shows="1")
    assert made.triangles is not None
    assert (4, 6) == (len(made.blocks), made.triangles.side_count)
    assert pytest.approx(sqrt(2) * (7 + 1) + 0.5) == made.wide
    assert pytest.approx(sqrt(2) * (4 * 7 + 1) + 0.5) == made.high


def test_short_and_long_joins_on_point() -> None:
    """2 x 2: three diagonal rows of 1, 3 and 1 block have 2 + 4 + 2 short joins; four long ones.

    The quilt is 19 root 2 + 1/2 = 27.370 square. A strip cut 1 3/4 (seam to seam 1 and 1/4 on both sides) lies
    between the lines 8.5/2 - 1/4 - ... : the outer ones from 4.5 + 9 - 1/4 = 13.25 to 14.75 off the middle, where the
    diagonal is 2 (27.370/root 2 - 13.25) = 12.207 long at its longer edge; the inner ones from 4 - 1/4 = 3.75: 31.207.
    """
    made = quilt(2, 2, "8 1/2", setting="on point", join="covered strips", shows="1")
    diagonal = (19 * sqrt(2) + 0.5) / sqrt(2)

    assert [(8.5, 8)] == [(one.long, one.count) for one in strips(made, "strip between blocks, front")]
    long = sorted((round(one.long, 6), one.count) for one in strips(made, "strip between diagonal rows, front"))
    outer, inner = 2 * (diagonal - 12.75), 2 * (diagonal - 3.75)
    assert [(round(outer, 6), 2), (round(inner, 6), 2)] == long


@given(
    across=st.integers(1, 4),
    down=st.integers(1, 4),
    shows=st.integers(4, 16),
    rows=st.booleans(),
    squares=st.booleans(),
)
@settings(max_examples=30, deadline=None)
def test_on_point_everything_tiles_the_quilt(across: int, down: int, shows: int, *, rows: bool, squares: bool) -> None:
    """Blocks to their seam lines, strips, corner squares and triangles fill the quilt to its raw edge, once."""
    own: dict[str, Any] = {"corner_squares": "Dot"} if squares else {}
    first = "rows" if rows else "columns"
    made = quilt(
        across, down, "6 1/2", setting="on point", join="covered strips", shows=f"{shows}/8", first=first, **own
    )
    pieces = on_the_front(made) + blocks_shown(made, SEAM)

    assert pytest.approx(made.wide * made.high) == total(pieces)
    assert pytest.approx(made.wide * made.high, rel=1e-5) == together(pieces)


@given(across=st.integers(1, 5), down=st.integers(1, 5))
def test_diagonal_rows_hold_all_blocks(across: int, down: int) -> None:
    """Places along the diagonals, counted by walking over every block of both lattices."""
    from stitchflip.finishing.joined.on_point import diagonal_rows

    diamond = Diamond(across, down, 6.5, 0.0, SEAM)
    corners = [(2 * i, 2 * j) for i in range(across) for j in range(down)]
    corners += [(2 * i + 1, 2 * j + 1) for i in range(across - 1) for j in range(down - 1)]
    by_row: dict[int, list[int]] = {}
    for x, y in corners:
        by_row.setdefault((y - x) // 2, []).append((x + y) // 2)

    assert [sorted(by_row[row]) for row in sorted(by_row)] == [list(one) for one in diagonal_rows(diamond)]
    assert diamond.blocks == len(corners)


def test_setting_squares_grow_with_the_strips() -> None:
    """Blocks finish 6, strips show 1: long side 7 root 2 + 1.207 = 11.107; short side 8 / root 2 + 0.854 = 6.510.

    Usual: 1.414 x 7 + 1 1/4 = 11.148, up to 11 1/4; 8 / 1.414 + 7/8 = 6.533, up to 6 5/8. Oversize: 1/2 more.
    """
    on_point: dict[str, Any] = {"setting": "on point", "join": "covered strips", "shows": "1"}
    exact = quilt(3, 3, "6 1/2", triangles="exact", **on_point).triangles
    usual = quilt(3, 3, "6 1/2", **on_point).triangles
    oversize = quilt(3, 3, "6 1/2", triangles="oversize", **on_point).triangles

    assert exact is not None
    assert usual is not None
    assert oversize is not None
    assert pytest.approx((11.107, 6.510), abs=0.001) == (exact.exact_side, exact.exact_corner)
    assert (11.125, 6.5625) == (exact.side_square, exact.corner_square)
    assert (11.25, 6.625) == (usual.side_square, usual.corner_square)
    assert (11.75, 7.125) == (oversize.side_square, oversize.corner_square)


def test_triangles_are_quilted_on_bases_of_their_own() -> None:
    """3 of 9.75 / 0.985, up to 10, on bases of 12; 2 of 5.125 / 0.985, up to 5 1/4, on 7 1/4, up to 7 1/2."""
    words = " ".join(quilt(4, 4, "6 1/2", setting="on point", join="plain seam").words).replace("\u202f", " ")

    assert "12 side triangles from 3 squares cut 10 in, quilted and squared up to 9¾ in, cut twice" in words
    assert "4 corner triangles from 2 squares cut 5¼ in, quilted and squared up to 5⅛ in, cut once" in words
    assert "3 of 12 × 12 in and 2 of 7½ × 7½ in" in words


def test_metric_words_tell_that_the_additions_in_print_are_small() -> None:
    """3.5 and 2.5 cm against 3.7 and 2.6."""
    made = metric_quilt(2, 2, "16.5", setting="on point", join="plain seam")
    assert any("3.5 and 2.5 cm" in sentence for sentence in made.words)
    assert made.triangles is not None
    # 15 x 1.414 + 3.7 = 24.91, up to 25.0; 15 / 1.414 + 2.6 = 13.208, up to 13.3
    assert pytest.approx((25.0 / 2.54, 13.3 / 2.54)) == (made.triangles.side_square, made.triangles.corner_square)


# --- what cannot be joined ---------------------------------------------------------------------------------


def test_blocks_that_are_no_rectangles_are_refused() -> None:
    """A hexagon meets no neighbor along a row."""
    laid = snow_gate(joined={"across": 2, "down": 2})
    with pytest.raises(BuildError, match="square corners") as caught:
        plan_quilt(laid.project, laid.numbers, laid.trim)
    assert "build.blocks-do-not-meet" == caught.value.code


def test_blocks_on_point_are_square() -> None:
    """An oblong block on point does not meet its neighbors."""
    with pytest.raises(BuildError, match="blocks on point are square") as caught:
        quilt(2, 2, ("8", "10"), setting="on point")
    assert "joined.setting" == caught.value.where


def test_blocks_used_up_by_their_seams_are_refused() -> None:
    """A block of 1/2 in between two seams of 1/4 has nothing left."""
    with pytest.raises(BuildError, match="used up by its two seams") as caught:
        quilt(2, 2, "1/2", join="plain seam")
    assert "build.block-too-small" == caught.value.code
