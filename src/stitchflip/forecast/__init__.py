"""How it may come out: time and thread, as ranges."""

from __future__ import annotations

from stitchflip.forecast.model import WorkEstimate
from stitchflip.forecast.work import estimate_work, lockstitch_ratio, thread_yards

__all__ = ["WorkEstimate", "estimate_work", "lockstitch_ratio", "thread_yards"]
