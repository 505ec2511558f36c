"""The backing: which way takes less, with seams, straightening and the print charged."""

from __future__ import annotations

from math import ceil, floor

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from stitchflip.errors import BuildError
from stitchflip.finishing import BackingChoice, BackingFabric, BackingPlan, backing_ways, plan_backing, sleeve_for
from stitchflip.finishing.panels import arrange, joined_width, widths_needed, with_full_middle
from stitchflip.lengths import Rounding, Unit, round_to
from tests.finishing.scenarios import CM, Laid, harbour_block, inches, kite_block, lantern_walk, morning_tray, tin_roof
from tests.strategies import quarters

YARD = 36


def _planned(laid: Laid) -> BackingPlan:
    return plan_backing(laid.project, laid.numbers, laid.base)


def _named(plan: BackingPlan, way: str) -> BackingChoice:
    return next(choice for choice in (plan.best, *plan.others) if choice.way == way)


def _plain(text: str) -> str:
    return text.replace("\u202f", " ").replace("\u2009", " ")


def test_a_runner_pieced_across_takes_less_than_one_width() -> None:
    """15 1/2 x 48: two lengths of 15 1/2 + 1 = 32 in, 1 yd; in one width 48 + 1 = 49 in, 1 3/8 yd."""
    plan = _planned(lantern_walk())
    assert ("pieced across", 2, 32.0, 1 * YARD) == (
        plan.best.way,
        plan.best.widths,
        plan.best.length_in,
        plan.best.buy_in,
    )
    along = _named(plan, "one width")
    assert (49.0, 1.375 * YARD) == (along.length_in, along.buy_in)


def test_the_seam_of_a_runner_keeps_off_the_middle_and_leaves_one_large_rest() -> None:
    """A full 40 in panel and a 9 in one (40 + 9 - 1 = 48): the seam lies 39 1/2 - 24 = 15 1/2 in off the middle."""
    best = _planned(lantern_walk()).best
    assert (40.0, 9.0) == best.panels
    assert (15.5,) == best.seams_at
    assert ("y", 0.5) == (best.seam_axis, best.seam_in)


def test_a_longer_runner_pieced_across() -> None:
    """14 1/2 x 60: 2 x 14 1/2 + 1 = 30 in, 7/8 yd; two widths give 79."""
    best = _planned(tin_roof()).best
    assert ("pieced across", 30.0, 0.875 * YARD) == (best.way, best.length_in, best.buy_in)


def test_two_bases_side_by_side_take_two_rows() -> None:
    """52 x 40 cm, four of them, 105 cm usable: 2 x 52 = 104, 1 cm to spare; 2 rows of 40 + 3 = 83, buy 90 cm."""
    best = _planned(morning_tray()).best
    assert ("one width", 2) == (best.way, best.how_many_wide)
    assert (83, 90) == pytest.approx((best.length_in / CM, best.buy_in / CM))
    assert _plain(best.remark) == "2 lie side by side, 1 cm to spare."


def test_half_a_centimeter_more_spare_loses_the_row() -> None:
    """53 x 41 cm fit two side by side only when turned (106 cm); upright one lies in a width: 4 x 41 = 164 cm."""
    plan = _planned(morning_tray(spare_cm=2.5))
    turned, upright = plan.best, plan.others[0]
    assert 106 + 3 == pytest.approx(turned.length_in / CM)
    assert 2 == turned.how_many_wide
    assert "sideways" in turned.remark
    assert 164 + 3 == pytest.approx(upright.length_in / CM)
    assert 1 == upright.how_many_wide


@pytest.mark.parametrize("spare_cm", [2, 2.5])
def test_a_one_way_backing_is_never_turned(spare_cm: float) -> None:
    """A print that must stand upright takes two rows of 40 at 52 cm, four lengths of 41 at 53 cm."""
    plan = _planned(morning_tray(spare_cm, backing={"fabric": "Clover", "one_way": True}))
    lengths = {2: 2 * 40, 2.5: 4 * 41}
    assert lengths[spare_cm] + 3 == pytest.approx(plan.best.length_in / CM)
    assert not any("sideways" in choice.remark for choice in (plan.best, *plan.others))


def test_a_one_way_fabric_of_the_list_counts_as_one_way_backing() -> None:
    """The backing may be one of the project's fabrics, with its width and its print."""
    fabrics = [{"name": "Linen", "one_way": True, "usable_width": "42"}]
    plan = _planned(lantern_walk(fabrics=fabrics, backing={"fabric": "Linen"}))
    assert 42.0 == plan.usable_width
    assert "one width" == plan.best.way


def test_twenty_squares_lie_two_to_a_width_or_seven_to_an_extra_wide_one() -> None:
    """15 in squares: 10 rows = 150 + 1 in, 4 1/4 yd; from 108 in wide backing 3 rows = 45 + 1 in, 1 3/8 yd."""
    laid = harbour_block(how_many=20)
    plan = _planned(laid)
    assert (2, 151.0, 4.25 * YARD) == (plan.best.how_many_wide, plan.best.length_in, plan.best.buy_in)
    wide = _named(plan, "108 in wide")
    assert (7, 46.0, 1.375 * YARD) == (wide.how_many_wide, wide.length_in, wide.buy_in)


def test_extra_wide_backing_loses_its_selvages() -> None:
    """108 in less 1 in: a base of 107 in fits one width, one of 107 1/2 in needs a seam."""
    for wide, widths in ((107.0, 1), (107.5, 2)):
        laid = inches({"wide": "100", "long": "110"}, base={"wide": str(wide), "long": "112"})
        assert widths == _named(_planned(laid), "108 in wide").widths


def test_extra_wide_backing_of_her_own_is_not_offered_twice() -> None:
    """A backing that is 107 in wide already has no other 108 in wide way."""
    plan = _planned(lantern_walk(backing={"fabric": "Sheeting", "usable_width": "107"}))
    assert "108 in wide" not in {choice.way for choice in (plan.best, *plan.others)}


def test_a_backing_added_later_goes_beyond_the_squared_up_size() -> None:
    """A block on batting only, squared up 8 1/2 in, gets a backing 2 in larger on each side: 12 1/2 in."""
    plan = _planned(kite_block())
    assert (12.5, 12.5) == pytest.approx((plan.wide, plan.high))


def test_a_wall_piece_gets_backing_and_sleeve_from_one_length() -> None:
    """36 1/2 in square, then a sleeve of 8 1/2 x 32 1/2, and 1 in: 46 in, 1 3/8 yd."""
    way = backing_ways(36.5, 36.5, 1, BackingFabric(40))[0]
    sleeve = sleeve_for(32.5, 0.25, Unit.INCH)
    assert sleeve.cut_long <= 40
    need = way.length_in + sleeve.cut_wide
    assert 46.0 == need
    assert 1.375 * YARD == round_to(need, 4.5, Rounding.UP)


def test_backings_alike_share_the_width_of_their_part_panels() -> None:
    """Four runners of 15 1/2 x 48: four full panels, and four parts of 9 in out of a fifth width: 77 1/2 + 1 in."""
    plan = _planned(lantern_walk(how_many=4))
    across = _named(plan, "pieced across")
    assert 5 * 15.5 + 1 == across.length_in


def test_shrinking_before_cutting_asks_for_more() -> None:
    """With 2 % lost along and 4 % across, 40 in become 38.4, and 32 in must be bought as 32 / 0.98 = 32.65."""
    laid = lantern_walk()
    shrunk = inches(
        {"wide": "13", "long": "44", "ends": "pointed"},
        {"spare_x": 1.0, "spare_y": 1.5, "prewash_across": 0.04, "prewash_along": 0.02},
    )
    assert laid.base.wide == shrunk.base.wide
    plan = _planned(shrunk)
    assert 38.4 == pytest.approx(plan.usable_width)
    assert 32.653 == pytest.approx(plan.best.length_in, abs=0.001)


def test_a_seam_on_the_middle_is_told_with_the_widths_that_avoid_it() -> None:
    """79 in from two widths of 40 has no room to shift; three panels 20 1/2 + 40 + 20 1/2 have theirs 19 1/2 off."""
    way = next(way for way in backing_ways(79, 56, 1, BackingFabric(40)) if way.panels == (40.0, 40.0))
    assert (0.0,) == way.seams_at
    assert "A seam lies on the middle" in way.remark
    assert "20½ + 40 + 20½" in way.remark
    assert "19½ in off it" in _plain(way.remark)


def test_one_width_halved_frames_a_full_one() -> None:
    """78 in from two widths: 20 + 40 + 20 less four half-inch allowances; both seams 19 1/2 in off the middle."""
    panels = arrange(78, 40, 0.5, off_middle=6, narrowest=4)
    assert (20.0, 40.0, 20.0) == panels.widths
    assert (-19.5, 19.5) == panels.seams_at


def test_a_part_panel_is_never_a_sliver() -> None:
    """41 in could be 40 + 2; it is cut 38 + 4 instead (38 + 4 - 1 = 41)."""
    assert (38.0, 4.0) == arrange(41, 40, 0.5, off_middle=6, narrowest=4).widths


def test_a_fabric_that_its_seams_use_up_is_refused() -> None:
    """A backing fabric 1 in wide cannot be joined with half-inch seams."""
    with pytest.raises(BuildError, match="used up by its seams"):
        backing_ways(20, 20, 1, BackingFabric(1.0))


def test_the_smallest_purchase_is_kept() -> None:
    """A coaster's backing needs 7 1/2 in; nobody cuts less than 1/4 yd."""
    assert 9.0 == backing_ways(6.5, 6.5, 1, BackingFabric(40))[0].buy_in


@given(across=quarters(10, 300), usable=quarters(30, 60), seam=st.sampled_from([0.25, 0.5]))
def test_the_fewest_widths_reach_and_one_fewer_would_not(across: float, usable: float, seam: float) -> None:
    """The count of widths is enough when joined, and the least that is."""
    count = widths_needed(across, usable, seam)
    assert joined_width(count, usable, seam) >= across - 1e-6
    assert count == 1 or joined_width(count - 1, usable, seam) < across - 1e-6


@given(across=quarters(41, 300), usable=quarters(30, 40), seam=st.sampled_from([0.25, 0.5]))
def test_joined_panels_are_as_wide_as_the_backing_and_come_out_of_its_widths(
    across: float, usable: float, seam: float
) -> None:
    """Panels less two allowances a seam make the size; none is wider than the fabric; halves share a width."""
    panels = arrange(across, usable, seam, off_middle=6, narrowest=4)
    assert across == pytest.approx(sum(panels.widths) - 2 * seam * (len(panels.widths) - 1))
    assert max(panels.widths) <= usable + 1e-6
    assert min(panels.widths) >= 4 - 1e-6
    count = widths_needed(across, usable, seam)
    parts = [width for width in panels.widths if width <= usable / 2 + 1e-6]
    full = len(panels.widths) - len(parts)
    assert full + (ceil(len(parts) / floor(usable / max(parts) + 1e-6)) if parts else 0) <= count
    assert all(abs(place) < across / 2 for place in panels.seams_at)


@given(across=quarters(41, 300), usable=quarters(30, 40))
def test_a_seam_stays_near_the_middle_only_when_no_room_is_left(across: float, usable: float) -> None:
    """With 12 in of width to spare the seams can always keep 6 in off the middle."""
    count = widths_needed(across, usable, 0.5)
    assume(joined_width(count, usable, 0.5) - across >= 12)
    assert arrange(across, usable, 0.5, off_middle=6, narrowest=4).off_middle >= 6 - 1e-6


@given(across=quarters(41, 300), usable=quarters(30, 60))
def test_a_full_width_in_the_middle_keeps_every_seam_off_it(across: float, usable: float) -> None:
    """The middle lies in the middle of a panel, so the nearest seam is half a width less its allowance away."""
    assume(across > usable)
    panels = with_full_middle(across, usable, 0.5)
    assert usable / 2 - 0.5 == pytest.approx(panels.off_middle)
    assert across == pytest.approx(sum(panels.widths) - (len(panels.widths) - 1))
    assert max(panels.widths) <= usable + 1e-6


@given(wide=quarters(5, 60), high=quarters(5, 60), how_many=st.integers(1, 12))
def test_no_way_takes_less_fabric_than_the_pieces_cover(wide: float, high: float, how_many: int) -> None:
    """Length times width of the fabric is at least the area of the backings; the purchase is at least the need."""
    for way in backing_ways(wide, high, how_many, BackingFabric(40)):
        assert (way.length_in - 1) * 40 >= how_many * wide * high - 1e-6
        assert way.buy_in >= way.length_in - 1e-6
    one_way = backing_ways(wide, high, how_many, BackingFabric(40, is_one_way=True))
    assert 1 == len(one_way)
    assert one_way[0].buy_in >= backing_ways(wide, high, how_many, BackingFabric(40))[0].buy_in
