"""Writing a pattern: everything or nothing, and nothing that was there before is lost on the way.

All files are first written to a folder of their own beside their place and only then moved. What stood under
the same names goes aside first and comes back if a move fails; files with other names are never touched.
"""

from __future__ import annotations

import shutil
import tempfile
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING

from stitchflip.cli.screen import write_out
from stitchflip.cli.status import UsageError
from stitchflip.lengths import Unit

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from stitchflip.pattern import Paper
    from stitchflip.pictures.model import Figure
    from stitchflip.planning.model import Plan

PICTURES = "pictures"
PAPER_WORDS = {"letter": "letter paper (8½ × 11 in)", "a4": "A4 paper"}
PICTURE_WIDE_IN = 7.0


def write_pattern(plan: Plan, folder: Path, paper: str | None) -> None:
    """Make a pattern's files, write them, and say what was written.

    Args:
        plan: the plan it shows.
        folder: where the files go.
        paper: "letter" or "a4" as typed, or None for the paper that goes with the project's unit.

    Raises:
        StitchflipError: If the paper is not known or the files cannot be written.
    """
    chosen = paper_named(paper, plan.project.units)
    files = pattern_files(plan, chosen)
    strangers = write_all(folder, files)
    sheets = [name for name in files if not name.startswith(PICTURES)]
    lines = [f"Wrote to {folder}:", *(f"  {name}" for name in sheets)]
    lines.append(f"  {PICTURES}/  {len(files) - len(sheets)} pictures (SVG)")
    lines.append(f"The PDF files are for {PAPER_WORDS[chosen.value]}; print at 100 %.")
    if strangers:
        names = ", ".join(path.name for path in strangers)
        lines.append(f"Left as they were, and not of this plan: {names} in {folder / PICTURES}")
    write_out("\n".join(lines) + "\n")


def paper_named(text: str | None, unit: Unit) -> Paper:
    """The paper that is meant.

    Args:
        text: "letter" or "a4" as typed, or None for the one that goes with the unit.
        unit: the project's unit.

    Raises:
        UsageError: If it is another word.
    """
    from stitchflip.pattern import Paper

    if text is None:
        return Paper.LETTER if unit is Unit.INCH else Paper.A4
    for one in Paper:
        if one.value == text.strip().casefold():
            return one
    raise UsageError(
        what=f'"{text}" is no paper known here', fix="Use --paper letter or --paper a4.", code="usage.which-paper"
    )


def pattern_files(plan: Plan, paper: Paper) -> dict[str, bytes]:
    """Every file of a pattern, by its path in the pattern's folder.

    Args:
        plan: the plan it shows.
        paper: what the PDF files are laid out for.
    """
    from stitchflip.pattern import pattern_document, shop_sheet, table_sheet, to_html, to_pdf

    pattern = pattern_document(plan)
    files = {
        "table-sheet.pdf": to_pdf(table_sheet(plan), paper),
        "shop-sheet.pdf": to_pdf(shop_sheet(plan), paper),
        "pattern.pdf": to_pdf(pattern, paper),
        "pattern.html": to_html(pattern).encode(),
    }
    files.update((f"{PICTURES}/{name}.svg", svg.encode()) for name, svg in _pictures(plan))
    return files


def _pictures(plan: Plan) -> Iterator[tuple[str, str]]:
    """Name and SVG of every picture."""
    from stitchflip import pictures

    figures = {
        "finished": pictures.finished(plan),
        "order": pictures.order(plan),
        "back": pictures.back(plan),
        "base": pictures.base(plan),
        "squaring": pictures.squaring(plan),
        "coloring": pictures.coloring(plan),
        **_of_the_whole(plan),
        **_of_the_steps(plan),
    }
    figures.update((f"cuts-{plan.letter_of(fabric.fabric)}", pictures.cuts(plan, fabric)) for fabric in plan.fabrics)
    for corner in plan.binding.corners:
        figures.setdefault(f"binding-corner-{corner.angle:.0f}", pictures.binding_corner(plan, corner))
    for name, figure in figures.items():
        yield name, pictures.to_svg(figure, PICTURE_WIDE_IN, plan.project.units)


def _of_the_whole(plan: Plan) -> dict[str, Figure]:
    """What only some pieces have: blocks and how they are joined, panels, lines of a foundation."""
    from stitchflip import pictures
    from stitchflip.project.model import Edge, Way

    figures: dict[str, Figure] = {}
    if plan.quilt is not None:
        figures = {"joining": pictures.joining(plan), "join-section": pictures.join_section(plan)}
        figures.update((f"block-{kind + 1}", pictures.block(plan, kind)) for kind in range(len(plan.kinds)))
    if plan.panels is not None:
        figures["panels"] = pictures.panels(plan)
    if plan.project.binding.edge is not Edge.BINDING:
        figures["edge-section"] = pictures.edge_section(plan)
    if plan.project.building.way is Way.FOUNDATION:
        figures["foundation-mirrored"] = pictures.foundation(plan)
    return figures


def _of_the_steps(plan: Plan) -> dict[str, Figure]:
    """One picture for each step, of every kind of block."""
    from stitchflip import pictures

    figures: dict[str, Figure] = {}
    for kind in range(len(plan.kinds)):
        own = pictures.kind_plan(plan, kind)
        strips = own.build.strips
        block = f"block-{kind + 1}-" if len(plan.kinds) > 1 else ""
        figures.update(
            (f"{block}{step_name(strip.step, len(strips))}", pictures.step(own, strip.step)) for strip in strips
        )
    return figures


def step_name(step: int, last: int) -> str:
    """Name of a step's picture, so that a listing shows them in sewing order.

    Args:
        step: the step, from 1.
        last: the last step of the piece.
    """
    return f"step-{step:0{len(str(last))}}"


def write_all(folder: Path, files: Mapping[str, bytes]) -> list[Path]:
    """Write files into a folder, all of them or none.

    Args:
        folder: where they go; made if it is not there.
        files: content by path inside the folder.

    Returns:
        Files of earlier runs that lie among the new ones and are not of this plan (left as they are).

    Raises:
        StitchflipError: If they cannot be written; the folder is then as it was.
    """
    if folder.exists() and not folder.is_dir():
        raise UsageError(
            what="this is a file, so nothing can be put into it",
            fix="Give another folder with --out.",
            where=str(folder),
            code="usage.out-is-a-file",
        )
    in_the_way = [folder / name for name in files if (folder / name).is_dir()]
    if in_the_way:
        raise UsageError(
            what="this is a folder, where a file of the pattern should go",
            fix="Give another folder with --out, or move that one away.",
            where=str(in_the_way[0]),
            code="usage.folder-in-the-way",
        )
    made = _make_folders(folder)
    try:
        with tempfile.TemporaryDirectory(prefix=".stitchflip-", dir=folder) as workshop:
            fresh, aside = Path(workshop, "fresh"), Path(workshop, "aside")
            for name, content in files.items():
                _parented(fresh / name).write_bytes(content)
            _move_in(files, fresh, folder, aside)
    except BaseException as error:
        _remove_empty(made)
        if isinstance(error, OSError):
            raise _cannot_write(folder, error) from error
        raise
    return _left_over(folder, files)


def _make_folders(folder: Path) -> list[Path]:
    """Make the folder and what is missing above it; returns what was made, innermost first."""
    missing = [path for path in (folder, *folder.parents) if not path.exists()]
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        _remove_empty(missing)
        raise _cannot_write(folder, error) from error
    return missing


def _cannot_write(folder: Path, error: OSError) -> UsageError:
    return UsageError(
        what=f"Nothing was written to {folder} ({error.strerror or error})",
        fix="Make room or give another folder with --out; what was there is as it was.",
        code="usage.cannot-write",
    )


def _remove_empty(folders: Iterable[Path]) -> None:
    for folder in folders:
        with suppress(OSError):
            folder.rmdir()


def _parented(path: Path) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    return path


def _move_in(names: Iterable[str], fresh: Path, folder: Path, aside: Path) -> None:
    """Move the fresh files to their places; undo everything if one cannot go."""
    moved: list[str] = []
    made: list[Path] = []
    try:
        for name in names:
            place = folder / name
            if not place.parent.exists():
                place.parent.mkdir(parents=True)
                made.append(place.parent)
            if place.exists() or place.is_symlink():
                shutil.move(place, _parented(aside / name))
            moved.append(name)
            (fresh / name).replace(place)
    except BaseException:
        for name in moved:
            (folder / name).unlink(missing_ok=True)
            if (aside / name).exists() or (aside / name).is_symlink():
                shutil.move(aside / name, folder / name)
        _remove_empty(reversed(made))
        raise


def _left_over(folder: Path, files: Mapping[str, bytes]) -> list[Path]:
    """Pictures in the folder that are not of this plan."""
    ours = {folder / name for name in files}
    return [path for path in sorted((folder / PICTURES).glob("*.svg")) if path not in ours]
