"""One long base cut into panels after sewing: where the cuts run, and every seam that a cut opens.

Sewn as one piece and cut like bread, panels save the handling of small bases; but a seam that a cut goes through has
no end that anything holds. It is locked on both sides of the cut before cutting, or stay-stitched along it.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from stitchflip.finishing.edge_model import PanelsPlan
from stitchflip.piecing.geometry import TOLERANCE, extent, shifted
from stitchflip.piecing.shapes import panel_polygon

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.model import Build, Point
    from stitchflip.project.model import Project
    from stitchflip.project.numbers import Numbers

Cut = tuple["Point", "Point"]


def plan_panels(project: Project, numbers: Numbers, build: Build) -> PanelsPlan | None:
    """The panels, the cuts between them, and the seams that the cuts open; None when nothing is cut apart.

    Args:
        project: For how many panels lie side by side and one above the other, and what is lost between them.
        numbers: The maker's numbers.
        build: The build of the whole base.

    Returns:
        Panels row by row from the top. With a loss there are two cuts between neighbors, else one. A seam that lies
        along a cut is not opened by it; its ends are.
    """
    apart = project.cut_apart
    if apart is None:
        return None
    panel = panel_polygon(project, numbers)
    (left, right), (low, high) = extent(panel, 1, 0), extent(panel, 0, 1)
    wide, tall = right - left, high - low
    middle = ((left + right) / 2, (low + high) / 2)
    loss = 0.0 if apart.loss is None else apart.loss.inches
    xs, ys = _middles(apart.across, wide, loss), _middles(apart.down, tall, loss)
    half_x, half_y = xs[-1] + wide / 2, ys[-1] + tall / 2
    upright = [((x, -half_y), (x, half_y)) for x in _between(xs, wide)]
    level = [((-half_x, y), (half_x, y)) for y in _between(ys, tall)]
    cuts = (*upright, *level)
    return PanelsPlan(
        across=apart.across,
        down=apart.down,
        wide=wide,
        high=tall,
        loss=loss,
        panels=tuple(shifted(panel, x - middle[0], y - middle[1]) for y in reversed(ys) for x in xs),
        cuts=cuts,
        ends_to_lock=tuple(_opened(build, cuts)),
    )


def _middles(count: int, size: float, loss: float) -> list[float]:
    """Where the middles of so many panels lie, from the middle of the whole."""
    first = -(count - 1) * (size + loss) / 2
    return [first + place * (size + loss) for place in range(count)]


def _between(middles: list[float], size: float) -> Iterator[float]:
    """Places of the cuts between neighbors: the far edge of one panel and, with a loss, the near edge of the next."""
    for one, other in pairwise(middles):
        yield one + size / 2
        if other - size / 2 - (one + size / 2) > TOLERANCE:
            yield other - size / 2


def _opened(build: Build, cuts: tuple[Cut, ...]) -> Iterator[tuple[int, Point]]:
    """(step, place) of every seam that a cut goes through, taped, in the order sewn."""
    for strip in build.strips:
        if strip.seam is None:
            continue
        start, end = (_taped(build, place) for place in (strip.seam.start.at, strip.seam.end.at))
        for cut in cuts:
            place = _crossing((start, end), cut)
            if place is not None:
                yield strip.step, place


def _taped(build: Build, place: Point) -> Point:
    return (place[0] * (1 - build.draw_up[0]), place[1] * (1 - build.draw_up[1]))


def _crossing(seam: Cut, cut: Cut) -> Point | None:
    """Where a seam passes from one side of an upright or level cut to the other, on the cut; None when it does not."""
    axis = 0 if abs(cut[0][0] - cut[1][0]) < TOLERANCE else 1
    line = cut[0][axis]
    before, after = seam[0][axis] - line, seam[1][axis] - line
    if before * after >= 0 or min(abs(before), abs(after)) <= TOLERANCE:
        return None
    share = before / (before - after)
    x, y = (seam[0][part] + share * (seam[1][part] - seam[0][part]) for part in (0, 1))
    along = (x, y)[1 - axis]
    low, high = sorted((cut[0][1 - axis], cut[1][1 - axis]))
    return (x, y) if low - TOLERANCE <= along <= high + TOLERANCE else None
