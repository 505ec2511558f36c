"""The backing: which way to lay it on the fabric, with every seam and the straightening charged.

Several bases may lie side by side in one width; a base wider than the fabric is joined from lengths cut across it
or along it. Whichever takes less is best; the losers are kept, because a shop may not have what is best.
"""

from __future__ import annotations

from dataclasses import replace
from math import ceil, floor

from stitchflip.finishing.edge_sizes import backing_beyond_edge, later_backing_spare
from stitchflip.finishing.measures import BACKING_SEAM_OFF_MIDDLE, NARROWEST_BACKING_PANEL
from stitchflip.finishing.model import BackingChoice, BackingPlan, BasePlan
from stitchflip.finishing.panels import Panels, arrange, widths_for_all, with_full_middle
from stitchflip.finishing.quilt_model import QuiltPlan
from stitchflip.lengths import TOLERANCE_IN, Rounding, Speaker, Unit, round_to
from stitchflip.project.model import Fabric, Project, Through
from stitchflip.project.numbers import Numbers
from stitchflip.values import dataclass

WIDE_BACKING = 108.0
"""Extra wide backing as sold, inches."""
_WIDE_SELVAGES = 1.0
"""Off its width, both selvages together."""


@dataclass(frozen=True, slots=True)
class BackingFabric:
    """What the backing is cut from, and how it is joined and bought; inches."""

    usable_width: float
    is_one_way: bool = False
    seam: float = 0.5
    straightening: float = 1.0
    buy_in_steps_of: float = 4.5
    buy_at_least: float = 9.0
    prewash_along: float = 0.0
    """Fraction that washing takes off the length before cutting."""
    unit: Unit = Unit.INCH


def plan_backing(project: Project, numbers: Numbers, base: BasePlan, quilt: QuiltPlan | None = None) -> BackingPlan:
    """Every way to get the backing for all pieces, the one that takes the least fabric first.

    Args:
        project: For the backing fabric, how many alike, and what is sewn through.
        numbers: The maker's numbers.
        base: The base; a backing that is sewn through is cut to its size.
        quilt: The joined blocks: a backing that is added later is one for all of them.

    Returns:
        The best way and the others. 108 in wide backing is always among the others: a length of it is another
        purchase, not a shorter one.

    Raises:
        BuildError: If the fabric is so narrow that the seams take it up.
    """
    wide, high = backing_size(project, numbers, base, quilt)
    is_later = project.base.through is not Through.BACKING_AND_BATTING
    how_many = project.how_many if is_later else project.bases
    fabric = _fabric(project, numbers)
    ways = backing_ways(wide, high, how_many, fabric)
    others = list(ways[1:])
    extra_wide = WIDE_BACKING - _WIDE_SELVAGES
    if fabric.usable_width < extra_wide - TOLERANCE_IN:
        other = backing_ways(wide, high, how_many, replace(fabric, usable_width=extra_wide))[0]
        others.append(replace(other, way="108 in wide"))
    return BackingPlan(project.backing.fabric, wide, high, ways[0], tuple(others), fabric.usable_width)


def backing_size(
    project: Project, numbers: Numbers, base: BasePlan, quilt: QuiltPlan | None = None
) -> tuple[float, float]:
    """The size to cut the backing (x, y): the base's, or beyond the squared-up size when it is added later.

    When the backing makes the edge, it reaches as far beyond the trimmed edge as that takes.

    Args:
        project: For what is sewn through.
        numbers: For the draw-up, which a backing added later does not suffer.
        base: The base.
        quilt: The joined blocks, None for a piece by itself.
    """
    if project.base.through is Through.BACKING_AND_BATTING:
        beyond = backing_beyond_edge(project, numbers)
        return base.wide + 2 * max(0.0, beyond - base.spare_x), base.high + 2 * max(0.0, beyond - base.spare_y)
    spare = 2 * later_backing_spare(project, numbers)
    if quilt is not None:
        return quilt.wide + spare, quilt.high + spare
    return (
        (base.wide - 2 * base.spare_x) * (1 - numbers.draw_up_x) + spare,
        (base.high - 2 * base.spare_y) * (1 - numbers.draw_up_y) + spare,
    )


def _fabric(project: Project, numbers: Numbers) -> BackingFabric:
    """The backing fabric with the maker's numbers."""
    same: Fabric | None = next((one for one in project.fabrics if one.name == project.backing.fabric), None)
    measured = project.backing.usable_width or (same.usable_width if same is not None else None)
    width = numbers.usable_width if measured is None else measured.inches
    return BackingFabric(
        usable_width=width * (1 - numbers.prewash_across),
        is_one_way=project.backing.one_way or (same is not None and same.one_way),
        seam=numbers.backing_seam,
        straightening=numbers.straightening,
        buy_in_steps_of=numbers.buy_in_steps_of,
        buy_at_least=numbers.buy_at_least,
        prewash_along=numbers.prewash_along,
        unit=project.units,
    )


def backing_ways(wide: float, high: float, how_many: int, fabric: BackingFabric) -> tuple[BackingChoice, ...]:
    """All ways to lay backings of one size on one fabric, the shortest purchase first.

    Args:
        wide: x extent to cut, inches.
        high: y extent to cut, inches; the print's upright runs this way.
        how_many: Backings alike.
        fabric: What they are cut from; a one-way fabric is never turned.

    Returns:
        One or two ways; of two that cost the same, the one with fewer seams, then the upright one.

    Raises:
        BuildError: If the fabric is so narrow that the seams take it up.

    Example:
        >>> [(way.way, way.length_in, way.buy_in) for way in backing_ways(15.5, 48, 1, BackingFabric(40))]
        [('pieced across', 32.0, 36.0), ('one width', 49.0, 49.5)]
    """
    ways = [_way(wide, high, how_many, fabric, axis="x")]
    if not fabric.is_one_way and abs(wide - high) > TOLERANCE_IN:
        ways.append(_way(high, wide, how_many, fabric, axis="y"))
    return tuple(sorted(ways, key=lambda way: (round(way.buy_in, 6), way.widths, round(way.length_in, 6))))


def _way(across: float, along: float, how_many: int, fabric: BackingFabric, *, axis: str) -> BackingChoice:
    """One way: `across` lies across the fabric, `along` along it; axis "y" means the print is turned."""
    off_middle = BACKING_SEAM_OFF_MIDDLE.of(fabric.unit)
    panels = arrange(
        across,
        fabric.usable_width,
        fabric.seam,
        off_middle=off_middle,
        narrowest=NARROWEST_BACKING_PANEL.of(fabric.unit),
    )
    side_by_side = 1
    if panels.seams_at:
        lengths = widths_for_all(panels, fabric.usable_width, how_many)
        name = "pieced across" if across > along + TOLERANCE_IN else "pieced along"
    else:
        side_by_side = min(how_many, floor(fabric.usable_width / across + TOLERANCE_IN))
        lengths = ceil(how_many / side_by_side)
        name = "one width"
    need = (lengths * along + fabric.straightening) / (1 - fabric.prewash_along)
    return BackingChoice(
        way=name,
        widths=_whole_widths(panels, fabric.usable_width),
        length_in=need,
        buy_in=max(round_to(need, fabric.buy_in_steps_of, Rounding.UP), fabric.buy_at_least),
        seam_in=fabric.seam if panels.seams_at else 0.0,
        seams_at=panels.seams_at,
        how_many_wide=side_by_side,
        remark=_remark(panels, across, side_by_side, fabric, off_middle, is_turned=axis == "y"),
        seam_axis=axis if panels.seams_at else "",
        panels=panels.widths if panels.seams_at else (),
    )


def _whole_widths(panels: Panels, usable: float) -> int:
    """Widths of fabric that one backing takes."""
    return widths_for_all(panels, usable, 1) if panels.seams_at else 1


def _remark(
    panels: Panels, across: float, side_by_side: int, fabric: BackingFabric, off_middle: float, *, is_turned: bool
) -> str:
    """What to know about one way, in whole sentences."""
    say = Speaker(fabric.unit)
    said = []
    if is_turned:
        said.append("Laid sideways: the print turns with it.")
    if side_by_side > 1:
        rest = fabric.usable_width - side_by_side * across
        spare = f"{say.margin(rest)} to spare" if rest > TOLERANCE_IN else "nothing to spare"
        said.append(f"{side_by_side} lie side by side, {spare}.")
    if panels.seams_at:
        widths = " + ".join(say.bare.cut(width) for width in panels.widths[:-1])
        said.append(
            f"Join panels cut {widths} + {say.cut(panels.widths[-1])} wide with {say.near(fabric.seam)} seams, open."
        )
        if panels.off_middle < off_middle - TOLERANCE_IN:
            said.append(_seam_near_middle(panels, across, fabric))
    return " ".join(said)


def _seam_near_middle(panels: Panels, across: float, fabric: BackingFabric) -> str:
    """Where the seam lies, and the widths that keep it off the middle."""
    say = Speaker(fabric.unit)
    off = panels.off_middle
    where = "on the middle" if off < 1 / 32 else f"{say.near(off)} off the middle"
    better = with_full_middle(across, fabric.usable_width, fabric.seam)
    widths = " + ".join(say.bare.cut(width) for width in better.widths)
    return (
        f"A seam lies {where}, where the piece is folded most; one width more, cut {widths}, puts the seams "
        f"{say.near(better.off_middle)} off it."
    )
