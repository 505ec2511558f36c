"""Finished blocks that came out unequal: trim them, frame the small ones, or let like sizes share a column.

Blocks must meet at the joins. Whatever is chosen, the joining strips and the size of the whole follow from the
blocks as measured, never from the size they were meant to have.
"""

from __future__ import annotations

from collections import Counter

from stitchflip.errors import BuildError
from stitchflip.finishing.joined.sharing import Sharing, share
from stitchflip.finishing.joined.sizes import check_sizes
from stitchflip.finishing.measures import LEAST_FRAME
from stitchflip.lengths import TOLERANCE_IN, Unit
from stitchflip.project.model import Joined, Project, Runs, Setting, Unequal
from stitchflip.values import dataclass

_Size = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Frame:
    """Strips added to blocks that are too small, alike for all of them; inches."""

    blocks: tuple[int, ...]
    """Which blocks, by their place in the list of blocks as measured."""
    inner_wide: float
    """Trimmed to this before framing."""
    inner_high: float
    side_cut: float
    """Cut width of the strips left and right; 0 for none."""
    end_cut: float
    """Cut width of the strips above and below; 0 for none."""
    wide: float
    """Squared up again."""
    high: float


@dataclass(frozen=True, slots=True)
class Blocks:
    """The blocks as they are joined; inches."""

    measured: tuple[_Size, ...]
    """(wide, high) of each block, row by row; the wanted size when nothing was measured."""
    counts: tuple[int, ...]
    """Blocks in each row from the top."""
    columns: tuple[float, ...]
    rows: tuple[float, ...]
    cells: tuple[int, ...]
    """Which block lies where, by its place in the list."""
    trimmed_to: _Size | None
    frame: Frame | None
    sharing: Sharing | None

    @property
    def are_unequal(self) -> bool:
        """True when two of them differ."""
        return not all_alike(self.measured)


def all_alike(sizes: tuple[_Size, ...]) -> bool:
    """True when all blocks have the same size.

    Args:
        sizes: (wide, high) of each block, inches.
    """
    wide, high = smallest(sizes)
    return all(x - wide <= TOLERANCE_IN and y - high <= TOLERANCE_IN for x, y in sizes)


def smallest(sizes: tuple[_Size, ...]) -> _Size:
    """The narrowest and the lowest: what every block can be trimmed to.

    Args:
        sizes: (wide, high) of each block, inches.
    """
    return min(wide for wide, _ in sizes), min(high for _, high in sizes)


def frame_size(sizes: tuple[_Size, ...], wanted: _Size) -> _Size:
    """What small blocks are framed to: the wanted size, or the largest there is when that is smaller.

    Args:
        sizes: (wide, high) of each block, inches.
        wanted: Size the blocks were meant to have, inches.
    """
    return min(wanted[0], max(wide for wide, _ in sizes)), min(wanted[1], max(high for _, high in sizes))


def framed(sizes: tuple[_Size, ...], to: _Size, seam: float, unit: Unit) -> Frame | None:
    """The frame that makes small blocks as large as the others; None when none is small.

    Half of what is missing would show on each side, which is often a sliver; then the block is first trimmed so far
    that the frame shows 1/2 in (1.2 cm).

    Args:
        sizes: (wide, high) of each block, inches.
        to: What they are framed to, inches.
        seam: Seam as stitched, inches.
        unit: The maker's unit.
    """
    small = tuple(
        index for index, (wide, high) in enumerate(sizes) if wide < to[0] - TOLERANCE_IN or high < to[1] - TOLERANCE_IN
    )
    if not small:
        return None
    least = smallest(tuple(sizes[index] for index in small))
    shows = [_frame_shows(to[part] - least[part], LEAST_FRAME.of(unit)) for part in (0, 1)]
    cuts = [show + 2 * seam if show else 0.0 for show in shows]
    inner_wide, inner_high = (to[part] - 2 * shows[part] for part in (0, 1))
    check_sizes((inner_wide, inner_high), seam)
    return Frame(small, inner_wide, inner_high, cuts[0], cuts[1], *to)


def _frame_shows(missing: float, least: float) -> float:
    return max(missing / 2, least) if missing > TOLERANCE_IN else 0.0


def blocks_as_joined(project: Project, joined: Joined, counts: tuple[int, ...], wanted: _Size, seam: float) -> Blocks:
    """The blocks in the sizes they are joined in, by what the maker does about unequal ones.

    Args:
        project: For its unit and which way the length runs.
        joined: The blocks as measured, and what is done with them.
        counts: Blocks in each row from the top.
        wanted: Squared-up size the blocks were meant to have, inches.
        seam: Seam as stitched, inches.

    Raises:
        BuildError: If the table of measured blocks does not fit the rows, a block is used up by its seams, or blocks
            on point are to share columns.
    """
    sizes = measured_sizes(project, joined, counts) or (wanted,) * sum(counts)
    check_sizes([side for size in sizes for side in size], seam)
    on_point = joined.setting is Setting.ON_POINT
    if on_point and joined.measured:
        sizes = tuple((min(size), min(size)) for size in sizes)
    cells = tuple(range(len(sizes)))
    across, down = joined.across, joined.down
    if not all_alike(sizes):
        match joined.unequal:
            case Unequal.COLUMNS:
                _refuse_on_point(on_point=on_point)
                sharing = share(sizes, across, down)
                return Blocks(sizes, counts, sharing.columns, sharing.rows, sharing.cells, None, None, sharing)
            case Unequal.FRAME:
                wide, high = frame_size(sizes, wanted)
                frame = framed(sizes, (wide, high), seam, project.units)
                if frame is not None:
                    return Blocks(sizes, counts, (wide,) * across, (high,) * down, cells, None, frame, None)
            case Unequal.TRIM:
                pass
    wide, high = smallest(sizes)
    trimmed = None if all_alike(sizes) else (wide, high)
    return Blocks(sizes, counts, (wide,) * across, (high,) * down, cells, trimmed, None, None)


def _refuse_on_point(*, on_point: bool) -> None:
    if on_point:
        raise BuildError(
            what="blocks on point lie in diagonal rows, so like sizes cannot share a column",
            fix=f'Write unequal = "{Unequal.TRIM.value}" or "{Unequal.FRAME.value}".',
            where="joined.unequal",
            code="build.blocks-do-not-meet",
        )


def measured_sizes(project: Project, joined: Joined, counts: tuple[int, ...]) -> tuple[_Size, ...]:
    """(wide, high) of every block as measured, row by row; nothing when none was measured.

    Args:
        project: For which way the length runs.
        joined: The blocks as measured.
        counts: Blocks in each row from the top.

    Raises:
        BuildError: If the table does not have the rows, or a row not the blocks, of the quilt.
    """
    if not joined.measured:
        return ()
    if tuple(len(row) for row in joined.measured) != counts:
        raise BuildError(
            what=f"the measured blocks stand in rows of {_in_rows([len(row) for row in joined.measured])}, "
            f"the quilt has rows of {_in_rows(list(counts))}",
            fix="Give one size for every block, row by row from the top, or leave measured out.",
            where="joined.measured",
            code="build.measured-blocks",
        )
    upright = project.squared_up.length_runs is Runs.UP
    sizes = []
    for row in joined.measured:
        for block in row:
            wide, long = block if isinstance(block, tuple) else (block, block)
            x, y = (wide.inches, long.inches) if upright else (long.inches, wide.inches)
            sizes.append((x, y))
    return tuple(sizes)


def _in_rows(counts: list[int]) -> str:
    """Such as "4 (5 times)"."""
    return ", ".join(
        f"{count} ({times} times)" if times > 1 else f"{count}" for count, times in Counter(counts).items()
    )
