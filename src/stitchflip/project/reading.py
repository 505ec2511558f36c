"""Reading a project file: every mistake in it at once, and never a half-read project.

The order is that of what can go wrong: size, letters (UTF-8), TOML, then values and what they must agree on,
the last two together, so that one reading tells all there is to mend.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Mapping, Sequence
from itertools import islice
from typing import TYPE_CHECKING, Any

from pydantic import ValidationError

from stitchflip.errors import Mistake, ProjectFileError
from stitchflip.lengths import Unit
from stitchflip.project.agreements import MOST_MISTAKES, Disagreement, disagreements
from stitchflip.project.model import Project
from stitchflip.project.words import meant

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

    from stitchflip.project.places import Places

LARGEST_FILE = 300_000
"""Bytes; a project file has a few thousand, and the most strips a piece can have fit in this."""
_MOST_DOTS = 100
"""In one line; a name of so many parts is no name, and reading it would take forever."""
SPELLINGS = {"centre": "center", "colour": "color", "fibre": "fiber", "off_centre": "off_center"}
"""Other spelling of a key -> the one of the file format."""
_BYTE_ORDER_MARKS = {b"\xff\xfe": "UTF-16", b"\xfe\xff": "UTF-16"}


def read_project_bytes(data: bytes, name: str = "project file") -> Project:
    """Read a project from the bytes of its file.

    Args:
        data: the file, or its first bytes when it has more than `LARGEST_FILE`.
        name: the file as the maker named it, for messages.

    Raises:
        ProjectFileError: If the file is too large, is not text in UTF-8, or has mistakes in it (all are told).
    """
    if len(data) > LARGEST_FILE:
        raise ProjectFileError(
            what=f"the file is larger than {LARGEST_FILE // 1000} KB, and no project is",
            fix="Name the project file; it has a few thousand letters.",
            where=name,
            code="project.too-large",
        )
    kind = _BYTE_ORDER_MARKS.get(data[:2])
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        found = kind or f"byte {error.start + 1}, hex {data[error.start]:02x}"
        raise ProjectFileError(
            what=f"the file is not text in UTF-8 ({found}, line {line})",
            fix="Save it again from your editor with the encoding UTF-8.",
            where=name,
            code="project.not-utf-8",
        ) from error
    return read_project(text, name)


def read_project(text: str, name: str = "project file") -> Project:
    r"""Read a project from the text of its file.

    Args:
        text: TOML.
        name: the file as the maker named it, for messages.

    Returns:
        The project.

    Raises:
        ProjectFileError: If there are mistakes in it; `mistakes` has all of them, with their lines.

    Example:
        >>> file = (
        ...     "name = 'Mat'\nrounds = [{ cut = '0' }]\n[center]\nfabric = 'Oat'\ncut = '6'\n[binding]\nfabric = 'Oat'"
        ... )
        >>> read_project(file, "mat.toml")
        Traceback (most recent call last):
        stitchflip.errors.ProjectFileError: there are 3 mistakes in the file (mat.toml). Correct them and read it again.
          line 2, rounds[1].cut: found '0' (not above zero); a length above zero, such as "2 1/2" would do
          squared_up: found nothing; a [squared_up] table with wide and long would do
          fabrics: found nothing; a [[fabrics]] table with a name for each fabric would do
    """
    if len(text) > LARGEST_FILE:
        return read_project_bytes(text.encode(), name)
    text = text.removeprefix("\ufeff").replace("\r\n", "\n")
    dotted = _dotted(text)
    if dotted is not None:
        raise mistaken([dotted], name)
    data, slips, text = _tables(text)
    if data is None:
        raise mistaken(slips, name)
    spelled(data)
    project, found = judged(data, text)
    mistakes = [*slips, *found]
    if project is None or mistakes:
        raise mistaken(sorted(mistakes, key=lambda one: one.line or LARGEST_FILE), name)
    return project


def _tables(text: str) -> tuple[dict[str, Any] | None, tuple[Mistake, ...], str]:
    """The tables of a text, its slips, and the text without them; the many ways to slip are loaded at the first."""
    try:
        return tomllib.loads(text), (), text
    except (ValueError, RecursionError):
        from stitchflip.project.slips import read_toml

        read = read_toml(text)
        return read.data, read.slips, read.text


def _dotted(text: str) -> Mistake | None:
    """The first line that no maker wrote."""
    for number, line in enumerate(text.split("\n"), start=1):
        if line.count(".") > _MOST_DOTS:
            return Mistake(number, "the file", f"a line with {line.count('.')} dots", f"at most {_MOST_DOTS}")
    return None


def _places(text: str) -> Places:
    """Where things stand, under the spelling of the file and that of the file format."""
    from stitchflip.project.places import Places, places_in

    found = places_in(text)

    def of_format(path: tuple[str | int, ...]) -> tuple[str | int, ...]:
        return tuple(SPELLINGS.get(part, part) if isinstance(part, str) else part for part in path)

    return Places(
        {of_format(path): line for path, line in found.line_of.items()} | found.line_of,
        {of_format(path): value for path, value in found.text_of.items()} | found.text_of,
    )


def spelled(data: dict[str, Any]) -> None:
    """Give keys the spelling of the file format, in place.

    Args:
        data: tables as read; a key that stands there both ways is left as it is.
    """
    waiting: list[Any] = [data]
    while waiting:
        table = waiting.pop()
        if isinstance(table, dict):
            for other, key in SPELLINGS.items():
                if other in table and key not in table:
                    table[key] = table.pop(other)
            waiting += table.values()
        elif isinstance(table, list):
            waiting += table


def judged(data: Mapping[str, Any], text: str) -> tuple[Project | None, list[Mistake]]:
    """The project these tables make, or what is wrong with them, one more than are listed at most.

    Args:
        data: tables as in a project file.
        text: the file, looked at again for places when there are mistakes.
    """
    agreeing = list(islice(disagreements(data), MOST_MISTAKES + 1))
    try:
        project = project_from(data)
    except ValidationError as error:
        return None, _told(error.errors(include_url=False), agreeing, data, text)
    agreeing = agreeing or list(disagreements(project.model_dump(exclude_none=True)))
    return project, _told((), agreeing, data, text) if agreeing else []


def _told(
    errors: Iterable[ErrorDetails], agreeing: Sequence[Disagreement], data: Mapping[str, Any], text: str
) -> list[Mistake]:
    """What is wrong, with lines; the words for it are loaded only when something is."""
    from stitchflip.project.mistakes import told

    return told(errors, agreeing, data, _places(text))


def project_from(data: Mapping[str, Any]) -> Project:
    """A project from tables, bare numbers counted in the unit the tables name.

    Args:
        data: tables as in a project file.

    Raises:
        ValidationError: If a value cannot be used.
    """
    unit = meant(str(data.get("units", Unit.INCH.value)), Unit) or Unit.INCH
    return Project.model_validate(data, context={"unit": unit})


def mistaken(mistakes: list[Mistake] | tuple[Mistake, ...], name: str) -> ProjectFileError:
    """The error of a file with these mistakes in it.

    Args:
        mistakes: all of them, one or more.
        name: the file as the maker named it.
    """
    total = len(mistakes)
    counted = "is 1 mistake" if total == 1 else f"are {total} mistakes"
    if total > MOST_MISTAKES:
        counted = f"are more than {MOST_MISTAKES} mistakes"
    return ProjectFileError(
        what=f"there {counted} in the file",
        fix="Correct it and read it again." if total == 1 else "Correct them and read it again.",
        where=name,
        code="project.mistakes",
        mistakes=mistakes[:MOST_MISTAKES],
    )
