"""Sewing: how every strip goes on, said once, then one step and one picture for each strip."""

from __future__ import annotations

from stitchflip.cutting.model import HandStep
from stitchflip.lengths import Unit
from stitchflip.pattern.model import (
    Block,
    Box,
    BoxKind,
    FigureBox,
    Heading,
    Items,
    Numbered,
    Paragraph,
    Step,
    Steps,
    Together,
    Voice,
    Words,
    strong,
    words,
)
from stitchflip.pattern.safety import short_reminders
from stitchflip.pattern.strip_facts import (
    edge_words,
    end_names,
    is_trimmed,
    lay_words,
    lock_words,
    loose_ends,
    trim_words,
)
from stitchflip.pattern.telling import Teller, number_word, sentence
from stitchflip.pictures import step
from stitchflip.piecing.model import SewnPiece
from stitchflip.project.model import Way, Working
from stitchflip.values import dataclass

_STOP_EVERY = 10
"""Strips after which a maker likes to stop."""
_LOOK_EVERY = 4
"""Rows of strips: turn over after so many."""


@dataclass(frozen=True, slots=True)
class Pauses:
    """After which steps something else is said."""

    look: frozenset[int]
    """Turn over and look."""
    measure: frozenset[int]
    stop: frozenset[int]
    """A good stopping place."""


def sewing(teller: Teller) -> tuple[Block, ...]:
    """All sewing pages."""
    pauses = pauses_of(teller)
    steps = tuple(_step(teller, strip, pauses) for strip in teller.strips)
    if not steps:
        return ()
    return Together((Heading(2, "Sewing"), *_every_strip(teller))), Steps(steps, ticks="sewing")


def _every_strip(teller: Teller) -> tuple[Block, ...]:
    """What is the same at each step, so that the steps can be short."""
    plan, say = teller.plan, teller.say
    seam = say.width(plan.numbers.seam)
    several = f" Sew each step on all {number_word(teller.how_many)} before the next one." if teller.is_several else ""
    stitch = "about 9 stitches to the inch" if teller.unit is Unit.INCH else "stitch length 2.8\u202fmm"
    iron = "press it with the iron" if teller.iron_is_safe else "press it with your fingers or a roller, no iron"
    inside = say.width(teller.pick(0.25, 0.7))
    every = say.width(teller.pick(4, 10))
    doing = (
        words(
            f"Lay the strip face down on the edge named, raw edges level, and pin it every {every} and at both ends."
        ),
        words(f"Sew {seam} from the raw edge through everything, {stitch}, from the end named under “Start”."),
        words(f"Open the strip away from the center mark and {iron}: no fold stays at the seam."),
        words("Feel for a pleat at the seam, then trim the ends named under “Trim” and clip the threads."),
        words("Check “Raw edge” with a tape: from the center mark, square to the strip, to its outer edge."),
        words(
            f"An end named under “Lock”: to begin there, start {inside} inside, sew back to the raw edge, then "
            "forward; to "
            f"end there, sew to the raw edge and {inside} back."
        ),
    )
    reminders = Box(BoxKind.CAUTION, "Before you sit down", (Items(short_reminders(teller)),))
    opening = Paragraph(words(f"Every strip goes on the same way.{several}"), Voice.BODY)
    return opening, Numbered(doing), reminders


def pauses_of(teller: Teller) -> Pauses:
    """Where to turn over, measure and stop.

    Args:
        teller: speaks about the plan.

    Returns:
        Steps after which each is said: turn over after each round (rows: every fourth strip); measure after round
        1, then every second round (rows: every fourth strip); a good stopping place after about ten strips, at the
        end of a round.
    """
    strips = teller.strips
    ends = [
        one.step
        for one, after in zip(strips, (*strips[1:], None)[: len(strips)], strict=True)
        if after is None or after.round != one.round
    ]
    is_rows = teller.project.building.way is Way.ROWS
    if is_rows:
        look = [strip.step for place, strip in enumerate(strips, start=1) if place % _LOOK_EVERY == 0]
        measure = look
    else:
        look = ends
        measure = [strip.step for strip in strips if strip.step in ends and (strip.round == 1 or strip.round % 2 == 0)]
    stops: list[int] = []
    since = 0
    for strip in strips[:-1]:
        since += 1
        if since >= _STOP_EVERY - 2 and strip.step in ends and len(strips) - strip.step >= _LOOK_EVERY:
            stops.append(strip.step)
            since = 0
    return Pauses(frozenset(look), frozenset(measure), frozenset(stops))


def _step(teller: Teller, strip: SewnPiece, pauses: Pauses) -> Step:
    then = ", open it, and trim." if is_trimmed(strip) else " and open it."
    return Step(
        number=str(strip.step),
        title=words("Strip ", str(strip.step), " · ", teller.named(strip.fabric)),
        do=words(f"Sew it ({size_words(teller, strip)}) to ", strong(side_words(strip)), then),
        picture=FigureBox(step(teller.plan, strip.step), 2.75, 2.9),
        notes=tuple(_notes(teller, strip)),
        after=tuple(_after(teller, strip, pauses)),
    )


def size_words(teller: Teller, strip: SewnPiece) -> str:
    """The strip's cut size, and what else would do when it is taken from the strip in the hand."""
    say = teller.say
    size = f"cut {say.cut_size(strip.cut_width, strip.cut_length)}"
    if strip.cut_length < strip.needed_length - 1e-6:
        return f"{size}; this place needs {say.cut(strip.needed_length)}"
    if teller.project.working is Working.TRIM_AS_YOU_GO:
        return f"{size}; the shortest that reaches is {say.cut(strip.needed_length)}"
    return size


def side_words(strip: SewnPiece) -> str:
    """The side a strip goes on, as in the picture."""
    return strip.side if strip.side.startswith("side ") else f"the {strip.side} side"


def _notes(teller: Teller, strip: SewnPiece) -> list[tuple[str, Words]]:
    first, _ = end_names(strip)
    start = f"at the {first} end, at the raw edge"
    if first in [name for name, _ in loose_ends(strip)]:
        start = f"inside the {first} end (see “Lock”)"
    notes = [("Start", words(start))]
    taken = _from_hand(teller, strip)
    if taken:
        notes.insert(0, ("Take", taken))
    lay = lay_words(teller, strip)
    if lay:
        notes.append(("Lay", lay))
    press = "open, away from the center" if teller.iron_is_safe else "open, away from the center, with your fingers"
    notes += [
        ("Lock", lock_words(strip)),
        ("Press", words(press)),
        ("Trim", trim_words(strip)),
        ("Raw edge", edge_words(teller, strip)),
    ]
    return notes


def _from_hand(teller: Teller, strip: SewnPiece) -> Words:
    """Trim as you go: which strip it comes from, and whether its rest is enough."""
    found = hand_step(teller, strip.step)
    if found is None:
        return ()
    if found.opens_new:
        return words(f"a new strip, number {found.strip_number} of this width")
    rest = teller.say.margin(found.rest_before)
    return words(f"the rest of strip number {found.strip_number} of this width ({rest} long): enough")


def hand_step(teller: Teller, number: int) -> HandStep | None:
    """Where the strip of a step comes from, when strips are trimmed as they are sewn."""
    for fabric in teller.plan.fabrics:
        for strips in fabric.strip_plans:
            for one in strips.hand_steps:
                if one.step == number:
                    return one
    return None


def _after(teller: Teller, strip: SewnPiece, pauses: Pauses) -> list[Words]:
    lines: list[Words] = []
    if strip.step in pauses.look:
        measure = " Measure now, on all sides, and write it down." if strip.step in pauses.measure else ""
        end = "" if teller.project.building.way is Way.ROWS else f"End of round {strip.round}. "
        lines.append(words(f"{end}Turn the piece over: no tucks, no loose threads.{measure}"))
    if strip.step in pauses.stop:
        after = next((one for one in teller.strips if one.step > strip.step), None)
        if after is not None:
            lines.append(
                words(
                    strong("Good stopping place. "),
                    "Next time starts with strip ",
                    str(after.step),
                    ", ",
                    teller.named(after.fabric),
                    ".",
                )
            )
    if strip.step == teller.strips[-1].step:
        lines.append(words(strong(sentence("the base is covered."))))
    return lines
