"""Rounds with corner squares: pieced strips whose joining seams meet the seams of the first pair."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.errors import BuildError
from stitchflip.lengths import Length
from stitchflip.piecing import build_project
from stitchflip.piecing.model import Build, Section, SewnPiece
from stitchflip.project.model import ShortStrip
from tests.strategies import cut_widths, numbers_of_a_maker, quarters
from tests.twins.script import area_of
from tests.twins.table import house, project, trim


def blocks(*rounds: dict[str, Any], wide: float = 4, long: float = 4, **parts: Any) -> Any:
    """Rounds with squares of plum round a center of linen, in a trim that takes nothing off."""
    return project(
        **{
            "squared_up": trim(60, 60),
            "fabrics": [{"name": "Linen"}, {"name": "Plum"}, {"name": "Oat"}],
            "center": {"fabric": "Linen", "cut_wide": str(wide), "cut_long": str(long)},
            "building": {"way": "rounds with corner squares"},
            "rounds": list(rounds),
            **parts,
        }
    )


def of_width(*cuts: float) -> dict[str, Any]:
    """A round: one width for all four strips, or four in the order sewn."""
    width: dict[str, Any] = {"cut": str(cuts[0])} if len(cuts) == 1 else {"cuts": [str(cut) for cut in cuts]}
    return {"fabric": "Oat", "corner_fabric": "Plum", **width}


def middle(strip: SewnPiece) -> Section:
    """The stretch between the squares."""
    assert ["Plum", "Oat", "Plum"] == [section.fabric for section in strip.sections]
    return strip.sections[1]


def pieced(build: Build) -> list[SewnPiece]:
    """The strips with squares."""
    return [strip for strip in build.strips if strip.sections]


def test_all_four_strips_of_a_round_are_cut_the_same_length() -> None:
    """Center 4, strips 2, seam 1/4: 4, then 4 + 2 x 1 1/2 = 7, then 10; the squares are 2."""
    build = build_project(blocks(of_width(2), of_width(2), of_width(2)), house())

    for number, length in ((1, 4.0), (2, 7.0), (3, 10.0)):
        first, second = [
            [strip for strip in build.strips if strip.round == number and bool(strip.sections) == has_squares]
            for has_squares in (False, True)
        ]
        assert [length, length] == pytest.approx([strip.cut_length for strip in first])
        assert [length, length] == pytest.approx([middle(strip).cut_length for strip in second])
        assert [2.0] * 4 == pytest.approx([s.sections[end].cut_length for s in second for end in (0, 2)])


def test_pieced_strip_measures_its_parts_less_two_allowances_a_join() -> None:
    """2 + 4 + 2 - 4 x 1/4 = 7, which is as long as the edge it goes on."""
    strip = pieced(build_project(blocks(of_width(2)), house()))[0]

    assert pytest.approx(7.0) == strip.cut_length
    assert pytest.approx(7.0) == strip.full_length


def test_rounds_go_on_like_courthouse_steps() -> None:
    """First pair top and bottom, unless the maker names another; the squares are in the second pair."""
    build = build_project(blocks(of_width(2)), house())
    other: dict[str, Any] = {"building": {"way": "rounds with corner squares", "first_pair": ["left", "right"]}}

    assert [("top", 0), ("bottom", 0), ("left", 3), ("right", 3)] == [
        (strip.side, len(strip.sections)) for strip in build.strips
    ]
    assert ["top", "bottom"] == [strip.side for strip in pieced(build_project(blocks(of_width(2), **other), house()))]


@settings(max_examples=40, deadline=None)
@given(
    wide=quarters(2, 7),
    long=quarters(2, 7),
    cuts=st.lists(st.tuples(*[cut_widths()] * 4), min_size=1, max_size=3),
    numbers=numbers_of_a_maker(),
)
def test_joining_seams_lie_on_the_seams_of_the_first_pair(wide: float, long: float, cuts: Any, numbers: Any) -> None:
    """With any four widths and any seam; and each square is as long as the first pair's strip beside it is wide."""
    build = build_project(blocks(*[of_width(*four) for four in cuts], wide=wide, long=long), numbers)

    for strip in pieced(build):
        left, right = (
            next(one for one in build.strips if one.round == strip.round and one.side == side)
            for side in (("bottom", "top") if strip.side == "right" else ("top", "bottom"))
        )
        start, between, end = strip.sections
        assert [-left.seam_at, right.seam_at] == pytest.approx([between.low, between.high])
        assert [start.high, end.low] == [between.low, between.high]
        assert [left.cut_width, right.cut_width] == pytest.approx([start.cut_length, end.cut_length])


@settings(max_examples=25, deadline=None)
@given(cuts=st.lists(cut_widths(), min_size=1, max_size=3), size=quarters(5, 14), numbers=numbers_of_a_maker())
def test_what_shows_of_the_parts_is_what_shows_of_the_strip(cuts: list[float], size: float, numbers: Any) -> None:
    """The joining seams divide a strip and neither add nor lose fabric, wherever the trim edge runs."""
    build = build_project(blocks(*[of_width(cut) for cut in cuts], squared_up=trim(size, size)), numbers)

    for strip in pieced(build):
        for whole, parts in (
            (strip.visible, [polygon for section in strip.sections for polygon in section.visible]),
            (strip.shown, [polygon for section in strip.sections for polygon in section.shown]),
        ):
            assert pytest.approx(sum(map(area_of, whole)), abs=1e-6) == sum(map(area_of, parts))


def test_unequal_pairs_make_rectangles_in_the_corners() -> None:
    """First pair 3, second pair 2: each corner piece is 2 wide and 3 long, and shows 1 1/2 x 2 1/2 once enclosed."""
    build = build_project(blocks(of_width(3, 3, 2, 2), of_width(2)), house())

    for strip in pieced(build)[:2]:
        assert [2.0, 3.0, 3.0] == [strip.cut_width, strip.sections[0].cut_length, strip.sections[2].cut_length]
        assert [1.5 * 2.5, 1.5 * 2.5] == pytest.approx([area_of(strip.sections[end].visible[0]) for end in (0, 2)])


def test_squares_alone_show_in_the_corners_of_a_round() -> None:
    """Strips 2 show 1 1/2: the corner from 1 3/4 to 3 1/4 both ways is one plum square of the right strip."""
    build = build_project(blocks(of_width(2), of_width(2)), house())
    right = next(strip for strip in pieced(build) if strip.side == "right")
    (square,) = right.sections[2].visible

    assert {(1.75, 1.75), (3.25, 1.75), (3.25, 3.25), (1.75, 3.25)} == {(round(x, 9), round(y, 9)) for x, y in square}


def test_a_side_that_needs_no_strip_gets_no_squares() -> None:
    """Long center in a low piece: until it is covered only the short sides grow, by plain strips."""
    parts = {
        "squared_up": trim(12, 4),
        "building": {"way": "rounds with corner squares", "until_covered": True},
    }
    build = build_project(blocks(of_width(2), wide=4, long=6, **parts), house())

    assert {"left", "right"} == {strip.side for strip in build.strips}
    assert [] == pieced(build)
    assert [] == list(build.bare)


def test_strip_sewn_too_short_shows_less_of_its_square() -> None:
    """An inch short at its end, the upper square of the right strip ends an inch sooner: 3/4 of 1 3/4 is left."""
    short = ShortStrip(step=4, long=Length.of_inches(6), from_start=Length.of_inches(0))
    laid = blocks(of_width(2)).model_copy(update={"short_strips": (short,)})
    build = build_project(laid, house())
    (square,) = build.strips[3].sections[2].visible

    assert pytest.approx(0.75 * 1.75) == area_of(square)


def test_slanted_sides_are_refused() -> None:
    """A leaning center of four sides has no room for squares."""
    leaning = {"fabric": "Linen", "corners": [[-3, -2], [2, -2], [3, 2], [-2, 2]]}

    with pytest.raises(BuildError, match="square to each other") as caught:
        build_project(blocks(of_width(2), center=leaning, building=_leaning()), house())

    assert "build.corners-not-square" == caught.value.code


def _leaning() -> dict[str, Any]:
    return {"way": "rounds with corner squares", "first_pair": ["side 1", "side 3"]}


def test_six_sides_are_refused() -> None:
    """A hexagon has no first and second pair."""
    hexagon = {"fabric": "Linen", "sides": 6, "cut": "4"}
    building = {"way": "rounds with corner squares", "first_pair": ["side 1", "side 4"]}

    with pytest.raises(BuildError, match="four sides"):
        build_project(blocks(of_width(2), center=hexagon, building=building), house())


def test_round_without_a_fabric_for_its_squares_is_refused() -> None:
    """The error names the round and what to write."""
    bare = {"cut": "2", "fabric": "Oat"}

    with pytest.raises(BuildError, match="round 2 names no fabric") as caught:
        build_project(blocks(of_width(2), bare), house())

    assert "build.no-corner-fabric" == caught.value.code
    assert "corner_fabric" in caught.value.fix
