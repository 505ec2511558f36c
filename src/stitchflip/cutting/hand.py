"""From a fabric's plan to the order of the hand: what a stranger with ruler, mat and cutter does, cut by cut.

What lies on the shelf is cut first, then what is bought; large before small, because a slip can still be made good
from what is left: rows of squares and rectangles from the tallest down, then strips from the widest down. Rows and
strips are subcut as soon as they are cut, while one still knows which they are.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.hand_bands import Band, Bands, Grid, shape_of, with_gives_of
from stitchflip.cutting.hand_model import NEW_FABRIC, Act, CuttingOrder, Leftover, OrderStep, Part
from stitchflip.cutting.on_hand import is_length
from stitchflip.lengths import CM_PER_INCH, Unit

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from stitchflip.cutting.model import FabricPlan, HandSheet, Piece
    from stitchflip.project.numbers import Numbers

WORTH_KEEPING_IN = 1.5
"""Narrower leftovers go to the stuffing bag."""
_LONG_ENOUGH_IN = 4.0
"""So do those that are shorter than this."""
SELVAGES_IN = 1.0
"""Both selvages, which the ruler crosses too."""
_MOST_FOLDS = 2
"""Four layers; the edge wanders when there are more."""
_SLACK = 1e-4
_GRIDS_IN = {
    Unit.INCH: (1 / 8, 1 / 16, 1 / 32, 1 / 64),
    Unit.CM: tuple(step / CM_PER_INCH for step in (0.1, 0.05, 0.01)),
}


def order_of_hand(plan: FabricPlan, pieces: Sequence[Piece], numbers: Numbers, unit: Unit) -> CuttingOrder:
    """The cutting order of one fabric.

    Args:
        plan: how it is cut.
        pieces: what is cut from it, as cut.
        numbers: for the longest cut along the ruler and what straightening takes.
        unit: the maker's unit; cut lengths are rounded up to 1/8 in or 1 mm, and finer only where they would not
            fit.

    Returns:
        The steps, numbered from 1, and what is left for the shelf.
    """
    coarsest, *finer = _GRIDS_IN[unit]
    made = _Order(plan, pieces, numbers, Grid(coarsest, unit))
    order = made.order(is_finer=False)
    for grid in finer:
        if made.fits:
            break
        made = _Order(plan, pieces, numbers, Grid(grid, unit))
        order = made.order(is_finer=True)
    return order


class _Order:
    """Collects the steps; what remains is counted in the numbers that are printed."""

    def __init__(self, plan: FabricPlan, pieces: Sequence[Piece], numbers: Numbers, grid: Grid) -> None:
        self._plan = plan
        self._numbers = numbers
        self._bands = Bands(plan, pieces, grid)
        self._steps: list[OrderStep] = []
        self._leftovers: list[Leftover] = []
        self._lies_lengthwise = False
        self.fits = True

    def order(self, *, is_finer: bool) -> CuttingOrder:
        """All steps."""
        for sheet in self._plan.hand_sheets:
            self._lies_lengthwise = sheet.along == "long"
            self._sheet(sheet)
        self._lies_lengthwise = False
        self._precut()
        if self._plan.buy_in > 0:
            self._new_fabric()
        return CuttingOrder(self._plan.fabric, tuple(self._steps), tuple(_numbered(self._leftovers)), is_finer)

    # --- the fabric itself ---------------------------------------------------------------------------------

    def _new_fabric(self) -> None:
        """The purchase: one end straightened, rows and strips across, the other end part of what is left."""
        plan = self._plan
        washed = (plan.used_in + plan.straightening_in) / plan.need_in if plan.need_in else 1.0
        across, along = plan.usable_width, plan.buy_in * washed
        edge = plan.straightening_in / 2
        flat = across + SELVAGES_IN
        if washed < 1 - _SLACK:
            bought = (across / (1 - self._numbers.prewash_across), plan.buy_in)
            self._step(Act.WASH, NEW_FABRIC, before=bought, left=(across, along))
        self._straighten(NEW_FABRIC, (across, along), (across, along - edge), flat)
        self._cut_up(NEW_FABRIC, (across, along - edge), edge, flat, self._bands.new())

    def _sheet(self, sheet: HandSheet) -> None:
        """A piece on hand: laid so that its strips run across, straightened, the column for the shelf cut off."""
        long, stack = (sheet.wide, sheet.long) if sheet.along == "wide" else (sheet.long, sheet.wide)
        bands = list(self._bands.of_sheet(sheet))
        is_whole_width = is_length(sheet.name, sheet.wide)
        edge = self._numbers.straightening / 2 if is_whole_width else 0.0
        across, along = sheet.usable_length, sheet.usable_stack + edge
        off = self._numbers.fat_quarter_straightening
        washed = (across, along + edge) if is_whole_width else (across + off, along + off)
        if max(long - washed[0], stack - washed[1]) > _SLACK:
            self._step(Act.WASH, sheet.name, before=(long, stack), left=washed)
        self._straighten(sheet.name, washed, (across, along), max(washed))
        filled = max((band.filled for band in bands), default=0.0)
        column = across - filled
        if not is_whole_width and column >= WORTH_KEEPING_IN and sheet.column_left_in > 0:
            parts = (Part(filled, 1),)
            step = self._step(
                Act.COLUMN, sheet.name, parts=parts, cut_in=along, before=(across, along), left=(filled, along)
            )
            self._keep(column, along, step.number)
            across = filled
            bands = [band.shortened(filled) for band in bands]
        self._cut_up(sheet.name, (across, along), edge, across, bands)

    def _straighten(self, source: str, before: tuple[float, float], left: tuple[float, float], flat: float) -> None:
        if before != left:
            self._step(Act.STRAIGHTEN, source, cut_in=flat, before=before, left=left)

    def _cut_up(self, source: str, size: tuple[float, float], edge: float, flat: float, bands: Iterable[Band]) -> None:
        """Rows and strips across one piece of fabric, those of one setting together."""
        across, along = size
        for alike in _by_setting(bands):
            setting = alike[0].wide
            rest = along - setting * len(alike)
            parts = (Part(setting, len(alike)),)
            self._step(
                Act.ACROSS,
                source,
                parts=parts,
                what=alike[0].what,
                wide=setting,
                long=across,
                cut_in=flat,
                numbers=tuple(band.number for band in alike),
                before=(across, along),
                left=(across, max(rest, 0.0)),
            )
            along = rest
            self._give(source, alike)
        if along < -_SLACK:
            self.fits = False
        self._keep(across, along - edge, len(self._steps))

    def _precut(self) -> None:
        """Precut strips from the shelf: nothing to cut across."""
        for source, bands in self._bands.precut():
            for alike in _by_setting(bands):
                self._step(
                    Act.TAKE,
                    source,
                    what="strip",
                    wide=alike[0].wide,
                    long=alike[0].long,
                    numbers=tuple(band.number for band in alike),
                )
                self._give(source, alike)

    # --- rows and strips -----------------------------------------------------------------------------------

    def _give(self, source: str, bands: Sequence[Band]) -> None:
        """What the rows and strips of one setting are cut into; those cut alike together."""
        for alike in _alike(bands):
            one = alike[0]
            parts = one.parts
            for other in alike[1:]:
                parts = tuple(with_gives_of(a, b) for a, b in zip(parts, other.parts, strict=True))
            rest = one.long - one.filled
            if rest < -_SLACK or any(not _holds(part, one.wide) for part in parts):
                self.fits = False
            is_piece = len(parts) == 1 and parts[0].count == 1 and not parts[0].then and abs(rest) < _SLACK
            is_piece = is_piece and not parts[0].is_slanted
            act = Act.KEEP if one.purpose else Act.LABEL if is_piece else Act.SUBCUT
            step = self._step(
                act,
                source,
                what=one.what,
                wide=one.wide,
                long=one.long,
                numbers=tuple(band.number for band in alike),
                parts=parts,
                cut_in=one.wide if act is Act.SUBCUT else 0.0,
                left=(one.wide, max(rest, 0.0)),
                purpose=one.purpose,
            )
            if act is Act.SUBCUT:
                self._keep_ends(one, len(alike), step.number)

    def _keep_ends(self, band: Band, count: int, step: int) -> None:
        """The end of a row or strip, and what is trimmed off lower pieces; nothing is promised round a motif."""
        if any(given.has_motif for part in band.parts for given in part.pieces()):
            return
        rest = max(band.long - band.filled, 0.0)
        if band.what == "row":
            self._keep(rest, band.wide, step, count)
        else:
            self._keep_strip(band.wide, rest, step, count)
        for part in band.parts:
            for across, along in _trimmings(part, band.wide):
                self._keep(across, along, step, count * part.count)

    # --- bookkeeping ---------------------------------------------------------------------------------------

    def _step(
        self,
        act: Act,
        source: str,
        *,
        parts: tuple[Part, ...] = (),
        what: str = "",
        wide: float = 0.0,
        long: float = 0.0,
        numbers: tuple[int, ...] = (),
        cut_in: float = 0.0,
        before: tuple[float, float] = (0.0, 0.0),
        left: tuple[float, float] = (0.0, 0.0),
        purpose: str = "",
    ) -> OrderStep:
        step = OrderStep(
            len(self._steps) + 1,
            act,
            source,
            what,
            wide,
            long,
            numbers,
            parts,
            cut_in,
            folds_for(cut_in, self._numbers.longest_cut),
            before,
            left,
            purpose,
        )
        self._steps.append(step)
        return step

    def _keep(self, across: float, along: float, step: int, count: int = 1) -> None:
        """Fabric for the shelf, wide and long as the fabric lies on the bolt."""
        wide, long = (along, across) if self._lies_lengthwise else (across, along)
        self._keep_strip(wide, long, step, count)

    def _keep_strip(self, wide: float, long: float, step: int, count: int) -> None:
        narrow, other = sorted((wide, long))
        if narrow >= WORTH_KEEPING_IN - _SLACK and other >= _LONG_ENOUGH_IN - _SLACK:
            self._leftovers.append(Leftover(f"{self._plan.fabric} leftover", wide, long, count, step))


def folds_for(cut_in: float, longest_in: float) -> int:
    """How often fabric is folded so that a cut is no longer than the ruler; two folds, four layers, at most.

    Args:
        cut_in: length of the cut, opened out.
        longest_in: longest single cut along the ruler.

    Example:
        >>> folds_for(20, 23.5), folds_for(41, 23.5), folds_for(60, 23.5), folds_for(109, 23.5)
        (0, 1, 2, 2)
    """
    if cut_in <= 0 or longest_in <= 0:
        return 0
    folds = 0
    while folds < _MOST_FOLDS and cut_in / 2**folds > longest_in + _SLACK:
        folds += 1
    return folds


def _by_setting(bands: Iterable[Band]) -> Iterator[list[Band]]:
    """Neighbors of one kind and one setting of the ruler."""
    group: list[Band] = []
    for band in bands:
        if group and (group[-1].what, round(group[-1].wide, 6)) != (band.what, round(band.wide, 6)):
            yield group
            group = []
        group.append(band)
    if group:
        yield group


def _alike(bands: Sequence[Band]) -> Iterator[list[Band]]:
    """Those that are cut into the same, in the order of their first."""
    groups: dict[object, list[Band]] = {}
    for band in bands:
        shape = () if band.purpose else tuple(map(shape_of, band.parts))
        groups.setdefault((band.purpose, shape, round(band.long, 6)), []).append(band)
    yield from groups.values()


def _holds(part: Part, room: float) -> bool:
    """True when what is cut further from a part comes out of it."""
    taken = sum(one.measure * one.count for one in part.then)
    return taken <= room + _SLACK and all(_holds(one, part.measure) for one in part.then)


def _trimmings(part: Part, room: float) -> Iterator[tuple[float, float]]:
    """Across and along of what remains of a part when its pieces are cut off."""
    if not part.then:
        return
    yield part.measure, room - sum(one.measure * one.count for one in part.then)
    for one in part.then:
        for along, across in _trimmings(one, part.measure):
            yield across, along


def _numbered(leftovers: Sequence[Leftover]) -> Iterator[Leftover]:
    """Equal ones together, the largest first; with a number where there are several sizes."""
    found: dict[tuple[float, float], Leftover] = {}
    for one in leftovers:
        key = (round(one.wide, 4), round(one.long, 4))
        before = found.get(key)
        count = one.count + (before.count if before else 0)
        found[key] = Leftover(one.name, one.wide, one.long, count, before.step if before else one.step)
    largest = sorted(found.values(), key=lambda one: (-one.wide * one.long, -one.wide))
    for place, one in enumerate(largest, 1):
        name = f"{one.name} {place}" if len(largest) > 1 else one.name
        yield Leftover(name, one.wide, one.long, one.count, one.step)
