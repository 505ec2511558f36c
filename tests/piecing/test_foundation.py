"""Numbered foundations: patches along drawn lines, large enough when cut, whichever face the lines were drawn on."""

from math import cos, radians, sin, sqrt
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon as Area
from shapely.geometry import box as rectangle

from stitchflip.errors import BuildError
from stitchflip.lengths import Unit
from stitchflip.piecing import build_project, first_piece_polygon
from stitchflip.piecing.model import Build, EndClass
from stitchflip.piecing.patches import corner_square
from stitchflip.piecing.ways.foundation import drawn_patches
from stitchflip.planning.findings import geometry_findings, see
from stitchflip.planning.model import Finding, Severity
from stitchflip.project.model import Project
from stitchflip.project.numbers import Numbers
from tests.strategies import quarters
from tests.twins.painter import slab
from tests.twins.table import house, trim

FABRICS = ("Linen", "Plum", "Oat", "Rust", "Slate", "Moss")


def foundation(
    *lines: list[list[float]], at: list[float] | None = None, seen: str = "from the front", **parts: Any
) -> Project:
    """Patch 1 of linen, then a patch along each line in other fabrics, squared up at 12 x 12."""
    patches: list[dict[str, Any]] = [{"fabric": "Linen", **({"at": at} if at is not None else {})}]
    patches += [{"fabric": FABRICS[1 + k % 5], "line": line} for k, line in enumerate(lines)]
    raw = {
        "name": "On the window",
        "squared_up": trim(12, 12),
        "building": {"way": "numbered foundation", "lines_seen": seen},
        "patches": patches,
        "fabrics": [{"name": name} for name in FABRICS],
        "binding": {"fabric": "Linen"},
        "my_numbers": {"fold_loss": "0", "draw_up": 0.0},
        **parts,
    }
    return Project.model_validate(raw, context={"unit": raw.get("units", Unit.INCH)})


def upright(x: float) -> list[list[float]]:
    """A line straight up at x."""
    return [[x, -1], [x, 1]]


def level(y: float) -> list[list[float]]:
    """A line straight across at y."""
    return [[-1, y], [1, y]]


def found(project: Project, code: str) -> Finding:
    """The one finding of a code."""
    (finding,) = [finding for finding in geometry_findings(see(project)) if finding.code == code]
    return finding


def codes(project: Project) -> set[str]:
    """All codes about the foundation."""
    return {one.code for one in geometry_findings(see(project)) if one.code.startswith("foundation.")}


# --- how large patches are cut -------------------------------------------------------------------------------


def test_patch_is_cut_an_inch_larger_than_its_area_both_ways() -> None:
    """Right of x = 2, then cut off at x = 5 and between y = -2 and y = 2: an area 3 deep and 4 long, so 4 x 5."""
    patch = build_project(foundation(upright(2), upright(5), level(2), level(-2)), house()).strips[0]

    assert (4.0, 5.0) == (patch.cut_width, patch.cut_length)


def test_own_extra_takes_the_place_of_the_half_inch() -> None:
    """With 3/4 on every side the same area takes 4 1/2 x 5 1/2."""
    laid = foundation(upright(2), upright(5), level(2), level(-2))
    patch = build_project(laid, house(patch_extra=0.75)).strips[0]

    assert (4.5, 5.5) == (patch.cut_width, patch.cut_length)


def test_first_patch_is_cut_larger_than_its_area_and_not_like_the_whole_piece() -> None:
    """Between x = -1 and 2, y = -2 and 3: 3 wide and 5 high, cut 4 x 6 about (1/2, 1/2)."""
    laid = foundation(upright(2), upright(-1), level(3), level(-2))
    first = build_project(laid, house()).pieces[0]

    assert ("Linen", 4.0, 6.0) == (first.fabric, first.cut_width, first.cut_length)
    assert ((-1.5, -2.5), (2.5, -2.5), (2.5, 3.5), (-1.5, 3.5)) == first.opened
    assert first.opened == first_piece_polygon(laid, house())


@pytest.mark.parametrize(("degrees", "length"), [(60, 7.0), (45, 7.25), (30, 8.0)])
def test_sharp_corners_ask_for_more_than_half_an_inch(degrees: float, length: float) -> None:
    """A base of 6 at the seam and two corners of the same angle; an allowance of 1/4 reaches 1/4 ÷ tan(angle / 2) past.

    60 degrees: 0.433 < 1/2, so 6 + 1 = 7. 45: 0.604, 6 + 1.207 = 7.207, up to 7 1/4. 30: 0.933, 6 + 1.866 = 7.866,
    up to 8.
    """
    lean: list[float] = [3 - cos(radians(degrees)), -1 + sin(radians(degrees))]
    sides: list[list[list[float]]] = [[[3, -1], lean], [[-3, -1], [-lean[0], lean[1]]]]
    laid = foundation(level(-1), *sides, at=[0, -4])
    patch = build_project(laid, house()).strips[0]

    assert length == patch.cut_length


def test_patch_reaches_past_the_squared_up_edge_as_far_as_fabric_must() -> None:
    """Above y = 2 in a piece from -6 to 6 with a reach of 3/4: 4 3/4 up and 1/4 behind the seam; 13 1/2 long."""
    patch = build_project(foundation(level(2)), house(reach=0.75)).strips[0]

    assert (5.0, 13.5) == (patch.cut_width, patch.cut_length)


def test_corner_triangle_comes_from_a_square_cut_once() -> None:
    """Short sides of 4: a square of 6, half of it 18 sq in, where a rectangle takes 28.

    The rectangle: 4 / root 2 + 1 = 3.83, up to 4, by what half a square with the corner 1/4 farther out both ways has
    at its raw edge, 2 x (4.5 / root 2 + 1/4) = 6.864, up to 7.
    """
    laid = foundation([[2, 6], [6, 2]])
    patch = build_project(laid, house()).strips[0]

    assert 6.0 == corner_square(4)
    assert (4.0, 7.0) == (patch.cut_width, patch.cut_length)
    assert pytest.approx(6.0) == found(laid, "foundation.corner-triangle").numbers["square_in"]


def test_large_reach_makes_the_square_larger() -> None:
    """With 1 1/2 of reach the corner lies 1.5 root 2 farther out: 2.828 + 2.121 + 0.25 = 5.2 high, a side of 7.354."""
    laid = foundation([[2, 6], [6, 2]], my_numbers={"fold_loss": "0", "draw_up": 0.0, "reach": "1 1/2"})

    assert pytest.approx(7.5) == found(laid, "foundation.corner-triangle").numbers["square_in"]


places = st.tuples(quarters(-7, 7), quarters(-7, 7))


@settings(max_examples=60, deadline=None)
@given(
    lines=st.lists(st.tuples(places, places), min_size=1, max_size=6),
    extra=st.sampled_from([0.0, 0.5]),
    reach=st.sampled_from([0.25, 0.5]),
)
def test_rectangles_as_cut_leave_nothing_bare(lines: list[Any], extra: float, reach: float) -> None:
    """Rectangles of the sizes told, laid and trimmed past each next line, cover all there is to cover.

    The second method lays real rectangles with a polygon library; what it shows of each is what the kernel shows.
    """
    apart = [line for line in lines if _passes(line)]
    assume(apart)
    numbers = house(patch_extra=extra, reach=reach)
    build = build_project(foundation(*[[list(a), list(b)] for a, b in apart]), numbers)
    on_top = _laid(build, numbers)

    cover, edge = 6 + reach, rectangle(-6, -6, 6, 6)
    bare = rectangle(-cover, -cover, cover, cover)
    for shape in on_top:
        bare = bare.difference(shape.buffer(1e-7))
    assert bare.area < 1e-5
    for piece, shape in zip(build.pieces, on_top, strict=True):
        seen = sum(Area(polygon).area for polygon in piece.visible)
        assert pytest.approx(shape.intersection(edge).area, abs=1e-5) == seen


def _passes(line: Any) -> bool:
    """True for a line with a length that passes the center mark."""
    (ax, ay), (bx, by) = line
    length = sqrt((bx - ax) ** 2 + (by - ay) ** 2)
    return bool(length > 0.5 and abs(ax * by - ay * bx) / length > 0.3)


def _laid(build: Build, numbers: Numbers) -> list[Any]:
    """What is on top of each patch when rectangles are sewn, flipped and trimmed one after another."""
    shapes: list[Any] = [Area(build.pieces[0].opened)]
    for strip in build.strips:
        past = slab(strip.normal, strip.seam_at + numbers.effective_seam, 100, 100)
        shapes = [shape.difference(past) for shape in shapes]
        nx, ny = strip.normal
        outer = strip.seam_at - numbers.effective_seam + strip.cut_width
        low = strip.reach_start - strip.inset_start
        ends = (low, low + strip.cut_length)
        corners = [(strip.seam_at, ends[1]), (strip.seam_at, ends[0]), (outer, ends[0]), (outer, ends[1])]
        shapes.append(
            Area([(nx * v - ny * u, ny * v + nx * u) for v, u in corners]) if strip.cut_length > 0 else Area()
        )
    for place in range(len(shapes)):
        for later in shapes[place + 1 :]:
            shapes[place] = shapes[place].difference(later)
    return shapes


# --- which side, which face ----------------------------------------------------------------------------------


def test_each_patch_lies_away_from_the_first() -> None:
    """The same upright line at x = 2: patch 2 lies right of it, or left of it when patch 1 is said to lie right."""
    assert "right" == _side_of_patch_two(foundation(upright(2)))
    assert "left" == _side_of_patch_two(foundation(upright(2), at=[4, 0]))
    assert "right" == _side_of_patch_two(foundation([[2, 1], [2, -1]]))


def _side_of_patch_two(project: Project) -> str:
    (nx, _) = build_project(project, house()).strips[0].normal
    return "right" if nx > 0 else "left"


def test_lines_drawn_on_the_back_are_mirrored_for_the_front() -> None:
    """Drawn at x = 2 on the back, patch 2 lies left of x = -2 on the front; the mark of patch 1 is mirrored too."""
    build = build_project(foundation(upright(2), seen="from the back"), house())

    assert (-1.0, 2.0) == (build.strips[0].normal[0], build.strips[0].seam_at)
    assert "right" == _side_of_patch_two(foundation(upright(2), at=[4, 0], seen="from the back"))


LEANING: list[list[list[float]]] = [[[2, 0], [3, 4]], [[-2, 0], [-4, 4]], [[0, 3], [4, 2]], [[1, -5], [-1, -4]]]


def test_drawing_for_the_back_is_the_front_in_a_mirror() -> None:
    """Lines given as the front shows them are drawn mirrored; lines given as drawn on the back are drawn as given."""
    mirrored = [[[-x, y] for x, y in line] for line in LEANING]
    from_front = drawn_patches(foundation(*LEANING), house())
    from_back = drawn_patches(foundation(*mirrored, seen="from the back"), house())

    assert from_front == from_back
    for line, drawn in zip(mirrored, from_front[1:], strict=True):
        assert drawn.line is not None
        for x, y in drawn.line:
            (ax, ay), (bx, by) = line
            assert pytest.approx(0, abs=1e-6) == (bx - ax) * (y - ay) - (by - ay) * (x - ax)


def test_drawn_lines_end_where_they_are_sewn_to() -> None:
    """Upright at x = 2 and then level at y = 3: drawn mirrored, the first runs up to y = 3 only, the second across."""
    one, other = drawn_patches(foundation(upright(2), level(3)), house())[1:]

    assert {(-2.0, -6.0), (-2.0, 3.0)} == {(round(x, 6), round(y, 6)) for x, y in one.line or ()}
    assert {(-6.0, 3.0), (6.0, 3.0)} == {(round(x, 6), round(y, 6)) for x, y in other.line or ()}
    assert (2, 3) == (one.number, other.number)
    assert one.middle == pytest.approx((-4.0, -1.5))


def test_places_are_in_the_unit_of_the_project() -> None:
    """A line 5.08 cm from the mark lies 2 in from it."""
    laid = foundation(upright(5.08), units=Unit.CM, squared_up={"wide": "30", "long": "30"}, my_numbers={})

    assert pytest.approx(2.0) == build_project(laid, house()).strips[0].seam_at


def test_seams_are_sewn_only_as_far_as_the_next_allowance() -> None:
    """Upright at x = 2, then level at y = 3: seam 1 runs up to 3 1/4 and is crossed by seam 2; nothing is unpicked."""
    build = build_project(foundation(upright(2), level(3)), house())
    seam = build.strips[0].seam

    assert seam is not None
    assert pytest.approx(3.25) == max(seam.start.at[1], seam.end.at[1])
    assert {EndClass.CROSSED, EndClass.CAUGHT} == {seam.start.kind, seam.end.kind}
    assert () == build.notes


def test_a_foundation_has_no_points_of_a_center() -> None:
    """Patch 1 may have any corners anywhere; nobody measures room beyond them."""
    assert () == build_project(foundation(*LEANING), house()).points


# --- what is told --------------------------------------------------------------------------------------------


def test_line_outside_the_piece_is_told() -> None:
    """At x = 7 in a piece that ends at 6: 1 in outside."""
    finding = found(foundation(upright(2), upright(7)), "foundation.line-misses")

    assert Severity.FIX is finding.severity
    assert pytest.approx(1.0) == finding.numbers["outside_in"]
    assert "patch 3" in finding.what
    assert finding.cures


def test_patch_that_later_ones_cover_is_told() -> None:
    """Patch 2 right of x = 4, patch 3 right of x = 3: nothing of patch 2 is left."""
    laid = foundation(upright(4), upright(3))

    assert "patch 2" in found(laid, "foundation.patch-hidden").what
    assert {"foundation.patch-hidden", "foundation.mirror"} == codes(laid)
    assert 0.0 == build_project(laid, house()).strips[0].cut_length


def test_seam_at_the_edge_of_the_fabric_is_told() -> None:
    """At x = 5 7/8 the fabric below ends at 6 1/4, 1/8 short of an allowance of 1/2."""
    wide = {"fold_loss": "0", "draw_up": 0.0, "reach": "1/4", "seam": "1/2"}
    laid = foundation(upright(5.875), my_numbers=wide)
    finding = found(laid, "foundation.seam-never-meets")

    assert pytest.approx(0.125) == finding.numbers["short_in"]
    assert "⅛" in finding.what


def test_symmetric_design_is_the_same_from_both_sides() -> None:
    """Two upright lines alike on both sides and one across; one fabric more on the left makes it another design."""
    alike = foundation(upright(2), upright(-2), level(3), seen="from the back")
    alike = alike.model_copy(update={"patches": _recolored(alike, {2: "Plum"})})
    unlike = alike.model_copy(update={"patches": _recolored(alike, {2: "Oat"})})

    assert "same from both sides" in found(alike, "foundation.mirror").what
    assert "mirrored on purpose" in found(unlike, "foundation.mirror").what
    assert "draw the lines in the mirror" in found(foundation(*LEANING), "foundation.mirror").what


def _recolored(project: Project, fabrics: dict[int, str]) -> tuple[Any, ...]:
    return tuple(
        patch.model_copy(update={"fabric": fabrics.get(place, patch.fabric)})
        for place, patch in enumerate(project.patches)
    )


def test_sound_design_has_nothing_to_fix() -> None:
    """Only what is good to know is said of four lines that all do something."""
    assert {"foundation.mirror"} == codes(foundation(*LEANING))


def test_findings_speak_of_patches_by_their_numbers() -> None:
    """A gap of 1/4 between x = 4 and 4 1/4 is a sliver of patch 2, the first strip sewn."""
    sliver = found(foundation(upright(4), upright(4.25)), "strip.sliver")

    assert "patch 2" in sliver.what
    assert "strip" not in sliver.what


def test_small_and_hidden_patches_are_told_once() -> None:
    """No last strip of a side is too thin, and a patch that later ones cover is not under the binding."""
    laid = foundation(upright(5.25), upright(-4), upright(-3))
    told = {one.code for one in geometry_findings(see(laid))}

    assert "foundation.patch-hidden" in told
    assert told.isdisjoint({"strip.thin-at-edge", "strip.hidden", "strip.unnecessary", "side.closes"})


def _going_on(project: Project) -> Project:
    building = project.building.model_copy(update={"until_covered": True})
    return project.model_copy(update={"building": building})


@pytest.mark.parametrize(
    ("project", "code", "says"),
    [
        (foundation([[1, 0], [-1, 0]]), "build.line-through-first", "patch 2 runs through the center mark"),
        (foundation(upright(3), upright(2), at=[2, 1]), "build.line-through-first", "patch 3 runs through the place"),
        (foundation(upright(2), at=[9, 0]), "build.place-outside", "outside the piece"),
        (foundation(upright(2), [[1, 1], [1, 1]]), "build.no-line", "line of patch 3 has no length"),
        (foundation().model_copy(update={"patches": ()}), "build.no-patches", "none is listed"),
        (_going_on(foundation(upright(2))), "build.covered-already", "no going on until covered"),
    ],
)
def test_lines_that_tell_nothing_are_refused(project: Project, code: str, says: str) -> None:
    """The error names the patch and says what would do."""
    with pytest.raises(BuildError, match=says) as caught:
        build_project(project, house())

    assert code == caught.value.code
    assert caught.value.fix


def test_patch_without_a_line_is_refused() -> None:
    """Only patch 1 has none."""
    laid = foundation(upright(2))
    second = laid.patches[1].model_copy(update={"line": None})

    with pytest.raises(BuildError, match="patch 2 has no line"):
        build_project(laid.model_copy(update={"patches": (laid.patches[0], second)}), house())
