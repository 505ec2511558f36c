"""A resizing on the screen: the size, what was done, what changes at the shop and at the table, what to look at."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cli.page import Cell, Grid, Line
from stitchflip.cli.plan_screen import facts, findings, heading
from stitchflip.cli.plan_words import does_it_fit, headline
from stitchflip.lengths import Speaker
from stitchflip.planning.model import Severity

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.cli.page import Part
    from stitchflip.planning.model import Plan
    from stitchflip.planning.resize import PurchaseChange, Resized, WhatChanged


def resize_screen(before: Plan, after: Plan, made: Resized, changed: WhatChanged) -> Iterator[Part]:
    """Everything on the screen of a resizing, top to bottom.

    Args:
        before: the plan as it was.
        after: the plan at the new size.
        made: what was done.
        changed: what that changes.
    """
    old, say = Speaker(before.project.units), Speaker(after.project.units)
    yield Line(f"{headline(after)} · was {old.size(*changed.squared_up[0])}", "bold")
    yield from facts((("Does it fit?", does_it_fit(after)),))
    yield from heading("What was done")
    yield Grid([(Cell(f"- {text}"),) for text in made.messages or ("Nothing: it has this size already.",)], indent=2)
    if made.clean_sizes:
        sizes = " or ".join(say.size(*size) for size in made.clean_sizes)
        yield Line(f"At {sizes} every cut is on the ruler.", indent=2)
    yield from heading("What changes")
    yield Grid(list(_rows(changed, old, say)), ("", "before", "after"), indent=2)
    yield from _findings(after, changed)


def _rows(changed: WhatChanged, old: Speaker, say: Speaker) -> Iterator[tuple[Cell, ...]]:
    """What is cut, sewn and bought, before and after."""
    rows = [
        ("strips sewn", *map(str, changed.strips)),
        ("bases, cut wide × long", *_bases(changed, old, say)),
        *((one.fabric, *_bought(one, old, say)) for one in changed.purchases),
        (f"{changed.backing.fabric} (backing)", *_bought(changed.backing, old, say)),
        ("binding strips", *map(str, changed.binding_strips)),
        ("binding needed, each", old.cut(changed.binding_need[0]), say.cut(changed.binding_need[1])),
    ]
    for what, before, after in rows:
        yield Cell(what), Cell(before), Cell(after, "" if before == after else "bold")


def _bases(changed: WhatChanged, old: Speaker, say: Speaker) -> tuple[str, str]:
    """How many bases, and how large."""
    texts = []
    for voice, size, count in zip((old, say), changed.bases, changed.how_many_bases, strict=True):
        times = f"{count} of " if count > 1 else ""
        texts.append(f"{times}{voice.size(*size)}")
    return texts[0], texts[1]


def _bought(one: PurchaseChange, old: Speaker, say: Speaker) -> tuple[str, str]:
    """What is bought; nothing where what is on hand is enough."""
    return (
        old.purchase(one.before_in) if one.before_in > 0 else "nothing",
        say.purchase(one.after_in) if one.after_in > 0 else "nothing",
    )


def _findings(after: Plan, changed: WhatChanged) -> Iterator[Part]:
    """What is new to look at, and what is no longer there; a stop is shown whether it is new or not."""
    come = {finding.code for finding in changed.come}
    shown = [one for one in after.findings if one.code in come or one.severity is Severity.STOP]
    if shown:
        yield from findings(shown)
    gone = dict.fromkeys(finding.what for finding in changed.gone)
    if gone:
        yield from heading("No longer")
        yield Grid([(Cell(f"- {what}"),) for what in gone], indent=2)
