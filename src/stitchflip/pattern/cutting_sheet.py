"""The cutting sheet: for each fabric the diagram, every cut in its order with what is left, and what to know before.

It lies beside the mat. Numbers in the diagram are the numbers of the order.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.pattern.cutting_order import diagram, order_tables
from stitchflip.pattern.model import (
    Block,
    Box,
    BoxKind,
    Document,
    Facts,
    Heading,
    Paragraph,
    Together,
    Voice,
    Words,
    words,
)
from stitchflip.pattern.safety import cutter_caution
from stitchflip.pattern.telling import Teller

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.planning.cutting_answers import CuttingAnswer
    from stitchflip.planning.model import Plan


def cutting_sheet(plan: Plan, answers: Sequence[CuttingAnswer]) -> Document:
    """The order of cuts of some fabrics, to print.

    Args:
        plan: the whole plan.
        answers: what is said about each fabric.

    Returns:
        A document of as many pages as it needs.
    """
    teller = Teller(plan)
    blocks: list[Block] = [Heading(1, plan.project.name), *_opening(teller)]
    for answer in answers:
        blocks += _of_fabric(teller, answer)
    return Document(
        name=plan.project.name,
        kind="Cutting sheet",
        edition=teller.edition,
        unit=teller.unit,
        blocks=tuple(blocks),
    )


def _opening(teller: Teller) -> Iterator[Block]:
    alike = f" All {teller.how_many} alike are cut together." if teller.is_several else ""
    said = (
        f"Sizes are wide × long; of fabric, across it and along it. Numbers in a diagram are the numbers of the order "
        f"beside it.{alike} Label each piece as you cut it; count before you go on."
    )
    yield Paragraph(words(said), Voice.LEAD)
    yield Box(BoxKind.CAUTION, "Take care", (Paragraph(cutter_caution()),))


def _of_fabric(teller: Teller, answer: CuttingAnswer) -> Iterator[Block]:
    heading = Heading(2, f"{answer.letter} · {answer.fabric.fabric}".removeprefix(" · "))
    closer = (("Closer", words(answer.closer)),) if answer.closer else ()
    before = Facts((("Buy", words(answer.buy)), ("How sure", words(answer.sure)), *closer))
    box = diagram(teller, answer.fabric)
    yield Together((heading, before, box) if box is not None else (heading, before))
    yield from order_tables(answer.steps)
    after = tuple(_after(answer))
    if after:
        yield Together((Facts(after),))


def _after(answer: CuttingAnswer) -> Iterator[tuple[str, Words]]:
    if answer.order.is_finer:
        yield "Mind", words("Cut lengths are finer here than in the list: rounded up they would not fit.")
    said = (
        ("Tipping points", " ".join(answer.tipping_points)),
        ("Mistakes you can afford", answer.mistakes),
        ("The other way", answer.other_way),
        ("For the shelf", "; ".join(answer.leftovers)),
        ("Left out", answer.left_out),
    )
    yield from ((label, words(text)) for label, text in said if text)
