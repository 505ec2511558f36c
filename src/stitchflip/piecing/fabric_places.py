"""Where each fabric goes when the rounds do not say: the rules a maker uses with her eyes.

Lightness is read from the fabric's color (relative luminance of the sRGB color, IEC 61966-2-1 as used by
WCAG 2), which is what a gray photograph shows.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.project.model import FabricOrder, Project

if TYPE_CHECKING:
    import random
    from collections.abc import Sequence

    from stitchflip.piecing.ways.wanted import Wanted


def lightness(color: str) -> float:
    """Relative luminance of a CSS hex color, 0 black to 1 white.

    Example:
        >>> lightness("#ffffff"), lightness("#000")
        (1.0, 0.0)
    """
    digits = color.lstrip("#")
    if len(digits) == 3:
        digits = "".join(digit * 2 for digit in digits)
    parts = [int(digits[place : place + 2], 16) / 255 for place in (0, 2, 4)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return round(0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2], 9)


def fabrics_for(project: Project, wanted: Sequence[Wanted], names: Sequence[str]) -> tuple[str, ...]:
    """The fabric of each strip, in the order sewn.

    A fabric named in its round or step stays; the others follow the project's rule, accents first, then the
    order; "none next to itself" looks at the strip before and at the last strip on the same side.

    Raises:
        BuildError: If the rule has no fabrics to choose from.
    """
    rule = project.fabric_rule
    pool = rule.fabrics or tuple(fabric.name for fabric in project.fabrics if fabric.name != rule.accent)
    open_places = [place for place, strip in enumerate(wanted) if strip.fabric is None and not _follows(wanted, place)]
    if open_places and not pool:
        raise BuildError(
            what="no fabric is named for the strips",
            fix="Name a fabric in each round, or list fabrics under [fabric_rule].",
            where="fabric_rule.fabrics",
            code="build.no-fabric",
        )
    chosen: list[str | None] = [strip.fabric for strip in wanted]
    from random import Random  # brings in the hash library, which few plans need

    chance = Random(rule.seed)
    for turn, place in enumerate(open_places):
        if rule.accent and rule.accent_every and (turn + 1) % rule.accent_every == 0:
            chosen[place] = rule.accent
        else:
            candidates = _candidates(project, pool, wanted, place, turn, len(open_places), names, chance)
            avoid = _touching(wanted, chosen, place) if rule.none_next_to_itself else set()
            chosen[place] = next((name for name in candidates if name not in avoid), candidates[0])
        for later in range(place + 1, len(wanted)):
            if not _follows(wanted, later):
                break
            chosen[later] = chosen[place]
    return tuple(name or "" for name in chosen)


def _follows(wanted: Sequence[Wanted], place: int) -> bool:
    """True for a strip of the same fabric as the one before it; a round that lost its first strip chooses anew."""
    return wanted[place].like_last and place > 0 and wanted[place - 1].round == wanted[place].round


def name_of_place(strip: Wanted, names: Sequence[str]) -> str:
    """What the place of a strip is called: its side, or a name of its own."""
    return names[strip.side] if strip.side >= 0 else strip.place


def _candidates(
    project: Project,
    pool: Sequence[str],
    wanted: Sequence[Wanted],
    place: int,
    turn: int,
    total: int,
    names: Sequence[str],
    chance: random.Random,
) -> list[str]:
    """Fabrics for one strip, best first."""
    rule = project.fabric_rule
    light = {fabric.name: lightness(fabric.color) for fabric in project.fabrics}
    by_light = sorted(pool, key=lambda name: light.get(name, 0.5), reverse=True)
    match rule.order:
        case FabricOrder.IN_TURN:
            return _from(pool, turn)
        case FabricOrder.SHUFFLED:
            order = list(pool)
            chance.shuffle(order)
            return order
        case FabricOrder.LIGHT_TO_DARK:
            return _from(by_light, min(len(by_light) - 1, turn * len(by_light) // max(total, 1)))
        case FabricOrder.HALVES:
            half = (len(by_light) + 1) // 2
            is_light = name_of_place(wanted[place], names) in rule.light_sides
            side = by_light[:half] if is_light else by_light[half:] or by_light
            return _from(side, wanted[place].round - 1)


def _from(names: Sequence[str], first: int) -> list[str]:
    first %= len(names)
    return [*names[first:], *names[:first]]


def _touching(wanted: Sequence[Wanted], chosen: Sequence[str | None], place: int) -> set[str | None]:
    """Fabrics that a strip would lie beside: the strip before it and the last one on its own side."""
    out = {chosen[place - 1]} if place else set()
    here = (wanted[place].side, wanted[place].place)
    same_side = [chosen[other] for other in range(place) if (wanted[other].side, wanted[other].place) == here]
    return out | set(same_side[-1:])
