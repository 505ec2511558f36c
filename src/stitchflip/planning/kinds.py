"""The kinds of block in a joined quilt: each is built once, however many there are."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from stitchflip.piecing import build_project
from stitchflip.planning.model import BlockKind
from stitchflip.project.model import Way
from stitchflip.project.numbers import effective

if TYPE_CHECKING:
    from stitchflip.finishing.quilt_model import QuiltPlan
    from stitchflip.piecing.model import Build, Point
    from stitchflip.project.model import Block, Project
    from stitchflip.project.numbers import Numbers

OWN = ("center", "building", "rounds", "steps", "patches")
"""What a kind of block may have of its own."""


_WITHOUT_CENTER = frozenset({Way.STRINGS, Way.FOUNDATION})
"""Ways that have no center, so that a block built in one of them does not take over that of the others."""


def as_block(project: Project, block: Block) -> Project:
    """The project as one kind of block has it."""
    own = {key: getattr(block, key) for key in OWN if getattr(block, key) is not None}
    if not own:
        return project
    way = (block.building or project.building).way
    without = {"center": None} if way in _WITHOUT_CENTER and block.center is None else {}
    return project.model_copy(update=without | own)


def block_kinds(project: Project, numbers: Numbers, quilt: QuiltPlan | None, base_half: Point) -> tuple[BlockKind, ...]:
    """Every kind of block with its build; one kind for a piece by itself.

    Args:
        project: The project.
        numbers: Its numbers.
        quilt: Where the blocks lie; None for a piece by itself.
        base_half: Half the base's width and height as cut, flat, inches.

    Raises:
        BuildError: If a block cannot be built.
    """
    if quilt is None or not project.blocks:
        return (BlockKind("", project.blocks_in_one, project, build_project(project, numbers, base_half)),)
    counts = Counter(placed.kind for placed in quilt.blocks)
    built: list[tuple[Project, Build]] = []
    kinds = []
    for index, block in enumerate(project.blocks):
        own = as_block(project, block)
        build = next((known for like, known in built if like == own), None)
        build = build or build_project(own, effective(own), base_half)
        built.append((own, build))
        kinds.append(BlockKind(block.name, counts[index], own, build))
    return tuple(kinds)
