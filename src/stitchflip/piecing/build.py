"""A whole build: from the first piece and its flips to everything the plan says about each strip."""

from __future__ import annotations

from math import ceil, cos, hypot, inf, radians
from typing import TYPE_CHECKING

from stitchflip.piecing.coverage import bare_spots, widest_anywhere, widest_patch
from stitchflip.piecing.flips import Side, State, outline_of, reopened, states
from stitchflip.piecing.geometry import TOLERANCE, clip_all, counts, extent, half_planes, middle
from stitchflip.piecing.layers import Layer, first_layer, layers_of
from stitchflip.piecing.model import Build, CenterPoint, KernelNote, SewnPiece
from stitchflip.piecing.seams import EndRules, SeamLine, SeamMap, seam_inside
from stitchflip.piecing.sections import length_of_parts, sections_of
from stitchflip.piecing.shapes import corner_names
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from stitchflip.piecing.flips import Sewn
    from stitchflip.piecing.frame import Frame
    from stitchflip.piecing.geometry import HalfPlane
    from stitchflip.piecing.model import BareSpot, Point, Polygon, Seam, WidestGap
    from stitchflip.piecing.ways.wanted import Part

_POINTING = cos(radians(25))
"""A corner whose direction is within 25 degrees of square to its nearest edge points at that edge."""

_AT_SEAM = 1e-5
"""A corner so near a line lies on it; inches."""


@dataclass(frozen=True, slots=True)
class Label:
    """What a strip is called: the words that the geometry does not need."""

    round: int
    side: str
    fabric: str
    cut_long: float | None = None
    square_cut: float = 0.0
    """Side of the square it is cut as, sewn from corner to corner; 0 for a strip."""
    parts: Callable[[State, Sewn], tuple[Part, ...]] | None = None
    """What it is pieced from beforehand."""


@dataclass(frozen=True, slots=True)
class FirstPiece:
    """What is said of the first piece."""

    fabric: str
    cut_width: float
    run_along: Point | None = None
    """Growing direction when the first piece is a strip without neighbors."""
    cut_long: float | None = None
    """Cut length of a center, or of a first strip when the maker chose it."""


def assemble(
    state: State,
    frame: Frame,
    first: FirstPiece,
    labels: Sequence[Label],
    *,
    names: Sequence[str] = (),
    notes: Sequence[KernelNote] = (),
) -> Build:
    """Everything about a build that has been sewn.

    Args:
        state: The last state.
        frame: What the build is measured against.
        first: Words for the first piece.
        labels: Words for each strip, in the order sewn.
        names: Side names by index.
        notes: What was noticed on the way.
    """
    history = state.history
    opened = _opened(state, history)
    layers = layers_of(history, opened, frame)
    seams = _seams(history, layers, frame)
    pieces = [_first(state, history, first, frame)]
    befores = {after.step: after.before for after in states(state)}
    for sewn, layer, seam, label in zip(history, layers, seams, labels, strict=True):
        before = befores[sewn.step]
        parts = label.parts(before, sewn) if label.parts is not None and before is not None else ()
        pieces.append(_sewn_piece(sewn, layer, seam, label, parts, frame))
    bare = bare_left(state, frame, names)
    return Build(
        pieces=tuple(pieces),
        trim=frame.trim,
        trim_taped=frame.trim_taped,
        trim_inner=frame.inner,
        cover=frame.cover,
        outline=outline_of(state),
        bare=bare,
        raw_edges_on_show=(),
        widest_gap=_widest(pieces, frame, is_open=any(spot.grade != "note" for spot in bare)),
        points=_points(state, history, frame),
        notes=(*notes, *_notes(history, layers, labels, frame)),
        seam_allowance=frame.seam,
        draw_up=frame.draw_up,
        first_is_strip=first.run_along is not None,
        first_is_done=bool(frame.done),
    )


def bare_left(state: State, frame: Frame, names: Sequence[str]) -> tuple[BareSpot, ...]:
    """Places of the cover outline that nothing sewn so far reaches."""
    sides = [side for side in state.sides if side is not None]
    called = [_name(names, index) for index, side in enumerate(state.sides) if side is not None]
    return bare_spots(frame.cover, sides, called, frame.trim_planes, frame.inner_planes)


def _name(names: Sequence[str], index: int) -> str:
    return names[index] if index < len(names) else f"chord {index - len(names) + 1}"


def _opened(state: State, history: Sequence[Sewn]) -> list[Polygon]:
    """Opened strips, those that were measured with their edge where the tape found it."""
    measured: dict[int, Side] = {}
    for earlier in states(state):
        for side in earlier.sides:
            if side is not None and 0 < side.step <= len(history):
                sewn = history[side.step - 1]
                if abs(side.raw_edge - sewn.raw_edge) > TOLERANCE or side.normal != sewn.normal:
                    measured[side.step] = side
    return [reopened(sewn, measured[sewn.step].plane) if sewn.step in measured else sewn.opened for sewn in history]


def _seams(history: Sequence[Sewn], layers: Sequence[Layer], frame: Frame) -> list[Seam | None]:
    lines = [
        SeamLine(sewn.step, sewn.normal, sewn.seam_at, *layer.seam) if layer.seam else None
        for sewn, layer in zip(history, layers, strict=True)
    ]
    rules = EndRules(frame.seam, frame.stitch, frame.counts_as_crossed, frame.trim, frame.inner)
    every = SeamMap([line for line in lines if line], rules)
    kept = [layer.kept for layer in layers]
    return [every.judge(line, kept[line.step :], frame.cover_planes) if line else None for line in lines]


def _sewn_piece(
    sewn: Sewn, layer: Layer, seam: Seam | None, label: Label, parts: Sequence[Part], frame: Frame
) -> SewnPiece:
    low, high = layer.full
    start, end = layer.needed or (low, low)
    insets = _insets(sewn, layer)
    needed = end - start if layer.needed else 0.0
    visible, shown = _parts_in(layer.seen, frame)
    cut_length = label.cut_long or _length_to_cut(sewn, layer, frame)
    if parts and layer.needed:
        cut_length = length_of_parts(parts, frame.seam)
    is_pieced = len(parts) > 1 and layer.needed is not None
    return SewnPiece(
        step=sewn.step,
        round=label.round,
        side=label.side,
        fabric=label.fabric,
        cut_width=sewn.width,
        normal=sewn.normal,
        seam_at=sewn.seam_at,
        raw_edge_at=sewn.raw_edge,
        raw_edge_taped=frame.taped_distance(sewn.normal, sewn.raw_edge),
        seam_taped=frame.taped_distance(sewn.normal, sewn.seam_at),
        opened=layer.opened,
        kept=layer.kept,
        visible=visible,
        shown=shown,
        full_length=high - low,
        needed_length=needed,
        inset_start=insets[0],
        inset_end=insets[1],
        reach_start=start,
        reach_end=end,
        cut_length=cut_length,
        free_ends=int(sewn.free_start) + int(sewn.free_end),
        is_start_free=sewn.free_start,
        seam=seam,
        square_cut=label.square_cut,
        sections=sections_of(parts, label.fabric, sewn.normal, visible, shown) if is_pieced else (),
    )


def _parts_in(seen: Polygon, frame: Frame) -> tuple[tuple[Polygon, ...], tuple[Polygon, ...]]:
    """(visible, shown): what is seen of a piece inside the trim edge, and inside the binding's seam line."""
    visible = clip_all(seen, frame.trim_planes)
    shown = clip_all(visible, frame.inner_planes)
    return (visible,) if counts(visible) else (), (shown,) if counts(shown) else ()


def _insets(sewn: Sewn, layer: Layer) -> Point:
    """How far what is needed stays inside the full strip at its start and its end; 0 where nothing is needed."""
    if layer.needed is None:
        return (0.0, 0.0)
    low, high = layer.full
    start, end = layer.needed
    return (0.0 if sewn.free_start else start - low, 0.0 if sewn.free_end else high - end)


def length_of_last(state: State, frame: Frame) -> float:
    """How long the strip sewn last must be cut, inches; 0 when it reaches nothing that must be covered."""
    sewn = state.sewn
    if sewn is None:
        return 0.0
    (layer,) = layers_of((sewn,), (sewn.opened,), frame)
    return _length_to_cut(sewn, layer, frame)


def _length_to_cut(sewn: Sewn, layer: Layer, frame: Frame) -> float:
    if layer.needed is None:
        return 0.0
    is_free = sewn.free_start or sewn.free_end or max(_insets(sewn, layer)) > TOLERANCE
    return _cut_length(layer.needed[1] - layer.needed[0], frame, is_free=is_free)


def _cut_length(needed: float, frame: Frame, *, is_free: bool) -> float:
    """Needed length plus the extra for its ends, rounded up to a length one cuts."""
    if needed <= 0:
        return 0.0
    extra = frame.extra_free_end if is_free else frame.extra_raw_edges
    return ceil((needed + extra - TOLERANCE) / frame.round_cuts_to) * frame.round_cuts_to


def _first(state: State, history: Sequence[Sewn], first: FirstPiece, frame: Frame) -> SewnPiece:
    """The first piece as a row of the plan."""
    outline = state.first
    kept, seen = first_layer(outline, history, frame.seam)
    visible, shown = _parts_in(seen, frame)
    normal = first.run_along or (0.0, 1.0)
    along = extent(outline, -normal[1], normal[0])
    across = extent(outline, *normal)
    needed = along[1] - along[0]
    cut = first.cut_long or (_cut_length(needed, frame, is_free=True) if first.run_along is not None else needed)
    if first.run_along is None:
        needed = cut
    return SewnPiece(
        step=0,
        round=0,
        side="",
        fabric=first.fabric,
        cut_width=first.cut_width,
        normal=normal,
        seam_at=across[0] if first.run_along else 0.0,
        raw_edge_at=across[1],
        raw_edge_taped=frame.taped_distance(normal, across[1]),
        seam_taped=frame.taped_distance(normal, across[0]) if first.run_along else 0.0,
        opened=outline,
        kept=kept,
        visible=visible,
        shown=shown,
        full_length=needed,
        needed_length=needed,
        inset_start=0.0,
        inset_end=0.0,
        reach_start=along[0],
        reach_end=along[1],
        cut_length=cut,
        free_ends=2 if first.run_along else 0,
        seam=None,
    )


def _widest(pieces: Sequence[SewnPiece], frame: Frame, *, is_open: bool) -> WidestGap:
    """The widest place without stitching."""
    if is_open:
        return _widest_open(pieces, frame)
    patches = []
    for piece in pieces[1:] if frame.done else pieces:
        bound = inf
        if piece.step and piece.visible:
            low, high = extent(piece.visible[0], *piece.normal)
            bound = high - low
        patches.append((piece.step, bound, piece.visible))
    return widest_patch(patches, frame.draw_up)


def _widest_open(pieces: Sequence[SewnPiece], frame: Frame) -> WidestGap:
    lines = []
    for piece in pieces:
        if piece.seam is None:
            continue
        lines.append((frame.taped(piece.seam.start.at), frame.taped(piece.seam.end.at)))
    return widest_anywhere(frame.trim_taped, lines, done=frame.done_taped)


def _stitched_lines(history: Sequence[Sewn], frame: Frame) -> list[HalfPlane]:
    """The stitching round the first piece, one line a side: the fold takes from the strips, not from the points."""
    back = 0.0 if frame.stitched is None else frame.seam - frame.stitched
    nearest: dict[int, HalfPlane] = {}
    for sewn in reversed(history):
        nearest[sewn.side] = (*sewn.normal, sewn.seam_at + back)
    return list(nearest.values())


def _points(state: State, history: Sequence[Sewn], frame: Frame) -> tuple[CenterPoint, ...]:
    """The corners of the first piece as it shows, with their room to the edges.

    Where a line of its own cuts a corner off, its seam runs out at a raw edge and makes no point there. A half-done
    piece has none that matter.
    """
    if frame.done:
        return ()
    lines = _stitched_lines(history, frame)
    seen = clip_all(state.first, lines)
    if not seen or len(state.sides) < 3:
        return ()
    has_chords = any(sewn.is_chord for sewn in history)
    mid_x, mid_y = middle(seen)
    planes = half_planes(frame.trim_taped)
    points = []
    corners = [
        (x, y)
        for x, y in seen
        if not has_chords or sum(abs(nx * x + ny * y - r) < _AT_SEAM for nx, ny, r in lines) >= 2
    ]
    names = corner_names([(x - mid_x, y - mid_y) for x, y in corners])
    for (x, y), name in zip(corners, names, strict=True):
        tx, ty = frame.taped((x, y))
        nx, ny, r = min(planes, key=lambda plane: plane[2] - plane[0] * tx - plane[1] * ty)
        to_edge = r - nx * tx - ny * ty
        ax, ay = _corner_direction(seen, (x, y))
        pointing = nx * ax + ny * ay
        to_base = min(frame.base_half[0] - abs(x), frame.base_half[1] - abs(y))
        points.append(
            CenterPoint(
                at=(x, y),
                to_base_edge=to_base,
                to_trim_edge=to_edge,
                shown=to_edge - frame.binding_seam,
                name=name,
                points_at_edge=pointing > _POINTING,
            )
        )
    return tuple(points)


def _corner_direction(outline: Polygon, corner: Point) -> Point:
    """Where a corner points: half way between the outward normals of its two edges, whatever the outline is like."""
    place = outline.index(corner)
    (x0, y0), (x1, y1) = outline[place - 1], outline[(place + 1) % len(outline)]
    x, y = corner
    before, after = (y - y0, x0 - x), (y1 - y, x - x1)
    first, second = hypot(*before) or 1.0, hypot(*after) or 1.0
    away = (before[0] / first + after[0] / second, before[1] / first + after[1] / second)
    length = hypot(*away) or 1.0
    return (away[0] / length, away[1] / length)


def _notes(history: Sequence[Sewn], layers: Sequence[Layer], labels: Sequence[Label], frame: Frame) -> list[KernelNote]:
    notes = []
    for sewn, layer, label in zip(history, layers, labels, strict=True):
        if layer.needed is None:
            notes.append(KernelNote("strip.unnecessary", sewn.step))
        if label.square_cut:
            continue  # folded squares end in a point, and the seams of two meet at the edge
        if layer.needed is not None and sewn.closes:
            notes.append(KernelNote("side.closes", sewn.step, extent(layer.opened, *sewn.normal)[1]))
        if sewn.scant > TOLERANCE:
            notes.append(KernelNote("chord.scant", sewn.step, sewn.scant))
        if sewn.is_chord:
            lost, farthest = _seam_cut(sewn, history, frame)
            if lost > frame.stitch:
                is_hidden = farthest <= sewn.raw_edge + TOLERANCE
                notes.append(KernelNote("chord.hides-seam" if is_hidden else "chord.cuts-seam", sewn.step, lost))
    return notes


def _seam_cut(chord: Sewn, history: Sequence[Sewn], frame: Frame) -> Point:
    """Longest piece of an earlier seam in the part a chord cuts off, and how far out such pieces reach; inches."""
    nx, ny = chord.normal
    longest, farthest = 0.0, chord.seam_at
    for sewn in history[: chord.step - 1]:
        if not sewn.opened:
            continue
        tx, ty = -sewn.normal[1], sewn.normal[0]
        seam = [p for p in sewn.opened if sewn.normal[0] * p[0] + sewn.normal[1] * p[1] <= sewn.seam_at + TOLERANCE]
        if len(seam) < 2:
            continue
        line = SeamLine(sewn.step, sewn.normal, sewn.seam_at, *extent(tuple(seam), tx, ty))
        beyond = seam_inside(line, [(-nx, -ny, -(chord.seam_at + frame.seam))])
        if beyond:
            (x0, y0), (x1, y1) = beyond
            longest = max(longest, hypot(x1 - x0, y1 - y0))
            farthest = max(farthest, extent(beyond, nx, ny)[1])
    return longest, farthest
