"""The two frames and everything a build is measured against.

*Flat* is how things lie on the base before any stitching: marks and fabric as cut live there, and the kernel
works there. Stitching draws the piece in, so a tape reads *taped* = flat x (1 - draw-up), per direction. Trim,
margins and squaring up are taped; they are carried to the flat frame once, here.
"""

from __future__ import annotations

from dataclasses import field
from math import hypot, inf
from typing import TYPE_CHECKING

from stitchflip.piecing.geometry import HalfPlane, half_planes, moved, scaled
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.project.numbers import Numbers


@dataclass(frozen=True, slots=True)
class Frame:
    """Seam, draw-up and the outlines a build is judged by; inches."""

    seam: float
    """Effective seam a."""
    trim_taped: Polygon
    binding_seam: float
    reach: float
    """How far fabric must pass the trim line, flat."""
    draw_up: Point = (0.0, 0.0)
    stitched: float | None = None
    """Seam as stitched, without the loss at the fold: where the center's points are. None = the seam above."""
    stitch: float = 0.1
    counts_as_crossed: float = 0.125
    extra_free_end: float = 0.5
    extra_raw_edges: float = 0.25
    round_cuts_to: float = 0.25
    base_half: Point = (inf, inf)
    done: Polygon = ()
    """A half-done piece the build goes on from, as far in as strips are sewn to it: stitched already; flat."""
    trim: Polygon = field(init=False)
    inner: Polygon = field(init=False)
    cover: Polygon = field(init=False)
    trim_planes: tuple[HalfPlane, ...] = field(init=False)
    inner_planes: tuple[HalfPlane, ...] = field(init=False)
    cover_planes: tuple[HalfPlane, ...] = field(init=False)

    def __post_init__(self) -> None:
        """Carry the outlines to the flat frame."""
        sx, sy = 1 / (1 - self.draw_up[0]), 1 / (1 - self.draw_up[1])
        trim = scaled(self.trim_taped, sx, sy)
        inner = scaled(moved(self.trim_taped, -self.binding_seam), sx, sy)
        cover = moved(trim, self.reach)
        for name, outline in (("trim", trim), ("inner", inner), ("cover", cover)):
            object.__setattr__(self, name, outline)
            object.__setattr__(self, f"{name}_planes", half_planes(outline))

    def taped(self, point: Point) -> Point:
        """A flat place as the tape finds it."""
        return (point[0] * (1 - self.draw_up[0]), point[1] * (1 - self.draw_up[1]))

    @property
    def done_taped(self) -> Polygon:
        """The half-done piece as the tape finds it."""
        return tuple(self.taped(corner) for corner in self.done)

    def taped_distance(self, normal: Point, distance: float) -> float:
        """Distance of a line from the center mark, flat to taped."""
        return distance / hypot(normal[0] / (1 - self.draw_up[0]), normal[1] / (1 - self.draw_up[1]))

    def flat_distance(self, normal: Point, distance: float) -> float:
        """Distance of a line from the center mark, taped to flat; `normal` is the flat one."""
        return distance * hypot(normal[0] / (1 - self.draw_up[0]), normal[1] / (1 - self.draw_up[1]))


def frame_for(numbers: Numbers, trim_taped: Polygon, base_half: Point = (inf, inf)) -> Frame:
    """The frame of a project.

    Args:
        numbers: The maker's numbers.
        trim_taped: Squared-up outline, taped.
        base_half: Half the base's width and height, flat, inches.
    """
    return Frame(
        seam=numbers.effective_seam,
        trim_taped=trim_taped,
        binding_seam=numbers.binding_seam,
        reach=numbers.reach,
        draw_up=(numbers.draw_up_x, numbers.draw_up_y),
        stitched=numbers.seam,
        stitch=numbers.stitch,
        counts_as_crossed=numbers.counts_as_crossed,
        extra_free_end=numbers.extra_free_end,
        extra_raw_edges=numbers.extra_raw_edges,
        round_cuts_to=numbers.round_cuts_to,
        base_half=base_half,
    )
