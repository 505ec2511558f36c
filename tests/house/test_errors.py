"""The error tree, and how errors are raised all over the house."""

from __future__ import annotations

import ast
import inspect
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from stitchflip import errors
from stitchflip.errors import Mistake, ProjectFileError, StitchflipError
from tests.house.tree import parsed, place, python_files

CLASSES = {
    name: kind
    for name, kind in vars(errors).items()
    if inspect.isclass(kind) and issubclass(kind, StitchflipError) and kind.__module__ == errors.__name__
}
DRAWN = re.compile(r"^(?P<branch>[ │├└─]*)(?P<name>\w+) \((?P<builtin>\w+)\)$", re.MULTILINE)
CODE = re.compile(r"[a-z]+(\.[a-z0-9]+(-[a-z0-9]+)*)")


def drawn_tree(text: str) -> dict[str, tuple[str, ...]]:
    """The bases of each class by the drawing: the parent it hangs on, and the builtin beside its name."""
    bases: dict[str, tuple[str, ...]] = {}
    above: list[tuple[int, str]] = []
    for line in DRAWN.finditer(text):
        depth = len(line["branch"])
        above = [(column, name) for column, name in above if column < depth]
        bases[line["name"]] = (*([above[-1][1]] if above else []), line["builtin"])
        above.append((depth, line["name"]))
    return bases


def _error_calls() -> Iterator[tuple[Path, ast.Call, str]]:
    """Every place in the sources that makes one of our errors."""
    for path in python_files("src"):
        for node in ast.walk(parsed(path)):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name | ast.Attribute):
                name = node.func.id if isinstance(node.func, ast.Name) else node.func.attr
                if name in CLASSES:
                    yield path, node, name


def _written(node: ast.expr) -> str | None:
    """A text as it stands in the source, with {} for what is filled in; None when it is computed elsewhere."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return node.value
    if isinstance(node, ast.JoinedStr):
        return "".join(part.value if isinstance(part, ast.Constant) else "{}" for part in node.values)  # type: ignore[misc]
    return None


def test_the_tree_drawn_at_the_head_is_the_tree_there_is() -> None:
    """Each class hangs where it is drawn and inherits the builtin beside its name."""
    there = {name: tuple(base.__name__ for base in kind.__bases__) for name, kind in CLASSES.items()}
    assert drawn_tree(errors.__doc__ or "") == there


def test_a_doctored_drawing_is_noticed() -> None:
    """The comparison reads depth and builtin, not only names."""
    drawing = "    A (Exception)\n    ├── B (ValueError)\n    │   └── C (KeyError)\n    └── D (OSError)\n"
    assert {
        "A": ("Exception",),
        "B": ("A", "ValueError"),
        "C": ("B", "KeyError"),
        "D": ("A", "OSError"),
    } == drawn_tree(drawing)


def test_every_kind_of_error_has_codes_of_its_own() -> None:
    """The first word of a code tells the kind, so no two kinds share it."""
    areas = [kind.area for kind in CLASSES.values()]
    assert len(areas) == len(set(areas))


def test_errors_are_made_somewhere() -> None:
    """The checks below look at something."""
    assert len(list(_error_calls())) > 10


def test_every_error_says_what_would_do_and_has_a_code_of_its_kind() -> None:
    """Wherever an error is made, it names what is wrong, a fix in a full sentence, and a permanent code."""
    wrong = []
    for path, call, name in _error_calls():
        parts = {keyword.arg: keyword.value for keyword in call.keywords}
        if None in parts:
            continue  # parts passed on whole from where they are written
        missing = {"what", "fix", "code"} - set(parts)
        if missing or call.args:
            wrong.append(f"{place(path, call.lineno)}: {name} without {sorted(missing)} by name")
            continue
        fix, code = _written(parts["fix"]), _written(parts["code"])
        if fix is not None and not (fix[:1].isupper() and fix.endswith((".", "{}"))):
            wrong.append(f"{place(path, call.lineno)}: the fix is no sentence: {fix}")
        if code is not None and not (code.startswith(CLASSES[name].area + ".") and CODE.fullmatch(code)):
            wrong.append(f"{place(path, call.lineno)}: {code} is no code of {name}")
        if "invalid" in (_written(parts["what"]) or ""):
            wrong.append(f"{place(path, call.lineno)}: 'invalid' says nothing to a maker")
    assert [] == wrong


@pytest.mark.parametrize("kind", CLASSES.values())
def test_an_error_keeps_its_four_parts_and_says_them_in_one_line(kind: type[StitchflipError]) -> None:
    """What, where and fix stand in the text; all four parts are fields."""
    error = kind(what="strip 3 is cut 0 in wide.", fix="Cut it 1 in or wider.", where="step 3", code=kind.area + ".x")
    assert ("strip 3 is cut 0 in wide.", "Cut it 1 in or wider.", "step 3", kind.area + ".x") == (
        error.what,
        error.fix,
        error.where,
        error.code,
    )
    assert "strip 3 is cut 0 in wide (step 3). Cut it 1 in or wider." == str(error)


def test_a_file_error_lists_every_mistake_in_order() -> None:
    """Each mistake is one line with its place, what was found and what would do."""
    mistakes = [
        Mistake(line=3, key="center.cut", found='"two"', would_do="a length like 8 1/4"),
        Mistake(line=None, key="binding", found="nothing", would_do='a table with fabric = "Midnight"'),
    ]
    error = ProjectFileError(what="2 mistakes", fix="Correct them.", where="porch.toml", mistakes=iter(mistakes))
    assert tuple(mistakes) == error.mistakes
    assert [
        "2 mistakes (porch.toml). Correct them.",
        '  line 3, center.cut: found "two"; a length like 8 1/4 would do',
        '  binding: found nothing; a table with fabric = "Midnight" would do',
    ] == str(error).splitlines()
