"""rectpack: greedy packers. The best of its edge-to-edge settings, the sheet's length found by halving."""

from __future__ import annotations

import itertools
import time
from dataclasses import dataclass
from importlib.metadata import version
from typing import Any

import rectpack

from bench.cutting.jobs import CutSheet, Job, Placed, Reply
from bench.cutting.laid_out import faults
from bench.peers.levels import greedy_levels
from bench.peers.protocol import serve

_CHOICES = ("Bssf", "Blsf", "Baf")
_SPLITS = ("Sas", "Las", "Slas", "Llas", "Maxas", "Minas")
_ORDERS = (rectpack.SORT_SSIDE, rectpack.SORT_LSIDE, rectpack.SORT_AREA, rectpack.SORT_PERI, rectpack.SORT_DIFF)


@dataclass(frozen=True, slots=True)
class Setting:
    """One way of packing."""

    packer: Any
    joins_rests: bool
    """It may join free rooms; then what it packs is not always cut edge to edge, and only what is counts."""
    pieces: list[tuple[int, int, int]]
    end: float


@dataclass(frozen=True, slots=True)
class Packed:
    """One plan."""

    long: int
    sheet: CutSheet


def solve(job: Job, seconds: float) -> Reply:
    """Its shortest plan, cut edge to edge in as many stages as it takes; it proves nothing."""
    if job.aim != "length":
        return Reply(note="not a job for this packer")
    end = time.perf_counter() + seconds
    pieces = [(item.wide, item.long, number) for number, item in enumerate(job.items) for _ in range(item.count)]
    best: Packed | None = None
    for order in _ORDERS:
        in_turn = order(pieces)
        for choice, split, joins_rests in itertools.product(_CHOICES, _SPLITS, (False, True)):
            if time.perf_counter() < end:
                packer = getattr(rectpack, f"Guillotine{choice}{split}")
                best = _shorter(job, Setting(packer, joins_rests, in_turn, end), best)
    return Reply(note="no plan in the time") if best is None else Reply(best.long, sheets=(best.sheet,))


def _shorter(job: Job, setting: Setting, best: Packed | None) -> Packed | None:
    """The best plan after this setting: only if it beats the best one so far is its length halved further."""
    low = job.area_bound
    high = trial = 2 * greedy_levels(job) if best is None else best.long - 1
    is_first = True
    while low <= high:
        placed = _packed(job, setting, trial)
        if placed is not None:
            best = placed
            high = placed.long - 1
        elif is_first or time.perf_counter() > setting.end:
            return best
        else:
            low = trial + 1
        is_first = False
        trial = (low + high) // 2
    return best


def _packed(job: Job, setting: Setting, long: int) -> Packed | None:
    """Everything on a sheet of this length; None when it does not fit or the time is over."""
    may_turn = all(item.can_turn for item in job.items)
    sheet = setting.packer(job.stocks[0].wide, long, rot=may_turn, merge=setting.joins_rests)
    for number, (wide, high, item) in enumerate(setting.pieces):
        if sheet.add_rect(wide, high, item) is None:
            return None
        if number % 50 == 0 and time.perf_counter() > setting.end:
            return None
    placed: list[Placed] = []
    for rect in sheet:
        one = job.items[rect.rid]
        placed.append((rect.rid, rect.x, rect.y, (rect.width, rect.height) != (one.wide, one.long)))
    packed = Packed(max(rect.y + rect.height for rect in sheet), CutSheet(0, 1, tuple(placed)))
    return packed if not faults(job.but(stages=0), (packed.sheet,), packed.long) else None


if __name__ == "__main__":
    serve(solve, version("rectpack"))
