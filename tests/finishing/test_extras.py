"""Sleeve and label: what is cut, and that it goes on before the edge is closed."""

from __future__ import annotations

from math import sqrt
from typing import Any

import pytest

from stitchflip.finishing import plan_extras
from stitchflip.finishing.edge_model import ExtrasPlan
from stitchflip.planning import plan
from stitchflip.project import project_from
from tests.finishing.scenarios import CM, Laid, cm, inches

HANGING = {"wide": "32 1/2", "long": "32 1/2"}


def _extras(laid: Laid) -> ExtrasPlan:
    return plan_extras(laid.project, laid.numbers, laid.trim)


def _sizes(laid: Laid) -> list[tuple[str, float, float, int]]:
    return [(piece.name, piece.wide, piece.long, piece.count) for piece in _extras(laid).pieces]


def _words(laid: Laid) -> str:
    return " ".join(_extras(laid).words).replace("\u202f", " ").replace("\u2009", " ")


def test_without_extras_nothing_is_cut_or_said() -> None:
    """A plain mat has neither."""
    assert ExtrasPlan((), ()) == _extras(inches(HANGING))


def test_a_sleeve_is_as_long_as_the_piece_is_wide() -> None:
    """8 1/2 x 32 1/2, hemmed by 1 at both ends: 4 in flat and 30 1/2 long; of the backing unless said."""
    laid = inches(HANGING, extras={"sleeve": True})

    assert [("Sleeve", 8.5, 32.5, 1)] == _sizes(laid)
    assert "Backing" == _extras(laid).pieces[0].fabric
    assert "4 in wide flat and 30½ in long" in _words(laid)
    assert "Before the binding is sewn on" in _words(laid)


def test_a_sleeve_of_its_own_fabric() -> None:
    """The maker names it."""
    laid = inches(HANGING, extras={"sleeve": True, "sleeve_fabric": "Linen"})
    assert "Linen" == _extras(laid).pieces[0].fabric


def test_a_runner_drawn_lying_hangs_by_its_long_side() -> None:
    """Drawn across, the top edge is the long one: the sleeve is as long as the picture is wide."""
    laid = inches({"wide": "13", "long": "44", "length_runs": "across"}, extras={"sleeve": True})
    assert [("Sleeve", 8.5, 44, 1)] == _sizes(laid)


def test_a_round_piece_hangs_by_a_sleeve_below_its_highest_place() -> None:
    """44 across, an eighth below the top is 5 1/2: there it is 2 sqrt(22^2 - 16 1/2^2) = 29.10 wide, down to 29."""
    laid = inches({"shape": "round", "across": "44"}, extras={"sleeve": True})

    assert pytest.approx(29.10, abs=0.01) == 2 * sqrt(22**2 - 16.5**2)
    assert [("Sleeve", 8.5, 29.0, 1)] == _sizes(laid)
    assert "5½ in below the highest place" in _words(laid)


def test_a_label_shows_4_by_3() -> None:
    """A seam of 1/4 turned under all round: cut 4 1/2 x 3 1/2, sewn on before the binding."""
    laid = inches(HANGING, extras={"label": "rectangle"})

    assert [("Label", 4.5, 3.5, 1)] == _sizes(laid)
    assert "it shows 4 × 3 in" in _words(laid)
    assert "Before the binding is sewn on" in _words(laid)


def test_a_corner_label_is_a_square_of_5_folded() -> None:
    """Folded from corner to corner, its raw edges are caught in the binding."""
    laid = inches(HANGING, extras={"label": "corner"})

    assert [("Label", 5, 5, 1)] == _sizes(laid)
    assert "fold it from corner to corner" in _words(laid)
    assert "Before the binding is sewn on lay the triangle" in _words(laid)


def test_metric_labels_are_redrafted() -> None:
    """10 x 7.5 cm and 0.75 cm all round: 11.5 x 9; a square of 13."""
    size = {"wide": "80", "long": "80"}
    for shape, wide, high in (("rectangle", 11.5, 9), ("corner", 13, 13)):
        ((name, cut_wide, cut_high, count),) = _sizes(cm(size, extras={"label": shape}))
        assert ("Label", 1) == (name, count)
        assert pytest.approx((wide * CM, high * CM)) == (cut_wide, cut_high)


@pytest.mark.parametrize(
    "squared_up",
    [
        {"shape": "round", "across": "20"},
        {"shape": "polygon", "sides": 6, "across_flats": "20"},
        {"wide": "18", "long": "13", "corner_radius": "2"},
    ],
)
def test_without_a_right_angled_corner_the_label_is_a_rectangle(squared_up: dict[str, Any]) -> None:
    """A triangle with a right angle lies in no other corner."""
    assert [("Label", 4.5, 3.5, 1)] == _sizes(inches(squared_up, extras={"label": "corner"}))


def test_that_is_told_with_a_cure() -> None:
    """A note on the plan of a round piece names the word to change."""
    project = project_from(
        {
            "name": "Pond",
            "squared_up": {"shape": "round", "across": "12"},
            "center": {"fabric": "Oat", "cut": "4"},
            "rounds": [{"cut": "3", "fabric": "Oat"}],
            "building": {"until_covered": True},
            "fabrics": [{"name": "Oat"}],
            "binding": {"fabric": "Oat"},
            "extras": {"label": "corner"},
        }
    )
    (note,) = [found for found in plan(project).findings if found.code == "edge.no-corner-for-label"]

    assert "its edge curves" in note.what
    assert [(("extras", "label"), "rectangle")] == [(one.path, one.to) for one in note.cures[0].changes]


@pytest.mark.parametrize(
    ("edge", "label", "sleeve"),
    [
        ("binding", "Before the binding is sewn on", "Before the binding is sewn on baste"),
        ("facing", "Before the facing is sewn on", "When the facing is hemmed down"),
        ("self-binding", "Before the edge is folded over", "Before the edge is folded over sew the tube"),
        ("turned through", "Before the piece is sewn together and turned", "When the piece is turned and topstitched"),
    ],
)
def test_when_label_and_sleeve_go_on(edge: str, label: str, sleeve: str) -> None:
    """The label before the edge is closed; the sleeve where the edge can catch it, else when it is out of the way."""
    laid = inches(HANGING, binding={"fabric": "Linen", "edge": edge}, extras={"label": "rectangle", "sleeve": True})
    assert label in _words(laid)
    assert sleeve in _words(laid)


@pytest.mark.parametrize(("edge", "size"), [("facing", (4.5, 3.5)), ("self-binding", (4.5, 3.5)), ("binding", (5, 5))])
def test_a_corner_label_needs_an_edge_that_catches_it(edge: str, size: tuple[float, float]) -> None:
    """A facing would cover it and a self-binding catches nothing: then it is a rectangle."""
    laid = inches(HANGING, binding={"fabric": "Linen", "edge": edge}, extras={"label": "corner"})
    assert [("Label", *size, 1)] == _sizes(laid)


def test_the_label_of_a_piece_turned_through_lies_on_the_right_side_of_the_backing() -> None:
    """Its raw edges lie where the seam will run."""
    laid = inches(HANGING, binding={"fabric": "Linen", "edge": "turned through"}, extras={"label": "corner"})
    assert "mark the squared-up size on the right side of the backing" in _words(laid)


def test_every_panel_gets_a_label_of_its_own() -> None:
    """Four mats from one base: four labels."""
    laid = inches({"wide": "9", "long": "12"}, cut_apart={"across": 4}, extras={"label": "rectangle"})
    assert [("Label", 4.5, 3.5, 4)] == _sizes(laid)
