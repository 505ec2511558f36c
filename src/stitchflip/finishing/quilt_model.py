"""Blocks joined into one piece, and what goes round them. Inches, taped, from the middle of the whole piece."""

from __future__ import annotations

from stitchflip.piecing.model import Point, Polygon
from stitchflip.values import dataclass


@dataclass(frozen=True, slots=True)
class PlacedBlock:
    """One block where it lies in the quilt."""

    kind: int
    """Index into the kinds of block of the project; 0 when all are alike."""
    row: int
    """From the top, 0 first; on point the blocks between count as rows of their own."""
    column: int
    middle: Point
    turned: float
    """Degrees counter-clockwise: 0, or 45 on point."""
    wide: float
    """Squared up, as joined (after trimming unequal blocks)."""
    high: float


@dataclass(frozen=True, slots=True)
class JoiningStrip:
    """Strips of one kind and length."""

    name: str
    """Such as "flat strip between blocks", "folded strip between rows"."""
    fabric: str
    cut: float
    """Cut width."""
    long: float
    """Cut length."""
    count: int
    """In one quilt."""
    front: tuple[Polygon, ...]
    """Where they show on the front; empty for strips behind."""
    is_pieced: bool = False
    """True: longer than a width of fabric, joined from strips (joins charged)."""


@dataclass(frozen=True, slots=True)
class JoinCheck:
    """One join of two quilted blocks, in section."""

    way: str
    """As the project says it."""
    shows: float
    """What shows between two blocks on the front."""
    gap: float
    """Between the raw edges of the two blocks; below zero they overlap."""
    passes: float
    """How far the cover passes the far stitching; meaningful for folded and covered joins."""
    filler: float
    """Width of the strip of batting laid between; 0 for none."""
    loft: float
    seam: float


@dataclass(frozen=True, slots=True)
class SettingTriangles:
    """Triangles round blocks on point."""

    fabric: str
    side_count: int
    side_square: float
    """Square cut twice from corner to corner, four triangles each, long side on the straight grain."""
    side_squares: int
    corner_count: int
    corner_square: float
    """Square cut once, two triangles each."""
    corner_squares: int
    exact_side: float
    exact_corner: float
    places: tuple[Polygon, ...]
    """As they show on the front."""
    side_cut: float = 0.0
    """Cut of the fabric for a side square: it is quilted whole, drawn in by that, and squared up to `side_square`."""
    corner_cut: float = 0.0
    """The same of a corner square."""


@dataclass(frozen=True, slots=True)
class BorderPlan:
    """One border, from the inside out."""

    fabric: str
    cut: float
    corners: str
    """As the project says it."""
    sides_long: float
    """Cut length of the two side strips, sewn first."""
    ends_long: float
    """Cut length of the strips at top and bottom."""
    corner_fabric: str
    corner_square: float
    """Cut size of the four corner squares; 0 for none."""
    front: tuple[Polygon, ...]
    corner_places: tuple[Polygon, ...] = ()
    cut_along: str = "none"
    """Strips that are cut along the fabric, whole, as the project says it: "none", "the sides", "all"."""


@dataclass(frozen=True, slots=True)
class Under:
    """Batting and backing that a quilt takes besides the bases of its blocks."""

    name: str
    count: int
    """In one quilt."""
    batting: Point
    """Wide and long as cut."""
    backing: Point | None
    """The same of the backing; None when it needs none of its own."""


@dataclass(frozen=True, slots=True)
class Layout:
    """One way to lay so many blocks."""

    across: int
    down: int
    left_over: int
    wide: float
    high: float
    backing: str
    """The backing that it needs, in words."""


@dataclass(frozen=True, slots=True)
class QuiltPlan:
    """The whole piece made of joined blocks."""

    wide: float
    high: float
    outline: Polygon
    """Squared up, all round; a rectangle."""
    blocks: tuple[PlacedBlock, ...]
    join: JoinCheck
    strips: tuple[JoiningStrip, ...]
    triangles: SettingTriangles | None
    borders: tuple[BorderPlan, ...]
    layouts: tuple[Layout, ...]
    """Other ways to lay the same blocks, the most even proportion first."""
    trimmed_to: tuple[float, float] | None
    """Blocks of unequal size are trimmed to this, wide x high; None when nothing is trimmed."""
    repairs: tuple[str, ...]
    """What can be done with unequal blocks, the chosen way first, each with the size it gives, in words."""
    words: tuple[str, ...] = ()
    """How it is joined and bordered, one sentence each, with its numbers."""
    under: tuple[Under, ...] = ()
    """Bases of setting triangles, batting and backing of borders, fillers between blocks."""
