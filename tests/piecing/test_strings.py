"""String blocks from corner to corner, and rounds on any center that does not bend inward, closing sides and all."""

from __future__ import annotations

from math import cos, hypot, pi, sin, sqrt
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString
from shapely.geometry import Polygon as Area

from stitchflip.piecing import build_project
from stitchflip.piecing.model import Build, EndClass
from tests.strategies import cut_widths, numbers_of_a_maker, quarters
from tests.twins.compare import joined, same_area
from tests.twins.painter import together
from tests.twins.table import house, project, rounds, trim

ROOT = sqrt(2)
A = 0.25


def strung(wide: float, long: float, *cuts: float, numbers: Any = None, **building: Any) -> Build:
    """A string block; the first cut is the middle strip's."""
    parts = {
        "squared_up": trim(wide, long),
        "building": {"way": "string block", **building},
        "rounds": rounds(*cuts),
    }
    return build_project(project(**parts), numbers or house())


def test_a_square_block_by_hand() -> None:
    """Squared up 8 1/2 with a reach of 3/8: half the cover is 4 5/8, its diagonal 2 sqrt 2 x 4 5/8 = 13.081.

    A strip whose seam lies d from the diagonal is 2 d shorter. Middle 2: seam of the next at 3/4; that one cut
    1 1/2 shows 1, so seam at 1 3/4; then 2 1/4 shows 1 3/4, seam at 3 1/2; 1 3/4 shows 1 1/4, seam at 4 3/4.
    """
    build = strung(8.5, 8.5, 2, 1.5, 2.25, 1.75, 2.25, numbers=house(reach=0.375))
    diagonal = 2 * ROOT * 4.625

    assert pytest.approx(diagonal) == build.pieces[0].needed_length
    expected = [diagonal - 2 * d for d in (0.75, 1.75, 3.5, 4.75) for _ in range(2)]
    assert expected == pytest.approx([strip.needed_length for strip in build.strips])
    assert () == build.bare


@pytest.mark.parametrize(("turning", "sign"), [("clockwise", 1), ("counter-clockwise", -1)])
def test_the_diagonal_rises_or_falls_by_the_turning(turning: str, sign: int) -> None:
    """Clockwise it runs from the lower left to the upper right corner, the other way from the upper left."""
    build = strung(6, 9, 2, 2, turning=turning)
    length = hypot(6, 9)

    assert (-9 / length * sign, 6 / length) == pytest.approx(build.strips[0].normal)
    for corner in ((3 * sign, 4.5), (-3 * sign, -4.5)):
        nx, ny = build.strips[0].normal
        assert pytest.approx(0, abs=1e-9) == nx * corner[0] + ny * corner[1]


@pytest.mark.parametrize("turning", ["clockwise", "counter-clockwise"])
def test_strips_go_above_then_below(turning: str) -> None:
    """The first strip of a pair faces up, the second down, and both reach equally far out."""
    build = strung(7, 9, 2, 1.5, 2.5, turning=turning)

    assert [True, False] * 2 == [strip.normal[1] > 0 for strip in build.strips]
    for above, below in zip(build.strips[::2], build.strips[1::2], strict=True):
        assert above.raw_edge_at == pytest.approx(below.raw_edge_at)


@settings(max_examples=40, deadline=None)
@given(
    quarters(3, 16),
    quarters(3, 16),
    st.lists(cut_widths(), min_size=2, max_size=5),
    st.sampled_from(["clockwise", "counter-clockwise"]),
    numbers_of_a_maker(),
)
def test_until_covered_fills_any_rectangle(
    wide: float, long: float, cuts: list[float], turning: str, numbers: Any
) -> None:
    """Nothing is bare, patches fill the trim, each strip is as long as the cover is there, no end is loose."""
    build = strung(wide, long, *cuts, numbers=numbers, turning=turning, until_covered=True)
    cover = Area(build.cover)
    seam = numbers.seam + numbers.fold_loss / 2

    assert () == build.bare
    assert same_area(together([joined(piece.visible) for piece in build.pieces]), Area(build.trim))
    for strip in build.strips:
        (nx, ny), far = strip.normal, 100.0
        lengths = []
        for v in (strip.seam_at, strip.seam_at + strip.cut_width - seam):
            line = LineString([(nx * v - ny * u, ny * v + nx * u) for u in (-far, far)])
            lengths.append(cover.intersection(line).length)
        assert strip.needed_length >= max(lengths) - 1e-6
        assert strip.needed_length <= cover.length / 2
        assert strip.seam is not None
        assert EndClass.LOOSE not in (strip.seam.start.kind, strip.seam.end.kind)


def test_the_two_turnings_are_mirror_images_but_for_the_order() -> None:
    """What shows of each pair, taken together, is mirrored when the diagonal falls."""
    rising, falling = (
        strung(7, 10, 2, 1.5, 2.5, 2, turning=turning, until_covered=True)
        for turning in ("clockwise", "counter-clockwise")
    )

    assert len(rising.strips) == len(falling.strips)
    for one, other in zip(rising.pieces, falling.pieces, strict=True):
        image = together([Area([(-x, y) for x, y in patch]) for patch in other.visible])
        assert same_area(joined(one.visible), image)


# --- rounds on any center -----------------------------------------------------------------------------------


def ringed(center: dict[str, Any], wide: float, long: float, *cuts: float, **building: Any) -> Build:
    """Rounds on a center until the piece is covered."""
    parts = {
        "squared_up": trim(wide, long),
        "center": {"fabric": "Linen", **center},
        "building": {"way": "round after round", "until_covered": True, **building},
        "rounds": rounds(*cuts),
    }
    return build_project(project(**parts), house())


@settings(max_examples=40, deadline=None)
@given(
    st.integers(3, 12),
    quarters(2, 7),
    st.sampled_from([0.0, 10.0, 45.0]),
    quarters(5, 14),
    st.lists(cut_widths(), min_size=1, max_size=3),
    st.sampled_from(["clockwise", "counter-clockwise"]),
)
def test_rounds_on_polygons_cover_the_piece_though_sides_close(
    sides: int, cut: float, turned: float, size: float, cuts: list[float], turning: str
) -> None:
    """Triangles to twelve sides: nothing is bare and the patches fill the trim without overlap."""
    center = {"sides": sides, "cut": str(cut), "turned": turned}
    build = ringed(center, size, size + 1, *cuts, turning=turning)

    assert () == build.bare
    patches = [joined(piece.visible) for piece in build.pieces]
    assert pytest.approx(size * (size + 1), rel=1e-6) == sum(patch.area for patch in patches)
    assert same_area(together(patches), Area(build.trim))


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.integers(0, 35), min_size=3, max_size=9, unique=True),
    st.sampled_from([1.0, 0.6]),
    quarters(5, 12),
    cut_widths(),
)
def test_rounds_on_any_outline_that_does_not_bend_inward(
    places: list[int], flat: float, size: float, cut: float
) -> None:
    """Corners anywhere on an oval: nothing is bare, no strip is needed longer than it can be."""
    angles = [place * 10 * pi / 180 for place in sorted(places)]
    gaps = [(b - a) % (2 * pi) for a, b in zip(angles, angles[1:] + angles[:1], strict=True)]
    assume(max(gaps) < pi - 0.1)
    corners = [[round(3 * cos(angle), 4), round(3 * flat * sin(angle), 4)] for angle in angles]
    build = ringed({"corners": corners}, size, size, cut)

    assert () == build.bare
    assert all(strip.needed_length <= strip.full_length + 1e-6 for strip in build.strips)
    assert same_area(together([joined(piece.visible) for piece in build.pieces]), Area(build.trim))


def test_a_side_that_closed_opens_again_when_its_neighbors_have_grown() -> None:
    """An octagon 5 across with strips of 2 1/2: the first side meets its neighbors at 3.536 and shows a point.

    Its raw edge as cut would lie at 2 1/2 + 2; the neighbors' raw edges at 2 1/2 meet where x = 2.5 / cos 45 = 3.536.
    """
    build = ringed({"sides": 8, "cut": "5"}, 14, 14, 2.5)
    first = build.strips[0]
    nx, ny = first.normal
    closing = {note.step: note.value for note in build.notes if note.code == "side.closes"}

    assert pytest.approx(2.5 * ROOT) == max(nx * x + ny * y for x, y in first.opened) == closing[1]
    assert len([strip for strip in build.strips if strip.side == first.side]) > 1
    assert () == build.bare
