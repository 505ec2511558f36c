"""Changes to a project: what a cure asks for, applied to the model."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Protocol

from pydantic import BaseModel

from stitchflip.errors import ProjectFileError
from stitchflip.lengths import Length, format_length
from stitchflip.project.model import Project

if TYPE_CHECKING:
    from collections.abc import Iterable


class Edit(Protocol):
    """One value to write at one place."""

    @property
    def path(self) -> tuple[str | int, ...]:
        """Keys and places from the top, such as ("rounds", 2, "cut")."""

    @property
    def to(self) -> str:
        """The text to write there."""


def apply_changes(project: Project, changes: Iterable[Edit]) -> Project:
    """The project with some values changed.

    Args:
        project: The project; it stays as it is.
        changes: What to write where, as a maker would type it.

    Raises:
        ProjectFileError: If a path leads nowhere or a text cannot be read there.
    """
    tables = _plain(project, project)
    for change in changes:
        _write(tables, change)
    return Project.model_validate(tables, context={"unit": tables.get("units", project.units)})


def _plain(value: Any, project: Project) -> Any:
    """Nested tables with lengths as text."""
    match value:
        case BaseModel():
            given = {name: getattr(value, name) for name in value.model_fields_set}
            return {name: _plain(inner, project) for name, inner in given.items() if inner is not None}
        case list() | tuple():
            return [_plain(inner, project) for inner in value]
        case Length():
            return format_length(value, project.units)
        case _:
            return value


def _write(tables: Any, change: Edit) -> None:
    *way, last = change.path
    for key in way:
        if isinstance(tables, dict) and key not in tables:
            tables[key] = {}
        try:
            tables = tables[key]
        except (IndexError, KeyError, TypeError) as error:
            raise ProjectFileError(
                what=f"there is no {'.'.join(str(part) for part in change.path)} to change",
                fix="Change a value that the project has.",
                where=str(key),
                code="project.no-such-place",
            ) from error
    tables[last] = change.to
