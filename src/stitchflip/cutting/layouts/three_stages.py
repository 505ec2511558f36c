"""The shortest length for strips whose stacks hold several pieces over one another.

Two searches work for each other. Strips are priced as columns, which gives a bound and, where pieces repeat, most of
a plan; pieces are laid one by one, which gives good plans where they differ. What is found is mended as long as there
is time.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.model import Answer
from stitchflip.cutting.layouts.stacks.ground import PiledStrip, ground_of
from stitchflip.cutting.layouts.stacks.record import Record
from stitchflip.cutting.layouts.watch import Watch
from stitchflip.cutting.model import Status

if TYPE_CHECKING:
    from stitchflip.cutting.layouts.model import Layout, LayoutTask
    from stitchflip.cutting.layouts.stacks.ground import Ground

_START_PART = 0.06
"""Of the time, for a plan of two stages to start from."""

_MENDING_PART = 0.4
"""Of the time, for mending the plan that was found."""


def shortest(task: LayoutTask, watch: Watch) -> Answer:
    """Find the shortest plan of three stages.

    Args:
        task: already small: every count at least 1, every piece fits; `Aim.LENGTH` on one sheet of open length.
        watch: how long it may take.

    Returns:
        The plan and a bound; with stages 0 the bound holds for any number of stages.
    """
    ground = ground_of(task)
    record = Record(ground, watch)
    record.raise_bound(_plain_bound(ground))
    record.offer(_started(task, ground, watch))
    search = _Search(task, ground, record)
    search.run()
    return _answer(ground, record)


def _plain_bound(ground: Ground) -> int:
    """No plan of any number of stages is shorter: the area has to fit, and the longest piece."""
    lowest = [min(lay.long for lay in ground.lays if lay.want == want) for want in range(len(ground.counts))]
    return max(-(-ground.area(ground.counts) // ground.wide), *lowest)


def _started(task: LayoutTask, ground: Ground, watch: Watch) -> list[PiledStrip]:
    """A plan of two stages, which is one of three."""
    from stitchflip.cutting.layouts.two_stages import shortest as shortest_of_two

    answer = shortest_of_two(
        replace(task, stages=2, trims=True), Watch(watch.left() * _START_PART, cancelled=watch.over)
    )
    return _strips(ground, answer.layouts[0])


def _strips(ground: Ground, layout: Layout) -> list[PiledStrip]:
    """A layout as the searches tell it."""
    number = {(lay.want, lay.is_turned): at for at, lay in enumerate(ground.lays)}
    return [
        PiledStrip(
            high=strip.high,
            stacks=tuple(tuple(number[bit.want, bit.turned] for bit in stack.bits) for stack in strip.stacks),
        )
        for strip in layout.strips
    ]


def _answer(ground: Ground, record: Record) -> Answer:
    """What there is at the end."""
    is_proved = record.is_proved()
    return Answer(
        status=Status.PROVED if is_proved else Status.BEST_FOUND,
        layouts=(ground.layout(record.strips),),
        value=record.value,
        bound=record.bound,
        because="" if is_proved else "time was over before the best plan was proved",
    )


class _Search:
    """One search for one task."""

    def __init__(self, task: LayoutTask, ground: Ground, record: Record) -> None:
        self._ground, self._record = ground, record
        self._is_free = task.stages == 0

    def run(self) -> None:
        """Search until the plan is proved or time is over."""
        if self._record.is_over():
            return
        from stitchflip.cutting.layouts.stacks.mending import Mending
        from stitchflip.cutting.layouts.stacks.prices import Prices
        from stitchflip.cutting.layouts.stacks.race import raced

        prices = Prices(self._ground, self._record)
        kept = prices.whole_strips()
        raced(self._ground, [kept, []] if kept else [[]], self._record, self._record.watch.left() * _MENDING_PART)
        Mending(self._ground, self._record).run()
