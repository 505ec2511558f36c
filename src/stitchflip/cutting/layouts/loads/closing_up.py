"""Of plans that cost the same the one that leaves most: strips closed up so that one large piece of a sheet stays."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.loads.filling import Load, pieces_of
from stitchflip.cutting.layouts.model import Aim, FirstCut, Sheet

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.loads.kinds import Kind
    from stitchflip.cutting.layouts.model import LaidStrip, LayoutTask
    from stitchflip.cutting.layouts.watch import Watch


def what_is_left(plan: Sequence[tuple[Load, int]], kinds: Sequence[Kind]) -> int:
    """How good the leftovers of a plan are: a large one counts for more than two of half its size.

    Args:
        plan: loads and how often each is cut.
        kinds: the sheets.

    Returns:
        Sum of the squares of the pieces left above the strips.
    """
    total = 0
    for load, times in plan:
        kind = kinds[load.kind]
        free = (kind.high - sum(strip.high for strip in load.strips)) * kind.wide
        total += times * free * free
    return total


def closed_up(load: Load, kind: Kind, task: LayoutTask, watch: Watch) -> Load:
    """The same pieces from the same sheet in as little of its height as can be found.

    Args:
        load: how the sheet is cut now.
        kind: the sheet.
        task: wants, stages, trimming.
        watch: ends the search.

    Returns:
        The load, or a lower one.
    """
    counts = pieces_of(load.strips)
    numbers = sorted(counts)
    wants = [replace(task.wants[number], count=counts[number]) for number in numbers]
    if kind.along:
        wants = [replace(want, wide=want.long, long=want.wide) for want in wants]
    small = replace(
        task,
        wants=tuple(wants),
        sheets=(Sheet(kind.wide, None),),
        aim=Aim.LENGTH,
        step=1,
        first_cut=FirstCut.ACROSS,
        tallest_strip=kind.tallest,
    )
    strips = _shortest(small, watch)
    used = sum(strip.high for strip in load.strips)
    if not strips or sum(strip.high for strip in strips) >= used:
        return load
    return Load(load.kind, tuple(_renamed(strip, numbers) for strip in strips))


def _shortest(task: LayoutTask, watch: Watch) -> tuple[LaidStrip, ...]:
    """The shortest plan found of the pieces on an open length."""
    if task.stages in {1, 2}:
        from stitchflip.cutting.layouts.two_stages import shortest

        answer = shortest(task, watch)
    else:
        from stitchflip.cutting.layouts.three_stages import shortest as shortest_of_three

        answer = shortest_of_three(task, watch)
    return answer.layouts[0].strips if answer.layouts else ()


def _renamed(strip: LaidStrip, numbers: Sequence[int]) -> LaidStrip:
    """The strip with wants as they are numbered in the task."""
    stacks = tuple(
        replace(stack, bits=tuple(replace(bit, want=numbers[bit.want]) for bit in stack.bits)) for stack in strip.stacks
    )
    return replace(strip, stacks=stacks)
