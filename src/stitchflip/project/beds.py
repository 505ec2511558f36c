"""Mattresses by their names, each in the unit its country makes it in.

Lists disagree by an inch or two, and a mattress by itself may be half an inch off: whoever can measure the bed
writes down its own measures instead.
"""

from __future__ import annotations

from types import MappingProxyType

from stitchflip.lengths import Length
from stitchflip.project.words import bare
from stitchflip.values import dataclass


@dataclass(frozen=True, slots=True)
class Mattress:
    """Top of a mattress, wide × long."""

    wide: Length
    long: Length


def _inches(wide: float, long: float) -> Mattress:
    return Mattress(Length.of_inches(wide), Length.of_inches(long))


def _cm(wide: float, long: float) -> Mattress:
    return Mattress(Length.of_cm(wide), Length.of_cm(long))


MATTRESSES: MappingProxyType[str, Mattress] = MappingProxyType(
    {
        # United States. Also printed: crib 27 x 52, twin 38 x 75 and 37 1/2 x 74 1/2, full 53 x 75, king 78 or 79
        # wide; the long twin stands as 36 x 80 in several quilt lists, as 38 x 80 or 39 x 80 in mattress lists.
        "crib": _inches(28, 52),
        "twin": _inches(39, 75),
        "long twin": _inches(39, 80),
        "full": _inches(54, 75),
        "queen": _inches(60, 80),
        "king": _inches(76, 80),
        "California king": _inches(72, 84),
        "UK small single": _cm(75, 190),
        "UK single": _cm(90, 190),
        "UK small double": _cm(120, 190),
        "UK double": _cm(135, 190),
        "UK king": _cm(150, 200),
        "UK super king": _cm(180, 200),
        "Europe 80": _cm(80, 200),
        "Europe 90": _cm(90, 200),
        "Europe 100": _cm(100, 200),
        "Europe 140": _cm(140, 200),
        "Europe 160": _cm(160, 200),
        "Europe 170": _cm(170, 200),
        "Europe 180": _cm(180, 200),
        "Europe 200": _cm(200, 200),
    }
)
"""Name -> wide × long."""

_ALSO = MappingProxyType(
    {
        "twin XL": "long twin",
        "extra long twin": "long twin",
        "double": "full",
        "Cal king": "California king",
        "UK superking": "UK super king",
    }
)


def mattress_named(text: str) -> str | None:
    """The listed name of a mattress; None when no mattress of that name is listed.

    Args:
        text: as typed; capitals, spaces and hyphens do not matter.

    Example:
        >>> mattress_named("uk Double"), mattress_named("double"), mattress_named("sofa")
        ('UK double', 'full', None)
    """
    wanted = bare(text)
    listed = {bare(name): name for name in MATTRESSES} | {bare(other): name for other, name in _ALSO.items()}
    return listed.get(wanted)
