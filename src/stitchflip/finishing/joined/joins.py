"""One join of two quilted blocks, in section: what shows, how far apart the raw edges stand, what the cover passes.

Recipes for covered joins disagree in print because each holds for one seam and one batting. Here the strips follow
from the seam as stitched and the thickness of the batting, and the same formulas judge strips somebody else gave.

Throughout, a is the seam as stitched, f the cut width of the flat strip, b that of the strip folded in half, F what
a covered strip shows; inches.
"""

from __future__ import annotations

from stitchflip.errors import BuildError
from stitchflip.finishing.measures import COVER_PASSES, COVERED_SHOWS, JOIN_CUT_STEP
from stitchflip.finishing.quilt_model import JoinCheck
from stitchflip.lengths import TOLERANCE_IN, Rounding, Unit, in_both_units, round_to
from stitchflip.project.house import HOUSE
from stitchflip.project.model import Filler, Fold, Join, Joined, Project
from stitchflip.project.numbers import Numbers
from stitchflip.values import dataclass


def shows_between(flat_cut: float, seam: float) -> float:
    """What shows between two blocks: the flat strip less its two seams, f - 2a.

    Args:
        flat_cut: Cut width of the flat strip, inches.
        seam: Seam as stitched, inches.

    Source:
        Attaching the quilt-as-you-go blocks together (2011),
        https://keyka.typepad.com/my_weblog/2011/01/attaching-the-quilt-as-you-go-blocks-together.html

    Example:
        >>> shows_between(1.125, 0.25)
        0.625
    """
    return flat_cut - 2 * seam


def raw_edges_apart(flat_cut: float, seam: float) -> float:
    """How far apart the raw edges of the two blocks stand: each reaches a seam into what shows, f - 4a.

    Args:
        flat_cut: Cut width of the flat strip, inches.
        seam: Seam as stitched, inches.

    Returns:
        Inches; below zero the edges overlap and make a ridge.

    Source:
        Joining blocks to finish the quilt (handout), https://docest.com/doc/613417/joining-blocks-to-finish-the-quilt

    Example:
        >>> [raw_edges_apart(cut, 0.25) for cut in (1, 1.125, 1.25)]
        [0.0, 0.125, 0.25]
    """
    return flat_cut - 4 * seam


def passes_by(folded_cut: float, flat_cut: float, seam: float) -> float:
    """How far the folded strip passes the far stitching, b/2 - a - (f - 2a).

    Args:
        folded_cut: Cut width of the strip that is folded in half, inches.
        flat_cut: Cut width of the flat strip, inches.
        seam: Seam as stitched, inches.

    Returns:
        Inches; 0 meets the stitching exactly, below zero it stays bare.

    Example:
        >>> [passes_by(folded, flat, 0.25) for flat, folded in ((1, 1.75), (1.125, 1.75), (1.125, 2), (1, 2.5))]
        [0.125, 0.0, 0.125, 0.5]
    """
    return folded_cut / 2 - seam - shows_between(flat_cut, seam)


def folded_cut_that_passes(passes: float, flat_cut: float, seam: float, unit: Unit) -> float:
    """The narrowest folded strip that passes the far stitching by so much, up to the next 1/8 in or 0.5 cm.

    Args:
        passes: Wanted beyond the far stitching, inches.
        flat_cut: Cut width of the flat strip, inches.
        seam: Seam as stitched, inches.
        unit: The maker's unit.

    Example:
        >>> folded_cut_that_passes(0.125, 1.125, 0.25, Unit.INCH)
        2.0
    """
    least = 2 * (passes + seam + shows_between(flat_cut, seam))
    return round_to(least, JOIN_CUT_STEP.of(unit), Rounding.UP)


def flat_cut_that_fills(seam: float, loft: float, unit: Unit) -> float:
    """The flat strip whose gap the batting fills by its own thickness: 4a + loft, down to the next 1/8 in or 1 mm.

    Args:
        seam: Seam as stitched, inches.
        loft: Thickness of the batting, inches.
        unit: The maker's unit.

    Returns:
        Never less than 4a, where the raw edges would overlap.

    Example:
        >>> flat_cut_that_fills(0.25, 0.125, Unit.INCH)
        1.125
    """
    step = _FLAT_STEP[unit]
    filled = round_to(4 * seam + loft, step, Rounding.DOWN)
    return filled if filled >= 4 * seam - TOLERANCE_IN else round_to(4 * seam, step, Rounding.UP)


_FLAT_STEP = {Unit.INCH: 1 / 8, Unit.CM: 0.1 / 2.54}


def covered_cut(shows: float, seam: float) -> float:
    """Both covered strips, front and back: one seam sewn, one turned under and one to pass the far stitching, F + 3a.

    Args:
        shows: Width that shows between the blocks, inches.
        seam: Seam as stitched, inches.

    Source:
        QAYG: joining blocks with sashing, Quilted Diary, https://www.quilted-diary.com/qayg-with-sashing

    Example:
        >>> covered_cut(2, 0.25)
        2.75
    """
    return shows + 3 * seam


def room_between(shows: float, seam: float, reaches: Filler) -> float:
    """How far apart the battings of two blocks stand: f - 4a up to their raw edges, f - 2a when trimmed to the seam.

    Args:
        shows: Width that shows between the blocks, f - 2a, inches.
        seam: Seam as stitched, inches.
        reaches: How far the batting of the blocks reaches.

    Example:
        >>> room_between(2, 0.25, Filler.RAW_EDGE), room_between(2, 0.25, Filler.SEAM)
        (1.5, 2)
    """
    return shows - 2 * seam if reaches is Filler.RAW_EDGE else shows


@dataclass(frozen=True, slots=True)
class JoinCuts:
    """Cut widths of the joining strips; inches, 0 for none."""

    flat: float
    """The flat strip, or each of the two covered strips."""
    folded: float
    """The strip folded in half; of covered strips the one on the back, when it is folded and not turned under."""

    def between(self, way: Join, seam: float) -> float:
        """From seam line to seam line of two neighboring blocks, whatever covers it."""
        match way:
            case Join.FLAT_AND_FOLDED:
                return shows_between(self.flat, seam)
            case Join.COVERED:
                return self.flat - 3 * seam
            case Join.PLAIN_SEAM:
                return 0.0


def join_cuts(project: Project, numbers: Numbers, joined: Joined) -> JoinCuts:
    """The cut widths of the joining strips: as the project says, else the usual for seam and unit.

    Args:
        project: For its unit.
        numbers: For the seam as stitched.
        joined: How the blocks are joined.
    """
    unit, seam = project.units, numbers.seam
    match joined.join:
        case Join.PLAIN_SEAM:
            return JoinCuts(0.0, 0.0)
        case Join.COVERED:
            shows = COVERED_SHOWS.of(unit) if joined.shows is None else joined.shows.inches
            return JoinCuts(covered_cut(shows, seam), 0.0 if joined.folded_cut is None else joined.folded_cut.inches)
        case Join.FLAT_AND_FOLDED:
            flat = usual_flat_cut(seam, unit) if joined.flat_cut is None else joined.flat_cut.inches
            if joined.folded_cut is not None:
                return JoinCuts(flat, joined.folded_cut.inches)
            return JoinCuts(flat, folded_cut_that_passes(COVER_PASSES.of(unit), flat, seam, unit))


def usual_flat_cut(seam: float, unit: Unit) -> float:
    """The flat strip when the project names none: 1 1/8 in or 3.3 cm, and as much to spare with another seam.

    Args:
        seam: Seam as stitched, inches.
        unit: The maker's unit.

    Example:
        >>> usual_flat_cut(0.25, Unit.INCH), usual_flat_cut(0.5, Unit.INCH)
        (1.125, 2.125)
    """
    if abs(seam - HOUSE["seam"].of(unit)) < TOLERANCE_IN:
        return HOUSE["join_flat_cut"].of(unit)
    return round_to(4 * seam + HOUSE["loft_flat"].of(unit), _FLAT_STEP[unit], Rounding.UP)


def check_join(numbers: Numbers, joined: Joined, cuts: JoinCuts) -> JoinCheck:
    """One join in section.

    Args:
        numbers: For the seam as stitched and the thickness of the batting.
        joined: How the blocks are joined.
        cuts: Cut widths of the joining strips.

    Raises:
        BuildError: If a flat strip is so narrow that nothing of it is left between its two seams.
    """
    seam, way = numbers.seam, joined.join
    between = cuts.between(way, seam)
    if way is Join.PLAIN_SEAM:
        return JoinCheck(way.value, 0.0, 0.0, 0.0, 0.0, numbers.loft, seam)
    if between <= TOLERANCE_IN:
        raise BuildError(
            what=f"a flat strip cut {in_both_units(cuts.flat)} wide is used up by its two seams of "
            f"{in_both_units(seam)}",
            fix=f"Cut the flat strip wider than {in_both_units(2 * seam)}; {in_both_units(4 * seam)} or more keeps "
            "the raw edges of the blocks from lying on each other.",
            where="joined.flat_cut",
            code="build.join-too-narrow",
        )
    room = room_between(between, seam, joined.batting_reaches)
    filler = room if room > numbers.loft + TOLERANCE_IN else 0.0
    if way is Join.COVERED:
        passes = cuts.folded / 2 - seam - between if cuts.folded else seam
        return JoinCheck(way.value, between, between - 2 * seam, passes, filler, numbers.loft, seam)
    passes = passes_by(cuts.folded, cuts.flat, seam)
    shows = between if joined.fold is Fold.BEHIND else cuts.folded / 2 - seam
    return JoinCheck(way.value, shows, raw_edges_apart(cuts.flat, seam), passes, filler, numbers.loft, seam)
