"""The shortest length for strips whose stacks hold several pieces over one another.

Two searches work for each other. Strips are priced as columns, which gives a bound and, where pieces repeat, most of
a plan; pieces are laid one by one, which gives good plans where they differ. Quick searches with chances try what else
may follow from the strips of the linear program. What is found is mended as long as there is time.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.model import Answer
from stitchflip.cutting.layouts.stacks.endless import bound_for_any_cuts, plain_bound
from stitchflip.cutting.layouts.stacks.ground import PiledStrip, ground_of
from stitchflip.cutting.layouts.stacks.record import Record
from stitchflip.cutting.model import Status

if TYPE_CHECKING:
    from stitchflip.cutting.layouts.model import Layout, LayoutTask
    from stitchflip.cutting.layouts.stacks.ground import Ground
    from stitchflip.cutting.layouts.watch import Watch

_START_PART = 0.04
"""Of the time, for a plan of two stages to start from."""

_FREE_PART = 0.1
"""Of the time, for a bound on plans of any number of stages."""
_LONGER_START_PART = 0.4
"""Of the time, for a better plan of two stages where pieces laid one by one made none that is shorter."""
_VARIED_PART = 0.35
"""Of the time, for many quick searches with chances."""
_FEW_PIECES, _ALIKE = 100, 3
"""Of more pieces each must be wanted so often on average, for quick searches to be quick."""
_MENDING_PART = 0.1
"""Of the time, for mending the plan that was found."""


def shortest(task: LayoutTask, watch: Watch) -> Answer:
    """Find the shortest plan of three stages.

    Args:
        task: already small: every count at least 1, every piece fits; `Aim.LENGTH` on one sheet of open length.
        watch: how long it may take.

    Returns:
        The plan and a bound; with stages 0 the bound holds for any number of stages.
    """
    is_free = task.stages == 0
    ground = ground_of(replace(task, trims=task.trims or is_free))
    bound = bound_for_any_cuts(ground, watch.part(watch.likely_left() * _FREE_PART)) if is_free else None
    record = Record(ground, watch, most_told=bound)
    record.raise_bound(plain_bound(ground) if bound is None else bound)
    record.offer(_started(task, ground, watch.part(watch.likely_left() * _START_PART)))
    if not record.is_over():
        _search(task, ground, record)
    return _answer(ground, record)


def _started(task: LayoutTask, ground: Ground, watch: Watch) -> list[PiledStrip]:
    """A plan of two stages, which is one of three."""
    from stitchflip.cutting.layouts.two_stages import shortest as shortest_of_two

    answer = shortest_of_two(replace(task, stages=2, trims=True), watch)
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


def _search(task: LayoutTask, ground: Ground, record: Record) -> None:
    """Search until the plan is proved or time is over."""
    from stitchflip.cutting.layouts.stacks.mending import Mending
    from stitchflip.cutting.layouts.stacks.prices import Prices
    from stitchflip.cutting.layouts.stacks.race import raced
    from stitchflip.cutting.layouts.stacks.varied import Varied

    prices = Prices(ground, record)
    kept = prices.whole_strips()
    varied = Varied(ground, record, kept, prices.worths, seed=4)
    whole_time, started = record.watch.likely_left(), record.value
    varied_part = _VARIED_PART if kept and _are_few_or_alike(ground) else 0.0
    raced(ground, [kept, []] if kept else [[]], record, whole_time * (_MENDING_PART + varied_part))
    if record.value == started and not record.is_over():
        record.offer(_started(task, ground, record.watch.part(whole_time * _LONGER_START_PART)))
    if varied_part:
        varied.run(whole_time * _MENDING_PART)
    Mending(ground, record).run()


def _are_few_or_alike(ground: Ground) -> bool:
    """Whether a search through all pieces is quick, or kept strips leave few of them."""
    pieces = sum(ground.counts)
    return pieces <= _FEW_PIECES or pieces >= _ALIKE * len(ground.counts)


def _answer(ground: Ground, record: Record) -> Answer:
    """What there is at the end."""
    is_proved = record.sure_bound > record.goal
    because = "time was over before the best plan was proved"
    if record.is_proved():
        because = "no plan of three stages is shorter, and more stages were not tried"
    return Answer(
        status=Status.PROVED if is_proved else Status.BEST_FOUND,
        layouts=(ground.layout(record.strips),),
        value=record.value,
        bound=record.sure_bound,
        because="" if is_proved else because,
    )
