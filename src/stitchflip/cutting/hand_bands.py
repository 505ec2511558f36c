"""The rows and strips of a plan with the sizes that are printed, and the settings of the ruler that cut them up."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from math import ceil
from typing import TYPE_CHECKING

from stitchflip.cutting.hand_model import Given, Part
from stitchflip.lengths import CM_PER_INCH, Unit
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from stitchflip.cutting.model import FabricPlan, HandSheet, OneStrip, Piece, Row, StripPlan

_NEW = "width of fabric"
_SLACK = 1e-4
_FINEST_IN = {Unit.INCH: 1 / 64, Unit.CM: 0.01 / CM_PER_INCH}
TRIMMED_LATER = "trim as you sew"
"""What strips stay whole for whose pieces are trimmed after they are sewn."""


@dataclass(frozen=True, slots=True)
class Grid:
    """How the sizes of pieces are rounded before they are printed."""

    step: float
    unit: Unit

    def up(self, length: float) -> float:
        """A cut length, on the next step."""
        return ceil(length / self.step - 1e-6 / self.step) * self.step

    def chosen(self, width: float) -> float:
        """A cut width, as the maker chose it."""
        finest = _FINEST_IN[self.unit]
        return round(width / finest) * finest

    def side(self, length: float) -> float:
        """A side of a rectangle: as the maker chose it, or, where it was computed, on the next step."""
        chosen = self.chosen(length)
        return chosen if abs(chosen - length) < 1e-6 else self.up(length)


@dataclass(frozen=True, slots=True)
class Band:
    """One row or strip across a piece of fabric."""

    what: str
    """"row" or "strip"."""
    number: int
    wide: float
    """Height of the row, or cut width of the strip."""
    long: float
    parts: tuple[Part, ...]
    purpose: str = ""
    """What it stays whole for; "" when it is cut up."""

    @property
    def filled(self) -> float:
        """How much of its length is used."""
        return self.long if self.purpose else sum(part.measure * part.count for part in self.parts)

    def shortened(self, long: float) -> Band:
        """The same, cut from a narrower piece of fabric.

        Args:
            long: how wide that is.
        """
        return replace(self, long=long)


@dataclass(frozen=True, slots=True)
class _Laid:
    """A piece as it lies in a row, in printed sizes."""

    label: str
    across: float
    along: float
    """What is left of its height when it is trimmed."""
    takes: float
    """Height it takes in the row: more than `along` where a motif is to be found in it."""
    given: tuple[float, float]
    """Its cut size, wide and long."""
    is_slanted: bool
    has_motif: bool = False


class Bands:
    """Reads the plan band by band."""

    def __init__(self, plan: FabricPlan, pieces: Sequence[Piece], grid: Grid) -> None:
        """Keep what is asked for, and count rows from the first."""
        self._plan = plan
        self._pieces = pieces
        self._grid = grid
        self._rows = 0
        sheets = {sheet.name for sheet in plan.hand_sheets}
        self._by_source: dict[str, list[Band]] = {}
        firsts = _first_numbers(plan)
        for place, strips in enumerate(plan.strip_plans):
            for number, strip in enumerate(strips.strips, firsts[place]):
                self._by_source.setdefault(strip.stock, []).append(self._strip(strips, strip, number))
        self._precut = [name for name in self._by_source if name not in sheets and name != _NEW]

    def new(self) -> Iterator[Band]:
        """What is cut from new fabric."""
        for row in self._plan.rows:
            yield self._row(row, self._plan.usable_width)
        yield from self._by_source.get(_NEW, [])

    def of_sheet(self, sheet: HandSheet) -> Iterator[Band]:
        """What is cut from one piece on hand.

        Args:
            sheet: the piece.
        """
        for row in sheet.rows:
            yield self._row(row, sheet.usable_length)
        yield from self._by_source.get(sheet.name, [])

    def precut(self) -> Iterator[tuple[str, list[Band]]]:
        """Precut strips, by the name they have on the shelf."""
        for name in self._precut:
            yield name, self._by_source[name]

    # --- strips --------------------------------------------------------------------------------------------

    def _strip(self, strips: StripPlan, strip: OneStrip, number: int) -> Band:
        wide = self._grid.chosen(strip.width)
        if strips.is_whole or strips.as_you_go:
            purpose = TRIMMED_LATER if strips.as_you_go else ", ".join(dict.fromkeys(name for name, _ in strip.pieces))
            long = [(name, strip.length if strips.is_whole else length) for name, length in strip.pieces]
            gives = tuple(Given(name, wide, length, count) for (name, length), count in Counter(long).items())
            return Band("strip", number, wide, strip.length, (Part(strip.length, 1, gives, room=wide),), purpose)
        settings: dict[float, list[str]] = {}
        for label, length in strip.pieces:
            settings.setdefault(round(self._grid.up(length), 9), []).append(label)
        parts = [
            Part(measure, len(labels), _given(labels, (wide, measure)), room=wide)
            for measure, labels in sorted(settings.items(), reverse=True)
        ]
        return Band("strip", number, wide, strip.length, tuple(parts))

    # --- rows ----------------------------------------------------------------------------------------------

    def _row(self, row: Row, long: float) -> Band:
        self._rows += 1
        if row.stacks:
            return self._stacked(row, long)
        laid = [self._laid(label, across, row.height) for label, across in row.pieces]
        wide = max((one.takes for one in laid), default=row.height)
        return Band("row", self._rows, wide, long, tuple(_row_parts(laid, wide)))

    def _laid(self, label: str, across: float, height: float, along: float | None = None) -> _Laid:
        """The piece of that name that lies so in a row."""
        best: _Laid | None = None
        for piece in self._pieces:
            if piece.name != label:
                continue
            for one, lies in self._ways(piece):
                fits = lies[1] < height + _SLACK if along is None else abs(lies[1] - along) < _SLACK
                if abs(lies[0] - across) < _SLACK and fits and (best is None or one.takes > best.takes):
                    best = one
        if best is not None:
            return best
        up = self._grid.up
        sides = (up(across), up(height if along is None else along))
        return _Laid(label, *sides, sides[1], sides, is_slanted=False)

    def _ways(self, piece: Piece) -> Iterator[tuple[_Laid, tuple[float, float]]]:
        """Upright and turned, with the sizes of the plan beside the printed ones."""
        up, chosen = self._grid.up, self._grid.chosen
        slanted = piece.window is not None
        given = (self._grid.side(piece.wide), up(piece.long))
        if piece.kind == "rectangle":
            wide, long = piece.takes
            sides = (up(wide), up(long - piece.motif_in)) if slanted else given
            motif = piece.motif_in > 0 or piece.block_in > 0
            upright = _Laid(piece.name, *sides, up(long) if motif else sides[1], given, slanted, motif)
            yield upright, (wide, long)
            if not motif:
                yield _Laid(piece.name, sides[1], sides[0], sides[0], given, slanted), (long, wide)
            return
        lengths = {piece.long, piece.shortest, piece.last_long, self._plan.usable_width} - {0.0}
        for long in lengths:
            sides = (
                chosen(piece.wide),
                up(long) if long < self._plan.usable_width - _SLACK or long == piece.long else long,
            )
            yield _Laid(piece.name, *sides, sides[1], sides, is_slanted=False), (piece.wide, long)
            yield _Laid(piece.name, sides[1], sides[0], sides[0], sides, is_slanted=False), (long, piece.wide)

    # --- rows with pieces over one another -----------------------------------------------------------------

    def _stacked(self, row: Row, long: float) -> Band:
        stacks = [
            tuple(self._laid(piece.label, piece.across, piece.along, piece.along) for piece in stack.pieces)
            for stack in row.stacks
        ]
        wide = max((sum(one.takes for one in stack) for stack in stacks), default=row.height)
        if any(one.has_motif for stack in stacks for one in stack):
            wide = max(wide, self._grid.up(row.height))
        groups: dict[tuple[float, tuple[tuple[float, float], ...]], list[tuple[_Laid, ...]]] = {}
        for stack in stacks:
            room = round(max(one.across for one in stack), 9)
            groups.setdefault((room, tuple((one.across, one.takes) for one in stack)), []).append(stack)
        parts = [_stack_part(room, own, wide) for (room, _), own in groups.items()]
        return Band("row", self._rows, wide, long, tuple(sorted(parts, key=lambda part: -part.measure)))


def _first_numbers(plan: FabricPlan) -> dict[int, int]:
    """The number of the first strip of each part of the plan; those trimmed while sewing begin their width with 1."""
    counted: Counter[float] = Counter()
    firsts: dict[int, int] = {}
    for place, strips in sorted(enumerate(plan.strip_plans), key=lambda one: not one[1].as_you_go):
        firsts[place] = 1 + counted[round(strips.width, 6)]
        counted[round(strips.width, 6)] += len(strips.strips)
    return firsts


def _given(
    labels: Iterable[str], size: tuple[float, float], *, is_slanted: bool = False, has_motif: bool = False
) -> tuple[Given, ...]:
    """Equal pieces counted by their label."""
    return tuple(Given(label, *size, count, is_slanted, has_motif) for label, count in Counter(labels).items())


def _row_parts(laid: Sequence[_Laid], wide: float) -> Iterator[Part]:
    """The settings that subcut a row, the largest first; lower pieces are trimmed after."""
    groups: dict[tuple[float, float, tuple[float, float], bool, bool], list[str]] = {}
    for one in laid:
        key = (one.across, one.along, one.given, one.is_slanted, one.has_motif)
        groups.setdefault(key, []).append(one.label)
    for (across, along, size, is_slanted, motif), labels in sorted(groups.items(), key=lambda it: it[0], reverse=True):
        given = _given(labels, size, is_slanted=is_slanted, has_motif=motif)
        if along > wide - _SLACK:
            yield Part(across, len(labels), given, room=wide)
        else:
            yield Part(across, len(labels), then=(Part(along, 1, given, room=across),), room=wide)


def _stack_part(room: float, stacks: Sequence[tuple[_Laid, ...]], wide: float) -> Part:
    """Parts of a row that are cut alike: first the part, then its pieces one over the other."""
    levels = list(zip(*stacks, strict=True))
    if len(levels) == 1 and levels[0][0].along > wide - _SLACK:
        own, one = levels[0], levels[0][0]
        gives = _given((it.label for it in own), one.given, is_slanted=one.is_slanted, has_motif=one.has_motif)
        return Part(room, len(stacks), gives, room=wide)
    then: list[Part] = []
    for own in levels:
        one, labels = own[0], [piece.label for piece in own]
        given = _given(labels, one.given, is_slanted=one.is_slanted, has_motif=one.has_motif)
        if one.across > room - _SLACK:
            then.append(Part(one.along, 1, given, room=room))
        else:
            then.append(Part(one.along, 1, then=(Part(one.across, 1, given, room=one.along),), room=room))
    return Part(room, len(stacks), then=tuple(_joined(then)), room=wide)


def _joined(parts: Sequence[Part]) -> Iterator[Part]:
    """Neighbors of the same setting as one."""
    waiting: Part | None = None
    for part in parts:
        if waiting is not None and shape_of(waiting)[1:] == shape_of(part)[1:]:
            both = with_gives_of(waiting, part)
            waiting = replace(both, count=waiting.count + part.count)
            continue
        if waiting is not None:
            yield waiting
        waiting = part
    if waiting is not None:
        yield waiting


Shape = tuple[int, float, bool, tuple["Shape", ...]]


def shape_of(part: Part) -> Shape:
    """How a part is cut, whatever its pieces are called.

    Args:
        part: cuts at one setting.
    """
    return part.count, round(part.measure, 6), part.is_slanted, tuple(shape_of(one) for one in part.then)


def with_gives_of(one: Part, other: Part) -> Part:
    """The same cuts with the pieces of both.

    Args:
        one: cuts at one setting.
        other: cuts of the same shape.
    """
    counts: Counter[Given] = Counter()
    for given in (*one.gives, *other.gives):
        counts[replace(given, count=0)] += given.count
    gives = tuple(replace(given, count=count) for given, count in counts.items())
    then = tuple(with_gives_of(a, b) for a, b in zip(one.then, other.then, strict=True))
    return replace(one, gives=gives, then=then)
