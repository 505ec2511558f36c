"""What the fabrics and the batting themselves ask for: washing, dye, iron, print, and how they lie together."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.piecing.fabric_places import lightness
from stitchflip.piecing.geometry import TOLERANCE
from stitchflip.piecing.shapes import is_slanted
from stitchflip.planning.findings.words import listed, strips
from stitchflip.planning.model import Cure, Finding, Severity
from stitchflip.project.model import Fiber, Wash

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.planning.findings.seen import Seen
    from stitchflip.project.model import Fabric

PALE = 0.5
"""Relative luminance above which a fabric counts as pale."""


def _used(seen: Seen) -> list[Fabric]:
    names = {piece.fabric for piece in seen.build.pieces} | {seen.project.binding.fabric}
    return [fabric for fabric in seen.project.fabrics if fabric.name in names]


def washing(seen: Seen) -> Iterator[Finding]:
    """Washed beside unwashed fabric puckers at the first wash."""
    used = _used(seen)
    unwashed = [fabric for fabric in used if fabric.washed is Wash.UNWASHED]
    washed = [fabric for fabric in used if fabric.washed is Wash.WASHED]
    if not unwashed or not washed:
        return
    precut = [fabric.name for fabric in unwashed if fabric.precut]
    if precut:
        what = f"Precut pieces ({listed(precut)}) beside washed yardage: precuts are not washed before sewing."
        cure = Cure("Wash none of them, or starch all of them before cutting.")
    else:
        what = (
            f"{listed([fabric.name for fabric in unwashed])} unwashed, {listed([fabric.name for fabric in washed])} "
            "washed: they will shrink differently."
        )
        cure = Cure("Wash all of them, or none.")
    yield Finding("fabric.washing", Severity.FIX, what, cures=(cure,))


def dye(seen: Seen) -> Iterator[Finding]:
    """A dark dye that was not tested, beside a pale fabric."""
    used = _used(seen)
    dark = [fabric.name for fabric in used if fabric.dark_dye and not fabric.dye_tested]
    pale = [fabric.name for fabric in used if lightness(fabric.color) > PALE]
    if dark and pale:
        what = f"{listed(dark)}: dark dye, not tested, in one piece with {listed(pale)}."
        cure = Cure(
            "Press a wet white cloth on a corner with the iron; if color comes off, wash it first with a catcher."
        )
        yield Finding("fabric.dye", Severity.FIX, what, cures=(cure,))


def iron(seen: Seen) -> Iterator[Finding]:
    """Batting that does not stand the iron."""
    batting = seen.project.batting
    stands = batting.iron if batting.iron is not None else batting.fiber is not Fiber.POLYESTER
    if not stands:
        cure = Cure("Open each strip with the fingers or a cool roller; iron the fabric only before it is sewn on.")
        what = f"The {batting.fiber.value} batting does not stand the iron: it can melt under the seams."
        yield Finding("batting.iron", Severity.NOTE, what, cures=(cure,))


def one_way(seen: Seen) -> Iterator[Finding]:
    """One-way prints in strips that go on sideways."""
    for fabric in _used(seen):
        if not fabric.one_way:
            continue
        sideways = [
            piece.step
            for piece in seen.build.strips
            if piece.fabric == fabric.name and abs(piece.normal[0]) > abs(piece.normal[1]) + TOLERANCE
        ]
        upright = [
            piece.step for piece in seen.build.strips if piece.fabric == fabric.name and piece.step not in sideways
        ]
        if sideways and upright:
            what = f"{fabric.name} is a one-way print: it lies on its side in {strips(sideways)}."
            cure = Cure("Cut those strips along the other grain, or use another fabric there.")
            yield Finding("fabric.one-way", Severity.NOTE, what, strips(sideways), sideways[0], cures=(cure,))


def center_print(seen: Seen) -> Iterator[Finding]:
    """A center cut on the slant, and a window larger than the print's repeat."""
    center = seen.project.center
    if center is None or center.sewn_already:
        return
    fabric = next((fabric for fabric in seen.project.fabrics if fabric.name == center.fabric), None)
    if fabric is not None and fabric.one_way and is_slanted(center.turned):
        what = "The center is cut on the slant so that its print stands upright: all its sides stretch."
        cure = Cure("Starch before cutting, pin, don't pull.")
        yield Finding("edges.center-on-bias", Severity.NOTE, what, "center", 0, cures=(cure,))
    if fabric is not None and fabric.repeat is not None:
        from stitchflip.planning.findings.fussy_cut import fussy_cut

        yield from fussy_cut(seen, fabric)


def neighbors(seen: Seen) -> Iterator[Finding]:
    """A fabric beside itself on the same side, so that its seam disappears."""
    last: dict[str, tuple[int, str]] = {}
    pairs: list[tuple[int, int, str]] = []
    for piece in seen.build.strips:
        before = last.get(piece.side)
        if before and before[1] == piece.fabric:
            pairs.append((before[0], piece.step, piece.fabric))
        last[piece.side] = (piece.step, piece.fabric)
    if pairs:
        one, other, fabric = pairs[0]
        names = listed(list(dict.fromkeys(name for _, _, name in pairs)))
        first = f"{fabric} lies beside itself in strips {one} and {other}"
        more = "" if len(pairs) == 1 else f", and so {len(pairs) - 1} times more ({names})"
        yield Finding("strip.touches-itself", Severity.NOTE, f"{first}{more}.", strips([other]), other)


def backing_seam(seams_at: tuple[float, ...]) -> Iterator[Finding]:
    """A backing seam within 1 in of the middle."""
    near = [place for place in seams_at if abs(place) < 1]
    if near:
        what = "A backing seam lies in the middle of the piece, where it is folded most."
        cure = Cure("Cut the widths unequal so that the seam lies 6 in or more off the middle.")
        yield Finding("backing.seam-in-middle", Severity.NOTE, what, cures=(cure,))
