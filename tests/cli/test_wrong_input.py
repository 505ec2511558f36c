"""Every command with every kind of wrong file: the right status, words that help, nothing half written."""

import json
from pathlib import Path

import pytest

from tests.cli.conftest import Ask
from tests.cli.wrong_files import STOPPED, UNREADABLE, Wrong, placed

READING = ("plan", "squareup", "pattern")
"""Commands that read a project."""


def tree(folder: Path) -> dict[str, bytes]:
    """Every file of a folder by its path in it."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


@pytest.mark.parametrize("command", READING)
@pytest.mark.parametrize("wrong", UNREADABLE, ids=lambda wrong: wrong.name)
def test_a_file_that_cannot_be_read_is_explained(wrong: Wrong, command: str, ask: Ask, tmp_path: Path) -> None:
    """Status 3, the place and what would do on standard error, nothing on standard output, no file written."""
    path = placed(wrong, tmp_path)
    before = tree(tmp_path)
    said = ask(command, path.name)
    assert (3, "") == (said.status, said.out)
    assert [] == [words for words in wrong.said if words not in said.err]
    assert "Traceback" not in said.err
    assert "our fault" not in said.err
    assert before == tree(tmp_path)


@pytest.mark.parametrize("wrong", UNREADABLE, ids=lambda wrong: wrong.name)
def test_a_file_that_cannot_be_read_is_one_json_document(wrong: Wrong, ask: Ask, tmp_path: Path) -> None:
    """With --json the mistakes are one document, each with what, fix and code; standard error has the words."""
    placed(wrong, tmp_path)
    said = ask("plan", "porch.toml", "--json")
    document = json.loads(said.out)
    assert (3, 3) == (said.status, document["exit_status"])
    assert document["errors"]
    assert all(error["what"] and error["fix"] and error["code"] for error in document["errors"])
    assert said.err


@pytest.mark.parametrize("command", READING)
@pytest.mark.parametrize("wrong", STOPPED, ids=lambda wrong: wrong.name)
def test_a_piece_that_cannot_work_is_planned_and_ends_with_one(
    wrong: Wrong, command: str, ask: Ask, tmp_path: Path
) -> None:
    """The plan is drawn all the same; status 1 says that something stops it."""
    placed(wrong, tmp_path)
    said = ask(command, "porch.toml")
    assert (1, "") == (said.status, said.err)
    assert said.out
    if command != "pattern":
        assert [] == [words for words in wrong.said if words not in " ".join(said.out.split())]


@pytest.mark.parametrize("wrong", STOPPED, ids=lambda wrong: wrong.name)
def test_a_stop_is_in_the_document_too(wrong: Wrong, ask: Ask, tmp_path: Path) -> None:
    """Programs find the finding that gave status 1."""
    placed(wrong, tmp_path)
    said = ask("plan", "porch.toml", "--json")
    assert 1 == said.status
    assert "stop" in {finding["severity"] for finding in json.loads(said.out)["findings"]}


def test_all_mistakes_of_a_file_are_told_at_once(ask: Ask, tmp_path: Path) -> None:
    """Three mistakes give three lines, in the order of the file."""
    (tmp_path / "porch.toml").write_text(
        'name = "Porch"\nrounds = [{ cut = "-2", fabric = "Light" }]\nhow_many = 99\n'
        '[squared_up]\nwide = "two"\nlong = "12"\n[center]\nfabric = "Light"\ncut = "5"\n'
        '[[fabrics]]\nname = "Light"\n[binding]\nfabric = "Light"\n',
        encoding="utf-8",
    )
    said = ask("plan", "porch.toml")
    assert 3 == said.status
    lines = [line.strip() for line in said.err.splitlines() if line.strip().startswith("line ")]
    assert ["line 2", "line 3", "line 5"] == [line.split(",")[0] for line in lines]


def test_a_folder_in_place_of_a_file_names_what_is_in_it(ask: Ask, porch: Path, tmp_path: Path) -> None:
    """The message says which file was probably meant."""
    said = ask("plan", tmp_path)
    assert (3, "") == (said.status, said.out)
    assert "is a folder" in said.err
    assert porch.name in said.err


@pytest.mark.parametrize(("typed", "meant"), [("porch", "porch.toml"), ("proch.toml", "porch.toml")])
def test_a_name_that_is_nearly_right_is_recognized(typed: str, meant: str, ask: Ask, porch: Path) -> None:
    """The ending left out, or two letters turned round, gives the name that is there."""
    assert porch.is_file()
    said = ask("plan", typed)
    assert 3 == said.status
    assert f"Did you mean {meant}?" in said.err
