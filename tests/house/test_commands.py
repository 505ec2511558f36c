"""The few commands a stranger needs, and that everything calls the same ones."""

from __future__ import annotations

import os
import re
import subprocess
import tomllib

import pytest

from tests.house.tree import ROOT

MAKEFILE = (ROOT / "Makefile").read_text(encoding="utf-8")
INTEGRATION = ROOT / ".ci" / "run"


@pytest.mark.parametrize("target", ["demo", "test", "check", "bench", "compare", "format"])
def test_the_promised_commands_exist(target: str) -> None:
    """`make` knows the target and says what it does."""
    assert re.search(rf"^{target}:.*## \w", MAKEFILE, re.MULTILINE)


@pytest.mark.parametrize("command", ["make demo", "make test"])
def test_the_readme_names_the_two_commands(command: str) -> None:
    """A reader of the README finds both on a line of their own."""
    assert re.search(rf"^\s*(?:\$ )?{command}\b", (ROOT / "README.md").read_text(encoding="utf-8"), re.MULTILINE)


def test_integration_runs_the_test_command_of_the_readme_and_hides_nothing() -> None:
    """The script is executable, stops at the first failure, and its last line is `make test`."""
    text = INTEGRATION.read_text(encoding="utf-8")
    assert os.access(INTEGRATION, os.X_OK)
    assert "set -euo pipefail" in text
    assert "exec make test" == text.splitlines()[-1]
    assert not re.search(r"\|\||; *true|--maxfail|-k |--ignore|--deselect", text)


def test_make_test_selects_no_tests() -> None:
    """What `make tests` starts is pytest on everything its settings name: the tests, and the examples in the code."""
    surroundings = {name: value for name, value in os.environ.items() if not name.startswith(("MAKE", "MFLAGS"))}
    planned = subprocess.run(
        ["make", "--dry-run", "--no-print-directory", "tests", "PYTEST_FLAGS=-n auto"],
        cwd=ROOT,
        check=True,
        capture_output=True,
        text=True,
        env=surroundings,
    ).stdout
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["pytest"]["ini_options"]
    assert ".venv/bin/pytest -n auto" == planned.splitlines()[-1].strip()
    assert ["tests", "src"] == settings["testpaths"]
    assert not {"-k", "-m", "--ignore", "--deselect"} & set(settings["addopts"])


def test_every_lint_exception_has_its_reason_beside_it() -> None:
    """In the settings each rule that is off has a comment on its line."""
    settings = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    section = settings[settings.index("[tool.ruff.lint]") : settings.index("[tool.ruff.lint.pydocstyle]")]
    rules = [line for line in section.splitlines() if re.match(r'\s+"[A-Z]+[0-9]+"', line)]
    assert len(rules) > 10
    assert [] == [line for line in rules if not re.search(r"#\s*\w+", line)]
