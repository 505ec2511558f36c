"""Which letters the pictures and pages are set in, and how wide a word is before anything is drawn.

Text on a picture is placed by arithmetic: two labels that would touch are moved apart before the file is
written, so the width of every word must be known without asking a font engine. The advance widths of the one
family that is shipped (Source Sans Pro, SIL Open Font License) are kept here as a table.
"""

from __future__ import annotations

import re
from importlib import import_module
from importlib.util import find_spec

FAMILIES = ("Source Sans Pro", "Libertinus Serif")
"""For Typst, the wished one first; the second comes inside Typst, so that text can never vanish."""

CSS_FAMILIES = "'Source Sans Pro', 'Source Sans 3', 'Helvetica Neue', Arial, sans-serif"
"""For SVG and HTML; no double quotes, so that it fits an attribute."""

CAP_HEIGHT = 0.66
"""Height of capitals and figures over the baseline, parts of the size."""

DESCENT = 0.21
"""How far g and y hang below the baseline, parts of the size."""

_PACKAGE = "font_source_sans_pro"
_UNKNOWN = 560
"""Thousandths of the size for a sign that is not in the table."""

_FRACTION = re.compile(r"(?:(?<=\d)\u2009)?(?<![\d/])(\d{1,2})/(\d{1,2})(?![\d/])")
_RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
_THIN_SPACE = "\u2009"
_NARROW_SPACE = "\u202f"


def font_folder() -> str | None:
    """Folder of the shipped font files, for a typesetter that wants to be told; None when they are not installed."""
    if find_spec(_PACKAGE) is None:
        return None
    return str(import_module(_PACKAGE).font_directory)


def drawn(text: str) -> str:
    """The text as it is set.

    Fractions of sixteenths are built of small figures like those that have a sign of their own; the thin space,
    which the family lacks, becomes the narrow one it has, and before a built fraction none is needed.

    Example:
        >>> drawn("3\u20095/16 in"), drawn("2½ in")
        ('3⁵⁄₁₆ in', '2½ in')
    """
    return _FRACTION.sub(_built, text).replace(_THIN_SPACE, _NARROW_SPACE)


def _built(found: re.Match[str]) -> str:
    return f"{found[1].translate(_RAISED)}\u2044{found[2].translate(_LOWERED)}"


def width_pt(text: str, size_pt: float, *, is_bold: bool = False) -> float:
    """Width of a line of text.

    Args:
        text: one line.
        size_pt: size of the letters in points.
        is_bold: in the bold weight.

    Returns:
        Points; kerning is left out, so that a real line is never wider by more than a hair.

    Example:
        >>> width_pt("2½ in", 10.0) < width_pt("2½ in", 10.0, is_bold=True) < width_pt("12½ in", 10.0, is_bold=True)
        True
    """
    widths = _BOLD_WIDTHS if is_bold else _REGULAR_WIDTHS
    return sum(widths.get(sign, _UNKNOWN) for sign in drawn(text)) * size_pt / 1000


# Advance width in thousandths of the size: signs of that width.
_REGULAR = {
    86: "\u2044",
    125: "\u202f",
    200: " ",
    202: "\u00a0",
    241: "|¦",
    246: "iìíîïĩīĭįı",
    247: "jĵ",
    249: "',.:;·‘’′",
    255: "lĺļ",
    262: "ł",
    263: "IÌÍÎÏĨĪĬĮİ",
    270: "ľ",
    289: "!¡",
    292: "f",
    303: "()[]{}",
    304: "•",
    311: "-\u00ad",
    331: "°",
    338: "tţťŧ",
    345: "ª",
    347: "rŕŗř",
    350: "/\\",
    362: "ŀ",
    365: "º",
    367: "²³¹⁰⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉",
    418: "*",
    419: "sśŝşš",
    423: "®",
    425: '"?z¿źżž“”',
    426: "″",
    429: "«»",
    446: "x",
    456: "cçćĉċč",
    467: "vyýÿŷ",
    476: "YÝŶŸ",
    480: "JĴ–",
    486: "LĹĻĽĿ",
    489: "Ł",
    493: "ĳ",
    494: "F",
    495: "kķĸ",
    496: "eèéêëēĕėęě",
    497: "#$+0123456789<=>^~¢£¤¥§¬±×÷−",
    500: "_",
    504: "agàáâãäåāăąĝğġģ",
    513: "X",
    515: "V",
    526: "Ĳ",
    527: "EÈÉÊËĒĔĖĘĚ",
    534: "SŚŜŞŠ",
    536: "TŢŤŦ",
    539: "ZŹŻŽ",
    542: "`o¨¯´¸òóôõöøōŏő",
    544: "AhuÀÁÂÃÄÅùúûüĀĂĄĥħũūŭůűų",
    545: "ð",
    547: "nñńņňŋ",
    553: "b",
    555: "dpqþđ",
    560: "¶",
    562: "µ",
    566: "P",
    569: "RŔŖŘ",
    571: "CÇĆĈĊČ",
    573: "ď",
    576: "ß",
    579: "KĶ",
    583: "Þ",
    588: "B",
    609: "&",
    615: "DĎ",
    617: "GĜĞĠĢ",
    619: "→←↑↓",
    635: "Ŋ",
    638: "ÐĐ",
    645: "UÙÚÛÜŨŪŬŮŰŲ",
    647: "NÑŃŅŇ",
    652: "HĤ",
    664: "OQÒÓÔÕÖØŌŎŐ",
    687: "Ħ",
    718: "wŵ",
    727: "M",
    744: "©",
    775: "ŉ",
    781: "¼",
    785: "æ",
    786: "WŴ",
    796: "¾",
    800: "—",
    801: "⅞",
    804: "⅓⅛",
    808: "½",
    821: "⅔⅜⅝",
    822: "Æ",
    824: "%",
    829: "m",
    839: "œ",
    847: "@Œ",
    948: "…",
}

_BOLD = {
    96: "\u2044",
    125: "\u202f",
    200: " ",
    208: "\u00a0",
    268: "|¦",
    276: "iìíîïĩīĭįı",
    278: "jĵ",
    286: "lĺļ",
    300: "',.:;·‘’′",
    301: "IÌÍÎÏĨĪĬĮİ",
    303: "ł",
    319: "ľ",
    332: "-\u00ad",
    339: "/\\",
    340: "!¡",
    341: "f",
    344: "()[]{}",
    345: "•",
    359: "ª",
    365: "°",
    373: "º",
    376: "²³¹⁰⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉",
    383: "tţťŧ",
    398: "rŕŗř",
    443: "sśŝşš",
    453: "ŀ",
    457: "*",
    460: "zźżž",
    462: "®",
    463: "?¿",
    467: "cçćĉċč",
    480: "«»–",
    500: "_",
    509: "JĴ",
    514: "x",
    518: "LeèéêëēĕėęěĹĻĽĿ",
    521: "yýÿŷ",
    523: "v",
    524: "FŁ",
    525: "YÝŶŸ",
    527: "aàáâãäåāăą",
    528: "#$+0123456789<=>^~¢£¤¥§¬±×÷−",
    534: "gĝğġģ",
    536: '"“”',
    537: "″",
    541: "ZŹŻŽ",
    548: "EkÈÉÊËĒĔĖĘĚķĸ",
    554: "ĳ",
    555: "`o¨¯´¸òóôõöøōŏő",
    556: "STVŚŜŞŠŢŤŦ",
    560: "ð",
    567: "X",
    568: "uùúûüũūŭůűų",
    571: "hĥħ",
    572: "nñńņňŋ",
    573: "AbdpqÀÁÂÃÄÅþĀĂĄđ",
    582: "CÇĆĈĊČ",
    594: "µ",
    596: "P",
    602: "Ĳ",
    605: "B",
    613: "RŔŖŘ",
    614: "KďĶ",
    617: "Þ→←↑↓",
    632: "ß",
    635: "DĎ",
    636: "¶",
    638: "GĜĞĠĢ",
    660: "ÐĐ",
    665: "NUÑÙÚÛÜŃŅŇŨŪŬŮŰŲ",
    666: "Ŋ",
    667: "&",
    674: "HĤ",
    684: "OQÒÓÔÕÖØŌŎŐ",
    712: "Ħ",
    750: "©",
    762: "M",
    776: "wŵ",
    786: "æ",
    800: "—",
    809: "¼",
    813: "WŴ",
    818: "¾",
    822: "œ",
    829: "⅞",
    837: "⅓⅛",
    845: "Æ",
    846: "½",
    849: "⅔⅜⅝",
    852: "ŉ",
    857: "%m",
    871: "Œ",
    903: "@",
    977: "…",
}

_REGULAR_WIDTHS = {sign: width for width, signs in _REGULAR.items() for sign in signs}
_BOLD_WIDTHS = {sign: width for width, signs in _BOLD.items() for sign in signs}
