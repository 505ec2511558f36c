"""My numbers with the house defaults filled in, as plain inches for the rooms that compute."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from stitchflip.lengths import Unit
from stitchflip.project.model import Fiber, Finish, Outline, Project, Runs

if TYPE_CHECKING:
    from collections.abc import Callable

    from stitchflip.lengths import Length


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


_CM = 1 / 2.54

_DEFAULTS: dict[str, tuple[float, float]] = {
    "seam": (0.25, 0.75),
    "usable_width": (40.0, 105.0),
    "straightening": (1.0, 3.0),
    "fat_quarter_straightening": (0.5, 1.0),
    "buy_in_steps_of": (4.5, 10.0),
    "buy_at_least": (9.0, 20.0),
    "fold_loss": (1 / 32, 0.08),
    "reach": (0.5, 1.2),
    "round_cuts_to": (0.25, 0.5),
    "extra_free_end": (0.5, 1.5),
    "extra_raw_edges": (0.25, 0.5),
    "round_base_to": (0.5, 1.0),
    "wish_beyond_points": (1.0, 2.5),
    "points_note": (0.75, 2.0),
    "points_fix": (0.5, 1.2),
    "last_strip_note": (0.75, 2.0),
    "last_strip_fix": (0.5, 1.2),
    "binding_seam": (0.25, 0.75),
    "binding_extra": (10.0, 25.0),
    "binding_extra_per_corner": (0.5, 1.5),
    "stitch": (0.1, 0.25),
    "counts_as_crossed": (0.125, 0.3),
    "widest_gap": (8.0, 20.0),
    "longest_cut": (23.5, 59.0),
    "mat_wide": (24.0, 60.0),
    "mat_long": (18.0, 45.0),
    "backing_seam": (0.5, 1.2),
    "spare_runner_across": (1.0, 2.5),
    "spare_runner_ends": (1.5, 4.0),
    "spare_mat": (1.0, 2.0),
}
"""House defaults: inches for an inch project, centimeters for a metric one."""


def effective(project: Project) -> Numbers:
    """The maker's numbers with the house defaults filled in, for one project.

    Args:
        project: The project; its own numbers win over the defaults.
    """
    inch = project.units is Unit.INCH
    mine = project.my_numbers

    def house(name: str) -> float:
        inches, cm = _DEFAULTS[name]
        return inches if inch else cm * _CM

    def own(name: str, *instead: Length | None) -> float:
        given = (*instead, getattr(mine, name, None))
        return next((length.inches for length in given if length is not None), house(name))

    across, ends = _spares(project, house)
    lies = project.squared_up.length_runs is Runs.ACROSS
    draw_across, draw_along = _draw_up(project)
    binding, batting = project.binding, project.batting
    by_machine = binding.finish is Finish.MACHINE
    polyester = batting.fiber is Fiber.POLYESTER
    return Numbers(
        seam=own("seam"),
        usable_width=own("usable_width"),
        straightening=own("straightening"),
        fat_quarter_straightening=house("fat_quarter_straightening"),
        buy_in_steps_of=own("buy_in_steps_of"),
        buy_at_least=own("buy_at_least"),
        draw_up_x=draw_along if lies else draw_across,
        draw_up_y=draw_across if lies else draw_along,
        fold_loss=own("fold_loss"),
        reach=own("reach"),
        round_cuts_to=own("round_cuts_to"),
        extra_free_end=own("extra_free_end"),
        extra_raw_edges=own("extra_raw_edges"),
        round_base_to=own("round_base_to"),
        spare_x=ends if lies else across,
        spare_y=across if lies else ends,
        wish_beyond_points=own("wish_beyond_points", project.squared_up.wish_beyond_points),
        points_note=house("points_note"),
        points_fix=house("points_fix"),
        points_stop=own("binding_seam", binding.seam),
        last_strip_note=house("last_strip_note"),
        last_strip_fix=house("last_strip_fix"),
        binding_cut=binding.cut.inches if binding.cut is not None else _binding_cut(inch=inch, by_machine=by_machine),
        binding_seam=own("binding_seam", binding.seam),
        binding_extra=own("binding_extra"),
        binding_extra_per_corner=own("binding_extra_per_corner"),
        binding_passes=(0.25 if by_machine else 0.125) if inch else (0.5 if by_machine else 0.3) * _CM,
        loft=batting.loft.inches if batting.loft is not None else (0.25 if polyester else 0.125),
        stitch=own("stitch"),
        counts_as_crossed=own("counts_as_crossed"),
        widest_gap=own("widest_gap", batting.widest_gap),
        longest_cut=own("longest_cut"),
        mat_wide=own("mat_wide"),
        mat_long=own("mat_long"),
        backing_seam=own("backing_seam"),
        prewash_across=mine.prewash_across or 0.0,
        prewash_along=mine.prewash_along or 0.0,
        minutes_per_strip=mine.minutes_per_strip if mine.minutes_per_strip is not None else 3.5,
        minutes_per_further_20_in=1.0,
        thread_per_inch=mine.thread_per_inch if mine.thread_per_inch is not None else 3.5,
    )


def _binding_cut(*, inch: bool, by_machine: bool) -> float:
    if inch:
        return 2.5 if by_machine else 2.25
    return (6.5 if by_machine else 6.0) * _CM


def _draw_up(project: Project) -> tuple[float, float]:
    """(across, along) as fractions."""
    mine = project.my_numbers
    both = mine.draw_up if mine.draw_up is not None else 0.015
    across = mine.draw_up_across if mine.draw_up_across is not None else both
    along = mine.draw_up_along if mine.draw_up_along is not None else both
    return across, along


def _spares(project: Project, house: Callable[[str], float]) -> tuple[float, float]:
    """(across, at the ends): a runner, twice as long as wide, gets more at its ends."""
    wanted, base, mine = project.squared_up, project.base, project.my_numbers
    is_runner = False
    if wanted.shape is Outline.RECTANGLE and wanted.wide is not None and wanted.long is not None:
        short, long = sorted((wanted.wide.inches, wanted.long.inches))
        is_runner = long >= 2 * short
    across = base.spare_across or mine.spare_across
    ends = base.spare_at_ends or mine.spare_at_ends
    return (
        across.inches if across is not None else house("spare_runner_across" if is_runner else "spare_mat"),
        ends.inches if ends is not None else house("spare_runner_ends" if is_runner else "spare_mat"),
    )
