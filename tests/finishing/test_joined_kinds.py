"""Different kinds of block: how many of each, and which lies where."""

from __future__ import annotations

from collections import Counter
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.finishing.joined import wanted_counts
from stitchflip.finishing.quilt_model import QuiltPlan
from stitchflip.project.agreements.joined import rows_of_blocks
from stitchflip.project.model import Block
from tests.finishing.quilts import quilt


def laid(
    across: int, down: int, counts: list[int | None], setting: str = "straight", places: list[str] | None = None
) -> QuiltPlan:
    """Blocks of 8 1/2 in several kinds, joined by plain seams."""
    kinds: list[dict[str, Any]] = [
        {"name": f"kind {number}", **({} if count is None else {"count": count})} for number, count in enumerate(counts)
    ]
    own = {} if places is None else {"places": places}
    table = {"across": across, "down": down, "setting": setting, "join": "plain seam", **own}
    return quilt(across, down, "8 1/2", parts={"blocks": kinds, "joined": table})


def rows(made: QuiltPlan) -> list[str]:
    """The kinds row by row, as digits."""
    found: dict[int, str] = {}
    for block in made.blocks:
        found[block.row] = found.get(block.row, "") + str(block.kind)
    return [found[row] for row in sorted(found)]


def test_two_kinds_lie_like_a_checkerboard() -> None:
    """4 x 5: ten of each, no two alike side by side."""
    made = laid(4, 5, [10, 10])
    assert ["0101", "1010", "0101", "1010", "0101"] == rows(made)


def test_kinds_without_counts_share_the_places() -> None:
    """Nine places: five and four."""
    assert ["010", "101", "010"] == rows(laid(3, 3, [None, None]))


def test_one_kind_or_none_is_everywhere() -> None:
    """All alike: index 0."""
    assert ["00", "00"] == rows(laid(2, 2, [None])) == rows(laid(2, 2, []))


def test_on_point_the_rows_between_have_the_other_kind() -> None:
    """3 x 3 and 2 x 2 between: nine and four."""
    assert ["000", "11", "000", "11", "000"] == rows(laid(3, 3, [9, 4], "on point"))


def test_places_are_taken_as_laid() -> None:
    """Numbers count from 1; commas do no harm."""
    assert ["011", "100"] == rows(laid(3, 2, [3, 3], places=["1 2 2", "2, 1, 1"]))


def test_a_kind_that_is_not_there_is_filled_in_turn() -> None:
    """3 is no kind: that place takes the kind of which one is left."""
    assert ["01", "10"] == rows(laid(2, 2, [2, 2], places=["1 3", "2 1"]))


def test_rows_left_out_are_filled_in_turn() -> None:
    """Only the first row is laid; the others go on with what is left."""
    made = laid(2, 3, [3, 3], places=["1 1"])
    assert "00" == rows(made)[0]
    assert {0: 3, 1: 3} == Counter(block.kind for block in made.blocks)


def test_counts_that_no_checkerboard_has_are_kept() -> None:
    """Sixteen places, three of one kind: they are used and no more."""
    made = laid(4, 4, [3, None])
    assert {0: 3, 1: 13} == Counter(block.kind for block in made.blocks)


@pytest.mark.parametrize(
    ("counts", "places", "wanted"),
    [
        ([None, None], 9, (5, 4)),
        ([4, None, None], 9, (4, 3, 2)),
        ([10, 10], 20, (10, 10)),
        ([12, None], 9, (12, 0)),
        ([None], 7, (7,)),
    ],
)
def test_how_many_of_each(counts: list[int | None], places: int, wanted: tuple[int, ...]) -> None:
    """Given counts stand; the rest is shared, earlier kinds one more."""
    blocks = [Block(name=f"kind {number}", count=count) for number, count in enumerate(counts)]
    assert wanted == wanted_counts(blocks, places)


@given(st.integers(1, 6), st.integers(1, 6), st.sampled_from(["straight", "on point"]))
@settings(max_examples=40, deadline=None)
def test_rows_are_those_a_file_is_checked_for(across: int, down: int, setting: str) -> None:
    """The reader of a file and the plan count the same rows and the same blocks."""
    made = laid(across, down, [None, None], setting)
    due = rows_of_blocks({"across": across, "down": down, "setting": setting})
    rows_laid = Counter(block.row for block in made.blocks)

    assert due == [rows_laid[row] for row in sorted(rows_laid)]


@given(st.integers(1, 6), st.integers(1, 6), st.data())
@settings(max_examples=40, deadline=None)
def test_every_count_that_adds_up_is_kept(across: int, down: int, data: st.DataObject) -> None:
    """However the places are split into up to four kinds."""
    left, counts = across * down, []
    for _ in range(3):
        counts.append(data.draw(st.integers(0, left)))
        left -= counts[-1]
    made = laid(across, down, [*counts, left])

    assert [*counts, left] == [sum(block.kind == kind for block in made.blocks) for kind in range(4)]
