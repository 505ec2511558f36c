"""One sheet filled piece by piece, the most promising beginnings kept: good where many pieces differ.

A sheet is filled strip by strip from below, in each strip stack by stack, in each stack bit by bit; the first stack
of a strip is its tallest. All beginnings of equally many pieces are worked on at once, as columns of numbers; those
that come to the same (same pieces left, same open strip) are met once. Not every piece is laid: of all beginnings met
the one worth most is the plan.

Source:
    The order of the search follows Libralesso, Fontan: An anytime tree search algorithm for the 2018 ROADEF/EURO
    challenge glass cutting problem, https://arxiv.org/abs/2004.00963.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from stitchflip.cutting.layouts.model import LaidStrip, Stack
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    import numpy as np
    from numpy.typing import NDArray

    from stitchflip.cutting.layouts.loads.kinds import Choice, Kind
    from stitchflip.cutting.layouts.model import LayoutTask
    from stitchflip.cutting.layouts.watch import Watch

_ONTO, _BESIDE, _ABOVE = 0, 1, 2
"""Where a piece goes: onto the open stack, beside it, into a new strip."""
_MOST_CELLS = 400_000
"""Beginnings times choices looked at together: what memory and the clock allow."""
_STEP = tuple[Any, Any, Any]
"""Where, on which beginning, and which choice, for each beginning kept."""


@dataclass(frozen=True, slots=True)
class Taste:
    """What makes a beginning promising."""

    ahead: float = 0.02
    """Part of the free room of the open strip that will be lost."""
    even: float = 0.1
    """Part of the worth that is lost anyway: the larger, the earlier pieces of much worth come."""
    by_worth: bool = True
    """Pieces of much worth first."""
    may_leave: bool = False
    """A stack or strip may be closed while something still fits: what fits may be worth more elsewhere."""


class _States:
    """Beginnings, side by side in arrays."""

    __slots__ = ("base", "gained", "high", "is_first", "last", "lead", "left", "mark", "up", "wide", "x")
    base: NDArray[np.int64]
    gained: NDArray[np.int64]
    high: NDArray[np.int64]
    is_first: NDArray[np.bool_]
    last: NDArray[np.int64]
    lead: NDArray[np.int64]
    left: NDArray[np.int64]
    mark: NDArray[np.uint64]
    up: NDArray[np.int64]
    wide: NDArray[np.int64]
    x: NDArray[np.int64]

    def __init__(self, **columns: NDArray[Any]) -> None:
        for name, column in columns.items():
            setattr(self, name, column)


class PieceByPiece:
    """Fills sheets of one kind.

    Args:
        task: stages and trimming.
        kind: the sheet.
        choices: ways to lay pieces; those that do not fit are left out.
    """

    def __init__(self, task: LayoutTask, kind: Kind, choices: Sequence[Choice]) -> None:
        import numpy as np

        self._np = np
        fitting = [choice for choice in choices if choice.wide <= kind.wide and choice.high <= kind.tallest]
        self._choices = sorted(fitting, key=lambda choice: (-choice.wide, -choice.high, choice.want, choice.turned))
        self._kind, self._task = kind, task
        self._wide = np.array([choice.wide for choice in self._choices], dtype=np.int64)
        self._high = np.array([choice.high for choice in self._choices], dtype=np.int64)
        self._want = np.array([choice.want for choice in self._choices], dtype=np.int64)
        self._area = self._wide * self._high
        self._order = np.arange(len(self._choices))
        chance = np.random.default_rng(20)
        self._marks = chance.integers(1, 1 << 63, max(len(task.wants), 1), dtype=np.uint64)
        self._odd = chance.integers(1, 1 << 62, 7, dtype=np.uint64) * np.uint64(2) + np.uint64(1)

    def fill(
        self, counts: Sequence[int], values: Sequence[int], breadth: int, taste: Taste, watch: Watch
    ) -> tuple[int, tuple[LaidStrip, ...]]:
        """Lay pieces until none fits.

        Args:
            counts: how many of each want there are to choose from.
            values: of one of each want; their sum is made large.
            breadth: so many beginnings are kept.
            taste: which ones.
            watch: ends the search.

        Returns:
            The worth of the best plan met, and its strips.
        """
        np = self._np
        breadth = max(1, min(breadth, _MOST_CELLS // max(1, len(self._choices))))
        gains = np.array(values, dtype=np.int64)[self._want]
        room = self._kind.wide * self._kind.high
        density = max((float(gain) / float(area) for gain, area in zip(gains, self._area, strict=True)), default=0.0)
        states, steps, best, told = (
            self._nothing([min(count, room) for count in counts]),
            list[_STEP](),
            0,
            list[tuple[int, int]](),
        )
        while density and not watch.over():
            moves = self._moves(states, gains, density, taste)
            if moves is None:
                break
            where, rows, lays, score = moves
            gained = states.gained[rows] + gains[lays]
            top = int(np.argmax(gained))
            if gained[top] > best:
                best = int(gained[top])
                told = [*_path(steps, int(rows[top])), (int(where[top]), int(lays[top]))]
            states, step = self._kept(states, (where, rows, lays, score), gained, breadth)
            steps.append(step)
        return best, self._told(told)

    def _nothing(self, counts: Sequence[int]) -> _States:
        """The one beginning without any piece."""
        np = self._np
        zero = {name: np.zeros(1, dtype=np.int64) for name in _States.__slots__}
        zero |= {"left": np.array([counts], dtype=np.int64), "is_first": np.zeros(1, dtype=bool)}
        return _States(**zero | {"mark": np.zeros(1, dtype=np.uint64)})

    def _moves(self, s: _States, gains: Any, density: float, taste: Taste) -> Any:  # noqa: ANN401  # arrays
        """Every way to lay one more piece: where, on which beginning, which choice, how good; None: there is none."""
        np, wide = self._np, self._kind.wide
        top = np.where(s.is_first, s.up, s.high)
        found = []
        for where, can in enumerate(self._possible(s, top, taste)):
            cells = np.flatnonzero(can)
            if not len(cells):
                continue
            rows, lays = np.divmod(cells, len(self._order))
            base = s.base[rows] * wide
            if where == _ABOVE:
                covered = base + top[rows] * wide + self._area[lays]
                free = (wide - self._wide[lays]) * self._high[lays]
            elif where == _BESIDE:
                beyond = s.x[rows] + s.wide[rows]
                covered = base + top[rows] * beyond + self._area[lays]
                free = (wide - beyond - self._wide[lays]) * top[rows]
            else:
                up = s.up[rows] + self._high[lays]
                high = np.where(s.is_first[rows], up, s.high[rows])
                covered = base + high * s.x[rows] + s.wide[rows] * up
                free = (wide - s.x[rows] - s.wide[rows]) * high
            worth = (s.gained[rows] + gains[lays]) / density
            lost = (covered + taste.ahead * free) / worth + (taste.even - 1)
            found.append((np.full(len(rows), where), rows, lays, lost / worth if taste.by_worth else lost))
        if not found:
            return None
        return tuple(np.concatenate(part) for part in zip(*found, strict=True))

    def _possible(self, s: _States, top: Any, taste: Taste) -> tuple[Any, Any, Any]:  # noqa: ANN401  # arrays
        """Which choices may go onto the open stack, beside it, and into a new strip: a table each."""
        np, kind, task = self._np, self._kind, self._task
        can = s.left[:, self._want] > 0
        if not s.wide[0]:
            return np.zeros_like(can), np.zeros_like(can), can
        room = kind.high - s.base
        if task.stages in {1, 2}:
            onto = np.zeros_like(can)
        elif task.same_stack:
            onto = can & (self._order == s.last[:, None])
        else:
            onto = can & (self._wide <= s.wide[:, None] if task.trims else self._wide == s.wide[:, None])
        limit = np.where(s.is_first, np.minimum(room, kind.tallest), s.high) - s.up
        onto &= self._high <= limit[:, None]
        beside = can & (self._wide <= (kind.wide - s.x - s.wide)[:, None])
        beside &= self._high == top[:, None] if self._is_one_height() else self._high <= top[:, None]
        above = can & (self._high <= (room - top)[:, None])
        if taste.may_leave:
            beside &= s.is_first[:, None] | (self._order >= s.lead[:, None])
            onto &= self._order >= s.last[:, None]
            return onto, beside, above
        may_close = s.is_first | ~onto.any(axis=1)
        above &= (may_close & ~beside.any(axis=1))[:, None]
        beside &= may_close[:, None] & (s.is_first[:, None] | (self._order >= s.lead[:, None]))
        onto &= self._order >= s.last[:, None]
        return onto, beside, above

    def _is_one_height(self) -> bool:
        return self._task.stages in {1, 2} and not self._task.trims

    def _kept(self, s: _States, moves: Any, gained: Any, breadth: int) -> tuple[_States, _STEP]:  # noqa: ANN401  # arrays
        """The most promising beginnings after the moves, no two the same."""
        np = self._np
        where, rows, lays, score = moves
        best = np.argsort(score, kind="stable")[: 2 * breadth]
        where, rows, lays = where[best], rows[best], lays[best]
        new = self._after(s, where, rows, lays)
        new.gained = gained[best]
        name = new.mark.copy()
        for part, odd in zip((new.high, new.x, new.wide, new.up, new.base, new.last, new.lead), self._odd, strict=True):
            name = (name + (part.astype(np.uint64) + np.uint64(1)) * odd) ^ (name >> np.uint64(29))
        _, firsts = np.unique(name, return_index=True)
        firsts = np.sort(firsts)[:breadth]
        where, rows, lays = where[firsts], rows[firsts], lays[firsts]
        kept = _States(**{slot: getattr(new, slot)[firsts] for slot in _States.__slots__ if slot != "left"})
        kept.left = s.left[rows]
        kept.left[np.arange(len(rows)), self._want[lays]] -= 1
        return kept, (where, rows, lays)

    def _after(self, s: _States, where: Any, rows: Any, lays: Any) -> _States:  # noqa: ANN401  # arrays
        """Beginnings after the moves, all but the pieces left."""
        np = self._np
        onto, beside, above = where == _ONTO, where == _BESIDE, where == _ABOVE
        top = np.where(s.is_first, s.up, s.high)[rows]
        up = np.where(onto, s.up[rows] + self._high[lays], self._high[lays])
        is_first = np.where(onto, s.is_first[rows], above)
        return _States(
            base=np.where(above, s.base[rows] + top, s.base[rows]),
            high=np.where(is_first, up, np.where(beside, top, s.high[rows])),
            x=np.where(onto, s.x[rows], np.where(beside, s.x[rows] + s.wide[rows], 0)),
            wide=np.where(onto, s.wide[rows], self._wide[lays]),
            up=up,
            is_first=is_first,
            last=lays,
            lead=np.where(onto, s.lead[rows], lays),
            mark=s.mark[rows] + self._marks[self._want[lays]],
        )

    def _told(self, moves: Sequence[tuple[int, int]]) -> tuple[LaidStrip, ...]:
        """The strips that a row of moves makes."""
        strips: list[list[list[Choice]]] = []
        for where, lay in moves:
            choice = self._choices[lay]
            if where == _ABOVE:
                strips.append([[choice]])
            elif where == _BESIDE:
                strips[-1].append([choice])
            else:
                strips[-1][-1].append(choice)
        return tuple(
            LaidStrip(
                max(sum(choice.high for choice in stack) for stack in strip),
                tuple(Stack(max(c.wide for c in stack), tuple(c.bit for c in stack)) for stack in strip),
            )
            for strip in strips
        )


def _path(steps: Sequence[_STEP], at: int) -> list[tuple[int, int]]:
    """The moves that led to a beginning, the first one first."""
    out = []
    for where, rows, lays in reversed(steps):
        out.append((int(where[at]), int(lays[at])))
        at = int(rows[at])
    return out[::-1]
