"""The command that cuts: which fabrics are meant, and the files with the diagrams."""

from __future__ import annotations

from difflib import get_close_matches
from typing import TYPE_CHECKING

from stitchflip.cli.pattern_files import PAPER_WORDS, PICTURE_WIDE_IN, PICTURES, paper_named, write_all
from stitchflip.cli.status import UsageError
from stitchflip.cli.typed_sizes import length_typed
from stitchflip.errors import CuttingError
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

    from stitchflip.cutting.model import FabricPlan
    from stitchflip.planning.closer_cuts import CloserCut
    from stitchflip.planning.cutting_answers import CuttingTold
    from stitchflip.planning.cutting_wishes import KitsAnswer, OnlyAnswer
    from stitchflip.planning.model import Plan

SHEET = "cutting-sheet.pdf"


@dataclass(frozen=True, slots=True)
class CutAsked:
    """The options as they were typed."""

    fabrics: tuple[str, ...]
    kits: int | None
    spare_kits: int
    if_only: tuple[str, ...]
    closer: bool
    look: float | None


def told_cutting(plan: Plan, asked: CutAsked) -> CuttingTold:
    """Everything the command has to say.

    Args:
        plan: the plan of the piece.
        asked: the options.

    Raises:
        UsageError: If options do not go together, name what is not there, or ask for more than anybody cuts.
    """
    from stitchflip.planning.cutting_answers import CuttingTold, cutting_answers

    if asked.kits is None and asked.spare_kits:
        raise UsageError(
            what="--spare-kits are beside kits, and none are asked for",
            fix="Say how many kits there are: --kits 12 --spare-kits 1.",
            code="usage.which-kits",
        )
    if asked.kits is not None and asked.if_only:
        raise UsageError(
            what="--kits and --if-only are two questions",
            fix="Ask one after the other.",
            code="usage.which-kits",
        )
    names = [fabric.fabric for fabric in fabrics_named(plan, asked.fabrics)]
    told, kits, only = _wished(plan, asked)
    if only and not asked.fabrics:
        names = [name for one in only for name in (one.fabric, one.stands_in)]
    chosen = [fabric for fabric in told.fabrics if fabric.fabric in names]
    have = {name for one in only if one.have_in is not None for name in (one.fabric, one.stands_in)}
    looked = closer_ways(told, [fabric for fabric in chosen if fabric.fabric not in have], asked.look)
    there = {one.fabric for one in only if one.have_in is not None and one.is_enough}
    return CuttingTold(told, cutting_answers(told, chosen, looked, closer=asked.closer, there=there), kits, only)


def _wished(plan: Plan, asked: CutAsked) -> tuple[Plan, KitsAnswer | None, tuple[OnlyAnswer, ...]]:
    """The plan for kits, or for fabric of which there is only so much; as it is when neither is asked for."""
    if asked.kits is None and not asked.if_only:
        return plan, None, ()
    from stitchflip.planning.cutting_wishes import kits_of, with_only_so_much

    if asked.kits is not None:
        try:
            kits = kits_of(plan, asked.kits, asked.spare_kits)
        except CuttingError as error:
            raise UsageError(what=error.what, fix=error.fix, where="--kits", code="usage.which-kits") from error
        return kits.plan, kits, ()
    told, only = with_only_so_much(plan, [_only_typed(plan, text) for text in asked.if_only])
    return told, None, only


def _only_typed(plan: Plan, text: str) -> tuple[FabricPlan, float | None]:
    """A fabric, and how much there is of it."""
    name, equals, length = text.partition("=")
    fabric = _fabric_named(plan, name)
    if not equals:
        return fabric, None
    return fabric, length_typed(length, plan.project.units, "--if-only").inches


def fabrics_named(plan: Plan, names: Sequence[str]) -> tuple[FabricPlan, ...]:
    """The fabrics that are meant, by name, by the beginning of a name that only one has, or by letter.

    Args:
        plan: the plan.
        names: as typed; none: all fabrics.

    Raises:
        UsageError: If a name is no fabric of the piece, or could be several.
    """
    chosen = dict.fromkeys(_fabric_named(plan, name) for name in names)
    return tuple(chosen) if names else plan.fabrics


def _fabric_named(plan: Plan, name: str) -> FabricPlan:
    typed = name.strip().casefold()
    exact = [fabric for fabric in plan.fabrics if fabric.fabric.casefold() == typed]
    lettered = [fabric for fabric in plan.fabrics if plan.letter_of(fabric.fabric).casefold() == typed]
    begun = [fabric for fabric in plan.fabrics if typed and fabric.fabric.casefold().startswith(typed)]
    for found in (exact, lettered, begun):
        if len(found) == 1:
            return found[0]
    known = [fabric.fabric for fabric in plan.fabrics]
    if begun:
        raise UsageError(
            what=f'"{name}" could be {" or ".join(fabric.fabric for fabric in begun)}',
            fix="Write the whole name of the fabric.",
            code="usage.which-fabric",
        )
    close = get_close_matches(name, known, n=1)
    meant = f"Did you mean {close[0]}? " if close else ""
    raise UsageError(
        what=f'"{name}" is no fabric this piece is cut from',
        fix=f"{meant}There are {', '.join(known)}." if known else "This piece is cut from no fabric.",
        code="usage.which-fabric",
    )


def closer_ways(plan: Plan, fabrics: Sequence[FabricPlan], seconds: float | None) -> tuple[CloserCut, ...]:
    """What cutting closer does for the fabrics that are meant.

    Args:
        plan: the plan.
        fabrics: those that are meant.
        seconds: how long to look for each; 0: not at all; None: a set number of looks.
    """
    if seconds == 0:
        return ()
    from stitchflip.cli.interrupting import ending_early
    from stitchflip.planning.closer_cuts import closer_cuts

    with ending_early() as is_to_end:
        return closer_cuts(plan, fabrics, seconds, is_to_end)


@dataclass(frozen=True, slots=True)
class Written:
    """What was written."""

    folder: Path
    names: list[str]
    paper: str
    """The paper of the sheet, in words."""


def write_cutting(told: CuttingTold, folder: Path, paper: str | None) -> Written:
    """Write the sheet to print and a diagram for each fabric; all of it or nothing.

    Args:
        told: everything that is said.
        folder: where the files go.
        paper: "letter" or "a4" as typed, or None for the paper that goes with the project's unit.

    Raises:
        StitchflipError: If the paper is not known or the files cannot be written.
    """
    from stitchflip import pictures
    from stitchflip.pattern import cutting_sheet, to_pdf
    from stitchflip.pictures.drawing import color_of
    from stitchflip.pictures.motifs import motif_plan

    unit = told.plan.project.units
    chosen = paper_named(paper, unit)
    files = {SHEET: to_pdf(cutting_sheet(told), chosen)}
    for answer in told.answers:
        if answer.steps:
            svg = pictures.to_svg(pictures.cuts(told.plan, answer.fabric), PICTURE_WIDE_IN, unit)
            files[f"{PICTURES}/cuts-{answer.letter}.svg"] = svg.encode()
        if answer.motifs is not None:
            color = color_of(told.plan, answer.fabric.fabric)
            figure = motif_plan(answer.motifs.plan, unit, answer.fabric.fabric, color)
            files[f"{PICTURES}/motifs-{answer.letter}.svg"] = pictures.to_svg(figure, PICTURE_WIDE_IN, unit).encode()
    write_all(folder, files)
    return Written(folder, list(files), PAPER_WORDS[chosen.value])


def written_words(files: Written) -> str:
    """What was written, and how to print it.

    Args:
        files: what was written.
    """
    pictures = len(files.names) - 1
    return (
        f"\nWrote to {files.folder}:\n  {SHEET}\n  {PICTURES}/  {pictures} cutting "
        f"diagram{'' if pictures == 1 else 's'} (SVG)\nThe PDF file is for {files.paper}; print at 100 %.\n"
    )
