"""What a fresh machine installs is what was tested, from wherever it may fetch."""

from __future__ import annotations

import re
import tomllib

import pytest

from stitchflip import __version__
from tests.house.tree import ROOT

LOCKS = ("run.txt", "dev.txt", "peers.txt")
ENTRY = re.compile(
    r"^(?P<name>[a-z0-9][a-z0-9._-]*)==(?P<version>\S+)(?P<hashes>(?: \\\n    --hash=sha256:[0-9a-f]{64})+)$"
)
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]


def _text(lock: str) -> str:
    return (ROOT / "requirements" / lock).read_text(encoding="utf-8")


def _entries(text: str) -> dict[str, str]:
    """Name -> version of a lock; what is no pinned and hashed entry is an error."""
    plain = "\n".join(line for line in text.splitlines() if line and not line.startswith("#"))
    entries = {}
    for entry in re.split(r"\n(?! )", plain):
        found = ENTRY.match(entry)
        if found is None:
            msg = f"not pinned with hashes: {entry[:80]}"
            raise ValueError(msg)
        entries[found["name"]] = found["version"]
    return entries


def _wanted(lines: list[str]) -> set[str]:
    """Names of requirements, as locks spell them."""
    return {re.split(r"[<>=!~ ]", line)[0].lower().replace("_", "-") for line in lines if line and line[0] not in "#-"}


@pytest.mark.parametrize("lock", LOCKS)
def test_every_dependency_is_pinned_with_hashes(lock: str) -> None:
    """Each entry is one version and at least one digest, and nothing else."""
    assert len(_entries(_text(lock))) > 10


@pytest.mark.parametrize(
    "entry",
    ["numpy>=2 \\\n    --hash=sha256:" + "0" * 64, "numpy==2.0", "numpy==2.0 \\\n    --hash=md5:" + "0" * 32],
    ids=["not pinned", "no digest", "weak digest"],
)
def test_an_entry_without_pin_or_digest_is_noticed(entry: str) -> None:
    """The reading of locks refuses what is not locked."""
    with pytest.raises(ValueError, match="not pinned"):
        _entries(entry)


@pytest.mark.parametrize("lock", LOCKS)
def test_locks_carry_no_address(lock: str) -> None:
    """No index, host, link or folder is written down: each machine asks where it always asks."""
    assert [] == re.findall(r".*(?:://|--index|--extra|--find|--trusted|@|\.org|\.com|file:|/).*", _text(lock))


def test_everything_declared_is_locked() -> None:
    """The package's own dependencies and the tools of the house are in the locks."""
    built = (ROOT / "requirements" / "build.in").read_text(encoding="utf-8").splitlines()
    tools = (ROOT / "requirements" / "dev.in").read_text(encoding="utf-8").splitlines()
    run, dev = _entries(_text("run.txt")), _entries(_text("dev.txt"))
    assert _wanted(PROJECT["dependencies"] + built) <= set(run)
    assert _wanted(tools) <= set(dev)


def test_what_cutting_is_measured_against_is_locked() -> None:
    """The other solvers have versions named by hand, each locked, and the solver we use too is the same release."""
    wanted = dict(
        line.split("==")
        for line in (ROOT / "requirements" / "peers.in").read_text(encoding="utf-8").splitlines()
        if line and not line.startswith("#")
    )
    peers = _entries(_text("peers.txt"))
    assert wanted.items() <= peers.items()
    assert peers["highspy"] == _entries(_text("run.txt"))["highspy"]


def test_tests_run_on_the_versions_that_users_get() -> None:
    """The list for development holds the list for use, version by version."""
    assert _entries(_text("run.txt")).items() <= _entries(_text("dev.txt")).items()


def test_the_solver_is_the_release_that_was_checked() -> None:
    """Newer releases of the solver lose solutions of small cutting models, so it is pinned by hand."""
    assert "1.13.1" == _entries(_text("run.txt"))["highspy"]


def test_the_version_is_the_same_everywhere() -> None:
    """Package data, package face and changelog speak of one version."""
    assert PROJECT["version"] == __version__
    assert "## Unreleased" in (ROOT / "CHANGELOG.md").read_text(encoding="utf-8")
