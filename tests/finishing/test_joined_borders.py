"""Borders from the inside out, and other ways to lay the same blocks."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.finishing.joined import block_count, mitered_length, sashing_for
from stitchflip.finishing.quilt_model import QuiltPlan
from stitchflip.lengths import Unit
from stitchflip.project.model import Setting
from tests.finishing.quilts import blocks_shown, metric_quilt, on_the_front, quilt, together, total

SEAM = 0.25
KINDS = ["butted", "mitered", "corner squares"]


def bordered(*borders: dict[str, str], size: str = "8 1/2") -> QuiltPlan:
    """4 x 4 blocks of 8 1/2, 32 1/2 square, with borders of linen."""
    listed = [{"fabric": "Linen", **border} for border in borders]
    return quilt(4, 4, size, join="plain seam", parts={"borders": listed})


def test_a_butted_border_goes_on_sides_first() -> None:
    """3 1/2 cut adds 3 a side: sides 32 1/2 long, ends 38 1/2."""
    made = bordered({"cut": "3 1/2"})
    (border,) = made.borders

    assert (38.5, 38.5) == (made.wide, made.high)
    assert (32.5, 38.5, 0, "") == (border.sides_long, border.ends_long, border.corner_square, border.corner_fabric)


def test_a_mitered_border_is_cut_long() -> None:
    """The edge, the width at both ends and 2 in: 32 1/2 + 7 + 2."""
    (border,) = bordered({"cut": "3 1/2", "corners": "mitered"}).borders
    assert (41.5, 41.5) == (border.sides_long, border.ends_long)


def test_a_metric_miter_has_five_centimeters_to_spare() -> None:
    """2 x 31.5 + 1.5 = 64.5; with a border of 8 on both ends and 5: 85.5 cm."""
    parts = {"borders": [{"cut": "8", "fabric": "Linen", "corners": "mitered"}]}
    (border,) = metric_quilt(2, 2, "33", parts, join="plain seam").borders
    assert pytest.approx(85.5 / 2.54) == border.ends_long


def test_corner_squares_are_as_large_as_the_border_is_cut() -> None:
    """Sides and ends as long as the quilt; four squares of 3 1/2; the size is that of the other borders."""
    made = bordered({"cut": "3 1/2", "corners": "corner squares", "corner_fabric": "Dot"})
    (border,) = made.borders

    assert (32.5, 32.5, 3.5, "Dot") == (border.sides_long, border.ends_long, border.corner_square, border.corner_fabric)
    assert (38.5, 4) == (made.wide, len(border.corner_places))


def test_borders_go_on_from_the_inside_out() -> None:
    """1 1/2 adds 1, then 4 1/2 adds 4: 32 1/2, 34 1/2, 42 1/2."""
    made = bordered({"cut": "1 1/2"}, {"cut": "4 1/2"})

    assert [(32.5, 34.5), (34.5, 42.5)] == [(one.sides_long, one.ends_long) for one in made.borders]
    assert 42.5 == made.wide


def test_a_border_round_a_single_piece() -> None:
    """One across and one down: 14 x 20 with 2 1/2: 18 x 24; no words about joins."""
    parts = {"borders": [{"cut": "2 1/2", "fabric": "Linen"}]}
    made = quilt(1, 1, ("14", "20"), parts=parts)

    assert (18, 24, ()) == (made.wide, made.high, made.strips)
    assert 2 == len(made.words)
    assert "batting 2 in wide under it" in made.words[0].replace("\u202f", " ")
    assert "Measure in three places and cut to the mean" in made.words[1]


def test_a_border_used_up_by_its_seams_adds_nothing() -> None:
    """1/2 in cut: nothing to draw, and the quilt is as it was."""
    made = bordered({"cut": "1/2"})
    assert (32.5, ()) == (made.wide, made.borders[0].front)


def test_mitered_areas_meet_on_the_diagonal() -> None:
    """Four pieces alike round a square quilt, together the ring: 38 1/2 squared less 32 squared."""
    (border,) = bordered({"cut": "3 1/2", "corners": "mitered"}).borders
    ring = 38.5**2 - 32**2
    assert 4 == len(border.front)
    assert pytest.approx(ring) == sum(area_of(one) for one in border.front)


def area_of(polygon: tuple[tuple[float, float], ...]) -> float:
    """Area by the surveyor's formula, above zero when counter-clockwise."""
    return sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(polygon, polygon[1:] + polygon[:1], strict=True)) / 2


@given(
    borders=st.lists(st.tuples(st.integers(7, 32), st.sampled_from(KINDS)), min_size=1, max_size=3),
    on_point=st.booleans(),
)
@settings(max_examples=30, deadline=None)
def test_borders_and_blocks_tile_the_quilt(borders: list[tuple[int, str]], *, on_point: bool) -> None:
    """Each border adds its cut width less two seams on every side; everything that shows fills the quilt once."""
    listed = [{"cut": f"{cut}/8", "corners": corners, "fabric": "Linen"} for cut, corners in borders]
    setting = "on point" if on_point else "straight"
    made = quilt(2, 3, "6 1/2", join="covered strips", shows="1", setting=setting, parts={"borders": listed})
    plain = quilt(2, 3, "6 1/2", join="covered strips", shows="1", setting=setting)
    pieces = on_the_front(made) + blocks_shown(made, SEAM)

    adds = sum(cut / 8 - 2 * SEAM for cut, _ in borders)
    assert pytest.approx((plain.wide + 2 * adds, plain.high + 2 * adds)) == (made.wide, made.high)
    assert pytest.approx(made.wide * made.high) == total(pieces)
    assert pytest.approx(made.wide * made.high, rel=1e-5) == together(pieces)


def test_golden_sashing_for_a_nine_inch_block_rounds_to_three_and_five_eighths() -> None:
    """9 x 1.618 / 4 = 3.6405; and the miter of a 4 in border on 60 in: 60 + 8 + 2."""
    assert pytest.approx(3.6405) == sashing_for(9)
    assert 70 == mitered_length(60, 4, Unit.INCH)


# --- layouts ---------------------------------------------------------------------------------------------------


def test_other_ways_to_lay_77_blocks() -> None:
    """7 x 10 with seven left over, 8 x 9 and 6 x 12 with five; 7 x 11 is the way they are laid."""
    made = quilt(7, 11, "6 1/2", join="plain seam")
    assert [(8, 9, 5), (7, 10, 7), (6, 12, 5)] == [(one.across, one.down, one.left_over) for one in made.layouts]
    assert [(48.5, 54.5), (42.5, 60.5), (36.5, 72.5)] == [(one.wide, one.high) for one in made.layouts]


def test_a_layout_says_the_backing_it_needs() -> None:
    """Backing 2 in larger a side: from fabric 47 in wide 7 blocks across take one width, 8 take two."""
    parts = {"base": {"through": "batting only"}, "backing": {"fabric": "Back", "usable_width": "47"}}
    made = quilt(7, 11, "6 1/2", join="plain seam", parts=parts)
    words = {(one.across, one.down): one.backing.replace("\u202f", " ") for one in made.layouts}

    assert words[7, 10].startswith("46½ × 64½ in: one width")
    assert "2 widths" in words[8, 9]


def test_quilted_blocks_bring_their_backing() -> None:
    """Sewn through backing and batting: as many as are laid."""
    made = quilt(7, 11, "6 1/2", join="plain seam")
    assert ["in the 72 blocks", "in the 70 blocks", "in the 72 blocks"] == [one.backing for one in made.layouts]


def test_layouts_count_borders() -> None:
    """A border of 3 1/2 adds 6 each way."""
    parts = {"borders": [{"cut": "3 1/2", "fabric": "Linen"}]}
    made = quilt(7, 11, "6 1/2", join="plain seam", parts=parts)
    assert (54.5, 60.5) == (made.layouts[0].wide, made.layouts[0].high)


def test_layouts_on_point_use_the_blocks_between() -> None:
    """13 blocks (3 x 3 and 4 between): 2 x 5 takes 14, 2 x 4 takes 11 of 13, more than a tenth over; none is left."""
    made = quilt(3, 3, "6 1/2", setting="on point", join="plain seam")
    assert 13 == len(made.blocks) == block_count(3, 3, Setting.ON_POINT)
    assert () == made.layouts


@given(st.integers(1, 9), st.integers(1, 9), st.sampled_from(list(Setting)))
@settings(max_examples=40, deadline=None)
def test_layouts_use_nearly_all_blocks(across: int, down: int, setting: Setting) -> None:
    """At most a tenth over, longer than wide but not over two and a half times, the most even first."""
    made = quilt(across, down, "6 1/2", setting=setting.value, join="plain seam")
    for one in made.layouts:
        assert len(made.blocks) - one.left_over == block_count(one.across, one.down, setting)
        assert 0 <= one.left_over <= len(made.blocks) / 10
        assert one.wide <= one.high <= 2.5 * one.wide + 1e-6
    proportions = [one.high / one.wide for one in made.layouts]
    assert sorted(proportions) == proportions
