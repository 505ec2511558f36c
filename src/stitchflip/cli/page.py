"""A page of lines and tables, laid out for a window: columns as wide as they must be, long cells on several lines.

The layout is one for all: a pipe gets its text, a terminal the same text with colors. It knows nothing of
terminals, so that a plan in a pipe waits for no library it does not need.
"""

from __future__ import annotations

import re
import unicodedata
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

from stitchflip.lengths import THIN_SPACE, UNIT_SPACE

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

GLUE = "\ue000"
"""Stands for a space that no line may break at, while the page is laid out."""
GAP = 2
"""Blanks between columns."""
NARROWEST = 6
"""A column is never squeezed below this, in cells of the window."""

_BEFORE_LAYOUT = str.maketrans({THIN_SPACE: GLUE, UNIT_SPACE: GLUE, "\u00a0": GLUE})
_CONTROL = re.compile(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\u2028\u2029]")


class Cell(NamedTuple):
    """Some words in one style; a line end in the text starts a new line."""

    text: str
    style: str = ""
    """Such as "bold" or "bold red"; shown by terminals only."""


class Line(NamedTuple):
    """A paragraph over the whole width."""

    text: str = ""
    style: str = ""
    indent: int = 0


class Grid(NamedTuple):
    """Rows whose cells stand below each other."""

    rows: Sequence[Sequence[Cell]]
    head: Sequence[str] = ()
    right: frozenset[int] = frozenset()
    """Columns whose cells end at the right."""
    indent: int = 0


Part: TypeAlias = Line | Grid
Laid: TypeAlias = "list[Cell]"
"""One line of the page: runs of words, each in its style."""


def glued(text: str) -> str:
    """Text ready for layout: no control characters, numbers tied to their units.

    Args:
        text: any text, such as a fabric's name from a file.
    """
    return _CONTROL.sub("", text).translate(_BEFORE_LAYOUT)


def loose(text: str) -> str:
    """Laid-out text with ordinary spaces."""
    return text.replace(GLUE, " ")


def cells_of(text: str) -> int:
    """How many cells of a window a text takes: most signs one, wide ones two, marks on a letter none."""
    if text.isascii():
        return len(text)
    return sum(
        0 if unicodedata.combining(sign) else 2 if unicodedata.east_asian_width(sign) in "WF" else 1 for sign in text
    )


def wrapped(text: str, width: int) -> list[str]:
    """A text on lines no wider than `width`, broken between words; a word too long is broken where it must be.

    Args:
        text: glued text.
        width: cells of the window, 1 or more.
    """
    lines: list[str] = []
    for paragraph in text.split("\n"):
        line = ""
        for word in paragraph.split(" "):
            longer = f"{line} {word}" if line else word
            if cells_of(longer) <= width:
                line = longer
                continue
            if line:
                lines.append(line)
            *full, line = _broken(word, width)
            lines += full
        lines.append(line)
    return lines


def _broken(word: str, width: int) -> list[str]:
    pieces = [""]
    for sign in word:
        if pieces[-1] and cells_of(pieces[-1] + sign) > width:
            pieces.append("")
        pieces[-1] += sign
    return pieces


def laid_out(parts: Iterable[Part], width: int) -> Iterator[Laid]:
    """The lines of a page.

    Args:
        parts: paragraphs and tables, top to bottom.
        width: cells of the window.
    """
    for part in parts:
        match part:
            case Line():
                for text in wrapped(glued(part.text), max(1, width - part.indent)):
                    yield [Cell(" " * part.indent), Cell(text, part.style)] if part.indent else [Cell(text, part.style)]
            case Grid():
                yield from _grid(part, width)


def _grid(grid: Grid, width: int) -> Iterator[Laid]:
    rows = [[Cell(glued(cell.text), cell.style) for cell in row] for row in grid.rows]
    if grid.head:
        rows.insert(0, [Cell(glued(name), "underline") for name in grid.head])
    if not rows:
        return
    widths = _widths(rows, width - grid.indent)
    for row in rows:
        columns = [wrapped(cell.text, wide) for cell, wide in zip(row, widths, strict=True)]
        for index in range(max(map(len, columns))):
            line = [Cell(" " * grid.indent)]
            for place, (cell, lines, wide) in enumerate(zip(row, columns, widths, strict=True)):
                text = lines[index] if index < len(lines) else ""
                blank = Cell(" " * (wide - cells_of(text)))
                line += [blank, Cell(text, cell.style)] if place in grid.right else [Cell(text, cell.style), blank]
                line.append(Cell(" " * GAP))
            yield line[:-1]


def _widths(rows: Sequence[Sequence[Cell]], room: int) -> list[int]:
    """Widths of the columns: as wide as their longest line, the widest squeezed until all fit."""
    columns = list(zip(*rows, strict=True))
    widths = [max(cells_of(line) for cell in column for line in cell.text.split("\n")) for column in columns]
    room -= GAP * (len(widths) - 1)
    while sum(widths) > room:
        widest = max(range(len(widths)), key=lambda place: widths[place])
        if widths[widest] <= NARROWEST:
            break
        others = [wide for place, wide in enumerate(widths) if place != widest]
        widths[widest] = max(NARROWEST, *(wide for wide in others if wide < widths[widest]), room - sum(others))
    return widths
