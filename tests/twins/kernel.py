"""The kernel told the same script, so that both can be laid side by side."""

from __future__ import annotations

from math import dist

from stitchflip.piecing.build import FirstPiece, Label, assemble
from stitchflip.piecing.flips import Flip, State, sew, start
from stitchflip.piecing.frame import Frame
from stitchflip.piecing.model import Build
from tests.twins.script import Polygon, Script, Strip, meet, moved_out, sides_of


def first_of(script: Script) -> Polygon:
    """Corners of the first piece; its sides are given in order, counter-clockwise."""
    sides = script.sides
    return tuple(meet(one, other) for one, other in zip(sides[-1:] + sides[:-1], sides, strict=True))


def sewn(script: Script) -> State:
    """The last state of a script, sewn by the kernel."""
    state = start(first_of(script), script.seam)
    for strip in script.strips:
        state = sew(state, flip_for(state, strip))
    return state


def flip_for(state: State, strip: Strip) -> Flip:
    """The kernel's word for a strip of the script."""
    if strip.at is not None:
        return Flip(strip.width, chord=(*strip.normal, strip.at), interval=strip.interval)
    (index,) = (
        index for index, side in enumerate(state.sides) if side is not None and dist(side.normal, strip.normal) < 1e-6
    )
    return Flip(strip.width, side=index, interval=strip.interval)


def built(script: Script, state: State | None = None) -> Build:
    """The build of a script in the flat frame (nothing is drawn in)."""
    state = state or sewn(script)
    return assemble(
        state,
        frame_of(script),
        FirstPiece("Linen", 1.0),
        [Label(1, "", "Linen")] * state.step,
        names=[f"side {number}" for number in range(1, len(script.sides) + 1)],
    )


def frame_of(script: Script) -> Frame:
    """What the kernel measures the script against."""
    (_, r0), *_ = sides_of(script.trim)
    (_, inner0), *_ = sides_of(script.inner)
    (_, cover0), *_ = sides_of(script.cover)
    frame = Frame(
        seam=script.seam,
        trim_taped=script.trim,
        binding_seam=r0 - inner0,
        reach=cover0 - r0,
        stitch=script.stitch,
        counts_as_crossed=script.counts_as_crossed,
        extra_free_end=0.0,
        extra_raw_edges=0.0,
        round_cuts_to=1e-4,
    )
    assert max(dist(p, q) for p, q in zip(frame.cover, moved_out(script.trim, cover0 - r0), strict=True)) < 1e-9
    return frame
