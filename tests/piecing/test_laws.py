"""Laws that every build keeps, tried on builds nobody thought of.

The kernel's closed forms are laid beside two other methods: a painter who lays real polygons on top of each other
(`tests/twins/painter.py`) and squared paper on which every cell remembers what lies on top (`tests/twins/grid.py`).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import cos, pi, sin

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon as Area

from stitchflip.lengths import Length
from stitchflip.piecing import build_project
from stitchflip.piecing.model import Build, EndClass
from stitchflip.project.model import ShortStrip
from tests.strategies import Laid, chord_scripts, covered_builds, eighths, regular_builds
from tests.twins.compare import differences, gap_faults, joined, same_area
from tests.twins.dictate import script_of
from tests.twins.grid import border_error, visible_areas
from tests.twins.kernel import built, sewn
from tests.twins.painter import common, counts, extent, paint, slab, together, travel, without
from tests.twins.script import Point, Polygon, Script, Strip
from tests.twins.table import house, project, rounds, square, trim

some = settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))
few = settings(max_examples=12, deadline=None, suppress_health_check=list(HealthCheck))


def build_of(laid: Laid) -> Build:
    """The build of a drawn project."""
    return build_project(laid.project, laid.numbers)


# --- three methods, one answer -------------------------------------------------------------------------------


@some
@given(regular_builds())
def test_the_kernel_and_the_painter_agree_on_every_answer(laid: Laid) -> None:
    """Patches, lengths, insets, reaches, seam ends and bare places are the same by both methods."""
    assert [] == differences(build_of(laid), paint(script_of(laid.project, laid.numbers)))


@some
@given(chord_scripts())
def test_the_kernel_and_the_painter_agree_when_strips_cut_corners_off(script: Script) -> None:
    """The same with strips along free lines."""
    assert [] == differences(built(script), paint(script))


@few
@given(regular_builds())
def test_squared_paper_counts_the_areas_the_kernel_computes(laid: Laid) -> None:
    """Every visible patch has the area of its cells, to within the cells its border runs through."""
    build = build_of(laid)
    counted = visible_areas(script_of(laid.project, laid.numbers))
    around = Area(build.trim).length

    for piece in build.pieces:
        patch = joined(piece.visible)
        assert abs(counted.get(piece.step, 0.0) - patch.area) <= border_error(patch.length, around)


@few
@given(chord_scripts())
def test_squared_paper_agrees_when_strips_cut_corners_off(script: Script) -> None:
    """The same with strips along free lines."""
    counted = visible_areas(script)
    build = built(script)
    around = Area(build.trim).length

    for piece in build.pieces:
        patch = joined(piece.visible)
        assert abs(counted.get(piece.step, 0.0) - patch.area) <= border_error(patch.length, around)


@few
@given(regular_builds())
def test_the_widest_unstitched_place_is_as_wide_as_any(laid: Laid) -> None:
    """As wide as the painter finds it, and no place on a quarter-inch grid has more room."""
    flat = replace(laid.numbers, draw_up_x=0.0, draw_up_y=0.0)

    assert [] == gap_faults(build_project(laid.project, flat))


@few
@given(regular_builds(), st.data())
def test_a_strip_cut_too_short_leaves_what_the_painter_finds(laid: Laid, data: st.DataObject) -> None:
    """With one strip as short as it was cut, patches, bare places, raw edges on show and seam ends agree."""
    script = script_of(laid.project, laid.numbers)
    step = data.draw(st.integers(1, len(script.strips)))
    start, end = paint(script).pieces[step].full
    assume(laid.project.center is not None)  # rows have free ends, and no full length to be short of
    long = Length.of_inches((end - start) * data.draw(st.integers(2, 7)) / 8)
    inside = data.draw(st.sampled_from([None, 0.0, 0.25]))
    from_start = None if inside is None else Length.of_inches(inside * (end - start - long.inches))
    first = start + (from_start.inches if from_start else 0.0 if inside == 0.0 else (end - start - long.inches) / 2)
    strips = list(script.strips)
    strips[step - 1] = replace(strips[step - 1], interval=(first, first + long.inches))
    short = laid.project.model_copy(update={"short_strips": (ShortStrip(step=step, long=long, from_start=from_start),)})
    build = build_project(short, laid.numbers)

    looks = ("visible", "shown", "bare", "raw edges", "of the seam", "one method")
    found = differences(build, paint(replace(script, strips=tuple(strips))))
    assert [] == [words for words in found if any(look in words for look in looks)]


# --- area --------------------------------------------------------------------------------------------------


@some
@given(st.one_of(regular_builds().map(build_of), chord_scripts().map(built)))
def test_visible_patches_and_bare_places_fill_the_trim(build: Build) -> None:
    """Visible + bare inside the trim = the flat trim, and no two of them overlap."""
    trim_area = Area(build.trim)
    patches = [joined(piece.visible) for piece in build.pieces]
    patches += [common(Area(spot.polygon), trim_area) for spot in build.bare]

    total = sum(patch.area for patch in patches)
    assert abs(total - trim_area.area) < 1e-5 * trim_area.length
    assert same_area(together(patches), trim_area)


@some
@given(st.one_of(regular_builds().map(build_of), chord_scripts().map(built)))
def test_all_fabric_together_fills_the_outline(build: Build) -> None:
    """The union of what is kept of every piece is the outer raw edge, without holes.

    A run without neighbors is endless on paper, so both are looked at inside the cover outline.
    """
    cover = Area(build.cover)
    fabric = common(together([Area(piece.kept) for piece in build.pieces if piece.kept]), cover)

    assert same_area(fabric, common(Area(build.outline), cover))


@some
@given(st.one_of(regular_builds().map(build_of), chord_scripts().map(built)))
def test_shown_patches_are_the_visible_ones_inside_the_binding(build: Build) -> None:
    """What shows is what is visible, less what the binding's seam takes."""
    inner = Area(build.trim_inner)

    for piece in build.pieces:
        assert same_area(joined(piece.shown), common(joined(piece.visible), inner))


@few
@given(chord_scripts())
def test_a_later_flip_never_enlarges_an_earlier_patch(script: Script) -> None:
    """Step by step, every patch stays or shrinks."""
    state = sewn(script)
    after = built(script, state)
    while state.before is not None:
        before = built(script, state.before)
        for earlier, later in zip(before.pieces, after.pieces, strict=False):
            grown = without(joined(later.visible), joined(earlier.visible))
            assert not counts(grown)
        state, after = state.before, before


@few
@given(regular_builds())
def test_taking_back_the_last_round_only_gives_back(laid: Laid) -> None:
    """The same for whole rounds of a project."""
    assume(len(laid.project.rounds) > 1)
    fewer = laid.project.model_copy(update={"rounds": laid.project.rounds[:-1]})
    before, after = build_project(fewer, laid.numbers), build_of(laid)

    for earlier, later in zip(before.pieces, after.pieces, strict=False):
        assert not counts(without(joined(later.visible), joined(earlier.visible)))


# --- symmetry ----------------------------------------------------------------------------------------------


def mapped(script: Script, place: list[list[float]], times: float = 1.0, *, mirrored: bool = False) -> Script:
    """The script with the whole table turned, mirrored or scaled; `place` maps places, lengths grow by `times`."""

    def go(point: Point) -> Point:
        (a, b), (c, d) = place
        return (a * point[0] + b * point[1], c * point[0] + d * point[1])

    def outline(polygon: Polygon) -> Polygon:
        corners = tuple((x * times, y * times) for x, y in map(go, polygon))
        return corners[::-1] if mirrored else corners

    sides = tuple((go(normal), r * times) for normal, r in script.sides)
    return Script(
        sides=sides[::-1] if mirrored else sides,
        strips=tuple(
            Strip(go(strip.normal), strip.width * times, None if strip.at is None else strip.at * times)
            for strip in script.strips
        ),
        seam=script.seam * times,
        trim=outline(script.trim),
        inner=outline(script.inner),
        cover=outline(script.cover),
        stitch=script.stitch * times,
        counts_as_crossed=script.counts_as_crossed * times,
    )


@dataclass(frozen=True)
class Answers:
    """What must not depend on how the table stands; lengths and areas brought back to the first scale."""

    numbers: list[float]
    ends: list[tuple[object, object]]


def answers(build: Build, times: float = 1.0, *, mirrored: bool = False) -> Answers:
    """The answers of a build; in a mirror each strip is sewn from its other end, so starts and ends swap back."""
    numbers: list[float] = []
    ends: list[tuple[object, object]] = []
    for piece in build.strips:
        insets = [piece.inset_start / times, piece.inset_end / times] if piece.needed_length else [0.0, 0.0]
        held = [(end.kind, end.crossed_by) for end in (piece.seam.start, piece.seam.end)] if piece.seam else [(), ()]
        if mirrored:
            insets, held = insets[::-1], held[::-1]
        numbers += [joined(piece.visible).area / times**2, joined(piece.shown).area / times**2]
        numbers += [piece.full_length / times, piece.needed_length / times, *insets]
        ends.append((held[0], held[1]))
    return Answers(numbers, ends)


def same_answers(one: Answers, other: Answers) -> bool:
    """True when numbers agree to a hundred-thousandth and all ends are held alike."""
    return one.numbers == pytest.approx(other.numbers, abs=1e-5) and one.ends == other.ends


@some
@given(chord_scripts())
def test_a_mirrored_build_is_the_mirror_of_the_build(script: Script) -> None:
    """Left and right change places: the same patches and lengths, starts and ends swapped."""
    other = mapped(script, [[-1, 0], [0, 1]], mirrored=True)

    assert same_answers(answers(built(script)), answers(built(other), mirrored=True))


@some
@given(chord_scripts(), st.integers(1, 359))
def test_a_build_turned_with_its_trim_is_the_same_build(script: Script, degrees: int) -> None:
    """Turning the whole table changes nothing."""
    c, s = cos(degrees * pi / 180), sin(degrees * pi / 180)

    assert same_answers(answers(built(script)), answers(built(mapped(script, [[c, -s], [s, c]]))))


@some
@given(chord_scripts(), st.sampled_from([0.5, 2.0, 2.54, 10.0]))
def test_a_scaled_build_is_the_build_scaled(script: Script, times: float) -> None:
    """With seam, widths and margins all so many times as large, every length is, and every area squared."""
    assert same_answers(answers(built(script)), answers(built(mapped(script, [[1, 0], [0, 1]], times)), times))


# --- lengths -----------------------------------------------------------------------------------------------


@some
@given(st.one_of(regular_builds().map(build_of), chord_scripts().map(built)))
def test_no_strip_is_needed_longer_than_it_can_be(build: Build) -> None:
    """Needed <= full, and the insets of both ends make up the difference."""
    for piece in build.strips:
        assert piece.needed_length <= piece.full_length + 1e-6
        if piece.needed_length:
            assert abs(piece.full_length - piece.inset_start - piece.inset_end - piece.needed_length) < 1e-6
            assert abs(piece.reach_end - piece.reach_start - piece.needed_length) < 1e-6


@some
@given(st.one_of(regular_builds().map(build_of), chord_scripts().map(built)))
def test_strips_cut_exactly_to_need_cover_the_same(build: Build) -> None:
    """Each strip laid only from where it must start to where it must end leaves nothing more bare."""
    cover = Area(build.cover)
    whole = together([Area(piece.kept) for piece in build.pieces if piece.kept])
    laid = [Area(build.pieces[0].kept)]
    for piece in build.strips:
        if piece.needed_length:
            cut = slab(travel(piece.normal), piece.reach_start, piece.reach_end, 1000)
            laid.append(common(Area(piece.kept), cut))

    assert same_area(common(together(laid), cover), common(whole, cover))


@some
@given(regular_builds())
def test_cut_lengths_are_never_shorter_than_what_reaches(laid: Laid) -> None:
    """Cut lengths stand on the maker's grid, less than one step and the extra above the need."""
    numbers = replace(laid.numbers, extra_free_end=0.5, extra_raw_edges=0.25)
    for piece in build_project(laid.project, numbers).strips:
        if piece.needed_length:
            steps = piece.cut_length / 0.25
            assert abs(steps - round(steps)) < 1e-9
            assert piece.needed_length + 0.25 - 1e-6 <= piece.cut_length < piece.needed_length + 0.5 + 0.25


# --- seam ends and covering ----------------------------------------------------------------------------------


@some
@given(covered_builds())
def test_a_covered_regular_build_has_no_loose_end(laid: Laid) -> None:
    """Once everything is covered, every seam end is crossed or caught in the binding."""
    build = build_of(laid)
    assert () == build.bare
    ends = [end for piece in build.strips if piece.seam for end in (piece.seam.start, piece.seam.end)]

    assert [] == [end for end in ends if end.kind is EndClass.LOOSE]


@some
@given(covered_builds())
def test_building_until_covered_leaves_nothing_bare_and_sews_nothing_idle(laid: Laid) -> None:
    """No bare place, and every strip but none too many: the last one was still needed."""
    build = build_of(laid)
    cover = Area(build.cover)
    before = together([Area(piece.kept) for piece in build.pieces[:-1] if piece.kept])

    assert () == build.bare
    assert counts(without(cover, before))


@few
@given(eighths(2, 5), st.lists(st.tuples(*[eighths(1.5, 3)] * 4), min_size=1, max_size=2), eighths(-1, 1))
def test_until_covered_sews_the_strips_a_painter_would(
    center: float, cuts: list[tuple[float, ...]], off: float
) -> None:
    """A log cabin off its mark: strips that cover nothing bare are skipped by both."""
    numbers = house()
    whole = project(
        squared_up=trim(8, 6),
        center=square(center, off_center=[off, 0.0]),
        building={"way": "log cabin", "until_covered": True},
        rounds=rounds(*cuts),
    )
    painted = paint(script_of(whole, numbers))
    build = build_project(whole, numbers)

    assert [(strip.normal, strip.width) for strip in painted.strips] == [
        (piece.normal, piece.cut_width) for piece in build.strips
    ]
    assert [] == differences(build, painted)


@some
@given(regular_builds())
def test_sewing_keeps_the_outside_of_the_strip_at_the_right(laid: Laid) -> None:
    """Travel is the outward normal turned a quarter counter-clockwise, on every seam."""
    for piece in build_of(laid).strips:
        if piece.seam is None:
            continue
        (x0, y0), (x1, y1) = piece.seam.start.at, piece.seam.end.at
        along = travel(piece.normal)
        assert abs((x1 - x0) * along[0] + (y1 - y0) * along[1] - piece.seam.length) < 1e-6


@few
@given(regular_builds())
def test_seam_lines_lie_one_allowance_inside_the_raw_edge(laid: Laid) -> None:
    """Raw edge = seam line + w - a on the base; the tape finds it nearer by the draw-up."""
    seam = laid.numbers.seam + laid.numbers.fold_loss / 2
    for piece in build_of(laid).strips:
        nx, ny = piece.normal
        shrunk = (nx / (1 - laid.numbers.draw_up_x)) ** 2 + (ny / (1 - laid.numbers.draw_up_y)) ** 2

        assert abs(piece.seam_at + piece.cut_width - seam - piece.raw_edge_at) < 1e-9
        assert abs(piece.raw_edge_at / shrunk**0.5 - piece.raw_edge_taped) < 1e-9
        if len(piece.opened) > 2:
            assert extent(Area(piece.opened), piece.normal)[1] <= piece.raw_edge_at + 1e-6
