"""The example projects as drafts: read from their files, changed as a test says, planned once.

`flat` drafts sew with nothing drawn in and nothing lost in the folds, which is how the expected lengths of the
strips were worked out; bases keep the house draw-up of 1.5 %.
"""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from stitchflip.cutting.model import FabricPlan
from stitchflip.piecing.model import EndClass, SewnPiece
from stitchflip.planning import plan
from stitchflip.planning.model import Finding, Plan
from stitchflip.project import Change, apply_changes, read_project_bytes
from stitchflip.project.model import Project

FOLDER = Path(__file__).parents[2] / "examples"
FLAT = (("my_numbers.draw_up", "0 %"), ("my_numbers.fold_loss", "0"))

Edit = tuple[str, str | None]
"""(dotted place, text to write there)."""


def example(name: str, *edits: Edit) -> Project:
    """An example project as its file says, with some values changed."""
    file = FOLDER / f"{name}.toml"
    project = read_project_bytes(file.read_bytes(), file.name)
    return apply_changes(project, [Change(_path(place), text) for place, text in edits])


def _path(place: str) -> tuple[str | int, ...]:
    return tuple(int(part) if part.isdigit() else part for part in place.split("."))


@lru_cache(maxsize=64)
def planned(name: str, *edits: Edit) -> Plan:
    """The plan of an example with the house numbers."""
    return plan(example(name, *edits))


@lru_cache(maxsize=64)
def flat(name: str, *edits: Edit) -> Plan:
    """The plan of an example with nothing drawn in and nothing lost in the folds."""
    return plan(example(name, *FLAT, *edits))


def by_round(made: Plan) -> list[list[SewnPiece]]:
    """The strips of each round, in the order sewn."""
    rounds = max(strip.round for strip in made.build.strips)
    return [[strip for strip in made.build.strips if strip.round == number] for number in range(1, rounds + 1)]


def strip_count(made: Plan, fabric: str, width: float) -> int:
    """How many strips of one cut width a fabric takes."""
    (one,) = (one for one in fabric_plan(made, fabric).strip_plans if abs(one.width - width) < 1e-6)
    assert one.bound == len(one.strips)
    return len(one.strips)


def fabric_plan(made: Plan, fabric: str) -> FabricPlan:
    """The cutting plan of a fabric."""
    (one,) = (one for one in made.fabrics if one.fabric == fabric)
    return one


def loose_ends(made: Plan) -> list[tuple[float, float]]:
    """Places of the seam ends that nothing holds."""
    seams = [strip.seam for strip in made.build.strips if strip.seam is not None]
    return [end.at for seam in seams for end in (seam.start, seam.end) if end.kind is EndClass.LOOSE]


def finding(made: Plan, code: str) -> Finding:
    """The one finding with this code."""
    (one,) = (one for one in made.findings if one.code == code)
    return one


def codes(made: Plan) -> set[str]:
    """Codes of all findings."""
    return {one.code for one in made.findings}
