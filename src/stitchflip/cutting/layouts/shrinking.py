"""The same task in fewer words and smaller numbers, and the way back.

Equal pieces become one want, squares and pieces that fit only one way no longer turn, and measures that share a
divisor are divided by it: tables over the width shrink by the same factor, and every sum of heights is a multiple of
it, so a bound may be rounded up further.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import chain, repeat
from math import gcd
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.model import Aim, Bit, FirstCut, LaidStrip, Layout, Stack, Want
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.cutting.layouts.model import Answer, LayoutTask


@dataclass(frozen=True, slots=True)
class Source:
    """Where pieces of a merged want come from."""

    want: int
    """Number of the want as asked for."""
    count: int
    is_swapped: bool
    """The merged want has its wide and long the other way round."""


@dataclass(frozen=True, slots=True)
class SmallTask:
    """A task made small, and what it takes to make its answer whole."""

    task: LayoutTask
    """Every count at least 1, no two wants equal, measures divided."""
    unit_wide: int
    """One unit across the sheet is so many of the units asked in."""
    unit_long: int
    """One unit along the sheet."""
    sources: tuple[tuple[Source, ...], ...]
    """For each want of the small task."""


def small_task(task: LayoutTask) -> SmallTask:
    """Merge equal wants, take turns away that change nothing, and divide by what all measures share.

    Args:
        task: any task; wants that fit nowhere are left out (only a task for the most value may have them).

    Returns:
        The small task; a plan of it is a plan of the task, and the other way round.
    """
    merged = _merged(task)
    wants = [replace(want, count=sum(source.count for source in sources)) for want, sources in merged.items()]
    unit_wide, unit_long = _units(task, wants)
    small = replace(
        task,
        wants=tuple(replace(want, wide=want.wide // unit_wide, long=want.long // unit_long) for want in wants),
        sheets=tuple(
            replace(
                sheet,
                wide=sheet.wide // unit_wide,
                long=None if sheet.long is None else sheet.long // unit_long,
            )
            for sheet in task.sheets
        ),
        step=_small_step(task.step, unit_long),
        tallest_strip=None if task.tallest_strip is None else task.tallest_strip // unit_long,
    )
    return SmallTask(task=small, unit_wide=unit_wide, unit_long=unit_long, sources=tuple(map(tuple, merged.values())))


def _merged(task: LayoutTask) -> dict[Want, list[Source]]:
    """The wants without their counts, each with where its pieces come from."""
    merged: dict[Want, list[Source]] = {}
    for number, want in enumerate(task.wants):
        plain = _plain(task, want)
        if plain is None or want.count <= 0 or (task.aim is Aim.VALUE and want.value <= 0):
            continue
        is_swapped = (plain.wide, plain.long) != (want.wide, want.long)
        merged.setdefault(plain, []).append(Source(want=number, count=want.count, is_swapped=is_swapped))
    return merged


def _plain(task: LayoutTask, want: Want) -> Want | None:
    """The want as it is compared with others: turned only where it matters, short side first where it may turn."""
    ways = ways_to_lie(task, want)
    if not ways:
        return None
    wide, long = want.wide, want.long
    turns = len(ways) == 2
    if ways == {True} or (turns and wide > long):
        wide, long = long, wide
    value = want.value if task.aim is Aim.VALUE else 0
    return Want(wide=wide, long=long, count=0, can_turn=turns and wide != long, value=value)


def ways_to_lie(task: LayoutTask, want: Want) -> set[bool]:
    """How a piece may lie on any of the sheets.

    Args:
        task: its sheets and the tallest strip.
        want: the piece.

    Returns:
        False for as given, True for turned; nothing where it fits no sheet.
    """
    ways = {False: (want.wide, want.long)}
    if want.can_turn:
        ways[True] = (want.long, want.wide)
    tallest = task.tallest_strip
    is_across = task.aim is Aim.LENGTH or task.first_cut is FirstCut.ACROSS
    is_along = not is_across and task.first_cut is FirstCut.ALONG
    return {
        turned
        for turned, (wide, long) in ways.items()
        if (tallest is None or (wide if is_along else long if is_across else min(wide, long)) <= tallest)
        and any(wide <= sheet.wide and (sheet.long is None or long <= sheet.long) for sheet in task.sheets)
    }


def _units(task: LayoutTask, wants: list[Want]) -> tuple[int, int]:
    """What all measures across, and all along, can be divided by."""
    if not wants:
        return 1, 1
    across, along = gcd(*(want.wide for want in wants)), gcd(*(want.long for want in wants))
    if any(want.can_turn for want in wants) or (task.aim is not Aim.LENGTH and task.first_cut is not FirstCut.ACROSS):
        across = along = gcd(across, along)
    if task.aim is Aim.LENGTH and task.step > 0 and task.step % along and along % task.step:
        along = gcd(along, task.step)
        across = gcd(across, along) if any(want.can_turn for want in wants) else across
    return across, along


def _small_step(step: int, unit_long: int) -> int:
    """The step of purchase in small units: lengths fall into the same steps as before."""
    return max(1, step // unit_long)


def full_size(answer: Answer, small: SmallTask) -> Answer:
    """The answer in the units and with the wants of the task as asked.

    Args:
        answer: of the small task.
        small: what it was made from.

    Returns:
        The answer of the task.
    """
    names = _Names(small)
    layouts: list[Layout] = []
    for layout in answer.layouts:
        if layout.times > 1 and any(map(names.are_several, layout.strips)):
            layouts += [names.layout(replace(layout, times=1)) for _ in range(layout.times)]
        else:
            layouts.append(names.layout(layout))
    unit = small.unit_long if small.task.aim is Aim.LENGTH else 1
    return replace(answer, layouts=tuple(layouts), value=answer.value * unit, bound=answer.bound * unit)


class _Names:
    """Calls pieces by the names they were asked for, one after the other where they have several."""

    def __init__(self, small: SmallTask) -> None:
        self._small = small
        self._next = [chain.from_iterable(repeat(source, source.count) for source in each) for each in small.sources]
        self._done: dict[int, tuple[LaidStrip, LaidStrip]] = {}

    def are_several(self, strip: LaidStrip) -> bool:
        """Whether strips cut alike give pieces of different names."""
        return any(len(self._small.sources[bit.want]) > 1 for stack in strip.stacks for bit in stack.bits)

    def layout(self, layout: Layout) -> Layout:
        """A layout in full size."""
        return replace(layout, strips=tuple(map(self._strip, layout.strips)))

    def _strip(self, strip: LaidStrip) -> LaidStrip:
        """A strip in full size; the same one again for the same one."""
        if id(strip) in self._done:
            return self._done[id(strip)][1]
        stacks = tuple(
            Stack(wide=stack.wide * self._small.unit_wide, bits=tuple(map(self._bit, stack.bits)))
            for stack in strip.stacks
        )
        full = LaidStrip(high=strip.high * self._small.unit_long, stacks=stacks)
        if not self.are_several(strip):
            self._done[id(strip)] = (strip, full)
        return full

    def _bit(self, bit: Bit) -> Bit:
        """A piece by the name it was asked for, turned against its own measures."""
        sources = self._small.sources[bit.want]
        source = sources[0] if len(sources) == 1 else next(self._next[bit.want])
        return Bit(want=source.want, turned=bit.turned is not source.is_swapped)
