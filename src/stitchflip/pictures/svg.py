"""A sheet as plain SVG 1.1: the same text for the same picture, valid in a browser and inside a typeset page."""

from __future__ import annotations

import re
from itertools import pairwise
from math import hypot
from typing import TYPE_CHECKING
from zlib import crc32

from stitchflip.lengths import CM_PER_INCH, Unit
from stitchflip.pictures.fonts import CSS_FAMILIES, drawn
from stitchflip.pictures.hatches import COUNT, CUT_AWAY, CUT_AWAY_HATCH, HATCHES, Hatch
from stitchflip.pictures.ink import HALO, INK, PAPER, is_dark
from stitchflip.pictures.model import Dash, Figure, Pen
from stitchflip.pictures.paper import POINTS_PER_INCH, Mark, Nested, Shape, Sheet, Sign, Word, text_width
from stitchflip.pictures.sheet import lay_out

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.model import Point

_DASHES = {
    Dash.SOLID: "",
    Dash.SEAM: "3.4 2.1",
    Dash.RAW: "",
    Dash.FOLD: "7 1.8 1.2 1.8",
    Dash.HIDDEN: "0.9 1.7",
    Dash.TRIM: "6.5 2.6",
}
_CASING_WIDER = 1.0
_FEW_LETTERS = 2
_FRAY = 3.1
"""Distance of the threads that hang from a raw edge, points."""
_FRAY_LONG = 1.7
_MARKUP = re.compile('[&<>"]')
_NO_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def to_svg(figure: Figure, width_in: float | None = None, unit: Unit = Unit.INCH) -> str:
    """A figure as an SVG document.

    Args:
        figure: what to draw.
        width_in: width on paper, inches; the width the figure is made for when left out.
        unit: unit of the width and height written in the file; the size is the same.

    Returns:
        SVG 1.1 text. Same figure and width, same text.

    Raises:
        PublishError: If the width leaves nothing to draw in.

    Example:
        >>> from stitchflip.pictures.model import Area
        >>> square = Area(((0, 0), (1, 0), (1, 1), (0, 1)), "#ffffff")
        >>> to_svg(Figure((square,), (0, 0), (1, 1), "Square", "A square."), 1.0)[:25]
        '<svg xmlns="http://www.w3'
    """
    return write(lay_out(figure, figure.width_in if width_in is None else width_in), unit)


def write(sheet: Sheet, unit: Unit = Unit.INCH) -> str:
    """A measured sheet as an SVG document."""
    body = _body(sheet)
    prefix = f"p{crc32(body.encode()):08x}"
    body = body.replace("\x00", prefix)
    each = 1.0 if unit is Unit.INCH else CM_PER_INCH
    attributes = {
        "xmlns": "http://www.w3.org/2000/svg",
        "version": "1.1",
        "width": f"{_n(sheet.wide / POINTS_PER_INCH * each, 4)}{unit.value}",
        "height": f"{_n(sheet.high / POINTS_PER_INCH * each, 4)}{unit.value}",
        "viewBox": f"0 0 {_n(sheet.wide)} {_n(sheet.high)}",
        "font-family": CSS_FAMILIES,
    }
    first = f"<svg xmlns={_quoted(attributes.pop('xmlns'))}"
    rest = "".join(f" {name}={_quoted(value)}" for name, value in sorted(attributes.items()))
    return f"{first}{rest}>\n<title>{_escaped(sheet.title)}</title>\n<desc>{_escaped(sheet.alt)}</desc>\n{body}</svg>\n"


def _body(sheet: Sheet) -> str:
    """Definitions, paper and marks; a zero character stands for the prefix of the ids."""
    paper = _tag("rect", {"x": "0", "y": "0", "width": _n(sheet.wide), "height": _n(sheet.high), "fill": PAPER})
    marks = _marks(sheet, "w")
    hatches = "".join(_pattern(index, tone) for index, tone in sorted(set(_hatches(sheet))))
    clips = "".join(_clips(sheet, "w"))
    definitions = f"<defs>\n{hatches}{clips}</defs>\n" if hatches or clips else ""
    return f"{definitions}{paper}{marks}"


def _marks(sheet: Sheet, name: str) -> str:
    """All marks in order; what lies in a cropped window is grouped under its clip path."""
    out: list[str] = []
    is_open = False
    count = 0
    for mark in sheet.marks:
        clipped = sheet.is_cropped and isinstance(mark, Shape) and mark.is_in_window
        if clipped != is_open:
            out.append(f'<g clip-path="url(#\x00{name})">\n' if clipped else "</g>\n")
            is_open = clipped
        if isinstance(mark, Nested):
            inner = _marks(mark.sheet, f"{name}{count}")
            out.append(f'<g transform="translate({_n(mark.at[0])} {_n(mark.at[1])})">\n{inner}</g>\n')
            count += 1
        else:
            out.append(_mark(mark))
    if is_open:
        out.append("</g>\n")
    return "".join(out)


def _clips(sheet: Sheet, name: str) -> Iterator[str]:
    if sheet.is_cropped:
        left, top, right, bottom = sheet.window
        rect = _tag("rect", {"x": _n(left), "y": _n(top), "width": _n(right - left), "height": _n(bottom - top)})
        yield f'<clipPath id="\x00{name}">{rect.strip()}</clipPath>\n'
    for count, inner in enumerate(sheet.nested()):
        yield from _clips(inner, f"{name}{count}")


def _mark(mark: Mark) -> str:
    match mark:
        case Shape():
            return _shape(mark)
        case Word():
            return _word(mark)
        case Sign(kind="knot", at=at):
            return _knot(at)
        case Sign(kind="center mark", at=at):
            return _center_mark(at)
        case Sign(at=at, text=text):
            return _badge(at, text)
        case Nested():
            return ""


# --- shapes ----------------------------------------------------------------------------------------------


def _shape(shape: Shape) -> str:
    path = _path(shape.points, is_closed=shape.is_closed)
    out = []
    if shape.fill:
        out.append(_path_tag(path, {"fill": shape.fill}, shape.title))
    if shape.hatch is not None:
        tone = "pale" if is_dark(shape.fill) else "ink"
        index = shape.hatch if shape.hatch == CUT_AWAY_HATCH else shape.hatch % COUNT
        out.append(_path_tag(path, {"fill": f"url(#\x00{_hatch_name(index, tone)})"}))
    if shape.pen is not None:
        out.extend(_strokes(shape, shape.pen, path))
    return "".join(out)


def _strokes(shape: Shape, pen: Pen, path: str) -> Iterator[str]:
    base = {"fill": "none", "stroke-linejoin": "round"}
    if pen.casing:
        yield _path_tag(
            path,
            base | {"stroke": pen.casing, "stroke-width": _n(pen.width + _CASING_WIDER), "stroke-linecap": "round"},
        )
    stroke = base | {"stroke": pen.color, "stroke-width": _n(pen.width)}
    if pen.dash is Dash.SEAM:
        stroke["stroke-linecap"] = "round"
    if _DASHES[pen.dash]:
        stroke["stroke-dasharray"] = _DASHES[pen.dash]
    yield _path_tag(path, stroke)
    if pen.dash is Dash.RAW:
        points = shape.points + shape.points[:1] if shape.is_closed else shape.points
        yield _path_tag(_fray(points), base | {"stroke": pen.color, "stroke-width": _n(pen.width * 0.7)})


def _fray(points: tuple[Point, ...]) -> str:
    """Short threads on the right-hand side of a line (y downward), evenly from end to end."""
    out = []
    for (x0, y0), (x1, y1) in pairwise(points):
        length = hypot(x1 - x0, y1 - y0)
        count = int(length / _FRAY)
        if not count:
            continue
        ux, uy = (x1 - x0) / length, (y1 - y0) / length
        for k in range(count):
            d = (k + 0.5) * length / count
            lean = 0.5 if k % 2 else -0.5
            x, y = x0 + ux * d, y0 + uy * d
            tip = (x - uy * _FRAY_LONG + ux * lean, y + ux * _FRAY_LONG + uy * lean)
            out.append(f"M{_n(x)} {_n(y)}L{_n(tip[0])} {_n(tip[1])}")
    return "".join(out)


def _path(points: tuple[Point, ...], *, is_closed: bool) -> str:
    joined = "L".join(f"{_n(x)} {_n(y)}" for x, y in points)
    return f"M{joined}{'Z' if is_closed else ''}"


def _path_tag(path: str, attributes: dict[str, str], title: str = "") -> str:
    if not path:
        return ""
    inner = f"<title>{_escaped(title)}</title>" if title else ""
    return _tag("path", attributes | {"d": path}, inner)


# --- hatches ---------------------------------------------------------------------------------------------


def _hatches(sheet: Sheet) -> Iterator[tuple[int, str]]:
    for mark in sheet.marks:
        if isinstance(mark, Shape) and mark.hatch is not None:
            index = mark.hatch if mark.hatch == CUT_AWAY_HATCH else mark.hatch % COUNT
            yield index, "pale" if is_dark(mark.fill) else "ink"
        elif isinstance(mark, Nested):
            yield from _hatches(mark.sheet)


def _hatch_name(index: int, tone: str) -> str:
    return f"h{'x' if index == CUT_AWAY_HATCH else index}{tone[0]}"


def _pattern(index: int, tone: str) -> str:
    hatch: Hatch = CUT_AWAY if index == CUT_AWAY_HATCH else HATCHES[index]
    color, strength = (HALO, "0.5") if tone == "pale" else (INK, "0.34")
    line = _tag(
        "path",
        {
            "d": hatch.path,
            "fill": "none",
            "stroke": color,
            "stroke-linecap": "round",
            "stroke-opacity": strength,
            "stroke-width": _n(hatch.weight),
        },
    )
    attributes = {
        "id": f"\x00{_hatch_name(index, tone)}",
        "patternUnits": "userSpaceOnUse",
        "width": _n(hatch.wide),
        "height": _n(hatch.high),
        "patternTransform": f"rotate({_n(hatch.turn)})",
    }
    return _tag("pattern", attributes, line.strip())


# --- words and signs -------------------------------------------------------------------------------------


def _word(word: Word) -> str:
    attributes = {
        "fill": word.color,
        "font-size": _n(word.size),
        "text-anchor": "middle",
        "x": _n(word.at[0]),
        "y": _n(word.at[1]),
    }
    if len(word.text + word.tail) > _FEW_LETTERS:
        # In another font the words keep their room.
        wide = text_width(word.text, word.tail, word.size, is_bold=word.bold)
        attributes |= {"lengthAdjust": "spacingAndGlyphs", "textLength": _n(wide)}
    if word.angle:
        attributes["transform"] = f"rotate({_n(-word.angle)} {_n(word.at[0])} {_n(word.at[1])})"
    inner = _escaped(drawn(word.text))
    if word.tail:
        # Two spans side by side: a span inside bold text loses its space where text is fitted to a length.
        weight = ' font-weight="bold"' if word.bold else ""
        inner = f"<tspan{weight}>{inner}</tspan><tspan> {_escaped(drawn(word.tail))}</tspan>"
    elif word.bold:
        attributes["font-weight"] = "bold"
    if word.halo:
        attributes |= {"stroke": HALO, "stroke-linejoin": "round", "stroke-width": "2.2", "style": "paint-order:stroke"}
    return _tag("text", attributes, inner)


def _knot(at: Point) -> str:
    """Our own mark for an end to lock: a thread that runs into a ring and out of it again."""
    x, y = at
    thread = (
        f"M{_n(x - 6)} {_n(y - 1.6)}C{_n(x - 4.6)} {_n(y + 1.4)} {_n(x - 3.4)} {_n(y + 1.6)} {_n(x - 1.9)} {_n(y + 1)}"
        f"M{_n(x + 6)} {_n(y + 1.6)}C{_n(x + 4.6)} {_n(y - 1.4)} {_n(x + 3.4)} {_n(y - 1.6)} {_n(x + 1.9)} {_n(y - 1)}"
    )
    line = {"d": thread, "fill": "none", "stroke-linecap": "round"}
    ring = {"cx": _n(x), "cy": _n(y), "r": "2.3"}
    return (
        _tag("path", line | {"stroke": HALO, "stroke-width": "2.9"})
        + _tag("circle", ring | {"fill": HALO, "stroke": HALO, "stroke-width": "3.2"})
        + _tag("path", line | {"stroke": INK, "stroke-width": "1.1"})
        + _tag("circle", ring | {"fill": HALO, "stroke": INK, "stroke-width": "1.5"})
    )


def _center_mark(at: Point) -> str:
    x, y = at
    cross = f"M{_n(x - 4)} {_n(y)}H{_n(x + 4)}M{_n(x)} {_n(y - 4)}V{_n(y + 4)}"
    return (
        _tag("path", {"d": cross, "fill": "none", "stroke": HALO, "stroke-width": "2.2"})
        + _tag("circle", {"cx": _n(x), "cy": _n(y), "r": "2", "fill": HALO, "stroke": INK, "stroke-width": "0.8"})
        + _tag("path", {"d": cross, "fill": "none", "stroke": INK, "stroke-width": "0.8"})
    )


def _badge(at: Point, text: str) -> str:
    x, y = at
    word = {
        "fill": INK,
        "font-size": "6.5",
        "font-weight": "bold",
        "text-anchor": "middle",
        "x": _n(x),
        "y": _n(y + 2.2),
    }
    ring = {"cx": _n(x), "cy": _n(y), "r": "5", "fill": HALO, "stroke": INK, "stroke-width": "0.7"}
    return _tag("circle", ring) + _tag("text", word, _escaped(drawn(text)))


# --- text ------------------------------------------------------------------------------------------------


def _tag(name: str, attributes: dict[str, str], inner: str = "") -> str:
    written = "".join(f" {key}={_quoted(value)}" for key, value in sorted(attributes.items()))
    return f"<{name}{written}>{inner}</{name}>\n" if inner else f"<{name}{written}/>\n"


def _quoted(value: str) -> str:
    if _MARKUP.search(value):
        value = _without_markup(value).replace('"', "&quot;")
    return f'"{value}"'


def _escaped(text: str) -> str:
    """Text that XML takes: markup escaped, signs that no XML may hold left out."""
    return _without_markup(_NO_XML.sub("", text))


def _without_markup(text: str) -> str:
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def _n(value: float, digits: int = 2) -> str:
    """A number with fixed digits, without trailing zeros or a negative zero."""
    text = f"{value:.{digits}f}".rstrip("0").rstrip(".") if digits else f"{value:.0f}"
    return "0" if text in {"-0", ""} else text
