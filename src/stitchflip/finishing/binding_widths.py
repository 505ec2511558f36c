"""How wide to cut a binding: what shows in front and behind, and whether it passes the stitching on the back.

Two numbers carry nearly the same name at the table. *Shows on the back* is what is seen of the folded binding
behind; *passes the stitching* is how far it reaches beyond the line that sewed it on in front, which is what a seam
from the front has to catch.
"""

from __future__ import annotations

from stitchflip.values import dataclass


@dataclass(frozen=True, slots=True)
class DoubleFold:
    """A double-fold binding as cut and sewn; inches.

    Example:
        >>> binding = DoubleFold(cut=2.5, seam=0.25, front=0.25, loft=0.125)
        >>> binding.shows_on_back, binding.passes_stitching
        (0.625, 0.375)
    """

    cut: float
    """Cut width of the strip."""
    seam: float
    """From the raw edges to the stitching."""
    front: float
    """What shows in front."""
    loft: float
    """Thickness that the binding goes round."""

    @property
    def shows_on_back(self) -> float:
        """What is left for the back after seam, front and thickness."""
        return self.cut / 2 - self.seam - self.front - self.loft

    @property
    def passes_stitching(self) -> float:
        """How far the fold reaches beyond the stitching; below zero it does not reach."""
        return self.shows_on_back - self.front


def least_cut_width(seam: float, front: float, loft: float, passes: float) -> float:
    """Narrowest strip whose fold passes the stitching by so much.

    Args:
        seam: From the raw edges to the stitching, inches.
        front: What shows in front, inches.
        loft: Thickness of the layers, inches.
        passes: Wished pass, inches.

    Example:
        >>> least_cut_width(seam=0.25, front=0.25, loft=0.125, passes=0.25)
        2.25
    """
    return 2 * (seam + 2 * front + loft + passes)


def four_fronts_and_one(front: float) -> float:
    """The published rule "4F + 1": cut width for a front sewn with a seam as wide as itself.

    It passes the stitching by ½ - F - loft, so it suits narrow fronts; the pass is always told beside it.

    Args:
        front: What shows in front, and the seam, inches.

    Example:
        >>> [four_fronts_and_one(front) for front in (0.25, 0.375, 0.5)]
        [2.0, 2.5, 3.0]
    """
    return 4 * front + 1


def single_fold_cut_width(front: float, turn: float) -> float:
    """Cut width of a single-fold binding: seam, front, back and hem alike, and a little to go round the edge.

    Args:
        front: What shows in front, inches; seam, back and hem are as wide.
        turn: For going round the layers, inches.

    Example:
        >>> single_fold_cut_width(0.25, 0.125)
        1.125
    """
    return 4 * front + turn
