"""Changes to a project: what a cure asks for, applied to the model.

Only the parts on the way to the value are made anew; the rest of the project is shared, which keeps the many
trials of a search for cures cheap.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from stitchflip.errors import Mistake, ProjectFileError
from stitchflip.project.agreements import disagreements
from stitchflip.project.kinds import written_keys
from stitchflip.project.mistakes import key_of, told
from stitchflip.project.model import Change, Project
from stitchflip.project.places import Places

Path = tuple[str | int, ...]
Raw = Any
"""A value of any kind a project file can hold."""
_Part = TypeVar("_Part", bound=BaseModel)


class _NowhereError(LookupError):
    """A path that leads out of the project."""

    def __init__(self, place: str | int, part: Raw) -> None:
        """Keep where it leads out, and the part it leaves."""
        self.place = place
        self.part = part
        super().__init__(place)


def apply_changes(project: Project, changes: Iterable[Change]) -> Project:
    """The project with some values changed.

    Args:
        project: The project; it stays as it is.
        changes: What to write where, as a maker would type it; applied in turn.

    Returns:
        The changed project.

    Raises:
        ProjectFileError: If a path leads nowhere, a text cannot be read there, or the change makes the project
            disagree with itself where it did not before.

    Example:
        >>> from stitchflip.project.reading import project_from
        >>> mat = project_from(
        ...     {
        ...         "name": "Mat",
        ...         "squared_up": {"wide": "18", "long": "13"},
        ...         "fabrics": [{"name": "Oat"}],
        ...         "binding": {"fabric": "Oat"},
        ...     }
        ... )
        >>> apply_changes(mat, [Change(("squared_up", "wide"), "17 1/2")]).squared_up.wide.inches
        17.5
    """
    before = project
    made = list(changes)
    for change in made:
        project = changed_once(project, change)
    if made:
        known = {(one.path, one.found) for one in disagreements(_tables(before))}
        new = [one for one in disagreements(_tables(project)) if (one.path, one.found) not in known]
        if new:
            raise _refused(made, told((), new, {}, Places()))
    return project


def _tables(project: Project) -> dict[str, Any]:
    return project.model_dump(exclude_none=True)


def changed_once(project: Project, change: Change) -> Project:
    """The project with one value changed, whatever the rest of it says to that.

    Args:
        project: The project; it stays as it is.
        change: What to write where.

    Raises:
        ProjectFileError: If the path leads nowhere or the text cannot be read there.
    """
    if not change.path or change.path[0] == "units":
        what = "the units of a project cannot be changed" if change.path else "a change names no value"
        raise ProjectFileError(
            what=what,
            fix="Change one value at a time; a piece in other units is drafted anew.",
            where=key_of(change.path),
            code="project.no-such-place",
        )
    first: ValidationError | None = None
    for value in _readings(change.to):
        try:
            return _with(project, change.path, value, project)
        except _NowhereError as error:
            raise _no_such_place(change.path, error) from None
        except ValidationError as error:
            first = first or error
    errors = first.errors(include_url=False) if first is not None else []
    shown = "nothing" if change.to is None else f'"{change.to}"'
    would_do = "; ".join(one.would_do for one in told(errors, (), {}, Places())) or "another value"
    raise _refused([change], [Mistake(None, key_of(change.path), shown, would_do)])


def _readings(to: str | None) -> list[Any]:
    """What a text may stand for: itself, or the list or table written in it."""
    readings: list[Any] = [to]
    if to is not None and to.lstrip()[:1] in {"[", "{"}:
        try:
            readings.append(tomllib.loads(f"value = {to}")["value"])
        except (ValueError, RecursionError):
            return readings
    return readings


def _with(part: _Part, path: Path, value: Raw, project: Project) -> _Part:
    """A part of the project with the value at a path under it."""
    key = {written: name for name, written in written_keys(type(part)).items()}.get(str(path[0]), path[0])
    if not isinstance(key, str) or key not in type(part).model_fields:
        raise _NowhereError(path[0], part)
    values: dict[str, Any] = {name: getattr(part, name) for name in type(part).model_fields}
    values[key] = _inside(values[key], path[1:], value, project) if len(path) > 1 else value
    if values[key] is None:
        del values[key]
    return type(part).model_validate(values, context={"unit": project.units})


def _inside(held: Raw, path: Path, value: Raw, project: Project) -> Raw:
    """What a field holds, with the value at a path in it."""
    if isinstance(held, BaseModel):
        return _with(held, path, value, project)
    place, rest = path[0], path[1:]
    if held is None and isinstance(place, str):
        return {place: _inside(None, rest, value, project) if rest else value}
    entries = list(held) if isinstance(held, tuple) else []
    if not isinstance(place, int) or not 0 <= place <= len(entries):
        raise _NowhereError(place, held)
    old = entries[place] if place < len(entries) else None
    new = _inside(old, rest, value, project) if rest else value
    entries[place : place + 1] = [] if new is None else [new]
    return tuple(entries)


def _no_such_place(path: Path, nowhere: _NowhereError) -> ProjectFileError:
    part = nowhere.part
    known = f"; there are {', '.join(written_keys(type(part)).values())}" if isinstance(part, BaseModel) else ""
    place = nowhere.place + 1 if isinstance(nowhere.place, int) else f'"{nowhere.place}"'
    return ProjectFileError(
        what=f"there is no {place} to change{known}",
        fix="Change a value that a project has.",
        where=key_of(path),
        code="project.no-such-place",
    )


def _refused(changes: list[Change], mistakes: list[Mistake]) -> ProjectFileError:
    wanted = ", ".join(f"{key_of(change.path)} = {change.to}" for change in changes)
    return ProjectFileError(
        what=f"the change {wanted} cannot be made",
        fix="Give another value.",
        where=mistakes[0].key,
        code="project.change-refused",
        mistakes=mistakes,
    )
