"""Cutting on the screen, fabric by fabric: what to buy, how sure that is, every cut in its order, what is left."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cli import plan_words as words
from stitchflip.cli.page import Cell, Grid, Line
from stitchflip.cli.plan_screen import chip, findings
from stitchflip.cutting.hand_words import CAUTION
from stitchflip.planning.model import Severity

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.cli.page import Part
    from stitchflip.planning.cutting_answers import CuttingAnswer, CuttingTold, StepWords
    from stitchflip.planning.cutting_wishes import KitsAnswer

_INDENT = 2


def cut_screen(told: CuttingTold) -> Iterator[Part]:
    """The orders of some fabrics, top to bottom.

    Args:
        told: everything there is to say.
    """
    plan, answers = told.plan, told.answers
    yield Line(f"{words.headline(plan)}", "bold")
    yield Line(f"Cutting. {CAUTION}")
    for only in told.only:
        yield Line()
        yield Line(f"If there is only so much of {only.fabric}", "bold")
        for said in only.says:
            yield Line(said, indent=_INDENT)
    if told.kits is not None:
        yield from _kits(told.kits)
    colors = {letter.letter: letter.color for letter in plan.letters}
    for answer in answers:
        yield Line()
        yield Grid([(Cell(f" {answer.letter} ", chip(colors.get(answer.letter))), Cell(answer.fabric.fabric, "bold"))])
        yield Grid([(Cell(name, "bold"), Cell(said)) for name, said in _before(answer)], indent=_INDENT)
        if answer.steps:
            yield Line("Cut, in this order", "bold", _INDENT)
            yield _order(answer.steps)
        after = [(Cell(name, "bold"), Cell(said)) for name, said in _after(answer)]
        if after:
            yield Grid(after, indent=_INDENT)
    stops = [finding for finding in plan.findings if finding.severity is Severity.STOP]
    if stops:
        yield from findings(stops)


def _kits(kits: KitsAnswer) -> Iterator[Part]:
    """What to know about all kits, and what goes into each bag."""
    from stitchflip.planning.cutting_wishes import slip_heading

    yield Line()
    yield Line(kits.teacher[0], "bold")
    for said in kits.teacher[1:]:
        yield Line(said, indent=_INDENT)
    for slip in kits.slips:
        yield Line()
        yield Line(slip_heading(slip, kits.bags), "bold")
        for said in slip.lines:
            yield Line(said, indent=_INDENT)


def _before(answer: CuttingAnswer) -> Iterator[tuple[str, str]]:
    yield answer.amount_heading, answer.buy
    yield "How sure", answer.sure
    if answer.motifs is not None:
        yield "Motifs", answer.motifs.says
    if answer.closer:
        yield "Closer", answer.closer


def _order(steps: Sequence[StepWords]) -> Grid:
    rows: list[Sequence[Cell]] = []
    for one in steps:
        rows.append((Cell(str(one.step.number)), Cell(one.does), Cell(one.left, "dim")))
        if one.check:
            rows.append((Cell(""), Cell(one.check, "italic"), Cell("")))
    return Grid(rows, ("", "wide × long: of fabric, across × along it", "left"), frozenset({0}), _INDENT)


def _after(answer: CuttingAnswer) -> Iterator[tuple[str, str]]:
    if answer.order.is_finer:
        yield "Mind", "Cut lengths are finer here than in the list: rounded up they would not fit."
    if answer.while_sewing:
        yield "While you sew", "\n".join(answer.while_sewing)
    if answer.tipping_points:
        yield "Tipping points", "\n".join(answer.tipping_points)
    if answer.mistakes:
        yield "Mistakes you can afford", answer.mistakes
    if answer.other_way:
        yield "The other way", answer.other_way
    if answer.leftovers:
        yield "For the shelf", "\n".join(answer.leftovers)
    if answer.left_out:
        yield "Left out", answer.left_out
