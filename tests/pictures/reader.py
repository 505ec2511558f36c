"""An independent reader of the pictures: what is in the SVG text, not what the drawing code thinks it wrote."""

from __future__ import annotations

import re
import struct
import zlib
from dataclasses import dataclass, field
from math import hypot
from xml.etree import ElementTree as ET

SVG = "{http://www.w3.org/2000/svg}"
_PLACE = re.compile(r"[ML](-?[0-9.]+) (-?[0-9.]+)")


@dataclass
class Picture:
    """A picture as read."""

    wide: float
    high: float
    title: str
    alt: str
    fills: list[tuple[str, str, list[tuple[float, float]]]] = field(default_factory=list)
    """(fill, tooltip, corners) of every filled path without a hatch, in order, points."""
    words: list[str] = field(default_factory=list)


def read_picture(svg: str) -> Picture:
    """Read an SVG text."""
    root = ET.fromstring(svg)  # noqa: S314  our own text
    _, _, wide, high = (float(part) for part in root.attrib["viewBox"].split())
    picture = Picture(wide, high, root.findtext(f"{SVG}title") or "", root.findtext(f"{SVG}desc") or "")
    for node in root.iter(f"{SVG}path"):
        fill = node.get("fill", "none")
        if fill.startswith("#"):
            corners = [(float(x), float(y)) for x, y in _PLACE.findall(node.attrib["d"])]
            picture.fills.append((fill, node.findtext(f"{SVG}title") or "", corners))
    for node in root.iter(f"{SVG}text"):
        picture.words.append(" ".join("".join(node.itertext()).split()))
    return picture


def shoelace(corners: list[tuple[float, float]]) -> float:
    """Area of a polygon, any turning."""
    pairs = zip(corners, corners[1:] + corners[:1], strict=True)
    return abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs)) / 2


def picture_differences(svg: str, patches: list[tuple[str, float]], letters: list[str]) -> list[str]:
    """What a picture of a finished piece does not show as it should.

    Args:
        svg: the picture.
        patches: (fabric, area in square inches) of every patch that shows.
        letters: every letter that must stand on it, once for each patch.

    Returns:
        One line for each difference; empty when the picture is right.
    """
    picture = read_picture(svg)
    drawn = [(tip, shoelace(corners)) for _, tip, corners in picture.fills if tip and not tip.startswith("binding")]
    out = []
    if len(drawn) != len(patches):
        return [f"{len(drawn)} patches drawn instead of {len(patches)}"]
    scale = sum(area for _, area in drawn) / sum(area for _, area in patches)
    for (tip, points), (fabric, inches) in zip(drawn, patches, strict=True):
        if tip != fabric:
            out.append(f"{tip} is drawn where {fabric} belongs")
        if abs(points / scale - inches) > 0.01 * inches + 0.02:
            out.append(f"{fabric}: {points / scale:.3f} square inches instead of {inches:.3f}")
    out += [
        f"letter {letter} stands {picture.words.count(letter)} times instead of {letters.count(letter)}"
        for letter in sorted(set(letters))
        if picture.words.count(letter) != letters.count(letter)
    ]
    return out


def pixels(png: bytes) -> list[list[tuple[int, int, int]]]:
    """Rows of (red, green, blue) of an 8-bit PNG without interlacing."""
    place, data, head = 8, b"", b""
    while place < len(png):
        (length,) = struct.unpack(">I", png[place : place + 4])
        kind, body = png[place + 4 : place + 8], png[place + 8 : place + 8 + length]
        head, data = (body if kind == b"IHDR" else head), (data + body if kind == b"IDAT" else data)
        place += 12 + length
    wide, high, depth, color = struct.unpack(">IIBB", head[:10])
    assert 8 == depth
    step = {2: 3, 6: 4}[color]
    raw = zlib.decompress(data)
    rows, above = [], bytes(wide * step)
    for y in range(high):
        start = y * (wide * step + 1)
        line = bytearray(raw[start + 1 : start + 1 + wide * step])
        _unfilter(raw[start], line, above, step)
        rows.append([(line[x], line[x + 1], line[x + 2]) for x in range(0, wide * step, step)])
        above = bytes(line)
    return rows


def _unfilter(kind: int, line: bytearray, above: bytes, step: int) -> None:
    for x in range(len(line)):
        a = line[x - step] if x >= step else 0
        b, c = above[x], above[x - step] if x >= step else 0
        guess = 0
        if kind == 1:
            guess = a
        elif kind == 2:
            guess = b
        elif kind == 3:
            guess = (a + b) // 2
        elif kind == 4:
            p = a + b - c
            guess = min((a, b, c), key=lambda value: (abs(p - value), (a, b, c).index(value)))
        line[x] = (line[x] + guess) & 255


def far_apart(one: tuple[int, int, int], other: tuple[int, int, int]) -> float:
    """How far two colors are apart, 0 to 441."""
    return hypot(*(a - b for a, b in zip(one, other, strict=True)))
