"""A piece at another size: finished sizes scaled, seams added after, rounds that go on as they began."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from stitchflip.cli.starters import starter_text
from stitchflip.errors import BuildError
from stitchflip.lengths import Length, Unit, parse_length
from stitchflip.planning import Plan, Severity, plan
from stitchflip.planning.resize import (
    Keep,
    Resized,
    blocks_for,
    differences,
    quilt_size,
    resized,
    resized_as_json,
    what_changed,
)
from stitchflip.planning.resize.pen import Pen, redrafted
from stitchflip.planning.resize.piece import trim_extents
from stitchflip.project import Project, apply_changes, edit_project, project_from, read_project, write_project
from stitchflip.project.model import Change, Outline, Runs, Way

EXAMPLES = Path(__file__).parents[2] / "examples"
NO_DRAWING_IN = {"draw_up": 0.0, "fold_loss": "0"}


def inches(value: float) -> Length:
    """A length, typed."""
    return Length.of_inches(value)


def mat(size: float | tuple[float, float] = 15, *cuts: str, **tables: Any) -> Project:
    """A log cabin round a 4 in center, strips of Oat and Slate in turn, nothing drawn in and no fold loss.

    By hand: a strip cut 2 shows 1½, so n rounds reach 4 + 3n raw edge to raw edge; the size and ½ in of reach on
    both sides are to be covered.
    """
    wide, long = size if isinstance(size, tuple) else (size, size)
    rounds = [{"cut": cut, "fabric": ("Oat", "Slate")[place % 2]} for place, cut in enumerate(cuts or ("2",) * 4)]
    return project_from(
        {
            "name": "Mat",
            "squared_up": {"wide": str(wide), "long": str(long)},
            "center": {"cut": "4", "fabric": "Print"},
            "rounds": rounds,
            "fabrics": [{"name": "Print"}, {"name": "Oat"}, {"name": "Slate"}, {"name": "Gate"}],
            "binding": {"fabric": "Slate"},
            "my_numbers": NO_DRAWING_IN,
            **tables,
        }
    )


def cuts_of(project: Project) -> list[float]:
    """Cut widths of the rounds, inches."""
    return [entry.cut.inches for entry in project.rounds if entry.cut is not None]


def same_as_its_changes(before: Project, made: Resized) -> bool:
    """The changes told make the old project the new one."""
    return apply_changes(before, made.changes) == made.project


def test_a_piece_doubled_has_its_finished_sizes_doubled() -> None:
    """Cut 3½ shows 3, doubled 6, cut 6½; a strip cut 2 shows 1½, doubled 3, cut 3½."""
    piece = mat(7, "2", "2", center={"cut": "3 1/2", "fabric": "Print"})
    made = resized(piece, inches(14), inches(14), keep=Keep.PROPORTIONS)
    assert made.project.center is not None
    assert made.project.center.cut == inches(6.5)
    assert [3.5, 3.5] == cuts_of(made.project)
    assert same_as_its_changes(piece, made)


def test_eight_made_nine_leaves_the_ruler_in_one_strip() -> None:
    """× 9/8: 2½ becomes 2¾ and 4½ becomes 5; 2 would be 2 3/16, which no ruler has: the nearest eighth is 2¼.

    Every cut is on the ruler again at 6 (× ¾) and at 10 (× 1¼): 2, 4 and 1½ show 1½, 3 and 1⅛, or 2½, 5 and 1⅞.
    """
    piece = mat(8, "4 1/2", "2", center={"cut": "2 1/2", "fabric": "Print"})
    made = resized(piece, inches(9), inches(9), keep=Keep.PROPORTIONS)
    assert made.project.center is not None
    assert made.project.center.cut == inches(2.75)
    assert [5.0, 2.25] == cuts_of(made.project)
    assert [("round 2", 2.1875, 2.25)] == [(one.what, one.exact_in, one.cut_in) for one in made.awkward]
    assert ((6.0, 6.0), (10.0, 10.0)) == made.clean_sizes


def test_rounds_are_added_until_the_size_is_covered() -> None:
    """24 and twice ½ are 25: 4 + 3n reaches it with 7 rounds, and the two fabrics go on in turn."""
    made = resized(mat(15), inches(24), inches(24))
    assert [2.0] * 7 == cuts_of(made.project)
    assert ["Oat", "Slate"] * 3 + ["Oat"] == [entry.fabric for entry in made.project.rounds]
    assert (24.0, 24.0) == trim_extents(made.project)


def test_the_last_strip_is_widened_when_little_is_missing() -> None:
    """23 and twice ½ are 24: six rounds reach 22, and 1 in wider last strips, shown on both sides, reach 24."""
    made = resized(mat(15), inches(23), inches(23))
    assert [*[2.0] * 5, 3.0] == cuts_of(made.project)
    assert ("2 rounds more.", "The last strips are cut 3 in wide, to cover.") == tuple(
        text.replace("\u202f", " ") for text in made.messages
    )


def test_rounds_are_dropped_when_the_others_cover() -> None:
    """10 and twice ½ are 11: three rounds reach 13, two only 10."""
    made = resized(mat(15), inches(10), inches(10))
    assert [2.0] * 3 == cuts_of(made.project)


def test_a_last_round_of_another_fabric_stays_the_last() -> None:
    """25 and twice ½ are 26: six rounds of 2 reach 22, and the Gate strip cut 2½ outside them 26."""
    rounds = [{"cut": "2", "fabric": name} for name in ("Oat", "Slate", "Oat", "Slate")]
    piece = mat(17, rounds=[*rounds, {"cut": "2 1/2", "fabric": "Gate"}])
    made = resized(piece, inches(25), inches(25))
    names = [entry.fabric for entry in made.project.rounds]
    assert ["Oat", "Slate"] * 3 + ["Gate"] == names
    assert 2.5 == cuts_of(made.project)[-1]


def test_one_strip_width_for_all() -> None:
    """Cut 3 all shows 2½: 4 + 5n reaches 16 with 3 rounds; the size stays."""
    made = resized(mat(15), strip=inches(3))
    assert [3.0] * 3 == cuts_of(made.project)
    assert (15.0, 15.0) == trim_extents(made.project)


def test_the_same_size_changes_nothing() -> None:
    """Not even what was measured on the piece is forgotten."""
    piece = mat(15, readings=[{"after": 4, "side": "top", "edge": "3 1/2"}])
    assert Resized(piece, (), ()) == resized(piece, inches(15), inches(15))
    assert Resized(piece, (), ()) == resized(piece, unit=Unit.INCH)


def test_what_was_measured_belongs_to_the_old_size() -> None:
    """Readings, given base and given cut lengths go, and are said to go."""
    piece = mat(15, readings=[{"after": 4, "side": "top", "edge": "3 1/2"}], base={"wide": "17", "long": "17"})
    made = resized(piece, inches(24), inches(24))
    assert ((), None) == (made.project.readings, made.project.base.wide)
    assert 2 == len([text for text in made.messages if "measured" in text or "base" in text])


def test_only_one_way_longer_repeats_the_rounds_until_covered() -> None:
    """12 × 24 needs strips above and below only: whole rounds would lay strips where nothing is bare."""
    piece = mat(12, "2", "2", "2")
    made = resized(piece, inches(12), inches(24))
    assert made.project.building.until_covered
    assert not [
        one for one in plan(made.project).findings if one.code in {"strip.unnecessary", "coverage.never-covers"}
    ]


def test_a_straight_center_takes_up_what_width_and_length_do_not_share() -> None:
    """15 × 15 to 15 × 20: strips stay as they are (factor 1), the center shows 3½ + 5 long: cut 4 × 9."""
    made = resized(mat(15), inches(15), inches(20), keep=Keep.PROPORTIONS)
    center = made.project.center
    assert center is not None
    assert (inches(4), inches(9)) == (center.cut_wide, center.cut_long)
    assert [2.0] * 4 == cuts_of(made.project)


def test_rows_grow_along_the_runner_only() -> None:
    """Rows across a runner from 38 to 57 long (× 1½): strips that show 2 show 3, whatever the width does."""
    rows = [{"cut": "2 1/2", "fabric": "Oat"}] * 11
    piece = mat((12, 38), center=None, building={"way": "rows of strips"}, rounds=rows)
    made = resized(piece, inches(16), inches(57), keep=Keep.PROPORTIONS)
    assert [3.5] * 11 == cuts_of(made.project)


def test_a_two_sided_center_stays_in_its_corner() -> None:
    """12 to 16: the corner goes 2 out both ways, and the center with it, from -4¼ to -6¼."""
    piece = mat(
        12,
        *["2"] * 5,
        center={"cut": "5", "fabric": "Print", "off_center": [-4.25, -4.25]},
        building={"way": "two-sided log cabin", "start": "top"},
    )
    made = resized(piece, inches(16), inches(16))
    assert made.project.center is not None
    assert (-6.25, -6.25) == made.project.center.off_center
    assert not [one for one in plan(made.project).findings if one.code.startswith("coverage")]


def test_an_off_center_log_cabin_stays_central() -> None:
    """Logs of 1½ and 2¼ put the middle ⅜ off in every round; from four rounds to five the center moves to 1⅞."""
    text = (EXAMPLES / "harbour-shed-block.toml").read_text(encoding="utf-8")
    block = read_project(text)
    made = resized(block, inches(15.5), inches(15.5))
    assert (5, (1.875, 1.875)) == (len(made.project.rounds), made.project.center and made.project.center.off_center)


def test_lines_of_a_foundation_are_seam_lines_and_only_scaled() -> None:
    """6 to 12: a line through (1, -3) and (1, 3) lies through (2, -6) and (2, 6)."""
    piece = mat(
        6,
        center=None,
        building={"way": "numbered foundation"},
        rounds=[],
        patches=[{"fabric": "Oat"}, {"fabric": "Slate", "line": [[1, -3], [1, 3]]}],
    )
    made = resized(piece, inches(12), inches(12))
    assert ((2.0, -6.0), (2.0, 6.0)) == made.project.patches[1].line
    assert any("no rounds to add" in text for text in made.messages)


@pytest.mark.parametrize(
    ("center", "key", "expected"),
    [
        ({"corners": [[-3, -3], [3, -3], [3, 3], [-3, 3]]}, "corners", ((-5.75, -5.75), (5.75, -5.75))),
        ({"sides": 6, "cut": "5"}, "cut", inches(9.5)),
        # shows 6 - ¼ (2 + √2) = 5.1464, doubled 10.2929, with the seams 11.1464, the nearest eighth 11⅛
        ({"shape": "half square", "cut": "6"}, "cut", inches(11.125)),
        ({"cut_wide": "4", "cut_long": "6"}, "cut_long", inches(11.5)),
    ],
)
def test_centers_of_every_shape_are_doubled_without_their_seams(center: Any, key: str, expected: object) -> None:
    """Corners 3 from the middle show 2¾, doubled 5½, cut 5¾; a hexagon cut 5 shows 4½, doubled 9, cut 9½."""
    piece = mat(15, center={"fabric": "Print", **center}, building={"way": "round after round"})
    made = resized(piece, inches(30), inches(30), keep=Keep.PROPORTIONS)
    value = getattr(made.project.center, key)
    assert expected == (value[:2] if key == "corners" else value)


def test_a_half_done_center_is_never_scaled() -> None:
    """What is sewn already stays as measured."""
    done = {"fabric": "Print", "cut_wide": "4", "cut_long": "4", "sewn_already": True}
    piece = mat(15, center=done)
    made = resized(piece, inches(30), inches(30), keep=Keep.PROPORTIONS)
    assert piece.center == made.project.center
    assert any("half-done" in text for text in made.messages)


def test_a_half_done_center_lies_where_it_lies_in_the_other_unit() -> None:
    """Corners 3 in from the middle are 7.62 cm from it, and half an inch to the right is 1.27 cm."""
    corners = [[-3, -3], [3, -3], [3, 3], [-3, 3]]
    done = {"fabric": "Print", "corners": corners, "sewn_already": True, "off_center": [0.5, 0]}
    made = resized(mat(15, center=done, building={"way": "round after round"}), unit=Unit.CM).project
    assert made.center is not None
    assert made.center.corners is not None
    assert ((-7.62, -7.62), (1.27, 0.0)) == (made.center.corners[0], made.center.off_center)


def test_a_hexagon_has_one_measure() -> None:
    """Two different ones are refused; one is the size across its flats."""
    piece = read_project((EXAMPLES / "snow-gate.toml").read_text(encoding="utf-8"))
    with pytest.raises(BuildError, match="one measure"):
        resized(piece, inches(30), inches(40))
    assert inches(30) == resized(piece, inches(30)).project.squared_up.across_flats


def test_a_block_of_twelve_inches_is_thirty_centimeters() -> None:
    """12½ joined finishes 12: redrafted 30, with seams 31.5; strips that show 2 show 5 and are cut 6.5."""
    block = mat(12.5, *["2 1/2"] * 3, joined={"across": 3, "down": 3, "fabric": "Slate"})
    made = resized(block, unit=Unit.CM).project
    assert ([31.5] * 2, [6.5] * 3) == (
        [size.cm for size in (made.squared_up.wide, made.squared_up.long) if size is not None],
        [entry.cut.cm for entry in made.rounds if entry.cut is not None],
    )


def test_a_redraft_takes_the_other_systems_house_numbers() -> None:
    """Her reach of ⅜ in was three quarters of the usual ½; of the usual 1.2 cm it is 0.9. A seam of ¼ is 0.75."""
    piece = mat(
        15, my_numbers={**NO_DRAWING_IN, "reach": "3/8", "seam": "1/4"}, binding={"fabric": "Slate", "cut": "2 1/2"}
    )
    made = resized(piece, unit=Unit.CM).project
    assert made.my_numbers.reach is not None
    assert (0.9, None, None) == (made.my_numbers.reach.cm, made.my_numbers.seam, made.binding.cut)


def test_what_was_measured_is_as_long_in_the_other_system() -> None:
    """A fabric of 41 in is 104.14 cm wide, a table of 60 in is 152.4 cm long; 9.00 a yard is 9.84 a meter."""
    fabrics = [{"name": "Oat", "usable_width": "41", "price": 9, "on_hand": [{"wide": "17", "long": "20"}]}]
    fabrics += [{"name": name} for name in ("Print", "Slate", "Gate")]
    piece = mat(15, fabrics=fabrics, made_for={"table_wide": "36", "table_long": "60"})
    made = resized(piece, unit=Unit.CM).project
    oat, table = made.fabrics[0], made.made_for
    assert oat.usable_width is not None
    assert table is not None
    assert table.table_long is not None
    assert (104.14, 152.4, 9.84) == (oat.usable_width.cm, table.table_long.cm, oat.price)
    assert inches(17) == oat.on_hand[0].wide


@pytest.mark.parametrize("name", sorted(path.stem for path in EXAMPLES.glob("*.toml")))
def test_every_example_can_be_redrafted_and_written(name: str) -> None:
    """In the other unit it is built without a new place that is bare, and its file reads as the same project."""
    piece = read_project((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8"))
    made = resized(piece, unit=Unit.CM if piece.units is Unit.INCH else Unit.INCH).project
    assert piece.units is not made.units
    assert made == read_project(write_project(made))
    codes = {one.code for one in plan(made, with_cures=False).findings}
    old = {one.code for one in plan(piece, with_cures=False).findings}
    assert [] == [code for code in codes - old if code.startswith(("coverage", "points", "base"))]


def test_the_changes_leave_the_notes_of_a_file_alone() -> None:
    """Edited into the file, they give the project, and its first lines stay."""
    text = (EXAMPLES / "lantern-walk.toml").read_text(encoding="utf-8")
    made = resized(read_project(text), inches(16), inches(60))
    edited = edit_project(text, made.changes)
    assert made.project == read_project(edited)
    assert text.splitlines()[:4] == edited.splitlines()[:4]


def test_the_lantern_longer_and_wider() -> None:
    """16 × 60: base 16 ÷ 0.985 + 2 = 18.24 and 60 ÷ 0.985 + 3 = 63.91, up to 18½ × 64; nothing new stops it."""
    piece = read_project((EXAMPLES / "lantern-walk.toml").read_text(encoding="utf-8"))
    made = resized(piece, inches(16), inches(60))
    after = plan(made.project)
    assert pytest.approx((64, 18.5)) == (after.base.wide, after.base.high)
    assert [] == [one.code for one in after.findings if one.severity.value == "stop"]
    assert "Midnight" == made.project.rounds[-1].fabric


def test_a_runner_too_narrow_for_its_center_gets_a_smaller_one() -> None:
    """The lantern cut 8¼ is 11 from point to point; in a runner 10 wide it is cut smaller, or its points would go."""
    piece = read_project((EXAMPLES / "lantern-walk.toml").read_text(encoding="utf-8"))
    made = resized(piece, inches(10), inches(40))
    center = made.project.center
    assert center is not None
    assert center.cut is not None
    assert center.cut < inches(8.25)
    assert any("nothing stops" in text for text in made.messages)
    assert [] == [one.code for one in plan(made.project).findings if one.severity.value == "stop"]


def sheds() -> Project:
    """The lap quilt of 4 × 5 blocks, 52⅜ × 65½."""
    return read_project((EXAMPLES / "harbour-sheds.toml").read_text(encoding="utf-8"))


def test_a_quilt_gets_more_blocks() -> None:
    """A block of 13 finishes 12½, the join shows ⅝: n blocks are 13⅛ n - ⅝ + ½. For 60 × 75: 5 are 65½, 6 are 78⅝."""
    assert (52.375, 65.5) == quilt_size(sheds())
    found = blocks_for(sheds(), 60, 75)
    assert found is not None
    assert (5, 6, 65.5, 78.625) == (found.across, found.down, found.wide, found.long)
    made = resized(sheds(), inches(60), inches(75))
    assert (65.5, 78.625) == quilt_size(made.project)
    assert sheds().rounds == made.project.rounds
    assert same_as_its_changes(sheds(), made)


def test_a_quilt_gets_larger_blocks() -> None:
    """60 of 4 blocks: (60 - 52⅜) ÷ 4 = 1.906 more each, 14.906, on the ruler 14⅞: the quilt is 52⅜ + 4 × 1⅞ = 59⅞."""
    made = resized(sheds(), inches(60), keep=Keep.PROPORTIONS)
    assert (inches(14.875), (59.875, 74.875)) == (made.project.squared_up.wide, quilt_size(made.project))


def test_too_many_blocks_are_refused() -> None:
    """More than 60 in a row is a slip."""
    block = mat(3, "1 1/4", center={"cut": "2", "fabric": "Print"}, joined={"across": 2, "down": 2, "fabric": "Slate"})
    with pytest.raises(BuildError, match="more than 60"):
        resized(block, inches(390), inches(390))


def plans(before: Project, *size: float, **more: Any) -> tuple[Plan, Plan]:
    """The plans before and after."""
    made = resized(before, *(inches(side) for side in size), **more)
    return plan(before, with_cures=False), plan(made.project, with_cures=False)


def test_double_the_size_is_not_double_of_everything() -> None:
    """15 to 30: binding 4 × 15 + 10 + 4 × ½ = 72 to 132; bases 17 to 32; rounds 4 to 9, four strips each."""
    before, after = plans(mat(15), 30, 30)
    changed = what_changed(before, after)
    assert ((72.0, 132.0), ((17.0, 17.0), (32.0, 32.0))) == (changed.binding_need, changed.bases)
    assert ((16, 36), ((15.0, 15.0), (30.0, 30.0)), (1, 1)) == (
        changed.strips,
        changed.squared_up,
        changed.how_many_bases,
    )
    assert {"Print", "Oat", "Slate"} == {one.fabric for one in changed.purchases}


def test_findings_that_go_and_come_are_told_by_kind() -> None:
    """A piece that was bare is covered at a smaller size, and says so."""
    before, after = plans(mat(19), 13, 13)
    changed = what_changed(before, after)
    assert any(one.code.startswith("coverage") for one in changed.gone)
    assert not any(one.code.startswith("coverage") for one in changed.come)


def test_panels_are_told_one_by_one() -> None:
    """Four mats out of one base: the size of each is told, not of all together."""
    before = read_project((EXAMPLES / "four-from-one.toml").read_text(encoding="utf-8"))
    size = before.squared_up
    assert size.wide is not None
    assert size.long is not None
    changed = what_changed(*plans(before, 20, 14))
    assert ((size.wide.inches, size.long.inches), (20.0, 14.0)) == changed.squared_up


def test_the_document_names_every_number() -> None:
    """Lengths end in _in and have a text beside them."""
    piece = mat(15)
    made = resized(piece, inches(24), inches(24))
    document = resized_as_json(piece, made, what_changed(plan(piece), plan(made.project)))
    assert {"wide_in": 24.0, "long_in": 24.0, "text": "24 × 24 in"} == document["squared_up"]["after"]  # type: ignore[index]
    assert {"before": 16, "after": 28} == document["strips"]


def test_a_cut_without_its_seams_before_and_after() -> None:
    """6½ doubled is 12½; four times 4½ - ½ and ½ is 16½."""
    pen = Pen(Unit.INCH, Unit.INCH, 0.25, 0.25)
    assert [inches(12.5), inches(16.5)] == [pen.cut(inches(6.5), 2, ""), pen.cut(inches(4.5), 4, "")]


@pytest.mark.parametrize(("unit", "size"), [(Unit.CM, 12.0), (Unit.INCH, 30 / 2.54), (Unit.CM, 2.0)])
def test_a_redrafted_size_is_near_and_comes_back(unit: Unit, size: float) -> None:
    """12 in are 30 cm and 30 cm are 12 in; 2 in are 5 cm and 5 cm are 2 in."""
    other = redrafted(size, unit)
    assert abs(other - size) <= 0.2
    assert pytest.approx(size) == redrafted(other, Unit.INCH if unit is Unit.CM else Unit.CM)


def test_differences_add_and_take_out_at_the_end() -> None:
    """Rounds more are added one by one, rounds fewer taken from the end."""
    small, large = mat(15), resized(mat(15), inches(24), inches(24)).project
    assert large == apply_changes(small, differences(small, large))
    assert small == apply_changes(large, differences(large, small))


SIZES = st.integers(12, 60).map(lambda count: count / 2)
CUTS = st.sampled_from(["1 1/2", "2", "2 1/2", "3"])
WAYS = st.sampled_from(["log cabin", "courthouse steps", "round after round"])


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])
@given(size=SIZES, other=SIZES, cut=CUTS, way=WAYS, fold=st.sampled_from(["0", "1/32"]))
def test_there_and_back_gives_as_many_strips(size: float, other: float, cut: str, way: str, fold: str) -> None:
    """A piece with as many rounds as it needs has as many after it was larger, and every size is the size asked for.

    Left out is a last round that a wider one before it could have spared: there one round less is right.
    """
    numbers = {"draw_up": 0.015, "fold_loss": fold}
    piece = resized(mat(8, cut, cut, my_numbers=numbers, building={"way": way}), inches(size), inches(size)).project
    assume(len({entry.cut for entry in piece.rounds}) == 1)
    there = resized(piece, inches(size + other), inches(size + other)).project
    back = resized(there, inches(size), inches(size)).project
    assume(len({entry.cut for entry in there.rounds}) == 1)
    assert len(piece.rounds) == len(back.rounds)
    assert [size + other] * 2 == pytest.approx(list(trim_extents(there)))
    assert [size] * 2 == pytest.approx(list(trim_extents(back)))


@settings(max_examples=25, deadline=None)
@given(wide=SIZES, long=SIZES, keep=st.sampled_from(list(Keep)), cut=CUTS, way=WAYS)
def test_every_resized_piece_is_covered_at_the_size_asked_for(
    wide: float, long: float, keep: Keep, cut: str, way: str
) -> None:
    """Nothing stays bare, the changes make it, and resizing it to its own size changes nothing."""
    piece = mat(9, cut, cut, building={"way": way})
    made = resized(piece, inches(wide), inches(long), keep=keep)
    assert pytest.approx((wide, long)) == trim_extents(made.project)
    assert same_as_its_changes(piece, made)
    assert Resized(made.project, (), ()) == resized(made.project, inches(wide), inches(long), keep=keep)
    assert [] == [one.what for one in plan(made.project, with_cures=False).findings if one.code.startswith("coverage")]


def test_a_metric_strip_width_keeps_to_its_unit() -> None:
    """5 cm strips in a metric mat stay 5 cm when it grows."""
    piece = read_project((EXAMPLES / "morning-tray.toml").read_text(encoding="utf-8"))
    made = resized(piece, parse_length("60 cm"), parse_length("45 cm"))
    assert {5.0} <= {entry.cut.cm for entry in made.project.rounds if entry.cut is not None}
    assert "Poppy" == made.project.rounds[-1].fabric


@pytest.mark.parametrize("unit", Unit)
@pytest.mark.parametrize("way", Way)
def test_every_way_of_building_can_be_a_half_larger(way: Way, unit: Unit) -> None:
    """From its starter, keeping strips and in proportion: covered, of the size asked for, and nothing new stops it."""
    piece = read_project(starter_text("Starter", way, unit))
    across, up = trim_extents(piece)
    step = 0.5 if unit is Unit.INCH else 1 / 2.54
    sizes = [Length.of_inches(round(side * 1.5 / step) * step) for side in (across, up)]
    is_one = piece.squared_up.shape in {Outline.POLYGON, Outline.ROUND}
    is_lying = piece.squared_up.length_runs is Runs.ACROSS
    wide, long = sizes[::-1] if is_lying else sizes
    for keep in Keep:
        made = resized(piece, wide, None if is_one else long, keep=keep)
        after = plan(made.project, with_cures=False)
        if not is_one:
            assert pytest.approx([side.inches for side in sizes]) == list(trim_extents(made.project))
        codes = {one.code for one in after.findings if one.severity is Severity.STOP or one.code.startswith("cover")}
        assert set() == codes
        assert same_as_its_changes(piece, made)


def test_a_size_that_cannot_work_says_what_would() -> None:
    """A center of 10 × 5 given by corners does not go into 4 × 40; in proportion, with a smaller center, it does."""
    corners = '{ fabric = "Print", corners = [[5, -2.5], [5, 2.5], [-5, 2.5], [-5, -2.5]] }'
    mat_of_words = read_project(starter_text("Mat", Way.COURTHOUSE, Unit.INCH))
    piece = apply_changes(mat_of_words, [Change(("center",), corners)])
    made = resized(piece, inches(4), inches(40))
    assert any(text.startswith("At this size it would stop") for text in made.messages)
    assert made.messages[-1].startswith("Kept in proportion")
    scaled = resized(piece, inches(4), inches(40), keep=Keep.PROPORTIONS)
    assert [] == [one.code for one in plan(scaled.project).findings if one.severity is Severity.STOP]


def test_a_center_too_wide_for_the_size_is_cut_to_what_it_holds() -> None:
    """A placemat's center of 10 × 5 does not go into 4 × 40: cut 4½ wide it shows 4, to the trim edge."""
    made = resized(read_project(starter_text("Mat", Way.COURTHOUSE, Unit.INCH)), inches(4), inches(40))
    center = made.project.center
    assert center is not None
    assert inches(4.5) == center.cut_wide
    assert made.messages[-1].startswith("So that nothing stops it: cut the center 4½")
    assert [] == [one.code for one in plan(made.project).findings if one.severity is Severity.STOP]


def test_a_corner_center_passes_its_edges_as_far_when_it_is_smaller() -> None:
    """Cut 5 at -4¼ it reaches to -6¾, which is ¾ past the trim line of 12 at -6.

    Half the size, 4½ showing 2¼, cut 2¾: the trim line lies at -3, ¾ past it -3¾, and the middle 1⅜ in, at -2⅜.
    """
    piece = mat(
        12,
        *["2"] * 5,
        center={"cut": "5", "fabric": "Print", "off_center": [-4.25, -4.25]},
        building={"way": "two-sided log cabin", "start": "top"},
    )
    made = resized(piece, inches(6), inches(6), keep=Keep.PROPORTIONS)
    assert made.project.center is not None
    assert (inches(2.75), (-2.375, -2.375)) == (made.project.center.cut, made.project.center.off_center)
