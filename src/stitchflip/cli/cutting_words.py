"""The cutting list in words: what is cut how often, what it becomes, which strip gives which pieces."""

from __future__ import annotations

import re
from itertools import groupby
from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker
from stitchflip.project.model import CenterShape, Working

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from stitchflip.cutting.model import FabricPlan, OneStrip, Piece, StripPlan
    from stitchflip.planning.model import Plan

_UNNUMBERED = re.compile(r" \d+(?: of \d+)?$")
"""The running number behind the name of a piece that is cut several times."""


def by_letter(plan: Plan) -> Callable[[str], int]:
    """Sorts fabrics in the order of their letters.

    Args:
        plan: the plan with its letters.
    """
    places = {letter.fabric: place for place, letter in enumerate(plan.letters)}
    return lambda fabric: places.get(fabric, len(places))


def counted(count: int, one: str) -> str:
    """A count and its word: "1 strip", "3 strips"."""
    return f"{count} {one if count == 1 else f'{one}s'}"


def amount(plan: Plan, fabric: FabricPlan) -> str:
    """How much of a fabric to buy or to have.

    Args:
        plan: the plan.
        fabric: one of its fabrics.
    """
    say = Speaker(plan.project.units)
    if fabric.short_in > 0:
        return f"short by {say.shortage(fabric.short_in)}"
    if fabric.buy_in > 0:
        return say.purchase(fabric.buy_in)
    return "on hand" if fabric.from_hand else "none"


def what_for(plan: Plan, fabric: FabricPlan) -> str:
    """What a fabric's amount gives: strips of which widths, rows of what height, binding.

    Args:
        plan: the plan.
        fabric: one of its fabrics.
    """
    say = Speaker(plan.project.units)
    parts = [
        f"{counted(len(strips.strips), 'strip')} {say.width(strips.width)} wide"
        + (f" {whole_for(strips)}" if strips.is_whole else "")
        for strips in fabric.strip_plans
        if strips.strips
    ]
    parts += [
        f"{'a row' if count == 1 else f'{count} rows'} {say.width(height)} high ({names})"
        for (height, names), count in _counted_rows(fabric)
    ]
    return ", ".join(parts)


def whole_for(strips: StripPlan) -> str:
    """What whole strips are joined for: the binding, or a long joining strip or border.

    Args:
        strips: whole strips of one width.
    """
    names = dict.fromkeys(label for strip in strips.strips for label, _ in strip.pieces)
    joined = " and ".join(_small(name) for name in names)
    return "for binding" if joined == "binding" else f"to join ({joined})"


def _counted_rows(fabric: FabricPlan) -> list[tuple[tuple[float, str], int]]:
    found: dict[tuple[float, str], int] = {}
    for row in fabric.rows:
        names = " and ".join(dict.fromkeys(_small(_UNNUMBERED.sub("", label)) for label, _ in row.pieces))
        found[row.height, names] = found.get((row.height, names), 0) + 1
    return list(found.items())


def alike(plan: Plan, pieces: Iterable[Piece]) -> list[tuple[str, list[Piece]]]:
    """Pieces of a fabric that are cut to the same size, together, in cutting order, with that size.

    Args:
        plan: the plan.
        pieces: of one fabric, in cutting order.
    """
    groups: dict[tuple[str, str], list[Piece]] = {}
    for piece in pieces:
        groups.setdefault((_cut_size(plan, piece), piece.kind), []).append(piece)
    return [(size, group) for (size, _), group in groups.items()]


def _cut_size(plan: Plan, piece: Piece) -> str:
    """Wide × long as cut; as long as it must be when it is trimmed after sewing."""
    say = Speaker(plan.project.units).bare
    as_you_go = plan.project.working is Working.TRIM_AS_YOU_GO and piece.kind == "strip" and piece.shortest > 0
    if piece.name == "Center" and _is_shaped(plan):
        return f"{say.cut(piece.wide)} × {say.cut(piece.long)}"
    return say.cut_size(piece.wide, piece.shortest if as_you_go else piece.long)


def _is_shaped(plan: Plan) -> bool:
    """True for a center that is cut to its shape out of a rectangle."""
    center = plan.project.center
    return center is not None and center.shape in (CenterShape.POLYGON, CenterShape.CORNERS, CenterShape.HALF_SQUARE)


def finished(pieces: Iterable[Piece]) -> str:
    """The finished size of pieces cut alike; of a strip it is the width that shows."""
    one = next(iter(pieces))
    return f"{one.finished} wide" if one.kind == "strip" and one.finished else one.finished


def becomes(pieces: Iterable[Piece]) -> str:
    """What pieces of one size become: "strips 1, 2, 18", "center", "binding, joined"."""
    pieces = list(pieces)
    steps = [piece.name for piece in pieces if piece.kind == "strip"]
    names = [_becomes(piece) for piece in pieces if piece.kind == "rectangle" and not piece.name[:1].isdigit()]
    names += [f"{_small(piece.name)}, joined" for piece in pieces if piece.kind == "binding"]
    names += [
        f"{_small(name)} strip" if name in {"Middle", "First"} else _small(name)
        for name in steps
        if not name[:1].isdigit()
    ]
    for kind, word in (("strip", "strip"), ("rectangle", "patch")):
        numbered = [piece.name for piece in pieces if piece.kind == kind and piece.name[:1].isdigit()]
        if numbered:
            many = "es" if word == "patch" else "s"
            names.append(f"{word}{'' if len(numbered) == 1 else many} {', '.join(numbered)}")
    return "; ".join(names)


def _becomes(piece: Piece) -> str:
    is_shaped = piece.name == "Center" and not piece.finished
    return f"{_small(piece.name)}, cut to its shape" if is_shaped else _small(piece.name)


def _small(name: str) -> str:
    """A name inside a sentence: its first letter small, names of blocks and fabrics as they are."""
    return name[:1].lower() + name[1:]


def strips_cut(plan: Plan, strips: StripPlan) -> Iterator[str]:
    """Which strip of the fabric gives which pieces, and what is left of it; equal ones in a row together.

    Args:
        plan: the plan.
        strips: strips of one width.
    """
    say = Speaker(plan.project.units)
    numbered = list(enumerate(strips.strips, start=1))
    for source, whole in groupby(numbered, key=lambda one: one[1].stock):
        own = list(whole)
        place = "the width of the fabric" if source == "width of fabric" else f"from {source}"
        head = f"{counted(len(own), 'strip')} {say.width(strips.width)} wide, {place}"
        runs = [list(run) for _, run in groupby(own, key=lambda one: _told(say, one[1]))]
        if len(runs) == 1:
            yield f"{head}: {_run(say, runs[0], is_all=True)}"
            continue
        yield f"{head}:"
        for run in runs:
            first, last = run[0][0], run[-1][0]
            names = f"no. {first}" if first == last else f"no. {first} {'and' if last == first + 1 else 'to'} {last}"
            yield f"  {names} {_run(say, run, is_all=False)}"


def _run(say: Speaker, run: list[tuple[int, OneStrip]], *, is_all: bool) -> str:
    """What strips that are told together give."""
    strips = [strip for _, strip in run]
    left = f"; {say.margin(strips[0].rest)} left" if strips[0].rest > 0 else ""
    if len(strips) == 1:
        return f"{'' if is_all else 'gives '}{_labels(strips[0])}{left}"
    if all(len(strip.pieces) == 1 for strip in strips):
        return f"one each for {', '.join(_labels(strip) for strip in strips)}{left}{' of each' if left else ''}"
    return f"each {_labels(strips[0])}{left}{' of each' if left else ''}"


def _told(say: Speaker, strip: OneStrip) -> tuple[str, str]:
    """What must be the same for strips to be told together: how many pieces or which, and what is left."""
    gives = "one" if len(strip.pieces) == 1 else _labels(strip)
    return gives, say.margin(strip.rest)


def _labels(strip: OneStrip) -> str:
    """Labels of what a strip gives, in the order cut; equal ones in a row counted: "1 (4 times), 2"."""
    found = [(label, len(list(group))) for label, group in groupby(label for label, _ in strip.pieces)]
    times = {1: "", 2: " (twice)"}
    return ", ".join(f"{label}{times.get(count, f' ({count} times)')}" for label, count in found)


def strips_in_hand(plan: Plan, strips: StripPlan) -> list[str]:
    """Trim as you go: which strip in the hand each piece is sewn from; empty when pieces are cut first.

    Args:
        plan: the plan.
        strips: strips of one width.
    """
    if not strips.hand_steps:
        return []
    say = Speaker(plan.project.units)
    said = [
        f"for {step.piece} "
        + (
            f"open strip {step.strip_number} ({say.margin(step.rest_before)})"
            if step.opens_new
            else f"take the rest of strip {step.strip_number} ({say.margin(step.rest_before)}): enough"
        )
        for step in strips.hand_steps
    ]
    last = say.margin(strips.hand_steps[-1].rest_after)
    return [f"{say.width(strips.width)} wide: {'; '.join(said)}; {last} left at the end"]
