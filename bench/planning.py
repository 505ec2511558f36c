"""Planning against the painter's loop, and how planning grows."""

from __future__ import annotations

from typing import TYPE_CHECKING

from bench import plain_painter
from bench.clock import Measured, medians
from bench.pieces import pointed_runner, rows_runner
from stitchflip.planning.findings import geometry_findings, see
from tests.twins.compare import differences
from tests.twins.dictate import script_of
from tests.twins.painter import Painting, paint, widest_gap

if TYPE_CHECKING:
    from stitchflip.project.model import Project
    from tests.twins.script import Script

RATIO = 20
"""Planning must be this many times faster than the painter's loop."""

GROWTH = 5
"""Four times the strips may take no more than this many times as long."""

_SAME_GAP_IN = 0.01


def race(name: str, project: Project) -> Measured:
    """Plan a runner both ways, check that the answers agree, and compare medians."""
    seen = see(project)
    script = script_of(project, seen.numbers)
    apart = _disagreements(project, script)
    ours, painters, quickest = medians(
        9, lambda: geometry_findings(see(project)), lambda: _painted(script), lambda: plain_painter.paint(script)
    )
    ratio = painters / ours
    return Measured(
        f"planning {name} against a painter's loop over shapely polygons",
        f"{ratio:.0f} times faster",
        f"{RATIO} times",
        ratio >= RATIO and not apart,
        f"{1000 * ours:.1f} ms against {1000 * painters:.0f} ms; {apart or 'both agree'}; a painter's loop that leaves "
        f"out the rounding grid takes {1000 * quickest:.0f} ms ({quickest / ours:.0f} times)",
    )


def _painted(script: Script) -> tuple[Painting, float]:
    """The same answers the plain way: patches, cover, needed lengths, seam ends, widest unstitched place."""
    painting = paint(script)
    seams = [
        (piece.start.at, piece.end.at)
        for piece in painting.pieces[1:]
        if piece.start is not None and piece.end is not None
    ]
    return painting, widest_gap(script.trim, seams)[1]


def _disagreements(project: Project, script: Script) -> str:
    """What the two ways disagree about, or nothing."""
    build = see(project).build
    painting, gap = _painted(script)
    found = differences(build, painting)
    if abs(build.widest_gap.diameter - gap) > _SAME_GAP_IN:
        found.append(f"widest gap {build.widest_gap.diameter:.3f} against {gap:.3f}")
    return f"{len(found)} DISAGREEMENTS, first: {found[0]}" if found else ""


def growth() -> Measured:
    """How much longer 1,000 strips take than 250."""
    short, long = rows_runner(125, fine=True), rows_runner(500, fine=True)
    pointed_short, pointed_long = pointed_runner(250, fine=True), pointed_runner(1000, fine=True)
    times = medians(
        5,
        lambda: geometry_findings(see(short)),
        lambda: geometry_findings(see(long)),
        lambda: geometry_findings(see(pointed_short)),
        lambda: geometry_findings(see(pointed_long)),
    )
    worst = max(times[1] / times[0], times[3] / times[2])
    return Measured(
        "planning 1,000 strips against 250",
        f"{worst:.1f} times as long",
        f"under {GROWTH} times",
        worst < GROWTH,
        f"rows {1000 * times[0]:.0f} and {1000 * times[1]:.0f} ms, "
        f"on point {1000 * times[2]:.0f} and {1000 * times[3]:.0f} ms",
    )


def runners() -> list[Measured]:
    """All races."""
    return [
        race("a runner of 33 strips in rows", rows_runner(16)),
        race("a runner of 32 strips round the point", pointed_runner(32)),
        growth(),
    ]
