"""The order of the hand as values: every cut with what the ruler is set to, what it gives, and what remains.

Every number here is one that is printed: cut sizes are rounded as the cutting list rounds them, and what remains is
what remains after the rounded cuts. So whoever follows the printed order gets every piece, and no more fabric is
promised than there is.
"""

from __future__ import annotations

from enum import StrEnum

from stitchflip.values import dataclass

NEW_FABRIC = "new fabric"
"""Where a cut is made that is made from what is bought."""


class Act(StrEnum):
    """What is done in one step."""

    WASH = "wash"
    """What is bought is washed and dried before it is cut."""
    STRAIGHTEN = "straighten"
    """The first cut end of a length, or two neighboring sides of a piece on hand."""
    COLUMN = "column"
    """A part of a piece on hand is cut off first and stays whole for the shelf."""
    ACROSS = "across"
    """Rows or strips across the whole fabric, one after the other at one setting."""
    TAKE = "take"
    """Precut strips from the shelf."""
    SUBCUT = "subcut"
    """Pieces off a row or a strip."""
    LABEL = "label"
    """Strips that are as long as their piece: nothing is cut, they are labeled."""
    KEEP = "keep"
    """Strips stay whole: joined, or trimmed while sewing."""


@dataclass(frozen=True, slots=True)
class Given:
    """Equal pieces that a cut gives, as cut."""

    label: str
    """Name of the piece as in the cutting list."""
    wide: float
    long: float
    count: int
    is_slanted: bool = False
    """True: cut out of what the cut gives, on the slant."""
    has_motif: bool = False
    """True: a motif is looked for in the row, and what the cut gives lies round it."""


@dataclass(frozen=True, slots=True)
class Part:
    """Cuts at one setting: so many parts, each of which is a piece or is cut further the other way."""

    measure: float
    """What the ruler is set to."""
    count: int
    gives: tuple[Given, ...] = ()
    """Pieces, when nothing more is cut off; of all rows or strips of the step together."""
    then: tuple[Part, ...] = ()
    """Cuts the other way, into each of the parts."""
    room: float = 0.0
    """How far the part reaches the other way before it is cut further."""

    @property
    def is_slanted(self) -> bool:
        """True when pieces are cut out of it on the slant."""
        return any(given.is_slanted for given in self.gives)

    def pieces(self) -> tuple[Given, ...]:
        """What it gives, at every depth."""
        return (*self.gives, *(given for part in self.then for given in part.pieces()))


@dataclass(frozen=True, slots=True)
class Leftover:
    """Fabric that is left and worth keeping."""

    name: str
    wide: float
    """Across the fabric; of a strip its cut width."""
    long: float
    count: int
    step: int
    """The step after which it lies there."""


@dataclass(frozen=True, slots=True)
class OrderStep:
    """One step of the order."""

    number: int
    act: Act
    source: str
    """The piece of fabric: `NEW_FABRIC`, or its name on the shelf."""
    what: str = ""
    """"row" or "strip"; "" where it is the fabric itself."""
    wide: float = 0.0
    """Height of the row or cut width of the strip."""
    long: float = 0.0
    """How long the row or strip is, across the fabric."""
    numbers: tuple[int, ...] = ()
    """Which rows, or which strips of this width; 1 for the first."""
    parts: tuple[Part, ...] = ()
    """The settings of the ruler, the same in each of the rows or strips."""
    cut_in: float = 0.0
    """How long each cut is, opened out."""
    folds: int = 0
    """How often the fabric is folded for it."""
    before: tuple[float, float] = (0.0, 0.0)
    """Across and along of the fabric before the step."""
    left: tuple[float, float] = (0.0, 0.0)
    """What remains: of the fabric, across and along; of a row or strip, wide and long of its end."""
    purpose: str = ""
    """What strips that stay whole are for."""

    @property
    def folded_in(self) -> float:
        """How long each cut is as the fabric lies folded."""
        return self.cut_in / float(1 << self.folds)

    @property
    def gives(self) -> tuple[Given, ...]:
        """All pieces that the step gives."""
        return tuple(given for part in self.parts for given in part.pieces())


@dataclass(frozen=True, slots=True)
class CuttingOrder:
    """Everything that is cut from one fabric, step by step."""

    fabric: str
    steps: tuple[OrderStep, ...]
    leftovers: tuple[Leftover, ...]
    is_finer: bool = False
    """True: some sizes are cut to a finer grid than the cutting list prints, because they fit no other way."""
