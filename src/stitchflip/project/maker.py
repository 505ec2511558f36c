"""My numbers: the maker's own constants, in one place, each with a house number behind it."""

from typing import Annotated

from pydantic import Field

from stitchflip.project.kinds import NUMBER, Above, Measure, Model, Reach, Share, Size

Minutes = Annotated[float, Field(ge=0, le=600, allow_inf_nan=False), NUMBER]
Thread = Annotated[float, Field(ge=0, le=100, allow_inf_nan=False), NUMBER]


class MyNumbers(Model):
    """The maker's own numbers; what is left out takes the house default of the project's unit.

    Read the effective values through `stitchflip.project.numbers.effective(project)`, never from here.
    """

    seam: Above | None = Field(default=None, description="Seam allowance as you sew it: 1/4 in or 0.75 cm.")
    usable_width: Size | None = Field(
        default=None, description="Width of fabric without selvages, when not measured: 40 in or 105 cm."
    )
    straightening: Measure | None = Field(
        default=None, description="Cut off a purchase to straighten both its ends: 1 in or 3 cm."
    )
    buy_in_steps_of: Above | None = Field(
        default=None, description="Purchases are rounded up to this: 1/8 yd or 10 cm."
    )
    buy_at_least: Measure | None = Field(default=None, description="Least purchase: 1/4 yd or 20 cm.")
    draw_up: Share | None = Field(
        default=None, description='How much stitching pulls the piece in, both ways: 0.015, or "1.5 %".'
    )
    draw_up_across: Share | None = Field(default=None, description="Draw-up of the width, when it differs.")
    draw_up_along: Share | None = Field(default=None, description="Draw-up of the length, when it differs.")
    fold_loss: Measure | None = Field(
        default=None, description="Taken up by the fold each time a strip is opened: 1/32 in or 0.8 mm."
    )
    reach: Reach | None = Field(
        default=None, description="Reach past the trim line: 1/2 in or 1.2 cm; 3/8 or 1 cm for blocks; never under 1/4."
    )
    round_cuts_to: Above | None = Field(
        default=None, description="Cut lengths of strips are rounded up to this: 1/4 in or 0.5 cm."
    )
    extra_free_end: Measure | None = Field(
        default=None, description="Extra length of a strip with a free end: 1/2 in or 1.5 cm."
    )
    extra_raw_edges: Measure | None = Field(
        default=None, description="Extra length of a strip whose two ends meet raw edges: 1/4 in or 0.5 cm."
    )
    round_base_to: Above | None = Field(default=None, description="The base is rounded up to this: 1/2 in or 1 cm.")
    spare_across: Measure | None = Field(
        default=None, description="Base spare on each side of the width: 1 in; 2 cm, of a runner 2.5 cm."
    )
    spare_at_ends: Measure | None = Field(
        default=None, description="Base spare at each end: 1 in or 2 cm; of a runner 1 1/2 in or 4 cm."
    )
    wish_beyond_points: Measure | None = Field(
        default=None, description="Wished beyond each point of the center, to the trim edge: 1 in or 2.5 cm."
    )
    patch_extra: Measure | None = Field(
        default=None,
        description="Numbered foundation: a patch is cut larger than its area on every side by this: 1/2 in or 1.2 cm.",
    )
    shrink_across: Share | None = Field(
        default=None,
        description='Shrinkage of the piece across its width in the first wash: "3 %", or 0 with polyester.',
    )
    shrink_along: Share | None = Field(default=None, description="Shrinkage along its length in the first wash.")
    backing_later_spare: Measure | None = Field(
        default=None, description="A backing added later is cut this much larger on every side: 2 in or 5 cm."
    )
    binding_extra: Measure | None = Field(default=None, description="Extra binding for the tails: 10 in or 25 cm.")
    binding_extra_per_corner: Measure | None = Field(
        default=None, description="Extra binding for each corner: 1/2 in or 1.5 cm."
    )
    binding_join: Above | None = Field(
        default=None, description="What a diagonal join costs of the binding: left out, one cut strip width."
    )
    stitch: Above | None = Field(default=None, description="Shortest seam end that holds by itself: 1/10 in or 2.5 mm.")
    counts_as_crossed: Measure | None = Field(
        default=None, description="A later seam holds a seam end when it lies this far inside: 1/8 in or 3 mm."
    )
    widest_gap: Above | None = Field(
        default=None, description="Widest unstitched place, when the batting says nothing: 8 in or 20 cm."
    )
    longest_cut: Above | None = Field(
        default=None, description="Longest single cut along your ruler: 23 1/2 in or 59 cm."
    )
    mat_wide: Above | None = Field(default=None, description="Your mat's printed grid, wide: 23 in or 58 cm.")
    mat_long: Above | None = Field(default=None, description="Your mat's printed grid, long: 17 in or 43 cm.")
    backing_seam: Measure | None = Field(default=None, description="Seam of a pieced backing: 1/2 in or 1.2 cm.")
    prewash_across: Share | None = Field(
        default=None, description='Shrinkage of fabric across its width when washed before cutting: 0, or "4 %".'
    )
    prewash_along: Share | None = Field(
        default=None, description='Shrinkage of fabric along its length when washed before cutting: 0, or "2 %".'
    )
    minutes_per_strip: Minutes | None = Field(default=None, description="Minutes for a strip up to 20 in long: 3 1/2.")
    thread_per_inch: Thread | None = Field(
        default=None, description="Inches of thread for an inch of seam, top and bobbin: 3 1/2."
    )
