"""A task of three stages as its searches see it: the ways pieces may lie, the width that can be filled, the room left.

Every plan can be told so that bits touch to the left, so the width used is always a sum of widths of bits. The
largest such sum is the width that counts: what is beside it is lost in every plan.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.model import Bit, LaidStrip, Layout, Stack
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from stitchflip.cutting.layouts.model import LayoutTask

Counts = tuple[int, ...]
"""Pieces of each want."""


@dataclass(frozen=True, slots=True)
class Lay:
    """One want, one way round."""

    wide: int
    long: int
    want: int
    is_turned: bool


@dataclass(frozen=True, slots=True)
class PiledStrip:
    """A strip as the searches tell it."""

    high: int
    stacks: tuple[tuple[int, ...], ...]
    """Numbers of lays, from the left and from below."""


@dataclass(frozen=True, slots=True)
class Ground:
    """What does not change during a search."""

    lays: tuple[Lay, ...]
    """The widest first, among equally wide ones the longest."""
    counts: Counts
    wide: int
    """The most of the width that any pieces side by side can fill."""
    tallest: int | None
    """Of a strip."""
    can_trim: bool
    """A bit may be narrower than its stack."""
    same_stack: bool
    """All bits of a stack lie alike."""
    step: int

    def area(self, counts: Sequence[int]) -> int:
        """Of so many pieces."""
        sizes = {lay.want: lay.wide * lay.long for lay in self.lays}
        return sum(count * sizes[want] for want, count in enumerate(counts) if count)

    def below(self, value: int) -> int:
        """The longest plan that is better than one of this length, in steps of purchase."""
        return (-(-value // self.step) - 1) * self.step

    def given(self, strips: Iterable[PiledStrip]) -> Counts:
        """Pieces of each want in some strips."""
        made = [0] * len(self.counts)
        for strip in strips:
            for stack in strip.stacks:
                for lay in stack:
                    made[self.lays[lay].want] += 1
        return tuple(made)

    def layout(self, strips: Sequence[PiledStrip]) -> Layout:
        """The plan in the words of the engine."""
        return Layout(sheet=0, strips=tuple(self._laid(strip) for strip in strips))

    def _laid(self, strip: PiledStrip) -> LaidStrip:
        """One strip of it."""
        stacks = []
        for numbers in strip.stacks:
            lays = [self.lays[number] for number in numbers]
            bits = tuple(Bit(want=lay.want, turned=lay.is_turned) for lay in lays)
            stacks.append(Stack(wide=max(lay.wide for lay in lays), bits=bits))
        return LaidStrip(high=strip.high, stacks=tuple(stacks))


def ground_of(task: LayoutTask) -> Ground:
    """The task as the searches see it.

    Args:
        task: already small; every want fits.

    Returns:
        Its ground, the same for the same task.
    """
    wide, tallest = task.sheets[0].wide, task.tallest_strip
    lays = []
    for number, want in enumerate(task.wants):
        lays.append(Lay(want.wide, want.long, number, is_turned=False))
        if want.can_turn and want.wide != want.long:
            lays.append(Lay(want.long, want.wide, number, is_turned=True))
    lays = [lay for lay in lays if lay.wide <= wide and (tallest is None or lay.long <= tallest)]
    lays.sort(key=lambda lay: (-lay.wide, -lay.long, lay.want))
    counts = tuple(max(0, want.count) for want in task.wants)
    return Ground(
        lays=tuple(lays),
        counts=counts,
        wide=filled_width(wide, lays, counts),
        tallest=tallest,
        can_trim=task.trims,
        same_stack=task.same_stack,
        step=max(1, task.step),
    )


def filled_width(wide: int, lays: Sequence[Lay], counts: Sequence[int]) -> int:
    """The most of a width that pieces side by side can fill.

    Args:
        wide: of the sheet.
        lays: how pieces may lie.
        counts: how many there are.

    Returns:
        A width of at most `wide`; 0 when nothing fits.
    """
    widths: dict[int, list[int]] = {}
    for lay in lays:
        widths.setdefault(lay.want, []).append(lay.wide)
    mask = (1 << (wide + 1)) - 1
    sums = 1
    for want, ways in widths.items():
        for _ in range(min(counts[want], wide // min(ways))):
            more = sums
            for way in ways:
                more |= sums << way
            if more & mask == sums:
                break
            sums = more & mask
    return sums.bit_length() - 1
