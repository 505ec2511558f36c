"""Each finding is raised where a hand computation says so, with its numbers, and stays silent elsewhere."""

from collections.abc import Callable

import pytest

from stitchflip.planning.findings import CODES, geometry_findings, see
from stitchflip.planning.model import Finding, Severity
from stitchflip.project.model import Project

Draft = Callable[..., Project]


def found(project: Project, code: str) -> Finding:
    """The one finding of a code."""
    (finding,) = [finding for finding in geometry_findings(see(project)) if finding.code == code]
    return finding


def codes(project: Project) -> set[str]:
    """All codes found in a project's geometry."""
    return {finding.code for finding in geometry_findings(see(project))}


def test_a_ten_inch_center_on_a_fifteen_inch_base_lacks_room_for_an_inch(draft: Draft) -> None:
    """9 1/2 in between seams, on point: 9.5 / sqrt 2 = 6.7175 from the mark, so 7.5 - 6.7175 = 0.7825 remains."""
    finding = found(draft(squared_up={"beyond_points": "1"}), "points.base-edge")

    assert pytest.approx(0.7825, abs=5e-5) == finding.numbers["to_base_edge_in"]
    assert pytest.approx(0.2175, abs=5e-5) == finding.numbers["short_in"]
    assert "¾" in finding.what
    assert "¼" in finding.what


def test_fold_loss_does_not_move_the_points(draft: Draft) -> None:
    """The fold takes from the strips; the center's points stay at its own stitching."""
    lossy = draft(squared_up={"beyond_points": "1"}, my_numbers={"draw_up": 0.0, "fold_loss": "1/32"})

    assert pytest.approx(0.7825, abs=5e-5) == found(lossy, "points.base-edge").numbers["to_base_edge_in"]


@pytest.mark.parametrize(
    ("wide", "code", "severity"),
    [
        ("13 1/4", "points.cut-off", Severity.STOP),  # 6.625 - 6.7175 < 0: outside the trim
        ("13 7/8", "points.cut-off", Severity.STOP),  # 6.9375 - 6.7175 = 0.22: under the binding
        ("14", "points.thin", Severity.FIX),  # 0.2825
        ("14 1/2", "points.thin", Severity.NOTE),  # 0.5325
        ("15", "points.wish", Severity.NOTE),  # 0.7825 of the 1 in wished
    ],
)
def test_room_beyond_the_points_is_graded(draft: Draft, wide: str, code: str, severity: Severity) -> None:
    """Note under 3/4 in to the trim edge, fix under 1/2, stop at 1/4 or less (the binding seam); else the wish."""
    project = draft(squared_up={"wide": wide, "long": wide}, base={"wide": "20", "long": "20"})

    assert severity is found(project, code).severity


def test_enough_room_is_not_mentioned(draft: Draft) -> None:
    """At 15 1/2 the points have 1.0325 to the trim edge and nothing is said about them."""
    project = draft(squared_up={"wide": "15 1/2", "long": "15 1/2"}, base={"wide": "20", "long": "20"})

    assert not {code for code in codes(project) if code.startswith("points.")}


def test_a_base_smaller_than_the_piece_is_a_stop(draft: Draft) -> None:
    """Squared up at 16 on a base of 15: short by 1 in both ways, said once."""
    finding = found(draft(squared_up={"wide": "16", "long": "16"}), "base.too-small")

    assert Severity.STOP is finding.severity
    assert pytest.approx(1.0) == finding.numbers["short_in"]
    assert "both ways" in finding.what


def test_a_center_larger_than_the_base_is_a_stop(draft: Draft) -> None:
    """A 12 in center on point is 16.97 across: on a base of 15 it hangs over by 0.985 each way."""
    project = draft(center={"cut": "12", "turned": 45, "fabric": "Plain"})

    assert pytest.approx(0.9853, abs=1e-4) == found(project, "base.center-larger").numbers["over_in"]


def test_bare_batting_is_graded_by_where_it_lies(draft: Draft) -> None:
    """A straight 4 in center with one round cut 2 1/2 reaches 4 in each way.

    Squared up at 9 the corners beyond 4 lie inside the binding seam (4.25): stop. At 8 1/4 they lie between
    it (3.875) and the trim edge (4.125): fix. At 7 1/2 the fabric passes the trim line by 1/4 of the 1/2: note.
    """

    def grade(size: str) -> set[str]:
        project = draft(
            squared_up={"wide": size, "long": size},
            center={"cut": "4", "fabric": "Plain"},
            building={"way": "log cabin"},
            rounds=[{"cut": "2 1/2", "fabric": "Dot"}],
        )
        return {code for code in codes(project) if code.startswith("coverage.")}

    assert "coverage.batting-shows" in grade("9")
    assert {"coverage.under-binding"} == grade("8 1/4") - {"coverage.thin-reach"}
    assert {"coverage.thin-reach"} == grade("7 1/2")


def test_a_pass_that_adds_nothing_stops(draft: Draft) -> None:
    """Two-sided building cannot cover the two other sides however often it is repeated."""
    project = draft(
        squared_up={"wide": "12", "long": "12"},
        center={"cut": "4", "fabric": "Plain"},
        building={"way": "two-sided log cabin", "until_covered": True},
    )

    endless = found(project, "coverage.never-covers")
    assert endless.place
    assert endless.where in {"left side", "bottom side", "right side", "top side"}
    assert endless.cures


def test_until_covered_repeats_the_rounds_and_stops(draft: Draft) -> None:
    """From 4 in, rounds of 2 1/2 gain 2 a side: 2, 4, 6; trim 9 and reach 1/2 need 5: two rounds, 8 strips."""
    project = draft(
        squared_up={"wide": "9", "long": "9"},
        center={"cut": "4", "fabric": "Plain"},
        building={"way": "log cabin", "until_covered": True},
        rounds=[{"cut": "2 1/2", "fabric": "Dot"}],
    )

    assert 8 == len(see(project).build.strips)
    assert not see(project).build.bare


def test_a_wide_unstitched_center_is_a_fix(draft: Draft) -> None:
    """A 10 in center shows 9 1/2 between its seams; the house batting allows 8."""
    finding = found(draft(), "stitching.wide-gap")

    assert pytest.approx(9.5) == finding.numbers["gap_in"]
    assert Severity.FIX is finding.severity


def test_mixed_washing_and_untested_dye_are_noticed(draft: Draft) -> None:
    """Washed beside unwashed, and a dark untested dye beside a pale fabric, each give one finding."""
    fabrics = [
        {"name": "Plain", "color": "#f2e6c8", "washed": "washed"},
        {"name": "Stripe", "color": "#7a8f6a"},
        {"name": "Dot", "color": "#33415c", "dark_dye": True},
    ]

    assert {"fabric.washing", "fabric.dye"} <= codes(draft(fabrics=fabrics))


def test_polyester_batting_and_the_iron_are_noticed(draft: Draft) -> None:
    """Polyester melts; batting that says it stands the iron is believed."""
    assert "batting.iron" in codes(draft(batting={"fiber": "polyester"}))
    assert "batting.iron" not in codes(draft(batting={"fiber": "polyester", "iron": True}))


def test_every_code_that_can_be_found_is_explained() -> None:
    """Codes in the sources of the findings and the registry agree, both ways."""
    import re
    from pathlib import Path

    from stitchflip.planning import findings

    folder = Path(findings.__file__).parent
    source = "".join(path.read_text(encoding="utf-8") for path in folder.glob("*.py") if path.stem != "codes")
    areas = "|".join({code.split(".")[0] for code in CODES})
    used = set(re.findall(rf'"((?:{areas})\.[a-z-]+)"', source))
    kernel = {"build.never-covers", "chord.scant", "chord.cuts-seam", "reading.impossible"}

    assert set(CODES) == used - kernel


@pytest.mark.parametrize(
    "center", [{"cut_wide": "6 1/4", "cut_long": "2"}, {"cut_wide": "2", "cut_long": "4"}, {"cut": "4"}]
)
def test_a_straight_center_has_no_points(center: dict[str, str], draft: Draft) -> None:
    """The corners of an upright rectangle point at no edge, however long and flat it is: 45 degrees off both."""
    project = draft(
        center={**center, "fabric": "Plain"},
        building={"way": "log cabin"},
        base={},
        squared_up={"wide": "3", "long": "3"},
    )
    assert not any(point.points_at_edge for point in see(project).build.points)
    assert not {one.code for one in geometry_findings(see(project)) if one.code.startswith("points.")}


def test_a_center_wider_than_the_piece_is_cut_off(draft: Draft) -> None:
    """10 cut shows 9 1/2; in a piece 4 wide it reaches 2 3/4 beyond the edge on either side."""
    project = draft(
        center={"cut_wide": "10", "cut_long": "5", "fabric": "Plain"},
        building={"way": "courthouse steps"},
        base={},
        squared_up={"wide": "4", "long": "40"},
    )
    (found,) = (one for one in geometry_findings(see(project)) if one.code == "center.cut-off")
    assert Severity.STOP is found.severity
    assert pytest.approx((9.5 - 4) / 2) == found.numbers["over_in"]
