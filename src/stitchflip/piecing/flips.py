"""The one rule of the kernel: a build is a sequence of flips.

A strip is laid on a raw edge right sides together, sewn at the allowance, opened and trimmed level with its
neighbors. What that does to the outer edge is all here; the state before and after is a value, so any step
can be shown again, taken back or tried twice. Orders (which side comes next) live in `orders`, what the strips
leave of each other in `layers`.
"""

from __future__ import annotations

from dataclasses import replace
from math import atan2, degrees
from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.piecing.geometry import (
    TOLERANCE,
    HalfPlane,
    clip,
    clip_all,
    extent,
    half_planes,
)
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.piecing.model import Point, Polygon

FAR = 1e4
"""A strip without neighbors is drawn this long (inches each way) until the cover outline ends it."""


@dataclass(frozen=True, slots=True)
class Side:
    """One side of the outer edge: outward unit normal, raw edge, and the step that made it."""

    normal: Point
    raw_edge: float
    step: int = 0

    @property
    def plane(self) -> HalfPlane:
        """The half-plane inside the raw edge."""
        return (*self.normal, self.raw_edge)


@dataclass(frozen=True, slots=True)
class Flip:
    """A strip to sew: on a side (by its index), or along a chord of its own."""

    width: float
    """Cut width, inches."""
    side: int | None = None
    chord: HalfPlane | None = None
    """Seam line (nx, ny, d) of a chord flip; None for a flip on a side."""
    interval: tuple[float, float] | None = None
    """Where a strip really reaches along its seam when it was cut too short; measured from the foot of the mark."""
    remark: str = ""
    """Code of a note about how it had to be laid; "" for none."""
    remark_value: float = 0.0


@dataclass(frozen=True, slots=True)
class Sewn:
    """A flip as it was sewn."""

    step: int
    side: int
    normal: Point
    seam_at: float
    width: float
    raw_edge_before: float
    raw_edge: float
    opened: Polygon
    """Full length; runs to FAR where there is no neighbor."""
    free_start: bool
    free_end: bool
    is_chord: bool
    closes: bool
    """The strip ends in a point before its outer edge: the side has no edge left."""
    scant: float
    """How far the outer edge stays short of the allowance behind a chord, inches."""
    neighbors: tuple[HalfPlane, ...] = ()
    """Raw edges the opened strip was trimmed level with."""
    interval: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True)
class State:
    """What lies on the base after some steps. Immutable; `before` leads back to the first piece."""

    first: Polygon
    sides: tuple[Side | None, ...]
    """Sides by index; None for one that a chord cut away. Counter-clockwise at the start."""
    seam: float
    """Effective seam a, inches."""
    sewn: Sewn | None = None
    before: State | None = None

    @property
    def step(self) -> int:
        """Number of the last step; 0 with the first piece alone."""
        return self.sewn.step if self.sewn else 0

    @property
    def history(self) -> tuple[Sewn, ...]:
        """All flips so far, in the order sewn."""
        out = []
        state: State | None = self
        while state is not None and state.sewn is not None:
            out.append(state.sewn)
            state = state.before
        return tuple(reversed(out))

    @property
    def planes(self) -> tuple[HalfPlane, ...]:
        """Half-planes of the outer edge."""
        return tuple(side.plane for side in self.sides if side is not None)


def start(first: Polygon, seam: float, *, growing: Sequence[Point] = ()) -> State:
    """The state with the first piece alone.

    Args:
        first: Raw edges of the first piece as laid on the base, counter-clockwise, inches.
        seam: Effective seam a: stitched seam plus half of what a fold takes up, inches.
        growing: Normals of the sides that strips go on, when the others are free (rows of strips, a braid).

    Example:
        >>> square = ((-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0))
        >>> [side.raw_edge for side in start(square, 0.25).sides]
        [1.0, 1.0, 1.0, 1.0]
    """
    planes = half_planes(first)
    if growing:
        planes = tuple(plane for plane in planes if any(_faces(plane, normal) for normal in growing))
    ordered = sorted(planes, key=_from_bottom)
    return State(first, tuple(Side((nx, ny), r) for nx, ny, r in ordered), seam)


def _faces(plane: HalfPlane, normal: Point) -> bool:
    return plane[0] * normal[0] + plane[1] * normal[1] > 1 - TOLERANCE


def _from_bottom(plane: HalfPlane) -> float:
    """Angle of a side counter-clockwise from the bottom, so that sides are numbered the same way every time."""
    return (degrees(atan2(plane[1], plane[0])) + 90 + TOLERANCE) % 360


def sew(state: State, flip: Flip) -> State:
    """The state after one more strip.

    Raises:
        BuildError: If the strip is no wider than its two seams, the side does not exist, or a chord would leave
            nothing of the first piece.
    """
    if flip.width <= 2 * state.seam + TOLERANCE:
        raise BuildError(
            what=f"strip {state.step + 1} is cut {flip.width:g} in wide, and its two seams of {state.seam:g} in leave "
            "nothing to see",
            fix=f"Cut it wider than {2 * state.seam:g} in, or leave it out.",
            where=f"step {state.step + 1}",
            code="build.strip-too-narrow",
        )
    return _sew_chord(state, flip, flip.chord) if flip.chord is not None else _sew_side(state, flip)


def _sew_side(state: State, flip: Flip) -> State:
    index = flip.side if flip.side is not None else -1
    side = state.sides[index] if 0 <= index < len(state.sides) else None
    if side is None:
        raise BuildError(
            what=f"strip {state.step + 1} goes on side {index + 1}, which is not there",
            fix=f"Choose a side from 1 to {len(state.sides)} that no chord has cut away.",
            where=f"step {state.step + 1}",
            code="build.no-such-side",
        )
    seam_at = side.raw_edge - state.seam
    others = [other.plane for number, other in enumerate(state.sides) if other is not None and number != index]
    return _place(state, flip, index, side.normal, seam_at, side.raw_edge, others, scant=0.0)


def _sew_chord(state: State, flip: Flip, chord: HalfPlane) -> State:
    nx, ny, d = chord
    cut = clip(state.first, nx, ny, d)
    for sewn in state.history if cut else ():
        if sewn.is_chord:
            cut = clip(cut, *sewn.normal, sewn.seam_at)
    if not cut:
        raise BuildError(
            what=f"the seam of strip {state.step + 1} would cut away the whole first piece",
            fix="Lay its seam line so that part of the first piece stays inside.",
            where=f"step {state.step + 1}",
            code="build.chord-cuts-all",
        )
    edge = d + state.seam
    outline = clip_all(outline_of(state), ((nx, ny, edge),))
    kept: list[Side | None] = [
        side if side is not None and _has_edge(outline, side.plane) else None for side in state.sides
    ]
    others = [side.plane for side in kept if side is not None]
    scant = max(0.0, edge - extent(outline, nx, ny)[1])
    index = len(kept)
    reduced = replace(state, sides=(*kept, Side((nx, ny), edge, state.step)))
    return _place(reduced, flip, index, (nx, ny), d, edge, others, scant=scant, before=state)


def _has_edge(outline: Polygon, plane: HalfPlane) -> bool:
    nx, ny, r = plane
    touching = [(x, y) for x, y in outline if nx * x + ny * y >= r - TOLERANCE]
    if len(touching) < 2:
        return False
    low, high = extent(tuple(touching), -ny, nx)
    return high - low > TOLERANCE


def _place(
    state: State,
    flip: Flip,
    index: int,
    normal: Point,
    seam_at: float,
    raw_edge_before: float,
    others: list[HalfPlane],
    *,
    scant: float,
    before: State | None = None,
) -> State:
    """Lay the opened strip and move the side out by what it shows."""
    nx, ny = normal
    tx, ty = -ny, nx
    outer = seam_at + flip.width - state.seam
    opened = _between(normal, seam_at, outer, others)
    is_plain = bool(opened)
    if not is_plain:
        opened = clip_all(band(normal, seam_at, outer), others)
    low, high = extent(opened, tx, ty) if opened else (0.0, 0.0)
    reach = outer if is_plain else extent(opened, nx, ny)[1] if opened else seam_at
    sewn = Sewn(
        step=state.step + 1,
        side=index,
        normal=normal,
        seam_at=seam_at,
        width=flip.width,
        raw_edge_before=raw_edge_before,
        raw_edge=outer,
        opened=opened,
        free_start=low < -FAR / 2,
        free_end=high > FAR / 2,
        is_chord=flip.chord is not None,
        closes=not is_plain and (reach < outer - TOLERANCE or _ends_in_point(opened, normal, outer)),
        scant=scant,
        neighbors=tuple(others),
        interval=flip.interval,
    )
    sides = list(state.sides)
    sides[index] = Side(normal, outer, sewn.step)
    return State(state.first, tuple(sides), state.seam, sewn, before or state)


def band(normal: Point, low: float, high: float) -> Polygon:
    """All places between two parallel lines, cut to FAR inches each way."""
    nx, ny = normal
    tx, ty = -ny * FAR, nx * FAR
    return (
        (low * nx + tx, low * ny + ty),
        (low * nx - tx, low * ny - ty),
        (high * nx - tx, high * ny - ty),
        (high * nx + tx, high * ny + ty),
    )


def _between(normal: Point, low: float, high: float, others: list[HalfPlane]) -> Polygon:
    """The opened strip when two neighbors end it in a four-sided shape; empty when it is anything else.

    Every neighbor's raw edge ends the strip somewhere at the seam line and at the outer edge; a strip is plain
    when the same neighbor is the first to end it at both. The length formula is the one a maker could use:
    (r - x cos phi) / sin phi at distance x, phi the angle between the two sides' normals.
    """
    nx, ny = normal
    ends = [FAR, FAR]
    starts = [-FAR, -FAR]
    for mx, my, r in others:
        cosine, sine = nx * mx + ny * my, nx * my - ny * mx
        if -1e-9 < sine < 1e-9:
            if cosine * low > r or cosine * high > r:
                return ()
            continue
        at_low, at_high = (r - cosine * low) / sine, (r - cosine * high) / sine
        if sine > 0:
            if (at_low < ends[0]) != (at_high < ends[1]):
                return ()
            if at_low < ends[0]:
                ends = [at_low, at_high]
        else:
            if (at_low > starts[0]) != (at_high > starts[1]):
                return ()
            if at_low > starts[0]:
                starts = [at_low, at_high]
    if ends[0] - starts[0] <= TOLERANCE or ends[1] - starts[1] <= TOLERANCE:
        return ()
    return (
        (low * nx - ny * ends[0], low * ny + nx * ends[0]),
        (low * nx - ny * starts[0], low * ny + nx * starts[0]),
        (high * nx - ny * starts[1], high * ny + nx * starts[1]),
        (high * nx - ny * ends[1], high * ny + nx * ends[1]),
    )


def reopened(sewn: Sewn, edge: HalfPlane) -> Polygon:
    """An opened strip whose outer edge lies where it was measured."""
    wide = band(sewn.normal, sewn.seam_at, sewn.raw_edge + sewn.width)
    return clip_all(wide, (*sewn.neighbors, edge))


def _ends_in_point(opened: Polygon, normal: Point, outer: float) -> bool:
    nx, ny = normal
    at_edge = tuple((x, y) for x, y in opened if nx * x + ny * y >= outer - TOLERANCE)
    if not at_edge:
        return True
    low, high = extent(at_edge, -ny, nx)
    return high - low <= TOLERANCE


def outline_of(state: State) -> Polygon:
    """Outer raw edge of everything sewn, cut to a wide box where a side is missing."""
    square = ((-FAR, -FAR), (FAR, -FAR), (FAR, FAR), (-FAR, FAR))
    return clip_all(square, state.planes)


def states(state: State) -> Iterator[State]:
    """All states from the first piece to this one, in the order sewn."""
    chain = []
    current: State | None = state
    while current is not None:
        chain.append(current)
        current = current.before
    return reversed(chain)


def measured(state: State, index: int, normal: Point, raw_edge: float) -> State:
    """The state with a side where it was measured; the strip that carries the edge ends there, seams stay.

    Args:
        state: State after which it was measured.
        index: Side.
        normal: Outward unit normal as measured (turned when two places disagree).
        raw_edge: Distance from the center mark along that normal, flat, inches.
    """
    sides = list(state.sides)
    side = sides[index]
    sides[index] = Side(normal, raw_edge, side.step if side else 0)
    return replace(state, sides=tuple(sides))
