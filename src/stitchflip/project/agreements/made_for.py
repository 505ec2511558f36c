"""The table or bed a piece is made for: one of the two, and what it says about the size."""

from __future__ import annotations

from collections.abc import Iterator

from stitchflip.project.agreements.tables import Disagreement, Path, Table, table_at, ticks
from stitchflip.project.piece import shape_of_piece
from stitchflip.project.words import Covers, Outline, meant

_TABLE = ("table_wide", "table_long", "hang", "short_of_ends")
_BED = ("mattress", "mattress_wide", "mattress_long", "drop", "tuck")


_GIVES = {"wide": ("mattress", "mattress_wide", "table_wide"), "long": ("mattress", "mattress_long", "table_long")}


def sizes_it_gives(data: Table) -> frozenset[str]:
    """Which of wide and long the table or bed gives; none where blocks are joined or panels cut apart."""
    if data.get("joined") is not None or data.get("cut_apart") is not None:
        return frozenset()
    table = table_at(data, "made_for")
    return frozenset(size for size, keys in _GIVES.items() if any(table.get(key) for key in keys))


def made_for(data: Table) -> Iterator[Disagreement]:
    """A table or a bed, not both; hanging over or stopping short, not both; and measures enough for the size."""
    table = table_at(data, "made_for")
    if not table:
        return
    yield from _sizes(data)
    yield from _itself(table, ("made_for",))


def _sizes(data: Table) -> Iterator[Disagreement]:
    """What neither the piece nor the table or bed says of a rectangle's size."""
    wanted = table_at(data, "squared_up")
    shape = meant(shape_of_piece(dict(wanted)), Outline)
    if not wanted or shape is not Outline.RECTANGLE or wanted.get("beyond_points") is not None:
        return
    is_one_piece = data.get("joined") is None and data.get("cut_apart") is None
    for size in sorted({"wide", "long"} - sizes_it_gives(data), reverse=True):
        if wanted.get(size) is None:
            what = "what it is made for does not tell it" if is_one_piece else "it is the size of one block or panel"
            yield Disagreement(("squared_up", size), f"nothing, though {what}", f"a value for {size}")


def _itself(table: Table, at: Path) -> Iterator[Disagreement]:
    """What the table or bed says."""
    on_bed = [key for key in _BED if table.get(key)]
    on_table = [key for key in _TABLE if table.get(key) is not None]
    if on_bed and on_table:
        found = f"{on_bed[0]}, though {on_table[0]} says it is made for a table"
        yield Disagreement((*at, on_bed[0]), found, "measures of a table, or of a bed")
        return
    if not any(table.get(key) for key in ("table_wide", "table_long", "mattress", "mattress_wide", "mattress_long")):
        found = "no measure of what it is made for"
        yield Disagreement((*at, "table_long"), found, "table_wide and table_long, or a mattress")
    covers = meant(str(table.get("covers", Covers.RUNNER.value)), Covers)
    if table.get("short_of_ends") is not None:
        instead = "hang, or short_of_ends of a runner"
        if table.get("hang") is not None:
            yield Disagreement((*at, "short_of_ends"), "short_of_ends and hang together", instead)
        elif covers is Covers.WHOLE_TABLE:
            yield Disagreement((*at, "short_of_ends"), "short_of_ends, though the whole table is covered", instead)
        short, long = ticks(table["short_of_ends"]), ticks(table.get("table_long"))
        if short is not None and long is not None and 2 * short >= long:
            found = "half the table or more, at each end, so that nothing is left of the runner"
            yield Disagreement((*at, "short_of_ends"), found, "less than half of table_long")
