"""The planned squaring-up numbers on the screen, in the order they are laid on the mat."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cli import plan_words as words
from stitchflip.cli.page import Line
from stitchflip.cli.plan_screen import facts, findings
from stitchflip.planning.as_json import about_squaring_up

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.cli.page import Part
    from stitchflip.planning.model import Plan


def squareup_screen(plan: Plan) -> Iterator[Part]:
    """Distances, points, diagonals, the folded way, and what to look at.

    Args:
        plan: the plan.
    """
    say, square_up = words.speaker(plan), plan.square_up
    yield Line(f"{plan.project.name} · as planned, by tape, once everything is sewn", "bold")
    rows = [
        ("Size", words.size_words(plan)),
        ("Both together", _both_sides(plan)),
        ("Lay the ruler", "\n".join(words.square_up_lines(plan))),
    ]
    points = words.point_lines(plan)
    if points:
        rows.append(("Points", "\n".join(points)))
    if square_up.diagonals:
        rows.append(("Corner to corner", " and ".join(dict.fromkeys(map(say.near, square_up.diagonals)))))
    if square_up.folded:
        rows.append(("On a small mat", square_up.folded))
    rows.append(("Then", _stay_stitch(plan)))
    yield from facts(row for row in rows if row[1])
    yield from findings(about_squaring_up(plan))


def _both_sides(plan: Plan) -> str:
    """Opposite edges together: what the piece must measure between them; "" for shapes without opposite edges."""
    say, sides = words.speaker(plan), plan.square_up.sides
    if len(sides) % 2 or any(side.is_curve for side in sides):
        return ""
    half = len(sides) // 2
    said: dict[str, list[str]] = {}
    for one, other in zip(sides[:half], sides[half:], strict=True):
        said.setdefault(say.near(one.distance + other.distance), []).append(f"{one.name} and {other.name}")
    return "\n".join(f"{distance} between {', '.join(names)}" for distance, names in said.items())


def _stay_stitch(plan: Plan) -> str:
    say = words.speaker(plan)
    inside = say.near(0.125) if plan.project.units.value == "in" else say.near(0.3 / 2.54)
    return (
        f"stitch {inside} inside the trimmed edge before binding. Close the cutter each time you put it down; "
        "cut away from you, fingers behind the ruler's edge, and follow what the maker of your cutter says."
    )
