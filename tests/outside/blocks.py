"""Rows and blocks that published figures speak of, built by the kernel."""

from __future__ import annotations

from stitchflip.piecing import build_project
from stitchflip.piecing.model import Build
from tests.twins.script import area_of
from tests.twins.table import house, project, rounds, square, trim


def row(*cuts: float, seam: float = 0.25, wide: float = 12.0) -> Build:
    """Strips sewn side by side, the first at one end."""
    return build_project(
        project(
            squared_up=trim(wide, 3 * sum(cuts)),
            building={"way": "rows of strips", "rows_from": "one end"},
            rounds=rounds(*cuts),
        ),
        house(seam=seam, reach=0.0),
    )


def width_of(build: Build) -> float:
    """From the first raw edge to the last."""
    return build.pieces[-1].raw_edge_at - build.pieces[0].seam_at


def show_of(build: Build, step: int) -> float:
    """What a strip of a row shows between its own seam and the next."""
    return build.pieces[step + 1].seam_at - build.pieces[step].seam_at


def logs(build: Build) -> list[float]:
    """Lengths of the logs in the order sewn."""
    return [round(strip.full_length, 6) for strip in build.strips]


def side_of(build: Build) -> float:
    """Side of a square block, raw edge to raw edge."""
    return float(area_of(build.outline) ** 0.5)


def cabin(center: float, *cuts: float, way: str = "log cabin", seam: float = 0.25) -> Build:
    """A block round a square center, in a trim that takes nothing off."""
    return build_project(
        project(squared_up=trim(80, 80), center=square(center), building={"way": way}, rounds=rounds(*cuts)),
        house(seam=seam),
    )
