"""What is made of finished pieces: blocks joined into a quilt, what goes round it, what a long base is cut into."""

from typing import Annotated

from pydantic import AfterValidator, Discriminator, Field, Tag, WithJsonSchema

from stitchflip.project.beds import MATTRESSES, mattress_named
from stitchflip.project.kinds import LENGTH_SCHEMA, NUMBER, Line, Measure, Model, Name, Size, one_of, reads, refusal
from stitchflip.project.piece import Center
from stitchflip.project.strips import MOST_STRIPS, Building, Patch, Round, Step
from stitchflip.project.words import (
    BorderCorners,
    Covers,
    CutAlong,
    Filler,
    Fold,
    Join,
    Joining,
    LabelShape,
    Setting,
    Triangles,
    Unequal,
)

MOST_BLOCKS = 60
"""Blocks in one row or column; more is a slip."""

InARow = Annotated[int, Field(ge=1, le=MOST_BLOCKS), NUMBER]


class Block(Model):
    """One kind of block; whatever it does not say is as the project says."""

    name: Name = Field(description="What this kind of block is called.")
    count: Annotated[int, Field(ge=0, le=MOST_BLOCKS**2), NUMBER] | None = Field(
        default=None, description="How many of this kind; left out, the kinds share the places evenly."
    )
    center: Center | None = Field(default=None, description="Its center; left out, the project's.")
    building: Building | None = Field(default=None, description="How its strips go on; left out, the project's.")
    rounds: Annotated[tuple[Round, ...], Field(max_length=MOST_STRIPS)] | None = Field(
        default=None, description="Its rounds; left out, the project's."
    )
    steps: Annotated[tuple[Step, ...], Field(max_length=MOST_STRIPS)] | None = Field(
        default=None, description="Its strips one by one; left out, the project's."
    )
    patches: Annotated[tuple[Patch, ...], Field(max_length=MOST_STRIPS)] | None = Field(
        default=None, description="Its patches on a numbered foundation; left out, the project's."
    )


FORMS = ("square", "wide and long")
"""The two forms of a measured block, as the model library adds them to the place of what it refuses."""


def _form(value: object) -> str:
    """The second form for a list, the first for anything else."""
    return FORMS[isinstance(value, list | tuple)]


Measured = Annotated[
    Annotated[Size, Tag(FORMS[0])] | Annotated[tuple[Size, Size], Tag(FORMS[1])],
    Discriminator(_form),
    WithJsonSchema(
        {
            "anyOf": [
                LENGTH_SCHEMA,
                {"type": "array", "prefixItems": [LENGTH_SCHEMA, LENGTH_SCHEMA], "minItems": 2, "maxItems": 2},
            ]
        }
    ),
]
"""A block as measured: square, or wide × long."""


class Joined(Model):
    """Quilted blocks joined into one piece; squared_up and base are then those of one block."""

    across: InARow = Field(description="Blocks in a row.")
    down: InARow = Field(description="Blocks in a column.")
    setting: Annotated[Setting, reads(Setting)] = Field(default=Setting.STRAIGHT, description="How the blocks lie.")
    join: Annotated[Join, reads(Join)] = Field(default=Join.FLAT_AND_FOLDED, description="How they are joined.")
    first: Annotated[Joining, reads(Joining)] = Field(
        default=Joining.ROWS, description="What is joined first: blocks to rows, or blocks to columns."
    )
    fold: Annotated[Fold, reads(Fold)] = Field(
        default=Fold.BEHIND, description="Flat and folded strips: on which face the folded strip lies."
    )
    flat_cut: Size | None = Field(default=None, description="Cut width of the flat strips; left out, usual.")
    folded_cut: Size | None = Field(
        default=None, description="Cut width of the strips that are folded in half; left out, what covers safely."
    )
    shows: Size | None = Field(default=None, description="Covered strips: width that shows between the blocks.")
    fabric: Name | None = Field(default=None, description="Fabric of the joining strips on the front.")
    fabric_behind: Name | None = Field(
        default=None, description="Fabric of the joining strips on the back; left out, that of the front."
    )
    corner_squares: Name | None = Field(
        default=None, description="Covered strips: fabric of the squares where they cross; left out, there are none."
    )
    batting_reaches: Annotated[Filler, reads(Filler)] = Field(
        default=Filler.RAW_EDGE, description="How far the batting of the blocks reaches when they are joined."
    )
    measured: Annotated[tuple[tuple[Measured, ...], ...], Field(max_length=MOST_BLOCKS)] = Field(
        default=(), description="Blocks as measured, row by row from the top: a size, or [wide, long]."
    )
    unequal: Annotated[Unequal, reads(Unequal)] = Field(
        default=Unequal.TRIM, description="What is done with blocks of unequal size."
    )
    places: Annotated[tuple[Line, ...], Field(max_length=MOST_BLOCKS)] = Field(
        default=(),
        description="Where the kinds of block lie, a text for each row from the top: their numbers in the list of "
        'blocks, such as "1 2 1 2"; left out, in turn.',
    )
    triangles: Annotated[Triangles, reads(Triangles)] = Field(
        default=Triangles.TRADE, description="On point: how large the squares for setting triangles are cut."
    )
    triangle_fabric: Name | None = Field(default=None, description="On point: fabric of the setting triangles.")


class Border(Model):
    """One border round a quilt of joined blocks, from the inside out."""

    cut: Size = Field(description="Cut width of its strips.")
    fabric: Name = Field(description="Name of its fabric.")
    corners: Annotated[BorderCorners, reads(BorderCorners)] = Field(
        default=BorderCorners.BUTTED, description="How its corners are made."
    )
    corner_fabric: Name | None = Field(default=None, description="Fabric of its corner squares.")
    cut_along: Annotated[CutAlong, reads(CutAlong)] = Field(
        default=CutAlong.NONE,
        description="Which of its strips are cut along the fabric, whole and with the least stretch; that takes more "
        "length. The sides of a one-way print stand upright when they are cut along, top and bottom when cut across.",
    )


class CutApart(Model):
    """One long base cut into several panels after sewing; squared_up is then the size of one panel."""

    across: InARow = Field(default=1, description="Panels side by side.")
    down: InARow = Field(default=1, description="Panels from top to bottom.")
    loss: Measure | None = Field(
        default=None, description="What is trimmed away between two panels; left out, one straight cut and no loss."
    )


def _listed_mattress(name: str) -> str:
    """The name as the list of mattresses spells it."""
    listed = mattress_named(name) if name else ""
    if listed is None:
        raise refusal("", f"{one_of(name, list(MATTRESSES))}, or mattress_wide and mattress_long")
    return listed


Mattress = Annotated[Line, AfterValidator(_listed_mattress)]
"""Name of a mattress, or nothing."""


class MadeFor(Model):
    """What the piece lies on; squared_up may then leave out wide and long."""

    table_wide: Size | None = Field(default=None, description="Width of the table.")
    table_long: Size | None = Field(default=None, description="Length of the table.")
    covers: Annotated[Covers, reads(Covers)] = Field(
        default=Covers.RUNNER,
        description="Table: a runner along its middle (a third of its width, unless squared_up says how wide), or a "
        "cloth over the whole table.",
    )
    hang: Measure | None = Field(
        default=None, description="Table: how far a runner hangs over at each end, or a cloth at all four edges."
    )
    short_of_ends: Measure | None = Field(
        default=None, description="Instead of hang: a runner stops this far before each end, clear of the plates."
    )
    mattress: Mattress = Field(
        default="", description="Bed: name of a mattress such as queen, or left out and given by its measures."
    )
    mattress_wide: Size | None = Field(default=None, description="Bed: width of the mattress.")
    mattress_long: Size | None = Field(default=None, description="Bed: length of the mattress.")
    drop: Measure | None = Field(default=None, description="Bed: how far it hangs down at both sides and the foot.")
    tuck: Measure | None = Field(default=None, description="Bed: extra length to tuck round the pillows.")


class Extras(Model):
    """What goes onto the back before the binding."""

    sleeve: bool = Field(default=False, description="true: a sleeve to hang it by.")
    sleeve_fabric: Name | None = Field(default=None, description="Its fabric; left out, that of the backing.")
    label: Annotated[LabelShape, reads(LabelShape)] | None = Field(
        default=None, description="A label: a rectangle, or a square folded over a corner."
    )
    label_fabric: Name | None = Field(default=None, description="Its fabric; left out, that of the backing.")
