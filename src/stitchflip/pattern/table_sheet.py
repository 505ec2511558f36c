"""The table sheet: one page beside the machine, for the maker herself, with every number she needs today."""

from __future__ import annotations

from stitchflip.cutting.model import StripPlan
from stitchflip.lengths import TOLERANCE_IN, UNIT_SPACE
from stitchflip.pattern.center_words import shape_words, turn_words, window_words
from stitchflip.pattern.how_to_sew import kind_sewn_like
from stitchflip.pattern.joined_pages import join_line
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
from stitchflip.pattern.square_words import diagonals, distances, edge_line, is_all_curve, margins, reach_words
from stitchflip.pattern.strip_facts import has_own_line, loose_ends
from stitchflip.pattern.telling import Teller, counted, listed, number_word, runs_of, runs_of_strips, sentence
from stitchflip.pattern.way_words import WITHOUT_ROUNDS
from stitchflip.pictures import finished, order, paper_height
from stitchflip.pictures.model import Figure
from stitchflip.planning.model import Finding, Plan, Severity
from stitchflip.project.model import Edge, Through

_MOST_FINDINGS = 4
_MOST_LOCKS = 8
_MOST_MEASURED = 4
_FIRST_SIDES = 4
_LONG_ORDER = 14
"""Rows in the table of the order from which the page needs all its room for it."""
_FEW_FABRICS = 8
"""Fabrics whose strips still stand beside the picture."""
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
    if teller.is_quilt:
        alike += f"{_blocks_words(teller)}, each squared up {teller.block_size()}. "
    said = words(alike, "Squared up ", strong(teller.squared_up_size()), muted(f" · {teller.edition}"))
    return Heading(1, teller.project.name), Paragraph(said, Voice.BODY)


def _blocks_words(teller: Teller) -> str:
    """How many blocks of each kind."""
    kinds = [f"{kind.count * teller.how_many} “{kind.name}”" for kind in teller.kinds if kind.name and kind.count]
    of_kinds = f" ({listed(kinds)})" if len(kinds) > 1 else ""
    return f"{counted(teller.bases, 'block')}{of_kinds}"


def _of_parts(teller: Teller) -> tuple[Block, ...]:
    """Which strips are joined end to end first, and from what."""
    steps = [strip for strip in teller.strips if strip.sections]
    if not steps:
        return ()
    squares = sorted({round(strip.cut_width, 6) for strip in steps})
    size = listed([teller.say.width(one) for one in squares])
    said = f"strips {runs_of([strip.step for strip in steps])}: {size} wide; lengths above are as joined."
    return (Paragraph(words(strong("Join end to end first: "), said), Voice.SMALL),)


def other_kinds(teller: Teller) -> tuple[Block, ...]:
    """The further kinds of block in a line each: what differs from the first."""
    said = []
    for place in teller.used_kinds[1:]:
        kind = teller.kinds[place]
        like = kind_sewn_like(teller, place)
        if like is not None:
            said.append(words(strong(kind.name), f": like “{teller.kinds[like].name}”, in its own fabrics."))
        else:
            sides = ", ".join(f"{strip.step} {strip.side}" for strip in kind.build.strips[:_FIRST_SIDES] if strip.side)
            said.append(words(strong(kind.name), f": its own order of sewing; it begins {sides}. See the pattern."))
    named = teller.kinds[0].name
    own = (words(strong(named), " is what the table shows."),) if said and named else ()
    return (Items((*own, *said)),) if said else ()


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
    strips = strips_ready(teller)
    ready: tuple[Block, ...] = (Heading(2, "Strips to have ready"), strips) if strips.rows else ()
    title = "Order, and the line of each seam" if has_own_line(teller) else "Order, and where you should be"
    heading, where = Heading(2, title), (*order_tables(teller), *_of_parts(teller), *other_kinds(teller))
    if _can_be_read(numbered, 3.5, 3.8):
        is_long = len(runs_of_strips(teller.strips)) > _LONG_ORDER and len(strips.rows) <= _FEW_FABRICS
        beside: tuple[Block, ...] = ready if is_long else ()
        below: tuple[Block, ...] = () if is_long else ready
        size = (1.5, 1.1) if is_long else (2.0, 1.5)
        return (
            Columns(((FigureBox(numbered, 3.5, 3.8),), (FigureBox(colors, *size), *first, *beside)), (1, 1)),
            *below,
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
    of_each = "" if plan.project.base.through is Through.BATTING_ONLY else " of each"
    times = f"{teller.bases}{of_each}, " if teller.bases > 1 else ""
    layers = {
        Through.BACKING_AND_BATTING: "backing and batting",
        Through.BATTING_ONLY: "batting",
        Through.BATTING_ON_FOUNDATION: "batting and thin foundation",
    }[plan.project.base.through]
    base = words("Base: ", times, f"{layers} ", strong(say.size(*teller.wide_long(plan.base.wide, plan.base.high))))
    return (base, first_piece_words(teller), *edge_cut_words(teller), *joining_cut_words(teller))


def first_piece_words(teller: Teller) -> Words:
    """The first piece as it is cut and turned."""
    first = teller.plan.build.pieces[0]
    pieces = [
        one
        for one in teller.plan.pieces_by_fabric.get(first.fabric, ())
        if one.step == 0 and one.kind != "binding" and one.name.split(" ")[0] in {"Center", "Middle", "First", "1"}
    ]
    count = f"{teller.bases} of " if teller.bases > 1 else ""
    name = sentence(teller.first_name)
    if not pieces:
        return words(f"{name}: {count}", teller.named(first.fabric))
    one = pieces[0]
    size = f"{teller.cut_numbers(one.kind, one.wide, one.long)}{UNIT_SPACE}{teller.unit_word}"
    said = (strong(size), shape_words(teller), turn_words(teller), window_words(teller, one.window))
    return words(f"{name}: {count}", teller.named(first.fabric), " cut ", *said)


def edge_cut_words(teller: Teller) -> tuple[Words, ...]:
    """What the edge, a sleeve and a label are cut from; nothing for an edge that needs no fabric of its own."""
    plan, say = teller.plan, teller.say
    said: list[Words] = []
    if plan.project.binding.edge is Edge.BINDING and not plan.edge.bias_square:
        strips = counted(plan.binding.strips, "strip")
        fabric = teller.named(plan.binding.fabric)
        said.append(words("Binding: ", fabric, f" {strips} cut ", strong(say.width(plan.binding.cut)), " wide"))
    for piece in (*plan.edge.pieces, *plan.extras.pieces):
        size = say.cut_size(min(piece.wide, piece.long), max(piece.wide, piece.long))
        count = piece.count * teller.how_many
        said.append(words(f"{piece.name}: ", teller.named(piece.fabric), f" {count} cut ", strong(size)))
    return tuple(said)


def joining_cut_words(teller: Teller) -> tuple[Words, ...]:
    """Borders and setting triangles; the joining strips stand with the joining."""
    quilt, say = teller.plan.quilt, teller.say
    if quilt is None:
        return ()
    said: list[Words] = []
    if quilt.triangles is not None:
        one = quilt.triangles
        corner = say.cut_size(one.corner_cut, one.corner_cut)
        sides = f"{one.side_squares} cut {say.cut_size(one.side_cut, one.side_cut)}, " if one.side_squares else ""
        said.append(
            words("Squares for triangles: ", teller.named(one.fabric), f" {sides}{one.corner_squares} cut {corner}")
        )
    for border in quilt.borders:
        long = f"{say.cut(border.sides_long)} and {say.cut(border.ends_long)}"
        said.append(
            words("Border: ", teller.named(border.fabric), f" cut {say.width(border.cut)} wide, two each {long}")
        )
    return tuple(said)


def strips_ready(teller: Teller) -> Table:
    """How many strips of each width to cut from each fabric, before the binding's own."""
    rows: list[tuple[Words, ...]] = []
    for fabric in by_letter(teller):
        plans = [one for one in fabric.strip_plans if one.strips and not _is_binding(teller, fabric.fabric, one)]
        if not plans:
            continue
        strips = [strip for one in plans for strip in one.strips]
        sources = dict.fromkeys(f"{strip.stock}, {teller.say.near(strip.length)}" for strip in strips)
        widths = dict.fromkeys(one.width for one in plans)
        counts = [
            words(strong(teller.bare.width(width)), f": {sum(len(one.strips) for one in plans if one.width == width)}")
            for width in widths
        ]
        rows.append((teller.named(fabric.fabric), _dotted(counts), words(listed(list(sources)))))
    columns = (
        Column("fabric", share=1),
        Column(f"cut wide, {teller.unit_word}: how many", share=1.1),
        Column("from, usable length", share=1.2),
    )
    return Table(columns, tuple(rows))


def _is_binding(teller: Teller, fabric: str, strips: StripPlan) -> bool:
    """True for whole strips that are the binding's, which is cut first."""
    binding = teller.plan.binding
    is_its_own = fabric == binding.fabric and abs(strips.width - binding.cut) < TOLERANCE_IN
    return strips.is_whole and (teller.plan.quilt is None or is_its_own)


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
    if teller.plan.square_up.curve and not is_all_curve(teller):
        rows.append(("Corners", words(teller.plan.square_up.curve)))
    rows += [*_apart(teller), *_joined(teller)]
    is_bound = teller.project.binding.edge is Edge.BINDING
    rows += [
        ("Bind" if is_bound else "Edge", edge_line(teller)),
        ("Stitching", widest_words(teller)),
        ("Iron", words(iron_words(teller))),
        ("Take care", words(*(words(one, " ") for one in short_reminders(teller)))),
    ]
    heading = "Lock, square up, bind" if is_bound and not teller.is_quilt else "Lock, square up, finish"
    return Heading(2, heading), Facts(tuple(rows)), BlankLines(_to_write(teller))


def _apart(teller: Teller) -> list[tuple[str, Words]]:
    """The panels of a base that is cut apart, with the seams the cuts open."""
    panels = teller.plan.panels
    if panels is None:
        return []
    size = teller.size_of(panels.wide, panels.high)
    steps = sorted({step for step, _ in panels.ends_to_lock})
    lock = f"; stay-stitch first on both sides of each cut: it opens {runs_of(steps)}" if steps else ""
    return [
        ("Cut apart", words(f"{counted(len(panels.panels), 'panel')}, each ", strong(f"{size} squared up"), lock, "."))
    ]


def _joined(teller: Teller) -> list[tuple[str, Words]]:
    """The join, and the size of the whole."""
    quilt = teller.plan.quilt
    said = join_line(teller)
    if quilt is None:
        return []
    rows = [("Join", said)] if said else []
    done = "all is joined" if teller.is_quilt else "the borders are on"
    return [*rows, ("The whole", words(strong(f"{teller.squared_up_size()}"), f", squared up when {done}."))]


def locks(teller: Teller) -> Words:
    """Every seam end that nothing holds; "none" said out loud."""
    found = [(strip.step, [name for name, _ in loose_ends(strip)]) for strip in teller.strips if loose_ends(strip)]
    if not found:
        return words(
            strong("none to lock"), f": every seam end is crossed by a later seam or caught in {_holder(teller)}."
        )
    said = [f"{teller.strip_word} {teller.number(step)} {listed(names)}" for step, names in found[:_MOST_LOCKS]]
    more = f" and {len(found) - _MOST_LOCKS} more" if len(found) > _MOST_LOCKS else ""
    inside = teller.say.width(teller.pick(0.25, 0.7))
    return words(
        strong("; ".join(said) + more), f" end. Start {inside} inside, sew back to the raw edge, then forward."
    )


def _holder(teller: Teller) -> str:
    """What holds the seam ends at the edge."""
    if teller.is_quilt:
        return "a joining seam"
    if teller.is_bordered:
        return "the seam of the border"
    return {
        Edge.BINDING: "the binding",
        Edge.SELF_BINDING: "the turned backing",
        Edge.FACING: "the facing",
        Edge.TURNED_THROUGH: "the seam round the edge",
    }[teller.project.binding.edge]


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
    if has_own_line(teller):
        return ("Measured, squared up", "Changes")
    measured = [strip for strip in teller.strips if strip.step in pauses_of(teller).measure]
    is_rows = teller.project.building.way in WITHOUT_ROUNDS
    places = [f"strip {strip.step}" if is_rows else f"round {strip.round}" for strip in measured]
    return (*(f"Measured after {place}" for place in places[:_MOST_MEASURED]), "Changes")
