"""Whether other pieces of the same fabric come from what is left between the windows."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.laying import GRID_IN, units_up, whole_units
from stitchflip.cutting.layouts.model import Aim, FirstCut, LayoutTask, Sheet, Want
from stitchflip.cutting.model import Status
from stitchflip.lengths import Unit
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.model import Answer
    from stitchflip.cutting.layouts.watch import Watch
    from stitchflip.cutting.motifs.apart import Box
    from stitchflip.cutting.rows import Rectangle

_TOLERANCE = 1e-5
_MOST_SHEETS = 60
"""So many leftovers, the largest, are cut from."""


@dataclass(frozen=True, slots=True)
class FromHoles:
    """What the leftovers between windows give."""

    fits: bool | None
    """True: all pieces come from them. False: they certainly do not. None: no way was found, and none is excluded."""
    leftovers: tuple[Box, ...]
    """Those that were cut from."""
    answer: Answer
    """Which piece comes from which leftover, in sixteenths of an inch or millimeters."""


def from_holes(
    leftovers: Sequence[Box], pieces: Sequence[Rectangle], watch: Watch, unit: Unit = Unit.INCH
) -> FromHoles:
    """Whether pieces can be cut from leftovers, edge to edge, the smallest leftovers first.

    Args:
        leftovers: rectangles left between windows, inches.
        pieces: what is wanted, as cut; wide across the fabric.
        watch: how long to look.
        unit: pieces are measured in sixteenths of an inch or in millimeters.
    """
    from stitchflip.cutting.layouts.solving import solve

    grid = GRID_IN[unit]
    sheets = tuple(leftovers[:_MOST_SHEETS])
    task = LayoutTask(
        wants=tuple(
            Want(units_up(one.wide, grid), units_up(one.long, grid), one.count, one.can_turn) for one in pieces
        ),
        sheets=tuple(_sheet(box, grid) for box in sheets),
        aim=Aim.COST,
        first_cut=FirstCut.EITHER,
    )
    answer = solve(task, watch)
    area = sum(one.wide * one.long * one.count for one in pieces)
    room = sum(box.wide * box.long for box in leftovers)
    if answer.layouts:
        fits: bool | None = True
    else:
        certain = area > room + _TOLERANCE or (answer.status is Status.IMPOSSIBLE and _too_large(leftovers, pieces))
        fits = False if certain else (True if not any(one.count for one in pieces) else None)
    return FromHoles(fits, sheets, answer)


def _sheet(box: Box, grid: float) -> Sheet:
    wide, long = whole_units(box.wide, grid), whole_units(box.long, grid)
    return Sheet(wide, long, 1, cost=max(wide * long, 1))


def _too_large(leftovers: Sequence[Box], pieces: Sequence[Rectangle]) -> bool:
    """Whether some piece is larger than every leftover, however it is laid."""
    return any(
        not any(
            (one.wide <= box.wide + _TOLERANCE and one.long <= box.long + _TOLERANCE)
            or (one.can_turn and one.long <= box.wide + _TOLERANCE and one.wide <= box.long + _TOLERANCE)
            for box in leftovers
        )
        for one in pieces
        if one.count
    )
