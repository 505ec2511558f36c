"""My numbers with the house defaults filled in, as plain inches for the rooms that compute."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Numbers:
    """Effective values, inches unless said; one field per number of `MyNumbers`, none missing."""

    seam: float
    usable_width: float
    straightening: float
    fat_quarter_straightening: float
    """Off one side of a fat quarter in each direction."""
    buy_in_steps_of: float
    buy_at_least: float
    draw_up_x: float
    """Fraction drawn in along x (across the picture)."""
    draw_up_y: float
    fold_loss: float
    reach: float
    round_cuts_to: float
    extra_free_end: float
    """Extra on a strip with a free end (one end or both)."""
    extra_raw_edges: float
    """Extra on a strip whose two ends meet raw edges."""
    round_base_to: float
    spare_x: float
    """Base spare per side, left and right."""
    spare_y: float
    wish_beyond_points: float
    points_note: float
    points_fix: float
    points_stop: float
    last_strip_note: float
    last_strip_fix: float
    binding_cut: float
    binding_seam: float
    binding_extra: float
    binding_extra_per_corner: float
    binding_passes: float
    loft: float
    stitch: float
    counts_as_crossed: float
    widest_gap: float
    longest_cut: float
    mat_wide: float
    mat_long: float
    backing_seam: float
    prewash_across: float
    prewash_along: float
    minutes_per_strip: float
    minutes_per_further_20_in: float
    thread_per_inch: float

    @property
    def effective_seam(self) -> float:
        """Seam allowance plus half of what a fold takes up."""
        return self.seam + self.fold_loss / 2
