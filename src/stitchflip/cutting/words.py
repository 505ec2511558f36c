"""Sentences about what is taken from the shelf and what cannot be cut."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.model import HandSheet
    from stitchflip.lengths import Speaker
    from stitchflip.project.model import Fabric

_WORTH_KEEPING_IN = 1.5
"""A column narrower than this goes to the stuffing bag and is not mentioned."""


def from_hand_words(sheets: Sequence[HandSheet], precut: Sequence[tuple[str, int]], say: Speaker) -> tuple[str, ...]:
    """What is taken from fabric on hand, one phrase for each piece.

    Args:
        sheets: pieces that are cut.
        precut: precut strips that are used, by name, and how many.
        say: the maker's voice.
    """
    return (*(_sheet(sheet, say) for sheet in sheets), *(f"{name}: {count}" for name, count in precut))


def _sheet(sheet: HandSheet, say: Speaker) -> str:
    side = sheet.long if sheet.along == "long" else sheet.wide
    strips = sum(count for _, count in sheet.strips)
    cuts = [f"{strips} strip{'s' * (strips != 1)} along its {say.near(side)}"] if strips else []
    cuts += [f"{len(sheet.rows)} row{'s' * (len(sheet.rows) != 1)} of pieces"] if sheet.rows else []
    widths = f"{say.near(sheet.used_in)} of {say.near(sheet.usable_stack)} used"
    keeps_column = sheet.column_left_in >= _WORTH_KEEPING_IN
    straightened = sheet.column_left_in - side + sheet.usable_length
    column = (
        f", a column {say.margin(sheet.column_left_in)} wide is left ({say.margin(straightened)} once straightened)"
        if keeps_column
        else ""
    )
    return f"{sheet.name} ({say.size(sheet.wide, sheet.long)}): {' and '.join(cuts)}, {widths}{column}"


def why_left_out(fabric: Fabric, left_out: Sequence[str], missing_in: float, width: float, say: Speaker) -> str:
    """Why pieces are left out, one sentence; "" when none is.

    Args:
        fabric: the fabric.
        left_out: labels of the pieces.
        missing_in: length of fabric that would give them, when nothing can be bought.
        width: usable width.
        say: the maker's voice.
    """
    if not left_out:
        return ""
    names = ", ".join(dict.fromkeys(left_out))
    if fabric.only_on_hand:
        return (
            f"What is on hand of {fabric.name} does not give {names}: {say.shortage(missing_in)} of length are missing."
        )
    return f"{fabric.name} is {say.near(width)} wide: too narrow for {names}."
