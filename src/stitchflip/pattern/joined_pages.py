"""Joining: the join in section, the order of rows and long seams, triangles and borders, and the size of the whole."""

from __future__ import annotations

from stitchflip.finishing.joined.words import border_words, triangle_words
from stitchflip.finishing.quilt_model import BorderPlan, QuiltPlan
from stitchflip.pattern.backing_pages import add_backing
from stitchflip.pattern.model import (
    Align,
    Block,
    Box,
    BoxKind,
    Column,
    FigureBox,
    Heading,
    Items,
    Mention,
    Numbered,
    Paragraph,
    Table,
    Together,
    Words,
    strong,
    words,
)
from stitchflip.pattern.square_words import with_picture
from stitchflip.pattern.telling import Teller, sentence
from stitchflip.pictures import join_section, joining
from stitchflip.project.model import Join, Joining

_MOST_LAYOUTS = 4


def join_blocks(teller: Teller) -> tuple[Block, ...]:
    """Everything from single blocks to the squared-up quilt; nothing for a piece by itself."""
    quilt = teller.plan.quilt
    if quilt is None:
        return ()
    if not teller.is_quilt:
        return (*_borders(teller, quilt), *add_backing(teller), _whole(teller, quilt))
    opening = words(
        "Lay the blocks out as in ",
        Mention("letters"),
        " and turn each the way it is drawn there; ",
        Mention("joining"),
        " has the order and ",
        Mention("section"),
        " has one join as if cut through.",
    )
    first, *then = _joining_words(teller, quilt)
    numbered = [
        *_unequal(teller, quilt),
        with_picture(first, "joining"),
        _rows_then_long(teller, quilt),
        *(with_picture(one, "joining") for one in then),
    ]
    order = FigureBox(
        joining(teller.plan), 4.6, 4.2, key="joining", caption=words("The order of joining, rows drawn apart.")
    )
    cut_through = FigureBox(
        join_section(teller.plan),
        6.0,
        2.4,
        key="section",
        caption=words(f"Two blocks joined, in section, larger than life. Front side up.{_stitching_words(teller)}"),
    )
    return (
        Together((Heading(2, "Join the blocks"), Paragraph(opening), cut_through)),
        *_strips(teller, quilt),
        *_triangles(teller, quilt),
        Together((Heading(3, "In this order"), Numbered(tuple(numbered)))),
        order,
        _cautions(),
        *_other_repairs(quilt),
        *_layouts(teller, quilt),
        *_borders(teller, quilt),
        *add_backing(teller),
        _whole(teller, quilt),
    )


def _stitching_words(teller: Teller) -> str:
    """What the numbers in the section stand for."""
    joined = teller.project.joined
    if joined is None or joined.join is Join.PLAIN_SEAM:
        return ""
    return " 1 to 3: the stitching in the order sewn."


def _joining_words(teller: Teller, quilt: QuiltPlan) -> list[str]:
    """What is said of the joining itself; triangles and borders have places of their own."""
    elsewhere = {*_of_triangles(teller, quilt), *border_words(teller.project, teller.plan.numbers, quilt.borders)}
    return [one for one in quilt.words if one not in elsewhere]


def _of_triangles(teller: Teller, quilt: QuiltPlan) -> tuple[str, ...]:
    joined = teller.project.joined
    if quilt.triangles is None or joined is None:
        return ()
    return tuple(triangle_words(teller.project, teller.plan.numbers, joined, quilt.triangles))


def _triangles(teller: Teller, quilt: QuiltPlan) -> tuple[Block, ...]:
    """The setting triangles, which are quilted before anything is joined."""
    said = _of_triangles(teller, quilt)
    if not said or quilt.triangles is None:
        return ()
    fabric = words("All of them: ", teller.named(quilt.triangles.fabric), ".")
    return (Together((Heading(3, "Setting triangles"), Numbered((*(words(one) for one in said), fabric)))),)


def _unequal(teller: Teller, quilt: QuiltPlan) -> list[Words]:
    """What is done first with blocks that came out unequal: the way that was chosen."""
    if quilt.repairs:
        return [words(strong("First. "), quilt.repairs[0])]
    if quilt.trimmed_to is None:
        return []
    size = teller.say.size(*teller.wide_long(*quilt.trimmed_to))
    return [words("First trim every block to ", strong(f"{size} squared up"), ".")]


def _other_repairs(quilt: QuiltPlan) -> tuple[Block, ...]:
    """What else could be done with unequal blocks; not a step, a choice."""
    if len(quilt.repairs) < 2:
        return ()
    items = Items(tuple(words(one) for one in quilt.repairs[1:]))
    return (Box(BoxKind.TIP, "Other ways with blocks of unequal size", (items,)),)


def _rows_then_long(teller: Teller, quilt: QuiltPlan) -> Words:
    """The numbers of the drawing, in words."""
    joined = teller.project.joined
    rows = len({block.row for block in quilt.blocks})
    word = "row"
    if joined is not None and joined.first is Joining.COLUMNS:
        rows, word = len({block.column for block in quilt.blocks}), "column"
    if any(block.turned for block in quilt.blocks):
        return words("Follow the numbers in ", Mention("joining"), ": each diagonal row, then the long seams.")
    if rows == 1:
        return words(f"One {word}, number 1 in ", Mention("joining"), ", joined block by block.")
    measure = f" Measure the {word}s before you cut the long strips; they follow the blocks." if quilt.strips else ""
    return words(
        "In ",
        Mention("joining"),
        f" the {word}s are 1 to {rows} and the long seams between them {rows + 1} to {2 * rows - 1}.{measure}",
    )


def _strips(teller: Teller, quilt: QuiltPlan) -> tuple[Block, ...]:
    """The joining strips: how many, of which fabric, how wide and long they are cut."""
    if not quilt.strips:
        return ()
    say = teller.bare
    rows = tuple(
        (
            words(strong(str(strip.count * teller.how_many))),
            words(sentence(strip.name)),
            teller.named(strip.fabric),
            words(f"{say.cut_size(strip.cut, strip.long)}{', joined on the slant' if strip.is_pieced else ''}"),
        )
        for strip in quilt.strips
    )
    columns = (
        Column("strips", Align.END),
        Column("for", share=1.2),
        Column("fabric", share=1),
        Column(f"cut wide × long, {teller.unit_word}", share=1.2),
    )
    return (Together((Heading(3, "Joining strips"), Table(columns, rows))),)


def _cautions() -> Block:
    return Box(
        BoxKind.CAUTION,
        "While you join",
        (
            Items(
                (
                    words("Take every pin out before the needle reaches it; quilted layers hide pins well."),
                    words(
                        "Hold the weight of the quilt on the table, not on the needle; a needle that is pulled breaks."
                    ),
                    words("Press joins from the front and only as hot as the batting stands."),
                )
            ),
        ),
    )


def _borders(teller: Teller, quilt: QuiltPlan) -> tuple[Block, ...]:
    """Each border with its strips, from the inside out."""
    if not quilt.borders:
        return ()
    said = [_border(teller, border, number, len(quilt.borders)) for number, border in enumerate(quilt.borders, 1)]
    said += [words(one) for one in border_words(teller.project, teller.plan.numbers, quilt.borders)]
    heading = "Borders" if len(quilt.borders) > 1 else "The border"
    level = 3 if teller.is_quilt else 2
    return (Together((Heading(level, heading), Numbered(tuple(said)))),)


def _border(teller: Teller, border: BorderPlan, number: int, count: int) -> Words:
    say = teller.say
    name = f"Border {number}: " if count > 1 else ""
    sides = f"two sides cut {say.cut_size(border.cut, border.sides_long)}"
    ends = f"top and bottom cut {say.cut_size(border.cut, border.ends_long)}"
    match border.corners:
        case "mitered":
            how = ", all four sewn up to the seam allowance of the corner, their ends folded to 45° and closed by hand"
        case "corner squares":
            how = ", the sides sewn first; a corner square goes on both ends of the other two before they are sewn"
        case _:
            how = ", the sides sewn first and trimmed, then the other two across their ends"
    squares: Words = ()
    if border.corner_square > 0:
        size = say.cut_size(border.corner_square, border.corner_square)
        squares = words("; four corner squares of ", teller.named(border.corner_fabric), f" cut {size}")
    return words(name, teller.named(border.fabric), f", {sides}; {ends}", squares, f"{how}.")


def _whole(teller: Teller, quilt: QuiltPlan) -> Block:
    """Squaring up the whole quilt."""
    size = teller.size_of(quilt.wide, quilt.high)
    diagonal = teller.say.near((quilt.wide**2 + quilt.high**2) ** 0.5)
    stay = teller.say.width(teller.pick(0.125, 0.3))
    doing = (
        words("Lay the quilt flat and measure through its middle, both ways: ", strong(f"{size} squared up"), "."),
        words("Corner to opposite corner: ", strong(diagonal), ", both alike. Trim only what stands over."),
        words(f"Sew once round, {stay} inside the trimmed edge."),
    )
    heading = "Square up the quilt" if teller.is_quilt else "Square up with the borders on"
    return Together((Heading(2, heading), Numbered(doing)))


def _layouts(teller: Teller, quilt: QuiltPlan) -> tuple[Block, ...]:
    """Other ways to lay as many blocks, with the size of the whole and the backing each needs."""
    rows = tuple(
        (
            words(strong(f"{one.across} × {one.down}")),
            words(str(one.left_over) if one.left_over else "none"),
            words(teller.bare.size(*teller.wide_long(one.wide, one.high))),
            words(one.backing),
        )
        for one in quilt.layouts[:_MOST_LAYOUTS]
    )
    if not rows:
        return ()
    columns = (
        Column("blocks across × down"),
        Column("blocks left over", Align.END),
        Column(f"squared up, wide × long, {teller.unit_word}", share=1),
        Column("backing", share=1.2),
    )
    return (Together((Heading(3, "Other layouts of these blocks"), Table(columns, rows))),)


def join_line(teller: Teller) -> Words:
    """The join in one line, for the table sheet."""
    quilt, joined = teller.plan.quilt, teller.project.joined
    if quilt is None or joined is None or not teller.is_quilt:
        return ()
    say, join = teller.say, quilt.join
    strips = "; ".join(
        f"{strip.name} {strip.count * teller.how_many} cut {say.cut_size(strip.cut, strip.long)}"
        for strip in quilt.strips
    )
    if joined.join is Join.PLAIN_SEAM:
        return words(f"plain seams of {say.width(join.seam)}, pressed open; batting trimmed out of the allowances.")
    gap = f"gap {say.near(join.gap)}" if join.gap >= 0 else f"raw edges overlap by {say.near(-join.gap)}"
    passes = (
        f"cover passes {say.margin(join.passes)}" if join.passes >= 0 else f"cover {say.shortage(-join.passes)} short"
    )
    return words(strong(f"{say.near(join.shows)} shows, {gap}, {passes}"), f". {sentence(strips)}.")
