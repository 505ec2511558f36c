"""Lengths out of lengths, in whole units, with proof.

`solve` is the one door. Rules of thumb need neither numpy nor HiGHS; those are loaded when a gap is left.
"""

from __future__ import annotations

from stitchflip.cutting.lengthwise.model import LengthAnswer, LengthTask, Opened, Packing, Pattern, Stock
from stitchflip.cutting.lengthwise.solving import solve

__all__ = ["LengthAnswer", "LengthTask", "Opened", "Packing", "Pattern", "Stock", "solve"]
