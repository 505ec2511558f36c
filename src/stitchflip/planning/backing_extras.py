"""A backing fabric that also gives the sleeve, the label and what lies under triangles and borders: one purchase."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.lengths import Length, Rounding, round_to
from stitchflip.planning.findings.words import listed
from stitchflip.project.model import Fabric

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.model import Piece
    from stitchflip.finishing.model import BackingChoice, BackingPlan
    from stitchflip.project.model import Project
    from stitchflip.project.numbers import Numbers


def with_extras(project: Project, numbers: Numbers, backing: BackingPlan, pieces: Sequence[Piece]) -> BackingPlan:
    """The backing with what else is cut from its fabric, in rows of their own after the backing.

    Args:
        project: For the unit, and whether the fabric is listed by itself (then it has a purchase of its own).
        numbers: For steps and least purchase.
        backing: The backing alone.
        pieces: What else is cut from its fabric.
    """
    if not pieces or any(fabric.name == backing.fabric for fabric in project.fabrics):
        return backing
    from stitchflip.cutting import plan_fabric

    fabric = Fabric(name=backing.fabric, usable_width=Length.of_inches(backing.usable_width))
    rows = plan_fabric(fabric, tuple(pieces), numbers, project.working, project.units).used_in
    names = listed(list(dict.fromkeys(piece.name[:1].lower() + piece.name[1:] for piece in pieces)))

    def longer(choice: BackingChoice) -> BackingChoice:
        need = choice.length_in + rows / (1 - numbers.prewash_along)
        bought = max(round_to(need, numbers.buy_in_steps_of, Rounding.UP), numbers.buy_at_least)
        said = f"The same length gives {names}."
        return replace(choice, length_in=need, buy_in=bought, remark=f"{choice.remark} {said}".strip())

    return replace(backing, best=longer(backing.best), others=tuple(longer(other) for other in backing.others))
