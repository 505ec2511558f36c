"""Strips from strips: the fewest strips that give every piece, and then the best rests.

First the bound, then the rules of thumb; where they meet, the answer is proved and nothing more is loaded.
Otherwise a complete search of a few thousand looks decides most tables at home, and the exact search over
patterns the rest. Among
plans with the same number of strips, the one is taken whose strips all keep a little at the end, and then
the one with the longest leftover: one good leftover beats many scraps.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.bounds import fewest_for, fewest_new
from stitchflip.cutting.filling import quick_packings
from stitchflip.cutting.layouts.watch import Patience
from stitchflip.cutting.model import OneStrip, Status, StripPiece, StripPlan, StripStock
from stitchflip.cutting.rests import rank, with_better_rests
from stitchflip.cutting.search import Verdict, try_out
from stitchflip.cutting.whole import Kind, Packing, Task, fits, task_of, to_units
from stitchflip.errors import CuttingError
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.watch import Watch

TIME_LIMIT_S = 2.0
"""Seconds the exact solver may take before the best plan found is handed out as such."""
_LOOKS_AT_THE_WATCH = 600
"""How long the exact search goes on when nobody else holds the watch, counted so that plans are the same anywhere."""
_LOOKS = 8_000
_MOST_STRIPS_SEARCHED = 120
_MOST_WRITTEN_OUT = 2_000_000
"""Pieces times different lengths: above it no strip is written down with a number for every length."""
_LONGEST_IN = 1e6


@dataclass(frozen=True, slots=True)
class Count:
    """How many strips are bought, as far as is known."""

    found: int
    """A plan with so many bought strips is known."""
    bound: int
    """No plan needs fewer bought strips."""


def plan_strips(
    width: float,
    pieces: Sequence[StripPiece],
    stock: Sequence[StripStock],
    time_limit_s: float = TIME_LIMIT_S,
    watch: Watch | None = None,
) -> StripPlan:
    """The fewest new strips that give all pieces, on hand first.

    Args:
        width: cut width of the strips, inches.
        pieces: lengths wanted, inches as cut (or the shortest that reach), in sewing order.
        stock: strips on hand and bought ones, by usable length in inches.
        time_limit_s: seconds the exact search may take when rules and bounds leave a gap.
        watch: ends the exact search in its place, as when the maker has had enough.

    Returns:
        The plan. Pieces that no strip can give are in `left_out`, and the plan is then impossible.

    Example:
        >>> two_mats = [StripPiece("top", 34), StripPiece("side", 29)] * 2
        >>> plan = plan_strips(5, two_mats, [StripStock("width of fabric", 105)])
        >>> len(plan.strips), plan.status.value
        (2, 'proved')
    """
    _check(pieces)
    watch = watch or Patience(_LOOKS_AT_THE_WATCH, time_limit_s)
    possible, left_out = _sort_out(pieces, stock)
    task = task_of(possible, stock)
    if len(possible) * len(task.sizes) > _MOST_WRITTEN_OUT:
        return _plan_many(width, task, possible, stock, left_out, watch)
    packing, bound = _solve(task, watch) if possible else ((), 0)
    if packing is None:
        possible, missing = _what_the_shelf_gives(possible, stock)
        left_out = (*left_out, *missing)
        task = task_of(possible, stock)
        packing, bound = _solve(task, watch) if possible else ((), 0)
    packing = with_better_rests(task, packing or ())
    strips = strips_of(width, task, packing, possible, stock)
    status = Status.PROVED if task.new_strips(packing) == bound else Status.BEST_FOUND
    return StripPlan(
        width=width,
        strips=strips,
        bound=max(bound, _fewest_of_any(task)) if possible else 0,
        status=Status.IMPOSSIBLE if left_out else status,
        as_you_go=False,
        spare_in=min((strip.rest for strip in strips), default=0.0),
        left_out=left_out,
        new_bound=bound,
    )


def count_new(pieces: Sequence[StripPiece], stock: Sequence[StripStock], looks: int = _LOOKS) -> Count | None:
    """How many strips have to be bought, without the exact solver.

    Args:
        pieces: lengths wanted.
        stock: strips on hand and bought ones.
        looks: how long the complete search may take, in strips filled on trial.

    Returns:
        What is found and what is proved; None when a piece fits no strip or the shelf is too little.
    """
    possible, left_out = _sort_out(pieces, stock)
    if left_out:
        return None
    if not possible:
        return Count(0, 0)
    task = task_of(possible, stock)
    found, bound = _without_solver(task, looks)
    return None if found is None else Count(task.new_strips(found), bound)


def strips_of(
    width: float, task: Task, packing: Packing, pieces: Sequence[StripPiece], stock: Sequence[StripStock]
) -> tuple[OneStrip, ...]:
    """Strips with labels: from the shelf first, fullest first, earliest pieces first, each strip longest cut first.

    Args:
        width: cut width, inches.
        task: the problem in whole units.
        packing: its packing.
        pieces: the pieces, in sewing order.
        stock: the strips, in the order of the task's kinds.
    """
    waiting = _waiting(task, pieces)
    strips: list[OneStrip] = []
    for kind, pattern in sorted(packing, key=lambda one: (one[0], task.rest(*one), one[1])):
        cut = [waiting[size].pop() for size, count in enumerate(pattern) for _ in range(count)]
        strips.append(_strip(width, cut, stock[kind]))
    return tuple(strips)


def _check(pieces: Sequence[StripPiece]) -> None:
    """Raise where a piece has no length that could be cut."""
    for piece in pieces:
        if not 0 < piece.length < _LONGEST_IN:
            raise CuttingError(
                what=f"a strip is {piece.length:g} in long",
                fix="Give every strip a length above 0.",
                where=f"piece {piece.label}" if piece.label else "",
                code="cutting.strip-without-length",
            )


def _plan_many(
    width: float,
    task: Task,
    pieces: Sequence[StripPiece],
    stock: Sequence[StripStock],
    left_out: tuple[StripPiece, ...],
    watch: Watch,
) -> StripPlan:
    """Thousands of different lengths: the exact search alone, which keeps only what each strip gives."""
    from stitchflip.cutting.exact import fewest_bought

    answer = fewest_bought(task, watch)
    given = answer.packing
    waiting = _waiting(task, pieces)
    strips = []
    for one in sorted(given, key=lambda one: one.stock):
        for _ in range(one.times):
            cut = [waiting[size].pop() for size, count in one.pattern for _ in range(count)]
            strips.append(_strip(width, cut, stock[one.stock]))
    missing = [piece for size in waiting for piece in reversed(waiting[size])]
    status = Status.IMPOSSIBLE if left_out or missing else answer.status
    return StripPlan(
        width=width,
        strips=tuple(strips),
        bound=max(answer.bound, _fewest_of_any(task)) if given else 0,
        status=status,
        as_you_go=False,
        spare_in=min((strip.rest for strip in strips), default=0.0),
        left_out=(*left_out, *missing),
        new_bound=answer.bound if given else 0,
    )


def _waiting(task: Task, pieces: Sequence[StripPiece]) -> dict[int, list[StripPiece]]:
    """The pieces of each size, the earliest last."""
    waiting: dict[int, list[StripPiece]] = {size: [] for size in range(len(task.sizes))}
    place = {size: number for number, size in enumerate(sorted({to_units(p.length) for p in pieces}, reverse=True))}
    for piece in reversed(pieces):
        waiting[place[to_units(piece.length)]].append(piece)
    return waiting


def _strip(width: float, cut: Sequence[StripPiece], stock: StripStock) -> OneStrip:
    """One strip with its labels and its rest."""
    rest = max(stock.length - sum(piece.length for piece in cut), 0.0)
    return OneStrip(width, stock.length, tuple((piece.label, piece.length) for piece in cut), stock.name, rest)


def _sort_out(
    pieces: Sequence[StripPiece], stock: Sequence[StripStock]
) -> tuple[tuple[StripPiece, ...], tuple[StripPiece, ...]]:
    """Pieces that fit some strip, and those that fit none."""
    longest = max((one.length for one in stock if one.count != 0), default=-1.0)
    possible = tuple(piece for piece in pieces if fits(piece.length, longest))
    return possible, tuple(piece for piece in pieces if not fits(piece.length, longest))


def _what_the_shelf_gives(
    pieces: Sequence[StripPiece], stock: Sequence[StripStock]
) -> tuple[tuple[StripPiece, ...], tuple[StripPiece, ...]]:
    """Longest first from what is on hand; what does not fit any more is missing."""
    rests = [one.length for one in stock for _ in range(one.count or 0)]
    given: set[int] = set()
    for number in sorted(range(len(pieces)), key=lambda number: -pieces[number].length):
        for place, rest in enumerate(rests):
            if fits(pieces[number].length, rest):
                rests[place] -= pieces[number].length
                given.add(number)
                break
    kept = tuple(piece for number, piece in enumerate(pieces) if number in given)
    return kept, tuple(piece for number, piece in enumerate(pieces) if number not in given)


def _fewest_of_any(task: Task) -> int:
    """No plan opens fewer strips in all, whatever is on hand."""
    return fewest_for(task.sizes, task.demands, (Kind(task.longest, None),))


def _solve(task: Task, watch: Watch) -> tuple[Packing | None, int]:
    """The best packing found and the proved least number of bought strips; no packing: the shelf is too little."""
    packing, bound = _without_solver(task, _LOOKS)
    if packing is not None and task.new_strips(packing) == bound:
        return packing, bound
    if packing is None and bound > 0:
        return None, 0
    from stitchflip.cutting.exact import solve_exactly

    solved = solve_exactly(task, watch)
    found = [one for one in (packing, solved.packing) if one is not None]
    best = min(found, key=lambda one: rank(task, one), default=None)
    return best, max(bound, solved.new_strips_bound) if best is not None else 0


def _without_solver(task: Task, looks: int) -> tuple[Packing | None, int]:
    """Bound, rules of thumb, and a complete search of some thousand looks; no packing and 1: certainly too little."""
    can_buy = any(kind.count is None for kind in task.kinds)
    bound = fewest_new(task) if can_buy else 0
    best = min(quick_packings(task), key=lambda packing: rank(task, packing), default=None)
    if best is None:
        trial = try_out(task, 0, looks)
        if trial.verdict is Verdict.YES:
            return trial.packing, 0
        return None, 1 if trial.verdict is Verdict.NO else 0
    while bound < task.new_strips(best) <= _MOST_STRIPS_SEARCHED:
        trial = try_out(task, task.new_strips(best) - 1, looks)
        if trial.verdict is Verdict.UNDECIDED:
            break
        if trial.verdict is Verdict.NO:
            bound = task.new_strips(best)
        else:
            best = trial.packing
    return best, bound
