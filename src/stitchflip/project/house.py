"""The house numbers: what holds until a maker says otherwise, each named once for both kinds of project.

They are common practice where no source is named. A metric project takes the metric value as it stands; it
is never converted from inches.
"""

from __future__ import annotations

from types import MappingProxyType

from stitchflip.lengths import CM_PER_INCH, Length, Unit
from stitchflip.project.words import Through
from stitchflip.values import dataclass


@dataclass(frozen=True, slots=True)
class House:
    """One number as an inch maker and as a metric maker uses it.

    Example:
        >>> House(0.25, 0.75, "seam").of(Unit.INCH), round(House(0.25, 0.75, "seam").of(Unit.CM), 4)
        (0.25, 0.2953)
    """

    inches: float
    cm: float
    says: str
    """What it is, in the maker's words."""

    def of(self, unit: Unit) -> float:
        """The number in inches, as makers of this unit use it."""
        return float(self.inches if unit is Unit.INCH else self.cm / CM_PER_INCH)

    def length(self, unit: Unit) -> Length:
        """The number as an exact length."""
        return Length.of_inches(self.inches) if unit is Unit.INCH else Length.of_cm(self.cm)


HOUSE: MappingProxyType[str, House] = MappingProxyType(
    {
        "seam": House(1 / 4, 0.75, "seam allowance"),
        "usable_width": House(40, 105, "usable width of a fabric that is not measured"),
        "straightening": House(1, 3, "straightening of a purchase, both ends together"),
        "fat_quarter_straightening": House(1 / 2, 1, "straightening of a fat quarter, on each of two sides"),
        "buy_in_steps_of": House(4.5, 10, "purchases are rounded up to"),
        "buy_at_least": House(9, 20, "least purchase"),
        "fold_loss": House(1 / 32, 0.08, "taken up by each fold"),
        "reach": House(1 / 2, 1.2, "reach past the trim line"),
        "round_cuts_to": House(1 / 4, 0.5, "cut lengths of strips are rounded up to"),
        "extra_free_end": House(1 / 2, 1.5, "extra length of a strip with a free end"),
        "extra_raw_edges": House(1 / 4, 0.5, "extra length of a strip with both ends at raw edges"),
        "round_base_to": House(1 / 2, 1, "the base is rounded up to"),
        "spare_runner_across": House(1, 2.5, "base spare per side, a runner across"),
        "spare_runner_ends": House(1.5, 4, "base spare per side, a runner at its ends"),
        "spare_mat": House(1, 2, "base spare per side, a placemat or topper"),
        "spare_block": House(1 / 2, 1.5, "base spare per side, a block to be joined"),
        "spare_large_block": House(3 / 4, 2, "base spare per side, a block over 10 in or 25 cm to be joined"),
        "large_block": House(10, 25, "a block is large when a side is longer than"),
        "reach_block": House(3 / 8, 1, "reach past the trim line of a block to be joined"),
        "wish_beyond_points": House(1, 2.5, "wished beyond a point, at the trimmed edge"),
        "points_note": House(3 / 4, 2, "room beyond a point that is good to know below"),
        "points_fix": House(1 / 2, 1.2, "room beyond a point that wants fixing below"),
        "last_strip_note": House(3 / 4, 2, "showing of the last strip that is good to know below"),
        "last_strip_fix": House(1 / 2, 1.2, "showing of the last strip that wants fixing below"),
        "binding_cut_machine": House(2.5, 6.5, "binding cut, sewn down by machine"),
        "binding_cut_hand": House(2.25, 6, "binding cut, sewn down by hand"),
        "binding_seam": House(1 / 4, 0.75, "seam of the binding"),
        "binding_extra": House(10, 25, "extra binding for the tails"),
        "binding_extra_per_corner": House(1 / 2, 1.5, "extra binding for each corner"),
        "binding_passes_machine": House(1 / 4, 0.5, "binding passes the stitching on the back by, machine"),
        "binding_passes_hand": House(1 / 8, 0.3, "binding passes the stitching on the back by, hand"),
        "loft_flat": House(1 / 8, 0.3, "loft of cotton, blend and bamboo batting"),
        "loft_high": House(1 / 4, 0.6, "loft of polyester and wool batting"),
        "stitch": House(1 / 10, 0.25, "shortest seam end that holds by itself"),
        "counts_as_crossed": House(1 / 8, 0.3, "a later seam holds an end when it lies this far inside"),
        "widest_gap": House(8, 20, "widest unstitched place a batting allows"),
        "longest_cut": House(23.5, 59, "longest single cut along the ruler"),
        "mat_wide": House(23, 58, "the mat's printed grid, wide"),
        "mat_long": House(17, 43, "the mat's printed grid, long"),
        "patch_extra": House(1 / 2, 1.2, "a patch is cut larger than its area on every side by"),
        "backing_later_spare": House(2, 5, "a backing added later is cut larger on every side by"),
        "least_shown": House(3 / 4, 2, "the narrow end of a wonky strip shows at least"),
        "join_flat_cut": House(9 / 8, 3.3, "flat joining strip, cut"),
        "join_folded_cut": House(2, 6, "folded joining strip, cut"),
        "self_binding_shows": House(1 / 2, 1.2, "self-binding shows on the front"),
        "self_binding_turn": House(1 / 4, 0.6, "self-binding turned under"),
        "facing_cut": House(5 / 2, 6.5, "facing strips, cut"),
        "turned_through_seam": House(1 / 2, 1.2, "seam of a piece that is turned through"),
        "turned_through_opening": House(5, 13, "left open to turn a piece through"),
        "runner_hangs": House(6, 15, "a runner hangs over each end by"),
        "cloth_hangs": House(8, 20, "a cloth over the whole table hangs over each edge by"),
        "bed_drop": House(12, 30, "hangs down at the sides and the foot of a bed by"),
        "size_step": House(1 / 4, 0.5, "a computed size is rounded to"),
        "large_size": House(36, 90, "a large size is one over"),
        "large_size_step": House(1 / 2, 1, "a computed large size is rounded to"),
        "backing_seam": House(1 / 2, 1.2, "seam of a pieced backing"),
    }
)
"""Name -> the house number."""

DRAW_UP: MappingProxyType[Through, float] = MappingProxyType(
    {
        Through.BACKING_AND_BATTING: 0.015,
        Through.BATTING_ONLY: 0.01,
        Through.BATTING_ON_FOUNDATION: 0.005,
    }
)
"""Drawn in by stitching, each way, by what is sewn through: the thicker, the more (common practice, from memory)."""
SHRINK = 0.03
"""A piece with cotton batting loses so much in its first wash, each way; with polyester nothing."""
MINUTES_PER_STRIP = 3.5
"""For a strip up to 20 in long."""
MINUTES_PER_FURTHER_20_IN = 1.0
"""For each further 20 in of a strip."""
THREAD_PER_INCH = 3.5
"""Inches of thread for an inch of seam, top and bobbin, waste in it."""

PLACEMAT = (House(18, 46, "placemat as laid, wide"), House(13, 33, "placemat as laid, long"))
"""A placemat as it lies on the table."""
COASTER = House(4.5, 11.5, "coaster, wide and long")
"""A coaster."""

FAT_QUARTER = (House(17.5, 49, "fat quarter, wide"), House(20.5, 53, "fat quarter, long"))
"""A fat quarter that is not measured."""
PRECUT_STRIP = (House(2.5, 6.5, "precut strip, wide"), House(40, 105, "precut strip, long"))
"""A precut strip that is not measured."""
ON_HAND = MappingProxyType({"fatquarter": FAT_QUARTER, "precutstrip": PRECUT_STRIP})
"""Pieces that have a usual size, by their name without spaces."""
