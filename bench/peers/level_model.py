"""The plain level model, solved by HiGHS alone."""

from __future__ import annotations

import time

import highspy  # type: ignore[import-untyped]  # ships no types
import numpy as np

from bench.cutting.jobs import Job, Reply
from bench.peers.levels import laid, levels, options
from bench.peers.protocol import serve

_HAIR = 1e-6


def solve(job: Job, seconds: float) -> Reply:
    """Its best plan and its bound: open sheet, two stages with trimming."""
    start = time.perf_counter()
    if job.aim != "length" or job.stages != 2 or not job.trims:
        return Reply(note="not a job for this model")
    ways = options(job)
    model = levels(job, ways)
    if model is None:
        return Reply(note="too large for this model")
    width = job.stocks[0].wide
    costs: list[float] = []
    uppers: list[float] = []
    rows: list[dict[int, float]] = [{} for _ in job.items]  # how many of each item
    low, high = [float(item.count) for item in job.items], [highspy.kHighsInf] * len(job.items)
    firsts = []
    for number, level in enumerate(model):
        first = len(costs)
        firsts.append(first)
        costs.append(float(ways[level.opens].long))
        uppers.append(1.0)
        rows[ways[level.opens].item][first] = 1.0
        row = {first: float(ways[level.opens].wide - width)}
        for option, most in level.beside:
            row[len(costs)] = float(ways[option].wide)
            rows[ways[option].item][len(costs)] = 1.0
            costs.append(0.0)
            uppers.append(float(most))
        rows.append(row)
        low.append(-highspy.kHighsInf)
        high.append(0.0)
        if number and model[number - 1].opens == level.opens:  # equal levels are opened in turn
            rows.append({firsts[number - 1]: 1.0, first: -1.0})
            low.append(0.0)
            high.append(highspy.kHighsInf)
    solver = _loaded(costs, uppers, rows, low, high)
    solver.setOptionValue("time_limit", max(0.05, seconds - (time.perf_counter() - start)))
    solver.run()
    info = solver.getInfo()
    bound = max(job.area_bound, int(np.ceil(info.mip_dual_bound - _HAIR))) if info.mip_dual_bound > 0 else None
    if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
        return Reply(bound=bound, note="no plan in the time")
    values = [round(value) for value in solver.getSolution().col_value]
    opened = [
        (level, values[first + 1 : first + 1 + len(level.beside)])
        for level, first in zip(model, firsts, strict=True)
        if values[first]
    ]
    length, sheets = laid(job, ways, opened)
    return Reply(length, bound, bound == length, sheets=sheets)


def _loaded(
    costs: list[float], uppers: list[float], rows: list[dict[int, float]], low: list[float], high: list[float]
) -> highspy.Highs:
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    model = highspy.HighsLp()
    model.num_col_, model.num_row_ = len(costs), len(rows)
    model.col_cost_ = np.array(costs)
    model.col_lower_, model.col_upper_ = np.zeros(len(costs)), np.array(uppers)
    model.row_lower_, model.row_upper_ = np.array(low), np.array(high)
    model.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    model.a_matrix_.start_ = np.cumsum([0, *(len(row) for row in rows)])
    model.a_matrix_.index_ = np.array([column for row in rows for column in row])
    model.a_matrix_.value_ = np.array([value for row in rows for value in row.values()])
    model.integrality_ = [highspy.HighsVarType.kInteger] * len(costs)
    solver.passModel(model)
    return solver


if __name__ == "__main__":
    serve(solve, f"HiGHS {highspy.Highs().version()}")
