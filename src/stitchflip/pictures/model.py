"""Figures as lists of primitives in inches of the real thing; what is measured on paper is in points.

A figure says what there is to see and what is written beside it. Where a word finally stands depends on how
large the picture is printed, so words that have room to move say where they would be right (`Label`,
`Dimension`) and the layout (`stitchflip.pictures.sheet`) places them at the size asked for. y grows upward;
the writers turn it over.
"""

from __future__ import annotations

from enum import StrEnum

from stitchflip.pictures.ink import INK
from stitchflip.piecing.model import Point, Polygon
from stitchflip.values import dataclass


class Dash(StrEnum):
    """How a line is broken; each kind means one thing in every picture."""

    SOLID = ""
    SEAM = "seam"
    """Stitches: a seam through the base."""
    RAW = "raw"
    """A raw edge, frayed on its right-hand side as the line travels."""
    FOLD = "fold"
    HIDDEN = "hidden"
    """Lies under fabric."""
    TRIM = "trim"
    """Where the piece will be, or is, cut."""


@dataclass(frozen=True, slots=True)
class Pen:
    """How a line looks; widths in points on paper (never scaled)."""

    color: str = INK
    width: float = 0.6
    dash: Dash = Dash.SOLID
    casing: str = ""
    """Color of a wider line under it, so that it reads on light and dark fabric; "" for none."""


@dataclass(frozen=True, slots=True)
class Area:
    """A filled polygon."""

    points: Polygon
    fill: str
    hatch: int | None = None
    """Hatch index for gray print; None for plain."""
    pen: Pen | None = None
    title: str = ""
    what: str = ""
    """What it stands for: "patch", "base", "binding", "leftover" ..., for whoever counts."""
    step: int | None = None
    """Sewing step of a patch."""


@dataclass(frozen=True, slots=True)
class Line:
    """A polyline."""

    points: tuple[Point, ...]
    pen: Pen = Pen()
    arrow: bool = False
    """Arrow head at the last point."""
    what: str = ""
    step: int | None = None


@dataclass(frozen=True, slots=True)
class Text:
    """Words at a fixed place; size in points on paper (never scaled)."""

    at: Point
    text: str
    size: float = 8.0
    angle: float = 0.0
    """Degrees counter-clockwise."""
    anchor: str = "middle"
    """"start", "middle", "end"."""
    bold: bool = False
    color: str = INK
    halo: bool = False
    """White halo so that it reads over fabric."""
    shift: Point = (0.0, 0.0)
    """Moved this far on paper, points, y up."""
    may_drop: bool = False
    """True: left out where it would touch other words."""
    may_shorten: bool = False
    """True: its end is left out, with "…", where it would touch other words or run off the sheet."""


class NoRoom(StrEnum):
    """What becomes of a label that does not fit its room."""

    LEAD = "lead"
    """Written beside the drawing, with a leader line."""
    DROP = "drop"
    """Left out."""
    LEAD_IF_FEW = "lead if few"
    """Led to while the drawing is high enough for all such labels; else all of them are left out."""


@dataclass(frozen=True, slots=True)
class Label:
    """Words that look for their own place inside `room`."""

    text: str
    room: Polygon
    """Convex; where the words belong."""
    size: float = 7.5
    least: float = 6.0
    """Smallest size to try before a leader line is drawn."""
    angles: tuple[float, ...] = (0.0,)
    """Slants to try at each size, degrees counter-clockwise, the best to read first."""
    bold: bool = False
    tail: str = ""
    """Further words in the plain weight, such as the fabric letter after a strip's number."""
    color: str = INK
    what: str = ""
    step: int | None = None
    no_room: NoRoom = NoRoom.LEAD
    may_lose_tail: bool = False
    """True: written without its tail before it is led to or left out."""


class Begin(StrEnum):
    """How a dimension line begins."""

    TICK = "tick"
    MARK = "mark"
    """At the center mark, which is drawn for itself."""
    BREAK = "break"
    """Outside the picture."""


@dataclass(frozen=True, slots=True)
class Dimension:
    """A measured distance with end ticks."""

    start: Point
    end: Point
    texts: tuple[str, ...]
    """The wording, longest first; the first that fits is taken."""
    away: float = 0.0
    """How far on paper the line stands off, to the left of start to end; points."""
    away_in: float = 0.0
    """Further off by so many inches of the real thing, the same way as `away`."""
    size: float = 7.5
    color: str = INK
    begin: Begin = Begin.TICK


@dataclass(frozen=True, slots=True)
class Knot:
    """The mark at a seam end to lock."""

    at: Point


@dataclass(frozen=True, slots=True)
class CenterMark:
    """The base's center mark."""

    at: Point = (0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Badge:
    """A number in a ring: the order in which something is done."""

    at: Point
    text: str
    shift: Point = (0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Margins:
    """Room round the drawing for what is written beside it; points on paper."""

    left: float = 7.0
    bottom: float = 7.0
    right: float = 7.0
    top: float = 7.0


@dataclass(frozen=True, slots=True)
class Inset:
    """A small picture in the margin, such as the whole piece beside one step."""

    figure: Figure
    wide: float
    """Points; it is drawn as large as fits."""
    high: float
    corner: str = "lower right"
    """"lower right", "lower left", "upper right" or "upper left" of the picture."""


Primitive = Area | Line | Text | Label | Dimension | Knot | CenterMark | Badge | Inset


@dataclass(frozen=True, slots=True)
class Figure:
    """A picture in inches of the real thing; a writer scales it to its place."""

    items: tuple[Primitive, ...]
    low: Point
    """Lower left corner of what must be seen."""
    high: Point
    title: str
    alt: str
    """What a reader who cannot see it needs to know."""
    margins: Margins = Margins()
    width_in: float = 3.0
    """Width on paper it is made for, inches."""
    is_cropped: bool = False
    """True: areas and lines end at low and high."""
