"""Strips round and round a center: log cabin, and round after round on any center that does not bend inward."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.piecing.ways.wanted import round_after_round, side_index
from stitchflip.project.model import Turning

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.ways.wanted import Job, Wanted


def strips(job: Job) -> Iterator[Wanted]:
    """One strip on each side, turning from the side the maker starts at."""
    order = turning_from(job)
    return round_after_round(job, lambda _: order)


def turning_from(job: Job) -> list[int]:
    """Indices of the sides from the starting side on, the way the work turns."""
    building = job.project.building
    step = -1 if building.turning is Turning.CLOCKWISE else 1
    first = side_index(building.start, job.names, default="top")
    return [(first + step * place) % len(job.names) for place in range(len(job.names))]
