"""The plan on the screen: the three answers first, then what to look at, then what the hands need in their order."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.table import Table
from rich.text import Text

from stitchflip.cli import plan_words as words
from stitchflip.cli.screen import glued
from stitchflip.planning.model import Severity
from stitchflip.project.model import Working

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from rich.console import RenderableType

    from stitchflip.cutting.model import FabricPlan, Piece, StripPlan
    from stitchflip.planning.model import Finding, Plan

_STYLE = {Severity.STOP: "bold red", Severity.FIX: "bold yellow", Severity.NOTE: "bold cyan"}
_INDENT = "  "


def plan_screen(plan: Plan, *, with_more: bool = False) -> Iterator[RenderableType]:
    """Everything on the screen of a plan, top to bottom.

    Args:
        plan: the plan.
        with_more: also time, thread, cost, other ways and how sure the cutting plan is.
    """
    yield Text(glued(words.headline(plan)), style="bold")
    yield from _answers(plan)
    yield from findings(plan.findings)
    yield from _cutting(plan)
    yield from _places(plan)
    yield from facts(
        (
            ("Ends to lock", words.ends_to_lock(plan)),
            ("Widest unstitched place", words.unstitched(plan)),
            ("Square up", "\n".join([*words.square_up_lines(plan), *words.point_lines(plan)])),
            ("Bind", words.binding_words(plan)),
            ("Backing", words.backing_words(plan)),
        )
    )
    if with_more:
        from stitchflip.cli.more_words import more_facts

        yield from facts(more_facts(plan))


def heading(text: str) -> Iterator[RenderableType]:
    """A blank line and a heading."""
    yield Text()
    yield Text(text, style="bold")


def facts(rows: Iterable[tuple[str, str]]) -> Iterator[RenderableType]:
    """Short headings on the left, sentences on the right.

    Args:
        rows: heading and sentence; several lines stay several lines.
    """
    table = Table.grid(padding=(0, 2, 0, 0))
    table.add_column(min_width=12, max_width=16)
    table.add_column(overflow="fold")
    for name, said in rows:
        table.add_row(Text(name, style="bold"), Text(glued(said)))
    yield Text()
    yield table


def _answers(plan: Plan) -> Iterator[RenderableType]:
    yield from facts((("Does it fit?", words.does_it_fit(plan)),))
    yield from heading("What to have")
    table = Table.grid(padding=(0, 2, 0, 0))
    colors = {letter.letter: letter.color for letter in plan.letters}
    for _ in range(5):
        table.add_column(overflow="fold")
    for letter, name, amount, what_for in words.what_to_have(plan):
        mark = Text(f"{_INDENT}{letter}", style="bold")
        table.add_row(mark, _chip(colors.get(letter)), Text(glued(name)), Text(glued(amount)), Text(glued(what_for)))
    yield table
    yield from facts((("Start with", words.start_with(plan)),))


def _chip(color: str | None) -> Text:
    """A patch of the fabric's color; nothing where colors are not shown."""
    if color is None or len(color) != 7 or not _shows_colors():
        return Text()
    return Text("  ", style=f"on {color}")


def _shows_colors() -> bool:
    import os
    import sys

    return sys.stdout.isatty() and not os.environ.get("NO_COLOR")


def findings(found: Iterable[Finding]) -> Iterator[RenderableType]:
    """Things to look at, the gravest first, each with its cures.

    Args:
        found: in the order to show them.
    """
    found = list(found)
    yield from heading("Things to look at")
    if not found:
        yield Text(f"{_INDENT}nothing")
        return
    table = Table.grid(padding=(0, 2, 0, 0))
    table.add_column(min_width=14, no_wrap=True)
    table.add_column(overflow="fold")
    for finding in found:
        said = Text(glued(finding.what))
        for cure in finding.cures:
            said.append(glued(f"\n{'-' if len(finding.cures) > 1 else '>'} {cure.text}"), style="italic")
        label = Text(f"{_INDENT}{words.SEVERITY_WORDS[finding.severity]}", style=_STYLE[finding.severity])
        table.add_row(label, said)
    yield table


def _cutting(plan: Plan) -> Iterator[RenderableType]:
    """Pieces by fabric in cutting order, and which strip each comes from."""
    is_first = plan.project.working is Working.CUT_FIRST
    yield from heading(
        "Cut, in this order" if is_first else "Cut the strips; trim each piece after it is sewn and opened"
    )
    by_name = {fabric.fabric: fabric for fabric in plan.fabrics}
    for name, pieces in plan.pieces_by_fabric.items():
        yield Text()
        yield Text(glued(f"{_INDENT}{plan.letter_of(name)}  {name}"), style="bold")
        yield _piece_table(plan, pieces)
        if name in by_name:
            yield from _strip_lines(plan, by_name[name])


def _piece_table(plan: Plan, pieces: Iterable[Piece]) -> Table:
    say = words.speaker(plan).bare
    unit = plan.project.units.value
    is_first = plan.project.working is Working.CUT_FIRST
    table = Table(box=None, padding=(0, 2, 0, 0), header_style="underline", pad_edge=False)
    table.add_column(f"{_INDENT}how many", justify="right")
    table.add_column(f"cut wide × long, {unit}" if is_first else f"cut wide × shortest that reaches, {unit}")
    table.add_column("finished")
    table.add_column("becomes", overflow="fold")
    for group in words.alike(pieces):
        one = group[0]
        long = one.shortest if one.kind == "strip" and not is_first and one.shortest else one.long
        size = f"{say.width(one.wide)} × {say.cut(long)}"
        finished = f"{one.finished} wide" if one.kind == "strip" and one.finished else one.finished
        count = str(sum(piece.count for piece in group))
        table.add_row(count, Text(glued(size)), Text(glued(finished)), Text(glued(words.becomes(group))))
    return table


def _strip_lines(plan: Plan, fabric: FabricPlan) -> Iterator[RenderableType]:
    """Which strip gives which pieces, and what is left of it."""
    for strips in fabric.strip_plans:
        if not strips.is_whole:
            yield from _one_width(plan, strips)
    if fabric.because:
        yield Text(glued(f"{_INDENT}Left out: {', '.join(fabric.left_out)}. {fabric.because}"), style="bold red")


def _one_width(plan: Plan, strips: StripPlan) -> Iterator[RenderableType]:
    say = words.speaker(plan)
    for number, strip in enumerate(strips.strips, start=1):
        labels = ", ".join(label for label, _ in strip.pieces)
        source = "" if strip.stock == "width of fabric" else f" ({strip.stock})"
        rest = f", {say.margin(strip.rest)} left" if strip.rest > 0 else ""
        said = (
            f"{_INDENT}strip {number} of {len(strips.strips)}, {say.width(strips.width)} wide{source}: {labels}{rest}"
        )
        yield Text(glued(said), style="dim")


def _places(plan: Plan) -> Iterator[RenderableType]:
    yield from heading(f"Where you should be: from the center mark, square to the strip, {plan.project.units.value}")
    table = Table(box=None, padding=(0, 2, 0, 0), header_style="underline", pad_edge=False)
    table.add_column(f"{_INDENT}after")
    table.add_column("seam line, marked on the base", justify="right")
    table.add_column("raw edge, by tape when sewn", justify="right")
    for after, seam, edge in words.places_by_round(plan):
        table.add_row(Text(glued(f"{_INDENT}{after}")), Text(glued(seam)), Text(glued(edge)))
    yield table
