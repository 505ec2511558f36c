"""Joined quilts, other edges, panels, foundations: what their papers say, in the order of the work."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from stitchflip.pattern import Document, pattern_document, proof, table_sheet
from stitchflip.pattern.model import Heading, Mention, Steps, Table
from stitchflip.pattern.proof import spoken, texts
from stitchflip.pattern.reading import figure_numbers, plain, walk
from stitchflip.planning import plan
from stitchflip.project import read_project
from tests.pattern.papers import EXAMPLES, document_of, plan_of, shown, spaced

SHEDS, KITES, KEEPER = "harbour-sheds", "kite-weather", "lock-keeper"
QUILTS = (SHEDS, KITES, KEEPER)


def headings(name: str) -> list[str]:
    """Every heading of an example's pattern, in order."""
    return [block.text for block in walk(document_of("pattern", name).blocks) if isinstance(block, Heading)]


def rows_under(document: Document, first_column: str) -> list[list[str]]:
    """The rows of the tables whose first column has this title."""
    return [
        [spaced(plain(cell)) for cell in row if isinstance(cell, tuple)]
        for block in walk(document.blocks)
        if isinstance(block, Table) and block.columns[0].title == first_column
        for row in block.rows
    ]


# --- joined blocks ---------------------------------------------------------------------------------------


def test_the_sheds_are_told_as_a_quilt() -> None:
    """20 blocks of 16 strips: 320 in all; 52⅜ × 65½ in: 4 × 13 + 3 × ⅛ wide and 5 × 13 + 4 × ⅛ long."""
    text = shown("pattern", SHEDS)
    assert "52⅜ × 65½ in (wide × long)" in text
    assert "20 blocks of 16 strips and one center each (320 strips in all)" in text
    assert "Count: 320 strips to sew and 20 centers" in text
    assert "Every block is squared up 13 × 13 in (wide × long) before it is joined" in text
    assert "Make 20 bases." in text


def test_the_joining_strips_stand_in_a_table() -> None:
    """15 short ones as long as a block and four as long as a row, flat 1⅛ and folded 2 wide."""
    rows = rows_under(document_of("pattern", SHEDS), "strips")
    found = counted_rows(rows)
    assert {("15", "1⅛ × 13"): 1, ("4", "1⅛ × 52⅜"): 1, ("15", "2 × 13"): 1, ("4", "2 × 52⅜"): 1} == found


def counted_rows(rows: list[list[str]]) -> dict[tuple[str, str], int]:
    """(how many, size) of each row, with how often it stands there."""
    out: dict[tuple[str, str], int] = {}
    for count, _, _, size in rows:
        key = (count, size.partition(",")[0])
        out[key] = out.get(key, 0) + 1
    return out


def test_the_join_is_told_with_its_three_numbers() -> None:
    """Shows 1⅛ - 2 × ¼ = ⅝, gap 1⅛ - 4 × ¼ = ⅛, passes 2/2 - ¼ - ⅝ = ⅛: in the pattern and on the table sheet."""
    text, sheet = shown("pattern", SHEDS), shown("table", SHEDS)
    assert "⅝ in shows between the blocks on the front" in text
    assert "raw edges stand ⅛ in apart" in text
    assert "passes the far stitching by ⅛ in" in text
    assert "⅝ in shows, gap ⅛ in, cover passes ⅛ in" in sheet


def test_rows_come_before_the_long_seams() -> None:
    """Five rows are 1 to 5 and the four long seams 6 to 9, and each drawing is mentioned."""
    text = shown("pattern", SHEDS)
    assert "the rows are 1 to 5 and the long seams between them 6 to 9" in text
    keys = set(figure_numbers(document_of("pattern", SHEDS)))
    assert {"joining", "section", "block 1", "block 2", "base 2", "letters"} <= keys


@pytest.mark.parametrize("name", QUILTS)
def test_a_quilt_is_told_in_the_order_of_the_work(name: str) -> None:
    """Blocks first, each squared up; then joining, then the whole; sleeve and label before the binding."""
    said = headings(name)
    wanted = ["Cutting", "The base", "Sewing", "Square up the blocks", "Join the blocks", "Square up the quilt"]
    places = [said.index(one) for one in wanted]
    assert places == sorted(places)
    label = next(place for place, one in enumerate(said) if one in {"Label", "Sleeve and label"})
    assert places[-1] < label < said.index("Bind")


def test_each_kind_of_block_is_sewn_once() -> None:
    """Two kinds of shed turn differently: 16 steps each; of alike blocks there is one run of steps."""
    for name, wanted in ((SHEDS, [16, 16]), (KEEPER, [12])):
        runs = [block for block in document_of("pattern", name).blocks if isinstance(block, Steps)]
        assert wanted == [len(block.steps) for block in runs]
    assert "Block “left window”: 10 blocks" in headings(SHEDS)


RECOLORED = """
[joined]
across = 2
down = 1
join = "plain seam"
[[blocks]]
name = "day"
[[blocks]]
name = "dusk"
rounds = [{ cut = "2", fabric = "Night" }]
"""
TWO = """
name = "Two"
rounds = [{ cut = "2", fabric = "Sand" }]
[squared_up]
wide = "6"
long = "6"
[center]
fabric = "Plum"
cut = "4"
[building]
way = "courthouse steps"
[[fabrics]]
name = "Plum"
color = "#6b2f5c"
[[fabrics]]
name = "Sand"
color = "#e2d3b0"
[[fabrics]]
name = "Night"
color = "#1f2740"
[binding]
fabric = "Plum"
"""


def test_a_kind_that_differs_in_its_fabrics_is_told_in_a_table() -> None:
    """Same steps, other fabrics: four steps once, and a table that puts Night in place of Sand in all four."""
    made = plan(read_project(TWO + RECOLORED, "two"))
    document = pattern_document(made)
    (steps,) = [block for block in document.blocks if isinstance(block, Steps)]
    assert 4 == len(steps.steps)
    letters = {one.fabric: one.letter for one in made.letters}
    night, sand = f"{letters['Night']} Night", f"instead of {letters['Sand']} Sand"
    assert [[str(step), night, sand] for step in range(1, 5)] == rows_under(document, "step")
    assert [] == proof(document, made)


def test_the_backing_that_comes_later_has_its_place() -> None:
    """Sewn through batting alone: the backing comes when the blocks are joined, and is trimmed with the whole quilt."""
    said = headings(KITES)
    assert said.index("Join the blocks") < said.index("The backing") < said.index("Square up the quilt")
    assert said.index("Square up the quilt") < said.index("Bind")
    text = shown("pattern", KITES)
    assert "the backing is added later" in text
    assert "32½ × 32½ in" in text


def test_lines_are_told_as_they_are_drawn() -> None:
    """Sewn from the back, a wall that leans right of the mark on the back is marked there, though it shows at the left.

    The project draws the line of patch 2 from 2 1/4 right, 5 down to 2 3/4 right, 2 up.
    """
    for kind in ("pattern", "table"):
        text = shown(kind, "ticket-booth")
        assert "2¾ right, 2 up" in text or "2¾ in right, 2 in up" in text
        assert not re.search(r"2¾( in)? left, 2( in)? up", text)


def test_blocks_that_lose_batting_at_their_edges_are_not_sewn_round() -> None:
    """A line ⅛ in inside the edge would lie in the batting that is trimmed out of the seam allowance of ¼ in."""
    assert "Do not sew round the blocks" in shown("pattern", KITES)
    assert "until the joining seam does" in shown("pattern", SHEDS)


def test_a_thin_foundation_is_bought_and_the_base_called_what_it_is() -> None:
    """The booth is sewn on batting and muslin of 12 × 15; the kites on batting alone, pinned as a whole to 36½ square.

    36½ / 4 is 10 rows of 10 pins.
    """
    for kind in ("shop", "pattern"):
        assert "Thin foundation, such as muslin, cut 12 × 15 in; it stays in" in shown(kind, "ticket-booth")
        assert "about 100 safety pins" in shown(kind, KITES)
    assert "backing and batting, layered" not in shown("pattern", KITES)
    assert "the batting alone; the strips are sewn straight onto it" in shown("pattern", KITES)


def test_exact_cuts_promise_no_extra() -> None:
    """Corner squares meet only strips as long as the side they go on, 5½ on 5½; squares for corners are exact too."""
    assert "Cut lengths are exact, so that the corner squares meet" in shown("pattern", "corner-shop")
    assert "carry a little extra" not in shown("pattern", "corner-shop")
    assert "Squares are cut exactly" in shown("pattern", "paper-boat")


def test_what_lies_under_triangles_and_borders_is_cut_too() -> None:
    """Squares of 14 and 8 on bases with 2 x 1/2 in to spare and draw-up; a border cut 3 adds 2 1/2 beyond its seams."""
    text = shown("pattern", KEEPER)
    assert "1 of each: batting and backing 15½ × 15½ in, for the side triangles." in text
    assert "2 of each: batting and backing 9½ × 9½ in, for the corner triangles." in text
    assert "2 of each: batting 2½ × 27⅜ in and backing 3 × 27⅜ in, for the sides of the border." in text
    assert "8: batting ½ × 8½ in, filler below each strip between blocks." in text


def test_beside_strips_and_centers_everything_is_counted() -> None:
    """15 joins within five rows of four, and four long ones from six widths of fabric, each flat and folded."""
    text = shown("pattern", SHEDS)
    assert "flat strip between blocks (15)" in text
    assert "folded strip between rows (6)" in text


def test_on_the_slant_ends_are_measured_from_a_place_one_can_find() -> None:
    """No line square to a slanted strip is drawn on the base, so none is measured from."""
    text = shown("pattern", KITES)
    assert "or more from the place opposite the center mark" in text
    assert "or more from the center line" not in text


def test_triangles_and_borders_have_their_own_parts() -> None:
    """On point with a border: triangles before the order of joining, the border after it."""
    said = headings(KEEPER)
    assert said.index("Setting triangles") < said.index("In this order") < said.index("The border")


# --- proof reading ---------------------------------------------------------------------------------------


def test_the_red_pencil_counts_blocks_and_strips() -> None:
    """A kind that is counted wrongly, and a total that is left out, are both marked."""
    made, document = plan_of(SHEDS), document_of("pattern", SHEDS)
    assert [] == proof(document, made)
    fewer = replace(made, kinds=(replace(made.kinds[0], count=9), made.kinds[1]))
    complaints = " ".join(proof(document, fewer))
    assert "20 blocks are laid and 19 are made." in complaints
    assert 'The cutting does not say "304 strips to sew".' in complaints


def test_the_red_pencil_misses_a_joining_strip() -> None:
    """A strip of another name in the plan than on the pages is marked."""
    made, document = plan_of(SHEDS), document_of("pattern", SHEDS)
    assert made.quilt is not None
    first, *others = made.quilt.strips
    other = replace(made, quilt=replace(made.quilt, strips=(replace(first, name="strip for nobody"), *others)))
    assert 'The joining strip "strip for nobody" is in no table.' in proof(document, other)


# --- edges, panels, foundations, lines -------------------------------------------------------------------


def test_an_edge_without_a_binding_has_no_word_of_binding() -> None:
    """Turned through: its own page, no strips of a binding to cut, no binding to sew or to catch an end."""
    document = document_of("pattern", "soft-cover")
    said = spoken(document.blocks)
    assert "Turn it through" in headings("soft-cover")
    assert "Bind" not in headings("soft-cover")
    assert not re.search(r"\bbinding (?:strips|does|:)|Binding:|caught in the binding", said)
    sheet = shown("table", "soft-cover")
    assert "Binding" not in sheet
    assert "the seam round the edge" in sheet


def test_panels_are_cut_apart_before_they_are_bound() -> None:
    """Four mats from one base: seven seams are opened by each cut, so all seven are locked first."""
    said = headings("four-from-one")
    assert said.index("Square up") < said.index("Cut apart") < said.index("Bind")
    text = shown("pattern", "four-from-one")
    assert "4 panels, each 9 × 12 in squared up; ¼ in falls away at each cut." in text
    assert "Lock first. The cuts open the seams of strips 1 to 7" in text
    assert "panels" in figure_numbers(document_of("pattern", "four-from-one"))


def test_a_foundation_says_that_it_is_mirrored() -> None:
    """Seven patches, six lines: patch 1 has none; steps are 2 to 7, and no distance from the center mark is given."""
    document = document_of("pattern", "ticket-booth")
    text = shown("pattern", "ticket-booth")
    assert "mirrored" in text
    assert "Patch 1 has no line" in text
    (steps,) = [block for block in document.blocks if isinstance(block, Steps)]
    assert ["2", "3", "4", "5", "6", "7"] == [step.number for step in steps.steps]
    assert "Count: 6 patches to sew and patch 1" in text
    assert "the patch 1" not in text
    assert "foundation" in figure_numbers(document)
    assert any(
        isinstance(part, Mention) and part.key == "foundation"
        for block in walk(document.blocks)
        for said in texts(block)
        for part in said
    )


@pytest.mark.parametrize("name", ["gale-warning", "ticket-booth", "paper-boat"])
def test_lines_of_their_own_are_given_by_both_ends(name: str) -> None:
    """The table sheet has no column of distances from the center mark, but where each seam begins and ends."""
    made = plan_of(name)
    document = document_of("table", name)
    titles = [column.title for block in walk(document.blocks) if isinstance(block, Table) for column in block.columns]
    assert not any("from center mark" in title for title in titles)
    rows = [row for title in ("strip", "patch", "square") for row in rows_under(document, title)]
    strips = [strip for strip in made.build.strips if strip.cut_length > 0]
    assert len(strips) == len(rows)
    assert all(re.search(r"(?:right|left), .*(?:up|down)$", row[3]) for row in rows)


def test_a_strip_of_parts_says_what_to_join_first() -> None:
    """Strip 3 of the corner shop: a tin cut 2¼ × 2¼ at both ends of shelf paper, 2¼ - ½ = 1¾ showing."""
    (steps,) = [block for block in document_of("pattern", "corner-shop").blocks if isinstance(block, Steps)]
    step = steps.steps[2]
    notes = {label: spaced(plain(said)) for label, said in step.notes}
    assert 2 == notes["Join first"].count("cut 2¼ × 2¼ in")
    assert "3 parts sewn end to end" in spaced(plain(step.do))


PARALLEL = """
name = "Slants"
rounds = [{ cut = "2 1/2", fabric = "Sand" }]
[squared_up]
across_flats = "10"
sides = 6
[center]
fabric = "Plum"
shape = "polygon"
sides = 6
cut = "6 1/2"
[building]
way = "round after round"
strip_ends = "parallel to the neighbor"
[[fabrics]]
name = "Plum"
color = "#6b2f5c"
[[fabrics]]
name = "Sand"
color = "#e2d3b0"
[binding]
fabric = "Plum"
"""


def test_slanted_ends_give_both_long_edges() -> None:
    """Ends cut parallel to the neighbors: every step names the sewn and the outer edge; at a hexagon 60° or 120°."""
    made = plan(read_project(PARALLEL, "slants"))
    (steps,) = [block for block in pattern_document(made).blocks if isinstance(block, Steps)]
    for step in steps.steps:
        notes = {label: spaced(plain(said)) for label, said in step.notes}
        found = re.search(r"sewn (\S+(?: \S+)?) in long, the outer edge (\S+(?: \S+)?) in long", notes["Cut ends"])
        assert found is not None
        assert set(re.findall(r"(\d+)°", notes["Cut ends"])) <= {"60", "120"}
    assert [] == proof(pattern_document(made), made)


@pytest.mark.parametrize("name", [*QUILTS, "ticket-booth", "four-from-one", "plum-skirt", "soft-cover"])
def test_the_table_sheet_says_what_is_new(name: str) -> None:
    """The join, the cut, the edge: each piece's own line stands on its table sheet."""
    made = plan_of(name)
    text = spaced(spoken(table_sheet(made).blocks))
    if made.quilt is not None:
        assert "squared up when all is joined" in text
    if made.panels is not None:
        assert "panels, each" in text
    if name == "plum-skirt":
        assert "no corner, a curve all round" in text
        assert "bias" in text
    assert (EXAMPLES / f"{name}.toml").is_file()


def test_other_layouts_say_what_is_left_over() -> None:
    """Twenty sheds three across make six rows and leave two: 3 × 13 + 2 × ⅛ = 39¼ by 6 × 13 + 5 × ⅛ = 78⅝ in."""
    rows = rows_under(document_of("pattern", SHEDS), "blocks across × down")
    assert ["3 × 6", "2", "39¼ × 78⅝"] in [row[:3] for row in rows]


def test_the_bobbin_matters_only_where_the_backing_is_sewn_through() -> None:
    """Through the backing its color must vanish there; through batting alone nobody sees it."""
    assert "vanishes on the backing" in shown("pattern", SHEDS)
    assert "any color: the backing hides it" in shown("pattern", KITES)
