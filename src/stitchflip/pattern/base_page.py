"""The base: layering, basting, marks, and the first piece at its place."""

from __future__ import annotations

from stitchflip.pattern.center_words import turn_words
from stitchflip.pattern.model import (
    Block,
    FigureBox,
    Heading,
    Mention,
    Numbered,
    Paragraph,
    Together,
    Words,
    strong,
    words,
)
from stitchflip.pattern.telling import Teller, number_word, sentence
from stitchflip.pictures import base
from stitchflip.piecing.geometry import TOLERANCE, extent
from stitchflip.piecing.model import Polygon
from stitchflip.project.model import CenterShape, Through


def base_page(teller: Teller) -> tuple[Block, ...]:
    """How the base is made and where the first piece goes."""
    caption = words("The base with its marks and the place of ", teller.the_first, ".")
    picture = FigureBox(base(teller.plan), 7.0, 3.6, key="base", caption=caption)
    return (Together((Heading(2, "The base"), Numbered(tuple(_doing(teller))), picture)), *_other_bases(teller))


def _other_bases(teller: Teller) -> tuple[Block, ...]:
    """Kinds of block whose first piece lies elsewhere on the base."""
    made: list[Block] = []
    own = teller.plan.kinds[0].build.pieces[0]
    for place in teller.used_kinds[1:]:
        kind = teller.kinds[place]
        first = kind.build.pieces[0]
        if (first.opened, first.fabric) == (own.opened, own.fabric):
            continue
        other = teller.for_kind(place)
        said = words(f"Block “{kind.name}”: ", _lay_first(other, f"base {place + 1}"))
        caption = words(f"The base of the block “{kind.name}”.")
        made.append(
            Together((Paragraph(said), FigureBox(base(other.plan), 7.0, 3.0, key=f"base {place + 1}", caption=caption)))
        )
    return tuple(made)


def _doing(teller: Teller) -> list[Words]:
    plan, say = teller.plan, teller.say
    size = say.size(*teller.wide_long(plan.base.wide, plan.base.high))
    every = say.width(teller.pick(4, 10))
    layered = {
        Through.BACKING_AND_BATTING: (
            f"Lay the backing wrong side up, smooth it, and lay the batting on it, both {size}."
        ),
        Through.BATTING_ONLY: f"Lay the batting ({size}) flat and smooth it; the backing is added later.",
        Through.BATTING_ON_FOUNDATION: f"Lay the foundation flat, smooth it, and lay the batting on it, both {size}.",
    }[teller.project.base.through]
    several = f" Make {number_word(teller.bases)} bases." if teller.bases > 1 else ""
    baste = (
        f"Baste the base from {teller.the_first} outward: safety pins every {every}, none under "
        f"{teller.the_first} and none within {say.width(teller.pick(1, 2.5))} of its seams; take each pin out before "
        "a strip covers it. Or a light mist of basting spray between the layers, outdoors or at an open window, "
        "before you mark."
    )
    marks = (
        f"Mark the middle of the base and draw both center lines through it, then a line every {every} on both "
        "sides of "
        "them. Use the pen you tested."
    )
    doing = [words(layered + several), words(marks), _lay_first(teller), _hold_first(teller)]
    return doing if teller.project.base.through is Through.BATTING_ONLY else [*doing, words(baste)]


def _lay_first(teller: Teller, shown: str = "base") -> Words:
    """Where the first piece goes, and which way its print stands; shown is the key of its picture."""
    plan = teller.plan
    first = plan.build.pieces[0]
    fabric = teller.fabric(first.fabric)
    upright = " with its print standing upright" if fabric is not None and fabric.one_way else ""
    where = _place_words(teller, plan.base.first_piece)
    name = teller.the_first
    return words(
        f"Lay {name}, ",
        teller.named(first.fabric),
        f", right side up{turn_words(teller)}{upright}: ",
        strong(where),
        " (",
        Mention(shown),
        ").",
    )


def _place_words(teller: Teller, place: Polygon) -> str:
    """Where the first piece's middle lies, and how far its corners reach along the center lines."""
    say = teller.say
    xs, ys = [x for x, _ in place], [y for _, y in place]
    middle_x, middle_y = (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2
    if teller.plan.build.first_is_strip:
        nx, ny = teller.plan.build.pieces[0].normal
        low, high = extent(place, nx, ny)
        if not teller.plan.build.first_is_middle:
            near, far = sorted((abs(low), abs(high)))
            return (
                f"its raw edges {say.near(near)} and {say.near(far)} {_beyond((low + high) * nx, (low + high) * ny)} "
                "the center mark, as drawn"
            )
        if min(abs(nx), abs(ny)) > TOLERANCE:
            half = say.near((high - low) / 2)
            return f"its long middle through the center mark, on the slant as drawn, each raw edge {half} from the mark"
        return f"its long middle on the center line, each raw edge {say.near((high - low) / 2)} from it"
    if abs(middle_x) < 1e-6 and abs(middle_y) < 1e-6:
        return (
            f"its middle on the center mark; it reaches {say.near(max(ys))} above and below it "
            f"and {say.near(max(xs))} on both sides"
        )
    if _is_half_square(teller):
        return _half_square_words(teller, place)
    parts = []
    if abs(middle_y) > 1e-6:
        parts.append(f"{say.near(abs(middle_y))} {'above' if middle_y > 0 else 'below'}")
    if abs(middle_x) > 1e-6:
        parts.append(f"{say.near(abs(middle_x))} to the {'right' if middle_x > 0 else 'left'} of")
    return f"its middle {' and '.join(parts)} the center mark, as drawn"


def _beyond(x: float, y: float) -> str:
    """On which side of the center mark something lies, to go before it."""
    if abs(x) < TOLERANCE:
        return "above" if y > 0 else "below"
    if abs(y) < TOLERANCE:
        return "right of" if x > 0 else "left of"
    return f"{'above' if y > 0 else 'below'} and {'right' if x > 0 else 'left'} of"


def _is_half_square(teller: Teller) -> bool:
    """True when the first piece is a half square that lies with its long side down."""
    center = teller.project.center
    return center is not None and center.shape is CenterShape.HALF_SQUARE and center.turned % 360 == 0


def _half_square_words(teller: Teller, place: Polygon) -> str:
    """Where the long side and the point of a half square lie: it has no middle one could mark."""
    say = teller.say
    low = min(y for _, y in place)
    x, y = max(place, key=lambda corner: corner[1])
    side = f"its long side level, {say.near(abs(low))} {'below' if low < 0 else 'above'} the center mark"
    up = f"its point up, {say.near(abs(y))} {'below' if y < 0 else 'above'} the mark"
    if abs(x) < TOLERANCE:
        return f"{side}, and {up}, on the center line"
    return f"{side}, and {up}, {say.near(abs(x))} to the {'right' if x > 0 else 'left'} of the center line"


def _hold_first(teller: Teller) -> Words:
    """How it is held until its first seams hold it."""
    if teller.plan.build.first_is_strip:
        return words("Pin it along both long edges. Its first seams hold it.")
    slanted = teller.project.center is not None and teller.project.center.turned % 90 != 0
    bias = " Its sides are on the slant and stretch: smooth, never pull." if slanted else ""
    if _is_half_square(teller):
        bias = " Its long side is on the slant and stretches: smooth, never pull."
    return words(f"{sentence('pin')} it near all its edges; the first seams hold it.{bias}")
