"""Joins, kits, quarters that stand in and amounts that fall short: published cases against ours.

The page of each case stands beside its check, by title, publisher and address, as read in stored copies; what is right
was worked out by hand.
"""

from __future__ import annotations

import pytest

from stitchflip.cutting import Piece, Status, plan_fabric
from stitchflip.cutting.kits import KitFabric, KitOrder, plan_kits
from stitchflip.cutting.model import JoinedLength
from stitchflip.cutting.moving import Supply, Terms, gives
from stitchflip.cutting.pool import pool_for
from stitchflip.cutting.shortest import with_only
from stitchflip.cutting.stand_in import stand_in
from stitchflip.cutting.verify import verify_fabric_plan
from stitchflip.lengths import Unit
from stitchflip.project.model import Working
from tests.cutting.lists import binding, fabric
from tests.twins.table import house


# 10 + 10 at 3 in make 17, 7 + 7 at 5 make 9, 20 + 20 at 1½ make 38½:
#   What is lost (2012), http://www.crayonboxquiltstudio.com/2012/04/what-is-lost.html
# 18 × 12 in place mat, 60 round, two strips 2½ × 42, which make 81½:
#   https://www.allpeoplequilt.com/quilt-patterns/table-runners/quilt-you-go-place-mat-pattern
# 15 in square, four strips 2½ × 21 from fat quarters, which make 76½:
#   https://www.allpeoplequilt.com/quilt-patterns/table-runners/quilt-you-go-table-mat
# 66 × 58 in: 248 + 20 = 268, "seven strips"; seven of 40 in at 2½ make 265, not 280:
#   https://blog.missouriquiltco.com/tag/how-to-figure-yardage/
# 78 × 56 in, 276, "seven strips" of 2 in; seven make 268:
#   http://onceuponaquilt.blogspot.com/p/tips-and-tricks.html
# 114 in round and 12 more, "three strips and one for peace of mind"; three make 115 or, of 42 in, 121:
#   https://learnhowtoquilt.com/quilt-tutorials/finishing-the-quilt/double-fold-binding/binding-how-long/
@pytest.mark.parametrize(
    ("need", "join", "strip", "strips", "made"),
    [
        (17, 3, 10, 2, 17),
        (9, 5, 7, 2, 9),
        (38.5, 1.5, 20, 2, 38.5),
        (72, 2.5, 42, 2, 81.5),
        (72, 2.5, 21, 4, 76.5),
        (265, 2.5, 40, 7, 265),
        (268, 2.5, 40, 8, 302.5),
        (276, 2, 40, 8, 306),
        (126, 2.5, 40, 4, 152.5),
        (126, 2.5, 42, 4, 160.5),
    ],
)
def test_one_binding_takes_so_many_strips(need: float, join: float, strip: float, strips: int, made: float) -> None:
    """Every diagonal join takes one strip width off; so many strips then make so much, and no fewer do."""
    pool = pool_for(need, join, 1, strip, 0.25)

    assert (strips, strips, Status.PROVED) == (pool.strips, pool.bound, pool.status)
    assert made == pytest.approx(pool.chains[0].made)


# The same three reckonings that leave joins out, put to the checker of plans:
# https://blog.missouriquiltco.com/tag/how-to-figure-yardage/, http://onceuponaquilt.blogspot.com/p/tips-and-tricks.html,
# https://learnhowtoquilt.com/quilt-tutorials/finishing-the-quilt/double-fold-binding/binding-how-long/
@pytest.mark.parametrize(
    ("wide", "usable", "strips_cut", "need", "holds"),
    [
        (2.5, 40.0, 7, 265.0, True),
        (2.5, 40.0, 7, 268.0, False),
        (2.5, 40.0, 8, 268.0, True),
        (2.0, 40.0, 7, 268.0, True),
        (2.0, 40.0, 7, 276.0, False),
        (2.5, 42.0, 3, 121.0, True),
        (2.5, 42.0, 3, 126.0, False),
        (2.5, 42.0, 4, 126.0, True),
    ],
)
def test_the_checker_charges_joins(*, wide: float, usable: float, strips_cut: int, need: float, holds: bool) -> None:
    """So many strips with a diagonal join between any two are long enough, or the plan is told off."""
    asked = (binding(wide, usable, strips_cut),)
    bolt = fabric("Inkwell", usable_width=str(usable))
    plan = plan_fabric(bolt, asked, house(), Working.CUT_FIRST, Unit.INCH)

    told = verify_fabric_plan(
        plan, bolt, asked, house(), Working.CUT_FIRST, joined=(JoinedLength("Binding", need, join=wide),)
    )

    assert holds is (told == ())


# A roll of forty strips 2½ in and 42 squares of 5 in out of fat quarters: seven half strips from each (18 ÷ 2½), so 80
# of them take 12 quarters; 3 × 4 squares from each, so 42 take four. At 17 in real height six strips, 14 quarters.
#   Fat quarter conversion thread, Quiltingboard,
#   https://www.quiltingboard.com/main-f1/fat-quarter-conversion-t222332.html
@pytest.mark.parametrize(
    ("piece", "short_side", "enough", "from_one_less"),
    [
        (Piece("1", 2.5, 21, 80, step=1), "18", 12, 80 - 11 * 7),
        (Piece("1", 2.5, 21, 80, step=1), "17", 14, 80 - 13 * 6),
        (Piece("Square", 5, 5, 42, "rectangle"), "18", 4, 42 - 3 * 12),
    ],
)
def test_fat_quarters_for_a_roll_of_strips(piece: Piece, short_side: str, enough: int, from_one_less: int) -> None:
    """So many quarters are enough; with one less the rest goes to another fabric, and to as few as that."""
    terms = Terms(house(fat_quarter_straightening=0.0), Working.CUT_FIRST, Unit.INCH)

    def quarters(count: int) -> Supply:
        on_hand = [{"name": "fat quarter", "wide": short_side, "long": "21", "count": count}]
        return Supply(fabric("Bundle", on_hand=on_hand), (piece,))

    other = Supply(fabric("Moss", on_hand=[{"name": "fat quarter", "wide": "18", "long": "21", "count": 4}]), ())

    assert gives(quarters(enough), (piece,), terms) is not None
    answer = stand_in(quarters(enough - 1), [other], terms)
    assert answer.moved is not None
    assert [(piece.name, from_one_less)] == [(one.name, one.count) for one in answer.moved.pieces]
    assert answer.moved.at_least <= from_one_less


# 120 squares of 4½ in take 63 in of fabric 42 in wide, and 67½ at 40:
#   Stupid squares (2010), http://quiltersquandary.blogspot.com/2010/11/stupid-squares.html
# 63 squares of 9½ in take 16 rows, 152 in, at 42 in:
#   Counting squares answer, Quiltingboard, https://www.quiltingboard.com/6228687-post7.html
@pytest.mark.parametrize(
    ("side", "count", "width", "need", "have", "missing", "fewer"),
    [
        (4.5, 120, "42", 63, 63, 0, 0),
        (4.5, 120, "40", 67.5, 63, 4.5, 120 - 14 * 8),
        (9.5, 63, "42", 152, 148.5, 3.5, 63 - 15 * 4),
    ],
)
def test_squares_that_do_not_come_from_the_amount_in_the_pattern(
    *, side: float, count: int, width: str, need: float, have: float, missing: float, fewer: int
) -> None:
    """What is missing, and how many squares fewer there are; straightening left aside, as the pages do."""
    terms = Terms(house(straightening=0.0), Working.CUT_FIRST, Unit.INCH)
    asked = Supply(fabric("Moss", usable_width=width), (Piece("Square", side, side, count, "rectangle"),))
    answer = with_only(have, asked, terms)

    assert need == pytest.approx(answer.least.need_in)
    assert missing == pytest.approx(max(answer.least.need_in - have, 0.0))
    left = answer.fewer.without.count if answer.fewer is not None and answer.fewer.without is not None else 0
    assert fewer == left


@pytest.mark.parametrize(("width", "used"), [("42", 20), ("35", 28)])
def test_four_kits_are_cut_at_the_real_width_of_the_bolt(width: str, used: float) -> None:
    """28 strips of 2 × 12 in are ten strips of 42 in, three to a width; at 35 in only two, so fourteen.

    Fabric question for a math whiz, Quiltingboard,
    https://www.quiltingboard.com/main-f1/fabric-question-math-whiz-t215246.html
    """
    bolt = KitFabric(fabric("Fog", usable_width=width), (Piece("1", 2, 12, 7, step=1),))

    plan = plan_kits(KitOrder(4, (bolt,), extra_in=0.0), house(), Unit.INCH)

    assert used == plan.fabrics[0].used_in
