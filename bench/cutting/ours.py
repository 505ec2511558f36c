"""Ask our own engine, and lay its answer out as rectangles."""

from __future__ import annotations

import time
from dataclasses import replace

from bench.cutting.jobs import CutSheet, Job, Placed, Reply
from stitchflip.cutting.layouts.check import check_layouts
from stitchflip.cutting.layouts.model import Aim, Answer, FirstCut, Layout, LayoutTask, Sheet, Want
from stitchflip.cutting.layouts.solving import solve
from stitchflip.cutting.layouts.watch import Watch
from stitchflip.cutting.model import Status

_AIMS = {"length": Aim.LENGTH, "cost": Aim.COST, "value": Aim.VALUE}


def task(job: Job, step: int = 1) -> LayoutTask:
    """The job in the words of the engine.

    Args:
        job: in two dimensions.
        step: what is bought comes in steps of so many units.
    """
    return LayoutTask(
        wants=tuple(Want(item.wide, item.long, item.count, item.can_turn, item.value) for item in job.items),
        sheets=tuple(Sheet(stock.wide, stock.long, stock.count, stock.cost) for stock in job.stocks),
        aim=_AIMS[job.aim],
        stages=job.stages,
        trims=job.trims,
        same_stack=job.same_stack,
        step=step,
        tallest_strip=job.tallest_strip,
        first_cut=FirstCut(job.first_cut),
    )


def ask(job: Job, seconds: float) -> Reply:
    """What the engine answers within its time, checked by the engine's own check first."""
    asked = task(job)
    start = time.perf_counter()
    answer = solve(asked, Watch(seconds))
    taken = time.perf_counter() - start
    if answer.status is Status.IMPOSSIBLE or (not answer.layouts and answer.status is not Status.PROVED):
        return Reply(bound=answer.bound or None, seconds=taken, note=answer.because or "no plan")
    return Reply(
        value=answer.value,
        bound=answer.bound,
        proved=answer.status is Status.PROVED,
        seconds=taken,
        sheets=laid(job, answer),
        note=answer.because,
        faults=check_layouts(asked, answer),
    )


def seconds_to_the_step(job: Job, step: int, seconds: float) -> tuple[Answer, float]:
    """The answer when whole steps are bought, and how long it took."""
    asked = task(job, step)
    start = time.perf_counter()
    answer = solve(asked, Watch(seconds))
    taken = time.perf_counter() - start
    found = check_layouts(asked, answer)
    return (replace(answer, because="; ".join(found)) if found else answer), taken


def laid(job: Job, answer: Answer) -> tuple[CutSheet, ...]:
    """The answer's sheets as rectangles."""
    return tuple(CutSheet(layout.sheet, layout.times, _placed(job, layout)) for layout in answer.layouts)


def _placed(job: Job, layout: Layout) -> tuple[Placed, ...]:
    found: list[Placed] = []
    y = 0
    for strip in layout.strips:
        x = 0
        for stack in strip.stacks:
            up = y
            for bit in stack.bits:
                item = job.items[bit.want]
                is_flat = bit.turned == layout.along
                found.append((bit.want, *((up, x) if layout.along else (x, up)), bit.turned))
                up += item.long if is_flat else item.wide
            x += stack.wide
        y += strip.high
    return tuple(found)
