"""Squaring up on a mat or with a ruler that is smaller than the piece: fold, cut, and know what a slip costs.

Both ends lie together and are cut once, so a slip of the ruler counts twice. Folded a second time the same way, the
length is twice the place of the second fold and the ruler's distance together: a slip of either counts twice, of both
the same way four times. A first fold laid off the center line leaves the length and moves the center by as much.
"""

from __future__ import annotations

from math import hypot

from stitchflip.finishing.edges import is_mirrored
from stitchflip.finishing.measures import FOLD_STEP, INNER_FOLD_BACK, RULER_SLIP
from stitchflip.finishing.words import size_in_words
from stitchflip.lengths import TOLERANCE_IN, Rounding, Speaker, Unit, round_to
from stitchflip.piecing.geometry import edges, extent
from stitchflip.piecing.model import Polygon
from stitchflip.project.model import Project, Runs
from stitchflip.project.numbers import Numbers
from stitchflip.values import dataclass


@dataclass(frozen=True, slots=True)
class Folding:
    """A way to fold the piece so that it lies on the mat."""

    folds: tuple[str, ...]
    """Axes folded in turn: "x" lays left on right, "y" top on bottom."""
    wide: float
    """Folded, x extent, inches."""
    high: float
    counts: int
    """How many times one slip of the ruler counts in the size."""
    inner_fold: float = 0.0
    """Folded twice the same way: how far the first fold is brought back from the second."""


def folding_for(numbers: Numbers, trim_taped: Polygon, unit: Unit = Unit.INCH) -> Folding | None:
    """The fewest folds that bring the piece onto mat and ruler.

    Args:
        numbers: The maker's mat and longest cut.
        trim_taped: The squared-up outline, taped.
        unit: The maker's unit, for the grid on which the place of a second fold is given.

    Returns:
        No folds when the piece fits as it is; None when no fold or two can do it, or the shape has no mirror line.

    Example:
        >>> from types import SimpleNamespace
        >>> mat = SimpleNamespace(mat_wide=23, mat_long=17, longest_cut=23.5)
        >>> runner = ((-6.5, -22.0), (6.5, -22.0), (6.5, 22.0), (-6.5, 22.0))
        >>> folding_for(mat, runner).folds
        ('y',)
    """
    (left, right), (low, top) = extent(trim_taped, 1, 0), extent(trim_taped, 0, 1)
    size = {"x": right - left, "y": top - low}
    longer, shorter = ("x", "y") if size["x"] > size["y"] else ("y", "x")
    ways = [(), (longer,), (shorter,), (longer, shorter), (longer, longer), (shorter, shorter)]
    for folds in ways:
        if all(is_mirrored(trim_taped, axis) for axis in folds):
            folded = _fold(size, folds, unit)
            if _fits(folded.wide, folded.high, numbers):
                return folded
    return None


def _fold(size: dict[str, float], folds: tuple[str, ...], unit: Unit) -> Folding:
    left = dict(size)
    inner = 0.0
    if len(folds) == 2 and folds[0] == folds[1]:
        half = size[folds[0]] / 2
        inner = round_to((half - INNER_FOLD_BACK.of(unit)) / 2, FOLD_STEP.of(unit), Rounding.DOWN)
        left[folds[0]] = half - inner
    else:
        for axis in folds:
            left[axis] /= 2
    return Folding(folds, left["x"], left["y"], 2 if folds else 1, inner)


def _fits(wide: float, high: float, numbers: Numbers) -> bool:
    mat = sorted((numbers.mat_wide, numbers.mat_long))
    short, long = sorted((wide, high))
    return (
        short <= mat[0] + TOLERANCE_IN and long <= mat[1] + TOLERANCE_IN and long <= numbers.longest_cut + TOLERANCE_IN
    )


def fold_in_words(project: Project, numbers: Numbers, trim_taped: Polygon) -> str:
    """The small-mat way with its numbers and what a slip costs.

    Args:
        project: For its unit and which way its length runs.
        numbers: The maker's mat and longest cut.
        trim_taped: The squared-up outline, taped.

    Returns:
        "" when the piece lies on the mat as it is.
    """
    say = Speaker(project.units)
    mat = f"the mat ({say.size(numbers.mat_wide, numbers.mat_long)})"
    folding = folding_for(numbers, trim_taped, project.units)
    if folding is None:
        return (
            f"The piece is larger than {mat} and does not fold onto it: trim one edge at a time, the mat moved along "
            "under it, each edge at its distance from the center mark."
        )
    if not folding.folds:
        return ""
    return f"{_how(project, folding, mat, trim_taped)} {_cost_in_words(say, folding, RULER_SLIP.of(project.units))}"


def _cost_in_words(say: Speaker, folding: Folding, slip: float) -> str:
    """What a slip of the ruler or of a fold does to the size, with numbers."""
    off, twice = say.near(slip), say.near(folding.counts * slip)
    size = f"Both are cut at once, so a slip of the ruler counts twice: {off} off makes the size {twice} off"
    center = f"laid {off} beside the line moves the center as much"
    if not folding.inner_fold:
        return f"{size}; a fold {center}."
    both = say.near(2 * folding.counts * slip)
    return (
        f"{size}, the second fold laid {off} off its place another {twice}, so {both} when both go the same way; the "
        f"first fold {center}."
    )


def _cut_place(say: Speaker, axis: str, reach: float, folded: float, trim_taped: Polygon) -> str:
    """How far from the fold to cut: an edge by its distance, a point or slant by the distance of its tip."""
    part = 0 if axis == "x" else 1
    corners = sum(abs(corner[part] - reach) < 1e-4 for corner in trim_taped)
    return f"{say.near(folded)} from" if corners > 1 else f"along their edges, the tip {say.near(folded)} from"


def _how(project: Project, folding: Folding, mat: str, trim_taped: Polygon) -> str:
    """How to fold, how large it is then, and where the cuts are from the folds."""
    say = Speaker(project.units)
    runs_up = project.squared_up.length_runs is Runs.UP
    words = {"y" if runs_up else "x": ("end to end", "ends"), "x" if runs_up else "y": ("side to side", "sides")}
    places = {
        axis: _cut_place(say, axis, max(corner[part] for corner in trim_taped), folded, trim_taped)
        for part, (axis, folded) in enumerate((("x", folding.wide), ("y", folding.high)))
    }
    first = folding.folds[0]
    onto, cut = words[first]
    size = f"it is then {size_in_words(project, folding.wide, folding.high)}"
    trimmed = f"to the cut, once its {_untrimmed(words, first, trim_taped)} are trimmed"
    if folding.inner_fold:
        return (
            f"To fit {mat}, fold the piece {onto} on its center line, then bring that fold back over by "
            f"{say.near(folding.inner_fold)}: {size} {trimmed}, and the {cut} are cut together "
            f"{places[first]} the new fold, the first fold kept clear of the cutter."
        )
    if len(folding.folds) == 1:
        return (
            f"To fit {mat}, fold the piece once, {onto}, on its center line: {size} {trimmed}, and the {cut} "
            f"are cut together, {places[first]} the fold."
        )
    then, others = words[folding.folds[1]]
    return (
        f"To fit {mat}, fold the piece {onto} on its center line, then {then} on the other: {size} to the cuts; the "
        f"{cut} are cut {places[first]} the first fold and the {others} {places[folding.folds[1]]} the second."
    )


def _untrimmed(words: dict[str, tuple[str, str]], folded: str, trim_taped: Polygon) -> str:
    """What the edges beside the fold are called: they are not cut from it and have their own size to come to."""
    other = "y" if folded == "x" else "x"
    low, high = extent(trim_taped, 1, 0) if other == "x" else extent(trim_taped, 0, 1)
    longest = max(hypot(x1 - x0, y1 - y0) for (x0, y0), (x1, y1) in edges(trim_taped))
    return "long edges" if longest > high - low + TOLERANCE_IN else words[other][1]
