"""Eight quiet hatches that tell fabrics apart when color is gone, as SVG pattern tiles.

They are fixed on paper (points, never scaled) and none runs at 0, 45 or 90 degrees as a plain line grid, so
that a hatch is not taken for a seam.
"""

from __future__ import annotations

from stitchflip.values import dataclass

COUNT = 8
"""How many there are; further fabrics begin again at the first."""


@dataclass(frozen=True, slots=True)
class Hatch:
    """One tile."""

    name: str
    wide: float
    """Tile size, points."""
    high: float
    turn: float
    """Degrees clockwise on paper."""
    path: str
    """SVG path of what is stroked in the tile."""
    weight: float
    """Stroke width, points."""


HATCHES = (
    Hatch("slanting lines", 4.6, 4.6, 28, "M0 2.3H4.6", 0.5),
    Hatch("dots", 4.4, 4.4, 30, "M2.2 2.2h0.01", 1.15),
    Hatch("steep lines", 3.8, 3.8, 112, "M0 1.9H3.8", 0.5),
    Hatch("small crosses", 6.2, 6.2, 18, "M2 3.1H4.2M3.1 2V4.2", 0.5),
    Hatch("double lines", 7, 7, -22, "M0 2.4H7M0 4.2H7", 0.45),
    Hatch("dashes", 6, 5, 68, "M0.6 1.2H3.4M3.6 3.7H6M0 3.7H0.4", 0.6),
    Hatch("net", 5.6, 5.6, 24, "M0 2.8H5.6M2.8 0V5.6", 0.4),
    Hatch("rings", 6, 6, 15, "M4.3 3a1.3 1.3 0 1 1-2.6 0a1.3 1.3 0 1 1 2.6 0Z", 0.45),
)

CUT_AWAY_HATCH = -1
"""Hatch index of what falls off."""

CUT_AWAY = Hatch("cut away", 3, 3, -45, "M0 1.5H3", 0.45)
"""For what falls off: the one hatch at 45 degrees."""
