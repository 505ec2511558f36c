"""Figures of the plan written by hand: what is in them, and where."""

from __future__ import annotations

import pytest

from stitchflip import pictures
from stitchflip.cutting.model import FabricPlan
from stitchflip.errors import BuildError
from stitchflip.pictures.model import Area, CenterMark, Dimension, Figure, Knot, Line, Text
from stitchflip.pictures.sheet import lay_out
from stitchflip.piecing.model import Polygon
from stitchflip.planning.model import Plan


def area_of(polygon: Polygon) -> float:
    """Shoelace area, counter-clockwise above zero."""
    pairs = zip(polygon, polygon[1:] + polygon[:1], strict=True)
    return sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs) / 2


def areas(figure: Figure, what: str) -> list[Area]:
    """The areas that stand for one kind of thing."""
    return [item for item in figure.items if isinstance(item, Area) and item.what == what]


def lines(figure: Figure, what: str) -> list[Line]:
    """The lines that stand for one kind of thing."""
    return [item for item in figure.items if isinstance(item, Line) and item.what == what]


def written(figure: Figure, width_in: float | None = None) -> list[str]:
    """Every word on the sheet, narrow spaces as plain ones."""
    sheet = lay_out(figure, width_in or figure.width_in)
    return [" ".join(f"{word.text} {word.tail}".split()) for word in sheet.words]


def test_the_finished_piece_shows_every_patch_and_nothing_twice(hand_plan: Plan) -> None:
    """Five patches; by hand 20.25 + 2 x 6.75 + 2 x 11.25 = 56.25 square inches, the square inside the binding."""
    patches = areas(pictures.finished(hand_plan), "patch")
    assert [20.25, 6.75, 6.75, 11.25, 11.25] == [pytest.approx(area_of(patch.points)) for patch in patches]
    assert ["#8d4d6b", "#e8dcc0", "#e8dcc0", "#1f2740", "#1f2740"] == [patch.fill for patch in patches]


def test_the_binding_frames_the_finished_piece_in_its_fabric(hand_plan: Plan) -> None:
    """One area in the binding's color, 8 x 8, with a mitre at each of the four corners."""
    figure = pictures.finished(hand_plan)
    (binding,) = areas(figure, "binding")
    assert (64.0, "#1f2740") == (area_of(binding.points), binding.fill)
    assert {((-4, -4), (-3.75, -3.75)), ((4, -4), (3.75, -3.75)), ((4, 4), (3.75, 3.75)), ((-4, 4), (-3.75, 3.75))} == {
        line.points for line in lines(figure, "mitre")
    }


def test_letters_and_sizes_stand_on_the_finished_piece(hand_plan: Plan) -> None:
    """A letter for each patch, and both sizes with their words."""
    words = written(pictures.finished(hand_plan))
    assert ["A", "A", "B", "B", "C"] == sorted(word for word in words if len(word) == 1)
    assert ["8 in long, squared up", "8 in wide, squared up"] == sorted(word for word in words if len(word) > 1)


def test_the_cover_picture_can_go_without_letters(hand_plan: Plan) -> None:
    """Without letters there is no word on the picture at all."""
    assert [] == written(pictures.finished(hand_plan, letters=False))


def test_strips_are_numbered_in_sewing_order_with_their_letters(hand_plan: Plan) -> None:
    """Numbers 1 to 4 with letters, and the center by name."""
    assert ["1 A", "2 A", "3 B", "4 B", "center C"] == sorted(written(pictures.order(hand_plan)))


def test_a_number_stands_inside_its_own_strip(hand_plan: Plan) -> None:
    """Strip 1 lies above the center, strip 2 below, 3 at the left, 4 at the right."""
    sheet = lay_out(pictures.order(hand_plan), 3.0)
    at = {word.text: word.at for word in sheet.words}
    left, top, right, bottom = sheet.window
    middle = ((left + right) / 2, (top + bottom) / 2)
    assert at["1"][1] < middle[1] < at["2"][1]
    assert at["3"][0] < middle[0] < at["4"][0]


def test_a_step_shows_what_is_there_already_pale_and_the_new_strip_strong(hand_plan: Plan) -> None:
    """At step 3 the center and strips 1 and 2 are there; by hand 4.5 wide x 4.5, 2.25 and 2.25 high but for strip 3."""
    figure = pictures.step(hand_plan, 3)
    patches = {patch.step: patch for patch in areas(figure, "patch")}
    assert {0, 1, 2, 3} == set(patches)
    # The new seam at x = -2.25 covers a quarter inch of each: 4.75 in of 5 stay.
    assert [4.75 * 4.5, 4.75 * 2.25, 4.75 * 2.25] == [pytest.approx(area_of(patches[n].points)) for n in (0, 1, 2)]
    assert 2.25 * 9 == pytest.approx(area_of(patches[3].points))
    assert "#1f2740" == patches[3].fill
    assert patches[3].hatch is not None
    assert None is patches[1].hatch


def test_later_strips_are_not_in_a_step(hand_plan: Plan) -> None:
    """At step 1 there are the center and strip 1, nothing of 2 to 4."""
    assert {0, 1} == {patch.step for patch in areas(pictures.step(hand_plan, 1), "patch")}


def test_a_step_has_its_seam_and_three_raw_edges(hand_plan: Plan) -> None:
    """The seam runs where it is sewn; the other three edges of the opened strip are raw."""
    figure = pictures.step(hand_plan, 1)
    (seam,) = lines(figure, "seam")
    assert ((2.5, 2.25), (-2.5, 2.25)) == seam.points
    raw = {frozenset(line.points) for line in lines(figure, "raw edge")}
    assert {
        frozenset({(2.5, 2.25), (2.5, 4.5)}),
        frozenset({(2.5, 4.5), (-2.5, 4.5)}),
        frozenset({(-2.5, 4.5), (-2.5, 2.25)}),
    } == raw


def test_only_ends_to_lock_get_a_knot_and_only_then_an_arrow(hand_plan: Plan) -> None:
    """Step 1 has one loose end: a knot there and an arrow for the way of sewing. Step 2 has neither."""
    first, second = pictures.step(hand_plan, 1), pictures.step(hand_plan, 2)
    assert [(2.5, 2.25)] == [item.at for item in first.items if isinstance(item, Knot)]
    (arrow,) = lines(first, "direction")
    assert arrow.points[0][0] > arrow.points[1][0]
    assert [] == [item for item in second.items if isinstance(item, Knot)]
    assert [] == lines(second, "direction")


def test_a_step_measures_from_the_center_mark_to_the_raw_edge(hand_plan: Plan) -> None:
    """The dimension begins at the center mark, ends at the raw edge 4 1/2 in up, and says so."""
    figure = pictures.step(hand_plan, 1)
    (dimension,) = [item for item in figure.items if isinstance(item, Dimension)]
    assert ((0.0, 0.0), (0.0, 4.5)) == (dimension.start, dimension.end)
    assert any(isinstance(item, CenterMark) for item in figure.items)
    assert any(word.startswith("4½ in") for word in written(figure))


def test_a_step_names_strip_fabric_and_cut_size(hand_plan: Plan) -> None:
    """Number and letter, the fabric's name, the cut size wide x long (5 and a quarter extra)."""
    texts = [item.text for item in pictures.step(hand_plan, 1).items if isinstance(item, Text)]
    assert ["1 A", "Sand", "cut 2½ × 5¼ in"] == [" ".join(text.split()) for text in texts]


def test_laying_the_center_is_a_step_without_a_seam(hand_plan: Plan) -> None:
    """Step 0 shows the center alone, raw on all four sides."""
    figure = pictures.step(hand_plan, 0)
    assert [0] == [patch.step for patch in areas(figure, "patch")]
    assert ([], 4) == (lines(figure, "seam"), len(lines(figure, "raw edge")))


def test_a_step_that_is_not_there_is_an_error_with_the_last_number(hand_plan: Plan) -> None:
    """Asking for step 5 of 4 says what would do."""
    with pytest.raises(BuildError, match="from 0 to 4"):
        pictures.step(hand_plan, 5)


def test_the_small_whole_marks_the_strip_of_the_step(hand_plan: Plan) -> None:
    """In the key of step 3 one patch is black, those before it gray, those after it white."""
    sheet = lay_out(pictures.step(hand_plan, 3), 2.6)
    (key,) = sheet.nested()
    fills = {shape.step: shape.fill for shape in key.shapes("key patch")}
    assert {3} == {step for step, fill in fills.items() if fill == "#22262b"}
    assert fills[0] == fills[1] == fills[2] != fills[4]


def test_the_back_is_mirrored(hand_plan: Plan) -> None:
    """The end to lock lies at the right of the front, so at the left of the back; seams likewise."""
    figure = pictures.back(hand_plan)
    assert [(-2.5, 2.25)] == [item.at for item in figure.items if isinstance(item, Knot)]
    seams = {line.step: line.points for line in lines(figure, "seam")}
    assert {1, 2, 3, 4} == set(seams)
    assert ((2.25, 4.5), (2.25, -4.5)) == seams[3]


def test_the_back_shows_no_fabric_of_the_front(hand_plan: Plan) -> None:
    """Backing, trim line and seams are all there is."""
    figure = pictures.back(hand_plan)
    assert ([], 1) == (areas(figure, "patch"), len(areas(figure, "backing")))


def test_the_base_has_its_marks_and_the_place_of_the_center(hand_plan: Plan) -> None:
    """Two center lines, four lines at 4 in, the center reaching 2 1/2 in each way, the base 10 x 10 cut."""
    figure = pictures.base(hand_plan)
    assert (2, 4) == (len(lines(figure, "center line")), len(lines(figure, "mark")))
    words = written(figure)
    assert 4 == words.count("4 in")
    assert 2 == words.count("2½ in")
    assert {"10 in wide, cut", "10 in long, cut", "center C"} <= set(words)


def test_squaring_up_measures_every_side_from_the_center_mark(hand_plan: Plan) -> None:
    """Four distances of 4 in, and what stays beyond the point with its twin after binding."""
    figure = pictures.squaring(hand_plan)
    from_mark = [item.end for item in figure.items if isinstance(item, Dimension) and item.start == (0.0, 0.0)]
    assert {(0.0, 4.0), (4.0, 0.0), (0.0, -4.0), (-4.0, 0.0)} == set(from_mark)
    words = written(figure)
    assert 4 == words.count("4 in")
    assert {"beyond the right point: 1¾ in to the edge", "1½ in shows when bound"} <= set(words)


def test_cuts_are_drawn_to_scale(hand_plan: Plan, sand_cuts: FabricPlan) -> None:
    """Folded: a row 3 in and a strip 2 1/2 in high on 20 in; opened: two labels 4 in, strips 5 1/4 in; the rest."""
    figure = pictures.cuts(hand_plan, sand_cuts)
    sizes = [
        (max(x for x, _ in band.points) - min(x for x, _ in band.points), area_of(band.points))
        for band in areas(figure, "band")
    ]
    assert [20.0, 60.0, 20.0, 50.0] == pytest.approx([number for size in sizes for number in size])
    assert [12.0, 12.0, 13.125, 13.125] == [pytest.approx(area_of(piece.points)) for piece in areas(figure, "piece")]
    # 9 in bought less 6 1/2 needed leaves 2 1/2 x 20 folded; then 32 x 3 and 29 1/2 x 2 1/2.
    assert [50.0, 96.0, 73.75] == [pytest.approx(area_of(rest.points)) for rest in areas(figure, "leftover")]


def test_cuts_name_pieces_order_and_leftovers(hand_plan: Plan, sand_cuts: FabricPlan) -> None:
    """Every piece has its label and length, the purchase its words, the leftovers theirs."""
    words = set(written(pictures.cuts(hand_plan, sand_cuts)))
    assert {"1 · 5¼ in", "2 · 5¼ in", "Label · 4 in", "1 row 3 in high", "1 strip 2½ in wide"} <= words
    assert {
        "¼ yd to buy",
        "40 in usable, folded",
        "leftover 1 · 40 × 2½ in",
        "leftover 2 · 32 × 3 in",
        "leftover 3 · 2½ × 29½ in",
        "fold",
        "selvages",
    } <= words


def test_the_coloring_page_has_outlines_only(hand_plan: Plan) -> None:
    """Five white patches and five small letters."""
    figure = pictures.coloring(hand_plan)
    assert ["#ffffff"] * 5 == [patch.fill for patch in areas(figure, "patch")]
    assert ["A", "A", "B", "B", "C"] == sorted(written(figure))


def test_a_binding_corner_says_where_to_stop(hand_plan: Plan) -> None:
    """At 90 degrees the seam stops a quarter inch before the corner; three numbered pictures."""
    figure = pictures.binding_corner(hand_plan, hand_plan.binding.corners[0])
    assert "¼ in" in written(figure)
    (stop,) = lines(figure, "stop")
    # Edge 1 ends at the corner, x = 0: the stop is a quarter inch before it, a quarter inch inside.
    middle = (stop.points[0][0], (stop.points[0][1] + stop.points[1][1]) / 2)
    assert (-0.25, -0.25) == pytest.approx(middle)


@pytest.mark.parametrize("angle", [60.0, 90.0, 120.0, 135.0])
def test_the_folded_strip_lies_in_line_with_the_next_edge(hand_plan: Plan, angle: float) -> None:
    """Folded away, its raw edge runs on from the second edge in one straight line, whatever the corner."""
    from math import cos, radians, sin, tan

    from stitchflip.finishing.model import BindingCorner

    figure = pictures.binding_corner(hand_plan, BindingCorner(angle, 0.25 / tan(radians(angle / 2))))
    away = areas(figure, "binding")[2]
    corner, _, _, tip = away.points
    direction = (cos(radians(180 + angle)), sin(radians(180 + angle)))
    run = (tip[0] - corner[0], tip[1] - corner[1])
    assert 0 == pytest.approx(run[0] * direction[1] - run[1] * direction[0], abs=1e-9)
    assert run[0] * direction[0] + run[1] * direction[1] < 0


def test_every_figure_says_what_it_shows(hand_plan: Plan, sand_cuts: FabricPlan) -> None:
    """Titles are short, alternative texts are sentences with the numbers of the picture."""
    made = {
        "finished": (pictures.finished(hand_plan), "8 × 8 in"),
        "order": (pictures.order(hand_plan), "1 A top, 2 A bottom, 3 B left, 4 B right"),
        "step": (pictures.step(hand_plan, 1), "One end to lock."),
        "back": (pictures.back(hand_plan), "left and right are changed over"),
        "base": (pictures.base(hand_plan), "2½ in to the right"),
        "squaring": (pictures.squaring(hand_plan), "1¾ in to the edge, 1½ in shows after binding"),
        "cuts": (pictures.cuts(hand_plan, sand_cuts), "1 5¼ in, 2 5¼ in, leftover 29½ in"),
        "coloring": (pictures.coloring(hand_plan), "patches inside the binding: 5"),
        "corner": (pictures.binding_corner(hand_plan, hand_plan.binding.corners[0]), "stop ¼ in before the corner"),
        "legend": (pictures.legend(), "end of a seam to lock"),
    }
    spoken = {name: figure.alt.replace("\u202f", " ").replace("\u2009", " ") for name, (figure, _) in made.items()}
    assert {} == {name: spoken[name] for name, (_, part) in made.items() if part not in spoken[name]}
    assert all(figure.title and figure.alt.endswith(".") for figure, _ in made.values())
