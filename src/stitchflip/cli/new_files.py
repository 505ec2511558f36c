"""Writing a new project file, and never over one that is there."""

from __future__ import annotations

import tempfile
import unicodedata
from contextlib import suppress
from pathlib import Path
from shlex import quote

from stitchflip.cli.new_sizes import Wishes, sized_text
from stitchflip.cli.screen import write_out
from stitchflip.cli.starters import file_stem, starter_text, way_named
from stitchflip.cli.status import UsageError
from stitchflip.cli.typed_sizes import unit_named

_LONGEST_NAME = 120


def start_project(name: str, way: str, units: str, wishes: Wishes | None = None) -> None:
    """Write a starter file and say what to do next.

    Args:
        name: the project's name; a folder before it, and the ending, may be typed too.
        way: way of building, as typed.
        units: "in" or "cm", as typed.
        wishes: the table, bed or batting that gives the size; None for the starter's own.

    Raises:
        StitchflipError: If the name, way or unit will not do, or the file is there already.
    """
    folder, title = _folder_and_title(name)
    unit = unit_named(units)
    text, said = starter_text(title, way_named(way), unit), ""
    if wishes is not None:
        text, said = sized_text(text, unit, wishes)
    path = folder / f"{file_stem(title)}.toml"
    write_new(path, text)
    write_out(f"Wrote {path}\n{said}Change its numbers as you like, then: stitchflip plan {quote(str(path))}\n")


def _folder_and_title(name: str) -> tuple[Path, str]:
    """Where the file goes, and the project's name without folder and ending."""
    path = Path(name)
    title = unicodedata.normalize("NFC", path.name.removesuffix(".toml")).strip()
    if not title or len(title) > _LONGEST_NAME or not title.isprintable():
        raise UsageError(
            what=f"The name {title[:40]!r} is {'too long' if len(title) > _LONGEST_NAME else 'no name'}",
            fix=f'Give a name of 1 to {_LONGEST_NAME} characters, such as "Porch runner".',
            code="usage.no-name",
        )
    if not path.parent.is_dir():
        raise UsageError(
            what=f"There is no folder {path.parent}",
            fix="Make the folder first, or give the name alone to start the project here.",
            code="usage.no-folder",
        )
    return path.parent, title


def write_new(path: Path, text: str, *, may_replace: bool = False) -> None:
    """Write a file, whole or not at all.

    Args:
        path: the file.
        text: what goes into it.
        may_replace: a file of this name may be there; it is replaced only once the new one is written.

    Raises:
        UsageError: If a file is there and may not be replaced, or it cannot be written.
    """
    try:
        if may_replace:
            _replace(path, text)
        else:
            _create(path, text)
    except FileExistsError as error:
        raise UsageError(
            what="this file is there already, and a new project never writes over one",
            fix=f"Give another name, or see what is in it: stitchflip plan {quote(str(path))}",
            where=str(path),
            code="usage.file-exists",
        ) from error
    except OSError as error:
        raise UsageError(
            what=f"the file cannot be written ({error.strerror or error})",
            fix="Go to a folder you may write in, or give a shorter name.",
            where=str(path),
            code="usage.cannot-write",
        ) from error


def _create(path: Path, text: str) -> None:
    """Write a file that is not there yet; a half-written one does not stay."""
    with path.open("x", encoding="utf-8", newline="") as file:
        try:
            file.write(text)
            file.flush()
        except BaseException:
            with suppress(OSError):
                path.unlink()
            raise


def _replace(path: Path, text: str) -> None:
    """Write a file beside its place, then put it there."""
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.stem}-", suffix=path.suffix)
    beside = Path(name)
    try:
        with open(handle, "w", encoding="utf-8", newline="") as file:  # noqa: PTH123  it is open already
            file.write(text)
        beside.chmod(path.stat().st_mode & 0o777 if path.exists() else 0o644)
        beside.replace(path)
    except BaseException:
        with suppress(OSError):
            beside.unlink()
        raise
