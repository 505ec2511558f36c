"""The answers at the top of a plan and the lines below them, as plain sentences.

Nothing is laid out here and nothing is computed that another room computes; lengths are said by a `Speaker`.
"""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from stitchflip.cli.cutting_words import amount, by_letter, counted, what_for
from stitchflip.cli.quilt_words import size_of_quilt
from stitchflip.finishing.words import once_finished
from stitchflip.lengths import Speaker, Unit
from stitchflip.piecing.geometry import half_planes
from stitchflip.piecing.model import EndClass
from stitchflip.planning.json_values import wide_and_long
from stitchflip.planning.model import Severity
from stitchflip.project.model import Ends, Grain, Outline, Through

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from stitchflip.piecing.model import SewnPiece
    from stitchflip.planning.model import BlockKind, Finding, Plan

_ABOUT_FIT = ("coverage", "points", "base", "center", "join")
"""Areas of the findings that answer whether the piece fits."""

_THROUGH = {
    Through.BACKING_AND_BATTING: "backing and batting, layered",
    Through.BATTING_ONLY: "batting only",
    Through.BATTING_ON_FOUNDATION: "batting on a thin foundation",
}

SEVERITY_WORDS = {Severity.STOP: "stop", Severity.FIX: "fix", Severity.NOTE: "good to know"}


def speaker(plan: Plan) -> Speaker:
    """The voice of the plan's unit."""
    return Speaker(plan.project.units)


def headline(plan: Plan) -> str:
    """Name, size and shape in one line."""
    project = plan.project
    parts = [project.name, f"{size_words(plan)}"]
    if project.how_many > 1:
        parts.append(f"{project.how_many} alike")
    return " · ".join(parts)


def size_words(plan: Plan) -> str:
    """The squared-up size with its words."""
    if plan.quilt is not None:
        return size_of_quilt(plan, plan.quilt)
    squared_up, square_up = plan.project.squared_up, plan.square_up
    say = speaker(plan)
    if plan.panels is not None:
        size = say.size(*wide_and_long(plan, plan.panels.wide, plan.panels.high))
        return f"{len(plan.panels.panels)} panels from one base, each squared up {size} (wide × long)"
    if squared_up.shape is Outline.ROUND:
        return f"squared up round, {say.near(square_up.wide)} across"
    if squared_up.shape is Outline.POLYGON:
        across = 2 * min(side.distance for side in square_up.sides)
        corners = f", {say.near(max(square_up.diagonals))} from corner to corner" if square_up.diagonals else ""
        return f"squared up {say.near(across)} from side to opposite side{corners}"
    size = say.size(*wide_and_long(plan, square_up.wide, square_up.high))
    if squared_up.shape is Outline.OVAL:
        return f"squared up oval, {size} (wide × long)"
    ends = ", pointed ends" if squared_up.ends is Ends.POINTED else ""
    radius = squared_up.corner_radius
    rounded = f", corners rounded by {say.near(radius.inches)}" if radius is not None else ""
    return f"squared up {size} (wide × long{', point to point' if ends else ''}){ends}{rounded}"


def does_it_fit(plan: Plan) -> str:
    """The first answer: yes with its margins, or what stands in the way."""
    about = [finding for finding in plan.findings if finding.code.split(".")[0] in _ABOUT_FIT]
    for severity, begin in ((Severity.STOP, "No."), (Severity.FIX, "Nearly.")):
        grave = [finding for finding in about if finding.severity is severity]
        if grave:
            more = len(grave) - 1
            rest = f" ({more} more like this below.)" if more else ""
            return f"{begin} {_sentence(grave[0].what)}{_first_cure(grave[0])}{rest}"
    return f"Yes. {_margins(plan)}"


def _first_cure(finding: Finding) -> str:
    return f" {_sentence(finding.cures[0].text)}" if finding.cures else ""


def _sentence(text: str) -> str:
    text = text[:1].upper() + text[1:]
    return text if text.endswith((".", "!", "?")) else f"{text}."


def _margins(plan: Plan) -> str:
    say = speaker(plan)
    reach = f"the strips pass the trim line by {say.margin(least_reach(plan))} or more"
    points = plan.square_up.points
    if not points or plan.project.squared_up.shape in (Outline.ROUND, Outline.OVAL):
        return f"{reach[:1].upper()}{reach[1:]}."
    shown = say.margin(min(point.shown for point in points))
    each = "each point" if len(points) > 1 else f"the {points[0].name}"
    return f"{shown} shows beyond {each} {once_finished(plan.project)}; {reach}."


def least_reach(plan: Plan) -> float:
    """How far fabric passes the trim line where it passes it least, inches flat; below zero where batting shows."""
    outer = half_planes(plan.build.outline)
    return min(r - nx * x - ny * y for x, y in plan.build.trim for nx, ny, r in outer)


def start_with(plan: Plan) -> str:
    """The first thing to do with the hands."""
    say, base = speaker(plan), plan.base
    size = say.size(*wide_and_long(plan, base.wide, base.high))
    how_many = plan.project.bases
    what = f"{how_many} bases, each" if how_many > 1 else "the base"
    marks = "mark their middles" if how_many > 1 else "mark its middle"
    return f"Cut {what} {size} (wide × long; {_THROUGH[plan.project.base.through]}) and {marks}."


def what_to_have(plan: Plan) -> list[tuple[str, str, str, str]]:
    """One row a fabric: letter, name, how much, what for; backing and batting last."""
    say = speaker(plan)
    rows = [
        (plan.letter_of(fabric.fabric), fabric.fabric, amount(plan, fabric), what_for(plan, fabric))
        for fabric in sorted(plan.fabrics, key=lambda fabric: by_letter(plan)(fabric.fabric))
    ]
    backing, batting = plan.backing, plan.batting
    names = [row[1] for row in rows]
    rows.append(
        (
            "",
            backing.fabric if backing.fabric not in names else f"{backing.fabric} (backing)",
            say.purchase(backing.best.buy_in),
            _backing_words(plan),
        )
    )
    size = say.size(*wide_and_long(plan, batting.wide, batting.high))
    pieces = "; more below" if plan.quilt is not None and plan.quilt.under else ""
    if not pieces and len(batting.pieces) > 1:
        pieces = f" from {', '.join(batting.pieces)}"
    rows.append(("", "Batting", size, f"{_each(plan.project.bases)}cut size, wide × long{pieces}"))
    return rows


def _each(how_many: int) -> str:
    return f"{how_many} of them; " if how_many > 1 else ""


def _backing_words(plan: Plan) -> str:
    say, backing = speaker(plan), plan.backing
    size = say.size(*wide_and_long(plan, backing.wide, backing.high))
    is_later = plan.project.base.through is not Through.BACKING_AND_BATTING
    how_many = plan.project.how_many if is_later else plan.project.bases
    return f"{_each(how_many)}cut {size} (wide × long), {backing.best.way}"


def places_by_round(plan: Plan, kind: BlockKind) -> list[tuple[str, str, str]]:
    """Where you should be: after which strips, seam line to mark, raw edge by tape."""
    say = speaker(plan).bare
    rows = []
    for number, strips in groupby(kind.build.strips, key=lambda piece: piece.round):
        same: dict[tuple[str, str], list[SewnPiece]] = {}
        for piece in strips:
            same.setdefault((_from_mark(say, piece.seam_at), _from_mark(say, piece.raw_edge_taped)), []).append(piece)
        for (seam, edge), pieces in same.items():
            sides = "" if len(same) == 1 else f", {_listed(dict.fromkeys(piece.side for piece in pieces))}"
            rows.append((f"round {number}{sides} ({_steps(pieces)})", seam, edge))
    return rows


def _from_mark(say: Speaker, distance_in: float) -> str:
    """A distance from the center mark; one that has not come to the mark yet is said to be short of it."""
    return say.near(distance_in) if distance_in >= 0 else f"{say.near(-distance_in)} short of the mark"


def _steps(pieces: list[SewnPiece]) -> str:
    steps = [piece.step for piece in pieces]
    if len(steps) > 2 and steps == list(range(steps[0], steps[-1] + 1)):
        return f"strips {steps[0]} to {steps[-1]}"
    return f"{'strip' if len(steps) == 1 else 'strips'} {', '.join(map(str, steps))}"


def _listed(names: Iterable[str]) -> str:
    names = list(names)
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def ends_to_lock(plan: Plan) -> str:
    """Which seam ends nothing holds; "none" is said aloud."""
    ends = [said for kind in plan.kinds for said in _loose(kind)]
    if not ends:
        held = "caught in the binding" if plan.quilt is None else "caught where the blocks are joined"
        return f"none. Every seam end is crossed by a later seam or {held}."
    return (
        f"{_listed(ends)}. Start ¼ in inside, sew back to the raw edge, then forward."
        if (plan.project.units is Unit.INCH)
        else f"{_listed(ends)}. Start 7 mm inside, sew back to the raw edge, then forward."
    )


def _loose(kind: BlockKind) -> Iterator[str]:
    """The ends of one kind of block that nothing holds."""
    block = f" of {kind.name}" if kind.name else ""
    for piece in kind.build.strips:
        if piece.seam is None:
            continue
        loose = [
            word for word, end in (("start", piece.seam.start), ("end", piece.seam.end)) if end.kind is EndClass.LOOSE
        ]
        if loose:
            yield f"strip {piece.step}{block} at its {' and its '.join(loose)}"


def unstitched(plan: Plan) -> str:
    """The widest place without stitching, beside what the batting allows."""
    say = speaker(plan)
    widest = max(kind.build.widest_gap.diameter for kind in plan.kinds)
    gap, allowed = say.near(widest), say.near(plan.numbers.widest_gap)
    return f"widest unstitched place {gap} across; your batting allows {allowed}"


def square_up_lines(plan: Plan) -> list[str]:
    """Distances from the center mark to each edge, grouped where they are the same."""
    say = speaker(plan)
    same: dict[str, list[str]] = {}
    for side in plan.square_up.sides:
        same.setdefault(say.near(side.distance), []).append(side.name)
    curve = [plan.square_up.curve] if plan.square_up.curve else []
    if any(side.is_curve for side in plan.square_up.sides):
        return curve
    if len(same) == 1:
        return [f"{next(iter(same))} from the center mark to every edge", *curve]
    lines = [f"{distance} from the center mark to the {_listed(names)} edge" for distance, names in same.items()]
    return lines + curve


def point_lines(plan: Plan) -> list[str]:
    """What to keep beyond each point, with what shows after binding; equal ones together."""
    say = speaker(plan)
    same: dict[tuple[str, str], list[str]] = {}
    for point in plan.square_up.points:
        names = same.setdefault((say.margin(point.to_edge), say.margin(point.shown)), [])
        names.append(point.name.removesuffix(" point"))
    after = once_finished(plan.project)
    return [
        f"Keep {edge} beyond {_points(names, len(plan.square_up.points))}, to the trimmed edge; {shown} shows {after}"
        for (edge, shown), names in same.items()
    ]


def _points(names: list[str], in_all: int) -> str:
    """Points by name; all of many together."""
    return "each point" if len(names) == in_all > _FEW_POINTS else f"the {_listed(names)} point"


_FEW_POINTS = 4
"""So many points are named one by one."""


def binding_words(plan: Plan) -> str:
    """Strips, need and made, what shows on the back, where to start; for another edge, what to do."""
    say, binding = speaker(plan), plan.binding
    if not binding.strips:
        return " ".join(plan.edge.words)
    how_many = plan.project.how_many * binding.pieces
    is_bias = binding.grain == Grain.BIAS
    count = counted(binding.strips_per_piece, "bias strip" if is_bias else "strip")
    joined = ", joined on the diagonal" if binding.strips_per_piece > 1 else ""
    each = f" for each of {how_many} ({binding.strips} in all)" if how_many > 1 else ""
    start = f" {_sentence(f'start {binding.start_at}')}" if binding.start_at else ""
    return (
        f"{count}{each} of {binding.fabric} cut {say.width(binding.cut)} wide{joined}: "
        f"{say.cut(binding.need)} needed, {say.margin(binding.made)} made. "
        f"{say.margin(binding.shows_on_back)} shows on the back, passing the stitching by "
        f"{say.margin(binding.passes_stitching)}.{start}{''.join(f' {word}' for word in plan.edge.words)}"
    )


def backing_words(plan: Plan) -> str:
    """The best way to get the backing."""
    say, best = speaker(plan), plan.backing.best
    remark = f" {_sentence(best.remark)}" if best.remark else ""
    return f"{_sentence(f'{best.way}: {say.purchase(best.buy_in)} of {plan.backing.fabric}')}{remark}"


def batting_words(plan: Plan) -> str:
    """Batting besides the bases: for triangles, borders and joins; "" when there is none."""
    if plan.quilt is None or not plan.quilt.under:
        return ""
    packaged = f". Packaged: {plan.batting.packaged} gives all" if plan.batting.packaged else ""
    return f"{'; '.join(plan.batting.pieces)}{packaged}"
