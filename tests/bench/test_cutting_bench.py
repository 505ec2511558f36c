"""The judge of the cutting comparison must catch what it is there for."""

from __future__ import annotations

import pytest

from bench.cutting.families import families
from bench.cutting.jobs import CutSheet, Item, Job, Known, Placed, Reply, Stock
from bench.cutting.judging import judged
from bench.cutting.laid_out import faults, tallest_strip
from bench.cutting.standing import OURS, Row
from bench.peers.protocol import answered, heard, told, understood

PINWHEEL: tuple[Placed, ...] = (
    (0, 0, 0, False),
    (1, 2, 0, False),
    (0, 1, 2, False),
    (1, 0, 1, False),
    (2, 1, 1, False),
)
"""Four strips of 2 × 1 round a square of 1: no straight cut goes through."""


def _job(*items: Item, wide: int = 3, long: int | None = None, **fields: object) -> Job:
    job = Job("a job", "length", (Stock(wide, long, 1, 0),), items, Known())
    return job.but(**fields)


def _flat(wide: int, long: int, count: int = 1, *, can_turn: bool = False, value: int = 0) -> Item:
    return Item(wide, long, count, can_turn, value)


def _sheets(*placed: Placed) -> tuple[CutSheet, ...]:
    return (CutSheet(0, 1, placed),)


SIDE_BY_SIDE = _job(_flat(1, 2), _flat(2, 1))
PLAN = _sheets((0, 0, 0, False), (1, 1, 0, False))


def test_a_right_plan_has_no_faults() -> None:
    """Two pieces side by side in one strip, the lower one trimmed."""
    assert [] == faults(SIDE_BY_SIDE, PLAN, 2)


def test_a_pinwheel_is_not_cut_edge_to_edge() -> None:
    """Nothing overlaps and all pieces are there, but no number of straight cuts takes it apart."""
    job = _job(_flat(2, 1, 2), _flat(1, 2, 2), _flat(1, 1), stages=0)
    assert ["sheet 0: not cut edge to edge in the stages asked for"] == faults(job, _sheets(*PINWHEEL), 3)


@pytest.mark.parametrize(
    ("placed", "said"),
    [
        (((0, 0, 0, False), (1, 0, 0, False)), "not cut edge to edge"),
        (((0, 0, 0, False), (1, 2, 0, False)), "lies outside"),
        (((0, -1, 0, False), (1, 1, 0, False)), "lies outside"),
        (((0, 0, 0, False),), "item 1 made 0 times"),
        (((0, 0, 0, False), (1, 1, 0, False), (1, 1, 1, False)), "item 1 made 2 times"),
        (((0, 0, 0, True), (1, 0, 1, False)), "item 0 is turned"),
    ],
    ids=["overlap", "too far right", "too far left", "missing", "twice", "turned"],
)
def test_a_tampered_plan_is_caught(placed: tuple[Placed, ...], said: str) -> None:
    """Each fault is named."""
    assert any(said in fault for fault in faults(SIDE_BY_SIDE, _sheets(*placed), 2))


def test_a_plan_that_claims_too_little_is_caught() -> None:
    """Length 2 told as 1."""
    assert ["claims 1, is worth 2"] == faults(SIDE_BY_SIDE, PLAN, 1)


def test_a_plan_of_value_that_claims_too_much_is_caught() -> None:
    """One piece of value 5 told as 6; leaving the other out is allowed."""
    job = _job(_flat(1, 2, value=5), _flat(2, 1, value=3), long=2, aim="value")
    placed = _sheets((0, 0, 0, False))
    assert [] == faults(job, placed, 5)
    assert ["claims 6, is worth 5"] == faults(job, placed, 6)


def test_more_sheets_than_there_are_is_caught() -> None:
    """Two of one."""
    job = _job(_flat(1, 2, 2), long=2, aim="cost")
    assert "2 sheets of kind 0, there are 1" in faults(job, (CutSheet(0, 2, ((0, 0, 0, False),)),), 0)


def test_two_stages_without_trimming_fill_the_strip() -> None:
    """The piece 1 high beside one 2 high needs a cut more."""
    assert [] != faults(SIDE_BY_SIDE.but(trims=False), PLAN, 2)


def test_three_stages_without_trimming_fill_the_stack() -> None:
    """A piece 1 wide over one 2 wide: with trimming right, without not; side by side there is no such stack."""
    job = _job(_flat(1, 1), _flat(2, 1), _flat(1, 2), stages=3)
    placed = _sheets((0, 0, 0, False), (1, 0, 1, False), (2, 2, 0, False))
    assert [] == faults(job, placed, 2)
    assert [] != faults(job.but(trims=False), placed, 2)
    assert [] != faults(job.but(same_stack=True), placed, 2)


def test_first_cuts_along_are_looked_at_from_the_side() -> None:
    """Two pieces over one another, then one beside both: two stages along, three across."""
    job = _job(_flat(1, 1, 2), _flat(1, 2), wide=2, long=2, aim="cost")
    placed = _sheets((0, 0, 0, False), (0, 0, 1, False), (1, 1, 0, False))
    for first_cut, is_right in (("across", False), ("along", True), ("either", True)):
        assert is_right == (not faults(job.but(first_cut=first_cut), placed, 0))


def test_the_tallest_strip_is_found() -> None:
    """Strips of 2 and of 1."""
    job = _job(_flat(1, 2), _flat(2, 1))
    assert 2 == tallest_strip(job, _sheets((0, 0, 0, False), (1, 0, 2, False)))


def _fault(reply: Reply, known: Known = Known(), **others: Reply) -> tuple[str, ...]:  # noqa: B008  a frozen value
    return judged(SIDE_BY_SIDE.but(known=known), {OURS: reply, **others})[OURS].faults


def test_a_bound_above_a_known_plan_is_false() -> None:
    """Somebody has 2; no bound may say 3."""
    assert ("FALSE BOUND 3: a known plan is worth 2",) == _fault(Reply(bound=3), Known(reached=2))


def test_a_bound_above_the_plan_of_a_peer_is_false() -> None:
    """A checked plan of anybody counts."""
    assert ("FALSE BOUND 3: other is worth 2",) == _fault(Reply(bound=3), other=Reply(2, sheets=PLAN))


def test_a_wrong_plan_of_a_peer_proves_nothing() -> None:
    """A peer that claims 1 with a plan of 2 does not make our bound false."""
    assert () == _fault(Reply(bound=2), other=Reply(1, sheets=PLAN))


@pytest.mark.parametrize(
    "reply",
    [Reply(2, 1, proved=True, sheets=PLAN), Reply(2, 3, sheets=PLAN), Reply(bound=2, proved=True)],
    ids=["proved with a gap", "bound above the own plan", "proved without a plan"],
)
def test_a_proof_that_is_none_is_caught(reply: Reply) -> None:
    """A reply must agree with itself."""
    assert _fault(reply)


def test_a_plan_below_a_known_bound_is_noticed() -> None:
    """Either the plan or what is known is wrong."""
    assert ("plan 2 passes the known bound 3: one of them is wrong",) == _fault(Reply(2, sheets=PLAN), Known(limit=3))


def test_a_deeper_plan_is_told_apart_and_gives_no_lead() -> None:
    """Three stages where two are asked for: no fault, but it neither beats ours nor makes our bound false."""
    job = _job(_flat(1, 1, 2), _flat(1, 2), wide=2)
    deeper = Reply(2, sheets=_sheets((0, 0, 0, False), (0, 0, 1, False), (1, 1, 0, False)))
    ours = Reply(3, 3, proved=True, sheets=_sheets((0, 0, 0, False), (0, 1, 0, False), (1, 0, 1, False)))
    row = Row(job, judged(job, {OURS: ours, "other": deeper}))
    assert row.replies["other"].is_deeper
    assert ((), "deeper") == (row.ours.faults, row.against("other"))


def test_a_job_and_a_reply_survive_the_line_they_travel_on() -> None:
    """What a peer hears is what was asked, without what others know; what it answers is what is understood."""
    job = SIDE_BY_SIDE.but(known=Known(2, 2))
    assert (job.but(known=Known()), 1.5) == heard(told(job, 1.5))
    reply = Reply(2, 2, proved=True, seconds=0.5, sheets=PLAN, note="a note")
    assert reply == understood(answered(reply))


def test_every_instance_is_measured() -> None:
    """476 instances; the 13 of one set stand four times, and 24 lists are invented by the family itself."""
    assert 476 + 3 * 13 + 24 == sum(len(family.jobs) for family in families())
