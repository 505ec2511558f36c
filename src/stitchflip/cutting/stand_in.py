"""Fabrics that may stand in for one another: which pieces go to another one, so that nothing need be bought.

A quilter who is two strips short does not buy an eighth of a yard of a print that is gone. She takes them from its
neighbor. What she wants to know is how few it can be, which ones, and whether the neighbor can spare them.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.cutting.fabric_plan import plan_fabric
from stitchflip.cutting.moving import Moved, Supply, Terms, fewest_moved, gives
from stitchflip.lengths import Speaker, Unit
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.model import FabricPlan, Piece


@dataclass(frozen=True, slots=True)
class StandIn:
    """What a fabric is short of, and who gives it."""

    fabric: str
    to: str
    """The fabric that stands in; "" when none is needed or none can."""
    moved: Moved | None
    """Nothing when the fabric is enough; None when no fabric can stand in."""
    plans: tuple[FabricPlan, ...]
    """The fabric that is short without what is moved, and the one that stands in with it."""
    is_enough: bool
    """True: nothing need be bought."""


def stand_in(short: Supply, others: Sequence[Supply], terms: Terms) -> StandIn:
    """The fewest pieces that go to another fabric so that nothing need be bought.

    Pieces that show count before those that do not. Of several fabrics the one that need take the fewest wins, the
    first of equals.

    Args:
        short: the fabric that is not enough, with what is cut from it and how much there is.
        others: fabrics that may stand in, the one liked best first, with what is cut from them already.
        terms: the maker's numbers, working and unit.

    Returns:
        The answer; not enough when no single fabric can give what is missing.
    """
    if gives(short, short.pieces, terms) is not None:
        nothing = Moved((), 0, 0, is_fewest=True)
        return StandIn(short.fabric.name, "", nothing, (_plan(short, short.pieces, terms),), is_enough=True)
    best: tuple[Moved, Supply] | None = None
    for other in others:
        found = fewest_moved(short, other, terms)
        if found is not None and (best is None or (found.seen, found.count) < (best[0].seen, best[0].count)):
            best = found, other
    if best is None:
        return StandIn(short.fabric.name, "", None, (_plan(short, short.pieces, terms),), is_enough=False)
    moved, to = best
    plans = (_plan(short, _without(short.pieces, moved.pieces), terms), _plan(to, (*to.pieces, *moved.pieces), terms))
    return StandIn(short.fabric.name, to.fabric.name, moved, plans, is_enough=True)


def _without(pieces: Sequence[Piece], moved: Sequence[Piece]) -> tuple[Piece, ...]:
    """What stays."""
    gone = {replace(piece, count=0): piece.count for piece in moved}
    rest: list[Piece] = []
    for piece in pieces:
        away = min(gone.pop(replace(piece, count=0), 0), piece.count)
        if piece.count > away:
            rest.append(replace(piece, count=piece.count - away))
    return tuple(rest)


def _plan(supply: Supply, pieces: Sequence[Piece], terms: Terms) -> FabricPlan:
    fabric = supply.fabric.model_copy(update={"only_on_hand": supply.has_in is None})
    return plan_fabric(fabric, tuple(pieces), terms.numbers, terms.working, terms.unit)


def stand_in_words(answer: StandIn, unit: Unit) -> str:
    """One sentence: what goes where, or that it does not come out.

    Args:
        answer: what is found.
        unit: the maker's unit.
    """
    say = Speaker(unit)
    if answer.moved is None:
        missing = answer.plans[0].short_in
        short = f": {say.shortage(missing)} of length are missing" if missing > 0 else ""
        return f"{answer.fabric} is not enough{short}, and no other fabric can spare what it takes."
    if not answer.moved.pieces:
        return f"{answer.fabric} is enough: nothing goes to another fabric."
    fewest = " Fewer pieces would not do." if answer.moved.count == answer.moved.at_least else ""
    return (
        f"Cut {moved_words(answer.moved.pieces)} from {answer.to} instead of {answer.fabric}: "
        f"nothing need be bought.{fewest}"
    )


def moved_words(pieces: Sequence[Piece]) -> str:
    """Which pieces, and how many of each.

    Args:
        pieces: their counts are how many.

    Example:
        >>> from stitchflip.cutting.model import Piece
        >>> moved_words(
        ...     [Piece("7", 2.5, 11, 2), Piece("8", 2, 9), Piece("9", 2, 9), Piece("Center", 8, 8, kind="rectangle")]
        ... )
        'strips 8 and 9, 2 of strip 7 and center'
    """
    single = [piece.name for piece in pieces if piece.count == 1 and _is_numbered(piece)]
    said = [f"strip{'s' * (len(single) != 1)} {_listed(single)}"] if single else []
    for piece in pieces:
        name = _named(piece)
        if piece.kind == "binding":
            said.append(f"the {_small(name)}")
        elif piece.count > 1 or not _is_numbered(piece):
            said.append(_small(name) if piece.count == 1 else f"{piece.count} of {_small(name)}")
    return _listed(said) if said else "nothing"


def _small(name: str) -> str:
    return name[:1].lower() + name[1:]


def _is_numbered(piece: Piece) -> bool:
    return piece.kind == "strip" and piece.name.isdigit()


def _named(piece: Piece) -> str:
    """Strip 7, piece 7 of a numbered foundation; a name with a comma in it is kept together."""
    if piece.name.isdigit():
        return f"{'strip' if piece.kind == 'strip' else 'piece'} {piece.name}"
    first, comma, rest = piece.name.partition(", ")
    return f"{first} ({rest})" if comma else first


def _listed(words: Sequence[str]) -> str:
    """Words with commas, the last with "and"."""
    return " and ".join(filter(None, [", ".join(words[:-1]), words[-1]]))
