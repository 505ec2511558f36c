"""Can rectangles be cut apart from edge to edge, and how many cuts after one another does that take?

A check, not a search for plans: it knows nothing of strips and stacks. It is given rectangles where they lie and
cuts wherever a straight cut through the whole part of the fabric meets none of them, first one way, then the other.
More cuts of one way at one time never do harm, so when this does not part them, nothing does.
"""

from __future__ import annotations

from bisect import bisect_left
from enum import StrEnum
from itertools import count
from typing import TYPE_CHECKING

from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence


@dataclass(frozen=True, slots=True)
class Rect:
    """One piece where it lies on its sheet, in whole units from the lower left corner."""

    left: int
    low: int
    right: int
    high: int
    name: str

    @property
    def at(self) -> str:
        """Name and place, for a sentence about it."""
        return f"{self.name} at {self.left}, {self.low}"


@dataclass(frozen=True, slots=True)
class Part:
    """A part of the fabric with what lies in it, its edges cut."""

    left: int
    low: int
    right: int
    high: int
    rects: tuple[Rect, ...]

    @property
    def is_at_size(self) -> bool:
        """Whether it is one piece and nothing else."""
        one = self.rects[0]
        edges = (one.left, one.low, one.right, one.high)
        return len(self.rects) == 1 and edges == (self.left, self.low, self.right, self.high)


class Way(StrEnum):
    """Which way a cut goes."""

    ACROSS = "across"
    """Parts what lies below from what lies above."""
    ALONG = "along"
    """Parts what lies left from what lies right."""

    @property
    def other(self) -> Way:
        """The other way."""
        return Way.ALONG if self is Way.ACROSS else Way.ACROSS


def overlap(rects: Sequence[Rect]) -> tuple[Rect, Rect] | None:
    """Two rectangles that lie over one another, if any do.

    Args:
        rects: each with a width and a height above zero.

    Returns:
        Such a pair; None when all lie apart (they may touch).
    """
    if not rects:
        return None
    wide = max(rect.right for rect in rects) - min(rect.left for rect in rects)
    long = max(rect.high for rect in rects) - min(rect.low for rect in rects)
    if long > wide:
        return _overlap_along([(rect.low, rect.high, rect.left, rect.right, rect) for rect in rects])
    return _overlap_along([(rect.left, rect.right, rect.low, rect.high, rect) for rect in rects])


def _overlap_along(spans: Sequence[tuple[int, int, int, int, Rect]]) -> tuple[Rect, Rect] | None:
    """The same, told (begin, end) along the longer way and (low, high) along the other, where few lie side by side."""
    events = [(end, 0, low, high, rect) for _, end, low, high, rect in spans]
    events += [(begin, 1, low, high, rect) for begin, _, low, high, rect in spans]
    lows: list[int] = []
    active: list[tuple[int, int, Rect]] = []
    for _, opens, low, high, rect in sorted(events, key=lambda event: event[:2]):
        place = bisect_left(lows, low)
        if not opens:
            del lows[place], active[place]
            continue
        if place and active[place - 1][1] > low:
            return active[place - 1][2], rect
        if place < len(active) and active[place][0] < high:
            return active[place][2], rect
        lows.insert(place, low)
        active.insert(place, (low, high, rect))
    return None


def cut_apart(sheet: Part, first: Way, stages: int) -> list[Part]:
    """Cut wherever a cut from edge to edge meets no piece, one way after the other.

    Args:
        sheet: the whole sheet with its rectangles.
        first: way of the first cuts.
        stages: so many times, every part then turned; 0: until no cut parts anything any more.

    Returns:
        The parts that hold a piece. One that holds several cannot be cut apart.

    Example:
        >>> pieces = (Rect(0, 0, 2, 3, "a"), Rect(2, 0, 5, 2, "b"))
        >>> [len(part.rects) for part in cut_apart(Part(0, 0, 6, 9, pieces), Way.ACROSS, 1)]
        [2]
        >>> [part.is_at_size for part in cut_apart(Part(0, 0, 6, 9, pieces), Way.ACROSS, 2)]
        [True, False]
    """
    if not sheet.rects:
        return []
    parts, way = [sheet], first
    idle = 0
    for stage in count(1):
        cut = [smaller for part in parts for smaller in _cut(part, way)]
        idle = idle + 1 if len(cut) == len(parts) else 0
        parts, way = cut, way.other
        if stage == stages or (stages <= 0 and idle == 2):
            break
    return parts


def _cut(part: Part, way: Way) -> Iterator[Part]:
    """Every cut of one way that meets no piece; parts without a piece fall off."""
    if part.is_at_size:
        yield part
        return
    is_across = way is Way.ACROSS
    for begin, end, rects in _groups((r.low, r.high, r) if is_across else (r.left, r.right, r) for r in part.rects):
        yield (
            Part(part.left, begin, part.right, end, rects)
            if is_across
            else Part(begin, part.low, end, part.high, rects)
        )


def _groups(spans: Iterable[tuple[int, int, Rect]]) -> Iterator[tuple[int, int, tuple[Rect, ...]]]:
    """Spans that reach into one another, together, from low to high."""
    own: list[Rect] = []
    begin = end = 0
    for low, high, rect in sorted(spans, key=lambda span: span[:2]):
        if own and low >= end:
            yield begin, end, tuple(own)
            own = []
        begin, end = (min(begin, low), max(end, high)) if own else (low, high)
        own.append(rect)
    if own:
        yield begin, end, tuple(own)
