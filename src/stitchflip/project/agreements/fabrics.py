"""Names of fabrics and what they name."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from stitchflip.project.agreements.tables import Disagreement, Path, Table, lacks, table_at, tables_at, ticks
from stitchflip.project.kinds import one_of
from stitchflip.project.materials import Backing
from stitchflip.project.words import Edge, FabricOrder, meant


def name_of(value: object) -> str:
    """A fabric's name as it is compared: one space between its words."""
    return " ".join(value.split()) if isinstance(value, str) else ""


def on_hand(data: Table, name: str) -> bool:
    """True when there is something on hand of the fabric with this name, or no such fabric, which is told elsewhere."""
    listed = [table for _, table in tables_at(data, "fabrics") if name_of(table.get("name")) == name]
    return not listed or any(table.get("on_hand") for table in listed)


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
        yield from _print_of(table, ("fabrics", place))


_OF_A_REPEAT = ("repeat_across", "half_drop", "motifs", "motif_chosen", "spare_repeats")


def _print_of(table: Table, at: Path) -> Iterator[Disagreement]:
    """How a print repeats: along before all else, across where its columns matter, and motifs inside the repeat."""
    told = [key for key in _OF_A_REPEAT if table.get(key)]
    if told and table.get("repeat") is None:
        would_do = 'how far apart the print repeats along the fabric, such as repeat = "12"'
        yield Disagreement((*at, "repeat"), f"nothing, though {told[0]} is told of the print", would_do)
    motifs = tables_at(table, "motifs")
    needs_across = "half_drop is true" if table.get("half_drop") is True else "there are several motifs in the repeat"
    if (table.get("half_drop") is True or len(motifs) > 1) and table.get("repeat_across") is None:
        would_do = "how far it is from one column of the print to the next"
        yield Disagreement((*at, "repeat_across"), f"nothing, though {needs_across}", would_do)
    for key, repeat in (("across", "repeat_across"), ("along", "repeat")):
        most = ticks(table.get(repeat))
        for number, motif in motifs:
            lies = ticks(motif.get(key))
            if most is not None and lies is not None and lies > most:
                would_do = f"no more than {repeat}: the motif's middle inside one repeat"
                yield Disagreement((*at, "motifs", number, key), f"{key} beyond {repeat}", would_do)


def named_fabrics(data: Table) -> Iterator[Disagreement]:
    """Names that no listed fabric has; silent when no fabrics are listed, which is told elsewhere."""
    known = [name_of(table.get("name")) for _, table in tables_at(data, "fabrics")]
    known = [name for name in known if name]
    if not known:
        return
    backing = name_of(table_at(data, "backing").get("fabric", Backing.model_fields["fabric"].default))
    for path, name in _names(data):
        may_be = {backing} if path[0] == "extras" else set()
        if name and name not in known and name not in may_be:
            yield Disagreement(path, f'"{name}", which is none of the fabrics', one_of(name, known))


_NAMING = {
    "joined": ("fabric", "fabric_behind", "corner_squares", "triangle_fabric"),
    "extras": ("sleeve_fabric", "label_fabric"),
    "binding": ("fabric",),
}
"""Tables that name fabrics, and their keys that do."""


def _names(data: Table) -> Iterator[tuple[Path, str]]:
    """Every place that names a fabric, and the name; a backing may have a name of its own."""
    yield from _sewn_names(data, ())
    for place, block in tables_at(data, "blocks"):
        yield from _sewn_names(block, ("blocks", place))
    for place, table in tables_at(data, "borders"):
        yield from (
            (("borders", place, key), name_of(table.get(key))) for key in ("fabric", "corner_fabric") if table.get(key)
        )
    rule = table_at(data, "fabric_rule")
    yield from _listed_names(("fabric_rule", "fabrics"), rule.get("fabrics"))
    yield ("fabric_rule", "accent"), name_of(rule.get("accent"))
    for part, keys in _NAMING.items():
        yield from (((part, key), name_of(table_at(data, part).get(key))) for key in keys)


def _sewn_names(data: Table, at: Path) -> Iterator[tuple[Path, str]]:
    """The fabrics of a center and its strips: of the piece, or of one kind of block."""
    yield (*at, "center", "fabric"), name_of(table_at(data, "center").get("fabric"))
    for key in ("rounds", "steps", "patches"):
        for place, table in tables_at(data, key):
            yield (*at, key, place, "fabric"), name_of(table.get("fabric"))
            yield from _listed_names((*at, key, place, "fabrics"), table.get("fabrics"))
            yield (*at, key, place, "corner_fabric"), name_of(table.get("corner_fabric"))


def named_in(entry: Table) -> list[str]:
    """The fabrics that the strips of a round are told to have; none when the rule decides."""
    several = [name for _, name in _listed_names((), entry.get("fabrics"))]
    return [name for name in (name_of(entry.get("fabric")), *several) if name]


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


_EDGE_WORDS = {Edge.BINDING: "the edge is bound with strips", Edge.FACING: "the edge is faced with strips"}
"""Edges that have strips of a fabric of their own."""
_EDGES_WITH_WIDTH = (Edge.SELF_BINDING, Edge.FACING)


def binding(data: Table) -> Iterator[Disagreement]:
    """A fabric where the edge has strips of its own, and a width that shows where there is one to choose."""
    table = data.get("binding")
    if not isinstance(table, Mapping):
        return
    edge = meant(str(table.get("edge", Edge.BINDING.value)), Edge)
    if edge in _EDGE_WORDS and not name_of(table.get("fabric")):
        found = f"nothing, though {_EDGE_WORDS[edge]}"
        yield Disagreement(("binding", "fabric"), found, 'the name of a fabric, such as fabric = "Oat"')
    if edge is not None and edge not in _EDGES_WITH_WIDTH and table.get("shows") is not None:
        found = f'shows, though the edge is "{edge.value}"'
        instead = 'no shows (the seam and the cut width decide), or edge = "self-binding" or "facing"'
        yield Disagreement(("binding", "shows"), found, instead)
