"""From the project to the whole piece: blocks in their places, the strips and triangles between them, borders."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from stitchflip.errors import BuildError
from stitchflip.finishing.joined.bases import all_under
from stitchflip.finishing.joined.borders import plan_borders
from stitchflip.finishing.joined.faces import Face, faces_of
from stitchflip.finishing.joined.joins import JoinCuts, check_join, join_cuts
from stitchflip.finishing.joined.kinds import places_of_kinds, row_counts
from stitchflip.finishing.joined.layouts import layouts_of
from stitchflip.finishing.joined.on_point import Diamond, on_point_strips
from stitchflip.finishing.joined.repairs import repairs_for
from stitchflip.finishing.joined.sizes import Grid
from stitchflip.finishing.joined.straight import straight_strips
from stitchflip.finishing.joined.triangles import setting_triangles
from stitchflip.finishing.joined.unequal import Blocks, blocks_as_joined
from stitchflip.finishing.joined.words import border_words, joining_words, triangle_words
from stitchflip.finishing.quilt_model import JoiningStrip, PlacedBlock, QuiltPlan, SettingTriangles
from stitchflip.lengths import TOLERANCE_IN, in_both_units
from stitchflip.piecing.geometry import box, clip_all, extent
from stitchflip.piecing.model import Polygon
from stitchflip.project.model import Joined, Project, Setting
from stitchflip.project.numbers import Numbers
from stitchflip.values import dataclass


def join_blocks(project: Project, joined: Joined, numbers: Numbers, block_taped: Polygon) -> QuiltPlan:
    """The whole piece made of joined blocks.

    Args:
        project: For its blocks and borders.
        joined: How they are joined.
        numbers: The maker's numbers.
        block_taped: Squared-up outline of one block, taped, about its center mark.

    Returns:
        The plan, raw edge to raw edge. A single piece with borders is joined as one
        across and one down.

    Raises:
        BuildError: If blocks cannot be joined: no rectangles, measured in the wrong number, used up by their seams.
    """
    is_joined = project.blocks_in_one > 1
    wide, high = _block_size(block_taped, joined)
    cuts = join_cuts(project, numbers, joined)
    check = check_join(numbers, joined, cuts)
    setting = _set(project, numbers, joined, cuts, (wide, high))
    if project.borders:
        setting = _inside_borders(setting, numbers.seam)
    borders, whole_wide, whole_high = plan_borders(
        project.borders, setting.wide, setting.high, numbers.seam, project.units
    )
    words = (
        list(joining_words(project, numbers, joined, cuts, check, setting.strips, (wide, high))) if is_joined else []
    )
    if setting.triangles is not None:
        words += triangle_words(project, numbers, joined, setting.triangles)
    words += border_words(project, numbers, borders)
    return QuiltPlan(
        wide=whole_wide,
        high=whole_high,
        outline=box((-whole_wide / 2, -whole_high / 2), (whole_wide / 2, whole_high / 2)),
        blocks=setting.placed,
        join=check,
        strips=setting.strips,
        triangles=setting.triangles,
        borders=borders,
        layouts=layouts_of(project, numbers, joined.setting, (joined.across, joined.down), setting.size_of),
        trimmed_to=setting.blocks.trimmed_to,
        repairs=repairs_for(project, numbers, joined, setting.blocks, cuts, (wide, high)),
        words=tuple(words),
        under=all_under(project, numbers, check, setting.strips, setting.triangles, borders),
    )


def _block_size(block: Polygon, joined: Joined) -> tuple[float, float]:
    """Width and height of one block, which must be a rectangle, on point a square."""
    (left, right), (low, high) = extent(block, 1, 0), extent(block, 0, 1)
    is_upright = len(block) == 4 and all(
        min(abs(x - left), abs(x - right)) + min(abs(y - low), abs(y - high)) < TOLERANCE_IN for x, y in block
    )
    if not is_upright:
        raise BuildError(
            what="only blocks with four straight sides and square corners meet at their joins",
            fix="Square the block up to a rectangle, or leave [joined] out.",
            where="squared_up",
            code="build.blocks-do-not-meet",
        )
    wide, tall = right - left, high - low
    if joined.setting is Setting.ON_POINT and abs(wide - tall) > TOLERANCE_IN:
        raise BuildError(
            what=f"blocks on point are square, and these are {in_both_units(wide)} by {in_both_units(tall)}",
            fix='Square the blocks up to a square, or write setting = "straight".',
            where="joined.setting",
            code="build.blocks-do-not-meet",
        )
    return wide, tall


@dataclass(frozen=True, slots=True)
class _Setting:
    """The joined blocks without borders; inches."""

    blocks: Blocks
    wide: float
    high: float
    placed: tuple[PlacedBlock, ...]
    strips: tuple[JoiningStrip, ...]
    triangles: SettingTriangles | None
    size_of: Callable[[int, int], tuple[float, float]]
    """Of so many across and down."""


def _inside_borders(setting: _Setting, seam: float) -> _Setting:
    """The same with strips and triangles shown only up to the seam of the first border."""
    x, y = setting.wide / 2 - seam, setting.high / 2 - seam
    planes = ((1.0, 0.0, x), (-1.0, 0.0, x), (0.0, 1.0, y), (0.0, -1.0, y))

    def inside(areas: tuple[Polygon, ...]) -> tuple[Polygon, ...]:
        return tuple(kept for area in areas if (kept := clip_all(area, planes)))

    triangles = setting.triangles
    return replace(
        setting,
        strips=tuple(replace(strip, front=inside(strip.front)) for strip in setting.strips),
        triangles=None if triangles is None else replace(triangles, places=inside(triangles.places)),
    )


def _set(project: Project, numbers: Numbers, joined: Joined, cuts: JoinCuts, wanted: tuple[float, float]) -> _Setting:
    between, seam = cuts.between(joined.join, numbers.seam), numbers.seam
    faces = faces_of(project, numbers, joined, cuts)
    if joined.setting is Setting.ON_POINT:
        return _on_point(project, numbers, joined, faces, between, wanted)
    counts = row_counts(joined)
    blocks = blocks_as_joined(project, joined, counts, wanted, seam)
    grid = Grid(blocks.columns, blocks.rows, between, seam)
    strips = (*straight_strips(project, numbers, joined, grid, faces), *frame_strips(project, joined, blocks, grid))

    def size_of(across: int, down: int) -> tuple[float, float]:
        least = min(blocks.columns), min(blocks.rows)
        other = Grid((least[0],) * across, (least[1],) * down, between, seam)
        return other.wide, other.high

    return _Setting(blocks, grid.wide, grid.high, _placed(project, joined, blocks, grid), strips, None, size_of)


def _placed(project: Project, joined: Joined, blocks: Blocks, grid: Grid) -> tuple[PlacedBlock, ...]:
    kinds = [kind for row in places_of_kinds(project.blocks, joined, blocks.counts) for kind in row]
    placed = []
    for row, high in enumerate(grid.rows):
        for column, wide in enumerate(grid.columns):
            (left, right), (low, top) = grid.column(column), grid.row(row)
            kind = kinds[blocks.cells[row * len(grid.columns) + column]]
            middle = ((left + right) / 2, (low + top) / 2)
            placed.append(PlacedBlock(kind, row, column, middle, 0.0, wide, high))
    return tuple(placed)


def frame_strips(project: Project, joined: Joined, blocks: Blocks, grid: Grid) -> tuple[JoiningStrip, ...]:
    """The strips that frame small blocks, those at the sides first.

    Args:
        project: For the fabric when the join names none.
        joined: For the fabric of the joining strips.
        blocks: The blocks, with their frame.
        grid: The blocks where they lie.
    """
    frame = blocks.frame
    if frame is None:
        return ()
    fabric = joined.fabric or project.binding.fabric or project.fabrics[0].name
    sides: list[Polygon] = []
    ends: list[Polygon] = []
    across = len(grid.columns)
    for index in frame.blocks:
        x, y = grid.column_shown(index % across), grid.row_shown(index // across)
        (left, right), (low, top) = grid.column(index % across), grid.row(index // across)
        inner_x = ((left + right - frame.inner_wide) / 2 + grid.seam, (left + right + frame.inner_wide) / 2 - grid.seam)
        inner_y = ((low + top - frame.inner_high) / 2 + grid.seam, (low + top + frame.inner_high) / 2 - grid.seam)
        if frame.side_cut:
            height = inner_y if frame.end_cut else y
            sides += [_area((x[0], inner_x[0]), height), _area((inner_x[1], x[1]), height)]
        if frame.end_cut:
            ends += [_area(x, (inner_y[1], y[1])), _area(x, (y[0], inner_y[0]))]
    made = []
    if sides:
        made.append(JoiningStrip("frame, sides", fabric, frame.side_cut, frame.inner_high, len(sides), tuple(sides)))
    if ends:
        made.append(JoiningStrip("frame, top and bottom", fabric, frame.end_cut, frame.wide, len(ends), tuple(ends)))
    return tuple(made)


def _area(x: tuple[float, float], y: tuple[float, float]) -> Polygon:
    return box((x[0], y[0]), (x[1], y[1]))


def _on_point(
    project: Project,
    numbers: Numbers,
    joined: Joined,
    faces: tuple[Face, ...],
    between: float,
    wanted: tuple[float, float],
) -> _Setting:
    seam = numbers.seam
    counts = row_counts(joined)
    blocks = blocks_as_joined(project, joined, counts, wanted, seam)
    size = min(blocks.columns[0], blocks.rows[0])
    diamond = Diamond(joined.across, joined.down, size, between, seam)
    kinds = places_of_kinds(project.blocks, joined, counts)
    placed = tuple(
        PlacedBlock(kind, row, column, diamond.middle(row, column), 45.0, size, size)
        for row, in_row in zip(diamond.rows(), kinds, strict=True)
        for column, kind in enumerate(in_row)
    )
    fabric = joined.triangle_fabric or joined.fabric or project.binding.fabric or project.fabrics[0].name

    def size_of(across: int, down: int) -> tuple[float, float]:
        other = Diamond(across, down, size, between, seam)
        return other.wide, other.high

    return _Setting(
        blocks=blocks,
        wide=diamond.wide,
        high=diamond.high,
        placed=placed,
        strips=on_point_strips(project, numbers, joined, diamond, faces),
        triangles=setting_triangles(diamond, joined, fabric, project.units, max(numbers.draw_up_x, numbers.draw_up_y)),
        size_of=size_of,
    )
