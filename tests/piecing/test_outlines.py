"""Round and oval outlines and rounded corners: fine polygons, and closed forms for their lengths."""

from __future__ import annotations

from math import cos, hypot, pi, sin, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stitchflip.errors import BuildError
from stitchflip.lengths import Unit
from stitchflip.piecing.geometry import area, clip, edges, extent, half_planes, largest_circle, perimeter
from stitchflip.piecing.outlines import (
    circle_length,
    ellipse,
    ellipse_length,
    rounded_box,
    rounded_box_length,
    sides_of_circle,
)
from stitchflip.piecing.shapes import trim_polygon
from tests.finishing.scenarios import inches

RULER = 1 / 64


def _measured_round(wide: float, long: float, steps: int = 20_000) -> float:
    """The length of an ellipse by adding up short stretches of its curve (Simpson's rule)."""
    a, b = wide / 2, long / 2
    step = 2 * pi / steps
    speeds = [sqrt((a * sin(k * step)) ** 2 + (b * cos(k * step)) ** 2) for k in range(steps + 1)]
    return step / 3 * (speeds[0] + 4 * sum(speeds[1::2]) + 2 * sum(speeds[2:-1:2]) + speeds[-1])


@pytest.mark.parametrize(("wide", "long"), [(4, 2), (12, 30), (44, 43), (60, 20), (7, 7)])
def test_the_length_of_an_ellipse_agrees_with_adding_up_its_curve(wide: float, long: float) -> None:
    """The closed form is right to a millionth of an inch."""
    assert _measured_round(wide, long) == pytest.approx(ellipse_length(wide, long), abs=1e-6)


def test_the_length_of_the_ellipse_four_by_two() -> None:
    """Half axes 2 and 1: 9.688448 round, a value of the tables (from memory)."""
    assert pytest.approx(9.688448, abs=1e-6) == ellipse_length(4, 2)


def test_a_circle_is_pi_times_its_width_round() -> None:
    """44 in across: 138.23 in."""
    assert pytest.approx(138.2301, abs=1e-4) == circle_length(44) == ellipse_length(44, 44)


def test_a_rounded_rectangle_loses_a_little_at_each_corner() -> None:
    """18 x 13 with radius 2: 62 less 4 x 4 for the corners, and a whole circle of 12.566."""
    assert pytest.approx(62 - 16 + 12.5664, abs=1e-4) == rounded_box_length(18, 13, 2)


@given(st.floats(1, 120), st.floats(1, 120))
def test_a_curve_is_drawn_so_fine_that_no_ruler_shows_the_difference(wide: float, high: float) -> None:
    """The polygon reaches exactly as far as the curve four ways, and is short by less than 1/64 in all round."""
    outline = ellipse(wide, high)

    assert pytest.approx((-wide / 2, wide / 2)) == extent(outline, 1, 0)
    assert pytest.approx((-high / 2, high / 2)) == extent(outline, 0, 1)
    assert 0 <= ellipse_length(wide, high) - perimeter(outline) < RULER
    assert all(abs((2 * x / wide) ** 2 + (2 * y / high) ** 2 - 1) < 1e-9 for x, y in outline)
    assert len(outline) % 4 == 0


@pytest.mark.parametrize("across", [5, 16, 44, 90])
def test_a_line_across_a_circle_is_right_where_it_is_as_long_as_the_radius(across: float) -> None:
    """Cut level at any height, the polygon is as wide as the circle there, to 1/64 in."""
    radius, outline = across / 2, ellipse(across, across)
    for tenth in range(9):
        height = radius * tenth / 10
        level = [x for x, y in clip(outline, 0, 1, height) if y > height - 1e-6]
        left, right = min(level), max(level)
        chord = 2 * sqrt(radius**2 - height**2)
        assert chord >= radius
        assert 0 <= chord - (right - left) + 1e-6 < RULER


def test_a_rounded_rectangle_keeps_its_straight_edges_and_its_corners_lie_on_circles() -> None:
    """18 x 13 with radius 2: 14 and 9 of the edges stay straight, every corner is 2 from its circle's middle."""
    outline = rounded_box(18, 13, 2)

    assert ((-9.0, 9.0), (-6.5, 6.5)) == (extent(outline, 1, 0), extent(outline, 0, 1))
    assert ((-7.0, -6.5), (7.0, -6.5)) == outline[:2]
    level = [abs(x1 - x0) for (x0, y0), (x1, y1) in edges(outline) if y0 == y1]
    upright = [abs(y1 - y0) for (x0, y0), (x1, y1) in edges(outline) if x0 == x1]
    assert ([14.0, 14.0], [9.0, 9.0]) == (level, upright)
    assert all(abs(hypot(abs(x) - 7, abs(y) - 4.5) - 2) < 1e-9 for x, y in outline if abs(x) > 7 and abs(y) > 4.5)
    assert 0 <= rounded_box_length(18, 13, 2) - perimeter(outline) < RULER


def test_a_rectangle_rounded_all_the_way_has_no_doubled_corners() -> None:
    """10 x 20 with radius 5: two half circles and two straight edges of 10, every place once."""
    outline = rounded_box(10, 20, 5)

    assert len(outline) == len({(round(x, 9), round(y, 9)) for x, y in outline})
    assert len(outline) == len(half_planes(outline))
    assert pytest.approx(20 + pi * 10, abs=RULER) == perimeter(outline)


def test_corners_rounded_by_more_than_half_the_piece_are_refused_with_what_would_do() -> None:
    """A mat 13 in long cannot have corners of 7 in; 6 1/2 is said to be the most."""
    with pytest.raises(BuildError) as raised:
        rounded_box(18, 13, 7)
    assert "build.corner-radius" == raised.value.code
    assert "6½\u202fin or less" in raised.value.fix
    with pytest.raises(BuildError) as raised:
        rounded_box(46 / 2.54, 33 / 2.54, 17 / 2.54, Unit.CM)
    assert "16.5\u202fcm or less" in raised.value.fix


def test_area_of_the_polygon_is_nearly_that_of_the_circle() -> None:
    """44 in across: pi x 22^2 = 1520.5 square inches; the polygon lacks less than half a square inch."""
    assert 0 < pi * 22**2 - area(ellipse(44, 44)) < 0.5


def test_small_curves_need_fewer_sides_than_large_ones() -> None:
    """At least sixteen, and four times the circle takes twice the sides."""
    assert 16 == sides_of_circle(0.1)
    assert pytest.approx(2, rel=0.05) == sides_of_circle(88) / sides_of_circle(22)


def test_the_largest_circle_in_an_oval_is_as_wide_as_the_oval() -> None:
    """44 x 30: the circle of 15 in radius round the middle, found among more than a hundred edges."""
    (x, y), radius = largest_circle(ellipse(44, 30))

    assert pytest.approx((0, 0), abs=0.05) == (x, y)
    assert 15 - 1 / 256 <= radius <= 15


def test_the_largest_circle_between_a_seam_and_a_round_edge() -> None:
    """A piece cut off a circle of radius 22 by a seam 16 from its middle: the circle between them is 6 across."""
    cap = clip(ellipse(44, 44), 0, -1, -16)
    (x, y), radius = largest_circle(cap)

    assert pytest.approx((0, 19), abs=0.05) == (x, y)
    assert pytest.approx(3, abs=1 / 128) == radius


@pytest.mark.parametrize(
    ("squared_up", "sizes"),
    [
        ({"shape": "round", "across": "44"}, (44, 44)),
        ({"shape": "oval", "wide": "12", "long": "30"}, (12, 30)),
        ({"shape": "oval", "wide": "12", "long": "30", "length_runs": "across"}, (30, 12)),
        ({"wide": "18", "long": "13", "corner_radius": "2"}, (18, 13)),
    ],
)
def test_a_project_says_its_curve(squared_up: dict[str, str], sizes: tuple[float, float]) -> None:
    """Round by across, oval by wide and long, a rectangle by its corner radius."""
    trim = inches(squared_up).trim
    (left, right), (low, high) = extent(trim, 1, 0), extent(trim, 0, 1)

    assert pytest.approx(sizes) == (right - left, high - low)
    assert len(trim) > 24


def test_a_base_that_is_cut_apart_is_as_large_as_its_panels_and_what_is_lost_between_them() -> None:
    """Four mats 9 x 12 side by side with 1/4 in lost at each of three cuts: 36 3/4 x 12."""
    laid = inches({"wide": "9", "long": "12"}, cut_apart={"across": 4, "loss": "1/4"})

    assert ((-18.375, 18.375), (-6, 6)) == (extent(laid.trim, 1, 0), extent(laid.trim, 0, 1))


def test_a_base_for_round_panels_is_a_rectangle() -> None:
    """Two by three round coasters 5 in across lie on 10 x 15, and the base is squared up straight."""
    laid = inches({"shape": "round", "across": "5"}, cut_apart={"across": 2, "down": 3})

    assert 4 == len(trim_polygon(laid.project, laid.numbers))
    assert ((-5, 5), (-7.5, 7.5)) == (extent(laid.trim, 1, 0), extent(laid.trim, 0, 1))
