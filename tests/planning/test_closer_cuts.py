"""What cutting closer does for whole pieces: it saves what it says, and every closer plan can be cut."""

from __future__ import annotations

from pathlib import Path

import pytest

from stitchflip.cutting.verify import verify_fabric_plan
from stitchflip.planning import plan
from stitchflip.planning.closer_cuts import closer_cuts, with_closer_cuts
from stitchflip.planning.model import Plan
from stitchflip.project import read_project

EXAMPLES = Path("examples")


def made(name: str) -> Plan:
    """The plan of an example."""
    return plan(read_project((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8")), with_cures=False)


def yards_by_area(of: Plan, fabric: str) -> float:
    """Eighths of a yard that the area of the cut pieces and 1 in for straightening fill, at least 1/4 yd."""
    inches = 1.0 + sum(piece.wide * (piece.long or 40) * piece.count for piece in of.pieces_by_fabric[fabric]) / next(
        one.usable_width for one in of.fabrics if one.fabric == fabric
    )
    return max(2, -(-inches // 4.5)) / 8


@pytest.mark.parametrize(
    ("name", "fabric", "everyday", "closer"),
    [
        ("harbour-sheds", "Deep Water", 12, 11),
        ("harbour-sheds", "Harbour", 7, 6),
        ("harbour-sheds", "Keel", 4, 3),
        ("kite-weather", "Tarn", 8, 7),
        ("soft-cover", "Fog", 6, 5),
    ],
)
def test_cutting_closer_buys_what_the_area_alone_asks_for(name: str, fabric: str, everyday: int, closer: int) -> None:
    """Eighths of a yard: no plan can buy fewer than the area of its pieces fills, and the closer plan buys those."""
    of = made(name)
    (asked,) = (one for one in of.fabrics if one.fabric == fabric)
    (found,) = closer_cuts(of, [asked])

    assert closer / 8 == yards_by_area(of, fabric)
    assert found.plan is not None
    assert (everyday * 4.5, closer * 4.5) == (asked.buy_in, found.plan.buy_in)
    assert "Proved" in found.says
    (own,) = (one for one in of.project.fabrics if one.name == fabric)
    assert () == verify_fabric_plan(found.plan, own, of.pieces_by_fabric[fabric], of.numbers, of.project.working)
    assert [found.plan] == [one for one in with_closer_cuts(of, [found]).fabrics if one.fabric == fabric]


def test_a_fabric_that_is_trimmed_while_sewing_or_follows_a_motif_is_left_alone() -> None:
    """Lengths that are found while sewing and windows of a repeat are no task for closer cutting."""
    walk = made("lantern-walk")
    (motif,) = closer_cuts(walk, [one for one in walk.fabrics if one.fabric == "Paper Lantern"])
    rye = made("rye-plait")
    sewn = closer_cuts(rye, [one for one in rye.fabrics if one.fabric == "Stubble"])

    assert ("", None) == (motif.says, motif.plan)
    assert ("", None) == (sewn[0].says, sewn[0].plan)


def test_a_cancelled_search_keeps_the_everyday_plan() -> None:
    """Nothing is claimed that was not looked at."""
    of = made("harbour-sheds")
    cuts = closer_cuts(of, of.fabrics, seconds=5.0, cancelled=lambda: True)

    for one, everyday in zip(cuts, of.fabrics, strict=True):
        assert one.plan is None or one.plan.buy_in < everyday.buy_in
    assert len(of.fabrics) == len(with_closer_cuts(of, cuts).fabrics)
