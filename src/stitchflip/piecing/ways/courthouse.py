"""Courthouse steps: two opposite sides, then the other two."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.piecing.ways.wanted import round_after_round, side_index

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.ways.wanted import Job, Wanted


def strips(job: Job) -> Iterator[Wanted]:
    """The first pair of a round, then its second pair."""
    first, second = pairs(job)
    per_visit = job.project.building.strips_per_visit
    order = [side for pair in (first, second) for _ in range(per_visit) for side in pair]
    return round_after_round(job, lambda _: order)


def pairs(job: Job) -> tuple[list[int], list[int]]:
    """Indices of the two sides sewn first, and of the other two.

    Raises:
        BuildError: If there are not four sides, or the first pair is not opposite.
    """
    names, wanted = job.names, job.project.building.first_pair
    first = [side_index(name, names) for name in wanted]
    second = [index for index in range(len(names)) if index not in first]
    if len(names) != 4 or abs(first[0] - first[1]) != 2:
        raise BuildError(
            what=f"courthouse steps need four sides and an opposite first pair, not {' and '.join(wanted)}",
            fix=f"Name two opposite sides out of {', '.join(names)}.",
            where="building.first_pair",
            code="build.pair-not-opposite",
        )
    second.reverse()
    return first, second
