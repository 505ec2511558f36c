"""Ask our own engine, and lay its answer out as rectangles.

The libraries the engine loads when it first needs them are loaded here, before any clock starts; what they cost stands
in the line of `stitchflip cut` from the shell.
"""

from __future__ import annotations

import time
from dataclasses import replace

import highspy  # type: ignore[import-untyped]  # noqa: F401  loaded before the clock starts
import numpy as np  # noqa: F401  as above

from bench.cutting.jobs import CutSheet, Job, Placed, Reply
from stitchflip.cutting.layouts.check import check_layouts
from stitchflip.cutting.layouts.model import Aim, Answer, FirstCut, Layout, LayoutTask, Sheet, Want
from stitchflip.cutting.layouts.solving import solve
from stitchflip.cutting.layouts.watch import Watch
from stitchflip.cutting.lengthwise import model as lengthwise
from stitchflip.cutting.lengthwise.solving import solve as solve_lengths
from stitchflip.cutting.model import Status

_NEAR = 0.01
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
    if job.aim == "lengths":
        return _ask_lengths(job, seconds)
    asked = task(job)
    near: list[float] = []
    start = time.perf_counter()

    def tell(value: int | None, bound: int) -> None:
        if not near and value is not None and abs(value - bound) <= _NEAR * bound:
            near.append(time.perf_counter() - start)

    answer = solve(asked, Watch(seconds, tell=tell))
    taken = time.perf_counter() - start
    tell(answer.value, answer.bound)
    if answer.status is Status.IMPOSSIBLE or (not answer.layouts and answer.status is not Status.PROVED):
        return Reply(bound=answer.bound or None, seconds=taken, note=answer.because or "no plan")
    return Reply(
        value=answer.value,
        bound=answer.bound,
        proved=answer.status is Status.PROVED,
        seconds=taken,
        sheets=laid(job, answer),
        note=answer.because,
        near=near[0] if near else None,
        faults=check_layouts(asked, answer),
    )


def length_task(job: Job) -> lengthwise.LengthTask:
    """The job in the words of the engine of one dimension."""
    return lengthwise.LengthTask(
        sizes=tuple(item.wide for item in job.items),
        demands=tuple(item.count for item in job.items),
        stock=tuple(lengthwise.Stock(stock.wide, stock.count, stock.cost) for stock in job.stocks),
    )


def _ask_lengths(job: Job, seconds: float) -> Reply:
    asked = length_task(job)
    start = time.perf_counter()
    answer = solve_lengths(asked, Watch(seconds))
    taken = time.perf_counter() - start
    if not answer.packing:
        return Reply(bound=answer.bound or None, seconds=taken, note=answer.because or "no plan")
    is_proved = answer.status is Status.PROVED
    sheets = tuple(_strip(job, opened) for opened in answer.packing)
    return Reply(answer.value, answer.bound, is_proved, taken, sheets, answer.because)


def _strip(job: Job, opened: lengthwise.Opened) -> CutSheet:
    placed: list[Placed] = []
    x = 0
    for size, count in opened.pattern:
        for _ in range(count):
            placed.append((size, x, 0, False))
            x += job.items[size].wide
    return CutSheet(opened.stock, opened.times, tuple(placed))


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
