"""Wonky strips that had to be laid straighter than their maker asked."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.planning.findings.words import capital, strips
from stitchflip.planning.model import Cure, Finding, Severity

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.planning.findings.seen import Seen


def straighter(seen: Seen) -> Iterator[Finding]:
    """Strips below the smallest angle: at more of a slant a sliver of the fabric below would show."""
    notes = [note for note in seen.build.notes if note.code == "wonky.straighter"]
    if not notes:
        return
    steps = [note.step for note in notes]
    building = seen.project.building
    least = min(note.value for note in notes)
    verb = "lies" if len(steps) == 1 else "lie"
    what = capital(
        f"{strips(steps)} {verb} straighter than {building.smallest_angle:g}°, at {round(least, 1):g}° or more: "
        f"with more of a slant the fabric below would show less than {seen.speaker.near(seen.numbers.least_shown)} at "
        "its narrow end, or a seam already sewn would stay bare."
    )
    cure = Cure("Cut the strips wider, make no_sliver_under smaller, or take it as it is.")
    numbers = {"strips": float(len(steps)), "degrees": least}
    yield Finding("wonky.straighter", Severity.NOTE, what, strips(steps), steps[0], (), numbers, (cure,))
