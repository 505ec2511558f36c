"""Jobs in, replies out, a line each."""

from __future__ import annotations

import json
import os
import sys
import time
from collections.abc import Callable
from dataclasses import asdict, replace
from typing import Any

from bench.cutting.jobs import CutSheet, Item, Job, Known, Reply, Stock


def told(job: Job, seconds: float) -> str:
    """A job as a line; what others know about it is not told."""
    fields = asdict(job)
    del fields["known"]
    return json.dumps({"seconds": seconds, "job": fields})


def heard(line: str) -> tuple[Job, float]:
    """The job in a line, and its time limit."""
    data = json.loads(line)
    fields: dict[str, Any] = data["job"]
    stocks = tuple(Stock(**stock) for stock in fields.pop("stocks"))
    items = tuple(Item(**item) for item in fields.pop("items"))
    return Job(**fields, stocks=stocks, items=items, known=Known()), float(data["seconds"])


def answered(reply: Reply) -> str:
    """A reply as a line."""
    return json.dumps(asdict(reply))


def understood(line: str) -> Reply:
    """The reply in a line."""
    data = json.loads(line)
    sheets = tuple(
        CutSheet(sheet["stock"], sheet["times"], tuple((i, x, y, bool(turned)) for i, x, y, turned in sheet["placed"]))
        for sheet in data.pop("sheets")
    )
    data.pop("faults")
    return Reply(**data, sheets=sheets)


def serve(solve: Callable[[Job, float], Reply], version: str) -> None:
    """Answer jobs until there are no more; the first line says who answers.

    Libraries that print do so beside the lines: standard output is kept for the answers.

    Args:
        solve: of a job within so many seconds.
        version: of the library, told first.
    """
    answers = os.fdopen(os.dup(1), "w", encoding="utf-8")
    os.dup2(2, 1)
    print(json.dumps({"version": version}), file=answers, flush=True)
    for line in sys.stdin:
        job, seconds = heard(line)
        start = time.perf_counter()
        try:
            reply = solve(job, seconds)
        except Exception as error:  # noqa: BLE001  whatever a library raises is its answer
            reply = Reply(note=f"{type(error).__name__}: {error}"[:200])
        print(answered(replace(reply, seconds=time.perf_counter() - start)), file=answers, flush=True)
