"""Reading a document without setting it: its blocks in order, its pictures with their numbers, its plain words."""

from __future__ import annotations

from collections.abc import Iterator

from stitchflip.pattern.model import (
    Block,
    Box,
    Columns,
    CoverPage,
    Document,
    FigureBox,
    Mark,
    Mention,
    Span,
    Steps,
    Together,
    Words,
)


def walk(blocks: tuple[Block, ...]) -> Iterator[Block]:
    """Every block in reading order, those inside boxes and columns too.

    Args:
        blocks: a document's blocks, or those of one of its parts.

    Yields:
        Each block before the blocks inside it.
    """
    for block in blocks:
        yield block
        match block:
            case Box(blocks=inner) | Together(blocks=inner):
                yield from walk(inner)
            case Columns(columns=columns):
                for column in columns:
                    yield from walk(column)
            case _:
                pass


def figures(document: Document) -> tuple[FigureBox, ...]:
    """Every picture of the document in reading order, those of the steps too."""
    found: list[FigureBox] = []
    for block in walk(document.blocks):
        match block:
            case FigureBox():
                found.append(block)
            case CoverPage(picture=picture):
                found.append(picture)
            case Steps(steps=steps):
                found.extend(step.picture for step in steps)
            case _:
                pass
    return tuple(found)


def figure_numbers(document: Document) -> dict[str, int]:
    """Number of each figure that the text mentions, by its key, in reading order from 1."""
    keys = dict.fromkeys(box.key for box in figures(document) if box.key)
    return {key: number for number, key in enumerate(keys, start=1)}


def plain(text: Words, numbers: dict[str, int] | None = None) -> str:
    """The words without any look, as a reader would read them out."""
    spoken = []
    for part in text:
        match part:
            case Span(text=run):
                spoken.append(run)
            case Mark(letter=letter):
                spoken.append(letter)
            case Mention(key=key):
                spoken.append(f"figure {(numbers or {}).get(key, '?')}")
    return "".join(spoken)
