"""A half-done piece in the middle: measured with the tape, stitched already, and the strips go on round it."""

from typing import Any

import pytest

from stitchflip.lengths import Length
from stitchflip.piecing import build_project
from stitchflip.piecing.model import Build
from stitchflip.planning import plan
from stitchflip.planning.findings import geometry_findings, see
from stitchflip.project.model import Project, ShortStrip
from tests.twins.script import area_of
from tests.twins.table import house, project, rounds, trim


def found(**parts: Any) -> Project:
    """Sixteen and a quarter by twenty-two, sewn long ago on a base of 20 x 30, to be squared up at 18 x 26."""
    center = {"fabric": "Linen", "cut_wide": "16 1/4", "cut_long": "22", "sewn_already": True}
    return project(
        **{
            "squared_up": trim(18, 26),
            "base": {"wide": "20", "long": "30"},
            "center": {**center, **parts.pop("center", {})},
            "building": {"way": "log cabin", "until_covered": True},
            "rounds": rounds(2.5),
            "fabrics": [{"name": "Linen"}, {"name": "Oat"}],
            "binding": {"fabric": "Oat"},
            **parts,
        }
    )


def built(laid: Project, **numbers: float) -> Build:
    """Its build."""
    return build_project(laid, house(**numbers))


def test_strips_go_on_round_it_until_the_base_is_covered() -> None:
    """Half of 16 1/4 is 8 1/8, and a strip of 2 1/2 adds 2: 10 1/8, past 9 and 1/4.

    Half of 22 is 11, then 13: that is the trim edge and the reach is missing, so top and bottom take a second strip.
    """
    build = built(found())

    assert ["top", "right", "bottom", "left", "top", "bottom"] == [strip.side for strip in build.strips]
    assert [16.25, 24, 18.25] == pytest.approx([strip.full_length for strip in build.strips[:3]])
    assert () == build.bare


def test_it_was_measured_with_the_tape() -> None:
    """Drawn in by 4 % and 2 %: 16 1/4 on the tape lay at 16.25 / 0.96 on the base, 22 at 22 / 0.98."""
    first = built(found(), draw_up_x=0.04, draw_up_y=0.02).pieces[0].opened
    xs, ys = [x for x, _ in first], [y for _, y in first]

    assert pytest.approx(16.25 / 0.96) == max(xs) - min(xs)
    assert pytest.approx(22 / 0.98) == max(ys) - min(ys)


def test_nothing_is_cut_for_it() -> None:
    """The cutting list has strips and a binding of oat, and no linen."""
    made = plan(found(rounds=[{"cut": "2 1/2", "fabric": "Oat"}]), with_cures=False)

    assert {"Oat"} == set(made.pieces_by_fabric)
    assert "Center" not in {piece.name for piece in made.pieces}


def test_its_corners_are_no_points() -> None:
    """Nothing is measured beyond them, on point or not."""
    turned = found(center={"turned": 45}, squared_up=trim(29, 29), base={"wide": "34", "long": "34"})

    for laid in (found(), turned):
        assert () == built(laid).points
        assert [] == [one.code for one in geometry_findings(see(laid)) if one.code.startswith("points.")]


def test_widest_unstitched_place_lies_outside_it() -> None:
    """Its 16 1/4 x 22 are stitched; a strip of 2 1/2 shows 2 between seams, and the corners of the trim no more."""
    gap = built(found()).widest_gap

    assert gap.step > 0
    assert pytest.approx(2) == gap.diameter
    cut = found(center={"sewn_already": False})
    assert pytest.approx(15.75) == built(cut).widest_gap.diameter


def test_widest_place_stays_outside_it_where_batting_shows() -> None:
    """One strip on top only, squared up at 22 x 26: the other sides stay open, bare and unstitched.

    From where strips would be sewn to it, 7 7/8 and 10 3/4 from the mark, it is 3 1/8 to the left and 2 1/4 to the
    lower edge. A circle in that corner touches both edges and the piece's corner: (3.125 - r)² + (2.25 - r)² = r²,
    so r = 5.375 - root(2 x 3.125 x 2.25) = 5.375 - 3.75 = 1.625.
    """
    steps = [{"side": "top", "cut": "2 1/2", "fabric": "Oat"}]
    gap = built(
        found(squared_up=trim(22, 26), building={"way": "sides in my order"}, rounds=[], steps=steps)
    ).widest_gap

    assert pytest.approx(3.25, abs=0.02) == gap.diameter
    assert abs(gap.center[0]) > 7.875


def test_widest_place_stays_outside_it_when_a_strip_was_cut_too_short() -> None:
    """The general way of measuring sees the 2 in between the seams too, and nothing inside the piece."""
    short = ShortStrip(step=1, long=Length.of_inches(10))
    gap = built(found().model_copy(update={"short_strips": (short,)})).widest_gap

    assert pytest.approx(2, abs=0.02) == gap.diameter


def test_any_outline_can_be_gone_on_from() -> None:
    """A five-sided piece by its corners: every side gets its strips and nothing stays bare.

    Its area: 5 high between 10 and 12 wide, 55, and a gable of 12 x 4 / 2 = 24.
    """
    corners = [[-5, -4], [5, -4], [6, 1], [0, 5], [-6, 1]]
    center = {"cut_wide": None, "cut_long": None, "corners": corners}
    laid = found(center=center, squared_up=trim(14, 12), building={"way": "round after round", "until_covered": True})
    build = built(laid)

    assert pytest.approx(79) == area_of(build.pieces[0].opened)
    assert {f"side {number}" for number in range(1, 6)} == {strip.side for strip in build.strips}
    assert () == build.bare


def test_larger_than_its_base_is_said_of_the_half_done_piece() -> None:
    """22 on a base of 20: it hangs over by 1 at both ends."""
    (finding,) = [
        one
        for one in geometry_findings(see(found(base={"wide": "20", "long": "20"})))
        if one.code == "base.center-larger"
    ]

    assert "half-done piece" in finding.what
    assert pytest.approx(1, abs=0.2) == finding.numbers["over_in"]


def test_polygon_can_be_gone_on_from() -> None:
    """A hexagon 12 from flat to flat has an area of 2 root 3 x 6²."""
    center = {"cut_wide": None, "cut_long": None, "sides": 6, "cut": "12"}
    build = built(found(center=center, building={"way": "round after round", "until_covered": True}))

    assert pytest.approx(2 * 3**0.5 * 36) == area_of(build.pieces[0].opened)
    assert () == build.bare
