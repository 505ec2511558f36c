"""Seam ends, strips that show too little or nothing, bulk, and bias edges."""

from __future__ import annotations

from bisect import bisect_left
from itertools import product
from math import atan2, hypot, pi, radians
from typing import TYPE_CHECKING

from stitchflip.piecing.geometry import TOLERANCE, area, distance_to, edges, extent, largest_circle, perimeter
from stitchflip.piecing.model import EndClass
from stitchflip.planning.findings.words import capital, listed, strips
from stitchflip.planning.model import Cure, Finding, Severity
from stitchflip.project.model import Way

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from stitchflip.piecing.model import KernelNote, Point, Polygon, Seam, SewnPiece
    from stitchflip.planning.findings.seen import Seen


def loose_ends(seen: Seen) -> Iterator[Finding]:
    """Every end that nothing holds, together; locking is the cure and needs no new plan."""
    ends: list[str] = []
    places: list[Point] = []
    first = None
    for piece in seen.build.strips:
        if piece.seam is None:
            continue
        loose = [
            (word, end)
            for word, end in (("start", piece.seam.start), ("end", piece.seam.end))
            if end.kind is EndClass.LOOSE
        ]
        if loose:
            first = first or piece.step
            hidden = ", under later fabric" if all(end.is_hidden for _, end in loose) else ""
            ends.append(f"strip {piece.step} at its {listed([word for word, _ in loose])}{hidden}")
            places += [end.at for _, end in loose]
    if ends:
        count = len(places)
        what = f"Nothing crosses or catches {count} seam {'end' if count == 1 else 'ends'}: {listed(ends)}."
        cure = Cure("Lock them: start ¼ in inside, back three stitches to the raw edge, forward again.")
        numbers = {"ends": float(count)}
        yield Finding("seams.loose-end", Severity.NOTE, what, ends[0], first, tuple(places), numbers, (cure,))


def shown_width(piece: SewnPiece) -> float:
    """How wide a strip shows, square to its seam, flat inches; 0 when nothing shows."""
    if not piece.shown:
        return 0.0
    spans = [extent(polygon, *piece.normal) for polygon in piece.shown]
    return max(high for _, high in spans) - min(low for low, _ in spans)


def thin_strips(seen: Seen) -> Iterator[Finding]:
    """Slivers, strips hidden by the binding, last strips that show little, strips that cover nothing."""
    numbers = seen.numbers
    is_foundation = seen.project.building.way is Way.FOUNDATION
    last: dict[str, int] = {piece.side: piece.step for piece in seen.build.strips}
    slivers: list[tuple[float, SewnPiece]] = []
    hidden: list[SewnPiece] = []
    thin: list[tuple[float, SewnPiece]] = []
    for piece in seen.build.strips:
        if piece.needed_length <= 0:
            continue
        if not piece.shown:
            hidden += [piece] if piece.visible or not is_foundation else []
            continue
        width = shown_width(piece)
        least = min(0.5, piece.cut_width - 2 * seen.build.seam_allowance)
        if width < least - TOLERANCE or not any(holds_circle(part, least) for part in piece.shown):
            slivers.append((width, piece))
        elif (
            not (is_foundation or piece.square_cut)
            and last[piece.side] == piece.step
            and width < min(numbers.last_strip_note, least + 0.25) - TOLERANCE
        ):
            thin.append((width, piece))
    yield from _hidden(hidden)
    yield from _slivers(seen, slivers)
    yield from _thin(seen, thin)


def holds_circle(part: Polygon, diameter: float) -> bool:
    """True when a circle so wide fits into a patch; no convex patch holds one smaller than 2 area / perimeter."""
    if 2 * area(part) >= diameter * perimeter(part):
        return True
    return 2 * largest_circle(part)[1] >= diameter - TOLERANCE


def _hidden(pieces: list[SewnPiece]) -> Iterator[Finding]:
    if pieces:
        steps = [piece.step for piece in pieces]
        verb = "disappears" if len(steps) == 1 else "disappear"
        yield Finding(
            "strip.hidden",
            Severity.FIX,
            capital(f"{strips(steps)} {verb} under the binding."),
            strips(steps),
            steps[0],
            pieces[0].opened,
            {"strips": float(len(steps))},
        )


def _slivers(seen: Seen, slivers: list[tuple[float, SewnPiece]]) -> Iterator[Finding]:
    if slivers:
        width, piece = min(slivers, key=lambda entry: entry[0])
        steps = [one.step for _, one in slivers]
        shows = seen.speaker.margin(width)
        verb = "shows" if len(steps) == 1 else "show"
        what = capital(f"sliver: {strips(steps)} {verb} hardly at all, strip {piece.step} only {shows}.")
        yield Finding(
            "strip.sliver", Severity.FIX, what, strips(steps), piece.step, piece.shown[0], {"shows_in": width}
        )


def _thin(seen: Seen, thin: list[tuple[float, SewnPiece]]) -> Iterator[Finding]:
    if thin:
        width, piece = min(thin, key=lambda entry: entry[0])
        steps = [one.step for _, one in thin]
        severity = Severity.FIX if width < seen.numbers.last_strip_fix - TOLERANCE else Severity.NOTE
        what = capital(f"{strips(steps)}, last on their sides, would show only {seen.speaker.margin(width)}.")
        yield Finding(
            "strip.thin-at-edge", severity, what, strips(steps), piece.step, piece.shown[0], {"shows_in": width}
        )


def kernel_notes(seen: Seen) -> Iterator[Finding]:
    """What the kernel noticed: sides that close, strips for nothing, chords through seams."""
    by_code: dict[str, list[KernelNote]] = {}
    for note in seen.build.notes:
        by_code.setdefault(note.code, []).append(note)
    for code, notes in by_code.items():
        steps = [note.step for note in notes]
        worst = max(note.value for note in notes)
        made = _kernel_finding(seen, code, steps, worst)
        if made is not None:
            yield made


def _kernel_finding(seen: Seen, code: str, steps: list[int], worst: float) -> Finding | None:
    say = seen.speaker
    verb = "covers" if len(steps) == 1 else "cover"
    match code:
        case "strip.unnecessary":
            what = capital(
                f"{strips(steps)} {verb} nothing of the piece: leave {'it' if len(steps) == 1 else 'them'} out."
            )
            return Finding(code, Severity.NOTE, what, strips(steps), steps[0], (), {"strips": float(len(steps))})
        case "side.closes":
            what = capital(
                f"{strips(steps)}: the neighbors meet before the strip's outer edge, so it ends in a point "
                f"{say.near(worst)} from the center mark."
            )
            return Finding(code, Severity.NOTE, what, strips(steps), steps[0], (), {"point_in": worst})
        case "chord.scant":
            what = capital(
                f"{strips(steps)}: the fabric below stays {say.shortage(worst)} short of the full seam allowance."
            )
            return Finding(
                "strip.scant-allowance", Severity.FIX, what, strips(steps), steps[0], (), {"short_in": worst}
            )
        case "chord.cuts-seam":
            what = capital(
                f"{strips(steps)}: {say.near(worst)} of a seam already sewn lies in the part to cut off. Only a loose "
                "flap can be cut; what is stitched stays if the strip covers it, or is unpicked."
            )
            return Finding("strip.cuts-seam", Severity.FIX, what, strips(steps), steps[0], (), {"seam_in": worst})
        case "chord.hides-seam":
            what = capital(
                f"{strips(steps)}: up to {say.near(worst)} of seams already sewn lie below. Leave what is stitched "
                "down, the strip covers it; cut back only the loose flap."
            )
            return Finding("strip.hides-seam", Severity.NOTE, what, strips(steps), steps[0], (), {"seam_in": worst})
        case _:
            return None


def short_strips(seen: Seen) -> Iterator[Finding]:
    """Strips as cut that do not reach, and raw ends on show."""
    for piece in seen.build.pieces:
        if 0 < piece.cut_length < piece.needed_length - TOLERANCE:
            say = seen.speaker
            what = (
                f"{capital(strips([piece.step]))} is {say.margin(piece.cut_length)} long as cut; this place needs "
                f"{say.shortage(piece.needed_length)}."
            )
            numbers = {
                "cut_in": piece.cut_length,
                "needed_in": piece.needed_length,
                "short_in": piece.needed_length - piece.cut_length,
            }
            yield Finding(
                "strip.too-short", Severity.FIX, what, strips([piece.step]), piece.step, piece.opened, numbers
            )
    steps = sorted({step for step, _, _ in seen.build.raw_edges_on_show})
    if steps:
        places = tuple(place for _, start, end in seen.build.raw_edges_on_show for place in (start, end))
        what = capital(f"the raw end of {strips(steps)} lies on top and shows.")
        cure = Cure(
            "Take it off and sew a strip as long as its place needs, or turn the raw end under and topstitch it."
        )
        yield Finding("edges.raw-edge-on-show", Severity.STOP, what, strips(steps), steps[0], places, cures=(cure,))


def bulk(seen: Seen) -> Iterator[Finding]:
    """Places where several seams cross: grouped into one finding."""
    near = 2 * seen.build.seam_allowance
    places: dict[tuple[int, int], list[tuple[Point, int]]] = {}
    for piece in seen.build.strips:
        ends = (piece.seam.start, piece.seam.end) if piece.seam is not None else ()
        for end in ends:
            if end.kind is EndClass.CROSSED:
                _count_at(places, end.at, near)
    heavy = [entry for cell in places.values() for entry in cell if entry[1] > 1]
    if heavy:
        worst = max(count for _, count in heavy)
        count = len(heavy)
        what = (
            f"Bulk: at {count} {'place' if count == 1 else 'places'} {worst + 1} seams lie within "
            f"{seen.speaker.near(near)} of each other. Press well and grade the allowances."
        )
        numbers = {"places": float(count), "seams": float(worst + 1)}
        yield Finding("seams.bulk", Severity.NOTE, what, "", None, tuple(place for place, _ in heavy), numbers)


def _count_at(places: dict[tuple[int, int], list[tuple[Point, int]]], at: Point, near: float) -> None:
    """Count a seam end at the first place within `near` of it, or at a new one; places are kept by squares."""
    column, row = int(at[0] // near), int(at[1] // near)
    for beside in product((column - 1, column, column + 1), (row - 1, row, row + 1)):
        for index, (place, count) in enumerate(places.get(beside, ())):
            if hypot(place[0] - at[0], place[1] - at[1]) <= near:
                places[beside][index] = (place, count + 1)
                return
    places.setdefault((column, row), []).append((at, 1))


def bias_edges(seen: Seen) -> Iterator[Finding]:
    """Trimmed edges on the bias that no seam holds within an inch."""
    far: list[tuple[float, int, Point]] = []
    seams = _SeamsNear(piece.seam for piece in seen.build.strips if piece.seam is not None)
    trim = [(start, end) for start, end in edges(seen.build.trim)]
    for piece in seen.build.pieces:
        for polygon in piece.visible:
            on_bias = [
                (start, end)
                for start, end in edges(polygon)
                if _is_bias(start, end, piece.normal) and _on(trim, start, end)
            ]
            for stretch in _stretches(on_bias):
                middles = [((x0 + x1) / 2, (y0 + y1) / 2) for (x0, y0), (x1, y1) in stretch]
                nearest, place = max((seams.nearest(place), place) for place in middles)
                if nearest > 1 + TOLERANCE:
                    far.append((nearest, piece.step, place))
    if far:
        nearest, step, _ = max(far)
        count = len(far)
        what = (
            f"The trimmed edge runs on the bias at {count} {'place' if count == 1 else 'places'} up to "
            f"{seen.speaker.near(nearest)} from the nearest seam: stay-stitch it, don't pull."
        )
        yield Finding(
            "edges.bias-at-trim",
            Severity.NOTE,
            what,
            strips([step]) if step else "first piece",
            step,
            tuple(place for _, _, place in far),
            {"places": float(count), "from_seam_in": nearest},
        )


_SAME_CURVE = radians(20)
"""Edges that follow each other with less of a bend than this are one curve."""


def _stretches(ends: Sequence[tuple[Point, Point]]) -> list[list[tuple[Point, Point]]]:
    """Edges in order, those of one curve together."""
    out: list[list[tuple[Point, Point]]] = []
    for start, end in ends:
        before = out[-1][-1] if out else None
        if before is not None and before[1] == start and _bend(before, (start, end)) < _SAME_CURVE:
            out[-1].append((start, end))
        else:
            out.append([(start, end)])
    return out


def _bend(one: tuple[Point, Point], other: tuple[Point, Point]) -> float:
    """How much an edge turns away from the one before, radians."""
    ways = [atan2(y1 - y0, x1 - x0) for (x0, y0), (x1, y1) in (one, other)]
    return abs((ways[1] - ways[0] + pi) % (2 * pi) - pi)


_FAR = 6.0
"""Farther than this (inches) from every seam is said as this far."""


class _SeamsNear:
    """Seams by direction and distance from the center mark, so that only near ones are measured."""

    def __init__(self, seams: Iterable[Seam]) -> None:
        groups: dict[tuple[float, float], list[tuple[float, Seam]]] = {}
        for seam in seams:
            groups.setdefault((round(seam.normal[0], 7), round(seam.normal[1], 7)), []).append((seam.at, seam))
        self._groups = [(normal, sorted(group, key=lambda entry: entry[0])) for normal, group in groups.items()]

    def nearest(self, place: Point) -> float:
        """Distance to the nearest seam, inches, at most `_FAR`."""
        best = _FAR
        for (nx, ny), group in self._groups:
            depth = nx * place[0] + ny * place[1]
            first = bisect_left(group, depth - best, key=lambda entry: entry[0])
            for at, seam in group[first:]:
                if at > depth + best:
                    break
                best = min(best, distance_to(place, seam.start.at, seam.end.at))
        return best


def _is_bias(start: Point, end: Point, normal: Point) -> bool:
    length = hypot(end[0] - start[0], end[1] - start[1])
    if length < 0.25:
        return False
    cosine = abs((end[0] - start[0]) * normal[0] + (end[1] - start[1]) * normal[1]) / length
    return 0.17 < cosine < 0.985


def _on(outline: list[tuple[Point, Point]], start: Point, end: Point) -> bool:
    return any(
        _line_distance(start, edge) < TOLERANCE * 10 and _line_distance(end, edge) < TOLERANCE * 10 for edge in outline
    )


def _line_distance(place: Point, line: tuple[Point, Point]) -> float:
    (x0, y0), (x1, y1) = line
    return abs((x1 - x0) * (place[1] - y0) - (y1 - y0) * (place[0] - x0)) / (hypot(x1 - x0, y1 - y0) or 1.0)
