"""The gallery is what its command makes today, and no example is missing from it."""

from __future__ import annotations

from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from stitchflip.cli.gallery import FOLDER, page, shown, write_gallery

ROOT = Path(__file__).parents[2]
EXAMPLES = tuple(sorted((ROOT / "examples").glob("*.toml")))
PICTURES = ROOT / "docs" / FOLDER


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda path: path.stem)
def test_the_picture_of_an_example_is_fresh(example: Path) -> None:
    """A picture that is stale is drawn again with `make gallery`."""
    made = shown(example.stem, example.read_text(encoding="utf-8"))
    assert made.svg == (PICTURES / f"{example.stem}.svg").read_text(encoding="utf-8")
    written = (ROOT / "docs" / "gallery.md").read_text(encoding="utf-8").split("\n")
    own = page([made]).split("\n")
    first = own.index(f"## {made.name}")
    assert [] == [line for line in own[first:] if line not in written]


def test_every_example_is_in_the_gallery_and_nothing_else() -> None:
    """One picture for each project file; none is left over from an example that is gone."""
    assert {path.stem for path in EXAMPLES} == {path.stem for path in PICTURES.glob("*.svg")}
    text = (ROOT / "docs" / "gallery.md").read_text(encoding="utf-8")
    assert [] == [path.stem for path in EXAMPLES if f"({FOLDER}/{path.stem}.svg)" not in text]
    assert len(EXAMPLES) == text.count("\n## ")


def test_a_picture_that_is_not_of_an_example_is_taken_away(tmp_path: Path) -> None:
    """The command clears pictures of examples that are gone, and writes page and picture of those there are."""
    (tmp_path / "examples").mkdir()
    (tmp_path / "docs" / FOLDER).mkdir(parents=True)
    (tmp_path / "examples" / "doorstep.toml").write_bytes((ROOT / "examples" / "doorstep.toml").read_bytes())
    (tmp_path / "docs" / FOLDER / "gone.svg").write_text("<svg/>", encoding="utf-8")
    write_gallery(tmp_path)
    assert ["doorstep.svg"] == [path.name for path in (tmp_path / "docs" / FOLDER).iterdir()]
    assert 1 == (tmp_path / "docs" / "gallery.md").read_text(encoding="utf-8").count("\n## ")


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda path: path.stem)
def test_a_picture_says_in_words_what_it_shows(example: Path) -> None:
    """Each picture has a title and a description, and the page repeats the description for who cannot see it."""
    root = ET.fromstring((PICTURES / f"{example.stem}.svg").read_text(encoding="utf-8"))  # noqa: S314  our own text
    said = root.findtext("{http://www.w3.org/2000/svg}desc") or ""
    assert len(said) > 40
    assert said in (ROOT / "docs" / "gallery.md").read_text(encoding="utf-8")
