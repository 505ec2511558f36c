"""Projects and numbers laid out by hand, so that a test says every value it depends on.

`house` fills in a maker's numbers without reading anything from the code under test; `project` writes a small
project with one fabric, to which a test adds what matters.
"""

from __future__ import annotations

from typing import Any

from stitchflip.lengths import Unit
from stitchflip.project.model import Project
from stitchflip.project.numbers import Numbers

PLAIN: dict[str, float] = {
    "seam": 0.25,
    "usable_width": 40.0,
    "straightening": 1.0,
    "fat_quarter_straightening": 0.5,
    "buy_in_steps_of": 4.5,
    "buy_at_least": 9.0,
    "draw_up_x": 0.0,
    "draw_up_y": 0.0,
    "fold_loss": 0.0,
    "reach": 0.25,
    "round_cuts_to": 0.25,
    "extra_free_end": 0.0,
    "extra_raw_edges": 0.0,
    "round_base_to": 0.5,
    "spare_x": 1.0,
    "spare_y": 1.0,
    "wish_beyond_points": 1.0,
    "points_note": 0.75,
    "points_fix": 0.5,
    "points_stop": 0.25,
    "last_strip_note": 0.75,
    "last_strip_fix": 0.5,
    "binding_cut": 2.5,
    "binding_seam": 0.25,
    "binding_extra": 10.0,
    "binding_extra_per_corner": 0.5,
    "binding_passes": 0.25,
    "loft": 0.125,
    "stitch": 0.1,
    "counts_as_crossed": 0.125,
    "widest_gap": 8.0,
    "longest_cut": 23.5,
    "mat_wide": 23.0,
    "mat_long": 17.0,
    "backing_seam": 0.5,
    "prewash_across": 0.0,
    "prewash_along": 0.0,
    "minutes_per_strip": 3.5,
    "minutes_per_further_20_in": 1.0,
    "thread_per_inch": 3.5,
    "patch_extra": 0.5,
    "shrink_x": 0.0,
    "shrink_y": 0.0,
    "backing_later_spare": 2.0,
    "least_shown": 0.75,
    "binding_join": 0.0,
}


def house(**changes: float) -> Numbers:
    """A maker's numbers in inches: no draw-up, no fold loss, a reach of 1/4 in, unless a test says otherwise."""
    return Numbers(**{**PLAIN, **changes})


def project(**parts: Any) -> Project:
    """A project in inches with one fabric, bound in it; `parts` are the sections as in a project file."""
    raw = {
        "name": "On the table",
        "fabrics": [{"name": "Linen"}],
        "binding": {"fabric": "Linen"},
        **parts,
    }
    return Project.model_validate(raw, context={"unit": Unit.INCH})


def rounds(*cuts: float | tuple[float, ...]) -> list[dict[str, Any]]:
    """Rounds of one fabric: a number is the cut width of a whole round, a tuple gives each strip its own."""
    return [
        {"fabric": "Linen", "cuts": [str(one) for one in cut]}
        if isinstance(cut, tuple)
        else {"fabric": "Linen", "cut": str(cut)}
        for cut in cuts
    ]


def square(cut: float, turned: float = 0.0, **more: Any) -> dict[str, Any]:
    """A square center by its cut side."""
    return {"fabric": "Linen", "cut": str(cut), "turned": turned, **more}


def trim(wide: float, long: float, **more: Any) -> dict[str, Any]:
    """A squared-up size, wide x long."""
    return {"wide": str(wide), "long": str(long), **more}
