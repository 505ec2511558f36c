"""Time and thread, as ranges."""

from __future__ import annotations

from stitchflip.values import dataclass


@dataclass(frozen=True, slots=True)
class WorkEstimate:
    """How long and how much thread, for all pieces together."""

    seams_in: float
    """Sum of seam lengths."""
    thread_yards: float
    """Needle and bobbin together, waste in it."""
    hours_low: float
    hours_high: float
    """To the half hour."""
