"""What a print with a repeat asks for: length for its unknown start, and a window that suits it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.motifs import motif_notes
from stitchflip.planning.model import Cure, Finding, Severity
from stitchflip.planning.motifs import center_need
from stitchflip.project.model import Change

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.lengths import Speaker
    from stitchflip.planning.findings.seen import Seen
    from stitchflip.planning.motifs import MotifNeed
    from stitchflip.project.model import Fabric


def fussy_cut(seen: Seen, fabric: Fabric) -> Iterator[Finding]:
    """What the repeat of the center's print asks for: length for its unknown start, and a window it fits."""
    say = seen.speaker
    count = 1 if fabric.on_hand else seen.project.how_many
    need = center_need(seen.project, seen.numbers, seen.build.pieces[0], count)
    if need is None or fabric.repeat is None:
        return
    numbers = {"repeat_in": fabric.repeat.inches, "surely_in": need.surely_in, "chosen_in": need.chosen_in}
    place = ("fabrics", seen.project.fabrics.index(fabric), "motif_chosen")
    if fabric.motif_chosen:
        what = (
            f"{fabric.name}: {say.near(need.chosen_in)} of length are enough for {_centers(count)} only where it is "
            "chosen: have it cut in the shop from where the motif begins."
        )
        sure = Cure(
            f"Or buy {say.near(need.surely_in)} of length: enough wherever the print begins.", (Change(place, "false"),)
        )
        yield Finding("fabric.motif", Severity.NOTE, what, "center", 0, (), numbers, (sure,))
    else:
        what = (
            f"{fabric.name} repeats every {say.near(fabric.repeat.inches)}: {say.near(need.surely_in)} of length are "
            f"counted for {_centers(count)}, so that {_whole(count)} in it wherever the print begins."
        )
        chosen = Cure(
            f"Choose the place of the motif in the shop: then {say.near(need.chosen_in)} of length are enough.",
            (Change(place, "true"),),
        )
        yield Finding("fabric.motif", Severity.NOTE, what, "center", 0, (), numbers, (chosen,))
    yield from _ill_fitting(need, fabric, say)
    if fabric.on_hand and seen.project.how_many > 1 and fabric.repeat_across is None:
        what = (
            f"How many motifs of {fabric.name} lie side by side is not known: on the pieces on hand windows are laid "
            "as close as they fit."
        )
        cure = Cure("Measure from one column of the print to the next, and look for the motifs before you cut.")
        yield Finding("fabric.motif-not-sure", Severity.FIX, what, "center", 0, cures=(cure,))


def _ill_fitting(need: MotifNeed, fabric: Fabric, say: Speaker) -> Iterator[Finding]:
    """A window that shows more than one motif, or less than one; columns that may miss the width."""
    repeat, window = need.counting.repeat, need.counting.window
    noted = {note.code for note in motif_notes(repeat, window, need.counting.wide)}
    shows = say.size(*window.shows)
    if "motif.repeat-under-window" in noted:
        every = say.near(repeat.along) if repeat.across is None else say.size(repeat.across, repeat.along)
        what = f"{fabric.name} repeats every {every}; the center shows {shows}: the motif will come more than once."
        yield Finding(
            "fabric.repeat",
            Severity.NOTE,
            what,
            "center",
            0,
            (),
            {"repeat_in": repeat.along, "shows_in": window.shows[1]},
        )
    if "motif.cut-off" in noted:
        motif = max(repeat.motifs, key=lambda one: one.wide * one.long + one.wide + one.long)
        what = (
            f"The motif of {fabric.name} is {say.size(motif.wide, motif.long)}; the center shows {shows}, less than it."
        )
        cure = Cure("Cut the center as large as the motif and a seam on every side, or let the motif be cut off.")
        yield Finding("fabric.motif-cut-off", Severity.FIX, what, "center", 0, cures=(cure,))
    if not need.is_sure_across:
        what = (
            f"Columns of {fabric.name} lie so far apart that {say.near(need.counting.wide)} of width may hold no whole "
            "window; one is counted on."
        )
        cure = Cure("Measure on the fabric where a motif lies across it, before you buy.")
        yield Finding("fabric.motif-not-sure", Severity.FIX, what, "center", 0, cures=(cure,))


def _centers(count: int) -> str:
    return "one center" if count == 1 else f"{count} centers"


def _whole(count: int) -> str:
    return "a whole motif lies" if count == 1 else f"{count} whole motifs lie"
