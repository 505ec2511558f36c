"""Which of the plans with equally many strips: every strip keeps a little, then one leftover as long as possible.

A strip used to its last thread fails when the fabric is a hair narrower, so a rest of 1/4 in on every strip
comes first where it costs no strip. After that one long leftover is worth more than several short ones.
"""

from __future__ import annotations

from stitchflip.cutting.filling import quick_packings
from stitchflip.cutting.search import Verdict, try_out
from stitchflip.cutting.whole import Kind, Packing, Task

_LOOKS = 1_500
_MOST_STRIPS = 60
_COMFORT_IN = 0.25
"""A rest every strip should keep if that costs nothing: what a crooked end takes."""
_LEFTOVER_STEP_IN = 0.25
"""A leftover is made longer only by at least this."""
_HALVINGS = 4


def rank(task: Task, packing: Packing) -> tuple[int, int, int, int]:
    """How good a packing is; lower is better.

    Args:
        task: the problem.
        packing: one of its packings.

    Returns:
        Bought strips, strips taken off the shelf, then how little every strip keeps and how short the longest
        leftover is (both with a minus sign).
    """
    rests = [task.rest(kind, pattern) for kind, pattern in packing]
    new = task.new_strips(packing)
    comfort = min(min(rests, default=0), _units(task, _COMFORT_IN))
    return new, len(packing) - new, -comfort, -max(rests, default=0)


def with_better_rests(task: Task, packing: Packing) -> Packing:
    """The same number of strips with better rests, as far as a short search finds them.

    Args:
        task: the problem.
        packing: a packing with as few strips as possible.
    """
    if len(packing) > _MOST_STRIPS * 4:
        return packing
    best = min([packing, *quick_packings(task)], key=lambda one: rank(task, one)) if packing else packing
    if not 1 < len(best) <= _MOST_STRIPS:
        return best
    best = _with_fewer_from_the_shelf(task, best)
    return _with_long_leftover(task, _with_comfort(task, best))


def _with_fewer_from_the_shelf(task: Task, best: Packing) -> Packing:
    """What is bought anyway gives as much as it can: a strip of the shelf is left whole where the others do."""
    new = task.new_strips(best)
    can_drop = True
    while can_drop:
        can_drop = False
        used = _used(task, best)
        for number, kind in enumerate(task.kinds):
            if kind.count is None or not used[number]:
                continue
            fewer = tuple(
                Kind(one.length, None if one.count is None else used[place] - (place == number))
                for place, one in enumerate(task.kinds)
            )
            trial = try_out(Task(task.sizes, task.demands, fewer), new, _LOOKS)
            if trial.verdict is Verdict.YES and rank(task, trial.packing) < rank(task, best):
                best, can_drop = trial.packing, True
                break
    return best


def _units(task: Task, length_in: float) -> int:
    return round(length_in * task.units_per_inch)


def _comfort(task: Task, packing: Packing) -> int:
    return -rank(task, packing)[2]


def _used(task: Task, packing: Packing) -> list[int]:
    """Strips opened of each kind."""
    return [sum(kind == number for kind, _ in packing) for number in range(len(task.kinds))]


def _with_comfort(task: Task, best: Packing) -> Packing:
    """Every strip keeps a rest of 1/4 in, or as much as all strips together can give."""
    used = _used(task, best)
    room = sum(kind.length * count for kind, count in zip(task.kinds, used, strict=True))
    wish = min(_units(task, _COMFORT_IN), (room - task.total) // len(best))
    for part in (4, 3, 2, 1):
        rest = wish * part // 4
        if rest <= _comfort(task, best):
            break
        kinds = tuple(
            Kind(kind.length - rest, None if kind.count is None else count)
            for kind, count in zip(task.kinds, used, strict=True)
        )
        trial = try_out(Task(task.sizes, task.demands, kinds), task.new_strips(best), _LOOKS)
        if trial.verdict is Verdict.YES:
            return min(best, trial.packing, key=lambda one: rank(task, one))
    return best


def _with_long_leftover(task: Task, best: Packing) -> Packing:
    """One strip, of the longest kind in use, gives as little as possible; the others keep what they keep now."""
    if len(best) == 1:
        return best
    used, comfort = _used(task, best), _comfort(task, best)
    longest = max((kind for kind, _ in best), key=lambda kind: task.kinds[kind].length)
    used[longest] -= 1
    others = [Kind(kind.length - comfort, count) for kind, count in zip(task.kinds, used, strict=True)]
    least = max(task.total - sum(kind.length * (kind.count or 0) for kind in others), task.sizes[-1])
    now = task.kinds[longest].length - max(task.rest(kind, pattern) for kind, pattern in best)
    last = least
    for _ in range(_HALVINGS):
        if now - last < _units(task, _LEFTOVER_STEP_IN):
            break
        trial = try_out(Task(task.sizes, task.demands, (*others, Kind(last, 1))), 0, _LOOKS)
        if trial.verdict is Verdict.YES:
            found = tuple((longest if kind == len(others) else kind, pattern) for kind, pattern in trial.packing)
            best, now = min(best, found, key=lambda one: rank(task, one)), last
            last = (least + now) // 2
        else:
            least = last
            last = (least + now + 1) // 2
    return best
