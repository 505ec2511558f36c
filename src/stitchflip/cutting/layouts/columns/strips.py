"""Strips across the full width: which pieces side by side are worth most, for every height a strip can have.

In a strip of a given height each piece lies the narrower way of those that fit under it, so both ways of a piece are
one choice. One pass over all pieces by height fills a table of the width that prices every height; there the two
ways of a piece may both be counted, so its worths are bounds. A height is looked at again, exactly, where that
matters.
"""

from __future__ import annotations

from bisect import bisect_left
from typing import TYPE_CHECKING, Any

from stitchflip.cutting.layouts.columns.column import Column
from stitchflip.cutting.layouts.columns.generating import SCALE, Offered
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from stitchflip.cutting.layouts.columns.column import Uses
    from stitchflip.cutting.layouts.columns.generating import Pricer
    from stitchflip.cutting.layouts.model import LayoutTask

BIGGEST_TABLE = 25_000_000
"""Cells of a table of the width; beyond that the memory goes."""
_NOTHING = -(1 << 62)
"""Worth of a width below zero."""


@dataclass(frozen=True, slots=True)
class Way:
    """How a piece may lie."""

    wide: int
    long: int
    is_turned: bool


@dataclass(frozen=True, slots=True)
class Kind:
    """Equal pieces and the ways they may lie, the lowest first."""

    count: int
    ways: tuple[Way, ...]


def kinds_of(task: LayoutTask, sheet_number: int = 0) -> tuple[Kind, ...]:
    """The wants as kinds of pieces for strips of one sheet.

    Args:
        task: already small.
        sheet_number: which sheet.

    Returns:
        One kind for each want; one that does not fit on the sheet has no way to lie.
    """
    sheet = task.sheets[sheet_number]
    limits = [limit for limit in (sheet.long, task.tallest_strip) if limit is not None]
    kinds = []
    for want in task.wants:
        ways = [Way(want.wide, want.long, is_turned=False)]
        if want.can_turn and want.wide != want.long:
            ways.append(Way(want.long, want.wide, is_turned=True))
        fitting = [way for way in ways if way.wide <= sheet.wide and all(way.long <= limit for limit in limits)]
        kinds.append(Kind(count=want.count, ways=tuple(sorted(fitting, key=lambda way: way.long))))
    return tuple(kinds)


class StripKnapsack:
    """Finds the strips worth most.

    Args:
        kinds: the pieces.
        wide: of the sheet.
        is_trimmed: pieces may be lower than their strip; otherwise all of a strip are as high as it is.
        heights: strips of these heights only; None: of every height a piece can have.
    """

    def __init__(
        self, kinds: Sequence[Kind], wide: int, *, is_trimmed: bool, heights: Iterable[int] | None = None
    ) -> None:
        self.kinds = tuple(kinds)
        self.wide = wide
        self.is_trimmed = is_trimmed
        every = {way.long for kind in kinds for way in kind.ways} if heights is None else set(heights)
        self.heights = tuple(sorted(every))
        self._lying: list[list[tuple[int, Way]]] = [[] for _ in self.heights]
        self._table: _Table | None = None
        for number, kind in enumerate(kinds):
            for way in kind.ways:
                level = bisect_left(self.heights, way.long)
                if level < len(self.heights) and self._suits(way, self.heights[level]):
                    self._lying[level].append((number, way))

    def holds_all(self) -> bool:
        """Whether every kind fits in some strip."""
        return len({kind for lying in self._lying for kind, _ in lying}) == len(self.kinds)

    def cells(self) -> int:
        """Size of the tables it needs, to be compared with `BIGGEST_TABLE`."""
        handfuls = (min(self.kinds[kind].count, self.wide // way.wide) for lying in self._lying for kind, way in lying)
        return sum(count.bit_length() for count in handfuls) * 2 * (self.wide + 1)

    def priced(self, worths: Sequence[int], limits: Sequence[int] | None = None) -> PricedStrips:
        """Find the worth of the best strip of every height.

        Args:
            worths: of one piece of each kind, whole numbers.
            limits: pieces of each kind a strip may hold; None: all there are.

        Returns:
            The worths, and the strips on request.
        """
        return PricedStrips(self, worths, [kind.count for kind in self.kinds] if limits is None else limits)

    def table(self) -> _Table:
        """The table of the width, empty; always the same one, since making it takes as long as filling it."""
        if self._table is None:
            handfuls = (
                min(self.kinds[kind].count, self.wide // way.wide) for lies in self._lying for kind, way in lies
            )
            rows = sum(count.bit_length() for count in handfuls) + len(self.heights)
            self._table = _Table(self.wide, rows)
        self._table.clear()
        return self._table

    def best_of_height(self, level: int, worths: Sequence[int], limits: Sequence[int]) -> tuple[int, Uses]:
        """The strip of one height that is worth most, each kind lying one way only.

        Args:
            level: number of the height.
            worths: of one piece of each kind, whole numbers.
            limits: pieces of each kind it may hold.

        Returns:
            Its worth and its pieces.
        """
        lying = [(kind, way) for kind, way in self.lying(level) if worths[kind] > 0 and limits[kind] > 0]
        table = _Table(self.wide, sum(min(limits[kind], self.wide // way.wide).bit_length() for kind, way in lying))
        for kind, way in lying:
            table.put(kind, way.wide, worths[kind], limits[kind])
        return table.most([table.rows])[0], table.pieces(0, table.rows)

    def newly_lying(self, level: int) -> list[tuple[int, Way]]:
        """Kinds and ways that fit in strips of this height and in none lower."""
        return self._lying[level]

    def lying(self, level: int) -> list[tuple[int, Way]]:
        """For each kind that fits in a strip of that height, the narrowest way it can lie in it."""
        if not self.is_trimmed:
            return self._lying[level]
        best: dict[int, Way] = {}
        for lower in range(level + 1):
            best.update(self._lying[lower])
        return sorted(best.items())

    def way(self, kind: int, high: int) -> Way:
        """How a piece lies in a strip of a height: the narrowest way that fits."""
        return [way for way in self.kinds[kind].ways if self._suits(way, high)][-1]

    def column(self, pieces: Sequence[tuple[int, int]]) -> Column | None:
        """The lowest strip that holds the given pieces side by side, if any does.

        Args:
            pieces: (kind, count).
        """
        for high in self.heights:
            if all(any(self._suits(way, high) for way in self.kinds[kind].ways) for kind, _ in pieces):
                room = sum(self.way(kind, high).wide * count for kind, count in pieces)
                if room <= self.wide:
                    return Column(cost=high, uses=tuple(sorted(pieces)))
        return None

    def _suits(self, way: Way, high: int) -> bool:
        """Whether a piece lying that way may be in a strip of that height."""
        return way.long <= high if self.is_trimmed else way.long == high


class PricedStrips:
    """The worth of the best strip of every height, at given worths of the pieces; readable until the next pricing."""

    def __init__(self, knapsack: StripKnapsack, worths: Sequence[int], limits: Sequence[int]) -> None:
        self._knapsack = knapsack
        self._worths = worths
        self._limits = limits
        self._table = table = knapsack.table()
        self._ends: list[tuple[int, int]] = []
        self._exact: dict[int, tuple[int, Uses]] = {}
        begin = 0
        for level in range(len(knapsack.heights)):
            if not knapsack.is_trimmed:
                begin = table.start_anew()
            for kind, way in knapsack.newly_lying(level):
                if worths[kind] > 0 and limits[kind] > 0:
                    table.put(kind, way.wide, worths[kind], limits[kind])
            self._ends.append((begin, table.rows))
        self.at_most: list[int] = table.most([end for _, end in self._ends])
        """For each height: no strip of it is worth more. A strip worth that much need not exist."""

    def best(self, level: int) -> tuple[int, Uses]:
        """The strip of a height that is worth most.

        Args:
            level: number of the height.

        Returns:
            Its worth and its pieces.
        """
        if level not in self._exact:
            uses = self._table.pieces(*self._ends[level])
            if all(count <= self._limits[kind] for kind, count in uses):
                self._exact[level] = (self.at_most[level], uses)
            else:
                self._exact[level] = self._knapsack.best_of_height(level, self._worths, self._limits)
        return self._exact[level]

    def quick(self, level: int) -> Uses:
        """A strip of a height that is worth much, quicker: the best one, what it has too much of left out."""
        pieces = self._table.pieces(*self._ends[level])
        return tuple((kind, min(count, self._limits[kind])) for kind, count in pieces)

    def offers(self, scale: int) -> list[tuple[int, int]]:
        """Cost and most worth of a strip for each height, for a bound.

        Args:
            scale: whole numbers of worth for a cost of 1.
        """
        told = []
        for level, high in enumerate(self._knapsack.heights):
            most = self.at_most[level]
            told.append((high, most if most <= high * scale else self.best(level)[0]))
        return told


def strip_pricer(knapsack: StripKnapsack, limits: Sequence[int] | None = None) -> Pricer:
    """Finds strips for the rounds of `generated`.

    Args:
        knapsack: the pieces and the width.
        limits: pieces of each kind a strip may hold; None: all there are.

    Returns:
        For each height the strip that is worth most; a quick guess at it until the last round.
    """

    def pricer(worths: Sequence[int], *, is_last: bool) -> Offered:
        priced = knapsack.priced(worths, limits)
        columns = []
        for level, high in enumerate(knapsack.heights):
            if priced.at_most[level] > high * SCALE:
                uses = priced.best(level)[1] if is_last else priced.quick(level)
                columns.append(Column(cost=high, uses=uses))
        offers = priced.offers(SCALE) if is_last else list(zip(knapsack.heights, priced.at_most, strict=True))
        return Offered(offers=offers, columns=columns)

    return pricer


class _Table:
    """Most worth within each width, a row after every handful of equal pieces.

    Left of each row lies as much again that is worth less than nothing, so that a row is one sum and one comparison
    of the row before with itself moved by the width of the handful.
    """

    def __init__(self, wide: int, rows: int) -> None:
        import numpy as np

        self._maximum = np.maximum
        self._cells: Any = np.full((rows + 1, 2 * wide + 1), _NOTHING, dtype=np.int64)
        self._zero, self._end = wide, 2 * wide + 1
        self._handfuls: list[tuple[int, int, int]] = []
        self.clear()

    @property
    def rows(self) -> int:
        """Handfuls put so far."""
        return len(self._handfuls)

    def clear(self) -> None:
        """Begin again."""
        self._handfuls.clear()
        self._cells[0, self._zero :] = 0

    def start_anew(self) -> int:
        """Begin an empty table below; the rows before stay readable.

        Returns:
            Its first row, which says that nothing is worth nothing.
        """
        if self.rows:
            self._handfuls.append((-1, 0, 0))
            self._cells[self.rows, self._zero :] = 0
        return self.rows

    def put(self, kind: int, wide: int, worth: int, limit: int) -> None:
        """Offer up to so many pieces, in handfuls of 1, 2, 4, ..., so that any number can be made of them."""
        zero, end, cells, handfuls = self._zero, self._end, self._cells, self._handfuls
        left = min(limit, zero // wide)
        handful = 1
        while left > 0:
            handful = min(handful, left)
            before, moved = cells[len(handfuls)], handful * wide
            handfuls.append((kind, wide, handful))
            self._maximum(
                before[zero:], before[zero - moved : end - moved] + handful * worth, out=cells[len(handfuls), zero:]
            )
            left -= handful
            handful *= 2

    def most(self, ends: Sequence[int]) -> list[int]:
        """Most worth in the full width after the first so many handfuls, for each of the numbers."""
        worths: list[int] = self._cells[ends, -1].tolist()
        return worths

    def pieces(self, begin: int, end: int) -> Uses:
        """The pieces of the rows after begin that are worth that much; too many of a kind, if it was put twice."""
        counts: dict[int, int] = {}
        place = self._end - 1
        while (worth := self._cells[end, place]) > 0:
            end = begin + int(self._cells[begin : end + 1, place].searchsorted(worth))
            kind, wide, handful = self._handfuls[end - 1]
            counts[kind] = counts.get(kind, 0) + handful
            place -= wide * handful
            end -= 1
        return tuple(sorted(counts.items()))
