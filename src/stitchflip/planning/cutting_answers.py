"""What the plan says about cutting, fabric by fabric: purchase, proof, order, tipping points, mistakes, leftovers.

The same answers stand on the screen, in the document for other programs and on the printed sheet.
"""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING

from stitchflip.cutting.as_you_go import hand_words
from stitchflip.cutting.hand import order_of_hand
from stitchflip.cutting.hand_words import HandWords, amount_words, leftover_words
from stitchflip.cutting.model import Status
from stitchflip.lengths import Speaker
from stitchflip.planning.motifs_told import motifs_told
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Container, Iterable, Iterator

    from stitchflip.cutting.hand_model import CuttingOrder, OrderStep
    from stitchflip.cutting.model import FabricPlan
    from stitchflip.planning.closer_cuts import CloserCut
    from stitchflip.planning.cutting_wishes import KitsAnswer, OnlyAnswer
    from stitchflip.planning.model import Plan
    from stitchflip.planning.motifs_told import MotifsTold

_SAME_IN = 1 / 16
_NEW = "width of fabric"
_NUMBER_WORDS = {2: "Two", 3: "Three", 4: "Four", 5: "Five", 6: "Six", 7: "Seven", 8: "Eight", 9: "Nine"}
"""A sentence begins with a word; higher counts stay figures."""


@dataclass(frozen=True, slots=True)
class StepWords:
    """One step of the order, said."""

    step: OrderStep
    does: str
    left: str
    check: str


@dataclass(frozen=True, slots=True)
class CuttingAnswer:
    """Everything there is to say about one fabric before it is cut."""

    fabric: FabricPlan
    letter: str
    buy: str
    """What to buy or what there is, what stays of it, or that nothing is bought."""
    sure: str
    """How sure that is."""
    order: CuttingOrder
    steps: tuple[StepWords, ...]
    mistakes: str
    """Mistakes one can afford; "" when nothing is bought."""
    other_way: str
    """How the rectangles would do laid the other way; "" when there is no other."""
    tipping_points: tuple[str, ...]
    leftovers: tuple[str, ...]
    left_out: str
    """What the fabric cannot give, and why; "" when it gives everything."""
    closer: str = ""
    """What cutting closer saves, or that nothing can; "" when there is nothing to say, or nobody looked."""
    closer_buy_in: float | None = None
    """What the closer way buys; None when there is none."""
    is_closer: bool = False
    """True: the closer way is the one that is told."""
    while_sewing: tuple[str, ...] = ()
    """Which strip each piece is sewn from, when lengths are trimmed while sewing; a line for each width."""
    motifs: MotifsTold | None = None
    """Windows round the motifs of its print; None when none is cut."""
    is_there: bool = False
    """True: so much of the fabric is there; none of it is bought."""

    @property
    def amount_heading(self) -> str:
        """The word before the amount: "Buy", or "There is" when the maker has it."""
        return "There is" if self.is_there and self.fabric.buy_in > 0 else "Buy"


@dataclass(frozen=True, slots=True)
class CuttingTold:
    """Everything that is said about cutting a piece, or kits of it."""

    plan: Plan
    """With the fabrics as they are told."""
    answers: tuple[CuttingAnswer, ...]
    kits: KitsAnswer | None = None
    only: tuple[OnlyAnswer, ...] = ()


def cutting_answers(
    plan: Plan,
    fabrics: Iterable[FabricPlan] | None = None,
    cuts: Iterable[CloserCut] = (),
    *,
    closer: bool = False,
    there: Container[str] = (),
) -> tuple[CuttingAnswer, ...]:
    """The answers for some fabrics of a plan, in the order of their letters.

    Args:
        plan: the whole plan.
        fabrics: those that are asked for, as everyday plans; None: all.
        cuts: what cutting closer does for them, where somebody looked.
        closer: True: where there is a closer way, it is the one that is told.
        there: fabrics of which the maker has what the plan is for; none of them is bought.
    """
    places = {letter.fabric: place for place, letter in enumerate(plan.letters)}
    chosen = plan.fabrics if fabrics is None else tuple(fabrics)
    in_order = sorted(chosen, key=lambda fabric: places.get(fabric.fabric, len(places)))
    found = {cut.fabric: cut for cut in cuts}
    return tuple(
        _answer(plan, fabric, found.get(fabric.fabric), closer=closer, is_there=fabric.fabric in there)
        for fabric in in_order
    )


def _answer(
    plan: Plan, everyday: FabricPlan, found: CloserCut | None, *, closer: bool, is_there: bool
) -> CuttingAnswer:
    unit = plan.project.units
    say = Speaker(unit)
    better = found.plan if found is not None else None
    is_closer = closer and better is not None
    fabric = better if closer and better is not None else everyday
    order = order_of_hand(fabric, plan.pieces_by_fabric.get(fabric.fabric, ()), plan.numbers, unit)
    words = HandWords(plan.numbers, unit)
    return CuttingAnswer(
        fabric=fabric,
        letter=plan.letter_of(fabric.fabric),
        buy=_buy(fabric, say),
        sure=how_sure(fabric, say, is_closer=is_closer),
        order=order,
        steps=tuple(StepWords(step, words.does(step), words.left(step), words.check(step)) for step in order.steps),
        mistakes=_mistakes(fabric, say, "what there is" if is_there else "what is bought"),
        other_way=_other_way(plan, fabric, say),
        tipping_points=tuple(_without(fabric.fabric, point.what) for point in fabric.tipping_points),
        leftovers=leftover_words(order, unit),
        left_out=f"{', '.join(dict.fromkeys(fabric.left_out))}: {fabric.because}" if fabric.left_out else "",
        closer=_closer(found, is_told=is_closer),
        closer_buy_in=None if better is None else better.buy_in,
        is_closer=is_closer,
        while_sewing=tuple(_while_sewing(fabric, say)),
        motifs=motifs_told(plan, fabric.fabric),
        is_there=is_there,
    )


# --- sentences ---------------------------------------------------------------------------------------------


def _buy(fabric: FabricPlan, say: Speaker) -> str:
    on_hand = f" From the shelf: {'; '.join(fabric.from_hand)}." if fabric.from_hand else ""
    if fabric.short_in > 0:
        return f"Short by {say.shortage(fabric.short_in)} of length.{on_hand}"
    if fabric.buy_in <= 0:
        return f"Nothing to buy.{on_hand}"
    spare = f"{say.margin(fabric.spare_in)} of length to spare" if fabric.spare_in >= _SAME_IN else "nothing to spare"
    width, need = say.near(fabric.usable_width), say.shortage(fabric.need_in)
    return (
        f"{amount_words(fabric.buy_in, say.unit)}, {width} usable width: {need} are needed, straightening of both cut "
        f"ends in it; {spare}.{on_hand}"
    )


def how_sure(fabric: FabricPlan, say: Speaker, *, is_closer: bool = False) -> str:
    """How sure a plan is, in one sentence.

    Args:
        fabric: the plan of one fabric.
        say: the maker's voice.
        is_closer: True: pieces of different widths share its rows.

    Returns:
        Proved, best found and how far from the proof at most, or impossible and why.
    """
    if fabric.status is Status.IMPOSSIBLE:
        return f"Impossible: {fabric.because or 'some pieces cannot be had from this fabric.'}"
    if fabric.buy_in <= 0:
        return "Everything comes from the shelf."
    if is_closer and fabric.status is Status.PROVED:
        return f"Proved: no rows of different pieces, cut edge to edge, buy less than {say.purchase(fabric.buy_in)}."
    ways = "rows cut edge to edge" if is_closer else "strips of one width and whole rows"
    if fabric.status is Status.PROVED and fabric.need_in - fabric.bound_in < _SAME_IN:
        return f"Proved: no way of cutting in {ways} needs less than {say.shortage(fabric.bound_in)}."
    above = percent_above(fabric)
    if above is None:
        return f"Best found: how much less another plan in {ways} could need was not decided."
    return (
        f"Best found, at most {above:.1f} % above what any plan in {ways} needs: none does with less "
        f"than {say.shortage(fabric.bound_in)}."
    )


def _closer(found: CloserCut | None, *, is_told: bool) -> str:
    """What cutting closer does, and where its order is."""
    if found is None or not found.says:
        return ""
    return f"{found.says} That order: stitchflip cut --closer." if found.plan and not is_told else found.says


def percent_above(fabric: FabricPlan) -> float | None:
    """How far a plan's need lies above what no plan goes under, percent, up to the next tenth; None: not known.

    Args:
        fabric: the plan of one fabric.
    """
    if fabric.bound_in <= 0:
        return 0.0 if fabric.need_in <= 0 else None
    return ceil((fabric.need_in / fabric.bound_in - 1) * 1000 - 1e-6) / 10


def _mistakes(fabric: FabricPlan, say: Speaker, source: str) -> str:
    """How many slips the fabric survives; `source` is what they are made good from."""
    if fabric.buy_in <= 0:
        return ""
    if any(row.stacks for row in fabric.rows):
        spare = say.margin(fabric.spare_in) if fabric.spare_in >= _SAME_IN else ""
        return (
            f"Only what can be cut again from the {spare} of length to spare." if spare else "None: nothing to spare."
        )
    what, size = _widest(fabric, say)
    if fabric.miscuts == 1:
        return f"One: {source} gives one more {what} {size}."
    if fabric.miscuts > 1:
        return (
            f"{_NUMBER_WORDS.get(fabric.miscuts, fabric.miscuts)}: {source} gives {fabric.miscuts} more {what}s {size}."
        )
    more = fabric.spare_strip_buy_in
    if more > fabric.buy_in + _SAME_IN:
        return f"None: for one more {what} {size} buy {say.purchase(more)} instead of {say.purchase(fabric.buy_in)}."
    return f"None: {source} does not give one more {what} {size}."


def _widest(fabric: FabricPlan, say: Speaker) -> tuple[str, str]:
    """The widest strip of new fabric, or the tallest row when there is no strip: its word and its size."""
    strips = [one.width for one in fabric.strip_plans if any(strip.stock == _NEW for strip in one.strips)]
    if strips:
        return "strip", f"{say.width(max(strips))} wide"
    return "row", f"{say.width(max((row.height for row in fabric.rows), default=0.0))} high"


def _while_sewing(fabric: FabricPlan, say: Speaker) -> Iterator[str]:
    for strips in fabric.strip_plans:
        if strips.hand_steps:
            takes = "; ".join(f"for {step.piece} {hand_words(step, say)}" for step in strips.hand_steps)
            yield f"{say.width(strips.width)} wide: {takes}."


def _without(name: str, said: str) -> str:
    """A sentence that need not name the fabric it stands under."""
    rest = said.removeprefix(f"{name}: ").removeprefix(f"{name}, ")
    return rest[:1].upper() + rest[1:]


def _other_way(plan: Plan, fabric: FabricPlan, say: Speaker) -> str:
    """How the squares and rectangles would do turned a quarter; nothing where a motif decides."""
    other = fabric.losing_rows_in
    pieces = plan.pieces_by_fabric.get(fabric.fabric, ())
    if other is None or any(piece.motif_in > 0 or piece.block_in > 0 for piece in pieces):
        return ""
    now = sum(row.height for row in fabric.rows)
    if fabric.hand_sheets or now <= 0:
        said = f"Turned a quarter the rectangles would take {say.near(other)} of rows, all of it from new fabric"
    else:
        said = f"Turned a quarter the rectangles take {say.near(other)} of rows instead of {say.near(now)}"
    if not fabric.turning_is_refused:
        return f"{said}."
    return f"{said}; not done, because they must not be turned."
