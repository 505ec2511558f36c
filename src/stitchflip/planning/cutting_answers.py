"""What the plan says about cutting, fabric by fabric: purchase, proof, order, tipping points, mistakes, leftovers.

The same answers stand on the screen, in the document for other programs and on the printed sheet.
"""

from __future__ import annotations

from functools import partial
from math import ceil
from typing import TYPE_CHECKING

from stitchflip.cutting.hand import order_of_hand
from stitchflip.cutting.hand_words import HandWords, leftover_words
from stitchflip.cutting.model import Status
from stitchflip.lengths import Speaker
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from stitchflip.cutting.hand_model import CuttingOrder, OrderStep
    from stitchflip.cutting.model import FabricPlan, Row
    from stitchflip.planning.model import Plan

_SAME_IN = 1 / 16
_STEP_IN = 1e-3
"""Purchases closer together than this are the same."""
_NEW = "width of fabric"


@dataclass(frozen=True, slots=True)
class StepWords:
    """One step of the order, said."""

    step: OrderStep
    does: str
    left: str
    check: str


@dataclass(frozen=True, slots=True)
class CloserLook:
    """What looking for a closer way of cutting one fabric found."""

    plan: FabricPlan | None
    """A plan that buys less, or opens less of the shelf; None when none is found."""
    least_buy_in: float | None
    """Edge-to-edge cutting cannot buy less; None where the shelf decides."""
    settings: int
    """Heights of rows of the closer plan."""
    leaves_whole: tuple[str, ...] = ()
    """Pieces on hand that it does not cut into."""


def look_closer(plan: Plan, fabric: FabricPlan, seconds: float) -> CloserLook | None:
    """Look whether a fabric can be cut closer.

    Args:
        plan: the whole plan.
        fabric: the everyday plan of the fabric.
        seconds: how long to look; 0: not at all.

    Returns:
        What was found; None when nobody looked, or the question has no sense for this fabric.
    """
    own = next((one for one in plan.project.fabrics if one.name == fabric.fabric), None)
    if seconds <= 0 or own is None:
        return None
    from stitchflip.cutting.closer import cut_closer
    from stitchflip.cutting.layouts.watch import Watch
    from stitchflip.cutting.shelf_closer import cut_shelf_closer

    pieces, unit = plan.pieces_by_fabric.get(fabric.fabric, ()), plan.project.units
    found = cut_closer(own, pieces, plan.numbers, unit, fabric, partial(Watch, seconds / 2))
    if found is not None:
        return CloserLook(found.plan, found.least_buy_in, found.settings)
    if not own.on_hand:
        return None
    from_shelf = cut_shelf_closer(own, pieces, plan.numbers, unit, fabric, Watch(seconds))
    if from_shelf is None:
        return None
    better = from_shelf.plan
    settings = len({round(row.height, 6) for row in _rows(better)}) if better is not None else 0
    return CloserLook(better, None, settings, from_shelf.leaves_whole)


def _rows(plan: FabricPlan) -> Iterator[Row]:
    yield from plan.rows
    for sheet in plan.hand_sheets:
        yield from sheet.rows


@dataclass(frozen=True, slots=True)
class CuttingAnswer:
    """Everything there is to say about one fabric before it is cut."""

    fabric: FabricPlan
    letter: str
    buy: str
    """What to buy, what stays of it, or that nothing is bought."""
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
    look: CloserLook | None = None
    """What looking for a closer way found; None when nobody looked or the question has no sense."""
    closer: str = ""
    """What cutting closer would save, or saves; "" when nothing."""


def cutting_answers(
    plan: Plan, fabrics: Iterable[FabricPlan] | None = None, *, look_s: float = 0.0, closer: bool = False
) -> tuple[CuttingAnswer, ...]:
    """The answers for some fabrics of a plan, in the order of their letters.

    Args:
        plan: the whole plan.
        fabrics: those that are asked for; None: all.
        look_s: how long to look, for each fabric, whether it can be cut closer; seconds, 0 for not at all.
        closer: True: where a closer way is found, it is the one that is told.
    """
    places = {letter.fabric: place for place, letter in enumerate(plan.letters)}
    chosen = plan.fabrics if fabrics is None else tuple(fabrics)
    in_order = sorted(chosen, key=lambda fabric: places.get(fabric.fabric, len(places)))
    return tuple(_answer(plan, fabric, look_closer(plan, fabric, look_s), closer=closer) for fabric in in_order)


def _answer(plan: Plan, everyday: FabricPlan, look: CloserLook | None, *, closer: bool) -> CuttingAnswer:
    unit = plan.project.units
    say = Speaker(unit)
    is_closer = closer and look is not None and look.plan is not None
    fabric = look.plan if is_closer and look is not None and look.plan is not None else everyday
    order = order_of_hand(fabric, plan.pieces_by_fabric.get(fabric.fabric, ()), plan.numbers, unit)
    words = HandWords(plan.numbers, unit)
    return CuttingAnswer(
        fabric=fabric,
        letter=plan.letter_of(fabric.fabric),
        buy=_buy(fabric, say),
        sure=how_sure(fabric, look, say, is_closer=is_closer),
        order=order,
        steps=tuple(StepWords(step, words.does(step), words.left(step), words.check(step)) for step in order.steps),
        mistakes=_mistakes(fabric, say),
        other_way=_other_way(fabric, say),
        tipping_points=tuple(point.what for point in fabric.tipping_points),
        leftovers=leftover_words(order, unit),
        left_out=f"{', '.join(dict.fromkeys(fabric.left_out))}: {fabric.because}" if fabric.left_out else "",
        look=look,
        closer=closer_words(everyday, look, say, is_told=is_closer),
    )


# --- sentences ---------------------------------------------------------------------------------------------


def _buy(fabric: FabricPlan, say: Speaker) -> str:
    on_hand = f" From the shelf: {'; '.join(fabric.from_hand)}." if fabric.from_hand else ""
    if fabric.short_in > 0:
        return f"Short by {say.shortage(fabric.short_in)} of length.{on_hand}"
    if fabric.buy_in <= 0:
        return f"Nothing to buy.{on_hand}"
    spare = f"{say.margin(fabric.spare_in)} of length to spare" if fabric.spare_in >= _SAME_IN else "nothing to spare"
    return (
        f"{say.purchase(fabric.buy_in)}, {say.near(fabric.usable_width)} usable width: {say.shortage(fabric.need_in)} "
        f"are needed, straightening of both cut ends in it; {spare}.{on_hand}"
    )


def how_sure(fabric: FabricPlan, look: CloserLook | None, say: Speaker, *, is_closer: bool = False) -> str:
    """How sure a plan is, in one sentence or two.

    Args:
        fabric: the plan of one fabric.
        look: what looking for a closer way found.
        say: the maker's voice.
        is_closer: True: the plan is the closer one.

    Returns:
        Proved, best found and how far from the proof at most, or impossible and why.
    """
    if fabric.status is Status.IMPOSSIBLE:
        return f"Impossible: {fabric.because or 'some pieces cannot be had from this fabric.'}"
    if fabric.buy_in <= 0:
        return "Everything comes from the shelf."
    least = look.least_buy_in if look is not None else None
    if look is not None and least is not None and least > fabric.buy_in - _STEP_IN:
        return f"Proved: no way of cutting edge to edge buys less than {say.purchase(least)}."
    said = "" if is_closer else f"{_sure_of_kind(fabric, say)}"
    if least is None or least <= 0:
        return said or _sure_of_kind(fabric, say)
    above = _percent(fabric.buy_in, least)
    open_between = (
        f"no way of cutting edge to edge buys less than {say.purchase(least)}, so this is at most {above:.1f} % above "
        "what any plan buys"
    )
    return f"{said} Of all ways, {open_between}." if said else f"Best found: {open_between}."


def _sure_of_kind(fabric: FabricPlan, say: Speaker) -> str:
    """How sure a plan is among those of its kind, in strips of one width and whole rows."""
    if fabric.status is Status.PROVED and fabric.need_in - fabric.bound_in < _SAME_IN:
        return (
            f"Proved: no way of cutting strips of one width and whole rows needs less than "
            f"{say.shortage(fabric.bound_in)}."
        )
    return (
        f"Best found, at most {percent_above(fabric):.1f} % above what any plan in strips of one width and whole rows "
        f"needs: none does with less than {say.shortage(fabric.bound_in)}."
    )


def closer_words(everyday: FabricPlan, look: CloserLook | None, say: Speaker, *, is_told: bool) -> str:
    """What cutting closer saves, and what it costs; "" when nothing is found.

    Args:
        everyday: the plan in strips of one width and whole rows.
        look: what was found.
        say: the maker's voice.
        is_told: True: its order is the one that is told.
    """
    if look is None or look.plan is None:
        return ""
    rulers = f"{look.settings} height{'s' * (look.settings != 1)} of rows"
    gain = []
    if everyday.left_out and not look.plan.left_out:
        gain.append("all pieces can be had")
    elif look.plan.buy_in < everyday.buy_in - _STEP_IN:
        now, then = (say.purchase(one) if one > 0 else "nothing" for one in (everyday.buy_in, look.plan.buy_in))
        gain.append(f"{then} to buy instead of {now}")
    if look.leaves_whole:
        gain.append(f"{' and '.join(look.leaves_whole)} stays whole")
    what = f"{' and '.join(gain) or 'less fabric is opened'}, with pieces of different widths in a row ({rulers})"
    if is_told:
        return f"Cut closer than usual: {what}."
    return f"It can be cut closer: {what}. That order: stitchflip cut --closer."


def percent_above(fabric: FabricPlan) -> float:
    """How far a plan's need lies above what no plan goes under, percent, up to the next tenth.

    Args:
        fabric: the plan of one fabric.
    """
    return _percent(fabric.need_in, fabric.bound_in)


def _percent(found_in: float, least_in: float) -> float:
    if least_in <= 0:
        return 0.0
    return ceil((found_in / least_in - 1) * 1000 - 1e-6) / 10


def _mistakes(fabric: FabricPlan, say: Speaker) -> str:
    if fabric.buy_in <= 0:
        return ""
    if any(row.stacks for row in fabric.rows):
        spare = say.margin(fabric.spare_in) if fabric.spare_in >= _SAME_IN else ""
        return f"What {spare} of length give that is to spare." if spare else "None: nothing is to spare."
    what, size = _widest(fabric, say)
    if fabric.miscuts == 1:
        return f"One: one further {what} {size} comes from what is bought."
    if fabric.miscuts > 1:
        return f"{fabric.miscuts}: so many further {what}s {size} come from what is bought."
    more = fabric.spare_strip_buy_in
    if more > fabric.buy_in + _SAME_IN:
        return f"None: for one further {what} {size} buy {say.purchase(more)} instead of {say.purchase(fabric.buy_in)}."
    return f"None: one further {what} {size} does not come from what is bought."


def _widest(fabric: FabricPlan, say: Speaker) -> tuple[str, str]:
    """The widest strip of new fabric, or the tallest row when there is no strip: its word and its size."""
    strips = [one.width for one in fabric.strip_plans if any(strip.stock == _NEW for strip in one.strips)]
    if strips:
        return "strip", f"{say.width(max(strips))} wide"
    return "row", f"{say.width(max((row.height for row in fabric.rows), default=0.0))} high"


def _other_way(fabric: FabricPlan, say: Speaker) -> str:
    """How the squares and rectangles would do turned a quarter."""
    other = fabric.losing_rows_in
    if other is None:
        return ""
    now = sum(row.height for row in fabric.rows)
    if fabric.hand_sheets or now <= 0:
        said = f"Turned a quarter the rectangles would take {say.near(other)} of rows, all of it from new fabric"
    else:
        said = f"Turned a quarter the rectangles take {say.near(other)} of rows instead of {say.near(now)}"
    if not fabric.turning_is_refused:
        return f"{said}."
    return f"{said}; not done, because they must not be turned."
