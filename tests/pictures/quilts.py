"""Quilts written by hand over the examples' blocks: every place and strip worked out on paper, not by the planner.

Harbour Sheds: blocks squared up 13, flat strips cut 1 1/8, folded ones 2, seam 1/4. Seam lines lie 1 1/8 - 1/2 = 5/8
apart, so that the raw edges leave 5/8 - 1/2 = 1/8 and a block comes every 13 1/8: 4 across are 52 3/8, 5 down 65 1/2.
Kite Weather: blocks squared up 8 1/2 and plain seams of 1/4, one every 8: 4 x 4 are 32 1/2 both ways.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from stitchflip.finishing.quilt_model import JoinCheck, JoiningStrip, PlacedBlock, QuiltPlan
from stitchflip.piecing.model import Polygon
from stitchflip.planning import plan
from stitchflip.planning.model import BlockKind, Plan
from stitchflip.project import read_project

EXAMPLES = Path(__file__).parents[2] / "examples"
JOINED = """
[joined]
across = {across}
down = {down}
join = "{join}"
"""


def box(x0: float, y0: float, x1: float, y1: float) -> Polygon:
    """An upright rectangle, counter-clockwise."""
    return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))


def block_plan(stem: str, across: int, down: int, join: str, fabric: str, fold: str = "behind") -> Plan:
    """The plan of one block whose project already says how it will be joined."""
    text = (EXAMPLES / f"{stem}.toml").read_text(encoding="utf-8")
    single = plan(read_project(text, stem), with_cures=False)
    said = JOINED.format(across=across, down=down, join=join)
    if fabric:
        said += f'fabric = "{fabric}"\nfold = "{fold}"\n'
    joined = read_project(text + said, stem)
    return replace(single, project=joined)


def turned_the_other_way(single: Plan) -> BlockKind:
    """The same block with its strips going round the other way."""
    from stitchflip.piecing import build_project
    from stitchflip.project.model import Turning

    building = single.project.building.model_copy(update={"turning": Turning.COUNTERCLOCKWISE})
    project = single.project.model_copy(update={"building": building})
    build = build_project(project, single.numbers, (single.base.wide / 2, single.base.high / 2))
    return BlockKind("counter-clockwise", 10, project, build)


def sheds(fold: str = "behind") -> Plan:
    """Twenty sheds, four across and five down, in turn clockwise and counter-clockwise."""
    single = block_plan("harbour-shed-block", 4, 5, "flat and folded strips", "Lamp", fold)
    pitch, shows = 13.125, 0.625
    blocks = tuple(
        PlacedBlock((row + column) % 2, row, column, ((column - 1.5) * pitch, (2 - row) * pitch), 0.0, 13.0, 13.0)
        for row in range(5)
        for column in range(4)
    )
    across = [(place - 1) * pitch for place in range(3)]
    up = [(1.5 - place) * pitch for place in range(4)]
    short = tuple(
        box(x - shows / 2, (2 - row) * pitch - 6.5, x + shows / 2, (2 - row) * pitch + 6.5)
        for row in range(5)
        for x in across
    )
    long = tuple(box(-26.1875, y - shows / 2, 26.1875, y + shows / 2) for y in up)
    strips = (
        JoiningStrip("flat strip between blocks", "Lamp", 1.125, 13.0, 15, short),
        JoiningStrip("folded strip between blocks", "Keel", 2.0, 13.0, 15, ()),
        JoiningStrip("flat strip between rows", "Lamp", 1.125, 52.375, 4, long, is_pieced=True),
        JoiningStrip("folded strip between rows", "Keel", 2.0, 52.375, 4, (), is_pieced=True),
    )
    check = JoinCheck("flat and folded strips", shows, 0.125, 0.125, 0.0, 0.125, 0.25)
    outline = box(-26.1875, -32.75, 26.1875, 32.75)
    quilt = QuiltPlan(52.375, 65.5, outline, blocks, check, strips, None, (), (), None, ())
    kinds = (BlockKind("clockwise", 10, single.project, single.build), turned_the_other_way(single))
    return replace(single, quilt=quilt, kinds=kinds)


def kites() -> Plan:
    """Sixteen string blocks, plain seams."""
    single = block_plan("kite-weather-block", 4, 4, "plain seam", "")
    blocks = tuple(
        PlacedBlock(0, row, column, ((column - 1.5) * 8, (1.5 - row) * 8), 0.0, 8.5, 8.5)
        for row in range(4)
        for column in range(4)
    )
    check = JoinCheck("plain seam", 0.0, 0.0, 0.0, 0.0, 0.125, 0.25)
    outline = box(-16.25, -16.25, 16.25, 16.25)
    quilt = QuiltPlan(32.5, 32.5, outline, blocks, check, (), None, (), (), None, ())
    return replace(single, quilt=quilt)
