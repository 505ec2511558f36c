"""A braid's strips in words: the upper end meets the other side, the lower one is free."""

from __future__ import annotations

import pytest

from stitchflip.pattern.strip_facts import EndPlace, strip_ends, trim_words
from tests.pattern.papers import plan_of

BRAIDS = ("rye-plait", "arrow-ferry")


@pytest.mark.parametrize("name", BRAIDS)
def test_in_the_middle_of_a_braid_only_the_upper_end_is_trimmed(name: str) -> None:
    """The upper end is trimmed level with the edge beside; the lower one only has to run past the trim line."""
    strips = plan_of(name).build.strips[6:20]

    for strip in strips:
        ends = {end.name: end.place for end in strip_ends(strip)}
        assert {"upper": EndPlace.LEVEL, "lower": EndPlace.PAST} == ends
        assert "the upper end level with the edge beside" in "".join(str(run) for run in trim_words(strip))
