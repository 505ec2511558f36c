"""Room beyond the points of the center, and the center's place."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.finishing.words import once_finished
from stitchflip.piecing.geometry import TOLERANCE, extent
from stitchflip.planning.findings.words import listed
from stitchflip.planning.model import Finding, Severity
from stitchflip.project.model import Way

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.model import CenterPoint
    from stitchflip.planning.findings.seen import Seen


def _point_names(points: list[CenterPoint]) -> str:
    """Name of points that share their margin, such as "upper and lower point"."""
    return f"{listed([point.name.removesuffix(' point') for point in points])} point"


def _groups(points: list[CenterPoint], margin: str) -> Iterator[tuple[float, list[CenterPoint]]]:
    """Points with the same margin together, the smallest margin first."""
    groups: dict[float, list[CenterPoint]] = {}
    for point in points:
        groups.setdefault(round(getattr(point, margin), 4), []).append(point)
    for _, together in sorted(groups.items()):
        yield min(getattr(point, margin) for point in together), together


def points_beyond(seen: Seen) -> Iterator[Finding]:
    """Points cut off, with little room, or with less than wished; taped, to the trim edge."""
    say, numbers, wish = seen.speaker, seen.numbers, seen.wish
    pointing = [point for point in seen.build.points if point.points_at_edge]
    for margin, points in _groups(pointing, "to_trim_edge"):
        shown = margin - numbers.binding_seam
        names = _point_names(points)
        place = tuple(point.at for point in points)
        facts = {"to_trim_edge_in": margin, "shown_in": shown, "wish_in": wish, "short_in": max(0.0, wish - margin)}
        if margin <= numbers.points_stop + TOLERANCE:
            several = len(points) > 1
            lost = f"{'touch' if several else 'touches'} the binding"
            if margin < -TOLERANCE:
                lie, be = ("lie", "are") if several else ("lies", "is")
                lost = f"{lie} {say.shortage(-margin)} outside the trimmed edge and {be} cut off"
            elif shown < -TOLERANCE:
                lost = f"{'go' if several else 'goes'} {say.shortage(-shown)} under the binding"
            yield Finding("points.cut-off", Severity.STOP, f"The {names} of the center {lost}.", names, 0, place, facts)
        elif margin < numbers.points_note - TOLERANCE:
            severity = Severity.FIX if margin < numbers.points_fix - TOLERANCE else Severity.NOTE
            what = (
                f"Only {say.margin(shown)} will show beyond the {names} {once_finished(seen.project)} "
                f"({say.margin(margin)} to the trimmed edge)."
            )
            yield Finding("points.thin", severity, what, names, 0, place, facts)
        elif margin < wish - TOLERANCE:
            have = "have" if len(points) > 1 else "has"
            what = (
                f"The {names} {have} {say.margin(margin)} to the trimmed edge; you wish {say.near(wish)}, so it is "
                f"short by {say.shortage(wish - margin)}."
            )
            yield Finding("points.wish", Severity.NOTE, what, names, 0, place, facts)


def points_on_base(seen: Seen) -> Iterator[Finding]:
    """A base that is too small for the wish beyond the points (flat, point to base edge)."""
    say, wish = seen.speaker, seen.wish
    pointing = [point for point in seen.build.points if point.points_at_edge]
    for margin, points in _groups(pointing, "to_base_edge"):
        if margin >= wish - TOLERANCE:
            continue
        names = _point_names(points)
        what = (
            f"From the {names} to the edge of the base there {'is' if margin > 0 else 'would be'} "
            f"{say.margin(max(margin, 0.0))}; you wish {say.near(wish)} beyond the points, "
            f"so it is short by {say.shortage(wish - margin)}."
        )
        facts = {"to_base_edge_in": margin, "wish_in": wish, "short_in": wish - margin}
        yield Finding("points.base-edge", Severity.FIX, what, names, 0, tuple(point.at for point in points), facts)


def center_place(seen: Seen) -> Iterator[Finding]:
    """A center whose opposite points have unequal room."""
    pointing = {point.name: point for point in seen.build.points if point.points_at_edge}
    for one, other in (("upper point", "lower point"), ("left point", "right point")):
        if one not in pointing or other not in pointing:
            continue
        off = abs(pointing[one].to_trim_edge - pointing[other].to_trim_edge) / 2
        if off > 0.125 + TOLERANCE:
            what = f"The center is not central: it lies {seen.speaker.near(off)} nearer one edge than the middle."
            yield Finding("center.not-central", Severity.NOTE, what, one, 0, (), {"off_in": off})


_ALL_ROUND = frozenset({Way.LOG_CABIN, Way.COURTHOUSE, Way.AROUND, Way.CORNER_SQUARES, Way.WONKY})
"""Ways that go all round a center, so that none of its sides is meant to lie at the edge."""


def center_cut_off(seen: Seen) -> Iterator[Finding]:
    """A center that shows wider than the piece: both its sides are trimmed away."""
    center = seen.project.center
    if center is None or center.sewn_already or seen.project.building.way not in _ALL_ROUND:
        return
    shown = [point.at for point in seen.build.points]
    for axis, sides in (((1.0, 0.0), "left and right side"), ((0.0, 1.0), "top and bottom")):
        if not shown:
            return
        low, high = extent(seen.build.trim, *axis)
        first, last = extent(tuple(shown), *axis)
        over = min(low - first, last - high)
        if over > TOLERANCE:
            what = (
                f"The center reaches {seen.speaker.shortage(over)} or more beyond the trimmed edge at its {sides} and "
                "is cut off there."
            )
            yield Finding("center.cut-off", Severity.STOP, what, sides, 0, tuple(shown), {"over_in": over})
