"""Fabrics and cutting lists as a maker would write them down, for the tests of this room."""

from __future__ import annotations

from typing import Any

from stitchflip.cutting import FabricPlan, Piece, StripPiece, StripStock, plan_fabric
from stitchflip.cutting.verify import verify_fabric_plan
from stitchflip.lengths import Unit
from stitchflip.project.model import Fabric, Working
from stitchflip.project.numbers import Numbers
from tests.twins.table import house

CM = 1 / 2.54
METRIC = house(
    usable_width=105 * CM,
    straightening=3 * CM,
    fat_quarter_straightening=1 * CM,
    buy_in_steps_of=10 * CM,
    buy_at_least=20 * CM,
)
"""Usable width 105 cm, 3 cm for straightening, sold by 10 cm and at least 20 cm."""
YARD = 36.0
FAT_QUARTER = {"name": "fat quarter", "wide": "17 1/2", "long": "20 1/2"}


def fabric(name: str = "Linen", unit: Unit = Unit.INCH, **parts: Any) -> Fabric:
    """A fabric as a project file gives it."""
    return Fabric.model_validate({"name": name, **parts}, context={"unit": unit})


def strips(wide: float, *lengths: float, first: int = 1, count: int = 1) -> tuple[Piece, ...]:
    """Strip pieces of one width, numbered in sewing order."""
    return tuple(Piece(str(step), wide, long, count, step=step) for step, long in enumerate(lengths, first))


def binding(wide: float, long: float, count: int) -> Piece:
    """Whole strips for a binding."""
    return Piece("Binding", wide, long, count, kind="binding")


def wanted(*lengths: float) -> tuple[StripPiece, ...]:
    """Lengths for the strip planner, labeled in order."""
    return tuple(StripPiece(str(step), length, step) for step, length in enumerate(lengths, 1))


def bolt(width: float) -> StripStock:
    """Strips cut across the fabric, as many as it takes."""
    return StripStock("width of fabric", width)


def planned(
    asked: Fabric,
    pieces: tuple[Piece, ...],
    numbers: Numbers | None = None,
    working: Working = Working.CUT_FIRST,
    unit: Unit = Unit.INCH,
) -> FabricPlan:
    """The plan of a fabric, which the independent checker has passed."""
    numbers = numbers or house()
    plan = plan_fabric(asked, pieces, numbers, working, unit)

    assert verify_fabric_plan(plan, asked, pieces, numbers, working) == ()

    return plan


def counts(plan: FabricPlan) -> dict[float, int]:
    """Strips by cut width."""
    return {round(one.width, 6): len(one.strips) for one in plan.strip_plans}


def plain(text: str) -> str:
    """A sentence with ordinary spaces."""
    return text.replace("\u202f", " ").replace("\u2009", " ")
