"""Rectangles out of rectangles with edge-to-edge cuts, in whole units: what is asked, and what is answered.

A rotary cutter cuts from edge to edge, so a cutting plan is told in the order of the hand:

    sheet   one piece of fabric, or a length from the bolt;
    strip   cut across the full width of the sheet (first cut);
    stack   cut off the strip, as high as the strip (second cut);
    bit     one piece; with three stages several lie over one another in a stack (third cut).

With two stages a stack holds one bit. Where trimming is allowed a bit may be smaller than the room it is cut from:
one more cut brings it to size. Lengths are whole numbers (sixteenths of an inch, millimeters, whatever the caller
counts in), so sums are exact.
"""

from __future__ import annotations

from enum import StrEnum

from stitchflip.cutting.model import Status
from stitchflip.values import dataclass


class Aim(StrEnum):
    """What is as small, or as large, as possible."""

    LENGTH = "length"
    """One sheet of open length: the length used."""
    COST = "cost"
    """Sheets of given sizes: the cost of those that are cut."""
    VALUE = "value"
    """Sheets of given sizes and number, not everything need be cut: the value of what is."""


class FirstCut(StrEnum):
    """Which way the first cuts of a sheet go."""

    ACROSS = "across"
    """Across its full width."""
    ALONG = "along"
    """Along its full length."""
    EITHER = "either"
    """As is better, sheet by sheet."""


@dataclass(frozen=True, slots=True)
class Want:
    """Equal pieces."""

    wide: int
    """Across the sheet, as given."""
    long: int
    """Along the sheet, as given."""
    count: int
    """How many; with `Aim.VALUE` at most so many."""
    can_turn: bool = False
    """True: may be turned a quarter."""
    value: int = 0
    """Worth of one, for `Aim.VALUE`."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """Equal pieces of fabric to cut from."""

    wide: int
    long: int | None
    """None: open, as long as it takes (one sheet, `Aim.LENGTH`)."""
    count: int | None = 1
    """How many there are; None: as many as it takes."""
    cost: int = 0
    """Of cutting into one, for `Aim.COST`."""


@dataclass(frozen=True, slots=True)
class LayoutTask:
    """What is wanted from what."""

    wants: tuple[Want, ...]
    sheets: tuple[Sheet, ...]
    aim: Aim = Aim.LENGTH
    stages: int = 2
    """2, 3, or 0 for as many as it takes (solved with 3, bounded for any)."""
    trims: bool = True
    """One more cut may bring a bit to size. False: bits fill the height of the strip (two stages) or the width of the
    stack and the height of the strip, waste at the ends apart (three stages)."""
    same_stack: bool = False
    """Three stages: all bits of one stack are equal and laid one way; wants of equal measures count as one."""
    step: int = 1
    """Fabric is bought in steps of so many units: values that round up to the same step are equally good, and a plan
    is proved when plan and bound round up to the same one. 1 when every unit counts."""
    tallest_strip: int | None = None
    """No strip is cut taller (the longest cut ruler and mat take); None: any height."""
    first_cut: FirstCut = FirstCut.ACROSS
    """With `Aim.LENGTH` always across."""


@dataclass(frozen=True, slots=True)
class Bit:
    """One piece as it lies."""

    want: int
    """Number of its want."""
    turned: bool = False
    """A quarter, against the sheet (not against the strip: a sheet cut along turns nothing)."""


@dataclass(frozen=True, slots=True)
class Stack:
    """A part of a strip: bits over one another, the first at the strip's lower edge."""

    wide: int
    bits: tuple[Bit, ...]


@dataclass(frozen=True, slots=True)
class LaidStrip:
    """One cut across the sheet and what it gives, from the left."""

    high: int
    stacks: tuple[Stack, ...]


@dataclass(frozen=True, slots=True)
class Layout:
    """One sheet and its strips, from its lower edge."""

    sheet: int
    """Number of its kind."""
    strips: tuple[LaidStrip, ...]
    times: int = 1
    """So many sheets are cut this way."""
    along: bool = False
    """True: the first cuts go along the sheet. Look at it from its side: wide and long of the sheet and of every bit
    change places, and the strips lie as always (their heights add up across the sheet's width)."""

    @property
    def used(self) -> int:
        """Heights of its strips together."""
        return sum(strip.high for strip in self.strips)


@dataclass(frozen=True, slots=True)
class Answer:
    """The best plan found and how sure it is."""

    status: Status
    layouts: tuple[Layout, ...]
    value: int
    """Length, cost or value of the plan, by the task's aim; 0 when there is none."""
    bound: int
    """No plan of this kind (its stages and trimming) is shorter or cheaper; for `Aim.VALUE`: none is worth more."""
    because: str = ""
    """Why there is no plan, or why the search ended early."""
    seconds: float = 0.0

    def gap(self) -> float:
        """Distance between plan and bound as part of the bound; 0 when proved."""
        return abs(self.value - self.bound) / self.bound if self.bound else 0.0
