"""What a strip of each height can be worth: knapsacks over the length of the strip.

Both tables answer the same two questions: the worth of the best strip of each height and length, and what lies in
it. Worths are whole numbers, so sums are exact and a table can be read backwards without rounding. Wants are kept
within their limits inside a strip (two stages) or inside a stack (three stages), not across them: the best strip may
be worth more than one that keeps within them, never less, as a bound needs it.
"""

from __future__ import annotations

from collections import Counter
from math import isqrt
from typing import TYPE_CHECKING, Protocol, TypeAlias

from stitchflip.cutting.layouts.loads.sums import Sums, parts
from stitchflip.cutting.layouts.model import LaidStrip, Stack

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    import numpy as np
    from numpy.typing import NDArray

    from stitchflip.cutting.layouts.loads.kinds import Choice

Worths: TypeAlias = "NDArray[np.int64]"

_Layer: TypeAlias = "tuple[Choice, int, Worths, Worths]"
"""A choice, the worth of one, and the row of the knapsack before and after it."""
_Group: TypeAlias = "tuple[int, Worths, list[_Layer]]"
"""Stacks of one width: the width, the most worth within each height, and how it came about."""
_LEAST_CELLS, _MOST_CELLS, _MOST_WORK = 10_000, 500_000, 15_000_000
"""Of a table of lengths and heights: what memory and the clock allow; beyond that places are made coarser."""


class StripTable(Protocol):
    """Best strips of every height and length."""

    heights: list[int]
    """Heights told apart, ascending."""
    is_exact: bool
    """False: places were made coarser, so the table is no bound."""

    def price(self, worth: Sequence[int], limits: Sequence[int]) -> None:
        """Fill the table for the worth of one of each want and how many of it count."""

    def values(self, wide: int) -> Worths:
        """Worth of the best strip of each height in a length."""

    def strip(self, height: int, wide: int) -> LaidStrip:
        """The best strip of a height (by its number) in a length."""


def _counted(choices: Iterable[Choice], sizes: Sequence[int], limits: Sequence[int]) -> dict[int, int]:
    """How often each size can be wanted at all."""
    out: dict[int, int] = {}
    for choice, size in zip(choices, sizes, strict=True):
        out[size] = out.get(size, 0) + limits[choice.want]
    return out


def _added(table: Worths, sums: Sums, size: int, worth: int, limit: int) -> Worths:
    """A row of the knapsack with so many more pieces of a size to choose from."""
    import numpy as np

    out = table.copy()
    for taken in parts(limit):
        first, before = sums.step(size, taken)
        if first < len(out):
            out[first:] = np.maximum(out[first:], out[before[: len(out) - first]] + taken * worth)
    return out


def _taken(after: Worths, before: Worths, sums: Sums, place: int, size: int, worth: int) -> tuple[int, int]:
    """How many of a size lie at the end of the best row up to a place, and the place left."""
    count, left = 0, place
    while after[place] != before[left] + count * worth:
        count += 1
        left = sums.before(place, size, count)
    return count, left


class TwoStageStrips:
    """Strips of single pieces side by side.

    Args:
        choices: lowest first.
        limits: most of each want.
        wide: longest strip.
        trims: False: all pieces are as high as the strip.
    """

    def __init__(self, choices: Sequence[Choice], limits: Sequence[int], wide: int, *, trims: bool) -> None:
        self._choices = choices
        self._trims = trims
        self._sums = Sums(_counted(choices, [choice.wide for choice in choices], limits), wide)
        self.is_exact = self._sums.is_exact
        self.heights = sorted({choice.high for choice in choices})
        self._rows: list[Worths] = []
        self._layers: list[tuple[Choice, int, Worths, Worths]] = []
        self._spans: list[tuple[int, int]] = []

    def price(self, worth: Sequence[int], limits: Sequence[int]) -> None:
        """One pass over the choices; after each height its row is kept."""
        import numpy as np

        self._rows, self._layers, self._spans = [], [], []
        nothing = np.zeros(len(self._sums), dtype=np.int64)
        row, first, number = nothing, 0, 0
        for height in self.heights:
            if not self._trims:
                row, first = nothing, len(self._layers)
            while number < len(self._choices) and self._choices[number].high == height:
                choice = self._choices[number]
                number += 1
                limit = min(limits[choice.want], self._sums.room // choice.wide)
                if worth[choice.want] > 0 and limit > 0:
                    after = _added(row, self._sums, choice.wide, worth[choice.want], limit)
                    self._layers.append((choice, worth[choice.want], row, after))
                    row = after
            self._rows.append(row)
            self._spans.append((first, len(self._layers)))

    def values(self, wide: int) -> Worths:
        """Worth of the best strip of each height in a length."""
        import numpy as np

        place = self._sums.place(wide)
        return np.array([row[place] for row in self._rows], dtype=np.int64)

    def strip(self, height: int, wide: int) -> LaidStrip:
        """Read backwards from the end of its row."""
        place = self._sums.place(wide)
        first, last = self._spans[height]
        stacks: list[Stack] = []
        tall = 0
        for choice, worth, before, after in reversed(self._layers[first:last]):
            count, place = _taken(after, before, self._sums, place, choice.wide, worth)
            if count:
                stacks += [Stack(choice.wide, (choice.bit,))] * count
                tall = max(tall, choice.high)
        return LaidStrip(tall, tuple(stacks))


class ThreeStageStrips:
    """Strips of stacks side by side, pieces over one another in a stack.

    Args:
        choices: lowest first.
        limits: most of each want.
        wide: longest strip.
        tallest: tallest strip.
        trims: False: all pieces are as wide as their stack.
        same_stack: all pieces of a stack are equal and lie alike.
    """

    def __init__(
        self,
        choices: Sequence[Choice],
        limits: Sequence[int],
        wide: int,
        tallest: int,
        *,
        trims: bool,
        same_stack: bool,
    ) -> None:
        self._trims, self._same = trims, same_stack
        self._choices = sorted(choices, key=lambda choice: (choice.wide, choice.high, choice.want, choice.turned))
        cells = max(_LEAST_CELLS, min(_MOST_CELLS, _MOST_WORK // max(1, len(choices))))
        self._across = Sums({choice.wide: wide for choice in choices}, wide, isqrt(4 * cells))
        most = cells // len(self._across)
        self._up = Sums(_counted(choices, [choice.high for choice in choices], limits), tallest, most)
        self.is_exact = self._across.is_exact and self._up.is_exact
        self._rows = self._useful_rows(limits)
        self.heights = [self._up.length(int(row)) for row in self._rows]
        self._groups: list[_Group] = []
        self._table = self._table_of([])

    def _useful_rows(self, limits: Sequence[int]) -> NDArray[np.int64]:
        """Places up where a strip may end: all but the lower end; with equal pieces only multiples of their heights."""
        import numpy as np

        if not self._same:
            return np.arange(1, len(self._up))
        ends = {
            self._up.place(choice.high * count)
            for choice in self._choices
            for count in range(1, min(limits[choice.want], self._up.room // choice.high) + 1)
        }
        return np.array(sorted(ends), dtype=np.int64)

    def price(self, worth: Sequence[int], limits: Sequence[int]) -> None:
        """First the stacks of each width for all heights at once, then the strips from them."""
        self._groups = self._stacks(worth, limits, len(self._up) - 1)
        self._table = self._table_of(self._groups)

    def _stacks(self, worth: Sequence[int], limits: Sequence[int], end: int) -> list[_Group]:
        """The best stacks of each width, for all heights up to a place."""
        import numpy as np

        groups: list[_Group] = []
        nothing = np.zeros(end + 1, dtype=np.int64)
        row, layers, width = nothing, list[_Layer](), 0
        for choice in self._choices:
            limit = min(limits[choice.want], self._up.room // choice.high)
            if worth[choice.want] <= 0 or limit <= 0:
                continue
            if layers and (choice.wide != width or self._same):
                groups.append((width, row, layers))
                row, layers = (row, list(layers)) if self._trims and not self._same else (nothing, [])
            width = choice.wide
            after = _added(row, self._up, choice.high, worth[choice.want], limit)
            layers.append((choice, worth[choice.want], row, after))
            row = after
        if layers:
            groups.append((width, row, layers))
        return groups

    def _table_of(self, groups: Sequence[_Group]) -> Worths:
        """Most worth of a strip within each length, for each height."""
        import numpy as np

        table = np.zeros((len(self._across), len(self._rows)), dtype=np.int64)
        for width, stack, _ in groups:
            worths = stack[self._rows]
            for times in _doubling(self._across.room // width):
                first, before = self._across.step(width, times)
                if first < len(table):
                    np.maximum(table[first:], table[before] + times * worths, out=table[first:])
        return table

    def values(self, wide: int) -> Worths:
        """Worth of the best strip of each height in a length."""
        best: Worths = self._table[self._across.place(wide)]
        return best

    def strip(self, height: int, wide: int) -> LaidStrip:
        """Read backwards, stack by stack."""
        stacks: list[Stack] = []
        tall, up = 0, int(self._rows[height])
        for stack, high, _ in self._read(self._table[:, height], self._across.place(wide), up, self._groups):
            stacks.append(stack)
            tall = max(tall, high)
        return LaidStrip(tall, tuple(stacks))

    def within(self, height: int, wide: int, worth: Sequence[int], limits: Sequence[int]) -> LaidStrip:
        """A strip of a height within the limits: stack by stack, the rest priced again when a want runs out."""
        import numpy as np

        left, place, up = list(limits), self._across.place(wide), int(self._rows[height])
        stacks: list[Stack] = []
        tall = 0
        while place > 0:
            groups = self._stacks(worth, left, up)
            column = np.zeros(place + 1, dtype=np.int64)
            for width, row, _ in groups:
                for times in _doubling(self._across.room // width):
                    first, before = self._across.step(width, times)
                    if first <= place:
                        found = column[before[: place + 1 - first]] + times * row[up]
                        np.maximum(column[first:], found, out=column[first:])
            if column[place] <= 0:
                break
            for stack, high, after in self._read(column, place, up, groups):
                used = Counter(bit.want for bit in stack.bits)
                if any(count > left[want] for want, count in used.items()):
                    break
                for want, count in used.items():
                    left[want] -= count
                stacks.append(stack)
                tall, place = max(tall, high), after
        return LaidStrip(tall, tuple(stacks))

    def _read(self, column: Worths, place: int, up: int, groups: Sequence[_Group]) -> Iterator[tuple[Stack, int, int]]:
        """The stacks of the best strip up to a place: each with its height and the place left."""
        while column[place] > 0:
            for width, row, layers in groups:
                left = self._across.before(place, width)
                if left >= 0 and row[up] > 0 and column[left] + row[up] == column[place]:
                    stack, high = self._stack(layers, width, up)
                    place = left
                    yield stack, high, place
                    break
            else:
                return

    def _stack(self, layers: Sequence[_Layer], width: int, up: int) -> tuple[Stack, int]:
        """The pieces of one stack, widest below, and its height."""
        bits, high, widest = [], 0, 0
        for choice, worth, before, after in reversed(layers):
            count, up = _taken(after, before, self._up, up, choice.high, worth)
            bits += [choice.bit] * count
            high += count * choice.high
            widest = max(widest, choice.wide if count else 0)
        return Stack(widest if self._trims else width, tuple(bits)), high


def _doubling(most: int) -> list[int]:
    """1, 2, 4 ...: sums of some of them give every count up to most."""
    return [1 << bit for bit in range(max(most, 1).bit_length())]
