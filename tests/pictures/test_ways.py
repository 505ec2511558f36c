"""One example of each way of building, read back from its picture: what is drawn where, by a reader of its own.

A place is looked up with the crossing rule on the corners written in the SVG, not with the package's geometry, and
what should be there was worked out on paper from the project file.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from math import hypot

import pytest

from stitchflip import pictures
from stitchflip.errors import BuildError
from stitchflip.pictures.foundation import MIRRORED
from stitchflip.pictures.model import Area, Badge, Dimension, Figure, Knot, Line, Text
from stitchflip.pictures.paper import boxes_touch
from stitchflip.pictures.sheet import lay_out
from stitchflip.piecing.model import Point, Polygon
from stitchflip.planning import plan
from stitchflip.planning.model import Plan
from stitchflip.project import read_project
from tests.pictures.conftest import EXAMPLES
from tests.pictures.quilts import kites, sheds
from tests.pictures.reader import Picture, read_picture

NAMES = (
    "arrow-ferry",
    "compass-tray",
    "corner-shop",
    "found-in-a-box",
    "four-from-one",
    "gale-warning",
    "paper-boat",
    "plum-skirt",
    "rye-plait",
    "soft-cover",
    "ticket-booth",
)


@lru_cache(maxsize=16)
def planned(name: str) -> Plan:
    """The plan of an example."""
    return plan(read_project((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8"), name), with_cures=False)


def is_inside(place: Point, corners: list[Point] | Polygon) -> bool:
    """Crossing rule: a ray to the right crosses the outline an odd number of times."""
    x, y = place
    crossings = 0
    for (x0, y0), (x1, y1) in zip(corners, [*corners[1:], corners[0]], strict=True):
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) * (x1 - x0) / (y1 - y0):
            crossings += 1
    return crossings % 2 == 1


class Shown:
    """A picture of a whole piece, asked by places in inches from its middle."""

    def __init__(self, figure: Figure, wide_in: float) -> None:
        """Read the picture; its first fill is the outline of the piece, `wide_in` across."""
        self.picture: Picture = read_picture(pictures.to_svg(figure))
        _, _, outline = self.picture.fills[0]
        xs, ys = [x for x, _ in outline], [y for _, y in outline]
        self.scale = (max(xs) - min(xs)) / wide_in
        self.middle = ((max(xs) + min(xs)) / 2, (max(ys) + min(ys)) / 2)
        self.high_in = (max(ys) - min(ys)) / self.scale

    def fabric_at(self, x: float, y: float) -> str:
        """Name of what is drawn last at a place: right of and above the middle, inches."""
        at = (self.middle[0] + x * self.scale, self.middle[1] - y * self.scale)
        return next((tip for _, tip, corners in reversed(self.picture.fills) if tip and is_inside(at, corners)), "")

    def count(self, *others: str) -> int:
        """How many patches are drawn, without the edge and without other fabrics named."""
        tips = [tip for _, tip, _ in self.picture.fills if tip and not tip.startswith(("binding", "backing"))]
        return sum(1 for tip in tips if tip not in others)


def areas(figure: Figure, what: str) -> list[Area]:
    """The areas that stand for one kind of thing."""
    return [item for item in figure.items if isinstance(item, Area) and item.what == what]


def spread(polygon: Polygon, axis: int) -> tuple[float, float]:
    """Least and greatest coordinate of a polygon."""
    return min(point[axis] for point in polygon), max(point[axis] for point in polygon)


def test_the_crossing_rule_tells_inside_from_outside() -> None:
    """A notch is outside though it lies within the box round the outline."""
    notched = ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (2.0, 1.0), (0.0, 4.0))
    assert [True, False, False] == [is_inside(place, notched) for place in ((2.0, 0.5), (2.0, 3.0), (5.0, 1.0))]


@pytest.mark.parametrize("name", [name for name in NAMES if name != "four-from-one"])
def test_every_patch_that_shows_is_drawn_once(name: str) -> None:
    """Drawn patches = pieces and sections that show inside the edge; a pieced strip counts by its parts."""
    made = planned(name)
    wide = made.square_up.wide
    drawn = Shown(pictures.finished(made, letters=False), wide).count()
    if made.edge.kind == "binding":
        wanted = sum(
            sum(len(part.shown) for part in piece.sections) if piece.sections else len(piece.shown)
            for piece in made.build.pieces
        )
    else:
        wanted = sum(len(piece.visible) for piece in made.build.pieces)
    assert wanted == drawn


# --- joined blocks ---------------------------------------------------------------------------------------


def test_ten_sheds_turn_one_way_and_ten_the_other() -> None:
    """The quilt written by hand: the same center in all twenty, the strips turning the other way in every second.

    The window lies 1½ in right of and above its block's middle in all of them, its left seam at 1½ - 1¼ = ¼. Going
    clockwise the left side is dark, showing 1¾ in a round: Boatshed from 1½ to 3¼ left of the middle. The other way
    it is pale, showing 1 in: Gull, Gull, then Sailcloth from 1¾ to 3¾. Ten of each, 3 in left of the middle.
    """
    made = sheds()
    shown = Shown(pictures.finished(made, letters=False), 52.375)
    assert pytest.approx(65.5, abs=0.05) == shown.high_in
    middles = [((column - 1.5) * 13.125, (2 - row) * 13.125) for row in range(5) for column in range(4)]
    assert {"Lamp"} == {shown.fabric_at(x + 1.5, y + 1.5) for x, y in middles}
    assert {"Lamp"}.isdisjoint(shown.fabric_at(x - 1.5, y + 1.5) for x, y in middles)
    left = Counter(shown.fabric_at(x - 3.0, y + 1.5) for x, y in middles)
    assert {"Boatshed": 10, "Sailcloth": 10} == dict(left)


def test_the_whole_harbour_is_the_one_in_the_file() -> None:
    """Windows at the right in ten blocks and at the left in ten, in turn; 20 × 17 patches and 15 + 4 front strips."""
    made = planned("harbour-sheds")
    shown = Shown(pictures.finished(made, letters=False), 52.375)
    assert pytest.approx(65.5, abs=0.05) == shown.high_in
    for row in range(5):
        for column in range(4):
            x, y = (column - 1.5) * 13.125, (2 - row) * 13.125 + 1.5
            is_right = (row + column) % 2 == 0
            assert is_right == (shown.fabric_at(x + 1.5, y) == "Lamp")
            assert is_right == (shown.fabric_at(x - 1.5, y) != "Lamp")
    assert 340 == shown.count("Jetty")
    assert 19 == shown.count() - shown.count("Jetty")
    assert ["Jetty", "Jetty", "Jetty"] == [
        shown.fabric_at(0, 0),
        shown.fabric_at(-20, 6.5625),
        shown.fabric_at(13.125, -26),
    ]


def test_strings_meet_into_diamonds() -> None:
    """The middle strip runs up to the right in one half of the blocks and down in the other; 16 × 9 patches.

    Blocks come every 8 in. 2½ in right of and above a block's middle lies the middle strip of a rising block; in
    a falling one that place is 2½ × √2 = 3½ in square from its own middle strip: outside its 1½ in.
    """
    made = planned("kite-weather")
    shown = Shown(pictures.finished(made, letters=False), 32.5)
    assert pytest.approx(32.5, abs=0.05) == shown.high_in
    rising = falling = 0
    for row in range(4):
        for column in range(4):
            x, y = (column - 1.5) * 8, (1.5 - row) * 8
            assert "Kite Tail" == shown.fabric_at(x, y)
            up = shown.fabric_at(x + 2.5, y + 2.5) == "Kite Tail"
            down = shown.fabric_at(x + 2.5, y - 2.5) == "Kite Tail"
            rising, falling = rising + (up and not down), falling + (down and not up)
    assert (8, 8) == (rising, falling)
    assert 144 == shown.count()


def test_blocks_joined_by_plain_seams_end_at_the_seam() -> None:
    """Sixteen blocks of 8½ overlap by two seams of ¼: each shows 8 × 8 but the outer ones, and nothing twice."""
    figure = pictures.joining(kites())
    blocks = areas(figure, "block")
    widths = Counter(round(spread(block.points, 0)[1] - spread(block.points, 0)[0], 4) for block in blocks)
    assert {8.0: 8, 8.25: 8} == dict(widths)
    heights = Counter(round(spread(block.points, 1)[1] - spread(block.points, 1)[0], 4) for block in blocks)
    assert {8.0: 8, 8.25: 8} == dict(heights)


def test_rows_are_joined_before_the_long_seams() -> None:
    """Five rows 1 to 5 from the top, each with three short strips; then four long strips 6 to 9 from the top."""
    figure = pictures.joining(sheds())
    badges = {int(item.text): item.at for item in figure.items if isinstance(item, Badge)}
    assert list(range(1, 10)) == sorted(badges)
    heights = [badges[number][1] for number in range(1, 6)]
    assert heights == sorted(heights, reverse=True)
    longs = [badges[number][1] for number in range(6, 10)]
    assert longs == sorted(longs, reverse=True)
    assert all(heights[place] > longs[place] > heights[place + 1] for place in range(4))
    assert (15, 4) == (len(areas(figure, "joining strip")), len(areas(figure, "long strip")))
    lengths = {round(spread(one.points, 0)[1] - spread(one.points, 0)[0], 4) for one in areas(figure, "long strip")}
    assert {52.375} == lengths


@pytest.mark.parametrize("fold", ["behind", "in front"])
def test_the_section_shows_the_gap_that_was_computed(fold: str) -> None:
    """Flat 1⅛, folded 2, seam ¼: raw edges 1⅛ - 1 = ⅛ apart, seam lines ⅝ apart, the fold ends ⅛ past the far one."""
    figure = pictures.join_section(sheds(fold))
    ends = [spread(one.points, 0) for one in areas(figure, "batting")]
    assert pytest.approx(0.125) == max(low for low, _ in ends) - min(high for _, high in ends)
    seams = sorted(line.points[0][0] for line in figure.items if isinstance(line, Line) and line.what == "stitching")
    assert pytest.approx(0.625) == seams[1] - seams[0]
    folded = max(spread(one.points, 0)[1] for one in areas(figure, "folded strip"))
    assert pytest.approx(0.125) == folded - seams[1]
    assert seams[1] < seams[2] < folded
    flat, fold_at = areas(figure, "flat strip"), areas(figure, "folded strip")
    is_above = min(spread(one.points, 1)[0] for one in flat) > max(spread(one.points, 1)[1] for one in fold_at)
    assert (fold == "behind") == is_above
    said = " ".join(text for item in figure.items if isinstance(item, Dimension) for text in item.texts)
    assert "gap ⅛" in said
    assert "passes ⅛" in said


def test_a_section_that_overlaps_says_so() -> None:
    """A flat strip of ⅞ leaves ⅞ - 1 = -⅛: the raw edges are drawn over each other and the words say it."""
    made = sheds()
    assert made.quilt is not None
    tight = replace(made.quilt, join=replace(made.quilt.join, gap=-0.125, shows=0.375, passes=0.375))
    figure = pictures.join_section(replace(made, quilt=tight))
    ends = [spread(one.points, 0) for one in areas(figure, "batting")]
    assert pytest.approx(-0.125) == max(low for low, _ in ends) - min(high for _, high in ends)
    assert any("overlaps by ⅛" in text for item in figure.items if isinstance(item, Dimension) for text in item.texts)


def test_a_plain_seam_has_its_allowances_open_and_no_batting_in_them() -> None:
    """Seam ¼: each allowance lies ¼ to its own side, and both battings end there."""
    figure = pictures.join_section(kites())
    allowances = sorted(spread(one.points, 0) for one in areas(figure, "allowance"))
    assert [pytest.approx((-0.25, 0.0)), pytest.approx((0.0, 0.25))] == allowances
    ends = [spread(one.points, 0) for one in areas(figure, "batting")]
    assert pytest.approx(0.5) == max(low for low, _ in ends) - min(high for _, high in ends)


def test_one_block_is_drawn_of_each_kind() -> None:
    """Both kinds of shed squared up 13 × 13, their windows on different sides."""
    made = planned("harbour-sheds")
    for kind, sign in ((0, 1.0), (1, -1.0)):
        figure = pictures.block(made, kind)
        (window,) = [one for one in areas(figure, "patch") if one.title == "Lamp"]
        assert is_inside((1.5 * sign, 1.5), window.points)
        assert not is_inside((-1.5 * sign, 1.5), window.points)
        assert any("13" in text for item in figure.items if isinstance(item, Dimension) for text in item.texts)


# --- ways of building ------------------------------------------------------------------------------------


def test_a_foundation_is_drawn_in_the_mirror() -> None:
    """The roof's peak is drawn 1 in left of the middle and stands 1 in right of it on the front.

    Front: slopes from (-5, 2) to (1, 6) and from (1, 6) to (5, 2¼); at 5.2 in up the roof is at x = 1, and at x = -1
    the slope is 2 + 4 × 4/6 = 4.67 in up, so that the sky is there.
    """
    made = planned("ticket-booth")
    front = Shown(pictures.finished(made, letters=False), 10.0)
    assert ["Tar Roof", "Dusk"] == [front.fabric_at(1, 5.2), front.fabric_at(-1, 5.2)]
    back = pictures.foundation(made)

    def patch_at(figure: Figure, x: float, y: float) -> int | None:
        return next((one.step for one in reversed(areas(figure, "patch")) if is_inside((x, y), one.points)), None)

    assert ("Tar Roof", "Dusk") == tuple(made.build.pieces[patch_at(back, x, 5.2) or 0].fabric for x in (-1.0, 1.0))
    order = pictures.order(made)
    places = [(x / 2 + 0.03, y / 2 + 0.01) for x in range(-9, 10) for y in range(-12, 13)]
    assert all(patch_at(order, x, y) == patch_at(back, -x, y) for x, y in places)
    assert any(patch_at(order, x, y) != patch_at(back, x, y) for x, y in places)
    assert MIRRORED in [item.text for item in back.items if isinstance(item, Text)]
    assert "mirrored: you sew from this side" == MIRRORED
    assert 6 == sum(1 for item in back.items if isinstance(item, Line) and item.what == "line")


def test_a_tin_stands_on_every_corner() -> None:
    """Center 5½ cut shows 5; the first round shows 1¾, so its corner squares lie round 2½ + ⅞ = 3⅜ both ways.

    25 patches: the center, and in each of three rounds two plain strips and two of three parts.
    """
    shown = Shown(pictures.finished(planned("corner-shop"), letters=False), 16.0)
    assert {"Tea Tin"} == {shown.fabric_at(x, y) for x in (-3.375, 3.375) for y in (-3.375, 3.375)}
    assert {"Shelf Paper"} == {shown.fabric_at(x, y) for x, y in ((3.375, 0), (-3.375, 0), (0, 3.375), (0, -3.375))}
    assert {"Cocoa Tin"} == {shown.fabric_at(x, y) for x in (-7, 7) for y in (-7, 7)}
    assert 25 == shown.count()


def test_a_pieced_strip_is_drawn_in_its_parts_while_it_is_sewn() -> None:
    """Strip 3 is the first with corner squares: three parts in the step, square, strip, square."""
    figure = pictures.step(planned("corner-shop"), 3)
    parts = [one for one in areas(figure, "patch") if one.step == 3]
    assert ["Tea Tin", "Shelf Paper", "Tea Tin"] == [one.title for one in parts]
    texts = [item.text for item in figure.items if isinstance(item, Text)]
    assert any("as joined" in text for text in texts)


def test_squares_become_triangles_in_the_corners() -> None:
    """A boat 9 × 6½: sky in both upper corners, water in both lower ones, paper in between.

    The paper is cut 10½ × 8, so its raw edges lie at 5¼ and 4. A square of water cut 4 is sewn from (1¼, -4) to
    (5¼, 0): at x = 3¾ its seam lies at y = -1½, and 2½ in down is water. A square of sky cut 2¾ is sewn from
    (2½, 4) to (5¼, 1¼): at x = 4 its seam lies at y = 2½, and 2¾ in up is sky.
    """
    shown = Shown(pictures.finished(planned("paper-boat"), letters=False), 9.0)
    assert {"Rainy Sky"} == {shown.fabric_at(x, 2.75) for x in (-4.0, 4.0)}
    assert {"Puddle"} == {shown.fabric_at(x, -2.5) for x in (-3.75, 3.75)}
    assert {"Morning Paper"} == {shown.fabric_at(x, y) for x, y in ((0, 0), (0, -2.5), (0, 2.5), (-4, 0.5))}
    assert 5 == shown.count()


def test_a_square_is_shown_as_the_square_it_is_cut() -> None:
    """The words under step 1 give the square, 2¾ × 2¾, though a triangle is drawn."""
    figure = pictures.step(planned("paper-boat"), 1)
    (drawn,) = [one for one in areas(figure, "patch") if one.step == 1]
    assert 3 == len(drawn.points)
    assert any("2¾" in item.text and "×" in item.text for item in figure.items if isinstance(item, Text))


def test_a_braid_begins_with_its_half_square_and_alternates() -> None:
    """Poppy at the foot of the plait, and strips from both sides by turns up to its head."""
    made = planned("rye-plait")
    shown = Shown(pictures.finished(made, letters=False), 14.0)
    assert pytest.approx(40.0, abs=0.05) == shown.high_in
    assert "Poppy" == shown.fabric_at(0, -19.3)
    assert ["upper right", "upper left"] * 4 == [strip.side for strip in made.build.strips[:8]]


def test_wonky_strips_come_from_their_seed() -> None:
    """The same seed draws the same picture, another one another picture."""
    text = (EXAMPLES / "gale-warning.toml").read_text(encoding="utf-8")
    assert "seed = 7" in text
    one, same, other = (
        pictures.to_svg(pictures.finished(plan(read_project(said, "gale"), with_cures=False)))
        for said in (text, text, text.replace("seed = 7", "seed = 8"))
    )
    assert one == same
    assert one != other


def test_a_wonky_step_is_not_measured_from_the_center_mark() -> None:
    """One distance would not find a slanted line: no dimension in the step, both ends of the seam in its words."""
    figure = pictures.step(planned("gale-warning"), 3)
    assert [] == [item for item in figure.items if isinstance(item, Dimension)]
    assert "Its seam runs from" in figure.alt


# --- edges and panels ------------------------------------------------------------------------------------


def test_a_round_outline_is_smooth() -> None:
    """Every place on it lies 22 in from the middle within 1/50 in, and no miter is drawn across the binding."""
    figure = pictures.finished(planned("plum-skirt"), letters=False)
    (edge,) = [item for item in figure.items if isinstance(item, Line) and item.what == "trim"]
    assert len(edge.points) > 100
    radii = [hypot(x, y) for x, y in edge.points]
    assert 21.98 < min(radii) <= max(radii) < 22.02
    assert [] == [item for item in figure.items if isinstance(item, Line) and item.what == "mitre"]


def test_a_piece_turned_through_shows_no_edge() -> None:
    """Squared up 25 × 31 with a seam of ½ all round: it is drawn 24 × 30, and nothing of a binding."""
    figure = pictures.finished(planned("soft-cover"))
    assert pytest.approx((-12.0, -15.0, 12.0, 15.0)) == (*figure.low, *figure.high)
    assert [] == areas(figure, "binding")


def test_every_cut_between_panels_opens_seven_seams() -> None:
    """Four mats of 9 in with ¼ lost between two: 36¾ in long, six cut lines, seven seams across each: 42 knots."""
    made = planned("four-from-one")
    figure = pictures.panels(made)
    assert 36.75 == pytest.approx(figure.high[0] - figure.low[0])
    cuts = [item for item in figure.items if isinstance(item, Line) and item.what == "cut"]
    assert [-9.375, -9.125, -0.125, 0.125, 9.125, 9.375] == [pytest.approx(cut.points[0][0]) for cut in cuts]
    assert 42 == sum(1 for item in figure.items if isinstance(item, Knot))


# --- legible ---------------------------------------------------------------------------------------------


def every_picture(made: Plan) -> Iterator[tuple[str, Figure]]:
    """The pictures that only some pieces have, and those of the whole."""
    yield "finished", pictures.finished(made)
    yield "order", pictures.order(made)
    yield "base", pictures.base(made)
    yield "squaring", pictures.squaring(made)
    if made.quilt is not None:
        yield "joining", pictures.joining(made)
        yield "section", pictures.join_section(made)
        for kind in range(len(made.kinds)):
            yield f"block {kind}", pictures.block(made, kind)
    if made.panels is not None:
        yield "panels", pictures.panels(made)
    if made.edge.kind != "binding":
        yield "edge", pictures.edge_section(made)
    if made.project.patches:
        yield "foundation", pictures.foundation(made)
    for strip in made.build.strips[:: max(1, len(made.build.strips) // 5)]:
        yield f"step {strip.step}", pictures.step(made, strip.step)
    for fabric in made.fabrics:
        yield f"cuts of {fabric.fabric}", pictures.cuts(made, fabric)


@pytest.mark.parametrize("name", [*NAMES, "harbour-sheds", "kite-weather", "lock-keeper"])
def test_no_two_words_touch_and_none_runs_off(name: str) -> None:
    """At the width each picture is made for and a quarter smaller, words keep apart and on the sheet."""
    wrong = []
    for what, figure in every_picture(planned(name)):
        assert figure.alt
        for share in (1.0, 0.75):
            sheet = lay_out(figure, figure.width_in * share)
            boxes = [(word.text, word.box) for word in sheet.words]
            wrong += [
                (what, share, one, other)
                for place, (one, box) in enumerate(boxes)
                for other, other_box in boxes[place + 1 :]
                if boxes_touch(box, other_box)
            ]
            wrong += [
                (what, share, text, "off")
                for text, box in boxes
                if not all(0 <= x <= sheet.wide and 0 <= y <= sheet.high for x, y in box)
            ]
    assert [] == wrong


# --- the edge in section ---------------------------------------------------------------------------------

PLAIN = """
name = "Plain"
rounds = [{ cut = "3", fabric = "Sand" }]
[squared_up]
wide = "8"
long = "8"
[center]
fabric = "Plum"
cut = "5"
[building]
way = "courthouse steps"
[[fabrics]]
name = "Plum"
color = "#6b2f5c"
[[fabrics]]
name = "Sand"
color = "#e2d3b0"
[binding]
fabric = "Plum"
"""


def edged(lines: str) -> Figure:
    """The section of an edge that is finished as these lines say."""
    return pictures.edge_section(plan(read_project(PLAIN + lines, "plain"), with_cures=False))


def test_a_self_binding_shows_as_much_as_is_wished() -> None:
    """Shows ⅜: its fold lies ⅜ inside the edge, its raw edge is folded in to the edge, the stitching between."""
    figure = edged('edge = "self-binding"\nshows = "3/8"\n')
    (outer,), (inner,) = areas(figure, "self-binding"), areas(figure, "turned in")
    assert pytest.approx(-0.375) == spread(outer.points, 0)[0]
    assert pytest.approx((-0.375, 0.0)) == spread(inner.points, 0)
    (stitching,) = [item for item in figure.items if isinstance(item, Line) and item.what == "stitching"]
    assert -0.375 < stitching.points[0][0] < 0.0
    assert "shows ⅜" in " ".join(" ".join(item.texts) for item in figure.items if isinstance(item, Dimension))


def test_a_facing_lies_behind_and_nothing_of_it_in_front() -> None:
    """Shows 2 on the back: the facing ends 2 in from the finished edge, under the backing."""
    figure = edged('edge = "facing"\nshows = "2"\n')
    (facing,), (front,) = areas(figure, "facing"), areas(figure, "top")[:1]
    assert pytest.approx(-2.0) == spread(facing.points, 0)[0]
    assert spread(facing.points, 1)[1] < 0.0 < spread(front.points, 1)[0]


def test_a_bound_edge_is_told_by_its_corners() -> None:
    """Its section is refused, with what to ask for instead."""
    with pytest.raises(BuildError, match="section"):
        edged("")
