"""Numbered foundations: lines that do nothing, patches nobody sees, the mirror, and corner triangles."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.piecing.geometry import area, clip_all, half_planes, middle
from stitchflip.piecing.ways.foundation import HIDDEN, MISSES, NEVER_MEETS, patch_of
from stitchflip.planning.findings.words import listed
from stitchflip.planning.model import Cure, Finding, Severity
from stitchflip.project.model import LinesSeen, Way

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.piecing.model import Build, KernelNote, Polygon
    from stitchflip.planning.findings.seen import Seen


def foundation_lines(seen: Seen) -> Iterator[Finding]:
    """Lines that miss the piece, patches that later ones cover, seams that run off the fabric below them."""
    by_code: dict[str, list[KernelNote]] = {}
    for note in seen.build.notes:
        by_code.setdefault(note.code, []).append(note)
    for code, make in _MAKERS.items():
        notes = by_code.get(code)
        if notes:
            yield make(seen, notes)


def _numbers(notes: Sequence[KernelNote]) -> str:
    return patches([note.step + 1 for note in notes])


def patches(numbers: Sequence[int]) -> str:
    """Patches as words.

    Example:
        >>> patches([3]), patches([3, 5])
        ('patch 3', 'patches 3 and 5')
    """
    return f"{'patch' if len(numbers) == 1 else 'patches'} {listed([str(number) for number in numbers])}"


_STRIPS = re.compile(r"\b([Ss])trips? (\d+(?:, \d+)*(?: and \d+(?! more))?)\b")
_FIRST = re.compile(r"\b[Tt]he first strip\b")


def as_patches(finding: Finding) -> Finding:
    """A finding that speaks of strips, with the numbers that the patches of a foundation have on paper.

    Patch 1 lies there before anything is sewn, so strip 1 is patch 2.

    Example:
        >>> as_patches(Finding("seams.bulk", Severity.NOTE, "Strips 1, 2 and 9: see strip 3.")).what
        'Patches 2, 3 and 10: see patch 4.'
    """
    cures = tuple(replace(cure, text=_in_patches(cure.text)) for cure in finding.cures)
    return replace(finding, what=_in_patches(finding.what), where=_in_patches(finding.where), cures=cures)


def _in_patches(text: str) -> str:
    def told(found: re.Match[str]) -> str:
        numbers = re.sub(r"\d+", lambda number: str(int(number[0]) + 1), found[2])
        word = "patch" if numbers.isdigit() else "patches"
        return f"{word.capitalize() if found[1] == 'S' else word} {numbers}"

    return _FIRST.sub("patch 1", _STRIPS.sub(told, text))


def _misses(seen: Seen, notes: Sequence[KernelNote]) -> Finding:
    worst = max(notes, key=lambda note: note.value)
    off = f" by {seen.speaker.near(worst.value)}" if worst.value > _HAIR else ""
    what = (
        f"The line of {_numbers(notes)} misses the piece: it runs outside the squared-up edge{off}, "
        "so the patch covers nothing."
    )
    cure = Cure(f"Move the line of patch {worst.step + 1} inward, or leave the patch out.")
    facts = {"outside_in": worst.value}
    return Finding("foundation.line-misses", Severity.FIX, what, _numbers(notes), worst.step, (), facts, (cure,))


def _hidden(seen: Seen, notes: Sequence[KernelNote]) -> Finding:
    step = notes[0].step
    verb = "covers it" if len(notes) == 1 else "cover them"
    what = f"Nothing of {_numbers(notes)} is to be seen: what is sewn later {verb} wholly."
    cure = Cure("Sew it later, move its line outward, or leave it out.")
    place = seen.build.pieces[step].kept
    facts = {"patches": float(len(notes))}
    return Finding("foundation.patch-hidden", Severity.FIX, what, _numbers(notes), step, place, facts, (cure,))


def _never_meets(seen: Seen, notes: Sequence[KernelNote]) -> Finding:
    worst = max(notes, key=lambda note: note.value)
    short = seen.speaker.shortage(worst.value)
    what = (
        f"The seam of {_numbers(notes)} and the fabric it is sewn to never meet in full: the fabric below ends "
        f"{short} short of the seam allowance."
    )
    cure = Cure(f"Move the line of patch {worst.step + 1} inward by {short}, or ask for more reach.")
    facts = {"short_in": worst.value}
    place = seen.build.pieces[worst.step].kept
    return Finding(
        "foundation.seam-never-meets", Severity.FIX, what, _numbers(notes), worst.step, place, facts, (cure,)
    )


_MAKERS = {MISSES: _misses, HIDDEN: _hidden, NEVER_MEETS: _never_meets}

_HAIR = 1 / 32
"""Lengths below this (inches) are not worth a number."""


def mirror(seen: Seen) -> Iterator[Finding]:
    """What sewing from the back does to the design: nothing when it is the same in a mirror."""
    building = seen.project.building
    if building.way is not Way.FOUNDATION:
        return
    if is_same_in_mirror(seen.build):
        what = "The design is the same from both sides, so lines drawn on the back need no mirror."
    elif building.lines_seen is LinesSeen.BACK:
        what = "The lines are mirrored on purpose: they lie on the back you sew from, and the pictures show the front."
    else:
        what = "To sew from the back, draw the lines in the mirror; as given they show the front."
    yield Finding("foundation.mirror", Severity.NOTE, what)


_SAME = 1e-3
"""Two outlines are the same when no more of either (a share of its area) lies outside the other."""


def is_same_in_mirror(build: Build) -> bool:
    """True when the patches as they show are the same, fabrics too, with left and right changed over."""
    shapes = [(piece.fabric, polygon) for piece in build.pieces for polygon in piece.visible]
    by_fabric: dict[str, list[tuple[float, float, Polygon]]] = {}
    for fabric, polygon in shapes:
        by_fabric.setdefault(fabric, []).append((*middle(polygon), polygon))
    for fabric, polygon in shapes:
        turned = tuple((-x, y) for x, y in reversed(polygon))
        x, y = middle(turned)
        near = [own for ox, oy, own in by_fabric[fabric] if abs(ox - x) < _HAIR and abs(oy - y) < _HAIR]
        if not any(_is_same(turned, own) for own in near):
            return False
    return True


def _is_same(one: Polygon, other: Polygon) -> bool:
    common = area(clip_all(one, half_planes(other)))
    return common >= (1 - _SAME) * max(area(one), area(other))


_SAVING = 0.9
"""Half a square is worth a word when it takes no more than this share of the rectangle."""


def corner_triangles(seen: Seen) -> Iterator[Finding]:
    """Corner patches that half a square gives with less fabric than a rectangle."""
    if seen.project.building.way is not Way.FOUNDATION:
        return
    found = []
    for piece in seen.build.strips:
        patch = patch_of(piece, seen.build, seen.numbers)
        if patch is not None and patch.square and patch.square**2 / 2 < _SAVING * patch.width * patch.length:
            found.append((piece.step + 1, patch))
    if found:
        say = seen.speaker
        number, patch = max(found, key=lambda one: one[1].square)
        names = patches([number for number, _ in found])
        what = (
            f"{names[:1].upper()}{names[1:]}: a corner triangle. A square cut "
            f"{say.cut_size(patch.square, patch.square)} and cut once from corner to corner gives patch {number} and "
            f"one more, instead of a piece cut {say.cut_size(patch.width, patch.length)} for each."
        )
        facts = {"square_in": patch.square, "wide_in": patch.width, "long_in": patch.length}
        place = seen.build.pieces[number - 1].opened
        yield Finding("foundation.corner-triangle", Severity.NOTE, what, names, number - 1, place, facts)
