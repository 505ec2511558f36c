"""A quilt of joined blocks at another size: more blocks, or larger ones."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.lengths import Length, Speaker
from stitchflip.planning.quilt_sizes import blocks_for, laid, quilt_size
from stitchflip.planning.resize.drawn import drawn
from stitchflip.planning.resize.pen import Keep, Pen
from stitchflip.project.numbers import effective

if TYPE_CHECKING:
    from stitchflip.project.model import Project


def quilt_at(
    project: Project, wide: Length | None, long: Length | None, keep: Keep, messages: list[str]
) -> tuple[Project, Pen | None]:
    """More blocks, or larger ones."""
    now = quilt_size(project)
    if now is None or project.joined is None:
        raise BuildError(
            what="the joined blocks cannot be laid",
            fix="See what the plan says first.",
            where="joined",
            code="build.cannot-resize",
        )
    say = Speaker(project.units)
    target = (wide.inches if wide else now[0], long.inches if long else now[1])
    if keep is Keep.PROPORTIONS:
        pen = block_for(project, target[0])
        wanted = project.squared_up
        sizes = {
            key: size and pen.cut(size, pen.x, "the block")
            for key, size in (("wide", wanted.wide), ("long", wanted.long))
        }
        pen.awkward.clear()
        made = drawn(project.model_copy(update={"squared_up": wanted.model_copy(update=sizes)}), pen)
        made = made.model_copy(update={"borders": project.borders})
        size = quilt_size(made) or now
        messages.append(f"The blocks are made larger or smaller; the quilt comes to {say.size(*size)} (wide × long).")
        return made, pen
    found = blocks_for(project, *target)
    if found is None:
        raise BuildError(
            what=f"more than 60 blocks in a row would be needed for {say.size(*target)}",
            fix="Make the blocks larger, or the quilt smaller.",
            where="joined",
            code="build.cannot-resize",
        )
    messages.append(
        f"{found.across} blocks across and {found.down} down come to {say.size(found.wide, found.long)} (wide × long)."
    )
    if project.joined.measured or project.joined.places:
        messages.append("Measured blocks and places of the kinds belong to the old layout and are left out.")
    return laid(project, found.across, found.down), None


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
