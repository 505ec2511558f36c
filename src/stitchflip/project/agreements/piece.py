"""The squared-up piece and its center: shapes and the sizes they need."""

from __future__ import annotations

from collections.abc import Iterator

from stitchflip.project.agreements.made_for import sizes_it_gives
from stitchflip.project.agreements.outlines import outline_of
from stitchflip.project.agreements.tables import Disagreement, Path, Table, lacks, table_at, too_many, way_in
from stitchflip.project.piece import shape_of_center, shape_of_piece
from stitchflip.project.words import CenterShape, Ends, Outline, Way, meant


def squared_up(data: Table) -> Iterator[Disagreement]:
    """Sizes that a squared-up piece of its shape has, and no others."""
    table = table_at(data, "squared_up")
    if not table:
        return
    at: Path = ("squared_up",)
    if meant(shape_of_piece(dict(table)), Outline) is Outline.POLYGON:
        yield from lacks(table, at, ("sides", "across_flats"), "the piece is a polygon")
        unused = ("wide", "long", "beyond_points")
        yield from too_many(table, at, unused, "the piece is a polygon", "sides and across_flats")
        if meant(str(table.get("ends", "square")), Ends) is Ends.POINTED:
            yield Disagreement((*at, "ends"), "pointed ends, though the piece is a polygon", 'ends = "square"')
        return
    yield from too_many(table, at, ("sides", "across_flats"), "the piece is a rectangle", "wide and long")
    if table.get("beyond_points") is not None:
        sizes = ("wide", "long")
        yield from too_many(table, at, sizes, "beyond_points gives the size", "either beyond_points or wide and long")
        if not table_at(data, "center"):
            yield Disagreement((*at, "beyond_points"), "beyond_points, though there is no center", "wide and long")
    else:
        due = tuple(key for key in ("wide", "long") if key not in sizes_it_gives(data))
        yield from lacks(table, at, due, "the piece is a rectangle")


_CENTER_SIZES = {
    CenterShape.SQUARE: ("cut",),
    CenterShape.RECTANGLE: ("cut_wide", "cut_long"),
    CenterShape.POLYGON: ("sides", "cut"),
    CenterShape.CORNERS: ("corners",),
}


def center(data: Table) -> Iterator[Disagreement]:
    """A center where one is due, with the sizes of its shape."""
    way = way_in(data)
    if data.get("center") is None and way is not Way.ROWS:
        found = f"nothing, though {(way or Way.LOG_CABIN).value} begins with a center"
        yield Disagreement(("center",), found, "a [center] with its fabric and cut size")
    table = table_at(data, "center")
    shape = meant(shape_of_center(dict(table)), CenterShape) if table else None
    if shape is None:
        return
    at: Path = ("center",)
    yield from lacks(table, at, _CENTER_SIZES[shape], f"the center is a {_shape_words(shape)}")
    unused = tuple(sorted({key for keys in _CENTER_SIZES.values() for key in keys} - set(_CENTER_SIZES[shape])))
    instead = " and ".join(_CENTER_SIZES[shape])
    yield from too_many(table, at, unused, f"the center is a {_shape_words(shape)}", instead)
    if shape is CenterShape.CORNERS:
        yield from outline_of(table.get("corners"), (*at, "corners"))


def _shape_words(shape: CenterShape) -> str:
    return "piece given by its corners" if shape is CenterShape.CORNERS else shape.value
