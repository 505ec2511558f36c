"""The binding: need and made, strips, corners, widths, and where to start."""

from __future__ import annotations

import re
from itertools import cycle, pairwise
from math import hypot, sqrt, tan

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from stitchflip.errors import BuildError
from stitchflip.finishing import BindingPlan, corner_stop, plan_binding, with_strips
from stitchflip.finishing.binding_start import Keep, best_start, joins_from_start
from stitchflip.finishing.binding_strips import BindingStock, join_for_all, joined_length, least_strips, strips_needed
from stitchflip.finishing.binding_widths import DoubleFold, least_cut_width
from stitchflip.finishing.edges import corner_angles, trim_edges
from stitchflip.lengths import Unit
from stitchflip.piecing.model import CenterPoint
from tests.finishing.scenarios import CM, Laid, inches, kite_block, lantern_walk, morning_tray, snow_gate, tin_roof
from tests.strategies import quarters


def _planned(laid: Laid) -> BindingPlan:
    return plan_binding(laid.project, laid.numbers, laid.trim)


@pytest.mark.parametrize(
    ("laid", "unit", "need", "strips", "made"),
    [
        (lantern_walk(), 1, 111.8, 3, 115),  # 98.77 + 10 + 6 x 1/2; 3 x 40 - 2 x 2 1/2
        (snow_gate(), 1, 90.9, 3, 115),  # 77.94 + 10 + 3; two would give 77 1/2
        (tin_roof(), 1, 148, 4, 153.25),  # 136 + 10 + 2; 4 x 40 - 3 x 2 1/4
        (morning_tray(), CM, 195, 2, 203.5),  # 164 + 25 + 6; 2 x 105 - 6 1/2
    ],
)
def test_need_and_made_with_diagonal_joins_charged(
    laid: Laid, unit: float, need: float, strips: int, made: float
) -> None:
    """Perimeter, tails and corners make the need; strips less one strip width a join make the length."""
    plan = _planned(laid)
    assert need == pytest.approx(plan.need / unit, abs=0.05)
    assert strips == plan.strips_per_piece
    assert made == pytest.approx(plan.made / unit)


def test_each_of_four_mats_is_bound_on_its_own() -> None:
    """Two strips a mat: eight for four, and no fewer can do."""
    plan = _planned(morning_tray())
    assert (8, 8) == (plan.strips, plan.bound)


def test_part_strips_of_pieces_alike_share_a_strip() -> None:
    """A coaster of 10 in: 40 + 12 = 52 needs a strip and 14 1/2 more (12 + 2 1/2), two of which come from one."""
    laid = inches({"wide": "10", "long": "10"}, how_many=4)
    assert 4 + 2 == _planned(laid).strips


def test_a_machine_sewn_binding_passes_the_stitching_by_7_mm() -> None:
    """6.5 cm cut, 0.75 cm seam, 3 mm thick: 3.25 - 3 x 0.75 - 0.3 = 0.7 cm; 0.75 cm more shows on the back."""
    plan = _planned(morning_tray())
    assert 0.7 == pytest.approx(plan.passes_stitching / CM)
    assert 1.45 == pytest.approx(plan.shows_on_back / CM)


def test_what_shows_and_what_passes_are_two_numbers() -> None:
    """2 1/2 in cut at 1/4 seam and 1/8 loft: 5/8 shows on the back, 3/8 passes the stitching."""
    plan = _planned(lantern_walk())
    assert (0.625, 0.375) == (plan.shows_on_back, plan.passes_stitching)


def test_the_narrowest_strip_and_the_rule_stand_beside_the_cut() -> None:
    """For a pass of 1/4 in: 2 (1/4 + 1/2 + 1/8 + 1/4) = 2 1/4; 4 x 1/4 + 1 = 2 passes by 1/8."""
    plan = _planned(lantern_walk())
    assert (2.25, 2.0, 0.125) == (plan.least_cut, plan.rule_cut, plan.rule_passes)


@pytest.mark.parametrize(
    ("angle", "stop"),
    [
        (90, 0.25),
        (60, 0.25 * sqrt(3)),
        (120, 0.25 / sqrt(3)),
        (135, 0.25 * (sqrt(2) - 1)),  # tan 67.5 = 1 + sqrt 2
    ],
)
def test_a_corner_is_stopped_where_the_two_stitching_lines_meet(angle: float, stop: float) -> None:
    """Seam over the tangent of half the angle."""
    assert stop == pytest.approx(corner_stop(angle, 0.25))


def test_corners_of_a_pointed_runner_and_a_hexagon() -> None:
    """Two tips of 90 and four shoulders of 135 degrees; six corners of 120."""
    runner = sorted(round(corner.angle, 6) for corner in _planned(lantern_walk()).corners)
    assert [90.0, 90.0, 135.0, 135.0, 135.0, 135.0] == runner
    assert [120.0] * 6 == pytest.approx([corner.angle for corner in _planned(snow_gate()).corners])


def test_with_two_strips_only_she_learns_what_to_add() -> None:
    """Two give 77 1/2 of 111 3/4; one piece of 37 in closes it, or two of 19 3/4 (each join costs 2 1/2)."""
    laid = lantern_walk()
    made, added = with_strips(laid.project, _planned(laid), 2)
    assert (77.5, 37.0, 19.75) == (made, added.one, added.two)
    assert 34.27 == pytest.approx(added.missing, abs=0.005)


def test_with_all_strips_nothing_is_to_add() -> None:
    """Three strips are enough for Lantern Walk."""
    laid = lantern_walk()
    _, added = with_strips(laid.project, _planned(laid), 3)
    assert (0.0, 0.0, 0.0) == (added.missing, added.one, added.two)


def test_strips_come_from_fabric_on_hand_when_none_can_be_bought() -> None:
    """17 1/2 x 20 1/2, squared by 1/2 both ways, gives seven 2 1/4 in strips of 20; six make 108 3/4."""
    quarter = {"wide": "17.5", "long": "20.5", "name": "fat quarter"}
    laid = inches(
        {"wide": "20", "long": "28"},
        {"binding_cut": 2.25},
        fabrics=[{"name": "Linen", "only_on_hand": True, "on_hand": [quarter]}],
    )
    plan = _planned(laid)  # 96 + 12 = 108
    assert (6, 20.0) == (plan.strips, plan.strip_length)
    assert 6 * 20 - 5 * 2.25 == plan.made


def test_precut_strips_are_joined_as_long_as_measured() -> None:
    """Precut strips of 2 1/2 x 42: two for 84 in less a join; one that is 2 in wide is no use."""
    strips = [{"wide": "2.5", "long": "42", "count": 5}, {"wide": "2", "long": "44", "count": 5}]
    laid = inches({"wide": "16", "long": "16"}, fabrics=[{"name": "Linen", "precut": True, "on_hand": strips}])
    assert 2 * 42 - 2.5 == _planned(laid).made  # 64 + 12 = 76


def test_washing_before_cutting_shortens_the_strips() -> None:
    """40 in less 4 % are 38.4: three strips give 110.2, short of 111.8, so four are needed."""
    numbers = {"spare_x": 1.0, "spare_y": 1.5, "prewash_across": 0.04}
    plan = _planned(inches({"wide": "13", "long": "44", "ends": "pointed"}, numbers))
    assert (4, 38.4) == pytest.approx((plan.strips, plan.strip_length))


def test_strips_no_longer_than_their_joins_are_refused() -> None:
    """Strips of 2 in joined at 2 1/2 in get no longer."""
    with pytest.raises(BuildError, match="used up by joins"):
        strips_needed(50, 2, 2.5)


def test_strips_a_hair_longer_than_their_joins_are_refused() -> None:
    """Strips that add a thousandth of an inch each would be fifty thousand for a placemat."""
    with pytest.raises(BuildError, match="used up by joins"):
        strips_needed(50, 2.501, 2.5)


def test_joins_lie_a_strip_less_its_join_apart() -> None:
    """40 in strips, 2 1/2 in joins, 8 in tail: first join at 40 - 1 1/4 - 8 = 30 3/4, the next 37 1/2 on."""
    assert (30.75, 68.25) == _planned(lantern_walk()).joins_at


def test_the_start_says_where_on_which_edge() -> None:
    """The start is on a long edge, with its distance from a corner that the maker can find, and which way to go."""
    words = _planned(lantern_walk()).start_at.replace("\u202f", " ")
    assert words.startswith("on the right edge, ")
    assert "in from its corner with the lower right edge, and sew toward the upper right edge;" in words
    assert "every join then lies 2 in or more from corners and points" in words


def test_a_numbered_side_is_no_edge_twice() -> None:
    """A hexagon's sides are numbered: "on side 1", not "on the side 1 edge"."""
    words = _planned(snow_gate()).start_at
    assert words.startswith("on side 1, ")
    assert "from its corner with side 6, and sew toward side 2;" in words


def test_a_first_strip_is_cut_shorter_when_no_start_keeps_the_join_off() -> None:
    """On 8 1/2 in sides, started near the middle, a join 30 3/4 on falls by a corner; there is binding to spare."""
    plan = _planned(kite_block())
    assert "the first strip cut" in plan.start_at
    assert "2\u202fin or more from corners" in plan.start_at


def test_joins_keep_off_points_that_come_close_to_an_edge() -> None:
    """With a point 1 in from the right edge, no join lies within 2 in of its foot."""
    laid = lantern_walk()
    first = plan_binding(laid.project, laid.numbers, laid.trim)
    place = _walk(laid, first)[0]
    inward = _inward(place)
    point = CenterPoint((inward[0] / 0.985, inward[1] / 0.985), 1.0, 1.0, 0.75, "a point", points_at_edge=True)
    second = plan_binding(laid.project, laid.numbers, laid.trim, [point])
    for join in _walk(laid, second):
        assert hypot(join[0] - place[0], join[1] - place[1]) >= 2 - 1e-6


def _inward(place: tuple[float, float]) -> tuple[float, float]:
    """A place half an inch nearer to the center mark in both directions."""
    x, y = place
    return x - 0.5 * (x > 0) + 0.5 * (x < 0), y


def _walk(laid: Laid, plan: BindingPlan, *, away: bool = False) -> list[tuple[float, float]]:
    """Where the joins lie, walking corner to corner from the named start toward the named edge (or away from it)."""
    words = plan.start_at.replace("\u202f", " ").replace("\u2009", " ").split(";")[0]
    name, corner_with, toward = (
        found.group(1)
        for found in (
            re.search(r"on (?:the )?([a-z0-9 ]+?)(?: edge)?,", words),
            re.search(r"its corner with (?:the )?([a-z0-9 ]+?)(?: edge)?,", words),
            re.search(r"and sew toward (?:the )?([a-z0-9 ]+?)(?: edge)?$", words),
        )
        if found is not None
    )
    along = _read(words.split(", ")[1].split(" in from")[0])
    ends = {edge.name: (edge.start, edge.end) for edge in trim_edges(laid.project, laid.trim)}
    (behind,) = set(ends[name]) & set(ends[corner_with])
    (ahead,) = set(ends[name]) & set(ends[toward])
    if away:
        behind, ahead = ahead, behind
        along = hypot(ahead[0] - behind[0], ahead[1] - behind[1]) - along
    corners = list(laid.trim)
    if corners[(corners.index(behind) + 1) % len(corners)] != ahead:
        corners.reverse()
    place = corners.index(behind)
    assert ahead == corners[(place + 1) % len(corners)]
    path = corners[place:] + corners[: place + 1]
    return [_on_path(path, along + join) for join in plan.joins_at]


def _on_path(path: list[tuple[float, float]], left: float) -> tuple[float, float]:
    """The place so far along a closed way."""
    for (x0, y0), (x1, y1) in cycle(pairwise(path)):
        length = hypot(x1 - x0, y1 - y0)
        if left <= length:
            return x0 + (x1 - x0) * left / length, y0 + (y1 - y0) * left / length
        left -= length
    raise AssertionError


def _read(text: str) -> float:
    signs = {"¼": 0.25, "½": 0.5, "¾": 0.75}
    whole = text.rstrip("¼½¾")
    return float(whole or 0) + sum(signs[sign] for sign in text if sign in signs)


@pytest.mark.parametrize("laid", [lantern_walk(), tin_roof(), snow_gate(), inches({"wide": "20", "long": "30"})])
def test_joins_found_by_walking_the_edge_are_2_in_from_every_corner(laid: Laid) -> None:
    """The start in words, walked toward the edge that the words name, brings no join within 2 in of a corner."""
    for x, y in _walk(laid, _planned(laid)):
        assert min(hypot(x - cx, y - cy) for cx, cy in laid.trim) >= 2 - 1e-6


def test_sewn_the_other_way_the_joins_come_too_near_a_corner() -> None:
    """On 12 x 56 from 27 1/2 in up the right edge: joins at 30 7/8, 68 5/8, 106 3/8; the words' way matters.

    Toward the top the nearest is 27 1/2 + 106 3/8 - 124 = 9 7/8 along the 12 of the bottom, so 2 1/8 off a corner;
    toward the bottom it is 28 1/2 + 106 3/8 - 124 = 10 7/8 along the top, so 1 1/8 off.
    """
    laid = tin_roof()
    plan = _planned(laid)
    assert "27½ in from its corner with the bottom edge" in plan.start_at.replace("\u202f", " ")
    assert (2.125, 1.125) == pytest.approx(tuple(_nearest(laid, _walk(laid, plan, away=one)) for one in (False, True)))


def _nearest(laid: Laid, places: list[tuple[float, float]]) -> float:
    """The least distance of a place from a corner."""
    return min(hypot(x - cx, y - cy) for x, y in places for cx, cy in laid.trim)


@given(wide=quarters(15, 60), long=quarters(15, 80), strip=st.sampled_from([21.0, 40.0, 42.0]))
def test_a_start_keeps_6_in_off_corners_whenever_it_keeps_the_joins_off(wide: float, long: float, strip: float) -> None:
    """The start found is the better of all starts: no other on the grid keeps more of both wishes."""
    laid = inches({"wide": str(wide), "long": str(long)})
    sides = trim_edges(laid.project, laid.trim)
    lengths = [strip] * strips_needed(2 * (wide + long) + 12, strip, 2.5)
    keep = Keep.of(Unit.INCH, 2.5)
    start = best_start(sides, lengths, keep)
    joins = joins_from_start(lengths, keep, 2 * (wide + long))
    corners = [0.0, wide, wide + long, 2 * wide + long, 2 * (wide + long)]

    def kept(place: float) -> float:
        round_about = [(place + join) % corners[-1] for join in joins]
        off = min((abs(one - corner) for one in round_about for corner in corners), default=99.0)
        return min(1, min(abs(place - corner) for corner in corners) / 6, off / 2)

    best = max(kept(count / 4) for count in range(int(corners[-1] * 4)))
    found = kept([0.0, wide, wide + long, 2 * wide + long][start.edge] + start.along)
    assert found >= min(1, best) - 0.05  # the grid of each edge begins at its own corner


@given(
    need=quarters(10, 500),
    strip=quarters(15, 60),
    cut=st.sampled_from([2.0, 2.25, 2.5, 3.5]),
    how_many=st.integers(1, 12),
)
def test_strips_are_enough_and_one_fewer_would_not_do(need: float, strip: float, cut: float, how_many: int) -> None:
    """Made is at least the need; a piece's strips less one are too short; no count is under the bound."""
    joined = join_for_all(need, cut, how_many, BindingStock((), strip))
    assert joined.made >= need - 1e-6
    assert joined.made == pytest.approx(joined_length(joined.lengths, cut))
    one_fewer = joined_length([strip] * (len(joined.lengths) - 1), cut)
    assert len(joined.lengths) == 1 or one_fewer < need - 1e-6
    assert least_strips(need, cut, how_many, strip) <= joined.strips <= how_many * len(joined.lengths)


@given(need=quarters(10, 200), lengths=st.lists(quarters(12, 45), min_size=1, max_size=8))
def test_strips_on_hand_are_taken_longest_first(need: float, lengths: list[float]) -> None:
    """No choice of as many or fewer strips on hand would be longer."""
    stock = BindingStock(tuple(sorted(lengths, reverse=True)), 40.0)
    joined = join_for_all(need, 2.5, 1, stock)
    assume(len(joined.lengths) <= len(lengths))
    best_of_fewer = joined_length(stock.on_hand[: len(joined.lengths) - 1], 2.5)
    assert joined.made >= need - 1e-6
    assert best_of_fewer < need - 1e-6 or len(joined.lengths) == 1


@given(
    seam=st.sampled_from([0.25, 0.375]),
    front=quarters(0.25, 1),
    loft=st.sampled_from([0.0, 0.125, 0.25]),
    passes=st.sampled_from([0.125, 0.25]),
)
def test_the_least_width_passes_by_just_as_much_as_wished(
    seam: float, front: float, loft: float, passes: float
) -> None:
    """Sewn and folded, a strip cut to the least width reaches exactly so far beyond the stitching."""
    cut = least_cut_width(seam, front, loft, passes)
    folded = cut / 2
    assert passes == pytest.approx(folded - seam - front - loft - front)
    assert passes == pytest.approx(DoubleFold(cut, seam, front, loft).passes_stitching)


@given(sides=st.integers(3, 12), turned=st.floats(0, 90))
def test_corner_angles_of_a_regular_shape_add_up(sides: int, turned: float) -> None:
    """Inside angles of n corners add up to (n - 2) x 180 degrees, all alike."""
    laid = inches({"shape": "polygon", "sides": sides, "across_flats": "20", "turned": turned})
    angles = corner_angles(trim_edges(laid.project, laid.trim))
    assert [180 - 360 / sides] * sides == pytest.approx(angles, abs=1e-5)
    stop = corner_stop(angles[0], 0.25)
    assert 0.25 == pytest.approx(stop * tan((180 - 360 / sides) * 3.141592653589793 / 360), abs=1e-6)
