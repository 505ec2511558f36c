"""My numbers with the house numbers filled in, as plain inches for the rooms that compute.

Which of several places wins is decided here and nowhere else: what the maker wrote beside the thing itself
(the batting's wrapper, the binding, the base) before her own numbers, those before the house's.
"""

from __future__ import annotations

from math import cos, radians, sin
from typing import TYPE_CHECKING

from stitchflip.lengths import TOLERANCE_IN
from stitchflip.project.house import (
    DRAW_UP,
    HOUSE,
    MINUTES_PER_FURTHER_20_IN,
    MINUTES_PER_STRIP,
    THREAD_PER_INCH,
)
from stitchflip.project.model import CenterShape, Edge, Fiber, Finish, Outline, Runs
from stitchflip.project.sizes import stated_size, wash_shrink
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.lengths import Length
    from stitchflip.project.model import Center, Project


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
    """From the trim edge to where the front goes on once the edge is finished, however it is finished."""
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
    patch_extra: float
    """A patch of a numbered foundation is cut so much larger than its area, on every side."""
    shrink_x: float
    """Fraction lost along x in the first wash of the finished piece."""
    shrink_y: float
    backing_later_spare: float
    least_shown: float
    """The narrow end of a wonky strip shows at least so much."""
    binding_join: float
    """What a diagonal join costs of the binding; 0: one cut strip width."""

    @property
    def effective_seam(self) -> float:
        """Seam allowance plus half of what a fold takes up."""
        return self.seam + self.fold_loss / 2


def effective(project: Project) -> Numbers:
    """The maker's numbers with the house numbers filled in, for one project.

    Args:
        project: The project; what it says wins over the house numbers of its unit.

    Returns:
        Inches; x is across the picture, so a runner drawn lying has its ends left and right.
    """
    mine, binding, batting = project.my_numbers, project.binding, project.batting
    spare_x, spare_y = _as_drawn(project, *_spares(project))
    draw_up_x, draw_up_y = _as_drawn(project, *_draw_up(project))
    shrink_x, shrink_y = _as_drawn(project, *wash_shrink(project))
    by = "machine" if binding.finish is Finish.MACHINE else "hand"
    edge_seam = _edge_seam(project)
    lost = 0.0 if binding.edge is Edge.BINDING else edge_seam - _house(project, "binding_seam")
    return Numbers(
        seam=_mine(project, "seam"),
        usable_width=_mine(project, "usable_width"),
        straightening=_mine(project, "straightening"),
        fat_quarter_straightening=_house(project, "fat_quarter_straightening"),
        buy_in_steps_of=_mine(project, "buy_in_steps_of"),
        buy_at_least=_mine(project, "buy_at_least"),
        draw_up_x=draw_up_x,
        draw_up_y=draw_up_y,
        fold_loss=_mine(project, "fold_loss"),
        reach=_first(project, "reach_block" if _is_of_blocks(project) else "reach", mine.reach),
        round_cuts_to=_mine(project, "round_cuts_to"),
        extra_free_end=_mine(project, "extra_free_end"),
        extra_raw_edges=_mine(project, "extra_raw_edges"),
        round_base_to=_mine(project, "round_base_to"),
        spare_x=spare_x,
        spare_y=spare_y,
        wish_beyond_points=_first(
            project, "wish_beyond_points", project.squared_up.wish_beyond_points, mine.wish_beyond_points
        ),
        points_note=_house(project, "points_note") + lost,
        points_fix=_house(project, "points_fix") + lost,
        points_stop=edge_seam,
        last_strip_note=_house(project, "last_strip_note"),
        last_strip_fix=_house(project, "last_strip_fix"),
        binding_cut=_first(project, f"binding_cut_{by}", binding.cut),
        binding_seam=edge_seam,
        binding_extra=_mine(project, "binding_extra"),
        binding_extra_per_corner=_mine(project, "binding_extra_per_corner"),
        binding_passes=_house(project, f"binding_passes_{by}"),
        loft=_first(project, "loft_high" if batting.fiber in _HIGH else "loft_flat", batting.loft),
        stitch=_mine(project, "stitch"),
        counts_as_crossed=_mine(project, "counts_as_crossed"),
        widest_gap=_first(project, "widest_gap", batting.widest_gap, mine.widest_gap),
        longest_cut=_mine(project, "longest_cut"),
        mat_wide=_mine(project, "mat_wide"),
        mat_long=_mine(project, "mat_long"),
        backing_seam=_mine(project, "backing_seam"),
        prewash_across=mine.prewash_across or 0.0,
        prewash_along=mine.prewash_along or 0.0,
        minutes_per_strip=MINUTES_PER_STRIP if mine.minutes_per_strip is None else mine.minutes_per_strip,
        minutes_per_further_20_in=MINUTES_PER_FURTHER_20_IN,
        thread_per_inch=THREAD_PER_INCH if mine.thread_per_inch is None else mine.thread_per_inch,
        patch_extra=_mine(project, "patch_extra"),
        shrink_x=shrink_x,
        shrink_y=shrink_y,
        backing_later_spare=_mine(project, "backing_later_spare"),
        least_shown=_first(project, "least_shown", project.building.no_sliver_under),
        binding_join=0.0 if mine.binding_join is None else mine.binding_join.inches,
    )


_HIGH = frozenset({Fiber.POLYESTER, Fiber.WOOL})
"""Fibers whose batting is usually thick (common practice, no source)."""


def _house(project: Project, name: str) -> float:
    """The house number of the project's unit, inches."""
    return HOUSE[name].of(project.units)


def _first(project: Project, name: str, *given: Length | None) -> float:
    """The first length that was given, else the house number; inches."""
    return next((length.inches for length in given if length is not None), _house(project, name))


def _mine(project: Project, name: str) -> float:
    """The maker's own number, else the house number; inches."""
    own: Length | None = getattr(project.my_numbers, name)
    return _first(project, name, own)


def _as_drawn(project: Project, across: float, along: float) -> tuple[float, float]:
    """(across the width, along the length) as (x, y) of the picture."""
    return (across, along) if project.squared_up.length_runs is Runs.UP else (along, across)


def _edge_seam(project: Project) -> float:
    """From the trim edge to where the front goes on once the edge is finished, inches.

    A binding and a facing take their seam, a piece that is turned through takes its own; the backing that is brought
    round to the front covers as much as shows of it, and is held by stitching along its fold.
    """
    binding = project.binding
    match binding.edge:
        case Edge.SELF_BINDING:
            return _first(project, "self_binding_shows", binding.shows, binding.seam)
        case Edge.TURNED_THROUGH:
            return _first(project, "turned_through_seam", binding.seam)
        case _:
            return _first(project, "binding_seam", binding.seam)


def _draw_up(project: Project) -> tuple[float, float]:
    """Draw-up of the width and of the length, fractions; by what is sewn through unless the maker measured hers."""
    mine = project.my_numbers
    both = DRAW_UP[project.base.through] if mine.draw_up is None else mine.draw_up
    return (
        both if mine.draw_up_across is None else mine.draw_up_across,
        both if mine.draw_up_along is None else mine.draw_up_along,
    )


def _spares(project: Project) -> tuple[float, float]:
    """Base spare per side across and at the ends, inches; a runner gets more at its ends, a block less."""
    base, mine = project.base, project.my_numbers
    across, ends = ("spare_runner_across", "spare_runner_ends") if is_runner(project) else ("spare_mat", "spare_mat")
    if _is_of_blocks(project):
        across = ends = "spare_large_block" if _is_large_block(project) else "spare_block"
    return (
        _first(project, across, base.spare_across, mine.spare_across),
        _first(project, ends, base.spare_at_ends, mine.spare_at_ends),
    )


def _is_of_blocks(project: Project) -> bool:
    """True when several blocks are joined, so that what is squared up is one of them."""
    return project.blocks_in_one > 1


def _is_large_block(project: Project) -> bool:
    wide, long = project.squared_up.wide, project.squared_up.long
    limit = _house(project, "large_block")
    return any(side is not None and side.inches > limit + TOLERANCE_IN for side in (wide, long))


def is_runner(project: Project) -> bool:
    """True for a piece at least twice as long as wide.

    Args:
        project: The project; a piece wished so far beyond its center's points is judged by its center.
    """
    wanted, center = project.squared_up, project.center
    if wanted.shape is Outline.POLYGON:
        return False
    stated = stated_size(project)
    if stated is not None:
        short, long = sorted(stated)
        return long >= 2 * short - TOLERANCE_IN
    if wanted.beyond_points is None or center is None:
        return False
    beyond = wanted.beyond_points.inches - _mine(project, "seam")
    short_in, long_in = sorted(_extents(center))
    return long_in + 2 * beyond >= 2 * (short_in + 2 * beyond)


def _extents(center: Center) -> tuple[float, float]:
    """How far a square or rectangular center reaches in x and y as it is turned, inches."""
    if center.shape is CenterShape.RECTANGLE:
        wide, long = center.cut_wide, center.cut_long
    else:
        wide = long = center.cut
    if wide is None or long is None:
        return (1.0, 1.0)
    along, beside = abs(cos(radians(center.turned))), abs(sin(radians(center.turned)))
    return (wide.inches * along + long.inches * beside, wide.inches * beside + long.inches * along)
