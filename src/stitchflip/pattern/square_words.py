"""Squaring up and binding in words: the same numbers on the table sheet and in the pattern."""

from __future__ import annotations

from collections import Counter

from stitchflip.finishing.model import PointNumber, SideNumber
from stitchflip.finishing.words import once_finished
from stitchflip.pattern.backing_pages import edge_sentences
from stitchflip.pattern.model import Mention, Words, strong, words
from stitchflip.pattern.telling import Teller, counted, listed
from stitchflip.project.model import Edge


def side_groups(teller: Teller) -> tuple[tuple[str, tuple[SideNumber, ...]], ...]:
    """Sides of the squared-up piece at the same distance from the center mark, with that distance in words."""
    groups: dict[str, list[SideNumber]] = {}
    for side in teller.plan.square_up.sides:
        groups.setdefault(teller.say.near(side.distance), []).append(side)
    return tuple((distance, tuple(sides)) for distance, sides in groups.items())


def side_names(teller: Teller, sides: tuple[SideNumber, ...]) -> str:
    """The sides by name; "each side" when it is all of them."""
    if len(sides) == len(teller.plan.square_up.sides):
        return "every side"
    return listed([side.name for side in sides])


def is_all_curve(teller: Teller) -> bool:
    """True for a round or oval piece: it has no straight edge to lay a ruler to."""
    return all(side.is_curve for side in teller.plan.square_up.sides)


def distances(teller: Teller, *where: Mention) -> Words:
    """How far each trimmed edge lies from the center mark, in one sentence; where names the picture of the sides."""
    shown = words(" (", where[0], ")") if where else ()
    groups = side_groups(teller)
    if is_all_curve(teller):
        return words(teller.plan.square_up.curve.rstrip("."), shown, ".")
    parts = [f"{side_names(teller, sides)} {distance}" for distance, sides in groups]
    return words("From the center mark, square to the edge", shown, ": ", strong("; ".join(parts)), ".")


_SIDES = ("left", "right edge", "right side", "upper", "lower", "to the right", "right corner")


def with_picture(sentence: str, key: str) -> Words:
    """A sentence that names sides, with the figure in which they are seen; any other one as it is."""
    said = sentence.rstrip(".")
    is_about_sides = any(word in said for word in _SIDES)
    return words(said, *((" (sides as in ", Mention(key), ")") if is_about_sides else ()), ".")


def point_groups(teller: Teller) -> tuple[tuple[str, tuple[PointNumber, ...]], ...]:
    """Points with the same margin together: margin to the trim edge in words, and the points."""
    groups: dict[str, list[PointNumber]] = {}
    for point in teller.plan.square_up.points:
        groups.setdefault(teller.say.margin(point.to_edge), []).append(point)
    return tuple((margin, tuple(points)) for margin, points in groups.items())


def margins(teller: Teller) -> Words:
    """Room beyond the points, to the trimmed edge and after binding; empty when no point matters."""
    groups = point_groups(teller)
    if not groups or is_all_curve(teller):
        return ()
    parts = []
    for margin, points in groups:
        which = "each point" if len(groups) == 1 else f"the {listed([point.name for point in points])}"
        shown = teller.say.margin(points[0].to_edge - teller.plan.binding.seam)
        parts.append((f"{margin} beyond {which}", f"{shown} shows {once_finished(teller.project)}"))
    said: list[Words] = [words("Keep ", strong(keep), f"; {shown}") for keep, shown in parts]
    return words(*(words(part, ". " if place < len(said) - 1 else ".") for place, part in enumerate(said)))


def reach_words(teller: Teller, *where: Mention) -> Words:
    """How far the fabric passes the trim line at its worst place, when that is less than asked for, and the cure."""
    thin = next((one for one in teller.plan.findings if one.code == "coverage.thin-reach"), None)
    if thin is None:
        return ()
    cure = thin.cures[0].text.rstrip(".") if thin.cures else ""
    more = f" To gain more, before anything is cut: {cure[:1].lower()}{cure[1:]}." if cure else ""
    shown = words(" (Sides as in ", where[0], ".)") if where else ()
    return words(thin.what, more, shown)


def diagonals(teller: Teller) -> Words:
    """Corner to corner, to check that it is square; empty where that makes no sense."""
    found = teller.plan.square_up.diagonals
    if not found or teller.is_pointed:
        return ()
    said = sorted({teller.say.near(one) for one in found})
    return words("Corner to opposite corner: ", strong(" and ".join(said)), ", all alike." if len(said) == 1 else ".")


def angle_counts(teller: Teller) -> tuple[tuple[float, int], ...]:
    """Inside angles of the corners, degrees, and how many there are of each, the widest first."""
    counts = Counter(round(corner.angle, 1) for corner in teller.plan.binding.corners)
    return tuple(sorted(counts.items(), reverse=True))


def angle(degrees: float) -> str:
    """An angle in words; a whole number of degrees where it is one."""
    return f"{degrees:.0f}°" if abs(degrees - round(degrees)) < 0.05 else f"{degrees:.1f}°"


def corner_words(teller: Teller) -> str:
    """The corners of the binding: "6 corners: 4 of 135° and 2 of 90°"."""
    groups = angle_counts(teller)
    total = sum(count for _, count in groups)
    if not groups:
        return "no corner, a curve all round"
    if len(groups) == 1:
        return f"{counted(total, 'corner')} of {angle(groups[0][0])}"
    return f"{counted(total, 'corner')}: {listed([f'{count} of {angle(degrees)}' for degrees, count in groups])}"


def binding_line(teller: Teller) -> Words:
    """Needed and made length, joins and corners, in one line."""
    binding, say = teller.plan.binding, teller.say
    several = "panel" if teller.plan.panels is not None else "piece" if teller.is_several else ""
    each = f" for each {several}" if several else ""
    square = teller.plan.edge.bias_square
    if square > 0:
        squares = "a square" if binding.strips_per_piece == 1 else f"{binding.strips_per_piece} squares"
        made_of = f"one long bias strip cut {say.width(binding.cut)} wide from {squares} cut {say.size(square, square)}"
    else:
        joins = ", diagonal joins" if binding.strips_per_piece > 1 else ""
        made_of = f"{counted(binding.strips_per_piece, 'strip')} cut {say.width(binding.cut)} wide{joins}"
    return words(
        f"{say.near(binding.perimeter)} round the edge, ",
        strong(f"{say.cut(binding.need)} needed, {say.margin(binding.made)} made"),
        f"{each} ({made_of}); {corner_words(teller)}.",
    )


def edge_line(teller: Teller) -> Words:
    """How the edge is finished, in one line for the table sheet."""
    if teller.project.binding.edge is Edge.BINDING:
        return words(binding_line(teller), f" Start {start_words(teller)}.")
    return words(" ".join(edge_sentences(teller)))


def start_words(teller: Teller) -> str:
    """Where the binding starts, to follow a verb."""
    said = teller.plan.binding.start_at.strip().rstrip(".")
    return said[:1].lower() + said[1:]
