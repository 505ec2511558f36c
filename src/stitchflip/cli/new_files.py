"""Writing a new project file, and never over one that is there."""

from __future__ import annotations

import unicodedata
from contextlib import suppress
from pathlib import Path
from shlex import quote

from stitchflip.cli.screen import write_out
from stitchflip.cli.starters import file_stem, starter_text, way_named
from stitchflip.cli.status import UsageError
from stitchflip.lengths import Unit

_LONGEST_NAME = 120
_UNIT_WORDS = {
    Unit.INCH: ("in", "inch", "inches"),
    Unit.CM: ("cm", "centimeter", "centimeters", "centimetre", "centimetres"),
}


def start_project(name: str, way: str, units: str) -> None:
    """Write a starter file and say what to do next.

    Args:
        name: the project's name; a folder before it, and the ending, may be typed too.
        way: way of building, as typed.
        units: "in" or "cm", as typed.

    Raises:
        StitchflipError: If the name, way or unit will not do, or the file is there already.
    """
    folder, title = _folder_and_title(name)
    text = starter_text(title, way_named(way), _unit_named(units))
    path = folder / f"{file_stem(title)}.toml"
    _write_new(path, text)
    write_out(f"Wrote {path}\nChange its numbers as you like, then: stitchflip plan {quote(str(path))}\n")


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


def _unit_named(text: str) -> Unit:
    for unit, spellings in _UNIT_WORDS.items():
        if text.strip().casefold() in spellings:
            return unit
    raise UsageError(
        what=f'"{text}" is no unit known here',
        fix="Use --units in for inches or --units cm for centimeters.",
        code="usage.which-units",
    )


def _write_new(path: Path, text: str) -> None:
    """Write the file if there is none of that name; a half-written one does not stay."""
    try:
        with path.open("x", encoding="utf-8", newline="\n") as file:
            try:
                file.write(text)
                file.flush()
            except BaseException:
                with suppress(OSError):
                    path.unlink()
                raise
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
