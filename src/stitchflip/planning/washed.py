"""The size after the first wash: cotton batting draws a finished piece in once more, and for good."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker
from stitchflip.planning.json_values import wide_and_long
from stitchflip.project.model import Outline
from stitchflip.project.sizes import stated_size
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.planning.model import Plan
    from stitchflip.project.numbers import Numbers


@dataclass(frozen=True, slots=True)
class WashedSize:
    """A squared-up piece after its first wash, inches."""

    wide: float
    """Extent along x, across the picture."""
    high: float
    """Extent along y."""


def washed_size(numbers: Numbers, wide: float, high: float) -> WashedSize:
    """What a piece measures after its first wash.

    Args:
        numbers: for what the wash takes, each direction by itself.
        wide: extent along x as squared up, inches.
        high: extent along y as squared up, inches.

    Returns:
        The same size where nothing shrinks (polyester batting, or the maker's own 0).
    """
    return WashedSize(wide * (1 - numbers.shrink_x), high * (1 - numbers.shrink_y))


def washed_words(plan: Plan) -> str:
    """What the piece measures after its first wash, beside what is wanted then; "" when nothing shrinks."""
    whole = plan.quilt or plan.square_up
    washed = washed_size(plan.numbers, whole.wide, whole.high)
    if (washed.wide, washed.high) == (whole.wide, whole.high):
        return ""
    say = Speaker(plan.project.units)
    size = f"{say.size(*wide_and_long(plan, washed.wide, washed.high))} (wide × long)"
    if plan.quilt is None and plan.project.squared_up.shape is Outline.POLYGON:
        across_flats = 2 * min(side.distance for side in plan.square_up.sides)
        size = f"{say.near(across_flats * min(washed.wide / whole.wide, washed.high / whole.high))} from side to side"
    across, along = wide_and_long(plan, plan.numbers.shrink_x, plan.numbers.shrink_y)
    takes = f"{across:.1%} across and {along:.1%} along" if across != along else f"{across:.1%} each way"
    wanted = stated_size(plan.project) if plan.project.squared_up.after_washing else None
    asked = f"; you want {say.size(*wanted)} then" if wanted is not None else ""
    return f"about {size}, if the wash takes {takes.replace('.0%', '%').replace('%', ' %')}{asked}"
