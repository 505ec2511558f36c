"""The strips of a join on their two faces: what each is called, cut from, how wide, and how far it shows."""

from __future__ import annotations

from stitchflip.finishing.joined.joins import JoinCuts
from stitchflip.lengths import TOLERANCE_IN
from stitchflip.project.model import Fold, Join, Joined, Project
from stitchflip.project.numbers import Numbers
from stitchflip.values import dataclass


@dataclass(frozen=True, slots=True)
class Face:
    """One of the strips of every join; inches."""

    name: str
    """Such as "flat strip"; where it lies is added."""
    face: str
    """", front" or ", back" where both strips are called the same."""
    fabric: str
    cut: float
    shows: float
    """On the front, from the near seam line; 0 for a strip behind."""

    def named(self, where: str) -> str:
        """The whole name, such as "flat strip between blocks"."""
        return f"{self.name} between {where}{self.face}"


def faces_of(project: Project, numbers: Numbers, joined: Joined, cuts: JoinCuts) -> tuple[Face, ...]:
    """The strips of one join, the one on the front first; none for a plain seam.

    Args:
        project: For the fabric when the join names none: that of the binding, else the first.
        numbers: For the seam as stitched.
        joined: How the blocks are joined.
        cuts: Cut widths of the strips.
    """
    front = joined.fabric or project.binding.fabric or project.fabrics[0].name
    back = joined.fabric_behind or front
    between = cuts.between(joined.join, numbers.seam)
    match joined.join:
        case Join.PLAIN_SEAM:
            return ()
        case Join.COVERED:
            behind = Face("strip", ", back", back, cuts.flat, 0.0)
            if cuts.folded:
                behind = Face("folded strip", ", back", back, cuts.folded, 0.0)
            return Face("strip", ", front", front, cuts.flat, between), behind
        case Join.FLAT_AND_FOLDED:
            if joined.fold is Fold.BEHIND:
                return (
                    Face("flat strip", "", front, cuts.flat, between),
                    Face("folded strip", "", back, cuts.folded, 0.0),
                )
            return (
                Face("folded strip", "", front, cuts.folded, cuts.folded / 2 - numbers.seam),
                Face("flat strip", "", back, cuts.flat, 0.0),
            )


def is_longer_than_fabric(project: Project, numbers: Numbers, fabric: str, long: float) -> bool:
    """True for a strip that one width of its fabric does not give, so that it is joined from several.

    Args:
        project: For the width of the fabric as measured.
        numbers: For the usual width, and what washing takes off.
        fabric: Name of the fabric.
        long: Cut length of the strip, inches.
    """
    return long > usable_width(project, numbers, fabric) + TOLERANCE_IN


def usable_width(project: Project, numbers: Numbers, fabric: str) -> float:
    """Width of a fabric without selvages, after washing, inches.

    Args:
        project: For the width as measured.
        numbers: For the usual width, and what washing takes off.
        fabric: Its name.
    """
    own = next((one.usable_width for one in project.fabrics if one.name == fabric), None)
    return (numbers.usable_width if own is None else own.inches) * (1 - numbers.prewash_across)
