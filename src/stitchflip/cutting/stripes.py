"""Striped fabrics and border prints, cut along the fabric so that every border shows the same stripes.

Borders that begin at the same place of the stripe are alike, and alike means that mitered corners match: seen from the
corner, one side is the other in a mirror. A print that also repeats along the fabric matches at the corners only when
each border is centered on it, and when the sides differ by whole repeats.
"""

from __future__ import annotations

from math import ceil, floor, isfinite
from typing import TYPE_CHECKING

from stitchflip.errors import CuttingError
from stitchflip.lengths import in_both_units
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

TOLERANCE = 1e-6
MITER_SPARE_IN = 2.0
"""Published: a mitered border is cut so much longer than the quilt and both border widths."""
_MOST_BORDERS = 1_000


@dataclass(frozen=True, slots=True)
class Stripes:
    """A striped or border print; inches."""

    apart: float | None = None
    """Across the fabric, from one stripe to the next like it; None: plain, any place will do."""
    along: float | None = None
    """How far apart the print repeats along the fabric; None: a stripe without a beginning."""
    start: float | None = None
    """From the left edge of the usable width to the middle of the first stripe that is wanted; None: not known."""

    def __post_init__(self) -> None:
        """Refuse stripes that nobody could measure."""
        for length in (self.apart, self.along):
            if length is not None and not (isfinite(length) and length >= 1 / 16):
                raise CuttingError(
                    what=f"a stripe that comes again after {length:g} in",
                    fix=f"Measure from one stripe to the next like it: {in_both_units(1 / 16)} or more.",
                    where="stripes",
                    code="cutting.no-repeat",
                )


@dataclass(frozen=True, slots=True)
class PerWidth:
    """Borders in phase side by side in one width of fabric."""

    surely: int
    """Wherever the stripes begin across."""
    at_best: int
    pitch: float
    """From one border to the next, inches."""


@dataclass(frozen=True, slots=True)
class BorderGroup:
    """Borders cut side by side from one length of fabric; inches."""

    lengths: tuple[float, ...]
    """As cut, longest first."""
    begins_at: float
    """Along the fabric; in phase with the first group when the print repeats along."""
    long: float
    """Fabric it takes."""


@dataclass(frozen=True, slots=True)
class BorderPlan:
    """All borders of a quilt from one striped fabric."""

    cut: float
    """Cut width, inches."""
    per_width: PerWidth
    groups: tuple[BorderGroup, ...]
    used_in: float
    """Length of fabric, straightening not in it; a repeat for the unknown start along is."""
    column_left_in: float
    """Width that stays beside the borders over the whole length, when they lie close together at one side."""
    between_in: float
    """Width of the strips that fall between borders; 0 when they touch."""


@dataclass(frozen=True, slots=True)
class CornerMatch:
    """Whether two sides meet in the same place of a print that repeats along them; inches, finished."""

    matches: bool
    other_centered_between: bool
    """True: the second side is centered halfway between two motifs, the first on a motif."""
    longer_by: float
    """So much longer the second side would match; 0 when it does."""
    shorter_by: float
    """So much shorter the second side would match; 0 when it does."""


def border_length(side: float, cut: float, spare: float = MITER_SPARE_IN) -> float:
    """Length to cut a border that is mitered, or trimmed after sewing.

    Args:
        side: of the quilt without borders, finished; inches.
        cut: width of the border as the rule counts it, inches.
        spare: on top of both widths.

    Example:
        >>> border_length(72, 4)
        82.0
    """
    return side + 2 * cut + spare


def per_width(stripes: Stripes, wide: float, cut: float) -> PerWidth:
    """How many borders in phase lie side by side.

    Args:
        stripes: the print.
        wide: usable width, inches.
        cut: cut width of a border, inches.

    Example:
        >>> per_width(Stripes(6), 42, 4.5)
        PerWidth(surely=6, at_best=7, pitch=6)
    """
    if not (isfinite(cut) and isfinite(wide) and cut > 0 and wide > 0):
        raise CuttingError(
            what=f"borders {cut:g} in wide from fabric {wide:g} in wide",
            fix="Give both widths above zero.",
            where="stripes",
            code="cutting.no-size",
        )
    if cut > wide + TOLERANCE:
        return PerWidth(0, 0, cut)
    if stripes.apart is None:
        count = floor(wide / cut + TOLERANCE)
        return PerWidth(count, count, cut)
    every = ceil(cut / stripes.apart - TOLERANCE)
    pitch = every * stripes.apart
    if stripes.start is not None:
        first = stripes.start + ceil((cut / 2 - stripes.start) / stripes.apart - TOLERANCE) * stripes.apart
        whole = floor((wide - cut / 2 - first) / stripes.apart + TOLERANCE) + 1
        count = ceil(max(whole, 0) / every)
        return PerWidth(count, count, pitch)
    surely = floor((wide - cut) / stripes.apart + TOLERANCE)
    return PerWidth(ceil(surely / every), ceil((surely + 1) / every), pitch)


def plan_borders(stripes: Stripes, wide: float, cut: float, lengths: Iterable[float]) -> BorderPlan:
    """How borders are cut along the fabric, all in phase, from as little length as does it.

    Args:
        stripes: the print.
        wide: usable width, inches.
        cut: cut width, inches.
        lengths: of the borders, as cut; inches.

    Raises:
        CuttingError: If the width surely holds no border, or there is nothing to cut.

    Example:
        >>> plan = plan_borders(Stripes(), 42, 12, [90, 90, 80, 80])
        >>> plan.used_in, [group.lengths for group in plan.groups]
        (170.0, [(90, 90, 80), (80,)])
    """
    ordered = sorted(lengths, reverse=True)
    if not ordered or len(ordered) > _MOST_BORDERS or not all(isfinite(one) and one > 0 for one in ordered):
        raise CuttingError(
            what=f"{len(ordered)} borders, the shortest {min(ordered, default=0):g} in long",
            fix=f"Give every border a length above zero, at most {_MOST_BORDERS} of them.",
            where="stripes",
            code="cutting.no-size",
        )
    side = per_width(stripes, wide, cut)
    if side.surely < 1:
        raise CuttingError(
            what=f"a border {in_both_units(cut)} wide does not surely lie in phase in {in_both_units(wide)} of width",
            fix="Cut it narrower, or measure where the stripe lies and give that.",
            where="stripes",
            code="cutting.no-width",
        )
    parts = [tuple(ordered[at : at + side.surely]) for at in range(0, len(ordered), side.surely)]
    groups = _one_after_the_other(parts, stripes.along)
    used = groups[-1].begins_at + groups[-1].long + (stripes.along or 0.0)
    most = min(side.surely, len(ordered))
    return BorderPlan(
        cut=cut,
        per_width=side,
        groups=groups,
        used_in=used,
        column_left_in=max(wide - (most - 1) * side.pitch - cut, 0.0),
        between_in=side.pitch - cut if most > 1 and side.pitch > cut + TOLERANCE else 0.0,
    )


def _one_after_the_other(parts: Sequence[tuple[float, ...]], along: float | None) -> tuple[BorderGroup, ...]:
    """Groups along the fabric; each but the last is followed by the rest of its last repeat."""

    def pitch(part: tuple[float, ...]) -> float:
        return part[0] if along is None else ceil(part[0] / along - TOLERANCE) * along

    last = max(range(len(parts)), key=lambda number: (round(pitch(parts[number]) - parts[number][0], 6), number))
    order = [part for number, part in enumerate(parts) if number != last] + [parts[last]]
    groups: list[BorderGroup] = []
    at = 0.0
    for part in order:
        groups.append(BorderGroup(part, at, part[0]))
        at += pitch(part)
    return tuple(groups)


def corner_match(one: float, other: float, along: float) -> CornerMatch:
    """Whether the print meets itself at the corners of two neighboring sides.

    Args:
        one: finished length of a side of the quilt inside its borders, centered on a motif; inches.
        other: the same of its neighbor.
        along: how far apart the print repeats along the border; it looks the same in a mirror on a motif and halfway
            between two.

    Returns:
        The match. Sides that differ by whole repeats match: centered on a motif both when their number is even, the
        second one between two motifs when it is odd.

    Example:
        >>> corner_match(60, 72, 6).matches, corner_match(60, 72, 5).longer_by
        (True, 3)
    """
    if not all(isfinite(length) and length > 0 for length in (one, other, along)):
        raise CuttingError(
            what=f"sides of {one:g} and {other:g} in, a print that repeats every {along:g} in",
            fix="Give all three above zero.",
            where="stripes",
            code="cutting.no-size",
        )
    repeats = (other - one) / along
    over = (other - one) - floor(repeats + TOLERANCE) * along
    if over < TOLERANCE:
        return CornerMatch(True, round(repeats) % 2 == 1, 0.0, 0.0)
    return CornerMatch(False, False, along - over, over)
