"""What another size means at the shop and at the table: the two plans side by side."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.planning.json_values import wide_and_long
from stitchflip.project.sizes import wanted_size
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.planning.model import Finding, Plan

WideLong = tuple[float, float]


@dataclass(frozen=True, slots=True)
class PurchaseChange:
    """What is bought of one fabric before and after, inches of length off the bolt."""

    fabric: str
    before_in: float
    after_in: float

    @property
    def more_in(self) -> float:
        """Inches more; below zero they are saved."""
        return self.after_in - self.before_in


@dataclass(frozen=True, slots=True)
class WhatChanged:
    """Two plans of one piece, each number before and after."""

    squared_up: tuple[WideLong, WideLong]
    """Wide × long, inches; of joined blocks, the whole quilt's; of panels cut apart, that of each."""
    strips: tuple[int, int]
    """Strips sewn to all pieces or blocks alike together."""
    bases: tuple[WideLong, WideLong]
    """One base as cut, wide × long, inches."""
    how_many_bases: tuple[int, int]
    purchases: tuple[PurchaseChange, ...]
    """Every fabric of either plan; of fabrics that are the same before and after too."""
    backing: PurchaseChange
    binding_strips: tuple[int, int]
    binding_need: tuple[float, float]
    """Length of binding for one piece, inches."""
    gone: tuple[Finding, ...]
    """Findings of a kind that the new plan has no longer."""
    come: tuple[Finding, ...]
    """Findings of a kind that the old plan did not have."""


def what_changed(before: Plan, after: Plan) -> WhatChanged:
    """The differences of two plans.

    Args:
        before: the plan as it was.
        after: the plan at the other size; its fabrics are known by their names.
    """
    old = {fabric.fabric: fabric.buy_in for fabric in before.fabrics}
    new = {fabric.fabric: fabric.buy_in for fabric in after.fabrics}
    known, seen = ({one.code for one in plan.findings} for plan in (before, after))
    return WhatChanged(
        squared_up=(_size(before), _size(after)),
        strips=(_strips(before), _strips(after)),
        bases=(
            wide_and_long(before, before.base.wide, before.base.high),
            wide_and_long(after, after.base.wide, after.base.high),
        ),
        how_many_bases=(before.project.bases, after.project.bases),
        purchases=tuple(
            PurchaseChange(name, old.get(name, 0.0), new.get(name, 0.0)) for name in dict.fromkeys([*old, *new])
        ),
        backing=PurchaseChange(after.backing.fabric, before.backing.best.buy_in, after.backing.best.buy_in),
        binding_strips=(before.binding.strips, after.binding.strips),
        binding_need=(before.binding.need, after.binding.need),
        gone=tuple(one for one in before.findings if one.code not in seen),
        come=tuple(one for one in after.findings if one.code not in known),
    )


def _size(plan: Plan) -> WideLong:
    """Of a quilt the whole, of panels cut apart each one."""
    panel = None if plan.panels is None else wanted_size(plan.project)
    if panel is not None:
        return panel
    whole = plan.quilt or plan.square_up
    return wide_and_long(plan, whole.wide, whole.high)


def _strips(plan: Plan) -> int:
    each = sum(kind.count * len(kind.build.strips) for kind in plan.kinds)
    return plan.project.how_many * each
