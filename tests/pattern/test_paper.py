"""The PDF writer: tagged, complete, true to scale, and nothing torn apart."""

from __future__ import annotations

import re

import pytest

from stitchflip.lengths import Unit
from stitchflip.pattern import Fit, Paper, to_page_pictures, to_pdf
from stitchflip.pattern.model import Block, CheckMarks, Heading, Paragraph, Steps, words
from tests.pattern.papers import Printed
from tests.pattern.samples import document, every_block, step, table

POINTS = 72.0
CM = 72.0 / 2.54
PNG = b"\x89PNG\r\n\x1a\n"


@pytest.fixture(scope="module")
def sampler() -> Printed:
    """A document with one of each block, on letter."""
    return Printed(to_pdf(document(every_block()), Paper.LETTER))


def test_it_is_tagged_and_says_its_language_and_title(sampler: Printed) -> None:
    """A screen reader finds marks, language, title and the wish to show the title."""
    assert sampler.root["/MarkInfo"]["/Marked"]
    assert "en-US" == sampler.root["/Lang"]
    assert sampler.pdf.metadata is not None
    assert "Sampler: pattern" == sampler.pdf.metadata.title
    assert sampler.root["/ViewerPreferences"]["/DisplayDocTitle"]


def test_it_claims_accessible_pdf_part_one(sampler: Printed) -> None:
    """Its description names PDF/UA, part 1 (ISO 14289-1)."""
    description = sampler.root["/Metadata"].get_object().get_data().decode()
    assert re.search(r"pdfuaid:part>1<|pdfuaid:part=\"1\"", description)


def test_headings_lists_tables_and_figures_have_their_tags(sampler: Printed) -> None:
    """Structure is there for those who cannot see it, headings in order."""
    tags = sampler.tags()
    assert {"H1", "H2", "H3", "L", "LI", "Table", "TH", "TD", "Figure", "P"} <= set(tags)
    assert ["H1", "H2", "H2", "H3"] == [tag for tag in tags if re.fullmatch(r"H\d", tag)]


def test_every_figure_has_its_words(sampler: Printed) -> None:
    """Each picture and the check marks carry an alternative text."""
    alts = [str(node.get("/Alt", "")) for node in sampler.structure() if node["/S"] == "/Figure"]
    assert all(alts)
    assert {"A square, alone.", "Step 1, alone.", "Step 2, alone.", "Step 3, alone."} <= set(alts)
    assert any("10 cm bar" in alt for alt in alts)


@pytest.mark.parametrize(("paper", "size"), [(Paper.LETTER, (8.5, 11.0)), (Paper.A4, (210 / 25.4, 297 / 25.4))])
def test_the_paper_has_its_size(paper: Paper, size: tuple[float, float]) -> None:
    """Letter is 8½ × 11 in; A4 is 210 × 297 mm (ISO 216)."""
    assert pytest.approx(size, abs=0.005) == Printed(to_pdf(document(every_block()), paper)).size_in()


def test_both_papers_break_at_the_same_places() -> None:
    """One field of 7½ × 10 in serves both, so page n says the same on both."""
    letter, a4 = (Printed(to_pdf(document(every_block()), paper)).pages for paper in Paper)
    assert letter == a4


def test_the_foot_names_piece_edition_page_and_scale(sampler: Printed) -> None:
    """Each page ends with name, edition and date, page n of N, and the question about 100 %."""
    count = len(sampler.pages)
    assert count > 1
    for number, page in enumerate(sampler.pages, start=1):
        assert "Sampler · edition 2 · May" in page
        assert f"page {number} of {count}" in page
        assert "printed at 100 %?" in page


def test_the_same_document_gives_the_same_bytes() -> None:
    """Nothing of the day or the machine is in the file."""
    assert to_pdf(document(every_block())) == to_pdf(document(every_block()))


def drawn_boxes(printed: Printed) -> list[tuple[float, float]]:
    """Width and height in points of every shape on the first page, read off its drawing commands."""
    content = printed.pdf.pages[0].get_contents()
    assert content is not None
    number = r"(-?[\d.]+)"
    found = []
    for block in re.findall(r"q ([^q]*?)Q", content.get_data().decode("latin-1"), re.DOTALL):
        scale = re.search(rf"{number} 0 0 {number} {number} {number} cm", block)
        across, up = (float(scale[1]), float(scale[2])) if scale else (1.0, 1.0)
        points = re.findall(rf"{number} {number} [ml]\b", block)
        if len(points) >= 4:
            xs, ys = [float(x) * across for x, _ in points], [float(y) * up for _, y in points]
            found.append((max(xs) - min(xs), max(ys) - min(ys)))
    return found


@pytest.mark.parametrize("paper", list(Paper))
@pytest.mark.parametrize("unit", list(Unit))
def test_squares_and_bars_measure_true(paper: Paper, unit: Unit) -> None:
    """1 in is 72 points and 1 cm is 72/2.54: the square, the bar and its parts are drawn that large."""
    marks = Printed(to_pdf(document((Heading(1, "Check"), CheckMarks(unit))), paper))
    boxes = drawn_boxes(marks)

    def is_drawn(wide: float, high: float | None = None) -> bool:
        return any(abs(w - wide) < 0.01 and (high is None or abs(h - high) < 0.01) for w, h in boxes)

    assert is_drawn(1 * POINTS, 1 * POINTS)
    assert is_drawn(2 * CM, 2 * CM)
    assert is_drawn(4 * POINTS)
    assert is_drawn(10 * CM)
    assert 2 == sum(abs(wide - 1 * POINTS) < 0.01 and high < 10 for wide, high in boxes)
    assert 3 == sum(abs(wide - 2 * CM) < 0.01 and high < 10 for wide, high in boxes)


def test_a_picture_of_the_page_shows_the_inch_too() -> None:
    """At 144 dots to the inch the page is 8½ × 11 × 144 dots: nothing rescales it."""
    (page,) = to_page_pictures(document((Heading(1, "Check"), CheckMarks(Unit.INCH))), Paper.LETTER, 144)
    assert page.startswith(PNG)
    assert (1224, 1584) == (int.from_bytes(page[16:20]), int.from_bytes(page[20:24]))


def test_a_table_is_never_broken() -> None:
    """Twenty rows that start low on a page go to the next one together, their head with them."""
    filler = tuple(Paragraph(words(f"line {n}")) for n in range(22))
    pages = Printed(to_pdf(document((Heading(1, "T"), *filler, table(20))))).pages
    (holder,) = [page for page in pages if "row 0" in page]
    assert all(f"row {n}" in holder for n in range(20))
    assert "cut, in" in holder
    assert 2 == len(pages)


def test_a_table_longer_than_a_page_repeats_its_head() -> None:
    """Ninety rows cannot stay together; every page of them names its columns."""
    pages = Printed(to_pdf(document((Heading(1, "T"), table(90))))).pages
    assert len(pages) > 1
    assert all("cut, in" in page for page in pages)


@pytest.mark.parametrize("lines", range(28, 36))
def test_no_heading_stays_alone_at_the_foot(lines: int) -> None:
    """Wherever the page ends, the heading is on the page of the words that follow it."""
    filler = tuple(Paragraph(words(f"line {n}")) for n in range(lines))
    after = (Heading(2, "Lonely"), Paragraph(words("company")))
    for page in Printed(to_pdf(document((Heading(1, "T"), *filler, *after)))).pages:
        assert ("Lonely" in page) == ("company" in page)


def test_a_step_keeps_its_picture() -> None:
    """Words and picture of each of nine steps are on one page."""
    printed = Printed(to_pdf(document((Heading(1, "T"), Steps(tuple(step(n) for n in range(1, 10)))))))
    for number in range(1, 10):
        words_on = [page for page, text in enumerate(printed.pages) if f"Strip {number} " in text]
        assert 1 == len(words_on)
    figures = [node for node in printed.structure() if node["/S"] == "/Figure"]
    for number, node in enumerate(figures, start=1):
        (page,) = [place for place, text in enumerate(printed.pages) if f"Strip {number} " in text]
        assert f"Step {number}, alone." == node["/Alt"]
        assert page == printed.page_of(node)


def test_words_that_look_like_typesetting_stay_words() -> None:
    """Quotes, backslashes, hashes, brackets and dollar signs of a maker's name are printed as they are."""
    name = 'Tom\'s "No. 7" \\ #let $x$ [a] *b* _c_ <d> @e'
    printed = Printed(to_pdf(document((Heading(1, name), Paragraph(words(name))), name=name)))
    assert 2 <= printed.text.replace("’", "'").count('"No. 7" \\ #let $x$ [a] *b* _c_ <d> @e')


def test_a_sheet_is_drawn_together_to_fit_one_page() -> None:
    """Forty paragraphs run over at full size and stand on one page as a sheet."""
    blocks: tuple[Block, ...] = (Heading(1, "T"), *(Paragraph(words(f"line {n}")) for n in range(45)))
    assert 1 < len(Printed(to_pdf(document(blocks))).pages)
    assert 1 == len(Printed(to_pdf(document(blocks, fit=Fit.ONE_PAGE))).pages)


def test_a_sheet_that_no_eye_could_read_on_one_page_takes_more() -> None:
    """Three hundred lines are neither lost nor made unreadable."""
    blocks: tuple[Block, ...] = (Heading(1, "T"), *(Paragraph(words(f"line {n}.")) for n in range(300)))
    sheet = Printed(to_pdf(document(blocks, fit=Fit.ONE_PAGE, kind="Table sheet")))
    assert len(sheet.pages) > 1
    assert all(f"line {n}." in sheet.text for n in range(300))
