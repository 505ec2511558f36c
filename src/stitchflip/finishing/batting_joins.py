"""Leftovers of batting: what fits whole, and which ones to butt so that the join lies where it may.

Pure geometry of rectangles. Pieces are butted with no allowance, in one row along one axis of the base.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import combinations, permutations
from math import floor

from stitchflip.lengths import TOLERANCE_IN, Speaker
from stitchflip.values import dataclass

Size = tuple[float, float]

_MOST_PIECES = 4
"""More than so many leftovers in one batting is more joining than batting."""
_MOST_CONSIDERED = 12
"""Of many leftovers only the longest so many are combined."""
_LEAST_REST = 6.0
"""What is left over and smaller than this either way is no leftover; inches."""


@dataclass(frozen=True, slots=True)
class Leftover:
    """One leftover, as measured; inches."""

    wide: float
    long: float
    name: str = ""

    def named(self, say: Speaker) -> str:
        """Its name, or what it is, with its size."""
        return f"{self.name or 'a leftover'} {say.size(self.wide, self.long)}"

    def extent_beside(self, across: float) -> float:
        """How far it reaches along a row that is so wide across; 0 when it is too narrow either way."""
        ways = ((self.wide, self.long), (self.long, self.wide))
        return max((along for cross, along in ways if cross >= across - TOLERANCE_IN), default=0.0)

    def rest_after(self, size: Size) -> list[Leftover]:
        """The larger piece left when one base is cut from a corner, if it is worth keeping."""
        rests = []
        for wide, high in (size, size[::-1]):
            if wide <= self.wide + TOLERANCE_IN and high <= self.long + TOLERANCE_IN:
                rests += [(self.wide - wide, self.long), (self.wide, self.long - high)]
        useful = [rest for rest in rests if min(rest) >= _LEAST_REST]
        if not useful:
            return []
        wide, long = max(useful, key=lambda rest: rest[0] * rest[1])
        return [Leftover(wide, long, f"the rest of {self.name}" if self.name else "the rest of a leftover")]


@dataclass(frozen=True, slots=True)
class Butted:
    """Leftovers butted in one row."""

    pieces: tuple[Leftover, ...]
    """In the order of the row, from the low end of the axis."""
    parts: tuple[float, ...]
    """How much of each lies along the row; inches."""
    axis: str
    """"x" or "y": the joins are lines at a place of this axis."""
    joins_at: tuple[float, ...]
    """From the center line."""

    def off(self, folds: Iterable[float]) -> float:
        """How near a join comes to a fold."""
        return min(abs(place - fold) for place in self.joins_at for fold in folds)


def fit_in(size: Size, sheet: Size) -> int:
    """How many pieces of one size a sheet gives in plain rows, all the same way.

    Args:
        size: Wide and high of one piece, inches.
        sheet: Wide and long of the sheet, inches.

    Example:
        >>> fit_in((40, 58), (54, 42)), fit_in((15, 15), (45, 60))
        (0, 12)
    """
    return max(
        floor(sheet[0] / wide + TOLERANCE_IN) * floor(sheet[1] / high + TOLERANCE_IN)
        for wide, high in (size, size[::-1])
    )


def missing_length(size: Size, leftovers: Sequence[Leftover]) -> float:
    """How much length is missing in the row of leftovers that lacks the smallest piece; 0 when they reach.

    Args:
        size: Wide and high of the base, inches.
        leftovers: What is left on the shelf.
    """
    wide, high = size
    gaps = []
    for across, along in ((wide, high), (high, wide)):
        reach = sum(sorted((piece.extent_beside(across) for piece in leftovers), reverse=True)[:_MOST_PIECES])
        gaps.append((across * max(0.0, along - reach), -(along - reach)))
    return max(0.0, -min(gaps)[1])


def butt(
    size: Size, leftovers: Sequence[Leftover], folds: Mapping[str, tuple[float, ...]], off_folds: float
) -> Butted | None:
    """The fewest leftovers that make one base when butted, the joins off the folds where that can be.

    Args:
        size: Wide and high of the base, inches.
        leftovers: What there is.
        folds: Where the piece will be folded, for each axis, from the center line.
        off_folds: Wished distance of a join from every fold, inches.

    Returns:
        Fewest pieces first; of those, joins off the folds, then least left over. None when no row reaches.
    """
    for count in range(2, _MOST_PIECES + 1):
        found = [
            joined for axis in ("y", "x") for joined in _rows(size, leftovers, axis, count, folds[axis], off_folds)
        ]
        if found:
            return min(
                found,
                key=lambda joined: (
                    joined.off(folds[joined.axis]) < off_folds - TOLERANCE_IN,
                    round(_waste(joined, size), 6),
                    -round(joined.off(folds[joined.axis]), 6),
                ),
            )
    return None


def _waste(joined: Butted, size: Size) -> float:
    return sum(piece.wide * piece.long for piece in joined.pieces) - size[0] * size[1]


def _rows(
    size: Size, leftovers: Sequence[Leftover], axis: str, count: int, folds: tuple[float, ...], off_folds: float
) -> Iterator[Butted]:
    """Every row of so many leftovers along one axis that is long enough."""
    across, along = (size[1], size[0]) if axis == "x" else size
    useful = [(piece.extent_beside(across), piece) for piece in leftovers]
    useful = sorted((one for one in useful if one[0] > 0), key=lambda one: -one[0])[:_MOST_CONSIDERED]
    for chosen in combinations(useful, count):
        if sum(reach for reach, _ in chosen) >= along - TOLERANCE_IN:
            for order in _orders(chosen):
                parts = _parts([reach for reach, _ in order], along, folds, off_folds)
                yield Butted(tuple(piece for _, piece in order), parts, axis, _places(parts))


def _orders(chosen: Sequence[tuple[float, Leftover]]) -> Iterator[tuple[tuple[float, Leftover], ...]]:
    """The orders of a row, one of each pair that are each other's mirror image."""
    for order in permutations(range(len(chosen))):
        if order[0] < order[-1]:
            yield tuple(chosen[index] for index in order)


def _places(parts: Sequence[float]) -> tuple[float, ...]:
    """Where parts of a row meet, from its middle."""
    place, places = -sum(parts) / 2, []
    for part in parts[:-1]:
        place += part
        places.append(place)
    return tuple(places)


def _parts(reaches: Sequence[float], along: float, folds: tuple[float, ...], off_folds: float) -> tuple[float, ...]:
    """How much of each piece to use: what is too much comes off one end, or off the other when that is better."""
    last = (*reaches[:-1], along - sum(reaches[:-1]))
    first = (along - sum(reaches[1:]), *reaches[1:])
    ways = [way for way in (last, first) if min(way) > TOLERANCE_IN]
    ways += _balanced(reaches, along, folds, off_folds)
    return max(ways, key=lambda way: min(off_folds, _nearest(_places(way), folds)))


def _nearest(places: Iterable[float], folds: Iterable[float]) -> float:
    return min(abs(place - fold) for place in places for fold in folds)


def _balanced(
    reaches: Sequence[float], along: float, folds: tuple[float, ...], off_folds: float
) -> list[tuple[float, ...]]:
    """For two pieces: the join just clear of each fold, where both reach it; in general, even shares."""
    share = along / sum(reaches)
    ways = [tuple(reach * share for reach in reaches)]
    if len(reaches) == 2:
        for fold in folds:
            for place in (fold - off_folds, fold + off_folds):
                parts = (along / 2 + place, along / 2 - place)
                if all(0 < part <= reach + TOLERANCE_IN for part, reach in zip(parts, reaches, strict=True)):
                    ways.append(parts)
    return ways
