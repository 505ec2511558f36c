"""Cutting diagrams on the page: as large as there is room for."""

from __future__ import annotations

from pathlib import Path

import pytest

from stitchflip.pattern.cutting_order import diagram
from stitchflip.pattern.telling import Teller
from stitchflip.planning import plan as plan_project
from stitchflip.project import read_project_bytes

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.mark.parametrize(
    ("example", "fabric", "across"),
    [("plum-skirt", "Damson", 7.0), ("lantern-walk", "Brass", 7.0), ("tin-roof", "Fog", 3.55)],
)
def test_a_width_of_fabric_is_drawn_across_the_page_and_a_quarter_in_half_of_it(
    example: str, fabric: str, across: float
) -> None:
    """45 in of length are drawn as wide as 9 in are, folded and opened; a quarter of 20½ in needs half of that."""
    path = EXAMPLES / f"{example}.toml"
    plan = plan_project(read_project_bytes(path.read_bytes(), path.name), with_cures=False)
    box = diagram(Teller(plan), next(one for one in plan.fabrics if one.fabric == fabric))

    assert box is not None
    assert across == box.width_in
