"""Cures are numbers that were tried: applied to the project, they make the finding go away."""

from collections.abc import Callable
from math import sqrt
from typing import Any

import pytest

from stitchflip.piecing.geometry import extent
from stitchflip.planning import plan
from stitchflip.planning.cures import with_cures
from stitchflip.planning.findings import Seen, geometry_findings, see
from stitchflip.planning.model import Cure, Finding
from stitchflip.project.changes import apply_changes
from stitchflip.project.model import Project

Draft = Callable[..., Project]

RUNNER: dict[str, Any] = {
    "squared_up": {"wide": "13", "long": "44", "ends": "pointed", "length_runs": "across", "wish_beyond_points": "3/4"},
    "base": {"wide": "15 1/2", "long": "48"},
    "center": {"cut": "9", "turned": 45, "fabric": "Plain"},
    "rounds": [{"cut": cut, "fabric": "Dot"} for cut in ("1 1/2", "2 1/2", "2", "2 1/2", "1 1/2", "2 1/2", "3 1/4")],
}


def cured(project: Project, code: str) -> tuple[Seen, Finding]:
    """The project as seen, and its finding of a code with cures."""
    seen = see(project)
    found = [finding for finding in with_cures(seen, geometry_findings(seen)) if finding.code == code]
    return seen, found[0]


def changes(cures: tuple[Cure, ...]) -> dict[str, str]:
    """Where each cure of one change writes what."""
    return {
        ".".join(str(key) for key in cure.changes[0].path): (cure.changes[0].to or "").split()[0]
        for cure in cures
        if cure.changes
    }


def test_a_nine_inch_lantern_is_cured_by_a_smaller_center_or_a_wider_piece(draft: Draft) -> None:
    """8.5 shows, 6.010 to the point: 0.490 to the edge of 13.

    For 3/4 in: 6.5 - (c - 0.5) / sqrt 2 >= 0.75 gives c <= 8.63, so 8 5/8 on the eighths; and a width of
    2 (6.010 + 0.75) = 13.52, so 13 5/8.
    """
    _, finding = cured(draft(**RUNNER), "points.thin")

    assert pytest.approx(6.5 - 8.5 / sqrt(2)) == finding.numbers["to_trim_edge_in"]
    assert {"center.cut": "8⅝", "squared_up.wide": "13⅝"} == changes(finding.cures)
    assert "3/16" in finding.what


def test_every_cure_with_changes_makes_its_finding_go_away(draft: Draft) -> None:
    """Applied and planned again, the finding's code is gone, or its target is met."""
    broken = [
        draft(**RUNNER),
        draft(squared_up={"beyond_points": "1"}),
        draft(squared_up={"wide": "16", "long": "16"}),
        draft(center={"cut": "12", "turned": 45, "fabric": "Plain"}),
        draft(
            center={"cut": "4", "fabric": "Plain"},
            building={"way": "log cabin"},
            squared_up={"wide": "13", "long": "13"},
        ),
    ]
    tried = 0
    for project in broken:
        seen = see(project)
        for finding in with_cures(seen, geometry_findings(seen)):
            for cure in finding.cures:
                if not cure.changes:
                    continue
                tried += 1
                after = geometry_findings(see(apply_changes(project, cure.changes)))
                assert finding.code not in {other.code for other in after}, (finding.code, cure.text)
    assert tried >= 8


def test_a_ten_inch_center_on_fifteen_is_cured_three_ways(draft: Draft) -> None:
    """(c - 0.5) / sqrt 2 <= 6.5 gives c <= 9.69: 9 5/8; the base must be 15.44: 15 1/2; or 3/4 is accepted."""
    _, finding = cured(draft(squared_up={"beyond_points": "1"}), "points.base-edge")
    text = " ".join(" ".join(cure.text.split()) for cure in finding.cures)

    assert "9⅝" in text
    assert "15½ × 15½" in text
    assert "Accept ¾" in text


def test_bare_batting_is_cured_by_wider_last_strips_or_a_smaller_piece(draft: Draft) -> None:
    """A 4 in center and one round of 2 1/2 reach 4; a trim of 9 and reach 1/2 need 5: last strips 3 1/2, or size 7."""
    project = draft(
        squared_up={"wide": "9", "long": "9"},
        center={"cut": "4", "fabric": "Plain"},
        building={"way": "log cabin"},
        rounds=[{"cut": "2 1/2", "fabric": "Dot"}],
    )
    _, finding = cured(project, "coverage.batting-shows")
    text = " ".join(cure.text for cure in finding.cures)

    assert "3½" in text
    assert "Add 4 more strips" in text


def test_a_wide_gap_is_cured_by_two_lines_that_leave_triangles(draft: Draft) -> None:
    """A cross from point to point leaves four triangles with legs of 6.7175 and a long side of 9 1/2.

    The circle in one has a diameter of 2 x 6.7175 - 9.5 = 3.935, to the nearest sixteenth 3 15/16.
    """
    _, finding = cured(draft(), "stitching.wide-gap")

    assert "3 15/16" in " ".join(finding.cures[0].text.split())


def test_no_cure_of_size_is_offered_for_what_a_short_strip_leaves_bare(draft: Draft) -> None:
    """A strip cut too short leaves its own place bare: wider last strips or a little less width do not reach it.

    Every cure with changes that is offered all the same was planned again and leaves nothing bare.
    """
    project = draft(
        squared_up={"wide": "9", "long": "9"},
        center={"cut": "4", "fabric": "Plain"},
        building={"way": "log cabin"},
        rounds=[{"cut": "2", "fabric": "Stripe"}, {"cut": "2 1/2", "fabric": "Dot"}],
        short_strips=[{"step": 1, "long": "3", "from_start": "0"}],
    )
    _, finding = cured(project, "coverage.batting-shows")
    offered = [cure for cure in finding.cures if cure.changes]

    assert not any("last strips" in cure.text for cure in offered)
    for cure in offered:
        assert not see(apply_changes(project, cure.changes)).build.bare


def test_a_piece_far_from_covered_is_told_how_many_strips_are_missing(draft: Draft) -> None:
    """One round of 1 1/2 on a 4 in center shows 1 a side: for 16 and the reach, 6 1/2 a side and more, that is rounds.

    The cure is the project's own rounds repeated, and with it nothing of the piece is bare.
    """
    project = draft(
        squared_up={"wide": "12 3/4", "long": "16"},
        base={},
        center={"cut": "4", "fabric": "Plain"},
        building={"way": "round after round"},
        rounds=[{"cut": "1 1/2", "fabric": "Stripe"}],
    )
    _, found = cured(project, "coverage.batting-shows")
    cure = next(one for one in found.cures if "repeating the rounds" in one.text)
    left = {one.code for one in geometry_findings(see(apply_changes(project, cure.changes)))}
    assert not {"coverage.batting-shows", "coverage.under-binding"} & left


def test_a_two_sided_cabin_in_the_middle_is_moved_into_the_corner(draft: Draft) -> None:
    """Strips on top and right only: the center must lie in the lower left corner, and the cure lays it there."""
    project = draft(
        squared_up={"wide": "9", "long": "9"},
        base={},
        center={"cut": "4", "fabric": "Plain"},
        building={"way": "two-sided log cabin"},
        rounds=[{"cut": "2 1/2", "fabric": "Stripe"}] * 3,
    )
    _, found = cured(project, "coverage.batting-shows")
    cure = next(one for one in found.cures if "into the corner" in one.text)
    (move,) = (change for change in cure.changes if change.path == ("center", "off_center"))
    assert move.to is not None
    right, up = (float(part) for part in move.to.strip("[]").split(","))
    assert right < 0
    assert up < 0
    left = {one.code for one in geometry_findings(see(apply_changes(project, cure.changes)))}
    assert "coverage.batting-shows" not in left


def test_a_base_far_too_narrow_is_enlarged_that_way_only(draft: Draft) -> None:
    """A piece of 40 x 14 that nothing draws in takes 40 of width; 15 of length are enough, so 40 x 15."""
    long_piece = draft(squared_up={"wide": "40", "long": "14"}, building={"way": "log cabin"})

    _, finding = cured(long_piece, "base.too-small")

    enlarged = [apply_changes(long_piece, cure.changes).base for cure in finding.cures if len(cure.changes) > 1]
    assert [(40.0, 15.0)] == [(base.wide.inches, base.long.inches) for base in enlarged if base.wide and base.long]


def test_what_is_short_on_the_shelf_can_be_bought_where_it_is_sold(draft: Draft) -> None:
    """No strips of a mat come out of 5 in of fabric, nor its batting out of 10 in: both say what to do."""
    scraps = [
        {"name": "Plain"},
        {"name": "Stripe", "only_on_hand": True, "on_hand": [{"wide": "5", "long": "5"}]},
        {"name": "Dot"},
    ]
    project = draft(fabrics=scraps, batting={"on_hand": [{"wide": "10", "long": "10"}]})

    short = {one.code: one for one in plan(project).findings if one.code in {"fabric.short", "batting.short"}}

    assert {"fabric.short", "batting.short"} == set(short)
    for code, finding in short.items():
        (changes,) = (cure.changes for cure in finding.cures if cure.changes)
        assert code not in {one.code for one in plan(apply_changes(project, changes)).findings}


def test_a_piece_several_inches_short_of_cover_gets_a_size_that_is_covered(draft: Draft) -> None:
    """One round of 2 on a center of 10 makes 13 of fabric: of a round piece of 24 some 12 can be had."""
    project = draft(
        squared_up={"shape": "round", "across": "24"},
        center={"cut": "10", "fabric": "Plain"},
        building={"way": "log cabin"},
        rounds=[{"cut": "2", "fabric": "Dot"}],
    )

    _, finding = cured(project, "coverage.batting-shows")

    smaller = [change for cure in finding.cures for change in cure.changes if change.path == ("squared_up", "across")]
    assert 1 == len(smaller)
    covered = see(apply_changes(project, (smaller[0],)))
    assert () == covered.build.bare
    # 10 / 2 - 1/4 + 2 - 1/4 = 6.5 each way, less 1/2 of reach: 12 across, or the eighth below when it only touches
    across = covered.project.squared_up.across
    assert across is not None
    assert 12.0 == pytest.approx(across.inches, abs=0.13)


def test_points_past_the_edge_of_a_hexagon_fit_a_larger_hexagon(draft: Draft) -> None:
    """A hexagon cut 11 shows 10 1/2; turned 30 against one of 11 its corners, 6.06 out, pass the flats at 5.5."""
    hexagon = {"shape": "polygon", "sides": 6}
    project = draft(
        squared_up={**hexagon, "across_flats": "11"},
        base={"wide": "20", "long": "20"},
        center={**hexagon, "cut": "11", "turned": 30, "fabric": "Plain"},
        building={"way": "round after round"},
    )

    _, finding = cured(project, "points.cut-off")

    larger = [change for cure in finding.cures for change in cure.changes if change.path[-1] == "across_flats"]
    # 10.5 / sqrt 3 = 6.062 from the middle, and a point may not come nearer than 1/4 to the edge
    assert larger
    for change in larger:
        mended = see(apply_changes(project, (change,)))
        assert 2 * 10.5 / sqrt(3) < extent(mended.build.trim_taped, 0, 1)[1] * 2
        assert "points.cut-off" not in {one.code for one in geometry_findings(mended)}


def test_no_cure_changes_far_more_than_what_is_short(draft: Draft) -> None:
    """Where fabric is 1/4 in short of its reach, no size changes by more than both sides of that and an inch."""
    project = draft(
        squared_up={"wide": "12 1/2", "long": "12 1/2"},
        center={"cut": "10", "fabric": "Plain"},
        building={"way": "log cabin"},
        rounds=[{"cut": "2", "fabric": "Dot"}],
    )
    seen = see(project)
    short = max(spot.by for spot in seen.build.bare)

    for finding in with_cures(seen, geometry_findings(seen)):
        for change in (change for cure in finding.cures for change in cure.changes):
            after = apply_changes(project, (change,))
            if change.path[0] == "squared_up" and after.squared_up.wide and after.squared_up.long:
                assert 12.5 - min(after.squared_up.wide.inches, after.squared_up.long.inches) <= 2 * short + 1.125
            if change.path[0] == "rounds" and after.rounds[0].cut:
                assert after.rounds[0].cut.inches - 2 <= short + 1.25
