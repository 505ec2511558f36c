"""What a starter piece consists of, and the parts that several of them share."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Mapping


@dataclass(frozen=True, slots=True)
class Starter:
    """A small piece in one way of building; braces in the texts stand for sizes."""

    piece: str
    """What it is, in a word or two."""
    strips: str
    shape: str
    building: str
    fabrics: tuple[tuple[str, str], ...]
    """Name and color."""
    inches: Mapping[str, str]
    centimeters: Mapping[str, str]


FOUR_PAPERS = (("Print", "#d98e5f"), ("Light", "#efe6d2"), ("Middle", "#9fb4a6"), ("Dark", "#3f4c5c"))

SQUARE_CENTER = """\
[center]                      # the first piece, by its cut size
fabric = "Print"
shape = "square"
cut = "{center}"
"""
