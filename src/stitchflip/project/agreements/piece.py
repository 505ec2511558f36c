"""The squared-up piece, its center and what goes onto its back: shapes and the sizes they need."""

from __future__ import annotations

from collections.abc import Iterator

from stitchflip.project.agreements.outlines import outline_of
from stitchflip.project.agreements.tables import Disagreement, Path, Table, lacks, table_at, ticks, too_many, way_in
from stitchflip.project.piece import shape_of_center, shape_of_piece
from stitchflip.project.words import CenterShape, Ends, Outline, Way, meant

_PIECE_SIZES = {
    Outline.RECTANGLE: ("wide", "long"),
    Outline.POLYGON: ("sides", "across_flats"),
    Outline.ROUND: ("across",),
    Outline.OVAL: ("wide", "long"),
}
_PIECE_WORDS = {
    Outline.RECTANGLE: "the piece is a rectangle",
    Outline.POLYGON: "the piece is a polygon",
    Outline.ROUND: "the piece is round",
    Outline.OVAL: "the piece is oval",
}
_ONLY_RECTANGLES = ("beyond_points", "corner_radius")


def squared_up(data: Table) -> Iterator[Disagreement]:
    """Sizes that a squared-up piece of its shape has, and no others."""
    table = table_at(data, "squared_up")
    shape = meant(shape_of_piece(dict(table)), Outline) if table else None
    if shape is None:
        return
    at: Path = ("squared_up",)
    sizes, why = _PIECE_SIZES[shape], _PIECE_WORDS[shape]
    known = dict.fromkeys(key for keys in (*_PIECE_SIZES.values(), _ONLY_RECTANGLES) for key in keys)
    may_have = {*sizes, *(_ONLY_RECTANGLES if shape is Outline.RECTANGLE else ())}
    yield from too_many(table, at, tuple(key for key in known if key not in may_have), why, " and ".join(sizes))
    if shape is Outline.RECTANGLE:
        yield from _rectangle(data, table, at)
    else:
        yield from lacks(table, at, sizes, why)
        if _is_pointed(table):
            yield Disagreement((*at, "ends"), f"pointed ends, though {why}", 'ends = "square"')


def _is_pointed(table: Table) -> bool:
    return meant(str(table.get("ends", Ends.SQUARE.value)), Ends) is Ends.POINTED


def _rectangle(data: Table, table: Table, at: Path) -> Iterator[Disagreement]:
    """Two sizes, or one way to come by them: beyond the center's points, or what the piece is made for."""
    sizes = _PIECE_SIZES[Outline.RECTANGLE]
    if table.get("beyond_points") is not None:
        yield from too_many(table, at, sizes, "beyond_points gives the size", "either beyond_points or wide and long")
        if not table_at(data, "center"):
            yield Disagreement((*at, "beyond_points"), "beyond_points, though there is no center", "wide and long")
    elif not table_at(data, "made_for"):
        yield from lacks(table, at, sizes, _PIECE_WORDS[Outline.RECTANGLE])
    radius = table.get("corner_radius")
    if radius is None:
        return
    if _is_pointed(table):
        found = "corner_radius, though the ends are pointed"
        yield Disagreement((*at, "corner_radius"), found, 'ends = "square", or no corner_radius')
    known = [length for size in sizes if (length := ticks(table.get(size))) is not None]
    if any(2 * (ticks(radius) or 0) > length for length in known):
        found = "a radius of more than half the piece"
        yield Disagreement((*at, "corner_radius"), found, "at most half of wide and of long")


_CENTER_SIZES = {
    CenterShape.SQUARE: ("cut",),
    CenterShape.RECTANGLE: ("cut_wide", "cut_long"),
    CenterShape.POLYGON: ("sides", "cut"),
    CenterShape.CORNERS: ("corners",),
    CenterShape.HALF_SQUARE: ("cut",),
}
_MEASURED_SHAPES = (CenterShape.RECTANGLE, CenterShape.POLYGON, CenterShape.CORNERS)
"""How a half-done piece can be given."""
_INSTEAD_OF_CENTER = {
    Way.STRINGS: ("a string block begins with its middle strip", "the middle strip as the first of the rounds"),
    Way.FOUNDATION: ("a numbered foundation begins with its first patch", "its fabric as that of the first patch"),
}
"""Ways that have no center: why, and what is written instead."""


def center(data: Table) -> Iterator[Disagreement]:
    """A center where one is due, with the sizes of its shape."""
    way = way_in(data)
    if data.get("center") is None and way is not Way.ROWS and way not in _INSTEAD_OF_CENTER:
        found = f"nothing, though {(way or Way.LOG_CABIN).value} begins with a center"
        yield Disagreement(("center",), found, "a [center] with its fabric and cut size")
    table = table_at(data, "center")
    if table and way in _INSTEAD_OF_CENTER:
        why, instead = _INSTEAD_OF_CENTER[way]
        yield Disagreement(("center",), f"a center, though {why}", f"no [center], and {instead}")
    shape = meant(shape_of_center(dict(table)), CenterShape) if table else None
    if shape is None:
        return
    at: Path = ("center",)
    why = f"the center is a {_shape_words(shape)}"
    yield from lacks(table, at, _CENTER_SIZES[shape], why)
    unused = tuple(sorted({key for keys in _CENTER_SIZES.values() for key in keys} - set(_CENTER_SIZES[shape])))
    yield from too_many(table, at, unused, why, " and ".join(_CENTER_SIZES[shape]))
    if shape is CenterShape.CORNERS:
        yield from outline_of(table.get("corners"), (*at, "corners"))
    if table.get("sewn_already") is True and shape not in _MEASURED_SHAPES:
        found = f"a {_shape_words(shape)}, though the center is a half-done piece"
        yield Disagreement((*at, "shape"), found, "a rectangle with cut_wide and cut_long as measured, or its corners")


def _shape_words(shape: CenterShape) -> str:
    return "piece given by its corners" if shape is CenterShape.CORNERS else shape.value


def extras(data: Table) -> Iterator[Disagreement]:
    """A fabric for what is made of it only."""
    table = table_at(data, "extras")
    for key, what in (("sleeve", "sleeve = true"), ("label", 'label = "rectangle"')):
        if not table.get(key):
            why = f"there is no {key}"
            yield from too_many(table, ("extras",), (f"{key}_fabric",), why, f"{what}, or no {key}_fabric")
