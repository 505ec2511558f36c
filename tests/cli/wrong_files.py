"""Project files with something wrong, each with the exit status it ends in and words that must be said."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

GOOD = """\
name = "Porch square"
units = "in"
rounds = [
    { cut = "2", fabric = "Light" },
    { cut = "2", fabric = "Dark" },
    { cut = "2 1/2", fabric = "Light" },
]

[squared_up]
wide = "12"
long = "12"

[center]
fabric = "Print"
cut = "5"

[building]
way = "log cabin"

[[fabrics]]
name = "Print"
color = "#c8553d"

[[fabrics]]
name = "Light"
color = "#f0e7d3"

[[fabrics]]
name = "Dark"
color = "#2f3b4c"

[binding]
fabric = "Dark"
"""
"""A small piece without anything to stop it."""


@dataclass(frozen=True)
class Wrong:
    """One wrong file."""

    name: str
    content: bytes | None
    """None: there is no file."""
    status: int
    said: tuple[str, ...]
    """Words of the message or of the screen."""


def changed(old: str, new: str) -> bytes:
    """The good file with one text replaced."""
    if old not in GOOD:
        raise AssertionError(old)
    return GOOD.replace(old, new, 1).encode()


_JOINED = '[joined]\nacross = 2\ndown = 2\nfabric = "Light"\n'
_PATCHES = """patches = [
    { fabric = "Print" },
    { fabric = "Light", line = [[-6, 2], [6, 3]] },
]
"""


def joined(more: str = "") -> bytes:
    """The good file as a block, four of them joined."""
    return f"{GOOD}{_JOINED}{more}".encode()


def numbered(old: str = "", new: str = "") -> bytes:
    """The good file as a numbered foundation of two patches, with one text replaced."""
    text = _PATCHES + GOOD[GOOD.index("\n[squared_up]") :].replace('"log cabin"', '"numbered foundation"')
    text = text.replace('[center]\nfabric = "Print"\ncut = "5"\n', "")
    head = 'name = "Porch square"\nunits = "in"\n'
    if old not in text:
        raise AssertionError(old)
    return (head + text.replace(old, new, 1)).encode()


UNREADABLE = (
    Wrong("missing file", None, 3, ("porch.toml: there is no file of this name", "stitchflip new")),
    Wrong("empty file", b"", 3, ("squared_up", "fabrics", "binding")),
    Wrong("broken TOML", changed('wide = "12"', 'wide = "12'), 3, ("line 10",)),
    Wrong("a key twice", changed('wide = "12"', 'wide = "12"\nwide = "13"'), 3, ("line 11",)),
    Wrong("not UTF-8", changed("Porch", "Pörch").replace("ö".encode(), b"\xf6"), 3, ("UTF-8",)),
    Wrong("a picture", b"\x89PNG\r\n\x1a\n\x00\x00", 3, ()),
    Wrong("10 MB", GOOD.encode() + b"# porch\n" * 1_310_720, 3, ("large",)),
    Wrong("10 MB without a line end", b"#" * 10_485_760, 3, ("large",)),
    Wrong("an unknown key", changed('wide = "12"', 'wide = "12"\nwhide = "13"'), 3, ("line 11", "whide")),
    Wrong("an unknown table", (GOOD + '[bindings]\nfabric = "Dark"\n').encode(), 3, ("bindings",)),
    Wrong("a size of zero", changed('cut = "5"', 'cut = "0"'), 3, ("line 15", '"0"')),
    Wrong("a negative size", changed('long = "12"', 'long = "-3"'), 3, ("line 11", '"-3"')),
    Wrong("a length in words", changed('cut = "5"', 'cut = "two"'), 3, ("line 15", "two")),
    Wrong("a fraction over zero", changed('cut = "5"', 'cut = "2 1/0"'), 3, ("line 15", "2 1/0")),
    Wrong(
        "a fabric nobody has", changed('{ cut = "2", fabric = "Dark" }', '{ cut = "2", fabric = "Drak" }'), 3, ("Drak",)
    ),
    Wrong("no fabric", changed('fabric = "Print"\ncut = "5"', 'cut = "5"'), 3, ("center.fabric",)),
    Wrong("a way nobody knows", changed('way = "log cabin"', 'way = "log cabins"'), 3, ("line 18", "log cabins")),
    Wrong("a number for a table", changed('[binding]\nfabric = "Dark"', "binding = 3"), 3, ("binding",)),
    Wrong("more alike than a class has", changed('units = "in"', "how_many = 25"), 3, ("line 2", "25")),
    Wrong("no units that exist", changed('units = "in"', 'units = "ell"'), 3, ("line 2", "ell")),
    Wrong("a round piece without its size", changed('wide = "12"\nlong = "12"', 'shape = "round"'), 3, ("across",)),
    Wrong(
        "a radius larger than the piece",
        changed('wide = "12"', 'wide = "12"\ncorner_radius = "7"'),
        3,
        ("line 11", "half"),
    ),
    Wrong("an edge nobody knows", changed("[binding]\n", '[binding]\nedge = "fringe"\n'), 3, ("fringe", "facing")),
    Wrong(
        "a facing without a fabric", changed('fabric = "Dark"\n', 'edge = "facing"\n'), 3, ("binding.fabric", "faced")
    ),
    Wrong("a half-done square", changed('cut = "5"', 'cut = "5"\nsewn_already = true'), 3, ("half-done", "cut_wide")),
    Wrong(
        "corner squares without a fabric", changed('"log cabin"', '"rounds with corner squares"'), 3, ("corner_fabric",)
    ),
    Wrong("angles the wrong way round", changed('"log cabin"', '"wonky"\nsmallest_angle = 20'), 3, ("line 19", "20")),
    Wrong(
        "a round without a width", changed('cut = "2", fabric = "Dark"', 'fabric = "Dark"'), 3, ("line 5", "cut width")
    ),
    Wrong(
        "nothing on hand",
        changed('"log cabin"', '"log cabin"\nwidths = "from what is on hand"').replace(b'cut = "2", ', b""),
        3,
        ("line 4, rounds[1].cut", '"Light" is on hand'),
    ),
    Wrong("a center of a string block", changed('"log cabin"', '"string block"'), 3, ("middle strip",)),
    Wrong(
        "a center on a foundation",
        numbered("[building]", '[center]\nfabric = "Print"\ncut = "5"\n[building]'),
        3,
        ("first patch",),
    ),
    Wrong("patches in a log cabin", (_PATCHES + GOOD).encode(), 3, ("line 1", "numbered foundation")),
    Wrong("rounds on a foundation", changed('"log cabin"', '"numbered foundation"'), 3, ("patches", "line 3")),
    Wrong("a patch without a line", numbered(", line = [[-6, 2], [6, 3]]"), 3, ("patches[2].line", "two places")),
    Wrong("a line of one place", numbered(", [6, 3]]", "]"), 3, ("patches[2].line[2]", "line 5")),
    Wrong("a line through one place", numbered("[6, 3]", "[-6, 2]"), 3, ("patches[2].line", "line 5")),
    Wrong("a line through the center mark", numbered("[[-6, 2], [6, 3]]", "[[-6, 0], [6, 0]]"), 3, ("center mark",)),
    Wrong("a place that is no number", numbered("[6, 3]", '[6, "up"]'), 3, ("patches[2].line[2][2]", '"up"')),
    Wrong("blocks without a number", f"{GOOD}[joined]\nacross = 2\nfabric = 'Light'\n".encode(), 3, ("joined.down",)),
    Wrong("half a block", joined("first = 1.5\n"), 3, ("joined.first", "rows")),
    Wrong("a join nobody knows", joined('join = "glue"\n'), 3, ('"glue"', "plain seam")),
    Wrong("a strip in a plain seam", joined('join = "plain seam"\n'), 3, ("joined.fabric", "plain seam")),
    Wrong("a row too few", joined('measured = [["12", "12"]]\n'), 3, ("joined.measured", "2 rows")),
    Wrong(
        "a block of no size", joined('measured = [["12", ["12", "0"]], ["12", "12"]]\n'), 3, ("[1][2][2]", "above zero")
    ),
    Wrong("a fabric of a join", joined('fabric_behind = "Drak"\n'), 3, ("joined.fabric_behind", '"Dark"')),
    Wrong(
        "round blocks joined",
        joined().replace(b'wide = "12"\nlong = "12"', b'across = "12"'),
        3,
        ("line 10, squared_up.across", "wide and long"),
    ),
    Wrong("oblong blocks on point", joined('setting = "on point"\n'), 3, ("triangle_fabric",)),
    Wrong("too many of a kind", joined('[[blocks]]\nname = "Lit"\ncount = 5\n'), 3, ("5 blocks", "4")),
    Wrong("kinds that are not joined", f'{GOOD}[[blocks]]\nname = "Lit"\n'.encode(), 3, ("blocks", "[joined]")),
    Wrong("a kind without a name", joined("[[blocks]]\ncount = 4\n"), 3, ("blocks[1].name",)),
    Wrong("a place without a kind", joined('places = ["1 2", "2 1"]\n[[blocks]]\nname = "Lit"\n'), 3, ("row 1", '"2"')),
    Wrong(
        "a border without joined blocks", f'{GOOD}[[borders]]\ncut = "2"\nfabric = "Dark"\n'.encode(), 3, ("borders",)
    ),
    Wrong("a border without a width", joined('[[borders]]\nfabric = "Dark"\n'), 3, ("borders[1].cut",)),
    Wrong("one border in single brackets", joined('[borders]\ncut = "2"\nfabric = "Dark"\n'), 3, ("[[borders]]",)),
    Wrong(
        "corner squares of nothing",
        joined('[[borders]]\ncut="2"\nfabric="Dark"\ncorners="corner squares"\n'),
        3,
        ("corner_fabric",),
    ),
    Wrong("one panel", f"{GOOD}[cut_apart]\n".encode(), 3, ("cut_apart", "2 or more")),
    Wrong("joined and cut apart", joined("[cut_apart]\ndown = 2\n"), 3, ("either",)),
    Wrong("a label nobody knows", f'{GOOD}[extras]\nlabel = "star"\n'.encode(), 3, ('"star"', "corner")),
    Wrong("a mattress nobody knows", f'{GOOD}[made_for]\nmattress = "qeen"\n'.encode(), 3, ('"queen"',)),
    Wrong("a strip no wider than two seams", changed('cut = "2 1/2"', 'cut = "1/2"'), 3, ("strip 9", "seam")),
)
"""Files that cannot be read or planned."""

_BASE_15 = b'[base]\nwide = "15"\nlong = "15"\n'
_ONE_SIDE = GOOD[: GOOD.index("rounds = [")] + 'steps = [{ side = "top", cut = "2", fabric = "Light" }]\n'
_ONE_SIDE += GOOD[GOOD.index("\n[squared_up]") :].replace('"log cabin"', '"sides in my order"\nuntil_covered = true')

STOPPED = (
    Wrong("center larger than the base", changed('cut = "5"', 'cut = "20"') + _BASE_15, 1, ("larger than the base",)),
    Wrong("squared up too large", changed('wide = "12"', 'wide = "18"') + _BASE_15, 1, ("base allows",)),
    Wrong("not covered", changed('wide = "12"', 'wide = "30"'), 1, ("uncovered",)),
    Wrong("repeated and never covered", _ONE_SIDE.encode(), 1, ("uncovered",)),
)
"""Files that are planned and end with a finding that stops the piece."""


def placed(wrong: Wrong, folder: Path) -> Path:
    """The file in a folder, unless it is the one that is missing."""
    path = folder / "porch.toml"
    if wrong.content is not None:
        path.write_bytes(wrong.content)
    return path
