"""The sheets there are, the most worth: what to cut when not everything can be."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.loads.any_cuts import AnyCuts
from stitchflip.cutting.layouts.loads.clipping import clipped
from stitchflip.cutting.layouts.loads.filling import Load
from stitchflip.cutting.layouts.loads.kinds import choices_of, kinds_of, layout_of
from stitchflip.cutting.layouts.loads.levels import Levels
from stitchflip.cutting.layouts.model import Answer, FirstCut, Sheet
from stitchflip.cutting.layouts.watch import Watch
from stitchflip.cutting.model import Status
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.loads.kinds import Kind
    from stitchflip.cutting.layouts.model import Layout, LayoutTask, Want

MOST_WANTS = 300
"""Of more different wants only those worth most for their size are searched."""
MOST_PIECES = 20_000
"""So many pieces of one want on one sheet are looked at, no more."""
_BOUND_PART = 0.3
"""Of the time, to bound plans of any number of stages."""


def worthiest(task: LayoutTask, watch: Watch) -> Answer:
    """Find what to cut from the sheets there are so that it is worth most, and say how sure that is.

    Args:
        task: with `Aim.VALUE`; sheets of open length are left out of account.
        watch: how long the search may take.

    Returns:
        The worthiest plan found, and a worth no plan of this kind exceeds. Where nothing fits the plan is empty.

    Example:
        >>> from stitchflip.cutting.layouts.model import Aim, LayoutTask, Sheet, Want
        >>> from stitchflip.cutting.layouts.watch import Watch
        >>> wants = (Want(5, 5, count=5, value=25), Want(4, 3, count=9, value=13))
        >>> answer = worthiest(LayoutTask(wants, (Sheet(10, 10),), Aim.VALUE), Watch(5))
        >>> answer.status.value, answer.value
        ('proved', 100)
    """
    kinds = kinds_of(task)
    ways = {kind.along for kind in kinds}
    able = {c.want for way in ways for c in choices_of(task.wants, [kind for kind in kinds if kind.along is way])}
    able = {want for want in able if min(task.wants[want].wide, task.wants[want].long, task.wants[want].value) > 0}
    if not able:
        return Answer(Status.PROVED, (), 0, 0, seconds=watch.spent())
    if any(kind.count is None for kind in kinds):
        return _all_cut(task, kinds, able, watch)
    copies = [0 if sheet.count is None else max(0, sheet.count) for sheet in task.sheets]
    part = _reduced(task, kinds, copies, able)
    if sum(copies[sheet] for sheet in {kind.sheet for kind in kinds}) == 1:
        layouts, bound = _from_one(part, kinds, watch)
    else:
        layouts, bound = _from_several(part, kinds, copies, watch)
    layouts = tuple(_named(layout, part.numbers) for layout in layouts)
    value = sum(task.wants[want].value * count for want, count in _given(layouts).items())
    status = Status.PROVED if value >= bound else Status.BEST_FOUND
    because = "" if status is Status.PROVED else "time was over before the best plan was proved"
    return Answer(status, layouts, value, bound, because, watch.spent())


def _all_cut(task: LayoutTask, kinds: Sequence[Kind], able: set[int], watch: Watch) -> Answer:
    """Where sheets do not run out, all that fits on one of those is cut; the rest as the other sheets allow."""
    endless = [kind for kind in kinds if kind.count is None]
    ways = {kind.along for kind in endless}
    choices = {way: choices_of(task.wants, [kind for kind in endless if kind.along is way]) for way in ways}
    cut = {choice.want for some in choices.values() for choice in some} & able
    counts = [max(0, want.count) if number in cut else 0 for number, want in enumerate(task.wants)]
    plan = Levels(task, endless, choices).plan(counts, [None] * len(task.sheets))
    layouts = tuple(layout_of(endless[load.kind], load.strips, times) for load, times in plan)
    value = sum(task.wants[want].value * counts[want] for want in cut)
    rest = tuple(
        replace(want, count=want.count if number in able - cut else 0) for number, want in enumerate(task.wants)
    )
    ended = tuple(replace(sheet, count=sheet.count or 0) for sheet in task.sheets)
    more = worthiest(replace(task, wants=rest, sheets=ended), watch) if able - cut else None
    if more is None:
        return Answer(Status.PROVED, layouts, value, value, seconds=watch.spent())
    return replace(
        more,
        layouts=(*layouts, *more.layouts),
        value=value + more.value,
        bound=value + more.bound,
        seconds=watch.spent(),
    )


@dataclass(frozen=True, slots=True)
class _Part:
    """The part of a task that is searched."""

    task: LayoutTask
    """Wants that fit and are worth something, no more of each than the sheets hold; never more than three stages."""
    numbers: tuple[int, ...]
    """Of its wants in the task as asked."""
    bound: int
    """No plan of the whole task is worth more."""
    is_whole: bool
    """Nothing was left out that a plan could use: bounds of the part hold for the task."""
    any_cuts: bool
    """Bounds have to hold for any number of stages."""


def _reduced(task: LayoutTask, kinds: Sequence[Kind], copies: Sequence[int], able: set[int]) -> _Part:
    """The part to search, and a first bound: the pieces worth most for their size, as much as there is fabric."""
    sizes = {kind.sheet: kind.wide * kind.high for kind in kinds}
    room = sum(size * copies[sheet] for sheet, size in sizes.items())
    most = MOST_PIECES * sum(copies[sheet] for sheet in sizes)
    rate = {number: Fraction(task.wants[number].value, _area(task.wants[number])) for number in able}
    order = sorted(able, key=lambda number: (-rate[number], number))
    bound, left = Fraction(0), room
    for number in order:
        taken = min(task.wants[number].count * _area(task.wants[number]), left)
        bound += rate[number] * taken
        left -= taken
    kept = tuple(sorted(order[:MOST_WANTS]))
    wants, is_whole = [], len(kept) == len(able)
    for number in kept:
        want = task.wants[number]
        count = min(want.count, room // _area(want))
        is_whole &= count <= most
        wants.append(replace(want, count=min(count, most)))
    stages = 3 if task.stages == 0 else task.stages
    return _Part(replace(task, wants=tuple(wants), stages=stages), kept, int(bound), is_whole, task.stages == 0)


def _area(want: Want) -> int:
    return want.wide * want.long


def _from_one(part: _Part, kinds: Sequence[Kind], watch: Watch) -> tuple[tuple[Layout, ...], int]:
    """One sheet, cut across first or along first, whichever is worth more."""
    from stitchflip.cutting.layouts.loads.single import OneSheet

    sides = [OneSheet(_seen_from(part.task, kind), watch) for kind in kinds]
    for side in sides:
        side.start()
    bound = part.bound
    if part.any_cuts and part.is_whole:
        bound = min(bound, _any_bound(part, kinds, watch, max(side.value for side in sides)))
    for number, side in enumerate(sides):
        best = max(other.value for other in sides)
        if best < bound:
            side.run(watch.likely_left() / (len(sides) - number), best)
    if part.is_whole and not part.any_cuts:
        bound = min(bound, max(side.bound for side in sides))
    best = max(range(len(sides)), key=lambda number: sides[number].value)
    return (layout_of(kinds[best], sides[best].strips, 1),) if sides[best].strips else (), bound


def _any_bound(part: _Part, kinds: Sequence[Kind], watch: Watch, goal: int) -> int:
    """A bound for plans of any number of stages; it is the same whichever way the sheet is looked at."""
    kind = replace(kinds[0], tallest=kinds[0].high)
    cuts = AnyCuts(kind, choices_of(part.task.wants, [kind]), [want.count for want in part.task.wants])
    if not cuts.is_possible:
        return part.bound
    clock = watch.part(watch.likely_left() * _BOUND_PART)
    found = cuts.bound([want.value for want in part.task.wants], clock, goal)
    return part.bound if found is None else found


def _seen_from(task: LayoutTask, kind: Kind) -> LayoutTask:
    """The task for one sheet of a kind, looked at so that its first cuts go across."""
    wants = tuple(replace(want, wide=want.long, long=want.wide) if kind.along else want for want in task.wants)
    return replace(task, wants=wants, sheets=(Sheet(kind.wide, kind.high),), first_cut=FirstCut.ACROSS)


def _from_several(
    part: _Part, kinds: Sequence[Kind], copies: Sequence[int], watch: Watch
) -> tuple[tuple[Layout, ...], int]:
    """Sheet after sheet, and what can be put together from all loads met."""
    from stitchflip.cutting.layouts.loads.several import SeveralSheets

    search = SeveralSheets(part.task, kinds, copies, watch, part.bound)
    search.run()
    left = [want.count for want in part.task.wants]
    layouts = []
    for load, times in search.plan:
        kind, rest = kinds[load.kind], times
        while rest:
            small = clipped(load, left, part.task.wants, along=kind.along, trims=part.task.trims)
            counts = small.counts()
            if not counts:
                break
            often = min(rest, *(left[want] // count for want, count in counts.items()))
            left = [count - counts[want] * often for want, count in enumerate(left)]
            layouts.append(layout_of(kind, small.strips, often))
            rest -= often
    return tuple(layouts), search.bound if part.is_whole and not part.any_cuts else part.bound


def _named(layout: Layout, numbers: Sequence[int]) -> Layout:
    """The layout with wants as they are numbered in the task."""
    strips = tuple(
        replace(
            strip,
            stacks=tuple(
                replace(stack, bits=tuple(replace(bit, want=numbers[bit.want]) for bit in stack.bits))
                for stack in strip.stacks
            ),
        )
        for strip in layout.strips
    )
    return replace(layout, strips=strips)


def _given(layouts: Sequence[Layout]) -> Counter[int]:
    """Pieces of each want in all layouts."""
    given = Counter[int]()
    for layout in layouts:
        for want, count in Load(0, layout.strips).counts().items():
            given[want] += count * layout.times
    return given
