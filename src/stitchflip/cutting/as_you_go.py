"""Trim as you go: sew from the strip in the hand, trim after opening, take the rest for the next place.

Nothing is cut before it is sewn, so only the shortest length that reaches is used up. Which strip the next
piece comes from is not left to chance: a rest that looks long enough now may be needed later, so a rest is
taken only when everything that follows still comes from the fewest strips, and one leftover stays as long as the
plan can make it; else the next strip is opened. Looking ahead like this, it does not matter in which order the sides
of a pair are sewn: the fewest strips are the same for every order, and so is the longest leftover.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.cutting.filling import quick_packings
from stitchflip.cutting.model import HandStep, OneStrip, StripPiece, StripPlan, StripStock
from stitchflip.cutting.search import Verdict, try_out
from stitchflip.cutting.strips import TIME_LIMIT_S, plan_strips
from stitchflip.cutting.whole import fits, task_of, to_units
from stitchflip.lengths import Speaker
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

_LOOKS = 1_000
_MOST_PIECES_SEARCHED = 80
_MOST_SEARCHES = 120
_PIECES_FILLED = 8_000
"""Pieces that are put into strips anew, all quick answers together; a plan of forty pieces takes fewer."""
_UNDECIDED_COUNTS = 10
"""A search that ends undecided took far longer than one that finds an answer, and the next will hardly do better."""
_HAIR = 1e-4
_SHORTEST_LEFTOVER_IN = 0.5
"""A shorter one is not worth keeping together."""


def plan_as_you_go(
    width: float,
    pieces: Sequence[StripPiece],
    stock: Sequence[StripStock],
    time_limit_s: float = TIME_LIMIT_S,
) -> StripPlan:
    """The fewest strips to sew from, and where each piece comes from, in sewing order.

    Args:
        width: cut width of the strips, inches.
        pieces: shortest lengths that reach, inches, in any order; their steps give the sewing order.
        stock: strips on hand and bought ones.
        time_limit_s: seconds the exact solver may take when rules and bounds leave a gap.

    Returns:
        The plan; its strips are numbered in the order they are opened, their pieces in the order sewn.

    Example:
        >>> pieces = [StripPiece(str(step), length, step) for step, length in ((1, 8), (2, 12), (3, 22), (4, 18))]
        >>> plan = plan_as_you_go(2.5, pieces, [StripStock("width of fabric", 30)])
        >>> [(step.step, step.strip_number, step.rest_before) for step in plan.hand_steps]
        [(1, 1, 30), (2, 2, 30), (3, 1, 22), (4, 2, 18)]

        Step 2 would fit the rest of strip 1, but then step 3 would need a third strip.
    """
    in_order = sorted(pieces, key=lambda piece: piece.step)
    plan = plan_strips(width, in_order, stock, time_limit_s)
    missing = list(plan.left_out)
    sewn = []
    for piece in in_order:
        if piece in missing:
            missing.remove(piece)
        else:
            sewn.append(piece)
    hands = _assign(plan, sewn)
    strips = tuple(hand.as_strip(width) for hand in hands)
    return replace(
        plan,
        strips=strips,
        as_you_go=True,
        spare_in=min((strip.rest for strip in strips), default=0.0),
        hand_steps=_steps(sewn, hands),
    )


def hand_words(step: HandStep, say: Speaker) -> str:
    r"""One line for the table sheet: which strip to take, and that it is enough.

    Args:
        step: the step.
        say: the voice in the maker's unit.

    Example:
        >>> from stitchflip.lengths import Unit
        >>> step = HandStep(6, "6", 2, 12.25, rest_before=14, rest_after=1.75, opens_new=False)
        >>> hand_words(step, Speaker(Unit.INCH)).replace("\u202f", " ")
        'take the rest of strip 2 (14 in): enough'
    """
    if step.opens_new:
        return f"open strip {step.strip_number} ({say.margin(step.rest_before)})"
    return f"take the rest of strip {step.strip_number} ({say.margin(step.rest_before)}): enough"


@dataclass(slots=True)
class _Hand:
    """A strip while it is sewn from."""

    stock: str
    length: float
    rest: float
    pieces: list[StripPiece]
    planned: list[StripPiece]
    """What the plan in force still wants from it."""

    def as_strip(self, width: float) -> OneStrip:
        labels = tuple((piece.label, piece.length) for piece in self.pieces)
        return OneStrip(width, self.length, labels, self.stock, max(self.rest, 0.0))


@dataclass(slots=True)
class _Patience:
    """What may still be looked at for one plan; after it the plan in force is kept."""

    searches: int = _MOST_SEARCHES
    """Complete searches; after them only quick answers count."""
    pieces: int = _PIECES_FILLED
    """Pieces that may still be put into strips anew."""

    @property
    def is_over(self) -> bool:
        return self.searches <= 0


def _assign(plan: StripPlan, sewn: Sequence[StripPiece]) -> list[_Hand]:
    """Strips in the order opened, with their pieces in sewing order."""
    by_label = _by_label(sewn)
    closed = [
        _Hand(
            strip.stock,
            strip.length,
            strip.length,
            [],
            [by_label[label, length].pop(0) for label, length in strip.pieces],
        )
        for strip in plan.strips
    ]
    keep = min(plan.spare_in, 0.25)
    kept = _leftover(closed, keep)
    opened: list[_Hand] = []
    patience = _Patience()
    for number, piece in enumerate(sewn):
        hand = None
        if len(sewn) <= _MOST_PIECES_SEARCHED:
            hand = _strip_that_serves(piece, [*sewn[number + 1 :], *kept], opened, closed, keep, patience)
        if hand is None:
            hand = _planned(piece, opened, closed)
        place = next((place for place, one in enumerate(closed) if one is hand), None)
        if place is not None:
            opened.append(closed.pop(place))
        hand.planned.remove(next(one for one in hand.planned if _same_length(one, piece)))
        hand.pieces.append(piece)
        hand.rest -= piece.length
    return opened


def _leftover(closed: Sequence[_Hand], keep: float) -> list[StripPiece]:
    """The longest leftover of the plan, treated as a last piece that nobody may take; none when it is short."""
    longest = max(closed, key=lambda hand: hand.length - sum(piece.length for piece in hand.planned), default=None)
    if longest is None or len(closed) == 1:
        return []
    length = longest.length - sum(piece.length for piece in longest.planned) - keep - _HAIR
    if length < _SHORTEST_LEFTOVER_IN:
        return []
    piece = StripPiece("", length)
    longest.planned.append(piece)
    return [piece]


def _by_label(sewn: Sequence[StripPiece]) -> dict[tuple[str, float], list[StripPiece]]:
    out: dict[tuple[str, float], list[StripPiece]] = {}
    for piece in sewn:
        out.setdefault((piece.label, piece.length), []).append(piece)
    return out


def _planned(piece: StripPiece, opened: Sequence[_Hand], closed: Sequence[_Hand]) -> _Hand:
    """The strip the plan in force gives this length from; one in the hand before a fresh one."""
    return next(hand for hand in (*opened, *closed) if _plans(hand, piece))


def _plans(hand: _Hand, piece: StripPiece) -> bool:
    length = to_units(piece.length)
    return any(to_units(one.length) == length for one in hand.planned)


def _same_length(one: StripPiece, other: StripPiece) -> bool:
    return to_units(one.length) == to_units(other.length)


def _strip_that_serves(
    piece: StripPiece,
    later: Sequence[StripPiece],
    opened: Sequence[_Hand],
    closed: Sequence[_Hand],
    keep: float,
    patience: _Patience,
) -> _Hand | None:
    """A strip that can give the piece so that all later ones still come from the strips there are.

    Opened ones first; of the others what lies on the shelf before the bolt, each kind once.
    """
    kinds = {hand.stock: hand for hand in reversed(closed)}
    fresh = [hand for hand in closed if kinds[hand.stock] is hand]
    for hand in (*opened, *fresh):
        if not fits(piece.length, hand.rest - keep):
            continue
        if _plans(hand, piece):
            return hand
        if _replanned(piece, later, hand, opened, closed, keep, patience):
            return hand
    return None


def _replanned(
    piece: StripPiece,
    later: Sequence[StripPiece],
    hand: _Hand,
    opened: Sequence[_Hand],
    closed: Sequence[_Hand],
    keep: float,
    patience: _Patience,
) -> bool:
    """Whether later pieces still fit when this one is taken from that strip; then that becomes the plan."""
    if patience.pieces <= 0:
        return False
    patience.pieces -= len(later)
    hands = [*opened, *closed]
    rests = [one.rest - keep - (piece.length if one is hand else 0.0) for one in hands]
    stock = [StripStock(str(number), max(rest, 0.0), 1) for number, rest in enumerate(rests)]
    task = task_of(later, stock)
    packing = next(quick_packings(task), None)
    if packing is None:
        if patience.is_over:
            return False
        trial = try_out(task, 0, _LOOKS)
        patience.searches -= _UNDECIDED_COUNTS if trial.verdict is Verdict.UNDECIDED else 1
        if trial.verdict is not Verdict.YES:
            return False
        packing = trial.packing
    waiting: list[list[StripPiece]] = [[] for _ in task.sizes]
    sizes = sorted({to_units(one.length) for one in later}, reverse=True)
    for one in later:
        waiting[sizes.index(to_units(one.length))].append(one)
    for own in hands:
        own.planned = []
    for kind, pattern in packing:
        hands[kind].planned = [waiting[size].pop(0) for size, count in enumerate(pattern) for _ in range(count)]
    hand.planned.append(piece)
    return True


def _steps(sewn: Sequence[StripPiece], hands: Sequence[_Hand]) -> tuple[HandStep, ...]:
    """What happens at each piece, with the rest of its strip before and after."""
    rests = [hand.length for hand in hands]
    taken = [0] * len(hands)
    out: list[HandStep] = []
    for piece in sewn:
        number = next(
            place
            for place, hand in enumerate(hands)
            if taken[place] < len(hand.pieces) and hand.pieces[taken[place]] is piece
        )
        before = rests[number]
        rests[number] = max(before - piece.length, 0.0)
        out.append(
            HandStep(piece.step, piece.label, number + 1, piece.length, before, rests[number], taken[number] == 0)
        )
        taken[number] += 1
    return tuple(out)
