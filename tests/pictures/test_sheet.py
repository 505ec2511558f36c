"""Layout on paper: words measured, placed in their rooms, moved apart, led to from outside."""

from __future__ import annotations

from math import sqrt

import pytest

from stitchflip.pictures.fonts import drawn, width_pt
from stitchflip.pictures.hatches import COUNT, HATCHES
from stitchflip.pictures.ink import CASING, INK, contrast, is_dark, luminance, pale
from stitchflip.pictures.model import Area, Begin, Dimension, Figure, Label, Margins, Text
from stitchflip.pictures.paper import Shape, boxes_touch
from stitchflip.pictures.sheet import lay_out
from stitchflip.pictures.spots import shrunk
from tests.pictures.conftest import box

PLAIN = Margins()


def _figure(*items: Area | Dimension | Label | Text, margins: Margins = PLAIN) -> Figure:
    return Figure(items, (0.0, 0.0), (2.0, 2.0), "A figure", "A figure.", margins)


def test_a_word_is_as_wide_as_its_letters() -> None:
    """Figures are 497 thousandths wide in the regular weight of the family (its metrics file): four at 10 pt 19.88."""
    assert 19.88 == pytest.approx(width_pt("1234", 10.0))


def test_sixteenths_are_built_like_the_fractions_that_have_a_sign() -> None:
    """3 5/16 becomes one figure and a small fraction; what only looks like one stays (dates, ratios of three)."""
    assert ("3⁵⁄₁₆ in", "¹⁵⁄₁₆", "1/2/3", "100/200") == tuple(
        map(drawn, ("3\u20095/16 in", "15/16", "1/2/3", "100/200"))
    )
    # Metrics file: figure 497, small figures 367 each, fraction bar 86.
    assert (497 + 367 + 86 + 2 * 367) / 100 == pytest.approx(width_pt("3\u20095/16", 10.0))


def test_a_box_fits_where_the_room_is_shrunk_by_it() -> None:
    """In a room 10 x 4 a box 6 x 2 may move by 4 and 2; by hand its middle lies in 3..7 and 1..3."""
    assert {(3.0, 1.0), (7.0, 1.0), (7.0, 3.0), (3.0, 3.0)} == set(shrunk(box(0, 0, 10, 4), 6, 2, 0))


def test_a_slanted_box_needs_the_room_of_its_corners() -> None:
    """A box 2 x 2 turned 45 degrees is 2.83 across: in a room 4 x 4 its middle has 4 - 2 sqrt 2 each way."""
    left = min(x for x, _ in shrunk(box(0, 0, 4, 4), 2, 2, 45))
    assert sqrt(2) == pytest.approx(left)


def test_a_box_that_does_not_fit_has_no_place() -> None:
    """A box 6 wide in a room 5 wide: nothing."""
    assert () == shrunk(box(0, 0, 5, 9), 6, 2, 0)


@pytest.mark.parametrize(
    ("other", "gap", "touch"),
    [
        (box(3, 0, 5, 2), 0.0, False),
        (box(1, 1, 5, 2), 0.0, True),
        (box(2.5, 0, 5, 2), 1.0, True),
        (((2.0, 3.1), (3.1, 2.0), (4.0, 3.0), (3.0, 4.0)), 0.0, False),
    ],
)
def test_boxes_touch_when_no_line_parts_them(
    other: tuple[tuple[float, float], ...], gap: float, *, touch: bool
) -> None:
    """Against a box 2 x 2: beside, overlapping, nearer than the gap, off a corner on the slant."""
    assert touch == boxes_touch(box(0, 0, 2, 2), other, gap)


def test_a_label_stands_inside_its_room() -> None:
    """All four corners of the words are inside the patch."""
    sheet = lay_out(_figure(Label("7", box(0.5, 0.5, 1.5, 1.0)), margins=Margins(0, 0, 0, 0)), 2.0)
    (word,) = sheet.words
    assert all(36 <= x <= 108 and 72 <= y <= 108 for x, y in word.box)


def test_a_label_turns_before_it_shrinks_away() -> None:
    """In an upright patch 8 pt wide a long label is set along it."""
    label = Label("12345", box(0.0, 0.0, 8 / 72, 1.0), angles=(0.0, 90.0))
    (word,) = lay_out(_figure(label, margins=Margins(0, 0, 0, 0)), 2.0).words
    assert 90.0 == word.angle


def test_a_label_without_room_is_led_to_from_the_right() -> None:
    """In a patch 2 pt high it stands beside the drawing, with a line that ends in the patch."""
    sheet = lay_out(_figure(Area(box(0, 1, 2, 1.03), "#ffffff"), Label("7", box(0, 1, 2, 1.03), tail="B")), 2.0)
    (word,) = sheet.words
    assert min(x for x, _ in word.box) > sheet.window[2]
    (line,) = sheet.shapes("leader")
    (patch,) = [mark for mark in sheet.marks if isinstance(mark, Shape) and mark.fill == "#ffffff"]
    ys = [y for _, y in patch.points]
    assert min(ys) <= line.points[0][1] <= max(ys)


def test_many_labels_beside_the_drawing_keep_apart() -> None:
    """Twenty patches 2 pt high: twenty labels, no two of them touching, in the order of the patches."""
    rooms = [box(0, 0.05 * row, 2, 0.05 * row + 0.03) for row in range(20)]
    figure = _figure(*(Label(str(row), room) for row, room in enumerate(rooms)))
    sheet = lay_out(figure, 2.0)
    boxes = [word.box for word in sheet.words]
    assert 20 == len(boxes)
    assert not any(boxes_touch(one, other) for i, one in enumerate(boxes) for other in boxes[i + 1 :])
    heights = {int(word.text): word.at[1] for word in sheet.words}
    assert sorted(heights, key=lambda row: -heights[row]) == list(range(20))
    assert all(0 <= y <= sheet.high for corners in boxes for _, y in corners)


def test_a_dimension_says_as_much_as_fits() -> None:
    """Across 2 in the long wording stands on the line; across 1/2 in only the short one fits."""
    texts = ("8 in wide, squared up", "8 in")
    wide = lay_out(_figure(Dimension((0, 1), (2, 1), texts)), 2.0).words
    narrow = lay_out(_figure(Dimension((0, 1), (0.5, 1), texts)), 2.0).words
    assert (["8 in wide, squared up"], ["8 in"]) == ([word.text for word in wide], [word.text for word in narrow])


def test_the_line_of_a_dimension_leaves_its_words_free() -> None:
    """The line is drawn in two parts, neither of which reaches the words."""
    sheet = lay_out(_figure(Dimension((0, 1), (2, 1), ("8 in",))), 2.0)
    (word,) = sheet.words
    left, right = min(x for x, _ in word.box), max(x for x, _ in word.box)
    parts = sorted(tuple(sorted(x for x, _ in line.points)) for line in sheet.shapes("dimension"))
    assert 2 == len(parts)
    assert parts[0][1] < left
    assert parts[1][0] > right


def test_a_dimension_has_a_tick_at_each_end_but_none_on_the_center_mark() -> None:
    """Two ticks, or one when it begins at the mark, or two slashes and one tick when it comes from outside."""
    ticks = {
        begin: len(lay_out(_figure(Dimension((0, 1), (2, 1), (), begin=begin)), 2.0).shapes("tick")) for begin in Begin
    }
    assert {Begin.TICK: 2, Begin.MARK: 1, Begin.BREAK: 1} == ticks


def test_words_of_two_dimensions_do_not_meet() -> None:
    """Two lines crossing in the middle: one pair of words gives way."""
    sheet = lay_out(_figure(Dimension((0, 1), (2, 1), ("6½ in",)), Dimension((1, 0), (1, 2), ("22 in",))), 2.0)
    one, other = (word.box for word in sheet.words)
    assert not boxes_touch(one, other)


def test_a_fixed_word_that_runs_off_is_pushed_back() -> None:
    """Anchored at the right edge and running out of the picture, it ends inside it."""
    sheet = lay_out(_figure(Text((2.0, 1.0), "a long remark", anchor="start")), 2.0)
    (word,) = sheet.words
    assert max(x for x, _ in word.box) <= sheet.wide


def test_a_long_name_is_shortened_before_it_meets_what_is_there() -> None:
    """A name that would run into the word beside it, or off the sheet, loses its end and says so."""
    name = Text((0.0, 1.0), "A fabric with a name that goes on and on and on", anchor="start", may_shorten=True)
    sheet = lay_out(_figure(Text((1.5, 1.0), "taken"), name), 2.0)
    taken, shortened = sheet.words
    assert shortened.text.endswith("…")
    assert shortened.text.startswith("A fabric")
    assert not boxes_touch(taken.box, shortened.box)


def test_text_and_lines_do_not_grow_with_the_picture() -> None:
    """Twice as wide on paper: the same 7.5 pt letters."""
    figure = _figure(Label("7", box(0, 0, 2, 2)))
    assert {7.5} == {word.size for width in (1.0, 2.0, 4.0) for word in lay_out(figure, width).words}


def test_black_on_white_is_twenty_one_to_one() -> None:
    """WCAG 2.2, contrast ratio: 21 at most (https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio)."""
    assert 21.0 == pytest.approx(contrast("#000000", "#ffffff"))
    assert (0.0, 1.0) == (luminance("#000"), luminance("#fff"))


@pytest.mark.parametrize("gray", range(0, 256, 5))
def test_ink_in_its_casing_reads_on_every_fabric(gray: int) -> None:
    """On any gray the line or its casing differs three to one."""
    fill = f"#{gray:02x}{gray:02x}{gray:02x}"
    assert max(contrast(INK, fill), contrast(CASING, fill)) >= 3.0


def test_thinned_fabric_carries_ink() -> None:
    """Even midnight, thinned as in a step, differs three to one from ink."""
    assert contrast(pale("#0b0f1e", 0.68), INK) >= 3.0
    assert not is_dark(pale("#0b0f1e", 0.68))


def test_eight_hatches_are_eight() -> None:
    """Eight tiles, no two alike, none a plain grid at 0, 45 or 90 degrees."""
    assert 8 == COUNT == len(HATCHES)
    assert 8 == len({(hatch.path, hatch.turn) for hatch in HATCHES}) == len({hatch.name for hatch in HATCHES})
    assert all(hatch.turn % 45 for hatch in HATCHES)
