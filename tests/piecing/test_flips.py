"""The one rule: what a flip does to the outer edge, on a side and along a chord."""

from math import sqrt

import pytest

from stitchflip.errors import BuildError
from stitchflip.piecing.build import FirstPiece, Label, assemble
from stitchflip.piecing.flips import Flip, State, outline_of, sew, start, states
from stitchflip.piecing.frame import Frame
from stitchflip.piecing.geometry import area, box
from stitchflip.piecing.model import Build, Polygon

SQUARE = box((-2.0, -2.0), (2.0, 2.0))
BOTTOM, RIGHT, TOP, LEFT = range(4)


def sewn(first: Polygon, flips: list[Flip], trim: Polygon) -> Build:
    """A build of some flips, seam 1/4, reach 1/4, no draw-up."""
    state = start(first, 0.25)
    for flip in flips:
        state = sew(state, flip)
    frame = Frame(seam=0.25, trim_taped=trim, binding_seam=0.25, reach=0.25)
    labels = [Label(1, "", "strip") for _ in flips]
    return assemble(state, frame, FirstPiece("center", 4.0), labels)


def test_a_flip_moves_its_side_by_the_cut_width_less_two_seams() -> None:
    """A strip cut 2 1/2 opens to 2 1/4 and moves its raw edge by 2; the seam lies 1/4 inside the old edge."""
    state = sew(start(SQUARE, 0.25), Flip(2.5, side=TOP))

    assert state.sewn is not None
    assert state.sewn.seam_at == pytest.approx(1.75)
    assert state.sewn.raw_edge == pytest.approx(4.0)
    assert area(state.sewn.opened) == pytest.approx(4 * 2.25)


def test_states_can_be_replayed_from_the_last_one() -> None:
    """Every state before the last is still there, unchanged, in the order sewn."""
    first = start(SQUARE, 0.25)
    last = sew(sew(first, Flip(2.5, side=TOP)), Flip(1.5, side=RIGHT))
    replayed = list(states(last))

    assert [0, 1, 2] == [state.step for state in replayed]
    assert first == replayed[0]
    assert pytest.approx([2.0, 2.0, 4.0, 2.0]) == [side.raw_edge for side in replayed[1].sides if side]


@pytest.mark.parametrize("width", [0.5, 0.25, 0.0, -1.0])
def test_a_strip_no_wider_than_its_seams_is_refused(width: float) -> None:
    """Two seams of 1/4 leave nothing of a strip of 1/2: the error names the strip and what would do."""
    with pytest.raises(BuildError, match="strip 1") as caught:
        sew(start(SQUARE, 0.25), Flip(width, side=TOP))

    assert "wider than 0.5" in caught.value.fix


def test_a_side_that_is_not_there_is_refused() -> None:
    """A flip on a side the outline does not have says how many there are."""
    with pytest.raises(BuildError, match="side 8"):
        sew(start(SQUARE, 0.25), Flip(2.0, side=7))


def test_a_chord_along_a_side_with_the_seam_inside_cuts_the_allowance_free() -> None:
    """A chord at y = 1 keeps the center to 1 1/4, shows it to 1, and the strip reaches y = 2 3/4."""
    build = sewn(SQUARE, [Flip(2.0, chord=(0.0, 1.0, 1.0))], box((-1.9, -1.9), (1.9, 2.4)))
    center, strip = build.pieces

    assert pytest.approx(4 * 3.25) == area(center.kept)
    assert pytest.approx(3.8 * 2.9) == area(center.visible[0])
    assert pytest.approx(2.75) == strip.raw_edge_at
    assert pytest.approx(4.0) == strip.full_length


def test_a_slanted_chord_drops_the_corner_it_cuts_off() -> None:
    """At 45 degrees across a corner the strip is as long as the cut: d = sqrt 2 leaves 2 sqrt 2 on the seam line.

    The square |x|, |y| <= 2 meets x + y = 2 (d = sqrt 2) in a segment from (2, 0) to (0, 2), 2 sqrt 2 long.
    """
    half = sqrt(0.5)
    build = sewn(SQUARE, [Flip(1.0, chord=(half, half, sqrt(2)))], box((-1.5, -1.5), (1.5, 1.5)))
    strip = build.pieces[1]

    seam = [point for point in strip.opened if abs(half * (point[0] + point[1]) - sqrt(2)) < 1e-6]
    (x0, y0), (x1, y1) = seam
    assert pytest.approx(2 * sqrt(2)) == sqrt((x1 - x0) ** 2 + (y1 - y0) ** 2)


def test_a_chord_must_leave_part_of_the_first_piece() -> None:
    """A seam beyond the far side of the center would leave nothing of it."""
    with pytest.raises(BuildError, match="whole first piece"):
        sew(start(SQUARE, 0.25), Flip(2.0, chord=(0.0, 1.0, -2.5)))


def test_a_chord_beyond_the_fabric_has_a_scant_allowance() -> None:
    """A seam at y = 1.9 finds fabric only to 2.0: the allowance is 0.15 short of its quarter inch."""
    build = sewn(SQUARE, [Flip(2.0, chord=(0.0, 1.0, 1.9))], box((-1.5, -1.5), (1.5, 1.5)))

    notes = {note.code: note.value for note in build.notes}
    assert pytest.approx(0.15) == notes["chord.scant"]


def test_a_chord_through_a_sewn_seam_is_noted() -> None:
    """Cutting across an earlier seam by more than a stitch is noticed with the length that is lost.

    The top strip's seam runs along y = 1.75 from x = -2 to 2; the chord x = 1 keeps fabric to 1.25,
    so 0.75 of the seam lies in the part cut off. A strip cut 1 in opens to x = 1.75 and does not hide it.
    """
    flips = [Flip(2.0, side=TOP), Flip(1.0, chord=(1.0, 0.0, 1.0))]
    build = sewn(SQUARE, flips, box((-1.5, -1.5), (2.4, 3.0)))

    notes = {note.code: note.value for note in build.notes}
    assert pytest.approx(0.75) == notes["chord.cuts-seam"]


def test_a_sewn_seam_that_a_chord_strip_covers_may_stay() -> None:
    """The same chord with a strip cut 1 1/4 in: it opens to x = 2, as far as the seam runs, and hides its end."""
    flips = [Flip(2.0, side=TOP), Flip(1.25, chord=(1.0, 0.0, 1.0))]
    build = sewn(SQUARE, flips, box((-1.5, -1.5), (1.9, 3.0)))

    notes = {note.code: note.value for note in build.notes}
    assert pytest.approx(0.75) == notes["chord.hides-seam"]
    assert "chord.cuts-seam" not in notes


def test_fabric_of_a_chord_build_fills_its_outline() -> None:
    """The union of what is kept has the area of the outer edge: overlaps counted once, no holes."""
    half = sqrt(0.5)
    state: State = start(SQUARE, 0.25)
    for flip in (Flip(1.5, chord=(half, half, 2.0)), Flip(2.0, side=LEFT), Flip(1.5, chord=(-half, half, 2.2))):
        state = sew(state, flip)
    outline = outline_of(state)
    frame = Frame(seam=0.25, trim_taped=outline, binding_seam=0.25, reach=0.0)
    labels = [Label(1, "", "strip")] * 3
    build = assemble(state, frame, FirstPiece("center", 4.0), labels)

    shown = sum(area(polygon) for piece in build.pieces for polygon in piece.visible)
    assert pytest.approx(area(outline), abs=1e-6) == shown
