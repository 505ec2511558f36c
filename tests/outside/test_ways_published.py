"""Published figures of blocks with corner squares, folded corners and foundation patches, against builds of them.

Each value is as printed on the page named beside it (read in stored copies). Pages whose address carries a private
person's name are cited by title alone.
"""

from __future__ import annotations

from math import cos, radians, sin
from typing import Any

import pytest

from stitchflip.piecing import build_project
from stitchflip.piecing.model import Build
from stitchflip.piecing.patches import corner_square
from stitchflip.piecing.ways.foundation import patch_of
from stitchflip.planning.findings import geometry_findings, see
from stitchflip.project.model import Project
from tests.outside.blocks import logs
from tests.twins.script import area_of
from tests.twins.table import house, project, rounds, square, trim

# --- logs --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("center", "lengths"),
    [(2.5, [2.5, 3.5, 3.5, 4.5]), (4.5, [4.5, 5.5, 5.5, 6.5])],
)
def test_strips_a_quarter_wider_keep_their_lengths_and_are_trimmed_after_each_round(
    center: float, lengths: list[float]
) -> None:
    """1 3/4 in place of 1 1/2, the lengths as they are; a round of four passes its size by 1/4 and is trimmed to it.

    Piece Meal Quilts, Log cabin sampler block, https://piecemealquilts.com/2011/10/09/tyss-log-cabin-block/ . The
    lengths are those of a 6 in block with a center of 2 1/2 and eight logs of 1 1/2.
    """
    trimmed = center + 2
    build = build_project(
        project(squared_up=trim(trimmed, trimmed), center=square(center), rounds=rounds(1.75)), house(reach=0.0)
    )

    assert lengths == pytest.approx([strip.needed_length for strip in build.strips])
    assert [0.25] * 4 == pytest.approx([strip.raw_edge_at - trimmed / 2 for strip in build.strips])


def cornerstones() -> Build:
    """A block with a center of 3 1/2 and three rounds of strips cut 2, squares in the corners."""
    return build_project(
        project(
            squared_up=trim(12.5, 12.5),
            center=square(3.5),
            building={"way": "rounds with corner squares"},
            fabrics=[{"name": "Linen"}, {"name": "Plum"}],
            rounds=[{"fabric": "Linen", "cut": "2", "corner_fabric": "Plum"}] * 3,
        ),
        house(reach=0.0),
    )


def test_courthouse_steps_with_cornerstones() -> None:
    """12 in finished: strips 2 wide cut 3 1/2, 6 1/2 and 9 1/2, four of each, and twelve squares of 2.

    Courthouse Steps row of a quilt-along, 2015, https://littlebunnyquilts.blogspot.com/2015/03
    """
    build = cornerstones()
    plain = [strip.cut_length for strip in build.strips if not strip.sections]
    parts = [section for strip in build.strips for section in strip.sections]

    assert [3.5] * 4 + [6.5] * 4 + [9.5] * 4 == pytest.approx(
        sorted([*plain, *(section.cut_length for section in parts if section.fabric == "Linen")])
    )
    assert [2.0] * 12 == pytest.approx([section.cut_length for section in parts if section.fabric == "Plum"])
    assert {2.0} == {strip.cut_width for strip in build.strips}
    assert pytest.approx(12.5) == max(logs(build))


# --- folded corners ------------------------------------------------------------------------------------------------


def corners(patch: float, cut: float) -> Build:
    """A patch with a square of one side on each corner, laid as it is joined: raw edge to raw edge."""
    return build_project(
        project(
            squared_up=trim(patch, patch),
            center=square(patch),
            building={"way": "stitch-and-flip corners"},
            rounds=rounds(cut),
        ),
        house(reach=0.0),
    )


@pytest.mark.parametrize(("finished", "patch", "cut"), [(6, 6.5, 3.5), (12, 12.5, 6.5)])
def test_square_in_a_square_by_folded_corners_has_its_points_at_the_seam(
    finished: float, patch: float, cut: float
) -> None:
    """Finishing 6: base 6 1/2 and four squares 3 1/2; finishing 12: 12 1/2 and 6 1/2.

    Scissortail Quilting, Square in a Square unit,
    https://scissortailquilting.com/quilt-block-library/square-in-a-square/ . The inner square then has half of the
    finished area, its points 1/4 from the raw edge.
    """
    build = corners(patch, cut)

    assert pytest.approx(finished**2 / 2) == area_of(build.pieces[0].visible[0])
    assert [0.25] * 4 == pytest.approx([point.to_trim_edge for point in build.points])
    assert () == build.notes


@pytest.mark.parametrize("leg", [1, 1.5, 2, 2.5])
def test_folded_corner_is_cut_half_an_inch_larger_than_its_leg(leg: float) -> None:
    """Side of the square = finished leg + 1/2.

    The Basics of Stitch-and-Flip, https://www.canuckquilter.com/2024/03/the-basics-of-stitch-and-flip.html
    """
    seam = corners(8.5, leg + 0.5).strips[0]
    nx, ny = seam.normal
    # Along the finished edge y = 4 from the corner (4, 4) to the seam line.
    assert pytest.approx(leg) == 4 - (seam.seam_at - 4 * ny) / nx


def test_snowball_by_thirds() -> None:
    """Block finishing 6: corners cut 2 1/2, a third of 6 and 1/2; the seam then starts a third along the edge.

    Snowball Fight week two, https://www.katiemaequilts.com/blog/snowball-fight-week-two
    """
    seam = corners(6.5, 6 / 3 + 0.5).strips[0]
    nx, ny = seam.normal

    assert pytest.approx(6 / 3) == 3 - (seam.seam_at - 3 * ny) / nx


# --- foundation patches --------------------------------------------------------------------------------------------


def on_paper(*lines: Any, **building: Any) -> Project:
    """A foundation 14 x 14 with patch 1 in the middle and a patch along each line."""
    patches: list[dict[str, Any]] = [{"fabric": "Linen"}]
    patches += [{"fabric": "Linen" if place % 2 else "Plum", "line": line} for place, line in enumerate(lines)]
    return project(
        squared_up=trim(14, 14),
        building={"way": "numbered foundation", **building},
        fabrics=[{"name": "Linen"}, {"name": "Plum"}],
        patches=patches,
        my_numbers={"fold_loss": "0", "draw_up": 0.0},
    )


def area_between(deep: float, long: float) -> Project:
    """Patch 2 fills an area so deep from its line at x = 2, and so long; three more patches bound it."""
    half = long / 2
    return on_paper([[2, 0], [2, 1]], [[2 + deep, 0], [2 + deep, 1]], [[0, half], [1, half]], [[0, -half], [1, -half]])


def test_foundation_patch_is_at_least_an_inch_larger_than_its_area() -> None:
    """1/2 in on every side, so 1 in both ways, whatever the shape of the area.

    Cutting Patches for Paper Foundation Piecing, https://s31968.pcdn.co/stumbling-blocks-cutting-patches-for-paper-foundation-piecing/
    """
    lines = [[[2, 0], [3, 4]], [[-2, 0], [-3, 4]], [[0, 3], [4, 2]], [[1, -4], [-1, -3]]]
    build = build_project(on_paper(*lines), house())

    for patch in build.strips:
        nx, ny = patch.normal
        across = [nx * x + ny * y for x, y in patch.visible[0]]
        along = [nx * y - ny * x for x, y in patch.visible[0]]
        assert patch.cut_width >= max(across) - min(across) + 1 - 1e-9
        assert patch.cut_length >= max(along) - min(along) + 1 - 1e-9


def test_foundation_patch_for_an_area_of_two_and_a_half_by_six() -> None:
    """Cut 3 1/2 x 7 (Cutting rules for foundation piecing, a teacher's page of tips)."""
    patch = build_project(area_between(2.5, 6), house()).strips[0]

    assert (3.5, 7.0) == (patch.cut_width, patch.cut_length)


def test_corner_triangle_with_a_short_side_of_three() -> None:
    """A square of 5, cut once from corner to corner (Cutting rules for foundation piecing, the same page)."""
    build = build_project(on_paper([[4, 7], [7, 4]]), house())
    patch = patch_of(build.strips[0], build, house())

    assert patch is not None
    assert 5.0 == patch.square == corner_square(3)


def test_template_drawn_half_an_inch_outside_each_line() -> None:
    """An area from -3 to 3 along its line is cut from -3 1/2 to 3 1/2.

    Cutting Patches for Paper Foundation Piecing, https://s31968.pcdn.co/stumbling-blocks-cutting-patches-for-paper-foundation-piecing/
    """
    patch = build_project(area_between(2.5, 6), house()).strips[0]
    start = patch.reach_start - patch.inset_start

    assert (-3.5, 3.5) == pytest.approx((start, start + patch.cut_length))


def test_half_an_inch_at_each_end_of_two_and_a_quarter() -> None:
    """The text says 1/2 at each end, its figure goes from 2 1/4 to 3 3/4; the rule gives 3 1/4.

    Paper-piecing: cutting fabric for sections, 2009,
    http://sarcasticquilter.blogspot.com/2009/01/paper-piecing-cutting-fabric-for-pieced.html
    """
    assert 3.25 == build_project(area_between(2.5, 2.25), house()).strips[0].cut_length


def test_fabric_is_trimmed_to_a_quarter_past_the_next_line() -> None:
    """Sewn at x = 2 and cut off at x = 4 1/2: what is kept of patch 2 ends at 4 3/4, of patch 1 at 2 1/4.

    All People Quilt, Trick to Trimming Fabrics for Foundation Piecing,
    https://www.allpeoplequilt.com/how-to-quilt/piecing/trick-to-trimming-fabrics-foundation-piecing
    """
    first, second = build_project(area_between(2.5, 6), house()).pieces[:2]

    assert pytest.approx(2.25) == max(x for x, _ in first.kept)
    assert pytest.approx(4.75) == max(x for x, _ in second.kept)


@pytest.mark.parametrize(("angle", "extra"), [(90, 0.25), (60, 0.43), (45, 0.60), (30, 0.93)])
def test_patch_reaches_farther_past_a_sharp_corner(angle: float, extra: float) -> None:
    """Both ends of an area of 4 at its line have this angle; makers found 1/2 in too little at sharp ones.

    An allowance of 1/4 reaches 1/4 ÷ tan(angle / 2) past the corner (own derivation). The trouble:
    http://sarcasticquilter.blogspot.com/2009/01/paper-piecing-cutting-fabric-for-pieced.html and
    http://sunflowerquilts.blogspot.com/2008/11/paper-piecing-discoveries.html
    """
    lean, rise = cos(radians(angle)), sin(radians(angle))
    sides = [[[2, 1], [2 - lean, 1 + rise]], [[-2, 1], [-2 + lean, 1 + rise]]]
    patch = build_project(on_paper([[0, 1], [1, 1]], *sides), house(patch_extra=0.0)).strips[0]

    assert pytest.approx(4 + 2 * extra, abs=0.01) == patch.needed_length
    assert patch.cut_length >= patch.needed_length


def test_a_house_sewn_on_the_printed_side_comes_out_reversed() -> None:
    """Its door is drawn at the right and stands at the left of the front; a roof alone is the same from both sides.

    Paper-pieced schoolhouse, https://www.blocklotto.com/2012/06/paper-pieced-schoolhouse/
    """
    roof = [[[-6, 2], [0, 7]], [[6, 2], [0, 7]]]
    door = [[2, 0], [2, 1]]
    schoolhouse = on_paper(*roof, door, lines_seen="from the back")
    plain = on_paper(*roof, lines_seen="from the back").model_copy(update={"patches": _of_one_fabric(roof)})

    assert build_project(schoolhouse, house()).strips[2].normal[0] == pytest.approx(-1)
    assert "mirrored on purpose" in _about_the_mirror(schoolhouse)
    assert "same from both sides" in _about_the_mirror(plain)


def _of_one_fabric(lines: Any) -> tuple[Any, ...]:
    return tuple(patch.model_copy(update={"fabric": "Linen"}) for patch in on_paper(*lines).patches)


def _about_the_mirror(piece: Project) -> str:
    (finding,) = [one for one in geometry_findings(see(piece)) if one.code == "foundation.mirror"]
    return finding.what
