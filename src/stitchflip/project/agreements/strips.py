"""Rounds, steps and what was measured: which of them a way of building has."""

from __future__ import annotations

from collections.abc import Iterator

from stitchflip.project.agreements.tables import Disagreement, Path, Table, table_at, tables_at, way_in
from stitchflip.project.words import Way, bare


def strips(data: Table) -> Iterator[Disagreement]:
    """Rounds where rounds are due, single steps where steps are due."""
    way = way_in(data)
    if way is Way.SIDES:
        if not data.get("steps"):
            found = "nothing, though the strips go on side by side in your order"
            yield Disagreement(("steps",), found, 'steps with side, cut and fabric, or another "way" under [building]')
        if data.get("rounds"):
            yield Disagreement(("rounds",), "rounds, though the strips go on in your order", "steps only")
    elif way is not None:
        if not data.get("rounds"):
            found = "nothing, though there must be strips"
            yield Disagreement(("rounds",), found, 'rounds such as [{ cut = "2 1/2", fabric = "Oat" }]')
        if data.get("steps"):
            found = f'steps, though the way of building is "{way.value}"'
            yield Disagreement(("steps",), found, f'rounds, or way = "{Way.SIDES.value}" under [building]')
    first, second = [*(table_at(data, "building").get("first_pair") or ()), "", ""][:2]
    opposite = _OPPOSITE.get(bare(str(first)))
    if opposite is not None and bare(str(second)) != bare(opposite):
        found = f"{first} and {second}, which are not opposite"
        yield Disagreement(("building", "first_pair"), found, f'["{first}", "{opposite}"]')


_OPPOSITE = {
    "top": "bottom",
    "bottom": "top",
    "left": "right",
    "right": "left",
    "upperright": "lower left",
    "lowerleft": "upper right",
    "upperleft": "lower right",
    "lowerright": "upper left",
}


def rounds(data: Table) -> Iterator[Disagreement]:
    """One cut width or several, one fabric or several in turn."""
    for place, table in tables_at(data, "rounds"):
        at: Path = ("rounds", place)
        if table.get("cut") is None and table.get("cuts") is None:
            yield Disagreement((*at, "cut"), "nothing", 'a cut width such as "2 1/2", or cuts with one for each strip')
        if table.get("cut") is not None and table.get("cuts") is not None:
            yield Disagreement((*at, "cuts"), "cut and cuts in one round", "one of the two")
        if table.get("fabric") is not None and table.get("fabrics") is not None:
            yield Disagreement((*at, "fabrics"), "fabric and fabrics in one round", "one of the two")
        for key in ("cuts", "fabrics"):
            if table.get(key) is not None and not table[key]:
                yield Disagreement((*at, key), f"{key} with nothing in it", "one value for each strip")


def readings(data: Table) -> Iterator[Disagreement]:
    """Each short strip once."""
    seen: dict[object, int] = {}
    for place, table in tables_at(data, "short_strips"):
        step = table.get("step")
        if isinstance(step, int) and step in seen:
            yield Disagreement(("short_strips", place, "step"), f"strip {step} a second time", "each strip once")
        elif isinstance(step, int):
            seen[step] = place
