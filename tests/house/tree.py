"""What the tests of the house look at: the tracked files and the parsed sources."""

from __future__ import annotations

import ast
import subprocess
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SOURCE = ROOT / "src" / "stitchflip"


@cache
def tracked_files() -> tuple[Path, ...]:
    """Every file of the project that version control knows, as it stands on disk."""
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, check=True, capture_output=True, text=True).stdout
    return tuple(path for name in listed.split("\0") if name and (path := ROOT / name).is_file())


@cache
def python_files(*folders: str) -> tuple[Path, ...]:
    """The tracked Python files under some folders of the project."""
    return tuple(
        path for path in tracked_files() if path.suffix == ".py" and path.relative_to(ROOT).parts[0] in folders
    )


@cache
def parsed(path: Path) -> ast.Module:
    """A file's syntax tree."""
    return ast.parse(path.read_text(encoding="utf-8"), filename=str(path))


def place(path: Path, line: int | None = None) -> str:
    """A file, and a line in it, as a person names it."""
    name = path.relative_to(ROOT).as_posix()
    return name if line is None else f"{name}:{line}"
