"""A project's tables as written, any of them missing or of any type, and what is told of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from stitchflip.project.words import Way, meant
from stitchflip.values import dataclass

Path = tuple[str | int, ...]
Table = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Disagreement:
    """Two things that cannot both be meant, or one that another one needs."""

    path: Path
    """The value to change, or the one that is missing."""
    found: str
    """What stands there, in words."""
    would_do: str


def table_at(data: Table, key: str) -> Table:
    """The table with this key; an empty one when there is none."""
    value = data.get(key)
    return value if isinstance(value, Mapping) else {}


def tables_at(data: Table, key: str) -> list[tuple[int, Table]]:
    """The tables of a list with their places in it."""
    value = data.get(key)
    if not isinstance(value, Sequence) or isinstance(value, str):
        return []
    return [(place, one) for place, one in enumerate(value) if isinstance(one, Mapping)]


def lacks(table: Table, at: Path, keys: tuple[str, ...], why: str) -> Iterator[Disagreement]:
    """What is missing, though it is needed."""
    for key in keys:
        if table.get(key) is None:
            would_do = "the name of a fabric" if key.endswith("fabric") else f"a value for {key}"
            yield Disagreement((*at, key), f"nothing, though {why}", would_do)


def too_many(table: Table, at: Path, keys: tuple[str, ...], why: str, instead: str) -> Iterator[Disagreement]:
    """What is written, though it cannot be used."""
    for key in keys:
        if table.get(key) is not None:
            yield Disagreement((*at, key), f"{key}, though {why}", instead)


def way_in(data: Table) -> Way | None:
    """The way of building; None when it cannot be told."""
    return meant(str(table_at(data, "building").get("way", Way.LOG_CABIN.value)), Way)


def ticks(size: object) -> int | None:
    """A length of a model's plain values; None for one as written, which cannot be judged here."""
    found = size.get("ticks") if isinstance(size, Mapping) else None
    return found if isinstance(found, int) else None
