"""Every way of building laid on squared paper: at each place the kernel and the paper see the same strip on top.

The paper is told the words of the project and knows no polygons (`tests/twins/grid.py`); what the words mean is
written out a second time in `tests/twins/dictate.py`. Where the painter can tell lengths and seam ends too, he is
asked as well.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from shapely.affinity import translate
from shapely.geometry import Polygon as Area

from stitchflip.piecing import build_project
from stitchflip.project import effective
from stitchflip.project.model import Project, Way
from stitchflip.project.numbers import Numbers
from stitchflip.project.reading import read_project
from tests.twins.compare import coarse_differences, differences
from tests.twins.dictate import is_curved
from tests.twins.dictate_free import needs_of_patches, with_corner_squares, with_folded_corners
from tests.twins.grid import holds, on_top, places_inside, seen_at, wrong_places
from tests.twins.painter import counts, paint, together, without
from tests.twins.table import house, project, rounds, square, trim
from tests.twins.told import told

MAKER = house(fold_loss=1 / 32, draw_up_x=0.015, draw_up_y=0.03, reach=0.5)
"""Numbers with all that can move a seam: fold loss, and draw-up unlike in the two directions."""


def faults(piece: Project, numbers: Numbers) -> list[str]:
    """What the kernel, the paper and the painter do not agree about."""
    script = told(piece, numbers)
    build = build_project(piece, numbers)
    assert len(build.strips) == len(script.strips) > 0
    found = (coarse_differences if is_curved(piece) else differences)(build, paint(script))
    if piece.short_strips:  # the kernel tells such a strip as long as it would be
        return [words for words in found if not any(word in words for word in LENGTHS)]
    if piece.building.way is Way.FOUNDATION:  # the painter lays patches as wide as the table
        hidden = [f"step {patch.step}: " for patch in build.pieces if not patch.visible]
        unasked = (*LENGTHS, "raw edge", *hidden)
        found = [words for words in found if not any(word in words for word in unasked)]
    return [*wrong_places(build, script), *found]


LENGTHS = ("full", "inset", "need", "reach")
"""Words of differences that are about how long strips are."""

RECTANGLE = {"fabric": "Linen", "cut_wide": "5", "cut_long": "3 1/2", "shape": "rectangle"}
UNEQUAL = rounds((1.5, 1.5, 2.25, 2.25), (1.5, 2, 2.25, 1.75), (3, 3, 3, 3))
CORNERS = [
    [[-3, -1], [0, -2.5], [2.5, -1], [2, 2], [-1, 3]],
    [[0, 0], [4, 0], [5, 1.5], [4.5, 2.5], [1, 4], [-0.5, 2]],
    [[-2, -1], [3, -2], [1, 3]],
    [[-3, -0.25], [-2.5, -0.5], [2.5, -0.5], [3, 0.25], [2, 0.75], [-2, 0.5]],
]

SIDE_WAYS: dict[str, dict[str, Any]] = {
    "log cabin, clockwise, unequal": {"squared_up": trim(12, 11), "center": RECTANGLE, "rounds": UNEQUAL},
    "log cabin, counter-clockwise, unequal, center off its mark": {
        "squared_up": trim(12, 11),
        "center": {**RECTANGLE, "off_center": [1.0, -0.75]},
        "building": {"turning": "counter-clockwise", "start": "left"},
        "rounds": UNEQUAL,
    },
    "log cabin until covered": {
        "squared_up": trim(13, 9),
        "center": square(3, off_center=[0.5, 0]),
        "building": {"start": "bottom", "until_covered": True},
        "rounds": rounds(1.5, 2.5),
    },
    "two-sided log cabin": {
        "squared_up": trim(8, 8),
        "center": square(3.5, off_center=[-2, -2]),
        "building": {"way": "two-sided log cabin"},
        "rounds": rounds(2, 2.5, (1.5, 3)),
    },
    "two-sided log cabin, the other turn": {
        "squared_up": trim(8, 8),
        "center": square(3.5, off_center=[2, -2]),
        "building": {"way": "two-sided log cabin", "turning": "counter-clockwise"},
        "rounds": rounds(2, 2.5, 2),
    },
    "courthouse steps, top and bottom first": {
        "squared_up": trim(11, 13),
        "center": square(3),
        "building": {"way": "courthouse steps"},
        "rounds": rounds(2, 1.5, (2, 2.5, 3, 1.75)),
    },
    "courthouse steps, left and right first, two a visit": {
        "squared_up": trim(14, 12),
        "center": square(3),
        "building": {"way": "courthouse steps", "first_pair": ["right", "left"], "strips_per_visit": 2},
        "rounds": rounds(1.5, 2),
    },
    "round after round on a triangle": {
        "squared_up": {"sides": 3, "across_flats": "8", "turned": 60},
        "center": {"fabric": "Linen", "sides": 3, "cut": "3"},
        "building": {"way": "round after round"},
        "rounds": rounds(1.5, 2),
    },
    "round after round on a hexagon": {
        "squared_up": {"sides": 6, "across_flats": "11"},
        "center": {"fabric": "Linen", "sides": 6, "cut": "4", "turned": 30},
        "building": {"way": "round after round", "turning": "counter-clockwise", "start": "side 4"},
        "rounds": rounds(2, 1.75),
    },
    "round after round on an octagon, a side closes": {
        "squared_up": {"sides": 8, "across_flats": "10"},
        "center": {"fabric": "Linen", "sides": 8, "cut": "5"},
        "building": {"way": "round after round"},
        "rounds": rounds(2.5, 2.5),
    },
    "pairs round the point, pointed ends": {
        "squared_up": trim(8, 22, length_runs="across", ends="pointed"),
        "center": square(5.5, 45),
        "building": {"way": "pairs round the point"},
        "rounds": rounds(1.5, 2.5, 2, 3),
    },
    "pairs round the point, square ends, upright, alternating": {
        "squared_up": trim(8, 20),
        "center": square(5.5, 45),
        "building": {"way": "pairs round the point", "pair_first": "alternate", "until_covered": True},
        "rounds": rounds(2.5, 2),
    },
    "pairs round the point at one end": {
        "squared_up": trim(8, 20, length_runs="across"),
        "center": square(5.5, 45, off_center=[-5, 0]),
        "building": {"way": "pairs round the point", "one_ended": True, "pair_first": "lower"},
        "rounds": rounds(2.5, 2, 2, 2, 2),
    },
    "rows across from the middle": {
        "squared_up": trim(9, 12),
        "building": {"way": "rows of strips"},
        "rounds": rounds(3, 2, 1.5, (2.5, 3)),
    },
    "rows along from one end": {
        "squared_up": trim(9, 12),
        "building": {"way": "rows of strips", "rows_run": "along", "rows_from": "one end"},
        "rounds": rounds(3, 2, 1.5, 2.5, 2, 2),
    },
    "rows slanted from the middle": {
        "squared_up": trim(9, 12),
        "building": {"way": "rows of strips", "rows_run": "slanted", "slant": 30},
        "rounds": rounds(2.5, 2, 1.5, 2.5, 3, 3),
    },
    "rows slanted from one end, lying": {
        "squared_up": trim(9, 12, length_runs="across"),
        "building": {"way": "rows of strips", "rows_run": "slanted", "slant": 20, "rows_from": "one end"},
        "rounds": rounds(2.5, 2, 1.5, 2.5, 3, 3, 3, 3),
    },
    "rows slanted the other way from one end": {
        "squared_up": trim(9, 12),
        "building": {"way": "rows of strips", "rows_run": "slanted", "slant": 135, "rows_from": "one end"},
        "rounds": rounds(2.5, 2, 1.5, 2.5, 3, 3, 3, 3),
    },
    "rows round a center until covered": {
        "squared_up": trim(9, 12),
        "center": {**RECTANGLE, "cut_wide": "11"},
        "building": {"way": "rows of strips", "until_covered": True},
        "rounds": rounds(2.5, 1.5),
    },
    "string block, rising": {
        "squared_up": trim(8.5, 8.5),
        "building": {"way": "string block"},
        "rounds": rounds(2, 1.5, 2.25, 1.75, 2.25),
    },
    "string block, falling, on a base longer than wide": {
        "squared_up": trim(7, 9),
        "building": {"way": "string block", "turning": "counter-clockwise", "until_covered": True},
        "rounds": rounds(2, 1.5, 2.25),
    },
    "sides in my order": {
        "squared_up": trim(9, 9),
        "center": square(4),
        "building": {"way": "sides in my order"},
        "steps": [{"side": side, "cut": cut} for side, cut in [("left", "2"), ("top", "3"), ("left", "1 1/2")]],
    },
    "on from a half-done piece": {
        "squared_up": trim(12, 12),
        "center": {"fabric": "Linen", "corners": CORNERS[1], "sewn_already": True, "off_center": [-2, -1.5]},
        "building": {"way": "round after round"},
        "rounds": rounds(2, 2),
    },
    "round after round in an oval": {
        "squared_up": trim(11, 15, shape="oval"),
        "center": {"fabric": "Linen", "sides": 6, "cut": "5"},
        "building": {"way": "round after round"},
        "rounds": rounds(2, 3, 3.5),
    },
    "log cabin with rounded corners": {
        "squared_up": trim(12, 10, corner_radius="2 1/2"),
        "center": square(4),
        "rounds": rounds(2.5, 3, 2.5),
    },
    "courthouse steps, cut apart into six": {
        "squared_up": trim(4, 5),
        "cut_apart": {"across": 3, "down": 2, "loss": "1/4"},
        "center": square(3),
        "building": {"way": "courthouse steps"},
        "rounds": rounds(2.5, 3, 2.5, 2),
    },
    "round after round on half a square": {
        "squared_up": trim(12, 10),
        "center": {"fabric": "Linen", "shape": "half square", "cut": "5", "off_center": [0, -1]},
        "building": {"way": "round after round", "start": "upper left"},
        "rounds": rounds(1.5, 2, 2),
    },
    **{
        f"round after round on corners {number}": {
            "squared_up": trim(11, 9),
            "center": {"fabric": "Linen", "corners": corners},
            "building": {"way": "round after round", "start": f"side {number + 1}"},
            "rounds": rounds(1.75, 2.5, 2),
        }
        for number, corners in enumerate(CORNERS)
    },
}


@pytest.mark.parametrize("name", SIDE_WAYS)
def test_ways_that_sew_on_sides(name: str) -> None:
    """With fold loss and draw-up, the kernel, the paper and the painter agree at every place and on every length."""
    piece = project(**SIDE_WAYS[name])

    assert [] == faults(piece, MAKER)


BRAIDS: dict[str, dict[str, Any]] = {
    "braid": {
        "squared_up": trim(8, 16),
        "building": {"way": "braid"},
        "rounds": rounds(2.5, 2.5, 2.5, 2.5, 2.5, 2.5, 2.5),
    },
    "braid until covered, left first, unequal strips": {
        "squared_up": trim(7, 15),
        "building": {"way": "braid", "start": "upper left", "until_covered": True},
        "rounds": rounds(2, (1.5, 2.25)),
    },
    "braid at 60 degrees": {
        "squared_up": trim(7, 15),
        "building": {"way": "braid", "slant": 60, "until_covered": True},
        "rounds": rounds(2.5),
    },
    "chevron": {
        "squared_up": trim(8, 16),
        "building": {"way": "chevron", "until_covered": True},
        "rounds": rounds(2.5, 1.5),
    },
    "chevron, steps on either side in turn, lying flat": {
        "squared_up": trim(8, 12),
        "building": {"way": "chevron", "slant": 30, "pair_first": "alternate", "until_covered": True},
        "rounds": rounds(2.5, 2),
    },
    "chevron, left leg first": {
        "squared_up": trim(8, 12),
        "building": {"way": "chevron", "pair_first": "lower"},
        "rounds": rounds(2.5, 2, 2, 3, 2),
    },
}


@pytest.mark.parametrize("name", BRAIDS)
def test_braids_and_chevrons(name: str) -> None:
    """Strips alternate on two sides, their lower ends free."""
    piece = project(center={"fabric": "Linen", "shape": "half square", "cut": "6"}, **BRAIDS[name])

    assert [] == faults(piece, MAKER)


SQUARES: dict[str, dict[str, Any]] = {
    "all alike": {"rounds": [{"fabric": "Linen", "cut": "2", "corner_fabric": "Plum"}] * 3},
    "unequal widths, left and right first, off its mark": {
        "building": {"first_pair": ["left", "right"]},
        "center": {"fabric": "Linen", "cut_wide": "4", "cut_long": "3", "off_center": [0.5, -0.25]},
        "rounds": [
            {"fabric": "Linen", "cuts": ["1 1/2", "2", "2 1/2", "3"], "corner_fabric": "Plum"},
            {"fabric": "Oat", "cuts": ["2", "2", "2", "1 1/2"], "corner_fabric": "Linen"},
        ],
    },
}


@pytest.mark.parametrize("name", SQUARES)
def test_rounds_with_corner_squares(name: str) -> None:
    """The strips agree like courthouse steps; inside a pieced strip every place has the fabric that the paper says."""
    parts = {"squared_up": trim(11, 10), "center": square(3), **SQUARES[name]}
    building = {"way": "rounds with corner squares", **parts.pop("building", {})}
    fabrics = [{"name": "Linen"}, {"name": "Plum"}, {"name": "Oat"}]
    piece = project(building=building, fabrics=fabrics, **parts)
    script, pieced = with_corner_squares(piece, MAKER)
    build = build_project(piece, MAKER)

    assert [] == faults(piece, MAKER)
    assert sorted(pieced) == [strip.step for strip in build.strips if strip.sections]
    x, y = places_inside(script.trim, 1500)
    for px, py, step in zip(x, y, on_top(script, x, y), strict=True):
        if step in pieced:
            one = pieced[step]
            u = one.along[0] * px + one.along[1] * py
            sections = build.pieces[step].sections
            held = [section.fabric for section in sections if any(holds(part, px, py) for part in section.visible)]
            assert [one.fabric if one.low <= u <= one.high else one.square] == held


WONKY: dict[str, dict[str, Any]] = {
    "four sides, clockwise": {"center": square(3), "building": {}},
    "a rectangle the other way round": {
        "center": RECTANGLE,
        "building": {"turning": "counter-clockwise", "start": "left", "largest_angle": 25},
    },
    "a hexagon": {"center": {"fabric": "Linen", "sides": 6, "cut": "4"}, "building": {"largest_angle": 20}},
    "a triangle until covered": {
        "center": {"fabric": "Linen", "sides": 3, "cut": "4"},
        "building": {"until_covered": True, "smallest_angle": 0, "no_sliver_under": "1/4"},
    },
}


@pytest.mark.parametrize("seed", [1, 7, 1944])
@pytest.mark.parametrize("name", WONKY)
def test_wonky_strips(name: str, seed: int) -> None:
    """Along whatever lines chance drew, the layers are those of the paper and the painter, with whole allowances."""
    piece = project(
        squared_up=trim(11, 9),
        center=WONKY[name]["center"],
        building={"way": "wonky strips", "seed": seed, **WONKY[name]["building"]},
        rounds=rounds(2, 2.5),
    )

    assert [] == faults(piece, MAKER)
    assert [] == [words for _, words in paint(told(piece, MAKER)).notes if words == "scant allowance"]


FOLDED: dict[str, dict[str, Any]] = {
    "all four corners": {"rounds": rounds(3)},
    "squares that overlap, in my order": {
        "building": {"corners": ["lower left", "lower right", "upper right", "upper left"]},
        "rounds": rounds((6, 5, 4.5, 5.5)),
    },
    "two corners, one square over the other": {
        "building": {"corners": ["upper left", "lower right"]},
        "rounds": rounds(6.5, 3),
    },
}


@pytest.mark.parametrize("name", FOLDED)
def test_stitch_and_flip_corners(name: str) -> None:
    """Every place shows the last square folded over it, or the patch."""
    parts = FOLDED[name]
    building = {"way": "stitch-and-flip corners", **parts.get("building", {})}
    patch = {"fabric": "Linen", "cut_wide": "10", "cut_long": "8"}
    piece = project(squared_up=trim(9, 7), center=patch, building=building, rounds=parts["rounds"])
    build = build_project(piece, MAKER)
    _, folds = with_folded_corners(piece, MAKER)
    x, y = places_inside(build.trim, 2500)
    on_paper = [
        max((step for step, fold in enumerate(folds, 1) if fold.covers(*at)), default=0)
        for at in zip(x, y, strict=True)
    ]

    assert on_paper == seen_at(build, x, y).tolist()
    assert [fold.cut for fold in folds] == [strip.square_cut for strip in build.strips]


LINES = [[[-3, -9], [-1, 9]], [[9, 2.5], [-9, 4]], [[2, -9], [4.5, 9]], [[-9, -2], [9, -4]], [[-6, 1], [-1, 6]]]
FOUNDATION: dict[str, dict[str, Any]] = {
    "five lines round the center mark": {},
    "the first patch off the mark": {"at": [5.5, -4.5]},
    "drawn on the back": {"seen": "from the back", "at": [1, 0.5]},
    "lengthwise, the last patch over a corner of all": {"lines": [*LINES, [[0, -7], [6, -1]]]},
}


@pytest.mark.parametrize("name", FOUNDATION)
def test_numbered_foundations(name: str) -> None:
    """Every place shows the last patch whose line it lies beyond, seen from the first; all are cut large enough.

    On each patch as cut lies what it shows and the allowance behind its own line and past every later one.
    """
    parts = FOUNDATION[name]
    patches = [{"fabric": "Linen", "at": parts.get("at", [0, 0])}]
    patches += [{"fabric": "Linen", "line": line} for line in parts.get("lines", LINES)]
    building = {"way": "numbered foundation", "lines_seen": parts.get("seen", "from the front")}
    piece = project(squared_up=trim(12, 10), building=building, patches=patches)
    build = build_project(piece, MAKER)
    script = told(piece, MAKER)

    assert [] == faults(piece, MAKER)
    assert () == build.bare
    for patch, need in zip(build.pieces, needs_of_patches(script), strict=True):
        opened, seam = Area(patch.opened), script.seam if patch.step else 0
        folded = together([opened, translate(opened, -seam * patch.normal[0], -seam * patch.normal[1])])
        assert not counts(without(need, folded))


EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_examples(path: Path) -> None:
    """Every example, with its maker's numbers."""
    piece = read_project(path.read_text(encoding="utf-8"))
    numbers = effective(piece)

    assert [] == faults(piece, numbers)
