"""Ends cut parallel to the neighbors: both long edges and the angles, by hand."""

from math import sqrt

import pytest

from stitchflip.piecing.angled import angled_strip
from stitchflip.piecing.build import FirstPiece, Label, assemble
from stitchflip.piecing.flips import Flip, sew, start
from stitchflip.piecing.frame import Frame
from stitchflip.piecing.geometry import box, regular
from stitchflip.piecing.model import Build, Polygon


def sewn(first: Polygon, side: int, width: float, trim: Polygon) -> Build:
    """One strip on a side of a center, seam 1/4, reach 1/4."""
    state = sew(start(first, 0.25), Flip(width, side=side))
    frame = Frame(seam=0.25, trim_taped=trim, binding_seam=0.25, reach=0.25)
    return assemble(state, frame, FirstPiece("center", 5.0), [Label(1, "", "strip")])


def test_a_strip_on_a_hexagon_has_sixty_degree_ends() -> None:
    """Flats 2 1/2 from the middle, strip cut 2: its raw edges lie 2 and 4 from the middle.

    Length at distance x between two neighbors at 60 degrees: 2 (2.5 - x / 2) / sin 60, so 2 sqrt 3 = 3.464 along
    the sewn edge and 2 / sqrt 3 = 1.155 along the outer one.
    """
    build = sewn(regular(6, 5, 0), 0, 2.0, regular(6, 20, 0))
    strip = angled_strip(build, build.pieces[1])

    assert strip is not None
    assert pytest.approx((2 * sqrt(3), 2 / sqrt(3))) == (strip.sewn_edge, strip.outer_edge)
    assert pytest.approx((60.0, 60.0)) == (strip.start_angle, strip.end_angle)


def test_a_strip_on_a_square_has_square_ends() -> None:
    """Both long edges are as long as the side, both angles 90 degrees."""
    build = sewn(box((-2.0, -2.0), (2.0, 2.0)), 0, 2.0, box((-5.0, -5.0), (5.0, 5.0)))
    strip = angled_strip(build, build.pieces[1])

    assert strip is not None
    assert pytest.approx((4.0, 4.0, 90.0, 90.0)) == (
        strip.sewn_edge,
        strip.outer_edge,
        strip.start_angle,
        strip.end_angle,
    )


def test_what_the_cover_outline_ends_is_cut_shorter() -> None:
    """A narrow piece needs only part: the square ends move in to the cover outline, 1 1/4 each side of the middle."""
    build = sewn(box((-2.0, -2.0), (2.0, 2.0)), 0, 2.0, box((-1.0, -5.0), (1.0, 5.0)))
    strip = angled_strip(build, build.pieces[1])

    assert strip is not None
    assert pytest.approx(2.5) == strip.sewn_edge


def test_the_first_piece_and_a_strip_that_ends_in_a_point_have_no_angled_cut() -> None:
    """A center is no strip; on an octagon the strip's ends meet before its outer edge."""
    build = sewn(regular(8, 5, 0), 0, 2.5, regular(8, 20, 0))

    assert angled_strip(build, build.pieces[0]) is None
    assert angled_strip(build, build.pieces[1]) is None
