"""Names of fabrics and what they name."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from stitchflip.project.agreements.tables import Disagreement, Path, Table, lacks, table_at, tables_at
from stitchflip.project.kinds import one_of
from stitchflip.project.words import FabricOrder, meant


def name_of(value: object) -> str:
    """A fabric's name as it is compared: one space between its words."""
    return " ".join(value.split()) if isinstance(value, str) else ""


def fabrics(data: Table) -> Iterator[Disagreement]:
    """Each fabric once, and something on hand of one that cannot be bought."""
    first: dict[str, int] = {}
    for place, table in tables_at(data, "fabrics"):
        name = name_of(table.get("name"))
        if name and name.casefold() in first:
            found = f'"{name}" a second time (as fabric {first[name.casefold()] + 1} already)'
            yield Disagreement(("fabrics", place, "name"), found, "a name of its own for each fabric")
        first.setdefault(name.casefold(), place)
        if table.get("only_on_hand") is True and not table.get("on_hand"):
            found = "nothing, though this fabric is only what is on hand"
            yield Disagreement(("fabrics", place, "on_hand"), found, "the pieces you have, each with wide and long")


def named_fabrics(data: Table) -> Iterator[Disagreement]:
    """Names that no listed fabric has; silent when no fabrics are listed, which is told elsewhere."""
    known = [name_of(table.get("name")) for _, table in tables_at(data, "fabrics")]
    known = [name for name in known if name]
    if not known:
        return
    for path, name in _names(data):
        if name and name not in known:
            yield Disagreement(path, f'"{name}", which is none of the fabrics', one_of(name, known))


def _names(data: Table) -> Iterator[tuple[Path, str]]:
    """Every place that names a fabric, and the name; a backing may have a name of its own."""
    yield ("center", "fabric"), name_of(table_at(data, "center").get("fabric"))
    for key in ("rounds", "steps"):
        for place, table in tables_at(data, key):
            yield (key, place, "fabric"), name_of(table.get("fabric"))
            yield from _listed_names((key, place, "fabrics"), table.get("fabrics"))
    rule = table_at(data, "fabric_rule")
    yield from _listed_names(("fabric_rule", "fabrics"), rule.get("fabrics"))
    yield ("fabric_rule", "accent"), name_of(rule.get("accent"))
    yield ("binding", "fabric"), name_of(table_at(data, "binding").get("fabric"))


def _listed_names(at: Path, names: object) -> Iterator[tuple[Path, str]]:
    if isinstance(names, Sequence) and not isinstance(names, str):
        yield from (((*at, place), name_of(name)) for place, name in enumerate(names))


def rule(data: Table) -> Iterator[Disagreement]:
    """An accent with its number, halves with their sides."""
    rule = table_at(data, "fabric_rule")
    at: Path = ("fabric_rule",)
    if rule.get("accent") is not None:
        yield from lacks(rule, at, ("accent_every",), "there is an accent")
    if rule.get("accent_every") is not None:
        yield from lacks(rule, at, ("accent",), "accent_every says how often")
    is_halves = meant(str(rule.get("order", FabricOrder.IN_TURN.value)), FabricOrder) is FabricOrder.HALVES
    if is_halves and not rule.get("light_sides"):
        yield Disagreement((*at, "light_sides"), "nothing, though one half is light", 'sides such as ["top", "right"]')
