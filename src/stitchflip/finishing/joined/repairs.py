"""What could be done with blocks of unequal size, each way with the size it gives."""

from __future__ import annotations

from collections.abc import Iterator

from stitchflip.errors import BuildError
from stitchflip.finishing.joined.borders import border_adds
from stitchflip.finishing.joined.joins import JoinCuts
from stitchflip.finishing.joined.on_point import Diamond
from stitchflip.finishing.joined.sharing import Sharing, share
from stitchflip.finishing.joined.sizes import Grid
from stitchflip.finishing.joined.unequal import Blocks, frame_size, framed, smallest
from stitchflip.finishing.joined.words import size_words
from stitchflip.lengths import TOLERANCE_IN, Speaker
from stitchflip.project.model import Joined, Project, Setting, Unequal
from stitchflip.project.numbers import Numbers
from stitchflip.values import dataclass

_Size = tuple[float, float]


@dataclass(frozen=True, slots=True)
class _Wholes:
    """Sizes of the whole from the sizes of its blocks, borders in it."""

    project: Project
    numbers: Numbers
    joined: Joined
    between: float

    def of(self, columns: tuple[float, ...], rows: tuple[float, ...]) -> str:
        """The size in words."""
        seam = self.numbers.seam
        if self.joined.setting is Setting.ON_POINT:
            diamond = Diamond(len(columns), len(rows), min(*columns, *rows), self.between, seam)
            wide, high = diamond.wide, diamond.high
        else:
            grid = Grid(columns, rows, self.between, seam)
            wide, high = grid.wide, grid.high
        more = 2 * sum(border_adds(border.cut.inches, seam) for border in self.project.borders)
        return size_words(self.project, wide + more, high + more)

    def of_alike(self, size: _Size) -> str:
        """The size in words when all blocks are alike."""
        return self.of((size[0],) * self.joined.across, (size[1],) * self.joined.down)


def repairs_for(
    project: Project, numbers: Numbers, joined: Joined, blocks: Blocks, cuts: JoinCuts, wanted: _Size
) -> tuple[str, ...]:
    """Every way to make unequal blocks meet, the chosen one first.

    Args:
        project: For its unit and borders.
        numbers: For the seam as stitched.
        joined: What the maker chose.
        blocks: The blocks as measured and as joined.
        cuts: Cut widths of the joining strips.
        wanted: Squared-up size the blocks were meant to have, inches.

    Returns:
        Sentences; none when all blocks are alike.
    """
    if not blocks.are_unequal:
        return ()
    wholes = _Wholes(project, numbers, joined, cuts.between(joined.join, numbers.seam))
    made = {
        Unequal.TRIM: _trim(wholes, blocks),
        Unequal.FRAME: _frame(wholes, blocks, wanted),
        Unequal.COLUMNS: _columns(wholes, blocks),
    }
    first = list(made.pop(joined.unequal))
    rest = [sentence for sentences in made.values() for sentence in sentences]
    return (*first, *rest, *_anew(wholes, blocks, wanted))


def _trim(wholes: _Wholes, blocks: Blocks) -> Iterator[str]:
    to = smallest(blocks.measured)
    yield f"Trim all blocks to {size_words(wholes.project, *to)}: the whole is {wholes.of_alike(to)}."


def _frame(wholes: _Wholes, blocks: Blocks, wanted: _Size) -> Iterator[str]:
    project, say = wholes.project, Speaker(wholes.project.units)
    to = frame_size(blocks.measured, wanted)
    try:
        frame = framed(blocks.measured, to, wholes.numbers.seam, project.units)
    except BuildError:
        return
    if frame is None:
        return
    cuts = [
        f"strips cut {say.cut(cut)} {where}"
        for cut, where in ((frame.side_cut, "at both sides"), (frame.end_cut, "at top and bottom"))
        if cut
    ]
    several = len(frame.blocks)
    which = "small block: trim it to" if several == 1 else f"{several} small blocks: trim each to"
    yield (
        f"Frame the {which} {size_words(project, frame.inner_wide, frame.inner_high)}, add {' and '.join(cuts)}, on "
        f"batting butted to what is there, and square up to {size_words(project, *to)} like the others: the whole is "
        f"{wholes.of_alike(to)}."
    )


def _columns(wholes: _Wholes, blocks: Blocks) -> Iterator[str]:
    if wholes.joined.setting is Setting.ON_POINT:
        return
    sharing = blocks.sharing or share(blocks.measured, wholes.joined.across, wholes.joined.down)
    if sum(sharing.columns) * sum(sharing.rows) <= _plain_area(wholes.joined, blocks) + TOLERANCE_IN:
        return
    say = Speaker(wholes.project.units)
    columns = ", ".join(say.bare.near(wide) for wide in sharing.columns)
    rows = ", ".join(say.bare.near(high) for high in sharing.rows)
    best = "; no other order keeps more" if sharing.is_proved else ""
    yield (
        f"Let like sizes share a column and a row: columns {columns} {wholes.project.units.value} wide, rows {rows} "
        f"{wholes.project.units.value} high: the whole is {wholes.of(sharing.columns, sharing.rows)}{best}."
    )
    yield from _order(wholes.joined, sharing)


def _plain_area(joined: Joined, blocks: Blocks) -> float:
    wide, high = smallest(blocks.measured)
    return wide * joined.across * high * joined.down


def _order(joined: Joined, sharing: Sharing) -> Iterator[str]:
    """Which block goes where, by where it stood when it was measured (row, then place)."""
    across = joined.across
    rows = [sharing.cells[start : start + across] for start in range(0, len(sharing.cells), across)]
    laid = "; ".join(" ".join(f"{cell // across + 1}.{cell % across + 1}" for cell in row) for row in rows)
    yield f"For that lay them so, each named by the row and place it was measured in, rows from the top: {laid}."


def _anew(wholes: _Wholes, blocks: Blocks, wanted: _Size) -> Iterator[str]:
    small = [
        size for size in blocks.measured if size[0] < wanted[0] - TOLERANCE_IN or size[1] < wanted[1] - TOLERANCE_IN
    ]
    if 0 < len(small) < len(blocks.measured):
        yield (
            f"Make {len(small)} {'block' if len(small) == 1 else 'blocks'} anew and trim the others to "
            f"{size_words(wholes.project, *wanted)}: the whole is {wholes.of_alike(wanted)}."
        )
