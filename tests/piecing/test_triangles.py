"""Triangles from squares, checked against the drawn triangle: cut it, move every raw edge in by the seam, measure."""

from __future__ import annotations

from math import cos, dist, pi, sin, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stitchflip.piecing.triangles import (
    corner_extra,
    corner_triangle_cut,
    half_square_cut,
    hexagon_across_flats,
    hexagon_side,
    quarter_square_cut,
    side_triangle_cut,
    square_in_a_square,
    star_block,
    triangle_cut_height,
    triangle_side,
)
from stitchflip.piecing.ways.folded_corners import bonus_half_square, square_for_leg
from stitchflip.project.model import Triangles
from tests.twins.script import Polygon, area_of, meet, moved_out, regular

seams = st.sampled_from([0.2, 7 / 32, 0.25, 0.75 / 2.54, 0.5])
sizes = st.integers(8, 160).map(lambda eighths: eighths / 8)


def half_of(square: float) -> Polygon:
    """The square cut once from corner to corner, as cut."""
    return ((0, 0), (square, 0), (0, square))


def quarter_of(square: float) -> Polygon:
    """The square cut twice from corner to corner: its side is the long side of the triangle."""
    return ((-square / 2, 0), (square / 2, 0), (0, square / 2))


def sides_shown(cut: Polygon, seam: float) -> list[float]:
    """Lengths of the sides that show when every raw edge has lost its seam, shortest first."""
    shown = moved_out(cut, -seam)
    return sorted(dist(p, q) for p, q in zip(shown, shown[1:] + shown[:1], strict=True))


@given(sizes, seams)
def test_a_half_square_cut_exactly_shows_its_short_side(leg: float, seam: float) -> None:
    """The drawn half of the square shows the wished leg twice and root 2 of it."""
    shown = sides_shown(half_of(half_square_cut(leg, seam)), seam)

    assert pytest.approx([leg, leg, leg * sqrt(2)]) == shown


@given(sizes, seams)
def test_a_quarter_square_cut_exactly_shows_its_long_side(long_side: float, seam: float) -> None:
    """The drawn quarter of the square shows the wished long side."""
    shown = sides_shown(quarter_of(quarter_square_cut(long_side, seam)), seam)

    assert pytest.approx([long_side / sqrt(2)] * 2 + [long_side]) == shown


@given(sizes, seams)
def test_setting_triangles_fit_the_block_they_are_sewn_to(block: float, seam: float) -> None:
    """A corner triangle shows the block's side on its long side, a side triangle on both short sides."""
    corner = sides_shown(half_of(corner_triangle_cut(block, seam)), seam)
    side = sides_shown(quarter_of(side_triangle_cut(block, seam)), seam)

    assert pytest.approx(block) == corner[2]
    assert pytest.approx([block, block]) == side[:2]


@given(sizes, seams)
def test_the_usual_additions_are_never_too_small(leg: float, seam: float) -> None:
    """Usual is at least exact and at most a tenth of a seam more (half), a fifth (quarter); oversize a seam more."""
    for cut, most in ((half_square_cut, 0.1), (quarter_square_cut, 0.2)):
        exact, usual, large = (cut(leg, seam, how) for how in (Triangles.EXACT, Triangles.TRADE, Triangles.OVERSIZE))
        assert exact < usual < exact + most * seam
        assert pytest.approx(usual + seam) == large


@given(sizes, seams)
def test_a_square_in_a_square_fills_its_block(finished: float, seam: float) -> None:
    """The middle and four corners, as they show, have the block's area, and the corners fit the middle's sides."""
    block = square_in_a_square(finished, seam)
    middle = block.center - 2 * seam
    corner = sides_shown(half_of(block.corners), seam)

    assert pytest.approx(middle) == corner[2]
    assert pytest.approx(finished**2) == middle**2 + 4 * corner[0] ** 2 / 2


@given(sizes, seams)
def test_a_folded_corner_shows_its_short_side(leg: float, seam: float) -> None:
    """The seam runs through two corners of the square; beyond it a half remains, whose two raw legs lose a seam each.

    In the square (0, 0) to (c, c) the seam is x + y = c; the half with x, y <= c shows between x + y >= c and
    x, y <= c - s, a triangle with legs c - 2s.
    """
    c = square_for_leg(leg, seam)
    low = c - (c - seam)  # where the line x = c - s meets the seam x + y = c

    assert pytest.approx(leg) == (c - seam) - low


@given(sizes, st.sampled_from([0.25, 0.5]))
def test_the_waste_of_a_folded_corner_gives_a_smaller_square(cut: float, beside: float) -> None:
    """Two waste triangles with legs c, cut root 2 times the second seam short of their long side.

    Joined along that seam with a seam allowance of half the distance, the pair is a square whose diagonal across the
    seam is twice the height that is left: 2 (c / root 2 - distance) = root 2 (c - root 2 distance).
    """
    height_left = cut / sqrt(2) - beside

    assert pytest.approx(2 * height_left / sqrt(2)) == bonus_half_square(cut, beside)


@given(sizes)
def test_a_hexagon_has_its_side_from_its_width_and_back(across: float) -> None:
    """Against the drawn hexagon."""
    drawn = regular(6, across)

    assert pytest.approx(dist(drawn[0], drawn[1])) == hexagon_side(across)
    assert pytest.approx(across) == hexagon_across_flats(hexagon_side(across))


@given(sizes, seams)
def test_a_sixty_degree_triangle_is_cut_three_seams_higher(height: float, seam: float) -> None:
    """Against the drawn triangle with every edge moved out; with a blunt tip one seam of it is missing."""
    drawn = regular(3, height * 2 / 3)
    shown_tip = max(y for _, y in drawn)
    cut = moved_out(drawn, seam)
    low, tip = min(y for _, y in cut), max(y for _, y in cut)

    assert pytest.approx(triangle_side(height)) == dist(drawn[0], drawn[1])
    assert pytest.approx(tip - low) == triangle_cut_height(height, seam)
    assert pytest.approx(shown_tip + seam - low) == triangle_cut_height(height, seam, tip_is_blunt=True)


@given(sizes)
def test_a_star_block_is_two_diamonds_and_a_square_corner_wide(side: float) -> None:
    """Along its edge: corner square (side d), tip to tip root 2 d, corner square (d): (2 + root 2) d.

    The eight-pointed star has corner squares with the diamonds' side and side triangles whose short sides are d.
    """
    assert pytest.approx(side + side * sqrt(2) + side) == star_block(side)


@given(st.integers(10, 170), seams)
def test_the_extra_at_a_corner_is_where_the_raw_edges_meet(angle: int, seam: float) -> None:
    """Two lines that meet at an angle, both moved out by the seam, meet farther out by the extra."""
    a = angle * pi / 180
    level, rising = (0.0, -1.0), (-sin(a), cos(a))  # outward normals of the sides along (1, 0) and (cos a, sin a)
    x, _ = meet((level, seam), (rising, seam))

    assert pytest.approx(-x) == corner_extra(angle, seam)


def test_areas_by_hand() -> None:
    """Half of 2.854 shows 2 x 2 / 2 = 2 square inches; a quarter of 4.207 shows 3 x 1 1/2 / 2 = 2 1/4."""
    half = moved_out(half_of(half_square_cut(2, 0.25)), -0.25)
    quarter = moved_out(quarter_of(quarter_square_cut(3, 0.25)), -0.25)

    assert pytest.approx(2) == area_of(half)
    assert pytest.approx(2.25) == area_of(quarter)
