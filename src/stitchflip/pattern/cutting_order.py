"""Cutting diagrams with their order: every fabric to scale, and beside it each cut with what is left of the fabric."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.pattern.model import (
    Align,
    Block,
    Column,
    Columns,
    FigureBox,
    Heading,
    Mention,
    Paragraph,
    Table,
    Together,
    Words,
    muted,
    strong,
    words,
)
from stitchflip.pattern.telling import Teller
from stitchflip.pictures import cuts
from stitchflip.planning.cutting_answers import cutting_answers

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.model import FabricPlan
    from stitchflip.planning.cutting_answers import StepWords

_FULL_IN, _HALF_IN = 7.0, 3.55
"""Room across the page and across half of it."""
_TALL_IN = 6.8
"""A picture no wider than half of the page may be 4.4 in high, one across it so high."""
_MOST_STEPS = 22
"""A longer order goes on in a further table, so that none is broken between two pages."""
_STEPS_BESIDE = 12
"""An order no longer than this stands beside a tall picture."""


def cutting_diagrams(teller: Teller) -> tuple[Block, ...]:
    """Every fabric to scale, with every cut in its order and what is left after it."""
    answers = [answer for answer in cutting_answers(teller.plan) if answer.steps]
    if not answers:
        return ()
    said = words(
        "Drawn to scale, selvages at the sides. Numbers in a picture are the numbers of the order with it; measures of "
        "what is left are wide × long: ",
        *_mentions([answer.fabric.fabric for answer in answers]),
        ".",
    )
    parts = [_told(teller, answer.fabric, answer.steps) for answer in answers]
    first, *more = (block for part in parts for block in part)
    return Together((Heading(2, "Cutting diagrams and orders"), Paragraph(said), first)), *more


def _told(teller: Teller, fabric: FabricPlan, steps: Sequence[StepWords]) -> list[Block]:
    """Picture and order of one fabric, on one page where they fit."""
    box = diagram(teller, fabric)
    tables = order_tables(steps)
    if box is None:
        return list(tables)
    if box.width_in < _FULL_IN and len(steps) <= _STEPS_BESIDE:
        return [Columns(((box,), (_narrow(steps),)), (1, 1))]
    return [Together((box, tables[0])), *tables[1:]]


def diagram(teller: Teller, fabric: FabricPlan) -> FigureBox | None:
    """One fabric to scale, across the page or, where it is made for no more than half of it, in half of it.

    Args:
        teller: the plan's words.
        fabric: the plan of one fabric.

    Returns:
        The picture with its caption; None when nothing is cut.
    """
    if not (fabric.strip_plans or fabric.rows or fabric.hand_sheets):
        return None
    picture, caption = cuts(teller.plan, fabric), _caption(teller, fabric)
    is_narrow = picture.width_in <= _HALF_IN
    wide, high = (_HALF_IN, 4.4) if is_narrow else (_FULL_IN, _TALL_IN)
    return FigureBox(picture, wide, high, key=f"cuts {fabric.fabric}", caption=caption)


def order_tables(steps: Sequence[StepWords]) -> tuple[Table, ...]:
    """The order of one fabric, each table short enough for a page.

    Args:
        steps: what is said about each step.
    """
    columns = (Column("", Align.END), Column("do", share=4.2), Column("left", share=1))
    starts = range(0, len(steps), _MOST_STEPS)
    return tuple(Table(columns, tuple(map(_row, steps[start : start + _MOST_STEPS]))) for start in starts)


def _row(one: StepWords) -> tuple[Words, ...]:
    does = words(one.does, muted(f" {one.check}") if one.check else "")
    return words(strong(str(one.step.number))), does, words(one.left)


def _narrow(steps: Sequence[StepWords]) -> Table:
    """The order in half of the page: what is left stands behind the words."""
    rows = []
    for one in steps:
        left = f" {one.left[:1].upper()}{one.left[1:]} is left." if one.left else ""
        rows.append((words(strong(str(one.step.number))), words(one.does, muted(f"{left} {one.check}".rstrip()))))
    return Table((Column("", Align.END), Column("do", share=1)), tuple(rows))


def _mentions(names: list[str]) -> list[Words]:
    said = []
    for place, name in enumerate(names):
        after = "" if place == len(names) - 1 else " and " if place == len(names) - 2 else ", "
        said.append(words(Mention(f"cuts {name}"), f" {name}{after}"))
    return said


def _caption(teller: Teller, fabric: FabricPlan) -> Words:
    amount = f", {teller.purchase(fabric.buy_in)}" if fabric.buy_in > 0 else ", from your shelf"
    left = f"; {teller.say.margin(fabric.spare_in)} of length left over" if fabric.spare_in > 1e-6 else ""
    return words(teller.named(fabric.fabric), f"{amount}{left}")
