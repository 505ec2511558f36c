"""What is made: the squared-up size, the base it is sewn on, and the center it begins with."""

from typing import Annotated, Any

from pydantic import Field, model_validator

from stitchflip.project.kinds import NUMBER, Corner, Measure, Model, Name, Size, Turn, reads
from stitchflip.project.words import CenterShape, Ends, Outline, Runs, Through

Sides = Annotated[int, Field(ge=3, le=24), NUMBER]
"""Sides of a polygon."""


class SquaredUp(Model):
    """The size wanted after squaring up (taped, trim edge to trim edge)."""

    shape: Annotated[Outline, reads(Outline)] = Field(
        default=Outline.RECTANGLE, description="Shape of the squared-up piece; a square is a rectangle."
    )
    wide: Size | None = Field(default=None, description="Width of the squared-up piece, trim edge to trim edge.")
    long: Size | None = Field(
        default=None, description="Length of the squared-up piece; of a piece with pointed ends from tip to tip."
    )
    beyond_points: Measure | None = Field(
        default=None,
        description="Instead of wide and long: this much beyond the center's points (at the seams), to the trim edge.",
    )
    ends: Annotated[Ends, reads(Ends)] = Field(
        default=Ends.SQUARE, description="Ends straight across, or cut to 45-degree points."
    )
    length_runs: Annotated[Runs, reads(Runs)] = Field(
        default=Runs.UP,
        description="How the piece lies in the pictures, and so what its top is: the length upright, or lying across.",
    )
    sides: Sides | None = Field(default=None, description="Polygon: how many sides.")
    across_flats: Size | None = Field(default=None, description="Polygon: from side to opposite side.")
    across: Size | None = Field(default=None, description="Round: from edge to opposite edge.")
    corner_radius: Size | None = Field(
        default=None, description="Rectangle: radius of its rounded corners; left out, they are square."
    )
    turned: Turn = Field(default=0.0, description="Polygon: degrees counter-clockwise; 0 has a side at the bottom.")
    wish_beyond_points: Measure | None = Field(
        default=None,
        description="What you want beyond each point of the center, to the trim edge; left out, from my numbers.",
    )
    after_washing: bool = Field(
        default=False, description="true: wide and long are what you want after the first wash, not before it."
    )

    @model_validator(mode="before")
    @classmethod
    def _sides_make_a_polygon(cls, data: object) -> object:
        return {**data, "shape": shape_of_piece(data)} if isinstance(data, dict) and "shape" not in data else data


def shape_of_piece(data: dict[str, Any]) -> str:
    """The shape of a squared-up piece as written, or as its sizes say when no shape is written."""
    by_sizes = Outline.RECTANGLE
    if {"sides", "across_flats"} & data.keys():
        by_sizes = Outline.POLYGON
    elif "across" in data:
        by_sizes = Outline.ROUND
    return str(data.get("shape", by_sizes.value))


class Base(Model):
    """The base: what the strips are sewn to. Sizes left out are computed."""

    through: Annotated[Through, reads(Through)] = Field(
        default=Through.BACKING_AND_BATTING, description="What you sew through."
    )
    wide: Size | None = Field(default=None, description="Width to cut the base; left out, it is computed.")
    long: Size | None = Field(default=None, description="Length to cut the base; left out, it is computed.")
    spare_across: Measure | None = Field(
        default=None, description="Spare per side, left and right of the width, trimmed off when you square up."
    )
    spare_at_ends: Measure | None = Field(default=None, description="Spare at each end of the length.")


class Center(Model):
    """The first piece, by its cut size."""

    fabric: Name = Field(description="Name of its fabric.")
    shape: Annotated[CenterShape, reads(CenterShape)] = Field(
        default=CenterShape.SQUARE, description="Shape of the center as cut."
    )
    cut: Size | None = Field(
        default=None,
        description="Square: its side as cut. Polygon: from side to opposite side as cut. Half square: side of the "
        "square that is cut once from corner to corner; its long side lies at the bottom.",
    )
    cut_wide: Size | None = Field(default=None, description="Rectangle: width as cut.")
    cut_long: Size | None = Field(default=None, description="Rectangle: length as cut.")
    sides: Sides | None = Field(default=None, description="Polygon: how many sides.")
    corners: Annotated[tuple[Corner, ...], Field(max_length=60)] | None = Field(
        default=None,
        description="Any outline that does not bend inward, by its cut corners, counter-clockwise: right of and "
        "above the center mark, in the project's unit.",
    )
    turned: Turn = Field(default=0.0, description='"straight", "on point", or degrees counter-clockwise.')
    off_center: Corner = Field(
        default=(0.0, 0.0),
        description="Where its middle lies from the base's center mark: to the right, then up, in the project's unit.",
    )
    sewn_already: bool = Field(
        default=False,
        description="true: a half-done piece, measured with the tape; nothing is cut for it and the strips go on "
        "round it.",
    )

    @model_validator(mode="before")
    @classmethod
    def _sizes_tell_the_shape(cls, data: object) -> object:
        return {**data, "shape": shape_of_center(data)} if isinstance(data, dict) and "shape" not in data else data


def shape_of_center(data: dict[str, Any]) -> str:
    """The shape of a center as written, or as its sizes say when no shape is written."""
    if "corners" in data:
        by_sizes = CenterShape.CORNERS
    elif "sides" in data:
        by_sizes = CenterShape.POLYGON
    elif {"cut_wide", "cut_long"} & data.keys():
        by_sizes = CenterShape.RECTANGLE
    else:
        by_sizes = CenterShape.SQUARE
    return str(data.get("shape", by_sizes.value))
