"""How many equal sheets large pieces need at least: two pieces over half of a side cannot lie side by side.

Sizes are changed by functions that keep true what fits: sizes that fit side by side still do after the change. The
changed pieces then need as many sheets as their area says. Worked out with whole numbers.

Source:
    S. P. Fekete, J. Schepers: A general framework for bounds for higher-dimensional orthogonal packing problems,
    Mathematical Methods of Operations Research 60 (2004): the functions u(k), U(e) and phi(e).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from stitchflip.cutting.layouts.model import LayoutTask

_MOST_STEPS = 40
_MOST_SIDE = 30_000
"""Longer sides would overflow the sums."""
_MOST_PIECES = 100_000


def fewest_sheets(task: LayoutTask, wide: int, long: int) -> int:
    """A number of sheets that all pieces need at least, however they are laid.

    Args:
        task: its wants.
        wide: of the sheets, all alike.
        long: of the sheets.

    Example:
        Three pieces, each over half of both sides, need three sheets though their area fits on one:

        >>> from stitchflip.cutting.layouts.model import LayoutTask, Want
        >>> fewest_sheets(LayoutTask((Want(6, 6, 3),), ()), 11, 11)
        3
    """
    import numpy as np

    wants = [want for want in task.wants if want.count > 0]
    if max(wide, long) > _MOST_SIDE or sum(want.count for want in wants) > _MOST_PIECES or not wants:
        return 0
    counts = np.array([want.count for want in wants], dtype=np.int64)
    x, y = np.array([want.wide for want in wants]), np.array([want.long for want in wants])
    may_turn = np.array([want.can_turn for want in wants]) & (y <= wide) & (x <= long)
    must_turn = may_turn & ((x > wide) | (y > long))
    x, y = np.where(must_turn, y, x), np.where(must_turn, x, y)
    may_turn &= ~must_turn & (y <= wide) & (x <= long)
    across, whole_across = _changed(np.stack([x, y]), wide)
    up, whole_up = _changed(np.stack([y, x]), long)
    most = 0
    for shares, whole in zip(across, whole_across, strict=True):
        taken = shares[0] * up[:, 0]
        taken = np.where(may_turn, np.minimum(taken, shares[1] * up[:, 1]), taken)
        most = max(most, int((-(-(taken * counts).sum(axis=1) // (whole * whole_up))).max()))
    return most


def _changed(sizes: NDArray[np.int64], side: int) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """The sizes after every change, as parts of the side after it."""
    import numpy as np

    out, whole = [sizes], [side]
    for times in range(1, 5):
        more = (times + 1) * sizes
        out.append(np.where(more % side == 0, times * sizes, more // side * side))
        whole.append(times * side)
    halves = sorted({int(size) for size in sizes.flat if 0 < 2 * size <= side})
    for least in halves[:: -(-len(halves) // _MOST_STEPS) or 1]:
        out.append(np.where(sizes > side - least, side, np.where(sizes < least, 0, sizes)))
        whole.append(side)
        parts = side // least
        large = parts - (side - sizes) // least
        out.append(np.where(2 * sizes > side, large, np.where(sizes >= least, 1, 0)))
        whole.append(parts)
    return np.stack(out), np.array(whole, dtype=np.int64)
