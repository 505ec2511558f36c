"""What the kernel hands out: a build and its strips, in the flat frame unless a name says taped.

Frame: inches, origin at the base's center mark, x across, y up, face up. Polygons are convex unless said,
counter-clockwise, not closed.
"""

from __future__ import annotations

from enum import StrEnum
from math import hypot

from stitchflip.values import dataclass

Point = tuple[float, float]
Polygon = tuple[Point, ...]


class EndClass(StrEnum):
    """What holds the end of a seam."""

    CROSSED = "crossed"
    CAUGHT = "caught"
    LOOSE = "loose"


@dataclass(frozen=True, slots=True)
class SeamEnd:
    """One end of a seam."""

    at: Point
    kind: EndClass
    crossed_by: int | None = None
    """Step whose seam locks this end."""
    is_hidden: bool = False
    """Loose, and under later fabric."""


@dataclass(frozen=True, slots=True)
class Seam:
    """A seam line as sewn; travel from `start` to `end` keeps the bulk on the left of the needle."""

    normal: Point
    """Unit normal, outward, flat frame."""
    at: float
    """Distance of the seam line from the center mark along `normal`; inches, flat."""
    start: SeamEnd
    end: SeamEnd

    @property
    def length(self) -> float:
        """Stitched length, inches, flat."""
        (x0, y0), (x1, y1) = self.start.at, self.end.at
        return hypot(x1 - x0, y1 - y0)


@dataclass(frozen=True, slots=True)
class Section:
    """A stretch of a strip that is pieced beforehand from several fabrics."""

    fabric: str
    cut_length: float
    """Along the strip; its width is the strip's."""
    visible: tuple[Polygon, ...]
    shown: tuple[Polygon, ...]
    low: float = 0.0
    """Its two ends along the strip's seam, at the seams that join it; from the foot of the center mark."""
    high: float = 0.0


@dataclass(frozen=True, slots=True)
class SewnPiece:
    """The first piece (step 0) or one strip, with everything the plan says about it."""

    step: int
    round: int
    """1 for the first round; 0 for the first piece."""
    side: str
    """Name of the side it goes on, such as "upper right"; "" for the first piece."""
    fabric: str
    cut_width: float
    normal: Point
    """Outward unit normal of the seam; (0, 1) for the first piece."""
    seam_at: float
    """Seam line from the center mark; for the first piece 0."""
    raw_edge_at: float
    """Outer raw edge from the center mark after this step, flat."""
    raw_edge_taped: float
    seam_taped: float
    opened: Polygon
    """The strip opened, full length (first piece: as cut)."""
    kept: Polygon
    """What of it later steps leave."""
    visible: tuple[Polygon, ...]
    shown: tuple[Polygon, ...]
    full_length: float
    needed_length: float
    """Shortest that reaches."""
    inset_start: float
    inset_end: float
    """How far the needed interval stays inside the full one at each end (start = where sewing starts)."""
    cut_length: float
    reach_start: float
    """Signed place of the needed interval's start along the seam, from the foot of the center mark."""
    reach_end: float
    free_ends: int
    """Ends without a neighbor (0, 1 or 2)."""
    seam: Seam | None
    square_cut: float = 0.0
    """Side of the square it is cut as and sewn from corner to corner; 0 for a strip."""
    sections: tuple[Section, ...] = ()
    """What it is pieced from beforehand, from its start; empty for one fabric."""
    is_start_free: bool = False
    """Its start is an end without a neighbor."""


@dataclass(frozen=True, slots=True)
class BareSpot:
    """A place of the cover outline that no fabric reaches."""

    polygon: Polygon
    grade: str
    """"stop" inside the binding's seam line, "fix" up to the trim edge, "note" outside it."""
    side: str
    step: int
    by: float
    """How far the side most exceeded falls short, inches flat."""
    area: float


@dataclass(frozen=True, slots=True)
class WidestGap:
    """The largest circle between seam lines and trim."""

    center: Point
    diameter: float
    """Taped, inches."""
    step: int


@dataclass(frozen=True, slots=True)
class CenterPoint:
    """A corner of the center as it shows (at the seam lines)."""

    at: Point
    """Flat."""
    to_base_edge: float
    """Flat, inches, to the nearest base edge; negative when it lies beyond."""
    to_trim_edge: float
    """Taped, inches, nearest trim edge."""
    shown: float
    """to_trim_edge less the binding seam."""
    name: str
    """Such as "upper point"."""
    points_at_edge: bool
    """True when the corner points at an edge (on point), so that its margin matters."""


@dataclass(frozen=True, slots=True)
class KernelNote:
    """Something the kernel noticed while building; the plan turns it into a finding."""

    code: str
    step: int
    value: float = 0.0
    side: str = ""
    fabric: str = ""
    width: float = 0.0
    """Cut width of the strips it is about, inches."""


@dataclass(frozen=True, slots=True)
class Build:
    """A whole build: the first piece and the strips in the order sewn."""

    pieces: tuple[SewnPiece, ...]
    trim: Polygon
    """Trim edge, flat."""
    trim_taped: Polygon
    trim_inner: Polygon
    """Binding's seam line, flat."""
    cover: Polygon
    """Trim moved out by the reach, flat."""
    outline: Polygon
    """Outer raw edge of all fabric (cut to a wide box in a run), flat."""
    bare: tuple[BareSpot, ...]
    raw_edges_on_show: tuple[tuple[int, Point, Point], ...]
    """(step, from, to) of visible boundaries that are no seam line."""
    widest_gap: WidestGap
    points: tuple[CenterPoint, ...]
    notes: tuple[KernelNote, ...]
    seam_allowance: float
    """Effective seam a, inches."""
    draw_up: Point
    """Draw-up per direction, fractions (x, y)."""
    first_is_strip: bool
    """True for rows that begin with a strip."""
    first_is_done: bool = False
    """True for a half-done piece that the strips go on round: it is stitched already."""

    @property
    def first_is_middle(self) -> bool:
        """True for a first strip that lies on the center mark; rows from one end begin with one at the edge."""
        nx, ny = self.pieces[0].normal
        across = [nx * x + ny * y for x, y in self.pieces[0].opened]
        return self.first_is_strip and abs(min(across) + max(across)) < 1e-6

    @property
    def strips(self) -> tuple[SewnPiece, ...]:
        """All sewn strips, without the first piece."""
        return self.pieces[1:]
