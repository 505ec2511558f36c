"""Every published source that a test names stands on the page of sources, and no other."""

from __future__ import annotations

import re
from pathlib import Path

ROOT = Path(__file__).parents[2]
ADDRESS = re.compile(r"https?://[^\s\"'<>`|]+")
ROW = re.compile(r"^\| (?P<title>[^|]+) \| (?P<at>[^|]+) \| <(?P<address>[^>]+)> \| (?P<used>[^|]+) \|$", re.MULTILINE)
ROWS = list(ROW.finditer((ROOT / "docs/sources.md").read_text(encoding="utf-8")))


def named() -> dict[str, set[str]]:
    """Addresses in the outside tests, each with the files that name it."""
    found: dict[str, set[str]] = {}
    for path in sorted((ROOT / "tests/outside").glob("*.py")):
        for address in ADDRESS.findall(path.read_text(encoding="utf-8")):
            found.setdefault(address.rstrip(".,;:)"), set()).add(path.stem.removeprefix("test_"))
    return found


def test_the_page_lists_the_sources_that_are_used() -> None:
    """An address in a test has its row; a row without a test goes."""
    listed = [row["address"] for row in ROWS]
    assert sorted(set(listed)) == sorted(listed)
    assert sorted(named()) == sorted(listed)


def test_each_row_says_where_it_is_used() -> None:
    """The last column names the files of the tests."""
    used = {row["address"]: set(row["used"].split(", ")) for row in ROWS}
    assert named() == used


def test_each_row_says_title_and_publisher() -> None:
    """The publisher is the host of the address, without www."""
    assert [] == [row["address"] for row in ROWS if row["at"] not in row["address"] or not row["title"].strip()]
