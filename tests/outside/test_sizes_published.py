"""Sizes of beds, runners and washed pieces against published values.

Sources (title, publisher, address):
- Shrinkage answer (90 in example), Quiltingboard, https://www.quiltingboard.com/6723231-post13.html
- Shrink test for quilting nerds (2011), https://piecedgoods.com/2011/03/11/shrink-test-for-quilting-nerds/
- How to Make a Quilt Finish at a Certain Size (2020),
  http://anythingbutboring.com/2020/01/how-to-make-a-quilt-finish-at-a-certain-size/
- Doing the Math to Finish the Batik Flower Garden Quilt (2015),
  http://hexylady.com/2015/04/04/doing-the-math-to-finish-the-batik-flower-garden-quilt/
- Inches or centimetres?, Patchwork & Quilting magazine forum (2008),
  https://www.pandqmagazine.com/forums/postings.asp?th=13
- Standard Mattress Sizes, quilt shop, http://sewwhatquiltshop.blogspot.com/2010/09/standard-mattress-sizes.html
- Suggested Quilt Measurements for Standard Beds, Quilting Daily,
  https://www.quiltingdaily.com/suggested-quilt-measurements-for-common-standard-bed-sizes/
- Standard Mattress Sizes (drop example), http://ciaspalette.com/categories/mattresses.html
- Quilt Sizes 101, https://embroiderypress.com/quilt-size-101/
- Bed Sizes (2010), http://www.sewnana.com/2010/01
- Measurements, Quilters Resources, https://quiltersresources.com/measurements.html
- UK bed sizes, Which? guide (2024 copy),
  https://hoteltexclub.com/article/uk-bed-sizes-bed-and-mattress-size-guide-which/3842
- Mattresses, Sizes.com reference, https://www.sizes.com/home/mattresses.htm
- Standard Table Runner Size, https://silverbobbin.com/table-runner-size/
- What Size Table Runner Do You Need?, https://engineerfix.com/what-size-table-runner-do-you-need
- How Big Should I Make a Table Runner?, eHow,
  https://www.ehow.com/decision_7218384_big-should-make-table-runner_.html
- Table Linen Size Information (2013),
  http://farmhousetable01.blogspot.com/2013/12/table-linen-size-information.html?m=1
- And I Cannot Stress This Enough: Measure Thrice (2007),
  https://makeitsnappy.wordpress.com/2007/06/13/and-i-cannot-stress-this-enough-measure-thrice/
- Did You Know? (2010), http://judysquiltsandthings.blogspot.com/2010/10/did-you-know.html
- Tip of the week: changing a block size accurately, https://fmquilters.org/tip-of-the-week-changing-a-block-size-accurately/
- Resizing answer (8 in made 9), Quiltingboard, https://www.quiltingboard.com/6032240-post29.html
- Table runner length guide: a weak copied page that carries a private person's name, so without its address
- What Size Is a Placemat?, https://tipsfolder.com/size-placemat-847626ad6cf4a52bc1907050744d9577
"""

from __future__ import annotations

from typing import Any

import pytest

from stitchflip.lengths import Length, Unit
from stitchflip.planning import plan
from stitchflip.planning.resize import Keep, resized
from stitchflip.planning.resize.pen import Pen, redrafted
from stitchflip.planning.washed import washed_size
from stitchflip.project import effective, project_from
from stitchflip.project.beds import MATTRESSES
from stitchflip.project.house import COASTER, PLACEMAT
from stitchflip.project.model import MadeFor
from stitchflip.project.sizes import before_washing, made_for_size, wanted_size


def asked(**made_for: Any) -> tuple[float | None, float | None]:
    """What a table or bed asks for, inches."""
    return made_for_size(MadeFor(**made_for), Unit.INCH)


# --- mattresses --------------------------------------------------------------------------------------------

AMERICAN = {
    "crib": (28, 52),
    "twin": (39, 75),
    "full": (54, 75),
    "queen": (60, 80),
    "king": (76, 80),
    "California king": (72, 84),
}
BRITISH = {
    "small single": (75, 190),
    "single": (90, 190),
    "small double": (120, 190),
    "double": (135, 190),
    "king": (150, 200),
    "super king": (180, 200),
}


@pytest.mark.parametrize(("name", "size"), AMERICAN.items())
def test_american_mattresses(name: str, size: tuple[int, int]) -> None:
    """As a quilt shop lists them (Standard Mattress Sizes, quilt shop)."""
    assert size == (MATTRESSES[name].wide.inches, MATTRESSES[name].long.inches)


@pytest.mark.parametrize(("name", "size"), BRITISH.items())
def test_british_mattresses(name: str, size: tuple[int, int]) -> None:
    """In centimeters (UK bed sizes, Which? guide)."""
    bed = MATTRESSES[f"UK {name}"]
    assert size == (bed.wide.cm, bed.long.cm)


def test_european_mattresses() -> None:
    """All 200 cm long (Sizes.com reference)."""
    beds = [bed for name, bed in MATTRESSES.items() if name.startswith("Europe")]
    assert [80, 90, 100, 140, 160, 170, 180, 200] == [bed.wide.cm for bed in beds]
    assert {200} == {bed.long.cm for bed in beds}


def test_the_long_twin_is_printed_in_two_widths() -> None:
    """Quilt lists print 36 × 80, mattress lists 39 × 80 (Sizes.com reference), and 39 is what a twin is wide."""
    assert MATTRESSES["twin"].wide == MATTRESSES["long twin"].wide
    assert 80 == MATTRESSES["long twin"].long.inches


# --- bed quilts --------------------------------------------------------------------------------------------


def test_a_twin_with_twelve_inches_on_three_sides() -> None:
    """39 + 24 = 63 by 75 + 12 = 87 (Standard Mattress Sizes, drop example)."""
    assert (63, 87) == asked(mattress="twin", drop="12")


@pytest.mark.parametrize(
    ("mattress", "published"),
    [("crib", (36, 60)), ("twin", (70, 90)), ("full", (84, 90)), ("queen", (90, 95)), ("king", (108, 95))],
)
def test_magazine_quilt_sizes(mattress: str, published: tuple[int, int]) -> None:
    """A magazine's list for a depth of 15 without tuck (Quilting Daily).

    Twin 39 + 30 = 69 and 75 + 15 = 90, full 84 × 90, queen 90 × 95: within an inch. Its king is 108 for a mattress 78
    wide, where other lists have 76. Its crib of 36 × 60 has 4 and 8 in of drop, not 15.
    """
    wide, long = asked(mattress=mattress, drop="15")
    assert wide is not None
    assert long is not None
    if mattress == "crib":
        assert (58, 67) == (wide, long)
        assert published == (asked(mattress="crib", drop="4")[0], asked(mattress="crib", drop="8")[1])
    elif mattress == "king":
        assert (106, 95) == (wide, long)
        assert published == asked(mattress="king", mattress_wide="78", drop="15")
    else:
        assert abs(wide - published[0]) <= 1
        assert long == published[1]


@pytest.mark.parametrize("tuck", [10, 14, 15])
def test_the_pillow_tuck_is_a_setting(tuck: int) -> None:
    """10 (Bed Sizes), 14 (Quilters Resources), 15 (drop example): length + drop + tuck; left out, there is none."""
    assert (84, 92 + tuck) == asked(mattress="queen", drop="12", tuck=str(tuck))
    assert (84, 92) == asked(mattress="queen", drop="12")


def test_width_and_twice_the_depth() -> None:
    """A mattress 9 deep, sides and foot covered: 54 + 18 by 75 + 9 (Quilt Sizes 101)."""
    assert (72, 84) == asked(mattress="full", drop="9")


# --- tables ------------------------------------------------------------------------------------------------


def test_a_runner_is_the_table_and_twelve() -> None:
    """60 + 6 at each end = 72 (What Size Table Runner Do You Need?); six inches are also the usual hang."""
    assert 72 == asked(table_long="60", hang="6")[1]
    assert 72 == asked(table_long="60")[1]


@pytest.mark.parametrize(("hang", "long"), [("6", 84), ("10", 92), ("9", 90), ("18", 108)])
def test_other_hangs_over_a_table_of_seventy_two(hang: str, long: int) -> None:
    """72 becomes 84 to 92 with 6 to 10; a runner of 90 hangs 9, one of 108 hangs 18 (table runner length guide)."""
    assert long == asked(table_long="72", hang=hang)[1]


def test_a_runner_may_stop_before_the_plates() -> None:
    """60 - 2 × 8 = 44 (Measure Thrice); two thirds of the table, 40, is 10 short of both ends (eHow)."""
    assert 44 == asked(table_long="60", short_of_ends="8")[1]
    assert 40 == asked(table_long="60", short_of_ends="10")[1]


@pytest.mark.parametrize(("table", "wide"), [(36, 12), (30, 10), (45, 15), (51, 17)])
def test_a_runner_is_a_third_of_the_table_wide(table: int, wide: int) -> None:
    """A third, usually 10 to 15 and up to 17 (Standard Table Runner Size)."""
    assert wide == asked(table_wide=str(table), table_long="60")[0]


def test_a_floor_length_cloth_misprinted() -> None:
    """The page prints 128 × 152 for a cloth to the floor over 48 × 92 from a table 30 high; 48 + 60 is 108, not 128.

    The measures of the table are taken from the misprint's own length: 152 - 60 = 92 (Table Linen Size Information).
    """
    assert (108, 152) == asked(table_wide="48", table_long="92", covers="whole table", hang="30")


def test_cloth_drops() -> None:
    """8 to 12 for every day (Table Linen Size Information); 8 is ours when nobody says."""
    assert (52, 76) == asked(table_wide="36", table_long="60", covers="whole table")


# --- the first wash ----------------------------------------------------------------------------------------


def test_ninety_after_washing_at_five_percent() -> None:
    """90 ÷ 0.95 = 94.7, made 95 (shrinkage answer)."""
    assert 95 == before_washing(90, 0.05, Unit.INCH)


def test_ninety_after_washing_at_ten_percent() -> None:
    """90 ÷ 0.9 = 100 exactly (How to Make a Quilt Finish at a Certain Size)."""
    assert 100 == before_washing(90, 0.10, Unit.INCH)


def test_five_percent_of_ninety_is_not_enough() -> None:
    """Adding 5 % of 90 makes 94½, which washes to 89.8: shrinkage is a part of what goes into the wash."""
    assert 90 > 94.5 * 0.95
    assert 90 <= before_washing(90, 0.05, Unit.INCH) * 0.95


def piece(wide: str, long: str, **numbers: Any) -> Any:
    """A piece wanted before washing, with its maker's own shrinkage."""
    return project_from(
        {
            "name": "Garden",
            "squared_up": {"wide": wide, "long": long},
            "center": {"cut": "10", "fabric": "Oat"},
            "rounds": [{"cut": "2", "fabric": "Oat"}],
            "fabrics": [{"name": "Oat"}],
            "binding": {"fabric": "Oat"},
            "my_numbers": numbers,
        }
    )


def test_a_sample_turned_shrinks_otherwise() -> None:
    """1 in of 22 across and 1 of 18 along: 80 × 92 loses 3.6 and 5.1; the batting turned, 4.4 and 4.2."""
    straight = piece("80", "92", shrink_across=1 / 22, shrink_along=1 / 18)
    turned = piece("80", "92", shrink_across=1 / 18, shrink_along=1 / 22)
    for project, lost in ((straight, (3.6, 5.1)), (turned, (4.4, 4.2))):
        washed = washed_size(effective(project), 80, 92)
        assert lost == (round(80 - washed.wide, 1), round(92 - washed.high, 1))


def test_seventy_inches_measured() -> None:
    """70 × 70 was 68 × 68 after wash and dry (Shrink test for quilting nerds): 2.9 %; we take 3 % for cotton."""
    washed = washed_size(effective(piece("70", "70")), 70, 70)
    assert abs(washed.wide - 68) <= 0.25
    assert abs(washed.high - 68) <= 0.25


# --- resizing ----------------------------------------------------------------------------------------------


def test_a_twelve_inch_block_is_redrafted_as_thirty_centimeters() -> None:
    """Not 30.5, which is 12 × 2.54 (Inches or centimetres?)."""
    assert pytest.approx(30 / 2.54) == redrafted(12, Unit.CM)
    assert (
        pytest.approx(31.5 / 2.54)
        == Pen(Unit.INCH, Unit.CM, 0.25, 0.75 / 2.54).cut(Length.of_inches(12.5), 1, "block").inches
    )


def test_a_guild_tip_is_a_quarter_inch_wrong() -> None:
    """To double 3½ the tip takes off ¼, doubles and adds ¼: 6¾. Both seams off and on again: 6½."""
    right = Pen(Unit.INCH, Unit.INCH, 0.25, 0.25).cut(Length.of_inches(3.5), 2, "")
    assert (6.5, 6.75) == (right.inches, (3.5 - 0.25) * 2 + 0.25)


@pytest.mark.parametrize(("cut", "exact"), [(2.5, 2.75), (4.5, 5.0), (2.0, 2 + 3 / 16)])
def test_an_eight_inch_block_at_nine(cut: float, exact: float) -> None:
    """(c - ½) × 9/8 + ½: 2½ is 2¾, 4½ is 5, and 2 is 2 3/16, off the ruler (resizing answer)."""
    pen = Pen(Unit.INCH, Unit.INCH, 0.25, 0.25)
    made = pen.cut(Length.of_inches(cut), 9 / 8, "strip")
    assert exact == (pen.awkward[0].exact_in if pen.awkward else made.inches)
    assert (1 if cut == 2 else 0) == len(pen.awkward)


def test_twice_the_size_is_four_times_the_fabric_and_twice_the_binding() -> None:
    """Both sides doubled, the main fabric ran out: what shows is four times as much (Did You Know?).

    The binding's way round is twice as long: 4 × 15 = 60 and 4 × 30 = 120, each with its 10 for the tails and 2 for
    the corners.
    """
    small = piece("15", "15")
    large = resized(small, Length.of_inches(30), Length.of_inches(30), keep=Keep.PROPORTIONS).project
    shown, bound = [], []
    for project in (small, large):
        made = plan(project, with_cures=False)
        shown.append(made.square_up.wide * made.square_up.high)
        bound.append(made.binding.need - 12)
    assert pytest.approx((4, 2)) == (shown[1] / shown[0], bound[1] / bound[0])


# --- small pieces ------------------------------------------------------------------------------------------


def test_the_usual_placemat_lies_wide() -> None:
    """12 × 18 is most usual, 13 × 19 and 14 × 18 are printed too (What Size Is a Placemat?); ours is 18 × 13."""
    wide, long = (house.inches for house in PLACEMAT)
    assert (18, 13) == (wide, long)
    assert (46, 33) == tuple(house.cm for house in PLACEMAT)
    assert 12 <= long <= 14


def test_a_coaster_is_smaller_than_a_mug_rug() -> None:
    """Mug rugs are printed from 5 × 7 up; a coaster of 4½ in (11.5 cm) is common practice, no source."""
    assert (4.5, 11.5) == (COASTER.inches, COASTER.cm)
    assert COASTER.inches < 5


def test_a_runner_for_a_table_is_wanted_at_what_the_table_asks() -> None:
    """The whole way: 36 × 60 with 6 in hanging gives 12 × 72, a third of the width (Standard Table Runner Size)."""
    made = project_from(
        {
            "name": "Runner",
            "squared_up": {},
            "made_for": {"table_wide": "36", "table_long": "60", "hang": "6"},
            "center": {"cut": "8", "fabric": "Oat"},
            "rounds": [{"cut": "2", "fabric": "Oat"}],
            "fabrics": [{"name": "Oat"}],
            "binding": {"fabric": "Oat"},
        }
    )
    assert (12, 72) == wanted_size(made)
