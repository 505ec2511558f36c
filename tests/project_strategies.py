"""Generators of legal project files, as tables and as projects; whether a piece can be sewn is left open.

They reach every key of the file format, in both units, over all ways of building.
"""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from stitchflip.project import Project, project_from

PALETTE = ("#f4f7fa", "#dfe6ea", "#c9962b", "#b4482a", "#2b3557", "navy")
FABRIC_NAMES = ("Oat", "Brass", "Blue Hour", 'Ida\'s "good" red', "Maïs, klein", "Dove # 2")
WAYS = (
    "log cabin",
    "two-sided log cabin",
    "courthouse steps",
    "pairs round the point",
    "round after round",
    "rows of strips",
    "sides in my order",
)
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


def _some(draw: st.DrawFn, **choices: st.SearchStrategy[Any]) -> dict[str, Any]:
    """A table with some of these keys."""
    return draw(st.fixed_dictionaries({}, optional=choices))


def _rounds(draw: st.DrawFn, size: st.SearchStrategy[str], names: st.SearchStrategy[str]) -> list[dict[str, Any]]:
    made = []
    for _ in range(draw(st.integers(1, 3))):
        table = _some(draw, cut_long=size)
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
    match draw(st.sampled_from(["square", "rectangle", "polygon", "corners"])):
        case "square":
            return center | {"cut": draw(size)}
        case "rectangle":
            return center | {"cut_wide": draw(size), "cut_long": draw(size)}
        case "polygon":
            return center | {"sides": draw(st.integers(3, 12)), "cut": draw(size)}
        case _:
            return center | {"corners": [[-3, -2], [3, "-2"], [2.5, 3], [-2, "2 1/2"]]}


def _squared_up(draw: st.DrawFn, size: st.SearchStrategy[str], *, has_center: bool) -> dict[str, Any]:
    table = _some(
        draw, length_runs=st.sampled_from(["up", "across"]), wish_beyond_points=size, turned=st.sampled_from([0, 30])
    )
    kinds = ["rectangle", "polygon", "pointed", *(["beyond"] if has_center else [])]
    match draw(st.sampled_from(kinds)):
        case "polygon":
            return table | {"sides": draw(st.integers(3, 12)), "across_flats": draw(size)}
        case "beyond":
            return table | {"beyond_points": draw(size)}
        case kind:
            return table | {"wide": draw(size), "long": draw(size)} | ({"ends": "pointed"} if kind == "pointed" else {})


def _fabrics(draw: st.DrawFn, names: list[str], size: st.SearchStrategy[str]) -> list[dict[str, Any]]:
    pieces = st.lists(
        st.one_of(
            st.fixed_dictionaries({"wide": size, "long": size, "count": st.integers(1, 9), "name": texts()}),
            st.fixed_dictionaries({"name": st.sampled_from(["fat quarter", "precut strips"])}),
        ),
        min_size=1,
        max_size=2,
    )
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
            on_hand=pieces,
        )
        if "on_hand" in table:
            table["only_on_hand"] = draw(st.booleans())
        made.append({"name": name, **table})
    return made


def _my_numbers(draw: st.DrawFn, size: st.SearchStrategy[str]) -> dict[str, Any]:
    lengths = (
        "seam", "usable_width", "straightening", "buy_in_steps_of", "fold_loss", "round_cuts_to", "extra_free_end",
        "round_base_to", "spare_across", "spare_at_ends", "binding_extra", "stitch", "widest_gap", "mat_long",
    )  # fmt: skip
    shares = ("draw_up", "draw_up_across", "draw_up_along", "prewash_across")
    return _some(
        draw,
        **dict.fromkeys(lengths, size),
        **dict.fromkeys(shares, st.sampled_from([0, 0.015, "1.5 %", "3%", 0.2])),
        reach=st.sampled_from(["1/4 in", "1 cm", "3/4 in"]),
        minutes_per_strip=st.sampled_from([3, 4.25]),
        thread_per_inch=st.sampled_from([3.5, 5]),
    )


def _building(draw: st.DrawFn, way: str) -> dict[str, Any]:
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
        {"order": st.sampled_from(["shuffled", "light to dark from the middle"]), "seed": st.integers(0, 99)},
        optional={"none_next_to_itself": st.booleans(), "fabrics": st.lists(name, max_size=2)},
    )
    return _some(
        draw,
        readings=st.lists(reading, max_size=2),
        short_strips=st.lists(short, max_size=1),
        fabric_rule=rule,
    )


def _materials(draw: st.DrawFn, size: st.SearchStrategy[str], names: list[str]) -> dict[str, Any]:
    finish = st.sampled_from(["machine", "hand"])
    return {
        "fabrics": _fabrics(draw, names, size),
        "binding": {"fabric": names[-1], **_some(draw, cut=size, seam=size, finish=finish)},
        "base": _some(draw, wide=size, long=size, spare_across=size, through=st.just("batting only")),
        "batting": _some(
            draw, fiber=st.sampled_from(["wool", "bamboo"]), loft=size, iron=st.booleans(), widest_gap=size
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
    has_center = way != "rows of strips" or draw(st.booleans())
    data: dict[str, Any] = {
        "name": draw(texts().filter(bool)),
        "units": "cm" if metric else "in",
        **_some(
            draw,
            about=st.one_of(texts(), st.just("Two\nlines")),
            edition=st.sampled_from(["2", 3, "B"]),
            date=texts(),
            how_many=st.integers(1, 24),
            way_of_working=st.sampled_from(["cut first", "trim as you go"]),
        ),
        "squared_up": _squared_up(draw, size, has_center=has_center),
        "building": _building(draw, way),
        **_materials(draw, size, names),
        "my_numbers": _my_numbers(draw, size),
        **_what_happened(draw, size, name),
    }
    if has_center:
        data["center"] = {"fabric": draw(name), **_center(draw, size)}
    if way == "sides in my order":
        step = st.fixed_dictionaries({"side": SIDES, "cut": size}, optional={"fabric": name})
        return data | {"steps": draw(st.lists(step, min_size=1, max_size=3))}
    return data | {"rounds": _rounds(draw, size, name)}


def projects() -> st.SearchStrategy[Project]:
    """Legal projects over all ways of building, in inches and in centimeters."""
    return project_tables().map(project_from)
