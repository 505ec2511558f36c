"""Anything may stand anywhere in a file: it is told as a mistake, and nothing breaks."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.project.reading import judged
from tests.project.drafts import MAT, mistakes
from tests.project_strategies import project_tables

ODD: tuple[Any, ...] = (
    3, -1, 2.5, True, "x", "", [], [3], ["x"], [[1]], [[1, 2], [3]], {}, {"a": 1}, [{}], [[[]]],
    float("nan"), float("inf"), 10**30, "1e999", ["x", ["y"]],
)  # fmt: skip
"""Values of every kind that a file can hold, most of them wrong wherever they stand."""


def _places(part: Any, path: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    """Every key and every element of a list."""
    entries = part.items() if isinstance(part, dict) else enumerate(part) if isinstance(part, list) else ()
    found: list[tuple[str | int, ...]] = []
    for key, value in entries:
        found += [(*path, key), *_places(value, (*path, key))]
    return found


@settings(max_examples=150, deadline=None)
@given(project_tables(), st.data())
def test_any_value_at_any_place_is_read_or_told(tables: dict[str, Any], data: st.DataObject) -> None:
    """One value of a good project is replaced: there is a project, or there are mistakes that name what would do."""
    path = data.draw(st.sampled_from(_places(tables)))
    holder: Any = tables
    for part in path[:-1]:
        holder = holder[part]
    holder[path[-1]] = data.draw(st.sampled_from(ODD))

    project, found = judged(tables, "")

    assert project is not None or found
    assert all(mistake.key and mistake.found and mistake.would_do for mistake in found)


@pytest.mark.parametrize("value", ["3", "true", '"top"', "[3]", "{}"])
def test_a_pair_that_is_no_pair_is_told(value: str) -> None:
    """Two sides in brackets are due; anything else is a mistake with its key."""
    found = mistakes(f"{MAT}[building]\nfirst_pair = {value}\n")

    assert {"building.first_pair"} == {mistake.key.split("[")[0] for mistake in found}
