"""Blocks that came out unequal: trimmed, framed, dealt out to columns and rows, and what each way costs."""

from __future__ import annotations

from itertools import permutations
from math import prod

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.errors import BuildError
from stitchflip.finishing.joined import dealt, share
from tests.finishing.quilts import planned, quilt, strips
from tests.finishing.scenarios import inches

SWAP = [["12 1/2", "12 1/4", "12 1/2"], ["12 1/2"] * 3, ["12 3/4", "12 1/2", "12 1/2"], ["12 1/2"] * 3]
"""Twelve swap blocks, meant to be 12 1/2, from 12 1/4 to 12 3/4."""
SHEDS = [["13", "12 7/8", "13", "13 1/8"]] * 5


def plain(sentence: str) -> str:
    """Without narrow spaces."""
    return sentence.replace("\u202f", " ").replace("\u2009", " ")


def test_trimmed_to_the_smallest() -> None:
    """Sheds from 12 7/8 to 13 1/8: all 12 7/8, 51 7/8 x 64 7/8."""
    made = quilt(4, 5, measured=SHEDS)

    assert ((12.875, 12.875), 51.875, 64.875) == (made.trimmed_to, made.wide, made.high)
    assert {12.875} == {strip.long for strip in strips(made, "flat strip between blocks")}
    assert {(12.875, 12.875)} == {(block.wide, block.high) for block in made.blocks}


def test_swap_blocks_trimmed_lose_three_quarters_by_one_inch() -> None:
    """3 x 4 blocks of 12 1/4 in place of 12 1/2: 3/4 less across, 1 less down."""
    trimmed, wished = quilt(3, 4, "12 1/2", measured=SWAP), quilt(3, 4, "12 1/2")

    assert (0.75, 1.0) == (wished.wide - trimmed.wide, wished.high - trimmed.high)


def test_blocks_measured_alike_are_joined_as_measured() -> None:
    """Meant 13, all 12 7/8: nothing is trimmed and there is nothing to mend."""
    made = quilt(4, 5, measured=[["12 7/8"] * 4] * 5)

    assert (None, (), 51.875) == (made.trimmed_to, made.repairs, made.wide)


def test_width_and_length_are_trimmed_each_by_itself() -> None:
    """One block narrow, another low: all to 12 3/4 x 12 7/8."""
    made = quilt(2, 1, measured=[[["12 3/4", "13"], ["13", "12 7/8"]]])
    assert (12.75, 12.875) == made.trimmed_to


def test_a_quilt_that_lies_across_reads_wide_and_long_its_own_way() -> None:
    """Drawn lying, wide runs up the picture: 12 3/4 wide is 12 3/4 high."""
    joined = {"across": 2, "down": 1, "measured": [[["12 3/4", "13"], ["13", "13"]]]}
    laid = inches({"wide": "13", "long": "13", "length_runs": "across"}, joined=joined)

    assert (13, 12.75) == planned(laid).trimmed_to


def test_small_blocks_are_framed() -> None:
    """One swap block 1/4 small: 1/8 a side would be a sliver, so it is trimmed to 11 1/2 and framed to show 1/2.

    Strips are cut 1 (1/2 and two seams): two of 11 1/2 at the sides, then two of 12 1/2.
    """
    made = quilt(3, 4, "12 1/2", measured=SWAP, unequal="frame the small ones")
    wished = quilt(3, 4, "12 1/2")

    assert (wished.wide, wished.high, None) == (made.wide, made.high, made.trimmed_to)
    assert [("frame, sides", 1, 11.5, 2), ("frame, top and bottom", 1, 12.5, 2)] == [
        (one.name, one.cut, one.long, one.count) for one in strips(made, "frame")
    ]


def test_the_frame_shows_half_an_inch_all_round() -> None:
    """A corner block of 2 x 2, framed: the sides show 1/2 inside the seam line and more under the binding."""
    measured = [["12 1/4", "12 1/2"], ["12 1/2", "12 1/2"]]
    made = quilt(2, 2, "12 1/2", join="plain seam", measured=measured, unequal="frame the small ones")
    sides, ends = strips(made, "frame, sides")[0].front, strips(made, "frame, top")[0].front
    widths = sorted(max(x for x, _ in one) - min(x for x, _ in one) for one in sides)
    heights = sorted(max(y for _, y in one) - min(y for _, y in one) for one in ends)

    assert [0.5, 0.75] == widths == heights


def test_a_block_small_one_way_gets_strips_on_two_sides() -> None:
    """1 in narrow: 1/2 a side shows, cut 1; nothing above and below."""
    made = quilt(2, 1, "12", measured=[[["11", "12"], "12"]], unequal="frame the small ones")
    assert [("frame, sides", 1.0, 12.0, 2)] == [
        (one.name, one.cut, one.long, one.count) for one in strips(made, "frame")
    ]


def test_when_all_are_small_the_largest_is_the_measure() -> None:
    """Meant 13, from 12 1/2 to 12 3/4: framed to 12 3/4."""
    made = quilt(2, 1, measured=[["12 1/2", "12 3/4"]], unequal="frame the small ones")
    assert {(12.75, 12.75)} == {(one.wide, one.high) for one in made.blocks}


def test_when_none_is_small_nothing_is_framed() -> None:
    """Meant 13, from 13 1/8 to 13 1/4: nothing to add, so all are trimmed to 13 1/8."""
    made = quilt(2, 1, measured=[["13 1/8", "13 1/4"]], unequal="frame the small ones")
    assert (13.125, 13.125) == made.trimmed_to
    assert [] == strips(made, "frame")


def test_like_sizes_share_a_column() -> None:
    """Two narrow and two wide blocks: nothing is trimmed when each kind has its own column."""
    narrow, wide = ["12 1/2", "13"], ["13", "13"]
    made = quilt(2, 2, measured=[[narrow, wide], [wide, narrow]], unequal="like sizes share a column")

    assert [13, 12.5, 13, 12.5] == [one.wide for one in made.blocks]
    assert (12.5 + 12 + 0.625 + 0.5, 12.5 * 2 + 0.625 + 0.5) == (made.wide, made.high)
    assert {13.0} == {one.long for one in strips(made, "flat strip between blocks")}


def test_short_strips_follow_the_rows_they_lie_in() -> None:
    """Rows 13 and 12 high: a short strip of each length."""
    low, high = ["13", "12"], ["13", "13"]
    made = quilt(2, 2, measured=[[low, high], [high, low]], unequal="like sizes share a column")

    assert [(13, 1), (12, 1)] == [(one.long, one.count) for one in strips(made, "flat strip between blocks")]


def test_a_kind_goes_where_its_block_goes() -> None:
    """The first kind is the narrow block, which moves to the second column."""
    narrow, wide = ["12", "13"], ["13", "13"]
    kinds = {"blocks": [{"name": "lit"}, {"name": "dark"}]}
    made = quilt(2, 1, measured=[[narrow, wide]], unequal="like sizes share a column", places=["1 2"], parts=kinds)
    assert [(1, 13), (0, 12)] == [(one.kind, one.wide) for one in made.blocks]


def test_repairs_say_what_each_way_gives() -> None:
    """Trimmed: 3 x 11 3/4 + 2 x 5/8 + 1/2 = 37, 4 x 11 3/4 + 3 x 5/8 + 1/2 = 49 3/8; framed 3/4 x 1 more."""
    made = quilt(3, 4, "12 1/2", measured=SWAP)
    said = [plain(sentence) for sentence in made.repairs]

    assert "Trim all blocks to 12¼ × 12¼ in: the whole is 37 × 49⅜ in." == said[0]
    assert any(one.startswith("Frame the small block:") and one.endswith("37¾ × 50⅜ in.") for one in said)
    assert any(one.startswith("Let like sizes share a column") for one in said)
    assert said[-1].startswith("Make 1 block anew")
    framed = quilt(3, 4, "12 1/2", measured=SWAP, unequal="frame the small ones")
    assert framed.repairs[0].startswith("Frame")


def test_on_point_blocks_are_trimmed_to_one_square() -> None:
    """Rows of 2, 1 and 2; the smallest side of all is 8 1/4."""
    measured = [["8 1/2", ["8 1/2", "8 1/4"]], ["8 1/2"], ["8 5/8", "8 1/2"]]
    made = quilt(2, 2, "8 1/2", setting="on point", join="plain seam", measured=measured)
    assert {(8.25, 8.25)} == {(one.wide, one.high) for one in made.blocks}
    assert (8.25, 8.25) == made.trimmed_to


def test_on_point_no_columns_are_shared() -> None:
    """Diagonal rows have no columns."""
    with pytest.raises(BuildError, match="cannot share a column") as caught:
        quilt(1, 2, "8", setting="on point", join="plain seam", measured=[["8"], ["7 1/2"]], unequal="like sizes share")
    assert "trim all" in caught.value.fix


@pytest.mark.parametrize("measured", [[["13"] * 3] * 5, [["13"] * 4] * 4, [["13"] * 4] * 4 + [["13"] * 3]])
def test_a_table_of_another_shape_is_refused(measured: list[list[str]]) -> None:
    """4 x 5 blocks are measured in five rows of four."""
    with pytest.raises(BuildError, match="rows of 4") as caught:
        quilt(4, 5, measured=measured)
    assert ("joined.measured", "build.measured-blocks") == (caught.value.where, caught.value.code)


def test_a_measured_block_smaller_than_its_seams_is_refused() -> None:
    """A slip of the tape."""
    with pytest.raises(BuildError, match="used up by its two seams"):
        quilt(2, 1, measured=[["13", "1/2"]])


# --- dealing out ---------------------------------------------------------------------------------------------

SIDES = st.sampled_from([12.0, 12.125, 12.25, 12.5])
BLOCKS = st.tuples(SIDES, SIDES)


def most_kept(blocks: list[tuple[float, float]], across: int, down: int) -> float:
    """The largest (sum of column widths) x (sum of row heights) over all orders of the blocks, by trying them all."""
    best = 0.0
    for order in permutations(blocks):
        columns = sum(min(order[row * across + column][0] for row in range(down)) for column in range(across))
        rows = sum(min(order[row * across + column][1] for column in range(across)) for row in range(down))
        best = max(best, columns * rows)
    return best


@given(st.data(), st.sampled_from([(2, 2), (3, 2), (2, 3), (4, 1), (1, 5), (5, 1)]))
@settings(max_examples=60, deadline=None)
def test_dealing_out_keeps_the_most_there_is(data: st.DataObject, shape: tuple[int, int]) -> None:
    """Against every order of up to six blocks."""
    across, down = shape
    blocks = data.draw(st.lists(BLOCKS, min_size=prod(shape), max_size=prod(shape)))
    found = share(blocks, across, down)

    assert found.is_proved
    assert pytest.approx(most_kept(blocks, across, down)) == found.kept


@given(st.data(), st.integers(1, 6), st.integers(1, 6))
@settings(max_examples=60, deadline=None)
def test_every_block_fits_its_place_and_has_one(data: st.DataObject, across: int, down: int) -> None:
    """Larger quilts: nothing is larger than its block, every block is used once, never worse than trimming all."""
    blocks = data.draw(st.lists(BLOCKS, min_size=across * down, max_size=across * down))
    found = share(blocks, across, down)

    assert sorted(found.cells) == list(range(across * down))
    for place, block in enumerate(found.cells):
        assert blocks[block][0] >= found.columns[place % across]
        assert blocks[block][1] >= found.rows[place // across]
    least = min(wide for wide, _ in blocks) * across * min(high for _, high in blocks) * down
    assert found.kept >= least - 1e-6


@given(st.data(), st.sampled_from([(2, 2), (3, 2), (2, 3)]))
@settings(max_examples=80, deadline=None)
def test_the_quick_answer_is_the_slow_one(data: st.DataObject, shape: tuple[int, int]) -> None:
    """Blocks can be dealt to places of given sizes exactly when some order of them fits."""
    across, down = shape
    blocks = data.draw(st.lists(BLOCKS, min_size=across * down, max_size=across * down))
    columns = sorted(data.draw(st.lists(SIDES, min_size=across, max_size=across)), reverse=True)
    rows = data.draw(st.lists(SIDES, min_size=down, max_size=down))
    fits = any(
        all(
            order[place][0] >= columns[place % across] and order[place][1] >= rows[place // across]
            for place in range(across * down)
        )
        for order in permutations(blocks)
    )

    assert fits == (dealt(blocks, columns, rows) is not None)


def test_sorting_by_width_alone_is_not_enough() -> None:
    """Two wide and low, two narrow and high: a column each would make both rows low.

    By columns 9 + 8 wide and 8 + 8 high: 17 x 16 = 272; by rows 8 + 8 wide and 9 + 8 high is the same; both at once
    cannot be.
    """
    found = share([(9, 8), (9, 8), (8, 9), (8, 9)], 2, 2)
    assert 272 == found.kept


def test_many_different_blocks_still_get_an_answer() -> None:
    """A hundred blocks of a hundred sizes: the search stops in time and says that it did."""
    blocks = [(12 + (7 * index % 100) / 200, 12 + (13 * index % 100) / 200) for index in range(100)]
    found = share(blocks, 10, 10)

    assert not found.is_proved
    assert sorted(found.cells) == list(range(100))
