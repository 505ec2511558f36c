"""Stitch-and-flip corners: squares on the corners of one patch, sewn from corner to corner."""

from math import sqrt
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.errors import BuildError
from stitchflip.piecing import build_project
from stitchflip.piecing.model import Build, EndClass
from stitchflip.piecing.ways.folded_corners import bonus_half_square, square_for_leg
from stitchflip.planning.findings import geometry_findings, see
from stitchflip.planning.model import Finding, Severity
from stitchflip.project.changes import apply_changes
from stitchflip.project.model import Project
from tests.strategies import numbers_of_a_maker, quarters
from tests.twins.script import area_of
from tests.twins.table import house, project, rounds, trim


def patch(*cuts: float | tuple[float, ...], wide: float = 8, long: float = 8, **parts: Any) -> Project:
    """A patch of linen with squares of these sides on its corners, squared up at its raw edges."""
    return project(
        **{
            "squared_up": trim(wide, long),
            "center": {"fabric": "Linen", "cut_wide": str(wide), "cut_long": str(long)},
            "building": {"way": "stitch-and-flip corners"},
            "rounds": rounds(*cuts),
            **parts,
        }
    )


def built(laid: Project, **numbers: float) -> Build:
    """Its build, with nothing asked beyond the raw edges."""
    return build_project(laid, house(**{"reach": 0.0, **numbers}))


def overlaps(laid: Project) -> list[Finding]:
    """What is found about corners that cut into each other."""
    return [finding for finding in geometry_findings(see(laid)) if finding.code == "corners.cut-into-each-other"]


def test_flipped_square_lies_exactly_on_the_corner_it_covers() -> None:
    """Side 3 on a patch from -4 to 4: the seam runs from (1, 4) to (4, 1), the free corner lies on (4, 4)."""
    upper_right = built(patch(3)).strips[0]
    (triangle,) = upper_right.visible

    assert {(1.0, 4.0), (4.0, 1.0), (4.0, 4.0)} == {(round(x, 9), round(y, 9)) for x, y in triangle}
    assert pytest.approx(5 / sqrt(2)) == upper_right.seam_at
    assert pytest.approx(8 / sqrt(2)) == upper_right.raw_edge_at
    assert 3.0 == upper_right.square_cut


def test_seam_meets_the_finished_edges_two_allowances_nearer_the_corner() -> None:
    """Side 3, seam 1/4: along the finished edge, 3 3/4 out, the seam lies at 1 1/4; 3 3/4 - 1 1/4 = 2 1/2 is left."""
    seam = built(patch(3)).strips[0].seam_at * sqrt(2)

    assert pytest.approx(2.5) == 3.75 - (seam - 3.75)


@settings(max_examples=40, deadline=None)
@given(side=quarters(1.25, 4), wide=quarters(5, 18), long=quarters(5, 18), numbers=numbers_of_a_maker())
def test_finished_leg_is_the_square_less_two_allowances(side: float, wide: float, long: float, numbers: Any) -> None:
    """On any rectangle, by any seam, at each of its corners, along both edges."""
    build = build_project(patch(side, wide=wide, long=long), numbers)
    seam = numbers.effective_seam

    for strip in build.strips:
        nx, ny = strip.normal
        finished = (abs(nx) / nx * (wide / 2 - seam), abs(ny) / ny * (long / 2 - seam))
        from_corner = nx * finished[0] + ny * finished[1] - strip.seam_at
        assert pytest.approx(side - 2 * seam) == from_corner * sqrt(2)


@settings(max_examples=30, deadline=None)
@given(sides=st.tuples(*[quarters(1, 3)] * 4), numbers=numbers_of_a_maker())
def test_patch_and_corners_together_fill_the_patch(sides: tuple[float, ...], numbers: Any) -> None:
    """Four squares of any sides up to 3 on a patch of 8: what shows adds up to 8 x 8, and nothing is bare.

    Each triangle shows s²/2; the patch keeps the rest.
    """
    flat = house(seam=numbers.seam, fold_loss=numbers.fold_loss, reach=0.0)
    build = build_project(patch(sides), flat)

    assert [side**2 / 2 for side in sides] == pytest.approx([area_of(strip.visible[0]) for strip in build.strips])
    assert pytest.approx(64 - sum(side**2 / 2 for side in sides)) == area_of(build.pieces[0].visible[0])
    assert [] == list(build.bare)


def test_corners_come_counter_clockwise_from_the_upper_right() -> None:
    """Left to itself; from another corner when the maker says where she starts; or just those she names."""

    def names(**building: Any) -> list[str]:
        laid = patch(2, building={"way": "stitch-and-flip corners", **building})
        return [strip.side for strip in built(laid).strips]

    assert ["upper right corner", "upper left corner", "lower left corner", "lower right corner"] == names()
    assert "lower left corner" == names(start="lower left")[0]
    assert "lower right corner" == names(start="lower left")[1]
    assert ["lower right corner", "upper left corner"] == names(corners=["lower right", "upper left"])


def test_corners_of_a_patch_on_point_are_called_by_where_they_lie() -> None:
    """Turned by 45 degrees they lie at the right, the top, the left and the bottom."""
    laid = patch(2, center={"fabric": "Linen", "cut": "8", "turned": 45}, squared_up=trim(11, 11))

    assert {"right corner", "top corner", "left corner", "bottom corner"} == {
        strip.side for strip in built(laid).strips
    }


def test_second_round_lies_on_the_first() -> None:
    """A square of 2 on a corner of 4: the first shows 16/2 - 4/2 = 6 of its 8 sq in."""
    build = built(patch(4, 2, wide=12, long=12))
    first, second = build.strips[0], build.strips[4]

    assert ("upper right corner", 1, 2) == (second.side, first.round, second.round)
    assert pytest.approx(6) == area_of(first.visible[0])
    assert pytest.approx(2) == area_of(second.visible[0])


def test_seam_of_each_corner_is_caught_in_the_binding() -> None:
    """It runs from raw edge to raw edge, so the binding catches both ends."""
    build = built(patch(3))

    for strip in build.strips:
        assert strip.seam is not None
        assert [EndClass.CAUGHT] * 2 == [strip.seam.start.kind, strip.seam.end.kind]
    assert () == build.notes


def test_squares_that_meet_at_the_finished_edge_are_in_order() -> None:
    """Patch 8, seam 1/4: 4 1/4 and 4 1/4 share 1/2 of the raw edge and meet where the next seam will run."""
    assert () == built(patch(4.25)).notes
    assert [] == overlaps(patch(4.25))


def test_points_are_where_two_seams_cross_not_where_one_runs_out() -> None:
    """Squares of 3 leave no point on a patch of 8; of 4 1/4 they leave four, 1/4 from the raw edge."""
    points = built(patch(4.25)).points

    assert () == built(patch(3)).points
    assert [0.25] * 4 == pytest.approx([point.to_trim_edge for point in points])


def test_larger_squares_cut_into_each_other() -> None:
    """4 1/2 and 4 1/2 on an edge of 8 with seams of 1/4: 9 - 8 1/2 = 1/2 too large; 4 1/4 would meet."""
    laid = patch(4.5, my_numbers={"fold_loss": "0", "draw_up": 0.0})
    (finding,) = overlaps(laid)

    assert Severity.FIX is finding.severity
    assert pytest.approx(0.5) == finding.numbers["over_in"]
    assert "½" in finding.what
    assert "4¼" in finding.cures[0].text
    assert [] == overlaps(apply_changes(laid, finding.cures[0].changes))


def test_two_corners_apart_do_not_cut_into_each_other() -> None:
    """Opposite corners share no edge: squares of 6 on a patch of 8 leave a band between their seams."""
    laid = patch(6, building={"way": "stitch-and-flip corners", "corners": ["upper right", "lower left"]})

    assert [] == overlaps(laid)
    assert pytest.approx(64 - 36) == area_of(built(laid).pieces[0].visible[0])


def test_small_corner_is_no_thin_strip() -> None:
    """A triangle with legs of 1 is small on purpose; only slivers are told."""
    codes = {finding.code for finding in geometry_findings(see(patch(1.5)))}

    assert "strip.thin-at-edge" not in codes
    assert "side.closes" not in codes


@pytest.mark.parametrize(
    ("center", "building", "code", "says"),
    [
        ({"sides": 6, "cut": "8"}, {}, "build.corner-not-right", "no right angle"),
        ({"shape": "half square", "cut": "8"}, {}, "build.corner-not-right", "no right angle"),
        ({"cut": "8"}, {"corners": ["left"]}, "build.no-such-side", "left"),
        ({"cut_wide": "12", "cut_long": "2 1/2"}, {}, "build.corner-larger", "only 2½"),
        ({"cut": "8"}, {"until_covered": True}, "build.covered-already", "covers everything"),
        ({"cut": "3"}, {}, "build.corners-cover-all", "lower left square nothing of the center"),
    ],
)
def test_corners_that_cannot_be_sewn_are_refused(
    center: dict[str, Any], building: dict[str, Any], code: str, says: str
) -> None:
    """The error says which corner and what would do."""
    way = {"way": "stitch-and-flip corners", **building}

    with pytest.raises(BuildError, match=says) as caught:
        built(patch(3, center={"fabric": "Linen", **center}, building=way))

    assert code == caught.value.code
    assert caught.value.fix


def test_half_square_takes_a_square_on_its_right_angle() -> None:
    """Its top corner is the one right angle."""
    center = {"fabric": "Linen", "shape": "half square", "cut": "8"}
    building = {"way": "stitch-and-flip corners", "corners": ["top"]}
    build = built(patch(3, center=center, building=building))

    assert ["top corner"] == [strip.side for strip in build.strips]
    assert pytest.approx(4.5) == area_of(build.strips[0].opened)


def test_square_for_a_finished_leg_has_both_allowances() -> None:
    """Leg 2 1/4 and seam 1/4: 2 3/4."""
    assert 2.75 == square_for_leg(2.25, 0.25)


def test_bonus_half_square_loses_the_distance_of_the_seams_on_the_slant() -> None:
    """Square 5, second seam 1/2 nearer: legs of 5 - 1/2 root 2 = 4.2929; a square of 1/2 leaves none."""
    assert pytest.approx(4.2929, abs=5e-5) == bonus_half_square(5)
    assert 0.0 == bonus_half_square(0.5)
