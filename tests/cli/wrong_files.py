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
