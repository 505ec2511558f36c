"""Quilts of joined blocks for the tests, planned with the house numbers of each unit, and what shows of them."""

from __future__ import annotations

from typing import Any

from shapely import Polygon as Area
from shapely import unary_union
from shapely.affinity import rotate, translate

from stitchflip.finishing import plan_quilt
from stitchflip.finishing.quilt_model import JoiningStrip, QuiltPlan
from tests.finishing.scenarios import Laid, cm, inches


def planned(laid: Laid) -> QuiltPlan:
    """The quilt of a project."""
    quilt = plan_quilt(laid.project, laid.numbers, laid.trim)
    assert quilt is not None
    return quilt


def quilt(
    across: int,
    down: int,
    size: str | tuple[str, str] = "13",
    *,
    numbers: dict[str, float] | None = None,
    parts: dict[str, Any] | None = None,
    **joined: Any,
) -> QuiltPlan:
    """A quilt in inches, seam 1/4, batting 1/8 thick."""
    return planned(laid_in_inches(across, down, size, numbers=numbers, parts=parts, **joined))


def laid_in_inches(
    across: int,
    down: int,
    size: str | tuple[str, str] = "13",
    *,
    numbers: dict[str, float] | None = None,
    parts: dict[str, Any] | None = None,
    **joined: Any,
) -> Laid:
    """Its project and numbers."""
    wide, long = size if isinstance(size, tuple) else (size, size)
    tables = {"joined": {"across": across, "down": down, **joined}, **(parts or {})}
    return inches({"wide": wide, "long": long}, numbers, **tables)


def metric_quilt(across: int, down: int, size: str, parts: dict[str, Any] | None = None, **joined: Any) -> QuiltPlan:
    """A quilt in centimeters, seam 0.75 cm, batting 0.3 cm thick."""
    tables = {"joined": {"across": across, "down": down, **joined}, **(parts or {})}
    return planned(cm({"wide": size, "long": size}, **tables))


def strips(made: QuiltPlan, name: str) -> list[JoiningStrip]:
    """The joining strips whose name begins so."""
    return [strip for strip in made.strips if strip.name.startswith(name)]


def on_the_front(made: QuiltPlan) -> list[Area]:
    """Everything that shows between and round the blocks."""
    shown = [area for strip in made.strips for area in strip.front]
    shown += [area for border in made.borders for area in (*border.front, *border.corner_places)]
    shown += made.triangles.places if made.triangles is not None else ()
    return [Area(area) for area in shown]


def blocks_shown(made: QuiltPlan, seam: float) -> list[Area]:
    """The blocks up to their seam lines."""
    found = []
    for block in made.blocks:
        x, y = block.wide / 2 - seam, block.high / 2 - seam
        area = Area([(-x, -y), (x, -y), (x, y), (-x, y)])
        found.append(translate(rotate(area, block.turned, origin=(0, 0)), *block.middle))
    return found


def total(areas: list[Area]) -> float:
    """Sum of areas, overlaps counted twice."""
    return float(sum(area.area for area in areas))


def together(areas: list[Area]) -> float:
    """Area of all of them laid over one another, on a grid fine enough that edges meant to meet do meet."""
    return float(unary_union(areas, grid_size=1e-6).area)
