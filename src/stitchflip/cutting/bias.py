"""Strips cut on the bias from any rectangle: one by one at 45 degrees, or as one continuous strip from a tube.

A strip that is cut at 45 degrees ends slanted where it meets the edge of the fabric, which is just how its ends are
joined. Near a corner its two ends slant toward each other, so one of them is cut anew. All strips are counted by what
they give with ends that slant the same way, and each join takes its two seam allowances. A tube gives whole turns
only: what is left of its width is a strip too narrow to use, and rules that divide the area by the width forget that.
"""

from __future__ import annotations

from math import ceil, floor, inf, isfinite, sqrt
from typing import TYPE_CHECKING

from stitchflip.errors import CuttingError
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

ROOT_2 = sqrt(2)
TOLERANCE = 1e-6
_LARGEST_SQUARE_IN = 400.0
"""Seams and strips wider than this are a slip of the hand."""
_MOST_STRIPS = 5_000


@dataclass(frozen=True, slots=True)
class BiasLengths:
    """Strips cut one by one at 45 degrees from a rectangle; inches."""

    wide: float
    long: float
    """The rectangle."""
    cut: float
    ends: str
    """Sides that the slanted ends of all strips lie along: "wide" or "long"."""
    first_cut: float
    """Where the first cut meets the line of that side, from the corner the cuts start toward; below zero: before it."""
    lengths: tuple[float, ...]
    """Each along its edge, ends slanted the same way; in the order cut from the first corner."""
    join: float
    """What each join takes."""

    @property
    def made(self) -> float:
        """All of them joined."""
        return joined(self.lengths, self.join)


@dataclass(frozen=True, slots=True)
class BiasTube:
    """One continuous strip from a rectangle sewn to a tube; inches."""

    turns: int
    """Whole strips side by side."""
    made: float
    by_area: float
    """What the area of the fabric inside its two seams, divided by the cut width, promises."""
    cut_off: float
    """Width of the strip left at the end of the tube, too narrow to use."""
    joined_sides: str
    """"long": the long sides are sewn together first (a triangle is moved along the wide side); "wide": the wide."""


@dataclass(frozen=True, slots=True)
class BiasChoice:
    """Which rectangles on the shelf give a bias binding."""

    numbers: tuple[int, ...]
    """Of the rectangles, in the order given."""
    way: str
    """"tube" or "strips"."""
    made: float
    """All joined, inches."""


def strips_across(usable: float, cut: float) -> int:
    """How many bias strips lie side by side in one width of fabric.

    Args:
        usable: usable width, inches.
        cut: cut width of the strips, inches.

    Example:
        >>> strips_across(40, 2.5)
        11
    """
    _refuse(usable, usable, cut)
    return floor(usable / (cut * ROOT_2) + TOLERANCE)


def square_by_rule(length: float, cut: float) -> int:
    """Side of the square for a continuous bias strip by the published rule, whole inches.

    The rule leaves out the seams of the tube, and the part strip at its end.

    Args:
        length: binding wanted, inches.
        cut: cut width of the strip, inches.

    Example:
        >>> square_by_rule(250, 2), square_by_rule(100, 3.5)
        (23, 19)
    """
    _refuse(length, length, cut)
    return ceil(sqrt(length * cut) - TOLERANCE)


def join_of_slanted(seam: float) -> float:
    """What joining two ends that were cut slanted takes from the length: both allowances, measured along the strip.

    Args:
        seam: of the join, inches.

    Example:
        >>> round(join_of_slanted(0.25), 3)
        0.707
    """
    return 2 * ROOT_2 * seam


def joined(lengths: Sequence[float], join: float) -> float:
    """Strips joined end to end.

    Args:
        lengths: of the strips, inches.
        join: what each join takes, inches.
    """
    return sum(lengths) - max(len(lengths) - 1, 0) * join


def bias_lengths(
    wide: float, long: float, cut: float, *, seam: float = 0.25, join: float | None = None, at_least: float = 0.0
) -> BiasLengths:
    """The strips at 45 degrees that a rectangle gives, placed so that most length comes of them.

    Args:
        wide: of the rectangle, inches.
        long: of the rectangle, inches.
        cut: cut width of the strips, inches.
        seam: of the joins.
        join: what a join takes when it is reckoned by a rule; None: the two seams of slanted ends.
        at_least: shorter strips are left out.

    Returns:
        The strips, and where the first cut begins. No other start and no other slant of the ends gives more.

    Example:
        >>> ten = bias_lengths(20, 10, 2.5)
        >>> [round(length, 2) for length in ten.lengths], round(ten.made, 2)
        ([4.14, 9.14, 14.14, 14.14, 13.28, 8.28, 3.28], 62.18)
    """
    _refuse(wide, long, cut)
    each = join_of_slanted(seam) if join is None else join
    ways = [_best_placed(wide, long, cut, each, at_least), _best_placed(long, wide, cut, each, at_least)]
    (total, start, lengths), (other_total, other_start, other_lengths) = ways
    if total >= other_total - TOLERANCE:
        return BiasLengths(wide, long, cut, "wide", start, lengths, each)
    return BiasLengths(wide, long, cut, "long", other_start, other_lengths, each)


def _best_placed(
    wide: float, long: float, cut: float, join: float, at_least: float
) -> tuple[float, float, tuple[float, ...]]:
    """(joined length, first cut, strips) with ends along the wide sides, at the best of all starts.

    A start is where a cut meets the line of the wide side. The joined length changes its slope only where a strip
    comes to an edge or becomes too short, so one of those starts is best.
    """
    step = cut * ROOT_2
    least = max(at_least, join) / ROOT_2
    bends = (-long, -long + least, 0.0, wide - long - step, wide - step, wide - step - least)
    best: tuple[float, float, tuple[float, ...]] = (0.0, 0.0, ())
    for start in dict.fromkeys(round((bend + long) % step, 9) % step for bend in bends):
        strips: list[float] = []
        first = None
        for number in range(floor((wide + long) / step) + 2):
            at = -long + start + number * step
            usable = min(long, wide - at - step) - max(0.0, -at)
            if usable > max(least, TOLERANCE) - TOLERANCE:
                strips.append(usable * ROOT_2)
                first = at if first is None else first
        total = joined(strips, join)
        if total > best[0] + TOLERANCE and first is not None:
            best = (total, first, tuple(strips))
    return best


def bias_tube(wide: float, long: float, cut: float, seam: float) -> BiasTube:
    """The continuous strip from a rectangle, its two seams and the part strip at the end charged.

    Args:
        wide: of the rectangle, inches.
        long: of the rectangle, inches.
        cut: cut width of the strip, inches.
        seam: of the two seams of the tube, inches.

    Returns:
        The longer one of both ways to sew it.

    Example:
        >>> tube = bias_tube(20, 20, 2, 0.25)
        >>> tube.turns, round(tube.made, 1), round(tube.by_area, 1)
        (6, 165.5, 190.1)
    """
    _refuse(wide, long, cut)
    around = [
        _tube(wide - 2 * seam, long - 2 * seam, cut, "long"),
        _tube(long - 2 * seam, wide - 2 * seam, cut, "wide"),
    ]
    return max(around, key=lambda tube: round(tube.made, 6))


def tube_of_slanted(straight: float, high: float, cut: float, seam: float) -> BiasTube:
    """The continuous strip from a piece that has two slanted bias edges already, so that only the tube is sewn.

    Args:
        straight: length of its two straight edges, inches.
        high: distance between them, inches.
        cut: cut width of the strip, inches.
        seam: of the tube, inches.
    """
    _refuse(straight, high, cut)
    return _tube(straight, high - 2 * seam, cut, "wide")


def _tube(straight: float, high: float, cut: float, joined_sides: str) -> BiasTube:
    """Turns of a strip round a tube; its bias edges are `high` root 2 long and `straight` / root 2 apart."""
    if straight <= 0 or high <= 0:
        return BiasTube(0, 0.0, 0.0, 0.0, joined_sides)
    apart = straight / ROOT_2
    turns = floor(apart / cut + TOLERANCE)
    left = apart - turns * cut
    made = turns * high * ROOT_2
    return BiasTube(turns, made, straight * high / cut, left if left > TOLERANCE else 0.0, joined_sides)


def square_for(length: float, cut: float, seam: float, step: float = 1.0) -> float:
    """The smallest square whose tube gives a length.

    Args:
        length: wanted, inches.
        cut: cut width of the strip, inches.
        seam: of the tube, inches.
        step: sides are multiples of this.

    Example:
        >>> square_for(250, 2, 0.25)
        24.0
    """
    _refuse(max(length, cut), cut, cut)
    _refuse(step, step, step)
    if not 0 <= seam <= _LARGEST_SQUARE_IN or cut > _LARGEST_SQUARE_IN:
        _refuse(seam, cut, inf)
    sides = ceil((sqrt(length * cut) + 2 * seam) / step - TOLERANCE)
    while bias_tube(sides * step, sides * step, cut, seam).made < length - TOLERANCE:
        sides += 1
    return sides * step


def from_shelf(shelf: Iterable[tuple[float, float]], need: float, cut: float, seam: float) -> BiasChoice | None:
    """Which rectangles to cut for a bias binding: the smallest one that is enough, else the fewest large ones.

    Args:
        shelf: rectangles on hand, wide and long; inches.
        need: binding wanted, joined; inches.
        cut: cut width, inches.
        seam: of tube and joins, inches.

    Returns:
        The choice; None when all of them together are not enough.

    Example:
        >>> from_shelf([(40, 40), (18, 21), (24, 26)], 140, 2.25, 0.25).numbers
        (1,)
    """
    sizes = list(shelf)
    join = join_of_slanted(seam)
    gives: list[tuple[float, str]] = []
    for wide, long in sizes:
        tube, strips = bias_tube(wide, long, cut, seam).made, bias_lengths(wide, long, cut, seam=seam).made
        gives.append((tube, "tube") if tube >= min(need, strips) - TOLERANCE else (strips, "strips"))
    enough = [number for number, (made, _) in enumerate(gives) if made >= need - TOLERANCE]
    if enough:
        best = min(enough, key=lambda number: (sizes[number][0] * sizes[number][1], number))
        return BiasChoice((best,), gives[best][1], gives[best][0])
    order = sorted(range(len(sizes)), key=lambda number: (-gives[number][0], number))
    taken: list[int] = []
    made = 0.0
    for number in order:
        if gives[number][0] <= join + TOLERANCE:
            break
        made += gives[number][0] - (join if taken else 0.0)
        taken.append(number)
        if made >= need - TOLERANCE:
            ways = {gives[one][1] for one in taken}
            return BiasChoice(tuple(sorted(taken)), ways.pop() if len(ways) == 1 else "strips", made)
    return None


def _refuse(wide: float, long: float, cut: float) -> None:
    sizes = (wide, long, cut)
    is_sane = all(isfinite(size) and size > 0 for size in sizes)
    if not is_sane or (wide + long) / cut > _MOST_STRIPS:
        raise CuttingError(
            what=f"bias strips {cut:g} in wide from {wide:g} by {long:g} in",
            fix="Give the fabric and the width of the strips as measured, above zero.",
            where="bias",
            code="cutting.no-size",
        )
