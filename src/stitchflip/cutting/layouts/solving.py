"""The one door of the engine: a task is made small, given to the method that suits it, and its answer made whole.

Most cutting lists hold the same piece twice under two names, squares that "may be turned", and measures that are
all multiples of a half inch. `solve` takes that out before any search begins, and answers at once what needs none.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.model import Aim, Answer
from stitchflip.cutting.layouts.shrinking import full_size, small_task, ways_to_lie
from stitchflip.cutting.layouts.watch import Rescaled
from stitchflip.cutting.model import Status

if TYPE_CHECKING:
    from stitchflip.cutting.layouts.model import LayoutTask
    from stitchflip.cutting.layouts.watch import Watch

MOST_PIECES = 100_000
"""More than that is no sewing, and the plan would not fit on paper."""
STAGES = (0, 2, 3)
"""Cuts after one another that plans are made for; 0: as many as it takes."""


def solve(task: LayoutTask, watch: Watch) -> Answer:
    """Find the best edge-to-edge plan, and say how sure it is.

    Args:
        task: what is wanted from what, in whole units.
        watch: how long the search may take.

    Returns:
        The best plan found, a bound no plan of this kind can beat, and whether the two meet in the steps fabric is
        bought in. Without a plan the reason is told: a piece that fits on no sheet, more pieces than can be planned.

    Example:
        >>> from stitchflip.cutting.layouts.model import LayoutTask, Sheet, Want
        >>> from stitchflip.cutting.layouts.watch import Watch
        >>> answer = solve(
        ...     LayoutTask(wants=(Want(wide=3, long=2, count=4),), sheets=(Sheet(wide=7, long=None),)), Watch(1)
        ... )
        >>> answer.status.value, answer.value, answer.bound
        ('proved', 4, 4)
    """
    answer = _at_once(task)
    if answer is None:
        small = small_task(task)
        unit = small.unit_long if task.aim is Aim.LENGTH else 1
        answer = full_size(_searched(small.task, Rescaled(watch, unit)), small)
    return replace(answer, seconds=watch.spent())


def _at_once(task: LayoutTask) -> Answer | None:
    """The answer to a task that needs no search."""
    wanted = [want for want in task.wants if want.count > 0]
    if not wanted:
        return Answer(status=Status.PROVED, layouts=(), value=0, bound=0)
    if not task.sheets:
        return _impossible("there is no fabric to cut from")
    refused = _why_refused(task)
    if refused:
        return _impossible(refused)
    if any(want.wide <= 0 or want.long <= 0 for want in wanted):
        return _impossible("a piece has no size")
    if task.aim is Aim.VALUE:
        return None
    for want in wanted:
        if not ways_to_lie(task, want):
            return _impossible(f"a piece {want.wide} wide × {want.long} long fits on no sheet{_as_strips(task)}")
    pieces = sum(want.count for want in wanted)
    if pieces > MOST_PIECES:
        return _impossible(f"{pieces} pieces are more than can be planned at once; the most is {MOST_PIECES}")
    return None


def _why_refused(task: LayoutTask) -> str:
    """What no method here is made for; "" when there is nothing."""
    if task.stages not in STAGES:
        return f"plans have 2 or 3 cuts after one another, or any number (0), not {task.stages}"
    if any((sheet.long is None) is not (task.aim is Aim.LENGTH) for sheet in task.sheets):
        return "the length used is found of fabric of open length, cost and value of pieces of fabric with a length"
    if any(sheet.cost < 0 for sheet in task.sheets):
        return "a piece of fabric costs less than nothing"
    return ""


def _as_strips(task: LayoutTask) -> str:
    """Names the limit on strips, where there is one."""
    return "" if task.tallest_strip is None else f" in strips at most {task.tallest_strip} tall"


def _impossible(because: str) -> Answer:
    """No plan, and why."""
    return Answer(status=Status.IMPOSSIBLE, layouts=(), value=0, bound=0, because=because)


def _searched(task: LayoutTask, watch: Watch) -> Answer:
    """The task given to the method that suits it."""
    if not task.wants:
        return Answer(status=Status.PROVED, layouts=(), value=0, bound=0)
    if task.aim is Aim.COST:
        from stitchflip.cutting.layouts.many_sheets import cheapest

        return cheapest(task, watch)
    if task.aim is Aim.VALUE:
        from stitchflip.cutting.layouts.one_load import worthiest

        return worthiest(task, watch)
    if task.stages == 2:
        from stitchflip.cutting.layouts.two_stages import shortest

        return shortest(task, watch)
    from stitchflip.cutting.layouts.three_stages import shortest as shortest_of_three

    return shortest_of_three(task, watch)
