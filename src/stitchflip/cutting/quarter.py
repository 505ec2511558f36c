"""Would one fat quarter do? Named as another way to buy when everything fits one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.purchase import FAT_QUARTER_IN
from stitchflip.cutting.rows import Rectangle, lay_in_rows
from stitchflip.cutting.tipping import Bought

if TYPE_CHECKING:
    from stitchflip.lengths import Unit
    from stitchflip.project.numbers import Numbers


def fits_fat_quarter(bought: Bought, numbers: Numbers, unit: Unit) -> bool:
    """Whether one fat quarter, not measured yet and straightened on two sides, gives all that is bought.

    Strips run along its longer side. Whole strips for a binding are never taken from one: their number was
    counted for the width of the fabric.

    Args:
        bought: what new fabric would be cut into.
        numbers: straightening of a fat quarter.
        unit: fat quarters are cut from half yards or from half meters.
    """
    short, long = (side - numbers.fat_quarter_straightening for side in FAT_QUARTER_IN[unit])
    area = sum(one.wide * one.long * one.count for one in bought.rows.wanted)
    if area > short * long + 1e-6:
        return False
    swapped = [Rectangle(one.label, one.long, one.wide, one.count, one.can_turn) for one in bought.rows.wanted]
    rows = lay_in_rows(long, swapped)
    if rows.left_out:
        return False
    stack = rows.length_in
    for group in bought.groups:
        if not group.new_strips:
            continue
        taken = group.width * sum(piece.length for piece in group.pieces)
        count = None if group.plan.is_whole or taken > 2 * short * long else group.count_at(long)
        if count is None:
            return False
        stack += count.found * group.width
    return stack <= short + 1e-6
