"""The strips between blocks that lie in straight rows and columns."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from stitchflip.finishing.joined.faces import Face, is_longer_than_fabric
from stitchflip.finishing.joined.sizes import Grid, area_between
from stitchflip.finishing.quilt_model import JoiningStrip
from stitchflip.piecing.model import Polygon
from stitchflip.project.model import Join, Joined, Joining, Project
from stitchflip.project.numbers import Numbers
from stitchflip.values import dataclass

_Span = tuple[float, float]


@dataclass(frozen=True, slots=True)
class _Place:
    """One join: how long its strips are cut and the area between the two seam lines."""

    long: float
    x: _Span
    y: _Span

    def shown(self, shows: float, *, upright: bool) -> Polygon:
        """What a strip of so much showing covers, from the near seam line: the left one, or the upper one."""
        if upright:
            return area_between((self.x[0], self.x[0] + shows), self.y)
        return area_between(self.x, (self.y[1] - shows, self.y[1]))


def straight_strips(
    project: Project, numbers: Numbers, joined: Joined, grid: Grid, faces: tuple[Face, ...]
) -> tuple[JoiningStrip, ...]:
    """Every joining strip of straight rows: the short ones between blocks, then the long ones, front before back.

    Args:
        project: For the widths of the fabrics, which tell what is joined from several strips.
        numbers: The maker's numbers.
        joined: For what is joined first, and for corner squares.
        grid: The blocks where they lie.
        faces: The strips of one join.

    Returns:
        Strips of one kind and length together; short ones are cut to the block as measured, long ones to the row.
    """
    by_rows = joined.first is Joining.ROWS
    short = list(_upright_in_rows(grid) if by_rows else _level_in_columns(grid))
    long = _long(grid, by_rows=by_rows)
    has_squares = joined.join is Join.COVERED and joined.corner_squares is not None
    strips: list[JoiningStrip] = []
    for face in faces:
        strips += _alike(face, "blocks", short, upright=by_rows)
    for face in faces:
        where = "rows" if by_rows else "columns"
        if has_squares and face.shows > 0:
            pieces = list(_level_in_columns(grid) if by_rows else _upright_in_rows(grid))
            strips += _alike(face, where, pieces, upright=not by_rows)
            strips += _corner_squares(joined.corner_squares or "", grid, face)
        else:
            strips += [
                replace(one, is_pieced=is_longer_than_fabric(project, numbers, one.fabric, one.long))
                for one in _alike(face, where, long, upright=not by_rows)
            ]
    return tuple(strips)


def _upright_in_rows(grid: Grid) -> Iterator[_Place]:
    for row, high in enumerate(grid.rows):
        for column in range(len(grid.columns) - 1):
            yield _Place(high, grid.right_of(column), grid.row_shown(row))


def _level_in_columns(grid: Grid) -> Iterator[_Place]:
    for row in range(len(grid.rows) - 1):
        for column, wide in enumerate(grid.columns):
            yield _Place(wide, grid.column_shown(column), grid.below(row))


def _long(grid: Grid, *, by_rows: bool) -> list[_Place]:
    if by_rows:
        across = (-grid.wide / 2, grid.wide / 2)
        return [_Place(grid.wide, across, grid.below(row)) for row in range(len(grid.rows) - 1)]
    along = (-grid.high / 2, grid.high / 2)
    return [_Place(grid.high, grid.right_of(column), along) for column in range(len(grid.columns) - 1)]


def _alike(face: Face, where: str, places: list[_Place], *, upright: bool) -> list[JoiningStrip]:
    """Strips of one face, those of one length together."""
    by_length: dict[float, list[_Place]] = {}
    for place in places:
        by_length.setdefault(round(place.long, 6), []).append(place)
    return [
        JoiningStrip(
            name=face.named(where),
            fabric=face.fabric,
            cut=face.cut,
            long=alike[0].long,
            count=len(alike),
            front=tuple(area for one in alike if (area := one.shown(face.shows, upright=upright))),
        )
        for alike in by_length.values()
    ]


def _corner_squares(fabric: str, grid: Grid, face: Face) -> Iterator[JoiningStrip]:
    """Where the strips cross: sewn into the long strip with a seam at both ends, so cut as long as shows and two."""
    areas = tuple(
        area_between(grid.right_of(column), grid.below(row))
        for row in range(len(grid.rows) - 1)
        for column in range(len(grid.columns) - 1)
    )
    if areas:
        yield JoiningStrip("corner square", fabric, face.shows + 2 * grid.seam, face.cut, len(areas), areas)
