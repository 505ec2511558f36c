"""Which instances are measured, how long each may take, and against whom."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from bench.cutting.home_lengths import home_lists
from bench.cutting.instances import length_jobs, rows, sheet_jobs, strip_jobs, value_jobs
from bench.cutting.jobs import Job, Known
from bench.cutting.peers import CP_SAT, LEVEL_MODEL, PACKING_SOLVER, RECT_PACK

CLASSICAL = ("csp1d_falkenauer", "csp1d_scholl", "csp1d_schwerin", "csp1d_waescher", "csp1d_hard28")
_ALL = (PACKING_SOLVER, LEVEL_MODEL, CP_SAT, RECT_PACK)
_THREE_WILL_DO = (
    f"{PACKING_SOLVER} is asked for three stages: without a limit it found no plan on open sheets. "
    "Ours searches three stages too, its bound holds for any number."
)
_TREES = (PACKING_SOLVER, RECT_PACK)


@dataclass(frozen=True, slots=True)
class Family:
    """Instances of one kind."""

    title: str
    said: str
    """What is asked, in a sentence or two."""
    jobs: tuple[Job, ...]
    seconds: float
    """Time limit of each instance, for everybody."""
    peers: tuple[str, ...] = (PACKING_SOLVER,)


def families() -> list[Family]:
    """Everything on the page, in its order."""
    return [
        home(2),
        home(3),
        *(burke(stages, can_turn=can_turn) for stages in (2, 3) for can_turn in (True, False)),
        *_deep_strips(),
        *_sheets(),
        *one_dimension(),
    ]


def home(stages: int) -> Family:
    """The invented home-sewing set."""
    jobs = tuple(job for job in strip_jobs("strip_guillotine_home_sewing") if job.stages == stages)
    if stages == 2:
        return Family(
            "Home sewing, two stages",
            "Lengths in 1/8 in. Full-width strips, then pieces side by side, each trimmed to its height.",
            jobs,
            2.0,
            _ALL,
        )
    return Family(
        "Home sewing, three stages",
        "Lengths in 1/8 in. Strips no taller than the fabric is wide, stacks in them, pieces as wide as their stack.",
        jobs,
        2.0,
        _TREES,
    )


def burke(stages: int, *, can_turn: bool, numbers: Iterable[int] = range(1, 14)) -> Family:
    """The published set N, whose heights are known for packing without straight cuts."""
    written = {row["name"]: row.get("computed_here", {}) for row in rows("strip_burke_N")}
    wanted = {f"burke_N{number}" for number in numbers}
    key = f"{stages}stage_trimmed_{'rot' if can_turn else 'fixed'}"
    jobs = []
    for job in strip_jobs("strip_burke_N"):
        computed = written[job.name].get(key, {})
        known = Known(computed.get("best"), max(computed.get("lower_bound", 0), job.known.limit or 0))
        if job.name in wanted:
            jobs.append(_turned(job, can_turn=can_turn).but(stages=stages, trims=True, known=known))
    return Family(
        f"Burke N, {'two' if stages == 2 else 'three'} stages, {'pieces may be turned' if can_turn else 'as given'}",
        "Published bound: the height of a packing without straight cuts, raised where a bound for this kind is known; "
        "best known: computed for this project, other solvers, up to ten seconds.",
        tuple(jobs),
        1.0,
        _ALL if stages == 2 else _TREES,
    )


def _turned(job: Job, *, can_turn: bool) -> Job:
    items = tuple(
        type(item)(item.wide, item.long, item.count, can_turn=can_turn, value=item.value) for item in job.items
    )
    return job.but(items=items)


def _deep_strips() -> list[Family]:
    return [
        Family(
            "Hopper and Turton C, three stages, pieces may be turned",
            "Published bound: the height of a packing without straight cuts.",
            tuple(job.but(stages=3, trims=True) for job in strip_jobs("strip_hopper_turton_C")),
            1.0,
            _TREES,
        ),
        Family(
            "Hopper T, any number of stages, pieces may be turned",
            f"Made by cutting a sheet of 200 × 200 edge to edge, so 200 is the optimum. {_THREE_WILL_DO}",
            tuple(strip_jobs("strip_guillotine_hopper_T")),
            1.0,
            _TREES,
        ),
        Family(
            "Hifi SCP, any number of stages, as given",
            f"Best known: computed for this project, three stages; the bound is the area. {_THREE_WILL_DO}",
            tuple(strip_jobs("strip_guillotine_hifi_SCP")),
            1.0,
            _TREES,
        ),
    ]


def _sheets() -> list[Family]:
    return [
        Family(
            "Value of one sheet, two stages with trimming",
            "Larger is better. The first cut across or along, as the instance says.",
            tuple(value_jobs("knapsack_guillotine_2stage")),
            0.5,
        ),
        Family(
            "Value of one sheet, any number of stages",
            "Larger is better.",
            tuple(value_jobs("knapsack_guillotine_unlimited")),
            1.0,
        ),
        Family(
            "Fewest sheets, three stages, one kind of piece in a stack",
            "Sheets of one size.",
            tuple(sheet_jobs("csp_guillotine_3stage_homogeneous")),
            1.0,
        ),
        Family(
            "Fewest sheets, three stages with trimming",
            "Sheets of one size, classes 1 to 10, as given and turned.",
            tuple(sheet_jobs("binpacking_guillotine_3stage_classes")),
            0.5,
        ),
        Family(
            "Several sizes of sheet, two stages with trimming",
            "The area of the sheets used.",
            tuple(sheet_jobs("variable_sized_guillotine_2stage_cintra")),
            1.0,
        ),
        Family(
            "Fat quarters and leftovers",
            "Limited numbers of each, the first cut either way; the area of the sheets used, in 1/64 square inch.",
            tuple(sheet_jobs("variable_sized_guillotine_home")),
            2.0,
        ),
    ]


def one_dimension() -> list[Family]:
    """Strips out of strips."""
    return [
        Family(
            "Several lengths of strip, home sewing",
            "Leftovers at half price in limited numbers, yardage without limit; the cost.",
            tuple(length_jobs("csp1d_several_lengths_home")),
            2.0,
        ),
        home_lengths(),
        classical(),
    ]


def home_lengths() -> Family:
    """Invented lists of home size, leftovers among the strips."""
    return Family(
        "One dimension, home size",
        "Invented lists of 12 to 60 pieces, leftovers of several lengths at half price; twice the cost in 1/4 in.",
        tuple(home_lists()),
        1.0,
    )


def classical() -> Family:
    """The published sets of one dimension with one length."""
    return Family(
        "One dimension, one length",
        "Falkenauer, Scholl, Schwerin and Wäscher, Wäscher and Gau, Hard28: the fewest strips.",
        tuple(job for file in CLASSICAL for job in length_jobs(file)),
        1.0,
    )
