"""Runners of any length, invented for measuring."""

from __future__ import annotations

from typing import Any

from stitchflip.lengths import Unit
from stitchflip.project.model import Project

_WIDTHS = ("1 1/2", "2 1/2", "2", "1 3/4", "2 1/4")
_PLAIN: dict[str, Any] = {
    "fabrics": [{"name": "Light", "color": "#e9dcc0"}, {"name": "Dark", "color": "#2e4a62"}],
    "binding": {"fabric": "Dark"},
    "my_numbers": {"draw_up": 0.0, "fold_loss": "0"},
}


_FINE = {"draw_up": 0.0, "fold_loss": "0", "seam": "1/8"}
"""So that a thousand strips stay in a piece one could lay on a table: cut 5/8, each shows 3/8."""


def _rounds(count: int, *, fine: bool) -> list[dict[str, str]]:
    widths = ("5/8",) if fine else _WIDTHS
    return [{"cut": widths[place % len(widths)], "fabric": ("Light", "Dark")[place % 2]} for place in range(count)]


def rows_runner(pairs: int, *, fine: bool = False) -> Project:
    """A runner of rows from the middle: a first strip and so many on both its sides."""
    rounds = _rounds(pairs + 1, fine=fine)
    shows = 0.375 if fine else 1.5
    return _project(
        name="Rows",
        my_numbers=_FINE if fine else _PLAIN["my_numbers"],
        squared_up={"wide": "12", "long": str(int(shows * (2 * pairs + 1)) - 1), "length_runs": "across"},
        building={"way": "rows of strips", "rows_from": "the middle"},
        rounds=rounds,
    )


def pointed_runner(strips: int, *, fine: bool = False) -> Project:
    """A runner on point with pointed ends: pairs round the point, four strips a round."""
    rounds = _rounds(strips // 4, fine=fine)
    long = 2 * 2**0.5 * (3.8 + (0.375 if fine else 1.5) * len(rounds)) - 4  # the tips pass it by a good inch
    return _project(
        name="Points",
        my_numbers=_FINE if fine else _PLAIN["my_numbers"],
        squared_up={"wide": "13", "long": str(int(long)), "ends": "pointed", "length_runs": "across"},
        center={"cut": "8 1/4", "turned": 45, "fabric": "Light"},
        building={"way": "pairs round the point"},
        rounds=rounds,
    )


def _project(**tables: object) -> Project:
    return Project.model_validate({**_PLAIN, **tables}, context={"unit": Unit.INCH})
