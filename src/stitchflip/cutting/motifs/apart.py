"""Cutting windows apart from edge to edge, and what is left between them.

Whatever cut is free of every window can be made first without spoiling a later one, so looking for any such cut, again
and again, finds out for certain whether windows come apart. Among them the one that frees the largest leftover is
made first: few large leftovers are worth more than many slivers.
"""

from __future__ import annotations

from math import sqrt
from typing import TYPE_CHECKING

from stitchflip.cutting.motifs.model import TOLERANCE, Window
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

    from stitchflip.cutting.motifs.counting import Place

_ZERO = 1e-5


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle of the fabric, inches."""

    left: float
    low: float
    right: float
    high: float

    @property
    def wide(self) -> float:
        """Across the fabric."""
        return self.right - self.left

    @property
    def long(self) -> float:
        """Along the fabric."""
        return self.high - self.low


@dataclass(frozen=True, slots=True)
class Cut:
    """One cut from edge to edge of a piece of the fabric."""

    way: str
    """"across" or "along"."""
    at: float
    """Where: along the fabric for a cut across it, across the fabric for one along it."""
    piece: Box
    """What is cut in two."""


@dataclass(frozen=True, slots=True)
class Block:
    """A piece that is cut out: one window (on point: its upright box), or several that hang together."""

    box: Box
    windows: tuple[int, ...]
    """Numbers of its windows."""


@dataclass(frozen=True, slots=True)
class Apart:
    """How windows are cut apart."""

    cuts: tuple[Cut, ...]
    """In order."""
    blocks: tuple[Block, ...]
    leftovers: tuple[Box, ...]
    """Largest first."""
    comes_apart: bool
    """True: every window can be cut out from edge to edge; blocks of several on point by slanted cuts."""


def cut_apart(wide: float, long: float, window: Window, chosen: Sequence[Place]) -> Apart:
    """Cut windows out of a length of fabric.

    Args:
        wide: usable width, inches.
        long: length, inches.
        window: what is cut.
        chosen: where; windows do not overlap.

    Example:
        >>> from stitchflip.cutting.motifs.counting import Place
        >>> apart = cut_apart(40, 12, Window(8, 8), [Place(6, 6, 0, 0, 0)])
        >>> apart.leftovers[0], len(apart.cuts)
        (Box(left=10.0, low=0.0, right=40, high=12), 4)
    """
    across, along = window.box
    boxes = [Box(p.x - across / 2, p.y - along / 2, p.x + across / 2, p.y + along / 2) for p in chosen]
    cuts: list[Cut] = []
    blocks: list[Block] = []
    leftovers: list[Box] = []
    waiting: list[tuple[Box, tuple[int, ...]]] = [(Box(0.0, 0.0, wide, long), tuple(range(len(chosen))))]
    while waiting:
        piece, windows = waiting.pop()
        if not windows:
            leftovers.append(piece)
            continue
        gap = _widest_gap(piece, [boxes[number] for number in windows])
        if gap is None:
            blocks.append(Block(piece, windows))
            continue
        waiting += reversed(_split(piece, windows, boxes, gap, cuts))
    leftovers.sort(key=lambda box: (-box.wide * box.long, box.low, box.left))
    hang = all(_comes_apart(window, [chosen[number] for number in block.windows]) for block in blocks)
    return Apart(tuple(cuts), tuple(blocks), tuple(leftovers), hang)


@dataclass(frozen=True, slots=True)
class _Gap:
    """Room free of windows right through a piece."""

    way: str
    start: float
    end: float


def _widest_gap(piece: Box, boxes: Iterable[Box]) -> _Gap | None:
    """The free room through a piece that has the largest area; of no width where windows only touch."""
    boxes = list(boxes)
    across = [_Gap("across", *gap) for gap in _gaps(piece.low, piece.high, [(box.low, box.high) for box in boxes])]
    along = [_Gap("along", *gap) for gap in _gaps(piece.left, piece.right, [(box.left, box.right) for box in boxes])]

    def area(gap: _Gap) -> float:
        return round((gap.end - gap.start) * (piece.wide if gap.way == "across" else piece.long), 6)

    return max([*across, *along], key=area, default=None)


def _gaps(start: float, end: float, taken: Iterable[tuple[float, float]]) -> list[tuple[float, float]]:
    """Free stretches between and beside what is taken; between two that touch one without width."""
    found = []
    reached, is_first = start, True
    for low, high in sorted(taken):
        if low > reached + _ZERO or (not is_first and low > reached - TOLERANCE):
            found.append((reached, max(low, reached)))
        reached, is_first = max(reached, high), False
    if end > reached + _ZERO:
        found.append((reached, end))
    return found


def _split(
    piece: Box, windows: tuple[int, ...], boxes: Sequence[Box], gap: _Gap, cuts: list[Cut]
) -> list[tuple[Box, tuple[int, ...]]]:
    """The cuts at both sides of a gap, and the pieces they leave."""
    across = gap.way == "across"
    low, high = (piece.low, piece.high) if across else (piece.left, piece.right)
    places = [at for at in dict.fromkeys((gap.start, gap.end)) if low + _ZERO < at < high - _ZERO]
    if len(places) == 2 and places[1] - places[0] < _ZERO:
        places.pop()
    parts: list[tuple[Box, tuple[int, ...]]] = []
    rest = piece
    for at in (*places, None):
        part = rest
        if at is not None:
            cuts.append(Cut(gap.way, at, rest))
            if across:
                part, rest = Box(rest.left, rest.low, rest.right, at), Box(rest.left, at, rest.right, rest.high)
            else:
                part, rest = Box(rest.left, rest.low, at, rest.high), Box(at, rest.low, rest.right, rest.high)
        own = tuple(number for number in windows if _middle_in(boxes[number], part))
        parts.append((part, own))
    return parts


def _middle_in(box: Box, part: Box) -> bool:
    x, y = (box.left + box.right) / 2, (box.low + box.high) / 2
    return part.left < x < part.right and part.low < y < part.high


def _comes_apart(window: Window, chosen: Sequence[Place]) -> bool:
    """Whether windows that hang together come apart by cuts from edge to edge, upright or along their own edges."""
    if len(chosen) < 2:
        return True
    if not window.on_point:
        return False
    side = window.box[0]
    looks: list[tuple[Callable[[Place], float], float]] = [
        (lambda place: (place.x + place.y) / sqrt(2), window.wide),
        (lambda place: (place.y - place.x) / sqrt(2), window.long),
        (lambda place: place.x, side),
        (lambda place: place.y, side),
    ]
    for look, size in looks:
        ordered = sorted(chosen, key=look)
        for number in range(1, len(ordered)):
            if look(ordered[number]) - look(ordered[number - 1]) >= size - TOLERANCE:
                return _comes_apart(window, ordered[:number]) and _comes_apart(window, ordered[number:])
    return False
