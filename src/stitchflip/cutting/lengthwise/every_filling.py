"""Every filling worth at least so much: walked through size by size, all at once, cut short by the table."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from stitchflip.cutting.lengthwise.model import LengthTask, Pattern
    from stitchflip.cutting.lengthwise.tables import Table

    Numbers = NDArray[np.int64]


def every_filling(
    task: LengthTask, table: Table, prices: list[int], length: int, least: int, most: int
) -> list[Pattern] | None:
    """All patterns worth at least so much into which nothing more fits.

    Args:
        task: gives the sizes.
        table: filled for the prices; its demands are the ones to keep to.
        prices: of one piece of each size.
        length: of the strip.
        least: worth from which a pattern counts.
        most: partial fillings looked at side by side.

    Returns:
        The patterns; None when there are too many to look at.
    """
    import numpy as np

    rest = np.array([length], dtype=np.int64)
    worth = np.zeros(1, dtype=np.int64)
    node = np.full(1, -1, dtype=np.int64)
    open_ended = np.full(1, length + 1, dtype=np.int64)
    nodes: list[tuple[Numbers, int, int]] = []
    made = 0
    for size, end, limit in _blocks(table):
        long, price, below = task.sizes[size], prices[size], table.worth[end]
        kept: list[tuple[Numbers, Numbers, Numbers, Numbers]] = []
        for count in range(min(limit, length // long) + 1):
            left = rest - count * long
            good = (left >= 0).nonzero()[0]
            good = good[worth[good] + count * price + below[left[good] // table.unit] >= least]
            if not len(good):
                continue
            now = node[good]
            if count:
                nodes.append((now, size, count))
                now = np.arange(made, made + len(good), dtype=np.int64)
                made += len(good)
            closed = open_ended[good]
            if count < limit:
                closed = np.minimum(closed, long)
            kept.append((left[good], worth[good] + count * price, now, closed))
        if not kept:
            return []
        rest, worth, node, open_ended = (np.concatenate(parts) for parts in zip(*kept, strict=True))
        if len(rest) > most or made > 5 * most:
            return None
    full = (rest < open_ended) & (worth >= least)
    return _read(node[full], nodes)


def _blocks(table: Table) -> list[tuple[int, int, int]]:
    """(size, the part after its last, how many copies) in the order of the table."""
    out: list[tuple[int, int, int]] = []
    for row, part in enumerate(table.parts):
        copies = out.pop()[2] if out and out[-1][0] == part.size else 0
        out.append((part.size, row + 1, copies + part.copies))
    return out


def _read(last: Numbers, nodes: list[tuple[Numbers, int, int]]) -> list[Pattern]:
    """Patterns from their last pieces back to their first."""
    import numpy as np

    if not nodes:
        return []
    before = np.concatenate([parents for parents, _, _ in nodes])
    lengths = [len(parents) for parents, _, _ in nodes]
    sizes = np.repeat(np.array([size for _, size, _ in nodes]), lengths)
    counts = np.repeat(np.array([count for _, _, count in nodes]), lengths)
    out: list[list[tuple[int, int]]] = [[] for _ in range(len(last))]
    place, node = np.arange(len(last)), last
    while len(place):
        open_ = node >= 0
        place, node = place[open_], node[open_]
        for row, size, count in zip(place.tolist(), sizes[node].tolist(), counts[node].tolist(), strict=True):
            out[row].append((size, count))
        node = before[node]
    return [tuple(reversed(pattern)) for pattern in out]
