"""Joined quilts, angled ends, slanted lines, panels and other edges on the screen of a plan."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from tests.cli.conftest import Ask

EXAMPLES = Path(__file__).parents[2] / "examples"


def screen(ask: Ask, name: str, *options: str) -> str:
    """What `plan` says about an example, on one line."""
    said = ask("plan", EXAMPLES / f"{name}.toml", *options)
    assert 0 == said.status, said.err
    return " ".join(said.out.split())


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("harbour-sheds", "squared up 52⅜ × 65½ in (wide × long): 4 × 5 blocks, each squared up 13 × 13 in"),
        ("harbour-sheds", "Cut 20 bases, each 15 × 15 in"),
        ("harbour-sheds", "⅝ in shows, the raw edges of the blocks lie ⅛ in apart"),
        ("harbour-sheds", "15 × flat strip between blocks, Jetty: cut 1⅛ × 13 in"),
        ("harbour-sheds", "6 strips 1⅛ in wide to join (flat strip between rows)"),
        ("kite-weather", "plain seams of ¼ in, batting trimmed back from them"),
        ("kite-weather", "Sky 1⅜ yd"),
        ("lock-keeper", "5 blocks on point, each squared up 8½ × 8½ in"),
        ("lock-keeper", "4 corner triangles from 2 squares"),
        ("lock-keeper", "1 of 15½ × 15½ in for the side triangles"),
    ],
)
def test_a_quilt_is_told_whole(ask: Ask, name: str, said: str) -> None:
    """Size, bases, join and what is cut for it."""
    assert said in screen(ask, name)


def test_other_layouts_stand_behind_the_door(ask: Ask) -> None:
    """Sixteen blocks of 8 finished: 3 x 5 leaves one over and comes to 24 1/2 x 40 1/2."""
    assert "3 × 5: 24½ × 40½ in (wide × long), 1 to 1.7, 1 left over" in screen(ask, "kite-weather", "--more")
    assert "Other layouts" not in screen(ask, "kite-weather")


def test_wonky_seams_are_told_by_both_ends(ask: Ask) -> None:
    """One line for each strip: where it begins and ends, right or left of the mark and up or down from it."""
    said = screen(ask, "gale-warning")
    strips = len(json.loads(ask("plan", EXAMPLES / "gale-warning.toml", "--json").out)["seams"])
    _, _, lines = said.partition("The seam lines to mark on the base")
    assert 2 * strips == len(re.findall(r", \S+(?: \S+)? (?:up|down)\b", lines))
    assert "Where you should be" not in said


def test_ends_parallel_to_the_neighbor_give_both_long_edges(ask: Ask, tmp_path: Path) -> None:
    """On a hexagon the outer edge is shorter by 2 w / tan 60 than the sewn one: 2.31 in for strips cut 2."""
    text = (EXAMPLES / "snow-gate.toml").read_text(encoding="utf-8")
    path = tmp_path / "parallel.toml"
    path.write_text(text.replace("[building]", '[building]\nstrip_ends = "parallel"'), encoding="utf-8")
    pieces = json.loads(ask("plan", path, "--json").out)["pieces"]
    for piece in (one for one in pieces if one["step"] in range(1, 25)):
        angled = piece["angled"]
        assert pytest.approx(2 * 2 / 3**0.5) == angled["sewn_edge_in"] - angled["outer_edge_in"]
        assert pytest.approx((60, 60)) == (angled["start_degrees"], angled["end_degrees"])
    said = " ".join(ask("plan", path).out.split())
    assert "Ends cut parallel to the neighbor" in said
    assert "60° and 60°" in said


def test_panels_and_other_edges_say_what_to_do_instead_of_binding(ask: Ask) -> None:
    """A base cut into four says which seams its cuts open; a piece turned through has no binding."""
    assert "4 panels, each squared up" in screen(ask, "four-from-one")
    turned = screen(ask, "soft-cover")
    assert " Edge " in turned
    assert " Bind " not in turned


def test_the_document_tells_the_quilt(ask: Ask) -> None:
    """Twenty blocks with their places, and the join in numbers."""
    quilt = json.loads(ask("plan", EXAMPLES / "harbour-sheds.toml", "--json").out)["quilt"]
    assert (52.375, 65.5, 20) == (quilt["wide_in"], quilt["long_in"], len(quilt["blocks"]))
    assert (0.625, 0.125, 0.125) == tuple(quilt["join"][key] for key in ("shows_in", "gap_in", "passes_in"))
