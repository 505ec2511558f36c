"""Every picture of every example, and of builds nobody has thought of: nothing left out, touching or off the sheet."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

import pytest
from hypothesis import HealthCheck, given, settings

from stitchflip import pictures
from stitchflip.pictures.ink import LEAST_CONTRAST, contrast
from stitchflip.pictures.model import Area, Badge, Figure, Knot, Label
from stitchflip.pictures.paper import Shape, Sheet, boxes_touch
from stitchflip.pictures.sheet import lay_out
from stitchflip.piecing.model import EndClass, Polygon
from stitchflip.planning import plan
from stitchflip.planning.model import Plan
from stitchflip.project import read_project
from tests.pictures.conftest import EXAMPLES
from tests.pictures.reader import picture_differences, read_picture
from tests.strategies import Laid, regular_builds

NAMES = (
    "doorstep",
    "harbour-shed-block",
    "kite-weather-block",
    "lantern-walk",
    "morning-tray",
    "snow-gate",
    "tin-roof",
)


@lru_cache(maxsize=16)
def planned(name: str) -> Plan:
    """The plan of an example."""
    return plan(read_project((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8")), with_cures=False)


def figures(made: Plan) -> Iterator[tuple[str, Figure]]:
    """All pictures of a plan, by name."""
    yield "finished", pictures.finished(made)
    yield "order", pictures.order(made)
    yield "back", pictures.back(made)
    yield "base", pictures.base(made)
    yield "squaring", pictures.squaring(made)
    yield "coloring", pictures.coloring(made)
    for piece in made.build.pieces:
        yield f"step {piece.step}", pictures.step(made, piece.step)
    for fabric in made.fabrics:
        yield f"cuts of {fabric.fabric}", pictures.cuts(made, fabric)
    for corner in made.binding.corners:
        yield f"corner of {corner.angle:.0f}", pictures.binding_corner(made, corner)


def area_of(polygon: Polygon) -> float:
    """Shoelace area."""
    pairs = zip(polygon, polygon[1:] + polygon[:1], strict=True)
    return sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs) / 2


def touching(sheet: Sheet) -> list[tuple[str, str]]:
    """Pairs of words that touch."""
    words = [(word.text, word.box) for word in sheet.words]
    return [
        (one, other)
        for place, (one, box) in enumerate(words)
        for other, other_box in words[place + 1 :]
        if boxes_touch(box, other_box)
    ]


@pytest.mark.parametrize("share", [1.0, 0.75])
@pytest.mark.parametrize("name", NAMES)
def test_no_two_words_touch(name: str, share: float) -> None:
    """At the width a picture is made for, and a quarter smaller, all words keep apart."""
    found = {
        what: pairs
        for what, figure in figures(planned(name))
        if (pairs := touching(lay_out(figure, figure.width_in * share)))
    }
    assert {} == found


@pytest.mark.parametrize("name", NAMES)
def test_all_words_are_on_the_sheet(name: str) -> None:
    """No corner of a word lies outside the view box."""
    off = [
        (what, word.text)
        for what, figure in figures(planned(name))
        for sheet in (lay_out(figure, figure.width_in),)
        for word in sheet.words
        if not all(0 <= x <= sheet.wide and 0 <= y <= sheet.high for x, y in word.box)
    ]
    assert [] == off


@pytest.mark.parametrize("name", NAMES)
def test_the_finished_piece_is_all_there(name: str) -> None:
    """Read back from its SVG: each shown patch with its fabric, its area and its letter.

    The areas are the kernel's, taped; that they fill the piece inside the binding is checked as well, by the area
    of that outline less what stays bare.
    """
    made = planned(name)
    build = made.build
    drawn_in = (1 - build.draw_up[0]) * (1 - build.draw_up[1])
    patches = [(piece.fabric, area_of(polygon) * drawn_in) for piece in build.pieces for polygon in piece.shown]
    letters = [made.letter_of(fabric) for fabric, _ in patches]
    svg = pictures.to_svg(pictures.finished(made))
    assert [] == picture_differences(svg, patches, letters)
    if not build.bare:
        assert area_of(build.trim_inner) * drawn_in == pytest.approx(sum(area for _, area in patches), rel=1e-6)


@pytest.mark.parametrize("name", NAMES)
def test_every_strip_has_its_number_in_the_order(name: str) -> None:
    """Numbers 1 to n, each once, each with its letter."""
    made = planned(name)
    figure = pictures.order(made)
    words = [(word.text, word.tail) for word in lay_out(figure, figure.width_in).words]
    wanted = {(str(strip.step), made.letter_of(strip.fabric)) for strip in made.build.strips if strip.visible}
    assert wanted == {word for word in words if word[0].isdigit()}
    assert len(set(words)) == len(words)


@pytest.mark.parametrize("name", NAMES)
def test_every_end_to_lock_is_on_the_back(name: str) -> None:
    """As many knots on the back as loose ends in the build, mirrored, and one on each step that has one."""
    made = planned(name)
    loose = [
        (strip.step, end.at)
        for strip in made.build.strips
        if strip.seam is not None
        for end in (strip.seam.start, strip.seam.end)
        if end.kind is EndClass.LOOSE
    ]
    knots = [item.at for item in pictures.back(made).items if isinstance(item, Knot)]
    assert sorted((-x, y) for _, (x, y) in loose) == sorted(knots)
    for step, at in loose:
        assert at in [item.at for item in pictures.step(made, step).items if isinstance(item, Knot)]


@pytest.mark.parametrize("name", NAMES)
def test_lines_read_on_the_fabric_they_bound(name: str) -> None:
    """Between a patch and its line, or the line's casing, the contrast is three to one or more."""
    weak = [
        (what, shape.fill, shape.pen)
        for what, figure in figures(planned(name))
        for shape in lay_out(figure, figure.width_in).marks
        if isinstance(shape, Shape) and shape.fill and shape.pen is not None and shape.what == "patch"
        if max(contrast(color, shape.fill) for color in (shape.pen.color, shape.pen.casing) if color) < LEAST_CONTRAST
    ]
    assert [] == weak


@pytest.mark.parametrize("name", NAMES)
def test_the_same_example_gives_the_same_pictures(name: str) -> None:
    """Planned and drawn anew, every SVG text is the same, byte for byte."""
    text = (EXAMPLES / f"{name}.toml").read_text(encoding="utf-8")
    anew = dict(figures(plan(read_project(text), with_cures=False)))
    for what, figure in figures(planned(name)):
        lay_out.cache_clear()
        assert pictures.to_svg(figure) == pictures.to_svg(anew[what]), what


@settings(max_examples=10, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(regular_builds())
def test_any_build_can_be_drawn(laid: Laid) -> None:
    """Whatever the way of building: every picture is well-formed, no two words touch, none is off the sheet."""
    made = plan(laid.project, with_cures=False)
    for what, figure in figures(made):
        read_picture(pictures.to_svg(figure))
        sheet = lay_out(figure, figure.width_in)
        assert [] == touching(sheet), what
        assert all(0 <= x <= sheet.wide and 0 <= y <= sheet.high for word in sheet.words for x, y in word.box), what


def test_the_column_left_of_a_fat_quarter_is_what_can_be_used() -> None:
    """Of 20 1/2 in 1/2 goes in straightening one side, pieces take 13 1/2: 6 1/2 x 17 can be used; drawn as wide."""
    made = planned("tin-roof")
    quarters = [one for one in made.fabrics if one.hand_sheets]
    assert 7 == len(quarters)
    for one in quarters:
        figure = pictures.cuts(made, one)
        (column,) = [
            item
            for item in figure.items
            if isinstance(item, Label) and item.tail.replace("\u202f", " ") == "· 6½ × 17 in"
        ]
        across = [x for x, _ in column.room]
        assert (6.5, 20.5) == pytest.approx((max(across) - min(across), max(across)))
        pieces = [item for item in figure.items if isinstance(item, Area) and item.what == "piece"]
        assert min(across) == pytest.approx(max(x for piece in pieces for x, _ in piece.points))


def test_rings_bear_the_numbers_of_the_order() -> None:
    """Brass: 1 straighten, 2 three strips, 3 to 5 what each gives; Fog's quarter: 1 to 3 and 5, the rest is words."""
    for example, fabric, numbers in (("lantern-walk", "Brass", "12345"), ("tin-roof", "Fog", "1235")):
        made = planned(example)
        one = next(own for own in made.fabrics if own.fabric == fabric)
        figure = pictures.cuts(made, one)
        assert sorted(numbers) == sorted(item.text for item in figure.items if isinstance(item, Badge))


SHAPED = """
name = "Many Sides"
[squared_up]
shape = "polygon"
sides = {sides}
across_flats = "20"
turned = {turned}
[center]
fabric = "Sand"
shape = "polygon"
sides = {sides}
cut = "8"
turned = {turned}
[building]
way = "round after round"
[[rounds]]
cut = "2 1/2"
fabric = "Night"
[[rounds]]
cut = "6"
fabric = "Sand"
[[fabrics]]
name = "Sand"
color = "#e8dcc0"
[[fabrics]]
name = "Night"
color = "#1f2740"
[binding]
fabric = "Night"
"""


@pytest.mark.parametrize("turned", [0, 30])
@pytest.mark.parametrize("sides", [3, 5, 6, 8, 12])
def test_numbered_edges_are_named_inside_their_edge_in_three_pictures(sides: int, turned: int) -> None:
    """Side 1 to side n once each, nearest to their own edge, within 12 points of it, touching nothing, never on end."""
    made = plan(read_project(SHAPED.format(sides=sides, turned=turned)), with_cures=False)
    names = [f"side {number}" for number in range(1, sides + 1)]
    normals = {side.name: side.normal for side in made.square_up.sides}
    assert names == list(normals)
    for draw, outline in (
        (pictures.base, made.build.trim),
        (pictures.squaring, made.build.trim_taped),
        (pictures.order, made.build.trim),
    ):
        figure = draw(made)
        sheet = lay_out(figure, figure.width_in)
        words = {word.text: word for word in sheet.words if word.text.startswith("side ")}
        assert (sorted(names), []) == (sorted(words), touching(sheet))
        left, top, right, bottom = sheet.window
        scale = (right - left) / (figure.high[0] - figure.low[0])
        assert scale == pytest.approx((bottom - top) / (figure.high[1] - figure.low[1]))
        for name, word in words.items():
            x = sum(x for x, _ in word.box) / 4
            y = sum(y for _, y in word.box) / 4
            at = (figure.low[0] + (x - left) / scale, figure.low[1] + (bottom - y) / scale)
            inside = {
                one: max(nx * px + ny * py for px, py in outline) - nx * at[0] - ny * at[1]
                for one, (nx, ny) in normals.items()
            }
            assert name == min(inside, key=lambda one: inside[one])
            assert 0 < inside[name] * scale < 12
            assert -90 < word.angle <= 90


def test_edges_known_by_where_they_face_are_not_named_again() -> None:
    """A square's top, right, bottom and left need no word in the pictures."""
    made = planned("doorstep")
    for draw in (pictures.base, pictures.squaring, pictures.order):
        figure = draw(made)
        assert not [word.text for word in lay_out(figure, figure.width_in).words if "side " in word.text]


def test_a_step_says_which_numbered_side_its_strip_goes_on() -> None:
    """Strip 5 of Snow Gate goes on side 3: clockwise from side 1 come 6, 5, 4 and 3."""
    figure = pictures.step(planned("snow-gate"), 5)
    assert "5 A · side 3" in [word.text for word in lay_out(figure, figure.width_in).words]


def test_a_piece_of_many_strips_keeps_its_numbers_apart() -> None:
    """A runner of 121 rows of 1 in: 120 numbered strips and the middle, none touching, most beside the drawing."""
    text = MANY.format(rounds="\n".join('[[rounds]]\ncut = "1"\nfabric = "Sand"' for _ in range(61)))
    made = plan(read_project(text), with_cures=False)
    figure = pictures.order(made)
    sheet = lay_out(figure, 4.0)
    assert 121 == len(sheet.words)
    assert [] == touching(sheet)


MANY = """
name = "Many Strips"
[squared_up]
wide = "8"
long = "60"
[building]
way = "rows of strips"
{rounds}
[[fabrics]]
name = "Sand"
color = "#e8dcc0"
[binding]
fabric = "Sand"
"""
