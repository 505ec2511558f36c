"""Where to start the binding, so that none of its joins comes to lie on a corner or beside a point.

The binding is laid round the edge in the order of its edges; the words name the edge to sew toward, because sewn the
other way round the joins would lie elsewhere. Its first tail stays loose; after that the joins follow at the strips'
lengths. A start is tried every quarter inch along every edge.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import inf

from stitchflip.finishing.edges import CURVE, Edge, edge_named
from stitchflip.finishing.measures import (
    BINDING_JOIN_OFF_CORNER,
    BINDING_START_OFF_CORNER,
    BINDING_START_STEP,
    BINDING_TAIL,
    BINDING_TRIM_STEP,
)
from stitchflip.lengths import TOLERANCE_IN, Speaker, Unit
from stitchflip.piecing.model import Point
from stitchflip.values import dataclass

_NEAR_EDGE = 2.0
"""A point of the center this close to the edge makes the edge bulky there; inches."""

_SHORT_EDGE_SHARE = 0.4
"""On edges too short for the wish, the start keeps this share of the longest edge off its corners."""
_MOST_TRIES = 12
"""How many lengths of the first strip are tried."""


@dataclass(frozen=True, slots=True)
class Keep:
    """What the start and the joins keep away from; inches."""

    start_off_corner: float
    joins_off: float
    tail: float
    step: float
    trim_step: float
    cost: float
    """Length a join takes along the binding."""
    points: tuple[Point, ...] = ()
    """Points of the center, taped."""

    @classmethod
    def of(cls, unit: Unit, cost: float, points: tuple[Point, ...] = ()) -> Keep:
        """The house's distances for one unit.

        Args:
            unit: The maker's unit.
            cost: Length a join takes along the binding, inches.
            points: Points of the center, taped.
        """
        return cls(
            BINDING_START_OFF_CORNER.of(unit),
            BINDING_JOIN_OFF_CORNER.of(unit),
            BINDING_TAIL.of(unit),
            BINDING_START_STEP.of(unit),
            BINDING_TRIM_STEP.of(unit),
            cost,
            points,
        )


@dataclass(frozen=True, slots=True)
class Start:
    """A start and what comes of it; inches."""

    edge: int
    """Index of the edge."""
    along: float
    """From the edge's first corner, the one behind."""
    kept: float
    """1 when start and joins keep off as far as wished; below, the worst share of a wish."""
    joins_at: tuple[float, ...]
    """Along the edge of the piece, from the start."""
    joins_off: float
    """How near a join comes to a corner or a point; infinite without joins."""
    first_strip_less: float
    """How much shorter the first strip is cut."""


def joins_from_start(lengths: Sequence[float], keep: Keep, perimeter: float) -> tuple[float, ...]:
    """Where the joins lie along the edge, from the start.

    Args:
        lengths: Strips in the order joined, inches.
        keep: For the tail and what a join takes.
        perimeter: Round the piece, inches; what lies beyond is cut off at the closing join.

    Returns:
        The middle of each join, inches.

    Example:
        >>> joins_from_start([21, 21, 21], Keep(6, 2, 8, 0.25, 1, 2.25), 100)
        (11.875, 30.625)
    """
    places: list[float] = []
    end = 0.0
    for length in lengths[:-1]:
        end += length - (keep.cost if places else 0)
        places.append(end - keep.cost / 2 - keep.tail)
    return tuple(place for place in places if TOLERANCE_IN < place < perimeter - TOLERANCE_IN)


def best_start(sides: Sequence[Edge], lengths: Sequence[float], keep: Keep, surplus: float = 0.0) -> Start:
    """The start that keeps itself and every join off the corners; the best there is when none does.

    Of starts that keep off, one on the longest edge and near its middle. When no start keeps off and there is
    more binding than needed, the first strip is cut shorter, as little as helps.

    Args:
        sides: The edges of the squared-up piece, counter-clockwise.
        lengths: Strips in the order joined, inches.
        keep: The distances to keep.
        surplus: How much binding is made beyond what is needed, inches.
    """
    bulky = _bulky_places(sides, keep.points)
    best: Start | None = None
    tries = int(max(0.0, min(surplus, lengths[0] - keep.tail)) / keep.trim_step)
    for count in range(1 + min(tries, _MOST_TRIES)):
        less = count * keep.trim_step
        found = _first_that_keeps_off(sides, bulky, (lengths[0] - less, *lengths[1:]), keep, less)
        if best is None or found.kept > best.kept:
            best = found
        if best.kept >= 1:
            break
    return best if best is not None else Start(0, 0.0, 0.0, (), inf, 0.0)


def _places(sides: Sequence[Edge], step: float) -> Iterator[tuple[int, float, float]]:
    """(edge, place along it, place from the first corner): long edges first, each from its middle outward.

    A curve is where to start only when there is nothing else.
    """
    behind = [0.0]
    for side in sides:
        behind.append(behind[-1] + side.length)
    straight = [index for index, side in enumerate(sides) if not side.is_curve] or range(len(sides))
    for index in sorted(straight, key=lambda one: round(-sides[one].length, 6)):
        length = sides[index].length
        middle = round(length / 2 / step) * step
        for count in range(int(length / 2 / step) + 2):
            for along in (middle - count * step, middle + count * step)[: 1 + (count > 0)]:
                if TOLERANCE_IN < along < length - TOLERANCE_IN:
                    yield index, along, behind[index] + along


def _first_that_keeps_off(
    sides: Sequence[Edge], bulky: Sequence[float], lengths: Sequence[float], keep: Keep, less: float
) -> Start:
    """The first place whose start and joins keep off everything, else the one that comes nearest to it."""
    perimeter = sum(side.length for side in sides)
    joins = joins_from_start(lengths, keep, perimeter)
    straight = [side.length for side in sides if not side.is_curve]
    wish = min(keep.start_off_corner, _SHORT_EDGE_SHARE * max(straight, default=inf))
    best = Start(0, sides[0].length / 2, 0.0, joins, 0.0, less)
    for edge, along, place in _places(sides, keep.step):
        off = min((_round_the_edge(place + join - one, perimeter) for join in joins for one in bulky), default=inf)
        off_corner = inf if sides[edge].is_curve else min(along, sides[edge].length - along)
        kept = min(1.0, off_corner / wish, off / keep.joins_off)
        if kept > best.kept + TOLERANCE_IN:
            best = Start(edge, along, kept, joins, off, less)
        if kept >= 1:
            break
    return best


def _round_the_edge(distance: float, perimeter: float) -> float:
    """Distance of two places along the edge, the shorter way round."""
    rest = distance % perimeter
    return min(rest, perimeter - rest)


def _bulky_places(sides: Sequence[Edge], points: Sequence[Point]) -> tuple[float, ...]:
    """Corners, and the feet of points close to an edge, as places along the edge from the first corner."""
    places = []
    behind = 0.0
    for before, side in zip((sides[-1], *sides), sides, strict=False):
        if not (before.is_curve or side.is_curve):
            places.append(behind)
        for point in points:
            along, gap = side.foot_of(point)
            if 0 <= along <= side.length and gap <= _NEAR_EDGE:
                places.append(behind + along)
        behind += side.length
    return tuple(places)


def start_in_words(unit: Unit, sides: Sequence[Edge], start: Start, keep: Keep) -> str:
    """Where to start, toward which edge to sew, and how the joins then lie.

    The next edge is named because the joins are reckoned going that way round; sewn the other way they would lie
    elsewhere. Its name says the way without clock or hand, face up as well as face down.

    Args:
        unit: The maker's unit.
        sides: The edges of the squared-up piece.
        start: The start found.
        keep: The distances to keep.
    """
    say = Speaker(unit)
    place = _place_in_words(say, sides, start)
    if start.first_strip_less > 0:
        place += f", the first strip cut {say.near(start.first_strip_less)} shorter"
    place += f", and sew toward {_toward(sides, start)}"
    if not start.joins_at or start.joins_off == inf:
        return place
    several = "every join" if len(start.joins_at) > 1 else "the join"
    if start.joins_off >= keep.joins_off - TOLERANCE_IN:
        return f"{place}; {several} then lies {say.near(keep.joins_off)} or more from corners and points"
    return f"{place}; a join still comes within {say.margin(start.joins_off)} of a corner: sew over it slowly"


_ROUND_PLACES = ("lowest place", "rightmost place", "highest place", "leftmost place")
"""Of a round or oval edge, in the order in which it is gone round; quarters of its length apart."""
_AS_GOOD_AS = 0.5
"""A start this close to such a place is at it; inches."""
_TOWARD = ("its right", "its top", "its left", "its bottom")


def _place_in_words(say: Speaker, sides: Sequence[Edge], start: Start) -> str:
    """Where the start is on its edge."""
    side, last = sides[start.edge], sides[start.edge - 1]
    if side.name == CURVE:
        quarter, past = _quarter(side, start)
        where = f"{say.near(past)} past" if past > 0 else "at"
        return f"on the curve, {where} its {_ROUND_PLACES[quarter]}"
    begins = f"the {last.name}" if last.is_curve else f"its corner with {edge_named(last.name)}"
    return f"on {edge_named(side.name)}, {say.near(start.along)} from {begins}"


def _quarter(side: Edge, start: Start) -> tuple[int, float]:
    """The quarter of a round edge that a start lies in, and how far into it; 0 when it is as good as at its begin."""
    long = side.length / 4
    quarter = int((start.along + _AS_GOOD_AS) / long)
    past = start.along - quarter * long
    return quarter % 4, past if past > _AS_GOOD_AS else 0.0


def _toward(sides: Sequence[Edge], start: Start) -> str:
    """What to sew toward: the next straight edge, or the next quarter of a round one."""
    side = sides[start.edge]
    if side.name == CURVE:
        return _TOWARD[_quarter(side, start)[0]]
    following = next(
        one for turn in range(1, len(sides) + 1) if not (one := sides[(start.edge + turn) % len(sides)]).is_curve
    )
    return edge_named(following.name)
