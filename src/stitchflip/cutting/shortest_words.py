"""If you only have so much, said: the amounts that work, what each gives up, and what else can be done."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.stand_in import moved_words, stand_in_words
from stitchflip.lengths import Speaker, Unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.cutting.concessions import JoinedFrom, Trimmed
    from stitchflip.cutting.shortest import Fewer, OnlyHave, Rung, Shortest

_WHOLE_IN = 1e-6


def shortest_words(answer: Shortest, unit: Unit) -> tuple[str, ...]:
    """One sentence for each amount that works.

    Args:
        answer: the ladder.
        unit: the maker's unit.
    """
    return tuple(_rung_words(rung, Speaker(unit)) for rung in answer.rungs)


def only_have_words(answer: OnlyHave, unit: Unit) -> tuple[str, ...]:
    """What can be done with a given amount, one sentence for each way.

    Args:
        answer: what is found.
        unit: the maker's unit.
    """
    say = Speaker(unit)
    have = f"With {say.margin(answer.have_in)} of {answer.fabric}"
    if answer.rung is not None:
        if answer.rung.is_as_planned:
            return (f"{have}: enough as planned, {say.margin(answer.have_in - answer.rung.need_in)} to spare.",)
        return (f"{have}: enough if {gives_up_words(answer.rung, say)}.",)
    short = answer.least.need_in - answer.have_in
    even = "" if answer.least.is_as_planned else f", even if {gives_up_words(answer.least, say)}"
    lines = [f"{have}: not enough{even}; short by {say.shortage(short)}."]
    if answer.stand_in is not None:
        lines.append(stand_in_words(answer.stand_in, unit))
    if answer.fewer is not None:
        lines.append(_fewer_words(answer.fewer))
    return tuple(lines)


def gives_up_words(rung: Rung, say: Speaker) -> str:
    """What a rung gives up, as the end of a sentence.

    Args:
        rung: the rung.
        say: the maker's voice.
    """
    parts = [_trimmed_words(one, say) for one in rung.trimmed]
    parts += [_joined_words(one, say) for one in rung.joined]
    if rung.turned:
        lies = "lies on its" if len(rung.turned) == 1 else "lie on their"
        parts.append(f"{_listed(rung.turned)} {lies} side, the print with it")
    return ", and if ".join(parts)


def _rung_words(rung: Rung, say: Speaker) -> str:
    amount = f"{say.shortage(rung.need_in)} are enough"
    shop = f"in the shop {say.purchase(rung.buy_in)}" if rung.buy_in > 0 else "nothing to buy"
    if rung.is_as_planned and rung.need_in <= 0:
        return "Nothing need be bought: what is on hand is enough."
    if rung.is_as_planned:
        return f"{amount}, cut as planned ({shop})."
    return f"{amount} if {gives_up_words(rung, say)} ({shop})."


def _trimmed_words(one: Trimmed, say: Speaker) -> str:
    strips = "strip" if len(one.names) == 1 else "strips"
    verb = "is" if len(one.names) == 1 else "are"
    return (
        f"{strips} {_listed(one.names)} ({say.width(one.width)} wide) {verb} trimmed after sewing: "
        f"{_strips(one.after)} instead of {one.before}"
    )


def _joined_words(one: JoinedFrom, say: Speaker) -> str:
    """The lengths of one binding, and the joins that come on top."""
    lengths = _listed(tuple(_lengths(one, say)))
    more = len(one.lengths) - one.instead_of
    joins = "" if more <= 0 else f", {more} join{'s' * (more != 1)} more"
    return f"the {one.name[:1].lower()}{one.name[1:]} is joined from {lengths}{joins}"


def _lengths(one: JoinedFrom, say: Speaker) -> Iterator[str]:
    for length in dict.fromkeys(one.lengths):
        count = sum(abs(other - length) < _WHOLE_IN for other in one.lengths)
        yield f"{count} of {say.cut(length)}"


def _fewer_words(fewer: Fewer) -> str:
    if fewer.without is not None:
        return f"Alone it gives everything but {moved_words(fewer.without.pieces)}."
    if fewer.alike == 0:
        return f"Not even one of the {fewer.of} comes out of it."
    return f"{fewer.alike} of the {fewer.of} come out of it."


def _strips(count: int) -> str:
    return "1 strip" if count == 1 else f"{count} strips"


def _listed(names: tuple[str, ...]) -> str:
    """Names with commas, the last with "and"."""
    own = tuple(dict.fromkeys(names))
    return " and ".join(filter(None, [", ".join(own[:-1]), own[-1]])) if own else ""
