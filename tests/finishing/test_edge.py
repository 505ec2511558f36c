"""How the edge is finished: bias binding, self-binding, facing, turning through, and what is sewn through."""

from __future__ import annotations

from math import atan2, cos, hypot, pi, radians, sin, sqrt
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stitchflip.errors import BuildError
from stitchflip.finishing import corner_stop, plan_backing, plan_binding, plan_edge, plan_square_up
from stitchflip.finishing.bias import bias_squares, bias_strips, length_from_square
from stitchflip.finishing.edge_model import EdgePlan
from stitchflip.finishing.edges import corner_angles, trim_edges
from stitchflip.lengths import Unit
from stitchflip.piecing.model import CenterPoint
from stitchflip.project.numbers import effective
from tests.finishing.scenarios import CM, Laid, cm, inches

ROUND = {"shape": "round", "across": "44"}
MAT = {"wide": "18", "long": "13"}
ROUNDED = {**MAT, "corner_radius": "2"}
OVAL = {"shape": "oval", "wide": "12", "long": "30"}


def _finished(squared_up: dict[str, Any], edge: str, binding: dict[str, Any] | None = None, **parts: Any) -> Laid:
    """A piece with the house's numbers, its edge finished one way."""
    laid = inches(squared_up, binding={"fabric": "Linen", "edge": edge, **(binding or {})}, **parts)
    return Laid(laid.project, effective(laid.project))


def _edge(laid: Laid) -> EdgePlan:
    return plan_edge(laid.project, laid.numbers, laid.trim)


def _plain(text: str) -> str:
    return text.replace("\u202f", " ").replace("\u2009", " ")


# --- curves ---------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("squared_up", "names"), [(ROUND, ["curve"]), (OVAL, ["curve"])])
def test_a_round_piece_has_one_edge_and_no_corner(squared_up: dict[str, Any], names: list[str]) -> None:
    """However fine the polygon: one edge, named curve, where no binding stops."""
    laid = inches(squared_up)
    sides = trim_edges(laid.project, laid.trim)
    binding = plan_binding(laid.project, laid.numbers, laid.trim)

    assert names == [side.name for side in sides]
    assert () == corner_angles(sides)
    assert () == binding.corners


def test_a_rounded_rectangle_has_four_edges_and_four_curves() -> None:
    """18 x 13, radius 2: straight edges of 14 and 9, curves of a quarter circle, pi inches each; no corner."""
    laid = inches(ROUNDED)
    sides = trim_edges(laid.project, laid.trim)
    straight = {side.name: side.length for side in sides if not side.is_curve}
    curves = {side.name: side.length for side in sides if side.is_curve}

    assert {"bottom": 14, "right": 9, "top": 14, "left": 9} == straight
    assert {f"{where} curve" for where in ("lower right", "upper right", "upper left", "lower left")} == set(curves)
    assert pytest.approx([pi] * 4) == list(curves.values())
    assert () == corner_angles(sides)


def test_the_edges_of_a_rounded_rectangle_join_end_to_end() -> None:
    """Every edge ends where the next one begins, straight ones and curves alike."""
    sides = trim_edges(inches(ROUNDED).project, inches(ROUNDED).trim)
    for side, after in zip(sides, (*sides[1:], sides[0]), strict=True):
        assert pytest.approx(0, abs=1e-9) == hypot(side.end[0] - after.start[0], side.end[1] - after.start[1])


def test_the_binding_of_a_circle_is_its_length_and_the_tails() -> None:
    """44 in across: 138.23 round, and 10 for the tails; nothing for corners, because there are none."""
    laid = inches(ROUND)
    binding = plan_binding(laid.project, laid.numbers, laid.trim)

    assert pytest.approx(138.2301, abs=1e-3) == binding.perimeter
    assert pytest.approx(148.2301, abs=1e-3) == binding.need
    assert "bias" == binding.grain


def test_a_curve_is_bound_on_the_bias_unless_the_maker_insists() -> None:
    """Left out, the grain follows the edge; a straight mat stays straight, and a word of the maker wins."""
    assert "bias" == _edge(inches(ROUNDED)).grain
    assert "straight" == _edge(inches(MAT)).grain
    straight = inches(ROUND, binding={"fabric": "Linen", "grain": "straight"})
    assert ("straight", 0.0, 0) == (_edge(straight).grain, _edge(straight).bias_square, _edge(straight).bias_strips)
    slanted = inches(MAT, binding={"fabric": "Linen", "grain": "bias"})
    assert "bias" == _edge(slanted).grain
    assert 4 == len(plan_binding(slanted.project, slanted.numbers, slanted.trim).corners)


def test_the_round_piece_is_bound_from_a_square_of_22() -> None:
    """Strips 2 1/2 lie 3.536 apart: 6 whole turns from 22 - 1/2 = 21.5 in, each 21.5 root 2 = 30.41, are 182.4 in.

    From 21 in only 5 turns of 28.99 = 145 in, less than 148.23, though 20 1/2^2 / 2 1/2 = 168 in of area are there.
    """
    laid = inches(ROUND)
    edge = _edge(laid)
    binding = plan_binding(laid.project, laid.numbers, laid.trim)

    assert 22 == edge.bias_square
    assert [("Binding square for bias strips", 22, 22, 1)] == [
        (piece.name, piece.wide, piece.long, piece.count) for piece in edge.pieces
    ]
    assert (1, 1) == (binding.strips_per_piece, binding.strips)
    assert pytest.approx(6 * 21.5 * sqrt(2)) == binding.made


def test_strips_one_by_one_across_the_fabric_are_long_enough_with_their_joins() -> None:
    """Eleven lie in 40 in; of 12 in of fabric each is 16.97 long, four run into the ends of the width and are joined.

    11 x 16.97 less 10 + 4 joins of 2 1/2 = 151.7, and 148.23 are needed; half an inch less fabric gives 143.9.
    """
    strips = bias_strips(148.23, 2.5, 40, 2.5, Unit.INCH)
    assert (11, 4, 12.0) == (strips.count, strips.in_two, strips.fabric)
    assert pytest.approx(11 * 12 * sqrt(2) - 14 * 2.5) == strips.made
    assert 11 * 11.5 * sqrt(2) - (10 + 4) * 2.5 < 148.23
    assert 11 == _edge(inches(ROUND)).bias_strips


@given(st.floats(20, 900), st.floats(1.5, 4), st.floats(17, 60))
def test_bias_binding_is_never_too_short(need: float, cut: float, usable: float) -> None:
    """Squares and strips both give what is needed, and no square is wider than the fabric."""
    squares = bias_squares(need, cut, 0.25, usable, cut, Unit.INCH)
    strips = bias_strips(need, cut, usable, cut, Unit.INCH)

    assert squares.made >= need - 1e-6
    assert squares.side <= usable
    assert strips.made >= need - 1e-6
    assert pytest.approx(squares.each) == length_from_square(squares.side, cut, 0.25)


def test_bias_strips_that_their_joins_use_up_are_refused() -> None:
    """Strips 30 in wide from 40 in of fabric lose all they have at the joins."""
    with pytest.raises(BuildError, match="used up by joins"):
        bias_strips(500, 30, 40, 60, Unit.INCH)


def test_the_start_on_a_circle_keeps_the_join_off_the_points() -> None:
    """A bias binding of two squares has one join; on a circle only the points of the center are in its way."""
    laid = inches(ROUND, {"binding_cut": 2.5, "usable_width": 18.0})
    point = CenterPoint((0.0, 21.0), 1.0, 1.0, 0.75, "upper point", True)
    binding = plan_binding(laid.project, laid.numbers, laid.trim, (point,))

    assert 2 == binding.strips_per_piece
    assert 1 == len(binding.joins_at)
    assert _plain(binding.start_at).startswith("on the curve,")
    assert "2 in or more from corners and points" in _plain(binding.start_at)


def test_a_rounded_mat_is_begun_on_a_straight_edge() -> None:
    """The start is told from the curve before it, and the way by the next straight edge."""
    laid = inches(ROUNDED)
    start = _plain(plan_binding(laid.project, laid.numbers, laid.trim).start_at)

    assert "on the bottom edge, 7 in from the lower left curve, and sew toward the right edge" == start


def test_a_round_piece_is_marked_from_the_center_mark() -> None:
    """22 in all round; one edge, as long as the circle; no diagonals, no folding."""
    laid = inches(ROUND)
    square = plan_square_up(laid.project, laid.numbers, laid.trim, ())

    assert [("curve", 22.0)] == [(side.name, side.distance) for side in square.sides]
    assert ((), "") == (square.diagonals, square.folded)
    assert _plain(square.curve).startswith("From the center mark 22 in all round")
    assert pytest.approx(pi * 22**2) == square.area
    assert pytest.approx(2 * pi * 22) == square.perimeter


def test_an_oval_is_drawn_with_two_pins_and_a_loop() -> None:
    """12 x 30: pins 13 3/4 from the mark (15^2 - 6^2 = 189), loop 2 x (15 + 13.748) = 57.496, said as 57 1/2."""
    square = plan_square_up(inches(OVAL).project, inches(OVAL).numbers, inches(OVAL).trim, ())
    words = _plain(square.curve)

    assert "13¾ in from the center mark on both sides" in words
    assert "loop of string 57½ in round" in words
    assert "runs up and down" in words
    # a pencil at the end of the short axis: both strings are 15 long, and the pins 2 x 13.748 apart
    assert pytest.approx(57.496, abs=1e-3) == 2 * hypot(6, sqrt(189)) + 2 * sqrt(189)


def test_rounded_corners_are_squared_up_first() -> None:
    """18 x 13 with radius 2 is laid on the mat as a rectangle; area 234 less 4 corners of (4 - pi)."""
    square = plan_square_up(inches(ROUNDED).project, inches(ROUNDED).numbers, inches(ROUNDED).trim, ())

    assert [("bottom", 6.5, 18), ("right", 9.0, 13), ("top", 6.5, 18), ("left", 9.0, 13)] == [
        (side.name, side.distance, side.length) for side in square.sides
    ]
    assert pytest.approx([hypot(18, 13)] * 2) == list(square.diagonals)
    assert "circle of radius 2 in" in _plain(square.curve)
    assert pytest.approx(234 - 4 * (4 - pi)) == square.area


def test_a_square_rounded_all_the_way_is_round() -> None:
    """10 x 10 with radius 5 is a circle of 10 in: one edge, 31.416 round."""
    laid = inches({"wide": "10", "long": "10", "corner_radius": "5"})
    (curve,) = trim_edges(laid.project, laid.trim)

    assert "curve" == curve.name
    assert pytest.approx(10 * pi) == curve.length


# --- corners --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("angle", [60, 90, 108, 120, 135])
def test_the_stop_before_a_corner_is_where_the_two_seams_meet(angle: float) -> None:
    """The lines 1/4 in inside two edges meet; the foot of that place on an edge is where the first seam stops."""
    seam = 0.25
    # edges from the corner at the origin, one along x, the other at the inside angle
    tx, ty = cos(radians(angle)), sin(radians(angle))
    # y = seam, and the distance from the second edge is seam as well: ty * x - tx * y = seam
    x = (seam + tx * seam) / ty
    assert pytest.approx(seam) == ty * x - tx * seam
    assert pytest.approx(x) == corner_stop(angle, seam)


@pytest.mark.parametrize(
    ("sides", "angle", "stop"),
    [(3, 60, 0.4330), (4, 90, 0.25), (5, 108, 0.1816), (6, 120, 0.1443), (8, 135, 0.1036)],
)
def test_corners_of_regular_pieces_and_their_miters(sides: int, angle: float, stop: float) -> None:
    """180 - 360 / n degrees inside; 1/4 / tan of half of it before the corner, reckoned by hand."""
    laid = inches({"shape": "polygon", "sides": sides, "across_flats": "16"})
    binding = plan_binding(laid.project, laid.numbers, laid.trim)

    assert pytest.approx([angle] * sides) == [corner.angle for corner in binding.corners]
    assert pytest.approx([stop] * sides, abs=1e-4) == [corner.stop_before for corner in binding.corners]


# --- self-binding ---------------------------------------------------------------------------------------------


def test_self_binding_takes_twice_what_shows_and_a_quarter_for_the_turn() -> None:
    """1/2 shows: the backing reaches 1 1/4 beyond the trimmed edge, and the front is covered by 1/2."""
    laid = _finished(MAT, "self-binding")
    edge = _edge(laid)

    assert ("self-binding", 0.5, 0.5, 1.25) == (edge.kind, edge.seam, edge.shows, edge.backing_extra)
    assert 0.5 == laid.numbers.binding_seam == laid.numbers.points_stop
    assert any("1¼ in beyond the trimmed edge" in _plain(word) for word in edge.words)
    assert any("miter" in word for word in edge.words)


def test_the_backing_of_a_self_bound_mat_is_cut_so_large() -> None:
    """Base spare 1 in is less than 1 1/4: the backing is 1/4 wider than the base on every side, the batting is not."""
    laid = _finished(MAT, "self-binding")
    base = laid.base
    backing = plan_backing(laid.project, laid.numbers, base)
    missing_x, missing_y = 1.25 - base.spare_x, 1.25 - base.spare_y

    assert missing_x > 0
    assert pytest.approx((base.wide + 2 * missing_x, base.high + 2 * missing_y)) == (backing.wide, backing.high)


def test_a_self_binding_shows_what_the_maker_says() -> None:
    """3/4 shows: 2 x 3/4 + 1/4 = 1 3/4 of backing beyond the edge."""
    edge = _edge(_finished(MAT, "self-binding", {"shows": "3/4"}))
    assert (0.75, 1.75) == (edge.shows, edge.backing_extra)


def test_metric_self_binding_is_redrafted() -> None:
    """1.2 cm shows: 2 x 1.2 + 0.6 = 3.0 cm beyond the edge."""
    laid = cm({"wide": "47", "long": "35"}, binding={"fabric": "Linen", "edge": "self-binding"})
    edge = plan_edge(laid.project, effective(laid.project), laid.trim)
    assert pytest.approx((1.2 * CM, 3.0 * CM)) == (edge.shows, edge.backing_extra)


# --- facing ---------------------------------------------------------------------------------------------------


def test_a_faced_mat_has_strips_for_two_sides_and_for_top_and_bottom() -> None:
    """13 long at the sides; 18 and 1/2 more at each end for top and bottom; cut 2 1/2, of which 2 cover the back."""
    edge = _edge(_finished(MAT, "facing"))

    assert [("Facing of the sides", 2.5, 13, 2), ("Facing of top and bottom", 2.5, 19, 2)] == [
        (piece.name, piece.wide, piece.long, piece.count) for piece in edge.pieces
    ]
    assert (0.25, 0.0, 0.0) == (edge.seam, edge.shows, edge.backing_extra)
    assert any("covers 2 in of the back" in _plain(word) for word in edge.words)


def test_a_facing_of_a_wished_width_is_cut_for_it() -> None:
    """1 1/2 behind: 1 1/2 and the seam of 1/4 and 1/4 turned under make 2."""
    edge = _edge(_finished(MAT, "facing", {"shows": "1 1/2"}))
    assert {2.0} == {piece.wide for piece in edge.pieces}


def test_a_facing_longer_than_the_fabric_is_joined() -> None:
    """44 + 1 = 45 from fabric 40 wide: two strips of (45 + 1/2) / 2 = 22 3/4 for each."""
    edge = _edge(_finished({"wide": "44", "long": "13"}, "facing"))
    joined = edge.pieces[1]

    assert ("Facing of top and bottom, 2 joined for each", 22.75, 4) == (joined.name, joined.long, joined.count)


def test_a_curve_is_faced_on_the_bias() -> None:
    """138.23 + 10 = 148.23 at 2 1/2, as for a binding: a square of 22."""
    edge = _edge(_finished(ROUND, "facing"))
    assert ("bias", 22) == (edge.grain, edge.bias_square)


def test_every_edge_of_a_hexagon_is_faced_alike() -> None:
    """20 between flats: edges of 20 / sqrt 3 = 11.547, an inch more for the ends, up to the next quarter: 12 3/4."""
    edge = _edge(_finished({"shape": "polygon", "sides": 6, "across_flats": "20"}, "facing"))
    assert [("Facing of each edge", 12.75, 6)] == [(piece.name, piece.long, piece.count) for piece in edge.pieces]


# --- turned through -------------------------------------------------------------------------------------------


def test_a_piece_turned_through_loses_its_seam() -> None:
    """25 x 31 with 1/2 in seams finishes 24 x 30; 5 in stay open."""
    laid = _finished({"wide": "25", "long": "31"}, "turned through", base={"through": "batting only"})
    edge = _edge(laid)

    assert (0.5, 0.0, 5.0, ()) == (edge.seam, edge.shows, edge.opening, edge.pieces)
    assert "turned, the piece finishes 24 × 30 in" in _plain(edge.words[0])
    assert any("topstitch ⅛ in" in _plain(word) for word in edge.words)
    assert any("Clip the corners" in word for word in edge.words)


def test_the_backing_of_a_piece_turned_through_is_an_inch_larger() -> None:
    """Half an inch on every side, because both are sewn edge on edge; a spare of her own stands."""
    through = {"through": "batting only"}
    laid = _finished({"wide": "25", "long": "31"}, "turned through", base=through)
    backing = plan_backing(laid.project, laid.numbers, laid.base)
    assert pytest.approx((26, 32)) == (backing.wide, backing.high)
    own = _finished(
        {"wide": "25", "long": "31"}, "turned through", base=through, my_numbers={"backing_later_spare": "1"}
    )
    backing = plan_backing(own.project, own.numbers, own.base)
    assert pytest.approx((27, 33)) == (backing.wide, backing.high)


def test_a_hexagon_turned_through_finishes_smaller_at_its_points_too() -> None:
    """20 between flats less 1 is 19; from point to point 19 / cos 30 = 21.94, said as 21 15/16."""
    edge = _edge(_finished({"shape": "polygon", "sides": 6, "across_flats": "20"}, "turned through"))
    assert "finishes 21 15/16 × 19 in" in _plain(edge.words[0])


def test_a_small_piece_is_left_open_by_half_an_edge() -> None:
    """A coaster of 4 1/2 in cannot be left open by 5; 2 1/4 it is."""
    assert 2.25 == _edge(_finished({"wide": "4 1/2", "long": "4 1/2"}, "turned through")).opening


@pytest.mark.parametrize("edge", ["self-binding", "facing", "turned through"])
@pytest.mark.parametrize("squared_up", [MAT, ROUND, ROUNDED, OVAL])
def test_another_edge_needs_no_binding(squared_up: dict[str, Any], edge: str) -> None:
    """The plan of the binding stays valid: the length of the edge, and nothing to cut."""
    laid = _finished(squared_up, edge)
    binding = plan_binding(laid.project, laid.numbers, laid.trim)

    assert (0, 0, 0.0, 0.0, 0) == (
        binding.strips,
        binding.strips_per_piece,
        binding.need,
        binding.made,
        binding.bound,
    )
    assert binding.perimeter > 0
    assert binding.seam == laid.numbers.binding_seam == _edge(laid).seam


# --- what is sewn through -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("through", "draw_up"),
    [("backing and batting", 0.015), ("batting only", 0.01), ("batting on foundation", 0.005)],
)
def test_the_thicker_what_is_sewn_through_the_more_it_draws_up(through: str, draw_up: float) -> None:
    """1.5, 1 and 0.5 %, common practice from memory; what the maker measured wins."""
    laid = inches(MAT, base={"through": through})
    numbers = effective(laid.project)
    own = effective(inches(MAT, base={"through": through}, my_numbers={"draw_up": 0.02}).project)

    assert (draw_up, draw_up) == (numbers.draw_up_x, numbers.draw_up_y)
    assert (0.02, 0.02) == (own.draw_up_x, own.draw_up_y)


def test_nothing_shows_behind_when_only_batting_is_sewn_through() -> None:
    """It is said that thread need not match, and that the backing must be held by itself no more than 8 in apart."""
    words = _plain(" ".join(_edge(_finished(MAT, "binding", base={"through": "batting only"})).words))

    assert "none of their stitching shows on the back" in words
    assert "no more than 8 in apart" in words
    assert "foundation" not in words


def test_a_foundation_stays_in() -> None:
    """Batting on a foundation: both are named."""
    words = " ".join(_edge(_finished(MAT, "binding", base={"through": "batting on foundation"})).words)
    assert "the batting and its thin foundation" in words
    assert "The foundation stays in" in words


def test_the_usual_way_says_nothing_more() -> None:
    """Backing and batting sewn through, bound straight: the binding's own plan says it all."""
    assert () == _edge(_finished(MAT, "binding")).words


def test_a_wider_edge_asks_for_more_room_beyond_the_points() -> None:
    """1/2 in of seam: what shows is judged as before, so the limits to the trimmed edge move out by 1/4."""
    bound, turned = _finished(MAT, "binding").numbers, _finished(MAT, "turned through").numbers

    assert (0.25, 0.5) == (bound.points_stop, turned.points_stop)
    assert pytest.approx((0.25, 0.25)) == (
        turned.points_note - bound.points_note,
        turned.points_fix - bound.points_fix,
    )


def test_directions_of_a_round_edge_run_with_the_edges_of_a_mat() -> None:
    """A circle is gone round from its lowest place toward the right, as a mat is from its lower edge."""
    (curve,) = trim_edges(inches(ROUND).project, inches(ROUND).trim)
    ways = [atan2(y, x) for x, y in curve.bend[:3]]
    assert pytest.approx(-pi / 2) == ways[0]
    assert ways[0] < ways[1] < ways[2]
    assert pytest.approx((0, 1), abs=0.03) == curve.foot_of((0.0, -21.0))
