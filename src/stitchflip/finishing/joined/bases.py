"""What lies under a quilt besides its blocks: bases of setting triangles, batting and backing of borders, fillers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from stitchflip.finishing.joined.borders import border_adds
from stitchflip.finishing.quilt_model import BorderPlan, JoinCheck, JoiningStrip, SettingTriangles, Under
from stitchflip.lengths import TOLERANCE_IN, Rounding, round_to
from stitchflip.project.model import Project, Through
from stitchflip.project.numbers import Numbers


def under_triangles(numbers: Numbers, triangles: SettingTriangles) -> Iterator[Under]:
    """Bases for the squares that setting triangles are cut from: they are layered and quilted whole.

    Args:
        numbers: For spare, and how bases are rounded.
        triangles: The triangles.
    """
    for name, count, square in (
        ("side triangles", triangles.side_squares, triangles.side_cut),
        ("corner triangles", triangles.corner_squares, triangles.corner_cut),
    ):
        if count:
            size = (
                round_to(square + 2 * numbers.spare_x, numbers.round_base_to, Rounding.UP),
                round_to(square + 2 * numbers.spare_y, numbers.round_base_to, Rounding.UP),
            )
            yield Under(name, count, size, size)


def under_borders(numbers: Numbers, borders: Sequence[BorderPlan]) -> Iterator[Under]:
    """Batting as wide as a border adds, butted to what is there, and a strip of backing as wide as the border.

    Args:
        numbers: For the seam as stitched.
        borders: From the inside out.
    """
    for number, border in enumerate(borders, 1):
        adds = border_adds(border.cut, numbers.seam)
        called = f"border no. {number}" if len(borders) > 1 else "border"
        if adds > TOLERANCE_IN:
            for where, long in (("sides", border.sides_long), ("top and bottom", border.ends_long)):
                yield Under(f"{where} of the {called}", 2, (adds, long), (border.cut, long))


def under_joins(check: JoinCheck, strips: Sequence[JoiningStrip]) -> Iterator[Under]:
    """The strips of batting that fill the gaps between blocks, as long as what shows above them.

    Args:
        check: The join in section.
        strips: All joining strips; those that show on the front count.
    """
    if check.filler <= TOLERANCE_IN:
        return
    for strip in strips:
        if strip.front and strip.name.startswith(("strip", "flat")):
            name = strip.name.removesuffix(", front")
            yield Under(f"filler below each {name}", strip.count, (check.filler, strip.long), None)


def all_under(
    project: Project,
    numbers: Numbers,
    check: JoinCheck,
    strips: Sequence[JoiningStrip],
    triangles: SettingTriangles | None,
    borders: Sequence[BorderPlan],
) -> tuple[Under, ...]:
    """Everything of the kind, for one quilt; without backing where that is added later in one piece."""
    found = [
        *(under_triangles(numbers, triangles) if triangles is not None else ()),
        *under_borders(numbers, borders),
        *under_joins(check, strips),
    ]
    if project.base.through is Through.BACKING_AND_BATTING:
        return tuple(found)
    return tuple(Under(one.name, one.count, one.batting, None) for one in found)
