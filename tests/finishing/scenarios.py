"""The invented pieces the finishing tests plan, with every number they depend on said here.

Settings are the house defaults: seam 1/4 in (0.75 cm), 40 in (105 cm) usable, draw-up 1.5 %, straightening 1 in
(3 cm) for each purchase, bought in 1/8 yd (10 cm).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from stitchflip.finishing import plan_base
from stitchflip.finishing.model import BasePlan
from stitchflip.lengths import Unit
from stitchflip.piecing.model import Polygon
from stitchflip.piecing.shapes import trim_polygon
from stitchflip.project.model import Project
from stitchflip.project.numbers import Numbers
from tests.twins.table import house

CM = 1 / 2.54
SPECK: Polygon = ((-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0))
"""A first piece where a test does not care about it."""


@dataclass(frozen=True)
class Laid:
    """A project with the numbers it is planned with."""

    project: Project
    numbers: Numbers

    @property
    def trim(self) -> Polygon:
        """Squared-up outline, taped."""
        return trim_polygon(self.project, self.numbers)

    @property
    def base(self) -> BasePlan:
        """The base."""
        return plan_base(self.project, self.numbers, self.trim, SPECK)


def metric_house(**changes: float) -> Numbers:
    """A metric maker's numbers, given in centimeters (fractions and minutes as they are)."""
    cm: dict[str, float] = {
        "seam": 0.75, "usable_width": 105, "straightening": 3, "fat_quarter_straightening": 1, "buy_in_steps_of": 10,
        "buy_at_least": 20, "reach": 1.5, "round_cuts_to": 0.5, "round_base_to": 1, "spare_x": 2, "spare_y": 2,
        "wish_beyond_points": 2.5, "binding_cut": 6.5, "binding_seam": 0.75, "binding_extra": 25,
        "binding_extra_per_corner": 1.5, "binding_passes": 0.5, "loft": 0.3, "widest_gap": 20, "longest_cut": 59,
        "mat_wide": 58, "mat_long": 43, "backing_seam": 1.2,
    }  # fmt: skip
    plain = {"draw_up_x", "draw_up_y", "prewash_across", "prewash_along", "minutes_per_strip", "thread_per_inch"}
    own = {name: value for name, value in changes.items() if name in plain}
    cm |= {name: value for name, value in changes.items() if name not in plain}
    return house(**{name: value * CM for name, value in cm.items()}, **{"draw_up_x": 0.015, "draw_up_y": 0.015, **own})


def inches(squared_up: dict[str, Any], numbers: dict[str, float] | None = None, **parts: Any) -> Laid:
    """A piece in inches with draw-up 1.5 %; `numbers` change the house defaults."""
    return Laid(
        _read(Unit.INCH, squared_up, parts), house(**{"draw_up_x": 0.015, "draw_up_y": 0.015, **(numbers or {})})
    )


def cm(squared_up: dict[str, Any], numbers: dict[str, float] | None = None, **parts: Any) -> Laid:
    """A piece in centimeters with draw-up 1.5 %."""
    return Laid(_read(Unit.CM, squared_up, parts), metric_house(**(numbers or {})))


def _read(unit: Unit, squared_up: dict[str, Any], parts: dict[str, Any]) -> Project:
    raw = {
        "name": "On the table",
        "units": unit.value,
        "fabrics": [{"name": "Linen"}],
        "binding": {"fabric": "Linen"},
        "squared_up": squared_up,
        **parts,
    }
    return Project.model_validate(raw, context={"unit": unit})


def lantern_walk(**parts: Any) -> Laid:
    """Runner with pointed ends, 13 x 44 in."""
    numbers = {"spare_x": 1.0, "spare_y": 1.5}
    return inches({"wide": "13", "long": "44", "ends": "pointed"}, numbers, **parts)


def morning_tray(spare_cm: float = 2, **parts: Any) -> Laid:
    """Four placemats, 47 x 35 cm as laid."""
    numbers = {"spare_x": spare_cm, "spare_y": spare_cm}
    return cm({"wide": "47", "long": "35"}, numbers, **{"how_many": 4, **parts})


def tin_roof(wide: str = "12", **parts: Any) -> Laid:
    """Runner of rows, 12 x 56 in, bound by hand in 2 1/4 in strips."""
    numbers = {"spare_x": 1.0, "spare_y": 1.5, "binding_cut": 2.25}
    return inches({"wide": wide, "long": "56"}, numbers, **{"binding": {"fabric": "Linen", "finish": "hand"}, **parts})


def snow_gate(**parts: Any) -> Laid:
    """Hexagon topper, 22 1/2 in between flats, corners at top and bottom."""
    return inches({"shape": "polygon", "sides": 6, "across_flats": "22.5", "turned": 30.0}, **parts)


def harbour_block(**parts: Any) -> Laid:
    """One log cabin block squared up 13 in, to be joined."""
    return inches({"wide": "13", "long": "13"}, {"spare_x": 0.75, "spare_y": 0.75}, **parts)


def kite_block(**parts: Any) -> Laid:
    """One string block squared up 8 1/2 in, on batting only."""
    numbers = {"spare_x": 0.5, "spare_y": 0.5, "reach": 0.375}
    return inches({"wide": "8.5", "long": "8.5"}, numbers, **{"base": {"through": "batting only"}, **parts})
