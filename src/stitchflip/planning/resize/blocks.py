"""How many joined blocks reach a size, and what they come to; found by laying them, whatever joins them."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING

from stitchflip.finishing import plan_quilt
from stitchflip.lengths import Length
from stitchflip.piecing.shapes import trim_polygon
from stitchflip.planning.resize.pen import Pen
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


def block_for(project: Project, wide: float) -> Pen:
    """The pen that makes each block as large as it must be for the quilt to come to a width.

    The joining strips and borders stay as they are; only the blocks grow.

    Args:
        project: a quilt of joined blocks.
        wide: width of the quilt wanted, inches.
    """
    numbers = effective(project)
    now = quilt_size(project)
    block = project.squared_up.wide
    if now is None or project.joined is None or block is None:
        return Pen(project.units, project.units, numbers.seam, numbers.seam)
    step = 1.0
    larger = project.model_copy(
        update={
            "squared_up": project.squared_up.model_copy(
                update={"wide": Length.of_inches(block.inches + step), "long": _longer(project, step)}
            ),
            "joined": project.joined.model_copy(update={"measured": ()}),
        }
    )
    grown = quilt_size(larger) or now
    finished = block.inches - 2 * numbers.seam
    factor = (finished + (wide - now[0]) / (grown[0] - now[0]) * step) / finished
    return Pen(project.units, project.units, numbers.seam, numbers.seam, factor, factor, factor)


def _longer(project: Project, by: float) -> Length | None:
    long = project.squared_up.long
    return None if long is None else Length.of_inches(long.inches + by)
