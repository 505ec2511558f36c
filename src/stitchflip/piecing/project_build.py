"""From a project to its build: first piece, strips in order, what was measured on the way."""

from __future__ import annotations

from dataclasses import replace
from math import inf
from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.lengths import Speaker, Unit
from stitchflip.piecing.as_sewn import plausible, read_sides, with_short_strips
from stitchflip.piecing.build import FirstPiece, Label, assemble, bare_left, length_of_last
from stitchflip.piecing.coverage import adds_cover
from stitchflip.piecing.fabric_places import fabrics_for, name_of_place
from stitchflip.piecing.flips import Flip, State, measured, outline_of, sew, start
from stitchflip.piecing.frame import Frame, frame_for
from stitchflip.piecing.geometry import TOLERANCE, clip_all, counts, half_planes, moved, outside_parts
from stitchflip.piecing.model import BareSpot, Build, KernelNote
from stitchflip.piecing.on_hand_widths import Choice, StripsOnHand
from stitchflip.piecing.shapes import center_cut, center_polygon, side_names, trim_polygon
from stitchflip.piecing.ways import Job, Wanted, begins_with_strip, way_of
from stitchflip.piecing.ways.rows import first_strip_width
from stitchflip.project.model import Project, Widths

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.project.numbers import Numbers

MOST_STRIPS = 3000
"""More strips than this in one piece is a mistake in the file, not a quilt."""


def build_project(project: Project, numbers: Numbers, base_half: Point = (inf, inf)) -> Build:
    """The build of a project.

    Args:
        project: The project.
        numbers: The maker's effective numbers.
        base_half: Half the base's width and height as cut, flat, inches; for the room beyond each point.

    Raises:
        BuildError: If a size is missing or a strip cannot be sewn at all.
    """
    frame = frame_for(numbers, trim_polygon(project, numbers), base_half)
    if project.center is not None and project.center.sewn_already:
        frame = replace(frame, done=moved(center_polygon(project, numbers), -frame.seam))
    state, names = start_of(project, numbers)
    job = _job(project, numbers, frame, state, names)
    state, strips, notes = _sew_all(job, state)
    fabrics = fabrics_for(project, strips, names)
    labels = [
        Label(strip.round, name_of_place(strip, names), fabric, strip.cut_long, strip.square_cut, strip.parts)
        for strip, fabric in zip(strips, fabrics, strict=True)
    ]
    sides = called(names, strips, state)
    build = assemble(state, frame, _first_words(project, numbers, state), labels, names=sides, notes=notes)
    finish = way_of(project).finish
    build = finish(job, build) if finish is not None else build
    return with_short_strips(build, project.short_strips, frame) if project.short_strips else build


def bare_of(project: Project, numbers: Numbers) -> tuple[BareSpot, ...]:
    """What no fabric of a project would reach: its build's `bare`, without the rest of the build.

    Raises:
        BuildError: As `build_project`.
    """
    if project.short_strips:
        return build_project(project, numbers).bare
    frame = frame_for(numbers, trim_polygon(project, numbers))
    state, names = start_of(project, numbers)
    state, strips, _ = _sew_all(_job(project, numbers, frame, state, names), state)
    return bare_left(state, frame, called(names, strips, state))


def outer_edge_of(project: Project, numbers: Numbers) -> Polygon:
    """The outer raw edge of all fabric of a project: its build's `outline`, without the rest of the build.

    Raises:
        BuildError: As `build_project`.
    """
    frame = frame_for(numbers, trim_polygon(project, numbers))
    state, names = start_of(project, numbers)
    state, _, _ = _sew_all(_job(project, numbers, frame, state, names), state)
    return outline_of(state)


def start_of(project: Project, numbers: Numbers) -> tuple[State, tuple[str, ...]]:
    """The first piece on the base, and the names of its sides."""
    way = way_of(project)
    sides = way.growing(project, numbers) if way.growing is not None else ()
    state = start(way.first(project, numbers), numbers.effective_seam, growing=sides)
    return state, way.called or side_names(tuple(side.normal for side in state.sides if side is not None))


def _job(project: Project, numbers: Numbers, frame: Frame, state: State, names: tuple[str, ...]) -> Job:
    return Job(project, numbers, frame, names, tuple(side.normal for side in state.sides if side is not None))


def _sew_all(job: Job, state: State) -> tuple[State, list[Wanted], list[KernelNote]]:
    sewing = _Sewing(job, state)
    for asked in way_of(job.project).strips(job):
        if not sewing.goes_on(asked):
            break
    if sewing.on_hand is not None:
        sewing.notes += sewing.on_hand.notes(lambda strip: name_of_place(strip, job.names))
    return sewing.stopped or sewing.state, sewing.strips, sewing.notes


class _Sewing:
    """What is sewn so far, strip by strip."""

    def __init__(self, job: Job, state: State) -> None:
        """Begin with the first piece as it was measured."""
        building = job.project.building
        self.job = job
        self.strips: list[Wanted] = []
        self.notes: list[KernelNote] = []
        self.on_hand: StripsOnHand | None = None
        if building.widths is Widths.ON_HAND:
            self.on_hand = StripsOnHand(job.project, 2 * state.seam)
        self.stopped: State | None = None
        """The last state with fabric on hand; what is sewn after it only tells how much is missing."""
        self._until = building.until_covered
        self._idle = 0
        self.state = _apply_readings(job.project, state, job.frame, job.names, self.notes)

    def goes_on(self, asked: Wanted) -> bool:
        """Sew the next strip, or skip one that covers nothing; False when there is no going on."""
        project, frame, state = self.job.project, self.job.frame, self.state
        if self._until and _is_covered(state, frame):
            return False
        choice = _piece_for(asked, self.on_hand, state, frame)
        wanted = choice.strip if choice is not None else asked
        _refuse_narrow(project, wanted, state)
        flip = wanted.lay(state) if wanted.lay is not None else Flip(wanted.width, side=wanted.side)
        after = sew(state, flip) if flip is not None else None
        if flip is None or after is None or (self._until and not _helps(state, after, frame)):
            return self._skips()
        self._idle = 0
        if choice is not None and self.on_hand is not None and not self.on_hand.take(choice, after.step):
            self.stopped = self.stopped or state
        if self.stopped is not None:
            self.state = after
            return after.step < MOST_STRIPS
        self._keep(wanted, flip, after)
        return True

    def _skips(self) -> bool:
        """Leave a strip out; False when every side has been tried in vain."""
        self._idle += 1
        if self._idle <= 2 * len(self.job.names) * max(1, len(self.job.project.rounds)):
            return True
        if self.stopped is None:
            self.notes.append(KernelNote("build.never-covers", self.state.step))
        return False

    def _keep(self, wanted: Wanted, flip: Flip, after: State) -> None:
        """Note a strip that is sewn, and what was measured after it."""
        if len(self.strips) >= MOST_STRIPS:
            raise BuildError(
                what=f"the build has more than {MOST_STRIPS} strips",
                fix="Use wider strips, or a smaller piece.",
                where="rounds",
                code="build.too-many-strips",
            )
        self.strips.append(wanted)
        if flip.remark:
            self.notes.append(KernelNote(flip.remark, after.step, flip.remark_value, wanted.place))
        job = self.job
        sides = called(job.names, self.strips, after) if job.project.readings else job.names
        self.state = _apply_readings(job.project, after, job.frame, sides, self.notes)


def _piece_for(strip: Wanted, on_hand: StripsOnHand | None, state: State, frame: Frame) -> Choice | None:
    """The piece on hand that a strip without a width is cut from; None for one with a width of its own."""
    if on_hand is None or strip.width > 0:
        return None

    def length_of(asked: Wanted) -> float:
        after = sew(state, Flip(asked.width, side=asked.side))
        parts = asked.parts(state, after.sewn) if asked.parts is not None and after.sewn is not None else ()
        if parts:
            return sum(part.cut_length for part in parts if not part.fabric)
        return asked.cut_long or length_of_last(after, frame)

    return on_hand.choose(strip, length_of)


def called(names: Sequence[str], strips: Sequence[Wanted], state: State) -> list[str]:
    """Names of all sides by index: those of the first piece, then of each line a strip was sewn along.

    Args:
        names: Names of the sides of the first piece.
        strips: The strips that were sewn, in order.
        state: The state after the last of them.
    """
    chords = [strip.place for strip, sewn in zip(strips, state.history, strict=True) if sewn.is_chord]
    return [*names, *chords]


def _refuse_narrow(project: Project, wanted: Wanted, state: State) -> None:
    """Say in the maker's unit that a strip is no wider than its two seams."""
    if wanted.width > 2 * state.seam + TOLERANCE:
        return
    say = Speaker(project.units)
    least = state.seam * 2
    raise BuildError(
        what=f"strip {state.step + 1} is cut {say.width(wanted.width)} wide, and its two seams with the fold take "
        f"{say.shortage(least)}: nothing of it would show",
        fix=f"Cut it wider than {say.shortage(least)}, or leave it out.",
        where=f"round {wanted.round}",
        code="build.strip-too-narrow",
    )


def _helps(before: State, after: State, frame: Frame) -> bool:
    """True when the last strip covers a place that was bare; along a chord it may only cover what it cut off."""
    sewn = after.sewn
    if sewn is None or not adds_cover(frame.cover, sewn.opened, sewn.normal, sewn.raw_edge_before):
        return False
    if not sewn.is_chord:
        return True
    return any(
        counts(clip_all(part, half_planes(sewn.opened))) for _, part in outside_parts(frame.cover, before.planes)
    )


def _is_covered(state: State, frame: Frame) -> bool:
    return all(nx * x + ny * y <= r + TOLERANCE for nx, ny, r in state.planes for x, y in frame.cover)


def _apply_readings(
    project: Project, state: State, frame: Frame, names: Sequence[str], notes: list[KernelNote]
) -> State:
    """The state as the maker measured it after this step."""
    if not project.readings:
        return state
    scale = 1.0 if project.units is Unit.INCH else 1 / 2.54
    for index, line in read_sides(project.readings, state, frame, names, scale):
        side = state.sides[index]
        if side is None or not plausible(state, index, line):
            notes.append(KernelNote("reading.impossible", state.step, line[2], names[index]))
            continue
        if side.step == 0:
            moved = clip_all(state.first, [line])
            state = replace(state, first=moved) if state.sewn is None and len(moved) > 2 else state
        state = measured(state, index, (line[0], line[1]), line[2])
    return state


def _first_words(project: Project, numbers: Numbers, state: State) -> FirstPiece:
    if not begins_with_strip(project):
        wide, long = center_cut(project, state.first)
        return FirstPiece(project.center.fabric if project.center is not None else "", wide, None, long)
    entry = project.rounds[0]
    fabric = entry.fabric or (entry.fabrics or ("",))[0]
    cut_long = entry.cut_long.inches if entry.cut_long is not None else None
    growing = way_of(project).growing
    run_along = growing(project, numbers)[0] if growing is not None else None
    return FirstPiece(fabric, first_strip_width(project), run_along, cut_long)
