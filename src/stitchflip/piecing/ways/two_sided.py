"""Two-sided log cabin: every round on the same two neighboring sides, so that the center stays in a corner."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.piecing.ways.log_cabin import turning_from
from stitchflip.piecing.ways.wanted import round_after_round

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.ways.wanted import Job, Wanted


def strips(job: Job) -> Iterator[Wanted]:
    """One strip on the starting side, one on the next."""
    order = turning_from(job)[:2]
    return round_after_round(job, lambda _: order)
