"""What you need, cautions, and what to do before the first cut."""

from __future__ import annotations

from stitchflip.pattern.model import (
    Block,
    Box,
    BoxKind,
    Cell,
    Column,
    Columns,
    Facts,
    Heading,
    Paragraph,
    Swatch,
    Table,
    TickList,
    Together,
    Words,
    strong,
    words,
)
from stitchflip.pattern.purchases import (
    amount_words,
    backing_size,
    backing_words,
    basis_words,
    batting_words,
    by_letter,
    notions,
    role_words,
    spare_words,
    tools,
)
from stitchflip.pattern.safety import cautions
from stitchflip.pattern.telling import Teller, counted, listed
from stitchflip.project.model import Edge, Wash


def what_you_need(teller: Teller) -> tuple[Block, ...]:
    """Fabrics, batting, backing, notions, tools."""
    rows = (
        (
            "Backing",
            words("cut ", strong(backing_size(teller)), f": {backing_words(teller, teller.plan.backing.best)}."),
        ),
        *_other_backings(teller),
        ("Batting", batting_words(teller)),
        *_edge(teller),
        *_precuts(teller),
    )
    return (
        Heading(2, "What you need"),
        _fabric_table(teller),
        Facts(rows),
        Together((Columns((_list("Notions", notions(teller)), _list("Tools", tools(teller))), (1, 1)),)),
    )


def _edge(teller: Teller) -> tuple[tuple[str, Words], ...]:
    """What the edge is made from, where it is made from something."""
    plan, say = teller.plan, teller.say
    if plan.project.binding.edge is Edge.BINDING and not plan.edge.bias_square:
        said = words(
            f"from {plan.binding.fabric}: {counted(plan.binding.strips, 'strip')} cut ",
            strong(say.width(plan.binding.cut)),
            " wide, in the amount above.",
        )
        return (("Binding", said),)
    rows = [
        words(
            f"from {piece.fabric}: {piece.name[:1].lower()}{piece.name[1:]}, {piece.count * teller.how_many} cut ",
            strong(say.cut_size(min(piece.wide, piece.long), max(piece.wide, piece.long))),
            ", in the amount above.",
        )
        for piece in plan.edge.pieces
    ]
    return tuple(("Edge" if place == 0 else "", row) for place, row in enumerate(rows))


def _list(name: str, items: tuple[Words, ...]) -> tuple[Block, ...]:
    return Heading(3, name), TickList(items, name.lower())


def _fabric_table(teller: Teller) -> Table:
    rows: list[tuple[Cell, ...]] = [
        (
            teller.named(fabric.fabric),
            words(role_words(teller, fabric.fabric)),
            amount_words(teller, fabric),
            words(basis_words(teller, fabric), _spare(teller, fabric.fabric)),
            Swatch(0.75, 0.36),
        )
        for fabric in by_letter(teller)
    ]
    columns = (
        Column("fabric", share=1.15),
        Column("for", share=1.1),
        Column("amount", share=1.1),
        Column("based on", share=1.8),
        Column("swatch"),
    )
    return Table(columns, tuple(rows))


def _spare(teller: Teller, name: str) -> Words:
    fabric = next(one for one in teller.plan.fabrics if one.fabric == name)
    spare = spare_words(teller, fabric)
    return words("; ", spare) if spare else ()


def _other_backings(teller: Teller) -> tuple[tuple[str, Words], ...]:
    others = [backing_words(teller, one) for one in teller.plan.backing.others if one.buy_in > 0]
    return (("", words(f"or {listed(others[:2], 'or')}.")),) if others else ()


def _precuts(teller: Teller) -> tuple[tuple[str, Words], ...]:
    """Precut strips of the usual width do instead, where strips are cut that wide anyway."""
    usual = teller.pick(2.5, 6.5)
    found = [
        f"{len(strips.strips)} for {fabric.fabric}"
        for fabric in by_letter(teller)
        for strips in fabric.strip_plans
        if abs(strips.width - usual) < 1e-6 and strips.strips and fabric.buy_in > 0
    ]
    if not found:
        return ()
    longest = teller.say.near(teller.usable_width)
    said = (
        f"precut strips {teller.say.width(usual)} wide will do for the strips cut that wide, if they measure "
        f"{longest} or more: {listed(found)}."
    )
    return (("Precuts", words(said)),)


def before_you_cut(teller: Teller) -> tuple[Block, ...]:
    """Cautions, then fabric, seam test and a small one first."""
    return (
        cautions(teller),
        Heading(2, "Before you cut"),
        TickList(tuple(_preparing(teller)), "before"),
        Together((Heading(3, "Test your seam"), *_seam_test(teller))),
        Box(BoxKind.TIP, "Make one small first", (_small_one(teller),)),
    )


def _preparing(teller: Teller) -> list[Words]:
    fabrics = teller.project.fabrics
    washed = [one.name for one in fabrics if one.washed is Wash.WASHED]
    if len(washed) == len(fabrics):
        wash = "All fabrics are reckoned washed. Wash each the way the piece will be washed."
    elif washed:
        wash = (
            f"{listed(washed)} washed, the others not: that puckers at the first wash. Wash all of them, or starch "
            "all of them."
        )
    else:
        wash = "Wash none of the fabrics or all of them, never some. Amounts here are for unwashed fabric."
    items: list[Words] = [words(wash)]
    untested = [one.name for one in fabrics if one.dark_dye and not one.dye_tested]
    if untested:
        items.append(
            words(f"Test the dye of {listed(untested)} with a wet white cloth before anything pale lies beside it.")
        )
    slanted = teller.project.center is not None and teller.project.center.turned % 90 != 0
    starch = "Starch and press every fabric"
    items.append(
        words(
            f"{starch}; the center is cut on the slant and its sides would stretch."
            if slanted
            else f"{starch}, or press it well."
        )
    )
    items.append(words(_straightening(teller)))
    items.append(words("Put in a new needle, wind two bobbins, and sew a test seam through a scrap of the same base."))
    return items


def _straightening(teller: Teller) -> str:
    """What straightening takes: a length of each purchase, and both ways of a piece on hand."""
    plan, say = teller.plan, teller.say
    said = ["Straighten the cut end of each fabric."]
    if any(fabric.buy_in > 0 for fabric in plan.fabrics):
        said.append(f"The amounts to buy hold {say.width(plan.numbers.straightening)} a fabric for it.")
    sheets = [sheet for fabric in plan.fabrics for sheet in fabric.hand_sheets]
    straight = dict.fromkeys(
        f"{sheet.name} {say.size(sheet.wide, sheet.long)} gives "
        + say.size(*_ways(sheet.along, sheet.usable_length, sheet.usable_stack))
        for sheet in sheets
    )
    if straight:
        said.append(f"Reckoned once straight: {listed(list(straight))}.")
    return " ".join(said)


def _ways(along: str, length: float, stack: float) -> tuple[float, float]:
    """(wide, long) of what a sheet gives, whichever side its strips run along."""
    return (length, stack) if along == "wide" else (stack, length)


def _seam_test(teller: Teller) -> tuple[Block, ...]:
    """Three strips sewn side by side show what the seam allowance really is."""
    say, seam = teller.say, teller.plan.numbers.seam
    wide = teller.pick(2.5, 6.5)
    long = teller.pick(6, 15)
    said = words(
        f"Cut three strips of scrap {say.cut_size(wide, long)} and sew them side by side along their long edges. "
        "Pressed "
        f"flat, the outer two should measure ",
        strong(say.width(wide - seam)),
        " and the middle one ",
        strong(say.width(wide - 2 * seam)),
        ". Wider: sew a hair farther from the edge. Narrower: a hair closer to it.",
    )
    return (Paragraph(said),)


def _small_one(teller: Teller) -> Paragraph:
    side = teller.pick(4.5, 11.5)
    return Paragraph(
        words(
            "From leftovers of the same base and strips make one coaster, squared up "
            f"{teller.say.size(side, side)}. In a "
            "quarter of an hour it tests seam, thread, batting and taste, before the good fabric is cut."
        )
    )
