"""The how-to pages: every session runs as printed, and every key that is promised is in the document."""

from __future__ import annotations

import json
import re
import shlex
from pathlib import Path

import pytest
from typer.testing import CliRunner

from stitchflip.cli.app import app

ROOT = Path(__file__).parents[2]
PAGES = sorted((ROOT / "docs" / "how-to").glob("*.md"))
SESSION = re.compile(r"```console\n\$ (?P<typed>stitchflip .*?)\n(?P<printed>.*?)```", re.DOTALL)


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_every_session_runs_as_printed(page: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """From the folder of the program, in a window of 100 columns."""
    monkeypatch.chdir(ROOT)
    monkeypatch.setenv("COLUMNS", "100")
    sessions = list(SESSION.finditer(page.read_text(encoding="utf-8")))
    assert sessions
    for session in sessions:
        typed, _, pipe = session["typed"].partition(" | grep ")
        result = CliRunner().invoke(app, shlex.split(typed)[1:])
        printed = [line for line in result.output.splitlines() if not pipe or pipe in line]

        assert 0 == result.exit_code
        assert session["printed"].splitlines() == printed


def test_every_key_of_the_page_on_cutting_is_in_the_document(monkeypatch: pytest.MonkeyPatch) -> None:
    """The table names keys that a fabric, a step or a setting has."""
    monkeypatch.chdir(ROOT)
    page = (ROOT / "docs" / "how-to" / "cut.md").read_text(encoding="utf-8")
    table = [line for line in page.splitlines() if line.startswith("| `")]
    result = CliRunner().invoke(app, ["cut", "examples/lantern-walk.toml", "--json", "--look", "0"])
    fabric = json.loads(result.stdout)["fabrics"][0]
    steps, settings = fabric["order"], [one for step in fabric["order"] for one in step["settings"]]
    known = {*fabric, *(key for step in steps for key in step), *(key for one in settings for key in one)}
    named = {key for line in table for key in re.findall(r"`(\w+)`", line)} - {"buy_in", "is_told"}

    assert len(named) > 20
    assert set() == named - known
    assert set(fabric) - {"name", "letter", "text", "cuts_finer_than_listed"} <= named | {"buy_in"}
