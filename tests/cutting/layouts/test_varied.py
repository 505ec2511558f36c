"""Quick searches with chances: whole plans, the shortest where it is plain, the same ones every time."""

from __future__ import annotations

from stitchflip.cutting.layouts.check import check_layouts
from stitchflip.cutting.layouts.model import Answer, LayoutTask, Sheet, Want
from stitchflip.cutting.layouts.stacks.ground import Ground, PiledStrip, ground_of
from stitchflip.cutting.layouts.stacks.record import Record
from stitchflip.cutting.layouts.stacks.varied import Varied
from stitchflip.cutting.layouts.watch import Patience
from stitchflip.cutting.model import Status

LOOKS = 400
LAST_RESORT_S = 60.0
NO_TRIMS = LayoutTask((Want(2, 2, 12), Want(3, 1, 4)), (Sheet(6, None),), stages=3, trims=False)
"""Twelve squares 2 × 2 fill four strips 6 wide, four pieces 3 × 1 fill two: 4 × 2 + 2 × 1 = 10 long, nothing wasted."""


def one_by_one(ground: Ground) -> list[PiledStrip]:
    """The longest plan there is: every piece in a strip of its own."""
    numbers = {lay.want: (number, lay.long) for number, lay in enumerate(ground.lays)}
    return [
        PiledStrip(high=numbers[want][1], stacks=((numbers[want][0],),))
        for want, count in enumerate(ground.counts)
        for _ in range(count)
    ]


def searched(task: LayoutTask, whole: list[PiledStrip], looks: int = LOOKS) -> tuple[Ground, Record]:
    """What a plan of single pieces becomes."""
    ground = ground_of(task)
    record = Record(ground, Patience(looks, LAST_RESORT_S))
    record.offer(one_by_one(ground))
    record.raise_bound(-(-ground.area(ground.counts) // ground.wide))
    Varied(ground, record, whole, [0.0] * len(ground.counts), seed=1).run(0.0)
    return ground, record


def faults(task: LayoutTask, ground: Ground, record: Record) -> tuple[str, ...]:
    """What the checker says about the plan."""
    answer = Answer(Status.BEST_FOUND, (ground.layout(record.strips),), record.value, record.bound)
    return check_layouts(task, answer)


def test_pieces_that_fill_their_strips_are_laid_without_waste() -> None:
    """Single strips are 12 × 2 + 4 × 1 = 28 long; a plan as short as the area, 60 / 6 = 10, is found."""
    ground, record = searched(NO_TRIMS, [])
    assert (10, 10) == (record.value, record.bound)
    assert not faults(NO_TRIMS, ground, record)


def test_kept_strips_and_laid_pieces_make_one_whole_plan() -> None:
    """Two full strips of squares to keep by chance: every piece is still cut once."""
    square = next(number for number, lay in enumerate(ground_of(NO_TRIMS).lays) if lay.want == 0)
    ground, record = searched(NO_TRIMS, [PiledStrip(high=2, stacks=((square,),) * 3)] * 2)
    assert ground.counts == ground.given(record.strips)
    assert record.value == 10
    assert not faults(NO_TRIMS, ground, record)


def test_the_same_task_gives_the_same_plan() -> None:
    """Chances are taken from a seed."""
    task = LayoutTask(
        (Want(5, 3, 4, can_turn=True), Want(4, 7, 3, can_turn=True), Want(2, 9, 5)), (Sheet(17, None),), stages=3
    )
    _, one = searched(task, [], looks=100)
    _, other = searched(task, [], looks=100)
    assert one.strips == other.strips


def test_no_time_changes_nothing() -> None:
    """A search that may not look even once keeps the plan it was given."""
    _, record = searched(NO_TRIMS, [], looks=0)
    assert record.value == 28
