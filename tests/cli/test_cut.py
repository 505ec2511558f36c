"""The command that cuts: the order on the screen, as a document, and on paper."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.cli.conftest import Ask

EXAMPLES = Path(__file__).parents[2] / "examples"
LANTERN = EXAMPLES / "lantern-walk.toml"


def squeezed(text: str) -> str:
    """The words of a screen, whatever the columns."""
    return " ".join(text.split())


def test_every_fabric_is_told(ask: Ask) -> None:
    """Six fabrics by letter: what to buy, how sure that is, the cuts, what is left; nothing stops the piece."""
    said = ask("cut", LANTERN)

    assert (0, "") == (said.status, said.err)
    told = squeezed(said.out)
    for name in ("Brass", "Inkwell", "Oat", "Ember", "Midnight", "Paper Lantern"):
        assert name in told
    assert 6 == said.out.count("How sure")
    assert "no way of cutting in strips of one width and whole rows needs less than 5½ in" in told
    assert "Rotary cutter" in told
    assert "What the makers of your tools say comes first" in told


def test_one_fabric_by_name_letter_or_beginning(ask: Ask) -> None:
    """Brass is A; asked for twice it is told once."""
    by_name, by_letter, begun = (ask("cut", LANTERN, "--fabric", name).out for name in ("brass", "A", "bra"))

    assert by_name == by_letter == begun
    assert "Inkwell" not in by_name
    assert by_name == ask("cut", LANTERN, "--fabric", "A", "--fabric", "Brass").out
    assert {"Brass", "Oat"} <= set(squeezed(ask("cut", LANTERN, "--fabric", "A", "--fabric", "Oat").out).split())


@pytest.mark.parametrize("name", ["Brasss", "", "q"])
def test_an_unknown_fabric_is_said_with_those_there_are(ask: Ask, name: str) -> None:
    """Wrong usage, nothing on standard output, the names in the message."""
    said = ask("cut", LANTERN, "--fabric", name)

    assert (2, "") == (said.status, said.out)
    assert "Midnight" in said.err


def test_the_document_has_numbers_and_texts(ask: Ask) -> None:
    """Lengths in inches under keys ending in _in, words beside them; Brass needs 3 × 1½ + 1 in of ¼ yd."""
    said = ask("cut", LANTERN, "--json", "--fabric", "Brass")
    document = json.loads(said.out)
    (brass,) = document["fabrics"]

    assert (0, "") == (said.status, said.err)
    assert (5.5, 9.0, 3.5, "proved") == tuple(brass[key] for key in ("need_in", "buy_in", "spare_in", "status"))
    assert [["straighten", 0, 1], ["across", 3, 1]] == [
        [step["act"], sum(one["times"] for one in step["settings"]), step["folds"]] for step in brass["order"][:2]
    ]
    assert {"across_in": 40.0, "along_in": 4.0} == brass["order"][1]["left"]
    labels = sorted(
        int(given["label"]) for step in brass["order"] for one in step["settings"] for given in one["gives"]
    )
    assert [1, 2, 3, 4, 17, 18, 19, 20] == labels
    assert all(step["text"] and "\u202f" not in step["text"] for step in brass["order"])
    assert None is document["written"]


def test_sheet_and_diagrams_are_written(ask: Ask, tmp_path: Path) -> None:
    """A PDF and an SVG for each fabric that is asked for, and what was written is said."""
    said = ask("cut", LANTERN, "--fabric", "A", "--fabric", "B", "--out", "mat", "--paper", "a4")

    assert (0, "") == (said.status, said.err)
    written = sorted(path.relative_to(tmp_path / "mat").as_posix() for path in (tmp_path / "mat").rglob("*.*"))
    assert ["cutting-sheet.pdf", "pictures/cuts-A.svg", "pictures/cuts-B.svg"] == written
    assert (tmp_path / "mat" / "cutting-sheet.pdf").read_bytes().startswith(b"%PDF")
    assert "2 cutting diagrams (SVG)" in said.out
    assert "A4 paper" in said.out


def test_an_unknown_paper_writes_nothing(ask: Ask, tmp_path: Path) -> None:
    """Wrong usage, and no folder is made."""
    said = ask("cut", LANTERN, "--out", "mat", "--paper", "b5")

    assert 2 == said.status
    assert not (tmp_path / "mat").exists()


def test_what_stops_the_piece_is_said_and_is_the_exit_status(ask: Ask, porch: Path) -> None:
    """A fabric that is used up stops the piece: the order goes on, the finding stands below it, status 1."""
    porch.write_text(
        porch.read_text(encoding="utf-8").replace(
            '[[fabrics]]\nname = "Light"',
            '[[fabrics]]\nname = "Light"\nonly_on_hand = true\non_hand = [{ wide = "6", long = "6" }]',
        ),
        encoding="utf-8",
    )
    said = ask("cut", porch)

    assert 1 == said.status
    assert "Impossible" in said.out
    assert "Things to look at" in said.out


def test_kits_are_told_with_their_slips(ask: Ask) -> None:
    """What to buy for all, what goes into each bag, and the order of all cuts."""
    said = ask("cut", LANTERN, "--kits", "6", "--spare-kits", "1", "--fabric", "A", "--look", "0")

    assert (0, "") == (said.status, said.err)
    told = squeezed(said.out)
    assert "6 kits and one spare, cut together" in told
    assert "In each of the 7 bags" in told
    assert "Brass: 2 cut 1½ × 10½ in (strips 2, 3)" in told
    document = json.loads(ask("cut", LANTERN, "--kits", "6", "--json", "--look", "0").out)
    assert (6, 0, [1, 2, 3, 4, 5, 6]) == (
        document["kits"]["how_many"],
        document["kits"]["spare"],
        document["kits"]["slips"][0]["kits"],
    )


def test_only_so_much_of_a_fabric(ask: Ask) -> None:
    """4 in of Brass are not enough: the order of the fabric that stands in is told with it."""
    said = ask("cut", LANTERN, "--if-only", "Brass=4 in")

    assert (0, "") == (said.status, said.err)
    assert "not enough; short by 1½ in" in squeezed(said.out)
    (only,) = json.loads(ask("cut", LANTERN, "--if-only", "Brass=4 in", "--json").out)["if_only"]
    assert ("Brass", 4.0, True) == (only["fabric"], only["have_in"], only["is_enough"])
    assert only["stands_in"] in said.out


@pytest.mark.parametrize(
    "words",
    [
        ("--if-only", "Brass=much"),
        ("--if-only", "Brass=0"),
        ("--if-only", "=4 in"),
        ("--spare-kits", "1"),
        ("--kits", "0"),
        ("--kits", "2", "--if-only", "Brass=4 in"),
        ("--kits", "1000000"),
        ("--kits", "1", "--spare-kits", "1000000000"),
        ("--if-only", "Brass="),
        ("--if-only", "Brass=-1 in"),
        ("--if-only", "Brass=nan in"),
        ("--if-only", "Zebra=1 yd"),
        ("--look", "nan"),
        ("--look", "-1"),
    ],
)
def test_wishes_that_make_no_sense_are_wrong_usage(ask: Ask, words: tuple[str, ...]) -> None:
    """Status 2, nothing on standard output."""
    said = ask("cut", LANTERN, *words)

    assert (2, "") == (said.status, said.out)
    assert said.err


def test_kits_on_paper(ask: Ask, tmp_path: Path) -> None:
    """The sheet has the slips; everything is written."""
    said = ask("cut", LANTERN, "--kits", "2", "--fabric", "A", "--out", "mat", "--look", "0")

    assert 0 == said.status
    assert (tmp_path / "mat" / "cutting-sheet.pdf").stat().st_size > 10_000
