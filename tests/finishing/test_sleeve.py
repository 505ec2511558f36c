"""The hanging sleeve."""

from __future__ import annotations

from stitchflip.finishing import sleeve_for
from stitchflip.lengths import Unit


def test_a_sleeve_finishes_4_in_wide_and_2_in_shorter_than_the_piece() -> None:
    """8 1/2 x 32 1/2 with 1/4 in seam and 1 in hems: (8 1/2 - 1/2) / 2 = 4 wide, 30 1/2 long."""
    sleeve = sleeve_for(32.5, 0.25, Unit.INCH)
    assert (8.5, 32.5, 4.0, 30.5) == (sleeve.cut_wide, sleeve.cut_long, sleeve.finished_wide, sleeve.finished_long)


def test_a_metric_sleeve_is_cut_22_cm_wide() -> None:
    """The metric sleeve is redrafted, not converted from 8 1/2 in."""
    sleeve = sleeve_for(80 / 2.54, 0.75 / 2.54, Unit.CM)
    assert 22.0 == round(sleeve.cut_wide * 2.54, 9)
    assert 75.0 == round(sleeve.finished_long * 2.54, 9)
