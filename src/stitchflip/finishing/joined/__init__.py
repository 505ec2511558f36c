"""Finished blocks joined into a quilt: the joins, the sizes, the settings, borders, and blocks that came out unequal.

`join_blocks` is the way in; the formulas behind it are public, so that a strip or a triangle from elsewhere can be
judged by them.
"""

from __future__ import annotations

from stitchflip.finishing.joined.borders import border_adds, lengthwise_need, mitered_length, sashing_for, spacer_cut
from stitchflip.finishing.joined.joins import (
    covered_cut,
    flat_cut_that_fills,
    folded_cut_that_passes,
    passes_by,
    raw_edges_apart,
    room_between,
    shows_between,
    usual_flat_cut,
)
from stitchflip.finishing.joined.kinds import laid_kinds, row_counts, wanted_counts
from stitchflip.finishing.joined.layouts import block_count
from stitchflip.finishing.joined.on_point import Diamond
from stitchflip.finishing.joined.plan import join_blocks
from stitchflip.finishing.joined.sharing import Sharing, dealt, share
from stitchflip.finishing.joined.sizes import Grid, row_length
from stitchflip.finishing.joined.triangles import (
    usual_additions,
    usual_squares,
)

__all__ = [
    "Diamond",
    "Grid",
    "Sharing",
    "block_count",
    "border_adds",
    "covered_cut",
    "dealt",
    "flat_cut_that_fills",
    "folded_cut_that_passes",
    "join_blocks",
    "laid_kinds",
    "lengthwise_need",
    "mitered_length",
    "passes_by",
    "raw_edges_apart",
    "room_between",
    "row_counts",
    "row_length",
    "sashing_for",
    "share",
    "shows_between",
    "spacer_cut",
    "usual_additions",
    "usual_flat_cut",
    "usual_squares",
    "wanted_counts",
]
