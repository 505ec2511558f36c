"""Fussy cutting: windows round the motifs of a print, how many a length surely gives, where to cut, what to buy."""

from __future__ import annotations

from stitchflip.cutting.motifs.choosing import Chosen, most_windows
from stitchflip.cutting.motifs.counting import Counting, Place, places
from stitchflip.cutting.motifs.model import Motif, MotifCount, MotifNote, Repeat, Start, Window

__all__ = [
    "Chosen",
    "Counting",
    "Motif",
    "MotifCount",
    "MotifNote",
    "Place",
    "Repeat",
    "Start",
    "Window",
    "most_windows",
    "places",
]
