"""What it is made of: fabrics with what is on hand of each, batting, backing and binding."""

from typing import Annotated

from pydantic import Field, ValidationInfo, model_validator

from stitchflip.project.house import ON_HAND
from stitchflip.project.kinds import NUMBER, Above, Amount, Color, Line, Measure, Model, Name, Size, reads, unit_of
from stitchflip.project.words import Edge, Fiber, Finish, Grain, Wash, bare


class OnHand(Model):
    """A piece of fabric on the shelf, as measured; a "fat quarter" or a "precut strip" need not be."""

    wide: Above = Field(description="Width as measured; left out, that of a usual fat quarter or precut strip.")
    long: Above = Field(description="Length as measured; left out, that of a usual fat quarter or precut strip.")
    count: Annotated[int, Field(ge=1, le=1000), NUMBER] = Field(default=1, description="How many of this size.")
    name: Line = Field(default="", description='Plain words such as "fat quarter" or "precut strip".')

    @model_validator(mode="before")
    @classmethod
    def _usual_sizes(cls, data: object, info: ValidationInfo) -> object:
        if not isinstance(data, dict) or {"wide", "long"} & data.keys():
            return data
        usual = ON_HAND.get(bare(str(data.get("name", ""))).removesuffix("s"))
        if usual is None:
            return data
        wide, long = (house.length(unit_of(info)) for house in usual)
        return {**data, "wide": wide, "long": long}


Pieces = Annotated[tuple[OnHand, ...], Field(max_length=200)]


class MotifPlace(Model):
    """One motif of a print: where its middle lies in the repeat, and how much of it must be seen."""

    across: Measure = Field(description="From the left edge of the repeat to the middle of the motif.")
    along: Measure = Field(description="From the beginning of the repeat to the middle of the motif.")
    wide: Size | None = Field(default=None, description="What must be seen of it, across the fabric.")
    long: Size | None = Field(default=None, description="What must be seen of it, along the fabric.")


class Fabric(Model):
    """One fabric."""

    name: Name = Field(description="Its name, as the rounds say it.")
    color: Color = Field(default="#b0a79b", description='For the pictures: a CSS color such as "#3f4c5c" or "navy".')
    role: Line = Field(default="", description="What it does in the piece, such as background or accent.")
    usable_width: Size | None = Field(
        default=None, description="Width without selvages, as measured; left out, from my numbers."
    )
    on_hand: Pieces = Field(default=(), description="The pieces you have.")
    only_on_hand: bool = Field(
        default=False, description="true: nothing more can be bought (a saved print, quarters from a box)."
    )
    one_way: bool = Field(default=False, description="true: the print has an upright and must not be turned.")
    washed: Annotated[Wash, reads(Wash)] = Field(default=Wash.UNWASHED, description="Its state before cutting.")
    precut: bool = Field(default=False, description="true: bought as precut pieces, which are never washed.")
    dark_dye: bool = Field(default=False, description="true: a dark or strong dye that may bleed.")
    dye_tested: bool = Field(default=False, description="true: tested, and it does not bleed.")
    price: Amount | None = Field(default=None, description="Price of one yard, or of one meter in a metric project.")
    repeat: Size | None = Field(default=None, description="How far apart the print repeats, along the fabric.")
    repeat_across: Size | None = Field(
        default=None,
        description="From one column of the print to the next, across the fabric; left out, the width gives one motif.",
    )
    half_drop: bool = Field(
        default=False, description="true: each column begins half a repeat farther along than its neighbor."
    )
    motifs: Annotated[tuple[MotifPlace, ...], Field(max_length=20)] = Field(
        default=(), description="The motifs of one repeat; left out, one in its middle."
    )
    motif_chosen: bool = Field(
        default=False, description="true: it is cut in the shop where the motif lies, so no repeat is bought for that."
    )
    spare_repeats: Annotated[int, Field(ge=0, le=20), NUMBER] = Field(
        default=0, description="Repeats bought on top, for mistakes in fussy cutting."
    )


class Batting(Model):
    """The batting, as its wrapper says."""

    fiber: Annotated[Fiber, reads(Fiber)] = Field(default=Fiber.COTTON, description="What it is made of.")
    loft: Measure | None = Field(default=None, description="How thick it is; left out, usual for its fiber.")
    iron: bool | None = Field(
        default=None, description="true: it stands a hot iron; left out, all but polyester are taken to."
    )
    widest_gap: Above | None = Field(
        default=None, description="How far apart stitching may be at most; left out, from my numbers."
    )
    on_hand: Pieces = Field(default=(), description="The pieces you have; they are butted if one is too small.")


class Backing(Model):
    """The backing fabric; its name may be one of the fabrics or its own."""

    fabric: Name = Field(default="Backing", description="Name of a fabric, or a name of its own.")
    usable_width: Size | None = Field(
        default=None, description="Width without selvages, as measured; left out, from my numbers."
    )
    one_way: bool = Field(default=False, description="true: the print has an upright and must not be turned.")


class Binding(Model):
    """How the edge is finished: a double-fold binding unless another way is named."""

    fabric: Line = Field(
        default="", description="Name of its fabric; only a piece that is turned through or self-bound needs none."
    )
    edge: Annotated[Edge, reads(Edge)] = Field(default=Edge.BINDING, description="How the edge is finished.")
    grain: Annotated[Grain, reads(Grain)] | None = Field(
        default=None,
        description="How binding strips are cut; left out, straight, and on the bias where the edge curves.",
    )
    shows: Size | None = Field(
        default=None, description="Self-binding: width that shows on the front. Facing: width when folded under."
    )
    cut: Size | None = Field(default=None, description="Cut width; left out, usual for how it is sewn down.")
    seam: Above | None = Field(default=None, description="Seam of the binding, from the trim edge.")
    finish: Annotated[Finish, reads(Finish)] = Field(
        default=Finish.MACHINE, description="How it is sewn down on the back."
    )
