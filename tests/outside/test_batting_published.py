"""Published batting sizes, joins and spare per side against ours.

Sources are named beside each check by title, publisher and address, as read in stored copies.
"""

from __future__ import annotations

from typing import Any

import pytest

from stitchflip.finishing import plan_batting
from stitchflip.finishing.batting import PACKAGED
from stitchflip.finishing.batting_joins import Leftover, butt, fit_in, missing_length
from tests.finishing.scenarios import inches

MIDDLE_ONLY = {"x": (0.0,), "y": (0.0,)}


def test_packaged_sizes_are_those_in_print() -> None:
    """Craft 36 x 45, crib 45 x 60, twin 72 x 90, full 81 x 96, queen 90 x 108, king 120 x 120.

    Quilting Density and Batting tutorial, Needlepointers,
    https://needlepointers.com/main/youtubecontent.aspx?youtubepageid=353, and Common Quilt and Batting Sizes, fabric
    shop resource, http://www.honeybegood.com/blogs/resources/12653533-common-quilt-and-batting-sizes
    """
    printed = {
        "craft": (36, 45),
        "crib": (45, 60),
        "twin": (72, 90),
        "full": (81, 96),
        "queen": (90, 108),
        "king": (120, 120),
    }
    assert printed == {name: (wide, long) for name, wide, long in PACKAGED}


def test_a_leftover_marked_too_large_lacks_4_in_either_way() -> None:
    """Marked 54 x 74, really 54 x 42, wanted 40 x 58: no way round fits; 4 in are missing.

    Frankenbatt (2022), https://cbottsprojects.blogspot.com/2022/03/frankenbatt.html
    """
    real = Leftover(54, 42)
    assert 0 == fit_in((40, 58), (real.wide, real.long))
    assert 1 == fit_in((40, 58), (54, 74))
    assert 4 == missing_length((40, 58), [real])


def test_a_4_in_strip_butted_on_makes_it_do() -> None:
    """42 x 54 and a 4 in strip make 42 x 58 without any allowance.

    Frankenbatt (2022), address above.
    """
    joined = butt((40, 58), [Leftover(54, 42), Leftover(4, 42)], MIDDLE_ONLY, 3)
    assert joined is not None
    assert [4, 54] == sorted(joined.parts)
    assert joined.off((0.0,)) >= 3


def test_batting_is_joined_with_no_allowance() -> None:
    """A quarter-inch seam makes a ridge; butted, 30 and 20 are 50 and not 49 1/2.

    Joining Batting Strips: What Not to Do, https://cookingupquilts.com/joining-batting-strips-what-not-to-do/ and
    Piecing a batt, https://www.chrisquilts.net/22077/
    """
    pieces = [Leftover(20, 30), Leftover(20, 20)]
    assert butt((20, 50), pieces, MIDDLE_ONLY, 3) is not None
    assert butt((20, 50.25), pieces, MIDDLE_ONLY, 3) is None
    laid = inches(
        {"wide": "18", "long": "48"},
        {"draw_up_x": 0.0, "draw_up_y": 0.0},
        batting={"on_hand": [{"wide": "20", "long": "30"}, {"wide": "20", "long": "20"}]},
    )
    plan = plan_batting(laid.project, laid.numbers, laid.base)
    assert "edge to edge without overlap" in plan.pieces[0]
    assert 5 == abs(plan.join_at or 0)  # 30 - 50 / 2


@pytest.mark.parametrize(
    ("size", "spare", "base"),
    [
        # Quilt-As-You-Go Place Mat, All People Quilt,
        # https://www.allpeoplequilt.com/quilt-patterns/table-runners/quilt-you-go-place-mat-pattern
        ((18, 12), (1, 1), (20, 14)),
        # Placemats with the Stitch and Flip Method,
        # https://quiltsbyjen.ca/how-to-make-placemats-with-the-stitch-flip-method/
        ((13.5, 18), (0.5, 1.25), (14.5, 20.5)),
        # Christmas Placemats, Quilt As You Go (2013),
        # http://themarshstore.blogspot.com/2013/10/christmas-placemats-quilt-as-you-go.html
        ((17, 14), (0, 0), (17, 14)),
        # Another One off the List (2010), https://quilton.blogspot.com/2010/11/another-one-off-list.html
        ((11.5, 17.5), (0.25, 0.25), (12, 18)),
        # Quilt-As-You-Go Table Mat, All People Quilt,
        # https://www.allpeoplequilt.com/quilt-patterns/table-runners/quilt-you-go-table-mat
        ((15, 15), (0.5, 0.5), (16, 16)),
        # QAYG strip table runner article, QuiltingHub, https://www.quiltinghub.com/Articles/ArticleID/378
        ((14, 36), (4, 4), (22, 44)),
        # Quilt-As-You-Go Instructions, http://crafts.creativebug.com/quiltasyougo-instructions-1474.html
        ((12.5, 12.5), (1, 1), (14.5, 14.5)),
        # Quilt as you go, newsletter digest (2006), http://www.ivillage.com/forums/node/12798440
        ((12.5, 12.5), (1.5, 1.5), (15.5, 15.5)),
        # Log Cabin Quilt-as-you-go Block, Quilter's Diary, http://quiltersdiary.com/log-cabin-quilt-as-you-go-block/
        ((13, 13), (1, 1), (15, 15)),
        # String block guidelines, HeartStrings Quilt Project, http://heartstringsquiltproject.com/guidelines.html
        ((9.5, 9.5), (0.25, 0.25), (10, 10)),
        # String Quilt Block instructions (March 2009), address left out
        ((9.5, 9.5), (0.5, 0.5), (10.5, 10.5)),
        # String Piecing (2013), http://rikrax.blogspot.com/2013/03/string-piecing.html
        ((8.5, 8.5), (0.25, 0.25), (9, 9)),
        # String Cabin Construction (2010),
        # https://lassothemoon.typepad.com/lasso_the_moon/2010/03/string-cabin-construction.html
        ((9, 9), (0, 0), (9, 9)),
        # Common Quilt and Batting Sizes, fabric shop resource (address above): 6 in more than the top
        ((36, 45), (3, 3), (42, 51)),
    ],
)
def test_every_printed_spare_of_a_base_can_be_set(
    size: tuple[float, float], spare: tuple[float, float], base: tuple[float, float]
) -> None:
    """Squared-up size plus twice the printed spare is the printed batting, from nothing to 4 in a side."""
    settings: dict[str, Any] = {"spare_across": str(spare[0]), "spare_at_ends": str(spare[1])}
    laid = inches(
        {"wide": str(size[0]), "long": str(size[1])},
        {"spare_x": spare[0], "spare_y": spare[1], "draw_up_x": 0.0, "draw_up_y": 0.0},
        base=settings,
    )
    plan = plan_batting(laid.project, laid.numbers, laid.base)
    assert base == (plan.wide, plan.high)
    assert spare == (laid.base.spare_x, laid.base.spare_y)


@pytest.mark.parametrize(
    ("before", "after", "percent"),
    [
        # How to Make a Quilt Finish at a Certain Size (2020 test): 9 x 20 samples after quilting,
        # http://anythingbutboring.com/2020/01/how-to-make-a-quilt-finish-at-a-certain-size/
        (20, 19.875, 0.6),
        (20, 19.75, 1.25),
        (20, 19.5, 2.5),
        # How Much Does Fabric Shrink When You Quilt It?,
        # https://melgeecrafts.com/needlework/your-question-how-much-does-fabric-shrink-when-you-quilt-it.html
        (83, 80, 3.6),
        (105, 102, 2.9),
    ],
)
def test_measured_draw_up_gives_back_the_size_that_was_cut(before: float, after: float, percent: float) -> None:
    """The printed percentage, put into the base without spare, returns the size before quilting to its rounding."""
    laid = inches(
        {"wide": str(after), "long": str(after)},
        {"spare_x": 0.0, "spare_y": 0.0, "draw_up_x": percent / 100, "draw_up_y": percent / 100},
        base={"spare_across": "0", "spare_at_ends": "0"},
    )
    assert before == pytest.approx(laid.base.least_wide, rel=0.0005)
