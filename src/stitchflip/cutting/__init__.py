"""From pieces to cuts: strips from strips, pieces from yardage, what is on the shelf, what to buy.

Every answer carries its proof (a bound no plan can go under) and can be checked by `verify.verify_fabric_plan`, which
shares no code with the solvers. HiGHS and numpy are loaded only when a gap is left to close.
"""

from __future__ import annotations

from stitchflip.cutting.as_you_go import hand_words, plan_as_you_go
from stitchflip.cutting.fabric_plan import plan_fabric
from stitchflip.cutting.model import FabricPlan, Piece, Status, StripPiece, StripPlan, StripStock
from stitchflip.cutting.order import cutting_order
from stitchflip.cutting.rows import Rectangle, count_in, lay_in_rows, per_row
from stitchflip.cutting.strips import plan_strips

__all__ = [
    "FabricPlan",
    "Piece",
    "Rectangle",
    "Status",
    "StripPiece",
    "StripPlan",
    "StripStock",
    "count_in",
    "cutting_order",
    "hand_words",
    "lay_in_rows",
    "per_row",
    "plan_as_you_go",
    "plan_fabric",
    "plan_strips",
]
