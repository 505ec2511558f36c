"""Chevrons: pairs of strips that make a stepped V, point up."""

from __future__ import annotations

from math import sqrt
from typing import Any

import pytest
from shapely.geometry import Polygon as Area

from stitchflip.piecing import build_project
from stitchflip.piecing.model import Build
from tests.twins.compare import joined, same_area
from tests.twins.painter import together
from tests.twins.table import house, project, trim

ROOT = sqrt(2)
FABRICS = [{"name": name} for name in ("Linen", "Fjord", "Hull", "Wake")]


def arrows(*rounds: dict[str, Any], **parts: Any) -> Build:
    """Arrows on a half square cut 6, in a trim of 12 x 30."""
    building = {"way": "chevron", **parts.pop("building", {})}
    tables = {
        "squared_up": trim(12, 30),
        "fabrics": FABRICS,
        "center": {"fabric": "Linen", "shape": "half square", "cut": "6"},
        "building": building,
        "rounds": list(rounds),
        **parts,
    }
    return build_project(project(**tables), house())


def of(fabric: str, cut: str = "2") -> dict[str, str]:
    """A round of one fabric."""
    return {"fabric": fabric, "cut": cut}


def legs(build: Build) -> list[str]:
    """Which leg each strip is: R or L."""
    return [{"upper right": "R", "upper left": "L"}[strip.side] for strip in build.strips]


@pytest.mark.parametrize(
    ("building", "expected"),
    [
        ({}, "RLRLRL"),
        ({"pair_first": "lower"}, "LRLRLR"),
        ({"pair_first": "alternate"}, "RLLRRL"),
        ({"pair_first": "alternate", "start": "upper left"}, "LRRLLR"),
        ({"start": "upper left"}, "LRLRLR"),
    ],
)
def test_which_leg_is_sewn_first(building: dict[str, str], expected: str) -> None:
    """The right one unless said; alternating begins where the maker starts; two legs make a round."""
    build = arrows(*[of("Fjord")] * 3, building=building)

    assert list(expected) == legs(build)
    assert [1, 1, 2, 2, 3, 3] == [strip.round for strip in build.strips]


def test_a_pair_makes_a_v_with_its_point_up_stepped_by_one_strip() -> None:
    """Both legs reach as far out; the first ends under the second, which runs on to the first one's raw edge.

    Strips cut 2 show 1 1/2. The seam of the second passes the center line by the 1 1/2 of the first and the seam
    allowance, at 45 degrees (1 1/2 + 1/4) / sqrt 2 to the right of it; the first ends at the raw edge of the other
    side, 1/4 past its own seam line: 1/4 / sqrt 2 to the left.
    """
    right, left = arrows(of("Fjord")).strips
    lowest = {name: min(strip.opened, key=lambda place: place[1])[1] for name, strip in (("R", right), ("L", left))}

    assert right.raw_edge_at == pytest.approx(left.raw_edge_at)
    assert lowest["R"] == pytest.approx(lowest["L"])
    on_seam = [x for x, y in right.opened if abs((x + y) / ROOT - right.seam_at) < 1e-6]
    assert pytest.approx(-0.25 / ROOT) == min(on_seam)
    on_seam = [x for x, y in left.opened if abs((y - x) / ROOT - left.seam_at) < 1e-6]
    assert pytest.approx(1.75 / ROOT) == max(on_seam)


def test_alternating_turns_the_step_over() -> None:
    """The second V of an alternating chevron is the mirror image of the second V of one that begins at the left."""
    one = arrows(of("Fjord"), of("Hull"), building={"pair_first": "alternate", "start": "upper right"})
    other = arrows(of("Fjord"), of("Hull"), building={"pair_first": "alternate", "start": "upper left"})

    for piece, image in zip(one.pieces, other.pieces, strict=True):
        flipped = together([Area([(-x, y) for x, y in patch]) for patch in image.visible])
        assert same_area(joined(piece.visible), flipped)


def test_until_covered_repeats_the_arrows_and_leaves_nothing_bare() -> None:
    """Three widths in turn, to the upper corners."""
    rounds = (of("Fjord", "2 1/2"), of("Wake", "1 1/4"), of("Hull"))
    build = arrows(*rounds, building={"until_covered": True, "pair_first": "alternate"})

    assert () == build.bare
    assert ["Fjord", "Fjord", "Wake", "Wake", "Hull", "Hull"] * 2 == [strip.fabric for strip in build.strips[:12]]
    assert same_area(together([joined(piece.visible) for piece in build.pieces]), Area(build.trim))


def test_listed_fabrics_go_to_the_legs_in_the_order_sewn() -> None:
    """Two fabrics in one round: the leg sewn first takes the first."""
    build = arrows({"cut": "2", "fabrics": ["Fjord", "Hull"]}, building={"pair_first": "lower"})

    assert [("upper left", "Fjord"), ("upper right", "Hull")] == [(one.side, one.fabric) for one in build.strips]


@pytest.mark.parametrize("order", ["in turn", "shuffled", "light to dark"])
def test_where_the_rule_decides_a_pair_is_of_one_fabric(order: str) -> None:
    """Six arrows without a fabric: six choices, not twelve; "in turn" takes them as listed."""
    rule = {"order": order, "fabrics": ["Fjord", "Hull", "Wake"]}
    build = arrows(*[{"cut": "2"}] * 6, fabric_rule=rule)
    pairs = [(build.strips[k].fabric, build.strips[k + 1].fabric) for k in range(0, 12, 2)]

    assert all(first == second for first, second in pairs)
    if order == "in turn":
        assert ["Fjord", "Hull", "Wake"] * 2 == [first for first, _ in pairs]


def test_an_accent_fills_both_legs() -> None:
    """Every second arrow is the accent, whole."""
    rule = {"fabrics": ["Fjord"], "accent": "Wake", "accent_every": 2}
    build = arrows(*[{"cut": "2"}] * 4, fabric_rule=rule)

    assert ["Fjord"] * 2 + ["Wake"] * 2 + ["Fjord"] * 2 + ["Wake"] * 2 == [strip.fabric for strip in build.strips]


def test_a_leg_left_over_at_the_end_still_has_a_fabric() -> None:
    """Off the center line one side is covered first; the legs that are sewn alone choose for themselves."""
    build = arrows(
        {"cut": "2"},
        center={"fabric": "Linen", "shape": "half square", "cut": "6", "off_center": [2, 0]},
        building={"until_covered": True},
        fabric_rule={"fabrics": ["Fjord", "Hull"]},
    )

    counts = {number: sum(one.round == number for one in build.strips) for number in range(1, 40)}
    assert 1 in counts.values()
    assert all(strip.fabric in {"Fjord", "Hull"} for strip in build.strips)
