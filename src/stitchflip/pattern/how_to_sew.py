"""How every strip goes on, said once, for each way of building in its own words; and one heading for each kind."""

from __future__ import annotations

from stitchflip.lengths import Unit
from stitchflip.pattern.model import (
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
    Voice,
    Words,
    words,
)
from stitchflip.pattern.safety import short_reminders
from stitchflip.pattern.telling import Teller, counted, number_word
from stitchflip.pictures import foundation
from stitchflip.piecing.model import Build
from stitchflip.project.model import Way

_ALIKE = 1e-6


def tellers_of(teller: Teller) -> tuple[Teller, ...]:
    """One teller for each kind of block; the plan's own when there is one kind."""
    if len(teller.kinds) < 2:
        return (teller,)
    return tuple(teller.for_kind(kind) for kind in teller.used_kinds)


def how_to_sew(teller: Teller) -> tuple[Block, ...]:
    """What is the same at each step, so that the steps can be short."""
    way = teller.project.building.way
    if way is Way.FOUNDATION:
        opening, doing = "Every patch goes on the same way.", _along_lines(teller)
    elif way is Way.FOLDED_CORNERS:
        opening, doing = "Every square goes on the same way.", _on_corners(teller)
    else:
        opening, doing = "Every strip goes on the same way.", _onto_edges(teller)
    reminders = Box(BoxKind.CAUTION, "Before you sit down", (Items(short_reminders(teller)),))
    said = Paragraph(words(opening, _across_all(teller)), Voice.BODY)
    return said, Numbered(doing), *_drawn_lines(teller), reminders


def _across_all(teller: Teller) -> str:
    if teller.is_quilt:
        return " Sew each step on all blocks of a kind before the next one; so you cut, press and measure in one go."
    return f" Sew each step on all {number_word(teller.how_many)} before the next one." if teller.is_several else ""


def _stitch(teller: Teller) -> str:
    return "about 9 stitches to the inch" if teller.unit is Unit.INCH else "stitch length 2.8\u202fmm"


def _opening(teller: Teller) -> str:
    return "press it with the iron" if teller.iron_is_safe else "press it with your fingers or a roller, no iron"


def _locking(teller: Teller) -> Words:
    inside = teller.say.width(teller.pick(0.25, 0.7))
    return words(
        f"An end named under “Lock”: to begin there, start {inside} inside, sew back to the raw edge, then forward; "
        f"to end there, sew to the raw edge and {inside} back."
    )


def _onto_edges(teller: Teller) -> tuple[Words, ...]:
    """Strips laid on a raw edge, sewn and opened."""
    say = teller.say
    seam, every = say.width(teller.plan.numbers.seam), say.width(teller.pick(4, 10))
    is_slanted = teller.project.building.way is Way.WONKY
    lay = "Lay the strip face down on the edge named, raw edges level"
    check = words("Check “Raw edge” with a tape: from the center mark, square to the strip, to its outer edge.")
    if is_slanted:
        lay = (
            "Draw the line named under “Line” on the piece, between its two places, and lay the strip face down on it, "
        )
        lay += f"its raw edge {seam} beyond the line"
        check = words(
            "What lies beyond the seam under the new strip stays where it is stitched; trim only a loose flap."
        )
    first: tuple[Words, ...] = ()
    if any(strip.sections for own in tellers_of(teller) for strip in own.strips):
        first = (words(f"A strip of several parts: join them end to end first, as named, with {seam} seams."),)
    return (
        *first,
        words(f"{lay}, and pin it every {every} and at both ends."),
        words(f"Sew {seam} from the raw edge through everything, {_stitch(teller)}, from the end named under “Start”."),
        words(f"Open the strip over its seam and {_opening(teller)}: no fold stays at the seam."),
        words("Feel for a pleat at the seam, then trim the ends and clip the threads."),
        check,
        _locking(teller),
    )


def _on_corners(teller: Teller) -> tuple[Words, ...]:
    """Squares sewn from corner to corner over a corner of the piece."""
    return (
        words("On the wrong side of each square draw a line from corner to corner."),
        words("Lay the square face down on the corner named, two of its edges level with the raw edges there; pin it."),
        words(
            f"Sew on the drawn line, a hair nearer to the corner of the piece, through everything, {_stitch(teller)}."
        ),
        words(
            "Fold the square over the corner: its raw edges lie on those below. Fold it back and trim only its own "
            "layer beyond the seam to the seam allowance; what is stitched below stays."
        ),
        words(f"Open the square over the corner again and {_opening(teller)}."),
        _locking(teller),
    )


def _along_lines(teller: Teller) -> tuple[Words, ...]:
    """Patches sewn from the back along drawn lines."""
    say = teller.say
    seam = say.width(teller.plan.numbers.seam)
    extra = say.width(teller.plan.numbers.patch_extra)
    return (
        words(
            "Draw the lines of ",
            Mention("foundation"),
            " and the number of every patch on the side you sew from. The drawing is mirrored on purpose. Patch 1 has "
            "no line; every other patch is sewn along the line that bounds it toward patch 1.",
        ),
        words(
            "Hold the work against the light, or push a pin through at both ends of the line. "
            f"Lay the patch face down on what is there, its raw edge {seam} past the "
            f"line and {extra} or more beyond its place on every side; pin it away from the line."
        ),
        words(
            f"Turn the work over and sew on the line from the drawn side, {_stitch(teller)}, three stitches past both "
            "ends of the line."
        ),
        words(f"Trim the allowance behind the seam to {seam}, open the patch and {_opening(teller)}."),
        words("Hold it against the light again: fabric must reach past every line of the next patch."),
        _locking(teller),
    )


def _drawn_lines(teller: Teller) -> tuple[Block, ...]:
    """The drawing of the lines, where patches are sewn along them."""
    if not teller.is_foundation:
        return ()
    caption = words("The lines of the foundation, mirrored: you sew from this side.")
    return (FigureBox(foundation(teller.plan), 5.0, 3.6, key="foundation", caption=caption),)


# --- kinds of block ----------------------------------------------------------------------------------------


def kind_heading(teller: Teller, place: int) -> tuple[Block, ...]:
    """The name of a kind before its steps, with how many there are; nothing where all are alike."""
    if len(teller.used_kinds) < 2:
        return ()
    kind = teller.kinds[place]
    return (Heading(3, f"Block “{kind.name}”: {counted(kind.count * teller.how_many, 'block')}"),)


def block_key(place: int) -> str:
    """Key of the figure that shows a kind of block."""
    return f"block {place + 1}"


def kind_sewn_like(teller: Teller, place: int) -> int | None:
    """The first earlier kind that is sewn step by step like this one, so that only fabrics differ; None without."""
    build = teller.kinds[place].build
    return next(
        (other for other in teller.used_kinds if other < place and _same_steps(teller.kinds[other].build, build)), None
    )


def _same_steps(one: Build, other: Build) -> bool:
    return len(one.pieces) == len(other.pieces) and all(
        a.side == b.side
        and abs(a.seam_at - b.seam_at) < _ALIKE
        and abs(a.cut_width - b.cut_width) < _ALIKE
        and abs(a.cut_length - b.cut_length) < _ALIKE
        and len(a.sections) == len(b.sections)
        and a.normal == b.normal
        for a, b in zip(one.pieces, other.pieces, strict=True)
    )


def other_fabrics(teller: Teller, place: int, like: int) -> Block:
    """A kind that is sewn like another one, in other fabrics: only what differs, step by step."""
    own, other = teller.kinds[place], teller.kinds[like]
    rows: list[tuple[Words, ...]] = []
    for mine, theirs in zip(own.build.pieces, other.build.pieces, strict=True):
        if (mine.fabric, mine.sections) != (theirs.fabric, theirs.sections):
            name = teller.number(mine.step) if mine.step else teller.first_name
            rows.append((words(name), teller.named(mine.fabric), words("instead of ", teller.named(theirs.fabric))))
    said = Paragraph(words(f"Sew it step by step like the block “{other.name}”, in these fabrics."))
    if not rows:
        return Paragraph(words(f"Sew it step by step like the block “{other.name}”."))
    columns = (Column("step"), Column("fabric", share=1), Column("in place of", share=1))
    return Together((said, Table(columns, tuple(rows))))
