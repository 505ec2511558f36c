"""The marks of the pictures, each with its word."""

from __future__ import annotations

from stitchflip.pictures.drawing import NEW_SEAM, RAW_EDGE, STITCHES, TRIM_LATER
from stitchflip.pictures.hatches import CUT_AWAY_HATCH
from stitchflip.pictures.ink import CUT_AWAY, HALO, INK, SOFT
from stitchflip.pictures.model import Area, CenterMark, Dash, Figure, Knot, Line, Margins, Pen, Primitive, Text

_ROW = 0.26
_SHORT = 0.62
_ROWS_IN_COLUMN = 5
_COLUMN = 2.3


def legend() -> Figure:
    """How to read the pictures: every mark with its word, in two columns.

    Returns:
        The figure; it is made for 4.6 in and true at that width.
    """
    rows: tuple[tuple[str, Primitive], ...] = (
        ("seam of this step", Line(((0.0, 0.0), (_SHORT, 0.0)), NEW_SEAM, what="seam")),
        ("seam, seen from the back", Line(((0.0, 0.0), (_SHORT, 0.0)), STITCHES)),
        ("raw edge", Line(((_SHORT, 0.0), (0.0, 0.0)), RAW_EDGE)),
        ("line to trim to later", Line(((0.0, 0.0), (_SHORT, 0.0)), TRIM_LATER)),
        ("fold", Line(((0.0, 0.0), (_SHORT, 0.0)), Pen(INK, 0.9, Dash.FOLD))),
        ("center mark of the base", CenterMark((_SHORT / 2, 0.0))),
        ("end of a seam to lock", Knot((_SHORT / 2, 0.02))),
        ("sew this way", Line(((0.0, 0.0), (_SHORT, 0.0)), Pen(INK, 1.0, casing=HALO), arrow=True)),
        ("a measured distance", Line(((0.0, 0.0), (_SHORT, 0.0)), Pen(SOFT, 0.6))),
        (
            "cut away or left over",
            Area(
                ((0.0, -0.07), (_SHORT, -0.07), (_SHORT, 0.07), (0.0, 0.07)), CUT_AWAY, CUT_AWAY_HATCH, Pen(SOFT, 0.45)
            ),
        ),
    )
    items: list[Primitive] = []
    for place, (word, mark) in enumerate(rows):
        column, row = divmod(place, _ROWS_IN_COLUMN)
        dx, dy = 0.12 + column * _COLUMN, -_ROW * (row + 0.5)
        items.append(_at(mark, dx, dy))
        items.append(Text((dx + _SHORT, dy), word, 8.0, anchor="start", shift=(8.0, 0.0)))
        if word == "a measured distance":
            items += [Line(((dx + x, dy - 0.035), (dx + x, dy + 0.035)), Pen(SOFT, 0.9)) for x in (0.0, _SHORT)]
    return Figure(
        tuple(items),
        (0.0, -_ROW * _ROWS_IN_COLUMN),
        (2 * _COLUMN, 0.0),
        "How to read the pictures",
        "The marks of the pictures: " + ", ".join(word for word, _ in rows) + ".",
        Margins(0, 2, 0, 2),
        2 * _COLUMN,
    )


def _at(mark: Primitive, dx: float, dy: float) -> Primitive:
    from dataclasses import replace

    match mark:
        case Line() | Area():
            return replace(mark, points=tuple((x + dx, y + dy) for x, y in mark.points))
        case CenterMark() | Knot():
            return replace(mark, at=(mark.at[0] + dx, mark.at[1] + dy))
        case _:
            return mark
