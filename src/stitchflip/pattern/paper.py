"""Paper: a document as a tagged PDF, or as pictures of its pages.

Typst sets the pages in memory: one source text in, bytes out, fonts of its own and none of the machine's, so
that the same document gives the same file everywhere.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from stitchflip.errors import PublishError
from stitchflip.pattern.model import Document, Fit, Paper
from stitchflip.pattern.typst_source import Tightness, source
from stitchflip.pictures.fonts import font_folder

if TYPE_CHECKING:
    from collections.abc import Callable

_STEPS = (
    Tightness(),
    Tightness(picture=0.95, text_pt=10.5, air=0.9),
    Tightness(picture=0.9, text_pt=10, air=0.8),
    Tightness(picture=0.85, text_pt=9.5, air=0.75),
    Tightness(picture=0.8, text_pt=9, air=0.7),
    Tightness(picture=0.7, text_pt=8.5, air=0.65),
    Tightness(picture=0.6, text_pt=8, air=0.6),
    Tightness(picture=0.45, text_pt=7.5, air=0.5),
)
"""From generous to close; the first that fits one page is taken."""

_READABLE = Tightness(picture=0.8, text_pt=9, air=0.7)
"""For a sheet that would not fit one page at any size an eye can read."""

_LAST_PAGE = "#context [#metadata(counter(page).final().first()) <pages>]"


def to_pdf(document: Document, paper: Paper | str = Paper.LETTER) -> bytes:
    """A document as a PDF: tagged, with language, title and a text for every picture (PDF/UA-1).

    Args:
        document: what to print.
        paper: letter or A4; the pages break at the same places on both.

    Returns:
        The file's bytes; the same document gives the same bytes.

    Raises:
        PublishError: If the pages cannot be set.
    """
    text = _fitted(document, Paper(paper))
    (made,) = _typst(lambda typst: [typst.compile(text, format="pdf", pdf_standards=["ua-1"], **_fonts())])
    return bytes(made)


def to_page_pictures(document: Document, paper: Paper | str = Paper.LETTER, dots_per_inch: float = 100) -> list[bytes]:
    """Every page as a PNG picture, to look at.

    Args:
        document: what to print.
        paper: letter or A4.
        dots_per_inch: sharpness.

    Returns:
        One PNG a page.

    Raises:
        PublishError: If the pages cannot be set.
    """
    text = _fitted(document, Paper(paper))
    made = _typst(lambda typst: typst.compile(text, format="png", ppi=dots_per_inch, **_fonts()))
    return [made] if isinstance(made, bytes) else [bytes(page) for page in made]


def _fitted(document: Document, paper: Paper) -> bytes:
    """Source text of the document, drawn together as far as it must be."""
    if document.fit is Fit.PAGES:
        return source(document, paper).encode()
    if _is_one_page(document, paper, 0):
        return source(document, paper).encode()
    overflows, fits = 0, len(_STEPS)
    while fits - overflows > 1:
        tried = (fits + overflows) // 2
        if _is_one_page(document, paper, tried):
            fits = tried
        else:
            overflows = tried
    return source(document, paper, _STEPS[fits] if fits < len(_STEPS) else _READABLE).encode()


def _is_one_page(document: Document, paper: Paper, step: int) -> bool:
    """Whether the document fits one page at one of the settings."""
    return _pages(source(document, paper, _STEPS[step])) == 1


def _pages(text: str) -> int:
    """How many pages a source text makes."""
    whole = f"{text}\n{_LAST_PAGE}".encode()
    return int(_typst(lambda typst: typst.query(whole, "<pages>", field="value", one=True, **_fonts())))


def _fonts() -> dict[str, Any]:
    """Only the fonts that come with the packages, never the machine's own."""
    folder = font_folder()
    return {"ignore_system_fonts": True, "font_paths": [folder] if folder else []}


def _typst(ask: Callable[[Any], Any]) -> Any:  # noqa: ANN401  the library answers bytes, text or lists
    """Ask Typst, and put its complaint in our words."""
    import typst

    try:
        return ask(typst)
    except typst.TypstError as error:
        raise PublishError(
            what=f"the pages could not be set: {error.message}",
            fix="Report this with the project file; the plan and the screen page are not affected.",
            code="publish.pages-not-set",
        ) from error
