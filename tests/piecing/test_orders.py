"""Every way of building asks for its strips in the order a maker would sew them."""

from itertools import islice
from typing import Any

import pytest

from stitchflip.errors import BuildError
from stitchflip.lengths import Unit
from stitchflip.piecing import build_project, start_of, trim_polygon
from stitchflip.piecing.frame import frame_for
from stitchflip.piecing.ways import Job, way_of
from stitchflip.project.model import Project
from stitchflip.project.numbers import effective


def drafted(**tables: Any) -> Project:
    """A small project with some tables of its own."""
    plain: dict[str, Any] = {
        "name": "Doormat",
        "squared_up": {"wide": "12", "long": "12"},
        "center": {"cut": "4", "fabric": "Plain"},
        "rounds": [{"cut": "2", "fabric": "Stripe"}],
        "fabrics": [{"name": "Plain"}, {"name": "Stripe"}],
        "binding": {"fabric": "Stripe"},
    }
    return Project.model_validate({**plain, **tables}, context={"unit": Unit.INCH})


def sides(project: Project, count: int) -> list[str]:
    """Names of the sides of the first strips."""
    numbers = effective(project)
    state, names = start_of(project, numbers)
    normals = tuple(side.normal for side in state.sides if side is not None)
    job = Job(project, numbers, frame_for(numbers, trim_polygon(project, numbers)), names, normals)
    return [names[strip.side] for strip in islice(way_of(project).strips(job), count)]


ROUND = [{"cut": "2", "fabric": "Stripe"}] * 2
ON_POINT = {"cut": "4", "fabric": "Plain", "turned": 45}


@pytest.mark.parametrize(
    ("tables", "expected"),
    [
        ({"building": {"way": "log cabin"}}, "top, right, bottom, left"),
        (
            {"building": {"way": "log cabin", "turning": "counter-clockwise", "start": "right"}},
            "right, top, left, bottom",
        ),
        ({"building": {"way": "two-sided log cabin"}, "rounds": ROUND}, "top, right, top, right"),
        ({"building": {"way": "courthouse steps"}}, "top, bottom, left, right"),
        (
            {"building": {"way": "courthouse steps", "first_pair": ["left", "right"]}},
            "left, right, top, bottom",
        ),
        (
            {"building": {"way": "courthouse steps", "strips_per_visit": 2}},
            "top, bottom, top, bottom, left, right, left, right",
        ),
        (
            {
                "building": {"way": "pairs round the point"},
                "center": ON_POINT,
                "squared_up": {"wide": "12", "long": "12", "length_runs": "across"},
            },
            "upper right, lower right, upper left, lower left",
        ),
        (
            {
                "building": {"way": "pairs round the point", "pair_first": "alternate"},
                "center": ON_POINT,
                "rounds": ROUND,
                "squared_up": {"wide": "12", "long": "12", "length_runs": "across"},
            },
            "upper right, lower right, upper left, lower left, lower right, upper right, lower left, upper left",
        ),
        (
            {
                "building": {"way": "pairs round the point", "one_ended": True},
                "center": ON_POINT,
                "squared_up": {"wide": "12", "long": "12", "length_runs": "across"},
            },
            "upper right, lower right",
        ),
        (
            {"building": {"way": "pairs round the point"}, "center": ON_POINT},
            "upper right, upper left, lower right, lower left",
        ),
        ({"building": {"way": "rows of strips"}}, "top, bottom"),
        ({"building": {"way": "rows of strips", "rows_run": "along"}}, "right, left"),
        ({"building": {"way": "rows of strips", "rows_from": "one end"}, "center": None, "rounds": ROUND}, "top"),
        (
            {
                "building": {"way": "sides in my order"},
                "steps": [{"side": "left", "cut": "2"}, {"side": "top", "cut": "3"}],
            },
            "left, top",
        ),
    ],
)
def test_strips_come_in_the_order_sewn(tables: dict[str, Any], expected: str) -> None:
    """The trade's order for each way of building, and its choices (common practice, no source)."""
    assert expected.split(", ") == sides(drafted(**tables), 99)


def test_until_covered_never_ends_by_itself() -> None:
    """Rounds repeat for as long as they are asked for; the build decides when it is covered."""
    project = drafted(building={"way": "log cabin", "until_covered": True})

    assert ["top", "right", "bottom", "left"] * 5 == sides(project, 20)


@pytest.mark.parametrize(
    ("tables", "words"),
    [
        ({"building": {"way": "log cabin", "start": "upper left"}}, "upper left"),
        ({"building": {"way": "courthouse steps", "first_pair": ["top", "left"]}}, "opposite"),
        ({"building": {"way": "pairs round the point"}}, "point at each end"),
        ({"rounds": [{"cuts": ["2", "2"], "fabric": "Stripe"}]}, "2 cut widths"),
        ({"rounds": [{"fabric": "Stripe"}]}, "no cut width"),
        ({"building": {"way": "sides in my order"}, "steps": [{"side": "lower right", "cut": "2"}]}, "lower right"),
        (
            {"building": {"way": "rows"}, "center": {"cut": "4", "fabric": "Plain", "turned": "on point"}},
            "none that lies",
        ),
        (
            {"building": {"way": "rows"}, "center": {"cut": "4", "sides": 3, "fabric": "Plain"}},
            "sides of the center, and it has none",
        ),
    ],
)
def test_an_order_that_cannot_be_followed_says_why(tables: dict[str, Any], words: str) -> None:
    """The error names what was asked for, and its fix begins with a verb."""
    with pytest.raises(BuildError, match=words) as caught:
        sides(drafted(**tables), 99)

    assert caught.value.fix[0].isupper()
    assert caught.value.fix.endswith(".")


@pytest.mark.parametrize("slant", [20, 45, 90, 135, 180, 200, 270, 315, -45])
def test_slanted_rows_from_one_end_grow_over_the_piece_at_any_slant(slant: float) -> None:
    """Whichever way the slant is written, the rows begin at one end and cover the piece."""
    project = drafted(
        squared_up={"wide": "9", "long": "12"},
        center=None,
        building={
            "way": "rows of strips",
            "rows_run": "slanted",
            "slant": slant,
            "rows_from": "one end",
            "until_covered": True,
        },
        rounds=[{"cut": "2 1/2", "fabric": "Plain"}, {"cut": "2", "fabric": "Stripe"}],
    )
    assert () == build_project(project, effective(project)).bare


def test_a_size_beyond_points_needs_a_center_that_shows() -> None:
    """A center no larger than its two seams has no points; the error names it and says what to cut."""
    project = drafted(squared_up={"beyond_points": "6"}, center={"cut": "3/8", "fabric": "Plain"})
    with pytest.raises(BuildError, match="nothing of the center") as caught:
        build_project(project, effective(project))
    assert caught.value.fix.startswith("Cut ")
