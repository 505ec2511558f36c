"""Square up, cut apart, finish."""

from __future__ import annotations

from stitchflip.finishing.words import once_finished
from stitchflip.pattern.model import (
    Align,
    Block,
    Column,
    FigureBox,
    Heading,
    Items,
    Mention,
    Numbered,
    Table,
    Together,
    Words,
    strong,
    words,
)
from stitchflip.pattern.square_words import diagonals, distances, is_all_curve, margins, reach_words
from stitchflip.pattern.telling import Teller, counted, listed, runs_of, sentence
from stitchflip.pictures import panels, squaring
from stitchflip.piecing.geometry import TOLERANCE, extent, half_planes, moved
from stitchflip.piecing.model import Polygon
from stitchflip.planning.model import Plan
from stitchflip.planning.washed import washed_words
from stitchflip.project.model import Edge, Fiber, Join, Through, Wash


def square_up(teller: Teller) -> tuple[Block, ...]:
    """Squaring up with its numbers, and what changes when the piece came out short; of a quilt, each block."""
    name = "block" if teller.is_quilt else "piece"
    doing = [
        words(
            f"Lay the {name} flat, face up. Find the center mark and compare with ",
            Mention("squaring"),
            ": fabric must reach past every line.",
        ),
        distances(teller, Mention("squaring")),
        *(one for one in (diagonals(teller), _room(teller), reach_words(teller, Mention("squaring"))) if one),
        *_trimming(teller),
    ]
    picture = FigureBox(
        squaring(teller.plan),
        7.0,
        3.4,
        key="squaring",
        caption=words("Trim lines and their distances from the center mark."),
    )
    heading = "Square up the blocks" if teller.is_quilt else "Square up"
    stays = teller.is_quilt or teller.is_bordered or teller.plan.panels is not None
    short = () if stays else _if_short(teller)
    return Together((Heading(2, heading), Numbered(tuple(doing)), picture)), *short, *cut_apart(teller)


def _room(teller: Teller) -> Words:
    """Room beyond the points, with the picture in which they are seen; empty when no point matters."""
    said = margins(teller)
    return words(said, " (Points as in ", Mention("squaring"), ".)") if said else ()


def _trimming(teller: Teller) -> list[Words]:
    """How the edges are trimmed, and what holds the seam ends until something else does."""
    plan = teller.plan
    stay = teller.say.width(teller.pick(0.125, 0.3))
    doing = []
    if is_all_curve(teller):
        doing.append(
            words("Cut in short cuts and turn the piece as you go; the rotary cutter is for straight edges at a ruler.")
        )
    else:
        doing += [
            words("Measure both sides together before you cut the first: what one side gains, the other loses."),
            words("Cut one edge at a time with ruler and cutter, away from yourself, and measure again after each."),
        ]
        if plan.square_up.curve:
            doing.append(words(plan.square_up.curve))
    if plan.square_up.folded:
        doing.append(words(plan.square_up.folded))
    holder = {
        Edge.BINDING: "the binding does",
        Edge.SELF_BINDING: "the turned backing does",
        Edge.FACING: "the facing does",
        Edge.TURNED_THROUGH: "the seam round the edge does",
    }[teller.project.binding.edge]
    if teller.is_bordered:
        holder = "the seam of the border does"
    if teller.is_quilt:
        holder = "the joining seam does"
        doing.append(words(f"Trim all {teller.bases} blocks alike before the first two are joined."))
    if teller.is_quilt and _is_trimmed_back(teller):
        doing.append(
            words("Do not sew round the blocks, the batting comes out of their allowances; the joining seam locks all.")
        )
        return doing
    doing.append(words(f"Sew once round, {stay} inside the trimmed edge: it holds every seam end until {holder}."))
    return doing


def _is_trimmed_back(teller: Teller) -> bool:
    """True where the batting is trimmed out of the seam allowances before plain seams join the blocks."""
    joined = teller.project.joined
    is_plain = joined is not None and joined.join is Join.PLAIN_SEAM
    return is_plain and teller.project.base.through is not Through.BACKING_AND_BATTING


def cut_apart(teller: Teller) -> tuple[Block, ...]:
    """One long base cut into panels: which seams the cuts open, and in which order to cut."""
    plan, say = teller.plan, teller.say
    cut = plan.panels
    if cut is None:
        return ()
    size = say.size(*teller.wide_long(cut.wide, cut.high))
    steps = sorted({step for step, _ in cut.ends_to_lock})
    stay = say.width(teller.pick(0.125, 0.3))
    doing = [
        words(
            "Draw the cut lines of ",
            Mention("panels"),
            f" with ruler and pen: {counted(len(cut.panels), 'panel')}, each ",
            strong(f"{size} squared up"),
            f"; {say.near(cut.loss)} falls away at each cut." if cut.loss > 0 else ", one straight cut between two.",
        )
    ]
    if steps:
        which = "strip" if len(steps) == 1 else "strips"
        doing.append(
            words(
                strong("Lock first. "),
                f"The cuts open the seams of {which} {runs_of(steps)}: sew {stay} from every cut line on both sides of "
                "it, through everything, before you cut.",
            )
        )
    else:
        doing.append(words(strong("Nothing to lock: "), "no cut opens a seam."))
    doing.append(words("Cut with ruler and cutter, away from yourself, and press each panel flat before its edge."))
    picture = FigureBox(
        panels(plan), 7.0, 3.4, key="panels", caption=words("Cut lines, and a knot where a cut opens a seam.")
    )
    return (Together((Heading(2, "Cut apart"), Numbered(tuple(doing)), picture)),)


def _if_short(teller: Teller) -> tuple[Block, ...]:
    """What a little less changes: nothing has to be thrown away."""
    table = if_short_table(teller)
    return () if table is None else (Together((Heading(3, "If yours is short"), table)),)


def if_short_table(teller: Teller) -> Table | None:
    """The piece squared up a little smaller all round: sizes and margins.

    Args:
        teller: speaks about the plan.

    Returns:
        Rows for the planned size, and for a quarter and half an inch (0.5 and 1 cm) less between opposite edges,
        every edge moved inward by half of it; None where neither points nor last strips tell what it costs.
    """
    plan, bare = teller.plan, teller.bare
    seam = plan.binding.seam
    is_curve = is_all_curve(teller)
    nearest = None if is_curve else min((point.to_edge for point in plan.square_up.points), default=None)
    last = last_strip_shows(plan)
    slanted = "" if is_curve else _slanted_distances(teller, plan.square_up.corners)
    if nearest is None and last is None:
        return None
    rows: list[tuple[Words, ...]] = []
    for less in (0.0, teller.pick(0.25, 0.5), teller.pick(0.5, 1.0)):
        smaller = moved(plan.square_up.corners, -less / 2)
        (left, right), (low, top) = extent(smaller, 1, 0), extent(smaller, 0, 1)
        size = bare.size(*teller.wide_long(right - left, top - low))
        row = [words(_less_words(teller, less)), words(strong(size))]
        if slanted:
            row.append(words(_slanted_distances(teller, smaller)))
        if nearest is not None:
            row += [words(bare.margin(nearest - less / 2)), words(bare.margin(nearest - less / 2 - seam))]
        if last is not None:
            row.append(words(bare.margin(last - less / 2)))
        rows.append(tuple(row))
    unit = teller.unit_word
    columns = [Column("both sides together", share=1.1), Column(f"square up, wide × long, {unit}", share=1.2)]
    if slanted:
        columns.append(Column(f"center mark to each slanted edge, {unit}", Align.END, share=1))
    if nearest is not None:
        columns += [
            Column(f"beyond the nearest point, {unit}", Align.END, share=1),
            Column(f"of it shows {once_finished(teller.project)}, {unit}", Align.END, share=1),
        ]
    if last is not None:
        columns.append(Column(f"last {teller.strip_word} shows, {unit}", Align.END, share=1))
    return Table(tuple(columns), tuple(rows))


def _less_words(teller: Teller, less: float) -> str:
    """The name of a smaller size: by how much less, and where."""
    if less == 0:
        return "as planned"
    if teller.is_pointed or teller.shape_word:
        return f"every edge {teller.say.width(less / 2)} nearer the center mark"
    return f"{teller.say.width(less)} less both ways"


def _slanted_distances(teller: Teller, outline: Polygon) -> str:
    """Distances from the center mark to the edges that are not upright or level, square to them; "" without any."""
    slanted = [r for nx, ny, r in half_planes(outline) if min(abs(nx), abs(ny)) > TOLERANCE]
    return listed(list(dict.fromkeys(teller.bare.near(r) for r in slanted)))


def last_strip_shows(plan: Plan) -> float | None:
    """The least a last strip shows between its seam and the binding, inches, taped; None without one."""
    found = []
    for side in plan.square_up.sides:
        seams = [
            strip.seam_taped
            for strip in plan.build.strips
            if strip.cut_length > 0
            and strip.normal[0] * side.normal[0] + strip.normal[1] * side.normal[1] > 1 - TOLERANCE
        ]
        if seams:
            found.append(side.distance - plan.binding.seam - max(seams))
    return min(found, default=None)


# --- finish ----------------------------------------------------------------------------------------------


def finish(teller: Teller) -> tuple[Block, ...]:
    """Care, photograph, leftovers, and one honest line."""
    plan = teller.plan
    items = [
        words(strong("Care. "), _care(teller)),
        words(strong("Photograph. "), "Flat, in daylight, straight from above; once the front, once the back."),
        words(strong("Leftovers. "), _leftovers(teller)),
        words(
            f"You have sewn {teller.whole(plan.work.seams_in)} of seams through the base"
            f"{', all pieces together' if teller.is_several else ''}."
        ),
    ]
    return (Together((Heading(2, "Finish"), Items(tuple(items)))),)


def _care(teller: Teller) -> str:
    batting = teller.project.batting
    washed = all(one.washed is Wash.WASHED for one in teller.project.fabrics)
    after = "" if teller.plan.panels is not None else washed_words(teller.plan)
    if washed or batting.fiber is Fiber.POLYESTER or not after:
        shrink = ""
    else:
        shrink = f" It crinkles softly at the first wash and draws in, to {after}."
    iron = "iron from the front, warm" if teller.iron_is_safe else "do not iron"
    return (
        f"Wash cool on a gentle cycle, dry flat, {iron}.{shrink} No heat mat: it does not go under hot pans or into "
        "a microwave."
    )


def _leftovers(teller: Teller) -> str:
    over = teller.say.width(teller.pick(6, 15))
    rests = sum(
        1
        for fabric in teller.plan.fabrics
        for strips in fabric.strip_plans
        for strip in strips.strips
        if strip.rest >= teller.pick(6, 15)
    )
    said = f"{sentence(counted(rests, 'strip end'))} of {over} or more go back to your shelf; " if rests else ""
    return sentence(f"{said}the quilted trimmings make bookmarks, pincushions and a coaster.")
