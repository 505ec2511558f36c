"""One letter for each fabric, the same in every drawing and table."""

from __future__ import annotations

from string import ascii_uppercase
from typing import TYPE_CHECKING

from stitchflip.planning.model import Letter

if TYPE_CHECKING:
    from stitchflip.piecing.model import Build
    from stitchflip.project.model import Project


def letters_for(project: Project, build: Build) -> tuple[Letter, ...]:
    """Letters in the order the fabrics are picked up: strips as sewn, then the center, then the binding."""
    used = [piece.fabric for piece in build.strips]
    used += [build.pieces[0].fabric, project.binding.fabric]
    colors = {fabric.name: fabric.color for fabric in project.fabrics}
    names = list(dict.fromkeys(name for name in used if name))
    return tuple(
        Letter(_letter(place), name, colors.get(name, "#b0a79b"), place % 8) for place, name in enumerate(names)
    )


def _letter(place: int) -> str:
    """A, B ... Z, AA, AB ..."""
    if place < len(ascii_uppercase):
        return ascii_uppercase[place]
    return _letter(place // len(ascii_uppercase) - 1) + ascii_uppercase[place % len(ascii_uppercase)]
