"""From a project's print and center to fussy cutting: the repeat, the window, and the length that is enough."""

from __future__ import annotations

from dataclasses import replace
from math import ceil
from typing import TYPE_CHECKING

from stitchflip.cutting.motifs import Counting, Motif, MotifLength, Repeat, Window, length_for
from stitchflip.cutting.purchase import shrinkage_of
from stitchflip.errors import CuttingError
from stitchflip.lengths import Rounding, round_to
from stitchflip.piecing.geometry import extent
from stitchflip.piecing.shapes import center_cut, is_slanted
from stitchflip.project.model import CenterShape
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.piecing.model import Polygon, SewnPiece
    from stitchflip.project.model import Center, Fabric, Project
    from stitchflip.project.numbers import Numbers

_FOUR_SIDED = (CenterShape.SQUARE, CenterShape.RECTANGLE)
_TOLERANCE = 1e-6
_MOST_REPEATS = 6
"""A window that reaches over more repeats than these shows a pattern, not a motif."""
_MOST_AT_ONCE = 48
"""More windows than these are looked for in several lengths, each with its own unknown start."""


@dataclass(frozen=True, slots=True)
class MotifNeed:
    """Fussy-cut centers of one fabric, and the fabric they take; inches."""

    fabric: Fabric
    counting: Counting
    """Print, window and usable width; counted without a search, so that planning is quick and always the same."""
    length: MotifLength
    """What is enough; counted as one motif in the width where the width may hold no whole column."""
    is_sure_across: bool
    """False: columns lie so far apart that only measuring can tell whether a whole window lies in the width."""
    used_in: float
    """Length that is planned, on the grid cuts are rounded to; repeats for mistakes are in it."""
    chosen_in: float
    """Length that is enough when the motif is chosen in the shop, on the same grid."""
    surely_in: float
    """Length that is enough wherever the print begins, on the same grid."""


def repeat_of(fabric: Fabric) -> Repeat | None:
    """How a fabric's print repeats; None when that is not said.

    Args:
        fabric: the fabric.
    """
    if fabric.repeat is None:
        return None
    return Repeat(
        along=fabric.repeat.inches,
        across=None if fabric.repeat_across is None else fabric.repeat_across.inches,
        half_drop=fabric.half_drop,
        motifs=tuple(
            Motif(
                one.across.inches,
                one.along.inches,
                0.0 if one.wide is None else one.wide.inches,
                0.0 if one.long is None else one.long.inches,
            )
            for one in fabric.motifs
        ),
    )


def window_of(
    center: Center | None, numbers: Numbers, raw: Polygon, size: tuple[float, float], *, one_way: bool
) -> Window:
    """What is cut round a motif for a center, or for a first strip.

    A center on point from a one-way print is cut turned on the print, so that the print stands upright in the piece;
    other slants and shapes take the upright rectangle they reach over.

    Args:
        center: the center; None for a first strip.
        numbers: the seam.
        raw: its raw edges on the base.
        size: cut size, wide and long.
        one_way: whether the print must stand upright.
    """
    if center is None or not one_way or not is_slanted(center.turned):
        return Window(*size, numbers.seam)
    (left, right), (low, high) = extent(raw, 1, 0), extent(raw, 0, 1)
    on_point = Window(*size, numbers.seam, on_point=True)
    is_on_point = center.shape in _FOUR_SIDED and abs(on_point.box[0] - (right - left)) < _TOLERANCE
    return on_point if is_on_point else Window(right - left, high - low, numbers.seam)


def motif_need(project: Project, numbers: Numbers, name: str, window: Window, count: int) -> MotifNeed | None:
    """The fabric that fussy-cut centers take; None for a print without a repeat, or so close that any place will do.

    Args:
        project: for its fabrics.
        numbers: usable width, prewash, and the grid of cuts.
        name: the fabric.
        window: what is cut.
        count: how many, for everything alike.
    """
    fabric = next((fabric for fabric in project.fabrics if fabric.name == name), None)
    repeat = None if fabric is None else repeat_of(fabric)
    if fabric is None or repeat is None or window.box[1] > _MOST_REPEATS * repeat.along:
        return None
    own = fabric.usable_width.inches if fabric.usable_width else numbers.usable_width
    width = own * (1 - shrinkage_of(fabric, numbers).across)
    counting = Counting(_thinned(repeat, window), window, width, searches=False)
    length = _length(counting, count)
    is_sure = length.surely_in is not None
    if not is_sure:
        length = _length(Counting(Repeat(repeat.along), window, max(width, window.box[0]), searches=False), count)

    def up(wanted: float | None) -> float:
        return round_to(wanted or 0.0, numbers.round_cuts_to, Rounding.UP)

    planned = length.chosen_in if fabric.motif_chosen else length.surely_in
    spare = fabric.spare_repeats * repeat.along
    return MotifNeed(
        fabric, counting, length, is_sure, up((planned or 0.0) + spare), up(length.chosen_in), up(length.surely_in)
    )


def _thinned(repeat: Repeat, window: Window) -> Repeat:
    """The same print, or only some of its columns where they lie much closer together than windows could."""
    if repeat.across is None or window.box[0] <= _MOST_REPEATS * repeat.across:
        return repeat
    every = 2 * ceil(window.box[0] / repeat.across / _MOST_REPEATS)
    return Repeat(repeat.along, every * repeat.across, motifs=repeat.motifs[:1])


def _length(counting: Counting, count: int) -> MotifLength:
    """Length that is enough; very many windows in several lengths."""
    whole, rest = divmod(count, _MOST_AT_ONCE)
    last = length_for(counting, rest)
    if not whole:
        return last
    each = length_for(counting, _MOST_AT_ONCE)
    if each.surely_in is None or each.chosen_in is None:
        return replace(each, count=count)
    return MotifLength(
        count,
        whole * each.surely_in + (last.surely_in or 0.0),
        whole * each.chosen_in + (last.chosen_in or 0.0),
        is_proved=last.is_proved and each.is_proved and not rest and whole == 1,
    )


@dataclass(frozen=True, slots=True)
class MotifRoom:
    """What a fussy-cut center takes beside itself."""

    beside_in: float
    """Length kept free beside one center, so that a whole motif surely lies in it."""
    block_in: float
    """Length of one block for all centers; 0 when each has its own room."""


def center_need(project: Project, numbers: Numbers, first: SewnPiece, count: int) -> MotifNeed | None:
    """The fabric that a project's fussy-cut centers take; None when its print does not repeat, or too closely to count.

    Args:
        project: the project, or one kind of block as a project.
        numbers: the maker's numbers.
        first: the center, or the first strip.
        count: how many, for everything alike.
    """
    size = center_cut(project, first.opened) if project.center is not None else (first.cut_width, first.cut_length)
    one_way = any(fabric.one_way for fabric in project.fabrics if fabric.name == first.fabric)
    try:
        window = window_of(project.center, numbers, first.opened, size, one_way=one_way)
        return motif_need(project, numbers, first.fabric, window, count)
    except CuttingError:
        return None  # a print so close that any place will do, or a center that is smaller than its seams


def center_room(project: Project, numbers: Numbers, first: SewnPiece, long: float, count: int) -> MotifRoom | None:
    """What a fussy-cut center takes beside itself; None for a print that does not repeat.

    Args:
        project: the project, or one kind of block as a project.
        numbers: the maker's numbers.
        first: the center, or the first strip.
        long: fabric that one center takes along the length.
        count: how many, for everything alike.
    """
    fabric = next((one for one in project.fabrics if one.name == first.fabric), None)
    if fabric is None or fabric.repeat is None:
        return None
    alone = count == 1 or bool(fabric.on_hand)
    need = center_need(project, numbers, first, 1 if alone else count)
    if need is None:
        return MotifRoom(fabric.repeat.inches, 0.0)
    beside = need.used_in - long
    if alone and beside > _TOLERANCE:
        return MotifRoom(beside, 0.0)
    return MotifRoom(0.0, max(need.used_in, long)) if not fabric.on_hand else MotifRoom(max(beside, 0.0), 0.0)
