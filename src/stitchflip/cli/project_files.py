"""Which project file is meant, and its bytes: the words for everything that can be wrong with a file name."""

from __future__ import annotations

import re
from pathlib import Path
from typing import TYPE_CHECKING

from stitchflip.cli.status import UsageError
from stitchflip.errors import ProjectFileError

if TYPE_CHECKING:
    from stitchflip.project.model import Project

ENDING = ".toml"
_LOOKED_AT = 100_000
"""Characters of a file that are looked at to tell whether it is a project file."""
_TELLTALE = re.compile(r"^\s*\[?\[?\s*(squared_up|center|rounds|fabrics|building|binding)\b", re.MULTILINE)
_MOST_LISTED = 12


def projects_in(folder: Path) -> list[Path]:
    """The project files of a folder, by name; a broken one counts too.

    Args:
        folder: an existing folder.
    """
    return [path for path in sorted(folder.glob(f"*{ENDING}")) if path.is_file() and _looks_like_project(path)]


def _looks_like_project(path: Path) -> bool:
    try:
        with path.open(encoding="utf-8", errors="replace") as file:
            return bool(_TELLTALE.search(file.read(_LOOKED_AT)))
    except OSError:
        return False


def project_path(named: str | None) -> Path:
    """The project file that is meant.

    Args:
        named: what was typed, or None when the folder should tell.

    Raises:
        StitchflipError: If there is none, or more than one.
    """
    if named is not None:
        return Path(named)
    found = projects_in(Path())
    if len(found) == 1:
        return found[0]
    if not found:
        raise UsageError(
            what="There is no project file in this folder",
            fix='Start one with: stitchflip new "My table runner"   (or name a file: stitchflip plan my-runner.toml)',
            code="usage.no-project-here",
        )
    raise UsageError(
        what=f"There are {len(found)} project files in this folder: {_listed(found)}",
        fix=f"Name the one you mean, such as: stitchflip plan {_shell_word(found[0].name)}",
        code="usage.which-project",
    )


def _listed(paths: list[Path]) -> str:
    names = [path.name for path in paths[:_MOST_LISTED]]
    more = len(paths) - len(names)
    return ", ".join(names) + (f" and {more} more" if more else "")


def _shell_word(name: str) -> str:
    from shlex import quote

    return quote(name)


def open_project(named: str | None) -> Project:
    """Read the project that is meant.

    Args:
        named: file name as typed, or None for the only one in this folder.

    Raises:
        StitchflipError: If no file can be told, or it cannot be read; with every mistake in it.
    """
    from stitchflip.project import read_project_bytes

    path = project_path(named)
    return read_project_bytes(bytes_of(path), str(path))


def bytes_of(path: Path) -> bytes:
    """The file's bytes; never more than a little over what a project file may have.

    Raises:
        ProjectFileError: If there is no such file, or it cannot be read.
    """
    from stitchflip.project import LARGEST_FILE

    if path.is_dir():
        raise ProjectFileError(
            what="this is a folder, not a project file",
            fix=_fix_for_folder(path),
            where=str(path),
            code="project.is-a-folder",
        )
    try:
        with path.open("rb") as file:
            return file.read(LARGEST_FILE + 1)
    except FileNotFoundError as error:
        raise ProjectFileError(
            what="there is no file of this name",
            fix=_fix_for_missing(path),
            where=str(path),
            code="project.no-such-file",
        ) from error
    except OSError as error:
        raise ProjectFileError(
            what=f"the file cannot be opened ({error.strerror or error})",
            fix="Check that the file may be read and its disk is there.",
            where=str(path),
            code="project.cannot-open",
        ) from error


def _fix_for_folder(folder: Path) -> str:
    try:
        found = projects_in(folder)
    except OSError:
        found = []
    if found:
        return f"Name the file in it: {_listed(found)}."
    return "Name a project file; one can be started with: stitchflip new NAME"


def _fix_for_missing(path: Path) -> str:
    """What may have been meant: the same name with its ending, one much like it, or a new one."""
    from difflib import get_close_matches

    if path.suffix != ENDING and path.with_name(path.name + ENDING).is_file():
        return f"Did you mean {path.with_name(path.name + ENDING)}?"
    folder = path.parent
    names = [found.name for found in projects_in(folder)] if folder.is_dir() else []
    close = get_close_matches(path.name, names, n=1)
    if close:
        return f"Did you mean {folder / close[0]}?"
    if names:
        return f"Name one that is there: {_listed([Path(name) for name in names])}."
    return "Check the name, or start a project with: stitchflip new NAME"
