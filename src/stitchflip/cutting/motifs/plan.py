"""Where to cut windows round motifs: told from the first motif, with the cuts and what is left between."""

from __future__ import annotations

from math import sqrt
from typing import TYPE_CHECKING

from stitchflip.cutting.model import Status
from stitchflip.cutting.motifs.apart import Apart, Box, cut_apart
from stitchflip.cutting.motifs.counting import Counting, Place, places
from stitchflip.cutting.motifs.model import TOLERANCE, MotifCount, MotifNote, Repeat, Window
from stitchflip.cutting.motifs.rows import in_rows
from stitchflip.lengths import in_both_units
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator


@dataclass(frozen=True, slots=True)
class WindowPlace:
    """One window, where it is cut."""

    number: int
    """From 1, in the order of the hand: along the fabric, then across."""
    x: float
    """Its center, across the fabric from the left edge; inches."""
    y: float
    """Its center, along the fabric from the end cut first; inches."""
    across_in: float
    """Its center from that of the first window, across the fabric."""
    along_in: float
    """Its center from that of the first window, along the fabric."""
    columns: int
    """Columns of repeats on from the first window."""
    repeats: int
    """Repeats on from the first window, along its own column."""
    motif: int
    """Number of its motif in the repeat, from 0."""


@dataclass(frozen=True, slots=True)
class MotifPlan:
    """Windows round motifs on one length of fabric; inches."""

    repeat: Repeat
    window: Window
    wide: float
    long: float
    start: tuple[float, float]
    """Where a repeat begins, across and along."""
    is_example: bool
    """True: where the print begins was not known, and this is the start that gives fewest windows."""
    motifs: tuple[Place, ...]
    """Every motif round which a whole window lies on the fabric."""
    windows: tuple[WindowPlace, ...]
    bound: int
    """No choice of windows has more."""
    count: MotifCount
    """Whatever the start of the print."""
    status: Status
    """Proved when no choice has more windows for this start, or as many as were asked for are there."""
    in_rows: int
    """Windows that lie in whole rows across the fabric, every one cut from edge to edge."""
    apart: Apart
    notes: tuple[MotifNote, ...]

    @property
    def corner_legs(self) -> tuple[float, float]:
        """Short sides of the triangles left at the corners of a window on point; two of each. Zero when upright."""
        if not self.window.on_point:
            return 0.0, 0.0
        return self.window.wide / sqrt(2), self.window.long / sqrt(2)

    def leftovers(self, at_least_in: float = 1.5) -> tuple[Box, ...]:
        """Rectangles left between the windows that are worth keeping, largest first.

        Args:
            at_least_in: narrower ones go to the stuffing bag.
        """
        return tuple(box for box in self.apart.leftovers if min(box.wide, box.long) >= at_least_in - TOLERANCE)


def plan_motifs(counting: Counting, long: float, count: int | None = None) -> MotifPlan:
    """Where to cut windows on a length of fabric.

    Args:
        counting: print, window, usable width, and where the print begins if that is known.
        long: length of the fabric, straightened; inches.
        count: windows wanted; None: as many as there are.

    Returns:
        The plan, for the start of the print as known, or else for the one that gives fewest windows. Windows that do
        not come apart from edge to edge give way to rows where rows have enough of them.

    Example:
        >>> plan = plan_motifs(Counting(Repeat(9, 9), Window(4.5, 4.5), 40), 36, 5)
        >>> len(plan.windows), plan.windows[4].columns, plan.windows[4].repeats, plan.apart.comes_apart
        (5, 1, 1, True)
    """
    counted = counting.count(long)
    known = None not in (counting.start.along, 0.0 if counting.repeat.across is None else counting.start.across)
    start = _start(counting, long)
    found = places(counting.repeat, counting.window, counting.wide, long, start)
    chosen = counting.chosen_at(long, start)
    rows = in_rows(found, counting.window)
    wanted = len(chosen.picked) if count is None else min(count, len(chosen.picked))
    picked = _picked(counting, long, found, chosen.picked, rows, wanted)
    first = picked[0] if picked else None
    return MotifPlan(
        repeat=counting.repeat,
        window=counting.window,
        wide=counting.wide,
        long=long,
        start=start,
        is_example=not known,
        motifs=found,
        windows=tuple(
            WindowPlace(
                number,
                place.x,
                place.y,
                place.x - first.x,
                place.y - first.y,
                place.column - first.column,
                place.row - first.row,
                place.motif,
            )
            for number, place in enumerate(picked, 1)
            if first is not None
        ),
        bound=chosen.bound,
        count=counted,
        status=Status.PROVED if wanted == count else chosen.status,
        in_rows=len(rows),
        apart=cut_apart(counting.wide, long, counting.window, picked),
        notes=tuple(motif_notes(counting.repeat, counting.window, counting.wide)),
    )


def _start(counting: Counting, long: float) -> tuple[float, float]:
    """The start of the print that gives fewest windows."""
    starts = [(x, y) for x in counting.unlucky(0, long) for y in counting.unlucky(1, long)]
    return min(starts, key=lambda start: counting.most(long, start))


def _picked(
    counting: Counting,
    long: float,
    found: tuple[Place, ...],
    most: tuple[int, ...],
    rows: tuple[int, ...],
    wanted: int,
) -> list[Place]:
    """The windows that are cut: rows where they are enough, else the most there are."""
    if len(rows) >= wanted:
        return [found[number] for number in rows[:wanted]]
    picked = [found[number] for number in most]
    apart = cut_apart(counting.wide, long, counting.window, picked)
    alone = [number for block in apart.blocks if len(block.windows) == 1 for number in block.windows]
    hang = [number for block in apart.blocks if len(block.windows) > 1 for number in block.windows]
    kept = (alone + hang)[:wanted]
    return [picked[number] for number in sorted(kept)]


def motif_notes(repeat: Repeat, window: Window, wide: float) -> Iterator[MotifNote]:
    """What does not go together: print, window and width.

    Args:
        repeat: the print.
        window: what is cut.
        wide: usable width, inches.
    """
    across = window.box[0]
    if across > wide + TOLERANCE:
        yield MotifNote(
            "motif.wider-than-fabric",
            f"The window reaches over {in_both_units(across)} across fabric that is {in_both_units(wide)} wide: "
            "no whole window can be cut.",
            "Cut it smaller, or do not turn it on the print.",
        )
    shows = _shown_box(window)
    if repeat.along < shows[1] - TOLERANCE or (repeat.across is not None and repeat.across < shows[0] - TOLERANCE):
        yield MotifNote(
            "motif.repeat-under-window",
            "The print repeats closer than the window shows: more than one motif is seen in it.",
            f"Cut it so that it shows {in_both_units(min(repeat.along, repeat.across or repeat.along))} or less, or "
            "let the motif come more than once.",
        )
    if any(not _is_seen(motif.wide, motif.long, window) for motif in repeat.motifs):
        yield MotifNote(
            "motif.cut-off",
            f"The window shows {in_both_units(window.shows[0])} by {in_both_units(window.shows[1])} inside its seams: "
            "less than the motif.",
            "Cut it as large as the motif and a seam on every side, or let the motif be cut off.",
        )
    if across <= wide + TOLERANCE and repeat.across is not None and not _is_sure(repeat, window, wide):
        yield MotifNote(
            "motif.not-sure",
            "Columns of the print lie so far apart that the width may hold no whole window.",
            "Measure on the fabric where a motif lies across it.",
        )


def _shown_box(window: Window) -> tuple[float, float]:
    wide, long = window.shows
    return ((wide + long) / sqrt(2),) * 2 if window.on_point else (wide, long)


def _is_seen(wide: float, long: float, window: Window) -> bool:
    """Whether a motif lies wholly inside the window's seams."""
    across, along = ((wide + long) / sqrt(2),) * 2 if window.on_point else (wide, long)
    return across <= window.shows[0] + TOLERANCE and along <= window.shows[1] + TOLERANCE


def _is_sure(repeat: Repeat, window: Window, wide: float) -> bool:
    """Whether some whole window lies in the width wherever the print begins across."""
    period, room = repeat.period[0], wide - window.box[0]
    levels = sorted({center[0] % period for center in repeat.centers})
    gaps = [b - a for a, b in zip(levels, [*levels[1:], levels[0] + period], strict=True)]
    return max(gaps) <= room + TOLERANCE
