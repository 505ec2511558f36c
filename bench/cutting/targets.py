"""The lines of `make bench` about cutting: a few minutes of the comparison, held against what was promised."""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median

from bench.clock import Measured
from bench.cutting.families import burke, classical, home, home_lengths
from bench.cutting.jobs import Job
from bench.cutting.ours import ask, seconds_to_the_step
from bench.cutting.peers import PACKING_SOLVER, Peers
from bench.cutting.standing import Standing, stand
from bench.shell import peak_megabytes, typed
from stitchflip.cutting.model import Status

NOT_MEASURED = "not measured: no Python 3.12 here"
EIGHTH_YARD = 36
"""In the eighths of an inch of the home set."""
_TEN_CENTIMETERS = (127, 4000)
"""An eighth of an inch is 127 units of 0.025 mm, ten centimeters are 4,000 of them."""
_AT_ONCE = 0.1
MEGABYTES = 500
SHELL_SECONDS = 1.5
_LARGE = (
    ("strip_jobs", "strip_guillotine_home_sewing", "Q8_odd80_2stage"),
    ("strip_jobs", "strip_burke_N", "burke_N13"),
    ("sheet_jobs", "variable_sized_guillotine_2stage_cintra", "gcut12d_rot"),
    ("value_jobs", "knapsack_guillotine_unlimited", "gcut12_each_once"),
    ("length_jobs", "csp1d_scholl", "scholl_HARD0"),
)
_ONE = """
import sys
from bench.cutting import instances
from bench.cutting.ours import ask
reader, file, name = sys.argv[1:]
ask(next(job for job in getattr(instances, reader)(file) if job.name == name), 2.0)
"""


def cutting() -> Iterator[Measured]:
    """Every promise about cutting."""
    with Peers() as peers:
        two = stand(home(2), peers, ask)
        yield from _two_stages(two)
        yield from _purchase_steps()
        three = stand(home(3), peers, ask)
        yield from _three_stages(three)
        published = [
            stand(burke(stages, can_turn=can_turn, numbers=range(1, 7)), peers, ask)
            for stages in (2, 3)
            for can_turn in (True, False)
        ]
        for standing in published:
            yield _never_behind(standing)
        short = stand(home_lengths(), peers, ask)
        yield from _home_lengths(short)
        long = stand(classical(), peers, ask)
        yield _classical(long)
    yield _no_false_proof([two, three, *published, short, long])
    yield _memory()
    yield typed("cut", SHELL_SECONDS)


def _two_stages(standing: Standing) -> Iterator[Measured]:
    gaps = [1.0 if row.gap is None else row.gap for row in standing.rows]
    what = "home sewing, two stages, 2 s"
    proved = f"{standing.proved} of {len(gaps)} proved"
    yield Measured(
        f"{what}: plan above its bound", f"{max(gaps):.2%} at most, {proved}", "at most 1 %", max(gaps) <= 0.01
    )
    near = [row.ours.seconds if row.ours.near is None else row.ours.near for row in standing.rows]
    told = f"{median(near):.2f} s"
    yield Measured(f"{what}: median until proved or within 1 % of the bound", told, "under 0.3 s", median(near) < 0.3)
    yield _never_behind(standing)


def _three_stages(standing: Standing) -> Iterator[Measured]:
    over = []
    for row in standing.rows:
        known, value = row.job.known.reached, row.ours.value
        assert known is not None
        over.append(1.0 if value is None else value / known - 1)
    what = "home sewing, three stages, 2 s: plan above the best known"
    yield Measured(what, f"{max(over):.2%} at most", "at most 0.5 %", max(over) <= 0.005)
    yield _never_behind(standing)


def _never_behind(standing: Standing) -> Measured:
    """Against every peer that was asked."""
    what = f"{standing.family.title}, {standing.family.seconds:g} s: won, tied, lost"
    scores = {name: standing.score(name) for name in standing.family.peers}
    if not any(scores.values()):
        return Measured(what, NOT_MEASURED, "none lost", is_met=True)
    remarks = []
    for verdict, words in (("lost", "lost"), ("deeper", "shorter only in more stages or taller strips than asked for")):
        found = [
            f"{row.job.name} to {name}" for row in standing.rows for name in scores if row.against(name) == verdict
        ]
        remarks += [f"{words}: {', '.join(found)}"] if found else []
    told = "; ".join(f"{name} {score['won']}, {score['tied']}, {score['lost']}" for name, score in scores.items())
    is_met = not any(score["lost"] for score in scores.values())
    return Measured(what, told, "none lost", is_met, "; ".join(remarks))


def _purchase_steps() -> Iterator[Measured]:
    jobs = home(2).jobs
    unit, ten = _TEN_CENTIMETERS
    yield _to_the_step("1/8 yd", [(job, EIGHTH_YARD) for job in jobs])
    yield _to_the_step("10 cm", [(_finer(job, unit), ten) for job in jobs])


def _finer(job: Job, unit: int) -> Job:
    stocks = tuple(
        type(stock)(stock.wide * unit, stock.long and stock.long * unit, stock.count, stock.cost)
        for stock in job.stocks
    )
    items = tuple(
        type(item)(item.wide * unit, item.long * unit, item.count, item.can_turn, item.value) for item in job.items
    )
    return job.but(stocks=stocks, items=items)


def _to_the_step(step: str, asked: list[tuple[Job, int]]) -> Measured:
    proved, at_once, missed = 0, 0, []
    for job, units in asked:
        answer, seconds = seconds_to_the_step(job, units, 2.0)
        if answer.status is Status.PROVED and -(-answer.value // units) == -(-answer.bound // units):
            proved += 1
            at_once += seconds < _AT_ONCE
        else:
            missed.append(job.name.split("_")[0])
    told = f"{proved} of {len(asked)}, {at_once} of them within {_AT_ONCE} s"
    is_met = proved >= 8 and at_once > len(asked) // 2
    remark = f"not proved: {', '.join(missed)}" if missed else ""
    return Measured(
        f"home sewing, two stages: proved in purchase steps of {step}",
        told,
        "8 of 10, most within 0.1 s",
        is_met,
        remark,
    )


def _home_lengths(standing: Standing) -> Iterator[Measured]:
    what = "one dimension, home size"
    count = len(standing.rows)
    yield Measured(f"{what}: proved", f"{standing.proved} of {count}", "all", standing.proved == count)
    seconds = median(row.ours.seconds for row in standing.rows)
    yield Measured(f"{what}: median", f"{seconds:.3f} s", "under 0.1 s", seconds < _AT_ONCE)


def _classical(standing: Standing) -> Measured:
    """How often the published optimum is reached."""

    def reached(name: str) -> int:
        return sum(
            name in row.replies and not row.replies[name].faults and row.replies[name].value == row.job.known.optimum
            for row in standing.rows
        )

    ours, theirs = reached("stitchflip"), reached(PACKING_SOLVER)
    is_there = any(PACKING_SOLVER in row.replies for row in standing.rows)
    told = f"{ours} of {len(standing.rows)}; {PACKING_SOLVER} {theirs if is_there else NOT_MEASURED}"
    what = "one dimension, classical sets, 1 s each: published optimum reached"
    return Measured(what, told, f"75, and more than {PACKING_SOLVER}", ours >= 75 and ours > theirs * is_there)


def _no_false_proof(standings: list[Standing]) -> Measured:
    found = [fault for standing in standings for fault in standing.our_faults]
    count = sum(len(standing.rows) for standing in standings)
    return Measured(
        f"plans that cannot be cut and false proofs in {count} answers",
        str(len(found)),
        "none",
        not found,
        "; ".join(found),
    )


def _memory() -> Measured:
    """Peak of a process that solves one large instance, the largest of several."""
    peaks = {}
    for reader, file, name in _LARGE:
        peaks[name] = peak_megabytes(_ONE, reader, file, name)
    worst = max(peaks, key=lambda name: peaks[name])
    what = f"peak memory of cutting, {len(peaks)} large instances"
    return Measured(what, f"{peaks[worst]:.0f} MB ({worst})", f"under {MEGABYTES} MB", peaks[worst] < MEGABYTES)
