"""Rooms below the command line compute; they do not reach outside."""

from __future__ import annotations

import ast
import re

import pytest

from tests.house.tree import SOURCE, parsed, place, python_files

OUTSIDE_CALLS = {"open", "input", "print", "exec", "eval", "breakpoint"}
REASONED = re.compile(
    r"#\s*(?:noqa:\s*[A-Z]+[0-9]+(?:,\s*[A-Z]+[0-9]+)*|type:\s*ignore\[[\w, -]+\]"
    r"|pragma: no cover|fmt: (?:skip|off|on))(?P<reason>.*)"
)
SUPPRESSION = re.compile(r"#\s*(?:noqa|type:\s*ignore|pragma|fmt:|ruff:|mypy:)")


def _is_reasoned(line: str) -> bool:
    """Whether a suppression names its rule and gives a reason in words."""
    found = REASONED.search(line)
    return found is not None and re.search(r"[a-z]{3}", found["reason"]) is not None


def _pure_files() -> list[tuple[str, ast.Module]]:
    """Sources of all rooms but the command line."""
    return [(place(path), parsed(path)) for path in python_files("src") if path.relative_to(SOURCE).parts[0] != "cli"]


def test_pure_rooms_open_no_file_and_print_nothing() -> None:
    """Builtins that reach outside are not called; data classes alone compile their `__init__`, as the library does."""
    found = [
        f"{name}:{node.lineno} {node.func.id}"
        for name, tree in _pure_files()
        for node in ast.walk(tree)
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in OUTSIDE_CALLS
    ]
    assert ["exec"] == [one.split()[1] for one in found if one.startswith("src/stitchflip/values.py:")]
    assert [] == [one for one in found if not one.startswith("src/stitchflip/values.py:")]


def test_chance_is_always_seeded() -> None:
    """Of `random` only the generator class is used, and never without a seed: one file, one plan."""
    found: list[str] = []
    for name, tree in _pure_files():
        for node in ast.walk(tree):
            if isinstance(node, ast.ImportFrom) and node.module == "random":
                found.extend(f"{name}:{node.lineno} {alias.name}" for alias in node.names if alias.name != "Random")
            if not isinstance(node, ast.Call):
                continue
            called = ast.unparse(node.func)
            if called.startswith("random.") and called != "random.Random":
                found.append(f"{name}:{node.lineno} {called}")
            if called in {"random.Random", "Random"} and not (node.args or node.keywords):
                found.append(f"{name}:{node.lineno} no seed")
    assert [] == found


def test_sources_state_no_facts_by_assert_and_catch_nothing_blindly() -> None:
    """Arguments are judged with errors, and only named errors are caught."""
    found = [
        place(path, node.lineno)
        for path in python_files("src")
        for node in ast.walk(parsed(path))
        if isinstance(node, ast.Assert) or (isinstance(node, ast.ExceptHandler) and node.type is None)
    ]
    assert [] == found


def test_every_silenced_warning_names_its_rule_and_its_reason() -> None:
    """A rule is switched off in one line at a time, by name, with the reason beside it."""
    found = [
        f"{place(path, number)} {line.strip()}"
        for path in python_files("src", "bench")
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
        if SUPPRESSION.search(line) and not _is_reasoned(line)
    ]
    assert [] == found


@pytest.mark.parametrize(
    ("comment", "reasoned"),
    [
        ("# noqa: N818  the maker reads the name", True),
        ("# type: ignore[misc]  a frozen value on purpose", True),
        ("# noqa: N818", False),
        ("# noqa", False),
        ("# type: ignore", False),
        ("# pragma: no cover", False),
    ],
)
def test_a_bare_suppression_is_noticed(comment: str, *, reasoned: bool) -> None:
    """A rule without a name, or a name without a reason, is not enough."""
    assert reasoned == _is_reasoned(comment)
