"""One word for each thing: the glossary, the names in the code, and what is written everywhere."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
GLOSSARY = (ROOT / "docs/glossary.md").read_text(encoding="utf-8")
WORDS = re.findall(r"^\| \*\*(.+?)\*\* \|", GLOSSARY, re.MULTILINE)

KERNEL = {
    "kernel",
    "build",
    "flip",
    "end",
    "class",
    "spot",
    "gap",
    "note",
    "outline",
    "through",
    "turning",
    "runs",
    "from",
}
"""Words that stay in the code of the plane: geometry the maker never reads."""
DRAWING = {"pen", "area", "line", "text", "knot", "figure", "primitive"}
"""What a picture is made of."""
PLAIN = {
    "number", "numbers", "one", "choice", "change", "severity", "letter", "status", "rule", "order", "first", "model",
    "reading", "read", "by", "short", "shape", "outline", "measure", "sewn", "step", "hand", "sheet", "state", "fiber",
    "wash", "finish", "ends", "building", "working", "estimate", "work", "stock", "row", "bare", "widest", "corner",
    "up", "squared", "in", "my",
}  # fmt: skip  # a list of words reads better in lines
"""Everyday words that mean what they say."""
NOT_OURS = {
    "centre": "center",
    "colour": "color",
    "fibre": "fiber",
    "cloths": "fabrics",
    "wadding": "batting",
    "take-up": "draw-up",
    "trueup": "squareup",
    "overage": "spare",
    "off-cut": "leftover",
    "offcut": "leftover",
    "handout": "pattern",
    "back-tack": "lock",
}
"""Other words for the same things, or the same words as others spell them."""

NAMED_THERE = {"sources.md", "proof.py", "reading.py", "joins.py"}
"""Titles of others, the list the papers are checked by, spellings that a project file may have."""


def public_classes() -> list[str]:
    """Names of the values that the rooms share."""
    names = []
    for path in sorted((ROOT / "src/stitchflip").glob("*/model.py")):
        if path.parent.name in {"pattern", "pictures"}:
            continue  # pages and drawings, not quilts
        tree = ast.parse(path.read_text(encoding="utf-8"))
        names += [node.name for node in tree.body if isinstance(node, ast.ClassDef) and node.name[0] != "_"]
    return names


def known() -> set[str]:
    """Every single word of the glossary's entries, with its plain singular."""
    words = {word.lower() for entry in WORDS for word in re.findall(r"[a-z]+", entry, re.IGNORECASE)}
    return words | {word.removesuffix("s") for word in words} | KERNEL | DRAWING | PLAIN


def test_the_glossary_is_in_order_and_has_each_word_once() -> None:
    """A reader finds a word where the alphabet says."""
    plain = [word.lower() for word in WORDS]
    assert len(plain) > 50
    assert sorted(set(plain)) == plain


@pytest.mark.parametrize("name", public_classes())
def test_a_public_name_is_made_of_words_of_the_glossary(name: str) -> None:
    """A class is called what makers call the thing."""
    parts = [part.lower() for part in re.findall(r"[A-Z][a-z]*", name)]
    assert [] == [part for part in parts if part not in known() and part.removesuffix("s") not in known()]


@pytest.mark.parametrize("word", sorted(NOT_OURS))
def test_no_other_word_is_used_for_the_same_thing(word: str) -> None:
    """Sources, pages and examples speak US English and the words of the glossary."""
    paths = [*ROOT.glob("src/**/*.py"), *ROOT.glob("docs/**/*.md"), *ROOT.glob("*.md"), *ROOT.glob("examples/*.toml")]
    found = [
        str(path.relative_to(ROOT))
        for path in paths
        if path.name not in NAMED_THERE and re.search(rf"\b{word}\b", path.read_text(encoding="utf-8"), re.IGNORECASE)
    ]
    assert [] == found, f"say {NOT_OURS[word]}"
