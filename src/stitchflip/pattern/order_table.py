"""The order of sewing as one table: steps, fabric, cut size, and where each raw edge should be."""

from __future__ import annotations

from collections.abc import Sequence

from stitchflip.pattern.model import Align, Block, Column, Columns, Paragraph, Table, Words, muted, words
from stitchflip.pattern.strip_facts import has_own_line
from stitchflip.pattern.telling import Piecewise, Teller, runs_of_strips
from stitchflip.piecing.model import Point, SewnPiece
from stitchflip.project.model import Working

_MOST_ROWS = 18
"""Rows of one table across the page; more stand in two tables side by side."""
_MOST_ROWS_OF_LINES = 24
_MOST_IN_ALL = 52
"""Rows a one-page sheet can carry; a longer build points to the pattern."""


def order_tables(teller: Teller) -> tuple[Block, ...]:
    """Steps with their strips' cut sizes and the places of their raw edges.

    Args:
        teller: speaks about the plan.

    Returns:
        A row for each run of strips of one round, fabric and width, in sewing order: one table, or two side by
        side for a long build.
    """
    if has_own_line(teller):
        return _lines(teller)
    groups = runs_of_strips(teller.strips)
    if len(groups) <= _MOST_ROWS:
        rows = tuple(_row(teller, group, teller.named(group.strips[0].fabric)) for group in groups)
        return (Table(_columns(teller, "fabric"), rows),)
    shown = groups[:_MOST_IN_ALL]
    rows = tuple(_row(teller, group, words(teller.mark(group.strips[0].fabric))) for group in shown)
    half = (len(rows) + 1) // 2
    columns = _columns(teller, "")
    tables = Columns(((Table(columns, rows[:half]),), (Table(columns, rows[half:]),)), (1, 1))
    left = sum(len(group.strips) for group in groups[_MOST_IN_ALL:])
    return (tables, Paragraph(words(muted(f"{left} more strips: see the pattern.")))) if left else (tables,)


def _lines(teller: Teller) -> tuple[Block, ...]:
    """Strips that follow lines of their own: both ends of each seam, counted from the center mark."""
    shown = teller.strips[:_MOST_ROWS_OF_LINES]
    rows = tuple(
        (
            words(teller.number(strip.step)),
            words(teller.named(strip.fabric)),
            words(_size(teller, strip)),
            words(*(_end(teller, strip.seam.start.at) if strip.seam else ())),
            words(*(_end(teller, strip.seam.end.at) if strip.seam else ())),
        )
        for strip in shown
    )
    unit = teller.unit_word
    columns = (
        Column(teller.strip_word),
        Column("fabric", share=1),
        Column(f"cut wide × long, {unit}", share=1),
        Column(f"its seam{' as drawn on the back' if teller.is_foundation else ''} from, {unit}", share=1.2),
        Column(f"to, {unit}", share=1.2),
    )
    left = len(teller.strips) - len(shown)
    more = (Paragraph(words(muted(f"{left} more {teller.strips_word}: see the pattern."))),) if left else ()
    return (Table(columns, rows), *more)


def _size(teller: Teller, strip: SewnPiece) -> str:
    """Cut size without the unit."""
    if strip.square_cut > 0:
        return teller.bare.cut_size(strip.square_cut, strip.square_cut)
    return teller.bare.cut_size(strip.cut_width, strip.cut_length)


def _end(teller: Teller, place: Point) -> Words:
    """A place counted from the center mark, without the unit."""
    x, y = teller.mirror * place[0], place[1]
    bare = teller.bare
    return words(
        f"{bare.near(abs(x))} {'right' if x >= 0 else 'left'}, {bare.near(abs(y))} {'up' if y >= 0 else 'down'}"
    )


def _columns(teller: Teller, fabric: str) -> tuple[Column, ...]:
    unit = teller.unit_word
    long = "shortest that reaches" if teller.project.working is Working.TRIM_AS_YOU_GO else "cut long"
    return (
        Column("steps"),
        Column(fabric, share=1 if fabric else None),
        Column(f"cut wide, {unit}", Align.MIDDLE),
        Column(f"{long}, {unit}", share=1.5),
        Column(f"from center mark to raw edge, {unit}", share=1.3),
    )


def _row(teller: Teller, group: Piecewise, fabric: Words) -> tuple[Words, ...]:
    strips = group.strips
    first, last = strips[0].step, strips[-1].step
    steps = f"{first}" if first == last else f"{first}–{last}"
    return (
        words(steps),
        fabric,
        words(teller.bare.width(strips[0].cut_width)),
        words(", ".join(lengths_of(teller, strips))),
        words(", ".join(edges_of(teller, strips))),
    )


def lengths_of(teller: Teller, strips: Sequence[SewnPiece]) -> list[str]:
    """Cut lengths in sewing order, or the shortest that reach when strips are trimmed as they are sewn.

    Equal lengths in a row are drawn together: "9 twice".
    """
    as_you_go = teller.project.working is Working.TRIM_AS_YOU_GO
    said = [teller.bare.cut(strip.needed_length if as_you_go else strip.cut_length) for strip in strips]
    return _drawn_together(said)


def edges_of(teller: Teller, strips: Sequence[SewnPiece]) -> list[str]:
    """Places of the raw edges in sewing order, said once when all are the same."""
    said = [_edge_place(teller, strip.raw_edge_taped) for strip in strips]
    return said[:1] if len(set(said)) == 1 else _drawn_together(said)


def _edge_place(teller: Teller, distance: float) -> str:
    """A raw edge's distance from the center mark; one that has not reached the mark yet is short of it."""
    said = teller.bare.near(abs(distance))
    return f"{said} short of it" if distance < 0 and said != "0" else said


def _drawn_together(said: list[str]) -> list[str]:
    groups: list[list[str]] = []
    for one in said:
        if groups and groups[-1][0] == one:
            groups[-1].append(one)
        else:
            groups.append([one])
    times = {1: "", 2: " twice"}
    return [f"{group[0]}{times.get(len(group), f' {len(group)} times')}" for group in groups]
