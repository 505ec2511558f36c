"""Projects the planning tests share: small, and plain enough to compute by hand."""

from collections.abc import Callable
from typing import Any

import pytest

from stitchflip.lengths import Unit
from stitchflip.project.model import Project

Draft = Callable[..., Project]

ON_POINT: dict[str, Any] = {
    "name": "Porch square",
    "squared_up": {"wide": "14", "long": "14"},
    "base": {"wide": "15", "long": "15"},
    "center": {"cut": "10", "turned": 45, "fabric": "Plain"},
    "building": {"way": "pairs round the point"},
    "rounds": [{"cut": "2 1/2", "fabric": "Stripe"}, {"cut": "3", "fabric": "Dot"}],
    "fabrics": [
        {"name": "Plain", "color": "#f2e6c8"},
        {"name": "Stripe", "color": "#7a8f6a"},
        {"name": "Dot", "color": "#33415c"},
    ],
    "binding": {"fabric": "Dot"},
    "my_numbers": {"draw_up": 0.0, "fold_loss": "0"},
}


@pytest.fixture
def draft() -> Draft:
    """A maker of projects: the porch square with whole tables replaced or added."""

    def make(**tables: Any) -> Project:
        return Project.model_validate({**ON_POINT, **tables}, context={"unit": tables.get("units", Unit.INCH)})

    return make
