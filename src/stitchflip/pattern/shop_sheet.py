"""The shop sheet: one page in the order of the shop, with room for a swatch and answers to what a shop says."""

from __future__ import annotations

from stitchflip.cutting.model import FabricPlan
from stitchflip.pattern.model import (
    Block,
    Cell,
    Column,
    Document,
    Fit,
    Heading,
    Items,
    Paragraph,
    Swatch,
    Table,
    TickList,
    Voice,
    Words,
    strong,
    words,
)
from stitchflip.pattern.purchases import (
    backing_size,
    backing_words,
    basis_words,
    batting_words,
    buy_words,
    by_letter,
    nothing_to_spare,
    notions,
    role_words,
    tone_word,
    way_words,
)
from stitchflip.pattern.telling import Teller, listed, number_word, sentence
from stitchflip.planning.model import Plan

_SWATCH = Swatch(1.1, 0.42)
_MANY_FABRICS = 7
_MOST_ANSWERS, _FEW_ANSWERS = 8, 4


def shop_sheet(plan: Plan) -> Document:
    """One page to take to the shop.

    Args:
        plan: the whole plan.

    Returns:
        A document that fits exactly one page: counter cuts, the shelf, batting, notions, and what to do when the
        fabric is narrower or out of stock.
    """
    teller = Teller(plan)
    return Document(
        name=plan.project.name,
        kind="Shop sheet",
        edition=teller.edition,
        unit=teller.unit,
        blocks=(*_head(teller), *_counter(teller), *_shelf(teller), *_batting(teller), *_answers(teller)),
        fit=Fit.ONE_PAGE,
    )


def _head(teller: Teller) -> tuple[Block, ...]:
    alike = f"{sentence(number_word(teller.how_many))} alike. " if teller.is_several else ""
    said = words(
        f"{alike}Squared up {teller.squared_up_size()}. All amounts are for everything, straightening included."
    )
    return Heading(1, teller.project.name), Paragraph(said, Voice.LEAD)


def _swatch(teller: Teller) -> Swatch:
    """Room for a swatch; many fabrics get smaller ones, so that all stand on one page."""
    many = len(teller.plan.fabrics) > _MANY_FABRICS
    return Swatch(0.9, 0.27) if many else _SWATCH


def _counter(teller: Teller) -> tuple[Block, ...]:
    swatch = _swatch(teller)
    rows: list[tuple[Cell, ...]] = [
        (
            words(teller.named(fabric.fabric)),
            words(role_words(teller, fabric.fabric)),
            _amount(teller, fabric),
            basis_words(teller, fabric),
            swatch,
        )
        for fabric in by_letter(teller)
        if fabric.buy_in > 0
    ]
    best = teller.plan.backing.best
    if best.buy_in > 0:
        rows.append(
            (
                words(strong("Backing"), _own_name(teller)),
                words("backing"),
                words(strong(teller.purchase(best.buy_in))),
                words(f"{teller.say.near(teller.plan.backing.usable_width)} usable width, {way_words(teller, best)}"),
                swatch,
            )
        )
    columns = (
        Column("fabric", share=1.2),
        Column("for", share=1.1),
        Column("buy", share=1.1),
        Column("reckoned with", share=1.5),
        Column("swatch"),
    )
    return Heading(2, "At the counter"), Table(columns, tuple(rows))


def _amount(teller: Teller, fabric: FabricPlan) -> Words:
    """What to buy, and when it leaves nothing for a slip of the cutter."""
    warning = nothing_to_spare(teller, fabric)
    return words(buy_words(teller, fabric), f"; {warning}" if warning else "")


def _own_name(teller: Teller) -> str:
    name = teller.plan.backing.fabric
    return "" if name.lower() == "backing" else f" {name}"


def _shelf(teller: Teller) -> tuple[Block, ...]:
    taken = [(fabric.fabric, listed(list(fabric.from_hand))) for fabric in teller.plan.fabrics if fabric.from_hand]
    if not taken:
        return ()
    items = tuple(words(teller.named(name), f": {said}") for name, said in taken)
    return Heading(2, "Already on your shelf"), TickList(items, "shelf")


def _batting(teller: Teller) -> tuple[Block, ...]:
    others = [backing_words(teller, choice) for choice in teller.plan.backing.others if choice.buy_in > 0]
    backing = words(
        "Backing, cut ", strong(backing_size(teller)), f": {backing_words(teller, teller.plan.backing.best)}", "."
    )
    more = words(f"Or {listed(others[:2], 'or')}.") if others else ()
    items = tuple(item for item in (words("Batting ", batting_words(teller)), backing, more) if item)
    return Heading(2, "Batting and backing"), Items(items), Heading(2, "Notions"), TickList(notions(teller), "notions")


def _answers(teller: Teller) -> tuple[Block, ...]:
    answers: list[Words] = []
    is_full = len(teller.plan.fabrics) > _MANY_FABRICS
    for fabric in teller.plan.fabrics:
        points = [point.what.rstrip(".") for point in fabric.tipping_points]
        if points and fabric.buy_in > 0:
            own = [
                point.removeprefix(f"{fabric.fabric}: ").removeprefix(f"{fabric.fabric}, ")
                for point in points[: 1 if is_full else 2]
            ]
            answers.append(words(teller.mark(fabric.fabric), f" {fabric.fabric}: {'; '.join(own)}."))
    shown = answers[: _FEW_ANSWERS if is_full else _MOST_ANSWERS]
    tones = [
        words(teller.mark(one.fabric), f" {one.fabric}: any {tone_word(one.color)} tone") for one in teller.plan.letters
    ]
    blocks: list[Block] = []
    if shown:
        blocks += [Heading(2, "If they only have it narrower, or wider"), Items(tuple(shown))]
    joined: list[Words] = [words(tone, "." if place == len(tones) - 1 else "; ") for place, tone in enumerate(tones)]
    blocks += [Heading(2, "If it is out of stock"), Paragraph(words(*joined))]
    return tuple(blocks)
