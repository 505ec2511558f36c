"""From the project's words to outlines: the trim edge (taped) and the first piece (flat)."""

from __future__ import annotations

from math import atan2, degrees, pi
from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.lengths import Unit
from stitchflip.piecing.geometry import (
    area,
    box,
    extent,
    half_planes,
    moved,
    regular,
    scaled,
    shifted,
    turned,
)
from stitchflip.piecing.outlines import ellipse, rounded_box
from stitchflip.project.model import Center, CenterShape, Ends, Outline, Project, Runs
from stitchflip.project.sizes import wanted_across, wanted_size

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.lengths import Length
    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.project.numbers import Numbers


def trim_polygon(project: Project, numbers: Numbers) -> Polygon:
    """The squared-up outline, taped, about the center mark; of a base that is cut apart, all its panels together.

    Raises:
        BuildError: If the wanted size leaves no piece (say, points that meet before the long sides begin).
    """
    piece = panel_polygon(project, numbers)
    if project.cut_apart is None:
        return piece
    (left, right), (low, high) = extent(piece, 1, 0), extent(piece, 0, 1)
    across, down = project.cut_apart.across, project.cut_apart.down
    loss = 0.0 if project.cut_apart.loss is None else project.cut_apart.loss.inches
    half_x = (across * (right - left) + (across - 1) * loss) / 2
    half_y = (down * (high - low) + (down - 1) * loss) / 2
    return box((-half_x, -half_y), (half_x, half_y))


def panel_polygon(project: Project, numbers: Numbers) -> Polygon:
    """The outline of one squared-up piece, taped, about its own middle: one panel of a base that is cut apart.

    Raises:
        BuildError: If the wanted size leaves no piece.
    """
    wanted = project.squared_up
    if wanted.shape is Outline.POLYGON:
        across = wanted_across(project) or _inches(wanted.across_flats, "squared_up.across_flats")
        return regular(_need_count(wanted.sides), across, wanted.turned)
    if wanted.shape is Outline.ROUND:
        across = wanted_across(project) or _inches(wanted.across, "squared_up.across")
        return ellipse(across, across)
    wide, high = _trim_size(project, numbers)
    if wanted.shape is Outline.OVAL:
        return ellipse(wide, high)
    if wanted.ends is Ends.POINTED:
        return _pointed(wide / 2, high / 2, across=wanted.length_runs is Runs.ACROSS)
    if wanted.corner_radius is not None:
        return rounded_box(wide, high, wanted.corner_radius.inches, project.units)
    return box((-wide / 2, -high / 2), (wide / 2, high / 2))


def _trim_size(project: Project, numbers: Numbers) -> Point:
    """(x, y) extents of a rectangular or oval trim."""
    wanted = project.squared_up
    if wanted.beyond_points is not None:
        first = center_polygon(project, numbers)
        inner = scaled(moved(first, -numbers.seam), 1 - numbers.draw_up_x, 1 - numbers.draw_up_y)
        if not inner:
            raise BuildError(
                what="nothing of the center would show inside its seams, so there are no points to go beyond",
                fix="Cut the center larger than its two seams, or give the size as wide and long.",
                where="center",
                code="build.center-too-small",
            )
        beyond = wanted.beyond_points.inches
        reach_x = max(abs(place) for place in extent(inner, 1, 0))
        reach_y = max(abs(place) for place in extent(inner, 0, 1))
        return 2 * (reach_x + beyond), 2 * (reach_y + beyond)
    size = wanted_size(project)
    if size is None:
        size = _inches(wanted.wide, "squared_up.wide"), _inches(wanted.long, "squared_up.long")
    wide, long = size
    return (wide, long) if wanted.length_runs is Runs.UP else (long, wide)


def _pointed(half_x: float, half_y: float, *, across: bool) -> Polygon:
    """A rectangle whose two short ends are 45-degree points."""
    if across:
        shoulder = half_x - half_y
        corners = (
            (-shoulder, -half_y),
            (shoulder, -half_y),
            (half_x, 0.0),
            (shoulder, half_y),
            (-shoulder, half_y),
            (-half_x, 0.0),
        )
    else:
        shoulder = half_y - half_x
        corners = (
            (0.0, -half_y),
            (half_x, -shoulder),
            (half_x, shoulder),
            (0.0, half_y),
            (-half_x, shoulder),
            (-half_x, -shoulder),
        )
    if shoulder <= 0:
        raise BuildError(
            what="the two pointed ends would meet before the long sides begin",
            fix="Make the piece longer than it is wide, or give it square ends.",
            where="squared_up",
            code="build.points-meet",
        )
    return corners


def cover_polygon(project: Project, numbers: Numbers) -> Polygon:
    """What the strips must cover: the trim edge in the flat frame, moved out by the reach."""
    return moved(flat(trim_polygon(project, numbers), numbers), numbers.reach)


def flat(taped: Polygon, numbers: Numbers) -> Polygon:
    """A taped outline as it lies on the base before any stitching."""
    return scaled(taped, 1 / (1 - numbers.draw_up_x), 1 / (1 - numbers.draw_up_y))


def center_polygon(project: Project, numbers: Numbers) -> Polygon:
    """The center's raw edges as laid on the base, flat.

    A half-done piece is given as the tape found it, so it is carried to the flat frame.

    Raises:
        BuildError: If the project has no center or its shape cannot be made from what is given.
    """
    center = project.center
    if center is None:
        raise BuildError(
            what="this way of building begins with a center, and none is given",
            fix="Add a [center] with its fabric and cut size, or choose rows of strips.",
            where="center",
            code="build.no-center",
        )
    scale = 1.0 if project.units is Unit.INCH else 1 / 2.54
    corners = turned(_center_shape(center, scale), center.turned)
    placed = shifted(corners, center.off_center[0] * scale, center.off_center[1] * scale)
    return flat(placed, numbers) if center.sewn_already else placed


def center_cut(project: Project, raw: Polygon) -> tuple[float, float]:
    """(wide, long) of the rectangle that the center is cut from, print upright.

    A square or rectangle is cut as it is, whatever its turn; other shapes come out of the smallest upright
    rectangle round them with one edge along an edge of the shape; of two alike the squarer, so that a half square
    comes out of its square.
    """
    center = project.center
    if center is not None and center.shape is CenterShape.SQUARE and center.cut is not None:
        return center.cut.inches, center.cut.inches
    if center is not None and center.cut_wide is not None and center.cut_long is not None:
        return center.cut_wide.inches, center.cut_long.inches
    boxes = []
    for nx, ny, _ in half_planes(raw):
        across, along = extent(raw, nx, ny), extent(raw, -ny, nx)
        boxes.append((along[1] - along[0], across[1] - across[0]))
    return min(boxes, key=lambda size: (round(size[0] * size[1], 6), round(max(size), 6)))


def is_slanted(turned: float) -> bool:
    """True when a piece turned by so many degrees lies off the straight grain by more than one."""
    return min(turned % 90, 90 - turned % 90) > 1


def _center_shape(center: Center, scale: float) -> Polygon:
    match center.shape:
        case CenterShape.SQUARE:
            half = _inches(center.cut, "center.cut") / 2
            return box((-half, -half), (half, half))
        case CenterShape.RECTANGLE:
            wide = _inches(center.cut_wide, "center.cut_wide") / 2
            long = _inches(center.cut_long, "center.cut_long") / 2
            return box((-wide, -long), (wide, long))
        case CenterShape.POLYGON:
            return regular(_need_count(center.sides), _inches(center.cut, "center.cut"), 0.0)
        case CenterShape.HALF_SQUARE:
            half_long = _inches(center.cut, "center.cut") / 2**0.5
            return ((-half_long, 0.0), (half_long, 0.0), (0.0, half_long))
        case CenterShape.CORNERS:
            corners = tuple((x * scale, y * scale) for x, y in center.corners or ())
            return corners if area(corners) > 0 else tuple(reversed(corners))


def _inches(value: Length | None, where: str) -> float:
    if value is None or value.inches <= 0:
        raise BuildError(
            what=f"{where} is missing",
            fix=f"Give {where} a length above zero.",
            where=where,
            code="build.size-missing",
        )
    return value.inches


def _need_count(sides: int | None) -> int:
    if sides is None or sides < 3:
        raise BuildError(
            what=f"a polygon has 3 sides or more, not {sides}",
            fix="Give the number of sides.",
            where="sides",
            code="build.size-missing",
        )
    return sides


_COMPASS = ("right", "upper right", "top", "upper left", "left", "lower left", "bottom", "lower right")


def side_names(normals: tuple[Point, ...]) -> tuple[str, ...]:
    """Names of sides by where they face: top, upper right ...; numbered when they face elsewhere or share a name.

    Args:
        normals: Outward unit normals in counter-clockwise order.

    Example:
        >>> side_names(((0.0, -1.0), (1.0, 0.0), (0.0, 1.0), (-1.0, 0.0)))
        ('bottom', 'right', 'top', 'left')
    """
    names = []
    for nx, ny in normals:
        eighth = degrees(atan2(ny, nx)) / 45
        nearest = round(eighth)
        names.append(_COMPASS[nearest % 8] if abs(eighth - nearest) < 0.1 else "")
    if len(normals) > 4 or "" in names or len(set(names)) < len(names):
        return tuple(f"side {number}" for number in range(1, len(normals) + 1))
    return tuple(names)


def corner_name(direction: Point) -> str:
    """Name of a corner or point by where it lies from the middle: "upper point", "right point" ..."""
    names = ("right", "upper right", "upper", "upper left", "left", "lower left", "lower", "lower right")
    eighth = round(atan2(direction[1], direction[0]) / (pi / 4)) % 8
    return f"{names[eighth]} point"


def corner_names(directions: Sequence[Point]) -> tuple[str, ...]:
    """Names of the corners of one outline, each its own.

    In a long flat rectangle two corners lie nearest to "left"; they are told as upper left and lower left.

    Example:
        >>> corner_names(((-3.0, -0.5), (3.0, -0.5), (3.0, 0.5), (-3.0, 0.5)))
        ('lower left point', 'lower right point', 'upper right point', 'upper left point')
    """
    names = [corner_name(direction) for direction in directions]
    quarters = [f"{'upper' if y >= 0 else 'lower'} {'right' if x >= 0 else 'left'} point" for x, y in directions]
    told = [quarter if names.count(name) > 1 else name for name, quarter in zip(names, quarters, strict=True)]
    numbered = [f"point {place}" for place in range(1, len(told) + 1)]
    return tuple(number if told.count(name) > 1 else name for name, number in zip(told, numbered, strict=True))
