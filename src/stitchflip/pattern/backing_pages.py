"""The backing of a piece that was sewn through batting alone: when it is added, and what holds it."""

from __future__ import annotations

from stitchflip.finishing.edge import through_words
from stitchflip.pattern.model import Block, Heading, Numbered, Together, Words, words
from stitchflip.pattern.telling import Teller
from stitchflip.project.model import Through


def add_backing(teller: Teller) -> tuple[Block, ...]:
    """What follows from sewing through batting only; nothing where the backing is sewn through."""
    if teller.project.base.through is Through.BACKING_AND_BATTING:
        return ()
    doing: list[Words] = [words(one) for one in through_words(teller.project, teller.plan.numbers)]
    return (Together((Heading(2, "The backing"), Numbered(tuple(doing)))),)


def edge_sentences(teller: Teller) -> tuple[str, ...]:
    """What there is to do at the edge, without what is said of the backing."""
    said_before = set(through_words(teller.project, teller.plan.numbers))
    return tuple(one for one in teller.plan.edge.words if one not in said_before)
