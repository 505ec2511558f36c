"""How few strips could do, before anybody looks for a plan.

Each bound gives every piece a weight such that no strip can hold more than its own weight, adds up and
divides. With the plain length as weight this is the area bound; the other weights see that three pieces of
29 fill a strip of 105 although 18 are left over.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from stitchflip.cutting.whole import Kind, Task

_MOST_PARTS = 40
"""Highest number of equal parts a strip is thought to be divided into."""
_MOST_THRESHOLDS = 40
"""Thresholds tried when there are many different lengths, spread over them."""
_MOST_LOOKS = 60_000
"""Sizes weighed in each of those two ways; with thousands of sizes fewer weights are tried."""


def fewest_new(task: Task) -> int:
    """No cutting plan opens fewer bought strips than this.

    Args:
        task: pieces and strips.

    Returns:
        The best of the plain length bound and the weighted ones (0 when the shelf could be enough).

    Source:
        Own reasoning on dual-feasible functions: a weight that never falls and never adds up to more than the
        weight of the sum bounds strips of every length at once.
    """
    return fewest_for(task.sizes, task.demands, task.kinds)


def fewest_for(sizes: Sequence[int], demands: Sequence[int], kinds: Sequence[Kind]) -> int:
    """The bound for a state of the search: what is still wanted, and the kinds of strips with what is left of them.

    Args:
        sizes: lengths, longest first.
        demands: how many of each are still wanted.
        kinds: strips; those with a count are on hand.
    """
    bought = [kind.length for kind in kinds if kind.count is None]
    on_hand = [(kind.length, kind.count) for kind in kinds if kind.count]
    wanted = [(size, demand) for size, demand in zip(sizes, demands, strict=True) if demand]
    if not wanted or not bought:
        return 0
    longest = max([*bought, *(length for length, _ in on_hand)])
    best = 0
    for weight in weights_for(wanted, longest):
        need = sum(weight(size) * demand for size, demand in wanted)
        need -= sum(weight(length) * count for length, count in on_hand)
        each = weight(max(bought))
        if need > 0 and each > 0:
            best = max(best, -(-need // each))
    return best


def weights_for(wanted: Sequence[tuple[int, int]], longest: int) -> Iterator[Callable[[int], int]]:
    """Weights worth trying for these sizes and this longest strip.

    Args:
        wanted: (size, how many), longest first.
        longest: length of the longest strip.

    Yields:
        Weights: of any length, whole, never falling; those of two lengths add up to no more than that of the sum.
    """
    yield _plain
    smallest = wanted[-1][0]
    most = max(_MOST_LOOKS // len(wanted), 2)
    parts = range(1, min(_MOST_PARTS, most, longest // smallest) + 1)
    for part in parts:
        yield _by_parts(part, longest)
    short = [size for size, _ in wanted if 2 * size <= longest]
    for size in short[:: max(len(short) // min(_MOST_THRESHOLDS, most), 1)]:
        yield _all_or_nothing(size, longest)


def _plain(size: int) -> int:
    return size


def _by_parts(parts: int, longest: int) -> Callable[[int], int]:
    """Count in parts of a strip cut one more often than `parts`; sizes that divide evenly keep their length."""

    def weight(size: int) -> int:
        whole, over = divmod((parts + 1) * size, longest)
        return parts * size if over == 0 else whole * longest

    return weight


def _all_or_nothing(threshold: int, longest: int) -> Callable[[int], int]:
    """Pieces that leave less than the threshold take the whole strip, pieces under it weigh nothing."""

    def weight(size: int) -> int:
        if size > longest - threshold:
            return longest
        return size if size >= threshold else 0

    return weight
