"""Sleeve, label and edge: what goes onto the back first, then the binding or whatever finishes the edge."""

from __future__ import annotations

from stitchflip.pattern.backing_pages import edge_sentences
from stitchflip.pattern.model import (
    Block,
    Columns,
    FigureBox,
    Heading,
    Mention,
    Numbered,
    Together,
    Words,
    strong,
    words,
)
from stitchflip.pattern.square_words import angle, angle_counts, binding_line, start_words, with_picture
from stitchflip.pattern.telling import Teller
from stitchflip.pictures import binding_corner, edge_section
from stitchflip.piecing.geometry import TOLERANCE
from stitchflip.project.model import Edge, Finish

_SQUARE = 0.05
"""A corner this near to 90 degrees is a square one."""

_LAYING = "Lay the binding"
"""How a sentence begins that belongs to sewing the binding on, not to making it."""

HEADINGS = {
    Edge.BINDING: "Bind",
    Edge.SELF_BINDING: "Bind it with its own backing",
    Edge.FACING: "Face the edge",
    Edge.TURNED_THROUGH: "Turn it through",
}
"""What the pages on the edge are called."""


def extras(teller: Teller) -> tuple[Block, ...]:
    """Sleeve and label, before the edge is finished; a label is never forgotten."""
    said = teller.plan.extras.words
    named = {piece.name.lower() for piece in teller.plan.extras.pieces}
    has_label = any("label" in name for name in named)
    doing = [with_picture(one, _sides_shown(teller)) for one in said]
    if not has_label:
        doing.append(_label(teller))
    has_sleeve = any("sleeve" in name for name in named)
    heading = "Sleeve and label" if has_sleeve else "Label"
    return (Together((Heading(2, heading), Numbered(tuple(doing)))),)


def _label(teller: Teller) -> Words:
    """A label of the usual size, for a project that says nothing of one."""
    say = teller.say
    wide, long = teller.pick(4, 10), teller.pick(3, 7.5)
    corner = teller.pick(5, 13)
    caught = ""
    if teller.project.binding.edge is Edge.BINDING and teller.plan.binding.corners:
        caught = (
            f", or a square cut {say.size(corner, corner)}, folded to a triangle and caught in a corner of the binding"
        )
    return words(
        strong("Label. "),
        f"Finished {say.size(wide, long)}{caught}. For whom, from whom, the year, how to wash it. Sew it to the back "
        "before the edge is finished.",
    )


def edge(teller: Teller) -> tuple[Block, ...]:
    """The pages on the edge."""
    kind = teller.project.binding.edge
    heading = HEADINGS[kind]
    if kind is not Edge.BINDING:
        first, *others = (with_picture(one, _sides_shown(teller)) for one in edge_sentences(teller))
        doing = (words("The edge in section is ", Mention("edge"), "."), first, *others)
        caption = words("The edge, cut through and larger than life. Front side up.")
        picture = FigureBox(edge_section(teller.plan), 4.6, 2.2, key="edge", caption=caption)
        return (Together((Heading(2, heading), Numbered(doing), picture)),)
    return (Together((Heading(2, heading), Numbered(tuple(_binding(teller))), *_corner_pictures(teller))),)


def _binding(teller: Teller) -> list[Words]:
    """Cutting, joining, sewing and closing the binding."""
    say = teller.say
    binding = teller.plan.binding
    tail = say.width(teller.pick(8, 20))
    said = edge_sentences(teller)
    laying = [one for one in said if one.startswith(_LAYING)]
    return [
        words(teller.named(binding.fabric), ": ", binding_line(teller)),
        *(with_picture(one, _sides_shown(teller)) for one in said if one not in laying),
        words(
            f"{_joining(teller)} Fold the binding lengthwise, wrong sides together, to {say.width(binding.cut / 2)} "
            "wide folded, and press."
        ),
        words(
            f"Leave a tail of {tail} and start {start_words(teller)} (sides as in ",
            Mention(_sides_shown(teller)),
            f"). Lay the raw edges level on the front and sew {say.width(binding.seam)} from the edge.",
            " Keep joins off corners and points." if binding.corners else "",
        ),
        *(with_picture(one, _sides_shown(teller)) for one in laying),
        *_corner_lines(teller),
        words(
            f"Close it: let the ends overlap by the strip’s cut width, {say.width(binding.cut)}, join them on the "
            "slant, trim, and sew the gap shut."
        ),
        _closing(teller),
    ]


def _sides_shown(teller: Teller) -> str:
    """Key of the figure that names the sides."""
    return "joining" if teller.is_quilt else "squaring"


def _joining(teller: Teller) -> str:
    """How the strips of the binding are joined."""
    if teller.plan.edge.grain == "bias" and teller.plan.edge.bias_square:
        return "Press the seams of the bias strip open."
    if teller.plan.binding.strips_per_piece > 1:
        trim = teller.say.width(teller.pick(0.25, 0.75))
        return f"Join the strips with diagonal joins, trim the joins to {trim} and press them open."
    return "One strip is long enough; no join is needed."


def _corner_pictures(teller: Teller) -> tuple[Block, ...]:
    """One picture for each angle, two and two side by side."""
    plan = teller.plan
    pictures = [
        FigureBox(
            binding_corner(plan, plan.binding.corners[place]),
            3.5,
            2.6,
            key=f"corner {angle(degrees)}",
            caption=words(f"A corner of {angle(degrees)}."),
        )
        for place, degrees in _one_of_each(teller)
    ]
    if len(pictures) == 1:
        return tuple(pictures)
    return tuple(
        Columns(((one,), (other,) if other else ()), (1, 1))
        for one, other in zip(pictures[::2], (*pictures[1::2], None), strict=False)
    )


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
