"""What the parts of a project must agree on: shapes and their sizes, names and what they name.

One part alone cannot tell that a round names a fabric nobody listed. These checks look at a project as
written, before any of its values are judged, so that a file's mistakes can all be told at once; they look at
a model the same way, through its plain values.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from stitchflip.project.kinds import one_of
from stitchflip.project.piece import shape_of_center, shape_of_piece
from stitchflip.project.words import CenterShape, Ends, FabricOrder, Outline, Way, bare, meant
from stitchflip.values import dataclass

MOST_MISTAKES = 60
"""So many are listed; who has more will read again."""

Path = tuple[str | int, ...]
Table = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Disagreement:
    """Two things that cannot both be meant, or one that another one needs."""

    path: Path
    """The value to change, or the one that is missing."""
    found: str
    """What stands there, in words."""
    would_do: str


def disagreements(data: Table) -> Iterator[Disagreement]:
    """What in a project does not agree, in the order of the file format.

    Args:
        data: the project's tables as in its file, any of them missing or of any type.

    Example:
        >>> [one.path for one in disagreements({"rounds": [{"cut": "2", "cuts": ["2", "3"], "fabric": "Oat"}]})]
        [('center',), ('rounds', 0, 'cuts')]
    """
    yield from _squared_up(data)
    yield from _center(data)
    yield from _strips(data)
    yield from _rounds(data)
    yield from _readings(data)
    yield from _fabrics(data)
    yield from _named_fabrics(data)
    yield from _rule(data)


def _table(data: Table, key: str) -> Table:
    value = data.get(key)
    return value if isinstance(value, Mapping) else {}


def _tables(data: Table, key: str) -> list[tuple[int, Table]]:
    value = data.get(key)
    if not isinstance(value, Sequence) or isinstance(value, str):
        return []
    return [(place, one) for place, one in enumerate(value) if isinstance(one, Mapping)]


def _lacks(table: Table, at: Path, keys: tuple[str, ...], why: str) -> Iterator[Disagreement]:
    for key in keys:
        if table.get(key) is None:
            yield Disagreement((*at, key), f"nothing, though {why}", f"a value for {key}")


def _too_many(table: Table, at: Path, keys: tuple[str, ...], why: str, instead: str) -> Iterator[Disagreement]:
    for key in keys:
        if table.get(key) is not None:
            yield Disagreement((*at, key), f"{key}, though {why}", instead)


def _squared_up(data: Table) -> Iterator[Disagreement]:
    table = _table(data, "squared_up")
    if not table:
        return
    at: Path = ("squared_up",)
    if meant(shape_of_piece(dict(table)), Outline) is Outline.POLYGON:
        yield from _lacks(table, at, ("sides", "across_flats"), "the piece is a polygon")
        unused = ("wide", "long", "beyond_points")
        yield from _too_many(table, at, unused, "the piece is a polygon", "sides and across_flats")
        if meant(str(table.get("ends", "square")), Ends) is Ends.POINTED:
            yield Disagreement((*at, "ends"), "pointed ends, though the piece is a polygon", 'ends = "square"')
        return
    yield from _too_many(table, at, ("sides", "across_flats"), "the piece is a rectangle", "wide and long")
    if table.get("beyond_points") is not None:
        sizes = ("wide", "long")
        yield from _too_many(table, at, sizes, "beyond_points gives the size", "either beyond_points or wide and long")
        if not _table(data, "center"):
            yield Disagreement((*at, "beyond_points"), "beyond_points, though there is no center", "wide and long")
    else:
        yield from _lacks(table, at, ("wide", "long"), "the piece is a rectangle")


_CENTER_SIZES = {
    CenterShape.SQUARE: ("cut",),
    CenterShape.RECTANGLE: ("cut_wide", "cut_long"),
    CenterShape.POLYGON: ("sides", "cut"),
    CenterShape.CORNERS: ("corners",),
}


def _center(data: Table) -> Iterator[Disagreement]:
    way = _way(data)
    if data.get("center") is None and way is not Way.ROWS:
        found = f"nothing, though {(way or Way.LOG_CABIN).value} begins with a center"
        yield Disagreement(("center",), found, "a [center] with its fabric and cut size")
    table = _table(data, "center")
    shape = meant(shape_of_center(dict(table)), CenterShape) if table else None
    if shape is None:
        return
    at: Path = ("center",)
    yield from _lacks(table, at, _CENTER_SIZES[shape], f"the center is a {_shape_words(shape)}")
    unused = tuple(sorted({key for keys in _CENTER_SIZES.values() for key in keys} - set(_CENTER_SIZES[shape])))
    instead = " and ".join(_CENTER_SIZES[shape])
    yield from _too_many(table, at, unused, f"the center is a {_shape_words(shape)}", instead)
    if shape is CenterShape.CORNERS:
        yield from _corners(table.get("corners"))


def _shape_words(shape: CenterShape) -> str:
    return "piece given by its corners" if shape is CenterShape.CORNERS else shape.value


def _corners(corners: object) -> Iterator[Disagreement]:
    """Corners that make no outline a strip can be sewn round."""
    if not isinstance(corners, Sequence) or isinstance(corners, str):
        return
    places = [_corner(corner) for corner in corners]
    if any(place is None for place in places):
        return
    points = [place for place in places if place is not None]
    at: Path = ("center", "corners")
    if len(points) < 3:
        yield Disagreement(at, f"{len(points)} corners", "three corners or more")
        return
    total = len(points)
    turns = [_turn(points[place - 1], points[place], points[(place + 1) % total]) for place in range(total)]
    area = sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(points, points[1:] + points[:1], strict=True)) / 2
    if area < 0 and all(turn < 0 for turn in turns):
        yield Disagreement(at, "corners listed clockwise", "the same corners counter-clockwise (in the other order)")
        return
    for place, turn in enumerate(turns):
        if turn * (1 if area >= 0 else -1) <= _STRAIGHT:
            x, y = points[place]
            found = f"corner {place + 1} at ({x:g}, {y:g}), where the outline does not bend outward"
            yield Disagreement((*at, place), found, "an outline that bends outward at each corner, counter-clockwise")
    if all(turn > _STRAIGHT for turn in turns) and _goes_round_more_than_once(points):
        yield Disagreement(at, "an outline that crosses itself", "corners in the order in which they lie")


_STRAIGHT = 1e-6
"""Twice the area of a corner's triangle below which it is no corner."""


def _corner(corner: object) -> tuple[float, float] | None:
    """A corner as numbers; None when it cannot be told here."""
    if not isinstance(corner, Sequence) or isinstance(corner, str) or len(corner) != 2:
        return None
    x, y = corner
    if isinstance(x, int | float) and isinstance(y, int | float) and abs(x) < 1e6 and abs(y) < 1e6:
        return (float(x), float(y))
    return None


def _turn(before: tuple[float, float], here: tuple[float, float], after: tuple[float, float]) -> float:
    """Above zero where the outline turns left."""
    return (here[0] - before[0]) * (after[1] - here[1]) - (here[1] - before[1]) * (after[0] - here[0])


def _goes_round_more_than_once(points: list[tuple[float, float]]) -> bool:
    """True for a star: it turns left at every corner and goes round twice."""
    from math import atan2, pi

    total = len(points)
    ways = [atan2(points[(k + 1) % total][1] - y, points[(k + 1) % total][0] - x) for k, (x, y) in enumerate(points)]
    turned = sum((ways[(k + 1) % total] - ways[k]) % (2 * pi) for k in range(total))
    return turned > 2 * pi + 1


def _way(data: Table) -> Way | None:
    """The way of building; None when it cannot be told."""
    return meant(str(_table(data, "building").get("way", Way.LOG_CABIN.value)), Way)


def _strips(data: Table) -> Iterator[Disagreement]:
    """Rounds where rounds are due, single steps where steps are due."""
    way = _way(data)
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
    first, second = [*(_table(data, "building").get("first_pair") or ()), "", ""][:2]
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


def _rounds(data: Table) -> Iterator[Disagreement]:
    for place, table in _tables(data, "rounds"):
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


def _readings(data: Table) -> Iterator[Disagreement]:
    seen: dict[object, int] = {}
    for place, table in _tables(data, "short_strips"):
        step = table.get("step")
        if isinstance(step, int) and step in seen:
            yield Disagreement(("short_strips", place, "step"), f"strip {step} a second time", "each strip once")
        elif isinstance(step, int):
            seen[step] = place


def name_of(value: object) -> str:
    """A fabric's name as it is compared: one space between its words."""
    return " ".join(value.split()) if isinstance(value, str) else ""


def _fabrics(data: Table) -> Iterator[Disagreement]:
    first: dict[str, int] = {}
    for place, table in _tables(data, "fabrics"):
        name = name_of(table.get("name"))
        if name and name.casefold() in first:
            found = f'"{name}" a second time (as fabric {first[name.casefold()] + 1} already)'
            yield Disagreement(("fabrics", place, "name"), found, "a name of its own for each fabric")
        first.setdefault(name.casefold(), place)
        if table.get("only_on_hand") is True and not table.get("on_hand"):
            found = "nothing, though this fabric is only what is on hand"
            yield Disagreement(("fabrics", place, "on_hand"), found, "the pieces you have, each with wide and long")


def _named_fabrics(data: Table) -> Iterator[Disagreement]:
    """Names that no listed fabric has; silent when no fabrics are listed, which is told elsewhere."""
    known = [name_of(table.get("name")) for _, table in _tables(data, "fabrics")]
    known = [name for name in known if name]
    if not known:
        return
    for path, name in _names(data):
        if name and name not in known:
            yield Disagreement(path, f'"{name}", which is none of the fabrics', one_of(name, known))


def _names(data: Table) -> Iterator[tuple[Path, str]]:
    """Every place that names a fabric, and the name; a backing may have a name of its own."""
    yield ("center", "fabric"), name_of(_table(data, "center").get("fabric"))
    for key in ("rounds", "steps"):
        for place, table in _tables(data, key):
            yield (key, place, "fabric"), name_of(table.get("fabric"))
            yield from _listed_names((key, place, "fabrics"), table.get("fabrics"))
    rule = _table(data, "fabric_rule")
    yield from _listed_names(("fabric_rule", "fabrics"), rule.get("fabrics"))
    yield ("fabric_rule", "accent"), name_of(rule.get("accent"))
    yield ("binding", "fabric"), name_of(_table(data, "binding").get("fabric"))


def _listed_names(at: Path, names: object) -> Iterator[tuple[Path, str]]:
    if isinstance(names, Sequence) and not isinstance(names, str):
        yield from (((*at, place), name_of(name)) for place, name in enumerate(names))


def _rule(data: Table) -> Iterator[Disagreement]:
    rule = _table(data, "fabric_rule")
    at: Path = ("fabric_rule",)
    if rule.get("accent") is not None:
        yield from _lacks(rule, at, ("accent_every",), "there is an accent")
    if rule.get("accent_every") is not None:
        yield from _lacks(rule, at, ("accent",), "accent_every says how often")
    is_halves = meant(str(rule.get("order", FabricOrder.IN_TURN.value)), FabricOrder) is FabricOrder.HALVES
    if is_halves and not rule.get("light_sides"):
        yield Disagreement((*at, "light_sides"), "nothing, though one half is light", 'sides such as ["top", "right"]')
