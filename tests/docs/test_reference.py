"""The reference pages are what the program says of itself."""

import re
from pathlib import Path

import pytest

from stitchflip.cli.reference import PAGES

REFERENCE = Path(__file__).parents[2] / "docs" / "reference"


@pytest.mark.parametrize("name", sorted(PAGES))
def test_a_reference_page_is_fresh(name: str) -> None:
    """A page that is stale is written again with `python -m stitchflip.cli.reference .`."""
    assert PAGES[name]() == (REFERENCE / name).read_text(encoding="utf-8")


MEASURED = "cutting-bench.md"
"""Written by `make compare`, which takes twenty minutes."""


def test_the_folder_holds_no_other_pages() -> None:
    """Every page of the reference is made, none is written by hand."""
    assert {*PAGES, MEASURED} == {page.name for page in REFERENCE.glob("*.md")}


def test_the_comparison_says_when_where_and_with_what_it_was_measured() -> None:
    """Date, machine, versions, every family, and that no proof of ours was false."""
    from bench.cutting.families import families
    from bench.cutting.peers import MODULES

    page = (REFERENCE / MEASURED).read_text(encoding="utf-8")
    assert re.search(r"^- Date: \d{4}-\d{2}-\d{2}$", page, re.MULTILINE)
    assert re.search(r"^- Machine: \d+ cores, ", page, re.MULTILINE)
    assert all(re.search(rf"^- {re.escape(name)}: \S", page, re.MULTILINE) for name in MODULES)
    assert [] == [family.title for family in families() if f"\n## {family.title}\n" not in page]
    assert "False proofs or plans of ours that cannot be cut: none." in page


def test_every_command_stands_on_the_page() -> None:
    """The page names the commands a reader looks for."""
    page = (REFERENCE / "cli.md").read_text(encoding="utf-8")
    assert [] == [name for name in ("new", "plan", "squareup", "pattern") if f"## stitchflip {name}\n" not in page]


def test_every_key_a_project_may_have_stands_on_the_page() -> None:
    """Each field of each model has its row; nothing is left out that a maker may write."""
    from stitchflip.project import project_schema

    schema = project_schema()
    page = (REFERENCE / "project-file.md").read_text(encoding="utf-8")
    models = [model for model in schema["$defs"].values() if "properties" in model]
    assert len(models) > 10
    keys = [key for model in models for key in model["properties"]]
    plain = [key for key, entry in schema["properties"].items() if "$ref" not in entry and "items" not in entry]
    assert [] == [key for key in keys + plain if f"| `{key}` |" not in page]
    tables = set(schema["properties"]) - set(plain)
    heads = {head.strip("[]") for head in page.split() if head.startswith("[") and head.endswith("]")}
    assert {table for table in tables if table not in {"units", "way_of_working"}} <= heads
