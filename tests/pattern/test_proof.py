"""The red pencil: it marks what was doctored, and nothing in what the builders make."""

from __future__ import annotations

from dataclasses import replace

import pytest

from stitchflip.pattern import proof
from stitchflip.pattern.model import (
    BlankLines,
    Block,
    Column,
    Document,
    FigureBox,
    Heading,
    Mention,
    Paragraph,
    Steps,
    Table,
    Together,
    Words,
    words,
)
from tests.pattern.papers import LANTERN, NAMES, document_of, plan_of
from tests.pattern.samples import document, square


@pytest.mark.parametrize("kind", ["table", "shop", "pattern"])
@pytest.mark.parametrize("name", NAMES)
def test_nothing_is_marked_in_the_examples(name: str, kind: str) -> None:
    """Every paper of every example passes."""
    assert [] == proof(document_of(kind, name), plan_of(name))


def marks(*blocks: Block) -> list[str]:
    """What is marked in a page of these blocks."""
    return proof(document((Heading(1, "T"), *blocks)), plan_of(LANTERN))


def said(*text: str | Mention | Words) -> Paragraph:
    """One paragraph."""
    return Paragraph(words(*text))


@pytest.mark.parametrize(
    ("blocks", "complaint"),
    [
        ((FigureBox(square(), 3, 3, key="lonely"),), "mentioned nowhere"),
        ((said("See ", Mention("ghost"), "."),), "not there"),
        ((FigureBox(replace(square(), alt=" "), 3, 3),), "cannot see"),
        ((Heading(3, "Deep"), said("x")), "skips a level"),
        ((Heading(2, "Twice"), said("x"), Heading(2, "Twice"), said("y")), "stands there twice"),
        ((Heading(2, "Empty"),), "Nothing follows"),
        ((said("Turn it to the left."),), "Left or right"),
        ((said("Turn it clockwise."),), "Left or right"),
        ((said("Cut 2 1/2\u202fin wide."),), "typed fraction"),
        ((said("Cut 2-1/2\u202fin wide."),), "typed fraction"),
        ((said("Cut 2.5\u202fin wide."),), "decimal inches"),
        ((said('Cut 5" wide.'),), "inch marks"),
        ((said("Lay the wadding down."),), "not ours"),
        ((said("Cut it 2½ wide."),), "without its word"),
        ((said("Cut it 3\u20095/16 wide."),), "without its word"),
    ],
)
def test_each_slip_is_marked(blocks: tuple[Block, ...], complaint: str) -> None:
    """One slip, one complaint that names it."""
    (mark,) = marks(*blocks)
    assert complaint in mark


def test_what_is_right_is_not_marked() -> None:
    """Left in a sentence with its picture, sides of fabric, numbers with their unit, and column heads in tables."""
    table = Table((Column("cut, in"),), ((words("2½"),),))
    blocks = (
        FigureBox(square(), 3, 3, key="one"),
        said("On the left in ", Mention("one"), ", right side up, 2½\u202fin cut; 13\u202f×\u202f44½\u202fin."),
        table,
    )
    assert [] == marks(*blocks)


@pytest.fixture
def pattern() -> Document:
    """The pattern of the runner."""
    return document_of("pattern", LANTERN)


def changed(document: Document, change: object) -> Document:
    """The document with every block run through a change that answers None to leave one out."""

    def run(blocks: tuple[Block, ...]) -> tuple[Block, ...]:
        made = []
        for block in blocks:
            new = change(block)  # type: ignore[operator]
            if isinstance(new, Together):
                new = Together(run(new.blocks))
            if hasattr(new, "columns") and not isinstance(new, Table):
                new = replace(new, columns=tuple(run(column) for column in new.columns))
            if new is not None:
                made.append(new)
        return tuple(made)

    return replace(document, blocks=run(document.blocks))


def test_a_step_left_out_is_marked(pattern: Document) -> None:
    """Steps and sewn strips must be the same."""
    doctored = changed(pattern, lambda b: replace(b, steps=b.steps[:-1]) if isinstance(b, Steps) else b)
    assert any("The steps are" in mark for mark in proof(doctored, plan_of(LANTERN)))


def test_a_cut_size_left_out_is_marked(pattern: Document) -> None:
    """Each cut size stands in a table, and the counts add up."""

    def cut(block: Block) -> Block:
        if isinstance(block, Table) and block.columns[0].title == "how many":
            return replace(block, rows=block.rows[1:])
        return block

    found = proof(changed(pattern, cut), plan_of(LANTERN))
    assert any("in no cutting table" in mark for mark in found)
    assert any("count" in mark and "the plan has" in mark for mark in found)


def test_a_missing_line_for_the_tester_is_marked(pattern: Document) -> None:
    """The imprint keeps its empty line until a person signs it."""
    doctored = changed(pattern, lambda b: None if isinstance(b, BlankLines) else b)
    assert ["The imprint has no empty line for the tester."] == proof(doctored, plan_of(LANTERN))
