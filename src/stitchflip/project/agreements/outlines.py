"""Corners that make an outline strips can be sewn round, and those that make none."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from stitchflip.project.agreements.tables import Disagreement, Path

Point = tuple[float, float]

_STRAIGHT = 1e-6
"""Twice the area of a corner's triangle below which it is no corner."""


def outline_of(corners: object, at: Path) -> Iterator[Disagreement]:
    """Corners that make no outline a strip can be sewn round.

    Args:
        corners: as written, of any type.
        at: where they stand.
    """
    if not isinstance(corners, Sequence) or isinstance(corners, str):
        return
    places = [place_in(corner) for corner in corners]
    if any(place is None for place in places):
        return
    points = [place for place in places if place is not None]
    if len(points) < 3:
        yield Disagreement(at, f"{len(points)} corners", "three corners or more")
        return
    total = len(points)
    turns = [_turn(points[place - 1], points[place], points[(place + 1) % total]) for place in range(total)]
    area = sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(points, points[1:] + points[:1], strict=True)) / 2
    if area < 0 and all(turn < 0 for turn in turns):
        yield Disagreement(at, "corners listed clockwise", "the same corners counter-clockwise (in the other order)")
        return
    for place, turn in enumerate(turns):
        if turn * (1 if area >= 0 else -1) <= _STRAIGHT:
            x, y = points[place]
            found = f"corner {place + 1} at ({x:g}, {y:g}), where the outline does not bend outward"
            yield Disagreement((*at, place), found, "an outline that bends outward at each corner, counter-clockwise")
    if all(turn > _STRAIGHT for turn in turns) and _goes_round_more_than_once(points):
        yield Disagreement(at, "an outline that crosses itself", "corners in the order in which they lie")


def place_in(corner: object) -> Point | None:
    """A place right of and above the center mark as numbers; None when it cannot be told here."""
    if not isinstance(corner, Sequence) or isinstance(corner, str) or len(corner) != 2:
        return None
    x, y = corner
    if isinstance(x, int | float) and isinstance(y, int | float) and abs(x) < 1e6 and abs(y) < 1e6:
        return (float(x), float(y))
    return None


def _turn(before: Point, here: Point, after: Point) -> float:
    """Above zero where the outline turns left."""
    return (here[0] - before[0]) * (after[1] - here[1]) - (here[1] - before[1]) * (after[0] - here[0])


def _goes_round_more_than_once(points: list[Point]) -> bool:
    """True for a star: it turns left at every corner and goes round twice."""
    from math import atan2, pi

    total = len(points)
    ways = [atan2(points[(k + 1) % total][1] - y, points[(k + 1) % total][0] - x) for k, (x, y) in enumerate(points)]
    turned = sum((ways[(k + 1) % total] - ways[k]) % (2 * pi) for k in range(total))
    return turned > 2 * pi + 1
