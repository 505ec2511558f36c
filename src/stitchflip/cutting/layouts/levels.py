"""First plans without any search: pieces by falling height, side by side, each level as high as its first piece.

What a quilter does by hand, with nothing to import and a plan in a millisecond. Equal levels are kept as one with a
number of times, so a thousand equal pieces cost no more than one.
"""

from __future__ import annotations

from itertools import accumulate
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.columns.column import Column, Plan

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from stitchflip.cutting.layouts.columns.strips import Kind, Way
    from stitchflip.cutting.layouts.watch import Watch

_MOST_OPEN = 300
"""Levels looked at for one more piece; with more different ones the fullest are closed."""


class _Level:
    """Equal strips being filled."""

    __slots__ = ("counts", "high", "room", "times")

    def __init__(self, high: int, room: int, counts: dict[int, int], times: int) -> None:
        self.high, self.room, self.counts, self.times = high, room, counts, times

    def split_off(self, times: int) -> _Level:
        """Some of the equal strips, to be filled another way."""
        self.times -= times
        return _Level(self.high, self.room, dict(self.counts), times)

    def put(self, kind: int, wide: int, count: int) -> None:
        """Lay so many more pieces into each of the strips."""
        self.room -= wide * count
        self.counts[kind] = self.counts.get(kind, 0) + count


def level_plans(kinds: Sequence[Kind], wide: int, watch: Watch, *, is_trimmed: bool) -> list[Plan]:
    """Plans made level by level, pieces laid as low as they can, as tall as they can, and as they waste least.

    Args:
        kinds: the pieces; each has a way to lie.
        wide: of the sheet.
        watch: after the first plan the others are left out when time is over.
        is_trimmed: pieces may be lower than their strip; otherwise all of a strip are as high as it is.

    Returns:
        At least one plan: strips, and how often each is cut.
    """
    plans: list[Plan] = []
    seen: set[tuple[Way, ...]] = set()
    policies: tuple[Callable[[Kind], Way], ...] = (
        lambda kind: min(kind.ways, key=lambda way: (_waste(kind, way, wide), way.long)),
        lambda kind: kind.ways[0],
        lambda kind: kind.ways[-1],
    )
    for policy in policies:
        ways = tuple(policy(kind) for kind in kinds)
        if ways not in seen and not (plans and watch.over()):
            seen.add(ways)
            plans.append(_levels(kinds, ways, wide, is_trimmed=is_trimmed))
    return plans


def _waste(kind: Kind, way: Way, wide: int) -> float:
    """Length of levels of this kind alone, a level begun counted by its part."""
    fit = wide // way.wide
    full, rest = divmod(kind.count, fit)
    return way.long * (full + (rest * way.wide / wide if full else rest / fit))


def _levels(kinds: Sequence[Kind], ways: Sequence[Way], wide: int, *, is_trimmed: bool) -> Plan:
    """Kinds by falling height into the first levels that have room."""
    order = sorted(range(len(kinds)), key=lambda kind: (-ways[kind].long, -ways[kind].wide, kind))
    narrowest = list(accumulate((min(way.wide for way in kinds[kind].ways) for kind in reversed(order)), min))
    levels: list[_Level] = []
    closed: list[_Level] = []
    for kind in order:
        least = narrowest.pop()
        closed += [level for level in levels if level.room < least]
        levels = [level for level in levels if level.room >= least]
        if len(levels) > _MOST_OPEN:
            levels.sort(key=lambda level: level.room)
            closed += levels[:-_MOST_OPEN]
            levels = levels[-_MOST_OPEN:]
        left = kinds[kind].count
        lying = kinds[kind].ways
        narrow = min(way.wide for way in lying)
        for level in levels[:]:
            if left == 0:
                break
            if level.room >= narrow:
                left = _filled(level, levels, lying, kind, left, is_trimmed=is_trimmed)
        levels += _opened(ways[kind], kind, left, wide)
    plan: Plan = {}
    for level in closed + levels:
        column = Column(cost=level.high, uses=tuple(sorted(level.counts.items())))
        plan[column] = plan.get(column, 0) + level.times
    return plan


def _filled(
    level: _Level, levels: list[_Level], lying: tuple[Way, ...], number: int, left: int, *, is_trimmed: bool
) -> int:
    """Lay pieces into equal strips that have room; how many are left over."""
    wide = level.room + 1
    for way in lying:
        if way.long == level.high or (is_trimmed and way.long < level.high):
            wide = min(wide, way.wide)
    each = level.room // wide
    if each == 0:
        return left
    full, rest = divmod(left, each)
    if full >= level.times:
        level.put(number, wide, each)
        return left - each * level.times
    if rest:
        part = level.split_off(1)
        part.put(number, wide, rest)
        levels.append(part)
    if full:
        part = level.split_off(full)
        part.put(number, wide, each)
        levels.append(part)
    if level.times == 0:
        levels.remove(level)
    return 0


def _opened(way: Way, kind: int, left: int, wide: int) -> list[_Level]:
    """New levels for what is left over: full ones, and a last one."""
    fit = wide // way.wide
    full, rest = divmod(left, fit)
    opened = [_Level(way.long, wide - fit * way.wide, {kind: fit}, full)] if full else []
    return opened + ([_Level(way.long, wide - rest * way.wide, {kind: rest}, 1)] if rest else [])
