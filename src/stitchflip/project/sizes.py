"""From the table or the bed to the size to square up at, and from there to the first wash.

A runner that ends two inches before the table does was measured after it was sewn. Here the table comes first,
then what hangs over, then what the wash takes; the squared-up size is what is left to do.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Rounding, round_to
from stitchflip.project.beds import MATTRESSES
from stitchflip.project.house import HOUSE, SHRINK
from stitchflip.project.words import Covers, Fiber, Outline

if TYPE_CHECKING:
    from stitchflip.lengths import Length, Unit
    from stitchflip.project.model import MadeFor, Project

WideLong = tuple[float, float]
"""Wide × long, inches."""

OF_A_TABLE = 3
"""A runner takes one part in so many of the table's width."""


def size_grid(size_in: float, unit: Unit) -> float:
    """The step in which a size of this magnitude is told, inches: finer up to a yard (90 cm) than beyond.

    Args:
        size_in: a squared-up measure, inches.
        unit: the maker's unit.
    """
    fine = size_in <= HOUSE["large_size"].of(unit) + 1e-6
    return HOUSE["size_step" if fine else "large_size_step"].of(unit)


def made_for_size(made_for: MadeFor, unit: Unit) -> tuple[float | None, float | None]:
    """What the table or bed asks for, wide × long, inches, each None where its measures are not given.

    A runner takes a third of the table's width and hangs over both ends, or stops short of them; a cloth hangs over
    all four edges; on a bed the piece hangs down at both sides and the foot, and may be tucked round the pillows.

    Args:
        made_for: the table or bed.
        unit: the maker's unit, for the usual hang and drop and for the grid.

    Example:
        >>> from stitchflip.lengths import Length, Unit
        >>> from stitchflip.project.model import MadeFor
        >>> table = MadeFor(table_wide="36", table_long="60", hang="6")
        >>> made_for_size(table, Unit.INCH)
        (12.0, 72.0)
    """
    if made_for.mattress or made_for.mattress_wide is not None or made_for.mattress_long is not None:
        return _for_a_bed(made_for, unit)
    is_runner = made_for.covers is Covers.RUNNER
    hang = _or_house(made_for.hang, "runner_hangs" if is_runner else "cloth_hangs", unit)
    if made_for.short_of_ends is not None:
        hang = -made_for.short_of_ends.inches
    wide, long = _inches(made_for.table_wide), _inches(made_for.table_long)
    if wide is not None:
        wide = _told(wide / OF_A_TABLE if is_runner else wide + 2 * hang, unit)
    return wide, None if long is None else _told(long + 2 * hang, unit)


def _for_a_bed(made_for: MadeFor, unit: Unit) -> tuple[float | None, float | None]:
    """Both sides and the foot hang down; own measures win over those of the mattress's name."""
    named = MATTRESSES.get(made_for.mattress)
    wide = _inches(made_for.mattress_wide or (named.wide if named else None))
    long = _inches(made_for.mattress_long or (named.long if named else None))
    drop = _or_house(made_for.drop, "bed_drop", unit)
    tuck = 0.0 if made_for.tuck is None else made_for.tuck.inches
    return (
        None if wide is None else _told(wide + 2 * drop, unit),
        None if long is None else _told(long + drop + tuck, unit),
    )


def _inches(length: Length | None) -> float | None:
    return None if length is None else length.inches


def _or_house(length: Length | None, name: str, unit: Unit) -> float:
    return HOUSE[name].of(unit) if length is None else length.inches


def _told(size_in: float, unit: Unit) -> float:
    """A computed size on the grid of sizes, the nearest; never zero or less."""
    grid = size_grid(size_in, unit)
    return max(round_to(size_in, grid, Rounding.NEAREST), grid)


def stated_size(project: Project) -> WideLong | None:
    """Wide × long as the project states it, inches: its own measures, else what the table or bed asks for.

    Args:
        project: the project; where blocks are joined or panels cut apart, the size is that of one of them, and the
            table or bed says nothing about it.

    Returns:
        None where the size is given another way: by sides and flats, round, or beyond the points.
    """
    wanted = project.squared_up
    if wanted.shape in {Outline.POLYGON, Outline.ROUND}:
        return None
    wide, long = _inches(wanted.wide), _inches(wanted.long)
    is_one_piece = project.joined is None and project.cut_apart is None
    if project.made_for is not None and is_one_piece and wanted.beyond_points is None:
        asked = made_for_size(project.made_for, project.units)
        wide, long = asked[0] if wide is None else wide, asked[1] if long is None else long
    return None if wide is None or long is None else (wide, long)


def wanted_size(project: Project) -> WideLong | None:
    """Wide × long to square up at, before the first wash, inches; None as in `stated_size`.

    Args:
        project: the project; where it wants its size after washing, what the wash takes is added here.

    Example:
        >>> from stitchflip.project.reading import project_from
        >>> mat = {"name": "Mat", "fabrics": [{"name": "Oat"}], "binding": {"fabric": "Oat"}}
        >>> size = {"wide": "18", "long": "13", "after_washing": True}
        >>> wanted_size(project_from({**mat, "squared_up": size}))
        (18.75, 13.5)
    """
    stated = stated_size(project)
    if stated is None or not project.squared_up.after_washing:
        return stated
    across, along = wash_shrink(project)
    return before_washing(stated[0], across, project.units), before_washing(stated[1], along, project.units)


def wanted_across(project: Project) -> float | None:
    """Across a polygon's flats or a round piece, to square up at, inches; None for other shapes.

    Args:
        project: the project; wanted after washing, the direction that shrinks more decides.
    """
    wanted = project.squared_up
    across = {Outline.POLYGON: wanted.across_flats, Outline.ROUND: wanted.across}.get(wanted.shape)
    if across is None:
        return None
    if not wanted.after_washing:
        return across.inches
    return before_washing(across.inches, max(wash_shrink(project)), project.units)


def before_washing(washed_in: float, shrink: float, unit: Unit) -> float:
    """The size to make for one wanted after the first wash, up to the grid of sizes, inches.

    Args:
        washed_in: wanted after washing, inches.
        shrink: fraction the wash takes of the size before it, 0 to 0.2.
        unit: the maker's unit.

    Example:
        >>> from stitchflip.lengths import Unit
        >>> before_washing(90, 0.05, Unit.INCH), before_washing(90, 0.1, Unit.INCH)
        (95.0, 100.0)
    """
    made = washed_in / (1 - shrink)
    return washed_in if shrink <= 0 else round_to(made, size_grid(made, unit), Rounding.UP)


def wash_shrink(project: Project) -> tuple[float, float]:
    """What the first wash takes off the width and the length, fractions."""
    mine = project.my_numbers
    usual = 0.0 if project.batting.fiber is Fiber.POLYESTER else SHRINK
    across = usual if mine.shrink_across is None else mine.shrink_across
    return across, usual if mine.shrink_along is None else mine.shrink_along
