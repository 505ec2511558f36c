"""The most windows that do not overlap, out of all places where one could be cut; with proof.

Windows of one size and one turn overlap when their centers lie close both ways, so places that a window's own
size covers together give one window at most. Such groups bound the number from above: first a cover with few groups,
which settles most prints at once, then an integer program over all of them.
"""

from __future__ import annotations

from math import floor
from typing import TYPE_CHECKING

from stitchflip.cutting.highs import quiet_highs
from stitchflip.cutting.model import Status
from stitchflip.cutting.motifs.model import TOLERANCE, Window
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.cutting.layouts.watch import Watch

    Place = tuple[float, float]

_MOST_FOR_PROGRAM = 3_000
"""With more places than these the integer program is not tried."""
_LONGEST_S = 2.0
_ROUNDING = 1e-5


@dataclass(frozen=True, slots=True)
class Chosen:
    """Places that were chosen."""

    picked: tuple[int, ...]
    """Their numbers, in the order given."""
    bound: int
    """No choice has more."""

    @property
    def status(self) -> Status:
        """Proved when choice and bound meet."""
        return Status.PROVED if len(self.picked) >= self.bound else Status.BEST_FOUND


def most_windows(
    places: Sequence[Place], window: Window, watch: Watch | None = None, *, searches: bool = True
) -> Chosen:
    """The most places whose windows do not overlap.

    Args:
        places: centers, across and along, inches.
        window: what is cut round each.
        watch: ends the search; without it a few seconds.
        searches: False: no integer program where the quick ways leave a gap.

    Returns:
        The choice and the bound; they meet unless time ran out.

    Example:
        >>> most_windows([(0, 0), (3, 0), (6, 0)], Window(4, 4))
        Chosen(picked=(0, 2), bound=2)
    """
    own = [window.own(x, y) for x, y in places]
    picked: list[int] = []
    bound = 0
    known: dict[tuple[tuple[int, int], ...], Chosen] = {}
    for group in _clusters(own, window):
        placed = [own[number] for number in group]
        low = (min(u for u, _ in placed), min(v for _, v in placed))
        key = tuple((round((u - low[0]) / _ROUNDING), round((v - low[1]) / _ROUNDING)) for u, v in placed)
        if key not in known:
            known[key] = _most_of_cluster(placed, window, watch, searches=searches)
        picked += [group[number] for number in known[key].picked]
        bound += known[key].bound
    return Chosen(tuple(sorted(picked)), bound)


def _clusters(own: Sequence[Place], window: Window) -> Iterator[list[int]]:
    """Places that overlap with one another, directly or by others between them."""
    tiles: dict[tuple[int, int], list[int]] = {}
    for number, (u, v) in enumerate(own):
        tiles.setdefault((floor(u / window.wide), floor(v / window.long)), []).append(number)
    left = set(range(len(own)))
    for first in range(len(own)):
        if first not in left:
            continue
        left.remove(first)
        group, at = [first], 0
        while at < len(group):
            for other in _near(own, tiles, window, group[at]):
                if other in left:
                    left.remove(other)
                    group.append(other)
            at += 1
        yield sorted(group)


def _near(own: Sequence[Place], tiles: dict[tuple[int, int], list[int]], window: Window, number: int) -> Iterator[int]:
    u, v = own[number]
    column, row = floor(u / window.wide), floor(v / window.long)
    for i in (column - 1, column, column + 1):
        for j in (row - 1, row, row + 1):
            for other in tiles.get((i, j), ()):
                if _overlap(own[other], (u, v), window):
                    yield other


def _overlap(one: Place, other: Place, window: Window) -> bool:
    return abs(one[0] - other[0]) < window.wide - TOLERANCE and abs(one[1] - other[1]) < window.long - TOLERANCE


def _most_of_cluster(placed: Sequence[Place], window: Window, watch: Watch | None, *, searches: bool) -> Chosen:
    if len(placed) == 1:
        return Chosen((0,), 1)
    best = max((_greedy(placed, window, order) for order in _orders(placed)), key=len)
    bound = min(_cover(placed, window, order) for order in _orders(placed))
    gives_up = not searches or len(placed) > _MOST_FOR_PROGRAM or (watch is not None and watch.over())
    if len(best) >= bound or gives_up:
        return Chosen(tuple(sorted(best)), bound)
    seconds = _LONGEST_S if watch is None else min(_LONGEST_S, watch.left())
    found, proved = _program(placed, window, seconds)
    best = max(best, found, key=len)
    return Chosen(tuple(sorted(best)), max(min(bound, proved), len(best)))


def _orders(placed: Sequence[Place]) -> Iterator[list[int]]:
    """From each corner, row by row and column by column."""
    for first, second in ((0, 1), (1, 0)):
        for sign in (1, -1):
            for other in (1, -1):
                yield sorted(
                    range(len(placed)),
                    key=lambda n, i=first, j=second, s=sign, t=other: (  # type: ignore[misc]  # bound here
                        round(s * placed[n][i], 6),
                        round(t * placed[n][j], 6),
                    ),
                )


def _greedy(placed: Sequence[Place], window: Window, order: Sequence[int]) -> list[int]:
    """Take each place that overlaps with none taken before."""
    taken: list[int] = []
    tiles: dict[tuple[int, int], list[int]] = {}
    for number in order:
        if any(True for _ in _near(placed, tiles, window, number)):
            continue
        taken.append(number)
        u, v = placed[number]
        tiles.setdefault((floor(u / window.wide), floor(v / window.long)), []).append(number)
    return taken


def _cover(placed: Sequence[Place], window: Window, order: Sequence[int]) -> int:
    """Groups of places that give one window each, taken from one corner until none is left: a bound."""
    tiles: dict[tuple[int, int], set[int]] = {}
    for number, (u, v) in enumerate(placed):
        tiles.setdefault((floor(u / window.wide), floor(v / window.long)), set()).add(number)
    gone = [False] * len(placed)
    groups = 0
    for first in order:
        if gone[first]:
            continue
        groups += 1
        u, v = placed[first]
        column, row = floor(u / window.wide), floor(v / window.long)
        around = [n for i in (-1, 0, 1) for j in (-1, 0, 1) for n in tiles.get((column + i, row + j), ())]
        boxes = (
            [n for n in around if _in_box(placed[n], (u, v), window, before_u, before_v)]
            for before_u in (0, 1)
            for before_v in (0, 1)
        )
        for number in max(boxes, key=len):
            gone[number] = True
            tiles[floor(placed[number][0] / window.wide), floor(placed[number][1] / window.long)].remove(number)
    return groups


def _in_box(place: Place, corner: Place, window: Window, before_u: int, before_v: int) -> bool:
    """Within a box as large as the window that has `corner` on its edge, on one side or the other."""
    low_u = corner[0] - before_u * (window.wide - 2 * TOLERANCE)
    low_v = corner[1] - before_v * (window.long - 2 * TOLERANCE)
    return (
        -TOLERANCE / 2 <= place[0] - low_u < window.wide - 1.5 * TOLERANCE
        and -TOLERANCE / 2 <= place[1] - low_v < window.long - 1.5 * TOLERANCE
    )


def _groups(placed: Sequence[Place], window: Window) -> list[tuple[int, ...]]:
    """All largest groups of places that give one window at most."""
    by_u = sorted(range(len(placed)), key=lambda n: placed[n])
    found: dict[tuple[int, ...], None] = {}
    for at, first in enumerate(by_u):
        if at and placed[first][0] - placed[by_u[at - 1]][0] < TOLERANCE / 2:
            continue
        band = [n for n in by_u[at:] if placed[n][0] - placed[first][0] < window.wide - 2 * TOLERANCE]
        band.sort(key=lambda n: placed[n][1])
        end = 0
        for place, low in enumerate(band):
            before = end
            while end < len(band) and placed[band[end]][1] - placed[low][1] < window.long - 2 * TOLERANCE:
                end += 1
            if end > before:
                found[tuple(sorted(band[place:end]))] = None
    return [group for group in found if len(group) > 1]


def _program(placed: Sequence[Place], window: Window, seconds: float) -> tuple[list[int], int]:
    """The best choice an integer program finds in the time, and the bound it proves."""
    import highspy  # type: ignore[import-untyped]  # ships no types
    import numpy as np

    groups = _groups(placed, window)
    highs = quiet_highs(mip_rel_gap=0.0, mip_abs_gap=0.999, time_limit=max(seconds, 0.01))
    program = highspy.HighsLp()
    program.num_col_, program.num_row_ = len(placed), len(groups)
    program.col_cost_ = -np.ones(len(placed))
    program.col_lower_ = np.zeros(len(placed))
    program.col_upper_ = np.ones(len(placed))
    program.row_lower_ = np.full(len(groups), -np.inf)
    program.row_upper_ = np.ones(len(groups))
    program.integrality_ = [highspy.HighsVarType.kInteger] * len(placed)
    program.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    program.a_matrix_.start_ = np.cumsum([0, *(len(group) for group in groups)]).astype(np.int32)
    program.a_matrix_.index_ = np.array([number for group in groups for number in group], dtype=np.int32)
    program.a_matrix_.value_ = np.ones(sum(len(group) for group in groups))
    highs.passModel(program)
    highs.run()
    info = highs.getInfo()
    bound = floor(-info.mip_dual_bound + 1e-6) if np.isfinite(info.mip_dual_bound) else len(placed)
    if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
        return [], bound
    taken = [number for number, value in enumerate(highs.getSolution().col_value) if value > 0.5]
    is_free = all(not _overlap(placed[a], placed[b], window) for at, a in enumerate(taken) for b in taken[:at])
    return (taken if is_free else []), bound
