"""Published thread ratios of lockstitch 301 against ours.

Sources are named beside each check by title, publisher and address, as read in stored copies. The flat ratio and
the one by thickness disagree in print; the maker's own number replaces both.
"""

from __future__ import annotations

import pytest

from stitchflip.forecast import lockstitch_ratio, thread_yards

CM_IN_A_YARD = 91.44


def test_ratio_by_thickness() -> None:
    """Thickness 0.01 in at 10 stitches an inch: 2.2 in of thread for an inch of seam.

    Calculate Amount of Sewing Thread Consumption,
    https://www.textilecalculations.com/calculate-amount-of-sewing-thread-consumption/
    """
    assert 2.2 == pytest.approx(lockstitch_ratio(0.01, 10))


def test_a_seam_of_220_cm_takes_550_cm() -> None:
    """Flat ratio 2.5: 220 cm of seam take 550 cm of thread, half of it needle and half bobbin.

    Thread consumption example (question page),
    https://melgeecrafts.com/needlework/you-asked-how-do-you-calculate-embroidery-thread-consumption.html, with the
    ratio of ISO stitch classes 300-400, Apparel Science,
    http://apparelscience.com/index.php/85-apparel-science/technical/126-iso-stitch-types-300-400
    """
    assert 550 == pytest.approx(thread_yards(220 / 2.54, 2.5) * CM_IN_A_YARD)


@pytest.mark.parametrize(
    ("waste", "ratio"),
    [
        # Measuring Actual Thread Consumption, Apparel Science,
        # http://www.apparelscience.com/measuring-actual-thread-consumption/
        (0.10, 2.42),
        (0.15, 2.53),
        # Estimating Thread Consumption (2011),
        # http://www.apparel-merchandising.com/2011/08/estimating-thread-consumption-thread.html
        (0.20, 2.64),
    ],
)
def test_waste_of_10_to_20_percent_is_added(waste: float, ratio: float) -> None:
    """2.2 in of thread an inch becomes 2.42, 2.53 and 2.64."""
    assert ratio == pytest.approx(lockstitch_ratio(0.01, 10, waste))


def test_the_house_ratio_covers_a_thick_base_with_waste() -> None:
    """Backing, 1/8 in of batting pressed to half by the foot, and fabric at 9 stitches: below 3 1/2 with 10 % waste.

    The pressed thickness is common practice, no source; the formula is that of the first check.
    """
    assert 2.9 < lockstitch_ratio(0.0625, 9, waste=0.1) < 3.5
