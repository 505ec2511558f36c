"""How long it takes and how much thread goes in, as ranges: a promise to the hour would be a lie.

Minutes and thread are from memory until a maker's own log replaces them; they are among her numbers.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, floor

from stitchflip.finishing.model import BindingPlan
from stitchflip.forecast.model import WorkEstimate
from stitchflip.lengths import CM_PER_INCH, INCHES_PER_YARD, TOLERANCE_IN, Unit
from stitchflip.piecing.model import Build, SewnPiece
from stitchflip.project.model import Finish, Project
from stitchflip.project.numbers import Numbers

BASE_MINUTES = 10.0
"""Cutting, layering and basting one base."""
SQUARING_UP_MINUTES = 15.0
"""Squaring up one piece."""
BINDING_MINUTES = 20.0
"""Cutting, joining and pressing the binding of all pieces."""
MACHINE_MINUTES_PER_10_IN = 2.5
"""Sewing the binding on by machine, for every 10 in begun (25 cm)."""
HAND_MINUTES_PER_IN = 1.0
"""Sewing the binding down by hand: 10 minutes for 16 in on paper, times 1.6 in fact."""
LOW, HIGH = 0.8, 1.4
"""The range told: 20 % less to 40 % more than what the minutes add up to."""
_STRIP_STEP_IN = 20.0
_BINDING_STEP_IN = 10.0


LEAN_THREAD = 2.5 * 1.1
"""Thread to one of seam: the flat ratio of a lockstitch and a tenth for waste (published, see the tests)."""

_ROUNDS_OF_EDGE = 3
"""Stay-stitching, binding sewn on, binding sewn down."""


def estimate_work(
    project: Project, numbers: Numbers, builds: Sequence[tuple[Build, int]], binding: BindingPlan
) -> WorkEstimate:
    """Seams, thread and hours for all pieces together.

    A seam counts as long as its strip must be to reach; what is sewn beyond is trimmed away. A strip takes the
    maker's minutes and one more for every 20 in begun; every piece takes its base and its squaring up; the
    binding takes its preparation once for all pieces, and then its length for each: by machine the length joined,
    by hand the length sewn down, once round.

    Args:
        project: For how many alike and how the binding is sewn down.
        numbers: For minutes per strip and thread per inch of seam.
        builds: The build of each kind of block in one piece, and how many there are of it.
        binding: The binding of one piece.

    Returns:
        Seam length in inches, thread in yards, hours to the nearest half hour.
    """
    seams, each = 0.0, _binding_minutes(project, binding)
    for build, count in builds:
        strips = [strip for strip in build.strips if strip.seam is not None and strip.needed_length > TOLERANCE_IN]
        seams += project.how_many * count * sum(strip.needed_length for strip in strips)
        sewing = sum(_strip_minutes(strip, numbers) for strip in strips)
        each += count * (sewing + BASE_MINUTES + SQUARING_UP_MINUTES)
    minutes = BINDING_MINUTES + project.how_many * each
    return WorkEstimate(
        seams_in=seams,
        thread_yards=thread_yards(seams, numbers.thread_per_inch),
        hours_low=_to_half_hour(LOW * minutes),
        hours_high=_to_half_hour(HIGH * minutes),
        thread_low_yards=thread_yards(seams, LEAN_THREAD),
        thread_all_yards=thread_yards(
            seams + project.how_many * binding.pieces * _ROUNDS_OF_EDGE * binding.perimeter, numbers.thread_per_inch
        ),
    )


def _strip_minutes(strip: SewnPiece, numbers: Numbers) -> float:
    """Laying on, pinning, sewing, opening, pressing and trimming one strip."""
    begun = ceil(strip.needed_length / _STRIP_STEP_IN - TOLERANCE_IN)
    return numbers.minutes_per_strip + begun * numbers.minutes_per_further_20_in


def _binding_minutes(project: Project, binding: BindingPlan) -> float:
    """Sewing the binding of one piece on and down, of every panel when it is cut apart; another edge takes as long."""
    if project.binding.finish is Finish.HAND:
        return HAND_MINUTES_PER_IN * binding.perimeter * binding.pieces
    step = _BINDING_STEP_IN if project.units is Unit.INCH else 25 / CM_PER_INCH
    sewn = binding.made or binding.perimeter
    return MACHINE_MINUTES_PER_10_IN * ceil(sewn / step - TOLERANCE_IN) * binding.pieces


def _to_half_hour(minutes: float) -> float:
    """Hours to the nearest half hour, and never none at all."""
    return max(1, floor(minutes / 30 + 0.5 + TOLERANCE_IN)) / 2


def thread_yards(seams_in: float, ratio: float) -> float:
    """Thread for seams, needle and bobbin together, yards.

    Args:
        seams_in: Length of all seams, inches.
        ratio: Inches of thread for an inch of seam, waste in it.

    Example:
        >>> round(thread_yards(302, 3.5), 1)
        29.4
    """
    return seams_in * ratio / INCHES_PER_YARD


def lockstitch_ratio(thickness_in: float, stitches_per_inch: float, waste: float = 0.0) -> float:
    """Thread for an inch of lockstitch seam: once along above, once below, and through the layers twice a stitch.

    Args:
        thickness_in: Of the layers sewn together, inches.
        stitches_per_inch: Stitches in an inch.
        waste: Fraction added for ends and rethreading, 0.1 to 0.2 in print.

    Example:
        >>> round(lockstitch_ratio(0.01, 10), 6)
        2.2
    """
    return (2 + 2 * thickness_in * stitches_per_inch) * (1 + waste)
