"""Blocks joined into a quilt, what goes round them, and a base that is cut apart: what belongs to which."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from stitchflip.project.agreements.fabrics import name_of
from stitchflip.project.agreements.piece import center
from stitchflip.project.agreements.strips import due_for, patches, rounds, strips
from stitchflip.project.agreements.tables import Disagreement, Path, Table, lacks, table_at, tables_at, too_many, way_in
from stitchflip.project.piece import shape_of_piece
from stitchflip.project.words import BorderCorners, Fold, Join, Outline, Setting, Triangles, Unequal, Way, meant

_JOIN_KEYS = {
    Join.FLAT_AND_FOLDED: ("flat_cut", "folded_cut", "fabric", "fabric_behind"),
    Join.COVERED: ("folded_cut", "shows", "fabric", "fabric_behind", "corner_squares"),
    Join.PLAIN_SEAM: (),
}
"""The keys that each join has for itself."""
_OWN = ("center", "building", "rounds", "steps", "patches")
"""What a kind of block may say for itself."""


def quilts(data: Table) -> Iterator[Disagreement]:
    """Everything made of several blocks, and panels cut from one base."""
    yield from _joined(data)
    yield from _blocks(data)
    yield from _borders(data)
    yield from _cut_apart(data)


def _joined(data: Table) -> Iterator[Disagreement]:
    table = table_at(data, "joined")
    if not table:
        return
    at: Path = ("joined",)
    yield from _rectangles_only(data, "blocks are joined")
    yield from _join(table, at)
    yield from _setting(table, at)
    yield from _grid(table, (*at, "measured"), "sizes")
    yield from _places(data, table)


def _join(table: Table, at: Path) -> Iterator[Disagreement]:
    """The strips that a join has, and no others; frames round small blocks have a fabric whatever the join."""
    join = meant(str(table.get("join", Join.FLAT_AND_FOLDED.value)), Join)
    if join is None:
        return
    why = f"the blocks are joined by {join.value}"
    is_framed = meant(str(table.get("unequal", "")), Unequal) is Unequal.FRAME
    may_have = {*_JOIN_KEYS[join], *(("fabric",) if is_framed else ())}
    for key in dict.fromkeys(key for keys in _JOIN_KEYS.values() for key in keys if key not in may_have):
        with_it = next(other for other, keys in _JOIN_KEYS.items() if key in keys)
        yield from too_many(table, at, (key,), why, f'no {key}, or join = "{with_it.value}"')
    if join is not Join.FLAT_AND_FOLDED and meant(str(table.get("fold", "")), Fold) is Fold.IN_FRONT:
        instead = f'no fold, or join = "{Join.FLAT_AND_FOLDED.value}"'
        yield Disagreement((*at, "fold"), f'fold = "{Fold.IN_FRONT.value}", though {why}', instead)
    if _JOIN_KEYS[join] and blocks_in_one(table) != 1:
        yield from lacks(table, at, ("fabric",), "strips show between the blocks")


def _setting(table: Table, at: Path) -> Iterator[Disagreement]:
    """Triangles round blocks on point, and none where they lie straight."""
    if _is_on_point(table):
        yield from lacks(table, at, ("triangle_fabric",), "triangles fill the edge of blocks on point")
        if meant(str(table.get("unequal", "")), Unequal) is Unequal.COLUMNS:
            found = f'unequal = "{Unequal.COLUMNS.value}", though blocks on point lie in slanted rows'
            would_do = f'unequal = "{Unequal.TRIM.value}" or "{Unequal.FRAME.value}"'
            yield Disagreement((*at, "unequal"), found, would_do)
        return
    instead = f'setting = "{Setting.ON_POINT.value}", or no such key'
    yield from too_many(table, at, ("triangle_fabric",), "the blocks lie straight", instead)
    if meant(str(table.get("triangles", "")), Triangles) not in {None, Triangles.TRADE}:
        yield Disagreement((*at, "triangles"), "triangles, though the blocks lie straight", instead)


def _is_on_point(joined: Table) -> bool:
    return meant(str(joined.get("setting", Setting.STRAIGHT.value)), Setting) is Setting.ON_POINT


def rows_of_blocks(joined: Table) -> list[int]:
    """Blocks in each row from the top, the rows between the others on point too; nothing when that cannot be told."""
    across, down = joined.get("across"), joined.get("down")
    if not isinstance(across, int) or not isinstance(down, int) or across < 1 or down < 1:
        return []
    if not _is_on_point(joined):
        return [across] * down
    return [across - row % 2 for row in range(2 * down - 1) if across - row % 2]


def blocks_in_one(joined: Table) -> int:
    """Blocks in one quilt; 0 when that cannot be told."""
    return sum(rows_of_blocks(joined))


def _grid(joined: Table, at: Path, what: str) -> Iterator[Disagreement]:
    """Rows of sizes or numbers that are as many as the blocks."""
    listed, due = joined.get(str(at[-1])), rows_of_blocks(joined)
    if not listed or not due or not isinstance(listed, Sequence) or isinstance(listed, str):
        return
    rows = [row.replace(",", " ").split() if isinstance(row, str) else row for row in listed]
    if len(rows) != len(due):
        yield Disagreement(at, f"{_counted(len(rows), 'row')} of {what}", f"{_counted(len(due), 'row')}, from the top")
        return
    for place, (row, blocks) in enumerate(zip(rows, due, strict=True)):
        if isinstance(row, Sequence) and len(row) != blocks:
            found = f"{_counted(len(row), what.removesuffix('s'))} in row {place + 1}"
            yield Disagreement((*at, place), found, f"{_counted(blocks, 'entry', 'entries')}, one for each block of it")


def _counted(number: int, one: str, several: str = "") -> str:
    return f"{number} {one if number == 1 else several or one + 's'}"


def _places(data: Table, joined: Table) -> Iterator[Disagreement]:
    """Numbers of kinds that are listed."""
    at: Path = ("joined", "places")
    rows = joined.get("places")
    if not rows or not isinstance(rows, Sequence) or isinstance(rows, str):
        return
    kinds = len(tables_at(data, "blocks"))
    if not kinds:
        yield Disagreement(at, "places, though no kinds of block are listed", "a [[blocks]] table for each kind")
        return
    yield from _grid(joined, at, "numbers")
    for place, row in enumerate(rows):
        for word in str(row).replace(",", " ").split():
            if not word.isdecimal() or not 1 <= int(word) <= kinds:
                found = f'"{word}" in row {place + 1}, which is no kind of block'
                would_do = f"numbers from 1 to {kinds}, as the kinds are listed" if kinds > 1 else "the number 1"
                yield Disagreement((*at, place), found, would_do)


def _blocks(data: Table) -> Iterator[Disagreement]:
    """Kinds of block: only in a quilt, each with a name, as many as there is room for, and each complete."""
    listed = tables_at(data, "blocks")
    if not listed:
        return
    if not isinstance(data.get("joined"), dict):
        yield Disagreement(("blocks",), "blocks, though none are joined", "a [joined] table with across and down")
    names: list[str] = []
    for place, block in listed:
        name = name_of(block.get("name")).casefold()
        if name and name in names:
            found = f'"{name_of(block["name"])}" a second time'
            yield Disagreement(("blocks", place, "name"), found, "a name of its own for each kind of block")
        names.append(name)
    yield from _counts(data, listed)
    known = {(one.path, one.found) for one in _as_built(data)}
    for place, block in listed:
        yield from _one_block(data, place, block, known)


def _counts(data: Table, listed: list[tuple[int, Table]]) -> Iterator[Disagreement]:
    """Counts that add up to the blocks of one quilt, or leave room for the kinds without a count."""
    joined = table_at(data, "joined")
    due = blocks_in_one(joined)
    counts = [block.get("count") for _, block in listed]
    given = [count for count in counts if isinstance(count, int)]
    if not due or not given or min(given) < 0:
        return
    total, last = sum(given), max(place for place, count in enumerate(counts) if isinstance(count, int))
    at: Path = ("blocks", listed[last][0], "count")
    if len(given) == len(counts) and total != due:
        yield Disagreement(at, f"{_counted(total, 'block')} in all", f"{due} in all, as many as are joined")
    elif total > due:
        yield Disagreement(at, f"{_counted(total, 'block')} in all", f"at most {due}, as many as are joined")
    else:
        yield from _laid(joined, listed, due)


def _laid(joined: Table, listed: list[tuple[int, Table]], due: int) -> Iterator[Disagreement]:
    """Counts that are not those of the places, when every place has its kind."""
    rows = joined.get("places")
    laid = Counter(" ".join(map(str, rows)).replace(",", " ").split() if isinstance(rows, list | tuple) else ())
    if sum(laid[str(kind)] for kind in range(1, len(listed) + 1)) != due:
        return
    for kind, (place, block) in enumerate(listed, start=1):
        if isinstance(block.get("count"), int) and block["count"] != laid[str(kind)]:
            found = f"{block['count']}, though {kind} stands {laid[str(kind)]} times under places"
            yield Disagreement(("blocks", place, "count"), found, "as many as its places, or no count")


def _as_built(data: Table) -> Iterator[Disagreement]:
    """What a piece, or one kind of block, lacks to be built."""
    yield from center(data)
    yield from strips(data)
    yield from rounds(data)
    yield from patches(data)


def _one_block(data: Table, place: int, block: Table, known: set[tuple[Path, str]]) -> Iterator[Disagreement]:
    """What one kind of block lacks that is not told of the whole project already."""
    own = {key: block[key] for key in _OWN if block.get(key) is not None}
    building = own.get("building")
    way = meant(str(table_at(data, "building").get("way", Way.LOG_CABIN.value)), Way)
    if isinstance(building, dict) and building.get("way") is None and way is not Way.LOG_CABIN:
        found = "nothing, though a block with a building of its own takes nothing over from the project's"
        yield Disagreement(("blocks", place, "building", "way"), found, "the way of building this kind of block")
        return
    for one in _as_built(_as_block(data, own)) if own else ():
        if one.path[0] in own or (one.path, one.found) not in known:
            at: Path = () if one.path[0] == "squared_up" else ("blocks", place)
            yield Disagreement((*at, *one.path), one.found, one.would_do)


def _as_block(data: Table, own: Table) -> Table:
    """The project as one kind of block has it, without what its own way of building has no use for."""
    whole = {**data, **own}
    way = way_in(whole)
    idle = {"rounds", "steps", "patches"} - {due_for(way)} | (
        {"center"} if way in {Way.STRINGS, Way.FOUNDATION} else set()
    )
    return {key: value for key, value in whole.items() if key in own or key not in idle}


def _borders(data: Table) -> Iterator[Disagreement]:
    """Borders round joined blocks, and squares where their corners are squares."""
    listed = tables_at(data, "borders")
    if listed and not isinstance(data.get("joined"), dict):
        found = "borders, though no blocks are joined"
        yield Disagreement(("borders",), found, "a [joined] table with across and down, 1 and 1 for a single piece")
    for place, border in listed:
        at: Path = ("borders", place)
        if meant(str(border.get("corners", BorderCorners.BUTTED.value)), BorderCorners) is BorderCorners.SQUARES:
            yield from lacks(border, at, ("corner_fabric",), "the border has corner squares")
        else:
            why = "the border has no corner squares"
            yield from too_many(border, at, ("corner_fabric",), why, f'corners = "{BorderCorners.SQUARES.value}"')


def _cut_apart(data: Table) -> Iterator[Disagreement]:
    table = data.get("cut_apart")
    if not isinstance(table, dict):
        return
    if isinstance(data.get("joined"), dict):
        yield Disagreement(("cut_apart",), "cut_apart, though blocks are joined", "either [cut_apart] or [joined]")
    yield from _rectangles_only(data, "it is cut into panels")
    if table.get("across", 1) == table.get("down", 1) == 1:
        yield Disagreement(("cut_apart",), "one panel", "across or down of 2 or more")


def _rectangles_only(data: Table, why: str) -> Iterator[Disagreement]:
    """Only pieces with four straight sides fit side by side."""
    table = table_at(data, "squared_up")
    shape = meant(shape_of_piece(dict(table)), Outline) if table else None
    if shape not in {None, Outline.RECTANGLE}:
        key = (
            "shape"
            if "shape" in table
            else next((key for key in ("sides", "across_flats", "across") if key in table), "shape")
        )
        yield Disagreement(
            ("squared_up", key), f"a squared-up piece that is no rectangle, though {why}", "wide and long"
        )
    if str(table.get("ends", "")).casefold().strip() == "pointed":
        yield Disagreement(("squared_up", "ends"), f"pointed ends, though {why}", 'ends = "square"')
