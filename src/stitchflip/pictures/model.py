"""Figures as lists of primitives in inches, measured before they are drawn. y grows upward; writers flip it."""

from __future__ import annotations

from dataclasses import dataclass

from stitchflip.piecing.model import Point


@dataclass(frozen=True, slots=True)
class Pen:
    """How a line looks; width in points on paper (never scaled)."""

    color: str = "#22262b"
    width: float = 0.6
    dash: str = ""
    """"" solid, "seam" stitches, "raw" raw edge, "fold", "hidden"."""


@dataclass(frozen=True, slots=True)
class Area:
    """A filled polygon."""

    points: tuple[Point, ...]
    fill: str
    hatch: int | None = None
    """Hatch index for gray print; None for plain."""
    pen: Pen | None = None
    title: str = ""


@dataclass(frozen=True, slots=True)
class Line:
    """A polyline."""

    points: tuple[Point, ...]
    pen: Pen = Pen()
    arrow: bool = False
    """Arrow head at the last point."""


@dataclass(frozen=True, slots=True)
class Text:
    """Text; size in points on paper (never scaled)."""

    at: Point
    text: str
    size: float = 8.0
    angle: float = 0.0
    """Degrees counter-clockwise."""
    anchor: str = "middle"
    """"start", "middle", "end"."""
    bold: bool = False
    color: str = "#22262b"
    halo: bool = False
    """White halo so that it reads over fabric."""


@dataclass(frozen=True, slots=True)
class Knot:
    """The mark at a seam end to lock."""

    at: Point


Primitive = Area | Line | Text | Knot


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
