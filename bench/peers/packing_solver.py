"""PackingSolver: tree searches and column generation in C++, in its usual (anytime) mode."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import packingsolver
import packingsolver.onedimensional as rods
import packingsolver.rectangleguillotine as plates

from bench.cutting.jobs import CutSheet, Job, Placed, Reply
from bench.peers.levels import greedy_levels
from bench.peers.protocol import serve

_OBJECTIVES = {"length": "OpenDimensionY", "cost": "VariableSizedBinPacking", "value": "Knapsack"}
_CUTS = {"across": "Horizontal", "along": "Vertical", "either": "Any"}


def solve(job: Job, seconds: float) -> Reply:
    """Its best plan and its bound for this kind of job."""
    return _rods(job, seconds) if job.aim == "lengths" else _plates(job, seconds)


def _plates(job: Job, seconds: float) -> Reply:
    if (
        job.aim == "length" and not job.stages
    ):  # without a limit on the stages it found no plan on open sheets; with three it does
        return replace(_plates(job.but(stages=3), seconds), bound=None, proved=False)
    builder = plates.InstanceBuilder()
    is_equal = job.aim == "cost" and len(job.stocks) == 1
    objective = "BinPacking" if is_equal else _OBJECTIVES[job.aim]
    builder.set_objective(getattr(plates.Objective, objective))
    if job.stages:
        builder.set_number_of_stages(job.stages)
    else:
        builder.set_number_of_stages_unlimited()
    kind = "Homogenous" if job.same_stack else "NonExact" if job.trims else "Exact"
    builder.set_cut_type(getattr(plates.CutType, kind))
    builder.set_first_stage_orientation(getattr(plates.CutOrientation, _CUTS[job.first_cut]))
    for stock in job.stocks:
        if stock.long is None:  # a much longer sheet takes much of its time; of three guesses tried this served best
            builder.add_bin_type(stock.wide, greedy_levels(job) * 11 // 10)
        else:
            count = job.pieces if stock.count is None else stock.count
            builder.add_bin_type(stock.wide, stock.long, cost=float(stock.cost), copies=count)
    for item in job.items:
        profit = {"profit": float(item.value)} if job.aim == "value" else {}
        builder.add_item_type(item.wide, item.long, copies=item.count, oriented=not item.can_turn, **profit)
    output = plates.optimize(builder.build(), _parameters(plates, seconds))
    plan = output.solution
    sheets = tuple(_sheet(plan.bin(place), job) for place in range(plan.number_of_different_bins()))
    bound = _bound(job, output, is_equal=is_equal)
    if job.aim == "value":
        return Reply(round(plan.profit()), bound, output.is_proven_optimal(), sheets=sheets)
    if not plan.full():
        return Reply(bound=bound, note="no whole plan in the time")
    value = plan.height() if job.aim == "length" else _cost(job, sheets)
    return Reply(value, bound, output.is_proven_optimal(), sheets=sheets)


def _bound(job: Job, output: Any, *, is_equal: bool) -> int | None:  # noqa: ANN401  the library has no types
    if job.aim == "length":
        return int(output.open_dimension_y_bound)
    if job.aim == "value":
        bound = output.knapsack_bound
        return int(bound + 1e-6) if bound < 1e15 else None
    if is_equal:
        return int(output.bin_packing_bound) * job.stocks[0].cost
    return -int(-(output.variable_sized_bin_packing_bound - 1e-6) // 1)


def _cost(job: Job, sheets: tuple[CutSheet, ...]) -> int:
    return sum(job.stocks[sheet.stock].cost * sheet.times for sheet in sheets)


def _sheet(bin_: Any, job: Job) -> CutSheet:  # noqa: ANN401  the library has no types
    placed: list[Placed] = []
    for node in bin_.nodes:
        if node.item_type_id >= 0 and not node.children:
            item = job.items[node.item_type_id]
            wide, long = node.r - node.l, node.t - node.b
            placed.append((node.item_type_id, node.l, node.b, (wide, long) != (item.wide, item.long)))
    return CutSheet(bin_.bin_type_id, bin_.copies, tuple(placed))


def _rods(job: Job, seconds: float) -> Reply:
    builder = rods.InstanceBuilder()
    is_equal = len(job.stocks) == 1
    builder.set_objective(rods.Objective.BinPacking if is_equal else rods.Objective.VariableSizedBinPacking)
    for stock in job.stocks:
        count = job.pieces if stock.count is None else stock.count
        builder.add_bin_type(stock.wide, cost=float(stock.cost), copies=count)
    for item in job.items:
        builder.add_item_type(item.wide, copies=item.count)
    output = rods.optimize(builder.build(), _parameters(rods, seconds))
    plan = output.solution
    bound = (
        int(output.bin_packing_bound) * job.stocks[0].cost
        if is_equal
        else int(output.variable_sized_bin_packing_bound + 1 - 1e-6)
    )
    if not plan.full():
        return Reply(bound=bound, note="no whole plan in the time")
    sheets = []
    for place in range(plan.number_of_different_bins()):
        bin_ = plan.bin(place)
        placed = tuple((item.item_type_id, item.start, 0, False) for item in bin_.items)
        sheets.append(CutSheet(bin_.bin_type_id, bin_.copies, placed))
    return Reply(_cost(job, tuple(sheets)), bound, output.is_proven_optimal(), sheets=tuple(sheets))


def _parameters(library: Any, seconds: float) -> Any:  # noqa: ANN401  the library has no types
    parameters = library.OptimizeParameters()
    parameters.time_limit = seconds
    parameters.verbosity_level = 0
    return parameters


if __name__ == "__main__":
    serve(solve, packingsolver.__version__)
