"""Plans of the examples, made once, and readers of what was written that share no code with the writers."""

from __future__ import annotations

import re
from functools import cache, cached_property
from html.parser import HTMLParser
from io import BytesIO
from pathlib import Path
from typing import Any

from pypdf import PageObject, PdfReader
from pypdf.generic import DictionaryObject, IndirectObject
from typing_extensions import override

from stitchflip.pattern import Document, Paper, pattern_document, shop_sheet, table_sheet, to_html, to_pdf
from stitchflip.planning import Change, Plan, plan
from stitchflip.project import read_project
from stitchflip.project.changes import apply_changes

EXAMPLES = Path(__file__).parents[2] / "examples"
NAMES = tuple(sorted(path.stem for path in EXAMPLES.glob("*.toml")))
LANTERN, TRAY, ROOF, GATE = "lantern-walk", "morning-tray", "tin-roof", "snow-gate"
WITHOUT_DRAW_UP = (
    Change(("my_numbers", "draw_up"), "0 %"),
    Change(("my_numbers", "fold_loss"), "0"),
)
"""The frame in which the examples' distances were worked out by hand."""


@cache
def plan_of(name: str, changes: tuple[Change, ...] = ()) -> Plan:
    """The plan of an example, with changes put in first."""
    project = read_project((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8"), name)
    return plan(apply_changes(project, changes) if changes else project)


PAPERS = {"table": table_sheet, "shop": shop_sheet, "pattern": pattern_document}


@cache
def document_of(kind: str, name: str, changes: tuple[Change, ...] = ()) -> Document:
    """One of the three papers of an example."""
    return PAPERS[kind](plan_of(name, changes))


@cache
def printed(kind: str, name: str, *changes: Change, paper: Paper = Paper.LETTER) -> Printed:
    """One of the three papers of an example, printed."""
    return Printed(to_pdf(document_of(kind, name, changes), paper))


@cache
def shown(kind: str, name: str, *changes: Change) -> str:
    """The words of one of the three papers of an example as its screen page shows them; far quicker to read."""
    return Marked(to_html(document_of(kind, name, changes))).text


def spaced(text: str) -> str:
    """The text with every kind of space plain and single, as a search would compare it."""
    return re.sub(r"\s+", " ", text)


class Printed:
    """A PDF as a reader's program sees it."""

    def __init__(self, data: bytes) -> None:
        self.pdf = PdfReader(BytesIO(data))
        self.root: Any = self.pdf.trailer["/Root"].get_object()

    @cached_property
    def pages(self) -> list[str]:
        """The words of each page."""
        return [spaced(page.extract_text()) for page in self.pdf.pages]

    @property
    def text(self) -> str:
        """The words of all pages."""
        return " ".join(self.pages)

    def size_in(self, page: int = 0) -> tuple[float, float]:
        """Wide and high of a page, inches: 72 points are 1 in."""
        box = self.pdf.pages[page].mediabox
        return float(box.width) / 72, float(box.height) / 72

    def structure(self) -> list[Any]:
        """Every element of the tag tree, in reading order."""
        found: list[Any] = []

        def visit(node: object) -> None:
            node = node.get_object() if isinstance(node, IndirectObject) else node
            if isinstance(node, list):
                for kid in node:
                    visit(kid)
            elif isinstance(node, DictionaryObject):
                if "/S" in node:
                    found.append(node)
                if "/K" in node:
                    visit(node["/K"])

        visit(self.root["/StructTreeRoot"])
        return found

    def page_of(self, node: Any) -> int:
        """The page, from 0, that a tag's content lies on."""
        while "/Pg" not in node:
            kids = node["/K"]
            node = (kids[0] if isinstance(kids, list) else kids).get_object()
        number = self.pdf.get_page_number(PageObject(self.pdf, node.raw_get("/Pg")))
        assert number is not None
        return number

    def tags(self) -> list[str]:
        """Names of the tags in reading order, such as "H2" or "Figure"."""
        return [str(node["/S"]).lstrip("/") for node in self.structure()]


class Marked(HTMLParser):
    """An HTML page as a list of tags; complains about what does not nest."""

    VOID = frozenset({"meta", "br", "input", "img", "hr", "link"})
    IN_LINE = frozenset({"strong", "em", "span", "a"})

    def __init__(self, page: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.words: list[str] = []
        self._open: list[str] = []
        self.feed(page)
        self.close()
        assert [] == self._open, f"never closed: {self._open}"

    @override
    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))
        if tag not in self.VOID:
            self._open.append(tag)

    @override
    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))

    @override
    def handle_endtag(self, tag: str) -> None:
        assert self._open, f"</{tag}> closes nothing"
        assert tag == self._open.pop()
        if tag not in self.IN_LINE:
            self.words.append(" ")

    @override
    def handle_data(self, data: str) -> None:
        if self._open and self._open[-1] not in {"style", "script"}:
            self.words.append(data)

    @property
    def text(self) -> str:
        """The words of the page."""
        return spaced("".join(self.words))

    def named(self, tag: str) -> list[dict[str, str | None]]:
        """Attributes of every element of one kind."""
        return [attributes for name, attributes in self.tags if name == tag]
