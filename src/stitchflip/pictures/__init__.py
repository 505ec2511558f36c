"""Pictures of a plan: what the finished piece, each step, the back, the base and the cuts look like.

A figure is made from a plan and nothing else, in inches of the real thing; `to_svg` writes it for a width on
paper. Lines, hatches and letters keep their size in points whatever the scale.
"""

from stitchflip.pictures.back_view import back
from stitchflip.pictures.base_marks import base
from stitchflip.pictures.corner import binding_corner
from stitchflip.pictures.cut_plan import cuts
from stitchflip.pictures.edge_section import edge_section
from stitchflip.pictures.foundation import foundation
from stitchflip.pictures.join_section import join_section
from stitchflip.pictures.joining_order import joining
from stitchflip.pictures.kinds import block, kind_plan
from stitchflip.pictures.legend_marks import legend
from stitchflip.pictures.motifs import motif_plan
from stitchflip.pictures.panels_apart import panels
from stitchflip.pictures.sewing_order import order
from stitchflip.pictures.sewing_step import FREE_LINES, step
from stitchflip.pictures.sheet import paper_height
from stitchflip.pictures.square_up import squaring
from stitchflip.pictures.svg import to_svg
from stitchflip.pictures.whole_piece import coloring, finished

__all__ = [
    "FREE_LINES",
    "back",
    "base",
    "binding_corner",
    "block",
    "coloring",
    "cuts",
    "edge_section",
    "finished",
    "foundation",
    "join_section",
    "joining",
    "kind_plan",
    "legend",
    "motif_plan",
    "order",
    "panels",
    "paper_height",
    "squaring",
    "step",
    "to_svg",
]
