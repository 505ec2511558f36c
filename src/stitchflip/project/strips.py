"""How the strips go on, which they are, and what was measured while they were sewn."""

from typing import Annotated

from pydantic import Field

from stitchflip.project.kinds import NUMBER, Corner, Measure, Model, Name, Place, Side, Size, Turn, reads
from stitchflip.project.words import (
    FabricOrder,
    LinesSeen,
    PairFirst,
    ReadBy,
    RowsFrom,
    RowsRun,
    StripEnds,
    Turning,
    Way,
    Widths,
)

MOST_STRIPS = 3000
"""No piece has more strips; more is a slip."""


Angle = Annotated[float, Field(ge=0, le=45, allow_inf_nan=False), NUMBER]
"""Degrees of a slant."""


class Building(Model):
    """How the strips go on."""

    way: Annotated[Way, reads(Way)] = Field(default=Way.LOG_CABIN, description="Way of building.")
    start: Side | None = Field(
        default=None,
        description='Side of the first strip: top, right, bottom, left, upper right ...; or "side 3" of a polygon.',
    )
    turning: Annotated[Turning, reads(Turning)] = Field(
        default=Turning.CLOCKWISE,
        description="Which way the strips go round, seen from the right side; those of a string block rise to the "
        "right (clockwise) or to the left.",
    )
    first_pair: tuple[Side, Side] = Field(
        default=("top", "bottom"),
        description="Courthouse steps, corner squares: the two opposite sides sewn first in a round.",
    )
    strips_per_visit: Annotated[int, Field(ge=1, le=10), NUMBER] = Field(
        default=1, description="Courthouse steps: strips sewn to a side before going on to the next."
    )
    pair_first: Annotated[PairFirst, reads(PairFirst)] = Field(
        default=PairFirst.UPPER,
        description="Pairs round the point: the right pair, then the left pair; which strip of a pair goes first. "
        "Chevron: which leg, the right one being the upper.",
    )
    one_ended: bool = Field(
        default=False, description="Pairs round the point: only the right pair of each round is sewn."
    )
    rows_run: Annotated[RowsRun, reads(RowsRun)] = Field(
        default=RowsRun.ACROSS, description="Rows of strips: which way the strips lie."
    )
    rows_from: Annotated[RowsFrom, reads(RowsFrom)] = Field(
        default=RowsFrom.MIDDLE, description="Rows of strips: where they begin."
    )
    slant: Turn = Field(
        default=45.0,
        description="Slanted rows, braid, chevron: degrees of the strips from level, counter-clockwise.",
    )
    widths: Annotated[Widths, reads(Widths)] = Field(
        default=Widths.LISTED,
        description="Where the widths of the strips come from: the rounds, or the pieces on hand of their fabrics.",
    )
    strip_ends: Annotated[StripEnds, reads(StripEnds)] = Field(
        default=StripEnds.STRAIGHT, description="How the ends of strips are cut before sewing."
    )
    corners: Annotated[tuple[Side, ...], Field(max_length=24)] = Field(
        default=(), description="Stitch-and-flip corners: which corners, in the order sewn; left out, all of them."
    )
    seed: Annotated[int, Field(ge=0, le=10**9), NUMBER] = Field(
        default=1, description="Wonky strips: another number slants them another way, the same number the same way."
    )
    smallest_angle: Angle = Field(default=4.0, description="Wonky strips: least slant against the edge, degrees.")
    largest_angle: Angle = Field(default=14.0, description="Wonky strips: most slant, degrees.")
    no_sliver_under: Size | None = Field(
        default=None, description="Wonky strips: no strip shows less than this at its narrow end."
    )
    lines_seen: Annotated[LinesSeen, reads(LinesSeen)] = Field(
        default=LinesSeen.FRONT,
        description="Numbered foundation: the lines as the finished front shows them, or as they are drawn on the back "
        "you sew from (mirrored).",
    )
    until_covered: bool = Field(
        default=False,
        description="Repeat the rounds until the base is covered; strips that would cover nothing bare are skipped.",
    )


class Round(Model):
    """One round (or, in rows, one strip on each side)."""

    cut: Size | None = Field(default=None, description="Cut width of its strips.")
    cuts: Annotated[tuple[Size, ...], Field(max_length=100)] | None = Field(
        default=None, description="Instead of cut: the cut width of each strip, in the order sewn."
    )
    fabric: Name | None = Field(default=None, description="Name of the fabric of its strips.")
    fabrics: Annotated[tuple[Name, ...], Field(max_length=100)] | None = Field(
        default=None, description="Instead of fabric: names in turn over the strips of the round, in the order sewn."
    )
    cut_long: Size | None = Field(
        default=None, description="Cut length you want for every strip of the round; left out, it is computed."
    )
    corner_fabric: Name | None = Field(
        default=None, description="Rounds with corner squares: name of the fabric of the squares."
    )


class Patch(Model):
    """One patch of a numbered foundation, in the order sewn."""

    fabric: Name = Field(description="Name of its fabric.")
    line: tuple[Corner, Corner] | None = Field(
        default=None,
        description="Two places on the line it is sewn along: right of and above the center mark, in the project's "
        "unit. The first patch has none.",
    )
    at: Corner | None = Field(default=None, description="First patch: a place inside it; left out, the center mark.")


class Step(Model):
    """One strip of "sides in my order"."""

    side: Side = Field(description="The side it is sewn to.")
    cut: Size = Field(description="Its cut width.")
    fabric: Name | None = Field(default=None, description="Name of its fabric.")


class Reading(Model):
    """Where a raw edge really is, measured after a step."""

    after: Annotated[int, Field(ge=0, le=MOST_STRIPS), NUMBER] = Field(
        description="Strip after which you measured; 0 = the first piece alone."
    )
    side: Side = Field(description="The side you measured.")
    edge: Measure = Field(description="From the center mark, square to the side, to its raw edge.")
    along: Place | None = Field(
        default=None,
        description="Place along the side, in the project's unit from the foot of the center mark; two places give a "
        "slant.",
    )
    by: Annotated[ReadBy, reads(ReadBy)] = Field(
        default=ReadBy.TAPE, description="With a tape on the sewn piece, or off the marks drawn on the base."
    )


class ShortStrip(Model):
    """A strip that was cut shorter than its place needs, as it was sewn."""

    step: Annotated[int, Field(ge=1, le=MOST_STRIPS), NUMBER] = Field(description="Which strip, in the order sewn.")
    long: Size = Field(description="How long it was cut.")
    from_start: Measure | None = Field(
        default=None,
        description="How far its first end stays inside the full one; left out, it lies in the middle.",
    )


class FabricRule(Model):
    """The eye's rules, applied to rounds that name no fabric."""

    order: Annotated[FabricOrder, reads(FabricOrder)] = Field(
        default=FabricOrder.IN_TURN, description="Where each fabric goes."
    )
    fabrics: Annotated[tuple[Name, ...], Field(max_length=200)] = Field(
        default=(), description="Names of the fabrics to choose from; left out, all of them."
    )
    seed: Annotated[int, Field(ge=0, le=10**9), NUMBER] = Field(
        default=1, description="Shuffled: another number shuffles another way, the same number the same way."
    )
    none_next_to_itself: bool = Field(default=False, description="No fabric touches itself.")
    light_sides: Annotated[tuple[Side, ...], Field(max_length=24)] = Field(
        default=(), description="Light and dark halves: these sides take the light fabrics, the others the dark ones."
    )
    accent: Name | None = Field(default=None, description="Name of a fabric that flashes up now and then.")
    accent_every: Annotated[int, Field(ge=1, le=100), NUMBER] | None = Field(
        default=None, description="Every so many strips one is the accent."
    )
