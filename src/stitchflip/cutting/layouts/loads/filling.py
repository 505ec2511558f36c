"""The best whole sheet: strips over one another, a knapsack over the height of the sheet."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.loads.kinds import choices_of
from stitchflip.cutting.layouts.loads.strips import StripTable, ThreeStageStrips, TwoStageStrips
from stitchflip.cutting.layouts.loads.sums import Sums
from stitchflip.cutting.layouts.model import LaidStrip
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    import numpy as np
    from numpy.typing import NDArray

    from stitchflip.cutting.layouts.loads.kinds import Choice, Kind
    from stitchflip.cutting.layouts.model import LayoutTask


@dataclass(frozen=True, slots=True)
class Load:
    """One sheet and what it gives."""

    kind: int
    """Number among the kinds."""
    strips: tuple[LaidStrip, ...]

    def counts(self) -> Counter[int]:
        """How many of each want."""
        return pieces_of(self.strips)


def pieces_of(strips: Sequence[LaidStrip]) -> Counter[int]:
    """How many of each want lie in the strips."""
    return Counter(bit.want for strip in strips for stack in strip.stacks for bit in stack.bits)


class Filler:
    """Fills sheets of all kinds for the most worth.

    Args:
        task: stages and trimming.
        kinds: the sheets; those of one direction share one table of strips.
        limits: most of each want that is ever needed.
    """

    def __init__(self, task: LayoutTask, kinds: Sequence[Kind], limits: Sequence[int]) -> None:
        self.kinds = kinds
        self._tables: dict[bool, StripTable] = {}
        self._rooms: dict[int, Sums] = {}
        self.choices: dict[bool, tuple[Choice, ...]] = {}
        self.is_exact = True
        for along in sorted({kind.along for kind in kinds}):
            same = [kind for kind in kinds if kind.along == along]
            self.choices[along] = choices_of(task.wants, same)
            table = _table(task, self.choices[along], limits, same)
            self._tables[along] = table
            self.is_exact &= table.is_exact
            often = dict.fromkeys(table.heights, max(kind.high for kind in same))
            rooms = {high: Sums(often, high) for high in {kind.high for kind in same}}
            for number, kind in enumerate(kinds):
                if kind.along == along:
                    self._rooms[number] = rooms[kind.high]
                    self.is_exact &= self._rooms[number].is_exact
        self._strips: dict[tuple[bool, int, int], LaidStrip] = {}

    def price(self, worth: Sequence[int], limits: Sequence[int]) -> None:
        """Take new worths and limits; before anything else is asked."""
        self._strips = {}
        for table in self._tables.values():
            table.price(worth, limits)

    def best(self, number: int, most: int, high: int | None = None) -> tuple[int, list[Load]]:
        """The most a sheet of a kind can be worth, and good ways to cut it, the best first.

        Args:
            number: of the kind.
            most: so many ways at most, each with another strip that it is built around.
            high: only so much of its height is free; None: all.
        """
        import numpy as np

        kind, room = self.kinds[number], self._rooms[number]
        rows, heights, values = self._offers(kind)
        free = kind.high if high is None else high
        end = room.place(free)
        if not len(rows) or end <= 0:
            return 0, []
        places = room.places[: end + 1]
        table = np.zeros(end + 1, dtype=np.int64)
        for height, value in zip(heights, values, strict=True):
            times = 1
            while height * times <= free:
                first, before = room.step(height, times)
                before = before[: end + 1 - first]
                np.maximum(table[first:], table[before] + times * value, out=table[first:])
                times *= 2
        need = -(-np.array(heights, dtype=np.int64) // room.unit)
        left = places[end] - need
        rest = np.where(left >= 0, places.searchsorted(np.maximum(left, 0), side="right") - 1, -1)
        around = np.where(rest >= 0, np.array(values) + table[rest], -1)
        order = np.argsort(-around, kind="stable")[:most]
        loads = [
            Load(
                number,
                (self._strip(kind, rows[j]), *self._rest(kind, room, table, int(rest[j]), rows, heights, values)),
            )
            for j in order
            if around[j] > 0
        ]
        return int(table[end]), loads

    def _offers(self, kind: Kind) -> tuple[list[int], list[int], list[int]]:
        """Strips worth more than any lower one: their numbers, heights and worths."""
        import numpy as np

        table = self._tables[kind.along]
        values = table.values(kind.wide)
        if not len(values):
            return [], [], []
        before = np.concatenate([[0], np.maximum.accumulate(values)[:-1]])
        rows = [row for row in map(int, np.flatnonzero(values > before)) if table.heights[row] <= kind.tallest]
        return rows, [table.heights[row] for row in rows], [int(values[row]) for row in rows]

    def _rest(
        self,
        kind: Kind,
        room: Sums,
        table: NDArray[np.int64],
        place: int,
        rows: Sequence[int],
        heights: Sequence[int],
        values: Sequence[int],
    ) -> list[LaidStrip]:
        """The strips below a place, read backwards."""
        out = []
        while table[place] > 0:
            for row, height, value in zip(rows, heights, values, strict=True):
                left = room.before(place, height)
                if left >= 0 and table[left] + value == table[place]:
                    out.append(self._strip(kind, row))
                    place = left
                    break
            else:
                break
        return out

    def _strip(self, kind: Kind, row: int) -> LaidStrip:
        key = (kind.along, row, kind.wide)
        if key not in self._strips:
            self._strips[key] = self._tables[kind.along].strip(row, kind.wide)
        return self._strips[key]


def _table(task: LayoutTask, choices: Sequence[Choice], limits: Sequence[int], kinds: Sequence[Kind]) -> StripTable:
    """The table of strips for sheets that are cut in the same direction."""
    wide = max(kind.wide for kind in kinds)
    if task.stages in {1, 2}:
        return TwoStageStrips(choices, limits, wide, trims=task.trims)
    tallest = max(kind.tallest for kind in kinds)
    return ThreeStageStrips(choices, limits, wide, tallest, trims=task.trims, same_stack=task.same_stack)
