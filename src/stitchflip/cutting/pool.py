"""Bindings for several pieces out of one pool of strips: every piece pays for its own joins and its own tail.

A set of placemats is not bound with one long binding: each mat has its joins, its corners and its tails. So the
rule of thumb "all the way round, all together" comes out short. Here every piece is given its own strips, and where
two of them need but a part of a strip they share one.
"""

from __future__ import annotations

from math import ceil, floor, isfinite
from typing import TYPE_CHECKING

from stitchflip.cutting.model import Status
from stitchflip.errors import CuttingError
from stitchflip.lengths import Rounding, in_both_units, round_to
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator

_TOLERANCE = 1e-6
_LEAST_SHARE = 20
"""A strip that adds less than this part of what its join takes is no binding strip."""
_SHORTEST_PART = 4
"""So many joins long is the shortest part that is joined into a binding on purpose."""


@dataclass(frozen=True, slots=True)
class PoolPart:
    """A strip of the pool, whole or a part of it, as it goes into one binding."""

    strip: int
    """Number of the strip, from 1."""
    length: float
    """As cut, inches."""


@dataclass(frozen=True, slots=True)
class Chain:
    """One binding: its strips in the order joined."""

    parts: tuple[PoolPart, ...]
    made: float
    """How long it is when joined, inches."""


@dataclass(frozen=True, slots=True)
class Pool:
    """Strips for all bindings, and which go to which piece."""

    need: float
    """Length each piece needs, tails and corners in it."""
    join: float
    """What one join takes off."""
    strip_length: float
    chains: tuple[Chain, ...]
    """One for each piece."""
    strips: int
    bound: int
    """No way of joining does with fewer."""

    @property
    def status(self) -> Status:
        """Proved when no way of joining does with fewer strips."""
        return Status.PROVED if self.strips == self.bound else Status.BEST_FOUND

    @property
    def joins(self) -> int:
        """Joins in all bindings, closing ones left aside."""
        return sum(len(chain.parts) - 1 for chain in self.chains)


def pool_for(need: float, join: float, count: int, strip_length: float, step: float) -> Pool:
    """Strips for several bindings of one length, as few as are found, and with no more joins than that takes.

    Args:
        need: length of each binding, tails and corners in it, inches.
        join: what one join takes off: the cut width when diagonal, two seams when straight.
        count: how many bindings.
        strip_length: usable length of every strip.
        step: parts are cut on this grid, inches.

    Raises:
        CuttingError: If a strip is used up by the join that adds it, or there is no length to make.

    Example:
        >>> mats = pool_for(need=56, join=2.5, count=2, strip_length=40, step=0.25)
        >>> mats.strips, [[part.length for part in chain.parts] for chain in mats.chains]
        (3, [[40, 20.0], [40, 20.0]])
    """
    if not (isfinite(need) and isfinite(strip_length) and need > 0 and strip_length > 0 and join >= 0):
        raise CuttingError(
            what=f"a binding of {need:g} in is wanted from strips of {strip_length:g} in, {join:g} in lost at joins",
            fix="Give the length of the binding and of its strips above zero.",
            where="binding",
            code="cutting.no-binding-length",
        )
    if need > strip_length + _TOLERANCE and strip_length - join <= join / _LEAST_SHARE + _TOLERANCE:
        raise CuttingError(
            what=f"strips {in_both_units(strip_length)} long lose {in_both_units(join)} at each join",
            fix="Take longer strips for the binding, or a narrower one.",
            where="binding",
            code="cutting.joins-use-up-strips",
        )
    bound = _least(need, join, count, strip_length)
    shared = _pool(need, join, strip_length, list(_shared(need, join, count, strip_length, step)), bound)
    if shared.strips == bound:
        return shared
    running = _pool(need, join, strip_length, list(_running_on(need, join, count, strip_length, step)), bound)
    return min((shared, running), key=lambda pool: (pool.strips, pool.joins))


def _strips_of_one(need: float, join: float, strip_length: float) -> int:
    """Fewest strips that are long enough for one binding."""
    if need <= strip_length + _TOLERANCE:
        return 1
    return ceil((need - join) / (strip_length - join) - _TOLERANCE)


def _least(need: float, join: float, count: int, strip_length: float) -> int:
    """Strips that no way of joining does with fewer than.

    Some bindings have the fewest parts there can be, and then none of those parts is shorter than a certain length, so
    only so many come from one strip; each of the others pays for one join more at least.
    """
    parts = _strips_of_one(need, join, strip_length)
    charged = need + (parts - 1) * join
    part = charged - (parts - 1) * strip_length
    in_one = max(1, floor(strip_length / part + _TOLERANCE))
    return min(
        max(
            ceil((count - others) * parts / in_one),
            ceil((count * charged + others * join) / strip_length - _TOLERANCE),
        )
        for others in range(count + 1)
    )


def _pool(need: float, join: float, strip_length: float, chains: list[tuple[PoolPart, ...]], bound: int) -> Pool:
    joined = tuple(
        Chain(parts, sum(part.length for part in parts) - join * (len(parts) - 1)) for parts in chains if parts
    )
    strips = max((part.strip for chain in joined for part in chain.parts), default=0)
    return Pool(need, join, strip_length, joined, strips, bound)


def _shared(need: float, join: float, count: int, strip_length: float, step: float) -> Iterator[tuple[PoolPart, ...]]:
    """Whole strips, and for the last one of each binding an equal share of a strip."""
    whole = _strips_of_one(need, join, strip_length) - 1
    part = need - whole * (strip_length - join)
    most = max(1, floor(strip_length / part + _TOLERANCE))
    taken = open_strip = 0
    for first in range(0, count, most):
        sharing = min(most, count - first)
        for number in range(sharing):
            own = [PoolPart(taken + place, strip_length) for place in range(1, whole + 1)]
            taken += whole
            if number == 0:
                taken += 1
                open_strip = taken
            yield (*own, PoolPart(open_strip, _share_of(strip_length, sharing, part, step)))


def _share_of(strip_length: float, sharing: int, part: float, step: float) -> float:
    """An equal share of a strip, on the grid when that is long enough."""
    even = strip_length / sharing
    on_grid = round_to(even, step, Rounding.DOWN)
    return on_grid if sharing > 1 and on_grid >= part - _TOLERANCE else even


def _running_on(
    need: float, join: float, count: int, strip_length: float, step: float
) -> Iterator[tuple[PoolPart, ...]]:
    """One binding after the other from the strip in the hand: what is left of it begins the next."""
    strip, rest = 1, strip_length
    shortest = min(max(_SHORTEST_PART * join, step), strip_length)
    for _ in range(count):
        parts: list[PoolPart] = []
        missing = need
        while missing > _TOLERANCE:
            takes = max(missing + join, shortest) if parts else missing
            if rest < min(takes, shortest) - _TOLERANCE:
                strip, rest = strip + 1, strip_length
            cut = min(round_to(takes, step, Rounding.UP), rest)
            missing -= cut - (join if parts else 0.0)
            parts.append(PoolPart(strip, cut))
            rest -= cut
        yield tuple(parts)
