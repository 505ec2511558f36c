"""How much fabric to buy for windows round motifs.

What surely does pays for the unknown start of the print; what is cut from the bolt where it suits does not. Identical
pieces come from the same place of as many repeats.
"""

from __future__ import annotations

from math import ceil, floor
from typing import TYPE_CHECKING

from stitchflip.cutting.motifs.counting import Counting
from stitchflip.cutting.motifs.model import MOST_IN, TOLERANCE, Repeat, Window
from stitchflip.cutting.purchase import Purchase, Shrinkage, purchase_for
from stitchflip.errors import CuttingError
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Callable

    from stitchflip.project.numbers import Numbers

MOST_WINDOWS = 1_000
"""More windows of one print than these are a slip of the hand."""
_WHOLE = Shrinkage(0.0, 0.0)


@dataclass(frozen=True, slots=True)
class MotifLength:
    """Length of fabric for a number of windows, straightening not in it; inches."""

    count: int
    surely_in: float | None
    """Enough wherever the print begins; None when no length is, because the width may hold no whole window."""
    chosen_in: float | None
    """Enough when it is cut from the bolt where the print suits; None as above."""
    is_proved: bool
    """True: nothing shorter does."""


@dataclass(frozen=True, slots=True)
class MotifPurchase:
    """What to buy for a number of windows."""

    length: MotifLength
    surely: Purchase | None
    """Wherever the print begins, repeats for mistakes included."""
    chosen: Purchase | None
    """When the motif is chosen in the shop, repeats for mistakes included."""
    spare_repeats: int


@dataclass(frozen=True, slots=True)
class Identical:
    """Pieces that are all alike, from the same place of the print; inches of length."""

    count: int
    repeats: int
    """Repeats along the fabric that are taken."""
    per_repeat: int
    """Pieces that one repeat of the length gives: one, or as many as repeats of the same level surely lie across."""
    whole_in: float
    """Whole repeats, laid over one another at the same place of the print and cut through together."""
    least_in: float
    """From the beginning of the first piece to the end of the last, when the place is chosen on the fabric."""


def length_for(counting: Counting, count: int) -> MotifLength:
    """The shortest lengths that give a number of windows.

    Args:
        counting: print, window and width.
        count: windows wanted.

    Raises:
        CuttingError: If nobody cuts so many.

    Example:
        >>> found = length_for(Counting(Repeat(9), Window(4.5, 4.5), 40), 3)
        >>> found.surely_in, found.chosen_in
        (31.5, 22.5)
    """
    if not 0 <= count <= MOST_WINDOWS:
        raise CuttingError(
            what=f"{count} windows round motifs",
            fix=f"Ask for at most {MOST_WINDOWS} at a time.",
            where="count",
            code="cutting.too-many-pieces",
        )
    if count == 0:
        return MotifLength(0, 0.0, 0.0, is_proved=True)
    surely = _shortest(counting, count, lambda long: counting.count(long).surely)
    chosen = _shortest(counting, count, counting.chosen)
    return MotifLength(count, surely, chosen, counting.is_proved)


def _shortest(counting: Counting, count: int, gives: Callable[[float], int]) -> float | None:
    """The shortest length that gives the windows: a window's own and a distance between two motifs."""
    period, box = counting.repeat.period[1], counting.window.box[1]
    levels = [center[1] for center in counting.repeat.centers]
    apart = sorted({round((one - other) % period, 9) % period for one in levels for other in levels})
    whole = ceil(box / period - TOLERANCE) + 1
    last = min(count * whole, floor(MOST_IN / period))

    def length(step: int) -> float:
        return box + apart[step % len(apart)] + period * (step // len(apart))

    high = len(apart) - 1
    while gives(length(high)) < count:
        if high >= last * len(apart) or (high > 3 * whole * len(apart) and gives(length(high)) == 0):
            return None
        high = min(2 * high + len(apart), last * len(apart))
    low = -1
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if gives(length(middle)) >= count else (middle, high)
    return length(high)


def purchase_of(
    counting: Counting, count: int, numbers: Numbers, spare_repeats: int = 0, shrinkage: Shrinkage = _WHOLE
) -> MotifPurchase:
    """What to buy for a number of windows, in the shop's steps.

    Args:
        counting: print, window and width.
        count: windows wanted.
        numbers: straightening and the shop's steps.
        spare_repeats: repeats bought on top for mistakes.
        shrinkage: what washing first takes.
    """
    length = length_for(counting, count)

    def bought(used: float | None) -> Purchase | None:
        more = spare_repeats * counting.repeat.along
        return None if used is None else purchase_for(used + more, numbers, shrinkage)

    return MotifPurchase(length, bought(length.surely_in), bought(length.chosen_in), spare_repeats)


def identical(repeat: Repeat, window: Window, count: int, wide: float | None = None) -> Identical:
    """How much length identical pieces take.

    Args:
        repeat: the print.
        window: what is cut.
        count: pieces, all alike.
        wide: usable width, to use repeats of the same level side by side; None: one for each repeat of the length.

    Example:
        >>> six = identical(Repeat(21), Window(8, 8), 6)
        >>> six.whole_in, six.least_in
        (126, 113)
    """
    high = window.box[1]
    each = max(ceil(high / repeat.along - TOLERANCE), 1) * repeat.along
    side = _surely_across(repeat, window, wide) if wide is not None else 1
    levels = ceil(count / max(side, 1))
    least = (levels - 1) * each + high if levels else 0.0
    return Identical(count, levels, max(side, 1), levels * each, least)


def _surely_across(repeat: Repeat, window: Window, wide: float) -> int:
    """Windows of the same level that lie side by side wherever the print begins across."""
    period, across = repeat.period[0], window.box[0]
    if not period:
        return 1
    lattice = floor((wide - across) / period + TOLERANCE)
    return ceil(lattice / ceil(across / period - TOLERANCE)) if lattice > 0 else 1


def repeats_by_rule(pieces: int, motifs_per_repeat: int) -> int:
    """Repeats to buy by the usual rule: pieces divided by the motifs that one repeat has.

    Args:
        pieces: windows wanted.
        motifs_per_repeat: motifs to choose in one repeat, over the whole width.

    Example:
        >>> repeats_by_rule(20, 6)
        4
    """
    return -(-pieces // motifs_per_repeat)
