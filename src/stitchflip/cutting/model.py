"""The cutting vocabulary: piece, stock, cut, leftover. Inches throughout."""

from __future__ import annotations

from enum import StrEnum

from stitchflip.values import dataclass


class Status(StrEnum):
    """How sure an answer is."""

    PROVED = "proved"
    BEST_FOUND = "best found"
    IMPOSSIBLE = "impossible"


@dataclass(frozen=True, slots=True)
class Piece:
    """Something to cut, as cut. Strips: `wide` is the strip's cut width, `long` its cut length."""

    name: str
    """Label such as "7" (step) or "Center" or "Binding"."""
    wide: float
    long: float
    count: int = 1
    kind: str = "strip"
    """"strip" (from full-width or precut strips), "rectangle", or "binding" (whole strips, joined)."""
    shortest: float = 0.0
    """Shortest that still reaches (trim as you go); 0 = long."""
    step: int = 0
    """Sewing order; 0 for what is not sewn as a strip."""
    finished: str = ""
    """Finished size as text, for the list."""
    can_turn: bool = True
    cut_first: bool = True
    window: tuple[float, float] | None = None
    """Fabric it takes, wide and long, when it is cut on the slant from upright fabric; None: as wide and long."""

    last_long: float = 0.0
    """Whole strips that are joined: what one strip of each joined length need only give when all others are whole;
    0 = whole too."""

    last_count: int = 1
    """How many joined lengths there are, each with such a strip of its own."""

    motif_in: float = 0.0
    """Length kept free beside it so that one whole motif surely lies in the row, wherever the print begins."""

    block_in: float = 0.0
    """Length of one block of the full width that holds all its windows round motifs; 0: each has a row's place."""

    @property
    def takes(self) -> tuple[float, float]:
        """Fabric it takes, wide and long."""
        wide, long = self.window or (self.wide, self.long)
        return wide, long + self.motif_in


@dataclass(frozen=True, slots=True)
class JoinedLength:
    """Long lengths made of strips joined end to end, such as bindings; each piece that is bound has its own."""

    name: str
    """Label of the piece its strips are listed as."""
    need: float
    """Length of one, tails and corners in it."""
    join: float
    """What one join takes off: the cut width when it is diagonal, two seams when it is straight."""
    count: int = 1
    """How many; none of them lends another its joins."""


@dataclass(frozen=True, slots=True)
class StripPiece:
    """One length wanted from strips of one width."""

    label: str
    length: float
    step: int = 0
    """Sewing order; 0 for what is not sewn as a strip."""


@dataclass(frozen=True, slots=True)
class StripStock:
    """Strips to cut from, all of one usable length."""

    name: str
    """"width of fabric", or the name of what is on hand."""
    length: float
    """Usable length of each strip."""
    count: int | None = None
    """How many there are on hand; None: bought, as many as it takes."""


@dataclass(frozen=True, slots=True)
class OneStrip:
    """One strip of stock and what it gives."""

    width: float
    length: float
    """Usable length of the strip."""
    pieces: tuple[tuple[str, float], ...]
    """(label, length) in the order cut."""
    stock: str
    """"width of fabric", or the on-hand piece's name."""
    rest: float


@dataclass(frozen=True, slots=True)
class HandStep:
    """One piece taken from the strip in the hand, in sewing order."""

    step: int
    """Sewing step the piece is for."""
    piece: str
    """Label of the piece."""
    strip_number: int
    """Strip of this width it comes from, 1 for the first one opened."""
    length: float
    """What is used up when it is trimmed right at the shortest that reaches."""
    rest_before: float
    rest_after: float
    opens_new: bool
    """True: a fresh strip is opened for it."""


@dataclass(frozen=True, slots=True)
class StripPlan:
    """Strips of one width of one fabric."""

    width: float
    strips: tuple[OneStrip, ...]
    bound: int
    """No cutting plan needs fewer strips than this."""
    status: Status
    as_you_go: bool
    """True: lengths are the shortest that reach, trimmed after sewing."""
    spare_in: float
    """Smallest rest among the strips: what each may be shorter before one more is needed (0 = nothing)."""
    hand_steps: tuple[HandStep, ...] = ()
    """Trim as you go: where each piece comes from, in sewing order."""
    is_whole: bool = False
    """True: whole strips to be joined (binding), nothing is cut from their length."""
    new_bound: int = 0
    """No cutting plan buys fewer strips than this; equal to `bound` when none are on hand."""
    left_out: tuple[StripPiece, ...] = ()
    """Pieces no strip can give: longer than every strip, or nothing may be bought and the shelf is used up."""


@dataclass(frozen=True, slots=True)
class StackPiece:
    """One piece where it lies in a row that is cut closer, as cut."""

    label: str
    across: float
    """Across the fabric."""
    along: float
    """Along the fabric."""


@dataclass(frozen=True, slots=True)
class RowStack:
    """A part of a row, as high as the row: its pieces lie over one another, the first at the cut of the row before."""

    wide: float
    """Room across the fabric that is subcut first; each piece is then cut off it and trimmed."""
    pieces: tuple[StackPiece, ...]


@dataclass(frozen=True, slots=True)
class Row:
    """One full-width row of rectangles."""

    height: float
    pieces: tuple[tuple[str, float], ...]
    """(label, width used) left to right."""
    turned: bool
    """True when its tallest piece is turned a quarter from the way its size is given (wide × long)."""
    stacks: tuple[RowStack, ...] = ()
    """Where each piece lies, when pieces of different heights share the row (cutting closer); else empty."""

    @property
    def filled(self) -> float:
        """What its pieces take of its length."""
        return sum(stack.wide for stack in self.stacks) or sum(across for _, across in self.pieces)


@dataclass(frozen=True, slots=True)
class HandSheet:
    """One piece of fabric on hand and what is cut from it. Strips and rows lie along its `along` side."""

    name: str
    """Name with its number when there are several, such as "fat quarter 2"."""
    wide: float
    long: float
    along: str
    """Side the strips run along: "wide" or "long"."""
    usable_length: float
    """Length of a strip after straightening."""
    usable_stack: float
    """Room for strips and rows side by side after straightening."""
    strips: tuple[tuple[float, int], ...]
    """(cut width, how many), widest first."""
    rows: tuple[Row, ...]
    used_in: float
    """Room taken by strips and rows."""
    column_left_in: float
    """Width of the column left beside the pieces at the end of the strips, as measured; 0 if none runs through."""


@dataclass(frozen=True, slots=True)
class TippingPoint:
    """What changes the count."""

    what: str
    """Sentence in the maker's words with numbers in her unit."""
    slack_in: float
    """How far away the change is."""
    change: str = ""
    """What would change: the fabric "narrower" or "wider", the pieces "longer" or "shorter", or the "purchase"."""


@dataclass(frozen=True, slots=True)
class FabricPlan:
    """Everything about one fabric: strips, rows, purchase."""

    fabric: str
    usable_width: float
    strip_plans: tuple[StripPlan, ...]
    rows: tuple[Row, ...]
    """Rows cut from the new purchase."""
    losing_rows_in: float | None
    """Length the other way of laying the rectangles would take; None if there is no other."""
    used_in: float
    """Length of fabric the cuts take, without straightening."""
    straightening_in: float
    need_in: float
    """used + straightening, from a new purchase (0 when the shelf is enough)."""
    buy_in: float
    spare_in: float
    """buy - need."""
    bound_in: float
    """No cutting plan of this kind needs less than this (before rounding)."""
    status: Status
    tipping_points: tuple[TippingPoint, ...]
    from_hand: tuple[str, ...]
    """What is taken from fabric on hand, in words."""
    short_in: float
    """When nothing can be bought: how much length is missing; else 0."""
    miscuts: int
    """How many further strips of the widest width the purchase survives."""
    hand_sheets: tuple[HandSheet, ...] = ()
    """Fabric on hand that is cut, piece by piece."""
    turning_is_refused: bool = False
    """True: the losing way of laying is not allowed (a one-way print), whatever it would save."""
    spare_strip_buy_in: float = 0.0
    """What to buy so that one further strip of the widest width is there; buy_in when it is there already."""
    fits_fat_quarter: bool = False
    """True: one fat quarter of the usual size gives everything that would be bought."""
    left_out: tuple[str, ...] = ()
    """Labels of pieces this fabric cannot give."""
    because: str = ""
    """Why pieces are left out, one sentence; "" when none is."""

    @property
    def has_nothing_to_spare(self) -> bool:
        """True when the purchase is used up to the last 1/16 in."""
        return self.buy_in > 0 and self.spare_in < 1 / 16 - 1e-6
