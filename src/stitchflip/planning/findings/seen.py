"""The part of a plan that findings about geometry need: quick to make again for every cure that is tried."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from stitchflip.finishing import plan_base
from stitchflip.lengths import Speaker
from stitchflip.piecing import build_project, first_piece_polygon, trim_polygon
from stitchflip.project.numbers import Numbers, effective
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.finishing.model import BasePlan
    from stitchflip.piecing.model import Build
    from stitchflip.project.model import Project


@dataclass(frozen=True, slots=True)
class Seen:
    """Project, numbers, base and build together."""

    project: Project
    numbers: Numbers
    base: BasePlan
    build: Build

    @property
    def speaker(self) -> Speaker:
        """Says lengths in the project's unit."""
        return Speaker(self.project.units)

    @property
    def wish(self) -> float:
        """What she wants beyond each point, to the trim edge, inches."""
        wanted = self.project.squared_up
        own = wanted.beyond_points or wanted.wish_beyond_points
        return own.inches if own is not None else self.numbers.wish_beyond_points


@lru_cache(maxsize=128)
def see(project: Project) -> Seen:
    """Build a project without cutting, pictures or purchases.

    What was built is kept for a while: findings of one piece often ask for the same change.

    Raises:
        BuildError: If no build can be made at all.
    """
    numbers = effective(project)
    base = plan_base(project, numbers, trim_polygon(project, numbers), first_piece_polygon(project, numbers))
    return Seen(project, numbers, base, build_project(project, numbers, (base.wide / 2, base.high / 2)))
