"""The pattern: what another person needs, in the order of the work, with numbers that agree."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest

from stitchflip.pattern import Paper
from stitchflip.pattern.model import Box, BoxKind, Step, Steps
from stitchflip.pattern.reading import plain, walk
from stitchflip.pattern.strip_facts import EndPlace, strip_ends
from stitchflip.planning import Change
from tests.pattern.papers import (
    GATE,
    LANTERN,
    NAMES,
    ROOF,
    TRAY,
    WITHOUT_DRAW_UP,
    document_of,
    plan_of,
    printed,
    shown,
    spaced,
)

EDGES = {"soft-cover": "Turn it through"}
"""Examples whose edge is not bound, with the heading of its page."""
ALONG_LINES = ("ticket-booth", "paper-boat")
"""Numbered foundations and folded corners: trimmed behind each seam, and told by the ends of its line."""


def steps_of(name: str, *changes: Change) -> tuple[Step, ...]:
    """The sewing steps of an example's pattern."""
    blocks = [block for block in document_of("pattern", name, changes).blocks if isinstance(block, Steps)]
    return tuple(step for block in blocks for step in block.steps)


def notes_of(step: Step) -> dict[str, str]:
    """What a step says beside its labels."""
    return {label: spaced(plain(said)) for label, said in step.notes}


# --- the whole -------------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", NAMES)
def test_the_parts_come_in_the_order_of_the_work(name: str) -> None:
    """From the name to the imprint, each part after the one before."""
    text = shown("pattern", name)
    parts = (
        plan_of(name).project.name, "At a glance", "What you need", "Take care", "Before you cut", "Cutting",
        "Cutting diagrams", "The base", "Sewing", "Square up", EDGES.get(name, "Bind"), "Finish",
        "The back, for checking",
        "To color in", "Words used here", "Imprint",
    )  # fmt: skip
    place = 0
    for part in parts:
        place = text.index(spaced(part), place)


@pytest.mark.parametrize("name", NAMES)
def test_it_is_tagged_with_a_text_for_each_picture(name: str) -> None:
    """Every figure of the file has an alternative text of its own; headings never skip a level."""
    printed_one = printed("pattern", name)
    assert "en-US" == printed_one.root["/Lang"]
    figures = [node for node in printed_one.structure() if node["/S"] == "/Figure"]
    assert len(figures) >= len(plan_of(name).build.strips) + 8
    assert all(str(node.get("/Alt", "")).strip() for node in figures)
    levels = [int(tag[1]) for tag in printed_one.tags() if re.fullmatch(r"H\d", tag)]
    assert 1 == levels[0]
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_letter_and_a4_say_the_same_on_each_page() -> None:
    """Both papers share one field."""
    assert printed("pattern", "doorstep").pages == printed("pattern", "doorstep", paper=Paper.A4).pages


@pytest.mark.parametrize("name", [LANTERN, "doorstep", "kite-weather-block"])
def test_no_page_holds_only_a_line_that_slipped_over(name: str) -> None:
    """Every page has something to say, but the one that is all outlines to color."""
    for page in printed("pattern", name).pages:
        assert len(page) > 200 or "To color in" in page


def test_the_tester_has_an_empty_line() -> None:
    """Nobody is named as tester; the line is there."""
    text = printed("pattern", LANTERN).pages[-1]
    assert re.search(r"Tested by\s+(?:Date|$)", text)


def test_basting_comes_after_the_center_is_laid() -> None:
    """Marks, then the center, then pins: none under it, each out before a strip covers it."""
    text = shown("pattern", LANTERN)
    page = text[text.index("Lay the backing wrong side up") :]
    order = ["Mark the middle of the base", "Lay the center", "Baste the base", "Every strip goes on the same way"]
    assert sorted(page.index(words) for words in order) == [page.index(words) for words in order]
    assert "none under the center" in page
    assert "take each pin out before a strip covers it" in page


def test_a_slanted_middle_strip_is_placed_by_half_its_width() -> None:
    """Cut 2 in wide, its raw edges lie 1 in from the center mark; a single layer of batting has nothing to baste."""
    text = shown("pattern", "kite-weather-block")
    assert "on the slant as drawn, each raw edge 1 in from the mark" in text
    assert "Baste the base" not in text


def test_a_strip_whose_neighbor_ends_off_the_base_runs_past_the_trim_line() -> None:
    """The fifth round's full ends lie beyond half of the base's 15½ in: no distance to a place that is not there."""
    laid = [notes_of(step).get("Lay", "") for step in steps_of(LANTERN)]
    assert not any("may stop" in said for said in laid)
    assert "the upper end level with the raw edge there; the lower end runs past the trim line" in laid


def test_an_end_that_stops_short_on_the_base_says_by_how_much() -> None:
    """On a base as high as it is long the same strip's full end lies on it, so the distance can be measured."""
    plan = plan_of(LANTERN)
    strip = plan.build.strips[8]
    base = plan.base.wide
    assert EndPlace.PAST in {end.place for end in strip_ends(strip, (base, plan.base.high))}
    assert EndPlace.SHORT in {end.place for end in strip_ends(strip, (base, base))}


def test_a_corner_that_is_not_square_is_folded_along_the_next_edge() -> None:
    """Straight up and down makes a miter at 90° only; each kind of corner stops and locks."""
    runner, hexagon, mat = shown("pattern", LANTERN), shown("pattern", GATE), shown("pattern", TRAY)
    away = "fold it away so that its raw edge runs on in line with the next edge, then back along that edge"
    up = "fold the binding straight up and then down along the next edge"
    assert (True, True) == (away in runner, up in runner)
    assert (True, False) == (away in hexagon, up in hexagon)
    assert (False, True) == (away in mat, up in mat)
    assert "stop 0.75 cm before the corner and lock" in mat


def test_lengths_without_extra_are_cut_full() -> None:
    """The mats are cut without extra where both ends meet raw edges; the runner has ½ in."""
    exact = "Cut lengths are exact where both ends meet raw edges: cut them full."
    extra = "Cut lengths carry a little extra already; trim after opening."
    for name, said, other in ((TRAY, exact, extra), (LANTERN, extra, exact)):
        assert 2 == shown("pattern", name).count(said)
        assert other not in shown("pattern", name)


def test_a_step_trims_only_where_there_is_something_to_trim() -> None:
    """The words "and trim" stand exactly where the step names an end."""
    for name in set(NAMES) - set(ALONG_LINES):
        for step in steps_of(name):
            assert plain(step.do).endswith("and trim.") == ("nothing now" not in notes_of(step)["Trim"])
    assert not any("and trim" in plain(step.do) for step in steps_of(ROOF))


# --- numbers that agree ----------------------------------------------------------------------------------


def test_lantern_walk_adds_up() -> None:
    """28 strips at a glance are 28 pieces in the cutting tables and 28 steps; hours as a range."""
    text = printed("pattern", LANTERN).text
    assert "28 strips, one center" in text
    assert "Count: 28 strips to sew and 1 center, as at a glance." in text
    assert [str(number) for number in range(1, 29)] == [step.number for step in steps_of(LANTERN)]
    assert "about 2½ to 4½ hours" in text


@pytest.mark.parametrize(
    "words",
    [
        "13 × 44 in (wide × long, point to point)",
        "Seam allowance ¼ in",
        "40 in",
        "batting 15½ × 48 in and backing 15½ × 48 in",
        "111⅞ in needed, 115 in made",
        "At each corner of 135° (figure",
        "none to lock",
        "Wash none of the fabrics or all of them",
        "These lines do not replace the instructions of the makers of your tools",
    ],
)
def test_lantern_walk_says_it(words: str) -> None:
    """Sizes, allowances, binding, locks, washing and cautions stand in the pattern."""
    assert words.lower() in printed("pattern", LANTERN).text.lower()


def test_each_step_of_lantern_walk_ends_at_its_raw_edge() -> None:
    """Without draw-up and fold loss: 5⅛, 7⅛, 8⅝, 10⅝, 11⅝, 13⅝ and 16⅜ in, four strips each."""
    edges = ["5⅛", "7⅛", "8⅝", "10⅝", "11⅝", "13⅝", "16⅜"]
    wanted = [f"{edge} in from the center mark" for edge in edges for _ in range(4)]
    assert wanted == [notes_of(step)["Raw edge"] for step in steps_of(LANTERN, *WITHOUT_DRAW_UP)]


def test_each_step_says_where_to_start_what_to_lock_and_how_to_press() -> None:
    """No step of any example leaves one out; the picture is of that step."""
    for name in NAMES:
        for step in steps_of(name):
            start, edge = {"Start"}, {"Raw edge"}
            if name in ALONG_LINES:
                start, edge = set(), {"Line"} if name == "ticket-booth" else set()
            elif name == "gale-warning":
                edge = {"Line"}
            assert {"Lock", "Press", "Trim", *start, *edge} <= set(notes_of(step))
            assert plain(step.do).startswith("Sew it (")
            assert {"cut", "joined"} & set(re.findall(r"[a-z]+", plain(step.do)))


def test_the_shorter_piece_loses_half_of_it_at_each_point() -> None:
    """1.02 in at the points: every edge ⅛ in nearer leaves 0.895, ¼ in nearer 0.77; the binding hides ¼ of it.

    Rounded down to 1/16: 1, ⅞ and ¾ in to the edge; ¾, ⅝ and ½ in show. The ends are points of 90°, so a slanted
    edge lies 22 ÷ √2 = 15.556 in from the center mark, and an edge moved by d takes d × √2 off each point: 44 in
    long becomes 44 - 2 × ⅛ × √2 = 43.646 and 43.293, nearest 1/16: 43⅝ and 43 5/16; the slanted edges come to
    15.431 and 15.306, nearest 15 7/16 and 15 5/16.
    """
    text = shown("pattern", LANTERN, *WITHOUT_DRAW_UP)
    assert re.search(r"as planned 13 × 44 15 9/16 1 ¾ \S", text)
    assert "every edge ⅛ in nearer the center mark 12¾ × 43⅝ 15 7/16 ⅞ ⅝" in text
    assert "every edge ¼ in nearer the center mark 12½ × 43 5/16 15 5/16 ¾ ½" in text


def test_a_smaller_hexagon_stays_regular() -> None:
    """22½ in between opposite sides, one of them at the left and one at the right: 25.98 in from corner to corner.

    Every edge ⅛ in nearer: 22¼ wide, 22¼ ÷ cos 30° = 25.69 long, nearest 25 11/16; 11⅛ in from the center mark.
    """
    assert "every edge ⅛ in nearer the center mark 22¼ × 25 11/16 11⅛" in shown("pattern", GATE)


def test_a_smaller_rectangle_loses_the_same_both_ways() -> None:
    """47 × 35 cm, each edge 0.25 cm nearer: 46.5 × 34.5; no edge is slanted."""
    text = shown("pattern", TRAY)
    assert "0.5 cm less both ways 46.5 × 34.5" in text
    assert "slanted edge" not in text


def test_the_seam_test_of_three_strips() -> None:
    """Cut 2½ with ¼ seams: outer 2¼, middle 2. Cut 6.5 cm with 0.75 cm: outer 5.75, middle 5."""
    inch, metric = shown("pattern", LANTERN), shown("pattern", TRAY)
    assert "the outer two should measure 2¼ in and the middle one 2 in" in inch
    assert "the outer two should measure 5.75 cm and the middle one 5 cm" in metric


def test_morning_tray_is_sewn_in_rounds_across_four() -> None:
    """48 strips in all, each step on all four mats; 5½ to 10 hours; the print upright; no inch in a step."""
    text = shown("pattern", TRAY)
    assert "48 strips in all, sewn in rounds across all four" in text
    assert "Sew each step on all four before the next one." in text
    assert "Count: 48 strips to sew and 4 centers" in text
    assert "about 5½ to 10 hours" in text
    assert "print standing upright" in text
    assert not any(" in " in notes_of(step)["Raw edge"] for step in steps_of(TRAY))


def test_tin_roof_takes_quarters() -> None:
    """Fat quarters by their size; no word against the steps' own starts; bound by hand."""
    text = shown("pattern", ROOF)
    assert "fat quarter 20½ × 17½ in" in text
    assert "alternating" not in text
    assert "Sew it down by hand" in text


def test_rows_are_laid_by_the_center_line() -> None:
    """13 in is the shortest that reaches across 12 in and ½ in past each trim line: 6½ in from the center line."""
    laid = {notes_of(step)["Lay"] for step in steps_of(ROOF, *WITHOUT_DRAW_UP)}
    assert {"both ends 6½ in or more from the center line"} == laid


def test_the_hexagon_is_trimmed_at_sixty_degrees() -> None:
    """Neighbors of a regular hexagon meet at 120°, so a strip's end stands at 60° to its long edge."""
    assert {"both ends level with the edges beside, at 60°"} == {notes_of(step)["Trim"] for step in steps_of(GATE)}
    assert "trim ends at 60°" in shown("pattern", GATE)


def test_a_long_build_has_stopping_places_and_looks_behind() -> None:
    """After every round the piece is turned over; after eight to twelve strips there is a good place to stop."""
    after = {step.number: " ".join(plain(line) for line in step.after) for step in steps_of(LANTERN)}
    assert [4, 8, 12, 16, 20, 24, 28] == [
        int(number) for number, said in after.items() if "Turn the piece over" in said
    ]
    assert [4, 8, 16, 24] == [int(number) for number, said in after.items() if "Measure now" in said]
    stops = [int(number) for number, said in after.items() if "Good stopping place" in said]
    assert [8, 16, 24] == stops


def test_trim_as_you_go_says_which_rest_is_enough() -> None:
    """On the coaster strip 2 is taken from what strip 1 left; a seam end inside is locked."""
    first, second, *_ = steps_of("doorstep")
    assert "a new strip, number 1 of this width" == notes_of(first)["Take"]
    assert re.fullmatch(r"the rest of strip number 1 of this width \(\S+ in long\): enough", notes_of(second)["Take"])
    assert "the left end (later fabric hides it)" == notes_of(first)["Lock"]
    assert "none" == notes_of(second)["Lock"]


def test_a_center_off_the_middle_is_placed_by_the_mark() -> None:
    """The block's center lies 1½ in off both ways."""
    text = shown("pattern", "harbour-shed-block")
    assert "its middle 1½ in above and 1½ in to the right of the center mark" in text


def test_batting_only_keeps_the_backing_for_later() -> None:
    """String blocks are sewn to batting alone; the backing, 2 in larger on each side than 8½, comes later."""
    text = shown("pattern", "kite-weather-block")
    assert "Base means the batting alone; the backing comes later." in text
    assert "Backing 12½ × 12½ in, added when the strips are sewn." in text


def test_cautions_stand_once_and_fit_the_batting() -> None:
    """One full box of cautions; with polyester the iron stays away, and no step says press with the iron."""
    boxes = [
        block
        for block in walk(document_of("pattern", LANTERN).blocks)
        if isinstance(block, Box) and block.kind is BoxKind.CAUTION and block.title == "Take care"
    ]
    assert 1 == len(boxes)
    text = shown("pattern", LANTERN, Change(("batting", "fiber"), "polyester"), Change(("batting", "iron"), "no"))
    assert "keep it off this batting" in text
    assert "press it with the iron" not in text


def test_a_plan_with_a_stop_says_so_before_anything_else() -> None:
    """A center too large for its trim: the pattern is drawn all the same, and its first page says it is not ready."""
    text = shown("pattern", LANTERN, Change(("center", "cut"), "12"))
    assert text.index("Not ready to be sewn") < text.rindex("What you need")


def test_a_shaped_or_slanted_center_says_what_it_is_cut_from() -> None:
    """A hexagon 7½ between its sides is 7½ ÷ cos 30° = 8.66 in over all, up to 8¾.

    A square of 8¼ stood on its point is 8¼ × √2 = 11.67 in wide and long; this maker rounds cuts up to ½: 12.
    """
    hexagon = shown("table", GATE)
    assert "8¾ × 7½ in, then to its shape, 7½ in between opposite sides" in hexagon
    stood = "it stands on its corner inside an upright window of 12 × 12 in, so its print stands upright"
    assert stood in shown("table", LANTERN)
    marked = "Mark an upright window of 12 × 12 in on the print: the 8¼ in square stands on its corner inside it"
    assert marked in shown("pattern", LANTERN)


def test_a_shaped_center_says_its_sides_and_how_to_cut_it() -> None:
    """A hexagon 7½ in between its sides: a side is 7½ × tan 30° = 4.330 in long, nearest 4 5/16.

    From corner to opposite corner it is twice a side, 8.660 in, nearest 8 11/16. Its corners of 120° leave 60°
    beside the strip it is cut from. An octagon of 7½: side 7½ × tan 22.5° = 3.107, nearest 3⅛; corners 7½ ÷
    cos 22.5° = 8.118, nearest 8⅛.
    """
    six, eight = shown("pattern", GATE), shown("pattern", GATE, Change(("center", "sides"), "8"))
    measures = "7½ in between opposite sides, each side 4 5/16 in long, 8 11/16 in from corner to opposite corner"
    assert f"Cut the center to its shape: {measures}" in six
    assert "Cut a strip 7½ in wide; at each end make two cuts at 60° to its long edges" in six
    assert "each side 3⅛ in long, 8⅛ in from corner to opposite corner" in eight
    assert "then each side 3¾ in from it" in eight


def test_squaring_up_says_where_the_fabric_reaches_least() -> None:
    """What the plan found and its first cure, before the first cut; silence where the reach is as asked for."""
    (thin,) = [one for one in plan_of(LANTERN).findings if one.code == "coverage.thin-reach"]
    cure = thin.cures[0].text
    said = spaced(f"{thin.what} To gain more, before anything is cut: {cure[0].lower()}{cure[1:]}")
    pattern, table = shown("pattern", LANTERN), shown("table", LANTERN)
    assert pattern.index(said) < pattern.index("Cut one edge at a time")
    assert table.index(said) < table.rindex("Base: backing and batting")
    assert "To gain more" not in shown("pattern", "kite-weather-block")


def test_straightening_is_told_apart_for_purchases_and_pieces_on_hand() -> None:
    """A quarter of 20½ × 17½ in loses ½ in both ways; a purchase holds 1 in; the mats' purchases hold 3 cm."""
    quarters, mats = shown("pattern", ROOF), shown("pattern", TRAY)
    assert "The amounts to buy hold 1 in a fabric for it." in quarters
    assert "Reckoned once straight: fat quarter 20½ × 17½ in gives 20 × 17 in." in quarters
    assert "The amounts to buy hold 3 cm a fabric for it." in mats
    assert "Reckoned once straight" not in mats


def test_wide_backing_is_told_in_the_makers_unit() -> None:
    """108 in × 2.54 = 274.32 cm, told as 274 cm; in an inch pattern it stays 108 in."""
    for kind in ("pattern", "shop"):
        assert "274 cm wide" in shown(kind, TRAY)
        assert "108 in" not in shown(kind, TRAY)
        assert "108 in wide" in shown(kind, LANTERN)
