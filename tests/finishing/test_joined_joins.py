"""One join in section: what shows, the gap, what the cover passes, the filler, and the strips nobody has to give."""

from __future__ import annotations

import pytest

from stitchflip.errors import BuildError
from stitchflip.finishing.joined import (
    covered_cut,
    flat_cut_that_fills,
    folded_cut_that_passes,
    passes_by,
    raw_edges_apart,
    room_between,
    shows_between,
    usual_flat_cut,
)
from stitchflip.lengths import Unit
from stitchflip.project.model import Filler
from tests.finishing.quilts import metric_quilt, quilt, strips

CM = 1 / 2.54


def test_usual_strips_in_inches_show_five_eighths() -> None:
    """Flat 1 1/8 and folded 2 at a seam of 1/4: shows 5/8, gap 1/8, passes 1/8; the batting of 1/8 fills the gap."""
    join = quilt(4, 5).join

    assert (0.625, 0.125, 0.125, 0.0) == (join.shows, join.gap, join.passes, join.filler)


def test_usual_strips_in_centimeters_show_one_point_eight() -> None:
    """Flat 3.3 and folded 6 at a seam of 0.75 cm: shows 1.8, gap 0.3, passes 0.45 cm."""
    join = metric_quilt(2, 2, "33").join

    assert pytest.approx((1.8 * CM, 0.3 * CM, 0.45 * CM)) == (join.shows, join.gap, join.passes)
    assert 0 == join.filler


def test_strips_nobody_gave_are_cut_as_usual() -> None:
    """1 1/8 and 2 in; 3.3 and 6 cm."""
    assert {1.125} == {strip.cut for strip in strips(quilt(2, 2), "flat")}
    assert {2.0} == {strip.cut for strip in strips(quilt(2, 2), "folded")}
    metric = metric_quilt(2, 2, "33")
    assert pytest.approx(3.3 * CM) == strips(metric, "flat")[0].cut
    assert pytest.approx(6 * CM) == strips(metric, "folded")[0].cut


def test_a_folded_strip_nobody_gave_follows_the_flat_one() -> None:
    """Flat 1: 2 (1/8 + 1/4 + 1/2) = 1 3/4; flat 1 1/2: 2 (1/8 + 1/4 + 1) = 2 3/4."""
    assert 1.75 == strips(quilt(2, 2, flat_cut="1"), "folded")[0].cut
    assert 2.75 == strips(quilt(2, 2, flat_cut="1 1/2"), "folded")[0].cut


def test_the_usual_flat_strip_follows_the_seam() -> None:
    """Four seams and the batting: 4 x 3/8 + 1/8 = 1 5/8; sewn at 7/32 it is 4 x 7/32 + 1/8 = 1."""
    assert 1.625 == usual_flat_cut(0.375, Unit.INCH)
    assert 1.0 == usual_flat_cut(7 / 32, Unit.INCH)


def test_the_flat_strip_that_fills_goes_down_to_the_grid_but_never_overlaps() -> None:
    """1 + 3/16 = 1 3/16, down to 1 1/8; with no loft at all 1; at a seam of 7/32 never under 7/8."""
    assert 1.125 == flat_cut_that_fills(0.25, 3 / 16, Unit.INCH)
    assert 1.0 == flat_cut_that_fills(0.25, 0.0, Unit.INCH)
    assert 0.875 == flat_cut_that_fills(7 / 32, 0.05, Unit.INCH)
    assert pytest.approx(3.3 * CM) == flat_cut_that_fills(0.75 * CM, 0.35 * CM, Unit.CM)


def test_a_scant_seam_changes_every_number() -> None:
    """Flat 1 1/8 at 7/32: shows 11/16, edges 1/4 apart; folded 2 passes 1 - 7/32 - 11/16 = 3/32."""
    assert (11 / 16, 1 / 4) == (shows_between(1.125, 7 / 32), raw_edges_apart(1.125, 7 / 32))
    assert 3 / 32 == passes_by(2, 1.125, 7 / 32)


def test_a_gap_the_batting_does_not_fill_gets_a_filler() -> None:
    """Flat 1 1/4: the raw edges stand 1/4 apart, twice the batting's 1/8."""
    assert 0.25 == quilt(2, 2, flat_cut="1 1/4").join.filler
    assert 0 == quilt(2, 2, flat_cut="1 1/4", numbers={"loft": 0.25}).join.filler


def test_batting_trimmed_to_the_seam_leaves_the_whole_width_to_fill() -> None:
    """With the batting out of the allowances, all that shows must be filled: 5/8."""
    assert 0.625 == quilt(2, 2, batting_reaches="to the seam").join.filler


def test_covered_strips_are_cut_three_seams_wider() -> None:
    """2 in: 2 3/4, filler 1 1/2 up to the raw edges and 2 up to the seams; one seam beyond the far stitching."""
    join = quilt(2, 2, join="covered strips", shows="2").join

    assert (2, 1.5, 0.25, 1.5) == (join.shows, join.gap, join.passes, join.filler)
    assert 2 == quilt(2, 2, join="covered strips", shows="2", batting_reaches="to the seam").join.filler
    assert {2.75} == {strip.cut for strip in quilt(2, 2, join="covered strips", shows="2").strips}
    assert 2.75 == covered_cut(2, 0.25)
    assert [1.5, 2] == [room_between(2, 0.25, reaches) for reaches in Filler]


def test_the_back_of_a_covered_join_may_be_a_folded_strip() -> None:
    """Shows 1, back cut 3 and folded: 1 1/2 - 1/4 - 1 = 1/4 beyond the far stitching."""
    made = quilt(2, 2, join="covered strips", shows="1", folded_cut="3")

    assert 0.25 == made.join.passes
    assert {3.0} == {strip.cut for strip in strips(made, "folded strip")}


def test_the_fold_in_front_shows_to_its_edge() -> None:
    """Flat 1 1/8 behind, folded 1 3/4 in front: 7/8 - 1/4 = 5/8 on that face as well."""
    made = quilt(2, 1, fold="in front", folded_cut="1 3/4", fabric="Linen", fabric_behind="Back")

    assert 0.625 == made.join.shows
    assert [("folded strip between blocks", "Linen", 1), ("flat strip between blocks", "Back", 0)] == [
        (strip.name, strip.fabric, len(strip.front)) for strip in made.strips
    ]


def test_a_wide_fold_in_front_covers_some_of_the_next_block() -> None:
    """Folded 2: 1 - 1/4 = 3/4 shows, from the seam line of the block at the left, 1/8 of it on the right block."""
    made = quilt(2, 1, fold="in front")
    ((front,),) = [strip.front for strip in strips(made, "folded strip")]

    assert 0.75 == made.join.shows
    assert [-0.3125, 0.4375] == [min(x for x, _ in front), max(x for x, _ in front)]


def test_strips_behind_show_nowhere() -> None:
    """The fold lies behind unless the maker says otherwise."""
    assert [1, 0] == [len(strip.front) for strip in quilt(2, 1).strips]


def test_a_plain_seam_takes_nothing() -> None:
    """No strips, no gap, no filler."""
    made = quilt(4, 4, "8 1/2", join="plain seam")

    assert () == made.strips
    assert (0, 0, 0, 0) == (made.join.shows, made.join.gap, made.join.passes, made.join.filler)


def test_a_flat_strip_used_up_by_its_seams_is_refused() -> None:
    """1/2 in between two seams of 1/4 leaves nothing."""
    with pytest.raises(
        BuildError, match=r"½ in \(1.27 cm\) wide is used up by its two seams of ¼ in \(0.64 cm\)"
    ) as caught:
        quilt(2, 2, flat_cut="1/2")
    assert ("joined.flat_cut", "build.join-too-narrow") == (caught.value.where, caught.value.code)


def test_the_folded_strip_that_passes_is_rounded_up() -> None:
    """2 (1/8 + 7/32 + 11/16) = 2 1/16, up to 2 1/8; metric 2 (0.3 + 0.75 + 1.8) = 5.7, up to 6."""
    assert 2.125 == folded_cut_that_passes(0.125, 1.125, 7 / 32, Unit.INCH)
    assert pytest.approx(6 * CM) == folded_cut_that_passes(0.3 * CM, 3.3 * CM, 0.75 * CM, Unit.CM)


def test_words_say_how_the_join_is_sewn_with_its_numbers() -> None:
    """Behind: flat strip in front; the numbers of the join; cut to what is measured."""
    words = " ".join(quilt(4, 5).words)

    assert "flat strip to the front and the folded strip to the back" in words
    assert "⅝ in shows between the blocks on the front" in words.replace("\u202f", " ")
    assert "Cut every strip to the block or the row as measured" in words
    in_front = " ".join(quilt(4, 5, fold="in front", first="columns").words)
    assert "flat strip to the back and the folded strip to the front" in in_front
    assert "Join the blocks of each column first" in in_front


def test_words_of_a_plain_seam_follow_what_is_sewn_through() -> None:
    """Batting only: trimmed out of the allowances and pressed open; with a backing its edges are closed by hand."""
    alone = " ".join(quilt(4, 4, "8 1/2", join="plain seam", parts={"base": {"through": "batting only"}}).words)
    backed = " ".join(quilt(4, 4, "8 1/2", join="plain seam").words)

    assert "Trim the batting out of every seam allowance, ¼ in back" in alone.replace("\u202f", " ")
    assert "press the seams open" in alone
    assert "stitch in the ditch" in alone
    assert "the backing is held only every 8 in" in alone.replace("\u202f", " ")
    assert "turn the other ¼ in under" in backed.replace("\u202f", " ")


def test_words_name_the_filler() -> None:
    """A strip of batting is something to cut as well."""
    words = " ".join(quilt(2, 2, join="covered strips", shows="2").words).replace("\u202f", " ")

    assert "lay a strip of batting 1½ in wide" in words
    assert "so that 2 in of it shows" in words
