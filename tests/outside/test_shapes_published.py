"""Published figures of squares on point, hexagons and triangles, and of base sizes, against ours."""

from __future__ import annotations

from math import cos, pi, sqrt
from typing import Any

import pytest

from stitchflip.finishing import plan_base, plan_binding, plan_square_up
from stitchflip.finishing.model import BasePlan, SquareUpPlan
from stitchflip.lengths import Rounding, round_to
from stitchflip.piecing import build_project, first_piece_polygon, trim_polygon
from stitchflip.project import effective
from stitchflip.project.model import Project
from tests.twins.script import area_of, sides_of
from tests.twins.table import house, project, rounds, square, trim

EIGHTH = 1 / 8


def shaped(sides: int, across: float, **more: Any) -> Project:
    """A piece squared up to a regular polygon."""
    return project(
        squared_up={"shape": "polygon", "sides": sides, "across_flats": str(across)},
        center={"fabric": "Linen", "shape": "polygon", "sides": sides, "cut": str(across / 2)},
        building={"way": "round after round", "until_covered": True},
        rounds=rounds(2),
        **more,
    )


def squared(piece: Project) -> SquareUpPlan:
    """Its squaring-up numbers."""
    return plan_square_up(piece, house(), trim_polygon(piece, house()), ())


# --- on point --------------------------------------------------------------------------------------------------

DIAGONALS = [(4, 5.625), (5, 7.125), (6, 8.5), (7, 9.875), (8, 11.375), (9, 12.75), (10, 14.125), (12, 17), (14, 19.75)]


@pytest.mark.parametrize(("finished", "diagonal"), DIAGONALS)
def test_diagonal_of_a_finished_square_on_point(finished: float, diagonal: float) -> None:
    """To the nearest 1/8, from point to point of the square as it shows.

    Quilter's Cache, Math Charts, 2002, http://www.quilterscache.com/M/MathChartsPage.html
    """
    piece = project(
        squared_up=trim(40, 40),
        center=square(finished + 0.5, 45),
        building={"way": "pairs round the point"},
        rounds=rounds(2.5),
    )
    heights = [point.at[1] for point in build_project(piece, house()).points]

    assert pytest.approx(diagonal) == round_to(max(heights) - min(heights), EIGHTH, Rounding.NEAREST)


# --- hexagons and triangles --------------------------------------------------------------------------------------


def test_hexagon_has_six_corners_of_120_degrees() -> None:
    """Together 720.

    Scissortail Quilting, glossary, Hexagon, https://scissortailquilting.com/glossary/hexagon/
    """
    piece = shaped(6, 20)
    corners = plan_binding(piece, house(), trim_polygon(piece, house())).corners

    assert pytest.approx([120] * 6) == [corner.angle for corner in corners]
    assert pytest.approx(720) == sum(corner.angle for corner in corners)


def test_hexagon_of_two_and_three_quarters_between_flats_has_a_side_of_1_588() -> None:
    """Width / root 3.

    softsolder, Quilting Hexagon Template, 2020, https://softsolder.com/2020/07/27/quilting-polygon-template/
    """
    assert pytest.approx([1.588] * 6, abs=0.0005) == [side.length for side in squared(shaped(6, 2.75)).sides]


def test_one_inch_hexagon_with_three_eighths_turned_under() -> None:
    """1.732 high; with 3/8 all round the fabric is 2.482 high, "about 2 1/2".

    Cutting Hexagons for English Paper Piecing, 2019 (address left out: it carries a private name)
    """
    piece = shaped(6, sqrt(3))
    cover = build_project(piece, house(reach=3 / 8)).cover

    assert pytest.approx(1, abs=0.0001) == squared(piece).sides[0].length
    assert pytest.approx(2.482, abs=0.0005) == 2 * sides_of(cover)[0][1]


def test_equilateral_triangle_three_high_has_a_base_of_3_464() -> None:
    """2h / root 3 = 1.1547 h.

    The Itinerant Chemist, Yardage calculations for a 60-degree triangle quilt, 2015,
    https://theitinerantchemist.com/2015/02/18/play-crafts-equal-yardage-calculations/
    """
    triangle = squared(shaped(3, 2))  # its sides stand 1 from the middle, its corners 2: 3 high

    assert pytest.approx([3.464] * 3, abs=0.0005) == [side.length for side in triangle.sides]


def test_triangle_loses_three_seams_of_height() -> None:
    """Cut height = finished height + 3/4 when the tip is kept (common practice, from memory)."""
    piece = project(
        squared_up={"shape": "polygon", "sides": 3, "across_flats": "12"},
        center={"fabric": "Linen", "shape": "polygon", "sides": 3, "cut": "4"},
        building={"way": "round after round"},
        rounds=rounds(2),
    )
    (seen,) = build_project(piece, house()).pieces[0].visible
    height = max(y for _, y in seen) - min(y for _, y in seen)

    assert pytest.approx(3 * 2 - 0.75) == height
    assert pytest.approx(height**2 / sqrt(3)) == area_of(seen)


def test_octagon_corners_are_135_degrees() -> None:
    """(n - 2) x 180 / n (own derivation from the same rule as the hexagon's 720)."""
    piece = shaped(8, 16)
    corners = plan_binding(piece, house(), trim_polygon(piece, house())).corners

    assert pytest.approx([135] * 8) == [corner.angle for corner in corners]
    assert pytest.approx(16 / cos(pi / 8)) == max(squared(piece).diagonals)


# --- base sizes --------------------------------------------------------------------------------------------------


def base_for(wide: float, long: float, across: float, at_ends: float) -> BasePlan:
    """The base of a piece, wide x long, with so much spare on each side; nothing drawn in."""
    piece = project(
        squared_up=trim(wide, long),
        base={"spare_across": str(across), "spare_at_ends": str(at_ends)},
        center=square(min(wide, long) / 2),
        rounds=rounds(2.5),
        my_numbers={"draw_up": 0.0, "round_base_to": "1/4"},
    )
    numbers = effective(piece)
    return plan_base(piece, numbers, trim_polygon(piece, numbers), first_piece_polygon(piece, numbers))


BASES = [
    # All People Quilt, Quilt-As-You-Go Place Mat: finishing 18 x 12, batting and backing 20 x 14
    # https://www.allpeoplequilt.com/quilt-patterns/table-runners/quilt-you-go-place-mat-pattern
    ((18, 12), (1, 1), (20, 14)),
    # Quilts by Jen, Placemats with the Stitch and Flip Method: 13 1/2 x 18 from 14 1/2 x 20 1/2
    # https://quiltsbyjen.ca/how-to-make-placemats-with-the-stitch-flip-method/
    ((13.5, 18), (0.5, 1.25), (14.5, 20.5)),
    # All People Quilt, Quilt-As-You-Go Table Mat: 15 on 16 square
    # https://www.allpeoplequilt.com/quilt-patterns/table-runners/quilt-you-go-table-mat
    ((15, 15), (0.5, 0.5), (16, 16)),
    # QuiltingHub, QAYG strip table runner: 14 x 36 on 22 x 44, "may draw up"
    # https://www.quiltinghub.com/Articles/ArticleID/378
    ((14, 36), (4, 4), (22, 44)),
    # Creativebug, Quilt-As-You-Go Instructions: 2 in larger than the block
    # http://crafts.creativebug.com/quiltasyougo-instructions-1474.html
    ((12, 12), (1, 1), (14, 14)),
    # iVillage, Quilt as you go, newsletter digest, 2006: 1 1/2 all round
    # http://www.ivillage.com/forums/node/12798440
    ((12, 12), (1.5, 1.5), (15, 15)),
    # Quilter's Diary, Log Cabin Quilt-as-you-go Block: at least 1 on each side, 15 square used
    # http://quiltersdiary.com/log-cabin-quilt-as-you-go-block/
    ((13, 13), (1, 1), (15, 15)),
    # HeartStrings Quilt Project, String block guidelines: foundation 10 trimmed to 9 1/2
    # http://heartstringsquiltproject.com/guidelines.html
    ((9.5, 9.5), (0.25, 0.25), (10, 10)),
    # String Quilt Block instructions, 2009 (address left out: it carries a private name): 10 1/2 for 9 1/2 cut
    ((9.5, 9.5), (0.5, 0.5), (10.5, 10.5)),
    # Christmas Placemats, Quilt As You Go, 2013: 17 x 14 from batting and backing of that size, no spare at all
    # http://themarshstore.blogspot.com/2013/10/christmas-placemats-quilt-as-you-go.html
    ((17, 14), (0, 0), (17, 14)),
    # String Piecing, 2013, http://rikrax.blogspot.com/2013/03/string-piecing.html: 9 for 8 finished (8 1/2 cut)
    ((8.5, 8.5), (0.25, 0.25), (9, 9)),
]


@pytest.mark.parametrize(("size", "spare", "base"), BASES)
def test_base_sizes_in_print(size: tuple[float, float], spare: tuple[float, float], base: tuple[float, float]) -> None:
    """Squared-up size plus the spare on each side."""
    made = base_for(*size, *spare)

    assert base == (made.wide, made.high)
