"""The cutting list: every sewn strip once for each piece alike, in the order one cuts."""

from collections.abc import Callable

import pytest

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
