"""The cutting list: every sewn strip once for each piece alike, in the order one cuts."""

from collections.abc import Callable
from typing import Any

import pytest

from stitchflip.cutting.verify import verify_fabric_plan
from stitchflip.planning import plan
from stitchflip.project.model import Project

Draft = Callable[..., Project]


def fabrics(*, one_way: bool) -> list[dict[str, object]]:
    """The porch square's fabrics, its center's print with or without an upright."""
    return [{"name": "Plain", "one_way": one_way}, {"name": "Stripe"}, {"name": "Dot"}]


def test_a_one_way_center_on_point_takes_its_diagonal_of_fabric(draft: Draft) -> None:
    """A 10 in window turned 45 degrees takes 10 sqrt 2 = 14.14, up to 14 1/4, of upright fabric; turned freely 10."""
    upright = plan(draft(fabrics=fabrics(one_way=True)), with_cures=False)
    free = plan(draft(fabrics=fabrics(one_way=False)), with_cures=False)

    assert pytest.approx(14.25 + 1) == next(f.need_in for f in upright.fabrics if f.fabric == "Plain")
    assert pytest.approx(11.0) == next(f.need_in for f in free.fabrics if f.fabric == "Plain")


def test_every_strip_is_on_the_list_once_for_each_alike(draft: Draft) -> None:
    """Three alike of eight strips: each step is listed once, to be cut three times; the center too."""
    made = plan(draft(how_many=3), with_cures=False)
    counts = {piece.name: piece.count for piece in made.pieces if piece.kind != "binding"}

    assert {"Center": 3} | {str(step): 3 for step in range(1, 9)} == counts


def test_pieces_of_a_fabric_come_largest_first(draft: Draft) -> None:
    """Rectangles before strips, wide strips before narrow ones, the binding after strips of its width or wider."""
    made = plan(draft(), with_cures=False)

    for pieces in made.pieces_by_fabric.values():
        order = [(piece.kind != "rectangle", -piece.wide) for piece in pieces]
        assert sorted(order) == order


def test_letters_follow_the_hand(draft: Draft) -> None:
    """Fabrics are lettered as they are picked up: first round A, second B, the center's own last."""
    made = plan(draft(), with_cures=False)

    assert ["A", "B", "C"] == [made.letter_of(name) for name in ("Stripe", "Dot", "Plain")]
    assert "?" == made.letter_of("Backing")


def test_a_repeat_buys_one_motif_wherever_the_print_begins(draft: Draft) -> None:
    """A 10 in center from a print that repeats every 6 in: a length of 10 + 6 surely holds one whole motif.

    Motifs lengthwise from L of fabric, repeat r, cut c: surely floor((L - c) / r) when the start is unknown (derived).
    """
    fabrics = [{"name": "Plain", "repeat": "6"}, {"name": "Stripe"}, {"name": "Dot"}]
    made = plan(draft(fabrics=fabrics), with_cures=False)

    assert pytest.approx(10 + 6 + 1) == next(f.need_in for f in made.fabrics if f.fabric == "Plain")
    assert "fabric.motif" in {finding.code for finding in made.findings}


def test_the_last_strip_of_a_side_is_listed_with_what_shows_after_squaring_up(draft: Draft) -> None:
    """Straight 4 in center, one round cut 2 1/2: its seam at 1 3/4, the binding's seam at 7 / 2 - 1/4: 1 1/2 shows."""
    project = draft(
        squared_up={"wide": "7", "long": "7"},
        center={"cut": "4", "fabric": "Plain"},
        building={"way": "log cabin"},
        rounds=[{"cut": "2 1/2", "fabric": "Dot"}],
    )
    made = plan(project, with_cures=False)

    assert {"1½ in"} == {" ".join(piece.finished.split()) for piece in made.pieces if piece.kind == "strip"}


def test_a_published_rule_for_joins_can_be_set(draft: Draft) -> None:
    """Three strips of 40 joined at 2 1/2 make 115; by the rule of two widths a join (5 in) they make 110.

    The rule of two widths: Quilt Math (border shortage, April 2022),
    https://jmncreativeendeavours.ca/2022/04/18/
    """
    long = {"squared_up": {"wide": "13", "long": "36"}, "base": {}}
    plain = plan(draft(**long), with_cures=False)
    double = plan(draft(**long, my_numbers={"draw_up": 0.0, "fold_loss": "0", "binding_join": "5"}), with_cures=False)

    assert (115.0, 110.0) == (plain.binding.made, double.binding.made)


@pytest.mark.parametrize(("along", "need"), [("none", 4 * 3 + 1), ("the sides", 27.5 + 2 * 3 + 1), ("all", 32.5 + 1)])
def test_borders_are_cut_across_or_along_the_fabric(draft: Draft, along: str, need: float) -> None:
    """2 x 2 blocks of 14 are 27 1/2; a border cut 3 makes 32 1/2: two sides 27 1/2, top and bottom 32 1/2.

    Across, four strips of 3; the sides along, one row of 27 1/2 and two strips; all along, one row of 32 1/2.
    """
    parts: dict[str, Any] = {
        "fabrics": [{"name": name} for name in ("Plain", "Stripe", "Dot", "Edge")],
        "joined": {"across": 2, "down": 2, "join": "plain seam", "fabric": "Dot"},
        "borders": [{"cut": "3", "fabric": "Edge", "cut_along": along}],
    }
    made = plan(draft(**parts), with_cures=False)
    (edge,) = (fabric for fabric in made.fabrics if fabric.fabric == "Edge")

    assert need == edge.need_in
    assert () == verify_fabric_plan(
        edge, made.project.fabrics[3], made.pieces_by_fabric["Edge"], made.numbers, made.project.working
    )
