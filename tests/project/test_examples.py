"""The examples as project files: complete, readable, and each the piece it says it is."""

from __future__ import annotations

from itertools import combinations
from math import dist
from pathlib import Path

import pytest

from stitchflip.project import Project, read_project_bytes, write_project
from stitchflip.project.words import Join, Setting, Through, Way, Working

FOLDER = Path(__file__).parents[2] / "examples"
NAMES = sorted(path.stem for path in FOLDER.glob("*.toml"))


def example(name: str) -> Project:
    """An example as its file says."""
    return read_project_bytes((FOLDER / f"{name}.toml").read_bytes(), name)


def test_the_first_seven_are_there() -> None:
    """A runner, mats, rows, a topper, two blocks and a coaster."""
    seven = {
        "doorstep",
        "harbour-shed-block",
        "kite-weather-block",
        "lantern-walk",
        "morning-tray",
        "snow-gate",
        "tin-roof",
    }

    assert seven <= set(NAMES)


def test_every_join_and_both_settings_have_an_example() -> None:
    """Each way of joining blocks, straight and on point; batting that gets its backing later as well."""
    joined = [project.joined for project in map(example, NAMES) if project.joined is not None]

    assert set(Join) == {one.join for one in joined}
    assert set(Setting) == {one.setting for one in joined}
    assert Through.BATTING_ONLY in {example(name).base.through for name in NAMES}


@pytest.mark.parametrize("name", NAMES)
def test_an_example_survives_being_written(name: str) -> None:
    """Read, written and read again it is the same project."""
    assert example(name) == read_project_bytes(write_project(example(name)).encode(), name)


@pytest.mark.parametrize("name", NAMES)
def test_an_example_explains_itself(name: str) -> None:
    """It opens with a note that names it, has a few words about it, and no line a narrow screen would break."""
    lines = (FOLDER / f"{name}.toml").read_text(encoding="utf-8").split("\n")
    project = example(name)

    assert lines[0].startswith("# ")
    assert project.about
    assert sum(1 for line in lines if "#" in line.replace('"#', "")) >= 5
    assert all(len(line) <= 120 for line in lines)


def _linear(part: int) -> float:
    share = part / 255
    return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)


def _distance(one: str, other: str) -> float:
    """How far two colors lie apart to the eye, roughly: CIE 1976 (CIELAB), D65."""

    def lab(color: str) -> tuple[float, float, float]:
        red, green, blue = (_linear(int(color[place : place + 2], 16)) for place in (1, 3, 5))
        xyz = (
            (0.4124 * red + 0.3576 * green + 0.1805 * blue) / 0.9505,
            0.2126 * red + 0.7152 * green + 0.0722 * blue,
            (0.0193 * red + 0.1192 * green + 0.9505 * blue) / 1.089,
        )
        x, y, z = (value ** (1 / 3) if value > 0.008856 else 7.787 * value + 16 / 116 for value in xyz)
        return 116 * y - 16, 500 * (x - y), 200 * (y - z)

    return dist(lab(one), lab(other))


@pytest.mark.parametrize("name", NAMES)
def test_the_fabrics_of_an_example_can_be_told_apart(name: str) -> None:
    """Any two fabrics differ by 10 or more, where 2 to 3 is a difference one just sees."""
    for one, other in combinations(example(name).fabrics, 2):
        assert _distance(one.color, other.color) >= 10, (one.name, other.name)


@pytest.mark.parametrize(
    ("name", "way", "strips", "alike"),
    [
        ("lantern-walk", Way.POINTS, 4 * 7, 1),
        ("morning-tray", Way.COURTHOUSE, 4 * 3, 4),
        ("tin-roof", Way.ROWS, 1 + 2 * 17, 1),
        ("snow-gate", Way.AROUND, 6 * 5, 1),
        ("harbour-shed-block", Way.LOG_CABIN, 4 * 4, 1),
        ("kite-weather-block", Way.ROWS, 1 + 2 * 4, 1),
        ("doorstep", Way.SIDES, 4, 1),
    ],
)
def test_an_example_has_its_strips(name: str, way: Way, strips: int, alike: int) -> None:
    """Its way of building and the strips of one piece: 28, 12, 35, 30, 16, 9 and 4."""
    project = example(name)
    rounds = len(project.rounds)
    per_round = {Way.ROWS: 2, Way.AROUND: 6}.get(way, 4)
    counted = len(project.steps) or per_round * rounds - (1 if way is Way.ROWS else 0)

    assert (way, strips, alike) == (project.building.way, counted, project.how_many)


def test_tin_roof_reaches_where_it_should() -> None:
    """Half the middle strip and seventeen that each lose two seams: raw edge 29 1/4 from the middle line, by hand."""
    cuts = [one.cut.inches for one in example("tin-roof").rounds if one.cut is not None]

    assert 29.25 == cuts[0] / 2 + sum(cut - 0.5 for cut in cuts[1:])


def test_lantern_walk_reaches_where_it_should() -> None:
    """Raw edge after seven rounds, from the middle, square to the strips: 16 3/8."""
    project = example("lantern-walk")
    cuts = [one.cut.inches for one in project.rounds if one.cut is not None]

    assert project.center is not None
    assert project.center.cut is not None
    assert 16.375 == project.center.cut.inches / 2 + sum(cut - 0.5 for cut in cuts)


def test_tin_roof_buys_nothing_but_binding() -> None:
    """Seven fat quarters, all of them only what is on hand; batting from two leftovers that make 60 in."""
    project = example("tin-roof")

    assert 7 == sum(fabric.only_on_hand for fabric in project.fabrics)
    assert ["Gutter Blue"] == [fabric.name for fabric in project.fabrics if not fabric.only_on_hand]
    assert 60 == sum(piece.long.inches for piece in project.batting.on_hand)


def test_the_small_one_first_is_sewn_from_the_strip_in_the_hand() -> None:
    """The coaster is the example of trimming as one goes."""
    assert Working.TRIM_AS_YOU_GO is example("doorstep").working
