"""Rounding the linear program: take the load it likes best, ask for the rest, price again, until all is cut."""

from __future__ import annotations

from random import Random
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.loads.clipping import clipped

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.loads.covering import Covering
    from stitchflip.cutting.layouts.loads.filling import Load
    from stitchflip.cutting.layouts.model import Want
    from stitchflip.cutting.layouts.watch import Watch


def dive(
    covering: Covering, wants: Sequence[Want], watch: Watch, turn: int, *, trims: bool
) -> list[tuple[Load, int]] | None:
    """One plan from the program.

    Args:
        covering: is asked for less and less, and for everything again at the end.
        wants: of the task.
        watch: None is returned when it is over.
        turn: 0 takes the largest part each time, others chance on one of the large ones.
        trims: of the task.

    Returns:
        Loads and how often; None when some pieces could not be had.
    """
    chance = Random(turn)
    left, free = list(covering.left), list(covering.free)
    plan: list[tuple[Load, int]] | None = []
    while plan is not None and any(covering.left):
        plan = None if watch.over() else _one_more(covering, wants, watch, chance if turn else None, plan, trims=trims)
    covering.ask(left, free)
    return plan


def _one_more(
    covering: Covering,
    wants: Sequence[Want],
    watch: Watch,
    chance: Random | None,
    plan: list[tuple[Load, int]],
    *,
    trims: bool,
) -> list[tuple[Load, int]] | None:
    """The plan with further loads fixed."""
    found = None
    for _ in range(4):
        found = covering.look(watch.left(), 3)
        if found is None or not found.added:
            break
    if found is None:
        return None
    amounts = {column: found.solved.amounts[column] for column in covering.loads if column < len(found.solved.amounts)}
    amounts = {column: amount for column, amount in amounts.items() if amount > 1e-6}
    if not amounts:
        return None
    whole = {column: int(amount + 1e-6) for column, amount in amounts.items() if amount >= 1 - 1e-6}
    if not whole:
        ranked = sorted(amounts, key=lambda column: (-amounts[column], column))
        best = ranked[0] if chance is None else chance.choices(ranked, [amounts[c] ** 2 for c in ranked])[0]
        whole = {best: 1}
    left, free = list(covering.left), list(covering.free)
    out = list(plan)
    for column, times in sorted(whole.items()):
        kind = covering.filler.kinds[covering.loads[column].kind]
        for _ in range(times):
            load = clipped(covering.loads[column], left, wants, along=kind.along, trims=trims)
            counts = load.counts()
            if not counts or free[kind.sheet] == 0:
                break
            often = max(1, min(times, *(left[want] // count for want, count in counts.items())))
            sheets = free[kind.sheet]
            if sheets is not None:
                often = min(often, sheets)
                free[kind.sheet] = sheets - often
            times -= often
            left = [count - counts[want] * often for want, count in enumerate(left)]
            out.append((load, often))
            if times <= 0:
                break
    if left == covering.left:
        return None
    covering.ask(left, free)
    return out
