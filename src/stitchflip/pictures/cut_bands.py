"""The cuts across a fabric as bands, those that are cut alike drawn once."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.cutting.model import FabricPlan

_MANY_BANDS = 8
"""More cuts than these across one fabric: those cut alike are drawn once, with how many there are."""


@dataclass(frozen=True, slots=True)
class Band:
    """One cut across the fabric: a row or a strip, with what it is cut into."""

    group: int
    """Which setting of the ruler it belongs to, 1 for the first."""
    what: str
    """"strip" or "row"."""
    high: float
    pieces: tuple[tuple[str, float], ...]
    rest: float
    says: str
    """What is written beside a piece's name: its "length", its "size", or that the strip stays "whole"."""
    alike: int = 1
    """How many such bands, drawn once."""
    in_column: bool = False
    """What is left beside it is part of a column, named once."""


def pieces_in(cut: FabricPlan) -> int:
    """How many pieces a fabric is cut into."""
    rows = sum(len(row.pieces) for row in cut.rows)
    return rows + sum(len(strip.pieces) for strips in cut.strip_plans for strip in strips.strips)


def together(bands: list[Band]) -> list[Band]:
    """Whole strips of one setting drawn once, with their count; of many bands all that are cut alike."""
    out: list[Band] = []
    are_many = len(bands) > _MANY_BANDS
    for band in bands:
        like = next((place for place, other in enumerate(out) if _are_alike(band, other, are_many=are_many)), None)
        if like is None:
            out.append(band)
        else:
            out[like] = replace(out[like], alike=out[like].alike + 1)
    return out


def _are_alike(one: Band, other: Band, *, are_many: bool) -> bool:
    """True for two bands of one setting that are drawn once."""
    if one.group != other.group or one.says != other.says:
        return False
    return one.says == "whole" or (are_many and one.pieces == other.pieces)
