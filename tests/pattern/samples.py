"""Small documents written by hand, so that writers are tested without any quilt."""

from __future__ import annotations

from stitchflip.lengths import Unit
from stitchflip.pattern.model import (
    Align,
    BlankLines,
    Block,
    Box,
    BoxKind,
    CheckMarks,
    Column,
    Columns,
    Document,
    Facts,
    FigureBox,
    Fit,
    Heading,
    Items,
    Mark,
    Mention,
    Numbered,
    PageBreak,
    Paragraph,
    Step,
    Steps,
    Swatch,
    Table,
    TickList,
    Together,
    Voice,
    muted,
    strong,
    words,
)
from stitchflip.pictures.model import Area, Figure, Pen


def square(title: str = "A square", side: float = 4.0) -> Figure:
    """A plain square with its alternative text."""
    corners = ((0.0, 0.0), (side, 0.0), (side, side), (0.0, side))
    return Figure((Area(corners, "#d9c27a", hatch=1, pen=Pen()),), (0.0, 0.0), (side, side), title, f"{title}, alone.")


def table(rows: int) -> Table:
    """A table with so many rows and a total."""
    columns = (Column("what", share=1), Column("cut, in", Align.END))
    return Table(
        columns, tuple((words(f"row {n}"), words("2½")) for n in range(rows)), "Rows", (words("all"), words(""))
    )


def step(number: int) -> Step:
    """One step with everything a step can have."""
    return Step(
        str(number),
        words("Strip ", str(number)),
        words("Sew it to the ", strong("top side"), "."),
        FigureBox(square(f"Step {number}"), 2.6, 2.8),
        (("Lock", words("none")), ("Raw edge", words("5⅛ in from the center mark"))),
        (words("Turn the piece over."),),
    )


def every_block() -> tuple[Block, ...]:
    """One of each kind of block, in a sensible order."""
    return (
        Heading(1, "Sampler"),
        Paragraph(words("Opens the page."), Voice.LEAD),
        Heading(2, "Words"),
        Paragraph(
            words(
                "Plain, ",
                strong("strong"),
                ", ",
                muted("quiet"),
                ", ",
                Mark("A", "#b48a3a"),
                " and ",
                Mention("one"),
                ".",
            )
        ),
        FigureBox(square(), 3.0, 3.0, key="one", caption=words("A picture.")),
        Facts((("Size", words("13 × 44 in")), ("Time", words("an hour")))),
        table(3),
        Table((Column("fabric"), Column("swatch")), ((words("Brass"), Swatch(1.0, 0.4)),)),
        Box(BoxKind.CAUTION, "Take care", (Items((words("one"), words("two"))),)),
        Box(BoxKind.TIP, "Tip", (Paragraph(words("Do.")),)),
        Box(BoxKind.LOOK, "Look", (Paragraph(words("See.")),)),
        Numbered((words("first"), words("second"))),
        TickList((words("thread"), words("pins")), "notions"),
        Columns(((Paragraph(words("beside")),), (Paragraph(words("another")),)), (1, 2)),
        PageBreak(),
        Heading(2, "Sewing"),
        Steps((step(1), step(2), step(3)), "sewing"),
        Together((Heading(3, "Check"), CheckMarks(Unit.INCH), BlankLines(("Tested by", "Date")))),
    )


def document(
    blocks: tuple[Block, ...], *, fit: Fit = Fit.PAGES, name: str = "Sampler", kind: str = "Pattern"
) -> Document:
    """A document of these blocks."""
    return Document(name, kind, "edition 2 · May", Unit.INCH, blocks, fit)
