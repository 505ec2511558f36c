"""Pieces laid one by one, and of all beginnings the most promising kept: good plans where many pieces differ.

A plan is laid strip by strip from below, in each strip stack by stack, in each stack bit by bit. The first stack of a
strip is its tallest, so the height is known before the second begins. The next piece goes onto the open stack, beside
it or into a new strip. A stack or a strip is closed only when nothing that is left fits into it: a plan that does
otherwise can be told better. So each plan is met in few orders, and beginnings that come to the same (same pieces
left, same open strip) are met once. All beginnings of equally many pieces are worked on at once, as columns of numbers.

When nothing had to be left out for want of room, finding no plan proves that there is none.

Source:
    The order of the search follows Libralesso, Fontan: An anytime tree search algorithm for the 2018 ROADEF/EURO
    challenge glass cutting problem, https://arxiv.org/abs/2004.00963, and Fontan, Libralesso,
    https://arxiv.org/abs/2004.02603. Working on columns of numbers, and the tallest stack first, are our own.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from stitchflip.cutting.layouts.stacks.ground import PiledStrip
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import DTypeLike, NDArray

    from stitchflip.cutting.layouts.stacks.ground import Ground
    from stitchflip.cutting.layouts.watch import Watch

ONTO, BESIDE, ABOVE = 0, 1, 2
"""Where a piece goes: onto the open stack, into a new stack, into a new strip."""
_HALF_OF_INT32 = 1 << 30
_MOST_CELLS = 1_000_000
"""Beginnings times lays looked at together: what memory and the clock allow."""

_SECONDS_A_ROUND, _SECONDS_A_STATE, _SECONDS_A_MOVE = 5e-4, 1e-6, 3.5e-8
"""Measured on a small machine; only what they are to one another matters much."""
_SECONDS_A_LOOK = 1 / 300
"""A watch that counts looks instead of seconds is looked at so often."""


@dataclass(frozen=True, slots=True)
class Guide:
    """What makes a beginning promising."""

    ahead: float = 0.02
    """Part of the free room of the open strip that will be lost."""
    even: float = 0.1
    """Part of all pieces that is lost anyway: the larger, the earlier large pieces come."""
    by_size: bool = True
    """Large pieces first."""
    in_order: bool = True
    """Stacks of a strip, and bits of a stack, are laid by falling width: fewer ways to meet the same plan, and fewer
    ways to begin well."""


@dataclass(frozen=True, slots=True)
class Found:
    """What came of one search."""

    strips: tuple[PiledStrip, ...] | None
    """A plan within the goal, if any was found."""
    length: int
    """Of the plan."""
    is_whole: bool
    """Nothing was left out: without a plan there is none."""
    reached: float = 1.0
    """Part of the pieces laid before no beginning could go on."""


class Beam:
    """Searches plans for some pieces.

    Args:
        ground: what the pieces are.
        counts: how many of each are to be laid.
        worths: length of fabric one piece of each want is worth, to know what is lost; None: its area tells.
    """

    def __init__(self, ground: Ground, counts: Sequence[int], worths: Sequence[float] | None = None) -> None:
        import numpy as np

        self._np = np
        self._ground = ground
        self._rows = [want for want, count in enumerate(counts) if count]
        place = {want: row for row, want in enumerate(self._rows)}
        self._numbers = [number for number, lay in enumerate(ground.lays) if lay.want in place]
        lays = [ground.lays[number] for number in self._numbers]
        self._whole_area = ground.area(counts)
        longest = sum(counts[lay.want] * lay.long for lay in lays)
        self._int = np.int32 if longest * ground.wide < _HALF_OF_INT32 else np.int64
        self._wide: Any = np.array([lay.wide for lay in lays], dtype=self._int)
        self._long: Any = np.array([lay.long for lay in lays], dtype=self._int)
        self._want: Any = np.array([place[lay.want] for lay in lays], dtype=np.int64)
        self._area = self._wide * self._long
        self._worth = self._area.astype(float)
        if worths is not None:
            self._worth = np.array([worths[lay.want] * ground.wide for lay in lays])
        self._order: Any = np.arange(len(lays), dtype=self._int)
        self._counts = np.array([counts[want] for want in self._rows], dtype=np.int32)
        self.pieces = int(self._counts.sum())
        """To be laid."""
        chance = np.random.default_rng(20)
        self._marks = chance.integers(1, 1 << 63, len(self._rows), dtype=np.uint64)
        self._odd = chance.integers(1, 1 << 62, 7, dtype=np.uint64) * np.uint64(2) + np.uint64(1)

    def broadest(self) -> int:
        """More beginnings than this are never kept."""
        return max(64, _MOST_CELLS // max(1, len(self._numbers)))

    def seconds(self, breadth: int) -> float:
        """About how long a search takes that does not end early."""
        return self.pieces * self._seconds_a_piece(breadth)

    def _seconds_a_piece(self, breadth: int) -> float:
        """About how long it takes to lay one more piece."""
        return _SECONDS_A_ROUND + breadth * (_SECONDS_A_STATE + _SECONDS_A_MOVE * len(self._numbers))

    def search(self, goal: int, breadth: int, guide: Guide, watch: Watch) -> Found:
        """Look for a plan.

        Args:
            goal: no longer than this.
            breadth: so many beginnings are kept.
            guide: which ones.
            watch: ends the search.

        Returns:
            The shortest plan among those met.
        """
        states = _States.empty(self._counts, self._int)
        steps: list[tuple[NDArray[Any], NDArray[Any], NDArray[Any]]] = []
        is_whole = True
        looks = 1 + int(self._seconds_a_piece(breadth) / _SECONDS_A_LOOK)
        for laid in range(self.pieces):
            if any(watch.over() for _ in range(looks)):
                return Found(strips=None, length=0, is_whole=False)
            moves = self._moves(states, goal, guide)
            if moves is None:
                return Found(strips=None, length=0, is_whole=is_whole, reached=laid / self.pieces)
            if laid == self.pieces - 1:
                found = self._finished(states, moves, steps)
                return found if found.length <= goal else Found(strips=None, length=0, is_whole=is_whole)
            kept, is_short = self._kept(states, moves, breadth, guide)
            is_whole = is_whole and not is_short
            states = kept[0]
            steps.append(kept[1])
        return Found(strips=(), length=0, is_whole=True)

    def _moves(self, s: _States, goal: int, guide: Guide) -> _Moves | None:
        """Every way to lay one more piece that can still reach the goal."""
        np = self._np
        most_waste = goal * self._ground.wide - self._whole_area
        top = np.where(s.is_first, s.up, s.high)
        found = []
        for where, can in enumerate(self._possible(s, top, goal, guide)):
            cells = np.flatnonzero(can)
            if not len(cells):
                continue
            rows, lays = np.divmod(cells, len(self._order))
            covered, free = self._covered(s, top, where, rows, lays)
            area = s.area[rows] + self._area[lays]
            waste = covered - area
            good = np.flatnonzero(waste <= most_waste)
            if not len(good):
                continue
            rows, lays = rows[good], lays[good]
            worth = s.worth[rows] + self._worth[lays]
            lost = (covered[good] + guide.ahead * free[good]) / worth + (guide.even - 1)
            found.append(
                (np.full(len(rows), where, dtype=np.int8), rows, lays, lost / worth if guide.by_size else lost)
            )
        if not found:
            return None
        where_to, rows, lays, score = (np.concatenate(parts) for parts in zip(*found, strict=True))
        return _Moves(where_to, rows, lays, score, top)

    def _possible(
        self, s: _States, top: NDArray[Any], goal: int, guide: Guide
    ) -> tuple[NDArray[Any], NDArray[Any], NDArray[Any]]:
        """Which lays may go onto the open stack, beside it, and into a new strip: a table each."""
        np, ground = self._np, self._ground
        can = (s.left > 0)[:, self._want]
        limit = goal if ground.tallest is None else min(goal, ground.tallest)
        if s.is_empty:
            nothing = np.zeros_like(can)
            return nothing, nothing, can & (self._long <= limit)
        if ground.same_stack:
            suits = self._order == s.last[:, None]
        elif ground.can_trim:
            suits = self._wide <= s.wide[:, None]
        else:
            suits = self._wide == s.wide[:, None]
        onto = can & suits & (self._long <= (np.where(s.is_first, limit, s.high) - s.up)[:, None])
        beside = can & (self._wide <= (ground.wide - s.across - s.wide)[:, None]) & (self._long <= top[:, None])
        may_close = s.is_first | ~onto.any(axis=1)
        above = can & (self._long <= limit) & (may_close & ~beside.any(axis=1))[:, None]
        beside &= may_close[:, None]
        if guide.in_order:
            beside &= s.is_first[:, None] | (self._order >= s.lead[:, None])
            onto &= self._order >= s.last[:, None]
        return onto, beside, above

    def _covered(
        self, s: _States, top: NDArray[Any], where: int, rows: NDArray[Any], lays: NDArray[Any]
    ) -> tuple[NDArray[Any], NDArray[Any]]:
        """Room that is filled or lost after a move, and room still free in the open strip."""
        np, full = self._np, self._ground.wide
        base = s.base[rows] * full
        if where == ABOVE:
            return (s.base[rows] + top[rows]) * full + self._area[lays], (full - self._wide[lays]) * self._long[lays]
        beyond = s.across[rows] + s.wide[rows]
        if where == BESIDE:
            high = top[rows]
            return base + high * beyond + self._area[lays], (full - beyond - self._wide[lays]) * high
        up = s.up[rows] + self._long[lays]
        high = np.where(s.is_first[rows], up, s.high[rows])
        return base + high * s.across[rows] + s.wide[rows] * up, (full - beyond) * high

    def _kept(
        self, s: _States, moves: _Moves, breadth: int, guide: Guide
    ) -> tuple[tuple[_States, tuple[NDArray[Any], NDArray[Any], NDArray[Any]]], bool]:
        """The most promising beginnings after the moves, no two the same; and whether others were left out."""
        np = self._np
        wanted = 2 * breadth
        is_short = len(moves.score) > wanted
        if is_short:
            best = np.argpartition(moves.score, wanted)[:wanted]
            best = best[np.lexsort((best, moves.score[best]))]
        else:
            best = np.argsort(moves.score, kind="stable")
        where, rows, lays = moves.where[best], moves.rows[best], moves.lays[best]
        new = self._after(s, moves.top, where, rows, lays)
        _, firsts = np.unique(self._names(new, guide), return_index=True)
        is_short = is_short or len(firsts) > breadth
        firsts = np.sort(firsts)[:breadth]
        where, rows, lays = where[firsts], rows[firsts], lays[firsts]
        new = new.taken(firsts)
        new.left = s.left[rows]
        new.left[np.arange(len(rows)), self._want[lays]] -= 1
        return (new, (where, rows.astype(np.int32), lays.astype(np.int32))), is_short

    def _after(
        self, s: _States, top: NDArray[Any], where: NDArray[Any], rows: NDArray[Any], lays: NDArray[Any]
    ) -> _States:
        """Beginnings after the moves, all but the pieces left."""
        np = self._np
        onto, beside, above = where == ONTO, where == BESIDE, where == ABOVE
        wide, long = self._wide[lays], self._long[lays]
        up = np.where(onto, s.up[rows] + long, long)
        is_first = np.where(onto, s.is_first[rows], above)
        return _States(
            left=s.left,
            base=np.where(above, s.base[rows] + top[rows], s.base[rows]),
            high=np.where(is_first, up, np.where(beside, top[rows], s.high[rows])),
            across=np.where(onto, s.across[rows], np.where(beside, s.across[rows] + s.wide[rows], 0)),
            wide=np.where(onto, s.wide[rows], wide),
            up=up,
            is_first=is_first,
            last=lays.astype(self._int),
            lead=np.where(onto, s.lead[rows], lays).astype(self._int),
            mark=s.mark[rows] + self._marks[self._want[lays]],
            area=s.area[rows] + self._area[lays],
            worth=s.worth[rows] + self._worth[lays],
        )

    def _names(self, s: _States, guide: Guide) -> NDArray[Any]:
        """A number for each beginning: the same pieces left and the same open strip have the same."""
        parts = [s.high, s.across, s.wide, s.up, s.is_first]
        if guide.in_order or self._ground.same_stack:
            parts += [s.last, s.lead]
        name = s.mark.copy()
        for part, odd in zip(parts, self._odd, strict=False):
            name += (part.astype(self._np.uint64) + self._np.uint64(1)) * odd
            name ^= name >> self._np.uint64(29)
        return name

    def _finished(
        self, s: _States, moves: _Moves, steps: list[tuple[NDArray[Any], NDArray[Any], NDArray[Any]]]
    ) -> Found:
        """The shortest plan, told from its last piece back to its first."""
        np = self._np
        new = self._after(s, moves.top, moves.where, moves.rows, moves.lays)
        lengths = new.base + new.high
        best = int(np.argmin(lengths))
        told = [(int(moves.where[best]), int(moves.lays[best]))]
        at = int(moves.rows[best])
        for where, rows, lays in reversed(steps):
            told.append((int(where[at]), int(lays[at])))
            at = int(rows[at])
        return Found(strips=self._told(told[::-1]), length=int(lengths[best]), is_whole=False)

    def _told(self, moves: Sequence[tuple[int, int]]) -> tuple[PiledStrip, ...]:
        """The strips that a row of moves makes."""
        strips: list[list[list[int]]] = []
        for where, lay in moves:
            if where == ABOVE:
                strips.append([[lay]])
            elif where == BESIDE:
                strips[-1].append([lay])
            else:
                strips[-1][-1].append(lay)
        return tuple(
            PiledStrip(
                high=max(sum(int(self._long[lay]) for lay in stack) for stack in stacks),
                stacks=tuple(tuple(self._numbers[lay] for lay in stack) for stack in stacks),
            )
            for stacks in strips
        )


class _Moves:
    """Ways to lay one more piece, side by side in arrays."""

    __slots__ = ("lays", "rows", "score", "top", "where")

    def __init__(
        self, where: NDArray[Any], rows: NDArray[Any], lays: NDArray[Any], score: NDArray[Any], top: NDArray[Any]
    ) -> None:
        self.where, self.rows, self.lays, self.score, self.top = where, rows, lays, score, top


class _States:
    """Beginnings of plans, side by side in arrays."""

    __slots__ = ("across", "area", "base", "high", "is_first", "last", "lead", "left", "mark", "up", "wide", "worth")

    left: NDArray[Any]
    """Pieces of each want."""
    base: NDArray[Any]
    """Height of the closed strips."""
    high: NDArray[Any]
    """Of the open strip."""
    across: NDArray[Any]
    """Width of its closed stacks."""
    wide: NDArray[Any]
    """Of the open stack."""
    up: NDArray[Any]
    """Height of the bits in it."""
    is_first: NDArray[Any]
    """The open stack is the first of its strip."""
    last: NDArray[Any]
    """Lay of the last piece."""
    lead: NDArray[Any]
    """Lay of the first piece of the open stack."""
    mark: NDArray[Any]
    """Stands for the pieces laid."""
    area: NDArray[Any]
    """Of the pieces laid."""
    worth: NDArray[Any]
    """Of the pieces laid."""

    def __init__(self, **columns: NDArray[Any]) -> None:
        for name, column in columns.items():
            setattr(self, name, column)

    @classmethod
    def empty(cls, counts: NDArray[Any], number: DTypeLike) -> _States:
        """The one beginning without any piece."""
        import numpy as np

        zero = {name: np.zeros(1, dtype=number) for name in cls.__slots__}
        zero |= {"left": counts[None, :].copy(), "is_first": np.zeros(1, dtype=bool)}
        return cls(**zero | {"mark": np.zeros(1, dtype=np.uint64), "worth": np.zeros(1)})

    @property
    def is_empty(self) -> bool:
        """No piece is laid yet."""
        return not self.wide[0]

    def taken(self, which: NDArray[Any]) -> _States:
        """Some of them, without their pieces left."""
        return _States(
            **{name: getattr(self, name)[which] for name in self.__slots__ if name != "left"}, left=self.left
        )
