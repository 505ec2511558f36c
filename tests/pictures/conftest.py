"""A small plan written by hand: a square center with four strips, every polygon worked out on paper.

Center 5 in cut, seam 1/4: it shows 4 1/2, from -2 1/4 to 2 1/4 both ways. Strips cut 2 1/2: opened 2 1/4 wide, raw
edges 4 1/2 from the middle. Top, bottom, then left and right over their ends. Squared up 8 x 8, binding seam 1/4.
The right end of the first seam is said to be loose, so that there is something to lock on one side only.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from stitchflip.cutting.model import FabricPlan, OneStrip, Row, Status, StripPlan
from stitchflip.finishing.edge_model import EdgePlan, ExtrasPlan
from stitchflip.finishing.model import (
    BackingChoice,
    BackingPlan,
    BasePlan,
    BattingPlan,
    BindingCorner,
    BindingPlan,
    PointNumber,
    SideNumber,
    SquareUpPlan,
)
from stitchflip.forecast.model import WorkEstimate
from stitchflip.piecing.model import (
    Build,
    CenterPoint,
    EndClass,
    Point,
    Polygon,
    Seam,
    SeamEnd,
    SewnPiece,
    WidestGap,
)
from stitchflip.planning.model import BlockKind, Letter, Plan
from stitchflip.project import read_project
from stitchflip.project.numbers import effective

EXAMPLES = Path(__file__).parents[2] / "examples"
PROJECT = """
name = "Four Strips"
[squared_up]
wide = "8"
long = "8"
[base]
wide = "10"
long = "10"
[center]
fabric = "Plum"
cut = "5"
[building]
way = "courthouse steps"
[[rounds]]
cut = "2 1/2"
fabrics = ["Sand", "Sand", "Night", "Night"]
[[fabrics]]
name = "Plum"
color = "#8d4d6b"
[[fabrics]]
name = "Sand"
color = "#e8dcc0"
[[fabrics]]
name = "Night"
color = "#1f2740"
[binding]
fabric = "Night"
cut = "2 1/2"
"""


def box(x0: float, y0: float, x1: float, y1: float) -> Polygon:
    """An upright rectangle, counter-clockwise."""
    return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))


def _seam(normal: Point, start: Point, end: Point, kinds: tuple[EndClass, EndClass], by: int | None = None) -> Seam:
    first, last = (
        SeamEnd(at, kind, by if kind is EndClass.CROSSED else None)
        for at, kind in zip((start, end), kinds, strict=True)
    )
    return Seam(normal, 2.25, first, last)


def _strip(step: int, side: str, fabric: str, opened: Polygon, seen: tuple[Polygon, Polygon], seam: Seam) -> SewnPiece:
    length = seam.length
    return SewnPiece(
        step=step,
        round=1,
        side=side,
        fabric=fabric,
        cut_width=2.5,
        normal=seam.normal,
        seam_at=2.25,
        raw_edge_at=4.5,
        raw_edge_taped=4.5,
        seam_taped=2.25,
        opened=opened,
        kept=opened,
        visible=(seen[0],),
        shown=(seen[1],),
        full_length=length,
        needed_length=length,
        inset_start=0.0,
        inset_end=0.0,
        cut_length=length + 0.25,
        reach_start=-length / 2,
        reach_end=length / 2,
        free_ends=0,
        seam=seam,
    )


def _center() -> SewnPiece:
    shows = box(-2.25, -2.25, 2.25, 2.25)
    return SewnPiece(
        step=0,
        round=0,
        side="",
        fabric="Plum",
        cut_width=5.0,
        normal=(0.0, 1.0),
        seam_at=0.0,
        raw_edge_at=2.5,
        raw_edge_taped=2.5,
        seam_taped=0.0,
        opened=box(-2.5, -2.5, 2.5, 2.5),
        kept=box(-2.5, -2.5, 2.5, 2.5),
        visible=(shows,),
        shown=(shows,),
        full_length=5.0,
        needed_length=5.0,
        inset_start=0.0,
        inset_end=0.0,
        cut_length=5.0,
        reach_start=-2.5,
        reach_end=2.5,
        free_ends=0,
        seam=None,
    )


def _build() -> Build:
    crossed, caught, loose = EndClass.CROSSED, EndClass.CAUGHT, EndClass.LOOSE
    top = _seam((0.0, 1.0), (2.5, 2.25), (-2.5, 2.25), (loose, crossed), 3)
    bottom = _seam((0.0, -1.0), (-2.5, -2.25), (2.5, -2.25), (crossed, crossed), 4)
    left = _seam((-1.0, 0.0), (-2.25, 4.5), (-2.25, -4.5), (caught, caught))
    right = _seam((1.0, 0.0), (2.25, -4.5), (2.25, 4.5), (caught, caught))
    pieces = (
        _center(),
        _strip(
            1, "top", "Sand", box(-2.5, 2.25, 2.5, 4.5), (box(-2.25, 2.25, 2.25, 4), box(-2.25, 2.25, 2.25, 3.75)), top
        ),
        _strip(
            2,
            "bottom",
            "Sand",
            box(-2.5, -4.5, 2.5, -2.25),
            (box(-2.25, -4, 2.25, -2.25), box(-2.25, -3.75, 2.25, -2.25)),
            bottom,
        ),
        _strip(
            3,
            "left",
            "Night",
            box(-4.5, -4.5, -2.25, 4.5),
            (box(-4, -4, -2.25, 4), box(-3.75, -3.75, -2.25, 3.75)),
            left,
        ),
        _strip(
            4, "right", "Night", box(2.25, -4.5, 4.5, 4.5), (box(2.25, -4, 4, 4), box(2.25, -3.75, 3.75, 3.75)), right
        ),
    )
    return Build(
        pieces=pieces,
        trim=box(-4, -4, 4, 4),
        trim_taped=box(-4, -4, 4, 4),
        trim_inner=box(-3.75, -3.75, 3.75, 3.75),
        cover=box(-4.5, -4.5, 4.5, 4.5),
        outline=box(-4.5, -4.5, 4.5, 4.5),
        bare=(),
        raw_edges_on_show=(),
        widest_gap=WidestGap((0.0, 0.0), 4.5, 0),
        points=(
            CenterPoint((2.25, 2.25), 2.75, 1.75, 1.5, "upper right corner", points_at_edge=False),
            CenterPoint((2.25, 0.0), 2.75, 1.75, 1.5, "right point", points_at_edge=True),
        ),
        notes=(),
        seam_allowance=0.25,
        draw_up=(0.0, 0.0),
        first_is_strip=False,
    )


@pytest.fixture(scope="session")
def sand_cuts() -> FabricPlan:
    """Two strips 2 1/2 wide from 1/4 yd of 40 in: 11 + 11 from one, 18 left over; and a row that nobody needs."""
    strips = (OneStrip(2.5, 40.0, (("1", 5.25), ("2", 5.25)), "width of fabric", 29.5),)
    return FabricPlan(
        fabric="Sand",
        usable_width=40.0,
        strip_plans=(StripPlan(2.5, strips, 1, Status.PROVED, as_you_go=False, spare_in=29.5),),
        rows=(Row(3.0, (("Label", 4.0), ("Label", 4.0)), turned=False),),
        losing_rows_in=None,
        used_in=5.5,
        straightening_in=1.0,
        need_in=6.5,
        buy_in=9.0,
        spare_in=2.5,
        bound_in=6.5,
        status=Status.PROVED,
        tipping_points=(),
        from_hand=(),
        short_in=0.0,
        miscuts=1,
    )


@pytest.fixture(scope="session")
def hand_plan(sand_cuts: FabricPlan) -> Plan:
    """The plan with four strips."""
    project = read_project(PROJECT)
    build = _build()
    sides = (("top", (0.0, 1.0)), ("right", (1.0, 0.0)), ("bottom", (0.0, -1.0)), ("left", (-1.0, 0.0)))
    best = BackingChoice("one width", 1, 11.0, 13.5, 0.0, (), 3, "")
    return Plan(
        project=project,
        numbers=effective(project),
        build=build,
        base=BasePlan(
            10.0,
            10.0,
            9.9,
            9.9,
            is_given=True,
            first_piece=box(-2.5, -2.5, 2.5, 2.5),
            marks=(("x", 0.0), ("y", 0.0), ("x", -4.0), ("x", 4.0), ("y", -4.0), ("y", 4.0)),
            spare_x=1.0,
            spare_y=1.0,
        ),
        square_up=SquareUpPlan(
            wide=8.0,
            high=8.0,
            sides=tuple(SideNumber(name, normal, 4.0, 8.0) for name, normal in sides),
            points=(PointNumber("right point", 1.75, 1.5),),
            diagonals=(11.314, 11.314),
            corners=build.trim_taped,
            area=64.0,
            perimeter=32.0,
            folded="",
        ),
        backing=BackingPlan("Backing", 10.0, 10.0, best, (), 40.0),
        batting=BattingPlan(10.0, 10.0, ("one piece",), None, "", 0.0),
        binding=BindingPlan(
            fabric="Night",
            cut=2.5,
            seam=0.25,
            perimeter=32.0,
            need=44.0,
            strips_per_piece=2,
            strips=2,
            made=77.5,
            strip_length=40.0,
            shows_on_back=0.625,
            passes_stitching=0.375,
            corners=tuple(BindingCorner(90.0, 0.25) for _ in range(4)),
            start_at="6 in from a corner",
            joins_at=(),
            bound=2,
        ),
        pieces=(),
        pieces_by_fabric={},
        fabrics=(sand_cuts,),
        letters=(
            Letter("A", "Sand", "#e8dcc0", 0),
            Letter("B", "Night", "#1f2740", 1),
            Letter("C", "Plum", "#8d4d6b", 2),
        ),
        work=WorkEstimate(28.0, 3.0, 0.5, 1.0),
        findings=(),
        kinds=(BlockKind("", 1, project, build),),
        edge=EdgePlan("binding", "straight", 0.25, 0.25, 0.0, 0.0, (), 0.0, 0, ()),
        extras=ExtrasPlan((), ()),
    )
