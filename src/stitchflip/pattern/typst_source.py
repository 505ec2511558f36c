"""A document as one Typst source text, pictures and all, so that nothing is read from or written to a disk.

Knows the document tree and the names of `typst_style`; knows nothing of quilts.
"""

from __future__ import annotations

import re

from stitchflip.lengths import Unit
from stitchflip.pattern.drawing import drawing
from stitchflip.pattern.model import (
    BlankLines,
    Block,
    Box,
    CheckMarks,
    Columns,
    CoverPage,
    Document,
    Facts,
    FigureBox,
    Heading,
    Items,
    Look,
    Mark,
    Mention,
    Numbered,
    PageBreak,
    Paper,
    Paragraph,
    Span,
    Step,
    Steps,
    Swatch,
    Table,
    TickList,
    Together,
    Voice,
    Words,
)
from stitchflip.pattern.reading import figure_numbers
from stitchflip.pattern.typst_style import FIELD_HIGH_IN, FIELD_WIDE_IN, FOOT_HIGH_IN, SETTINGS, STYLE
from stitchflip.pictures.fonts import FAMILIES
from stitchflip.values import dataclass

_APOSTROPHE = re.compile(r"(?<=\w)'(?=\w)")

PAPER_IN = {Paper.LETTER: (8.5, 11.0), Paper.A4: (210 / 25.4, 297 / 25.4)}
"""Paper sizes, inches, wide × high."""

LONGEST_TABLE = 32
"""Rows that surely fit one page; a longer table may break, with its head repeated."""

_STEP_PICTURE_IN = 2.75
"""Room for the picture of a step, beside its words."""


@dataclass(frozen=True, slots=True)
class Tightness:
    """How far a page is drawn together so that it fits."""

    picture: float = 1.0
    """Factor on every picture's size."""
    text_pt: float = 11.0
    """Type size, points."""
    air: float = 1.0
    """Factor on the space between lines and blocks."""


def source(document: Document, paper: Paper, tightness: Tightness = Tightness()) -> str:
    """The document in Typst's language.

    Args:
        document: what to print.
        paper: letter or A4; both share one field.
        tightness: how far to draw it together.

    Returns:
        Source text that compiles on its own, without any file.
    """
    writer = _Writer(document, tightness)
    body = "\n".join(writer.block(block) for block in document.blocks)
    return "\n".join(
        (
            _names(document, tightness),
            STYLE,
            _page(document, paper, tightness),
            SETTINGS,
            _air(tightness),
            "#{",
            body,
            "}",
        )
    )


def _names(document: Document, tightness: Tightness) -> str:
    """What the style asks for by name."""
    return f"""
#let BODY = ({", ".join(_text(family) for family in FAMILIES)},)
#let AIR = {tightness.air:g}
#let LANG = {_text(document.language.split("-")[0])}
#let REGION = {_text(document.language.partition("-")[2].lower() or "us")}
"""


def _page(document: Document, paper: Paper, tightness: Tightness) -> str:
    """Document data, page size, margins and the running foot."""
    wide, high = PAPER_IN[paper]
    side, end = (wide - FIELD_WIDE_IN) / 2, (high - FIELD_HIGH_IN) / 2
    foot = " · ".join(part for part in (document.name, document.edition) if part)
    return f"""
#set document(title: {_text(document.title)}, description: {_text(f"{document.kind} for {document.name}")}, date: none)
#set page(width: {wide:.5f}in, height: {high:.5f}in,
  margin: (x: {side:.5f}in, top: {end:.5f}in, bottom: {end + FOOT_HIGH_IN:.5f}in),
  footer-descent: 0.12in,
  footer: context {{
    set text(size: 8.5pt, fill: quiet)
    grid(columns: (1fr, auto, 1fr), align: (left, center, right),
      {_text(foot)},
      {{ "page "; counter(page).display(); " of "; str(counter(page).final().first()) }},
      "printed at 100 %?")
  }})
#set text(size: {tightness.text_pt:g}pt)
"""


def _air(tightness: Tightness) -> str:
    """Closer lines and blocks for a page that must fit."""
    if tightness.air >= 1:
        return ""
    return f"""
#set par(leading: {0.58 * tightness.air:.3f}em, spacing: {0.85 * tightness.air:.3f}em)
#set block(spacing: {0.9 * tightness.air:.3f}em)
#show heading.where(level: 2): set block(above: {1.7 * tightness.air:.3f}em, below: {0.9 * tightness.air:.3f}em)
"""


def _text(text: str) -> str:
    """A Typst string literal."""
    escaped = text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", " ")
    return f'"{escaped}"'


def _said(text: str) -> str:
    """Words as a string literal: typographic apostrophes, and the one narrow space that every font has."""
    return _text(_APOSTROPHE.sub("\u2019", text).replace("\u2009", "\u202f"))


class _Writer:
    """Turns blocks into expressions; holds what all of them need."""

    def __init__(self, document: Document, tightness: Tightness) -> None:
        self.unit = document.unit
        self.numbers = figure_numbers(document)
        self.tightness = tightness

    def block(self, block: Block) -> str:  # noqa: PLR0911, PLR0912, C901  one arm for each kind of block
        """One block as an expression."""
        match block:
            case Heading(level=level, text=text):
                return f"h{level}({_text(text)})"
            case Paragraph():
                return self._paragraph(block)
            case Table():
                return self._table(block)
            case Facts(rows=rows):
                return f"facts({self._pairs(rows)})"
            case FigureBox():
                return self._figure(block)
            case Steps(steps=steps):
                return "\n".join(self._step(step) for step in steps)
            case Box(kind=kind, title=title, blocks=inner):
                return f"aside({_text(kind.value)}, {_text(title)}, {self._all(inner)})"
            case Items(items=items):
                return f"dots({self._each(items)})"
            case Numbered(items=items):
                return f"numbered({self._each(items)})"
            case TickList(items=items):
                return f"ticks({self._each(items)})"
            case CheckMarks(unit=unit):
                return _check_marks(unit)
            case Columns(columns=columns, shares=shares):
                widths = ", ".join(f"{share:g}fr" for share in shares)
                return f"side-by-side(({widths},), {', '.join(self._all(column) for column in columns)})"
            case Together(blocks=inner):
                return f"keep({_gap_before(inner)}, {self._all(inner)})"
            case PageBreak():
                return "pagebreak(weak: true)"
            case BlankLines(labels=labels):
                return f"write-on({', '.join(_text(label) for label in labels)})"
            case CoverPage():
                return self._cover(block)

    def _all(self, blocks: tuple[Block, ...]) -> str:
        return "{" + "\n".join(self.block(block) for block in blocks) + "}"

    def words(self, text: Words) -> str:
        """Words as content."""
        return "{" + ";".join(self._inline(part) for part in text) + "}" if text else "[]"

    def _inline(self, part: Span | Mark | Mention) -> str:
        match part:
            case Span(text=run, look=Look.PLAIN):
                return _said(run)
            case Span(text=run, look=look):
                return f"{ {Look.STRONG: 'su', Look.MUTED: 'mu'}[look] }({_said(run)})"
            case Mark(letter=letter, color=color):
                return f"mk({_text(letter)}, rgb({_text(color)}))"
            case Mention(key=key):
                return _text(f"figure\u00a0{self.numbers.get(key, '?')}")

    def _each(self, items: tuple[Words, ...]) -> str:
        return ", ".join(self.words(item) for item in items)

    def _pairs(self, rows: tuple[tuple[str, Words], ...]) -> str:
        return ", ".join(f"({_text(label)}, {self.words(said)})" for label, said in rows)

    def _paragraph(self, paragraph: Paragraph) -> str:
        name = {Voice.BODY: "pp", Voice.LEAD: "lead", Voice.SMALL: "small"}[paragraph.voice]
        return f"{name}({self.words(paragraph.words)})"

    def _table(self, table: Table) -> str:
        columns = ", ".join("auto" if column.share is None else f"{column.share:g}fr" for column in table.columns)
        aligns = ", ".join(f"{column.align.value} + horizon" for column in table.columns)
        head = ", ".join(_text(column.title) for column in table.columns)
        cells = ", ".join(self._cell(cell) for row in table.rows for cell in row)
        total = ", ".join(self.words(cell) for cell in table.total)
        title = _text(table.title) if table.title else "none"
        breaks = "true" if len(table.rows) > LONGEST_TABLE else "false"
        body, foot = (f"({inner},)" if inner else "()" for inner in (cells, total))
        return f"tab({title}, ({columns},), ({aligns},), ({head},), {body}, {foot}, {breaks})"

    def _cell(self, cell: Words | Swatch) -> str:
        if isinstance(cell, Swatch):
            return f"swatch({cell.wide_in:g}in, {cell.high_in:g}in)"
        return self.words(cell)

    def _drawn(self, box: FigureBox, widest_in: float = FIELD_WIDE_IN) -> tuple[str, float]:
        """Arguments of a picture: data, width, alternative text; and the width in inches."""
        drawn = drawing(box, widest_in, self.unit, self.tightness.picture)
        return f"{_text(drawn.svg)}, {drawn.wide_in:.4f}in, {_text(box.figure.alt)}", drawn.wide_in

    def _figure(self, box: FigureBox) -> str:
        drawn, _ = self._drawn(box)
        caption: Words = box.caption
        if box.key in self.numbers:
            caption = (Span(f"Figure {self.numbers[box.key]}", Look.STRONG), Span(". " if caption else ""), *caption)
        return f"fig({drawn}, {self.words(caption) if caption else 'none'})"

    def _step(self, step: Step) -> str:
        drawn, _ = self._drawn(step.picture, _STEP_PICTURE_IN)
        notes, after = self._pairs(step.notes), self._each(step.after)
        return (
            f"step({_STEP_PICTURE_IN}in, pic({drawn}), {_text(step.number)}, {self.words(step.title)}, "
            f"{self.words(step.do)}, ({notes}{',' if notes else ''}), ({after}{',' if after else ''}))"
        )

    def _cover(self, page: CoverPage) -> str:
        drawn, _ = self._drawn(page.picture)
        about = _text(page.about) if page.about else "none"
        facts = f"facts({self._pairs(page.facts.rows)})"
        return (
            f"cover(pic({drawn}), {_text(page.name)}, {about}, {facts}, {_text(page.maker_label)})\npagebreak(weak: "
            "true)"
        )


def _gap_before(blocks: tuple[Block, ...]) -> str:
    """Space before blocks that stay together: a heading's own, which would vanish at the top of its block."""
    first = blocks[0] if blocks else None
    if isinstance(first, Columns):
        return _gap_before(first.columns[0])
    level = first.level if isinstance(first, Heading) else 0
    return {2: "1.9em * AIR", 3: "1.3em * AIR"}.get(level, "0.9em * AIR")


def _check_marks(unit: Unit) -> str:
    first, second = ("marks-inch", "marks-cm") if unit is Unit.INCH else ("marks-cm", "marks-inch")
    alt = "A 1 in square, a 4 in bar, a 2 cm square and a 10 cm bar to check the print with a ruler."
    return f"check-marks({first}, {second}, {_text(alt)})"
