"""Cutting lists of one dimension as they come up at home, invented and always the same.

Up to sixty pieces in quarter inches, strips of full width without limit, leftovers of a few lengths in small numbers
at half price, so that they are used up where that saves fabric.
"""

from __future__ import annotations

from collections import Counter
from random import Random

from bench.cutting.jobs import Item, Job, Known, Stock

HOW_MANY = 24
_WIDTHS = (160, 168, 172)
"""Usable widths of 40, 42 and 43 in."""


def home_lists() -> list[Job]:
    """All of them."""
    return [_list(number) for number in range(1, HOW_MANY + 1)]


def _list(number: int) -> Job:
    chance = Random(number)
    width = chance.choice(_WIDTHS)
    kinds = [chance.randint(16, width) for _ in range(chance.randint(3, 12))]
    pieces = Counter(chance.choice(kinds) for _ in range(chance.randint(12, 60)))
    leftovers = Counter(chance.randint(40, width - 4) for _ in range(chance.randint(2, 8)))
    return Job(
        name=f"home list {number}",
        aim="lengths",
        stocks=(
            Stock(width, 1, None, 2 * width),
            *(Stock(length, 1, count, length) for length, count in sorted(leftovers.items(), reverse=True)),
        ),
        items=tuple(Item(length, 1, count, can_turn=False, value=0) for length, count in sorted(pieces.items())),
        known=Known(),
        unit="1/4 inch",
    )
