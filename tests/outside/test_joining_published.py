"""Published joins of quilted blocks, settings, borders and layouts against ours.

Sources are named beside each check by title, publisher and address, as read in stored copies. Recipes for the two
joining strips disagree in print; here each is taken through the same section: what shows, how far apart the raw
edges stand, and by how much the cover passes the far stitching. Where a page has a slip, the test shows both values.
"""

from __future__ import annotations

from math import sqrt

import pytest

from stitchflip.finishing.joined import (
    block_count,
    border_adds,
    covered_cut,
    folded_cut_that_passes,
    lengthwise_need,
    mitered_length,
    passes_by,
    raw_edges_apart,
    room_between,
    row_length,
    sashing_for,
    shows_between,
    spacer_cut,
    usual_additions,
    usual_flat_cut,
    usual_squares,
)
from stitchflip.finishing.quilt_model import SettingTriangles
from stitchflip.lengths import Rounding, Unit, round_to
from stitchflip.planning import plan
from stitchflip.project import project_from
from stitchflip.project.model import Filler, Setting
from tests.finishing.quilts import quilt, strips

SEAM = 0.25
YARD = 36


def plain(sentence: str) -> str:
    """Without narrow spaces."""
    return sentence.replace("\u202f", " ")


# --- strips between quilted blocks ---------------------------------------------------------------------------


def test_handout_with_one_and_an_eighth_and_one_and_three_quarters() -> None:
    """Narrow strip 1 1/8, other strip 1 3/4 folded, 1/4 seams: both faces show 5/8.

    The fold then only meets the far stitching, and the raw edges stand 1/8 apart, room for the turn of the fabric.

    Joining blocks to finish the quilt (handout), https://docest.com/doc/613417/joining-blocks-to-finish-the-quilt
    """
    assert 0.625 == shows_between(1.125, SEAM) == 1.75 / 2 - SEAM
    assert 0.125 == raw_edges_apart(1.125, SEAM)
    assert 0 == passes_by(1.75, 1.125, SEAM)


def test_a_gap_wants_a_wider_seam_and_an_overlap_a_narrower_one() -> None:
    """The same handout: the two allowances should meet; at 9/32 they do, at 5/16 they overlap by 1/8."""
    assert 0 == raw_edges_apart(1.125, 9 / 32)
    assert -0.125 == raw_edges_apart(1.125, 5 / 16)


def test_the_folded_strip_may_lie_in_front_or_behind() -> None:
    """In front in the handout, behind on the other pages; we do both, and behind unless told.

    Attaching the quilt-as-you-go blocks together (2011),
    https://keyka.typepad.com/my_weblog/2011/01/attaching-the-quilt-as-you-go-blocks-together.html
    and QAYG joining (Feb 2008), http://welshquilter.blogspot.com/2008/02
    """
    behind, in_front = quilt(2, 1), quilt(2, 1, fold="in front")
    assert ["flat strip between blocks"] == [strip.name for strip in behind.strips if strip.front]
    assert ["folded strip between blocks"] == [strip.name for strip in in_front.strips if strip.front]


def test_one_inch_with_one_and_three_quarters_passes_by_an_eighth() -> None:
    """Front strip 1, back strip 1 3/4 folded: shows 1/2, raw edges meet, 7/8 - 1/4 - 1/2 = 1/8 (same page of 2011)."""
    assert (0.5, 0, 0.125) == (shows_between(1, SEAM), raw_edges_apart(1, SEAM), passes_by(1.75, 1, SEAM))
    assert 1.75 == folded_cut_that_passes(0.125, 1, SEAM, Unit.INCH)


def test_one_inch_with_two_and_a_half_passes_by_half_an_inch() -> None:
    """1 1/4 - 1/4 - 1/2.

    What a day (2014), https://www.sewsewart.com/2014/02/what-day.html
    """
    assert 0.5 == passes_by(2.5, 1, SEAM)


def test_one_and_an_eighth_with_two_is_our_usual_pair() -> None:
    """Front strip 1 1/8 and back strip 2 folded to 1, all seams 1/4: passes by 1/8 where 1 3/4 would only meet.

    How to make and attach leading strips, http://quiltsbyjen.ca/how-to-make-and-attach-letting/
    and part 2, https://quiltsbyjen.ca/how-to-make-and-attach-letting-part-2
    """
    made = quilt(4, 5)
    assert (1.125, 2.0) == (strips(made, "flat")[0].cut, strips(made, "folded")[0].cut)
    assert 1.125 == usual_flat_cut(SEAM, Unit.INCH)
    assert 0.125 == passes_by(2, 1.125, SEAM) == made.join.passes


@pytest.mark.parametrize(("flat", "gap", "filler"), [("1", 0, 0), ("1 1/8", 0.125, 0), ("1 1/4", 0.25, 0.25)])
def test_gaps_of_the_recipes_in_print(flat: str, gap: float, filler: float) -> None:
    """1 meets, 1 1/8 leaves 1/8 for the loft, 1 1/4 leaves 1/4 and wants a filler (pages named above)."""
    join = quilt(2, 2, flat_cut=flat).join
    assert (gap, filler) == (join.gap, join.filler)


def test_covered_strips_are_the_sashing_and_three_quarters() -> None:
    """A 2 in sashing starts with strips of 2 3/4, front and back; the filler fits the space between the seams.

    Between raw edges it is 1 1/2 wide; flush with the seams, as the page lays it over the allowances, 2.

    QAYG: Joining Blocks with Sashing, Quilted Diary, https://www.quilted-diary.com/qayg-with-sashing
    """
    assert 2.75 == covered_cut(2, SEAM)
    assert 1.5 == room_between(2, SEAM, Filler.RAW_EDGE)
    assert 2 == room_between(2, SEAM, Filler.SEAM)
    made = quilt(2, 2, join="covered strips", shows="2")
    assert {2.75} == {strip.cut for strip in made.strips}
    assert 1.5 == made.join.filler


def test_a_plain_seam_has_the_batting_a_quarter_inch_smaller() -> None:
    """Batting cut 1/4 smaller than the fabric and folded back while the tops are seamed.

    Quilt as you go, newsletter digest (2006), http://www.ivillage.com/forums/node/12798440
    """
    words = plain(" ".join(quilt(2, 2, join="plain seam", parts={"base": {"through": "batting only"}}).words))
    assert "Trim the batting out of every seam allowance, ¼ in back from the raw edge" in words


def test_the_plain_front_seam_is_stitched_in_the_ditch() -> None:
    """Of the three families named, added strips and the plain front seam are ours, the second stitched in the ditch.

    How to join quilt blocks as you go, https://flowerdogandco.com/join-quilt-blocks-go/
    """
    words = " ".join(quilt(2, 2, join="plain seam", parts={"base": {"through": "batting only"}}).words)
    assert "stitch in the ditch between the blocks" in words


def test_strips_are_cut_to_the_measured_block() -> None:
    """The upper strip grew nearly 1/2 in over 12 1/2 in, 4 %: cut it to the block, sew every second the other way.

    Question Thursday (2012), https://freemotionquilting.blogspot.com/2012/03/question-thursday-9.html
    """
    made = quilt(3, 3, "12 1/2", measured=[["12 3/8"] * 3] * 3)
    assert {12.375} == {strip.long for strip in strips(made, "flat strip between blocks")}
    assert any("as measured" in words and "every second strip" in words for words in made.words)


# --- blocks of different size -----------------------------------------------------------------------------------


def test_swap_blocks_from_twelve_and_a_quarter() -> None:
    """Twelve from 12 1/4 to 12 3/4, meant 12 1/2: trimmed, the 3 x 4 set loses 3/4 by 1 in; or frame the small ones.

    Quilt as you go or QAYG (2014), http://insearchofcraft.blogspot.com/2014/08/quilt-as-you-goor-qayg.html
    """
    measured = [["12 1/2", "12 1/4", "12 3/4"], ["12 1/2"] * 3, ["12 1/2"] * 3, ["12 1/2"] * 3]
    wished = quilt(3, 4, "12 1/2")
    trimmed = quilt(3, 4, "12 1/2", measured=measured)
    framed = quilt(3, 4, "12 1/2", measured=measured, unequal="frame the small ones")

    assert (12.25, 12.25) == trimmed.trimmed_to
    assert (0.75, 1) == (wished.wide - trimmed.wide, wished.high - trimmed.high)
    assert (wished.wide, wished.high) == (framed.wide, framed.high)


# --- sashing and borders ----------------------------------------------------------------------------------------


def test_trap_nine_blocks_with_sashing_of_three() -> None:
    """Three blocks of 12 1/2 and two strips cut 3: 3 x 12 + 2 x 2 1/2 + 1/2 = 41 1/2; the page gives 41 3/4.

    Sashing and Borders (2012), https://stitchshed.blogspot.com/2012/05/sashing-and-borders.html
    """
    assert 41.5 == row_length([12.5] * 3, shows_between(3, SEAM), SEAM)
    made = quilt(3, 3, "12 1/2", join="covered strips", shows="2 1/2")
    assert (41.5, 41.5) == (made.wide, made.high)


def test_golden_sashing_for_nine_inch_blocks() -> None:
    """9 x 1.618 / 4 = 3.64, made 3 5/8.

    Mathing the Yardage II (2020), https://sherriquiltsalot.com/2020/04/15/mathing-the-yardage-ii/
    """
    assert 3.625 == round_to(sashing_for(9), 1 / 8, Rounding.NEAREST)


def test_slip_four_by_five_blocks_with_sashing_all_round() -> None:
    """4 x 9 + 5 x 3 5/8 = 54 1/8 by 5 x 9 + 6 x 3 5/8 = 66 3/4; the same page prints 55 3/8 x 66 3/4."""
    border = {"cut": "4 1/8", "fabric": "Linen"}
    made = quilt(4, 5, "9 1/2", join="covered strips", shows="3 5/8", parts={"borders": [border]})

    assert (54.125, 66.75) == (made.wide - 2 * SEAM, made.high - 2 * SEAM)


def test_four_lengthwise_borders_lie_in_42_up_to_ten_and_a_half() -> None:
    """42 / 4 = 10 1/2 cut.

    Border Tips and Techniques, quilt shop, https://www.fabricessentials.com/border-tips.htm
    """
    assert (90, 180) == (lengthwise_need(10.5, 90, 42), lengthwise_need(10.75, 90, 42))


def test_lengthwise_borders_of_nine_and_of_twelve() -> None:
    """Longest side 80 and 10 to spare: 90 in, 2 1/2 yd; four of 12 need 48 of 42, so 5 yd.

    Border yardage answer (80 in), Quiltingboard, https://www.quiltingboard.com/511807-post6.html
    """
    assert (2.5 * YARD, 5 * YARD) == (lengthwise_need(9, 80 + 10, 42), lengthwise_need(12, 80 + 10, 42))


def test_mitered_borders_of_sixty_by_seventy_two() -> None:
    """4 in wide: 72 + 4 + 4 + 2 = 82; about 10 in more than each edge.

    Border yardage thread (60 x 72), Quiltingboard,
    https://www.quiltingboard.com/main-f1/amount-yardage-pieced-quilt-t65217.html
    """
    assert (82, 70) == (mitered_length(72, 4, Unit.INCH), mitered_length(60, 4, Unit.INCH))
    border = {"cut": "4", "fabric": "Linen", "corners": "mitered"}
    (made,) = quilt(1, 1, ("60", "72"), parts={"borders": [border]}).borders
    assert (82, 70) == (made.sides_long, made.ends_long)


def test_stripes_meet_at_miters_when_all_four_are_cut_alike() -> None:
    """Mirror-image stripes, all four strips cut alike.

    Border Stripes, About.com Quilting, http://quilting.about.com/od/quiltpatternsprojects/ss/quick_quilt_3.htm
    """
    border = {"cut": "4", "fabric": "Linen", "corners": "mitered"}
    assert any("cut all four strips alike" in words for words in quilt(2, 2, parts={"borders": [border]}).words)


def test_borders_are_cut_to_the_measured_middle() -> None:
    """Measured 41 1/2, 42 and 42 1/2: both sides are cut 42, not sewn on long; a border of 4 then adds 3 1/2 a side.

    Border answer, Quiltingboard, https://www.quiltingboard.com/7038962-post28.html
    """
    border = {"cut": "4", "fabric": "Linen"}
    made = quilt(1, 1, ("30", "42"), parts={"borders": [border]})
    assert 42 == (41.5 + 42 + 42.5) / 3 == made.borders[0].sides_long
    assert 3.5 == border_adds(4, SEAM)
    assert "Measure in three places and cut to the mean; where one is more than ¼ in off it" in plain(made.words[1])
    assert "measured through its middle, both opposite strips alike" in made.words[0]


def test_a_spacer_between_center_and_pieced_border() -> None:
    """Center 74, border of 25 units of 3 in: the spacer finishes 1/2, cut 1; with 1 1/2 the center becomes 76.

    Border of 25 units round a center of 74 (2009),
    https://skattebo-skattebo.blogspot.com/2009/01/grrrrrrrr-who-is-math-teacher.html
    """
    assert 1 == spacer_cut(74, 75, SEAM)
    assert 76 == 74 + 2 * border_adds(1.5, SEAM)


def test_a_wide_backing_bears_a_top_of_99() -> None:
    """108 in less 1 for selvages and 4 a side: a top of 102 is 3 too wide, so its border of 3 1/2 is cut 2.

    Stash enhancement over the weekend (2013),
    http://sewinginwisconsin.blogspot.com/2013/11/stash-enhancement-over-weekend.html
    """
    made = plan(
        project_from(
            {
                "name": "Top",
                "squared_up": {"wide": "96", "long": "104"},
                "base": {"through": "batting only"},
                "center": {"fabric": "Linen", "cut": "90"},
                "rounds": [{"cut": "10", "fabric": "Linen"}],
                "joined": {"across": 1, "down": 1},
                "borders": [{"cut": "3 1/2", "fabric": "Linen"}],
                "fabrics": [{"name": "Linen"}],
                "binding": {"fabric": "Linen"},
                "backing": {"fabric": "Wide", "usable_width": "107"},
                "my_numbers": {"backing_later_spare": "4"},
            }
        ),
        with_cures=False,
    )
    (one,) = (finding for finding in made.findings if finding.code == "join.backing-width")
    assert made.quilt is not None
    assert (102, 3) == (made.quilt.wide, one.numbers["over_in"])
    assert "Cut the border 2 in: then one width is enough." == plain(one.cures[0].text)
    assert 99 == 96 + 2 * border_adds(2, SEAM)


# --- on point ---------------------------------------------------------------------------------------------------


def triangles(across: int, down: int, block: str, how: str = "usual additions") -> SettingTriangles:
    """Setting triangles of blocks joined by plain seams."""
    made = quilt(across, down, block, setting="on point", join="plain seam", triangles=how).triangles
    assert made is not None
    return made


CHART = [
    # finished block, side square, corner square
    (5, 8.375, 4.5),
    (6, 9.75, 5.125),
    (7, 11.25, 5.875),
    (8, 12.625, 6.625),
    (9, 14, 7.25),
    (10, 15.5, 8),
    (12, 18.25, 9.375),
    (14, 21.125, 10.875),
    (16, 23.875, 12.25),
]


@pytest.mark.parametrize(("block", "side", "corner"), CHART)
def test_chart_of_setting_squares(block: float, side: float, corner: float) -> None:
    """1.414 b + 1 1/4 and b / 1.414 + 7/8, up to 1/8; 16 in is 23 7/8 with 1.414, 24 with the whole root of 2.

    On-point triangle chart (hand-made page), http://lukas.is-a-geek.org/tani/chart.htm
    """
    made = triangles(2, 2, f"{block + 0.5:g}")
    assert (side, corner) == (made.side_square, made.corner_square)
    assert (side, corner) == usual_squares(block, 0, SEAM, Unit.INCH)


def test_setting_squares_are_never_smaller_than_needed() -> None:
    """14 in blocks need 21.0061 and 10.753: a chart prints 21, and half of 1.41 b + 7/8 gives 10 3/4, both too small.

    Piecing a Quilt on Point, Phoebe Moon tutorials, http://phoebemoon.com/tutorials/on-point.htm
    and Rotary Cutting Shapes, About.com Quilting,
    http://quilting.about.com/od/rotarycuttingskills/ss/cutting_shapes.htm
    """
    made = triangles(2, 2, "14 1/2")
    assert pytest.approx((21.0061, 10.753), abs=0.0005) == (made.exact_side, made.exact_corner)
    assert made.side_square >= made.exact_side > 21
    assert made.corner_square >= made.exact_corner > 10.75


def test_four_by_five_on_point() -> None:
    """32 blocks, 14 side triangles (4 squares, 2 spare), 4 corners (2 squares); 7 5/8 and 4 1/8 for 4 1/2 in blocks.

    The page cuts 7 3/4 and 5 1/2, oversize. Log Cabin Corners (32 blocks on point), Scrapbusting,
    http://scrapbusting.blogspot.com/2011/07/log-cabin-corners.html
    """
    made = triangles(4, 5, "5")
    assert 32 == block_count(4, 5, Setting.ON_POINT) == len(quilt(4, 5, "5", setting="on point", join="plain").blocks)
    assert (14, 4, 2) == (made.side_count, made.side_squares, 4 * made.side_squares - made.side_count)
    assert (4, 2) == (made.corner_count, made.corner_squares)
    assert (7.625, 4.125) == (made.side_square, made.corner_square)
    assert 7.75 - made.side_square == 1 / 8


def test_four_by_four_on_point() -> None:
    """16 + 9 blocks, 12 side triangles from 3 squares, 4 corners from 2: counts of a page whose squares are oversize.

    It cuts 10 1/2 and 5 3/4 for 6 in blocks, 3/4 and 5/8 more than 9 3/4 and 5 1/8; ours is 1/2 more when asked
    (Quilt Math Made Easy; its address carries a person's name).
    """
    made, oversize = triangles(4, 4, "6 1/2"), triangles(4, 4, "6 1/2", "oversize")
    assert (12, 3, 4, 2) == (made.side_count, made.side_squares, made.corner_count, made.corner_squares)
    assert 25 == block_count(4, 4, Setting.ON_POINT)
    assert (9.75, 5.125) == (made.side_square, made.corner_square)
    assert (10.25, 5.625) == (oversize.side_square, oversize.corner_square)


def test_runner_of_six_inch_blocks_on_point() -> None:
    """Side square 9 3/4 cut twice, corner square 5 1/8 cut once; a class tried 6 7/8, the rule of the other triangle.

    Setting triangles for a runner on point, forum question,
    http://boards.hgtv.com/eve/forums/a/tpc/f/5894011632/m/9403975067
    and Tip: On-Point Settings, Moonlight Quilters guild, http://www.moonlightquilters.org/tip-on-point-settings/
    """
    made = triangles(1, 5, "6 1/2")
    assert (9.75, 5.125, 8) == (made.side_square, made.corner_square, made.side_count)
    words = [plain(one) for one in quilt(1, 5, "6 1/2", setting="on point", join="plain seam").words]
    assert any("9¾ in, cut twice" in one and "long side lies on the straight grain" in one for one in words)
    assert any("5⅛ in, cut once" in one and "short sides lie on the straight grain" in one for one in words)


def test_corner_squares_for_twelve() -> None:
    """12 / 1.414 = 8.49, up to 8 1/2, and 7/8: 9 3/8; the side square by a guild's rule up8(16.968) + 1 1/4 = 18 1/4.

    Setting a Block On Point, Pine Meadows Designs, http://www.pinemeadowsdesigns.com/SewingHints-BlockOnPoint.htm
    and Quilts Set on Point, Dalmeny Quilters guild, https://dalmenyquilters.wordpress.com/category/tips-and-tutorials/
    """
    made = triangles(2, 2, "12 1/2")
    assert (18.25, 9.375) == (made.side_square, made.corner_square)


def test_metric_additions_in_print_round_down() -> None:
    """With 0.75 cm: 2.5 and 3.5 in print, exactly 2.561 and 3.621, so 0.6 and 1.2 mm small; here 2.6 and 3.7.

    Inches or centimetres?, Patchwork & Quilting magazine forum (2008),
    https://www.pandqmagazine.com/forums/postings.asp?th=13
    """
    cm = 1 / 2.54
    side, corner = usual_additions(0.75 * cm, Unit.CM)
    assert pytest.approx((3.7, 2.6)) == (side / cm, corner / cm)
    assert pytest.approx((3.621, 2.561), abs=0.0005) == (0.75 * (2 + 2 * sqrt(2)), 0.75 * (2 + sqrt(2)))


# --- how many across and down ------------------------------------------------------------------------------------


def test_seventy_seven_blocks() -> None:
    """6 1/2 in blocks: 7 x 11 makes 42 x 66 with none left; 7 x 10, 8 x 9 and 6 x 12 leave seven, five and five.

    42 wide (and 4 for spare) comes out of one width when the fabric gives it; 48 does not.

    Math problem (2010), http://blogginmommy.blogspot.com/2010/12/math-problem.html
    """
    parts = {"base": {"through": "batting only"}, "backing": {"fabric": "Back", "usable_width": "47"}}
    made = quilt(7, 11, "6 1/2", join="plain seam", parts=parts)
    finished = {
        (one.across, one.down): (one.wide - 2 * SEAM, one.high - 2 * SEAM, one.left_over) for one in made.layouts
    }

    assert (42, 66) == (made.wide - 2 * SEAM, made.high - 2 * SEAM)
    assert {(7, 10): (42, 60, 7), (8, 9): (48, 54, 5), (6, 12): (36, 72, 5)} == finished
    backing = {one.across: one.backing for one in made.layouts}
    assert ("one width" in backing[7], "one width" in backing[8]) == (True, False)
