"""Fussy cutting: windows round the motifs of a print, how many a length surely gives, where to cut, what to buy.

What else comes from between the windows is asked of `holes`, which brings the search engine.
"""

from __future__ import annotations

from stitchflip.cutting.motifs.apart import Apart, Block, Box, Cut, cut_apart
from stitchflip.cutting.motifs.buying import (
    Identical,
    MotifLength,
    MotifPurchase,
    identical,
    length_for,
    purchase_of,
    repeats_by_rule,
)
from stitchflip.cutting.motifs.choosing import Chosen, most_windows
from stitchflip.cutting.motifs.counting import Counting, Place, places
from stitchflip.cutting.motifs.model import Motif, MotifCount, MotifNote, Repeat, Start, Window
from stitchflip.cutting.motifs.plan import MotifPlan, WindowPlace, motif_notes, plan_motifs

__all__ = [
    "Apart",
    "Block",
    "Box",
    "Chosen",
    "Counting",
    "Cut",
    "Identical",
    "Motif",
    "MotifCount",
    "MotifLength",
    "MotifNote",
    "MotifPlan",
    "MotifPurchase",
    "Place",
    "Repeat",
    "Start",
    "Window",
    "WindowPlace",
    "cut_apart",
    "identical",
    "length_for",
    "most_windows",
    "motif_notes",
    "places",
    "plan_motifs",
    "purchase_of",
    "repeats_by_rule",
]
