"""Sides in my order: the strips one by one as the maker lists them."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from stitchflip.piecing.ways.wanted import Wanted, side_index

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.ways.wanted import Job


def strips(job: Job) -> Iterator[Wanted]:
    """Each listed strip; its round counts the strips on its side."""
    visits: Counter[int] = Counter()
    for step in job.project.steps:
        side = side_index(step.side, job.names)
        visits[side] += 1
        yield Wanted(visits[side], side, side, step.cut.inches, step.fabric)
