"""What joined blocks leave to look at, and that each cure offered cures."""

from __future__ import annotations

from typing import Any

import pytest

from stitchflip.cli.plan_words import does_it_fit
from stitchflip.planning import plan
from stitchflip.planning.findings.joining import backing_width, borders, joins, kinds, one_way_borders, unequal_blocks
from stitchflip.planning.model import Cure, Finding, Plan, Severity
from stitchflip.project import apply_changes
from stitchflip.project.model import Project
from tests.planning.conftest import Draft

CHECKS = (joins, unequal_blocks, borders, one_way_borders, backing_width, kinds)


def made(draft: Draft, parts: dict[str, Any] | None = None, **joined: Any) -> Plan:
    """Blocks of 14 in, joined two by two unless said."""
    return plan(draft(joined={"across": 2, "down": 2, "fabric": "Dot", **joined}, **(parts or {})), with_cures=False)


def found(of: Plan) -> list[Finding]:
    """What the joins leave to look at."""
    return [finding for check in CHECKS for finding in check(of)]


def codes(project: Project) -> set[str]:
    """Codes of what the joins of a project leave to look at."""
    return {finding.code for finding in found(plan(project, with_cures=False))}


def cured(of: Plan, cure: Cure) -> Project:
    """The project with a cure applied."""
    assert cure.changes
    return apply_changes(of.project, cure.changes)


def said(text: str) -> str:
    """Without narrow spaces."""
    return text.replace("\u202f", " ").replace("\u2009", " ")


def test_usual_strips_leave_nothing_to_look_at(draft: Draft) -> None:
    """1 1/8 and 2 at a seam of 1/4 are good."""
    assert [] == found(made(draft))


def test_a_piece_by_itself_has_no_joins(draft: Draft) -> None:
    """Nothing is joined, nothing is said."""
    assert [] == found(plan(draft(), with_cures=False))


def test_a_block_by_itself_with_a_border_has_no_joins(draft: Draft) -> None:
    """One across and one down is only bordered."""
    parts = {"borders": [{"cut": "2", "fabric": "Dot"}]}
    assert [] == found(made(draft, parts, across=1, down=1, flat_cut="3/4"))


def test_overlapping_raw_edges_stop(draft: Draft) -> None:
    """Flat 7/8: 7/8 - 1 = -1/8; cut 1 1/8 the gap is 1/8 again."""
    of = made(draft, flat_cut="7/8")
    (one,) = found(of)

    assert ("join.overlap", Severity.STOP, 0.125) == (one.code, one.severity, one.numbers["overlap_in"])
    assert "overlap by ⅛ in" in said(one.what)
    assert "Cut the flat strip 1⅛ in." == said(one.cures[0].text)
    assert set() == codes(cured(of, one.cures[0]))


def test_a_wider_flat_strip_takes_a_wider_fold_along(draft: Draft) -> None:
    """Flat 7/8 with folded 1 1/2; at 1 1/8 that one would not cover, so both change."""
    of = made(draft, flat_cut="7/8", folded_cut="1 1/2")
    (one,) = found(of)

    assert "Cut the flat strip 1⅛ in and the folded strip 2 in." == said(one.cures[0].text)
    assert set() == codes(cured(of, one.cures[0]))


def test_a_cover_that_does_not_reach_stops(draft: Draft) -> None:
    """Flat 1 1/4 and folded 1 3/4: 7/8 - 1/4 - 3/4 = -1/8; 2 1/4 passes by 1/8."""
    of = made(draft, flat_cut="1 1/4", folded_cut="1 3/4")
    one = next(finding for finding in found(of) if finding.code == "join.not-covered")

    assert (Severity.STOP, -0.125) == (one.severity, one.numbers["passes_in"])
    assert "ends ⅛ in short of the far stitching" in said(one.what)
    assert "Cut the folded strip 2¼ in: it passes by ⅛ in." == said(one.cures[0].text)
    assert "join.not-covered" not in codes(cured(of, one.cures[0]))


@pytest.mark.parametrize("folded", ["1 3/4", "1 7/8"])
def test_a_cover_that_meets_exactly_is_to_be_cut_wider(draft: Draft, folded: str) -> None:
    """1 1/8 with 1 3/4 passes by nothing, with 1 7/8 by 1/16; with 2 by 1/8, which is enough."""
    of = made(draft, folded_cut=folded)
    (one,) = found(of)

    assert ("join.meets-exactly", Severity.FIX) == (one.code, one.severity)
    assert "cut it wider to be safe" in one.what
    assert "Cut the folded strip 2 in: it passes by ⅛ in." == said(one.cures[0].text)
    assert set() == codes(cured(of, one.cures[0]))


def test_a_gap_wider_than_the_loft_is_hollow(draft: Draft) -> None:
    """Flat 1 1/4: edges 1/4 apart, batting 1/8; lay a strip of 1/4, or cut the flat strip 1 1/8."""
    of = made(draft, flat_cut="1 1/4")
    (one,) = found(of)

    assert ("join.hollow", Severity.FIX, 0.25) == (one.code, one.severity, one.numbers["filler_in"])
    assert "stand ¼ in apart" in said(one.what)
    assert ["Lay a strip of batting ¼ in wide in every join.", "Cut the flat strip 1⅛ in."] == [
        said(cure.text) for cure in one.cures
    ]
    assert set() == codes(cured(of, one.cures[1]))


def test_batting_trimmed_to_the_seam_leaves_a_hollow(draft: Draft) -> None:
    """5/8 between the battings; left in the allowances only 1/8."""
    of = made(draft, batting_reaches="to the seam")
    (one,) = found(of)

    assert ("join.hollow", 0.625) == (one.code, one.numbers["filler_in"])
    assert set() == codes(cured(of, one.cures[1]))


def test_a_thick_batting_fills_a_wider_gap(draft: Draft) -> None:
    """Polyester of 1/4 fills what cotton of 1/8 does not."""
    assert [] == found(made(draft, {"batting": {"fiber": "polyester"}}, flat_cut="1 1/4"))


def test_a_narrow_filler_is_good_to_know(draft: Draft) -> None:
    """Covered strips showing 3/4: 1/4 between the raw edges; showing 1 it is 1/2, which lies flat."""
    of = made(draft, join="covered strips", shows="3/4")
    (one,) = found(of)

    assert ("join.filler-thin", Severity.NOTE, 0.25) == (one.code, one.severity, one.numbers["filler_in"])
    assert [] == found(made(draft, join="covered strips", shows="1"))


def test_covered_strips_that_show_too_little_overlap(draft: Draft) -> None:
    """Showing 3/8 the raw edges overlap by 1/8; two seams and the batting, 5/8, do not."""
    of = made(draft, join="covered strips", shows="3/8")
    (one,) = found(of)

    assert ("join.overlap", Severity.STOP) == (one.code, one.severity)
    assert "Let ⅝ in show between the blocks." == said(one.cures[0].text)
    assert "join.overlap" not in codes(cured(of, one.cures[0]))


def test_a_folded_back_that_does_not_cover_is_told_of_covered_strips(draft: Draft) -> None:
    """Shows 1, back folded from 2: 1 - 1/4 - 1 = -1/4; 2 3/4 passes by 1/8."""
    of = made(draft, join="covered strips", shows="1", folded_cut="2")
    (one,) = found(of)

    assert ("join.not-covered", -0.25) == (one.code, one.numbers["passes_in"])
    assert "Cut the folded strip 2¾ in: it passes by ⅛ in." == said(one.cures[0].text)
    assert set() == codes(cured(of, one.cures[0]))


def test_plain_seams_have_nothing_to_cover(draft: Draft) -> None:
    """No strips, no gap."""
    assert [] == found(plan(draft(joined={"across": 2, "down": 2, "join": "plain seam"}), with_cures=False))


def test_unequal_blocks_tell_what_trimming_costs(draft: Draft) -> None:
    """2 x 2 from 13 7/8 to 14: 2 x 13 3/8 + 5/8 + 1/2 = 27 7/8 in place of 28 1/8; framed it is 28 1/8 again."""
    of = made(draft, measured=[["14", "13 7/8"], ["14", "14"]])
    (one,) = found(of)

    assert ("join.blocks-unequal", Severity.NOTE) == (one.code, one.severity)
    assert "from 13⅞ in to 14 in" in said(one.what)
    assert "the whole is 27⅞ × 27⅞ in instead of 28⅛ × 28⅛ in" in said(one.what)
    framed = next(cure for cure in one.cures if "framed" in cure.text)
    assert "The small ones framed: the whole is 28⅛ × 28⅛ in." == said(framed.text)
    assert 28.125 == plan(cured(of, framed), with_cures=False).quilt.wide  # type: ignore[union-attr]


def test_blocks_more_than_a_quarter_apart_are_to_be_mended(draft: Draft) -> None:
    """3/8 between the smallest and the largest."""
    (one,) = found(made(draft, measured=[["14", "13 5/8"], ["14", "14"]]))
    assert Severity.FIX is one.severity


def test_a_border_narrower_than_two_seams_stops(draft: Draft) -> None:
    """1/2 in cut: nothing shows; cut 1 in, 1/2 shows."""
    of = made(draft, {"borders": [{"cut": "2", "fabric": "Dot"}, {"cut": "1/2", "fabric": "Plain"}]})
    (one,) = found(of)

    assert ("join.border-narrow", Severity.STOP, "border 2") == (one.code, one.severity, one.where)
    assert "Border 2 (Plain), cut ½ in, is used up by its two seams." == said(one.what)
    assert "Cut it 1 in: ½ in shows." == said(one.cures[0].text)
    assert set() == codes(cured(of, one.cures[0]))


@pytest.mark.parametrize(("along", "cut", "lies"), [("none", "across", "the two sides"), ("all", "along", "top and")])
def test_a_one_way_print_cannot_stand_upright_all_round_a_border_cut_one_way(
    draft: Draft, along: str, cut: str, lies: str
) -> None:
    """Upright runs along the selvage: strips cut across stand upright at top and bottom, strips cut along at the sides.

    Common practice, no source.
    """
    fabrics = [{"name": "Plain"}, {"name": "Stripe", "one_way": True}, {"name": "Dot"}]
    parts = {"fabrics": fabrics, "borders": [{"cut": "2", "fabric": "Stripe", "cut_along": along}]}
    of = made(draft, parts)
    (one,) = found(of)

    assert ("join.border-one-way", Severity.NOTE) == (one.code, one.severity)
    assert cut in one.what
    assert lies in one.what
    assert set() == codes(cured(of, one.cures[0]))


def test_a_border_that_costs_a_width_of_backing_is_good_to_know(draft: Draft) -> None:
    """2 x 2 blocks of 14 are 27 1/2; with 5 cut, 9 more: 36 1/2 and 4 for spare, 40 1/2 of 40; 4 3/4 saves a width."""
    parts: dict[str, Any] = {"base": {"through": "batting only"}, "borders": [{"cut": "5", "fabric": "Dot"}]}
    of = plan(draft(joined={"across": 2, "down": 2, "join": "plain seam"}, **parts), with_cures=False)
    (one,) = found(of)

    assert ("join.backing-width", Severity.NOTE, 0.5) == (one.code, one.severity, one.numbers["over_in"])
    assert "the border makes it ½ in too wide for one width" in said(one.what)
    assert "Cut the border 4¾ in: then one width is enough." == said(one.cures[0].text)
    assert 1 == plan(cured(of, one.cures[0]), with_cures=False).backing.best.widths
    assert set() == codes(cured(of, one.cures[0]))


def test_a_border_that_cannot_save_a_width_is_no_matter(draft: Draft) -> None:
    """3 x 3 blocks are 41 in without any border: nothing to save."""
    parts: dict[str, Any] = {"base": {"through": "batting only"}, "borders": [{"cut": "3", "fabric": "Dot"}]}
    assert [] == found(plan(draft(joined={"across": 3, "down": 3, "join": "plain seam"}, **parts), with_cures=False))


KINDS: list[dict[str, Any]] = [{"name": "lit", "count": 2}, {"name": "dark", "count": 2}]


def test_kinds_that_add_up_are_good(draft: Draft) -> None:
    """Two and two in four places."""
    assert [] == found(made(draft, {"blocks": KINDS}, places=["1 2", "2 1"]))


def test_counts_that_do_not_add_up_are_told(draft: Draft) -> None:
    """Two and three in four places: the last should be two."""
    of = made(draft, {"blocks": [KINDS[0], {"name": "dark", "count": 3}]})
    (one,) = found(of)

    assert ("join.counts", Severity.FIX) == (one.code, one.severity)
    assert "5 blocks are counted over all kinds, and the quilt has 4 places." == one.what
    assert "Count 2 of dark." == one.cures[0].text


def test_counts_that_are_not_the_places_are_told(draft: Draft) -> None:
    """Three places of the first kind, one of the second."""
    of = made(draft, {"blocks": KINDS}, places=["1 1", "2 1"])
    assert ["lit: 2 are counted, and the places hold 3.", "dark: 2 are counted, and the places hold 1."] == [
        one.what for one in found(of)
    ]


def test_a_kind_that_is_not_there_is_told(draft: Draft) -> None:
    """Number 3 of two kinds, in row 2."""
    of = made(draft, {"blocks": [{"name": "lit"}, {"name": "dark"}]}, places=["1 2", "2 3"])
    (one,) = found(of)
    assert "join.places" == one.code
    assert "Row 2 of the places names a kind of block that is not there at place 2" in one.what


def test_rows_of_places_that_do_not_fit_are_told(draft: Draft) -> None:
    """Two rows of two are due."""
    of = made(draft, {"blocks": [{"name": "lit"}, {"name": "dark"}]}, places=["1 2 1"])
    (one,) = found(of)
    assert "Places are given in rows of 3; the quilt has rows of 2, 2. The others are filled in turn." == one.what


def test_the_plan_lists_what_the_joins_leave(draft: Draft) -> None:
    """Registered: a finding of a join is among those of the whole plan."""
    assert "join.overlap" in {one.code for one in made(draft, flat_cut="7/8").findings}


def test_unequal_blocks_that_come_out_as_wished_name_their_size_once(draft: Draft) -> None:
    """Small ones framed come out as large as blocks that never differed: the size is not set against itself."""
    framed = made(draft, measured=[["14", "13 7/8"], ["14", "14"]], unequal="frame the small ones")
    trimmed = made(draft, measured=[["14", "13 7/8"], ["14", "14"]])

    assert [False, True] == [" instead of " in next(unequal_blocks(one)).what for one in (framed, trimmed)]


def test_a_join_that_stops_the_quilt_is_the_first_answer(draft: Draft) -> None:
    """A folded strip that does not cover its stitching: the quilt does not fit, whatever its blocks do."""
    wide = {"rounds": [{"cut": "2 1/2", "fabric": "Stripe"}, {"cut": "5", "fabric": "Dot"}]}
    answer = does_it_fit(made(draft, wide, flat_cut="1 1/8", folded_cut="1"))

    assert answer.startswith("No. The folded strip ends")
