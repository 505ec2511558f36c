"""One sheet, the most worth: which strips to cut, and what the sheet cannot be worth.

The program sells pieces: each strip gives pieces, at most as many as are wanted bring their worth. Prices that the
linear program puts on pieces and on height prove a bound: what is paid for pieces beyond their price, and the most
the sheet can hold at those prices. Where the strips a better plan could use are few enough to list, an integer
program over them finds the best plan there is.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.loads.clipping import clipped
from stitchflip.cutting.layouts.loads.filling import Load, pieces_of
from stitchflip.cutting.layouts.loads.kinds import choices_of, kinds_of
from stitchflip.cutting.layouts.loads.offers import ThreeStageOffers, TwoStageOffers
from stitchflip.cutting.layouts.loads.piece_by_piece import PieceByPiece, Taste
from stitchflip.cutting.layouts.loads.program import Program
from stitchflip.cutting.layouts.watch import Watch

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.loads.program import Solved
    from stitchflip.cutting.layouts.model import LaidStrip, LayoutTask

_MOST_ROUNDS = 250
_TASTES = (Taste(ahead=0.3), Taste(), Taste(may_leave=True), Taste(even=0.0), Taste(ahead=0.1, even=0.5))
_FIRST_FILLS = tuple((100, taste) for taste in _TASTES)
_FILLS = ((4000, _TASTES[0]), *((breadth, taste) for breadth in (1000, 4000, 10000) for taste in _TASTES))
_LAST_TURNS = 6
_A_ROUND = 40
_MOST_LISTED = 20_000
_FIRST_LISTED = 375


class OneSheet:
    """The best plan for one sheet so far, and its bound.

    Args:
        task: one sheet, one of it, first cuts across, every want fits.
        watch: ends the search.
    """

    def __init__(self, task: LayoutTask, watch: Watch) -> None:
        long = task.sheets[0].long
        self._task, self._watch, self._high = task, watch, long or 0
        self._counts = [max(want.count, 0) for want in task.wants]
        self._values = [max(want.value, 0) for want in task.wants]
        self._offers = TwoStageOffers(task) if task.stages in {1, 2} else ThreeStageOffers(task)
        self.strips: tuple[LaidStrip, ...] = ()
        self.value = 0
        self.bound = sum(value * count for value, count in zip(self._values, self._counts, strict=True))
        self._floor = 0
        kind = kinds_of(task)[0]
        self._filler = PieceByPiece(task, kind, choices_of(task.wants, [kind]))
        self._laid: dict[int, LaidStrip] = {}
        self._known: dict[tuple[int, tuple[tuple[int, int], ...]], int] = {}

    def start(self) -> None:
        """A first plan, piece by piece."""
        for taste in (Taste(), Taste(even=0.0)):
            self._fill(30, taste)

    def run(self, seconds: float, floor: int = 0) -> None:
        """Prices, plans from the strips met, all strips a better plan could use, and ever broader filling.

        Args:
            seconds: at most.
            floor: plans worth no more than this are of no interest.
        """
        self._watch, self._floor = self._watch.part(seconds), floor
        self._height_row = len(self._counts)
        self._program = Program([*[(0, None)] * len(self._counts), (0, self._high)])
        self._sold = [
            self._program.add(-value, {want: -1}, count)
            for want, (value, count) in enumerate(zip(self._values, self._counts, strict=True))
        ]
        for strip in self.strips:
            self._add(strip)
        is_two = self._task.stages in {1, 2}
        self._price_out(_MOST_ROUNDS, self._watch.likely_left() * (1.0 if is_two else 0.3))
        self._broaden(_FIRST_FILLS, 0.15)
        listed, may_list = _FIRST_LISTED, not self.is_done() and self._list(_FIRST_LISTED, 0.1)
        rest = self._broaden(_FILLS, 0.3 if is_two else 0.6)
        if not self.is_done():
            self._choose(0.15 if is_two else 0.3)
        while may_list and not self.is_done() and listed < _MOST_LISTED:
            listed *= 4
            may_list = self._list(listed, 0.9)
        self._broaden(rest, 1.0)
        turn = 0
        while not self.is_done() and turn < _LAST_TURNS:
            turn += 1
            self._choose(0.5)

    def _broaden(self, fills: Sequence[tuple[int, Taste]], share: float) -> Sequence[tuple[int, Taste]]:
        """Fill piece by piece, keeping more and more beginnings; what there was no time for."""
        until = self._watch.likely_left() * (1 - share)
        for number, (breadth, taste) in enumerate(fills):
            if self.is_done() or self._watch.likely_left() < until:
                return fills[number:]
            self._fill(breadth, taste)
        return ()

    def _fill(self, breadth: int, taste: Taste) -> None:
        self.offer(self._filler.fill(self._counts, self._values, breadth, taste, self._watch)[1])

    def is_done(self) -> bool:
        """Proved, of no interest, or out of time."""
        return self.value >= self.bound or self.bound <= self._floor or self._watch.over()

    def _add(self, strip: LaidStrip) -> bool:
        """Put a strip into the program; False when it is there already."""
        counts = pieces_of([strip])
        key = (strip.high, tuple(sorted(counts.items())))
        if key in self._known or not counts:
            return False
        column = self._program.add(0.0, {**counts, self._height_row: strip.high})
        self._known[key] = column
        self._laid[column] = strip
        return True

    def _price_out(self, rounds: int, seconds: float) -> None:
        """Add strips until none would make the program worth more."""
        self._solved: Solved | None = None
        until = self._watch.likely_left() - seconds
        for _ in range(rounds):
            if self.is_done() or self._watch.likely_left() < until:
                return
            solved = self._program.solve(self._watch.likely_left())
            if solved is None:
                return
            self._solved = solved
            scale = self._scale()
            worths = [int(max(dual, 0.0) * scale) for dual in solved.duals[: self._height_row]]
            most = self._offers.price(worths)
            if self._offers.is_exact:
                self._lower_bound(worths, most, scale)
            a_unit = max(-solved.duals[self._height_row], 0.0) * scale
            over = [worth - a_unit * self._offers.heights[level] for level, worth in enumerate(most)]
            better = [level for level, more in enumerate(over) if most[level] > 0 and more > 1e-9 * most[level] + 1]
            better.sort(key=lambda level: (-over[level], level))
            added = sum(self._add(strip) for level in better[:_A_ROUND] for strip in self._offers.strips(level))
            if not added:
                return

    def _scale(self) -> int:
        """Whole numbers for a worth of 1."""
        largest = max(max(self._values, default=1), 1) * (sum(min(count, 1000) for count in self._counts) + 1)
        return 1 << max(0, min(20, 58 - largest.bit_length()))

    def _lower_bound(self, worths: Sequence[int], most: Sequence[int], scale: int) -> None:
        """What pieces bring above their price, and the most the sheet can hold at these prices."""
        above = sum(
            max(0, value * scale - worth) * count
            for value, worth, count in zip(self._values, worths, self._counts, strict=True)
        )
        self.bound = min(self.bound, (above + self._most_held(most)) // scale)

    def _most_held(self, most: Sequence[int]) -> int:
        """Strips over one another up to the height of the sheet, each worth the most it can be."""
        import numpy as np

        if self._high > 200_000:
            rate = max((worth / height for worth, height in zip(most, self._offers.heights, strict=True)), default=0.0)
            return int(rate * self._high * (1 + 1e-9)) + 1
        table = np.zeros(self._high + 1, dtype=np.int64)
        best = 0
        for height, worth in zip(self._offers.heights, most, strict=True):
            if worth <= best:
                continue
            best, times = worth, 1
            while height * times <= self._high:
                reach = height * times
                np.maximum(table[reach:], table[: self._high + 1 - reach] + times * worth, out=table[reach:])
                times *= 2
        return int(np.maximum.accumulate(table)[-1])

    def _choose(self, share: float, columns: Sequence[int] | None = None) -> bool:
        """The best plan of the strips met, by an integer program; whether that is certain."""
        if columns is None:
            columns = [c for c, strip in sorted(self._laid.items()) if self._is_within(strip)]
        chosen = [*self._sold, *columns]
        seconds = max(0.05, self._watch.likely_left() * share)
        found, bound = self._program.solve_whole(seconds, chosen)
        if found is None:
            return False
        strips: list[LaidStrip] = []
        for column, amount in zip(chosen, found.amounts, strict=True):
            if column in self._laid:
                strips += [self._laid[column]] * round(amount)
        self.offer(strips)
        if bound < found.value - 0.5:
            return False
        sure, bound = self._program.solve_whole(max(0.05, self._watch.likely_left()), chosen, is_proof=True)
        return sure is not None and bound >= found.value - 0.5

    def _is_within(self, strip: LaidStrip) -> bool:
        """Whether no piece is in it more often than it is wanted."""
        return all(count <= self._counts[want] for want, count in pieces_of([strip]).items())

    def offer(self, strips: Sequence[LaidStrip]) -> None:
        """Keep strips if they are worth more; pieces too many are left out."""
        load = clipped(Load(0, tuple(strips)), self._counts, self._task.wants, along=False, trims=self._task.trims)
        value = sum(self._values[want] * count for want, count in load.counts().items())
        if value > self.value and sum(strip.high for strip in load.strips) <= self._high:
            self.value, self.strips = value, load.strips

    def _list(self, most: int, share: float) -> bool:
        """List the strips a better plan could use and choose from them; False when more listing would not help."""
        if not isinstance(self._offers, TwoStageOffers) or self._solved is None:
            return False
        from stitchflip.cutting.layouts.columns.generating import SCALE, Promise
        from stitchflip.cutting.layouts.columns.listing import all_strips

        rate = Fraction(max(-self._solved.duals[self._height_row], 0.0)).limit_denominator(1 << 20)
        if rate <= 0:
            return False
        offers = self._offers
        worths = [int(max(dual, 0.0) / float(rate) * SCALE) for dual in self._solved.duals[: self._height_row]]
        found = offers.knapsack.priced(worths)
        for height, worth in found.offers(SCALE):
            if worth > height * SCALE:
                worths = [value * height * SCALE // worth for value in worths]
        above = sum(
            max(Fraction(0), value - rate * worth / SCALE) * count
            for value, worth, count in zip(self._values, worths, self._counts, strict=True)
        )
        gap = above + rate * self._high - (max(self.value, self._floor) + 1)
        if gap < 0:
            self.bound = min(self.bound, max(self.value, self._floor))
            return False
        proved = sum(count * worth for count, worth in zip(self._counts, worths, strict=True))
        ceiling = -(-(gap / rate * SCALE + proved) // SCALE)
        listing = all_strips(offers.knapsack, Promise(Fraction(0), tuple(worths)), int(ceiling), self._watch, most=most)
        if not listing.is_complete:
            return True
        level_of = {height: level for level, height in enumerate(offers.heights)}
        columns = []
        for column in listing.columns:
            strip = offers.laid(level_of[column.cost], column.uses)
            self._add(strip)
            columns.append(self._known[strip.high, tuple(sorted(pieces_of([strip]).items()))])
        if self._choose(share, columns):
            self.bound = min(self.bound, max(self.value, self._floor))
            return False
        return True
