"""The gallery: every example as it will look, with two lines about it, so that a newcomer sees what can be made.

Run `python -m stitchflip.cli.gallery .` in the project's folder (or `make gallery`) to draw it again; tests compare.
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable

    from stitchflip.planning.model import Plan

FOLDER = "pictures/gallery"
"""Where the pictures lie, below docs."""
_WIDEST_IN = 5.0
_HIGHEST_IN = 5.6
"""Room for one picture on the page."""
_OPENING = (
    "# Gallery",
    "",
    "Every example in [examples](../examples), drawn from its plan. To make one your own, copy its file, change its",
    "numbers and ask `stitchflip plan`.",
    "",
)


@dataclass(frozen=True, slots=True)
class Shown:
    """One example in the gallery."""

    stem: str
    """Name of its project file, without the ending."""
    name: str
    about: str
    facts: str
    alt: str
    svg: str


def shown(stem: str, project_text: str) -> Shown:
    """An example as the gallery shows it.

    Args:
        stem: name of its project file, without the ending.
        project_text: what stands in that file.
    """
    from stitchflip import plan, read_project
    from stitchflip.pictures import finished, paper_height, to_svg

    made = plan(read_project(project_text, stem), with_cures=False)
    picture = finished(made, letters=False)
    wide = min(picture.width_in, _WIDEST_IN)
    wide *= min(1.0, _HIGHEST_IN / paper_height(picture, wide))
    svg = to_svg(picture, round(wide, 2), made.project.units)
    about = " ".join(made.project.about.split())
    return Shown(stem, made.project.name, about, _facts(made), picture.alt, svg)


def _facts(made: Plan) -> str:
    """How it is built, how large it is, of how much it is made: one line."""
    from stitchflip.pattern.telling import Teller, counted

    teller = Teller(made)
    way = made.project.building.way.value
    alike = f", {made.project.how_many} alike" if teller.is_several else ""
    strips = teller.counted_strips(len(teller.strips) + teller.is_foundation)
    if teller.is_quilt:
        strips = f"{counted(made.project.blocks_in_one, 'block')} of {strips}"
    fabrics = counted(len(made.letters), "fabric")
    return f"{way[:1].upper()}{way[1:]}{alike}; squared up {teller.squared_up_size()}; {strips}, {fabrics}."


def page(examples: Iterable[Shown]) -> str:
    """The gallery page.

    Args:
        examples: what it shows, in this order.
    """
    lines = list(_OPENING)
    for one in examples:
        alt = one.alt.replace("[", "(").replace("]", ")")
        lines += [
            f"## {one.name}",
            "",
            f"![{alt}]({FOLDER}/{one.stem}.svg)",
            "",
            *((one.about, "") if one.about else ()),
            f"{one.facts} [{one.stem}.toml](../examples/{one.stem}.toml)",
            "",
        ]
    return "\n".join(lines)


def write_gallery(root: Path) -> None:
    """Draw every example and write the page.

    Args:
        root: the project's folder, with docs and examples.
    """
    every = [shown(path.stem, path.read_text(encoding="utf-8")) for path in sorted((root / "examples").glob("*.toml"))]
    folder = root / "docs" / FOLDER
    folder.mkdir(parents=True, exist_ok=True)
    for old in set(folder.glob("*.svg")) - {folder / f"{one.stem}.svg" for one in every}:
        old.unlink()
    for one in every:
        (folder / f"{one.stem}.svg").write_text(one.svg, encoding="utf-8", newline="\n")
    (root / "docs" / "gallery.md").write_text(page(every), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    write_gallery(Path(sys.argv[1]))
