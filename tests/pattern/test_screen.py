"""The screen page: one file, nothing from outside, readable aloud, and it remembers ticks."""

from __future__ import annotations

import re
from collections import Counter
from itertools import pairwise
from pathlib import Path
from shutil import which

import pytest

from stitchflip.pattern import to_html
from stitchflip.pattern.model import Heading, Paragraph, TickList, words
from tests.pattern.papers import Marked
from tests.pattern.samples import document, every_block

HEADINGS = re.compile(r"h[1-6]")


@pytest.fixture(scope="module")
def page() -> str:
    """A document with one of each block."""
    return to_html(document(every_block()))


@pytest.fixture(scope="module")
def marked(page: str) -> Marked:
    """The same, taken apart."""
    return Marked(page)


def test_it_is_whole_and_closes_what_it_opens(page: str, marked: Marked) -> None:
    """The page nests, has its language, its letters, its title and a width for phones."""
    assert page.startswith("<!DOCTYPE html>")
    assert [{"lang": "en-US"}] == marked.named("html")
    assert {"charset": "utf-8"} in marked.named("meta")
    assert {"name": "viewport", "content": "width=device-width, initial-scale=1"} in marked.named("meta")
    assert "<title>Sampler: pattern</title>" in page


def test_it_asks_nothing_of_the_network(page: str, marked: Marked) -> None:
    """No address, no file of its own, no imported style: it opens in a cellar."""
    assert not re.search(r"https?:|//[a-z]|@import|\bsrc=", page)
    assert [] == marked.named("link")
    assert [] == [one for one in marked.named("script") if one]


def test_headings_go_down_one_level_at_a_time(marked: Marked) -> None:
    """One first heading; no level is skipped, steps included."""
    levels = [int(tag[1]) for tag, _ in marked.tags if HEADINGS.fullmatch(tag)]
    assert 1 == levels.count(1)
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_every_picture_speaks(marked: Marked) -> None:
    """Each drawing is an image with its words."""
    drawings = marked.named("svg")
    assert ["A square, alone.", "Step 1, alone.", "Step 2, alone.", "Step 3, alone."] == [
        one["aria-label"] for one in drawings
    ]
    assert {"img"} == {one["role"] for one in drawings}


def test_no_two_things_share_a_name(marked: Marked) -> None:
    """Names of parts, figures and hatches are each used once, and each pointer finds its name."""
    names = Counter(attributes["id"] for _, attributes in marked.tags if "id" in attributes)
    assert {1} == set(names.values())
    ways = {str(one["href"]).removeprefix("#") for one in marked.named("a")}
    values = " ".join(str(value) for _, attributes in marked.tags for value in attributes.values())
    fills = set(re.findall(r"url\(#([^)]+)\)", values))
    assert ways
    assert fills
    assert ways | fills <= set(names)


def test_ticks_have_names_of_their_own(marked: Marked) -> None:
    """Two notions and three steps can be ticked, each remembered for itself."""
    ticks = [one["data-tick"] for one in marked.named("input")]
    assert ["notions 1", "notions 2", "sewing 1", "sewing 2", "sewing 3"] == ticks


def test_a_number_of_a_figure_is_a_way_to_it(page: str) -> None:
    """The mention reads "figure 1" and leads to the picture."""
    assert '<a href="#figure-one">figure\u00a01</a>' in page
    assert '<figure id="figure-one">' in page


def test_a_name_that_looks_like_markup_stays_a_name() -> None:
    """Angle brackets and quotes of a maker are shown, never obeyed."""
    name = '<script>alert("x")</script> & \'"'
    marked = Marked(
        to_html(document((Heading(1, name), Paragraph(words(name)), TickList((words(name),), name)), name=name))
    )
    assert 1 == len(marked.named("script"))
    assert 2 <= marked.text.count('alert("x")')


def test_check_marks_are_for_paper_only(page: str) -> None:
    """A screen has no true inch: squares and bars appear when the page is printed."""
    assert re.search(r'class="on-paper"[^>]*>.*width: 1in.*width: 4in.*width: 2cm.*width: 10cm', page, re.DOTALL)
    assert re.search(
        r"\.on-paper \{ display: none; \}.*@media print.*\.on-paper \{ display: block; \}", page, re.DOTALL
    )


@pytest.mark.browser
@pytest.mark.skipif(which("chromium") is None, reason="needs Debian's Chromium")
def test_ticks_are_there_again_after_the_page_was_closed(page: str, tmp_path: Path) -> None:
    """What is ticked on a phone is ticked the next day, the count says so, and nothing scrolls sideways."""
    from playwright.sync_api import sync_playwright

    file = tmp_path / "sampler.html"
    file.write_text(page, encoding="utf-8")
    with sync_playwright() as played:
        browser = played.chromium.launch(executable_path=which("chromium"), args=["--no-sandbox"])
        context = browser.new_context(viewport={"width": 390, "height": 844})
        asked: list[str] = []
        first = context.new_page()
        first.on("request", lambda request: asked.append(request.url))
        first.goto(file.as_uri())
        first.check("input[data-tick='sewing 2']")
        assert "1 of 3 steps done" == first.inner_text("#progress-words")
        assert 390 >= first.evaluate("document.documentElement.scrollWidth")
        first.close()
        again = context.new_page()
        again.goto(file.as_uri())
        assert again.is_checked("input[data-tick='sewing 2']")
        assert not again.is_checked("input[data-tick='sewing 1']")
        again.on("dialog", lambda dialog: dialog.accept())
        again.click("#clear-ticks")
        assert not again.is_checked("input[data-tick='sewing 2']")
        browser.close()
    assert [file.as_uri()] == asked
