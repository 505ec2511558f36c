"""The same level model, solved by CP-SAT of OR-tools with two workers."""

from __future__ import annotations

import time

import ortools
from ortools.sat.python import cp_model

from bench.cutting.jobs import Job, Reply
from bench.peers.levels import laid, levels, options
from bench.peers.protocol import serve


def solve(job: Job, seconds: float) -> Reply:
    """Its best plan and its bound: open sheet, two stages with trimming."""
    start = time.perf_counter()
    if job.aim != "length" or job.stages != 2 or not job.trims:
        return Reply(note="not a job for this model")
    ways = options(job)
    found = levels(job, ways)
    if found is None:
        return Reply(note="too large for this model")
    width = job.stocks[0].wide
    model = cp_model.CpModel()
    made: list[list[cp_model.IntVar]] = [[] for _ in job.items]
    opened: list[cp_model.IntVar] = []
    beside: list[list[cp_model.IntVar]] = []
    for number, level in enumerate(found):
        is_open = model.new_bool_var("")
        counts = [model.new_int_var(0, most, "") for _, most in level.beside]
        made[ways[level.opens].item].append(is_open)
        for (option, _), count in zip(level.beside, counts, strict=True):
            made[ways[option].item].append(count)
        widths = sum(ways[option].wide * count for (option, _), count in zip(level.beside, counts, strict=True))
        model.add(widths <= (width - ways[level.opens].wide) * is_open)
        if number and found[number - 1].opens == level.opens:
            model.add(opened[-1] >= is_open)
        opened.append(is_open)
        beside.append(counts)
    for item, parts in zip(job.items, made, strict=True):
        model.add(sum(parts) >= item.count)
    model.minimize(sum(ways[level.opens].long * is_open for level, is_open in zip(found, opened, strict=True)))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 2
    solver.parameters.max_time_in_seconds = max(0.05, seconds - (time.perf_counter() - start))
    status = solver.solve(model)
    bound = max(job.area_bound, round(solver.best_objective_bound))
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return Reply(bound=bound, note="no plan in the time")
    chosen = [
        (level, [solver.value(count) for count in counts])
        for level, is_open, counts in zip(found, opened, beside, strict=True)
        if solver.value(is_open)
    ]
    length, sheets = laid(job, ways, chosen)
    return Reply(length, bound, bound == length, sheets=sheets)


if __name__ == "__main__":
    serve(solve, f"OR-tools {ortools.__version__}")
