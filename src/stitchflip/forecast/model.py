"""Time and thread, as ranges."""

from __future__ import annotations

from stitchflip.values import dataclass


@dataclass(frozen=True, slots=True)
class WorkEstimate:
    """How long and how much thread, for all pieces together."""

    seams_in: float
    """Sum of seam lengths."""
    thread_yards: float
    """Seams through the base: needle and bobbin together, waste in it."""
    hours_low: float
    hours_high: float
    """To the half hour."""
    thread_low_yards: float = 0.0
    """The same seams with a lean machine: 2 1/2 of thread to 1 of seam, a tenth for waste."""
    thread_all_yards: float = 0.0
    """With the stay-stitching and the binding, sewn on and down, too."""
