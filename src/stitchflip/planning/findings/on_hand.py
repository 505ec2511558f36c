"""Strips taken from what is on hand that do not reach to the end."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Length, Rounding, Unit, format_length, round_to
from stitchflip.piecing.on_hand_widths import MORE, RUNS_OUT
from stitchflip.planning.findings.words import listed
from stitchflip.planning.model import Cure, Finding, Severity
from stitchflip.project.model import Change

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.piecing.model import KernelNote
    from stitchflip.planning.findings.seen import Seen


def strips_run_out(seen: Seen) -> Iterator[Finding]:
    """The place where no piece on hand is long enough any more, and how much of each fabric would go on to the end."""
    out = next((note for note in seen.build.notes if note.code == RUNS_OUT), None)
    if out is None:
        return
    say = seen.speaker
    bare = [spot for spot in seen.build.bare if spot.grade != "note"]
    rest = "the batting shows there" if bare else "what must be covered is covered all the same"
    side = f" on the {out.side} side" if not out.side.startswith("side") else f" on {out.side}"
    what = (
        f"The pieces on hand run out before strip {out.step}: for its place{side} the longest piece left of "
        f"{out.fabric} is {say.shortage(out.value)} too short, and {rest}."
    )
    more = [note for note in seen.build.notes if note.code == MORE]
    yield Finding(
        "strips.run-out",
        Severity.STOP if bare else Severity.NOTE,
        what,
        out.side,
        out.step - 1,  # the strip itself is not sewn
        bare[0].polygon if bare else (),
        {"short_in": out.value, "more_in": sum(note.value for note in more)},
        (_cure(seen, more),),
    )


def _cure(seen: Seen, more: Sequence[KernelNote]) -> Cure:
    """So much more of each fabric, in one length."""
    project, say = seen.project, seen.speaker
    step = 0.25 if project.units is Unit.INCH else 0.5 / 2.54
    lengths = [round_to(note.value, step, Rounding.UP) for note in more]
    words = [
        f"{say.width(length)} of {note.fabric} {say.width(note.width)} wide"
        for note, length in zip(more, lengths, strict=True)
    ]
    changes = []
    added: dict[int, int] = {}
    for note, length in zip(more, lengths, strict=True):
        place = next(k for k, fabric in enumerate(project.fabrics) if fabric.name == note.fabric)
        last = len(project.fabrics[place].on_hand) + added.get(place, 0)
        added[place] = added.get(place, 0) + 1
        wide, long = (format_length(Length.of_inches(inches), project.units) for inches in (note.width, length))
        changes.append(Change(("fabrics", place, "on_hand", last), f'{{ wide = "{wide}", long = "{long}" }}'))
    return Cure(f"To go on to the end find {listed(words)} more.", tuple(changes))
