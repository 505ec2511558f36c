"""How many joined blocks reach a size, and what they come to; found by laying them, whatever joins them."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING

from stitchflip.finishing import plan_quilt
from stitchflip.piecing.shapes import trim_polygon
from stitchflip.project.model import Runs
from stitchflip.project.numbers import effective
from stitchflip.project.quilt import MOST_BLOCKS
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.project.model import Project

WideLong = tuple[float, float]


@dataclass(frozen=True, slots=True)
class BlocksFor:
    """Blocks enough for a size."""

    across: int
    down: int
    wide: float
    """What they come to, inches."""
    long: float


def quilt_size(project: Project) -> WideLong | None:
    """Wide × long of a quilt of joined blocks, squared up, inches; None for a piece by itself."""
    numbers = effective(project)
    quilt = plan_quilt(project, numbers, trim_polygon(project, numbers))
    if quilt is None:
        return None
    size = (quilt.wide, quilt.high)
    return size if project.squared_up.length_runs is Runs.UP else size[::-1]


def laid(project: Project, across: int, down: int) -> Project:
    """The same quilt of other numbers of blocks; where its kinds lie is left to turns."""
    if project.joined is None:
        return project
    update = {"across": across, "down": down, "measured": (), "places": ()}
    blocks = tuple(block.model_copy(update={"count": None}) for block in project.blocks)
    return project.model_copy(update={"joined": project.joined.model_copy(update=update), "blocks": blocks})


def blocks_for(project: Project, wide: float, long: float) -> BlocksFor | None:
    """How many blocks across and down reach at least a size, and what they come to.

    Args:
        project: a quilt of joined blocks; how many it has now does not matter.
        wide: least width of the quilt, inches.
        long: least length, inches.

    Returns:
        None where nothing is joined, or where more than 60 blocks in a row would be needed.
    """
    one, two = quilt_size(laid(project, 1, 1)), quilt_size(laid(project, 2, 2))
    if one is None or two is None:
        return None
    counts = [
        max(1, 1 + ceil((wanted - first) / (second - first) - 1e-6))
        for wanted, first, second in zip((wide, long), one, two, strict=True)
    ]
    if max(counts) > MOST_BLOCKS:
        return None
    size = quilt_size(laid(project, *counts)) or one
    return BlocksFor(counts[0], counts[1], *size)
