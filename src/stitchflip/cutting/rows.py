"""Squares and rectangles from yardage: whole rows across the fabric, both ways of laying them.

A rotary cutter cuts across the full width first and subcuts the row then, so a plan is a stack of rows: the
tallest piece gives the height, others of the same height or lower stand beside it. One size alone is solved
exactly by counting; several sizes by trying every way of laying them with three rules of filling rows.
"""

from __future__ import annotations

from itertools import product
from math import ceil, floor
from typing import TYPE_CHECKING

from stitchflip.cutting.model import Row, Status
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

TOLERANCE = 1e-6
_MOST_WAYS = 256
_MOST_PARTS = 20
_MANY = 150
"""With more different sizes than this only two ways of laying are tried, and only some rows are kept open."""
_OPEN_ROWS = 40


@dataclass(frozen=True, slots=True)
class Rectangle:
    """So many equal pieces, upright: `wide` across the fabric, `long` along its length, both as cut."""

    label: str
    wide: float
    long: float
    count: int
    can_turn: bool = True

    @property
    def is_square(self) -> bool:
        """True when turning changes nothing."""
        return abs(self.wide - self.long) < TOLERANCE


@dataclass(frozen=True, slots=True)
class RowPlan:
    """Rows that give all rectangles, with proof and the other way of laying them."""

    rows: tuple[Row, ...]
    length_in: float
    """Heights of all rows together."""
    bound_in: float
    """No plan in whole rows takes less."""
    status: Status
    losing_in: float | None
    """Length when every rectangle is laid the other way; None when that is no different or does not fit."""
    turning_is_refused: bool
    """True when the other way is not allowed for some piece."""
    wanted: tuple[Rectangle, ...] = ()
    """What the rows give."""
    left_out: tuple[Rectangle, ...] = ()
    """Wider than the fabric, however they are laid."""


def per_row(usable_width: float, wide: float) -> int:
    """How many pieces stand side by side.

    Args:
        usable_width: width between the selvages, or length of a strip; inches.
        wide: cut size across; inches, above zero.

    Example:
        >>> per_row(40, 4.5), per_row(40, 40 / 3)
        (8, 3)
    """
    return floor(usable_width / wide + TOLERANCE)


def count_in(usable_width: float, length: float, wide: float, long: float) -> int:
    """How many pieces of one size a piece of fabric gives in whole rows.

    Args:
        usable_width: of the fabric, inches.
        length: of the fabric, straightened; inches.
        wide: of the piece, across the fabric.
        long: of the piece, along the fabric.

    Example:
        >>> count_in(21, 18, 2.5, 2.5)
        56
    """
    return per_row(usable_width, wide) * per_row(length, long)


def lay_in_rows(usable_width: float, rectangles: Iterable[Rectangle]) -> RowPlan:
    """The shortest stack of whole rows that gives all rectangles.

    Args:
        usable_width: width between the selvages, inches.
        rectangles: what is wanted; a piece that must not be turned stays upright.

    Returns:
        The rows, tallest first, the bound, and what the other way of laying would take.

    Example:
        >>> upright = lay_in_rows(42, [Rectangle("strip", 12, 2, 28, can_turn=False)])
        >>> upright.length_in, upright.losing_in, len(upright.rows)
        (20, 24, 10)
        >>> lay_in_rows(42, [Rectangle("strip", 12, 2, 28)]).length_in
        18

        The last is one row of turned pieces 12 high and three rows of three upright ones.
    """
    wanted = [one for one in rectangles if one.count > 0]
    fitting = [one for one in wanted if _ways(usable_width, one)]
    left_out = tuple(one for one in wanted if not _ways(usable_width, one))
    rows, turned = _best(usable_width, fitting)
    length = _height(rows)
    bound = length if len(fitting) == 1 else min(_bound(usable_width, fitting), length)
    proved = Status.PROVED if length <= bound + TOLERANCE else Status.BEST_FOUND
    odd = [one for one in fitting if not one.is_square]
    return RowPlan(
        rows=rows,
        length_in=length,
        bound_in=bound,
        status=Status.IMPOSSIBLE if left_out else proved,
        losing_in=_losing(usable_width, fitting, turned) if odd else None,
        turning_is_refused=any(not one.can_turn for one in odd),
        wanted=tuple(fitting),
        left_out=left_out,
    )


@dataclass(frozen=True, slots=True)
class _Lot:
    """Equal pieces laid one way: `across` the fabric, `height` of the row they need."""

    label: str
    across: float
    height: float
    count: int
    turned: bool


def _lot(one: Rectangle, count: int, *, turned: bool) -> _Lot:
    across, height = (one.long, one.wide) if turned else (one.wide, one.long)
    return _Lot(one.label, across, height, count, turned)


def _ways(usable_width: float, one: Rectangle) -> list[bool]:
    """Ways of laying that fit: upright (False), turned (True)."""
    ways = [] if per_row(usable_width, one.wide) < 1 else [False]
    if one.can_turn and not one.is_square and per_row(usable_width, one.long) >= 1:
        ways.append(True)
    return ways


def _height(rows: Iterable[Row]) -> float:
    return sum((row.height for row in rows), 0)


def _score(rows: Sequence[Row]) -> tuple[float, int, int]:
    """Length, then how often the ruler is set to another height, then the number of rows."""
    return round(_height(rows), 6), len({round(row.height, 6) for row in rows}), len(rows)


# --- trying the ways of laying -----------------------------------------------------------------------------


def _best(usable_width: float, fitting: Sequence[Rectangle]) -> tuple[tuple[Row, ...], dict[Rectangle, bool]]:
    """The best rows found, and for each rectangle whether most of its pieces are turned."""
    if not fitting:
        return (), {}
    layings = _layings(usable_width, fitting) if len(fitting) > 1 else [_one_size(usable_width, fitting[0])]
    tries = [_fill(usable_width, lots) for lots in layings]
    best = min(tries, key=_score)
    chosen = tuple(sorted(best, key=lambda row: -row.height))
    laid: dict[str, list[float]] = {}
    for label, across in (piece for row in chosen for piece in row.pieces):
        laid.setdefault(label, []).append(across)
    return chosen, {one: _mostly_turned(laid.get(one.label, ()), one) for one in fitting}


def _one_size(usable_width: float, one: Rectangle) -> list[_Lot]:
    """The best number of whole upright rows of a size that stands alone, the rest of it turned."""
    ways = _ways(usable_width, one)
    if len(ways) == 1:
        return [_lot(one, one.count, turned=ways[0])]
    upright, turned = per_row(usable_width, one.wide), per_row(usable_width, one.long)

    def length(rows: int) -> tuple[float, bool, int]:
        others = ceil(max(one.count - rows * upright, 0) / turned)
        return round(rows * one.long + others * one.wide, 6), bool(rows and others), -rows

    best = min(range(ceil(one.count / upright) + 1), key=length)
    standing = min(best * upright, one.count)
    return [_lot(one, standing, turned=False), _lot(one, one.count - standing, turned=True)]


def _layings(usable_width: float, fitting: Sequence[Rectangle]) -> list[list[_Lot]]:
    """Sets of lots to try: each size all one way, and each size split between both ways."""
    ways = [_ways(usable_width, one) for one in fitting]
    if len(fitting) > _MANY:
        choices = [
            [_by_height(one, own, tall=tall) for one, own in zip(fitting, ways, strict=True)] for tall in (False, True)
        ]
        return [
            [_lot(one, one.count, turned=way) for one, way in zip(fitting, choice, strict=True)] for choice in choices
        ]
    number = 1
    for own in ways:
        number *= len(own)
    if number <= _MOST_WAYS:
        choices = [list(choice) for choice in product(*ways)]
    else:
        choices = [[own[0] for own in ways], [own[-1] for own in ways]]
        choices += [
            [_by_height(one, own, tall=tall) for one, own in zip(fitting, ways, strict=True)] for tall in (False, True)
        ]
    out = [[_lot(one, one.count, turned=way) for one, way in zip(fitting, choice, strict=True)] for choice in choices]
    for place, own in enumerate(ways):
        if len(own) == 2:
            out.extend(_split(usable_width, fitting, place, choices[:4]))
    return out


def _by_height(one: Rectangle, ways: Sequence[bool], *, tall: bool) -> bool:
    """The way of laying that makes a piece stand tall, or lie low."""
    return (max if tall else min)(ways, key=lambda way: one.wide if way else one.long)


def _split(
    usable_width: float, fitting: Sequence[Rectangle], place: int, choices: Sequence[Sequence[bool]]
) -> list[list[_Lot]]:
    """Whole upright rows of one size and the rest of it turned, the other sizes as chosen."""
    one = fitting[place]
    each = per_row(usable_width, one.wide)
    whole = ceil(one.count / each)
    upright = range(1, whole) if whole <= _MOST_PARTS else (1, whole - 2, whole - 1)
    out: list[list[_Lot]] = []
    for rows in upright:
        for choice in choices:
            lots = [
                _lot(other, other.count, turned=way)
                for number, (other, way) in enumerate(zip(fitting, choice, strict=True))
                if number != place
            ]
            out.append([*lots, _lot(one, rows * each, turned=False), _lot(one, one.count - rows * each, turned=True)])
    return out


def _mostly_turned(laid: Iterable[float], one: Rectangle) -> bool:
    """Whether most pieces of a size, known by what they take across, are turned."""
    if one.is_square:
        return False
    return sum(1 if abs(across - one.long) < TOLERANCE else -1 for across in laid) > 0


def _losing(usable_width: float, fitting: Sequence[Rectangle], turned: dict[Rectangle, bool]) -> float | None:
    """Length with every piece laid the other way than most of its kind, allowed or not; None when too wide."""
    other = [_lot(one, one.count, turned=not turned[one] and not one.is_square) for one in fitting]
    if any(per_row(usable_width, lot.across) < 1 for lot in other):
        return None
    return _height(_fill(usable_width, other))


# --- filling rows ------------------------------------------------------------------------------------------


def _fill(usable_width: float, lots: Sequence[_Lot]) -> tuple[Row, ...]:
    """The shortest of three ways of filling rows with lots laid as they are."""
    ordered = sorted((lot for lot in lots if lot.count), key=lambda lot: (-lot.height, -lot.across, lot.label))
    if len(ordered) > 2 * _MANY:
        return _level(usable_width, ordered, tightest=False)
    fills = (_level(usable_width, ordered, tightest=False), _level(usable_width, ordered, tightest=True))
    return min((*fills, _row_by_row(usable_width, ordered)), key=_score)


@dataclass(slots=True)
class _Open:
    """A row being filled."""

    height: float
    rest: float
    pieces: list[tuple[str, float]]
    turned: bool

    def add(self, lot: _Lot, count: int) -> None:
        self.pieces += [(lot.label, lot.across)] * count
        self.rest -= lot.across * count

    def closed(self) -> Row:
        return Row(self.height, tuple(self.pieces), self.turned)


def _level(usable_width: float, ordered: Sequence[_Lot], *, tightest: bool) -> tuple[Row, ...]:
    """Tallest first, each piece into the first (or the tightest) row with room."""
    rows: list[_Open] = []
    full: list[_Open] = []
    for lot in ordered:
        left = lot.count
        if len(rows) > _OPEN_ROWS and len(ordered) > _MANY:
            rows.sort(key=lambda row: -row.rest)
            full += rows[_OPEN_ROWS:]
            del rows[_OPEN_ROWS:]
        for row in sorted(rows, key=lambda row: row.rest) if tightest else rows:
            count = min(left, per_row(row.rest, lot.across))
            row.add(lot, count)
            left -= count
        while left:
            count = min(left, per_row(usable_width, lot.across))
            rows.append(_Open(lot.height, usable_width, [], lot.turned))
            rows[-1].add(lot, count)
            left -= count
    return tuple(row.closed() for row in (*full, *rows))


def _row_by_row(usable_width: float, ordered: Sequence[_Lot]) -> tuple[Row, ...]:
    """One row after the other, the tallest piece first and then what covers most of the row's area.

    A row is laid again as often as there are pieces for it, as another search would find it again.
    """
    left = [lot.count for lot in ordered]
    rows: list[Row] = []
    while any(left):
        first = next(number for number, count in enumerate(left) if count)
        rest = usable_width - ordered[first].across
        left[first] -= 1
        used = _most_area(rest, ordered, left)
        left[first] += 1
        used[first] += 1
        again = min(count // of_it for count, of_it in zip(left, used, strict=True) if of_it)
        row = _Open(ordered[first].height, usable_width, [], ordered[first].turned)
        for number in (first, *(other for other in range(len(ordered)) if other != first)):
            row.add(ordered[number], used[number])
            left[number] -= again * used[number]
        rows += [row.closed()] * again
    return tuple(rows)


def _most_area(room: float, ordered: Sequence[_Lot], left: Sequence[int]) -> list[int]:
    """How many of each lot cover most area in the room left, by a short search."""
    best: tuple[float, list[int]] = (-1.0, [0] * len(ordered))
    looks = 400
    counts = [0] * len(ordered)

    def look(number: int, rest: float, area: float) -> None:
        nonlocal best, looks
        looks -= 1
        if number == len(ordered) or looks < 0:
            if area > best[0] + TOLERANCE:
                best = (area, counts.copy())
            return
        lot = ordered[number]
        for count in range(min(left[number], per_row(rest, lot.across)), -1, -1):
            counts[number] = count
            look(number + 1, rest - count * lot.across, area + count * lot.across * lot.height)
            if looks < 0:
                break
        counts[number] = 0

    look(0, room, 0.0)
    return best[1]


# --- the bound ---------------------------------------------------------------------------------------------


def _bound(usable_width: float, fitting: Sequence[Rectangle]) -> float:
    """No plan in whole rows takes less: areas, and widths of which only so many stand side by side."""
    if not fitting:
        return 0.0
    best = max(min(one.long if way is False else one.wide for way in _ways(usable_width, one)) for one in fitting)
    each = [[_lot(one, one.count, turned=way) for way in _ways(usable_width, one)] for one in fitting]
    for parts in range(21) if len(fitting) <= _MANY else (0, 1, 2):
        total = sum(
            min(_share(lot.across / usable_width, parts) * lot.height * lot.count for lot in lots) for lots in each
        )
        best = max(best, total)
    return best


def _share(part: float, parts: int) -> float:
    """Share of a row's width that a piece takes, counted in parts of a row cut one more often than `parts`."""
    if parts == 0:
        return min(part, 1.0)
    whole = (parts + 1) * part
    return floor(whole - 1e-5) / parts if whole > 1 else 0.0
