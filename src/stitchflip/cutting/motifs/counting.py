"""How many windows a length of fabric gives: wherever the print begins, and where it begins best.

Sliding the print along the fabric changes what can be cut only where a window just touches an edge. Between two such
starts nothing changes, so looking once between and once at each of them is as good as looking everywhere: the fewest
lie between, the most at the touching itself.
"""

from __future__ import annotations

from dataclasses import field
from math import ceil, floor
from typing import TYPE_CHECKING

from stitchflip.cutting.model import Status
from stitchflip.cutting.motifs.choosing import Chosen, most_windows
from stitchflip.cutting.motifs.model import MOST_IN, TOLERANCE, MotifCount, Repeat, Start, Window
from stitchflip.errors import CuttingError
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.cutting.layouts.watch import Watch

MOST_PLACES = 12_000
"""More motifs than these are not looked at one by one."""
_SAME = 1e-5
"""Starts closer together than this are one."""


@dataclass(frozen=True, slots=True)
class Place:
    """Where one window can be cut."""

    x: float
    """Its center, across the fabric."""
    y: float
    """Its center, along the fabric."""
    column: int
    """Column of repeats, from 0."""
    row: int
    """Repeat of its column, from 0."""
    motif: int
    """Number of the motif in the repeat."""


def places(repeat: Repeat, window: Window, wide: float, long: float, start: tuple[float, float]) -> tuple[Place, ...]:
    """Every place where a whole window lies on the fabric, centered on a motif; rows first.

    Args:
        repeat: the print.
        window: what is cut.
        wide: usable width of the fabric, inches.
        long: its length, inches.
        start: where a repeat begins, across and along; without a measured repeat across the one motif lies in the
            middle of the width.

    Raises:
        CuttingError: If there are more motifs than anybody cuts.
    """
    (period_x, period_y), (box_x, box_y) = repeat.period, window.box
    across = period_x or max(wide, TOLERANCE)
    if (wide / across + 1) * (long / period_y + 1) * len(repeat.centers) > MOST_PLACES:
        raise CuttingError(
            what="more motifs than can be looked at one by one",
            fix="Ask for fewer windows, or for a shorter length of fabric.",
            where="repeat",
            code="cutting.too-many-pieces",
        )
    found: list[Place] = []
    for number, (x, y, motif) in enumerate(repeat.centers):
        side = int(number >= len(repeat.motifs))
        xs = _along(x + start[0], period_x, box_x, wide) if period_x else _middle(box_x, wide)
        ys = _along(y + start[1], period_y, box_y, long)
        per_period = 2 if repeat.half_drop else 1
        found += [Place(px, py, i * per_period + side, j, motif) for i, px in xs for j, py in ys]
    return tuple(sorted(found, key=lambda place: (round(place.y, 6), round(place.x, 6))))


def _along(first: float, period: float, box: float, room: float) -> list[tuple[int, float]]:
    """(number of the repeat, place) of the centers whose window lies on the fabric, one way."""
    low = ceil((box / 2 - first - TOLERANCE) / period)
    high = floor((room - box / 2 - first + TOLERANCE) / period)
    return [(number, first + number * period) for number in range(low, high + 1)]


def _middle(box: float, room: float) -> list[tuple[int, float]]:
    return [(0, room / 2)] if box <= room + TOLERANCE else []


@dataclass(slots=True)
class Counting:
    """Counts windows of one size on one print and width; what was counted once is remembered."""

    repeat: Repeat
    window: Window
    wide: float
    """Usable width, inches."""
    start: Start = Start()
    watch: Watch | None = None
    searches: bool = True
    """False: counts quickly, without an integer program, and always the same."""
    is_proved: bool = True
    """False as soon as a count could not be proved in time."""
    _known: dict[tuple[tuple[float, float], ...], Chosen] = field(default_factory=dict)

    def count(self, long: float) -> MotifCount:
        """How many windows a length gives.

        Args:
            long: length of the fabric, inches.
        """
        if not 0 <= long <= MOST_IN:
            raise CuttingError(
                what=f"{long:g} in of fabric to look for motifs on",
                fix="Give a length that a bolt can have.",
                where="long",
                code="cutting.no-length",
            )
        surely = min(self.most(long, (x, y)) for x in self.unlucky(0, long) for y in self.unlucky(1, long))
        at_best = max(self.most(long, (x, y)) for x in self.lucky(0, long) for y in self.lucky(1, long))
        return MotifCount(surely, at_best, Status.PROVED if self.is_proved else Status.BEST_FOUND)

    def chosen(self, long: float) -> int:
        """How many windows a length gives that is cut from the bolt where it suits, whatever lies across.

        Args:
            long: length of the fabric, inches.
        """
        return min(max(self.most(long, (x, y)) for y in self.lucky(1, long)) for x in self.unlucky(0, long))

    def most(self, long: float, start: tuple[float, float]) -> int:
        """The most windows for one start of the print.

        Args:
            long: length of the fabric, inches.
            start: of the repeat, across and along.
        """
        return len(self.chosen_at(long, start).picked)

    def chosen_at(self, long: float, start: tuple[float, float]) -> Chosen:
        """The choice of windows for one start of the print, as numbers of its places.

        Args:
            long: length of the fabric, inches.
            start: of the repeat, across and along.
        """
        own = [(place.x, place.y) for place in places(self.repeat, self.window, self.wide, long, start)]
        if not own:
            return Chosen((), 0)
        key = tuple((round(x - own[0][0], 5), round(y - own[0][1], 5)) for x, y in own)
        if key not in self._known:
            # one count that could not be proved is enough to know that the whole is not: no more searching then
            searches = self.searches and self.is_proved
            self._known[key] = most_windows(own, self.window, self.watch, searches=searches)
        self.is_proved = self.is_proved and self._known[key].status is Status.PROVED
        return self._known[key]

    def unlucky(self, way: int, long: float) -> list[float]:
        """Starts of the print, one way, among which is the one that gives fewest.

        Args:
            way: 0 across, 1 along.
            long: length of the fabric, inches.
        """
        known = self._known_start(way)
        if known is not None:
            return [known]
        turns, period = self._turns(way, long), self.repeat.period[way]
        after = [*turns[1:], turns[0] + period]
        between = [(one + other) / 2 for one, other in zip(turns, after, strict=True) if other - one > _SAME]
        return between or turns

    def lucky(self, way: int, long: float) -> list[float]:
        """Starts of the print, one way, among which is the one that gives most.

        Args:
            way: 0 across, 1 along.
            long: length of the fabric, inches.
        """
        known = self._known_start(way)
        return [known] if known is not None else self._turns(way, long)

    def _known_start(self, way: int) -> float | None:
        if way == 0:
            return 0.0 if self.repeat.across is None else self.start.across
        return self.start.along

    def _turns(self, way: int, long: float) -> list[float]:
        """Starts at which a window just touches an edge, one way, within one period."""
        room, box, period = (self.wide, long)[way], self.window.box[way], self.repeat.period[way]
        touching = sorted(
            (edge - center[way]) % period for center in self.repeat.centers for edge in (box / 2, room - box / 2)
        )
        turns = [touching[0]]
        for turn in touching[1:]:
            if turn - turns[-1] > _SAME and turns[0] + period - turn > _SAME:
                turns.append(turn)
        return turns
