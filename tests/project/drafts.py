"""Small project files the tests of this room share."""

from __future__ import annotations

from stitchflip.errors import Mistake, ProjectFileError
from stitchflip.project import read_project

MAT = """\
# A mat for Ida.
name = "Mat"   # short
about = "For Ida"
units = "in"

rounds = [
    { cut = "2", fabric = "Brass" },       # light
    { cut = "2 1/2", fabric = "Oat" },     # lighter
]

[squared_up]
wide = "18"     # as it lies
long = "13"

[center]        # the first piece
cut = "6"
fabric = "Oat"

[[fabrics]]
name = "Oat"
color = '#EFE3C6'

[[fabrics]]
name = "Brass"
color = "goldenrod"

[binding]
fabric = "Brass"
"""


def mistakes(text: str) -> list[Mistake]:
    """All mistakes of a file; none when it can be read."""
    try:
        read_project(text, "mat.toml")
    except ProjectFileError as error:
        return list(error.mistakes)
    return []


def mat(old: str = "", new: str = "") -> str:
    """The mat with one text in place of another."""
    assert old in MAT
    return MAT.replace(old, new, 1) if old else MAT
