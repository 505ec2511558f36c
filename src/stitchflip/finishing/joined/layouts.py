"""Other ways to lay the same blocks: few left over, longer than wide, and the backing each one needs."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from stitchflip.finishing.backing import BackingFabric, backing_ways
from stitchflip.finishing.joined.borders import border_adds
from stitchflip.finishing.quilt_model import Layout
from stitchflip.lengths import TOLERANCE_IN, Speaker
from stitchflip.project.model import Project, Setting, Through
from stitchflip.project.numbers import Numbers

LEFT_OVER = 0.1
"""At most this share of the blocks stays over."""
LONGEST = 2.5
"""No layout is more than so many times as long as wide."""
MOST_LAYOUTS = 12


def layouts_of(
    project: Project,
    numbers: Numbers,
    setting: Setting,
    current: tuple[int, int],
    size: Callable[[int, int], tuple[float, float]],
) -> tuple[Layout, ...]:
    """Ways to lay the blocks of this quilt, the most even proportion first; the way it is laid is not among them.

    Args:
        project: For borders, the backing fabric, and what is sewn through.
        numbers: The maker's numbers.
        setting: Straight or on point, which tells how many blocks a layout takes.
        current: Blocks across and down as laid.
        size: The size of so many across and down without borders, raw edge to raw edge, inches.
    """
    blocks = block_count(*current, setting)
    more = 2 * sum(border_adds(border.cut.inches, numbers.seam) for border in project.borders)
    found = []
    for across, down in _candidates(blocks, setting):
        wide, high = (side + more for side in size(across, down))
        if (across, down) == current or not wide - TOLERANCE_IN <= high <= LONGEST * wide + TOLERANCE_IN:
            continue
        left = blocks - block_count(across, down, setting)
        found.append(Layout(across, down, left, wide, high, backing_words(project, numbers, wide, high, blocks - left)))
    found.sort(key=lambda layout: (round(layout.high / layout.wide, 6), layout.left_over))
    return tuple(found[:MOST_LAYOUTS])


def block_count(across: int, down: int, setting: Setting) -> int:
    """Blocks that a layout takes.

    Args:
        across: Blocks in a row.
        down: Blocks in a column.
        setting: On point there are (m - 1)(n - 1) more between them.

    Example:
        >>> block_count(4, 5, Setting.ON_POINT)
        32
    """
    between = (across - 1) * (down - 1) if setting is Setting.ON_POINT else 0
    return across * down + between


def _candidates(blocks: int, setting: Setting) -> Iterator[tuple[int, int]]:
    """Every count across and down that uses nearly all blocks."""
    least = blocks - int(blocks * LEFT_OVER + TOLERANCE_IN)
    for across in range(1, blocks + 1):
        for down in range(1, blocks // across + 1):
            if least <= block_count(across, down, setting) <= blocks:
                yield across, down


def backing_words(project: Project, numbers: Numbers, wide: float, high: float, blocks: int) -> str:
    """What a layout needs as backing.

    Args:
        project: For what is sewn through and the backing fabric.
        numbers: The maker's numbers.
        wide: The whole, squared up, inches.
        high: The same from top to bottom, inches.
        blocks: How many blocks it takes.
    """
    if project.base.through is Through.BACKING_AND_BATTING:
        return f"in the {blocks} blocks"
    say = Speaker(project.units)
    spare = 2 * numbers.backing_later_spare
    fabric = _backing_fabric(project, numbers)
    best = backing_ways(wide + spare, high + spare, 1, fabric)[0]
    widths = "one width" if best.widths == 1 else f"{best.way}, {best.widths} widths"
    return f"{say.size(wide + spare, high + spare)}: {widths}, {say.purchase(best.buy_in)}"


def _backing_fabric(project: Project, numbers: Numbers) -> BackingFabric:
    own = next((one for one in project.fabrics if one.name == project.backing.fabric), None)
    measured = project.backing.usable_width or (own.usable_width if own is not None else None)
    width = numbers.usable_width if measured is None else measured.inches
    return BackingFabric(
        usable_width=width * (1 - numbers.prewash_across),
        is_one_way=project.backing.one_way or (own is not None and own.one_way),
        seam=numbers.backing_seam,
        straightening=numbers.straightening,
        buy_in_steps_of=numbers.buy_in_steps_of,
        buy_at_least=numbers.buy_at_least,
        prewash_along=numbers.prewash_along,
        unit=project.units,
    )
