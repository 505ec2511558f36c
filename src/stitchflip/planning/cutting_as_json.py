"""The cutting answers as one document for other programs; keys as in the plan's document, stable once released."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.planning.cutting_answers import percent_above
from stitchflip.planning.json_values import Document, number, plain

if TYPE_CHECKING:
    from collections.abc import Iterable

    from stitchflip.cutting.hand_model import Given, Leftover, OrderStep, Part
    from stitchflip.planning.cutting_answers import CuttingAnswer, StepWords
    from stitchflip.planning.cutting_wishes import KitsAnswer, OnlyAnswer
    from stitchflip.planning.model import Plan


def cutting_as_json(
    plan: Plan, answers: Iterable[CuttingAnswer], kits: KitsAnswer | None = None, only: Iterable[OnlyAnswer] = ()
) -> Document:
    """The cutting of some fabrics as one document.

    Args:
        plan: the plan.
        answers: what is said about each of the fabrics.
        kits: the kits that are cut together, if they are.
        only: what is said about fabrics of which there is only so much.

    Returns:
        A dict ready for `json.dumps`. Lengths are inches under keys ending `_in`, with a `text` beside them in the
        maker's unit; of fabric "across" is between the selvages and "along" beside them.
    """
    return {
        "project": {"name": plan.project.name, "units": plan.project.units.value, "how_many": plan.project.how_many},
        "kits": None if kits is None else _kits(kits),
        "if_only": [
            {
                "fabric": plain(one.fabric),
                "have_in": number(one.have_in),
                "is_enough": one.is_enough,
                "stands_in": plain(one.stands_in),
                "text": [plain(line) for line in one.says],
            }
            for one in only
        ],
        "fabrics": [_fabric(answer) for answer in answers],
    }


def _kits(kits: KitsAnswer) -> Document:
    return {
        "how_many": kits.how_many,
        "spare": kits.spare,
        "text": [plain(line) for line in kits.teacher],
        "slips": [{"kits": list(slip.kits), "text": [plain(line) for line in slip.lines]} for slip in kits.slips],
    }


def _fabric(answer: CuttingAnswer) -> Document:
    fabric = answer.fabric
    return {
        "name": fabric.fabric,
        "letter": answer.letter,
        "usable_width_in": number(fabric.usable_width),
        "need_in": number(fabric.need_in),
        "buy_in": number(fabric.buy_in),
        "spare_in": number(fabric.spare_in),
        "short_in": number(fabric.short_in),
        "text": plain(answer.buy),
        "status": fabric.status.value,
        "least_need_in": number(fabric.bound_in),
        "percent_above_least": percent_above(fabric),
        "sure": plain(answer.sure),
        "motifs": _motifs(answer),
        "closer": _closer(answer),
        "order": [_step(words) for words in answer.steps],
        "while_sewing": [plain(line) for line in answer.while_sewing],
        "cuts_finer_than_listed": answer.order.is_finer,
        "tipping_points": [
            {"what_changes": point.change, "slack_in": number(point.slack_in), "text": plain(point.what)}
            for point in fabric.tipping_points
        ],
        "mistakes": {"count": fabric.miscuts, "text": plain(answer.mistakes)},
        "other_way": None
        if not answer.other_way
        else {
            "rows_in": number(sum(row.height for row in fabric.rows)),
            "rows_turned_in": number(fabric.losing_rows_in),
            "is_refused": fabric.turning_is_refused,
            "text": plain(answer.other_way),
        },
        "leftovers": [_leftover(one, said) for one, said in zip(answer.order.leftovers, answer.leftovers, strict=True)],
        "left_out": list(fabric.left_out),
        "because": plain(fabric.because),
    }


def _motifs(answer: CuttingAnswer) -> Document | None:
    """Windows round motifs with their centers, across and along the fabric from the corner that is cut first."""
    if answer.motifs is None:
        return None
    plan = answer.motifs.plan
    return {
        "length_in": number(plan.long),
        "surely": plan.count.surely,
        "at_best": plan.count.at_best,
        "starts_as_drawn": not plan.is_example,
        "windows": [{"across_in": number(one.x), "along_in": number(one.y)} for one in plan.windows],
        "text": plain(answer.motifs.says),
    }


def _closer(answer: CuttingAnswer) -> Document | None:
    """What cutting closer does; None when nobody looked or there is nothing to say."""
    if not answer.closer:
        return None
    return {"buy_in": number(answer.closer_buy_in), "is_told": answer.is_closer, "text": plain(answer.closer)}


def _step(words: StepWords) -> Document:
    step = words.step
    return {
        "step": step.number,
        "act": step.act.value,
        "source": plain(step.source),
        "what": step.what,
        "numbers": list(step.numbers),
        "wide_in": number(step.wide) if step.what else None,
        "long_in": number(step.long) if step.what else None,
        "settings": [_part(part) for part in step.parts],
        "cut_long_in": number(step.cut_in),
        "folds": step.folds,
        "folded_in": number(step.folded_in),
        "left": _left(step),
        "text": plain(words.does),
        "left_text": plain(words.left),
        "check": plain(words.check),
    }


def _left(step: OrderStep) -> Document | None:
    """Of the fabric across and along; of a strip or row wide and long."""
    if max(step.left) <= 0:
        return None
    one, other = ("wide_in", "long_in") if step.act == "subcut" else ("across_in", "along_in")
    return {one: number(step.left[0]), other: number(step.left[1])}


def _part(part: Part) -> Document:
    return {
        "ruler_at_in": number(part.measure),
        "times": part.count,
        "gives": [_given(given) for given in part.gives],
        "then": [_part(one) for one in part.then],
    }


def _given(given: Given) -> Document:
    return {
        "label": plain(given.label),
        "count": given.count,
        "wide_in": number(given.wide),
        "long_in": number(given.long),
        "on_the_slant": given.is_slanted,
    }


def _leftover(one: Leftover, said: str) -> Document:
    return {
        "name": plain(one.name),
        "count": one.count,
        "wide_in": number(one.wide),
        "long_in": number(one.long),
        "after_step": one.step,
        "text": plain(said),
    }
