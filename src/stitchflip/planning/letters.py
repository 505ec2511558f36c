"""One letter for each fabric, the same in every drawing and table."""

from __future__ import annotations

from string import ascii_uppercase
from typing import TYPE_CHECKING

from stitchflip.planning.model import Letter

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from stitchflip.piecing.model import Build
    from stitchflip.project.model import Project


def letters_for(project: Project, builds: Sequence[Build], others: Iterable[str] = ()) -> tuple[Letter, ...]:
    """Letters in the order the fabrics are picked up: strips as sewn, then the center, then what goes round it.

    Args:
        project: The project.
        builds: The builds of its kinds of block.
        others: Names of all fabrics that anything is cut from.
    """
    used: list[str] = []
    for build in builds:
        for piece in build.strips:
            used += [section.fabric for section in piece.sections] or [piece.fabric]
        used.append(build.pieces[0].fabric)
    used += [project.binding.fabric, *others]
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
