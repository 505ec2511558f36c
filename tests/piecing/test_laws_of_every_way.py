"""Laws that builds of every way keep: on sides, along lines of their own, in curved outlines.

The regular ways have laws of their own beside these (`test_laws.py`); the generators are in `tests/way_strategies.py`.
"""

from __future__ import annotations

import json

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shapely.affinity import scale
from shapely.geometry import Polygon as Area
from shapely.geometry.base import BaseGeometry

from stitchflip.errors import StitchflipError
from stitchflip.piecing import build_project
from stitchflip.piecing.model import Build
from stitchflip.planning import plan
from stitchflip.planning.as_json import plan_as_json
from stitchflip.project.model import Project, Way
from tests.strategies import Laid
from tests.twins.compare import coarse_differences, differences, joined, same_area
from tests.twins.dictate import is_curved
from tests.twins.grid import wrong_places
from tests.twins.mirror import mirrored
from tests.twins.painter import common, counts, paint, slab, together, travel, without
from tests.twins.told import told
from tests.way_strategies import any_builds, line_builds, mirrored_ways, side_builds

some = settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))
few = settings(max_examples=12, deadline=None, suppress_health_check=list(HealthCheck))


def build_of(laid: Laid) -> Build:
    """The build of a drawn project."""
    return build_project(laid.project, laid.numbers)


@some
@given(any_builds())
def test_every_place_shows_the_strip_that_squared_paper_shows(laid: Laid) -> None:
    """The kernel against the naive grid, place by place."""
    assert [] == wrong_places(build_of(laid), told(laid.project, laid.numbers), 800)


@some
@given(any_builds().filter(lambda laid: laid.project.building.way is not Way.FOUNDATION))
def test_the_painter_finds_the_same_lengths_and_seam_ends(laid: Laid) -> None:
    """The kernel against the painter; a curve is drawn by each in its own way."""
    compare = coarse_differences if is_curved(laid.project) else differences

    assert [] == compare(build_of(laid), paint(told(laid.project, laid.numbers)))


@some
@given(any_builds().map(build_of))
def test_visible_patches_and_bare_places_fill_the_trim(build: Build) -> None:
    """Visible + bare inside the trim = the flat trim, and no two of them overlap."""
    trim_area = Area(build.trim)
    patches = [joined(piece.visible) for piece in build.pieces]
    patches += [common(Area(spot.polygon), trim_area) for spot in build.bare]

    assert abs(sum(patch.area for patch in patches) - trim_area.area) < 1e-5 * trim_area.length
    assert same_area(together(patches), trim_area)


@some
@given(side_builds().map(build_of))
def test_all_fabric_together_fills_the_outline(build: Build) -> None:
    """The union of what is kept of every piece is the outer raw edge, without holes, as far as must be covered."""
    cover = Area(build.cover)
    fabric = common(together([Area(piece.kept) for piece in build.pieces if piece.kept]), cover)

    assert same_area(fabric, common(Area(build.outline), cover))


@some
@given(any_builds().map(build_of))
def test_sections_fill_the_strip_they_are_pieced_to(build: Build) -> None:
    """What shows of a pieced strip is what shows of its sections; other strips have none."""
    for piece in build.strips:
        if piece.sections:
            assert same_area(joined(piece.visible), together([joined(one.visible) for one in piece.sections]))
            assert same_area(joined(piece.shown), together([joined(one.shown) for one in piece.sections]))


@some
@given(st.one_of(side_builds(), line_builds()).map(build_of))
def test_no_strip_is_needed_longer_than_it_can_be(build: Build) -> None:
    """Needed <= full, the insets make up the difference, and what is cut is not shorter than what reaches."""
    for piece in build.strips:
        assert piece.needed_length <= piece.full_length + 1e-6
        if piece.needed_length and not piece.square_cut:
            assert abs(piece.full_length - piece.inset_start - piece.inset_end - piece.needed_length) < 1e-6
            assert piece.needed_length <= piece.cut_length + 1e-6


@some
@given(side_builds().map(build_of))
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


def shorter(project: Project) -> Project:
    """The project without its last round or patch."""
    if project.patches:
        return project.model_copy(update={"patches": project.patches[:-1]})
    return project.model_copy(update={"rounds": project.rounds[:-1]})


@some
@given(any_builds().filter(lambda laid: max(len(laid.project.rounds), len(laid.project.patches)) > 1))
def test_a_later_strip_never_enlarges_an_earlier_patch(laid: Laid) -> None:
    """Taking back the last round or patch only gives back."""
    before, after = build_project(shorter(laid.project), laid.numbers), build_of(laid)

    for earlier, later in zip(before.pieces, after.pieces, strict=False):
        assert not counts(without(joined(later.visible), joined(earlier.visible)))


def in_a_mirror(area: BaseGeometry) -> BaseGeometry:
    """The area with right and left changed."""
    return scale(area, xfact=-1, origin=(0, 0))


@some
@given(mirrored_ways())
def test_the_mirror_of_a_project_is_the_mirror_of_its_build(laid: Laid) -> None:
    """Left and right change places: the same patches in a mirror, the same lengths, starts and ends swapped."""
    build, other = build_of(laid), build_project(mirrored(laid.project), laid.numbers)

    assert len(build.pieces) == len(other.pieces)
    for one, two in zip(build.pieces, other.pieces, strict=True):
        assert same_area(in_a_mirror(joined(one.visible)), joined(two.visible))
        if one.step == 0 and not build.first_is_strip:
            continue  # the rectangle a center is cut from may lie either way
        assert pytest.approx(one.needed_length, abs=1e-5) == two.needed_length
        assert pytest.approx(one.cut_length, abs=1e-5) == two.cut_length
        if one.seam and two.seam:
            assert [one.seam.start.kind, one.seam.end.kind] == [two.seam.end.kind, two.seam.start.kind]


def plan_or_cure(project: Project) -> str:
    """The plan as it is written, or what to do when there is none; nothing else may come out."""
    try:
        return json.dumps(plan_as_json(plan(project, with_cures=False)), allow_nan=False)
    except StitchflipError as error:
        return error.fix


@few
@given(any_builds(), st.booleans())
def test_a_plan_is_made_or_refused_with_a_cure(laid: Laid, until: bool) -> None:  # noqa: FBT001
    """A refusal says in a sentence what to do; no number of a plan is endless or undefined."""
    building = laid.project.building.model_copy(update={"until_covered": until})
    answer = plan_or_cure(laid.project.model_copy(update={"building": building}))

    assert answer[-1] in {"}", "."}
    assert not {"nan", "inf"} & set(answer.replace('"', " ").split())
