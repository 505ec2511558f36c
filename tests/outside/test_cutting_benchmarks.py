"""Published cutting instances with a known optimum, through our engine.

Sizes and optima are those of the collections named in `bench/instances/README.md`; each instance there says who
published its sizes and who its value. The optimum typed here stands in the file too; a plan is checked by its
rectangles alone, by code that shares nothing with the engine.

- Value of one sheet, two stages: Hifi, Roucairol 2001; Tschöke, Holthöfer 1995; Cung, Hifi, Le Cun 2000; Fayard, Hifi,
  Zissimopoulos 1998; Oliveira, Ferreira 1990; Wang 1983; values collected from the literature since.
- Value of one sheet, any number of stages: Beasley 1985; values of Borgulya, Central European J. of OR, 2018.
- Fewest sheets, three stages, one kind of piece in a stack: the same sets and Alvarez-Valdes et al. 2002; values of
  Chen et al. 2016 and later.
- Fewest sheets, three stages with trimming: Berkey, Wang, J. of the OR Society 38, 1987; the area meets the value.
- Open sheet: Burke, Kendall, Whitwell, Operations Research 52(4), 2004, and Hopper, Turton, EJOR 128, 2001: heights
  by construction, for packing without straight cuts; where straight cuts reach them they are optimal too.
- One dimension: Falkenauer, J. of Heuristics 2, 1996; Scholl, Klein, Jürgens, Computers & OR 24, 1997; Schwerin,
  Wäscher, Intern. Transactions in OR 4, 1997; Wäscher, Gau, OR Spektrum 18, 1996; values of the solution list of
  Delorme, Iori, Martello, Optimization Letters 12(2), 2018.
- Home sets: invented; optima where two independent models of other solvers agree.
"""

from __future__ import annotations

import pytest

from bench.cutting.families import Family, burke, families
from bench.cutting.jobs import Job
from bench.cutting.judging import judged
from bench.cutting.laid_out import faults
from bench.cutting.ours import ask, laid, task
from stitchflip.cutting.layouts.check import check_layouts
from stitchflip.cutting.layouts.solving import solve
from stitchflip.cutting.layouts.watch import Watch
from stitchflip.cutting.model import Status

LONG_ENOUGH = 30.0
"""Seconds; each is proved in a fraction of one, and the search ends with the proof."""
HARDLY_ANY = 0.05
"""Seconds; nearly every search is cut off."""
FAMILIES = {family.title: family for family in families()}
LIST = {job.name: job for family in families() if "Burke" not in family.title for job in family.jobs}
BURKE = {
    f"{job.name}_{stages}_{'turned' if can_turn else 'given'}": job
    for stages in (2, 3)
    for can_turn in (True, False)
    for job in burke(stages, can_turn=can_turn).jobs
}

VALUE_TWO_STAGES = {
    "hifi1997a_A1_H": 1820,
    "cung2000_CHL2_H": 2235,
    "fayard1998_CW1_H": 6402,
    "oliveira1990_OF1_H": 2713,
    "wang1983_W_H": 2623,
    "fayard1998_CU2_H": 26100,
    "hifi1997a_A1_V": 1820,
    "tschoke1995_STS2_V": 4620,
}
VALUE_ANY_STAGES = {"ngcut5": 358, "ngcut7": 430, "ngcut10": 1452}
FEWEST_SHEETS = {
    "cung2000_CHL2_3HVO": 3,
    "cung2000_CHL7_3HVO": 6,
    "cung2000_Hchl2_3HVO": 6,
    "alvarez2002_ATP31_3HVO": 14,
    "alvarez2002_ATP34_3HVO": 6,
    "class01_20_2": 5,
    "class02_40_2_rot": 2,
}
FEWEST_STRIPS = {
    "falkenauer_u250_01": 100,
    "falkenauer_u250_02": 102,
    "falkenauer_t60_08": 20,
    "scholl_N1C1W1_A": 25,
    "scholl_N4C1W4_R": 370,
    "scholl_N2W3B3R7": 13,
    "schwerin1_BPP5": 18,
    "schwerin2_BPP5": 22,
    "waescher_TEST0049": 11,
    "waescher_TEST0055": 15,
}
HOME = {"Q2_squares_2stage": 740, "Q9_directional_2stage": 924, "Q10_crib_2stage": 1030}


def _proved(job: Job, optimum: int) -> None:
    asked = task(job)
    answer = solve(asked, Watch(LONG_ENOUGH))
    assert (Status.PROVED, optimum, optimum) == (answer.status, answer.value, answer.bound)
    assert () == check_layouts(asked, answer)
    assert [] == faults(job, laid(job, answer), answer.value)


@pytest.mark.parametrize("name", [*VALUE_TWO_STAGES, *FEWEST_SHEETS, *HOME])
def test_a_known_optimum_is_reached_and_proved(name: str) -> None:
    """Plan and bound are the published value, and the plan can be cut."""
    optimum = {**VALUE_TWO_STAGES, **FEWEST_SHEETS, **HOME}[name]
    assert optimum == LIST[name].known.optimum
    _proved(LIST[name], optimum)


@pytest.mark.parametrize("name", VALUE_ANY_STAGES)
def test_three_stages_give_the_value_of_any_number(name: str) -> None:
    """The search of three stages ends at the published value of any number of stages; the bound must allow it."""
    job, optimum = LIST[name], VALUE_ANY_STAGES[name]
    assert optimum == job.known.optimum
    reply = judged(job, {"ours": ask(job, LONG_ENOUGH)})["ours"]
    assert (optimum, ()) == (reply.value, reply.faults)


@pytest.mark.parametrize("name", FEWEST_STRIPS)
def test_a_known_number_of_strips_is_reached_and_proved(name: str) -> None:
    """One dimension: packing and bound are the published number, and the lengths fit their strips."""
    job = LIST[name]
    optimum = FEWEST_STRIPS[name]
    assert optimum == job.known.optimum
    reply = judged(job, {"ours": ask(job, LONG_ENOUGH)})["ours"]
    assert (True, optimum, optimum, ()) == (reply.proved, reply.value, reply.bound, reply.faults)


@pytest.mark.parametrize(("name", "cost"), [("M1_leftovers", 18068), ("M2_leftovers_odd", 17423)])
def test_leftovers_of_several_lengths_at_the_cost_two_solvers_proved(name: str, cost: int) -> None:
    """An arc-flow model, solved to the end by two other solvers; computed for this project, not published."""
    job = LIST[name]
    assert cost == job.known.optimum
    reply = judged(job, {"ours": ask(job, LONG_ENOUGH)})["ours"]
    assert (True, cost, ()) == (reply.proved, reply.value, reply.faults)


@pytest.mark.parametrize(
    ("name", "height"), [("hopper_turton_C1_1", 20), ("hopper_turton_C1_3", 20), ("hopper_turton_C3_3", 30)]
)
def test_a_height_by_construction_is_reached_with_straight_cuts(name: str, height: int) -> None:
    """The pieces were cut out of a rectangle so high; three stages put them back into it."""
    assert height == LIST[name].known.limit
    _proved(LIST[name], height)


@pytest.mark.parametrize("name", ["burke_N1_3_turned", "burke_N1_3_given"])
def test_burke_n1_fits_its_rectangle_with_straight_cuts(name: str) -> None:
    """Ten pieces cut out of 40 × 40 go back with three stages."""
    assert 40 == BURKE[name].known.optimum
    _proved(BURKE[name], 40)


@pytest.mark.parametrize(
    ("name", "length"),
    [("burke_N1_2_turned", 46), ("burke_N2_2_turned", 55), ("burke_N1_2_given", 46), ("burke_N2_2_given", 61)],
)
def test_two_stages_cost_what_other_solvers_found(name: str, length: int) -> None:
    """Bounds and plans of two other solvers meet there; computed for this project, not published."""
    assert length == BURKE[name].known.optimum
    _proved(BURKE[name], length)


@pytest.mark.parametrize("title", FAMILIES)
def test_a_search_cut_off_at_once_never_claims_what_is_not_so(title: str) -> None:
    """A few instances of every family in hardly any time: no bound passes a published value, every plan can be cut."""
    family: Family = FAMILIES[title]
    for job in family.jobs[:: max(1, len(family.jobs) // 3)]:
        reply = judged(job, {"ours": ask(job, HARDLY_ANY)})["ours"]
        assert () == reply.faults, job.name
        assert reply.bound is not None, job.name
