"""Sewing: how every strip goes on, said once, then one step and one picture for each strip."""

from __future__ import annotations

from stitchflip.cutting.model import HandStep
from stitchflip.pattern.how_to_sew import how_to_sew, kind_heading, kind_sewn_like, other_fabrics, tellers_of
from stitchflip.pattern.model import Block, FigureBox, Heading, Step, Steps, Together, Words, strong, words
from stitchflip.pattern.strip_facts import (
    angled_words,
    edge_words,
    end_names,
    has_own_line,
    is_trimmed,
    lay_words,
    line_words,
    lock_words,
    loose_ends,
    section_words,
    trim_words,
)
from stitchflip.pattern.telling import Teller, counted, sentence
from stitchflip.pattern.way_words import WITHOUT_ROUNDS
from stitchflip.pictures import step
from stitchflip.piecing.model import SewnPiece
from stitchflip.project.model import Working
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
    """All sewing pages: what is the same at each step, then every kind of block once."""
    if not any(one.strips for one in tellers_of(teller)):
        return ()
    blocks: list[Block] = [Together((Heading(2, "Sewing"), *how_to_sew(teller)))]
    for place, own in zip(teller.used_kinds, tellers_of(teller), strict=True):
        pauses = pauses_of(own)
        steps = tuple(_step(own, strip, pauses) for strip in own.strips)
        like = kind_sewn_like(teller, place)
        blocks += kind_heading(teller, place)
        if like is not None:
            blocks.append(other_fabrics(teller, place, like))
        elif steps:
            blocks.append(Steps(steps, ticks="sewing" if place == teller.used_kinds[0] else f"sewing {place + 1}"))
    return tuple(blocks)


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
    if teller.project.building.way in WITHOUT_ROUNDS:
        look = [strip.step for place, strip in enumerate(strips, start=1) if place % _LOOK_EVERY == 0]
        measure = look
    else:
        look = ends
        measure = [strip.step for strip in strips if strip.step in ends and (strip.round == 1 or strip.round % 2 == 0)]
    if has_own_line(teller):
        measure = []
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
    if strip.square_cut > 0 or teller.is_foundation:
        then = ", trim behind the seam, and open it."
    return Step(
        number=teller.number(strip.step),
        title=words(
            f"{sentence(teller.strip_word)} ", teller.number(strip.step), " · ", *_fabrics_named(teller, strip)
        ),
        do=words(f"Sew it ({size_words(teller, strip)}) ", *_to_where(teller, strip), then),
        picture=FigureBox(step(teller.plan, strip.step), 2.75, 2.9),
        notes=tuple(_notes(teller, strip)),
        after=tuple(_after(teller, strip, pauses)),
    )


def _fabrics_named(teller: Teller, strip: SewnPiece) -> Words:
    """Letter and name of a strip's fabric, or of all its fabrics."""
    names = list(dict.fromkeys(section.fabric for section in strip.sections)) or [strip.fabric]
    said = [words(teller.named(name), ", " if place < len(names) - 1 else "") for place, name in enumerate(names)]
    return words(*said)


def _to_where(teller: Teller, strip: SewnPiece) -> Words:
    """What it is sewn to, to follow "Sew it"."""
    if teller.is_foundation:
        return words("along ", strong("its line"))
    if strip.square_cut > 0:
        return words("from corner to corner over ", strong(f"the {strip.side}"))
    return words("to ", strong(side_words(strip)))


def size_words(teller: Teller, strip: SewnPiece) -> str:
    """The strip's cut size, and what else would do when it is taken from the strip in the hand."""
    say = teller.say
    if strip.square_cut > 0:
        return f"a square cut {say.cut_size(strip.square_cut, strip.square_cut)}"
    if strip.sections:
        long = sum(section.cut_length for section in strip.sections)
        long -= 2 * teller.plan.numbers.seam * (len(strip.sections) - 1)
        return (
            f"{counted(len(strip.sections), 'part')} sewn end to end, {say.cut_size(strip.cut_width, long)} as joined"
        )
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
    notes: list[tuple[str, Words]] = []
    for label, said in (
        ("Take", _from_hand(teller, strip)),
        ("Join first", section_words(teller, strip)),
        ("Cut ends", angled_words(teller, strip)),
    ):
        if said:
            notes.append((label, said))
    over = "over the seam" if teller.project.building.way in WITHOUT_ROUNDS else "away from the center"
    press = f"open, {over}" if teller.iron_is_safe else f"open, {over}, with your fingers"
    if strip.square_cut > 0 or teller.is_foundation:
        seam = teller.say.width(teller.plan.numbers.seam)
        what = "the allowance behind the seam" if teller.is_foundation else "the square’s own layer behind the seam"
        notes += [("Line", line_words(teller, strip))] if teller.is_foundation else []
        notes.append(("Lock", lock_words(strip)))
        return [*notes, ("Trim", words(f"{what} to {seam}")), ("Press", words(press))]
    notes += [*_lying(teller, strip), ("Lock", lock_words(strip)), ("Press", words(press)), ("Trim", trim_words(strip))]
    if has_own_line(teller):
        return [("Line", line_words(teller, strip)), *notes]
    return [*notes, ("Raw edge", edge_words(teller, strip))]


def _lying(teller: Teller, strip: SewnPiece) -> list[tuple[str, Words]]:
    """Where sewing starts, and where the strip lies along its edge."""
    first, _ = end_names(strip)
    start = f"at the {first} end, at the raw edge"
    if first in [name for name, _ in loose_ends(strip)]:
        start = f"inside the {first} end (see “Lock”)"
    lay = lay_words(teller, strip)
    return [("Start", words(start)), *((("Lay", lay),) if lay else ())]


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
        end = "" if teller.project.building.way in WITHOUT_ROUNDS else f"End of round {strip.round}. "
        lines.append(words(f"{end}Turn the piece over: no tucks, no loose threads.{measure}"))
    if strip.step in pauses.stop:
        after = next((one for one in teller.strips if one.step > strip.step), None)
        if after is not None:
            lines.append(
                words(
                    strong("Good stopping place. "),
                    f"Next time starts with {teller.strip_word} ",
                    teller.number(after.step),
                    ", ",
                    *_fabrics_named(teller, after),
                    ".",
                )
            )
    if strip.step == teller.strips[-1].step:
        lines.append(words(strong(sentence("the base is covered."))))
    return lines
