"""Medians, and what a benchmark reports."""

from __future__ import annotations

import time
from dataclasses import dataclass
from statistics import median
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable


@dataclass(frozen=True, slots=True)
class Measured:
    """One line of the table."""

    what: str
    value: str
    target: str
    is_met: bool
    remark: str = ""


def medians(runs: int, *calls: Callable[[], object]) -> list[float]:
    """Median seconds of several calls, taken in turn so that a slow moment meets all of them.

    Args:
        runs: How often each is called, after one call that is not counted.
        calls: What to time.
    """
    taken: list[list[float]] = [[] for _ in calls]
    for run in range(runs + 1):
        for call, times in zip(calls, taken, strict=True):
            start = time.perf_counter()
            call()
            if run:
                times.append(time.perf_counter() - start)
    return [median(times) for times in taken]
