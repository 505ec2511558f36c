"""Sheets as the search sees them: one kind for each size and each way the first cuts may go.

A sheet that is cut along is the same sheet seen from its side, so the search only ever cuts across: wide and long of
the sheet and of all pieces change places here, and nowhere else.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.model import Bit, FirstCut, Layout
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.model import LaidStrip, LayoutTask, Want


@dataclass(frozen=True, slots=True)
class Choice:
    """A want laid one way, as it lies under the strips."""

    want: int
    turned: bool
    """A quarter, against the fabric."""
    wide: int
    high: int

    @property
    def bit(self) -> Bit:
        """One piece of it."""
        return Bit(self.want, self.turned)


@dataclass(frozen=True, slots=True)
class Kind:
    """Equal sheets, all cut in the same direction first."""

    sheet: int
    """Number of the sheet in the task; two kinds with one number share its copies."""
    along: bool
    wide: int
    """Length of a strip."""
    high: int
    """Room for strips."""
    tallest: int
    """No strip is taller."""
    count: int | None
    cost: int


def kinds_of(task: LayoutTask) -> tuple[Kind, ...]:
    """Every sheet that has room, once for each way its first cuts may go."""
    ways = {FirstCut.ACROSS: (False,), FirstCut.ALONG: (True,), FirstCut.EITHER: (False, True)}[task.first_cut]
    out = []
    for number, sheet in enumerate(task.sheets):
        if sheet.wide <= 0 or sheet.long is None or sheet.long <= 0 or (sheet.count is not None and sheet.count <= 0):
            continue
        same = sheet.wide == sheet.long and all(want.can_turn for want in task.wants)
        for along in ways[:1] if same else ways:
            wide, high = (sheet.long, sheet.wide) if along else (sheet.wide, sheet.long)
            tallest = high if task.tallest_strip is None else min(high, task.tallest_strip)
            out.append(Kind(number, along, wide, high, tallest, sheet.count, sheet.cost))
    return tuple(out)


def choices_of(wants: Sequence[Want], kinds: Sequence[Kind]) -> tuple[Choice, ...]:
    """Every way to lay a want on at least one of the kinds, all cut in the same direction; lowest first."""
    out = []
    for number, want in enumerate(wants):
        if want.count <= 0 or not kinds:
            continue
        for turned in (False, True) if want.can_turn and want.wide != want.long else (False,):
            wide, high = (want.long, want.wide) if turned != kinds[0].along else (want.wide, want.long)
            if any(wide <= kind.wide and high <= kind.tallest for kind in kinds):
                out.append(Choice(number, turned, wide, high))
    return tuple(sorted(out, key=lambda choice: (choice.high, choice.wide, choice.want, choice.turned)))


def layout_of(kind: Kind, strips: tuple[LaidStrip, ...], times: int) -> Layout:
    """So many sheets of a kind, cut the same way."""
    return Layout(kind.sheet, strips, times, kind.along)
