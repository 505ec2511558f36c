"""What is asked of every solver, and what each answers: plain numbers, the same for ours and for the peers."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Any

Placed = tuple[int, int, int, bool]
"""Item, distance from the left edge, distance from the lower edge, turned a quarter."""


@dataclass(frozen=True, slots=True)
class Stock:
    """Equal sheets, or equal lengths (then `long` is 1)."""

    wide: int
    long: int | None
    """None: open, to be made small."""
    count: int | None
    """None: as many as it takes."""
    cost: int


@dataclass(frozen=True, slots=True)
class Item:
    """Equal pieces."""

    wide: int
    long: int
    count: int
    can_turn: bool
    value: int


@dataclass(frozen=True, slots=True)
class Known:
    """What others say about a job; every number is for exactly this job."""

    reached: int | None = None
    """Value of a plan that somebody has: no bound may pass it."""
    limit: int | None = None
    """Bound that somebody has: no plan may pass it."""

    @property
    def optimum(self) -> int | None:
        """Where both meet."""
        return self.reached if self.reached == self.limit else None


@dataclass(frozen=True, slots=True)
class Job:
    """One question."""

    name: str
    aim: str
    """"length" (one open sheet), "cost" (sheets of given sizes), "value" (one sheet, not everything), or "lengths"
    (one dimension)."""
    stocks: tuple[Stock, ...]
    items: tuple[Item, ...]
    known: Known
    stages: int = 2
    """2, 3; 0 is as many as it takes."""
    trims: bool = True
    """One more cut may bring a piece to size."""
    same_stack: bool = False
    first_cut: str = "across"
    """"across" the width, "along" the length, "either"."""
    tallest_strip: int | None = None
    unit: str = ""

    @property
    def is_small_best(self) -> bool:
        """True: the smaller the value the better."""
        return self.aim != "value"

    @property
    def pieces(self) -> int:
        """How many pieces in all."""
        return sum(item.count for item in self.items)

    @property
    def area_bound(self) -> int:
        """Length that the area of the pieces fills (open sheet)."""
        area = sum(item.wide * item.long * item.count for item in self.items)
        return -(-area // self.stocks[0].wide)

    def but(self, **changes: Any) -> Job:  # noqa: ANN401  any field of this class
        """The same with changes."""
        return replace(self, **changes)

    def better(self, one: int, other: int) -> bool:
        """Whether one value is better than another."""
        return one < other if self.is_small_best else one > other


@dataclass(frozen=True, slots=True)
class CutSheet:
    """A sheet and what lies on it."""

    stock: int
    times: int
    placed: tuple[Placed, ...]


@dataclass(frozen=True, slots=True)
class Reply:
    """What a solver answered."""

    value: int | None = None
    """None: no plan."""
    bound: int | None = None
    """None: it proves nothing."""
    proved: bool = False
    seconds: float = 0.0
    sheets: tuple[CutSheet, ...] = ()
    note: str = ""
    near: float | None = None
    """Seconds until the plan was proved or at most 1 % from the bound; ours only."""
    is_deeper: bool = False
    """True: right, but cut in more stages or in taller strips than asked for, so it is no plan of the same kind."""
    faults: tuple[str, ...] = field(default=())
    """What the checks say; a reply with faults does not count."""
