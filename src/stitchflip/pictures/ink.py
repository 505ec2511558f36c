"""Colors and weights of the pictures: ink on warm paper, fabric in its own color, lines that read on both.

Contrast is reckoned as in WCAG 2.2 (https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio): a line and the fill
beside it must differ 3 to 1. No single ink does that on both oat and midnight, so lines between patches are
ink in a pale casing: on light fabric the ink is seen, on dark fabric the casing.
"""

from __future__ import annotations

from functools import lru_cache

INK = "#22262b"
SOFT = "#6a645b"
"""Dimension lines and side remarks."""
SOFT_INK = "#4a453e"
"""Lines between patches that are there already."""
PAPER = "#fdfbf6"
CASING = "#fffdf9"
HALO = "#ffffff"
BATTING = "#f4ecdb"
BASE_EDGE = "#8a8071"
THREAD = "#9c2f26"
"""The seam of the moment; told from other lines by its stitches, not by its color."""
CUT_AWAY = "#e4dccb"

HAIR = 0.45
THIN = 0.6
FIRM = 0.9
STRONG = 1.2
"""Line weights on paper, points."""

LEAST_CONTRAST = 3.0
_DARK = 0.18
"""Below this luminance a fill is dark: marks on it are pale."""


def channels(color: str) -> tuple[int, int, int]:
    """Red, green and blue, 0 to 255, of a CSS hex color.

    Example:
        >>> channels("#fff"), channels("#22262b")
        ((255, 255, 255), (34, 38, 43))
    """
    digits = color.lstrip("#")
    if len(digits) == 3:
        digits = "".join(digit * 2 for digit in digits)
    return int(digits[0:2], 16), int(digits[2:4], 16), int(digits[4:6], 16)


@lru_cache(maxsize=512)
def luminance(color: str) -> float:
    """Relative luminance, 0 black to 1 white.

    Source:
        WCAG 2.2, relative luminance, https://www.w3.org/TR/WCAG22/#dfn-relative-luminance
    """
    parts = (value / 255 for value in channels(color))
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colors, 1 to 21.

    Example:
        >>> round(contrast("#000000", "#ffffff"), 3)
        21.0
    """
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


@lru_cache(maxsize=512)
def pale(color: str, share: float) -> str:
    """The color thinned with paper.

    Args:
        color: CSS hex color.
        share: part of paper in the mix, 0 to 1.

    Example:
        >>> pale("#000000", 0.0), pale("#000000", 1.0) == PAPER
        ('#000000', True)
    """
    mixed = (round(c + (p - c) * share) for c, p in zip(channels(color), channels(PAPER), strict=True))
    return "#" + "".join(f"{value:02x}" for value in mixed)


def is_dark(color: str) -> bool:
    """True for a fill on which marks must be pale."""
    return luminance(color) < _DARK
