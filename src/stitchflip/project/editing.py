"""Changing values in a project file and nothing else: her notes, her order and her spacing stay as they are."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from pydantic import BaseModel

from stitchflip.errors import OurFault
from stitchflip.project.changes import apply_changes, changed_once
from stitchflip.project.kinds import LISTS_OF_TABLES, written_keys
from stitchflip.project.model import Change, Project
from stitchflip.project.reading import SPELLINGS, read_project
from stitchflip.project.writing import lines, toml

if TYPE_CHECKING:
    from tomlkit import TOMLDocument

Path = tuple[str | int, ...]
Raw = Any
"""A value, or an item of the parsed document, of any kind."""
_SPELLED = {key: other for other, key in SPELLINGS.items()} | {
    name: written for name, written in written_keys(Project).items() if name != written
}
"""Key -> the other spelling it may have in a file."""


def edit_project(text: str, changes: Iterable[Change]) -> str:
    r"""The text of a project file with some values changed.

    Args:
        text: the file.
        changes: what to write where; lengths are written as a maker types them.

    Returns:
        The file with these values changed, added or taken out; every other letter is as it was.

    Raises:
        ProjectFileError: If the file has mistakes in it, or a change cannot be made.
        OurFault: If the changed file would not be the changed project.

    Example:
        >>> mat = 'name = "Mat"  # for Ida\nrounds = [{ cut = "2" }]\n[squared_up]\nwide = "18"\nlong = "13"\n'
        >>> mat += '[center]\ncut = "6"\nfabric = "Oat"\n[[fabrics]]\nname = "Oat"\n[binding]\nfabric = "Oat"\n'
        >>> print(edit_project(mat, [Change(("rounds", 0, "cut"), "2½ in")])[:52])
        name = "Mat"  # for Ida
        rounds = [{ cut = "2 1/2" }]
    """
    import tomlkit

    project = read_project(text)
    mark = "\ufeff" if text.startswith("\ufeff") else ""
    document = tomlkit.parse(text.removeprefix(mark))
    made = list(changes)
    wanted = apply_changes(project, made)
    for change in made:
        project = changed_once(project, change)
        _write(document, change, project)
    edited = mark + tomlkit.dumps(document)
    if read_project(edited) != wanted:
        raise OurFault(
            what="the changed file would not be the changed project",
            fix="Keep the file as it is, and send it to us with what you changed.",
            code="fault.edit",
        )
    return edited


def _write(document: TOMLDocument, change: Change, project: Project) -> None:
    """One change, written into the document; missing tables on the way are added."""
    holder: Any = document
    path = change.path
    for place, part in enumerate(path[:-1]):
        key = _key(holder, part)
        if not _has(holder, key):
            if change.to is None:
                return
            _add(holder, _new_key(part), path[: place + 1], project)
            return
        holder = holder[key]
    key = _key(holder, path[-1])
    if change.to is None:
        if _has(holder, key):
            del holder[key]
    elif _has(holder, key):
        holder[key] = _item(_value(project, path), project)
    else:
        _add(holder, _new_key(path[-1]), path, project)


def _new_key(part: str | int) -> str | int:
    """A key as the file format spells it."""
    return written_keys(Project).get(part, part) if isinstance(part, str) else part


def _key(holder: Raw, part: str | int) -> str | int:
    """A key as this file spells it."""
    other = _SPELLED.get(part) if isinstance(part, str) else None
    return other if other is not None and _has(holder, other) else part


def _has(holder: Raw, key: str | int) -> bool:
    return key < len(holder) if isinstance(key, int) else key in holder


def _value(project: Project, path: Path) -> Raw:
    """The value at a path of a project, a part that was added taken as a whole."""
    value: Any = project
    for part in path:
        value = value[part] if isinstance(part, int) else getattr(value, _field(value, part))
    return value


def _field(part: BaseModel, key: str) -> str:
    """The field with this key."""
    return {written: name for name, written in written_keys(type(part)).items()}.get(key, key)


def _item(value: Raw, project: Project) -> Raw:
    import tomlkit

    return tomlkit.value(toml(value, project.units))


def _add(holder: Raw, key: str | int, path: Path, project: Project) -> None:
    """Something the file does not have yet: a value, an element of a list, or a table of its own."""
    import tomlkit
    from tomlkit.items import AoT

    value = _value(project, path)
    is_table = len(path) == 1 and (isinstance(value, BaseModel) or path[0] in LISTS_OF_TABLES)
    if isinstance(key, int) and isinstance(holder, AoT):
        holder.append(_table(value, project))
    elif isinstance(key, int):
        holder.append(_item(value, project))
    elif is_table and path[0] in LISTS_OF_TABLES:
        array = tomlkit.aot()
        for one in value:
            array.append(_table(one, project))
        holder.append(key, array)
    elif is_table:
        holder.append(key, _table(value, project))
    else:
        holder[key] = _item(value, project)


def _table(value: Raw, project: Project) -> Raw:
    """A part of a project as a table with one line for each of its values."""
    import tomlkit

    table = tomlkit.table()
    for key, item in tomlkit.parse(lines(value, project.units) + "\n").items():
        table.append(key, item)
    return table
