"""Chevron: a braid whose strips come in pairs of one fabric, so that every round is a V with its point up.

The second strip of a pair lies over the end of the first: the V is stepped, not mitered. On the center line the
seam of the second strip passes the point by one strip, and sewing the other leg first every second round puts
the steps on either side in turn.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.piecing.ways.braid import SIDES, first, growing
from stitchflip.piecing.ways.wanted import round_after_round, side_index
from stitchflip.project.model import PairFirst

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.ways.wanted import Job, Wanted

__all__ = ["first", "growing", "strips"]


def strips(job: Job) -> Iterator[Wanted]:
    """Both legs of each V, in one fabric where the fabric rule decides."""
    for strip in round_after_round(job, lambda number: _legs(job, number)):
        yield replace(strip, like_last=strip.visit > 0 and strip.fabric is None)


def _legs(job: Job, number: int) -> list[int]:
    """Sides of a round: "upper" is the right leg; a side to start at wins, and alternating begins there."""
    building = job.project.building
    choice = building.pair_first
    default = SIDES[1] if choice is PairFirst.LOWER else SIDES[0]
    leg = side_index(building.start, job.names, default=default)
    if choice is PairFirst.ALTERNATE and number % 2 == 0:
        leg = 1 - leg
    return [leg, 1 - leg]
