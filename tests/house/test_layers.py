"""Imports point down: the rooms, their order, and a checker that does notice."""

from __future__ import annotations

import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest
from importlinter import cli as linter

from tests.house.tree import ROOT, SOURCE

SETTINGS = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["importlinter"]


def _contract(kind: str) -> dict[str, object]:
    return next(one for one in SETTINGS["contracts"] if one["type"] == kind)


def test_the_rooms_keep_their_order(monkeypatch: pytest.MonkeyPatch) -> None:
    """Every import contract of the project holds."""
    monkeypatch.chdir(ROOT)
    assert 0 == linter.lint_imports(no_cache=True)


def test_every_room_has_its_place_in_the_order() -> None:
    """The contract is exhaustive and names exactly the rooms there are."""
    layers = _contract("layers")
    rooms = {path.stem for path in SOURCE.iterdir() if path.suffix in {"", ".py"} and not path.stem.startswith("_")}
    named = {room.strip() for layer in layers["layers"] for room in layer.split("|")}  # type: ignore[attr-defined]
    assert True is layers["exhaustive"]
    assert rooms == named


def test_only_the_command_line_may_reach_outside() -> None:
    """The contract that forbids files, clock and network holds for every other room."""
    contract = _contract("forbidden")
    rooms = {path.stem for path in SOURCE.iterdir() if path.suffix in {"", ".py"} and not path.stem.startswith("_")}
    assert {f"stitchflip.{room}" for room in rooms - {"cli"}} == set(contract["source_modules"])  # type: ignore[call-overload]
    assert {"os", "pathlib", "socket", "time", "datetime", "subprocess", "urllib"} <= set(contract["forbidden_modules"])  # type: ignore[call-overload]


@pytest.mark.parametrize(
    ("room", "line", "contract"),
    [
        ("lengths/grid.py", "import stitchflip.project", "layers"),
        ("errors.py", "import pathlib", "forbidden"),
        ("attic.py", '"""New."""', "layers"),
    ],
    ids=["an import that points up", "a file opened below", "a room without a place"],
)
def test_the_checker_notices(tmp_path: Path, room: str, line: str, contract: str) -> None:
    """A copy of the house with one rule broken is refused, so that the first test can fail."""
    shutil.copytree(SOURCE, tmp_path / "src" / "stitchflip", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    with (tmp_path / "src" / "stitchflip" / room).open("a", encoding="utf-8") as file:
        file.write(f"\n{line}\n")
    script = (
        f"import sys; sys.path.insert(0, {str(tmp_path / 'src')!r})\n"
        "from importlinter.cli import lint_imports\n"
        "sys.exit(lint_imports(no_cache=True))"
    )
    done = subprocess.run([sys.executable, "-c", script], cwd=tmp_path, check=False, capture_output=True, text=True)
    said = " ".join(done.stdout.split())
    assert 1 == done.returncode, said + done.stderr
    assert f"{_contract(contract)['name']} BROKEN" in said
