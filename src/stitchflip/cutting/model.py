"""The cutting vocabulary: piece, stock, cut, leftover. Inches throughout."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


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


@dataclass(frozen=True, slots=True)
class Row:
    """One full-width row of rectangles."""

    height: float
    pieces: tuple[tuple[str, float], ...]
    """(label, width used) left to right."""
    turned: bool


@dataclass(frozen=True, slots=True)
class TippingPoint:
    """What changes the count."""

    what: str
    """Sentence in the maker's words with numbers in her unit."""
    slack_in: float


@dataclass(frozen=True, slots=True)
class FabricPlan:
    """Everything about one fabric: strips, rows, purchase."""

    fabric: str
    usable_width: float
    strip_plans: tuple[StripPlan, ...]
    rows: tuple[Row, ...]
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
