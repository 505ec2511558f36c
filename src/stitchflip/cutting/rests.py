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
    if not 1 < len(best) <= _MOST_STRIPS or any(kind.count is not None for kind in task.kinds):
        return best
    return _with_long_leftover(task, _with_comfort(task, best))


def _units(task: Task, length_in: float) -> int:
    return round(length_in * task.units_per_inch)


def _comfort(task: Task, packing: Packing) -> int:
    return -rank(task, packing)[2]


def _with_comfort(task: Task, best: Packing) -> Packing:
    """Every strip keeps a rest of 1/4 in, or as much as all strips together can give."""
    strips = len(best)
    evenly = (strips * task.longest - task.total) // strips
    wish = min(_units(task, _COMFORT_IN), evenly)
    for part in (4, 3, 2, 1):
        rest = wish * part // 4
        if rest <= _comfort(task, best):
            break
        kinds = tuple(Kind(kind.length - rest, kind.count) for kind in task.kinds)
        trial = try_out(Task(task.sizes, task.demands, kinds), strips, _LOOKS)
        if trial.verdict is Verdict.YES:
            return min(best, trial.packing, key=lambda one: rank(task, one))
    return best


def _with_long_leftover(task: Task, best: Packing) -> Packing:
    """One strip gives as little as possible, the others keep what they keep now."""
    full = task.longest - _comfort(task, best)
    others = len(best) - 1
    least = max(task.total - others * full, task.sizes[-1])
    now = task.longest - max(task.rest(kind, pattern) for kind, pattern in best)
    last = least
    for _ in range(_HALVINGS):
        if now - last < _units(task, _LEFTOVER_STEP_IN):
            break
        trial = try_out(Task(task.sizes, task.demands, (Kind(full, others), Kind(last, 1))), 0, _LOOKS)
        if trial.verdict is Verdict.YES:
            found = tuple((best[0][0], pattern) for _, pattern in trial.packing)
            best, now = min(best, found, key=lambda one: rank(task, one)), last
            last = (least + now) // 2
        else:
            least = last
            last = (least + now + 1) // 2
    return best
