"""Rows and strips of a cutting order cell by cell: where each piece lies in them, and what falls off beside it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.cutting.hand_model import Act, OrderStep, Part
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from stitchflip.cutting.hand_model import Given

_TINY = 1e-6
_MANY_BANDS = 8
"""More rows and strips than these from one piece of fabric: those cut alike are drawn once, with how many."""


@dataclass(frozen=True, slots=True)
class Cell:
    """A rectangle of a row or strip; x to the right and y down from its upper left corner, inches."""

    x: float
    y: float
    wide: float
    high: float
    label: str = ""
    """Name of the piece; "" for what falls off."""
    is_whole: bool = False
    """True: the strip stays whole."""
    is_end: bool = False
    """True: what is left at the end of the row or strip."""
    slanted: tuple[float, float] | None = None
    """Cut size of a piece that is cut out of it on the slant."""
    says_size: bool = False
    """True: both sizes are written, because the row's height is not the piece's."""


def bands_of(step: OrderStep, trimmed: Mapping[int, Sequence[tuple[str, float]]]) -> list[tuple[Cell, ...]]:
    """The rows or strips of a step, each as the cells it is cut into.

    Args:
        step: a step that cuts rows or strips up, or keeps them whole.
        trimmed: of strips that are trimmed while sewing the pieces with their lengths, by the strip's number.

    Returns:
        One entry for each of its rows or strips. Pieces of one size are taken in the order they are listed.
    """
    queues: dict[int, Iterator[Given]] = {}
    out: list[tuple[Cell, ...]] = []
    for number in step.numbers:
        if step.act is Act.KEEP and number in trimmed:
            out.append(tuple(_in_a_row(step, trimmed[number])))
        elif step.act is Act.KEEP:
            names = ", ".join(dict.fromkeys(given.label for given in step.gives))
            out.append((Cell(0.0, 0.0, step.long, step.wide, names, is_whole=True),))
        else:
            out.append(tuple(_cut_up(step, queues)))
    return out


def _in_a_row(step: OrderStep, pieces: Sequence[tuple[str, float]]) -> Iterator[Cell]:
    """Pieces side by side, and the end."""
    x = 0.0
    for label, long in pieces:
        yield Cell(x, 0.0, long, step.wide, label)
        x += long
    yield from _end(step, x)


def _end(step: OrderStep, x: float) -> Iterator[Cell]:
    if step.long - x > _TINY:
        yield Cell(x, 0.0, step.long - x, step.wide, is_end=True)


def _cut_up(step: OrderStep, queues: dict[int, Iterator[Given]]) -> Iterator[Cell]:
    x = 0.0
    for part in step.parts:
        for _ in range(part.count):
            yield from _part(part, (x, 0.0), step.wide, queues)
            x += part.measure
    yield from _end(step, x)


def _part(part: Part, at: tuple[float, float], high: float, queues: dict[int, Iterator[Given]]) -> Iterator[Cell]:
    """A part of a row: one piece as high as the row, or pieces over one another."""
    x, y = at
    if part.gives:
        yield _piece(part, Cell(x, y, part.measure, high), queues)
        return
    for one in part.then:
        for _ in range(one.count):
            yield from _level(one, (x, y), part.measure, queues)
            y += one.measure
    rest = high - (y - at[1])
    if rest > _TINY:
        yield Cell(x, y, part.measure, rest)


def _level(one: Part, at: tuple[float, float], wide: float, queues: dict[int, Iterator[Given]]) -> Iterator[Cell]:
    """A piece cut off a part of a row, trimmed where it is narrower."""
    x, y = at
    if one.gives:
        yield _piece(one, Cell(x, y, wide, one.measure, says_size=True), queues)
        return
    for trimmed in one.then:
        yield _piece(trimmed, Cell(x, y, trimmed.measure, one.measure, says_size=True), queues)
        if wide - trimmed.measure > _TINY:
            yield Cell(x + trimmed.measure, y, wide - trimmed.measure, one.measure)


def _piece(part: Part, cell: Cell, queues: dict[int, Iterator[Given]]) -> Cell:
    """The cell with the next piece of its setting."""
    queue = queues.setdefault(id(part), (given for given in part.gives for _ in range(given.count)))
    given = next(queue)
    slanted = (given.wide, given.long) if given.is_slanted else None
    return Cell(cell.x, cell.y, cell.wide, cell.high, given.label, slanted=slanted, says_size=cell.says_size)


Band = tuple[tuple[Cell, ...], int]
"""The cells of a row or strip, and how many look like it."""


def together(opened: Sequence[tuple[OrderStep, tuple[Cell, ...]]]) -> list[tuple[OrderStep, Band]]:
    """Whole strips once with their count; of many rows and strips all that are cut alike.

    Args:
        opened: the rows and strips of one piece of fabric, each with its step.
    """
    out: list[tuple[OrderStep, Band]] = []
    are_many = len(opened) > _MANY_BANDS
    for step, cells in opened:
        is_whole = all(cell.is_whole for cell in cells)
        if out and out[-1][0] is step and (is_whole or (are_many and _shape(out[-1][1][0]) == _shape(cells))):
            before, alike = out[-1][1]
            out[-1] = (step, (_named_alike(before, cells), alike + 1))
        else:
            out.append((step, (cells, 1)))
    return out


def _shape(cells: Sequence[Cell]) -> tuple[tuple[float, ...], ...]:
    return tuple(tuple(round(side, 6) for side in (cell.x, cell.y, cell.wide, cell.high)) for cell in cells)


def _named_alike(drawn: Sequence[Cell], other: Sequence[Cell]) -> tuple[Cell, ...]:
    """The cells drawn once, with the names of the pieces in all of them."""
    return tuple(
        replace(cell, label=", ".join(dict.fromkeys((*cell.label.split(", "), *like.label.split(", ")))))
        if cell.label
        else cell
        for cell, like in zip(drawn, other, strict=True)
    )
