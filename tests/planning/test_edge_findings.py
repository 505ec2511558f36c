"""Edges that cannot be sewn as asked, each with a cure that works."""

from __future__ import annotations

from typing import Any

import pytest

from stitchflip.planning import plan
from stitchflip.planning.model import Finding
from stitchflip.project import project_from
from stitchflip.project.changes import apply_changes
from stitchflip.project.model import Project

MAT = {"wide": "18", "long": "13"}
ROUND = {"shape": "round", "across": "16"}


def _project(squared_up: dict[str, Any], binding: dict[str, Any], **parts: Any) -> Project:
    return project_from(
        {
            "name": "Edge",
            "squared_up": squared_up,
            "center": {"fabric": "Oat", "cut": "6"},
            "rounds": [{"cut": "2 1/2", "fabric": "Ink"}, {"cut": "2", "fabric": "Oat"}],
            "building": {"way": "courthouse steps", "until_covered": True},
            "fabrics": [{"name": "Oat"}, {"name": "Ink"}],
            "binding": {"fabric": "Ink", **binding},
            **parts,
        }
    )


def _found(project: Project, code: str) -> Finding | None:
    return next((one for one in plan(project, with_cures=False).findings if one.code == code), None)


WRONG = [
    ("binding.straight-on-curve", "fix", _project(ROUND, {"grain": "straight"})),
    ("binding.straight-on-curve", "fix", _project({**MAT, "corner_radius": "2"}, {"grain": "straight"})),
    ("edge.self-binding-on-curve", "stop", _project(ROUND, {"edge": "self-binding"})),
    ("edge.cannot-turn", "stop", _project(MAT, {"edge": "turned through"})),
    ("edge.cannot-turn", "stop", _project(MAT, {"edge": "turned through", "fabric": ""})),
    ("edge.self-binding-on-curve", "stop", _project(ROUND, {"edge": "self-binding", "shows": "3/8", "fabric": ""})),
    ("edge.no-backing-to-fold", "stop", _project(MAT, {"edge": "self-binding"}, cut_apart={"across": 3, "loss": "1"})),
    (
        "edge.no-backing-to-fold",
        "stop",
        _project(
            {"wide": "9", "long": "9"}, {"edge": "self-binding"}, joined={"across": 2, "down": 2, "fabric": "Oat"}
        ),
    ),
    ("binding.too-narrow", "fix", _project(MAT, {"cut": "1 1/2"})),
    ("binding.too-narrow", "note", _project(MAT, {"cut": "2"})),
]


@pytest.mark.parametrize(("code", "severity", "project"), WRONG)
def test_what_cannot_be_sewn_is_found_and_every_cure_makes_it_go(code: str, severity: str, project: Project) -> None:
    """Each is told with its severity, and each change it offers leaves it gone."""
    found = _found(project, code)

    assert found is not None
    assert severity == found.severity.value
    assert found.cures
    for cure in found.cures:
        assert _found(apply_changes(project, cure.changes), code) is None


@pytest.mark.parametrize(
    "project",
    [
        _project(ROUND, {}),
        _project(ROUND, {"grain": "bias"}),
        _project(ROUND, {"edge": "facing"}),
        _project(MAT, {"edge": "self-binding"}),
        _project(MAT, {"edge": "turned through"}, base={"through": "batting only"}),
        _project(MAT, {"edge": "turned through"}, base={"through": "batting on foundation"}),
        _project(MAT, {"edge": "self-binding"}, cut_apart={"across": 3, "loss": "2 1/2"}),
        _project(MAT, {"cut": "2 1/4"}),
    ],
)
def test_an_edge_that_can_be_sewn_is_not_complained_about(project: Project) -> None:
    """No finding about the edge or the binding."""
    codes = {one.code for one in plan(project, with_cures=False).findings}
    about_edges = {code for code in codes if code.startswith(("edge.", "binding."))}
    assert about_edges <= {"edge.ends-at-cuts", "edge.sliver-at-cut"}


def test_the_room_that_self_binding_needs_between_panels_is_said() -> None:
    """1/2 shows: 1 1/4 of backing beyond every edge, twice between neighbors: 2 1/2."""
    found = _found(
        _project(MAT, {"edge": "self-binding"}, cut_apart={"across": 3, "loss": "1"}), "edge.no-backing-to-fold"
    )

    assert found is not None
    assert (2.5, 1.0) == (found.numbers["needed_in"], found.numbers["between_in"])
    assert "2 1/2" in str(found.cures[0].changes[0].to).replace("½", " 1/2")


def test_a_center_that_goes_under_the_binding_beside_a_cut_is_told() -> None:
    """Panels 6 1/4 wide, the middle one from -3 1/8 to 3 1/8, seen to 2 7/8; a center shown 6 goes 1/8 under.

    Cut 6 1/2 it shows 6 from seam to seam with nothing drawn in; panels 6 1/2 wide hold it just.
    """
    bare = {"my_numbers": {"draw_up": 0, "fold_loss": "0"}, "center": {"fabric": "Oat", "cut": "6 1/2"}}
    narrow = _found(_project({"wide": "6 1/4", "long": "9"}, {}, cut_apart={"across": 3}, **bare), "edge.center-at-cut")
    wide = _found(_project({"wide": "6 1/2", "long": "9"}, {}, cut_apart={"across": 3}, **bare), "edge.center-at-cut")

    assert narrow is not None
    assert pytest.approx(1 / 8) == narrow.numbers["under_in"]
    assert wide is None


def test_how_far_a_narrow_binding_misses_the_stitching() -> None:
    """1 1/2 folds to 3/4: seam 1/4, front 1/4, loft 1/8 and 1/4 again on the back need 7/8; 1/8 is missing."""
    found = _found(_project(MAT, {"cut": "1 1/2"}), "binding.too-narrow")

    assert found is not None
    assert pytest.approx(-0.125) == found.numbers["passes_in"]
    assert "⅛\u202fin is missing" in found.what


def test_a_curve_on_the_bias_is_told_by_stretches_and_not_by_the_sides_of_its_polygon() -> None:
    """A round edge lies on the bias four times between the straight grains, so few places are told, not dozens."""
    project = _project(ROUND, {}, rounds=[{"cut": "4", "fabric": "Ink"}])
    found = _found(project, "edges.bias-at-trim")

    assert found is None or len(found.place) <= 16


def test_binding_strips_and_pieces_agree_with_the_edge() -> None:
    """A round piece is bound from its square and from nothing else; a faced one has no binding to cut."""
    bias = plan(_project(ROUND, {}), with_cures=False)
    faced = plan(_project(MAT, {"edge": "facing"}), with_cures=False)

    assert {"Binding square for bias strips"} == {piece.name for piece in bias.pieces if "inding" in piece.name}
    assert [] == [piece for piece in faced.pieces if piece.kind == "binding"]
    assert 2 == len({piece.name for piece in faced.pieces if piece.name.startswith("Facing")})
