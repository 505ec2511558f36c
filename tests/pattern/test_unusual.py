"""Pieces off the beaten track: many strips, none, too little fabric, a long name. Nothing fails, nothing is lost."""

from __future__ import annotations

import pytest

from stitchflip.pattern import pattern_document, proof, shop_sheet, table_sheet, to_html, to_pdf
from stitchflip.planning import plan
from stitchflip.project import read_project
from tests.pattern.papers import Marked, Printed

SQUARE = """
name = "{name}"
[squared_up]
wide = "{size}"
long = "{size}"
[center]
fabric = "Plum"
cut = "{center}"
[building]
way = "log cabin"
until_covered = true
[[rounds]]
cut = "1 1/2"
fabrics = ["Plum", "Sand", "Sand", "Plum"]
[[fabrics]]
name = "Plum"
color = "#6b2f5c"
{shelf}
[[fabrics]]
name = "Sand"
color = "#e2d3b0"
[binding]
fabric = "Plum"
"""
SHELF = """only_on_hand = true
[[fabrics.on_hand]]
wide = "9"
long = "11"
"""
PIECES = {
    "many strips": SQUARE.format(name="Many", size="40", center="3", shelf=""),
    "no strips": SQUARE.format(name="None", size="10", center="14", shelf=""),
    "too little fabric": SQUARE.format(name="Short", size="10", center="5", shelf=SHELF),
    "a long name": SQUARE.format(name="Seventeen Small Boats Come Home " * 3, size="10", center="5", shelf=""),
}


@pytest.mark.parametrize("piece", list(PIECES))
def test_every_paper_is_made(piece: str) -> None:
    """The table sheet is one page, the others print, the screen pages nest, and the red pencil stays still."""
    made = plan(read_project(PIECES[piece], piece))
    assert 1 == len(Printed(to_pdf(table_sheet(made))).pdf.pages)
    assert 1 == len(Printed(to_pdf(shop_sheet(made))).pdf.pages)
    pattern = pattern_document(made)
    assert len(Printed(to_pdf(pattern)).pdf.pages) > 5
    assert [] == proof(pattern, made)
    assert "Square up" in Marked(to_html(pattern)).text


def test_a_long_build_points_to_the_pattern() -> None:
    """Eighty strips do not all fit the table sheet; it says how many it leaves out, and the pattern has them all."""
    made = plan(read_project(PIECES["many strips"], "many"))
    assert "more strips: see the pattern" in Marked(to_html(table_sheet(made))).text
    page = Marked(to_html(pattern_document(made)))
    assert len(made.build.strips) == sum(
        one["data-tick"].startswith("sewing ") for one in page.named("input") if one["data-tick"]
    )


def test_missing_fabric_is_said_before_the_first_cut() -> None:
    """A shelf that is not enough is a stop on both the table sheet and the pattern."""
    made = plan(read_project(PIECES["too little fabric"], "short"))
    for page in (Marked(to_html(table_sheet(made))).text, Marked(to_html(pattern_document(made))).text):
        assert "Plum on hand is not enough" in page
        assert page.index("Stop.") < page.rindex("Cut first" if "Cut first" in page else "Cutting")
