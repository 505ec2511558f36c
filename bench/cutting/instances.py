"""Read the published and invented instances."""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import Any

from bench.cutting.jobs import Item, Job, Known, Stock

FOLDER = Path(__file__).parents[1] / "instances"
_FIRST_CUTS = {"horizontal": "across", "vertical": "along", "any": "either", None: "across"}


def rows(file: str) -> list[dict[str, Any]]:
    """The instances of a file as they are written."""
    text = (FOLDER / f"{file}.json").read_text(encoding="utf-8")
    found: list[dict[str, Any]] = json.loads(text)["instances"]
    return found


@cache
def named(file: str) -> dict[str, dict[str, Any]]:
    """The same by name."""
    return {row["name"]: row for row in rows(file)}


def strip_jobs(file: str) -> list[Job]:
    """Open sheets, each instance with the stages and trimming it is written with (none: as many as it takes)."""
    return [_job(row, "length") for row in rows(file)]


def sheet_jobs(file: str) -> list[Job]:
    """Sheets of given sizes at the smallest cost."""
    return [_job(row, "cost") for row in rows(file)]


def value_jobs(file: str) -> list[Job]:
    """One sheet, as much value as it gives."""
    return [_job(row, "value") for row in rows(file)]


def length_jobs(file: str) -> list[Job]:
    """One dimension."""
    return [_job(row, "lengths") for row in rows(file)]


def _job(row: dict[str, Any], aim: str) -> Job:
    stages = row.get("stages", 0)
    is_home_of_three = stages == 3 and row.get("exact") is True
    return Job(
        name=row["name"],
        aim=aim,
        stocks=tuple(_stock(stock) for stock in row["stock"]),
        items=tuple(
            Item(item["w"], item["h"], item["demand"], bool(row["rotate"]), int(item.get("value", 0)))
            for item in row["items"]
        ),
        known=_known(row),
        stages=stages,
        trims=not row.get("exact", False) and row.get("cut_type") != "homogeneous",
        same_stack=row.get("cut_type") == "homogeneous",
        first_cut=_FIRST_CUTS[row.get("first_cut")],
        tallest_strip=row["stock"][0]["width"] if is_home_of_three else None,  # as its variant says
        unit=row.get("unit", ""),
    )


def _stock(row: dict[str, Any]) -> Stock:
    return Stock(row["width"], row["height"], row["copies"], int(row.get("cost", 1)))


def _known(row: dict[str, Any]) -> Known:
    """An optimum for a wider problem (free packing) only says that no plan can be better."""
    optimum = row.get("optimum")
    if row.get("optimum_scope", "").startswith("free"):
        return Known(limit=optimum)
    if optimum is not None:
        return Known(reached=int(optimum), limit=int(optimum))
    reached, limit = row.get("best_known"), row.get("lower_bound")
    return Known(None if reached is None else int(reached), None if limit is None else int(limit))
