"""What one project has that another has not, as changes a maker could type one by one."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from pydantic import BaseModel

from stitchflip.lengths import Length
from stitchflip.project.kinds import written_keys
from stitchflip.project.model import Change, Project
from stitchflip.project.writing import toml, typed

Path = tuple[str | int, ...]
Raw = Any
"""A value of any kind a project holds."""


def differences(before: Project, after: Project) -> tuple[Change, ...]:
    """The changes that make one project the other; the unit and nothing else is left out.

    Args:
        before: the project as it is.
        after: the project wanted, of the same unit.

    Example:
        >>> from stitchflip.project.reading import project_from
        >>> mat = {"name": "Mat", "fabrics": [{"name": "Oat"}], "binding": {"fabric": "Oat"}}
        >>> small = project_from({**mat, "squared_up": {"wide": "18", "long": "13"}})
        >>> large = project_from({**mat, "squared_up": {"wide": "20 1/2", "long": "13"}})
        >>> differences(small, large)
        (Change(path=('squared_up', 'wide'), to='20 1/2'),)
    """
    return tuple(_parts(before, after, (), after))


def _parts(before: BaseModel, after: BaseModel, at: Path, project: Project) -> Iterator[Change]:
    """Value by value; what is taken out goes last, so that nothing is ever without its size."""
    out = []
    for key, written in written_keys(type(after)).items():
        old, new = getattr(before, key), getattr(after, key)
        if old == new or (not at and key == "units"):
            continue
        if new is None:
            out.append(Change((*at, written), None))
        else:
            yield from _value(old, new, (*at, written), project)
    yield from out


def _value(old: Raw, new: Raw, at: Path, project: Project) -> Iterator[Change]:
    if isinstance(new, BaseModel) and isinstance(old, BaseModel):
        yield from _parts(old, new, at, project)
    elif _is_list_of_parts(old) and _is_list_of_parts(new) and old and new:
        yield from _listed(old, new, at, project)
    elif not new and isinstance(new, tuple):
        yield Change(at, None)
    else:
        yield Change(at, _typed(new, project))


def _is_list_of_parts(value: Raw) -> bool:
    return isinstance(value, tuple) and all(isinstance(one, BaseModel) for one in value)


def _listed(old: Sequence[BaseModel], new: Sequence[BaseModel], at: Path, project: Project) -> Iterator[Change]:
    """Elements that both have, then those more, or from the end those fewer."""
    for place, (one, other) in enumerate(zip(old, new, strict=False)):
        if one != other:
            yield from _parts(one, other, (*at, place), project)
    for place in range(len(old), len(new)):
        yield Change((*at, place), toml(new[place], project.units))
    for place in reversed(range(len(new), len(old))):
        yield Change((*at, place), None)


def _typed(value: Raw, project: Project) -> str:
    """A value as it is typed; only in lists and tables are texts quoted."""
    if isinstance(value, Length):
        return typed(value, project.units)
    return str(value) if isinstance(value, str) else toml(value, project.units)
