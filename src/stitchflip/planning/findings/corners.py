"""Stitch-and-flip corners that are too large together."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Length, Rounding, Unit, format_length, round_to
from stitchflip.piecing.ways.folded_corners import OVERLAP
from stitchflip.planning.findings.words import listed
from stitchflip.planning.model import Cure, Finding, Severity
from stitchflip.project.model import Change

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.model import SewnPiece
    from stitchflip.planning.findings.seen import Seen


def corners_cut(seen: Seen) -> Iterator[Finding]:
    """Squares at the two ends of an edge whose seams cross inside the finished edge: the later cuts the earlier."""
    notes = [note for note in seen.build.notes if note.code == OVERLAP]
    if not notes:
        return
    worst = max(notes, key=lambda note: note.value)
    square = seen.build.pieces[worst.step]
    names = listed([note.side.removesuffix(" corner") for note in notes])
    what = (
        f"Corners cut into each other: the {names} {'square' if len(notes) == 1 else 'squares'} and a neighbor are "
        f"{seen.speaker.shortage(worst.value)} too large together, so the one sewn later takes the tip off the other."
    )
    numbers = {"over_in": worst.value, "square_in": square.square_cut}
    yield Finding(
        "corners.cut-into-each-other",
        Severity.FIX,
        what,
        names,
        worst.step,
        square.opened,
        numbers,
        tuple(_smaller(seen, square, worst.value)),
    )


def _smaller(seen: Seen, square: SewnPiece, over: float) -> Iterator[Cure]:
    """Squares that just meet: each half of the overlap smaller, on the ruler's grid."""
    project = seen.project
    grid = 0.125 if project.units is Unit.INCH else 0.5 / 2.54
    meeting = round_to(square.square_cut - over / 2, grid, Rounding.DOWN)
    if meeting <= 2 * seen.build.seam_allowance:
        return
    entry = project.rounds[square.round - 1]
    changes: tuple[Change, ...] = ()
    if entry.cut is not None:
        text = format_length(Length.of_inches(meeting), project.units)
        changes = (Change(("rounds", square.round - 1, "cut"), text),)
    yield Cure(f"Cut the squares of round {square.round} {seen.speaker.width(meeting)} or smaller.", changes)
