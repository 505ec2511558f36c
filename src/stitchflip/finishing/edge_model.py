"""The edge of the squared-up piece, panels cut apart, and what goes onto the back. Inches, taped unless said."""

from __future__ import annotations

from stitchflip.piecing.model import Point, Polygon
from stitchflip.values import dataclass


@dataclass(frozen=True, slots=True)
class EdgePiece:
    """A piece of fabric that an edge, a sleeve or a label is made of."""

    name: str
    """Such as "Facing of the sides", "Binding square for bias strips", "Sleeve", "Label"."""
    fabric: str
    wide: float
    """Cut, the shorter way (a strip's cut width)."""
    long: float
    """Cut length."""
    count: int
    """For one piece."""


@dataclass(frozen=True, slots=True)
class EdgePlan:
    """How the edge is finished."""

    kind: str
    """As the project says it: "binding", "self-binding", "facing", "turned through"."""
    grain: str
    """"straight" or "bias": how binding strips are cut."""
    seam: float
    """From the trim edge to the seam that holds the edge."""
    shows: float
    """Width on the front; 0 for a facing or a piece turned through."""
    backing_extra: float
    """How far the backing reaches beyond the trim edge on every side, when it makes the edge; else 0."""
    opening: float
    """Left open to turn the piece through; else 0."""
    pieces: tuple[EdgePiece, ...]
    """Facing strips, or squares for bias strips; empty for a straight binding, which has a plan of its own."""
    bias_square: float
    """Side of the square a bias binding is cut from, the seams of its tube counted; 0 when straight."""
    bias_strips: int
    """Bias strips needed when they are cut across the fabric one by one; 0 when straight."""
    words: tuple[str, ...]
    """What to do, one sentence each, with its numbers."""


@dataclass(frozen=True, slots=True)
class PanelsPlan:
    """One long base cut into panels after sewing."""

    across: int
    down: int
    wide: float
    """One panel, squared up."""
    high: float
    loss: float
    """Trimmed away between two panels."""
    panels: tuple[Polygon, ...]
    """Each panel's outline, from the middle of the whole."""
    cuts: tuple[tuple[Point, Point], ...]
    """Cut lines."""
    ends_to_lock: tuple[tuple[int, Point], ...]
    """(step, place) of every seam that a cut opens: lock it on both sides of the cut, or stay-stitch there."""


@dataclass(frozen=True, slots=True)
class ExtrasPlan:
    """Sleeve and label."""

    pieces: tuple[EdgePiece, ...]
    words: tuple[str, ...]
    """What to do and when, one sentence each, with its numbers."""
