"""The sheets there are, the most worth: what to cut when not everything can be."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.loads.kinds import kinds_of, layout_of
from stitchflip.cutting.layouts.loads.single import OneSheet
from stitchflip.cutting.layouts.model import Answer, FirstCut, Sheet
from stitchflip.cutting.layouts.watch import Watch
from stitchflip.cutting.model import Status

if TYPE_CHECKING:
    from stitchflip.cutting.layouts.loads.kinds import Kind
    from stitchflip.cutting.layouts.model import LayoutTask


def worthiest(task: LayoutTask, watch: Watch) -> Answer:
    kinds = kinds_of(task)
    best = None
    bound = 0
    for number, kind in enumerate(kinds):
        part = Watch(watch.left() / (len(kinds) - number), cancelled=watch.over)
        one = OneSheet(seen_from(task, kind), part if len(kinds) > 1 else watch, 0 if best is None else best[1].value)
        one.run()
        bound = max(bound, one.bound)
        if best is None or one.value > best[1].value:
            best = (kind, one)
    kind, one = best
    status = Status.PROVED if one.value >= bound else Status.BEST_FOUND
    return Answer(status, (layout_of(kind, one.strips, 1),) if one.strips else (), one.value, bound)


def seen_from(task: LayoutTask, kind: Kind) -> LayoutTask:
    wants = tuple(replace(want, wide=want.long, long=want.wide) if kind.along else want for want in task.wants)
    return replace(task, wants=wants, sheets=(Sheet(kind.wide, kind.high, 1),), first_cut=FirstCut.ACROSS)
