"""A resizing as one document: what was done, the changes, and the two plans side by side."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker
from stitchflip.planning.json_values import Document, number, plain

if TYPE_CHECKING:
    from stitchflip.planning.model import Finding
    from stitchflip.planning.resize.resizing import Resized
    from stitchflip.planning.resize.what_changed import PurchaseChange, WhatChanged
    from stitchflip.project.model import Project


def resized_as_json(before: Project, made: Resized, changed: WhatChanged) -> Document:
    """The document of a resizing.

    Args:
        before: the project as it was.
        made: the project at its new size.
        changed: what that changes.
    """
    old, say = Speaker(before.units), Speaker(made.project.units)
    return {
        "name": made.project.name,
        "units": {"before": before.units.value, "after": made.project.units.value},
        "squared_up": {
            "before": _size(changed.squared_up[0], old),
            "after": _size(changed.squared_up[1], say),
        },
        "changes": [{"path": list(change.path), "to": change.to} for change in made.changes],
        "messages": [plain(text) for text in made.messages],
        "off_the_ruler": [
            {"what": one.what, "exact_in": number(one.exact_in), "cut_in": number(one.cut_in)} for one in made.awkward
        ],
        "sizes_on_the_ruler": [_size(size, say) for size in made.clean_sizes],
        "strips": _two(*changed.strips),
        "base": {"before": _size(changed.bases[0], old), "after": _size(changed.bases[1], say)},
        "bases": _two(*changed.how_many_bases),
        "purchases": [_purchase(one, old, say) for one in changed.purchases],
        "backing": _purchase(changed.backing, old, say),
        "binding": {
            "strips": _two(*changed.binding_strips),
            "need_in": _two(*map(number, changed.binding_need)),
        },
        "findings": {"gone": [_finding(one) for one in changed.gone], "come": [_finding(one) for one in changed.come]},
    }


def _two(before: object, after: object) -> Document:
    return {"before": before, "after": after}


def _size(size: tuple[float, float], say: Speaker) -> Document:
    return {"wide_in": number(size[0]), "long_in": number(size[1]), "text": plain(say.size(*size))}


def _purchase(one: PurchaseChange, old: Speaker, say: Speaker) -> Document:
    texts = {
        key: plain(voice.purchase(inches)) if inches > 0 else "nothing"
        for key, voice, inches in (("before", old, one.before_in), ("after", say, one.after_in))
    }
    return {
        "fabric": one.fabric,
        "before_in": number(one.before_in),
        "after_in": number(one.after_in),
        "text": texts,
    }


def _finding(finding: Finding) -> Document:
    return {"code": finding.code, "severity": finding.severity.value, "what": plain(finding.what)}
