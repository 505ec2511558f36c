"""One long base cut into panels: where the cuts run, and which seams they open."""

from __future__ import annotations

from typing import Any

import pytest

from stitchflip.finishing import plan_binding, plan_panels, plan_square_up
from stitchflip.finishing.edge_model import PanelsPlan
from stitchflip.piecing import build_project
from stitchflip.piecing.geometry import area, extent
from stitchflip.planning import plan
from stitchflip.planning.model import Plan
from stitchflip.project import project_from
from stitchflip.project.model import Project
from stitchflip.project.numbers import effective

FLAT = {"draw_up": 0, "fold_loss": "0"}


def _project(squared_up: dict[str, Any], apart: dict[str, Any], **parts: Any) -> Project:
    """Rows of 2 in strips across the base, nothing drawn in and nothing lost in folds."""
    raw = {
        "name": "Bench Mats",
        "fabrics": [{"name": "Oat"}, {"name": "Ink"}],
        "binding": {"fabric": "Ink"},
        "building": {"way": "rows of strips", "rows_from": "one end", "until_covered": True},
        "rounds": [{"cut": "2 1/2", "fabric": "Oat"}, {"cut": "2 1/2", "fabric": "Ink"}],
        "my_numbers": FLAT,
        "squared_up": squared_up,
        "cut_apart": apart,
        **parts,
    }
    return project_from(raw)


def _panels(project: Project) -> PanelsPlan:
    numbers = effective(project)
    panels = plan_panels(project, numbers, build_project(project, numbers))
    assert panels is not None
    return panels


def test_a_piece_that_is_not_cut_apart_has_no_panels() -> None:
    """Nothing to plan."""
    project = _project({"wide": "9", "long": "12"}, {})
    alone = project.model_copy(update={"cut_apart": None})
    numbers = effective(alone)
    assert plan_panels(alone, numbers, build_project(alone, numbers)) is None


def test_four_mats_side_by_side_without_loss_share_three_cuts() -> None:
    """4 x 9 = 36 wide: cuts 9 left of the middle, on it, and 9 right of it, each over the whole 12 in."""
    panels = _panels(_project({"wide": "9", "long": "12"}, {"across": 4}))

    assert [((x, -6.0), (x, 6.0)) for x in (-9.0, 0.0, 9.0)] == list(panels.cuts)
    assert [(-18, -9), (-9, 0), (0, 9), (9, 18)] == [extent(panel, 1, 0) for panel in panels.panels]


def test_a_loss_makes_two_cuts_of_one() -> None:
    """2 x 9 and 1/2 lost between them: 18 1/2 wide, cut 1/4 left and right of the middle."""
    panels = _panels(_project({"wide": "9", "long": "12"}, {"across": 2, "loss": "1/2"}))

    assert [-0.25, 0.25] == [start[0] for start, _ in panels.cuts]
    assert [(-9.25, -0.25), (0.25, 9.25)] == [extent(panel, 1, 0) for panel in panels.panels]
    assert (9, 12, 0.5) == (panels.wide, panels.high, panels.loss)


def test_panels_are_counted_row_by_row_from_the_top() -> None:
    """Two by three of 6 x 4: the first lies at the upper left, the last at the lower right; they fill the whole."""
    panels = _panels(_project({"wide": "6", "long": "4"}, {"across": 2, "down": 3}))

    assert ((-6, 0), (2, 6)) == (extent(panels.panels[0], 1, 0), extent(panels.panels[0], 0, 1))
    assert ((0, 6), (-6, -2)) == (extent(panels.panels[-1], 1, 0), extent(panels.panels[-1], 0, 1))
    assert 12 * 12 == sum(area(panel) for panel in panels.panels)
    assert 1 + 2 == len(panels.cuts)


def test_every_seam_that_runs_over_a_cut_is_opened_by_it() -> None:
    """Rows 2 in high over 12 in, cut once: six seams, six places on the cut.

    The first strip reaches 1/2 past the lower trim line, to -6 1/2; its upper raw edge is at -4, the seam 1/4 below.
    Each further strip adds 2: seams at -4 1/4, -2 1/4, -1/4, 1 3/4, 3 3/4, 5 3/4.
    """
    project = _project({"wide": "9", "long": "12"}, {"across": 2})
    numbers = effective(project)
    build = build_project(project, numbers)
    panels = _panels(project)
    seams = [strip.seam_at for strip in build.strips]

    assert pytest.approx([-4.25, -2.25, -0.25, 1.75, 3.75, 5.75]) == seams
    assert [step for step, _ in panels.ends_to_lock] == [1, 2, 3, 4, 5, 6]
    assert pytest.approx([0.0] * 6, abs=1e-9) == [x for _, (x, _) in panels.ends_to_lock]
    assert pytest.approx(seams) == [y for _, (_, y) in panels.ends_to_lock]


def test_a_cut_along_the_seams_opens_none() -> None:
    """Rows lie across, and so do the cuts: nothing is opened."""
    assert () == _panels(_project({"wide": "9", "long": "6"}, {"down": 2})).ends_to_lock


def test_places_are_taped_when_stitching_draws_the_piece_in() -> None:
    """Drawn in by 2 %, the cut stays where the tape finds it, and the seams lie 2 % nearer the middle."""
    project = _project({"wide": "9", "long": "12"}, {"across": 2}, my_numbers={"draw_up": 0.02, "fold_loss": "0"})
    numbers = effective(project)
    build = build_project(project, numbers)
    places = [place for _, place in _panels(project).ends_to_lock]

    assert pytest.approx([0.98 * strip.seam_at for strip in build.strips]) == [y for _, y in places]
    assert {0.0} == {abs(round(x, 9)) for x, _ in places}


def test_every_panel_is_bound_on_its_own() -> None:
    """A mat 9 x 12: 42 + 10 + 2 = 54 in: a whole strip and 16 1/2 more, two of which come from one: 6 for four."""
    project = _project({"wide": "9", "long": "12"}, {"across": 4})
    numbers = effective(project)
    trim = build_project(project, numbers).trim_taped
    binding = plan_binding(project, numbers, trim)

    assert (42, 54, 4) == (binding.perimeter, binding.need, binding.pieces)
    assert 4 + 2 == binding.strips
    assert [90] * 4 == [corner.angle for corner in binding.corners]


def test_two_bases_cut_apart_are_bound_as_eight_panels() -> None:
    """Twice four mats: eight times the strips of one, part strips shared."""
    project = _project({"wide": "9", "long": "12"}, {"across": 4}, how_many=2)
    numbers = effective(project)
    binding = plan_binding(project, numbers, build_project(project, numbers).trim_taped)
    assert 8 + 4 == binding.strips


def test_round_coasters_from_one_base_are_bound_on_the_bias() -> None:
    """Three by two of 5 in across: squared up straight at 15 x 10, then every coaster cut round and bound round."""
    project = _project({"shape": "round", "across": "5"}, {"across": 3, "down": 2})
    numbers = effective(project)
    trim = build_project(project, numbers).trim_taped
    square, binding = plan_square_up(project, numbers, trim, ()), plan_binding(project, numbers, trim)

    assert ((15, 10), 4) == ((square.wide, square.high), len(square.sides))
    assert "2½\u202fin all round" in square.curve
    assert ("bias", 6, ()) == (binding.grain, binding.pieces, binding.corners)
    assert pytest.approx(15.708, abs=1e-3) == binding.perimeter


# --- what is found --------------------------------------------------------------------------------------------


def _found(project: Project, code: str) -> Any:
    made: Plan = plan(project, with_cures=False)
    return next((finding for finding in made.findings if finding.code == code), None)


def test_the_ends_at_the_cuts_are_told_with_their_places() -> None:
    """Six seams at one cut: a note with the six places, and what to do before cutting."""
    note = _found(_project({"wide": "9", "long": "12"}, {"across": 2}), "edge.ends-at-cuts")

    assert ("note", 6, 6) == (note.severity.value, note.numbers["places"], len(note.place))
    assert "stay-stitch ⅛\u202fin beside every cut" in note.what


def test_a_cut_through_the_center_is_found() -> None:
    """A log cabin cut in two is cut through its center; cut in three it is not."""
    cabin = {
        "center": {"fabric": "Oat", "cut": "4"},
        "building": {"way": "log cabin", "until_covered": True},
    }
    two = _found(_project({"wide": "9", "long": "9"}, {"across": 2}, **cabin), "edge.cut-through-center")
    three = _found(_project({"wide": "9", "long": "9"}, {"across": 3}, **cabin), "edge.cut-through-center")

    assert "fix" == two.severity.value
    assert three is None


def test_a_sliver_beside_a_cut_is_found() -> None:
    """Two panels of 6 1/4: the cut lies at 0, and the third strip's seam at -1/2, so the lower panel shows 1/4 of it.

    The whole is 12 1/2 high. The first strip ends at -6 1/4 - 1/2 + 2 1/2 = -4 1/4, its seam 1/4 below; the next seams
    lie at -2 1/2 and -1/2. With panels of 6 that seam lies at -1/4, where the binding covers what would be left.
    """
    thin = _found(_project({"wide": "9", "long": "6 1/4"}, {"down": 2}), "edge.sliver-at-cut")
    good = _found(_project({"wide": "9", "long": "6"}, {"down": 2}), "edge.sliver-at-cut")

    assert 3 == thin.step
    assert good is None
