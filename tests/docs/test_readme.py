"""The README: its session runs as printed, its picture is the one that is drawn, its promises are kept."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest
from typer.testing import CliRunner

from stitchflip.cli.app import app
from stitchflip.cli.reference import readme_picture
from stitchflip.cli.status import Status

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
SESSION = re.compile(r"```console\n(?P<session>\$ stitchflip .*?)```", re.DOTALL)


def steps(session: str) -> list[tuple[str, str]]:
    """Each command of a session with what is printed below it."""
    parts = re.split(r"^\$ ", session, flags=re.MULTILINE)[1:]
    return [(part.split("\n", 1)[0], part.split("\n", 1)[1]) for part in parts]


def through(pipe: list[str], text: str) -> str:
    """What `head` or `grep` would let through."""
    lines = text.splitlines(keepends=True)
    match pipe:
        case []:
            return text
        case ["head", count]:
            return "".join(lines[: int(count.removeprefix("-"))])
        case ["grep", word]:
            return "".join(line for line in lines if word in line)
        case _:
            raise AssertionError(pipe)


def test_the_session_runs_as_printed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every command of the session gives the lines below it."""
    found = SESSION.search(README)
    assert found is not None
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "100")
    printed = steps(found["session"])
    assert len(printed) > 1
    for typed, expected in printed:
        command, _, pipe = typed.partition(" | ")
        words = shlex.split(command)
        assert "stitchflip" == words[0]
        result = CliRunner().invoke(app, words[1:])
        assert 0 == result.exit_code
        assert expected == through(shlex.split(pipe), result.output)


def test_the_session_is_short() -> None:
    """Ten lines, so that it is read."""
    found = SESSION.search(README)
    assert found is not None
    assert 10 == len(found["session"].splitlines())


def test_the_exit_statuses_are_all_named() -> None:
    """The table of the README has every status and no other."""
    rows = re.findall(r"^\| (\d+) \| \w", README, re.MULTILINE)
    assert [int(status) for status in Status] == [int(row) for row in rows]


def test_the_picture_is_the_one_that_is_drawn() -> None:
    """The picture in the README is what the program draws of the example today."""
    found = re.search(r"!\[[^\]]+\]\((docs/pictures/[^)]+\.svg)\)", README)
    assert found is not None
    picture = ROOT / found[1]
    example = ROOT / "examples" / f"{picture.stem}.toml"
    assert picture.read_text(encoding="utf-8") == readme_picture(example.read_text(encoding="utf-8"))


def test_the_picture_shows_every_visible_patch() -> None:
    """It is a picture of that runner: the fabrics' colors are in it, and its size is wide × long 13 to 44."""
    picture = (ROOT / "docs/pictures/lantern-walk.svg").read_text(encoding="utf-8")
    colors = re.findall(
        r'^color = "(#[0-9a-f]{6})"', (ROOT / "examples/lantern-walk.toml").read_text("utf-8"), re.MULTILINE
    )
    assert len(colors) == 6
    assert [] == [color for color in colors if color not in picture]
