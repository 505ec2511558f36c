"""Four examples whose edges are something else: round, eight-sided, cut apart, and turned through."""

from __future__ import annotations

from math import pi, sqrt, tan

import pytest

from stitchflip.piecing.geometry import area
from stitchflip.planning.model import Severity
from tests.examples.drafts import by_round, flat, loose_ends, planned

NAMES = ("plum-skirt", "compass-tray", "four-from-one", "soft-cover")


@pytest.mark.parametrize("name", NAMES)
def test_each_can_be_made_as_it_is(name: str) -> None:
    """No stop, nothing to fix, nothing bare inside the trim line."""
    made = planned(name)
    assert [] == [one.code for one in made.findings if one.severity is not Severity.NOTE]
    assert [] == [spot for spot in made.build.bare if spot.grade != "note"]


@pytest.mark.parametrize("name", NAMES)
def test_patches_fill_the_piece_to_its_edge(name: str) -> None:
    """What shows of all pieces adds up to the squared-up piece, round or straight, and nothing lies double."""
    build = planned(name).build
    shown = sum(area(patch) for piece in build.pieces for patch in piece.visible)
    assert pytest.approx(area(build.trim), rel=1e-6) == shown


# --- Plum Skirt -----------------------------------------------------------------------------------------------


def test_plum_skirt_is_round() -> None:
    """22 in from the center mark all round: 138.23 in of edge, 1520.5 square inches, one edge, no corner."""
    made = planned("plum-skirt")

    assert [("curve", 22)] == [(side.name, side.distance) for side in made.square_up.sides]
    assert pytest.approx(44 * pi) == made.binding.perimeter
    assert pytest.approx(22**2 * pi) == made.square_up.area
    assert () == made.binding.corners


def test_plum_skirt_rounds_from_the_center_mark() -> None:
    """Center 10: raw edge 5; each round adds its width less 1/2: 8, 11, 12, 15, 18, 19, 23 1/4."""
    raw = [strips[0].raw_edge_at for strips in by_round(flat("plum-skirt"))]
    assert pytest.approx([8, 11, 12, 15, 18, 19, 23.25]) == raw


def test_plum_skirt_is_bound_on_the_bias_from_a_square_of_22() -> None:
    """138.23 + 10 = 148.23 at 2 1/2: 22 in give 6 turns of 21.5 root 2 = 182.4; 21 in only 5 of 20.5 root 2 = 145."""
    made = planned("plum-skirt")

    assert ("bias", 22.0, 11) == (made.edge.grain, made.edge.bias_square, made.edge.bias_strips)
    assert pytest.approx(148.23, abs=0.01) == made.binding.need
    assert pytest.approx(182.43, abs=0.01) == made.binding.made
    (square,) = [piece for piece in made.pieces if piece.name.startswith("Binding")]
    assert (22, 22, 1, "rectangle") == (square.wide, square.long, square.count, square.kind)


def test_plum_skirt_shows_three_inches_of_its_last_round() -> None:
    """The last seam lies at 19 - 1/4 = 18 3/4; the binding's seam at 21 3/4: 3 in show where the circle is farthest."""
    made = flat("plum-skirt")
    last = by_round(made)[-1][0]
    reaches = max(last.normal[0] * x + last.normal[1] * y for x, y in made.build.trim_inner)
    assert pytest.approx(18.75) == last.seam_at
    assert pytest.approx(3, abs=0.01) == reaches - last.seam_at


# --- Compass Tray ---------------------------------------------------------------------------------------------


def test_compass_tray_is_an_octagon() -> None:
    """16 between flats: side 16 tan 22.5 = 6.627, corner to corner 17.318, area 8 x 6.627 x 8 / 2 = 212.08."""
    made = planned("compass-tray")
    side = 16 * tan(pi / 8)

    assert pytest.approx(6.627, abs=0.001) == side
    assert pytest.approx([side] * 8) == [one.length for one in made.square_up.sides]
    assert pytest.approx(sqrt(16**2 + side**2)) == max(made.square_up.diagonals)
    assert pytest.approx(32 * side) == made.square_up.area


def test_compass_tray_stops_a_tenth_before_each_corner() -> None:
    """Eight corners of 135 degrees: 1/4 / tan 67.5 = 0.1036."""
    corners = planned("compass-tray").binding.corners
    assert pytest.approx([135] * 8) == [corner.angle for corner in corners]
    assert pytest.approx([0.1036] * 8, abs=1e-4) == [corner.stop_before for corner in corners]


def test_compass_tray_rounds() -> None:
    """Center 7 1/2: 3 3/4, then 4 3/4, 6 1/4, 7 1/4, 9; four dark winds and four pale in each round."""
    rounds = by_round(flat("compass-tray"))

    assert pytest.approx([4.75, 6.25, 7.25, 9]) == [strips[0].raw_edge_at for strips in rounds]
    assert [["North Sea", "Haze"] * 4, ["Signal", "Sand"] * 4] * 2 == [[one.fabric for one in each] for each in rounds]


def test_compass_tray_first_strip_by_formula() -> None:
    """Seam at 3 1/2, neighbors at 3 3/4: 2 (3.75 - 3.5 cos 45) / sin 45 = 3.607."""
    first = flat("compass-tray").build.strips[0]
    assert pytest.approx(2 * (3.75 - 3.5 * sqrt(0.5)) / sqrt(0.5)) == first.needed_length


def test_compass_tray_binding() -> None:
    """8 x 6.627 = 53.02, 10 for the tails and 8 x 1/2 for the corners: 67.02; two strips give 77 1/2."""
    binding = planned("compass-tray").binding
    assert pytest.approx(67.02, abs=0.005) == binding.need
    assert (2, 77.5) == (binding.strips, binding.made)


# --- Four from One --------------------------------------------------------------------------------------------


def test_four_from_one_is_one_base_of_four_mats() -> None:
    """4 x 9 and three times 1/4 lost: 36 3/4 x 12; base (36 3/4 / 0.985 + 2 = 39.31, up to 39 1/2) x 14 1/2."""
    made = planned("four-from-one")

    assert made.panels is not None
    assert (4, 9, 12, 0.25) == (len(made.panels.panels), made.panels.wide, made.panels.high, made.panels.loss)
    assert (36.75, 12) == (made.square_up.wide, made.square_up.high)
    assert (39.5, 14.5) == (made.base.wide, made.base.high)


def test_four_from_one_opens_seven_seams_at_six_cuts() -> None:
    """Eight rows have seven seams; three gaps are cut on both sides: 42 places to lock or to stay-stitch beside."""
    made = planned("four-from-one")

    assert made.panels is not None
    assert (7, 6) == (len(made.build.strips), len(made.panels.cuts))
    assert 7 * 6 == len(made.panels.ends_to_lock)
    assert [] == loose_ends(made)
    assert "edge.ends-at-cuts" in {one.code for one in made.findings}


def test_four_from_one_strips_use_nearly_a_whole_width() -> None:
    """36 3/4 and 1/2 past the trim line at both ends is 37 3/4, 1/2 for a free end: 38 1/4, out of 40."""
    lengths = {strip.cut_length for strip in flat("four-from-one").build.strips}
    assert {38.25} == lengths


def test_four_from_one_is_bound_four_times() -> None:
    """42 + 10 + 4 x 1/2 = 54 for each: a strip of 40 and half of another (57 3/4 joined at 2 1/4), six for all."""
    binding = planned("four-from-one").binding
    assert (42, 54, 57.75, 6, 4) == (binding.perimeter, binding.need, binding.made, binding.strips, binding.pieces)


# --- Soft Cover -----------------------------------------------------------------------------------------------


def test_soft_cover_finishes_an_inch_smaller_than_it_is_squared_up() -> None:
    """25 x 31 with 1/2 in of seam: 24 x 30; 5 in open; no binding, and no strip of one in the list."""
    made = planned("soft-cover")

    assert ("turned through", 0.5, 0.0, 5.0) == (made.edge.kind, made.edge.seam, made.edge.shows, made.edge.opening)
    assert "24\u202f×\u202f30\u202fin" in made.edge.words[0]
    assert 0 == made.binding.strips
    assert not any(piece.kind == "binding" for piece in made.pieces)


def test_soft_cover_draws_up_as_batting_alone_does() -> None:
    """1 %: base 25 / 0.99 + 2 = 27.25, up to 27 1/2; 31 / 0.99 + 2 = 33.31, up to 33 1/2."""
    made = planned("soft-cover")
    assert (0.01, 0.01) == (made.numbers.draw_up_x, made.numbers.draw_up_y)
    assert (27.5, 33.5) == (made.base.wide, made.base.high)


def test_soft_cover_has_its_backing_last() -> None:
    """Cut half an inch larger on every side than the squared-up piece: 26 x 32; the label goes on first."""
    made = planned("soft-cover")

    assert pytest.approx((26, 32)) == (made.backing.wide, made.backing.high)
    assert any("Before the piece is sewn together and turned" in word for word in made.extras.words)
    assert any("none of their stitching shows on the back" in word for word in made.edge.words)


def test_soft_cover_rounds() -> None:
    """Center 5 x 11: after each pair the outer edge grows by the width less 1/2 on each side, flat."""
    made = flat("soft-cover")
    upright = [max(strip.raw_edge_at for strip in each if strip.side == "top") for each in by_round(made)]
    level = [max(strip.raw_edge_at for strip in each if strip.side == "right") for each in by_round(made)]

    assert pytest.approx([7.5, 9.5, 12, 14, 17.25]) == upright
    assert pytest.approx([4.5, 6.5, 9, 11, 14.25]) == level
