"""Everything round the build: base, squaring up, backing, batting, binding, sleeve.

What is cut before the first strip and what is done after the last one. All functions are pure: project and numbers
in, frozen values out, lengths as floats in inches, words in the maker's unit.
"""

from __future__ import annotations

from stitchflip.finishing.backing import BackingFabric, backing_ways, plan_backing
from stitchflip.finishing.base import plan_base
from stitchflip.finishing.batting import plan_batting
from stitchflip.finishing.binding import corner_stop, plan_binding, with_strips
from stitchflip.finishing.edge import plan_edge
from stitchflip.finishing.extras import plan_extras
from stitchflip.finishing.model import (
    BackingChoice,
    BackingPlan,
    BasePlan,
    BattingPlan,
    BindingCorner,
    BindingPlan,
    PointNumber,
    SideNumber,
    SquareUpPlan,
)
from stitchflip.finishing.panels_apart import plan_panels
from stitchflip.finishing.quilt import plan_quilt
from stitchflip.finishing.sleeve import Sleeve, sleeve_for
from stitchflip.finishing.square_up import plan_square_up

__all__ = [
    "BackingChoice",
    "BackingFabric",
    "BackingPlan",
    "BasePlan",
    "BattingPlan",
    "BindingCorner",
    "BindingPlan",
    "PointNumber",
    "SideNumber",
    "Sleeve",
    "SquareUpPlan",
    "backing_ways",
    "corner_stop",
    "plan_backing",
    "plan_base",
    "plan_batting",
    "plan_binding",
    "plan_edge",
    "plan_extras",
    "plan_panels",
    "plan_quilt",
    "plan_square_up",
    "sleeve_for",
    "with_strips",
]
