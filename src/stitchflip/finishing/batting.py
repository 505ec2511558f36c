"""The batting: the size to cut, and how leftovers make it.

Leftovers are butted edge to edge, no seam and no overlap in the size, because a seam in batting is a ridge. The
join keeps off the center lines and off every fold of squaring up.
"""

from __future__ import annotations

from stitchflip.finishing.batting_joins import Butted, Leftover, butt, fit_in, missing_length
from stitchflip.finishing.measures import BATTING_JOIN_OFF_FOLDS
from stitchflip.finishing.model import BasePlan, BattingPlan
from stitchflip.finishing.words import size_in_words
from stitchflip.lengths import TOLERANCE_IN, Speaker
from stitchflip.project.model import Project
from stitchflip.project.numbers import Numbers
from stitchflip.values import dataclass

PACKAGED = (
    ("craft", 36.0, 45.0),
    ("crib", 45.0, 60.0),
    ("twin", 72.0, 90.0),
    ("full", 81.0, 96.0),
    ("queen", 90.0, 108.0),
    ("king", 120.0, 120.0),
)
"""Packaged batting sizes, inches, smallest first; makers differ by a few inches, so the wrapper decides."""


@dataclass(slots=True)
class _Taken:
    """What has been found for the bases so far."""

    left: list[Leftover]
    words: list[str]
    joined: Butted | None = None
    made: int = 0


def plan_batting(project: Project, numbers: Numbers, base: BasePlan) -> BattingPlan:
    """The batting for all pieces: from leftovers where they do, and what to buy.

    Args:
        project: For leftovers on hand and how many alike.
        numbers: For the mat, which decides where a long piece is folded.
        base: The base; batting is cut to its size.

    Returns:
        What it is made of, in words; the joins; what is missing of one piece when leftovers are not enough; and the
        smallest packaged batting that holds the rest.
    """
    size = (base.wide, base.high)
    text = size_in_words(project, *size)
    off = BATTING_JOIN_OFF_FOLDS.of(project.units)
    folds = {"x": _folds(base.wide, numbers), "y": _folds(base.high, numbers)}
    taken = _Taken(_on_hand(project), [])
    while taken.made < project.bases and _take_one(taken, project, size, folds, off):
        pass
    missing = project.bases - taken.made
    if missing:
        taken.words.append(f"{missing} cut {text} from new batting")
    joins = taken.joined.joins_at if taken.joined else ()
    return BattingPlan(
        wide=base.wide,
        high=base.high,
        pieces=tuple(taken.words),
        join_at=min(joins, key=abs) if joins else None,
        join_axis=taken.joined.axis if taken.joined else "",
        short=missing_length(size, taken.left) if missing and project.batting.on_hand else 0.0,
        joins_at=joins,
        packaged=smallest_package(size, missing, Speaker(project.units)) if missing else "",
    )


def _on_hand(project: Project) -> list[Leftover]:
    """Every leftover by itself, as often as it is there."""
    return [
        Leftover(piece.wide.inches, piece.long.inches, piece.name)
        for piece in project.batting.on_hand
        for _ in range(piece.count)
    ]


def _folds(extent: float, numbers: Numbers) -> tuple[float, ...]:
    """Where a piece is folded along one axis: the center line, and the quarters when half is still too long."""
    mat = max(numbers.mat_wide, numbers.mat_long)
    return (0.0,) if extent / 2 <= mat else (-extent / 4, 0.0, extent / 4)


def _take_one(
    taken: _Taken, project: Project, size: tuple[float, float], folds: dict[str, tuple[float, ...]], off: float
) -> bool:
    """Find one more base among what is left: whole if possible, else butted; False when there is none."""
    whole = [piece for piece in taken.left if fit_in(size, (piece.wide, piece.long))]
    if whole:
        smallest = min(whole, key=lambda piece: piece.wide * piece.long)
        taken.left.remove(smallest)
        taken.left += smallest.rest_after(size)
        named = smallest.named(Speaker(project.units))
        taken.words.append(f"1 cut {size_in_words(project, *size)} whole from {named}")
        taken.made += 1
        return True
    joined = butt(size, taken.left, folds, off)
    if joined is None:
        return False
    for piece in joined.pieces:
        taken.left.remove(piece)
    taken.words.append(_butted_in_words(project, joined, size, off, folds[joined.axis]))
    taken.joined = taken.joined or joined
    taken.made += 1
    return True


def _butted_in_words(
    project: Project, joined: Butted, size: tuple[float, float], off: float, folds: tuple[float, ...]
) -> str:
    """The leftovers, the places of the joins, and a remark when one lies under a fold."""
    say = Speaker(project.units)
    wide, high = size
    parts = (
        size_in_words(project, wide, part) if joined.axis == "y" else size_in_words(project, part, high)
        for part in joined.parts
    )
    whole = " and ".join(f"{part} from {piece.named(say)}" for part, piece in zip(parts, joined.pieces, strict=True))
    places = " and ".join(say.near(abs(place)) for place in joined.joins_at)
    text = (
        f"1 of {size_in_words(project, *size)} butted from leftovers: {whole}, edge to edge without overlap, "
        f"zigzagged; joined {places} from the center line"
    )
    if joined.off(folds) < off - TOLERANCE_IN:
        text += f", which is nearer than {say.near(off)} to a fold or the center line"
    return text


def smallest_package(size: tuple[float, float], how_many: int, say: Speaker) -> str:
    """The smallest packaged batting that gives so many pieces, in words; "" when none does.

    Args:
        size: Wide and high of one piece as cut, inches.
        how_many: Pieces, laid in rows, all the same way or all turned.
        say: The maker's voice.

    Example:
        >>> from stitchflip.lengths import Unit
        >>> smallest_package((15.5, 48), 1, Speaker(Unit.INCH)).split()[0]
        'crib'
    """
    for name, wide, long in PACKAGED:
        if fit_in(size, (wide, long)) >= how_many:
            return f"{name} ({say.size(wide, long)})"
    return ""
