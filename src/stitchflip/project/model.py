"""The project as the maker writes it down: one small frozen model for each thing on the table.

Everything a plan depends on is here and nothing that is computed. Lengths are exact (`Length`); whoever reads
a project hands its unit to the parser, so "13" means inches in an inch project and centimeters in a metric
one. The models only hold and check values that can be judged alone; what two values must agree on is checked
when a file is read (`agreements`), and what needs the geometry (does the center fit the base?) is a finding
of the plan.
"""

from typing import Annotated

from pydantic import Field

from stitchflip.lengths import Unit
from stitchflip.project.kinds import NUMBER, Line, Measure, Model, Text, Title, reads
from stitchflip.project.maker import MyNumbers
from stitchflip.project.materials import Backing, Batting, Binding, Fabric, OnHand
from stitchflip.project.piece import Base, Center, SquaredUp
from stitchflip.project.quilt import Block, Border, CutApart, Extras, Joined, MadeFor
from stitchflip.project.strips import MOST_STRIPS, Building, FabricRule, Patch, Reading, Round, ShortStrip, Step
from stitchflip.project.words import (
    BorderCorners,
    CenterShape,
    CutAlong,
    Edge,
    Ends,
    FabricOrder,
    Fiber,
    Filler,
    Finish,
    Fold,
    Grain,
    Join,
    Joining,
    LabelShape,
    LinesSeen,
    Outline,
    PairFirst,
    ReadBy,
    RowsFrom,
    RowsRun,
    Runs,
    Setting,
    StripEnds,
    Through,
    Triangles,
    Turning,
    Unequal,
    Wash,
    Way,
    Widths,
    Working,
)
from stitchflip.values import dataclass

__all__ = [
    "Backing",
    "Base",
    "Batting",
    "Binding",
    "Block",
    "Border",
    "BorderCorners",
    "Building",
    "Center",
    "CenterShape",
    "Change",
    "CutAlong",
    "CutApart",
    "Edge",
    "Ends",
    "Extras",
    "Fabric",
    "FabricOrder",
    "FabricRule",
    "Fiber",
    "Filler",
    "Finish",
    "Fold",
    "Grain",
    "Join",
    "Joined",
    "Joining",
    "LabelShape",
    "LinesSeen",
    "MadeFor",
    "Measure",
    "MyNumbers",
    "OnHand",
    "Outline",
    "PairFirst",
    "Patch",
    "Project",
    "ReadBy",
    "Reading",
    "Round",
    "RowsFrom",
    "RowsRun",
    "Runs",
    "Setting",
    "ShortStrip",
    "SquaredUp",
    "Step",
    "StripEnds",
    "Through",
    "Triangles",
    "Turning",
    "Unequal",
    "Wash",
    "Way",
    "Widths",
    "Working",
]


@dataclass(frozen=True, slots=True)
class Change:
    """One change to a project: a path such as ("center", "cut") and the text to write there."""

    path: tuple[str | int, ...]
    """Keys, and places in lists counted from 0; a place one past the end adds to the list."""
    to: str | None
    """As a maker would type it; lists and tables as in the file. None takes the value out."""


class Project(Model):
    """A whole project, as written in its file."""

    name: Title = Field(description="Name of the piece.")
    about: Text = Field(default="", description="A few words about it: for whom, where it lies, what it tells.")
    edition: Line = Field(default="1", description="Edition of the pattern.")
    date: Line = Field(default="", description="Date of this edition, as it should be printed.")
    units: Annotated[Unit, reads(Unit)] = Field(
        default=Unit.INCH, description="Unit of every bare number, and of everything printed."
    )
    how_many: Annotated[int, Field(ge=1, le=24), NUMBER] = Field(default=1, description="Pieces alike, made together.")
    working: Annotated[Working, reads(Working)] = Field(
        default=Working.CUT_FIRST,
        alias="way_of_working",
        description="Everything cut from the list first, or sewn from the strip in the hand, trimmed, and the rest "
        "used next.",
    )
    squared_up: SquaredUp = Field(description="The size you want after squaring up, wide × long.")
    base: Base = Field(default=Base.model_construct(), description="What the strips are sewn to.")
    center: Center | None = Field(
        default=None, description="The first piece, by its cut size; only rows of strips can do without."
    )
    building: Building = Field(default=Building.model_construct(), description="How the strips go on.")
    rounds: Annotated[tuple[Round, ...], Field(max_length=MOST_STRIPS)] = Field(
        default=(),
        description="The rounds from the center outward. In rows of strips without a center the first entry is the "
        "first strip, and each later one a strip on both sides of it (rows from the middle) or the next strip.",
    )
    steps: Annotated[tuple[Step, ...], Field(max_length=MOST_STRIPS)] = Field(
        default=(), description="Sides in my order: the strips one by one, instead of rounds."
    )
    patches: Annotated[tuple[Patch, ...], Field(max_length=MOST_STRIPS)] = Field(
        default=(), description="Numbered foundation: the patches in the order sewn, instead of rounds."
    )
    blocks: Annotated[tuple[Block, ...], Field(max_length=100)] = Field(
        default=(), description="Different kinds of block in one quilt; left out, all are as the project says."
    )
    joined: Joined | None = Field(default=None, description="How quilted blocks are joined into one piece.")
    borders: Annotated[tuple[Border, ...], Field(max_length=12)] = Field(
        default=(), description="Borders round the joined blocks, from the inside out."
    )
    cut_apart: CutApart | None = Field(default=None, description="One long base cut into several panels.")
    made_for: MadeFor | None = Field(default=None, description="The table or bed it is made for.")
    extras: Extras = Field(default=Extras.model_construct(), description="Sleeve and label.")
    readings: Annotated[tuple[Reading, ...], Field(max_length=MOST_STRIPS)] = Field(
        default=(), description="What you measured while sewing; the plan follows."
    )
    short_strips: Annotated[tuple[ShortStrip, ...], Field(max_length=MOST_STRIPS)] = Field(
        default=(), description="Strips that were cut shorter than their places need."
    )
    fabric_rule: FabricRule = Field(
        default=FabricRule.model_construct(), description="Where the fabrics go in rounds that name none."
    )
    fabrics: Annotated[tuple[Fabric, ...], Field(min_length=1, max_length=200)] = Field(
        description="The fabrics, each with a name."
    )
    batting: Batting = Field(default=Batting.model_construct(), description="The batting.")
    backing: Backing = Field(default=Backing.model_construct(), description="The backing.")
    binding: Binding = Field(description="The binding, or another finish of the edge.")
    my_numbers: MyNumbers = Field(default=MyNumbers.model_construct(), description="Your own numbers.")

    @property
    def bases(self) -> int:
        """Bases to cut for all pieces alike: one for each block of a joined quilt."""
        return self.how_many * self.blocks_in_one

    @property
    def blocks_in_one(self) -> int:
        """Blocks in one piece; 1 when nothing is joined."""
        if self.joined is None:
            return 1
        across, down = self.joined.across, self.joined.down
        between = (across - 1) * (down - 1) if self.joined.setting is Setting.ON_POINT else 0
        return across * down + between
