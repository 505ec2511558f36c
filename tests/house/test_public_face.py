"""The names other programs may rely on, and what importing them costs."""

from __future__ import annotations

import ast
import json
import subprocess
import sys

import pytest

import stitchflip
from tests.house.tree import SOURCE, parsed

FACE = {
    "BuildError",
    "CuttingError",
    "Length",
    "LengthError",
    "Mistake",
    "OurFault",
    "Plan",
    "Project",
    "ProjectFileError",
    "PublishError",
    "Rounding",
    "Speaker",
    "StitchflipError",
    "Unit",
    "__version__",
    "format_length",
    "parse_length",
    "plan",
    "read_project",
}
HEAVY = {"highspy", "numpy", "pydantic", "rich", "shapely", "tomlkit", "typer", "typst"}
SLOW_TO_START = {"highspy", "numpy", "shapely", "typst"}


def _loaded_after(statement: str) -> set[str]:
    """Top modules a fresh interpreter has loaded after a statement."""
    script = f"{statement}\nimport json, sys\nprint(json.dumps(sorted({{name.split('.')[0] for name in sys.modules}})))"
    done = subprocess.run([sys.executable, "-c", script], check=True, capture_output=True, text=True)
    return set(json.loads(done.stdout))


def test_the_public_face_is_exactly_this_list() -> None:
    """Nothing is promised by accident, and nothing promised goes missing."""
    assert set(stitchflip.__all__) == FACE
    assert sorted(FACE) == dir(stitchflip)


@pytest.mark.parametrize("name", sorted(FACE))
def test_every_public_name_can_be_fetched(name: str) -> None:
    """Each name of the face comes from its room when asked for."""
    assert getattr(stitchflip, name) is not None


def test_a_name_that_is_not_there_is_missing_in_the_usual_way() -> None:
    """Asking for an unknown name is an attribute error that names it."""
    with pytest.raises(AttributeError, match="trim_the_cat"):
        stitchflip.trim_the_cat  # noqa: B018  fetching is the test


def test_type_checkers_see_the_same_face() -> None:
    """The names fetched late and the names shown to type checkers are one list."""
    tree = parsed(SOURCE / "__init__.py")
    guarded = next(node for node in tree.body if isinstance(node, ast.If))
    seen = {alias.asname for node in guarded.body if isinstance(node, ast.ImportFrom) for alias in node.names}
    assert FACE - {"__version__"} == seen


def test_importing_the_package_loads_nothing_heavy() -> None:
    """`import stitchflip` alone pulls in no library that takes time."""
    assert not HEAVY & _loaded_after("import stitchflip")


def test_the_command_line_starts_without_solver_geometry_and_typesetter() -> None:
    """What only some commands need is loaded by those commands."""
    assert not SLOW_TO_START & _loaded_after("import stitchflip.cli")
