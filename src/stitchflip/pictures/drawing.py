"""The vocabulary every picture is drawn with: fabric, base, lines, names and sizes, each looking one way only."""

from __future__ import annotations

from math import atan2, degrees, hypot
from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker
from stitchflip.pictures.fabric_parts import parts
from stitchflip.pictures.ink import (
    BASE_EDGE,
    BATTING,
    CASING,
    FIRM,
    HAIR,
    INK,
    SOFT,
    SOFT_INK,
    STRONG,
    THIN,
    THREAD,
    pale,
)
from stitchflip.pictures.model import Area, Dash, Dimension, Line, Pen, Primitive, Text
from stitchflip.piecing.geometry import clip, edges, extent

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from stitchflip.piecing.model import Build, Point, Polygon, SewnPiece
    from stitchflip.planning.model import Letter, Plan
    from stitchflip.project.model import Project

BETWEEN_PATCHES = Pen(INK, THIN, casing=CASING)
BETWEEN_PALE = Pen(SOFT_INK, HAIR)
NEW_SEAM = Pen(THREAD, STRONG, Dash.SEAM, casing=CASING)
STITCHES = Pen(INK, FIRM, Dash.SEAM)
RAW_EDGE = Pen(INK, FIRM, Dash.RAW)
TRIM_LINE = Pen(INK, FIRM, Dash.TRIM, casing=CASING)
TRIM_LATER = Pen(SOFT, THIN, Dash.TRIM)
BASE_LINE = Pen(BASE_EDGE, THIN)
MARKED_LINE = Pen(BASE_EDGE, HAIR)
OUTLINE = Pen(INK, FIRM)

PALE = 0.68
"""Part of paper in fabric that is there already."""
QUIET = 0.5
"""Part of paper in fabric behind numbers."""

DIMENSION_OFF = 11.0
"""How far dimension lines stand off the drawing, points."""
DIMENSION_MARGIN = 21.0
"""Margin that takes one row of dimensions, points."""

_PATCH = "patch "
"""How the places of a numbered foundation are called."""
NUMBERED = "side "
"""How the name of an edge begins that is known by its number alone."""
SIDE_SIZE = 6.5
"""Size of the names of numbered edges, points."""
SIDE_IN = 6.5
"""How far inside their edge they stand, points."""


def letter_for(plan: Plan, fabric: str) -> Letter | None:
    """The letter, color and hatch of a fabric, None for one that has none."""
    return next((letter for letter in plan.letters if letter.fabric == fabric), None)


def color_of(plan: Plan, fabric: str) -> str:
    """Color of a fabric in the pictures."""
    found = letter_for(plan, fabric)
    if found is not None:
        return found.color
    return next((one.color for one in plan.project.fabrics if one.name == fabric), BATTING)


def piece_name(build: Build, piece: SewnPiece) -> str:
    """What a piece is called in pictures: its number in sewing order, or the name of the first piece.

    Patches of a numbered foundation are counted from the first, which has no line.
    """
    if is_numbered_from_first(build):
        return str(piece.step + 1)
    if piece.step:
        return str(piece.step)
    if build.first_is_done:
        return "half-done piece"
    if build.first_is_strip:
        return "middle" if build.first_is_middle else "first"
    return "center"


def is_numbered_from_first(build: Build) -> bool:
    """True for a numbered foundation: its first piece is patch 1."""
    return any(strip.side.startswith(_PATCH) for strip in build.strips[:1])


def patch(plan: Plan, piece: SewnPiece, polygon: Polygon, *, fabric: str = "") -> Area:
    """A patch in its fabric, as it will look; `fabric` where it is only a stretch of a pieced strip."""
    name = fabric or piece.fabric
    letter = letter_for(plan, name)
    hatch = letter.hatch if letter is not None else None
    return Area(polygon, color_of(plan, name), hatch, BETWEEN_PATCHES, name, what="patch", step=piece.step)


def patches(plan: Plan, piece: SewnPiece, polygon: Polygon) -> list[Primitive]:
    """A piece in its fabric, or in its fabrics when it was pieced beforehand."""
    return [patch(plan, piece, part, fabric=fabric) for fabric, part in parts(piece, polygon)]


def pale_patches(
    plan: Plan, piece: SewnPiece, polygon: Polygon, paper: float, *, is_taped: bool = False
) -> list[Primitive]:
    """A piece thinned with paper, so that what stands on it is read first.

    Args:
        plan: For the colors.
        piece: The piece.
        polygon: What of it is drawn, flat.
        paper: Part of paper in the color.
        is_taped: Draw it as the tape finds it after stitching.
    """
    pen = BETWEEN_PALE if paper > QUIET else BETWEEN_PATCHES
    return [
        Area(
            taped(plan.build, part) if is_taped else part,
            pale(color_of(plan, fabric), paper),
            None,
            pen,
            what="patch",
            step=piece.step,
        )
        for fabric, part in parts(piece, polygon)
    ]


def letters_of(plan: Plan, piece: SewnPiece) -> str:
    """The letter of a piece's fabric; of a strip pieced beforehand all of them, from its start."""
    return " ".join(plan.letter_of(section.fabric) for section in piece.sections) or plan.letter_of(piece.fabric)


def taped(build: Build, polygon: Iterable[Point]) -> Polygon:
    """Flat places as the tape finds them after stitching has drawn the piece in."""
    x, y = 1 - build.draw_up[0], 1 - build.draw_up[1]
    return tuple((px * x, py * y) for px, py in polygon)


def base_rectangle(plan: Plan) -> Polygon:
    """The base as cut, flat."""
    x, y = plan.base.wide / 2, plan.base.high / 2
    return ((-x, -y), (x, -y), (x, y), (-x, y))


def base_area(plan: Plan) -> Area:
    """The base, batting up."""
    return Area(base_rectangle(plan), BATTING, pen=BASE_LINE, what="base")


def outline_lines(polygon: Polygon, pen: Pen, what: str) -> Line:
    """A closed outline as one line; raw edges fray outward."""
    return Line((*polygon, polygon[0]), pen, what=what)


def bounds(points: Iterable[Point]) -> tuple[Point, Point]:
    """Lower left and upper right corner round some points."""
    polygon = tuple(points)
    (left, right), (low, top) = extent(polygon, 1, 0), extent(polygon, 0, 1)
    return (left, low), (right, top)


def as_cut(piece: SewnPiece) -> Polygon:
    """The opened strip as it is cut: no longer than its cut length, the extra shared by both ends."""
    if piece.seam is None or piece.cut_length <= 0:
        return piece.opened
    extra = max(piece.cut_length - piece.needed_length, 0.0) / 2
    tx, ty = -piece.normal[1], piece.normal[0]
    shorter = clip(piece.opened, tx, ty, piece.reach_end + extra)
    return clip(shorter, -tx, -ty, -(piece.reach_start - extra)) or piece.opened


def seen_after(pieces: Sequence[SewnPiece], last: int) -> list[tuple[SewnPiece, Polygon]]:
    """What is to be seen of each piece when step `last` has been sewn and opened, flat.

    Each strip hides what lies beyond its seam line, so earlier pieces end there.
    """
    sewn = [piece for piece in pieces if piece.step <= last]
    out = []
    for place, piece in enumerate(sewn):
        polygon = as_cut(piece)
        for later in sewn[place + 1 :]:
            polygon = clip(polygon, later.normal[0], later.normal[1], later.seam_at)
            if not polygon:
                break
        if polygon:
            out.append((piece, polygon))
    return out


def numbered_sides(plan: Plan, outline: Polygon, shift: float = 0.0) -> list[Primitive]:
    """The names of the edges, where they are numbered: inside along each edge of an outline of the piece.

    Args:
        plan: For the names and the ways the edges face.
        outline: The piece as drawn, with the same edges.
        shift: How far the words stand from the edge's middle along the edge, part of its length.

    Returns:
        One word for each edge; none for a piece whose edges are known by where they face.
    """
    items: list[Primitive] = []
    for side in plan.square_up.sides:
        if not side.name.startswith(NUMBERED):
            continue
        nx, ny = side.normal
        start, end = max(edges(outline), key=lambda ends: sum(nx * x + ny * y for x, y in ends))
        share = 0.5 + shift
        at = (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)
        slant = round((degrees(atan2(ny, nx)) - 1e-6) % 180 + 1e-6 - 90, 3)
        items.append(Text(at, side.name, SIDE_SIZE, slant, halo=True, shift=(-SIDE_IN * nx, -SIDE_IN * ny)))
    return items


def raw_edges(piece: SewnPiece) -> list[tuple[Point, Point]]:
    """The edges of an opened piece that are not its seam."""
    nx, ny = piece.normal
    out = []
    for start, end in edges(as_cut(piece)):
        on_seam = all(abs(nx * x + ny * y - piece.seam_at) < 1e-4 for x, y in (start, end))
        if piece.seam is None or not on_seam:
            out.append((start, end))
    return out


def wide_and_long(project: Project, x_in: float, y_in: float) -> tuple[float, float]:
    """(wide, long) from x and y extents, as the project runs."""
    from stitchflip.project.model import Runs

    return (x_in, y_in) if project.squared_up.length_runs is Runs.UP else (y_in, x_in)


def size_dimensions(
    plan: Plan, polygon: Polygon, state: str, beyond: Point = (0.0, 0.0)
) -> tuple[Primitive, Primitive]:
    """The two sizes of a whole, written outside it: across below, up at the right.

    Args:
        plan: For the unit and which way the length runs.
        polygon: What is measured; its box is dimensioned.
        state: The word that belongs to the size, such as "squared up" or "cut".
        beyond: How far the drawing goes on beyond it, right and below, inches.
    """
    from stitchflip.project.model import Runs

    say = Speaker(plan.project.units)
    (x0, y0), (x1, y1) = bounds(polygon)
    runs_up = plan.project.squared_up.length_runs is Runs.UP
    across, up = ("wide", "long") if runs_up else ("long", "wide")
    return (
        Dimension((x0, y0), (x1, y0), _size_texts(say.near(x1 - x0), across, state), -DIMENSION_OFF, beyond[1]),
        Dimension((x1, y0), (x1, y1), _size_texts(say.near(y1 - y0), up, state), -DIMENSION_OFF, beyond[0]),
    )


def _size_texts(size: str, way: str, state: str) -> tuple[str, ...]:
    return (f"{size} {way}, {state}", f"{size} {way}", size)


def distance(one: Point, other: Point) -> float:
    """How far two places are apart, inches."""
    return hypot(one[0] - other[0], one[1] - other[1])


def listed(words: Sequence[str]) -> str:
    """Words in a row as one says them: a, b and c."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} and {words[-1]}"


def counted(count: int, thing: str) -> str:
    """A count with its word: 1 strip, 4 strips."""
    return f"{count} {thing}{'' if count == 1 else 's'}"


def reading_angles(piece: SewnPiece) -> tuple[float, ...]:
    """Slants at which words on a piece are tried: upright first, then along the strip, never upside down."""
    along = degrees(atan2(piece.normal[1], piece.normal[0])) - 90
    while along > 90:
        along -= 180
    while along <= -90 + 1e-6:
        along += 180
    return (0.0,) if abs(along) < 1e-6 else (0.0, round(along, 3))


def natural_width(low: Point, high: Point, *, widest: float = 4.5) -> float:
    """Width on paper at which a picture of the whole piece reads well, inches.

    Args:
        low: Lower left corner of what is seen.
        high: Upper right corner.
        widest: For a piece about as wide as it is high; one that lies long takes the width of the page.
    """
    shape = (high[0] - low[0]) / (high[1] - low[1])
    if shape > 1.6:
        return 7.0
    return round(min(widest, max(1.8, 8.0 * shape)), 2)
