"""The command that makes a piece another size: what was asked, the answer, and the new file when it is wanted."""

from __future__ import annotations

from pathlib import Path
from shlex import quote
from typing import TYPE_CHECKING

from stitchflip.cli.new_files import write_new
from stitchflip.cli.project_files import ENDING, bytes_of
from stitchflip.cli.status import UsageError
from stitchflip.cli.typed_sizes import length_typed, size_typed, unit_named
from stitchflip.lengths import Length
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.planning.model import Plan
    from stitchflip.planning.resize import Resized, WhatChanged
    from stitchflip.project.model import Project

STRIPS, BATTING = "strips", "batting"


@dataclass(frozen=True, slots=True)
class Asked:
    """The options as they were typed."""

    to: str | None
    strip: str | None
    unit: str | None
    keep: str
    largest_from: str | None


@dataclass(frozen=True, slots=True)
class Answer:
    """Both plans, and what lies between them."""

    before: Plan
    after: Plan
    made: Resized
    changed: WhatChanged


def answer(path: Path, asked: Asked) -> Answer:
    """Resize the project in a file and plan it before and after.

    Args:
        path: the project file.
        asked: the options.

    Raises:
        StitchflipError: If an option cannot be read or no piece of this size can be drawn.
    """
    from stitchflip.planning import plan
    from stitchflip.planning.resize import what_changed
    from stitchflip.project import read_project_bytes

    project = read_project_bytes(bytes_of(path), str(path))
    made = _made(project, asked)
    before = plan(project, with_cures=False)
    after = plan(made.project)
    return Answer(before, after, made, what_changed(before, after))


def _made(project: Project, asked: Asked) -> Resized:
    from stitchflip.planning.resize import Keep, resized

    keep = next(
        (one for one in Keep if asked.keep.strip() and one.value.startswith(asked.keep.strip().casefold())), None
    )
    if keep is None:
        raise UsageError(
            what=f'"{asked.keep}" is nothing that can be kept',
            fix="Use --keep strips (their widths stay, there are more or fewer) or --keep proportions.",
            code="usage.which-keep",
        )
    unit = None if asked.unit is None else unit_named(asked.unit, "--unit")
    if asked.largest_from is not None:
        return _largest(project, asked)
    if asked.to is None and asked.strip is None and unit is None:
        raise UsageError(
            what="No new size is given",
            fix='Say what should be different: --to "16 x 60", --strip 2, --unit cm, or --largest-from strips.',
            code="usage.which-size",
        )
    typed_in = unit or project.units
    wide, long = (None, None) if asked.to is None else size_typed(asked.to, typed_in, "--to")
    strip = None if asked.strip is None else length_typed(asked.strip, typed_in, "--strip")
    return resized(project, wide, long, strip=strip, unit=unit, keep=keep)


def _largest(project: Project, asked: Asked) -> Resized:
    """As large as what is on hand allows."""
    from stitchflip.planning.doors import from_strips

    if asked.to or asked.strip or asked.unit:
        raise UsageError(
            what="--largest-from finds the size by itself",
            fix="Leave out --to, --strip and --unit beside it.",
            code="usage.which-size",
        )
    word = (asked.largest_from or "").strip().casefold()
    if word == STRIPS:
        return from_strips(project).resized
    if word == BATTING:
        return _from_batting(project)
    raise UsageError(
        what=f'"{asked.largest_from}" is nothing to start from',
        fix=f"Use --largest-from {STRIPS} (the pieces on hand of your fabrics) or --largest-from {BATTING}.",
        code="usage.which-size",
    )


def _from_batting(project: Project) -> Resized:
    """The largest piece of batting on hand, laid the way that gives more."""
    from stitchflip.planning.doors import from_batting
    from stitchflip.planning.resize import resized

    if not project.batting.on_hand:
        raise UsageError(
            what="No batting is on hand in this project",
            fix='List it under [batting], such as on_hand = [{ wide = "34", long = "45" }].',
            code="usage.no-batting",
        )
    ways = [(piece.wide, piece.long) for piece in project.batting.on_hand]
    ways += [(long, wide) for wide, long in ways]
    found = [from_batting(project, *way).in_proportion for way in ways]
    wide, long = max(found, key=lambda size: (size[0] * size[1], size))
    return resized(project, *(Length.of_inches(side) for side in (wide, long)))


def write_resized(path: Path, out: str, made: Resized, *, force: bool) -> Path:
    """Write the project at its new size to a file of its own.

    The new file keeps the notes of the old one; only where the unit changes it is written as a whole.

    Args:
        path: the project file it comes from.
        out: name of the new file as typed.
        made: the project.
        force: write over a file that is there.

    Returns:
        The file written.

    Raises:
        UsageError: If a file is there already and may not be written over, or it cannot be written.
    """
    from stitchflip.project import edit_project, read_project, write_project

    target = Path(out) if Path(out).suffix else Path(out).with_name(Path(out).name + ENDING)
    text = bytes_of(path).decode("utf-8")
    if made.project.units is read_project(text).units:
        text = edit_project(text, made.changes)
    else:
        text = write_project(made.project)
    write_new(target, text, may_replace=force)
    return target


def written_words(target: Path, answer: Answer) -> str:
    """What was written, and what to do with it."""
    is_redrafted = answer.before.project.units is not answer.after.project.units
    note = "The notes of the old file are not in it, because every number is another one.\n" if is_redrafted else ""
    return f"\nWrote {target}\n{note}See it whole: stitchflip plan {quote(str(target))}\n"
