"""Square up, bind, finish."""

from __future__ import annotations

from stitchflip.pattern.model import (
    Align,
    Block,
    Column,
    Columns,
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
from stitchflip.pattern.square_words import (
    angle,
    angle_counts,
    binding_line,
    diagonals,
    distances,
    margins,
    reach_words,
    start_words,
)
from stitchflip.pattern.telling import Teller, counted, listed, sentence
from stitchflip.pictures import binding_corner, squaring
from stitchflip.piecing.geometry import TOLERANCE, extent, half_planes, moved
from stitchflip.piecing.model import Polygon
from stitchflip.planning.model import Plan
from stitchflip.project.model import Fiber, Finish, Wash

_SQUARE = 0.05
"""A corner this near to 90 degrees is a square one."""


def square_up(teller: Teller) -> tuple[Block, ...]:
    """Squaring up with its numbers, and what changes when the piece came out short."""
    stay = teller.say.width(teller.pick(0.125, 0.3))
    first = words(
        "Lay the piece flat, face up. Find the center mark and compare with ",
        Mention("squaring"),
        ": fabric must reach past every line.",
    )
    doing = [
        first,
        distances(teller, Mention("squaring")),
        *(one for one in (diagonals(teller), margins(teller), reach_words(teller, Mention("squaring"))) if one),
        words("Measure both sides together before you cut the first: what one side gains, the other loses."),
        words("Cut one edge at a time with ruler and cutter, away from yourself, and measure again after each."),
    ]
    if teller.plan.square_up.folded:
        doing.append(words(teller.plan.square_up.folded))
    doing.append(
        words(f"Sew once round, {stay} inside the trimmed edge: it holds every seam end until the binding does.")
    )
    picture = FigureBox(
        squaring(teller.plan),
        7.0,
        3.4,
        key="squaring",
        caption=words("Trim lines and their distances from the center mark."),
    )
    return Together((Heading(2, "Square up"), Numbered(tuple(doing)), picture)), *_if_short(teller)


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
    nearest = min((point.to_edge for point in plan.square_up.points), default=None)
    last = last_strip_shows(plan)
    slanted = _slanted_distances(teller, plan.square_up.corners)
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
            Column(f"of it shows after binding, {unit}", Align.END, share=1),
        ]
    if last is not None:
        columns.append(Column(f"last strip shows, {unit}", Align.END, share=1))
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


# --- binding ---------------------------------------------------------------------------------------------


def bind(teller: Teller) -> tuple[Block, ...]:
    """Cutting, joining, sewing and closing the binding."""
    plan, say = teller.plan, teller.say
    binding = plan.binding
    tail = say.width(teller.pick(8, 20))
    fold = binding.cut / 2
    joined = (
        f"Join the strips with diagonal joins, trim the joins to {say.width(teller.pick(0.25, 0.75))} and press "
        "them open."
        if binding.strips_per_piece > 1
        else "One strip is long enough; no join is needed."
    )
    doing = [
        words("Sew the label on first if it is to be caught in the binding (see “Finish”)."),
        words(teller.named(binding.fabric), ": ", binding_line(teller)),
        words(
            f"{joined} Fold the binding lengthwise, wrong sides together, to {say.width(fold)} wide folded, and press."
        ),
        words(
            f"Leave a tail of {tail} and start {start_words(teller)} (sides as in ",
            Mention("squaring"),
            f"). Lay the raw edges level on the front and sew {say.width(binding.seam)} from the edge. Keep joins "
            "off corners and points.",
        ),
        *_corner_lines(teller),
        words(
            f"Close it: let the ends overlap by the strip’s cut width, {say.width(binding.cut)}, join them on the "
            "slant, "
            "trim, and sew the gap shut."
        ),
        _closing(teller),
    ]
    pictures = [
        FigureBox(
            binding_corner(plan, binding.corners[place]),
            3.5,
            2.6,
            key=f"corner {angle(degrees)}",
            caption=words(f"A corner of {angle(degrees)}."),
        )
        for place, degrees in _one_of_each(teller)
    ]
    figures: tuple[Block, ...] = (
        tuple(pictures)
        if len(pictures) == 1
        else tuple(
            Columns(((one,), (other,) if other else ()), (1, 1))
            for one, other in zip(pictures[::2], (*pictures[1::2], None), strict=False)
        )
    )
    return (Together((Heading(2, "Bind"), Numbered(tuple(doing)), *figures)),)


def _one_of_each(teller: Teller) -> list[tuple[int, float]]:
    """Place of one corner of each angle, and its angle."""
    found: dict[float, int] = {}
    for place, corner in enumerate(teller.plan.binding.corners):
        found.setdefault(round(corner.angle, 1), place)
    return [(place, degrees) for degrees, place in sorted(found.items(), reverse=True)]


def _corner_lines(teller: Teller) -> list[Words]:
    lines = []
    say = teller.say
    for degrees, count in angle_counts(teller):
        stop = next(one.stop_before for one in teller.plan.binding.corners if round(one.angle, 1) == degrees)
        is_chosen = abs(stop - teller.plan.binding.seam) < TOLERANCE
        before = say.width(stop) if is_chosen else say.near(stop)
        fold = (
            "fold the binding straight up and then down along the next edge"
            if abs(degrees - 90) < _SQUARE
            else "fold it away so that its raw edge runs on in line with the next edge, then back along that edge"
        )
        lines.append(
            words(
                f"At {'the corner' if count == 1 else 'each corner'} of {angle(degrees)} (",
                Mention(f"corner {angle(degrees)}"),
                f"): stop {before} before the corner and lock, lift the needle, {fold}, and go on from the edge.",
            )
        )
    return lines


def _closing(teller: Teller) -> Words:
    binding, say = teller.plan.binding, teller.say
    shows, passes = say.near(binding.shows_on_back), say.margin(binding.passes_stitching)
    if teller.project.binding.finish is Finish.HAND:
        return words(
            f"Fold the binding to the back, where {shows} of it shows; it passes the stitching by {passes}. Sew it "
            "down by "
            "hand with small stitches that do not reach the front."
        )
    return words(
        f"Fold the binding to the back, where {shows} of it shows; it passes the stitching by {passes}. From the "
        "front, "
        "stitch in the seam beside the binding so that the back is caught."
    )


# --- finish ----------------------------------------------------------------------------------------------


def finish(teller: Teller) -> tuple[Block, ...]:
    """Label, care, photograph, leftovers, and one honest line."""
    plan, say = teller.plan, teller.say
    wide, long = teller.pick(4, 10), teller.pick(3, 7.5)
    corner = teller.pick(5, 13)
    label = words(
        strong("Label. "),
        f"Finished {say.size(wide, long)}, or a square cut {say.size(corner, corner)}, folded to a triangle and "
        "caught in a "
        "corner of the binding. For whom, from whom, the year, how to wash it.",
    )
    items = [
        label,
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
    shrink = (
        ""
        if washed or batting.fiber is Fiber.POLYESTER
        else " It shrinks a little at the first wash and crinkles softly."
    )
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
