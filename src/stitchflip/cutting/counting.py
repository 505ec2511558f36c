"""What counting alone forbids: pieces that no arrangement brings into a length of fabric.

A piece so wide that nothing fits beside it has its length of the fabric to itself. What is left of the length holds
only so many pieces over one another, and only so many side by side. Often that settles in a moment that a step of
the purchase cannot be saved, and nobody need search.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.cutting.laying import Lot

_TOLERANCE = 1e-6
_MOST_LAYERS = 8
"""Pieces over one another, or side by side, that are counted."""


def is_too_much_for(lots: Sequence[Lot], width: float, length: float) -> bool:
    """True when counting shows that the pieces do not come out of a length, however they lie.

    Args:
        lots: the pieces as they lie, not turned.
        width: usable width, inches.
        length: length of fabric for the cuts, inches.

    Returns:
        True: no arrangement exists. False: there may be one.

    Example:
        >>> from stitchflip.cutting.laying import Lot
        >>> lots = [Lot("Binding", 40, 2.5, 3, can_turn=True), Lot("1", 14, 3.25, 3, can_turn=True)]
        >>> is_too_much_for(lots, 40, 12.5), is_too_much_for(lots, 40, 14)
        (True, False)

    Source:
        Own reasoning: a line across the fabric meets no more than its width of pieces, a line along it no more than
        its length.
    """
    wanted = [lot for lot in lots if lot.count]
    while wanted:
        ways = [tuple(_ways(lot, width, length)) for lot in wanted]
        if not all(ways):
            return True
        narrowest = min(across for own in ways for across, _ in own)
        alone = [min(across for across, _ in own) + narrowest > width + _TOLERANCE for own in ways]
        if not any(alone):
            return _is_crowded(wanted, ways, width, length)
        length -= sum(
            min(along for _, along in own) * lot.count
            for lot, own, is_alone in zip(wanted, ways, alone, strict=True)
            if is_alone
        )
        wanted = [lot for lot, is_alone in zip(wanted, alone, strict=True) if not is_alone]
    return length < -_TOLERANCE


def _ways(lot: Lot, width: float, length: float) -> Iterator[tuple[float, float]]:
    """Across and along of a piece, as it can lie there at all."""
    ways = ((lot.across, lot.along), (lot.along, lot.across)) if lot.can_turn else ((lot.across, lot.along),)
    for across, along in ways:
        if across <= width + _TOLERANCE and along <= length + _TOLERANCE:
            yield across, along


def _is_crowded(
    lots: Sequence[Lot], ways: Sequence[Sequence[tuple[float, float]]], width: float, length: float
) -> bool:
    """True when the pieces are more than lie over one another or side by side."""
    least = [(min(across for across, _ in own), min(along for _, along in own)) for own in ways]
    counted = [(across, along, lot.count) for (across, along), lot in zip(least, lots, strict=True)]
    turned = [(along, across, count) for across, along, count in counted]
    return _overflows(counted, width, length) or _overflows(turned, length, width)


def _overflows(pieces: Sequence[tuple[float, float, int]], width: float, length: float) -> bool:
    """True when pieces, of which a line along crosses only so many, are together wider than so many widths."""
    for layers in range(1, _MOST_LAYERS + 1):
        high = sum(
            across * count for across, along, count in pieces if along * (layers + 1) > length + _TOLERANCE * layers
        )
        if high > layers * width + _TOLERANCE:
            return True
    return False
