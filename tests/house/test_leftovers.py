"""Nothing in the project points at the machine or the desk it was written on."""

from __future__ import annotations

import re
import subprocess
from hashlib import sha256
from itertools import pairwise
from pathlib import Path

import pytest

from tests.house.tree import ROOT, place, tracked_files

WORD = re.compile(r"[A-Za-z0-9_]+(?:[.-][A-Za-z0-9_]+)*")
UNWANTED = frozenset(
    {
        "00a7dc5a0cc388586b8665846e7d8ae9",
        "014c777fd4684e1994134767ade25b4d",
        "0dc11026ac75c015aaa1deafff4a7a54",
        "0f395eed14a6da1e4ad8fb060bac13c1",
        "23f1ab7bb8c64dcccaacb5c8a879c21e",
        "31bf6112d080a00039ce6ef55a05b2d8",
        "3470083d9a903daa721ddcf0a6cc5356",
        "3ca29e55be4befa48f875d24c27f9bed",
        "3ea125d0bff386e6754b3782b300016f",
        "3fb7cd9de855a89618f92f52ee0110ca",
        "4144e37cbbed14be5b3ace876c3e5f9d",
        "487b91042c7cf27a19e23ea8699f5f35",
        "489a91df282719be1ea2dcbf42784ca7",
        "52bbe97f5eedf7af9e820fd38e349c38",
        "57de4cf40144bdf7d00010f2f5557a7d",
        "60965168ce762e949600281ba6d01fee",
        "669b34350d90c2890438a8b125a6cd0d",
        "727e22d09ecdd0250e09681a07cfe971",
        "7669a8ca0d16654677fbad1f4476b7f3",
        "7b1bca67f13234851df27465985cb475",
        "7d3194f79e645c42e4396dda38be0476",
        "7e224c05ea193c2321a1b587aff2bfc4",
        "85ea2603d2e5c66e7e238bea336ebb1b",
        "8743857e3ea00fd1c64bbc68b8af2419",
        "8b5bb5eb9d758455b8635855cf8aaf05",
        "9495278a74715c7e246a36404b3589f0",
        "94a168d2da574b00ec6c787377278465",
        "9b4a4b62108f4680b2f58e47f776bc46",
        "9f172b1870e9630515e9feac42c0c71c",
        "a4aa2ac280bb8d1a0ce7a1be5a7bfb10",
        "b36076213bb190075360094b3b92653b",
        "b951327c37d8a1ed4d5ed18908681f6a",
        "bb828707a47663f0e4ddda29d65ac6a2",
        "bccc86317c281a19e56f3f941077ea61",
        "be587c6fc5d417e1f9d10be502927383",
        "c235260c701e67f9ed7cbfbfa30bb610",
        "c70eca6b0f88f44d81a41311647e50fd",
        "c857d09db23e6822e3600bc06ad8d58f",
        "c899567ee906851741bf7f3bde17a337",
        "d2bede8f996fd2e2b5f8532b045e5035",
        "d6d7019ca9fcbf07c769e445342515ef",
        "dcdc39d3f45a3e2cb9e21e38b3b94e62",
        "e0298894893be5f7d8a0bda03a4bbac4",
        "e4e3ded14b15a7096137b47eea80ad83",
        "e680c440a2e92079ab1bf7a927e8d392",
        "f88d78cc91af31d00aa93fba60770a98",
    }
)
"""Digests of words that have no business here (registry hosts, private notes), so that this file holds none."""
PLACEHOLDERS = re.compile(r"(?i)\b(?:TODO|FIXME|XXX|HACK)\b|lorem ipsum|To be described")
TEXT_SUFFIXES = {
    "",
    ".cfg",
    ".css",
    ".html",
    ".in",
    ".ini",
    ".js",
    ".json",
    ".md",
    ".py",
    ".svg",
    ".toml",
    ".txt",
    ".typ",
    ".yml",
}


def digest(word: str) -> str:
    """The first half of a word's SHA-256, lower case."""
    return sha256(word.lower().encode()).hexdigest()[:32]


def unwanted_words(text: str) -> list[str]:
    """Words of a text, and their runs of two, that are on the list."""
    words = WORD.findall(text)
    pairs = [f"{first} {second}" for first, second in pairwise(words)]
    ends = [".".join(word.split(".")[-count:]) for word in words if "." in word for count in (2, 3)]
    return [word for word in {*words, *pairs, *ends} if digest(word) in UNWANTED]


def private_paths(text: str, homes: tuple[Path, ...]) -> list[str]:
    """Paths in a text that lie under the folders given."""
    return [str(home) for home in homes if re.search(rf"(?<![\w.]){re.escape(str(home))}(?=/|\b)", text)]


def _texts() -> list[tuple[str, str]]:
    """Name and content of every tracked text file."""
    return [
        (place(path), path.read_text(encoding="utf-8"))
        for path in tracked_files()
        if path.suffix in TEXT_SUFFIXES and path.name != ".gitignore"
    ]


def _private_folders() -> tuple[Path, ...]:
    """Where this checkout lies and who is at home here; a bare root folder says nothing."""
    return tuple(path for path in {ROOT, ROOT.parent, Path.home()} if len(path.parts) > 1 and path != Path("/tmp"))  # noqa: S108  a public folder


def test_no_file_names_a_private_place_or_a_registry() -> None:
    """No tracked text holds a word of the list or a path of this machine, nor does a file name."""
    found = [
        (name, wrong)
        for name, text in _texts()
        for wrong in unwanted_words(f"{name}\n{text}") + private_paths(text, _private_folders())
    ]
    assert [] == found


def test_no_commit_message_names_a_private_place_or_a_registry() -> None:
    """The history speaks about the project only."""
    log = subprocess.run(["git", "log", "--format=%B"], cwd=ROOT, check=True, capture_output=True, text=True).stdout
    assert [] == unwanted_words(log) + private_paths(log, _private_folders())


def test_nothing_is_left_half_done() -> None:
    """No placeholder stands in a file that is delivered."""
    found = [
        f"{name}: {mark}"
        for name, text in _texts()
        if name != place(Path(__file__).resolve())
        for mark in PLACEHOLDERS.findall(text)
    ]
    assert [] == found


def test_every_text_file_ends_with_a_line_end_and_holds_no_tabs_or_trailing_blanks() -> None:
    """What an editor would change on saving is already so (make needs its tabs, Markdown its two blanks)."""
    wrong = []
    for name, text in _texts():
        if text and not text.endswith("\n"):
            wrong.append(f"{name}: no line end at the end")
        if "\r" in text or ("\t" in text and name != "Makefile"):
            wrong.append(f"{name}: tab or carriage return")
        if not name.endswith((".md", ".svg", ".html")) and re.search(r"[ \t]+$", text, re.MULTILINE):
            wrong.append(f"{name}: blanks at a line's end")
    assert [] == wrong


@pytest.mark.parametrize("text", ["see pantry/Half-Moon.md there", "from half-moon.md", "the half-moon.md"])
def test_an_unwanted_word_is_noticed(text: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """A listed word is found in any case, in a path, and as the end of a longer name."""
    monkeypatch.setattr("tests.house.test_leftovers.UNWANTED", frozenset({digest("half-moon.md")}))
    assert 1 == len(unwanted_words(text))


def test_an_unwanted_pair_of_words_is_noticed(monkeypatch: pytest.MonkeyPatch) -> None:
    """Two words in a row count as one entry; apart they do not."""
    monkeypatch.setattr("tests.house.test_leftovers.UNWANTED", frozenset({digest("blue moon")}))
    assert (["Blue moon"], []) == (unwanted_words("once in a Blue moon"), unwanted_words("a blue, old moon"))


@pytest.mark.parametrize(
    ("text", "found"),
    [("/pantry/shelf/jam.txt", True), ("in /pantry", True), ("the hand/pantry/door", False), ("/pantryman", False)],
)
def test_a_private_path_is_noticed(text: str, *, found: bool) -> None:
    """A folder counts as a whole word, not inside another path."""
    assert found == bool(private_paths(text, (Path("/pantry"),)))
