"""A braid's strips in words: the upper end meets the other side, the lower one is free."""

from __future__ import annotations

import pytest

from stitchflip.pattern.strip_facts import EndPlace, strip_ends, trim_words
from tests.pattern.papers import WITHOUT_DRAW_UP, plan_of, printed, shown, spaced

BRAIDS = ("rye-plait", "arrow-ferry")


@pytest.mark.parametrize("name", BRAIDS)
def test_in_the_middle_of_a_braid_only_the_upper_end_is_trimmed(name: str) -> None:
    """The upper end is trimmed level with the edge beside; the lower one only has to run past the trim line."""
    strips = plan_of(name).build.strips[6:20]

    for strip in strips:
        ends = {end.name: end.place for end in strip_ends(strip)}
        assert {"upper": EndPlace.LEVEL, "lower": EndPlace.PAST} == ends
        assert "the upper end level with the edge beside" in "".join(str(run) for run in trim_words(strip))


def test_a_half_square_is_cut_from_a_square() -> None:
    """Two halves come from one square; a single piece leaves one over."""
    told = spaced(shown("pattern", "rye-plait"))

    assert "every half is one center, a half square; one half is left over" in told
    assert "7 × 7 in, then once from corner to corner: a half square" in spaced(shown("table", "rye-plait"))


def test_a_strip_of_a_braid_opens_over_its_seam() -> None:
    """Below the center mark the strips of a braid open toward it, never away from it."""
    told = spaced(shown("pattern", "rye-plait"))

    assert "Open the strip over its seam" in told
    assert "away from the center" not in told


def test_a_half_square_is_laid_by_its_long_side_and_its_point() -> None:
    """The page says where both lie, and that the long side stretches; it has no middle one could mark.

    Without draw-up the cover of Rye Plait ends 20 + 1/2 below the mark; a square cut 7 is 7 / sqrt 2 = 4.95 high as
    a half, so its point lies 15.55 below the mark.
    """
    told = spaced(shown("pattern", "rye-plait", *WITHOUT_DRAW_UP))

    assert "its long side level, 20½ in below the center mark" in told
    assert "its point up, 15 9/16 in below the mark, on the center line" in told
    assert "Its long side is on the slant and stretches" in told


def test_rows_from_one_end_begin_with_a_first_strip_at_that_end() -> None:
    """Without draw-up the cover ends 6 + 1/2 below the mark, and a strip cut 2 1/2 reaches from there to 4."""
    told = spaced(shown("pattern", "four-from-one", *WITHOUT_DRAW_UP))

    assert "Lay the first strip" in told
    assert "its raw edges 4 in and 6½ in below the center mark, as drawn" in told
    assert "middle strip" not in told
    assert "−" not in told


def test_a_piece_cut_apart_has_no_table_of_smaller_sizes() -> None:
    """A quarter inch less across the whole would come off one panel alone."""
    assert "If yours is short" not in shown("pattern", "four-from-one")


@pytest.mark.parametrize("name", BRAIDS)
def test_the_cover_of_a_long_narrow_piece_is_one_page(name: str) -> None:
    """The picture shrinks until size, level and the maker's line stand below it."""
    first, second = printed("pattern", name).pages[:2]

    assert "Made by" in first
    assert "At a glance" in second


def test_only_the_center_is_cut_to_the_shape_of_the_center() -> None:
    """Plum Skirt cuts a square for its bias binding as well; the hexagon is told once."""
    assert 1 == shown("pattern", "plum-skirt").count("Cut the center to its shape")
