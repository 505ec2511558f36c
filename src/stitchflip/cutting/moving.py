"""The fewest pieces to take away from a fabric so that it is enough: given to another fabric, or left out.

Pieces that show count first, then all pieces, then how many steps are touched, then area. Small sets are tried in
that order, each by planning both fabrics anew; when there are too many sets, pieces are taken one by one, whichever
saves most. What area alone demands is a bound no cutting can go under.
"""

from __future__ import annotations

from dataclasses import replace
from heapq import heappop, heappush
from math import ceil
from typing import TYPE_CHECKING

from stitchflip.cutting.fabric_plan import Amount, amount_of
from stitchflip.cutting.model import Piece
from stitchflip.cutting.on_hand import Shelf
from stitchflip.cutting.purchase import shrinkage_of
from stitchflip.lengths import Unit
from stitchflip.project.model import Fabric, Working
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from stitchflip.project.numbers import Numbers

_TOLERANCE = 1e-6
_MOST_TRIALS = 60
_MOST_SETS = 20_000
_AREA_HAIR = 1e-3
"""Square inches that sums of areas may be off by."""


@dataclass(frozen=True, slots=True)
class Supply:
    """A fabric, what is cut from it, and how much of it there is."""

    fabric: Fabric
    pieces: tuple[Piece, ...]
    has_in: float | None = None
    """Length of the usual width beside what is on hand, inches; None: nothing but what is on hand."""
    unseen: frozenset[str] = frozenset()
    """Names of pieces that do not show when the piece is done."""


@dataclass(frozen=True, slots=True)
class Terms:
    """What all plans of one question share."""

    numbers: Numbers
    working: Working
    unit: Unit
    over: Callable[[], bool] = bool
    """Asked again and again; True ends a search with the quickest answer there is. `bool()` never ends it."""


@dataclass(frozen=True, slots=True)
class Moved:
    """Pieces that are taken away from a fabric."""

    pieces: tuple[Piece, ...]
    """Their counts are how many are moved."""
    seen: int
    """How many of them show."""
    at_least: int
    """So many must be moved however they are cut: the fabric has no more area."""
    is_fewest: bool
    """True: every smaller set was tried, or is too small by area; False: taken one by one."""

    @property
    def count(self) -> int:
        """How many pieces."""
        return sum(piece.count for piece in self.pieces)


def gives(supply: Supply, pieces: Sequence[Piece], terms: Terms) -> Amount | None:
    """How much of what there is pieces take; None when it is not enough.

    Args:
        supply: the fabric and how much of it there is.
        pieces: what is cut from it.
        terms: the maker's numbers, working and unit.
    """
    wanted = tuple(piece for piece in pieces if piece.count > 0)
    if _is_too_long(supply, wanted, terms):
        return None
    fabric = supply.fabric.model_copy(update={"only_on_hand": supply.has_in is None})
    found = amount_of(fabric, wanted, terms.numbers, terms.working, terms.unit)
    if found.left_out or (supply.has_in is not None and found.need_in > supply.has_in + _TOLERANCE):
        return None
    return found


def fewest_moved(short: Supply, to: Supply | None, terms: Terms, most: int | None = None) -> Moved | None:
    """The fewest pieces to take away so that the rest comes from what there is.

    Args:
        short: the fabric that is not enough, with what is cut from it.
        to: the fabric that gives them instead, from what there is of it; None: they are left out.
        terms: the maker's numbers, working and unit.
        most: no more pieces than this; None: any number.

    Returns:
        The pieces, none when the fabric is enough; None when the other fabric cannot give what is missing.
    """
    if to is not None and gives(to, to.pieces, terms) is None:
        return None
    search = _Search.of(short, to, terms)
    if to is not None and _is_overfull(to, search.missing_area, terms):
        return None
    return search.fewest(sum(one.count for one in search.classes) if most is None else most)


@dataclass(frozen=True, slots=True)
class _Class:
    """Pieces that are cut alike."""

    places: tuple[tuple[int, int], ...]
    """(place in the list of pieces, how many), those that are taken first first."""
    count: int
    area: float
    is_seen: bool
    all_or_none: bool
    """A binding goes as a whole."""

    def taken(self, count: int) -> Iterator[tuple[int, int]]:
        """Where the first so many of them are listed, and how many there."""
        for place, there in self.places:
            own = min(there, count)
            if own:
                yield place, own
            count -= own


_Cost = tuple[int, int, int, float]


@dataclass(frozen=True, slots=True)
class _Search:
    short: Supply
    to: Supply | None
    terms: Terms
    classes: tuple[_Class, ...]
    missing_area: float

    @classmethod
    def of(cls, short: Supply, to: Supply | None, terms: Terms) -> _Search:
        by_cut: dict[tuple[object, ...], list[int]] = {}
        for place, piece in sorted(enumerate(short.pieces), key=lambda one: -one[1].step):
            if piece.count > 0:
                own = _length(piece, terms)
                alike = replace(piece, name="", count=0, step=0, finished="", long=own, shortest=0.0, cut_first=True)
                key = (alike, piece.name in short.unseen, piece.kind == "binding" and piece.name)
                by_cut.setdefault(key, []).append(place)
        classes = tuple(
            _Class(
                tuple((place, short.pieces[place].count) for place in places),
                sum(short.pieces[place].count for place in places),
                _area(short.pieces[places[0]], terms, short),
                is_seen=short.pieces[places[0]].name not in short.unseen,
                all_or_none=short.pieces[places[0]].kind == "binding",
            )
            for places in by_cut.values()
        )
        area = sum(one.area * one.count for one in classes)
        return cls(short, to, terms, classes, max(area - _there(short, terms), 0.0))

    # --- one set of pieces ---------------------------------------------------------------------------------

    def taken(self, counts: Sequence[int]) -> dict[int, int]:
        """How many are moved of each piece listed."""
        return {place: own for one, count in zip(self.classes, counts, strict=True) for place, own in one.taken(count)}

    def moved(self, counts: Sequence[int]) -> tuple[Piece, ...]:
        """The pieces that are moved, in the order listed."""
        return tuple(replace(self.short.pieces[place], count=own) for place, own in sorted(self.taken(counts).items()))

    def rest(self, counts: Sequence[int]) -> list[Piece]:
        """What is not moved."""
        taken = self.taken(counts)
        return [
            replace(piece, count=piece.count - taken.get(place, 0)) for place, piece in enumerate(self.short.pieces)
        ]

    def rest_comes_out(self, counts: Sequence[int]) -> bool:
        """Whether what is not moved comes from what there is."""
        return gives(self.short, self.rest(counts), self.terms) is not None

    def works(self, counts: Sequence[int]) -> bool:
        """Whether both fabrics give what they are to give."""
        if not self.rest_comes_out(counts):
            return False
        if self.to is None or not any(counts):
            return True
        return gives(self.to, [*self.to.pieces, *self.moved(counts)], self.terms) is not None

    def cost(self, counts: Sequence[int]) -> _Cost:
        """Pieces that show, all pieces, steps, area."""
        taken = [(one, count) for one, count in zip(self.classes, counts, strict=True) if count]
        seen = sum(count for one, count in taken if one.is_seen)
        names = {self.short.pieces[place].name for place in self.taken(counts)}
        area = sum(one.area * count for one, count in taken)
        return seen, sum(count for _, count in taken), len(names), round(area, 6)

    # --- the search ----------------------------------------------------------------------------------------

    def fewest(self, most: int) -> Moved | None:
        """The set that costs least among those that are tried."""
        counts, is_fewest = (None, False) if self._are_hopelessly_many(most) else self._in_order(most)
        if not is_fewest:
            counts = self._one_by_one(most)
        if counts is None:
            return None
        return Moved(self.moved(counts), self.cost(counts)[0], self._at_least(), is_fewest)

    def _are_hopelessly_many(self, most: int) -> bool:
        """Whether more sets than are looked at take too little area away, by the pieces in them that show alone."""
        if most < sum(one.count for one in self.classes):
            return False
        missing = self.missing_area - sum(one.area * one.count for one in self.classes if not one.is_seen)
        seen = sorted((one for one in self.classes if one.is_seen), key=lambda one: -one.area)
        below = 0
        for one in seen:
            if missing <= _TOLERANCE:
                break
            own = min(one.count, ceil((missing - _TOLERANCE) / one.area))
            below, missing = below + own, missing - own * one.area
        return _sets_below(below, [1 if one.all_or_none else one.count for one in seen]) > _MOST_SETS

    def _at_least(self) -> int:
        """Pieces that must go by area alone, the largest first."""
        missing, count = self.missing_area, 0
        for one in sorted(self.classes, key=lambda one: -one.area):
            if missing <= _TOLERANCE:
                break
            own = min(one.count, ceil((missing - _TOLERANCE) / one.area))
            count, missing = count + own, missing - own * one.area
        return count

    def _in_order(self, most: int) -> tuple[tuple[int, ...] | None, bool]:
        """Sets in the order of their cost, and whether all that come before were tried."""
        nothing = (0,) * len(self.classes)
        waiting: list[tuple[_Cost, tuple[int, ...], int]] = [(self.cost(nothing), nothing, 0)]
        trials = 0
        for _ in range(_MOST_SETS):
            if not waiting:
                return None, True
            cost, counts, first = heappop(waiting)
            if cost[3] >= self.missing_area - _TOLERANCE and not _is_too_long(
                self.short, self.rest(counts), self.terms
            ):
                if trials == _MOST_TRIALS or (trials and self.terms.over()):
                    break
                if self.works(counts):
                    return counts, True
                trials += 1
            for place in range(first, len(self.classes)):
                one = self.classes[place]
                more = one.count if one.all_or_none else counts[place] + 1
                further = (*counts[:place], more, *counts[place + 1 :])
                if counts[place] < one.count and sum(further) <= most:
                    heappush(waiting, (self.cost(further), further, place))
        return None, False

    def _one_by_one(self, most: int) -> tuple[int, ...] | None:
        """Take away what does not show, then what is largest, until the rest comes out; then give back what can be."""
        places = sorted(range(len(self.classes)), key=lambda n: (self.classes[n].is_seen, -self.classes[n].area))
        low, high = 0, sum(one.count for one in self.classes)
        while low < high:
            middle = (low + high) // 2
            if self.rest_comes_out(self._first(places, middle)):
                high = middle
            else:
                low = middle + 1
        counts = list(self._first(places, low))
        for place in places:
            without = [*counts[:place], 0, *counts[place + 1 :]]
            if counts[place] and self.rest_comes_out(without):
                counts = without
        return tuple(counts) if sum(counts) <= most and self.works(counts) else None

    def _first(self, places: Sequence[int], count: int) -> tuple[int, ...]:
        """So many pieces in the order of the places; a binding is begun with its last strip, and then goes whole."""
        counts = [0] * len(self.classes)
        for place in places:
            one = self.classes[place]
            own = min(one.count, count)
            counts[place] = one.count if own and one.all_or_none else own
            count -= own
        return tuple(counts)


def _sets_below(size: int, counts: Sequence[int]) -> int:
    """How many ways there are to take fewer than so many pieces, so many of each at most; many are not told apart."""
    ways = [1] + [0] * max(size - 1, 0)
    for count in counts:
        ways = [sum(ways[max(0, place - count) : place + 1]) for place in range(len(ways))]
        if sum(ways) > _MOST_SETS:
            break
    return sum(ways)


def _is_overfull(to: Supply, more_area: float, terms: Terms) -> bool:
    """Whether so much more is more than there is of a fabric, by area alone."""
    own = sum(_area(piece, terms, to) * piece.count for piece in to.pieces if piece.count > 0)
    return own + more_area > _there(to, terms) + _AREA_HAIR


def _is_too_long(supply: Supply, pieces: Sequence[Piece], terms: Terms) -> bool:
    """Whether pieces cannot come from the length there is, however they are laid in strips; quickly told."""
    if supply.has_in is None or supply.fabric.on_hand:
        return False
    width = _width(supply, terms.numbers)
    area = 0.0
    strips: dict[float, list[float]] = {}
    for piece in pieces:
        long = _length(piece, terms)
        if piece.kind == "strip" and long <= width + _TOLERANCE:
            strips.setdefault(round(piece.wide, 6), []).extend([long] * piece.count)
        else:
            area += _area(piece, terms, supply) * piece.count
    length = area / width + sum(wide * _least_strips(lengths, width) for wide, lengths in strips.items())
    there = supply.has_in * (1 - shrinkage_of(supply.fabric, terms.numbers).along) - terms.numbers.straightening
    return length > max(there, 0.0) + 1e-4


def _least_strips(lengths: Sequence[float], width: float) -> int:
    """Strips that no way of cutting does with fewer than: by length, and by how many come from one strip at most."""
    if not lengths:
        return 0
    by_count = (ceil(sum(n > width / (most + 1) + 1e-4 for n in lengths) / most) for most in range(1, 7))
    return max(ceil(sum(lengths) / width - 1e-4), *by_count)


def _area(piece: Piece, terms: Terms, supply: Supply) -> float:
    """Fabric one piece takes at least, square inches."""
    if piece.kind == "rectangle":
        wide, long = piece.takes
        return wide * long
    if piece.kind == "binding":
        width = _width(supply, terms.numbers)
        return piece.wide * (min(piece.long, width) if piece.long > 0 else width)
    return piece.wide * _length(piece, terms)


def _length(piece: Piece, terms: Terms) -> float:
    """Length a strip is cut to, or the shortest that reaches when it is trimmed as it is sewn."""
    trimmed = terms.working is Working.TRIM_AS_YOU_GO and piece.kind == "strip" and not piece.cut_first
    return piece.shortest if trimmed and piece.shortest > 0 else piece.long


def _width(supply: Supply, numbers: Numbers) -> float:
    width = supply.fabric.usable_width.inches if supply.fabric.usable_width is not None else numbers.usable_width
    return width * (1 - shrinkage_of(supply.fabric, numbers).across)


def _there(supply: Supply, terms: Terms) -> float:
    """Area there is, straightened, square inches."""
    shrinkage = shrinkage_of(supply.fabric, terms.numbers)
    widths = [piece.wide for piece in supply.pieces if piece.kind != "rectangle"]
    shelf = Shelf.of(supply.fabric, widths, terms.numbers, shrinkage, terms.unit)
    area = sum(sheet.usable_length * sheet.usable_stack for sheet in shelf.sheets)
    area += sum(
        width * strip.length * (strip.count or 0) for strip, width in zip(shelf.strips, shelf.strip_widths, strict=True)
    )
    if supply.has_in is not None:
        length = supply.has_in * (1 - shrinkage.along) - terms.numbers.straightening
        area += max(length, 0.0) * _width(supply, terms.numbers)
    return area
