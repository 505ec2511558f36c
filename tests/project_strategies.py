"""Generators of legal project files, as tables and as projects; whether a piece can be sewn is left open.

They reach every key of the file format, in both units, over all ways of building.
"""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from stitchflip.project import Project, project_from
from stitchflip.project.model import MyNumbers
from tests.quilt_strategies import cut_apart, extras, made_for, quilt
from tests.quilt_strategies import some as _some

PALETTE = ("#f4f7fa", "#dfe6ea", "#c9962b", "#b4482a", "#2b3557", "navy")
FABRIC_NAMES = ("Oat", "Brass", "Blue Hour", 'Ida\'s "good" red', "Maïs, klein", "Dove # 2")
WAYS = (
    "log cabin",
    "two-sided log cabin",
    "courthouse steps",
    "pairs round the point",
    "round after round",
    "rows of strips",
    "string block",
    "braid",
    "chevron",
    "rounds with corner squares",
    "stitch-and-flip corners",
    "wonky strips",
    "numbered foundation",
    "sides in my order",
)
UPRIGHT_ONLY = ("braid", "chevron")
MAY_LACK_A_CENTER = ("rows of strips", "string block", "numbered foundation")
SIDES = st.sampled_from(["top", "right", "upper left", "side 5"])


def texts() -> st.SearchStrategy[str]:
    """A few words on one line, some of them hard on a file format."""
    return st.sampled_from(["", "For Ida", 'the "good" side', "C:\\quilts", "[not] a = table", "½ × 3″", "# no note"])


def sizes(unit: str) -> st.SearchStrategy[str]:
    """Sizes above zero as a maker types them: bare in the unit given, and in both units with their name."""
    bare = st.integers(1, 160).map(lambda count: f"{count / 8:g}")
    inches = st.integers(1, 20 * 64).map(lambda count: f"{count}/64 in")
    millimeters = st.integers(1, 6000).map(lambda count: f"{count / 10:g} cm" if unit == "cm" else f"{count} mm")
    return st.one_of(bare, inches, millimeters)


def _rounds(
    draw: st.DrawFn, way: str, size: st.SearchStrategy[str], names: st.SearchStrategy[str]
) -> list[dict[str, Any]]:
    made = []
    for _ in range(draw(st.integers(1, 3))):
        table = _some(draw, cut_long=size)
        table |= {"corner_fabric": draw(names)} if way == "rounds with corner squares" else {}
        several = draw(st.booleans())
        table |= {"cuts": draw(st.lists(size, min_size=1, max_size=4))} if several else {"cut": draw(size)}
        table |= draw(st.sampled_from([{}, {"fabric": draw(names)}, {"fabrics": [draw(names), draw(names)]}]))
        made.append(table)
    return made


def _center(draw: st.DrawFn, size: st.SearchStrategy[str]) -> dict[str, Any]:
    place = st.one_of(st.integers(-16, 16).map(lambda count: count / 8), st.sampled_from(["1 1/2", "-1 1/2", "2 cm"]))
    center = _some(
        draw,
        turned=st.sampled_from(["straight", "on point", 30, 22.5, "12 degrees"]),
        off_center=st.tuples(place, place).map(list),
    )
    kinds = ["square", "half square", "rectangle", "polygon", "corners"]
    kind = draw(st.sampled_from(kinds))
    if kind in kinds[2:]:
        center |= _some(draw, sewn_already=st.booleans())
    match kind:
        case "square":
            return center | {"cut": draw(size)}
        case "half square":
            return center | {"shape": "half square", "cut": draw(size)}
        case "rectangle":
            return center | {"cut_wide": draw(size), "cut_long": draw(size)}
        case "polygon":
            return center | {"sides": draw(st.integers(3, 12)), "cut": draw(size)}
        case _:
            return center | {"corners": [[-3, -2], [3, "-2"], [2.5, 3], [-2, "2 1/2"]]}


def _patches(draw: st.DrawFn, name: st.SearchStrategy[str]) -> list[dict[str, Any]]:
    first = {"fabric": draw(name), **_some(draw, at=st.just([1, "-1/2"]))}
    places = st.sampled_from([[-3, "1 1/2"], [-2.5, 0], ["-3 cm", -2]])
    lines = draw(st.lists(places, max_size=3))
    return [first, *({"fabric": draw(name), "line": [start, [3, 0.5]]} for start in lines)]


SQUARE_ENDED = ("rectangle", "rounded")


def _squared_up(
    draw: st.DrawFn, way: str, size: st.SearchStrategy[str], *, has_center: bool
) -> tuple[str, dict[str, Any]]:
    kinds = [*SQUARE_ENDED, "polygon", "pointed", "round", "oval", *(["beyond"] if has_center else [])]
    kind = draw(st.sampled_from(kinds))
    table = _some(
        draw,
        length_runs=st.sampled_from(["up"] if way in UPRIGHT_ONLY else ["up", "across"]),
        wish_beyond_points=size,
        turned=st.sampled_from([0, 30]),
        after_washing=st.booleans(),
    )
    return kind, table | _size_of(draw, kind, size)


def _size_of(draw: st.DrawFn, kind: str, size: st.SearchStrategy[str]) -> dict[str, Any]:
    """The sizes of one kind of squared-up piece."""
    table: dict[str, Any] = {}
    match kind:
        case "polygon":
            return {"sides": draw(st.integers(3, 12)), "across_flats": draw(size)}
        case "round":
            return {"across": draw(size)}
        case "oval":
            return {"shape": "oval", "wide": draw(size), "long": draw(size)}
        case "rounded":
            return {"wide": "12 in", "long": "20 cm", "corner_radius": "2 in"}
        case "beyond":
            return table | {"beyond_points": draw(size)}
        case kind:
            return table | {"wide": draw(size), "long": draw(size)} | ({"ends": "pointed"} if kind == "pointed" else {})


def _pieces(size: st.SearchStrategy[str]) -> st.SearchStrategy[list[dict[str, Any]]]:
    """Pieces on hand: measured, or of a usual size."""
    return st.lists(
        st.one_of(
            st.fixed_dictionaries({"wide": size, "long": size, "count": st.integers(1, 9), "name": texts()}),
            st.fixed_dictionaries({"name": st.sampled_from(["fat quarter", "precut strips"])}),
        ),
        min_size=1,
        max_size=2,
    )


def _prints(size: st.SearchStrategy[str]) -> st.SearchStrategy[dict[str, Any]]:
    """What else is told of a print that repeats."""
    one = st.fixed_dictionaries({"across": st.just("0"), "along": st.just("0")}, optional={"wide": size, "long": size})
    shop = {"motif_chosen": st.booleans(), "spare_repeats": st.integers(0, 3)}
    return st.one_of(
        st.fixed_dictionaries({}, optional={**shop, "motifs": st.lists(one, min_size=1, max_size=1)}),
        st.fixed_dictionaries(
            {"repeat_across": size, "half_drop": st.booleans()},
            optional={**shop, "motifs": st.lists(one, min_size=1, max_size=3)},
        ),
    )


def _fabrics(draw: st.DrawFn, names: list[str], size: st.SearchStrategy[str]) -> list[dict[str, Any]]:
    made = []
    for name in names:
        table = _some(
            draw,
            color=st.sampled_from(PALETTE),
            role=texts(),
            usable_width=size,
            one_way=st.booleans(),
            washed=st.sampled_from(["unwashed", "washed", "starched"]),
            precut=st.booleans(),
            dark_dye=st.booleans(),
            dye_tested=st.booleans(),
            price=st.sampled_from([0, 12.5, 1e-3]),
            repeat=size,
            on_hand=_pieces(size),
        )
        if "on_hand" in table:
            table["only_on_hand"] = draw(st.booleans())
        if "repeat" in table:
            table |= draw(_prints(size))
        made.append({"name": name, **table})
    return made


_SHARES = (
    "draw_up", "draw_up_across", "draw_up_along", "prewash_across", "prewash_along", "shrink_across", "shrink_along",
)  # fmt: skip
_OTHER_NUMBERS = {
    **dict.fromkeys(_SHARES, st.sampled_from([0, 0.015, "1.5 %", "3%", 0.2])),
    "reach": st.sampled_from(["1/4 in", "1 cm", "3/4 in"]),
    "minutes_per_strip": st.sampled_from([3, 4.25]),
    "thread_per_inch": st.sampled_from([3.5, 5]),
}


def _my_numbers(draw: st.DrawFn, size: st.SearchStrategy[str]) -> dict[str, Any]:
    keys = draw(st.lists(st.sampled_from(sorted(MyNumbers.model_fields)), max_size=6, unique=True))
    return {key: draw(_OTHER_NUMBERS.get(key, size)) for key in keys}


def _building(draw: st.DrawFn, way: str, size: st.SearchStrategy[str]) -> dict[str, Any]:
    return {
        "way": way,
        **_some(
            draw,
            start=SIDES,
            turning=st.sampled_from(["clockwise", "counter-clockwise"]),
            first_pair=st.sampled_from([["left", "right"], ["upper left", "lower right"]]),
            strips_per_visit=st.integers(1, 3),
            pair_first=st.sampled_from(["upper", "lower", "alternate"]),
            one_ended=st.booleans(),
            rows_run=st.sampled_from(["across", "along", "slanted"]),
            rows_from=st.sampled_from(["the middle", "one end"]),
            slant=st.sampled_from([30, 45.0, 135]),
            until_covered=st.booleans(),
            strip_ends=st.sampled_from(["straight", "parallel to the neighbor"]),
            corners=st.sampled_from([[], ["upper left"], ["lower right", "top left"]]),
            seed=st.integers(0, 99),
            smallest_angle=st.sampled_from([0, 4.5, 14]),
            largest_angle=st.sampled_from([14, 30.5, 45]),
            lines_seen=st.sampled_from(["from the front", "from the back"]),
            no_sliver_under=size,
            widths=st.just("as listed"),
        ),
    }


def _what_happened(draw: st.DrawFn, size: st.SearchStrategy[str], name: st.SearchStrategy[str]) -> dict[str, Any]:
    """Readings, short strips and the eye's rules, any of them."""
    reading = st.fixed_dictionaries(
        {"after": st.integers(0, 4), "side": SIDES, "edge": size},
        optional={"along": st.sampled_from([-2, 0.5]), "by": st.sampled_from(["tape", "marks"])},
    )
    short = st.fixed_dictionaries({"step": st.integers(1, 9), "long": size}, optional={"from_start": size})
    rule = st.fixed_dictionaries(
        {
            "order": st.sampled_from(["shuffled", "light to dark from the middle", "light and dark halves"]),
            "seed": st.integers(0, 99),
            "light_sides": st.just(["top", "side 3"]),
        },
        optional={"none_next_to_itself": st.booleans(), "fabrics": st.lists(name, max_size=2)},
    )
    accented = st.builds(lambda table, accent: {**table, "accent": accent, "accent_every": 3}, rule, name)
    return _some(
        draw,
        readings=st.lists(reading, max_size=2),
        short_strips=st.lists(short, max_size=1),
        fabric_rule=st.one_of(rule, accented),
    )


def _binding(draw: st.DrawFn, size: st.SearchStrategy[str], fabric: str) -> dict[str, Any]:
    """Each way to finish an edge; only strips need a fabric, and only two ways have a width to choose."""
    edge = draw(st.sampled_from(["binding", "self-binding", "facing", "turned through"]))
    table = _some(
        draw,
        cut=size,
        seam=size,
        finish=st.sampled_from(["machine", "hand"]),
        grain=st.sampled_from(["straight", "bias"]),
        **({"shows": size} if edge in {"self-binding", "facing"} else {}),
    )
    needed = {"fabric": fabric} if edge in {"binding", "facing"} or draw(st.booleans()) else {}
    return needed | table | ({"edge": edge} if edge != "binding" or draw(st.booleans()) else {})


def _materials(draw: st.DrawFn, size: st.SearchStrategy[str], names: list[str]) -> dict[str, Any]:
    through = st.sampled_from(["batting only", "batting on foundation", "backing and batting"])
    return {
        "fabrics": _fabrics(draw, names, size),
        "binding": _binding(draw, size, names[-1]),
        "base": _some(draw, wide=size, long=size, spare_across=size, spare_at_ends=size, through=through),
        "batting": _some(
            draw,
            fiber=st.sampled_from(["wool", "bamboo", "polyester"]),
            loft=size,
            iron=st.booleans(),
            widest_gap=size,
            on_hand=_pieces(size),
        ),
        "backing": _some(draw, fabric=st.sampled_from(["Sheet", names[0]]), usable_width=size, one_way=st.booleans()),
    }


@st.composite
def project_tables(draw: st.DrawFn) -> dict[str, Any]:
    """The tables of a legal project file."""
    metric = draw(st.booleans())
    size = sizes(unit="cm" if metric else "in")
    names = draw(st.lists(st.sampled_from(FABRIC_NAMES), min_size=1, max_size=4, unique=True))
    name = st.sampled_from(names)
    way = draw(st.sampled_from(WAYS))
    has_center = way not in MAY_LACK_A_CENTER or (way == "rows of strips" and draw(st.booleans()))
    kind, squared_up = _squared_up(draw, way, size, has_center=has_center)
    data: dict[str, Any] = {
        "name": draw(texts().filter(bool)),
        "units": "cm" if metric else "in",
        "squared_up": squared_up,
        "building": _building(draw, way, size),
        **_strips(draw, way, size, name),
        **({"center": {"fabric": draw(name), **_center(draw, size)}} if has_center else {}),
    }
    if kind in SQUARE_ENDED:
        data |= _what_becomes_of_it(draw, data, size, name)
    data |= {
        "extras": extras(draw, name),
        **_materials(draw, size, names),
        **_what_happened(draw, size, name),
        **_some(
            draw,
            about=st.one_of(texts(), st.just("Two\nlines")),
            edition=st.sampled_from(["2", 3, "B"]),
            date=texts(),
            how_many=st.integers(1, 24),
            way_of_working=st.sampled_from(["cut first", "trim as you go"]),
        ),
        "my_numbers": _my_numbers(draw, size),
    }
    _draw_widths(draw, data)
    return data


def _strips(
    draw: st.DrawFn, way: str, size: st.SearchStrategy[str], name: st.SearchStrategy[str]
) -> dict[str, list[dict[str, Any]]]:
    """Rounds, steps or patches, as the way of building has them."""
    if way == "sides in my order":
        step = st.fixed_dictionaries({"side": SIDES, "cut": size}, optional={"fabric": name})
        return {"steps": draw(st.lists(step, min_size=1, max_size=3))}
    if way == "numbered foundation":
        return {"patches": _patches(draw, name)}
    return {"rounds": _rounds(draw, way, size, name)}


def _draw_widths(draw: st.DrawFn, data: dict[str, Any]) -> None:
    """Now and then a round leaves its width to what is on hand, where every fabric has something on hand."""
    if "rounds" in data and all(fabric.get("on_hand") for fabric in data["fabrics"]) and draw(st.booleans()):
        data["building"]["widths"] = "from what is on hand"
        data["rounds"][-1] = {key: value for key, value in data["rounds"][-1].items() if key not in {"cut", "cuts"}}


def _what_becomes_of_it(
    draw: st.DrawFn, data: dict[str, Any], size: st.SearchStrategy[str], name: st.SearchStrategy[str]
) -> dict[str, Any]:
    """A piece by itself, one made for a table or bed, panels, or the blocks of a quilt."""
    match draw(st.sampled_from(["by itself", "made for", "panels", "blocks"])):
        case "made for":
            squared_up = {key: value for key, value in data["squared_up"].items() if key not in {"wide", "long"}}
            sizes = data["squared_up"] if "corner_radius" in data["squared_up"] else squared_up
            return {"made_for": made_for(draw, size), "squared_up": {"shape": "rectangle", **sizes}}
        case "panels":
            return {"cut_apart": cut_apart(draw, size)}
        case "blocks":
            ways = [way for way in WAYS if way not in UPRIGHT_ONLY or data["squared_up"].get("length_runs") != "across"]
            return quilt(draw, data, size, name, lambda: _whole_block(draw, ways, size, name))
        case _:
            return {}


def _whole_block(
    draw: st.DrawFn, ways: list[str], size: st.SearchStrategy[str], name: st.SearchStrategy[str]
) -> dict[str, Any]:
    """A kind of block that takes nothing over from the project."""
    way = draw(st.sampled_from(ways))
    center = {} if way in MAY_LACK_A_CENTER else {"center": {"fabric": draw(name), **_center(draw, size)}}
    return {"building": _building(draw, way, size), **_strips(draw, way, size, name), **center}


def projects() -> st.SearchStrategy[Project]:
    """Legal projects over all ways of building, in inches and in centimeters."""
    return project_tables().map(project_from)
