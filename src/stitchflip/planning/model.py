"""The plan as one value: what every picture, page and table is made from."""

from __future__ import annotations

from dataclasses import field, replace
from enum import StrEnum

from stitchflip.cutting.model import FabricPlan, Piece
from stitchflip.finishing.edge_model import EdgePlan, ExtrasPlan, PanelsPlan
from stitchflip.finishing.model import BackingPlan, BasePlan, BattingPlan, BindingPlan, SquareUpPlan
from stitchflip.finishing.quilt_model import QuiltPlan
from stitchflip.forecast.model import WorkEstimate
from stitchflip.piecing.model import Build, Polygon
from stitchflip.project.model import Change, Project
from stitchflip.project.numbers import Numbers
from stitchflip.values import dataclass


class Severity(StrEnum):
    """How much a finding matters."""

    STOP = "stop"
    FIX = "fix"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Cure:
    """Something the tool can apply that makes the finding go away (or says it cannot be more)."""

    text: str
    """Imperative, with its numbers: "cut the center 8⅝ in"."""
    changes: tuple[Change, ...] = ()
    """Empty for cures of the hand (lock an end, test a dye)."""


@dataclass(frozen=True, slots=True)
class Finding:
    """Something to look at."""

    code: str
    """Stable, such as "points.margin-thin"."""
    severity: Severity
    what: str
    """What, where, by how much; one sentence."""
    where: str = ""
    step: int | None = None
    place: Polygon = ()
    """A point or polygon in the flat frame to mark in pictures."""
    numbers: dict[str, float] = field(default_factory=dict)
    """Keys end in _in or _in2."""
    cures: tuple[Cure, ...] = ()


@dataclass(frozen=True, slots=True)
class Letter:
    """A fabric and the letter it has in drawings and tables."""

    letter: str
    fabric: str
    color: str
    hatch: int
    """Index of a hatch that tells it apart in gray print, 0 upward."""


@dataclass(frozen=True, slots=True)
class BlockKind:
    """One kind of block of a joined quilt, built once however many there are."""

    name: str
    """"" when all blocks are alike."""
    count: int
    """In one quilt; 1 when nothing is joined."""
    project: Project
    """The project as this kind of block has it."""
    build: Build


@dataclass(frozen=True, slots=True)
class Plan:
    """Everything computed for one project."""

    project: Project
    numbers: Numbers
    build: Build
    base: BasePlan
    square_up: SquareUpPlan
    backing: BackingPlan
    batting: BattingPlan
    binding: BindingPlan
    pieces: tuple[Piece, ...]
    """The cutting list for all pieces alike: per fabric, in the order one cuts."""
    pieces_by_fabric: dict[str, tuple[Piece, ...]]
    fabrics: tuple[FabricPlan, ...]
    letters: tuple[Letter, ...]
    work: WorkEstimate
    findings: tuple[Finding, ...]
    kinds: tuple[BlockKind, ...]
    """Kinds of block; `build` is the first one's."""
    edge: EdgePlan
    extras: ExtrasPlan
    quilt: QuiltPlan | None = None
    """The blocks joined; None for a piece by itself."""
    panels: PanelsPlan | None = None
    """What a long base is cut into."""

    def letter_of(self, fabric: str) -> str:
        """The letter of a fabric, "?" for one that has none."""
        return next((one.letter for one in self.letters if one.fabric == fabric), "?")

    @property
    def outline(self) -> Polygon:
        """The trim edge of the whole piece, taped, from its middle."""
        return self.quilt.outline if self.quilt is not None else self.build.trim_taped

    def with_findings(self, findings: tuple[Finding, ...]) -> Plan:
        """The same plan with these findings."""
        return replace(self, findings=findings)
