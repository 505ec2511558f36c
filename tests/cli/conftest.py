"""The command line as a maker meets it, in this process."""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest
from typer.testing import CliRunner

from stitchflip.cli.app import app
from tests.cli.wrong_files import GOOD


@dataclass(frozen=True)
class Said:
    """What a command said and how it ended."""

    status: int
    out: str
    err: str


Ask = Callable[..., Said]


@pytest.fixture
def ask(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Ask:
    """Runs a command in an empty folder of its own."""
    monkeypatch.chdir(tmp_path)
    for name in ("STITCHFLIP_DEBUG", "FORCE_COLOR"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("COLUMNS", "100")

    def run(*words: str | os.PathLike[str]) -> Said:
        result = CliRunner().invoke(app, [os.fspath(word) for word in words])
        assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
        return Said(result.exit_code, result.stdout, result.stderr)

    return run


@pytest.fixture
def porch(tmp_path: Path) -> Path:
    """A project file that can be planned."""
    path = tmp_path / "porch.toml"
    path.write_text(GOOD, encoding="utf-8")
    return path
