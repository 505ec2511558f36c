"""The pen a piece is drawn anew with: finished sizes become others, and the seams are added afterward.

A cut size is a finished size and two seams. Doubling a cut 3½ doubles its seams too and gives a piece half an inch
too large; so seams are taken off, what shows is scaled or converted, and the new seams are put on.
"""

from __future__ import annotations

from dataclasses import field
from enum import StrEnum

from stitchflip.lengths import CM_PER_INCH, Length, Rounding, Unit, round_to
from stitchflip.project.house import HOUSE, House
from stitchflip.values import dataclass

CUT_STEP = House(1 / 8, 0.5, "cut widths are rounded to")
"""What a ruler shows without reading between its lines."""
FINISHED_STEP = House(1 / 4, 0.5, "finished sizes of another system are rounded to")
FINISHED_STEP_LARGE = House(1 / 2, 1, "finished sizes of another system are rounded to, from 4 in (10 cm) on")
LARGE_FROM = House(4, 10, "a finished size is large from here on")
PLACE_STEP = House(1 / 16, 0.1, "places on the base are rounded to")
AWKWARD_FROM = House(1 / 32, 0.1, "a cut size is said to be rounded when it is off by this")
HALF_SQUARE_SEAMS = 2 + 2**0.5
"""A half square's short side loses so many seams: one at each side and the long one, which lies slanted."""


class Keep(StrEnum):
    """What stays as it is when a piece gets another size."""

    STRIPS = "strips"
    """Strip widths stay; there are more or fewer of them."""
    PROPORTIONS = "proportions"
    """The number of strips stays; center and strips grow or shrink."""


@dataclass(frozen=True, slots=True)
class Awkward:
    """A cut size that no ruler shows, and the one it was rounded to."""

    what: str
    """Such as "round 2" or "the center"."""
    exact_in: float
    cut_in: float


@dataclass(frozen=True, slots=True)
class Pen:
    """How sizes of one piece become those of another."""

    before: Unit
    after: Unit
    seam_before: float
    """Seam allowance as drawn before, inches."""
    seam_after: float
    strips: float = 1.0
    """Factor of what shows of a strip."""
    x: float = 1.0
    """Factor of what lies across the picture."""
    y: float = 1.0
    awkward: list[Awkward] = field(default_factory=list)
    """Sizes that were rounded, as they are met."""

    @property
    def redrafts(self) -> bool:
        """True when the piece goes from one system to the other."""
        return self.before is not self.after

    def cut(self, cut: Length, factor: float, what: str, *, seams: float = 2.0) -> Length:
        """A cut size: the seams off, what shows made larger or smaller, the seams on.

        Args:
            cut: as cut before.
            factor: of what shows.
            what: what it is, for the list of awkward sizes.
            seams: how many seams are in it.
        """
        finished = (cut.inches - seams * self.seam_before) * factor
        grid = CUT_STEP.of(self.after)
        if self.redrafts:
            exact = redrafted(finished, self.after) + seams * self.seam_after
        else:
            exact = finished + seams * self.seam_after
        made = max(round_to(exact, grid, Rounding.NEAREST), round_to(2 * self.seam_after + grid, grid, Rounding.UP))
        if not self.redrafts and abs(exact - made) >= AWKWARD_FROM.of(self.after) - 1e-6:
            self.awkward.append(Awkward(what, exact, made))
        return exactly(made, self.after)

    def strip(self, cut: Length, what: str) -> Length:
        """A strip's cut width."""
        return cut if self.is_idle(self.strips) else self.cut(cut, self.strips, what)

    def plain(self, size: Length, factor: float) -> Length:
        """A size without seams in it, such as a squared-up one."""
        if self.is_idle(factor):
            return size
        exact = size.inches * factor
        if self.redrafts:
            return exactly(redrafted(exact, self.after), self.after)
        grid = FINISHED_STEP.of(self.after)
        return exactly(max(round_to(exact, grid, Rounding.NEAREST), grid), self.after)

    def place(self, at: tuple[float, float]) -> tuple[float, float]:
        """A place right of and above the center mark, in the project's unit before and after."""
        return self.number(at[0], self.x), self.number(at[1], self.y)

    def number(self, value: float, factor: float) -> float:
        """A distance with a sign, in the project's unit before and after."""
        if self.is_idle(factor):
            return value
        inches = (value if self.before is Unit.INCH else value / CM_PER_INCH) * factor
        return as_number(inches, self.after)

    def is_idle(self, factor: float) -> bool:
        """True when nothing changes, so that an odd size of the maker's stays as it is."""
        return not self.redrafts and factor == 1


def as_number(inches: float, unit: Unit) -> float:
    """A place in inches as a number of the unit, on the grid of places."""
    grid = PLACE_STEP.of(unit)
    steps = round(round_to(inches, grid, Rounding.NEAREST) / grid)
    return steps / 16 if unit is Unit.INCH else steps / 10


def redrafted(finished_in: float, unit: Unit) -> float:
    """A finished size as makers of the other system draft it, inches: a 12 in block becomes 30 cm, not 30.5.

    Args:
        finished_in: inches.
        unit: the new system.

    Example:
        >>> round(redrafted(12, Unit.CM) * 2.54, 6), redrafted(30 / 2.54, Unit.INCH)
        (30.0, 12.0)
    """
    is_large = finished_in >= LARGE_FROM.of(unit) - 1e-6
    grid = (FINISHED_STEP_LARGE if is_large else FINISHED_STEP).of(unit)
    return max(round_to(finished_in, grid, Rounding.NEAREST), grid)


def exactly(inches: float, unit: Unit) -> Length:
    """A size on a grid of the unit as an exact length."""
    if unit is Unit.INCH:
        return Length.of_inches(round(inches * 64) / 64)
    return Length.of_cm(round(inches * CM_PER_INCH * 100) / 100)


def setting(length: Length | None, house: str, before: Unit, after: Unit) -> Length | None:
    """A maker's own number in the other system: as far from the house number there as it was here.

    Args:
        length: her number; None stays None.
        house: name of the house number it stands instead of.
        before: the unit it was chosen in.
        after: the other unit.

    Returns:
        None where she had the house number itself, so that the house number of the other system counts.

    Example:
        >>> setting(Length.of_inches(0.25), "seam", Unit.INCH, Unit.CM) is None
        True
        >>> setting(Length.of_inches(0.375), "reach", Unit.INCH, Unit.CM).cm
        0.9
    """
    if length is None:
        return None
    share = length.inches / HOUSE[house].of(before)
    if abs(share - 1) < 1e-4:
        return None
    return _nice(share * HOUSE[house].of(after), after)


def _nice(inches: float, unit: Unit) -> Length:
    """On a grid that suits its size."""
    if unit is Unit.INCH:
        grid = 1 / 16 if inches < 1 / 2 else 1 / 8 if inches < 1 else 1 / 4
    else:
        grid = (0.05 if inches * CM_PER_INCH < 1 else 0.5) / CM_PER_INCH
    return exactly(round_to(inches, grid, Rounding.NEAREST), unit)
