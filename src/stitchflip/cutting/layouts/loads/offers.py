"""The strips one sheet can be cut into, for two stages and for three, asked the same way."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol

from stitchflip.cutting.layouts.loads.filling import pieces_of
from stitchflip.cutting.layouts.loads.kinds import choices_of, kinds_of
from stitchflip.cutting.layouts.loads.strips import ThreeStageStrips

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.model import LaidStrip, LayoutTask


class Offers(Protocol):
    """Best strips of every height."""

    heights: Sequence[int]
    is_exact: bool
    """False: what it says is no bound."""

    def price(self, worths: Sequence[int]) -> list[int]:
        """For each height, the most a strip of it can be worth."""

    def strips(self, level: int) -> list[LaidStrip]:
        """Strips of a height: one that is worth as much, and one that holds no piece more often than it is wanted."""


class TwoStageOffers:
    """Strips of pieces side by side.

    Args:
        task: one sheet, first cuts across.
    """

    def __init__(self, task: LayoutTask) -> None:
        from stitchflip.cutting.layouts.columns.strips import BIGGEST_TABLE, StripKnapsack, kinds_of

        sheet = task.sheets[0]
        self.knapsack = StripKnapsack(kinds_of(task), sheet.wide, is_trimmed=task.trims)
        self.heights = self.knapsack.heights
        self.is_exact = self.knapsack.cells() <= BIGGEST_TABLE

    def price(self, worths: Sequence[int]) -> list[int]:
        """One pass over the pieces by height."""
        self._found = self.knapsack.priced(worths)
        return self._found.at_most

    def strips(self, level: int) -> list[LaidStrip]:
        """The best strip of a height."""
        return [self.laid(level, self._found.best(level)[1])]

    def laid(self, level: int, uses: Sequence[tuple[int, int]]) -> LaidStrip:
        """Pieces side by side in a strip of a height."""
        from stitchflip.cutting.layouts.columns.column import Column
        from stitchflip.cutting.layouts.laying import laid_out

        return laid_out(self.knapsack, {Column(self.heights[level], tuple(uses)): 1}).strips[0]


class ThreeStageOffers:
    """Strips of stacks.

    Args:
        task: one sheet, first cuts across.
    """

    def __init__(self, task: LayoutTask) -> None:
        kind = kinds_of(task)[0]
        self._limits = [max(want.count, 0) for want in task.wants]
        self._wide = kind.wide
        choices = choices_of(task.wants, [kind])
        self._table = ThreeStageStrips(
            choices, self._limits, kind.wide, kind.tallest, trims=task.trims, same_stack=task.same_stack
        )
        self.heights = self._table.heights
        self.is_exact = self._table.is_exact

    def price(self, worths: Sequence[int]) -> list[int]:
        """Stacks first, then strips."""
        self._worths = worths
        self._table.price(worths, self._limits)
        return [int(value) for value in self._table.values(self._wide)]

    def strips(self, level: int) -> list[LaidStrip]:
        """The best strip of a height, and a good one within what is wanted."""
        best = self._table.strip(level, self._wide)
        if all(count <= self._limits[want] for want, count in pieces_of([best]).items()):
            return [best]
        return [best, self._table.within(level, self._wide, self._worths, self._limits)]
