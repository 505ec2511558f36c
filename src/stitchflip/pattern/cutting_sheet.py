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
    FigureBox,
    Heading,
    Items,
    Paragraph,
    TickList,
    Together,
    Voice,
    Words,
    words,
)
from stitchflip.pattern.safety import cutter_caution
from stitchflip.pattern.telling import Teller
from stitchflip.pictures.drawing import color_of
from stitchflip.pictures.motifs import motif_plan
from stitchflip.planning.cutting_wishes import slip_heading

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.planning.cutting_answers import CuttingAnswer, CuttingTold
    from stitchflip.planning.cutting_wishes import KitsAnswer


def cutting_sheet(told: CuttingTold) -> Document:
    """The order of cuts of some fabrics, to print.

    Args:
        told: everything there is to say.

    Returns:
        A document of as many pages as it needs.
    """
    plan = told.plan
    teller = Teller(plan)
    blocks: list[Block] = [Heading(1, plan.project.name), *_opening(teller)]
    for only in told.only:
        blocks.append(Heading(2, f"If there is only so much of {only.fabric}"))
        blocks.append(Items(tuple(words(line) for line in only.says)))
    if told.kits is not None:
        blocks.append(Heading(2, told.kits.teacher[0].rstrip(":")))
        blocks.append(Items(tuple(words(line) for line in told.kits.teacher[1:])))
    for answer in told.answers:
        blocks += _of_fabric(teller, answer)
    if told.kits is not None:
        blocks += _slips(told.kits)
    return Document(
        name=plan.project.name,
        kind="Cutting sheet",
        edition=teller.edition,
        unit=teller.unit,
        blocks=tuple(blocks),
    )


def _slips(kits: KitsAnswer) -> Iterator[Block]:
    """What goes into each bag, to tick off or to cut out."""
    yield Heading(2, "Packing slips")
    for number, slip in enumerate(kits.slips, 1):
        items = TickList(tuple(words(line) for line in slip.lines), f"slip {number}")
        yield Together((Heading(3, slip_heading(slip, kits.bags)), items))


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
    said = (
        (answer.amount_heading, answer.buy),
        ("How sure", answer.sure),
        ("Motifs", answer.motifs.says if answer.motifs is not None else ""),
        ("Closer", answer.closer),
    )
    before = Facts(tuple((label, words(text)) for label, text in said if text))
    box = diagram(teller, answer.fabric)
    yield Together((heading, before, box) if box is not None else (heading, before))
    yield from order_tables(answer.steps)
    if answer.motifs is not None:
        yield _motifs(teller, answer)
    after = tuple(_after(answer))
    if after:
        yield Together((Facts(after),))


def _motifs(teller: Teller, answer: CuttingAnswer) -> Block:
    """Where windows lie round the motifs, for one start of the print."""
    if answer.motifs is None:
        return Paragraph(())
    color = color_of(teller.plan, answer.fabric.fabric)
    picture = motif_plan(answer.motifs.plan, teller.unit, answer.fabric.fabric, color)
    where = (
        "Windows round the motifs, drawn for a start of the print that gives fewest"
        if answer.motifs.plan.is_example
        else "Windows round the motifs"
    )
    return FigureBox(picture, 5.0, 4.4, key=f"motifs {answer.fabric.fabric}", caption=words(where))


def _after(answer: CuttingAnswer) -> Iterator[tuple[str, Words]]:
    if answer.order.is_finer:
        yield "Mind", words("Cut lengths are finer here than in the list: rounded up they would not fit.")
    said = (
        ("While you sew", " ".join(answer.while_sewing)),
        ("Tipping points", " ".join(answer.tipping_points)),
        ("Mistakes you can afford", answer.mistakes),
        ("The other way", answer.other_way),
        ("For the shelf", "; ".join(answer.leftovers)),
        ("Left out", answer.left_out),
    )
    yield from ((label, words(text)) for label, text in said if text)
