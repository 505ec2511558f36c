"""The table sheet: one page beside the machine, for the maker herself, with every number she needs today."""

from __future__ import annotations

from stitchflip.lengths import UNIT_SPACE
from stitchflip.pattern.center_words import shape_words, turn_words, window_words
from stitchflip.pattern.model import (
    BlankLines,
    Block,
    Box,
    BoxKind,
    Column,
    Columns,
    Document,
    Facts,
    FigureBox,
    Fit,
    Heading,
    Items,
    Paragraph,
    Table,
    Voice,
    Words,
    muted,
    strong,
    words,
)
from stitchflip.pattern.order_table import order_tables
from stitchflip.pattern.purchases import by_letter
from stitchflip.pattern.safety import short_reminders
from stitchflip.pattern.sewing_pages import pauses_of
from stitchflip.pattern.square_words import binding_line, diagonals, distances, margins, reach_words, start_words
from stitchflip.pattern.strip_facts import loose_ends
from stitchflip.pattern.telling import Teller, counted, listed, number_word, sentence
from stitchflip.pictures import finished, order, paper_height
from stitchflip.pictures.model import Figure
from stitchflip.planning.model import Finding, Plan, Severity
from stitchflip.project.model import Way

_MOST_FINDINGS = 4
_MOST_LOCKS = 8
_MOST_MEASURED = 4
_WIDE_PICTURE = 2.0
"""A picture this much wider than high stands across the page."""


def table_sheet(plan: Plan) -> Document:
    """One page for the maker's own table.

    Args:
        plan: the whole plan.

    Returns:
        A document that fits exactly one page: what to cut first, strips to have ready, the order with the places
        of the raw edges, ends to lock, squaring up, binding, and room to write down what was measured.
    """
    teller = Teller(plan)
    return Document(
        name=plan.project.name,
        kind="Table sheet",
        edition=teller.edition,
        unit=teller.unit,
        blocks=(*_head(teller), *_look_first(teller), *_middle(teller), *_end(teller)),
        fit=Fit.ONE_PAGE,
    )


def _head(teller: Teller) -> tuple[Block, ...]:
    alike = f"Make {number_word(teller.how_many)} alike. " if teller.is_several else ""
    said = words(alike, "Squared up ", strong(teller.squared_up_size()), muted(f" · {teller.edition}"))
    return Heading(1, teller.project.name), Paragraph(said, Voice.BODY)


def _look_first(teller: Teller) -> tuple[Block, ...]:
    """What is wrong with the plan, before anything is cut."""
    grave = [one for one in teller.plan.findings if one.severity is not Severity.NOTE]
    reach = reach_words(teller)
    reaching = (Paragraph(words(strong("Before you cut. "), reach), Voice.SMALL),) if reach else ()
    if not grave:
        return reaching
    said = [finding_words(one) for one in grave[:_MOST_FINDINGS]]
    if len(grave) > _MOST_FINDINGS:
        said.append(words(f"{counted(len(grave) - _MOST_FINDINGS, 'thing')} more to look at in the plan."))
    return (Box(BoxKind.LOOK, "Look at this before you cut", (Items(tuple(said)),)), *reaching)


def finding_words(finding: Finding) -> Words:
    """A finding with its first cure."""
    word = {Severity.STOP: "Stop. ", Severity.FIX: "Fix. ", Severity.NOTE: "Good to know. "}[finding.severity]
    cure = f" {sentence(finding.cures[0].text.rstrip('.'))}." if finding.cures else ""
    return words(strong(word), finding.what, cure)


# --- the middle: pictures, cutting, order ----------------------------------------------------------------


def _middle(teller: Teller) -> tuple[Block, ...]:
    """Pictures, what to cut, and the order; across the page or beside each other, by the shape of the piece."""
    colors, numbered = finished(teller.plan, letters=False), order(teller.plan)
    first = (Heading(2, "Cut first"), Items(cut_first(teller)))
    ready = (Heading(2, "Strips to have ready"), strips_ready(teller))
    heading, where = Heading(2, "Order, and where you should be"), order_tables(teller)
    if _can_be_read(numbered, 3.5, 3.8):
        return (
            Columns(((FigureBox(numbered, 3.5, 3.8),), (FigureBox(colors, 2.0, 1.5), *first)), (1, 1)),
            *ready,
            heading,
            *where,
        )
    across = (FigureBox(numbered, 7.5, 3.6),) if _can_be_read(numbered, 7.5, 3.6) else ()
    return (
        Columns(((FigureBox(colors, 3.2, 1.3), *first), ready), (1, 1.1)),
        heading,
        *across,
        *where,
    )


def _can_be_read(numbered: Figure, wide_in: float, high_in: float) -> bool:
    """Whether the order's numbers have room in the picture; a wide piece stands across the page, not in half of it."""
    (x0, y0), (x1, y1) = numbered.low, numbered.high
    if wide_in < 7 and x1 - x0 >= _WIDE_PICTURE * (y1 - y0):
        return False
    narrower = wide_in * min(1.0, 0.97 * high_in / paper_height(numbered, wide_in))
    return any(paper_height(numbered, wide) <= 1.02 * high_in for wide in (wide_in, narrower))


def cut_first(teller: Teller) -> tuple[Words, ...]:
    """What is cut before the strips: base, first piece, binding."""
    plan, say = teller.plan, teller.say
    times = f"{teller.how_many} of each, " if teller.is_several else ""
    base = words(
        "Base: ", times, "backing and batting ", strong(say.size(*teller.wide_long(plan.base.wide, plan.base.high)))
    )
    return (base, first_piece_words(teller), binding_strips_words(teller))


def first_piece_words(teller: Teller) -> Words:
    """The first piece as it is cut and turned."""
    first = teller.plan.build.pieces[0]
    pieces = [
        one for one in teller.plan.pieces_by_fabric.get(first.fabric, ()) if one.step == 0 and one.kind != "binding"
    ]
    count = f"{teller.how_many} of " if teller.is_several else ""
    name = sentence(teller.first_name)
    if not pieces:
        return words(f"{name}: {count}", teller.named(first.fabric))
    one = pieces[0]
    size = f"{teller.cut_numbers(one.kind, one.wide, one.long)}{UNIT_SPACE}{teller.unit_word}"
    said = (strong(size), shape_words(teller), turn_words(teller), window_words(teller, one.window))
    return words(f"{name}: {count}", teller.named(first.fabric), " cut ", *said)


def binding_strips_words(teller: Teller) -> Words:
    """The binding's strips."""
    binding = teller.plan.binding
    strips = counted(binding.strips, "strip")
    return words(
        "Binding: ", teller.named(binding.fabric), f" {strips} cut ", strong(teller.say.width(binding.cut)), " wide"
    )


def strips_ready(teller: Teller) -> Table:
    """How many strips of each width to cut from each fabric, before the binding's own."""
    rows: list[tuple[Words, ...]] = []
    for fabric in by_letter(teller):
        plans = [one for one in fabric.strip_plans if one.strips and not one.is_whole]
        if not plans:
            continue
        strips = [strip for one in plans for strip in one.strips]
        sources = dict.fromkeys(f"{strip.stock}, {teller.say.near(strip.length)}" for strip in strips)
        counts = [words(strong(teller.bare.width(one.width)), f": {len(one.strips)}") for one in plans]
        rows.append((teller.named(fabric.fabric), _dotted(counts), words(listed(list(sources)))))
    columns = (
        Column("fabric", share=1),
        Column(f"cut wide, {teller.unit_word}: how many", share=1.1),
        Column("from, usable length", share=1.2),
    )
    return Table(columns, tuple(rows))


def _dotted(parts: list[Words]) -> Words:
    return words(*(words(part, " · " if place < len(parts) - 1 else "") for place, part in enumerate(parts)))


# --- the end: lock, square up, bind, notes ---------------------------------------------------------------


def _end(teller: Teller) -> tuple[Block, ...]:
    square = words(distances(teller), " ", diagonals(teller))
    rows = [("Lock these ends", locks(teller)), ("Square up", square)]
    if margins(teller):
        rows.append(("Points", margins(teller)))
    if teller.plan.square_up.folded:
        rows.append(("On a small mat", words(teller.plan.square_up.folded)))
    rows += [
        ("Bind", words(binding_line(teller), f" Start {start_words(teller)}.")),
        ("Stitching", widest_words(teller)),
        ("Iron", words(iron_words(teller))),
        ("Take care", words(*(words(one, " ") for one in short_reminders(teller)))),
    ]
    return Heading(2, "Lock, square up, bind"), Facts(tuple(rows)), BlankLines(_to_write(teller))


def locks(teller: Teller) -> Words:
    """Every seam end that nothing holds; "none" said out loud."""
    found = [(strip.step, [name for name, _ in loose_ends(strip)]) for strip in teller.strips if loose_ends(strip)]
    if not found:
        return words(strong("none to lock"), ": every seam end is crossed by a later seam or caught in the binding.")
    said = [f"strip {step} {listed(names)}" for step, names in found[:_MOST_LOCKS]]
    more = f" and {len(found) - _MOST_LOCKS} more" if len(found) > _MOST_LOCKS else ""
    inside = teller.say.width(teller.pick(0.25, 0.7))
    return words(
        strong("; ".join(said) + more), f" end. Start {inside} inside, sew back to the raw edge, then forward."
    )


def widest_words(teller: Teller) -> Words:
    """The widest unstitched place beside what the batting allows."""
    gap, allowed = teller.plan.build.widest_gap, teller.plan.numbers.widest_gap
    say = teller.say
    return words(
        f"widest unstitched place {say.near(gap.diameter)} across; your batting allows {say.near(allowed)} between "
        "stitching lines."
    )


def iron_words(teller: Teller) -> str:
    """What the batting says about the iron."""
    fiber = teller.project.batting.fiber.value
    return (
        f"yes on {fiber} batting"
        if teller.iron_is_safe
        else f"no: {fiber} batting can melt; open strips with your fingers"
    )


def _to_write(teller: Teller) -> tuple[str, ...]:
    """Lines for what was measured, at the places where the pattern says to measure, and for changes."""
    measured = [strip for strip in teller.strips if strip.step in pauses_of(teller).measure]
    is_rows = teller.project.building.way is Way.ROWS
    places = [f"strip {strip.step}" if is_rows else f"round {strip.round}" for strip in measured]
    return (*(f"Measured after {place}" for place in places[:_MOST_MEASURED]), "Changes")
