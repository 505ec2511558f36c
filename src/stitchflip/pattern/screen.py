"""Screen: a document as one HTML file that needs nothing else.

It opens offline on a phone, prints, reads well aloud, and remembers what was ticked off. Knows the document
tree; knows nothing of quilts.
"""

from __future__ import annotations

import re
from html import escape

from stitchflip.lengths import Unit
from stitchflip.pattern.drawing import drawing
from stitchflip.pattern.model import (
    Align,
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
from stitchflip.pattern.reading import figure_numbers, walk
from stitchflip.pattern.screen_style import CSS, SCRIPT

_SCREEN_WIDE_IN = 7.2
_PHONE_WIDE_IN = 4.5
"""A wider picture that is mentioned keeps letters of a readable size on a phone and scrolls sideways by itself."""
_NARROW_COLUMNS = 4
"""A table with more columns scrolls sideways on a phone, by itself."""
_FRACTION = re.compile(r"\d+/(?:16|32|64)")
_APOSTROPHE = re.compile(r"(?<=\w)'(?=\w)")
_PROLOG = re.compile(r"^\s*(<\?xml[^>]*\?>|<!DOCTYPE[^>]*>)\s*")
_NAMESPACE = re.compile(r"\sxmlns(:\w+)?=\"[^\"]*\"")
_ID = re.compile(r"\bid=\"([^\"]+)\"")
_POINTER = re.compile(r"(url\(#|href=\"#)")


def to_html(document: Document) -> str:
    """A document as one self-contained HTML page.

    Args:
        document: what to read.

    Returns:
        The whole file as text; save it as UTF-8.

    Raises:
        PublishError: If a picture cannot be drawn.
    """
    page = _Page(document)
    body = "\n".join(page.block(block) for block in document.blocks)
    progress = _PROGRESS if page.has_steps else ""
    foot = " · ".join(part for part in (document.name, document.kind.lower(), document.edition) if part)
    return (
        f'<!DOCTYPE html>\n<html lang="{escape(document.language)}">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(document.title)}</title>\n<style>{CSS}</style>\n</head>\n"
        f'<body data-edition="{escape(document.edition)}">\n<main>\n{page.ways()}{body}\n{progress}</main>\n'
        f"<footer><p>{escape(foot)}</p></footer>\n<script>{SCRIPT}</script>\n</body>\n</html>\n"
    )


_PROGRESS = (
    '<div class="progress"><span id="progress-words" role="status"></span>'
    '<button type="button" id="clear-ticks">Clear ticks</button></div>\n'
)


class _Page:
    """Turns blocks into markup; counts headings and pictures."""

    def __init__(self, document: Document) -> None:
        self.unit = document.unit
        self.numbers = figure_numbers(document)
        self.headings = [block for block in walk(document.blocks) if isinstance(block, Heading) and block.level == 2]
        self.has_steps = any(isinstance(block, Steps) for block in walk(document.blocks))
        self.level = 1
        self.pictures = 0
        self.parts = 0

    def ways(self) -> str:
        """Links to the parts of a long page."""
        if len(self.headings) < 4:
            return ""
        links = "".join(
            f'<li><a href="#part-{place}">{escape(heading.text)}</a></li>'
            for place, heading in enumerate(self.headings, start=1)
        )
        return f'<nav aria-label="Parts"><ol>{links}</ol></nav>\n'

    def block(self, block: Block) -> str:  # noqa: PLR0911, PLR0912, C901  one arm for each kind of block
        """One block as markup."""
        match block:
            case Heading():
                return self._heading(block)
            case Paragraph(words=text, voice=voice):
                kind = "" if voice is Voice.BODY else f' class="{voice.value}"'
                return f"<p{kind}>{self.words(text)}</p>"
            case Table():
                return self._table(block)
            case Facts(rows=rows):
                return self._facts(rows)
            case FigureBox():
                return self._figure(block)
            case Steps(steps=steps, ticks=ticks):
                return "\n".join(self._step(step, ticks) for step in steps)
            case Box(kind=kind, title=title, blocks=inner):
                return f'<aside class="{kind.value}"><p class="title">{escape(title)}</p>{self._all(inner)}</aside>'
            case Items(items=items):
                return f"<ul>{''.join(f'<li>{self.words(item)}</li>' for item in items)}</ul>"
            case Numbered(items=items):
                return f"<ol>{''.join(f'<li>{self.words(item)}</li>' for item in items)}</ol>"
            case TickList():
                return self._ticks(block)
            case CheckMarks(unit=unit):
                return _check_marks(unit)
            case Columns(columns=columns, shares=shares):
                widths = " ".join(f"{share:g}fr" for share in shares)
                inner_html = "".join(f"<div>{self._all(column)}</div>" for column in columns)
                return f'<div class="columns" style="grid-template-columns: {widths}">{inner_html}</div>'
            case Together(blocks=inner):
                is_for_paper = any(isinstance(one, CheckMarks) for one in inner)
                kind = "together on-paper" if is_for_paper else "together"
                return f'<div class="{kind}">{self._all(inner)}</div>'
            case PageBreak():
                return '<div class="break"></div>'
            case BlankLines(labels=labels):
                return "".join(f'<div class="write">{escape(label)}</div>' for label in labels)
            case CoverPage():
                return self._cover(block)

    def _all(self, blocks: tuple[Block, ...]) -> str:
        return "\n".join(self.block(block) for block in blocks)

    def words(self, text: Words) -> str:
        """Words as markup."""
        return "".join(self._inline(part) for part in text)

    def _inline(self, part: Span | Mark | Mention) -> str:
        match part:
            case Span(text=run, look=look):
                said = _FRACTION.sub(r'<span class="fraction">\g<0></span>', escape(_said(run)))
                tag = {Look.PLAIN: "", Look.STRONG: "strong", Look.MUTED: "span"}[look]
                kind = ' class="muted"' if look is Look.MUTED else ""
                return f"<{tag}{kind}>{said}</{tag}>" if tag else said
            case Mark(letter=letter, color=color):
                chip = f'<span class="chip" style="background: {escape(color)}"></span>'
                return f'<span class="letter">{chip}{escape(letter)}</span>'
            case Mention(key=key):
                return f'<a href="#figure-{escape(_name(key))}">figure\u00a0{self.numbers.get(key, "?")}</a>'

    def _heading(self, heading: Heading) -> str:
        self.level = heading.level
        mark = ""
        if heading.level == 2 and heading in self.headings:
            self.parts += 1
            mark = f' id="part-{self.parts}"'
        return f"<h{heading.level}{mark}>{escape(heading.text)}</h{heading.level}>"

    def _table(self, table: Table) -> str:
        kinds = [self._kind(table, place) for place in range(len(table.columns))]
        caption = f"<caption>{escape(table.title)}</caption>" if table.title else ""
        head = "".join(f'<th scope="col"{k}>{escape(c.title)}</th>' for k, c in zip(kinds, table.columns, strict=True))
        rows = "".join(self._row(row, kinds) for row in table.rows)
        foot = f"<tfoot>{self._row(table.total, kinds)}</tfoot>" if table.total else ""
        inner = f"{caption}<thead><tr>{head}</tr></thead><tbody>{rows}</tbody>{foot}"
        wide = " wide" if len(table.columns) > _NARROW_COLUMNS else ""
        return f'<div class="table{wide}"><table>{inner}</table></div>'

    @staticmethod
    def _kind(table: Table, place: int) -> str:
        """Class of a column's cells; frames to glue a scrap into are for paper only."""
        if any(isinstance(row[place], Swatch) for row in table.rows):
            return ' class="on-paper"'
        return {Align.START: "", Align.MIDDLE: ' class="center"', Align.END: ' class="end"'}[table.columns[place].align]

    def _row(self, cells: tuple[Words | Swatch, ...], kinds: list[str]) -> str:
        return (
            f"<tr>{''.join(f'<td{kind}>{self._cell(cell)}</td>' for kind, cell in zip(kinds, cells, strict=True))}</tr>"
        )

    def _cell(self, cell: Words | Swatch) -> str:
        if isinstance(cell, Swatch):
            return f'<span class="swatch" style="width: {cell.wide_in:g}in; height: {cell.high_in:g}in"></span>'
        return self.words(cell)

    def _facts(self, rows: tuple[tuple[str, Words], ...]) -> str:
        pairs = "".join(f"<dt>{escape(label)}</dt><dd>{self.words(said)}</dd>" for label, said in rows)
        return f'<dl class="facts">{pairs}</dl>'

    def _svg(self, box: FigureBox) -> str:
        """The drawing with names of its own, ready to stand inside a page."""
        self.pictures += 1
        drawn = drawing(box, _SCREEN_WIDE_IN, self.unit)
        wide = " wide" if box.key and drawn.wide_in > _PHONE_WIDE_IN else ""
        svg = _NAMESPACE.sub("", _PROLOG.sub("", drawn.svg), count=2)
        own = f"f{self.pictures}-"
        svg = _POINTER.sub(rf"\g<1>{own}", _ID.sub(rf'id="{own}\g<1>"', svg))
        named = f'<svg role="img" aria-label="{escape(box.figure.alt)}"'
        return f'<div class="picture{wide}">{svg.replace("<svg", named, 1)}</div>'

    def _figure(self, box: FigureBox) -> str:
        number = self.numbers.get(box.key)
        mark = f' id="figure-{escape(_name(box.key))}"' if number else ""
        named = f"<strong>Figure {number}</strong>{'. ' if box.caption else ''}" if number else ""
        said = f"{named}{self.words(box.caption)}"
        caption = f"<figcaption>{said}</figcaption>" if said else ""
        return f"<figure{mark}>{self._svg(box)}{caption}</figure>"

    def _step(self, step: Step, ticks: str) -> str:
        level = min(self.level + 1, 6)
        notes = self._facts(step.notes) if step.notes else ""
        after = "".join(f'<p class="after">{self.words(line)}</p>' for line in step.after)
        key = escape(f"{ticks} {step.number}")
        done = f'<label class="tick"><input type="checkbox" data-tick="{key}"> done</label>' if ticks else ""
        return (
            f'<article class="step"><h{level}><span class="number">{escape(step.number)}</span>'
            f"{self.words(step.title)}</h{level}><figure>{self._svg(step.picture)}</figure>"
            f'<div class="doing"><p>{self.words(step.do)}</p>{notes}{after}{done}</div></article>'
        )

    def _ticks(self, ticks: TickList) -> str:
        rows = "".join(
            f'<li><label class="tick"><input type="checkbox" data-tick="{escape(ticks.ticks)} {place}">'
            f"<span>{self.words(item)}</span></label></li>"
            for place, item in enumerate(ticks.items, start=1)
        )
        return f'<ul class="ticks">{rows}</ul>'

    def _cover(self, page: CoverPage) -> str:
        about = f'<p class="lead">{escape(page.about)}</p>' if page.about else ""
        maker = f'<div class="write">{escape(page.maker_label)}</div>'
        return (
            f'<header class="cover"><h1>{escape(page.name)}</h1>{about}<figure>{self._svg(page.picture)}</figure>'
            f'{self._facts(page.facts.rows)}{maker}</header><div class="break"></div>'
        )


def _said(text: str) -> str:
    """Words with typographic apostrophes, and with a space before a fraction that never breaks over two lines."""
    return _APOSTROPHE.sub("\u2019", text).replace("\u2009", "\u202f")


def _name(key: str) -> str:
    """A key as an anchor."""
    return re.sub(r"[^a-z0-9]+", "-", key.lower()).strip("-")


def _check_marks(unit: Unit) -> str:
    """Squares and bars, shown on paper only: a screen has no true inch."""
    inch = [("1in", "1in", "1 in"), ("4in", ".1in", "4 in")]
    metric = [("2cm", "2cm", "2 cm"), ("10cm", ".25cm", "10 cm")]
    marks = (inch + metric) if unit is Unit.INCH else (metric + inch)
    drawn = "".join(
        f'<p><span class="mark" style="width: {wide}; height: {high}"></span>{label}</p>' for wide, high, label in marks
    )
    return (
        f'<div class="on-paper" role="img" aria-label="Squares and bars to check the print with a ruler.">{drawn}</div>'
    )
