"""Pairs round the point: two strips at one end of a center on point, two at the other, or at one end only."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.piecing.ways.wanted import round_after_round
from stitchflip.project.model import PairFirst, Runs

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.ways.wanted import Job, Wanted


def strips(job: Job) -> Iterator[Wanted]:
    """The pair at one end, then the pair at the other; which strip of a pair goes first by the maker's choice."""
    return round_after_round(job, lambda number: _visits(job, number))


def _visits(job: Job, number: int) -> list[int]:
    """Sides of a round.

    A runner drawn lying has its ends at the right and the left; one drawn upright at the top and the bottom, and
    "upper" then means the right strip of a pair.
    """
    building = job.project.building
    lies = job.project.squared_up.length_runs is Runs.ACROSS
    ends = [(nx, ny) if lies else (ny, nx) for nx, ny in job.normals]
    first = [index for index, (along, _) in enumerate(ends) if along > 1e-9]
    second = [index for index, (along, _) in enumerate(ends) if along < -1e-9]
    if len(first) != 2 or len(second) != 2:
        raise BuildError(
            what="pairs round the point need a center with a point at each end",
            fix='Turn the center "on point".',
            where="center.turned",
            code="build.not-on-point",
        )
    choice = building.pair_first
    upper_first = choice is PairFirst.UPPER or (choice is PairFirst.ALTERNATE and number % 2 == 1)
    pairs = [sorted(pair, key=lambda index: ends[index][1], reverse=upper_first) for pair in (first, second)]
    return pairs[0] if building.one_ended else pairs[0] + pairs[1]
