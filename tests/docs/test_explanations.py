"""The pages that explain: their sessions run, their links lead somewhere."""

from __future__ import annotations

import doctest
import re
from pathlib import Path
from typing import Any

import pytest

from stitchflip.lengths import Length
from stitchflip.piecing import trim_polygon
from stitchflip.piecing.frame import frame_for
from stitchflip.piecing.ways import Job
from stitchflip.project import read_project
from stitchflip.project.model import Round
from stitchflip.project.numbers import effective

ROOT = Path(__file__).parents[2]
PAGES = sorted([*ROOT.glob("*.md"), *ROOT.glob("docs/**/*.md")])
LINK = re.compile(r"(?<!`)\[[^\]\n]+\]\((?P<to>[^)\s]+)\)")


@pytest.mark.parametrize(
    "page", [page for page in PAGES if ">>> " in page.read_text(encoding="utf-8")], ids=lambda p: p.name
)
def test_the_sessions_on_a_page_run_as_printed(page: Path) -> None:
    """Every answer shown is the answer given."""
    result = doctest.testfile(str(page), module_relative=False, encoding="utf-8")
    assert result.attempted > 0
    assert 0 == result.failed


@pytest.mark.parametrize("page", PAGES, ids=lambda page: str(page.relative_to(ROOT)))
def test_every_link_inside_the_project_leads_to_a_file(page: Path) -> None:
    """Links to files name files that are there."""
    targets = [found["to"].split("#")[0] for found in LINK.finditer(page.read_text(encoding="utf-8"))]
    inside = [target for target in targets if target and "://" not in target]
    assert [] == [target for target in inside if not (page.parent / target).exists()]


def test_the_worked_piece_is_right_by_another_way() -> None:
    """The lengths of the page by hand, from plain intersections of lines (no code of the package).

    Upper right strip at distance v from the center mark, places along it u; the upper edge of what is needed is the
    line (u + v) / sqrt 2 = 6.5 + 0.5.
    """
    page = (ROOT / "docs/explanation/by-hand.md").read_text(encoding="utf-8")
    top, seam, edge = 7.0, 5.125 - 0.25, 5.125
    corners = [
        (seam, top * 2**0.5 - seam),
        (seam, -edge),
        (seam + 2.25, top * 2**0.5 - seam - 2.25),
        (seam + 2.25, -edge),
    ]
    needed = max(u for _, u in corners) - min(u for _, u in corners)
    assert f"**{needed:.4f}**" in page
    half = (8.25 - 0.5) / 2**0.5
    assert f"{half:.4f} in from the center mark" in page
    assert f"6½ − {half:.4f} = {6.5 - half:.4f} in" in page


def test_the_way_of_building_shown_to_contributors_asks_for_its_strips() -> None:
    """The module printed in the page runs, and goes up twice and down twice in each of two rounds."""
    page = (ROOT / "CONTRIBUTING.md").read_text(encoding="utf-8")
    source = re.search(r"```python\n(?P<code>\"\"\"To and fro.*?)```", page, re.DOTALL)
    assert source is not None
    module: dict[str, Any] = {}
    exec(source["code"], module)  # noqa: S102  # the code of our own page
    project = read_project((ROOT / "examples/harbour-shed-block.toml").read_text(encoding="utf-8"))
    two = project.model_copy(update={"rounds": project.rounds[:2]})
    two = two.model_copy(update={"rounds": tuple(Round(cut=Length.of_inches(2), fabric="Gull") for _ in two.rounds)})
    names = ("bottom", "right", "top", "left")
    normals = ((0.0, -1.0), (1.0, 0.0), (0.0, 1.0), (-1.0, 0.0))
    numbers = effective(two)
    job = Job(two, numbers, frame_for(numbers, trim_polygon(two, numbers)), names, normals)
    asked = [names[strip.side] for strip in module["strips"](job)]
    assert ["top", "top", "bottom", "bottom"] * 2 == asked
