"""Numbers round the build: base, squaring up, backing, batting, binding. Inches; taped where said."""

from __future__ import annotations

from stitchflip.piecing.model import Point, Polygon
from stitchflip.values import dataclass


@dataclass(frozen=True, slots=True)
class BasePlan:
    """The base to cut, and where the first piece goes."""

    wide: float
    """x extent as cut, flat."""
    high: float
    """y extent as cut, flat."""
    least_wide: float
    """Before rounding."""
    least_high: float
    is_given: bool
    """True: the maker gave the size."""
    first_piece: Polygon
    """Placement of the first piece's raw edges, flat, from the center mark."""
    marks: tuple[tuple[str, float], ...]
    """(axis "x" or "y", place): center lines and a line every 4 in (10 cm), to draw on the base."""
    spare_x: float
    """Spare per side beyond the flat trim edge, left and right."""
    spare_y: float


@dataclass(frozen=True, slots=True)
class SideNumber:
    """One edge of the squared-up piece."""

    name: str
    normal: Point
    distance: float
    """From the center mark, square to the edge, taped."""
    length: float
    is_curve: bool = False
    """True for (a place on) the edge of a round or oval piece; its length is that of the whole curve."""


@dataclass(frozen=True, slots=True)
class PointNumber:
    """Margin beyond one point of the center."""

    name: str
    to_edge: float
    """Taped, to the trim edge."""
    shown: float
    """After binding."""


@dataclass(frozen=True, slots=True)
class SquareUpPlan:
    """The planned numbers for squaring up (taped)."""

    wide: float
    high: float
    """x and y extents."""
    sides: tuple[SideNumber, ...]
    points: tuple[PointNumber, ...]
    diagonals: tuple[float, ...]
    """Corner to opposite corner through the middle, where that makes sense."""
    corners: Polygon
    area: float
    perimeter: float
    folded: str
    """The small-mat way in one sentence with numbers, or "" when the piece fits the mat."""
    curve: str = ""
    """How to mark and cut a curved edge or rounded corners, with numbers; "" when all edges are straight."""


@dataclass(frozen=True, slots=True)
class BackingChoice:
    """One way to get the backing."""

    way: str
    """"one width", "pieced across", "pieced along", "108 in wide"."""
    widths: int
    """Number of widths joined."""
    length_in: float
    """Fabric length, straightening included."""
    buy_in: float
    seam_in: float
    seams_at: tuple[float, ...]
    """Where seams lie from the center line (empty for one width)."""
    how_many_wide: int
    """Bases that lie side by side in one width."""
    remark: str
    seam_axis: str = ""
    """"x": the seams are lines x = place; "y": lines y = place; "" without a seam."""
    panels: tuple[float, ...] = ()
    """Cut widths of the panels joined, in order along the seam axis; empty for one width."""


@dataclass(frozen=True, slots=True)
class BackingPlan:
    """Backing: the best way and the losers."""

    fabric: str
    wide: float
    high: float
    best: BackingChoice
    others: tuple[BackingChoice, ...]
    usable_width: float


@dataclass(frozen=True, slots=True)
class BattingPlan:
    """Batting: size to cut, and how leftovers make it."""

    wide: float
    high: float
    pieces: tuple[str, ...]
    """What it is made of, in words (one piece, or butted leftovers)."""
    join_at: float | None
    """Place of the join from the center line, if joined."""
    join_axis: str
    """"x" or "y"; "" if not joined."""
    short: float
    """Missing length; 0 when on-hand pieces are enough or it is bought."""
    joins_at: tuple[float, ...] = ()
    """Places of all joins from the center line; `join_at` is the one nearest to it."""
    packaged: str = ""
    """Smallest packaged batting that holds what is to be bought, in words; "" when none is large enough."""


@dataclass(frozen=True, slots=True)
class BindingCorner:
    """A corner of the binding."""

    angle: float
    """Inside angle of the piece, degrees."""
    stop_before: float
    """Stop the seam this far from the corner, inches."""


@dataclass(frozen=True, slots=True)
class BindingPlan:
    """Double-fold binding; without strips when the edge is finished in another way."""

    fabric: str
    cut: float
    seam: float
    perimeter: float
    need: float
    """Per piece: perimeter, tails, corners."""
    strips_per_piece: int
    strips: int
    """For all pieces together, each joined on its own; on the bias one from each square."""
    made: float
    """Length joined per piece after diagonal joins."""
    strip_length: float
    shows_on_back: float
    passes_stitching: float
    corners: tuple[BindingCorner, ...]
    start_at: str
    """Where to start, in words with numbers."""
    joins_at: tuple[float, ...]
    """Places of the joins along the edge from the start, inches."""
    bound: int
    """No fewer strips than this can do."""
    least_cut: float = 0.0
    """Narrowest cut width that passes the stitching on the back by as much as wished."""
    rule_cut: float = 0.0
    """Cut width by the rule "4F + 1" for the same front."""
    rule_passes: float = 0.0
    """By how much a binding cut to that rule passes the stitching."""
    strip_lengths: tuple[float, ...] = ()
    """Strips of one piece in the order they are joined."""
    grain: str = "straight"
    """"straight" or "bias"; bias strips come from squares, which are pieces of the edge's plan."""
    pieces: int = 1
    """Pieces of one base, each with a binding of its own: its panels when it is cut apart."""
