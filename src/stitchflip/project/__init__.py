"""The project room: what a maker writes down, read from her file and written back.

A project is one TOML file a person can read, write and keep; here it becomes a checked value, `Project`, and
back again with every note left in place. Nothing is computed here but the maker's effective numbers.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from stitchflip.project.changes import apply_changes as apply_changes
    from stitchflip.project.editing import edit_project as edit_project
    from stitchflip.project.model import Change as Change
    from stitchflip.project.model import Project as Project
    from stitchflip.project.numbers import Numbers as Numbers
    from stitchflip.project.numbers import effective as effective
    from stitchflip.project.reading import LARGEST_FILE as LARGEST_FILE
    from stitchflip.project.reading import project_from as project_from
    from stitchflip.project.reading import read_project as read_project
    from stitchflip.project.reading import read_project_bytes as read_project_bytes
    from stitchflip.project.schema import project_schema as project_schema
    from stitchflip.project.writing import write_project as write_project

_ROOM_OF = {
    "Change": "model",
    "LARGEST_FILE": "reading",
    "Numbers": "numbers",
    "Project": "model",
    "apply_changes": "changes",
    "edit_project": "editing",
    "effective": "numbers",
    "project_from": "reading",
    "project_schema": "schema",
    "read_project": "reading",
    "read_project_bytes": "reading",
    "write_project": "writing",
}
"""Public name -> the module it comes from, which is loaded when the name is first used."""

__all__ = [*sorted(_ROOM_OF)]  # noqa: PLE0604  the table is the list


def __getattr__(name: str) -> object:
    """Fetch a public name from its module on first use."""
    if name not in _ROOM_OF:
        msg = f"module {__name__!r} has no attribute {name!r}"
        raise AttributeError(msg)
    value = getattr(import_module(f"{__name__}.{_ROOM_OF[name]}"), name)
    globals()[name] = value
    return value
