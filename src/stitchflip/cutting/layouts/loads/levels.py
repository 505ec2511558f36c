"""A first plan at once: strips filled with the tallest pieces that still fit, sheet after sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.loads.filling import Load
from stitchflip.cutting.layouts.model import LaidStrip, Stack

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    import numpy as np
    from numpy.typing import NDArray

    from stitchflip.cutting.layouts.loads.kinds import Choice, Kind
    from stitchflip.cutting.layouts.model import LayoutTask


class Levels:
    """Fills one sheet after another.

    Args:
        task: stages and trimming.
        kinds: the sheets.
        choices: for each direction of the first cuts.
    """

    def __init__(self, task: LayoutTask, kinds: Sequence[Kind], choices: Mapping[bool, Sequence[Choice]]) -> None:
        import numpy as np

        self._kinds = kinds
        self._one_height = not task.trims and task.stages in {1, 2}
        self._wants = task.wants
        self._choices = {along: tuple(reversed(some)) for along, some in choices.items()}
        self._sizes = {
            along: np.array([(c.want, c.wide, c.high) for c in some], dtype=np.int64).reshape(-1, 3)
            for along, some in self._choices.items()
        }

        self._able: list[list[int]] = [[] for _ in task.wants]
        by_price = sorted(range(len(kinds)), key=lambda n: kinds[n].cost / (kinds[n].wide * kinds[n].high))
        for number in by_price:
            kind, sizes = kinds[number], self._sizes[kinds[number].along]
            fits = (sizes[:, 1] <= kind.wide) & (sizes[:, 2] <= kind.tallest)
            for want in np.unique(sizes[fits, 0]):
                self._able[want].append(number)

    def plan(self, counts: Sequence[int], copies: Sequence[int | None]) -> list[tuple[Load, int]]:
        """Loads for all pieces, or for as many as the sheets give.

        Args:
            counts: pieces of each want.
            copies: sheets there are, by the number of the sheet in the task.
        """
        import numpy as np

        left = np.array(counts, dtype=np.int64)
        free = list(copies)
        order = sorted(range(len(counts)), key=lambda want: -self._wants[want].wide * self._wants[want].long)
        out: list[tuple[Load, int]] = []
        for want in order:
            while left[want] > 0:
                number = self._sheet_for(want, free)
                if number is None:
                    break
                load = self._fill(number, want, left)
                used = load.counts()
                times = min(int(left[other]) // count for other, count in used.items())
                copies_left = free[self._kinds[number].sheet]
                if copies_left is not None:
                    times = min(times, copies_left)
                    free[self._kinds[number].sheet] = copies_left - times
                for other, count in used.items():
                    left[other] -= count * times
                out.append((load, times))
        return out

    def _sheet_for(self, want: int, free: Sequence[int | None]) -> int | None:
        """The kind that costs least for its size among those that can give a piece."""
        return next((number for number in self._able[want] if free[self._kinds[number].sheet] != 0), None)

    def _of(self, kind: Kind) -> Sequence[Choice]:
        return self._choices[kind.along]

    def _fill(self, number: int, first: int, counts: NDArray[np.int64]) -> Load:
        """One sheet, its first strip as high as one piece of a want."""
        kind, sizes = self._kinds[number], self._sizes[self._kinds[number].along]
        left = counts.copy()
        room = kind.high
        strips = []
        fits = (sizes[:, 1] <= kind.wide) & (sizes[:, 2] <= kind.tallest)
        leads = (fits & (sizes[:, 0] == first)).nonzero()[0]
        while len(leads):
            strip = self._strip(kind, int(leads[0]), left)
            strips.append(strip)
            room -= strip.high
            leads = (fits & (left[sizes[:, 0]] > 0) & (sizes[:, 2] <= room)).nonzero()[0]
        return Load(number, tuple(strips))

    def _strip(self, kind: Kind, lead: int, left: NDArray[np.int64]) -> LaidStrip:
        """A strip as high as one choice, filled with it and with lower ones."""
        choices, sizes = self._of(kind), self._sizes[kind.along]
        high, room = choices[lead].high, kind.wide
        stacks: list[Stack] = []
        at = lead
        while True:
            choice = choices[at]
            count = min(int(left[choice.want]), room // choice.wide)
            stacks += [Stack(choice.wide, (choice.bit,))] * count
            left[choice.want] -= count
            room -= count * choice.wide
            rest = sizes[at + 1 :]
            able = (rest[:, 1] <= room) & (left[rest[:, 0]] > 0)
            if self._one_height:
                able &= rest[:, 2] == high
            places = able.nonzero()[0]
            if not len(places):
                return LaidStrip(high, tuple(stacks))
            at += 1 + int(places[0])
