"""Coverage, base, and the widest place without stitching."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.piecing.geometry import TOLERANCE, extent
from stitchflip.planning.findings.words import capital, strips
from stitchflip.planning.model import Cure, Finding, Severity

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.model import BareSpot, Polygon
    from stitchflip.planning.findings.seen import Seen

_GRADES = {
    "stop": ("coverage.batting-shows", Severity.STOP),
    "fix": ("coverage.under-binding", Severity.FIX),
    "note": ("coverage.thin-reach", Severity.NOTE),
}


def bare_places(seen: Seen) -> Iterator[Finding]:
    """What no fabric reaches: one finding a grade, with its worst place."""
    for grade, (code, severity) in _GRADES.items():
        spots = [spot for spot in seen.build.bare if spot.grade == grade]
        if not spots:
            continue
        worst = max(spots, key=lambda spot: spot.by)
        numbers = {"by_in": worst.by, "area_in2": sum(spot.area for spot in spots), "places": float(len(spots))}
        yield Finding(
            code, severity, _bare_sentence(seen, worst, grade), worst.side, worst.step, worst.polygon, numbers
        )


def _bare_sentence(seen: Seen, worst: BareSpot, grade: str) -> str:
    say = seen.speaker
    wide, high = extent(worst.polygon, 1, 0), extent(worst.polygon, 0, 1)
    size = say.size(wide[1] - wide[0], high[1] - high[0])
    after = f"after {strips([worst.step])}" if worst.step else "beside the first piece"
    side = f" on the {worst.side} side" if worst.side and not worst.side.startswith("side") else f" on {worst.side}"
    if grade == "note":
        reach = seen.numbers.reach
        passes = reach - worst.by
        return (
            f"The fabric{side} passes the trim line by {say.margin(max(passes, 0.0))} {after}; "
            f"you ask for {say.near(reach)}."
        )
    where = "stays uncovered" if grade == "stop" else "stays uncovered where only the binding will hide it"
    return capital(f"a place {size} {where}{side} {after}: it falls short by {say.shortage(worst.by)}.")


def endless(seen: Seen) -> Iterator[Finding]:
    """Rounds that were repeated without covering more, and readings that cannot be."""
    for note in seen.build.notes:
        if note.code == "build.never-covers":
            what = "The rounds were repeated and no strip covers what is still bare."
            worst = max(seen.build.bare, key=lambda spot: spot.by, default=None)
            where, place = (f"{worst.side} side", worst.polygon) if worst else ("building.until_covered", ())
            cure = Cure("Move the center toward what is bare, or build so that strips go on that side too.")
            yield Finding("coverage.never-covers", Severity.STOP, what, where, note.step, place, cures=(cure,))
        elif note.code == "reading.impossible":
            what = (
                f"You measured {seen.speaker.near(note.value)} to the raw edge of the {note.side} side after step "
                f"{note.step}; the strip there cannot end at that place, so the reading is not used."
            )
            yield Finding("strip.reading", Severity.FIX, what, note.side, note.step, (), {"edge_in": note.value})


def base_size(seen: Seen) -> Iterator[Finding]:
    """A base too small for the squared-up size, for its spare, or for the first piece."""
    yield from _trim_on_base(seen)
    if not seen.build.first_is_strip:
        yield from _center_on_base(seen)


def _both_ways(seen: Seen, outline: Polygon) -> list[tuple[float, float, float, str]]:
    """(room, extent, base, direction) of an outline on the base, side to side and top to bottom."""
    ways = []
    for axis, size, word in (
        ((1.0, 0.0), seen.base.wide, "side to side"),
        ((0.0, 1.0), seen.base.high, "top to bottom"),
    ):
        low, high = extent(outline, *axis)
        ways.append((min(low + size / 2, size / 2 - high), high - low, size, word))
    return ways


def _directions(short: list[tuple[float, float, float, str]]) -> str:
    return "both ways" if len(short) == 2 else short[0][3]


def _trim_on_base(seen: Seen) -> Iterator[Finding]:
    say = seen.speaker
    ways = _both_ways(seen, seen.build.trim)
    short = [way for way in ways if way[0] < -TOLERANCE]
    least = min(0.25, seen.numbers.reach)
    tight = [way for way in ways if seen.base.is_given and -TOLERANCE <= way[0] < least - TOLERANCE]
    if short:
        room, needs, has, _ = min(short)
        where = _directions(short)
        what = (
            f"The squared-up size is larger than the base allows, {where}: before stitching draws it in the piece "
            f"takes {say.near(needs)}, and the base is {say.near(has)}; short by {say.shortage(needs - has)}."
        )
        numbers = {"base_in": has, "needs_in": needs, "short_in": needs - has}
        yield Finding("base.too-small", Severity.STOP, what, where, None, (), numbers)
    elif tight:
        room, needs, has, _ = min(tight)
        where = _directions(tight)
        what = f"The base has only {say.margin(room)} of spare per side, {where}."
        numbers = {"base_in": has, "needs_in": needs, "spare_in": room}
        yield Finding("base.little-spare", Severity.FIX, what, where, None, (), numbers)


def _center_on_base(seen: Seen) -> Iterator[Finding]:
    short = [way for way in _both_ways(seen, seen.build.pieces[0].opened) if way[0] < -TOLERANCE]
    if short:
        over = -min(short)[0]
        where = _directions(short)
        center = seen.project.center
        name = "half-done piece" if center is not None and center.sewn_already else "center"
        what = f"The {name} is larger than the base, {where}: it hangs over by {seen.speaker.shortage(over)}."
        yield Finding("base.center-larger", Severity.STOP, what, where, 0, (), {"over_in": over})


def wide_gap(seen: Seen) -> Iterator[Finding]:
    """A place without stitching that is wider than the batting allows."""
    gap, limit = seen.build.widest_gap, seen.numbers.widest_gap
    if gap.diameter > limit + TOLERANCE:
        at = "across the center" if gap.step == 0 else f"across strip {gap.step}"
        what = (
            f"Nothing is stitched for {seen.speaker.near(gap.diameter)} {at}; "
            f"your batting allows {seen.speaker.near(limit)}."
        )
        numbers = {"gap_in": gap.diameter, "limit_in": limit}
        yield Finding("stitching.wide-gap", Severity.FIX, what, at, gap.step, (gap.center,), numbers)
