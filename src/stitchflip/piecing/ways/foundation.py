"""Numbered foundation: patches sewn along drawn lines, in the order of their numbers.

Patch 1 lies where the maker says and has no line; each later patch is sewn along its own line and flipped away
from patch 1, and everything sewn before is cut back to an allowance past that line. The kernel starts from a first
piece as large as all there is to cover and lets every patch reach that far; how large patches are really cut is
settled when all lines are known (`finish`).

Lines are given as the front shows them, or as they are drawn on the back one sews from, which is the front in a
mirror. The build is always the front.
"""

from __future__ import annotations

from dataclasses import replace
from math import dist, hypot
from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.lengths import Unit
from stitchflip.piecing.flips import FAR, Flip
from stitchflip.piecing.geometry import TOLERANCE, box, clip_all, counts, extent, half_planes, holds, middle
from stitchflip.piecing.model import KernelNote
from stitchflip.piecing.patches import Rules, patch_for, placed
from stitchflip.piecing.seams import SeamLine, seam_inside
from stitchflip.piecing.shapes import cover_polygon, flat, trim_polygon
from stitchflip.piecing.ways.wanted import Wanted
from stitchflip.project.model import LinesSeen
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from stitchflip.piecing.flips import State
    from stitchflip.piecing.geometry import HalfPlane
    from stitchflip.piecing.model import Build, Point, Polygon, SewnPiece
    from stitchflip.piecing.patches import Patch
    from stitchflip.piecing.ways.wanted import Job
    from stitchflip.project.model import Project
    from stitchflip.project.numbers import Numbers

MISSES = "foundation.misses"
"""Code of the note on a line outside of all there is to cover; its value is by how much, inches."""
HIDDEN = "foundation.hidden"
"""Code of the note on a patch that later patches cover wholly."""
NEVER_MEETS = "foundation.never-meets"
"""Code of the note on a seam whose allowance runs off the fabric below; its value is how much is missing, inches."""

_ON_LINE = 1e-3
"""A mark nearer to a line than this (inches) lies on it."""


@dataclass(frozen=True, slots=True)
class DrawnPatch:
    """A patch as it is drawn on the back of the foundation: mirrored, flat, inches."""

    number: int
    fabric: str
    line: tuple[Point, Point] | None
    """Its line from end to end as far as it is sewn inside the trim edge; None for patch 1."""
    middle: Point | None
    """Where its number is written; None when nothing of it shows."""


def first(project: Project, numbers: Numbers) -> Polygon:
    """All there is to cover: the kernel's first piece."""
    return cover_polygon(project, numbers)


def as_cut(project: Project, numbers: Numbers) -> Polygon:
    """The rectangle that patch 1 is really cut as, where it lies: upright, its extra alike on both sides."""
    lines = seam_lines(project, numbers)
    trim = flat(trim_polygon(project, numbers), numbers)
    seam = numbers.effective_seam
    area = clip_all(trim, lines)
    need = clip_all(cover_polygon(project, numbers), ((nx, ny, d + seam) for nx, ny, d in lines))
    rules = _rules(numbers)
    spans = []
    for axis in ((1.0, 0.0), (0.0, 1.0)):
        needed = extent(need, *axis)
        filled = extent(area, *axis) if area else needed
        size = rules.up(max(needed[1] - needed[0], filled[1] - filled[0] + 2 * rules.extra))
        start = placed(filled, needed, size)
        spans.append((start, start + size))
    (left, right), (low, high) = spans
    return box((left, low), (right, high))


def strips(job: Job) -> Iterator[Wanted]:
    """Each patch along its line, wide enough to reach all there is to cover.

    Raises:
        BuildError: If a patch has no line, a line does not leave patch 1 on one side of it, or the work is to go on
            until all is covered.
    """
    if job.project.building.until_covered:
        raise BuildError(
            what="the lines of a numbered foundation say where it ends, so there is no going on until covered",
            fix="Take until_covered out of [building].",
            where="building.until_covered",
            code="build.covered-already",
        )
    reach = job.numbers.effective_seam
    for place, line in enumerate(seam_lines(job.project, job.numbers), start=1):
        nx, ny, at = line
        width = max(extent(job.frame.cover, nx, ny)[1] - at, 2 * reach) + 2 * reach
        yield Wanted(
            round=1,
            visit=place - 1,
            side=-1,
            width=width,
            fabric=job.project.patches[place].fabric,
            lay=_laid(Flip(width, chord=line)),
            place=f"patch {place + 1}",
        )


def _laid(flip: Flip) -> Callable[[State], Flip]:
    return lambda _: flip


def seam_lines(project: Project, numbers: Numbers) -> tuple[HalfPlane, ...]:
    """The lines of patch 2 and all later ones as the front shows them, patch 1 inside each.

    Raises:
        BuildError: If there are no patches, a line is missing or too short, or patch 1 lies on none of its sides.
    """
    if not project.patches:
        raise BuildError(
            what="a numbered foundation is made of patches, and none is listed",
            fix="List the patches in the order sewn, each after the first with two places on its line.",
            where="patches",
            code="build.no-patches",
        )
    mark = _mark(project)
    cover = cover_polygon(project, numbers)
    if not holds(cover, mark):
        raise BuildError(
            what="the place that tells where patch 1 lies is outside the piece",
            fix="Give patch 1 a place inside the squared-up size.",
            where="patches[1].at",
            code="build.place-outside",
        )
    return tuple(_line(project, number, mark) for number in range(2, len(project.patches) + 1))


def _mark(project: Project) -> Point:
    """The place inside patch 1, as the front shows it."""
    return _places(project, (project.patches[0].at or (0.0, 0.0),))[0]


def _places(project: Project, given: tuple[Point, ...]) -> tuple[Point, ...]:
    """Places in inches as the front shows them."""
    scale = 1.0 if project.units is Unit.INCH else 1 / 2.54
    mirror = -scale if project.building.lines_seen is LinesSeen.BACK else scale
    return tuple((x * mirror, y * scale) for x, y in given)


def _line(project: Project, number: int, mark: Point) -> HalfPlane:
    """The line of one patch with its normal away from patch 1."""
    given = project.patches[number - 1].line
    start, end = _places(project, given) if given is not None else (mark, mark)
    if given is None or dist(start, end) < _ON_LINE:
        raise BuildError(
            what=f"patch {number} has no line" if given is None else f"the line of patch {number} has no length",
            fix="Give it two places that lie apart on its line.",
            where=f"patches[{number}].line",
            code="build.no-line",
        )
    length = hypot(end[0] - start[0], end[1] - start[1])
    nx, ny = (end[1] - start[1]) / length, (start[0] - end[0]) / length
    at = nx * start[0] + ny * start[1]
    inside = at - nx * mark[0] - ny * mark[1]
    if abs(inside) < _ON_LINE:
        where = "the place given for patch 1" if project.patches[0].at is not None else "the center mark"
        raise BuildError(
            what=f"the line of patch {number} runs through {where}, so it cannot be told which side is patch 1",
            fix="Give patch 1 a place well inside it, such as at = [1, 2].",
            where=f"patches[{number}].line",
            code="build.line-through-first",
        )
    return (nx, ny, at) if inside > 0 else (-nx, -ny, -at)


def _rules(numbers: Numbers) -> Rules:
    return Rules(numbers.effective_seam, numbers.patch_extra, numbers.round_cuts_to)


def finish(job: Job, build: Build) -> Build:
    """The build with every patch as large as it is cut, and what there is to say of the lines."""
    notes = [note for note in build.notes if not note.code.startswith(("chord.", "side.", "strip."))]
    pieces = [_first(job, build.pieces[0], as_cut(job.project, job.numbers))]
    for piece in build.strips:
        note = _remark(piece, build)
        notes += [note] if note is not None else []
        pieces.append(_as_patch(piece, patch_of(piece, build, job.numbers), job, build.seam_allowance))
    return replace(build, pieces=tuple(pieces), notes=tuple(notes), points=())


def patch_of(piece: SewnPiece, build: Build, numbers: Numbers) -> Patch | None:
    """The rectangle a patch after the first is cut as; None when it covers nothing."""
    seen = piece.visible[0] if piece.visible else ()
    later = [(*other.normal, other.seam_at) for other in build.strips[piece.step :]]
    return patch_for(seen, piece.normal, piece.seam_at, later, half_planes(build.cover), _rules(numbers))


def _remark(piece: SewnPiece, build: Build) -> KernelNote | None:
    """What is wrong with the line of a patch, if anything."""
    beyond = piece.seam_at - extent(build.trim, *piece.normal)[1]
    if beyond > -TOLERANCE:
        return KernelNote(MISSES, piece.step, max(beyond, 0.0), piece.side)
    if not piece.visible:
        return KernelNote(HIDDEN, piece.step, 0.0, piece.side)
    scant = piece.seam_at + build.seam_allowance - extent(build.cover, *piece.normal)[1]
    return KernelNote(NEVER_MEETS, piece.step, scant, piece.side) if scant > TOLERANCE else None


def _as_patch(piece: SewnPiece, patch: Patch | None, job: Job, seam: float) -> SewnPiece:
    """A patch with the size it is cut; nothing is cut for one that covers nothing."""
    if patch is None:
        return replace(piece, cut_length=0.0, needed_length=0.0)
    (low, high), (start, end) = patch.needed, (patch.low, patch.high)
    outer = piece.seam_at + patch.width - seam
    return replace(
        piece,
        cut_width=patch.width,
        cut_length=patch.length,
        opened=_rectangle(piece, (start, end), outer),
        full_length=patch.length,
        needed_length=high - low,
        inset_start=low - start,
        inset_end=end - high,
        reach_start=low,
        reach_end=high,
        free_ends=0,
        raw_edge_at=outer,
        raw_edge_taped=job.frame.taped_distance(piece.normal, outer),
    )


def _rectangle(piece: SewnPiece, ends: tuple[float, float], outer: float) -> Polygon:
    """A patch as it lies opened: from its seam line outward, straight at both ends."""
    (nx, ny), near = piece.normal, piece.seam_at
    corners = ((near, ends[1]), (near, ends[0]), (outer, ends[0]), (outer, ends[1]))
    return tuple((nx * v - ny * u, ny * v + nx * u) for v, u in corners)


def _first(job: Job, piece: SewnPiece, corners: Polygon) -> SewnPiece:
    """Patch 1 as it is cut."""
    (left, right), (low, high) = extent(corners, 1, 0), extent(corners, 0, 1)
    return replace(
        piece,
        fabric=job.project.patches[0].fabric,
        cut_width=right - left,
        cut_length=high - low,
        full_length=high - low,
        needed_length=high - low,
        opened=corners,
        reach_start=-right,
        reach_end=-left,
        raw_edge_at=high,
        raw_edge_taped=job.frame.taped_distance((0.0, 1.0), high),
    )


def drawn_patches(project: Project, numbers: Numbers) -> tuple[DrawnPatch, ...]:
    """The foundation as it is drawn on the back one sews from: every line with its number, mirrored.

    Args:
        project: A project built as a numbered foundation.
        numbers: The maker's numbers.
    """
    lines = seam_lines(project, numbers)
    trim = flat(trim_polygon(project, numbers), numbers)
    rest = clip_all(trim, lines)
    drawn = [DrawnPatch(1, project.patches[0].fabric, None, _mirrored(middle(rest)) if counts(rest) else None)]
    for place, (nx, ny, at) in enumerate(lines):
        later = lines[place + 1 :]
        seen = clip_all(clip_all(trim, ((-nx, -ny, -at),)), later)
        ends = _line_inside((nx, ny, at), (*half_planes(trim), *later))
        drawn.append(
            DrawnPatch(
                number=place + 2,
                fabric=project.patches[place + 1].fabric,
                line=(_mirrored(ends[0]), _mirrored(ends[1])) if ends is not None else None,
                middle=_mirrored(middle(seen)) if counts(seen) else None,
            )
        )
    return tuple(drawn)


def _mirrored(place: Point) -> Point:
    return (-place[0], place[1])


def _line_inside(line: HalfPlane, planes: tuple[HalfPlane, ...]) -> tuple[Point, Point] | None:
    """The part of a line inside some half-planes; None when there is none."""
    nx, ny, at = line
    return seam_inside(SeamLine(0, (nx, ny), at, -FAR, FAR), planes)
