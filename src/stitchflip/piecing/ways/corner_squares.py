"""Rounds with corner squares: courthouse steps whose second pair is pieced beforehand, square, strip, square.

All four strips of a round are then cut the same length, and a square stands in each corner. The seams that join
the squares to their strip must meet the seams of the first pair, so every strip is cut exactly and nothing is
left to trim.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.piecing.geometry import TOLERANCE, extent
from stitchflip.piecing.ways.courthouse import pairs
from stitchflip.piecing.ways.wanted import Part, round_after_round

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from stitchflip.piecing.flips import Sewn, State
    from stitchflip.piecing.ways.wanted import Job, Wanted


def strips(job: Job) -> Iterator[Wanted]:
    """The first pair of a round, then the pair with the squares.

    Raises:
        BuildError: If the sides do not stand square to each other, or a round names no fabric for its squares.
    """
    first, second = pairs(job)
    _refuse_slants(job)
    rounds = job.project.rounds
    for wanted in round_after_round(job, lambda _: first + second):
        entry = rounds[(wanted.round - 1) % len(rounds)]
        if entry.corner_fabric is None:
            raise BuildError(
                what=f"round {wanted.round} names no fabric for its corner squares",
                fix='Name it, such as corner_fabric = "Oat".',
                where=f"round {wanted.round}",
                code="build.no-corner-fabric",
            )
        squares = entry.corner_fabric if wanted.side in second else None
        yield replace(wanted, parts=_piecing(squares))


def _refuse_slants(job: Job) -> None:
    neighbors = zip(job.normals, job.normals[1:] + job.normals[:1], strict=True)
    if any(abs(ax * bx + ay * by) > TOLERANCE for (ax, ay), (bx, by) in neighbors):
        raise BuildError(
            what="corner squares need a center whose sides stand square to each other",
            fix='Give the center the shape "square" or "rectangle", or build "round after round".',
            where="center",
            code="build.corners-not-square",
        )


def _piecing(squares: str | None) -> Callable[[State, Sewn], tuple[Part, ...]]:
    """How a strip is pieced: of squares and a middle, or of one exact length where no squares are named."""
    return lambda before, sewn: _parts(before, sewn, squares)


def _parts(before: State, sewn: Sewn, squares: str | None) -> tuple[Part, ...]:
    """A square over each strip of the first pair that this round has sewn, and the strip between them.

    A side that got no strip since this one's last (it was covered already) gets no square either.
    """
    tx, ty = -sewn.normal[1], sewn.normal[0]
    low, high = extent(sewn.opened, tx, ty)
    seam = before.seam
    start, end = low, high
    if squares is not None:
        last = max((old.step for old in before.history if old.side == sewn.side), default=0)
        for old in before.history:
            along = old.normal[0] * tx + old.normal[1] * ty
            if old.step > last and along > 0.5:
                end = old.seam_at
            elif old.step > last and along < -0.5:
                start = -old.seam_at
    into_start, into_end = seam if start > low else 0.0, seam if end < high else 0.0
    parts = [Part("", start, end, end - start + into_start + into_end)]
    if squares is not None and start > low:
        parts.insert(0, Part(squares, low, start, start - low + seam))
    if squares is not None and end < high:
        parts.append(Part(squares, end, high, high - end + seam))
    return tuple(parts)
