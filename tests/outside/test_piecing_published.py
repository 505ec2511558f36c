"""Published seam, log cabin and courthouse figures against the kernel.

Each value is as printed on the page named beside it (publisher, title, address; read in stored copies). Lists of logs
were recomputed with the rules c + floor(k / 2) f (spiral) and c + 2f(r - 1), c + 2fr (courthouse), f = w - 2s.
"""

from __future__ import annotations

import pytest

from stitchflip.piecing import build_project
from stitchflip.piecing.model import EndClass, SewnPiece
from tests.outside.blocks import cabin, logs, row, show_of, side_of, width_of
from tests.twins.script import area_of
from tests.twins.table import house, project, rounds, square, trim

# --- seams, cut and finished ---------------------------------------------------------------------------------


def test_patch_cut_four_and_a_half_finishes_four() -> None:
    """1/2 added to width and to height.

    Sweet Potato Quilts, Quilt Math: the Quarter-Inch Seam, https://sweetpotatoquiltsblog.com/?p=2317
    """
    (center,) = cabin(4.5, 2.5).pieces[0].visible

    assert pytest.approx(4 * 4) == area_of(center)


def test_nine_patch_of_patches_cut_four_and_a_half_is_twelve_and_a_half() -> None:
    """Three to a row: 3 x 4 1/2 - 4 x 1/4 = 12 1/2 unfinished, 12 finished.

    Sweet Potato Quilts, Quilt Math: the Quarter-Inch Seam, https://sweetpotatoquiltsblog.com/?p=2317
    """
    assert pytest.approx(12.5) == width_of(row(4.5, 4.5, 4.5))


def test_nine_patch_with_the_seam_forgotten_is_an_inch_and_a_half_short() -> None:
    """Patches cut 4: 11 unfinished, 10 1/2 finished (own derivation from the same page)."""
    assert pytest.approx(11) == width_of(row(4, 4, 4))


def test_three_strips_of_one_and_a_half_join_to_three_and_a_half() -> None:
    """Quiltcentric, Testing Your Scant Quarter-Inch Seam, 2012.

    http://www.quiltcentric.com/2012/09/16/testing-your-scant-quarter-inch-seam/
    """
    assert pytest.approx(3.5) == width_of(row(1.5, 1.5, 1.5))


def test_middle_strip_of_three_shows_one_inch() -> None:
    """Quilted Connections, What Is a Scant 1/4 in Seam?.

    https://www.quilted-connections.com/blogs/news/what-is-a-scant-1-4-seam
    """
    assert pytest.approx(1) == show_of(row(1.5, 1.5, 1.5), 1)


def test_scant_seam_gives_back_what_the_fold_takes() -> None:
    """Stitched at 7/32 with 1/16 taken by each fold, a strip shows what a full 1/4 without folds shows.

    The idea: Modern Moon Quilt Studio, How to Test for an Accurate 1/4 in Seam Allowance,
    https://modernmoonquiltstudio.com/how-to-test-for-an-accurate-1-4-seam-allowance/ . The number 1/32 is common
    practice, no source.
    """
    scant = house(seam=7 / 32, fold_loss=1 / 16)

    assert pytest.approx(0.25) == scant.effective_seam


def test_error_in_each_seam_line_adds_up_over_a_row() -> None:
    """1/32 too deep on each allowance, eight patches: 2 x 1/32 x 7 = 7/16 (own derivation)."""
    good, deep = row(*[4.5] * 8), row(*[4.5] * 8, seam=0.25 + 1 / 32)

    assert pytest.approx(7 / 16) == width_of(good) - width_of(deep)


@pytest.mark.parametrize(("count", "size"), [(8, 48), (11, 66)])
def test_squares_cut_six_and_a_half_count_as_six(count: int, size: float) -> None:
    """A top of 48 x 66 takes 8 x 11: the row measures its finished size and two more seams.

    Creative Times / Patternmart, Fabric Cuts Part 3, 2008, http://patternmart.blogspot.com/2008/01/fabric-cuts-part-3.html
    """
    assert pytest.approx(size + 0.5) == width_of(row(*[6.5] * count))


@pytest.mark.parametrize(("count", "size"), [(10, 50), (13, 65)])
def test_squares_cut_six_count_as_five_with_rag_seams(count: int, size: float) -> None:
    """Seams of 1/2: a top of 50 x 65 takes 10 x 13.

    Creative Times / Patternmart, Fabric Cuts Part 3, 2008, http://patternmart.blogspot.com/2008/01/fabric-cuts-part-3.html
    """
    assert pytest.approx(size + 1) == width_of(row(*[6] * count, seam=0.5))


@pytest.mark.parametrize(("seam", "shows"), [(0.25, 2), (0.5, 1.5), (0.625, 1.25)])
def test_other_seams_are_a_setting(seam: float, shows: float) -> None:
    """1/2 and 5/8 for bags and clothes: a strip of 2 1/2 shows w - 2s.

    Modern Moon Quilt Studio, How to Test for an Accurate 1/4 in Seam Allowance,
    https://modernmoonquiltstudio.com/how-to-test-for-an-accurate-1-4-seam-allowance/
    """
    assert pytest.approx(shows) == show_of(row(2.5, 2.5, 2.5, seam=seam), 1)


@pytest.mark.parametrize("width", [2, 2.5])
def test_more_strips_show_an_error_better(width: float) -> None:
    """Four strips of 2 or 2 1/2 show 6 e, three show 4 e.

    Modern Moon Quilt Studio, How to Test for an Accurate 1/4 in Seam Allowance,
    https://modernmoonquiltstudio.com/how-to-test-for-an-accurate-1-4-seam-allowance/
    """
    off = 1 / 32
    shown = [width_of(row(*[width] * count)) - width_of(row(*[width] * count, seam=0.25 + off)) for count in (3, 4)]

    assert pytest.approx([4 * off, 6 * off]) == shown


# --- log cabin -----------------------------------------------------------------------------------------------

SPIRALS = [
    # All People Quilt (American Patchwork & Quilting), Log Cabin Quilt Block Option 1, 11 in finished
    # https://www.allpeoplequilt.com/quilt-patterns/quilt-blocks/log-cabin-quilt-block-option-1
    (
        1.5,
        [1.5] * 5,
        [1.5, 2.5, 2.5, 3.5, 3.5, 4.5, 4.5, 5.5, 5.5, 6.5, 6.5, 7.5, 7.5, 8.5, 8.5, 9.5, 9.5, 10.5, 10.5, 11.5],
        11,
    ),
    # All People Quilt, Log Cabin Quilt Block Option 2, 9 in finished
    # https://www.allpeoplequilt.com/quilt-patterns/quilt-blocks/log-cabin-quilt-block-option-2
    (3.5, [1.5] * 3, [3.5, 4.5, 4.5, 5.5, 5.5, 6.5, 6.5, 7.5, 7.5, 8.5, 8.5, 9.5], 9),
    # All People Quilt, Log Cabin Table Runner, 6 in finished
    # https://www.allpeoplequilt.com/quilt-patterns/table-runners/log-cabin-table-runner
    (2.5, [1.5] * 2, [2.5, 3.5, 3.5, 4.5, 4.5, 5.5, 5.5, 6.5], 6),
    # Quiltingboard tutorials, Turning 2.5 in Scraps into a Log Cabin Block, 10 in finished
    # https://www.quiltingboard.com/tutorials-f10/turning-2-5%94-scraps-into-log-cabin-block-t275789.html
    (2.5, [2.5] * 2, [2.5, 4.5, 4.5, 6.5, 6.5, 8.5, 8.5, 10.5], 10),
]


@pytest.mark.parametrize(("center", "cuts", "lengths", "finished"), SPIRALS)
def test_log_cabin_lists_in_print(center: float, cuts: list[float], lengths: list[float], finished: float) -> None:
    """The published cutting list, log by log, and the block's finished size (raw edges stand 1/2 further)."""
    block = cabin(center, *cuts)

    assert lengths == logs(block)
    assert pytest.approx(finished + 0.5) == side_of(block)


def test_two_sided_log_cabin_in_print() -> None:
    """Square 3 1/2, strips 2, 7 1/2 finished: logs on two sides only.

    Stitchin' Therapy, Log Cabin Block Recipe, 2018, https://stitchintherapy.blogspot.com/2018/03/log-cabin-block-recipe.html
    """
    block = cabin(3.5, 2, 2, 2, way="two-sided log cabin")

    assert [3.5, 5, 5, 6.5, 6.5, 8] == logs(block)
    assert pytest.approx(7.5 + 0.5) == side_of(block)


def test_over_long_logs_in_print() -> None:
    """6 in block, center 2 1/2, strips 1 1/2: after the first, each log is cut 1/2 over exact and trimmed after sewing.

    Clue 10, Log Cabin Block, mystery quilt, http://www.geocities.ws/inspectorsclub2/clue10.html
    """
    block = build_project(
        project(squared_up=trim(80, 80), center=square(2.5), rounds=rounds(1.5, 1.5)),
        house(extra_raw_edges=0.5, round_cuts_to=0.125),
    )

    assert [4, 4, 5, 5, 6, 6, 7] == [strip.cut_length for strip in block.strips[1:]]


def test_three_logs_on_each_side_make_seven_and_a_half() -> None:
    """Center 1 1/2 with three 1 1/2 strips per side; 6 1/2 cannot have three on all four.

    Quiltingboard, Log Cabin Blocks thread,
    https://www.quiltingboard.com/main-f1/printfriendly-log-cabin-blocks-t200383.html?pp=40
    """
    assert pytest.approx(7.5) == side_of(cabin(1.5, 1.5, 1.5, 1.5))


# --- courthouse steps ------------------------------------------------------------------------------------------

STEPS = [
    # All People Quilt, Christmas Cabin Table Runner, 12 in
    # https://www.allpeoplequilt.com/holiday-quilts/christmas/christmas-cabin-table-runner
    (2.5, 1.5, [(2.5, 4.5), (4.5, 6.5), (6.5, 8.5), (8.5, 10.5), (10.5, 12.5)]),
    # Block of the week 23, Courthouse Steps, 2010, 12 in
    # http://roundtheblocks.blogspot.com/2010/11/bow-23-courthouse-steps.html
    (3.5, 2, [(3.5, 6.5), (6.5, 9.5), (9.5, 12.5)]),
    # Sew Quilty, Courthouse Steps, July 2003 block, 10 in, http://www.sewquilty.com/History/0307.html
    (2.5, 2.5, [(2.5, 6.5), (6.5, 10.5)]),
    # Super Scrappy, Courthouse Steps Variation, 2014, 6 in with a four-patch center (2 1/2)
    # http://superscrappy.blogspot.com/2014/05/rsc-sampler-courthouse-steps-variation.html
    (2.5, 1.5, [(2.5, 4.5), (4.5, 6.5)]),
    # All People Quilt, Quilt-As-You-Go Table Mat: sewn through batting and backing, trimmed to 15
    # https://www.allpeoplequilt.com/quilt-patterns/table-runners/quilt-you-go-table-mat
    (3, 2, [(3, 6), (6, 9), (9, 12), (12, 15)]),
]


@pytest.mark.parametrize(("center", "cut", "pairs"), STEPS)
def test_courthouse_lists_in_print(center: float, cut: float, pairs: list[tuple[float, float]]) -> None:
    """First pair and second pair of each round."""
    block = cabin(center, *[cut] * len(pairs), way="courthouse steps")

    assert [length for first, second in pairs for length in (first, first, second, second)] == logs(block)


def test_table_mat_comes_out_at_fifteen() -> None:
    """Four rounds of 2 round a 3 in center: raw edges at 15, the size it is trimmed to.

    All People Quilt, Quilt-As-You-Go Table Mat, https://www.allpeoplequilt.com/quilt-patterns/table-runners/quilt-you-go-table-mat
    """
    assert pytest.approx(15) == side_of(cabin(3, 2, 2, 2, 2, way="courthouse steps"))


# --- strips on a base ------------------------------------------------------------------------------------------


def test_nine_strips_of_a_place_mat() -> None:
    """Nine 2 1/2 x 14: 9 x 2 + 1/2 = 18 1/2, trimmed to 18.

    All People Quilt, Quilt-As-You-Go Place Mat,
    https://www.allpeoplequilt.com/quilt-patterns/table-runners/quilt-you-go-place-mat-pattern
    """
    assert pytest.approx(18.5) == width_of(row(*[2.5] * 9))


def test_sixteen_strips_of_a_runner() -> None:
    """Sixteen 2 1/2 x 12 1/2: 32 1/2 x 12 1/2.

    All People Quilt, Rainbow Table Runner, https://www.allpeoplequilt.com/quilt-patterns/table-runners/rainbow-table-runner
    """
    runner = row(*[2.5] * 16, wide=12.5)

    assert pytest.approx(32.5) == width_of(runner)
    assert {12.5} == {round(strip.full_length, 6) for strip in runner.strips}


def test_fabric_is_trimmed_a_quarter_past_the_next_line() -> None:
    """Every raw edge stands one allowance outside the next seam on that side.

    All People Quilt, Trick to Trimming Fabrics for Foundation Piecing,
    https://www.allpeoplequilt.com/how-to-quilt/piecing/trick-to-trimming-fabrics-foundation-piecing
    """
    strips = cabin(2.5, 1.5, 1.5, 1.5).strips

    assert pytest.approx([0.25] * 8) == [
        before.raw_edge_at - after.seam_at for before, after in zip(strips, strips[4:], strict=False)
    ]


def ends(strip: SewnPiece) -> set[EndClass]:
    """How both ends of a strip's seam are held."""
    assert strip.seam is not None
    return {strip.seam.start.kind, strip.seam.end.kind}


def test_seam_that_stops_inside_the_piece_is_to_be_locked() -> None:
    """Backstitch where a seam stops at the middle line.

    Quilt as You Go Placemats 13 x 19 tutorial, 2009,
    http://thequiltandneedle.blogspot.com/2009/07/flipturn-placemats-tutorial.html
    """
    alone = build_project(
        project(
            squared_up=trim(10, 10),
            center=square(4),
            building={"way": "sides in my order"},
            steps=[{"side": "top", "cut": "2 1/2"}],
        ),
        house(),
    )

    assert {EndClass.LOOSE} == ends(alone.strips[0])


def test_seam_ends_that_later_pieces_cross_need_no_backstitch() -> None:
    """Start and stop on bare batting, because later pieces cross the ends.

    Quilter's Diary, Log Cabin Quilt-as-you-go Block, http://quiltersdiary.com/log-cabin-quilt-as-you-go-block/
    """
    inner = cabin(4, 2, 2, 2).strips[:4]

    assert [{EndClass.CROSSED}] * 4 == [ends(strip) for strip in inner]


def test_seam_ends_at_the_outer_edge_are_held_by_the_binding() -> None:
    """No need where seams cross; an end that stays at the outer edge must be held: here the binding's seam does it.

    In A Stitch, Do You Backstitch?, 2018, https://inastitchquilting.com/2018/03/09/do-you-backstitch/
    """
    mat = build_project(
        project(
            squared_up=trim(10, 10),
            building={"way": "rows of strips"},
            rounds=rounds(2.5, 2.5, 2.5, 2.5),
        ),
        house(),
    )

    assert [{EndClass.CAUGHT}] * 6 == [ends(strip) for strip in mat.strips]
