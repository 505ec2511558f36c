"""The print and the window: where motifs lie in a repeat, and what is cut round one of them.

A print repeats along the fabric, and across it. In a half-drop print each column of repeats begins half a repeat
farther along than its neighbor. A fussy-cut window is centered on a motif; it lies upright, or turned 45 degrees for
a center on point. Inches throughout, x across the fabric from its left edge, y along it from the end that is cut
first.
"""

from __future__ import annotations

from math import isfinite, sqrt
from typing import TYPE_CHECKING

from stitchflip.errors import CuttingError
from stitchflip.lengths import in_both_units
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable

    from stitchflip.cutting.model import Status

TOLERANCE = 1e-6
LEAST_REPEAT_IN = 1 / 8
"""A print that repeats closer than this has no motif to center on."""
MOST_IN = 36_000.0
"""A thousand yards: longer fabric, or a longer repeat, is a slip of the hand."""
_MOST_MOTIFS = 50


@dataclass(frozen=True, slots=True)
class Motif:
    """One motif of the print, where its center lies in the repeat."""

    across: float
    """From the left edge of the repeat, inches."""
    along: float
    """From the beginning of the repeat, inches."""
    wide: float = 0.0
    """What must be seen of it, across; 0 when nobody has said."""
    long: float = 0.0
    """What must be seen of it, along; 0 when nobody has said."""


@dataclass(frozen=True, slots=True)
class Repeat:
    """How a print repeats, and where its motifs lie in one repeat.

    Example:
        >>> Repeat(along=12).motifs
        (Motif(across=0.0, along=6.0, wide=0.0, long=0.0),)
        >>> Repeat(along=12, across=8, half_drop=True).centers
        ((4.0, 6.0, 0), (12.0, 12.0, 0))
    """

    along: float
    """Length of the repeat along the fabric, inches."""
    across: float | None = None
    """From one column of repeats to the next; None: not measured, so one motif is counted on in the width."""
    half_drop: bool = False
    """True: each column begins half a repeat farther along than the one before."""
    motifs: tuple[Motif, ...] = ()
    """Left out, one in the middle of the repeat."""

    def __post_init__(self) -> None:
        """Refuse a repeat nobody could measure; put the one motif in the middle."""
        for length in (self.along, *(() if self.across is None else (self.across,))):
            if not (isfinite(length) and LEAST_REPEAT_IN <= length <= MOST_IN):
                raise CuttingError(
                    what=f"a print that repeats every {_said(length)}",
                    fix=f"Measure from one motif to the next one like it: {in_both_units(LEAST_REPEAT_IN)} or more.",
                    where="repeat",
                    code="cutting.no-repeat",
                )
        if self.across is None and (self.half_drop or len(self.motifs) > 1):
            raise CuttingError(
                what="a half-drop print, or one with several motifs in its repeat, whose columns were not measured",
                fix="Measure from one column of repeats to the next as well.",
                where="repeat_across",
                code="cutting.no-repeat-across",
            )
        _refuse_motifs(self.motifs)
        if not self.motifs:
            middle = 0.0 if self.across is None else self.across / 2
            object.__setattr__(self, "motifs", (Motif(middle, self.along / 2),))

    @property
    def period(self) -> tuple[float, float]:
        """Across and along after which everything comes again; across 0 when that was not measured."""
        across = 0.0 if self.across is None else self.across
        return (2 * across if self.half_drop else across), self.along

    @property
    def centers(self) -> tuple[tuple[float, float, int], ...]:
        """(across, along, number of the motif) of every center within one period."""
        own = [(motif.across, motif.along, number) for number, motif in enumerate(self.motifs)]
        if self.half_drop and self.across is not None:
            own += [(x + self.across, y + self.along / 2, number) for x, y, number in own]
        return tuple(own)


@dataclass(frozen=True, slots=True)
class Window:
    """What is cut round a motif.

    Example:
        >>> window = Window(8.25, 8.25, on_point=True)
        >>> window.shows, [round(side, 3) for side in window.box]
        ((7.75, 7.75), [11.667, 11.667])
    """

    wide: float
    """As cut, inches. On point: along the edge that runs up to the right."""
    long: float
    """As cut, inches. On point: along the edge that runs up to the left."""
    seam: float = 0.25
    on_point: bool = False
    """True: turned 45 degrees on the print."""

    def __post_init__(self) -> None:
        """Refuse a window that shows nothing."""
        sides = (self.wide, self.long)
        if not all(isfinite(side) and 2 * self.seam < side <= MOST_IN for side in sides) or not self.seam >= 0:
            raise CuttingError(
                what=f"a window cut {_said(self.wide)} by {_said(self.long)} with seams of {_said(self.seam)}",
                fix="Give it as cut, larger than its two seams.",
                where="window",
                code="cutting.no-size",
            )

    @property
    def shows(self) -> tuple[float, float]:
        """What is seen inside its seams, wide and long."""
        return self.wide - 2 * self.seam, self.long - 2 * self.seam

    @property
    def box(self) -> tuple[float, float]:
        """Fabric it reaches over, across and along."""
        if not self.on_point:
            return self.wide, self.long
        side = (self.wide + self.long) / sqrt(2)
        return side, side

    def own(self, x: float, y: float) -> tuple[float, float]:
        """A place on the fabric, told along the window's own edges.

        Args:
            x: across the fabric.
            y: along the fabric.
        """
        if not self.on_point:
            return x, y
        return (x + y) / sqrt(2), (y - x) / sqrt(2)

    def corners(self, x: float, y: float) -> tuple[tuple[float, float], ...]:
        """The four corners when it is centered on a place, counter-clockwise.

        Args:
            x: across the fabric.
            y: along the fabric.
        """
        w, h = self.wide / 2, self.long / 2
        own = ((-w, -h), (w, -h), (w, h), (-w, h))
        if self.on_point:
            own = tuple(((u - v) / sqrt(2), (u + v) / sqrt(2)) for u, v in own)  # type: ignore[assignment]  # four again
        return tuple((x + dx, y + dy) for dx, dy in own)

    def overlaps(self, dx: float, dy: float) -> bool:
        """Whether two such windows overlap when their centers lie so far apart; touching edges do not.

        Args:
            dx: across the fabric.
            dy: along the fabric.
        """
        u, v = self.own(dx, dy)
        return abs(u) < self.wide - TOLERANCE and abs(v) < self.long - TOLERANCE


@dataclass(frozen=True, slots=True)
class Start:
    """Where the first repeat begins on the fabric; None where nobody knows before it lies on the table."""

    across: float | None = None
    """Of the left edge of a repeat, from the left edge of the usable width; inches."""
    along: float | None = None
    """Of the beginning of a repeat, from the end that is cut first; inches."""


@dataclass(frozen=True, slots=True)
class MotifCount:
    """How many windows a piece of fabric gives."""

    surely: int
    """Wherever the print begins."""
    at_best: int
    """Where it begins best."""
    status: Status
    """Proved, or the most that were found in the time there was."""


@dataclass(frozen=True, slots=True)
class MotifNote:
    """Something to know before the fabric is bought or cut."""

    code: str
    """"motif.repeat-under-window", "motif.wider-than-fabric", "motif.cut-off" or "motif.not-sure"."""
    what: str
    fix: str


def _refuse_motifs(motifs: Iterable[Motif]) -> None:
    motifs = tuple(motifs)
    sizes = [size for motif in motifs for size in (motif.across, motif.along)]
    extents = [size for motif in motifs for size in (motif.wide, motif.long)]
    if len(motifs) > _MOST_MOTIFS or not all(isfinite(s) and abs(s) <= MOST_IN for s in (*sizes, *extents)):
        raise CuttingError(
            what=f"{len(motifs)} motifs in one repeat",
            fix=f"Measure at most {_MOST_MOTIFS}, each from the edges of the repeat to its middle.",
            where="motifs",
            code="cutting.no-motif",
        )
    if any(size < 0 for size in extents):
        raise CuttingError(
            what="a motif smaller than nothing",
            fix="Give what must be seen of it, wide and long, or leave that out.",
            where="motifs",
            code="cutting.no-motif",
        )


def _said(length: float) -> str:
    return in_both_units(length) if isfinite(length) and abs(length) <= MOST_IN else f"{length:g} in"
